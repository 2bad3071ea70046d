"""How values are put into words for people: numbers with units, metric and US, and the words of the vocabulary."""

from __future__ import annotations

import math
import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from specscan.dataset.us_units import us_columns
from specscan.dataset.wide import Column, UsUnit
from specscan.physics.words import time_range, time_span
from specscan.reports.page_rules import ReportRules

OTHERS = {"grade_two_in_time": "warm-up for grade 2", "grade_three_in_time": "warm-up for grade 3"}
"""What claims ask besides fields and derived quantities."""
FIGURES = 4
DERIVED_FIGURES = 3  # as in the arithmetic
SHORT_FIGURES = 2
NAME = re.compile(r"\b[a-z][a-z0-9]*(?:_[a-z0-9]+)+\b")
CHOSEN = re.compile(r"\b([a-z][a-z0-9]*(?:_[a-z0-9]+)+): ([a-z_+]+(?:, [a-z_]+)*)(?!\w)")
REASONS = {
    "not_stated": "no document says",
    "only_optional": "only offered as an option",
    "conflicting": "documents disagree",
    "unreadable_page": "perhaps on a page that could not be read",
    "implausible": "the printed value cannot be right",
    "ambiguous": "said, but not fully",
}
STATUSES = {
    "stated": "printed",
    "observed": "reported by somebody who looked or asked",
    "conflicting": "documents disagree",
    "derived": "worked out",
    "missing": "not known",
}
AVAILABILITIES = {
    "standard": "standard",
    "optional": "option",
    "not_available": "not offered",
    "unstated": "not said whether standard or option",
}
EQUIPMENTS = {"standard": "as delivered", "optioned": "with printed options fitted"}
ROUTES = {
    "prose": "running text",
    "list_item": "a list",
    "label_value": "a line with a label",
    "mark_row": "a table of marks",
    "identity": "a title",
    "table_cell": "a table",
    "footnote": "a footnote",
}


@dataclass(frozen=True, slots=True)
class Shown:
    """A value in words: with metric units, and with US units (the same where there is no other)."""

    metric: str
    us: str


