"""Answers printed in two languages, one after the other: "nein / no", "oui / yes"."""

from __future__ import annotations

import re
from collections.abc import Mapping

from specscan.rulebook.models import WordFile

SENSES = (("yes", "standard"), ("no", "none", "not_fitted", "not_available"), ("optional",))
PART = re.compile(r"\s*[/|·]\s*")
TAIL = re.compile(r"\s*[,;:(.].*")  # what goes on behind the answer: "none, gas-free"


class AnswersTwice:
    """Finds such answers in documents of one language."""

    def __init__(self, words: Mapping[str, WordFile], language: str):
        self.own = _senses([words[language]])
        self.other = _senses([file for name, file in words.items() if name != language])

    def begin(self, body: str) -> int:
        """Give where the answer in the document's language begins, behind the same one in another, else 0."""
        joints = list(PART.finditer(body))
        starts, ends = [0, *(j.end() for j in joints)], [*(j.start() for j in joints), len(body)]
        said: set[int] | None = None
        for start, end in zip(starts, ends, strict=True) if joints else ():
            answer = TAIL.sub("", body[start:end]).strip().casefold()
            if answer in self.own:
                return start if said is None or said & self.own[answer] else 0
            if answer not in self.other:
                return 0
            said = self.other[answer] if said is None else said & self.other[answer]
        return 0


def _senses(files: list[WordFile]) -> dict[str, set[int]]:
    found: dict[str, set[int]] = {}
    for file in files:
        for sense, cues in enumerate(SENSES):
            for word in (word for cue in cues for word in file.cues.get(cue, [])):
                found.setdefault(word.casefold(), set()).add(sense)
    return found
