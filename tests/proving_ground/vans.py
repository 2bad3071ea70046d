"""Draws a family of vans: what each is and has, before anyone decides what of it is printed and how."""

from __future__ import annotations

from dataclasses import dataclass, field
from random import Random
from typing import Any

from tests.proving_ground import names
from tests.proving_ground.naming import draw_names

TANKS = ("fresh", "gray", "black")
CHEMISTRIES = ("lithium", "lithium", "agm", "gel", "flooded")
MATERIALS = (
    "spray_foam rigid_foam foam_sheet mineral_wool fiberglass synthetic_fiber natural_fiber sheep_wool cork".split()
)
SURFACES = (("walls", "ceiling"), ("walls", "ceiling", "floor"), ("walls", "ceiling", "floor", "doors"))
FUELS = {"us": "gasoline diesel diesel electric hybrid", "uk": "diesel diesel diesel electric hybrid gasoline"}


@dataclass(frozen=True, slots=True)
class Battery:
    """A house battery bank: ``count`` batteries of ``each`` Ah; ``volts`` where printed, ``series`` for two 6 V ones.

    ``watt_hours`` where the bank is given by its energy instead of its charge.
    """

    chemistry: str
    count: int
    each: int
    volts: float | None = None
    heated: bool = False
    series: bool = False
    watt_hours: int = 0

    @property
    def ah(self) -> int:
        """Give the charge of the bank; batteries in series add volts, not ampere-hours."""
        return self.each if self.series else self.count * self.each


@dataclass(frozen=True, slots=True)
class Heater:
    """A heater: its kind and fuels, and its power in watts with the basis that is printed (rating, output, input)."""

    kind: str
    fuel: str
    watts: float
    basis: str


@dataclass(frozen=True, slots=True)
class Propane:
    """Propane on board: ``none``, a fixed ``tank`` (litres, with its basis), ``cylinders`` or a ``locker``."""

    form: str
    amount: float = 0.0
    count: int = 1
    basis: str = ""


@dataclass(slots=True)
class Van:
    """One van of a family: its names and what is true of it, by the vocabulary's fields or by composite kinds."""

    model: str
    code: str
    has: dict[str, Any] = field(default_factory=dict)


@dataclass(slots=True)
class Family:
    """The vans of one document, by one maker."""

    region: str
    maker: str
    form: str
    series: str
    year: int
    town: str
    vans: list[Van]
    way: str = ""

    @property
    def black_water(self) -> bool:
        """Tell whether any van has a black tank."""
        return any(van.has["black_tank_l"] for van in self.vans)


def draw_family(rng: Random, region: str, count: int, usual: bool = True) -> Family:
    """Give a family of ``count`` vans; ``usual``: named in one of the two most frequent ways."""
    way, series, codes = draw_names(rng, region, count, usual)
    vans = [Van(f"{series} {code}".strip(), code) for code in codes]
    bases = names.base_vehicles(rng, region)
    common = _common(rng, region)
    length = rng.randint(5400, 6000)
    for place, van in enumerate(vans):
        length += 0 if place == 0 else rng.randint(0, 3) * 180
        van.has = {**common, **_own(rng, region, length, common)}
        van.has["chassis"] = bases[1] if length > 5900 else bases[0]
    family = Family(
        region, names.maker(rng, region), names.legal_form(rng, region), series, rng.randint(2024, 2027),
        names.town(rng), vans, way,
    )  # fmt: skip
    return family


def _common(rng: Random, region: str) -> dict[str, Any]:
    american = region in ("us", "qc")
    engine = rng.choice(FUELS.get(region, FUELS["us"] if american else FUELS["uk"]).split())
    if region == "qc" and engine == "electric":
        engine = "gasoline"
    black = american and rng.random() < 0.5
    heat_fuel = rng.choice(("propane", "propane", "diesel", "diesel", "electric" if engine == "electric" else "diesel"))
    if engine == "gasoline" and heat_fuel == "diesel":
        heat_fuel = rng.choice(("propane", "gasoline"))
    return {
        "engine_fuel": engine,
        "width_mm": rng.randint(1990, 2090),
        "interior_height_mm": rng.randint(1860, 2010),
        "shore_power_a": rng.choice((30, 30, 50)) if american else rng.choice((16, 16, 10, 15)),
        "black": black,
        "heat_fuel": heat_fuel,
        "insulation": _insulation(rng),
        "season_claim": "",
        "d": rng.choice((2.0, 2.2, 2.3, 2.9, 3.0)) if engine == "diesel" else rng.choice((2.5, 3.5, 3.6)),
        "hp": rng.choice((140, 165, 180, 204, 276)),
        "kw": rng.choice((103, 121, 132, 150)),
        "basis": rng.choice(("rating", "rating", "output", "output", "input")),
        "en_grade": rng.choice((2, 3)),
    }


