"""Claims of brochures: which there are, and the verdict on each by everything that is stated but the claim itself."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace

from specscan.judging.claim_rules import CLAIMED, HIGH, LOW, Asked, ClaimBook
from specscan.judging.claim_verdicts import Evidence, Gathered, judge_parts, overall
from specscan.physics.derived import DERIVED
from specscan.records.claims import VERDICT_WORDS, VERDICTS, Claim, ClaimPart
from specscan.records.documents import PlacedFact, ReadDocument, Settlement
from specscan.records.facts import Fact, Saying
from specscan.records.observations import Observation
from specscan.settling.observed import van_of
from specscan.settling.one_document import AS_DELIVERED, IMPLIED, IN_UNION, LESS_EXACT, UNION_MARK
from specscan.settling.settle import Anew

RUNNING = ("prose", "heading")
SET_ASIDE = ("", IMPLIED, IN_UNION, LESS_EXACT)  # by settling, not by finding: the words stand there all the same


@dataclass(frozen=True, slots=True)
class _Found:
    """A claim before it is judged, and where it stands. ``left_out`` are the statements that may not bear it out."""

    claim: Claim
    passage: int
    left_out: frozenset[str]
    asked: tuple[Asked, ...]


def judge_claims(
    documents: Sequence[ReadDocument],
    settlement: Settlement,
    rules: ClaimBook,
    observations: Sequence[Observation] = (),
) -> list[Claim]:
    """Give the claims of all documents with their verdicts, those of each van together, the doubtful ones first.

    The statement that makes a claim is left out when the van's values are settled for it. So is running text that only
    repeats it, or claims as loosely ("heated tanks"): claims do not bear out claims. What is said exactly counts.
    Claims about vans that are not among the settlement's are numbered with the others, but not judged and not given.
    """
    vans = {van.van_id for van in settlement.vans}
    found = [one for one in _numbered(_Collector(documents, settlement, rules).claims()) if one.claim.van_id in vans]
    gathered = _Evidence(documents, settlement, rules, observations).gathered(found)
    claims = [
        replace(one.claim, verdict=overall(parts), because=_because(parts), parts=tuple(parts))
        for one, parts in zip(found, judge_parts(gathered, rules), strict=True)
    ]
    return sorted(claims, key=lambda c: (c.van_id, VERDICTS.index(c.verdict)))


def _numbered(found: Sequence[_Found]) -> list[_Found]:
    """Give claims with their ids: the document's and a number in it."""
    count: Counter[str] = Counter()
    numbered = []
    for one in found:
        doc_id = one.claim.doc_id
        count[doc_id] += 1
        numbered.append(replace(one, claim=replace(one.claim, claim_id=f"{doc_id}-c{count[doc_id]}")))
    return numbered


def _because(parts: Sequence[ClaimPart]) -> str:
    if not parts:
        return "nothing that it implies can be checked against figures"
    ordered = sorted(parts, key=lambda part: VERDICTS.index(part.verdict))
    return "; ".join(f"{part.means}: {VERDICT_WORDS[part.verdict]}" for part in ordered)


