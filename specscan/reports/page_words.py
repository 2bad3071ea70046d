"""How values are put into words for people: numbers with units, metric and US, and the words of the vocabulary."""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from specscan.dataset.us_units import us_columns
from specscan.dataset.wide import Column, UsUnit
from specscan.reports.page_rules import ReportRules

FIGURES = 4
NAME = re.compile(r"\b[a-z][a-z0-9]*(?:_[a-z0-9]+)+\b")
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
        """Give a reason with what its fields mean in the place of their names: gray_tank_l → “capacity of …”."""
        return NAME.sub(
            lambda found: f"“{self.fields[found[0]]['meaning']}”" if self._has(found[0]) else found[0], text
        )

    def _has(self, name: str) -> bool:
        return bool(self.fields.get(name, {}).get("meaning"))

    def number(self, name: str, value: float, low: float | None, high: float | None, unit: str) -> Shown:
        """Give a number and its range, with its unit, metric and US."""
        metric = _span(value, low, high, self.rules.unit_words.get(unit, unit))
        other = self.us.get(name)
        if other is None:
            return Shown(metric, metric)
        ends = [None if one is None else one * other.factor + other.offset for one in (value, low, high)]
        assert ends[0] is not None
        return Shown(metric, _span(ends[0], ends[1], ends[2], self._us_label(other.name)))

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


def figure(value: float) -> str:
    """Give a number with four significant figures and without exponent: 12310.4 → ``12310``."""
    if value == 0 or not math.isfinite(value):
        return "0" if value == 0 else str(value)
    places = max(0, FIGURES - 1 - math.floor(math.log10(abs(value))))
    text = f"{value:.{places}f}"
    return text.rstrip("0").rstrip(".") if "." in text else text


def points(value: float) -> str:
    """Give points with one decimal at most."""
    return f"{value:.1f}".removesuffix(".0")


def band_text(low: float, high: float) -> str:
    """Give a band of points, "43.8 to 79.6", or one number where the ends print the same."""
    return points(low) if points(low) == points(high) else f"{points(low)} to {points(high)}"


def short_span(value: float, low: float | None, high: float | None) -> str:
    """Give a range with two significant figures, "2.6 to 6.4", for tables."""
    if low is None or high is None or f"{low:.2g}" == f"{high:.2g}":
        return figure(float(f"{value:.2g}"))
    return f"{figure(float(f'{low:.2g}'))} to {figure(float(f'{high:.2g}'))}"


def _span(value: float, low: float | None, high: float | None, unit: str) -> str:
    text = figure(value)
    if low is not None and high is not None and (figure(low), figure(high)) != (text, text):
        text = f"{text} ({figure(low)} to {figure(high)})"
    return f"{text} {unit}".strip()
