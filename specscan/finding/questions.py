"""Questions and their answers: "Is there a black tank? No.", "And the windows? Acrylic, double." """

from __future__ import annotations

import re
from dataclasses import dataclass

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word
from specscan.finding.openings import Openings

PROPER = ("thing", "alone", "short")
ANSWERS = ("yes", "no", "none")


@dataclass(frozen=True, slots=True)
class Answer:
    """Characters ``start`` to ``end`` of a text that answer a question.

    With a ``label`` they answer it as a value does, without one they are a line of a list, or running text if
    ``spoken``, in which a pronoun may mean what the question asks about.
    """

    start: int
    end: int
    label: str = ""
    spoken: bool = False


class Questions:
    """Reads answers, for documents of one language."""

    def __init__(self, lexicon: Lexicon, openings: Openings):
        self.lexicon, self.openings = lexicon, openings
        words = lexicon.words
        cues = (*words.cues.get("verbs", []), *words.cues.get("carries", []), *words.helping_verbs)
        self.verbs = {word.casefold() for word in (*words.predicates, *words.pronouns, *cues) if " " not in word}
        self.asking = re.compile(rf"(?<!\w)(?:{any_word(words.question_words)})(?!\w)", re.IGNORECASE)

    def answers(self, question: str, text: str) -> list[Answer]:
        """Give the parts of a text that answers a question; nothing where no part of it does so as a value would."""
        spans = self.openings.sentences(text)
        if not spans:
            return []
        found: list[Answer] = []
        start, end = spans[0]
        if self._is_yes_or_no(text[start:end]) and not self.openings.vans.find(text[start:end]):
            label = self._asked(question)
            if label:
                found.append(Answer(start, end, label))
            spans = spans[1:]
        else:
            named = self._names(question)
            while spans and self._is_fragment(text[spans[0][0] : spans[0][1]]):
                start, end = spans.pop(0)
                own = self._names(text[start:end])
                found.append(Answer(start, end, question if named and not own else ""))
        if spans and (found or self._names(question)):
            found.append(Answer(spans[0][0], spans[-1][1], spoken=True))
        return found

    def _is_yes_or_no(self, sentence: str) -> bool:
        mentions = self.lexicon.cues(self.lexicon.analyse(sentence), *ANSWERS)
        first = [m for m in mentions if m.first == 0]
        return bool(first) and re.match(r"\s*[.,:;!]|\s*$", sentence[max(m.end for m in first) :]) is not None

    def _asked(self, question: str) -> str:
        """Give what a yes or no is said of: the question without the words that ask, where the rest is known."""
        label = re.sub(r"\s+", " ", self.asking.sub(" ", question.rstrip(" ?"))).strip(" ,")
        told = any(m.concept.kind in (*PROPER, "value") for m in self.lexicon.analyse(label).mentions)
        return label if label and told and self.lexicon.knows_all(label) else ""

    def _names(self, text: str) -> bool:
        return any(m.concept.kind in PROPER for m in self.lexicon.analyse(text).mentions)

    def _is_fragment(self, sentence: str) -> bool:
        """Tell whether a sentence has no verb, as far as its words are known; one that names vans sets the subject."""
        if self.openings.vans.find(sentence):
            return False
        return not any(word.casefold() in self.verbs for word in re.findall(r"[^\W\d_]+", sentence))
