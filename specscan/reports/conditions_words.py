"""The conditions of winter in a sentence, and temperatures in both units."""

from __future__ import annotations

from specscan.physics.conditions import Conditions
from specscan.physics.winter import LOWEST
from specscan.physics.words import figure


def conditions_words(one: Conditions) -> str:
    """Give conditions in a sentence."""
    parts = [
        f"{both_units(one.outside_c)} outside on average",
        f"{both_units(one.coldest_c)} in the coldest night",
        f"wind {figure(one.wind_m_s)} m/s",
        f"{both_units(one.inside_c)} inside",
        f"{one.people} {'person' if one.people == 1 else 'people'}",
        f"{one.nights} {'night' if one.nights == 1 else 'nights'}",
        f"{figure(one.driving_h_day)} h a day on the road" if one.driving_h_day else "parked",
        "shore power" if one.shore_power else "no shore power",
        "water in use" if one.running_water else "plumbing drained",
    ]
    starts = {"propane": one.propane_share, "vehicle's tank": one.vehicle_fuel_share, "battery": one.battery_share}
    parts += [f"{name} {share:.0%} full" for name, share in starts.items() if share < 1]
    return f"{one.meaning + ' ' if one.meaning else ''}Reckoned for: {', '.join(parts)}."


def both_units(value: float) -> str:
    """Give a temperature (°C) in both units: ``-20 °C / -4 °F``."""
    return f"{celsius(value)} °C / {fahrenheit(value)} °F"


def celsius(value: float) -> str:
    """Give a temperature (°C) without a unit, whole from ten degrees on; -60 stands for all below it, too."""
    if value <= LOWEST:
        return f"≤ {_whole(LOWEST)}"
    return _whole(value) if abs(value) >= 10 else figure(round(value, 1) + 0.0)


def fahrenheit(value: float) -> str:
    """Give a temperature (°C) in whole °F, without a unit."""
    return f"{'≤ ' if value <= LOWEST else ''}{_whole(value * 1.8 + 32)}"


def _whole(value: float) -> str:
    return f"{round(value):d}"
