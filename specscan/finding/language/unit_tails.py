"""The unit at the end of a label, which is no word of what it names: "in mm", "(ft-in)"."""

from __future__ import annotations

import re

from specscan.finding.language.fold import Token
from specscan.rulebook.book import Rulebook

FEET_INCHES = re.compile(r"\(\s*ft\.?\W+in\.?\s*\)$")
OPENS = re.compile(r"[,:–(\[]|(?<=\s)\w+\s")  # what may open the unit


def without_unit(book: Rulebook, words: list[Token], text: str) -> list[Token]:
    """Give the words of a label without the unit at its end."""
    feet = FEET_INCHES.search(text)
    places = (match.start() for match in OPENS.finditer(text) if book.unit_tail.fullmatch(text[match.start() :]))
    end = feet.start() if feet is not None else next(places, 0)
    return [word for word in words if word.start < end] or words
