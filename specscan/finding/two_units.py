"""Labels that name two units, and figures printed in both: "Length, mm (in): 5,998 (236)"."""

from __future__ import annotations

import re

from specscan.finding.language.numbers import FigureReader
from specscan.finding.language.units import Unit, Units

UNIT = r"[^\s,;:()\[\]/|]{1,8}\.?(?:\s(?:gal|in)\.?)?"
LABEL = re.compile(
    rf"(?P<label>.*?)[\s,]*[(\[]?\s*(?<![^\s,(\[])(?:in\s+)?(?P<one>{UNIT})\s*"
    rf"(?:[(\[]\s*(?P<inside>{UNIT})\s*[)\]]|[/|]\s*(?P<beside>{UNIT}))\s*[)\]]?"
)
JOINTS = frozenset("([/|")  # of which one stands before the second unit
FIGURE = r"\d[\d.,'’ \u00a0\u202f]*"
BODY = re.compile(rf"\s*(?P<one>{FIGURE})\s*(?:[(\[]\s*(?P<inside>{FIGURE})\s*[)\]]|[/|]\s*(?P<beside>{FIGURE}))\s*")
ROUNDED = 0.03  # by which two figures for one amount may differ, rounded as they are; common practice, no source


class TwoUnits:
    """Reads what is printed in two units in the first of them, for one language."""

    def __init__(self, units: Units, figures: FigureReader):
        self.units = units
        self.figures = figures

    def named(self, text: str) -> bool:
        """Tell whether a text is nothing but two units of one kind, as the "L (gal)" of a column of units."""
        pair = self._pair(text)
        return pair is not None and not pair[0]

    def first(self, label: str, body: str) -> tuple[str, str]:
        """Give a label with only the first of its two units, and a body with only the figure in that unit.

        Both are given as they are where the label does not name two units. Where two figures are not one amount, nobody
        knows which unit is whose: the label then loses both.
        """
        pair = self._pair(label)
        if pair is None:
            return label, body
        named, one, other = pair
        if re.fullmatch(FIGURE, body.strip()):
            return f"{named}, {one.printed}", body
        match = BODY.fullmatch(body)
        if match is None:
            return label, body
        first = self.figures.value(match["one"])
        second = self.figures.value(match["inside"] or match["beside"])
        if first is None or second is None or not self._same(one, first, other, second):
            return named, body
        return f"{named}, {one.printed}", body[: match.end("one")].rstrip()

    def _pair(self, text: str) -> tuple[str, Unit, Unit] | None:
        """Give what a text names, and its two units; ``None`` where it does not end with two units of one kind."""
        match = None if JOINTS.isdisjoint(text) else LABEL.fullmatch(text.strip(" :"))
        if match is None:
            return None
        one = self.units.named(match["one"])
        other = self.units.named(match["inside"] or match["beside"])
        if one is None or other is None or one.dimension != other.dimension or one.printed == other.printed:
            return None
        return match["label"].strip(" ,([:"), one, other

    def _same(self, one: Unit, first: float, other: Unit, second: float) -> bool:
        """Tell whether two figures mean the same amount, with either kind of gallon."""
        return any(
            abs(one.convert(first, imperial=imperial) - other.convert(second, imperial=imperial))
            <= ROUNDED * abs(one.convert(first, imperial=imperial))
            for imperial in (False, True)
        )
