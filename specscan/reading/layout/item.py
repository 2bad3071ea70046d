"""A piece of running text before it becomes a passage."""

from __future__ import annotations

from dataclasses import dataclass, field

from specscan.reading.letters.words import Line, Word
from specscan.records.text import Kind


@dataclass(slots=True)
class Item:
    """Its kind, lines and signs."""

    kind: Kind
    lines: list[Line]
    mark: str = ""
    sign: str = ""
    level: float = 0.0
    strong: bool = False
    words: list[Word] = field(default_factory=list)
