"""What reading documents of one language needs, made once."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from specscan.finding.cast import CastReader
from specscan.finding.frames import FrameReader
from specscan.finding.items import Parsed, parse
from specscan.finding.lexicon import Lexicon
from specscan.finding.numbers import FigureReader
from specscan.finding.quantities import Quantity, QuantityReader, feet_and_inches
from specscan.finding.units import Unit, Units
from specscan.finding.van_mentions import VanMentions
from specscan.records.text import Document
from specscan.rulebook.book import Rulebook

JOIN = " ‖ "
FEET_AND_INCHES = re.compile(r"\b(?:ft|feet)\s*[-/.–]\s*(?:in|inches)\b", re.IGNORECASE)
IMPERIAL = re.compile(
    r"\b(?:imperial|imp\.?)\s*(?:gal|measure)|gallons?\s+(?:are|is)\s+imperial|\bgallons? impériaux", re.IGNORECASE
)
US_GALLON = re.compile(r"\bU\.?S\.?\s*gal", re.IGNORECASE)


@dataclass(slots=True)
class Kit:
    """Readers for one language and one kind of gallon."""

    language: str
    lexicon: Lexicon
    units: Units
    quantities: QuantityReader
    frames: FrameReader
    casts: CastReader

    def parse(self, label: str, body: str, vans: VanMentions | None, hint: Unit | None = None) -> tuple[Parsed, int]:
        """Parse a label and what stands with it as one text; give it and where the label ends."""
        text = f"{label}{JOIN}{body}" if label else body
        split = len(label) + 1 if label else 0
        offset = len(label) + len(JOIN) if label else 0
        quantities = self.quantities.find(label) if label else []
        feet = feet_and_inches(body) if label and FEET_AND_INCHES.search(label) else None
        if feet is not None:
            found = [Quantity(feet, feet, "length", "ft-in", 0, len(body), each=feet)]
        else:
            found = self.quantities.find(body, hint if hint is not None else self._hint(label))
        quantities = quantities + [replace(q, start=q.start + offset, end=q.end + offset) for q in found]
        named = vans.find(text) if vans is not None else []
        return parse(text, self.lexicon, quantities, named), split

    def _hint(self, label: str) -> Unit | None:
        return self.units.in_head(label) if label else None


class Kits:
    """Makes and keeps the kits."""

    def __init__(self, book: Rulebook):
        self.book = book
        self.units = Units(book.units)
        self.lexicons: dict[str, Lexicon] = {}
        self.kits: dict[tuple[str, bool], Kit] = {}

    def lexicon(self, language: str) -> Lexicon:
        """Give the lexicon of a language."""
        if language not in self.lexicons:
            self.lexicons[language] = Lexicon(self.book, language)
        return self.lexicons[language]

    def kit(self, language: str, *, imperial: bool) -> Kit:
        """Give the kit of a language for documents with US or imperial gallons."""
        key = (language, imperial)
        if key not in self.kits:
            lexicon = self.lexicon(language)
            words = self.book.words[language]
            quantities = QuantityReader(FigureReader(words), self.units, words.minus, imperial=imperial)
            frames = FrameReader(self.book, lexicon)
            casts = CastReader(self.book, lexicon, quantities)
            self.kits[key] = Kit(language, lexicon, self.units, quantities, frames, casts)
        return self.kits[key]

    def for_document(self, document: Document) -> Kit:
        """Give the kit that fits a document: its language and its gallons."""
        text = whole_text(document)
        language = self.language_of(text, document.language)
        return self.kit(language, imperial=self._is_imperial(text))

    def language_of(self, text: str, declared: str = "") -> str:
        """Give the language whose frequent words a text holds most of; a declared one weighs in."""
        words = re.findall(r"[^\W\d_]+", text.casefold())
        scores = {}
        for language, file in self.book.words.items():
            wanted = set(file.detect)
            scores[language] = sum(word in wanted for word in words) + (
                0.05 * len(words) if language == declared else 0
            )
        best = max(scores, key=lambda name: scores[name])
        return best if scores[best] > 0 else (declared if declared in self.book.words else "en")

    def _is_imperial(self, text: str) -> bool:
        if IMPERIAL.search(text):
            return True
        if US_GALLON.search(text):
            return False
        folded = text.casefold()

        def hits(words: list[str]) -> int:
            return sum(bool(re.search(rf"(?<!\w){re.escape(word)}(?!\w)", folded)) for word in words)

        british, american = hits(self.book.general.british), hits(self.book.general.american)
        return british >= 3 and british > american


def whole_text(document: Document) -> str:
    """Give all text of a document, heads of tables included once."""
    parts: list[str] = []
    seen: set[str] = set()
    for passage in document.passages:
        parts.append(passage.text)
        for head in (passage.row, passage.column):
            if head is not None and head.text not in seen:
                seen.add(head.text)
                parts.append(head.text)
    return "\n".join(parts)
