"""Facts of all documents → one value per van, field and equipment, an honest conflict, or missing with the reason."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace

from specscan.records.documents import DocumentRecord, PlacedFact, ReadDocument, Settlement, Van
from specscan.records.facts import Fact, Settled
from specscan.records.observations import Observation
from specscan.rulebook.book import Rulebook
from specscan.settling.corrected import correct, told
from specscan.settling.identity import Fleet, fleet_of
from specscan.settling.missing import missing
from specscan.settling.observed import put_above, van_of
from specscan.settling.one_document import (
    AS_DELIVERED,
    BY_SETTLING,
    IN_UNION,
    UNION_MARK,
    carriers,
    consolidate,
)
from specscan.settling.optioned import with_option, with_replaced
from specscan.settling.preferences import Preferences
from specscan.settling.values import Candidate, disagreement, settle_candidates, settle_not_offered

_Question = tuple[str, str]  # field and equipment
LEFT_OUT = "left out: a claim is not evidence for itself"
UNION_OF = "union of "


def settle(
    documents: Sequence[ReadDocument],
    book: Rulebook,
    preferences: Preferences,
    observations: Sequence[Observation] = (),
    fleet: Fleet | None = None,
    only: Collection[str] | None = None,
) -> Settlement:
    """Give vans, placed facts and settled values of a set of documents, and of what people observed.

    ``fleet`` are the vans there are, by default those that ``documents`` name; ``only`` the ids of those to settle, of
    which all documents must be given. Facts are placed on the other vans of the documents too.

    Every van gets a row for every field and both equipments. ``standard``: what is printed as standard or without
    a word on it (contract: ``unstated``). ``optioned``: the same with printed options fitted. What people observed
    stands above what is printed; observations of vans that no document names change nothing.
    """
    fleet = fleet or fleet_of(documents, book.general.legal_forms)
    mapping = _named_in(documents, fleet)
    placed: list[PlacedFact] = []
    for document in documents:
        placed.extend(_placed(document, mapping, book, preferences))
    present = [fleet.vans[van_id] for van_id in sorted(set(mapping.values()))]
    corrected = correct(placed, observations, present, fleet.records, fleet.documents_of)
    by_van: dict[str, list[PlacedFact]] = defaultdict(list)
    for fact in (*corrected.placed, *corrected.corrections):
        by_van[fact.van_id].append(fact)
    answers = _answers(present, observations)
    general = _general(placed)
    settled: list[Settled] = []
    named: list[Van] = []
    for van in fleet.vans.values():
        if van.van_id not in answers or (only is not None and van.van_id not in only):
            continue
        own = [fleet.records[doc] for doc in fleet.documents_of[van.van_id]]
        rows = _Van(van, by_van[van.van_id], own, general, book, preferences, answers[van.van_id]).settled()
        rows = [told(row, corrected) for row in rows]
        settled.extend(rows)
        named.append(_named(van, rows))
    return Settlement(
        tuple(named), tuple(corrected.placed), tuple(settled), mapping,
        tuple(corrected.corrections),
    )  # fmt: skip


def _named_in(documents: Sequence[ReadDocument], fleet: Fleet) -> dict[tuple[str, str], str]:
    """Give the vans of the fleet that documents name, by document and model as named there."""
    keys = [(document.record.doc_id, name.model) for document in documents for name in document.found.vans]
    return {key: fleet.named[key] for key in keys if key in fleet.named}


class Anew:
    """Settles one van again and again, each time as if some statements had not been made.

    What a field's rows follow from is few of them, so a field is settled once for all that leave out the same of these.
    """

    def __init__(
        self,
        van: Van,
        facts: Sequence[PlacedFact],
        documents: Sequence[DocumentRecord],
        book: Rulebook,
        preferences: Preferences,
        observations: Sequence[Observation] = (),
    ):
        """Take all placed facts of the van and corrections of them, and the records of its documents."""
        answers = _answers([van], observations)[van.van_id]
        self.van = _Van(van, [], list(documents), set(), book, preferences, answers)
        self.book, self.preferences = book, preferences
        self.facts: dict[tuple[str, str], list[PlacedFact]] = defaultdict(list)  # by field and document
        self.ids: dict[str, set[str]] = defaultdict(set)  # by field
        for one in facts:
            if not one.fact.found_by.endswith(UNION_MARK):
                self.facts[one.fact.field, one.doc_id].append(one)
                self.ids[one.fact.field].add(one.fact_id)
        self.known: dict[tuple[str, frozenset[str]], _Field] = {}

    def without(self, left_out: frozenset[str], fields: Collection[str] | None = None) -> list[Settled]:
        """Give the rows of the van had the statements with the ids ``left_out`` not been made.

        What was set aside in favour of one that is left out comes back. ``fields`` are those of which rows are wanted,
        by default all; there may be rows of others, on which these rest.
        """
        if fields is not None:
            # Statements of one field do not touch another's, but for what an option replaces or a van does not have.
            causes = {name for group in self.preferences.replaced_together for name in (*group.when, *group.fields)}
            fields = {*fields, *causes} if causes.intersection(fields) else set(fields)
            fields |= {other for name in fields if name in self.book.fields for other in self._others(name)}
        names = [name for name in self.book.fields if fields is None or name in fields]
        found = {name: self._of_field(name, left_out) for name in names}
        return [_with_members(row, found[row.field].joined) for row in self.van.rows(found)]

    def _others(self, name: str) -> Collection[str]:
        """Give the fields that can say that there is no such part as a field tells of."""
        return self.book.fields[name].absent_with

    def _of_field(self, name: str, left_out: frozenset[str]) -> _Field:
        near = (name, *self._others(name))
        key = name, left_out.intersection(one for other in near for one in self.ids[other])
        if key not in self.known:
            self.known[key] = self._settled(name, near, key[1])
        return self.known[key]

    def _settled(self, name: str, near: Sequence[str], left_out: frozenset[str]) -> _Field:
        """Settle a field by its statements and those of the fields ``near`` it, those ``left_out`` apart."""
        kept: list[PlacedFact] = []
        for document in self.van.documents:
            own = [one for other in near for one in self.facts.get((other, document.doc_id), ())]
            if not own:
                continue  # most fields of most documents
            raw = [_set_aside(one.fact, LEFT_OUT if one.fact_id in left_out else _as_found(one.fact)) for one in own]
            again = consolidate(raw, self.book, self.preferences)
            kept += [
                one if fact is one.fact else replace(one, fact=fact) for one, fact in zip(own, again, strict=False)
            ]
            unions = again[len(own) :]
            kept += [PlacedFact(UNION_OF + own[0].fact_id, self.van.van.van_id, document.doc_id, f) for f in unions]
        kept = [one for one in kept if one.fact.field == name]
        return replace(
            self.van.of_field(name, kept), joined=[one.fact_id for one in kept if one.fact.rejected == IN_UNION]
        )


@dataclass(frozen=True, slots=True)
class _Field:
    """A field of a van as delivered, the statements on its options, and the field with these fitted.

    ``joined`` are the ids of the lines that were joined to a set, where these are to stand in place of it.
    """

    standard: Settled
    options: list[Candidate]
    fitted: Settled
    joined: Sequence[str] = ()


def _set_aside(fact: Fact, why: str) -> Fact:
    return fact if fact.rejected == why else replace(fact, rejected=why)


def _as_found(fact: Fact) -> str:
    """Give why a fact was set aside when it was found, without what settling added."""
    return "" if fact.rejected in BY_SETTLING else fact.rejected


def _with_members(row: Settled, members: Sequence[str]) -> Settled:
    """Give a row with the lines of a set in place of their union, which is a row of ``facts`` only by chance."""
    ids = [one for one in row.fact_ids if not one.startswith(UNION_OF)]
    return row if len(ids) == len(row.fact_ids) else replace(row, fact_ids=(*ids, *members))


def _answers(vans: Sequence[Van], observations: Sequence[Observation]) -> dict[str, dict[_Question, list[Observation]]]:
    """Give the observations that are no corrections by van, and by field and equipment."""
    found: dict[str, dict[_Question, list[Observation]]] = {van.van_id: defaultdict(list) for van in vans}
    for one in observations:
        van = van_of(vans, one)
        if van is not None and not one.doc:
            found[van.van_id][(one.field, one.equipment)].append(one)
    return found


def _placed(
    document: ReadDocument, mapping: dict[tuple[str, str], str], book: Rulebook, preferences: Preferences
) -> list[PlacedFact]:
    doc_id = document.record.doc_id
    facts = consolidate(document.found.facts, book, preferences)
    return [
        PlacedFact(f"{doc_id}-{number}", mapping[(doc_id, fact.model)], doc_id, fact)
        for number, fact in enumerate(facts, start=1)
        if (doc_id, fact.model) in mapping
    ]


def _general(placed: Sequence[PlacedFact]) -> set[str]:
    """Give the ids of facts whose very words are said of several vans at once: a general line, not the van's own."""
    vans: dict[tuple[object, ...], set[str]] = defaultdict(set)
    for one in placed:
        vans[_place(one)].add(one.van_id)
    return {one.fact_id for one in placed if len(vans[_place(one)]) > 1}


