"""Vans that a sentence counts and names: "We make two vans, the Alder and the Alder Long."."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from specscan.finding.language.whole_words import any_word, count
from specscan.finding.naming.name_forms import SPOKEN_NAME, article
from specscan.finding.naming.place import Place, begins_with
from specscan.records.text import Kind, Passage
from specscan.rulebook.models import WordFile

FIRST_SENTENCES = 10  # passages of running text in which vans may be introduced
MOST = 6  # vans that one sentence names
BETWEEN = r"(?:\s+[\w’'-]+){0,2}\s+"  # "two small vans", "drei unserer Fahrzeuge"
SENTENCE_END = re.compile(r"(?<=[.!?])\s+")


class CountedVans:
    """Finds such vans in documents of one language."""

    def __init__(self, words: WordFile):
        self.numbers = {word: int(number) for word, number in words.numbers.items() if number in range(2, MOST + 1)}
        self.numbers |= {str(number): number for number in range(2, MOST + 1)}
        vans = any_word((*words.vans, *words.model_words, *words.cues["of_them"]))
        name = rf"(?:{article(words.articles_of_names)})?(?:{SPOKEN_NAME})"
        joint = r"(?:\s*,\s*(?:(?:and|et|und)\s+)?|\s+(?:and|et|und|&)\s+)"
        names = rf"(?P<names>{name}(?:{joint}{name})+)"
        counted = rf"(?<!\w)(?i:(?P<count>{any_word(self.numbers)}){BETWEEN}(?:{vans}))"
        self.counted = re.compile(rf"{counted}(?!\w)")
        verbs = any_word(words.predicates)
        self.forms = (
            re.compile(rf"{counted}(?:\s*[,:(]\s*|\s+[–—-]\s+){names}(?=\s*[.,;:)!]|\s+[–—-]\s|$)"),
            re.compile(rf"^{names}\s+(?:{verbs})(?:\s+[\w’'-]+)?\s+{counted}"),
        )
        self.lead = re.compile(article(words.articles_of_names))
        self.joint = re.compile(joint)

    def counts(self, line: str) -> set[int]:
        """Give how many vans or trims a line says that there are: 3 of "The Drift 600 comes in three trims"."""
        return {self.numbers[match["count"].casefold()] for match in self.counted.finditer(line)}

    def read(self, own: Sequence[Passage], can_be_name: Callable[[str], bool]) -> dict[str, Place]:
        """Give the names of as many vans as the first such sentence counts, each used elsewhere too, with its place."""
        prose = [p for p in own if p.table is None and p.kind in (Kind.PROSE, Kind.LINE)][:FIRST_SENTENCES]
        for passage in prose:
            for sentence in SENTENCE_END.split(passage.text):
                for match in (match for form in self.forms if (match := form.search(sentence))):
                    names = [self.lead.sub("", part, 1).strip() for part in self.joint.split(match["names"])]
                    told = len(names) == self.numbers[match["count"].casefold()]
                    if told and self._are_vans(names, sentence, own, can_be_name):
                        return {name: Place(passage, passage.page, name) for name in names}
        return {}

    @staticmethod
    def _are_vans(names: list[str], sentence: str, own: Sequence[Passage], can_be_name: Callable[[str], bool]) -> bool:
        """Tell whether words can be names and are used outside of the sentence that lists them.

        What goes on from a name is one, though it could be a label: "Ahorn Lang" beside "Ahorn".
        """
        texts = [passage.text.replace(sentence, "") for passage in own]
        known = [name for name in names if can_be_name(name)]
        named = all(name in known or any(begins_with(name, one) for one in known) for name in names)
        return named and len(set(names)) == len(names) and all(any(count(t, name) for t in texts) for name in names)
