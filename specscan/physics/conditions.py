"""Under which conditions winter is reckoned: ``rules/conditions.yaml``, and changes of single figures."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ConfigDict, Field, ValidationError, model_validator

from specscan.records.errors import NotFoundError, SpecscanError
from specscan.rulebook.yaml_source import read_checked

FILE = "conditions.yaml"
ENDINGS = (".yaml", ".yml")
Share = Field(ge=0, le=1, allow_inf_nan=False)


class Conditions(BaseModel):
    """Weather, people, habits and what is on board at the start. Temperatures in °C, shares from 0 to 1.

    ``outside_c`` is the mean over the stay, by which fuel, battery and freezing are reckoned; ``coldest_c`` the
    coldest night, by which the heater is. ``fuel_reserve_share`` stands in place of the assumed reserve of the
    vehicle's tank where it is given. Air of -60 to 15 °C, wind up to 40 m/s.
    """

    model_config = ConfigDict(extra="forbid", frozen=True)
    meaning: str = ""
    outside_c: float = Field(ge=-60, le=15, allow_inf_nan=False)
    coldest_c: float = Field(ge=-60, le=15, allow_inf_nan=False)
    wind_m_s: float = Field(ge=0, le=40, allow_inf_nan=False)
    inside_c: float = Field(ge=5, le=30, allow_inf_nan=False)
    people: int = Field(ge=1, le=9)
    nights: int = Field(ge=1, le=365)
    driving_h_day: float = Field(0.0, ge=0, le=23, allow_inf_nan=False)
    driving_km_h: float = Field(0.0, ge=0, le=130, allow_inf_nan=False)
    alternator_w: float = Field(0.0, ge=0, le=5000, allow_inf_nan=False)
    propane_share: float = Share
    vehicle_fuel_share: float = Share
    fuel_reserve_share: float | None = Field(None, ge=0, lt=1, allow_inf_nan=False)
    battery_share: float = Share
    fresh_share: float = Share
    gray_share: float = Share
    toilet_share: float = Share
    shore_power: bool = False
    running_water: bool = True

    @model_validator(mode="after")
    def ordered(self) -> Conditions:
        """Refuse a coldest night that is warmer than the mean, and an inside that is colder than outside."""
        if self.coldest_c > self.outside_c:
            raise ValueError("coldest_c is above outside_c")
        if self.inside_c <= self.outside_c:
            raise ValueError("inside_c is not above outside_c")
        if self.fuel_reserve_share is not None and self.fuel_reserve_share >= self.vehicle_fuel_share > 0:
            raise ValueError("fuel_reserve_share leaves nothing of vehicle_fuel_share")
        return self

    def changed(self, changes: Mapping[str, Any]) -> Conditions:
        """Give the conditions with some figures changed.

        A new ``outside_c`` without ``coldest_c`` moves the coldest night by as much.

        Raises:
            SpecscanError: a figure is unknown or out of bounds; the message names it.
        """
        if not changes:
            return self
        new = {**self.model_dump(), "meaning": "", **changes}
        if "outside_c" in changes and "coldest_c" not in changes:
            new["coldest_c"] = max(-60.0, self.coldest_c + float(changes["outside_c"]) - self.outside_c)
        try:
            return Conditions.model_validate(new)
        except ValidationError as error:
            said = "; ".join(
                f"{'.'.join(map(str, one['loc'])) or 'conditions'}: {one['msg']}" for one in error.errors()
            )
            raise SpecscanError(f"these conditions do not go: {said}") from error


class ConditionsFile(BaseModel):
    """The file ``rules/conditions.yaml``, or one of a user in the same form."""

    model_config = ConfigDict(extra="forbid", frozen=True)
    default: str
    conditions: dict[str, Conditions] = Field(min_length=1)

    @model_validator(mode="after")
    def default_is_there(self) -> ConditionsFile:
        """Refuse a default that is not declared."""
        if self.default not in self.conditions:
            raise ValueError(f"the default {self.default!r} is none of the conditions")
        return self


def load_conditions(path: Path) -> ConditionsFile:
    """Read a file of conditions; for a folder of rules its ``conditions.yaml``.

    Raises:
        RuleError: the file is missing or wrong; every mistake with file and line.
    """
    return read_checked(path / FILE if path.is_dir() else path, ConditionsFile)


def conditions_named(folder: Path, name: str = "") -> Conditions:
    """Give the conditions of a name, or without one the default ones of a folder of rules.

    ``name`` may also be a YAML file in the form of ``conditions.yaml``: then its default ones, or ``FILE:NAME``.

    Raises:
        NotFoundError: there are none of that name; with the names there are.
        RuleError: the file is missing or wrong.
    """
    path, wanted = folder, name
    whole, _, part = name.rpartition(":")
    if name.endswith(ENDINGS):
        path, wanted = Path(name), ""
    elif whole.endswith(ENDINGS):
        path, wanted = Path(whole), part
    file = load_conditions(path)
    wanted = wanted or file.default
    if wanted not in file.conditions:
        raise NotFoundError(f"no conditions are called {wanted!r}; there are: {', '.join(file.conditions)}")
    return file.conditions[wanted]