class Wording:
    """Puts the settled values of a dataset into words."""

    def __init__(self, fields: Mapping[str, Mapping[str, Any]], rules: ReportRules, folder: Path):
        """``fields`` are the rows of the table ``fields`` by name; ``folder`` holds the rules on US units.

        Raises:
            RuleError: the rules on US units are wrong.
        """
        self.fields, self.rules = fields, rules
        columns = [Column(name, str(row["type"]), row["unit"] or "") for name, row in fields.items()]
        self.us: dict[str, UsUnit] = us_columns(columns, folder)

    def value(self, row: Mapping[str, Any]) -> Shown | None:
        """Give a row of ``settled`` or ``facts`` in words; nothing where it has no value."""
        name = row["field"]
        if row["value_num"] is not None:
            return self.number(name, row["value_num"], row["value_low"], row["value_high"], row["unit"] or "")
        if row["value_flag"] is not None:
            word = "yes" if row["value_flag"] else "no"
        elif row["value_text"]:
            word = self.word(name, row["value_text"])
        else:
            return None
        return Shown(word, word)

    def word(self, name: str, text: str) -> str:
        """Give a word of the vocabulary as people write it; a text as it was printed."""
        if self.fields.get(name, {}).get("type") not in ("choice", "set"):
            return text
        return ", ".join(self.rules.value_words.get(part, part.replace("_", " ")) for part in text.split("+"))

    def plain(self, text: str) -> str:
        """Give a reason in words: what fields mean in the place of their names, and their words as people write them.

        ``gray_tank_heat: warm_air`` → “how the gray-water tank is kept from freezing”: warm air.
        """
        text = CHOSEN.sub(lambda found: f"{found[1]}: {self.word(found[1], found[2].replace(', ', '+'))}", text)
        return NAME.sub(
            lambda found: (
                f"“{self.fields[found[0]]['meaning']}”" if self._has(found[0]) else OTHERS.get(found[0], found[0])
            ),
            text,
        )

    def _has(self, name: str) -> bool:
        return bool(self.fields.get(name, {}).get("meaning"))

    def number(self, name: str, value: float, low: float | None, high: float | None, unit: str) -> Shown:
        """Give a number and its range, with its unit, metric and US."""
        ends = value if low is None else low, value if high is None else high
        if self._lasts(name, unit):
            told = time_span(value, *ends, unit, lambda one: figure(one, DERIVED_FIGURES))
            return Shown(told, told)
        return self._in_units(name, unit, lambda said: _span(said(value), said(ends[0]), said(ends[1])), FIGURES)

    def short(self, row: Mapping[str, Any]) -> Shown | None:
        """Give a number of ``settled`` for a table: its range alone, with two figures; nothing where it has none."""
        if row["value_num"] is None:
            return None
        unit, (low, high) = row["unit"] or "", ends(row)
        if self._lasts(row["field"], unit):
            told = time_range(low, high, unit, lambda one: figure(one, SHORT_FIGURES))
            return Shown(told, told)
        return self._in_units(
            row["field"],
            unit,
            lambda said: said(low) if said(low) == said(high) else f"{said(low)} to {said(high)}",
            SHORT_FIGURES,
        )

    def _in_units(self, name: str, unit: str, say: Callable[[Callable[[float], str]], str], figures: int) -> Shown:
        """Give what ``say`` makes of a number's ends, in metric and US units."""
        other = self.us.get(name)
        derived = self.fields.get(name, {}).get("kind") == "derived"
        figures = min(figures, DERIVED_FIGURES) if derived else figures

        def said(value: float) -> str:
            if derived and unit == "°C":
                return str(round(value))  # their ranges are degrees wide
            return figure(value, figures)

        def said_us(value: float) -> str:
            assert other is not None
            converted = value * other.factor + other.offset
            return str(round(converted)) if derived and unit == "°C" else figure(converted, figures)

        metric = _with_unit(say(said), self.rules.unit_words.get(unit, unit))
        return Shown(metric, metric if other is None else _with_unit(say(said_us), self._us_label(other.name)))

    def _lasts(self, name: str, unit: str) -> bool:
        """Tell whether a number is a time that was worked out, which is told in the unit that suits it."""
        return unit in ("d", "h") and self.fields.get(name, {}).get("kind") == "derived"

    def units(self, name: str) -> Shown:
        """Give the unit of a field, metric and US (the same where there is no other)."""
        unit = self.fields.get(name, {}).get("unit") or ""
        metric = self.rules.unit_words.get(unit, unit)
        other = self.us.get(name)
        return Shown(metric, self._us_label(other.name) if other is not None else metric)

    def _us_label(self, column: str) -> str:
        endings = [ending for ending in self.rules.us_labels if column.endswith(ending)]
        return self.rules.us_labels[max(endings, key=len)] if endings else ""

    def label(self, name: str) -> str:
        """Give what a field means, as a heading."""
        meaning = self.fields.get(name, {}).get("meaning") or name.replace("_", " ")
        return str(meaning[:1].upper() + meaning[1:])


def figure(value: float, figures: int = FIGURES) -> str:
    """Give a number with some significant figures and without exponent: 12310.4 → ``12310``, with two ``12000``."""
    if value == 0 or not math.isfinite(value):
        return "0" if value == 0 else str(value)
    places = figures - 1 - math.floor(math.log10(abs(value)))
    text = f"{round(value, places) if figures < FIGURES else value:.{max(0, places)}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def ends(row: Mapping[str, Any]) -> tuple[float, float]:
    """Give the low and high end of a number of ``settled``; its value where it has no range."""
    low, high = (row["value_num"] if row[end] is None else row[end] for end in ("value_low", "value_high"))
    return low, high


def points(value: float) -> str:
    """Give points with one decimal at most."""
    return f"{value:.1f}".removesuffix(".0")


def band_text(low: float, high: float) -> str:
    """Give a band of points, "43.8 to 79.6", or one number where the ends print the same."""
    return points(low) if points(low) == points(high) else f"{points(low)} to {points(high)}"


def _span(value: str, low: str, high: str) -> str:
    return value if low == value == high else f"{value} ({low} to {high})"


def _with_unit(text: str, unit: str) -> str:
    return f"{text} {unit}".strip() if any(letter.isdigit() for letter in text) else text
