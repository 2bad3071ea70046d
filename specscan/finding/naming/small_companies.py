"""Companies that write themselves in small letters: "marrowfen ltd · quay road 12", "marrowfen" above all else."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.addresses import BETWEEN, LAST_LINES
from specscan.finding.naming.place import begins_with
from specscan.records.text import Kind, Passage

FIRST_LINES = 2  # one of which is the company's name
NAME = re.compile(r"[^\W\d_]{4,}")


class SmallCompanies:
    """Finds them in documents of one language."""

    def __init__(self, lexicon: Lexicon, legal_forms: Iterable[str]):
        words = lexicon.words
        form = any_word({one.casefold() for one in legal_forms})
        self.lexicon = lexicon
        self.formed = re.compile(rf"([^\W\d_][\w’'-]*(?: [^\W\d_][\w’'-]*)?),? (?:{form})(?={BETWEEN}|$)")
        self.vans = rf"(?i:{any_word((*words.vans, *words.model_words))})"
        self.by = rf"(?:(?:{any_word(words.made_by)}) )?"

    def read(self, own: Sequence[Passage]) -> tuple[str, Passage] | None:
        """Give such a company, and where a line begins with it."""
        return self._with_form(own) or self._at_the_top(own)

    def _with_form(self, own: Sequence[Passage]) -> tuple[str, Passage] | None:
        """Give the one that stands before its legal form in one of the last lines, and opens another line."""
        for passage in own[-LAST_LINES:]:
            match = self.formed.match(passage.text)
            if match is not None and match.group(1).islower():
                others = (one for one in own if one is not passage and one.table is None)
                again = next((one for one in others if begins_with(one.text.strip(" ."), match.group(1))), None)
                return (match.group(1), again) if again is not None else None
        return None

    def _at_the_top(self, own: Sequence[Passage]) -> tuple[str, Passage] | None:
        """Give the word of its own that opens the document alone, where a text calls the vans by it: "marrowfen vans".

        What vans go on from is their range: "drift" above "drift one".
        """
        for passage in own[:FIRST_LINES]:
            name = passage.text.strip(" .")
            if passage.table is not None or not NAME.fullmatch(name) or not name.islower():
                continue
            heads = {head.text for one in own for head in (one.row, one.column) if head is not None}
            heads |= {one.text for one in own if one.kind is Kind.HEADING and one is not passage}
            said = re.compile(rf"(?<!\w)(?:{name}[ -]{self.vans}|{self.vans} {self.by}{name})(?!\w)")
            called = any(said.search(one.text) for one in own if one.table is None and one.kind is not Kind.HEADING)
            if called and self.lexicon.knows_none(name) and not any(begins_with(head, name) for head in heads):
                return name, passage
        return None
