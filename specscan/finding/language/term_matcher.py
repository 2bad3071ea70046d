"""Some folded words → which terms stand in them, by one spaCy phrase matcher for all terms of a language."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

import spacy
from spacy.matcher import PhraseMatcher
from spacy.tokens import Doc

Norms = tuple[str, ...]


class TermMatcher:
    """The terms of one language, of both sides of the ocean: filling a matcher takes longer than reading ten pages.

    Who holds with some of them only leaves out the others of what is found.
    """

    def __init__(self) -> None:
        # Words are ours already (see fold), so the pipeline without a language serves; others load slow tokenizers.
        self.vocab = spacy.blank("xx").vocab
        # nobody asks for shapes and prefixes of words, and they cost half of all filling
        self.vocab.lex_attr_getters = {}  # type: ignore[attr-defined]
        self.matcher = PhraseMatcher(self.vocab, attr="ORTH")
        self.terms: dict[int, Norms] = {}  # by the number that the matcher gives for a match
        self.known: set[Norms] = set()

    def add(self, terms: Iterable[Norms]) -> None:
        """Take in terms, each as its folded words; those that are known already cost nothing."""
        for norms in terms:
            if norms not in self.known:
                key = str(len(self.known))
                self.matcher.add(key, [Doc(self.vocab, words=list(norms))])
                self.terms[self.vocab.strings[key]] = norms
                self.known.add(norms)

    def find(self, words: Norms) -> Iterator[tuple[Norms, int, int]]:
        """Give each term that stands in some folded words, with the numbers of its first word and the one behind it."""
        if len(words) == 1:  # half of what is asked
            if words in self.known:
                yield words, 0, 1
            return
        for number, first, last in self.matcher(Doc(self.vocab, words=list(words))):
            yield self.terms[number], first, last
