"""Notes below a table and the signs that refer to them."""

from __future__ import annotations

import re
from collections import defaultdict
from dataclasses import replace

from specscan.finding.drafts import Draft, Reading
from specscan.finding.kit import Kit
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.notes_by_kind import PART, NotesByKind
from specscan.finding.remarks import Remarks
from specscan.finding.things.statement import basis_items
from specscan.records.facts import Fact
from specscan.records.text import Kind, Passage

OFFERED = ("optional", "standard")  # in a note, and in the cell that refers to it


class Footnotes:
    """The notes of one document, by page and sign."""

    def __init__(self, kit: Kit, vans: VanMentions, everyone: frozenset[str], passages: list[Passage]):
        self.kit, self.vans, self.everyone, self.passages = kit, vans, everyone, passages
        self.by_kind = NotesByKind(kit.lexicon, passages)
        self.remarks = Remarks(kit.lexicon, passages)
        self.notes: dict[tuple[int, str], Passage] = {}
        for passage in passages:
            if passage.kind is Kind.FOOTNOTE:
                for sign in passage.notes[:1]:
                    self.notes.setdefault((passage.page, sign), passage)

    def note_of(self, page: int, sign: str) -> Passage | None:
        """Give the note of a sign, on its page or, where that has none, on the next."""
        return self.notes.get((page, sign)) or self.notes.get((page + 1, sign))

    def of(self, draft: Draft) -> str | None:
        """Give what the first sentence of the note that a statement refers to says of its vans, for the basis."""
        for sign in draft.notes:
            passage = self.note_of(draft.passage.page, sign)
            if passage is not None:
                if own := self._own_part(passage.text, draft.scope.vans):
                    return own
                kinds = self.by_kind.parts(passage.text)
                if kinds:  # where no kind fits, all of them: what is meant nobody knows
                    return self.by_kind.part_for(kinds, draft.passage) or " ".join(part.text for part in kinds)
                return self._clause_for(passage.text, draft.scope.vans)
        return self._note_of_others(draft) or self.remarks.of(draft)

    def _note_of_others(self, draft: Draft) -> str | None:
        """Give what a note to other cells of the table says of those without its mark: "others are output"."""
        if draft.passage.table is None:
            return None
        for (page, _), note in self.notes.items():
            if page != draft.passage.page:
                continue
            for part in re.split(r"[;.]", note.text):
                if self.kit.parse("", part, self.vans)[0].cues("unmarked"):
                    return part
        return None

    def _own_part(self, note: str, models: frozenset[str] | None) -> str:
        """Give the part of a note that some vans head and that says a basis: "Furnaces: input. Drift 21: output"."""
        for part in PART.split(note) if models else ():
            head, colon, said = part.partition(":")
            if (
                colon
                and models
                and models <= self.vans.named_in(head)
                and basis_items(list(self.kit.parse("", said, self.vans)[0].items))
            ):
                return part
        return ""

    def _clause_for(self, note: str, models: frozenset[str] | None) -> str:
        """Give the part of a note's first sentence that names the vans, or else its first part.

        "Heat output; Drift 21: gas input" says input of the Drift 21 and output of the others.
        """
        parts = re.split(r";", re.split(r"(?<=[.!?])\s", note)[0])
        for part in parts[1:]:
            if models and models <= self.vans.named_in(part):
                return part
        return parts[0]

    def applied(self, facts: list[Fact], readings: list[Reading]) -> list[Fact]:
        """Let a note that names a van go before the statement that it belongs to.

        "9 ft 7 in¹" with "¹ Summit 10 ft 2 in" holds for all but the Summit; "200 W⁵" with "⁵ Traverse;
        on Summit 400 W" for the Traverse only.
        """
        users: dict[int, set[int]] = defaultdict(set)
        for reading in readings:
            for sign in reading.draft.notes:
                note = self.note_of(reading.draft.passage.page, sign)
                if note is not None and note.number != reading.draft.passage.number:
                    users[note.number].add(reading.draft.passage.number)
        result = list(facts)
        for number, passages in users.items():
            note = next(p for p in self.passages if p.number == number)
            own = [f for f in facts if f.passage == number and not f.rejected]
            only = self._only(note.text)
            noted = [f for f in facts if f.passage in passages]
            if any(f.model in (only or ()) and self._differs(f, one) for f in own for one in noted):
                only = None  # "Ridge, with its rack: 9 ft 10 in" is another figure of what it belongs to
            barred = self._barred(note.text)
            adds = bool(self.kit.parse("", note.text, self.vans)[0].cues("also"))
            instead = self.kit.instead.told(note.text, self.vans)
            for index, fact in enumerate(result):
                place = note.text.find(fact.printed) if fact.passage == number and fact.printed else -1
                before = 0 <= place < instead.get(fact.model, 0)
                if fact.rejected or not (fact.passage in passages or before):
                    continue
                if fact.model in barred and fact.availability == "optional":
                    result[index] = replace(fact, availability="not_available")
                    continue
                if adds and self.kit.lexicon.book.fields[fact.field].union:
                    continue  # "Drift: floor and doors as well"
                # "Ridge instead: a diesel heater": no word of the furnace holds for it
                restricted = only is not None and fact.model not in only
                if fact.model in instead or restricted or self._is_corrected(fact, own):
                    result[index] = replace(fact, rejected="a footnote says otherwise for this van")
        return result

    def _is_corrected(self, fact: Fact, noted: list[Fact]) -> bool:
        """Tell whether what a note says of some vans, or of each its own, takes the place of a fact."""
        told = [f for f in noted if f.field == fact.field]
        some = {f.model for f in told} != self.everyone
        again = any(f.value == fact.value for f in told)  # "Drift 19 23 gal; on the Drift 21 20 gal"
        return (some or again) and any(self._says_otherwise(f, fact) for f in told)

    @staticmethod
    def _says_otherwise(noted: Fact, fact: Fact) -> bool:
        """Tell whether what a note says takes the place of a fact: "200 W as an option" leaves the 100 W fitted."""
        same = noted.field == fact.field and noted.model == fact.model
        return same and noted.value != fact.value and (noted.availability, fact.availability) != OFFERED

    @staticmethod
    def _differs(noted: Fact, fact: Fact) -> bool:
        """Tell whether a note gives a van a value of its own: "Polar, on its taller tires, 9 ft 11 in"."""
        return noted.field == fact.field and noted.value != fact.value

    def _barred(self, text: str) -> frozenset[str]:
        """Give the vans for which a note says that what it belongs to cannot be had."""
        found: set[str] = set()
        for part in re.split(r"[;.]", text):
            if self.kit.parse("", part, self.vans)[0].cues("not_available"):
                found.update(van for _, _, vans in self.vans.find(part) for van in vans)
        return frozenset(found)

    def _only(self, text: str) -> frozenset[str] | None:
        """Give the vans to which a note's first words restrict what they belong to."""
        if self.vans.single:
            return None
        first = re.split(r"[;,.]", text)[0]
        return self.vans.whole(first)
