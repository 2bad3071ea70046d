"""Ranges that a line names beside the model year, above vans that are called by mere codes: "Drift 2026 · data sheet".

So do page titles, "22RB | 2026 Drift | Marrowfen", and lines such as "Drift | Model year 2026". The way to a page of a
web site names the range before its last step: "Home > Campers > Drift > 22RB".
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_of, holds
from specscan.finding.naming.place import PARTED
from specscan.finding.naming.years import YEAR
from specscan.records.text import Document, Kind, Passage

FIRST = 4  # lines that can head a document
LONGEST = 80  # letters of such a line
STEP = re.compile(r"\s+[>›»/]\s+")
LEAST_STEPS = 3


class DatedRanges:
    """Finds such ranges in documents of one language."""

    def __init__(self, lexicon: Lexicon, clean: Callable[[str, str], str], can_name_range: Callable[[str, str], bool]):
        words = lexicon.words
        self.lexicon, self.clean, self.can_name_range = lexicon, clean, can_name_range
        self.model_year = any_of(words.model_year, whole=True)
        self.other_year = any_of(words.not_model_year, whole=False)
        self.others = {word.casefold() for word in (*words.seasons, *words.vehicle_classes)}

    def read(self, document: Document, own: Sequence[Passage], maker: str) -> str:
        """Give the one name that lines set beside the model year, an empty text where there is none or another.

        Who makes the vans must be known, for it stands beside the year as well. That the name is no town or fair says
        the word for the model year, one for the kind of paper in the line, or that two lines say it in the same way.
        """
        lines = _lines(document, own) if maker else []
        found = {name for text in lines for name in self._beside_year(text, maker, lines)}
        return found.pop() if len(found) == 1 else ""

    def _beside_year(self, text: str, maker: str, lines: Sequence[str]) -> set[str]:
        parts = _parts(text)
        dated = [part for part in parts if YEAR.search(part)]
        if not dated or self.other_year.search(text.casefold()):
            return set()
        said = any(self.model_year.search(part.casefold()) for part in dated)
        papers = any(part and not self.clean(part, "") for part in parts if part not in dated)
        found = set()
        for part in parts:
            name = self.clean(part, maker)
            year = YEAR.search(part)
            beside = year is not None and part in (f"{name} {year.group()}", f"{year.group()} {name}")
            again = sum(part in _parts(line) for line in lines) > 1
            if (beside and (said or papers or again)) or (year is None and said and all(map(self._only_year, dated))):
                found |= {name} if self._can_be(name, maker) else set()
        return found

    def _only_year(self, part: str) -> bool:
        """Tell whether a part of a line says nothing but the model year."""
        return self.model_year.search(part.casefold()) is not None and not self.clean(part, "")

    def _can_be(self, name: str, maker: str) -> bool:
        plain = self.can_name_range(name, maker) and self.lexicon.knows_none(name)
        return plain and self.others.isdisjoint((name.casefold(), *name.casefold().split()))

    def on_way(self, document: Document, own: Sequence[Passage], maker: str, code: str) -> str:
        """Give the range that the way to a page names before its last step, a code; the page names it elsewhere too."""
        for passage in own[:FIRST] if maker else ():
            steps = [step.strip() for step in STEP.split(passage.text)]
            name = self.clean(steps[-2], maker) if len(steps) >= LEAST_STEPS and steps[-1] == code else ""
            texts = [p.text for p in own if p is not passage] + [t.text for t in document.titles if t.origin == "html"]
            if self._can_be(name, maker) and any(holds(text, name) for text in texts):
                return name
        return ""


def _parts(text: str) -> list[str]:
    return [part.strip() for whole in PARTED.split(text) for part in STEP.split(whole)]


def _lines(document: Document, own: Sequence[Passage]) -> list[str]:
    """Give the short lines that head a document, and the titles of its file."""
    kinds = (Kind.HEADING, Kind.PROSE, Kind.LINE)
    lines = [p.text for p in own[:FIRST] if p.table is None and p.kind in kinds and len(p.text) <= LONGEST]
    return [*lines, *(title.text for title in document.titles if title.origin in ("html", "metadata"))]
