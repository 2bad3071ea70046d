"""How columns are shown in US customary units: ``rules/us_units.yaml``."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from pydantic import ConfigDict, Field

from specscan.dataset.wide import Column, UsUnit
from specscan.finding.language.units import conversion
from specscan.records.errors import RuleError
from specscan.rulebook.models import Entry
from specscan.rulebook.yaml_source import read_yaml


class Ending(Entry):
    """A column whose name ends in ``metric`` gets the ending ``us``, and its values are converted."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True)
    metric: str
    us: str
    source: str = Field(alias="from")
    target: str = Field(alias="to")
    only: list[str] = Field(default_factory=list)


class UsUnits(Entry):
    """The file ``rules/us_units.yaml``."""

    endings: list[Ending]


def us_columns(columns: Sequence[Column], rules: Path) -> dict[str, UsUnit]:
    """Give for each column that has a US unit its name, factor and offset there.

    Raises:
        RuleError: the file is missing or wrong, or names a unit that pint does not know.
    """
    source = read_yaml(rules / "us_units.yaml")
    checked = source.validated(UsUnits)
    if checked is None:
        raise RuleError(source.mistakes)
    found: dict[str, UsUnit] = {}
    for column in columns:
        if column.type != "number":
            continue
        for index, ending in enumerate(checked.endings):
            if not column.name.endswith(ending.metric) or (ending.only and column.name not in ending.only):
                continue
            try:
                factor, offset = conversion(ending.source, ending.target)
            except Exception as error:
                raise RuleError([source.mistake(("endings", index), f"pint cannot convert: {error}")]) from error
            found[column.name] = UsUnit(column.name.removesuffix(ending.metric) + ending.us, factor, offset)
            break
    return found
