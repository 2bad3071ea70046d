"""What the page and the sheet show and how much they may weigh: ``rules/report.yaml``."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from pydantic import Field

from specscan.rulebook.models import Entry
from specscan.rulebook.yaml_source import read_checked


class ColumnShown(Entry):
    """A column of the table: a field of numbers, its title and what it is about.

    In ``title`` and ``about``, ``{outside}`` stands for the mean outside temperature of the conditions and ``{inside}``
    for the one wanted inside. ``beside``: what stands beside the number, the limit that ends the stay first. ``better``
    says which end is the better one, ``filter`` whether vans can be filtered by it.
    """

    field: str
    title: str
    about: str = ""
    beside: Literal["", "first_limit"] = ""
    better: Literal["high", "low"] = "high"
    filter: bool = True


class PictureRules(Entry):
    """How pictures are cut, and the bounds of the process that cuts them."""

    pixels_per_point: float = Field(gt=0, le=4)
    margin_points: float = Field(ge=0, le=100)
    tallest_points: float = Field(gt=0, le=2000)
    quality: int = Field(ge=0, le=100)
    widest_pixels: int = Field(gt=0, le=4000)
    seconds_per_page: float = Field(gt=0)
    memory_mb: int = Field(ge=300)
    file_mb: int = Field(gt=0)


class PageRules(Entry):
    """The part on the comparison page."""

    most_mb: float = Field(gt=0)
    columns: list[ColumnShown]
    pictures: PictureRules


class SheetRules(Entry):
    """The part on the walk-around sheet: cautions, and the words in field names that call for them."""

    underneath: list[str] = Field(min_length=1)
    gas: list[str] = Field(min_length=1)
    electric: list[str] = Field(min_length=1)
    gas_words: list[str]
    electric_words: list[str]


class Caution(Entry):
    """A caution; ``about`` says beside which vans it is printed, ``reference`` what it rests on."""

    about: Literal["every", "propane", "diesel", "gasoline", "lithium", "water"]
    text: str
    reference: list[str] = Field(default_factory=list)


class WinterRules(Entry):
    """The part on the winter behaviour of vans: cautions, and how figures are grouped and called."""

    cautions: list[Caution] = Field(min_length=1)
    groups: dict[str, dict[str, str]]


class ReportRules(Entry):
    """The file ``rules/report.yaml``."""

    page: PageRules
    us_labels: dict[str, str]
    unit_words: dict[str, str]
    value_words: dict[str, str] = Field(default_factory=dict)
    sheet: SheetRules
    winter: WinterRules


def load_report_rules(folder: Path) -> ReportRules:
    """Give what a folder of rules says about reports.

    Raises:
        RuleError: the file is missing or wrong, with file and line.
    """
    return read_checked(folder / "report.yaml", ReportRules)