class _Collector:
    """Turns facts and sayings of running text into claims."""

    def __init__(self, documents: Sequence[ReadDocument], settlement: Settlement, rules: ClaimBook):
        self.documents, self.settlement, self.rules = documents, settlement, rules
        self.facts: dict[tuple[str, str], list[PlacedFact]] = defaultdict(list)
        for one in settlement.facts:
            if one.fact.rejected in SET_ASIDE and not one.fact.found_by.endswith(UNION_MARK):
                self.facts[(one.doc_id, one.van_id)].append(one)
        self.running: dict[str, list[PlacedFact]] = defaultdict(list)
        for (_, van_id), facts in self.facts.items():
            self.running[van_id] += [one for one in facts if one.fact.how in RUNNING]
        self.loose = {
            van_id: _ids(one for one in facts if rules.is_loose(one.fact)) for van_id, facts in self.running.items()
        }

    def claims(self) -> list[_Found]:
        """Give all claims in order of documents, vans and places."""
        found: list[_Found] = []
        vans_of: dict[str, set[str]] = defaultdict(set)
        for doc_id, van_id in self.facts:
            vans_of[doc_id].add(van_id)
        for document in self.documents:
            doc_id = document.record.doc_id
            sayings: dict[str, list[Saying]] = defaultdict(list)
            for saying in document.found.sayings:
                if (doc_id, saying.model) in self.settlement.named:
                    sayings[self.settlement.named[(doc_id, saying.model)]].append(saying)
            for van_id in sorted(vans_of[doc_id] | set(sayings)):
                facts = self.facts.get((doc_id, van_id), [])
                own = [
                    *self._of_sayings(doc_id, van_id, sayings[van_id], facts),
                    *self._of_facts(facts, sayings[van_id]),
                ]
                found += sorted(own, key=lambda one: (one.claim.page, one.passage, one.claim.printed, one.claim.kind))
        return found

    def _of_sayings(
        self, doc_id: str, van_id: str, sayings: Sequence[Saying], facts: Sequence[PlacedFact]
    ) -> list[_Found]:
        made = []
        for saying in sayings:
            kind = self.rules.rules.kinds.get(saying.kind)
            spoken = saying.how in RUNNING
            if kind is None or saying.denied or not (spoken or kind.boasts):
                continue
            if saying.availability == "not_available" or (saying.availability == "optional" and not kind.boasts):
                continue
            title = kind.title.format(claimed=f"{saying.figure:g}" if saying.figure is not None else "")
            same = _ids(one for one in facts if _place(one) == (saying.passage, saying.printed))
            same |= self.loose.get(van_id, frozenset())
            claim = _unjudged(van_id, doc_id, saying.kind, title, saying.said, saying)
            made.append(_Found(claim, saying.passage, same, self.rules.asked(kind.implies, saying.figure)))
        return made

    def _of_facts(self, facts: Sequence[PlacedFact], sayings: Sequence[Saying]) -> list[_Found]:
        made: list[_Found] = []
        topics: dict[tuple[object, ...], list[PlacedFact]] = defaultdict(list)
        seen: set[tuple[object, ...]] = set()
        for one in facts:
            fact = one.fact
            key = (*_place(one), fact.field, fact.value)  # a row's label can say a thing that its cell says again
            if fact.availability == "not_available" or key in seen:
                continue
            seen.add(key)
            if fact.field == "season_claim" and not any(_within(fact.text or "", one, s) for s in sayings):
                made.append(self._season(one, facts))
            elif fact.field == "rated_min_temp_c" and fact.num is not None:
                made.append(self._temperature(one, facts))
            elif fact.field == "en_grade" and fact.num is not None:
                made.append(self._grade(one, facts))
            elif fact.how in RUNNING and fact.availability in AS_DELIVERED and self.rules.is_boast(fact):
                topics[(*_place(one), self.rules.topics[fact.field])].append(one)
        return made + [self._topic(members) for members in topics.values()]

    def _season(self, one: PlacedFact, facts: Sequence[PlacedFact]) -> _Found:
        title, implies = self.rules.season(one.fact.text or "")
        note = self.rules.rules.seasons.no_standard
        asked = self.rules.asked(implies)
        return self._without_loose(self._made(one, "season", title, one.fact.text or "", note, facts, asked))

    def _temperature(self, one: PlacedFact, facts: Sequence[PlacedFact]) -> _Found:
        rules, claimed = self.rules.rules.temperature, one.fact.num or 0.0
        title = rules.title.format(claimed=f"{claimed:.3g}")
        asked = self.rules.asked(rules.implies, claimed)
        return self._without_loose(self._made(one, "temperature", title, "", rules.note, facts, asked))

    def _grade(self, one: PlacedFact, facts: Sequence[PlacedFact]) -> _Found:
        rules, claimed = self.rules.rules.grade, one.fact.num or 0.0
        note = " ".join([rules.grades.get(f"{claimed:g}", ""), rules.does_not_mean, f"Source: {rules.source}."]).strip()
        title = rules.title.format(claimed=f"{claimed:g}")
        asked = self.rules.asked(rules.implies, claimed)
        return self._without_loose(self._made(one, "grade", title, "", note, facts, asked))

    def _without_loose(self, found: _Found) -> _Found:
        """Leave out what else running text claims loosely of the van."""
        return replace(found, left_out=found.left_out | self.loose.get(found.claim.van_id, frozenset()))

    def _topic(self, members: Sequence[PlacedFact]) -> _Found:
        """Give the claim that one sentence makes about one topic; each field is a part of it."""
        first = members[0]
        asked = tuple({one.means: one for one in (self.rules.same(member.fact) for member in members)}.values())
        repeats = {
            other.fact_id
            for other in self.running[first.van_id]
            if any(
                other.fact.field == member.fact.field
                and self.rules.preferences.agree(other.fact.field, other.fact, member.fact)
                for member in members
            )
        }
        kind = self.rules.topics[first.fact.field]
        said = "; ".join(one.means for one in asked)
        title = self.rules.rules.topics[kind].title
        made = self._made(first, kind, title, said, "", self.running[first.van_id], asked)
        claim = replace(made.claim, fact_ids=tuple(one.fact_id for one in members))
        return replace(made, claim=claim, left_out=made.left_out | repeats)

    @staticmethod
    def _made(
        one: PlacedFact,
        kind: str,
        title: str,
        said: str,
        note: str,
        facts: Sequence[PlacedFact],
        asked: tuple[Asked, ...],
    ) -> _Found:
        same = _ids(other for other in facts if other.doc_id == one.doc_id and _place(other) == _place(one))
        claim = _unjudged(one.van_id, one.doc_id, kind, title, said or one.fact.printed, one.fact)
        claim = replace(claim, note=note, fact_ids=(one.fact_id,))
        return _Found(claim, one.fact.passage, same | {one.fact_id}, asked)


