"""Figures in which the mark parts thousands, whatever it is in the language of the text: "3.500 kg", "3,500 kg"."""

from __future__ import annotations

import re
from dataclasses import replace

from specscan.finding.language.numbers import Figure
from specscan.finding.language.units import Unit, Units

GROUPED = re.compile(r"([1-9]\d{0,2})[.,](\d{3})(?![.,]?\d)")
JOINT = re.compile(r"\s*[/x×–—−-]\s*")


def with_thousands(text: str, figures: list[Figure], units: Units, hint: Unit | None) -> list[Figure]:
    """Give the figures of a text; those before a unit that is printed without decimals are read as whole.

    The unit may stand behind the last of several, "5.990 × 2.050 mm", or is the ``hint`` of a label.
    """
    if not GROUPED.search(text):
        return figures
    result: list[Figure] = []
    whole, start = False, len(text)  # of the figure behind
    for figure in reversed(figures):
        unit = units.at(text, figure.end) or hint
        joined = JOINT.fullmatch(text, figure.end, start) is not None
        whole, start = (whole and joined) if unit is None else unit.whole, figure.start
        grouped = GROUPED.fullmatch(text, figure.start, figure.end)
        if whole and grouped:
            figure = replace(figure, value=float(grouped.group(1) + grouped.group(2)))
        result.append(figure)
    return result[::-1]
