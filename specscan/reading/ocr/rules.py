"""How pictures of pages are read: ``rules/ocr.yaml``."""

from __future__ import annotations

import re
from pathlib import Path

from pydantic import Field, field_validator

from specscan.rulebook.models import Entry
from specscan.rulebook.patterns import checked_pattern
from specscan.rulebook.yaml_source import read_checked


class PictureRules(Entry):
    """How a page is drawn, and how much may be spent on it."""

    dpi: int = Field(ge=72, le=600)
    find_dpi: int = Field(ge=72, le=400)
    second_dpi: int = Field(ge=72, le=600)
    most_pages: int = Field(gt=0)
    threads: int = Field(gt=0)
    turned_below: float = Field(ge=0, le=1)
    readable_from: float = Field(ge=0, le=1)


class TextLayerRules(Entry):
    """When a text layer is doubted because it holds next to no word that brochures use."""

    words_from: int = Field(gt=0)
    known_share: float = Field(ge=0, le=1)


class CertaintyRules(Entry):
    """Probabilities from which on a sign is believed."""

    digit: float = Field(ge=0, le=1)
    unit: float = Field(ge=0, le=1)
    quote: float = Field(ge=0, le=1)
    missed_point: float = Field(ge=0, le=1)
    missed_digit: float = Field(ge=0, le=1)
    word: float = Field(ge=0, le=1)


class SpacingRules(Entry):
    """When the white between two signs is a space, in shares of the font size."""

    surely_parted: float = Field(gt=0)
    perhaps_parted: float = Field(gt=0)
    likely_space: float = Field(ge=0, le=1)
    unit_apart: float = Field(gt=0)
    unit_pitch: float = Field(gt=1)
    many_touch: float = Field(ge=0, le=1)


class ShapeRules(Entry):
    """What the ink of a digit can look like, in shares of the font size."""

    bar_at_most: float = Field(gt=0)
    digit_at_most: float = Field(gt=0)
    widest_digit: float = Field(gt=1)
    stray_at_most: float = Field(gt=0)
    uneven_digits: float = Field(gt=0)
    raised_from: float = Field(gt=0)
    raised_at_most: float = Field(gt=0)
    point_tail: float
    comma_tail: float


class Mend(Entry):
    """What is never written, as a regular expression that holds for signs of one word, and what it is instead.

    Both are equally long, for each sign keeps its place.
    """

    pattern: str
    meant: str

    @field_validator("pattern")
    @classmethod
    def regular(cls, value: str) -> str:
        """Refuse what is no regular expression."""
        return _regular(value)


def _regular(pattern: str) -> str:
    try:
        checked_pattern(pattern)
    except re.error as error:
        raise ValueError(f"{pattern!r} is no regular expression ({error})") from error
    return pattern


class OcrRules(Entry):
    """The file ``rules/ocr.yaml``."""

    picture: PictureRules
    text_layer: TextLayerRules
    characters: str = Field(min_length=36)
    same_as: dict[str, str]
    certainty: CertaintyRules
    spacing: SpacingRules
    shape: ShapeRules
    spellings: dict[str, str]
    mends: list[Mend]
    before_small: dict[str, str]
    bars: dict[str, str]
    before_units: list[str]
    whole_units: list[str]
    impossible: list[str]

    @field_validator("impossible")
    @classmethod
    def patterns(cls, value: list[str]) -> list[str]:
        """Refuse what is no regular expression."""
        return [_regular(one) for one in value]


def load_ocr_rules(folder: Path) -> OcrRules:
    """Give the rules for reading pictures in a folder of rules.

    Raises:
        RuleError: the file is missing or wrong, with file and line.
    """
    return read_checked(folder / "ocr.yaml", OcrRules)
