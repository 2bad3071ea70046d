"""Options that state the conditions of winter, shared by ``scan`` and ``winter``."""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from typing import Any

import click

NUMBER = r"([+\-−]?\d+(?:[.,]\d+)?)"


class Measure(click.ParamType):
    """A number with one of some units, given in the unit of the conditions."""

    def __init__(self, name: str, units: Mapping[str, Callable[[float], float]], example: str):
        self.name, self.units, self.example = name, units, example

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> float:
        """Give the number in the unit of the conditions; a call that is wrong says what is."""
        found = re.fullmatch(rf"\s*{NUMBER}\s*(.*?)\s*", str(value))
        unit = found[2].casefold().removeprefix("°").strip() if found else ""
        if found is None or unit not in self.units:
            self.fail(f"{value!r} is no {self.name}; write it like {self.example}", param, ctx)
        return self.units[unit](float(found[1].replace(",", ".").replace("−", "-")))


def _same(value: float) -> float:
    return value


TEMPERATURE = Measure("temperature", {"": _same, "c": _same, "f": lambda f: (f - 32) / 1.8}, "-20C or -4F")
SPEED = {"km/h": lambda v: v / 3.6, "mph": lambda v: v * 0.44704}
WIND = Measure("wind", {"": _same, "m/s": _same, **SPEED}, "4 (m/s), 15km/h or 10mph")
ROAD = Measure("speed", {"": _same, "km/h": _same, "mph": lambda v: v * 1.609344}, "80 (km/h) or 50mph")
SHARE = Measure("share", {"": _same, "%": lambda v: v / 100}, "0.25 or 25%")
FLAGS = (
    (
        "--outside",
        "outside_c",
        TEMPERATURE,
        "Mean outside, as -20C or -4F; moves the coldest night with it.",
    ),
    ("--coldest", "coldest_c", TEMPERATURE, "The coldest night."),
    ("--inside", "inside_c", TEMPERATURE, "The temperature wanted inside."),
    ("--wind", "wind_m_s", WIND, "Wind, as 4 (m/s), 15km/h or 10mph."),
    ("--people", "people", click.INT, "How many people."),
    ("--nights", "nights", click.INT, "How many nights it shall last."),
    ("--driving", "driving_h_day", click.FLOAT, "Hours a day on the road."),
    ("--speed", "driving_km_h", ROAD, "Speed on the road, as 80 (km/h) or 50mph."),
    ("--alternator", "alternator_w", click.FLOAT, "Watts that driving puts into the house battery."),
    ("--propane", "propane_share", SHARE, "How full the propane is at the start, as 50%."),
    ("--vehicle-fuel", "vehicle_fuel_share", SHARE, "How full the vehicle's tank is at the start."),
    ("--reserve", "fuel_reserve_share", SHARE, "Share of the vehicle's tank that the heater shall leave."),
    ("--battery", "battery_share", SHARE, "How full the house battery is at the start."),
)


def conditions_options(command: Callable[..., Any]) -> Callable[..., Any]:
    """Add the options that state conditions; their values come as keyword arguments for ``chosen_conditions``."""
    for flags, name, what in (
        ("--running-water/--dry", "running_water", "Whether water is in tanks and lines, or the plumbing is drained."),
        ("--shore-power/--no-shore-power", "shore_power", "Whether there is shore power."),
    ):
        command = click.option(flags, name, default=None, help=what)(command)
    for flag, name, kind, what in reversed(FLAGS):
        command = click.option(flag, name, type=kind, default=None, help=what)(command)
    return click.option(
        "--conditions", default="", metavar="NAME|FILE",
        help="Conditions of winter: a name in rules/conditions.yaml, or a YAML file of that form. The options below "
        "change single figures.",
    )(command)  # fmt: skip


def chosen_conditions(stated: dict[str, Any]) -> dict[str, Any]:
    """Give the name of the conditions and the figures that were changed, as ``api`` takes them."""
    changes = {name: value for name, value in stated.items() if name != "conditions" and value is not None}
    return {"conditions": stated["conditions"], "changes": changes}
