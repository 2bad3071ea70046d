"""The passages of a document whose vans are known → facts."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from specscan.finding.all_of_them import held_to_own, is_of_all
from specscan.finding.drafts import Draft, Reading, SectionSense
from specscan.finding.fields.preference import BESIDE_GREATER
from specscan.finding.footnotes import Footnotes
from specscan.finding.in_turn import InTurn
from specscan.finding.kit import Kit
from specscan.finding.marks.legend import AVAILABILITIES
from specscan.finding.marks.whose import OF_ONE, one_of_several, settle_scope
from specscan.finding.naming.cast import Cast
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.own_sections import vans_of_sections
from specscan.finding.past import OF_THE_PAST, Past
from specscan.finding.recording import Recorder
from specscan.finding.rows_above import RowsAbove
from specscan.finding.sayings import is_sentence
from specscan.finding.side_by_side import metric_first
from specscan.finding.statement_reader import StatementReader
from specscan.finding.statements import StatementMaker
from specscan.finding.strangers import OF_ANOTHER, Strangers
from specscan.finding.things.found import Availability, Found, How, Value
from specscan.finding.topics import Topics
from specscan.finding.wording import ReadStatement
from specscan.records.facts import Fact, Saying
from specscan.records.text import Kind, Passage
from specscan.rulebook.book import Rulebook

OF_FIGURES = "it only says what figures mean"
NOTE_LOST = "the note that would say what the figure means was not found"
OF_SOME = "a note says something of each of several things, and not of which van"


class DocumentReader:
    """Reads one document."""

    def __init__(
        self,
        book: Rulebook,
        kit: Kit,
        statements: StatementReader,
        cast: Cast,
        vans: VanMentions,
        maker: StatementMaker,
        passages: list[Passage],
    ):
        self.book, self.kit, self.statements, self.vans = book, kit, statements, vans
        self.maker, self.passages = maker, passages
        self.everyone = cast.models
        self.topics = Topics(kit, vans, cast.models)
        self.footnotes = Footnotes(kit, vans, cast.models, passages)
        self.past = Past(kit.lexicon.words, cast.names.year or 0, cast.models)
        self.strangers = Strangers(cast)
        self.in_turn = InTurn(kit, vans, passages)
        self.of_sections = vans_of_sections(passages, vans, cast.models, kit.lexicon)
        self.recorder = Recorder(book, kit, maker)
        self.of_all: list[Fact] = []  # told of all tanks, none of them by its name
        self.added: set[tuple[str, str]] = set()  # vans and fields of which values are told to come to others
        self.sayings: list[Saying] = []  # complete once the facts were given

    def facts(self) -> list[Fact]:
        """Give the facts of all passages."""
        readings: list[Reading] = []
        above = RowsAbove(self.kit)
        for passage in self.passages:
            above.enter((passage.block, passage.table, passage.sections))
            for draft in self.maker.drafts(passage):
                if draft.how is How.NOTE:
                    continue
                reading = self._read(draft, above)
                readings.append(reading)
                if draft.how in (How.CELL, How.PAIR):
                    above.add(draft.label, reading.things)
        readings.extend(self._note_readings(readings))
        facts: list[Fact] = []
        marked: tuple[Draft, set[tuple[str, str]]] | None = None
        for reading in readings:
            made = self._facts_of(reading)
            if marked is not None and _answers(reading.draft, marked[0]):
                made = [one for one in made if one.rejected or (one.model, one.field) not in marked[1]]
            told = {(one.model, one.field) for one in made if not one.rejected}
            marked = (reading.draft, told) if reading.draft.how is How.MARKED else None
            facts.extend(made)
            self.added.update(self._added(reading, made))
        facts = [one if (one.model, one.field) not in self.added else replace(one, weak=False) for one in facts]
        facts = held_to_own(self.book, facts, self.of_all)
        return metric_first(self.footnotes.applied(facts, readings), self.passages)

    def _read(self, draft: Draft, above: RowsAbove) -> Reading:
        sense = self.maker.sections.sense(draft.passage)
        context = list(sense.things)
        if draft.how in (How.CELL, How.PAIR):
            if above.refers_by_pronoun(draft.label):
                return Reading(draft, self._statement(draft, above.things, replace(sense, things=[])))
            goes_on = self._goes_on(draft.label)
            if goes_on and (meant := [thing for thing in above.meant(draft.label) if thing not in context]):
                alone = self._statement(draft, context, sense)
                if any(not found.rejected for found in alone.found):
                    return Reading(draft, alone)  # "Insulated cab shades" are not the gray tank's above them
                context = [*meant, *context]
        elif draft.how in (How.PROSE, How.HEADING) and not draft.asked:
            context = []
        return Reading(draft, self._statement(draft, context, sense))

    def _statement(self, draft: Draft, context: list[str], sense: SectionSense) -> ReadStatement:
        return self.statements.read(draft, context, sense.things, self.footnotes.of(draft), self.vans)

    def _goes_on(self, label: str) -> bool:
        """Tell whether a row may speak of the thing of the row above: it has no label, a unit, or one that is known.

        Under "Height", "Capacity" may go on, beside "Heater" "BTU/h"; "Axle to axle" is something else, even where
        nobody knows what.
        """
        lexicon = self.kit.lexicon
        return lexicon.knows_all(label) or self.book.is_unit(label.strip(" ()*"))

    def _note_readings(self, readings: list[Reading]) -> list[Reading]:
        """Read each note in the context of the statements that refer to it."""
        found = []
        for (_, sign), passage in self.footnotes.notes.items():
            noted = [r for r in readings if sign in r.draft.notes]
            users = [r for r in noted if self.footnotes.note_of(r.draft.passage.page, sign) is passage]
            things = list(dict.fromkeys(t for r in users for f in r.found for t in f.things))
            things = things or list(dict.fromkeys(t for r in users for t in r.things))
            whose = None if self._says_whose(passage.text) else _vans_of_all(users)
            for draft in self.maker.drafts(passage):
                draft.scope.vans = whose if draft.scope.vans is None else draft.scope.vans
                if len(users) == 1 and draft.scope.vans is None:
                    own, scope = draft.scope.availability, users[0].draft.scope
                    draft.scope = replace(scope, by_van={} if own else dict(scope.by_van))
                    draft.scope.availability = own or scope.availability
                sense = self.maker.sections.sense(passage)
                found.append(Reading(draft, self._statement(draft, things, sense)))
        return found

    def _says_whose(self, text: str) -> bool:
        """Tell whether a text names vans, or says that all are meant."""
        lexicon = self.kit.lexicon
        return bool(self.vans.find(text) or lexicon.cues(lexicon.analyse(text), "all_vans", "two_vans"))

    def _facts_of(self, reading: Reading) -> list[Fact]:
        facts: list[Fact] = []
        draft = reading.draft
        topics = self.topics.read(reading)
        self.sayings.extend(self._sayings_of(reading, topics))
        told = draft.how in (How.PROSE, How.LIST, How.PAIR)
        past = self.past.sentences(reading.parsed) if told else set()
        strange = self.strangers.sentences(reading.parsed, draft.passage) if told else set()
        parted = self._parted(reading) if draft.passage.kind is Kind.FOOTNOTE else set()
        named = _naming_sentences(reading) if parted else set()
        for found in reading.found:
            spec = self.book.fields[found.field]
            if draft.how is How.HEADING and spec.text != "matched":
                continue
            if self.footnotes.remarks.holds(reading.parsed.text, found.start) and not found.rejected:
                found = replace(found, rejected=OF_FIGURES)
            if spec.basis == "none" and self._lacks_note(draft) and not found.rejected:
                found = replace(found, rejected=NOTE_LOST)
            if found.sentence in past and not found.rejected:
                found = replace(found, rejected=OF_THE_PAST)
            if spec.type in ("choice", "set") and parted & set(found.things or spec.of) and not found.rejected:
                found = replace(found, rejected=OF_SOME) if found.sentence not in named else found
            if found.sentence in strange and not found.rejected:
                found = replace(found, rejected=OF_ANOTHER)
            scope = self._scope(found, reading, topics)
            own = self.in_turn.van_of(found, reading) if len(scope) > 1 or self._is_amid_text(draft) else None
            if own is not None and (own <= scope.keys() or len(scope) == 1):
                scope = {van: scope.get(van) or next(iter(scope.values())) for van in own}
                found = replace(found, rejected="") if found.rejected in BESIDE_GREATER else found
            if len(scope) > 1 and draft.how is How.PROSE and one_of_several(found, reading.parsed):
                found = replace(found, rejected=OF_ONE)
            if len(scope) > 1 and draft.how is How.PROSE and not found.rejected and self._is_of_some(found, reading):
                found = replace(found, rejected=OF_SOME)
            made = [self.recorder.fact(found, van, said, reading) for van, said in scope.items()]
            if is_of_all(self.book, found, reading):
                self.of_all.extend(made)
            facts.extend(made)
        return facts

    def _is_amid_text(self, draft: Draft) -> bool:
        """Tell whether a statement may be of one van only because a sentence before it is: no heading gives it one."""
        told = draft.how in (How.PROSE, How.LIST, How.PAIR) and draft.passage.kind is Kind.PROSE
        return told and self.maker.sections.sense(draft.passage).vans is None

    def _is_of_some(self, found: Found, reading: Reading) -> bool:
        """Tell whether a sentence that names no van has two kinds of a thing, and nobody knows which is whose.

        "M10 with front-wheel drive, M30 with all-wheel drive", where the codes are those of orders.
        """
        spec = self.book.fields[found.field]
        if spec.type != "choice" or spec.strongest or found.availability is not None:
            return False
        items = [item for item in reading.parsed.items if item.sentence == found.sentence]
        if any(item.vans or item.has("cue", *AVAILABILITIES, "or_joint") for item in items):
            return False
        others = (one for one in reading.found if one.field == found.field and one.sentence == found.sentence)
        return any(one.value != found.value and one.weak == found.weak for one in others)

    def _lacks_note(self, draft: Draft) -> bool:
        """Tell whether a cell has a note that nobody found: there it may say whether heat goes in or comes out."""
        if draft.passage.kind is not Kind.CELL:
            return False
        return any(self.footnotes.note_of(draft.passage.page, sign) is None for sign in draft.passage.notes)

    def _added(self, reading: Reading, made: list[Fact]) -> set[tuple[str, str]]:
        """Give vans and fields whose values are told to come to others, which then count though they are only implied.

        "Also insulated: roof, floor" beside "Wall insulation: wool, 50 mm".
        """
        if not reading.parsed.cues("also"):
            return set()
        exact = [fact for fact in made if not fact.weak and not fact.rejected and fact.text != "none"]
        return {(fact.model, fact.field) for fact in exact if self.book.fields[fact.field].union}

    def _parted(self, reading: Reading) -> set[str]:
        """Give the things of which a note says two kinds: "LP furnaces: input. Diesel heaters: output"."""
        kinds = self.footnotes.by_kind.parts(reading.draft.passage.text)
        said: dict[str, set[str]] = {}
        for found in reading.found:
            if self.book.fields[found.field].type == "choice" and not found.rejected:
                said.setdefault(found.field, set()).add(str(found.value))
        several = {field for field, values in said.items() if len(values) > 1}
        return {t for field in several for t in self.book.fields[field].of} | {t for part in kinds for t in part.things}

    def _scope(
        self, found: Found, reading: Reading, topics: Mapping[int, frozenset[str]]
    ) -> dict[str, Availability | None]:
        """Give the vans for which a value holds, each with what is said of its availability."""
        scope = reading.draft.scope
        scope = replace(scope, headed=scope.vans is not None and reading.draft.passage.column is None)
        vans = topics.get(found.sentence) if scope.vans is None else self.topics.sure.get(found.sentence)
        if vans is None and scope.vans is None:
            vans = self.of_sections.get(reading.draft.passage.number)
        if vans is not None:
            scope = replace(scope, vans=vans, headed=False)
        draft = reading.draft  # "Covers: cab and rear doors, both" on the sheet of one van names no other
        own = None if draft.how is How.PROSE else self.vans.listed_at(draft.passage.number)
        return settle_scope(found, reading.parsed, reading.split, scope, own or self.everyone)

    def _sayings_of(self, reading: Reading, topics: Mapping[int, frozenset[str]]) -> list[Saying]:
        """Give what a statement says that no field holds."""
        draft, parsed = reading.draft, reading.parsed
        spoken = draft.how in (How.PROSE, How.HEADING) or is_sentence(draft.passage)
        made: list[Saying] = []
        for said in self.statements.sayings(reading.read, denials=not spoken):
            item = parsed.item_at(said.start, said.end)
            found = Found("", Value(), said.start, said.end, said.kind, item, sentence=said.sentence)
            scope = self._scope(found, reading, topics)
            made += [self.recorder.saying(said, found, van, seen, reading, spoken) for van, seen in scope.items()]
        return made


def _vans_of_all(users: list[Reading]) -> frozenset[str] | None:
    """Give the vans of the statements that refer to a note, of which it then speaks, if each is of some vans."""
    theirs = [vans for reading in users if (vans := reading.draft.scope.vans) is not None]
    return frozenset[str]().union(*theirs) if len(users) == len(theirs) > 1 else None


def _naming_sentences(reading: Reading) -> set[int]:
    """Give the sentences that say of whom they speak: "The 19 has a cassette. The others have a fixed toilet."."""
    named = {item.sentence for item in reading.parsed.items if item.vans}
    return named and named | {cue.sentence for cue in reading.parsed.cues("other_members")}


def _answers(draft: Draft, marked: Draft) -> bool:
    """Tell whether a statement is the same cell as one that its label makes, read as the answer to that label.

    What the label says by itself it says once: "Energy pack, 200 Ah, inverter 2000 W, solar 200 W: option".
    """
    return draft.passage is marked.passage and draft.label == marked.body