def _unjudged(van_id: str, doc_id: str, kind: str, title: str, said: str, by: Fact | Saying) -> Claim:
    """Give a claim without a number, a verdict and parts, as words of a document make it."""
    return Claim(
        "", van_id, doc_id, kind, title, said, by.printed, by.how, by.availability, by.page, by.box, "not_supported",
        "", "", (), (),
    )  # fmt: skip


def _place(one: PlacedFact) -> tuple[int, str]:
    return one.fact.passage, one.fact.printed


def _ids(facts: Iterable[PlacedFact]) -> frozenset[str]:
    return frozenset(one.fact_id for one in facts)


def _within(said: str, one: PlacedFact, saying: Saying) -> bool:
    """Tell whether the words of a season claim are part of a longer one, as in "winterized plumbing".

    They may begin before it: "fully winterized".
    """
    if _place(one) != (saying.passage, saying.printed):
        return False
    words, longer = said.casefold().split(), saying.said.casefold()
    return " ".join(words) in longer or any(longer.startswith(" ".join(words[n:])) for n in range(1, len(words)))


class _Evidence:
    """Settles each van anew for each claim, without what may not bear it out."""

    def __init__(
        self,
        documents: Sequence[ReadDocument],
        settlement: Settlement,
        rules: ClaimBook,
        observations: Sequence[Observation],
    ):
        self.rules = rules
        self.settlement = settlement
        self.vans = {van.van_id: van for van in settlement.vans}
        self.facts: dict[str, list[PlacedFact]] = defaultdict(list)
        for one in (*settlement.facts, *settlement.corrections):
            self.facts[one.van_id].append(one)
        records = {document.record.doc_id: document.record for document in documents}
        docs_of: dict[str, set[str]] = defaultdict(set)
        for (doc_id, _), named in settlement.named.items():
            docs_of[named].add(doc_id)
        self.records = {van: [records[doc_id] for doc_id in sorted(docs_of[van])] for van in self.vans}
        self.observations = defaultdict(list)
        for answer in observations:
            van = van_of(settlement.vans, answer)
            if van is not None:
                self.observations[van.van_id].append(answer)
        self.sayings: dict[str, list[tuple[str, Saying]]] = defaultdict(list)
        for document in documents:
            for saying in document.found.sayings:
                van_id = settlement.named.get((document.record.doc_id, saying.model))
                if van_id is not None and (saying.how not in RUNNING or saying.availability == "optional"):
                    self.sayings[van_id].append((document.record.name, saying))

    def _fields(self, asked: Sequence[Asked]) -> set[str] | None:
        """Give the fields on which some questions rest; ``None``, all, where it is not known on which."""
        conditions = [one.that for one in asked] + [one.when for one in asked if one.when is not None]
        names = {name for one in conditions for name in one.columns} - {CLAIMED, LOW, HIGH}
        fields = {field for name in names for field in (DERIVED[name].inputs if name in DERIVED else (name,))}
        return fields if fields <= self.rules.book.fields.keys() else None

    def gathered(self, found: Sequence[_Found]) -> list[Gathered]:
        """Give for each claim its questions and the evidence; claims with the same evidence share it."""
        shared: dict[tuple[str, frozenset[str]], Evidence] = {}
        anew: dict[str, Anew] = {}
        made, known = [], _ids(self.settlement.facts)
        asked: dict[tuple[str, frozenset[str]], list[Asked]] = defaultdict(list)
        for one in found:
            asked[one.claim.van_id, one.left_out] += one.asked
        for one in found:
            van_id = one.claim.van_id
            key = (van_id, one.left_out)
            if key not in shared:
                if van_id not in anew:
                    anew[van_id] = Anew(
                        self.vans[van_id], self.facts[van_id], self.records[van_id], self.rules.book,
                        self.rules.preferences, self.observations[van_id],
                    )  # fmt: skip
                rows = anew[van_id].without(one.left_out, self._fields(asked[key]))
                shared[key] = Evidence(str(len(shared)), rows, self.sayings[van_id], known)
            made.append(Gathered(one.asked, shared[key], one.claim.availability == "optional"))
        return made
