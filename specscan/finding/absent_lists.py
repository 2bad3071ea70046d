"""Things that a van does not have, listed behind a word that says so: "Pas de : plancher chauffant, store"."""

from __future__ import annotations

import re
from dataclasses import replace

from specscan.finding.drafts import Draft
from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word
from specscan.finding.marks.scope import Scope
from specscan.finding.things.found import Availability, How
from specscan.records.text import Passage

LEAD = 4  # words before it, at most: "What this van" does not have
ITEM_WORDS = 6  # of a thing that is named, and neither told of nor explained
REFUSED_WORDS = 10  # likewise, of one that a maker is said not to offer


class AbsentLists:
    """Reads such lists of documents of one language."""

    def __init__(self, lexicon: Lexicon):
        self.lexicon = lexicon
        self._verbs = frozenset(lexicon.words.predicates)
        cues = lexicon.words.cues
        absent = any_word(lexicon.words.sign_absent)
        self._heading = re.compile(rf"(?:[\w’']+ ){{0,{LEAD}}}(?:{absent})\W*", re.IGNORECASE)
        refused = any_word(lexicon.words.does_not_offer)
        self._refusal = re.compile(rf"(?:[\w’'-]+ ){{1,{LEAD}}}(?:{refused})\W*", re.IGNORECASE)
        self._denial = re.compile(any_word(cues.get("denies_thing", [])), re.IGNORECASE)
        joints = [word for word in (*cues.get("coordination", []), *cues.get("or_joint", [])) if word.isalpha()]
        self._joint = re.compile(rf"\s*[,;/·•]\s*(?:(?:{any_word(joints)})\s+)?|\s+(?:{any_word(joints)})\s+", re.I)

    def are_below(self, heading: str) -> bool:
        """Tell whether a heading says of the things below it that they are not there."""
        return self._heading.fullmatch(heading) is not None

    def opens(self, head: str, body: str) -> bool:
        """Tell whether a text is such a head, "Without", with the things that it denies behind it."""
        return bool(self._denied(head.strip(" ."), body))

    def _denied(self, head: str, body: str) -> list[tuple[int, int]]:
        """Give the places of the things that a head denies or refuses, none where it does neither."""
        if self._refuses(head):
            return self._things(body, REFUSED_WORDS)
        return self._things(body) if self._denies(head) else []

    def _refuses(self, head: str) -> bool:
        """Tell whether a head says that a maker does not offer what is listed behind it."""
        return self._refusal.fullmatch(head) is not None

    def _denies(self, head: str) -> bool:
        if self.lexicon.names_thing(head):
            return False  # "Inverter: not fitted" has its answer behind it
        if self.are_below(head) or self._denial.fullmatch(head):
            return True
        analysis = self.lexicon.analyse(head)
        return any(m.last - m.first == len(analysis.tokens) for m in self.lexicon.cues(analysis, "not_fitted"))

    def drafts(
        self, passage: Passage, head: str, body: str, at: int, scope: Scope, notes: tuple[str, ...]
    ) -> list[Draft]:
        """Give a statement for each thing of such a list behind its head."""
        plain = head.strip(" .")
        refused = self._refuses(plain)
        own = Scope(scope.vans, Availability.NOT_AVAILABLE) if refused else scope
        shown = f"{head}: {body}"
        return [
            Draft(passage, "", body[a:b], How.LIST, own, at + a, "", None, notes, not_fitted=not refused, shown=shown)
            for a, b in self._denied(plain, body)
        ]

    def parted(self, draft: Draft) -> list[Draft]:
        """Give a statement for each thing of an item that lists several, under a heading that says they are absent."""
        spans = [] if draft.label or draft.how is not How.LIST else self._things(draft.body)
        if len(spans) < 2:
            return [draft]
        parts = [(draft.body[a:b], draft.body_at + a) for a, b in spans]
        return [replace(draft, body=text, body_at=at, shown=draft.body) for text, at in parts]

    def _things(self, body: str, most: int = ITEM_WORDS) -> list[tuple[int, int]]:
        """Give the places of the things of a list, none where they are told of in sentences."""
        spans: list[tuple[int, int]] = []
        start = 0
        for match in (*self._joint.finditer(body), None):
            end = len(body.rstrip(" .")) if match is None else match.start()
            words = body[start:end].casefold().split()
            if not 0 < len(words) <= most or not self._verbs.isdisjoint(words):
                return []
            spans.append((start, end))
            start = end if match is None else match.end()
        return spans
