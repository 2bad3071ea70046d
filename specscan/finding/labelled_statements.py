"""A label and what stands with it → statements: each part, option and van of them its own."""

from __future__ import annotations

import re

from specscan.finding.answers_twice import AnswersTwice
from specscan.finding.clauses_by_van import clauses_by_van
from specscan.finding.drafts import Draft
from specscan.finding.kit import Kit
from specscan.finding.label_parts import LabelParts
from specscan.finding.labels_by_van import LabelsByVan
from specscan.finding.language.units import Unit
from specscan.finding.marked_cells import MarkedCells
from specscan.finding.marks.codes import read_keys
from specscan.finding.marks.glossary import Glossary
from specscan.finding.marks.legend import Legend
from specscan.finding.marks.scope import Scope
from specscan.finding.marks.signs import (
    spelled,
)
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.offered_to import offered_to
from specscan.finding.openings import SHORT_NAMES, Openings
from specscan.finding.option_codes import OptionCodes
from specscan.finding.things.found import Availability, How
from specscan.finding.toilet_tanks import ToiletTanks
from specscan.finding.two_lists import without_second
from specscan.finding.two_units import TwoUnits
from specscan.finding.wall_labels import WallLabels
from specscan.finding.waste_labels import WasteLabels
from specscan.records.text import Passage

LONGEST_FIGURE = 16  # letters, with the unit
CODE_ALONE = re.compile(r"[A-Z]{1,3}[-.]?\d{0,3}")


