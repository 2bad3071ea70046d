"""Signs of a legend behind a word of a label instead of in a cell: "Second panel†, total: 380 W"."""

from __future__ import annotations

from collections.abc import Collection

from specscan.finding.marks.legend import DASH_SIGNS, Legend, Meaning


def said_of_label(legend: Legend, label: str, notes: Collection[str]) -> Meaning | None:
    """Give what such a sign says of what a label names; ``notes`` are the signs that stood at its end."""
    for sign, meaning in legend.signs.items():
        if _may_be_glued(sign) and (sign in notes or _stands_behind_word(label, sign)):
            return meaning
    return None


def _may_be_glued(sign: str) -> bool:
    return not any(map(str.isalnum, sign)) and sign not in DASH_SIGNS


def _stands_behind_word(text: str, sign: str) -> bool:
    place = text.find(sign)
    return place > 0 and text[place - 1].isalnum()