def _own(rng: Random, region: str, length: int, common: dict[str, Any]) -> dict[str, Any]:
    american = region in ("us", "qc")
    heater = _heater(rng, common)
    own: dict[str, Any] = {
        "drive": rng.choice(("rear", "front", "all", "rear" if american else "front")),
        "length_mm": length,
        "height_mm": rng.randint(2580, 2980),
        "wheelbase_mm": rng.choice((3450, 3665, 4035, 4325)),
        "gvwr_kg": rng.choice((4037, 4105, 4536, 5003)) if american else rng.choice((3500, 3500, 3850, 4100, 4250)),
        "sleeps": rng.choice((2, 2, 2, 3, 4)),
        "fuel_tank_l": 0 if common["engine_fuel"] == "electric" else rng.randint(68, 100),
        "fresh_tank_l": rng.randint(62, 165),
        "gray_tank_l": rng.randint(50, 140),
        "black_tank_l": rng.randint(28, 62) if common["black"] else 0,
        "toilet": "fixed_tank" if common["black"] else rng.choice(("cassette", "cassette", "dry", "portable")),
        "cassette_l": rng.choice((16, 17, 18, 19, 20)),
        "water_heater_l": rng.choice((6, 8, 10, 12, 15, 23)),
        "heater": heater,
        "heater_consumption_l_h": round(heater.watts / 9000, 2),
        "heater_power_draw_w": rng.randint(22, 98),
        "propane": _propane(rng, region, heater),
        "battery": draw_battery(rng),
        "solar_w": rng.choice((0, 100, 150, 190, 200, 220, 300, 380, 400, 440, 600)),
        "inverter_w": rng.choice((0, 600, 1000, 1500, 1800, 2000, 3000, 3600)),
        "insulation_r_si": rng.choice((0.9, 1.0, 1.2, 1.4, 1.6, 1.9)),
        "insulated_surfaces": rng.choice(SURFACES),
        "rated_min_temp_c": rng.choice((-30, -25, -20, -18, -15, -12, -10, -7)),
        "water_lines_location": rng.choice(("interior", "interior", "enclosed", "exterior", "mixed")),
        "water_lines_insulated": rng.choice(("yes", "no")),
        "water_lines_heated": rng.choice(("yes", "no")),
        "dump_valve_protection": rng.choice(("heated_compartment", "heated", "insulated", "exposed")),
        "winterizing_bypass": rng.choice(("yes", "yes", "no")),
        "heated_floor": rng.choice(("yes", "no")),
        "thermal_break": rng.choice(("yes", "no")),
        "window_glazing": rng.choice(("double", "double", "single", "mixed")),
        "cab_shades_insulated": rng.choice(("yes", "no")),
        "rear_shades_insulated": rng.choice(("yes", "no")),
    }
    for tank in TANKS:
        own[f"{tank}_tank_location"] = rng.choice(
            ("interior", "interior", "enclosed")
            if tank == "fresh"
            else ("underbody", "underbody", "enclosed", "interior")
        )
        heats = ["none", "none", "electric_pad", "electric_pad", "warm_air", "unspecified"]
        if heater.kind == "hydronic":
            heats.append("hydronic")
        own[f"{tank}_tank_heat"] = rng.choice(heats)
        own[f"{tank}_tank_insulated"] = rng.choice(("yes", "no"))
    return own


def _insulation(rng: Random) -> tuple[tuple[str, ...], int]:
    """Give materials and thickness in millimetres."""
    first = rng.choice(MATERIALS)
    thickness = rng.choice((20, 25, 30, 40, 50))
    return ((first, "reflective_foil") if rng.random() < 0.12 else (first,)), thickness


def _heater(rng: Random, common: dict[str, Any]) -> Heater:
    fuel = common["heat_fuel"]
    watts = rng.choice((2000, 3500, 4000, 4700, 5000, 5300, 6000))
    if fuel == "electric":
        kind = rng.choice(("heat_pump", "electric"))
        return Heater(kind, fuel, rng.choice((2000, 2500, 3000)), "output" if kind == "heat_pump" else common["basis"])
    kind = rng.choice(("forced_air", "forced_air", "hydronic", "combined")) if fuel != "gasoline" else "forced_air"
    if kind == "combined" and rng.random() < 0.4:
        fuel = "+".join(sorted((fuel, "electric")))
    return Heater(kind, fuel, watts, common["basis"])


def _propane(rng: Random, region: str, heater: Heater) -> Propane:
    if "propane" not in heater.fuel:
        return Propane("none")
    if region in ("us", "qc"):
        if rng.random() < 0.55:
            return Propane("tank", rng.choice((22, 30, 40, 57)), 1, rng.choice(("", "", "usable", "water_capacity")))
        return Propane("cylinders", 9.07, rng.choice((1, 2)))
    if region in ("uk", "fr", "de") and rng.random() < 0.25:
        return Propane("locker", 11.0 if region == "de" else rng.choice((6.0, 13.0)), 2)
    if rng.random() < 0.2:
        return Propane("tank", rng.choice((20, 28, 40)), 1, rng.choice(("", "usable")))
    return Propane(
        "cylinders", rng.choice((5.0, 11.0)) if region == "de" else rng.choice((6.0, 9.0, 13.0)), rng.choice((1, 2, 2))
    )


def draw_battery(rng: Random) -> Battery:
    """Give a battery bank with one of the ways in which banks are printed."""
    chemistry = rng.choice(CHEMISTRIES)
    roll = rng.random()
    if chemistry in ("agm", "flooded") and roll < 0.15:
        return Battery(chemistry, 2, 220, 6.0, series=True)
    count = rng.choice((1, 1, 1, 2, 2, 3))
    each = rng.choice((95, 100, 105, 150, 200, 280)) if count == 1 else rng.choice((100, 105, 120, 150))
    heated = chemistry == "lithium" and rng.random() < 0.3
    if chemistry == "lithium" and roll < 0.12:
        return Battery(chemistry, 1, 0, None, heated, watt_hours=rng.choice((1280, 2560, 3840, 5120, 7680)))
    volts = rng.choice((None, None, None, 12.8 if chemistry == "lithium" else 12.0))
    return Battery(chemistry, count, each, volts, heated)
