"""Sister vans set against each other in one sentence: "The 19 has a heated tank, the 21 has one that is insulated"."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.mentions import Mention
from specscan.finding.language.whole_words import any_word

MEANING = frozenset({"value", "term", "denied", "word", "thing", "short", "alone"})  # kinds of words that say something
WORD_BEHIND = re.compile(r"\s+([^\W\d_]+)")
SENTENCE = re.compile(r"[.!?]\s+")
BEHIND_SIGN = re.compile(r";\s+(?:[\w’']+\s+){0,2}[\w’']*\Z")  # before a van: "; both", "; l’"
Place = tuple[int, int, frozenset[str]]


@dataclass(slots=True)
class _Subject:
    """One van or several ("the 19 and the 21"): where the words begin and end, and whether they open a sentence."""

    start: int
    end: int
    opens: bool


class SisterSentences:
    """Parts sentences in which each of several vans is the subject of words of its own."""

    def __init__(self, lexicon: Lexicon):
        cues = lexicon.words.cues
        joints = any_word([*filter(str.isalpha, cues.get("coordination", [])), *cues.get("contrast", [])])
        definite = any_word(cues.get("definite", []))
        self.behind = set(cues.get("before_number", []))
        self.speaker = re.compile(rf"(?:{any_word(cues.get('speaker', []))})\s+[^\W\d_]+\s+", re.IGNORECASE)
        self.lead = re.compile(
            rf"(\A\s*|[.!?]\s+|[,;]\s*|\s)((?:(?:{joints})\s+)*)((?:(?:{definite})\s+)?)\Z", re.IGNORECASE
        )
        self.pronoun = re.compile(rf"(?:{any_word(cues.get('refers_back', []))})(?!\w)", re.IGNORECASE)
        self.behind_comma = re.compile(rf",\s+(?:(?:{joints})\s+)?(?:{definite})\s+\Z", re.IGNORECASE)  # before a van
        self.joint = re.compile(rf"\s*(?:,\s*)?(?:(?:{joints}|&)\s+)?(?:(?:{definite})\s+)?", re.IGNORECASE)

    def begin(self, text: str, named: Sequence[Place], mentions: Iterable[Mention]) -> set[int]:
        """Give the places at which the part of another van begins; none where one part tells nothing of its own.

        ``named`` are the places at which the text names vans, ``mentions`` what else it speaks of.
        """
        told = [m.start for m in mentions if m.concept.kind in MEANING]
        found = self._behind_pronoun(text, named, told) if ";" in text or "," in text else set()
        chain: list[_Subject] = []
        for subject in [*self._subjects(text, named), None]:
            if subject is None or subject.opens:
                if len(chain) > 1 and self._each_tells(text, chain, subject.start if subject else len(text), told):
                    found.update(one.start for one in chain[1:])
                chain = []
            if subject is not None and (subject.opens or chain):
                chain.append(subject)
        return found

    def _behind_pronoun(self, text: str, named: Sequence[Place], told: list[int]) -> set[int]:
        """Give the signs that end what a pronoun tells of the van before: "It has Grade 3; the 19 has Grade 2".

        Behind a comma an article stands right before the van: "It meets Grade 3, the 19 Grade 2".
        """
        found: set[int] = set()
        for start, end, _ in named:
            sign = BEHIND_SIGN.search(text, 0, start) or self.behind_comma.search(text, 0, start)
            begin = max((match.end() for match in SENTENCE.finditer(text, 0, start)), default=0)
            if sign is None or sign.start() < begin or self.pronoun.match(text, begin) is None:
                continue
            own = any(begin <= place < sign.start() for place in told) and any(end <= place for place in told)
            if own and not any(begin <= other < sign.start() for other, _, _ in named):
                found.add(sign.start())
        return found

    def _subjects(self, text: str, named: Sequence[Place]) -> list[_Subject]:
        found: list[_Subject] = []
        last = 0
        for start, end, _ in named:
            if last and self.joint.fullmatch(text, last, start):
                if found and found[-1].end == last:
                    found[-1].end = end  # "the 19 and the 21"
                last = end
                continue
            last = end
            match = self.lead.search(text, 0, start)
            if match is None:
                continue
            sign = match.group(1).strip()
            opens = not sign and match.start() == 0 and not text[: match.start(2)].strip() or sign in (".", "!", "?")
            opens = opens or not sign and self._is_spoken_of(text, match.start(3))
            if opens or sign or match.group(2):
                found.append(_Subject(match.start(3), end, bool(opens)))
        return found

    def _is_spoken_of(self, text: str, start: int) -> bool:
        """Tell whether nothing but the speaker and what he does stands ahead in the sentence: "We call the 19 …"."""
        begin = max((match.end() for match in SENTENCE.finditer(text, 0, start)), default=0)
        return self.speaker.fullmatch(text, begin, start) is not None

    def _each_tells(self, text: str, chain: list[_Subject], end: int, told: list[int]) -> bool:
        """Tell whether words of its own follow each subject at once, and say something."""
        for one, stop in zip(chain, [*(other.start for other in chain[1:]), end], strict=True):
            word = WORD_BEHIND.match(text, one.end)
            if word is None or word.group(1) in self.behind or not any(one.end <= place < stop for place in told):
                return False
        return True