def _place(one: PlacedFact) -> tuple[object, ...]:
    return one.doc_id, one.fact.passage, one.fact.field, one.fact.found_by, one.fact.value


def _named(van: Van, settled: Sequence[Settled]) -> Van:
    """Give a van with the names that its rows settle."""
    rows = {row.field: row for row in settled if row.equipment == "standard"}
    maker, model = rows["maker"].text if "maker" in rows else None, rows["model"].text if "model" in rows else None
    return replace(van, maker=maker or van.maker, model=model or van.model)


@dataclass(slots=True)
class _Van:
    van: Van
    facts: list[PlacedFact]
    documents: list[DocumentRecord]
    general: set[str]
    book: Rulebook
    preferences: Preferences
    answers: dict[_Question, list[Observation]]

    def settled(self) -> list[Settled]:
        """Give the rows of the van: each field as standard, then with options."""
        by_field: dict[str, list[PlacedFact]] = defaultdict(list)
        for one in self.facts:
            by_field[one.fact.field].append(one)
        return self.rows({name: self.of_field(name, by_field[name]) for name in self.book.fields})

    def of_field(self, name: str, facts: list[PlacedFact]) -> _Field:
        """Settle a field by the facts that tell of it."""
        candidates = self._candidates(facts)
        printed = self._standard(name, candidates, facts)
        options = [c for c in candidates if c.fact.availability == "optional"]
        if printed.availability != "not_available":
            options += [c for c in candidates if c.fact.availability == "not_available"]
        standard = self._observed(printed, candidates)
        return _Field(standard, options, with_option(standard, options, self.book, self.preferences))

    def rows(self, fields: Mapping[str, _Field]) -> list[Settled]:
        """Give the standard rows of some fields, and behind them those with options fitted."""
        standard = {name: one.standard for name, one in fields.items()}
        optioned = with_replaced(standard, {name: one.fitted for name, one in fields.items()}, self.preferences)
        return [*standard.values(), *(self._observed(row, fields[row.field].options) for row in optioned)]

    def _observed(self, row: Settled, candidates: Sequence[Candidate]) -> Settled:
        """Give a row with what people observed above what is printed."""
        answers = self.answers.get((row.field, row.equipment), [])
        if not answers:
            return row
        carrying = sorted((c for c in candidates if c.fact_id in row.fact_ids), key=lambda c: (c.document, c.fact.page))
        return put_above(row, answers, disagreement(carrying, self.preferences, row.field), self.preferences)

    def _candidates(self, facts: Sequence[PlacedFact]) -> list[Candidate]:
        dated = {document.doc_id: document.dated for document in self.documents}
        found: list[Candidate] = []
        for document in self.documents:
            own = [(f.fact_id, f.fact) for f in facts if f.doc_id == document.doc_id and not f.fact.rejected]
            for fact_id, fact in carriers(own, self.preferences):
                found.append(Candidate(fact_id, fact, document.name, dated[document.doc_id], fact_id in self.general))
        implied = [c for c in found if c.fact.weak]
        if len(implied) < len(found):
            exact = {c.fact.availability in AS_DELIVERED for c in found if not c.fact.weak}
            found = [c for c in found if not c.fact.weak or (c.fact.availability in AS_DELIVERED) not in exact]
        return found

    def _standard(self, name: str, candidates: list[Candidate], facts: Sequence[PlacedFact]) -> Settled:
        delivered = [c for c in candidates if c.fact.availability in AS_DELIVERED]
        if delivered:
            return settle_candidates(self.van.van_id, name, "standard", delivered, self.book, self.preferences)
        refused = [c for c in candidates if c.fact.availability == "not_available"]
        optional = [c for c in candidates if c.fact.availability == "optional"]
        if refused and not optional:
            return settle_not_offered(self.van.van_id, name, "standard", refused, self.book)
        set_aside: list[Fact] = [one.fact for one in facts if one.fact.rejected]
        return missing(self.van.van_id, name, bool(optional), set_aside, self.documents, self.book.unit_of(name))
