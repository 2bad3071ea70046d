"""Questions and their answers: "Is there a black tank? No.", "And the windows? Acrylic, double." """

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.quantities import QuantityReader
from specscan.finding.language.whole_words import any_word
from specscan.finding.marks.legend import AVAILABILITIES
from specscan.finding.naming.van_mentions import Named
from specscan.finding.openings import Openings

PROPER = ("thing", "alone", "short")
CALLED = re.compile(r"\b[A-ZÀ-Þ][^\W\d_]+\s+\Z")  # before the figure of a base vehicle's name
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

    def __init__(self, lexicon: Lexicon, openings: Openings, quantities: QuantityReader):
        self.lexicon, self.openings, self.quantities = lexicon, openings, quantities
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
        elif (offer := self._offer(text[start:end])) and (label := self._asked(question)):
            found.append(Answer(start + offer, end, label))
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

    def _offer(self, sentence: str) -> int:
        """Give where a sentence that says no more tells how something is to be had: "It is standard in the 22".

        Nothing (0) is given for others.
        """
        analysis = self.lexicon.analyse(sentence)
        told = any(m.concept.kind in (*PROPER, "value", "aspect") for m in analysis.mentions)
        opens = any(m.first == 0 for m in self.lexicon.cues(analysis, "pronoun"))
        if told or not opens or any(not figure.bare for figure in self.quantities.find(sentence)):
            return 0
        return min((cue.start for cue in self.lexicon.cues(analysis, *AVAILABILITIES)), default=0)

    def _tells_each(self, sentence: str, vans: Named) -> bool:
        """Tell whether a sentence has a figure for each of its vans, all before or all behind them: "two in the 20"."""
        figures = [figure.start for figure in self.quantities.find(sentence)]
        figures = [
            at for at in figures
            if not any(start <= at < end for start, end, _ in vans) and not CALLED.search(sentence[:at])
        ]  # fmt: skip
        turns = sorted([*((start, True) for start, _, _ in vans), *((at, False) for at in figures)])
        return len(figures) == len(vans) and all(one[1] != two[1] for one, two in itertools.pairwise(turns))

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
        """Tell whether a sentence has no verb, as far as its words are known.

        One that names vans sets the subject, but "4 gallons in the 20, 6 gallons in the 22" answers for each.
        """
        vans = self.openings.vans.find(sentence)
        if vans and not self._tells_each(sentence, vans):
            return False
        return not any(word.casefold() in self.verbs for word in re.findall(r"[^\W\d_]+", sentence))