class LabelledStatements:
    """Makes the statements of labels and values of one document; ``passages`` are all of it."""

    def __init__(self, kit: Kit, vans: VanMentions, legend: Legend, passages: list[Passage]):
        self.kit = kit
        self.vans = vans
        self.legend = legend
        self.passages = passages
        self.keys = read_keys(passages, kit.lexicon)
        self.glossary = Glossary(passages, kit.lexicon)
        self.codes = OptionCodes(passages, vans)
        self.openings = Openings(kit.lexicon, vans, kit.absent, kit.instead)
        self.label_parts = LabelParts(kit)
        self.toilets = ToiletTanks(kit, passages)
        self.waste = WasteLabels(kit, passages, self.toilets)
        self.walls = WallLabels(kit)
        self.by_van = LabelsByVan(kit, vans, self.label_parts)
        self.twice = AnswersTwice(kit.lexicon.book.words, kit.language)
        self.two_units = TwoUnits(kit.units, kit.quantities.figures)
        self.marked = MarkedCells(kit, vans, legend, passages)

    def _labelled(
        self,
        passage: Passage,
        label: str,
        body: str,
        at: int,
        label_from: str,
        scope: Scope,
        notes: tuple[str, ...],
        hint: Unit | None = None,
        how: How = How.CELL,
    ) -> list[Draft]:
        owned = self.by_van.parts(label, body) if scope.vans is None else []
        clauses = []
        if not owned and scope.vans is None and how is How.PAIR:
            owned = clauses = clauses_by_van(label, body, self.vans, self.kit.lexicon)
        if owned:
            hint = hint or self._last_unit(body)
            drafts = []
            for part in owned:
                own = Scope(part.vans, scope.availability, dict(scope.by_van))
                for draft in self._labelled(
                    passage, part.label, part.body, at + part.start, label_from, own, notes, hint, how
                ):
                    draft.label_shown = draft.label_shown or label
                    draft.shown = draft.shown or (body if clauses else "")
                    drafts.append(draft)
            return drafts
        if scope.vans is None and (told := offered_to(body, self.kit.lexicon, self.vans)) is not None:
            scope = Scope(told.vans, told.availability)
        absent = self.kit.absent.drafts(passage, label, body, at, scope, notes)
        if absent:
            return absent
        begin = self.twice.begin(body)
        body, at = body[begin:], at + begin
        printed = label, body
        if self._is_figure(label) and not self._is_figure(body) and self.kit.lexicon.knows_label(body):
            label, body = body, label  # tiles of a page: "38 gal" over "fresh water"
        label = self.toilets.of_own(passage, self.walls.of(self.glossary.in_label(label), body), body)
        label, body = self.label_parts.told_behind(self.waste.of_both(label), body)
        label, body = self.label_parts.slashed(label, body)
        label_shown, shown = printed if (label, body) != printed else ("", "")
        label = self.label_parts.with_additions(label)
        label, body = self.two_units.first(label, without_second(body, self.kit.quantities))
        absence = self.legend.absence(body)
        if absence:
            return [Draft(passage, label, absence, how, scope, at, label_from, hint, notes)]
        if not any(c.isalnum() for c in body) and self.marked.meaning(passage, body) is None:
            return []  # a dash that no legend explains is no statement
        marked = self.marked.draft(passage, label, body, at, label_from, scope, notes)
        if marked is not None:
            return marked
        if body.strip().casefold() in self.marked.inapplicable:
            return []  # "Inverter, 2,000 W: n/a"
        whose = None if self.vans.single or len(body) > SHORT_NAMES else self.openings.vans_headed(body.strip(" ."))
        if whose is not None and how is How.PAIR:  # "Bypass: both", "Floor heating: 24 MB only"
            answer = self.kit.lexicon.words.cues["yes"][0]
            scope = Scope(whose, scope.availability, dict(scope.by_van))
            return [Draft(passage, label, answer, how, scope, at, label_from, None, notes, shown=body)]
        said, option = self.codes.meaning(body)
        if option:
            own = Scope(scope.vans, Availability.OPTIONAL)
            pointing = [
                Draft(passage, "", label, How.MARKED, own, at, label_from, None, notes),
                Draft(passage, label, option, how, own, at, label_from, None, notes, shown=body),
            ]
            rest = self._labelled(passage, label, said, at, label_from, scope, notes, hint, how) if said else []
            return rest + pointing[bool(rest) :]
        words = self.keys.meaning(label, body, passage.page)
        if words:
            return [Draft(passage, label, words, how, scope, at, label_from, None, notes, shown=body)]
        parts = self.label_parts.zipped(label, body)
        words = spelled(body, self.legend, self.kit.lexicon)
        words = words or ("" if parts else self.glossary.spelled(body))  # else each part is spelled on its own
        if words:
            return [Draft(passage, label, words, how, scope, at, label_from, hint, notes, shown=body)]
        if CODE_ALONE.fullmatch(body.strip()) and self._is_unexplained(label, body):
            return []  # "W1", "A": what an unexplained code says of the thing nobody knows
        if offered := self.label_parts.offered(label, body):
            offers = zip((Availability.STANDARD, Availability.OPTIONAL), offered, strict=True)
            scopes = [(Scope(scope.vans, offer), part) for offer, part in offers]
            return [
                draft
                for own, (part_label, part, start) in scopes
                for draft in self._labelled(passage, part_label, part, at + start, label_from, own, notes, hint, how)
            ]
        if parts is not None:
            hint = hint or self._last_unit(body)
            return [
                draft
                for part_label, part, start in parts
                for draft in self._labelled(passage, part_label, part, at + start, label_from, scope, notes, hint, how)
            ]
        return [
            Draft(passage, label, body, how, scope, at, label_from, hint, notes, shown=shown, label_shown=label_shown)
        ]

    def _is_unexplained(self, label: str, code: str) -> bool:
        """Tell whether a code means nothing that the rules know, and its label asks for no name or grade."""
        known = any(m.concept.kind not in ("aspect", "short") for m in self.kit.lexicon.analyse(code).mentions)
        if known or any(not q.bare for q in self.kit.quantities.find(code)):
            return False
        book = self.kit.lexicon.book
        asked = {m.concept.name for m in self.kit.lexicon.analyse(label).mentions if m.concept.kind == "thing"}
        specs = [book.fields[name] for thing in asked for name in book.fields_of(thing)]
        return not any(spec.text == "name" or spec.number == "grade" for spec in specs)

    def _is_figure(self, text: str) -> bool:
        """Tell whether a text is one figure, with its unit or without, and no more."""
        if len(text) > LONGEST_FIGURE or not any(map(str.isdigit, text)):
            return False
        found = self.kit.quantities.find(text)
        return len(found) == 1 and not (text[: found[0].start] + text[found[0].end :]).strip(" -–−")

    def _last_unit(self, body: str) -> Unit | None:
        """Give the unit behind the last of several figures, which holds for all: "80 / none / 55 L"."""
        quantities = self.kit.quantities.find(body)
        return self.kit.units.named(quantities[-1].printed_unit) if quantities and not quantities[-1].bare else None
