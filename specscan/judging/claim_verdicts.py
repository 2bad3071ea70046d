"""What a claim implies, held against the evidence: the verdict on each part and on the whole."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import pandas as pd

from specscan.judging.cases import truths
from specscan.judging.claim_rules import HIGH, IN_TIME, LOW, Asked, ClaimBook
from specscan.physics.derived import DERIVED, derive
from specscan.physics.grades import in_time
from specscan.records.claims import VERDICTS, ClaimPart, ClaimVerdict
from specscan.records.facts import Saying, Settled
from specscan.records.shown import on_page
from specscan.records.truth import Truth
from specscan.rulebook.claims import CLAIMED
from specscan.settling.table import case_id, table_of_cases

ONLY_SAID = "only running text says so"


@dataclass(frozen=True, slots=True)
class Evidence:
    """A van without a claim: its settled rows, and words of tables and lists with their documents.

    ``number`` tells evidences apart, ``known`` holds the ids of all facts of the dataset.
    """

    number: str
    rows: Sequence[Settled]
    sayings: Sequence[tuple[str, Saying]]
    known: frozenset[str]

    def row(self, name: str, equipment: str) -> Settled | None:
        """Give the settled row of a field."""
        return next((row for row in self.rows if row.field == name and row.equipment == equipment), None)


@dataclass(frozen=True, slots=True)
class Gathered:
    """The questions of one claim and its evidence; ``as_option``: it is claimed of the van with an option."""

    asked: tuple[Asked, ...]
    evidence: Evidence
    as_option: bool


@dataclass(frozen=True, slots=True)
class _Question:
    """One question of one claim about the van as delivered or with options: a row of the table that is asked."""

    claim: int
    part: int
    case: str


def judge_parts(claims: Sequence[Gathered], rules: ClaimBook) -> list[list[ClaimPart]]:
    """Give for each claim the verdicts on the parts that are asked of its van."""
    if not claims:
        return []
    cases = _cases(claims, rules)
    questions = [
        _Question(number, part, case_id(claim.evidence.number, equipment))
        for number, claim in enumerate(claims)
        for part in range(len(claim.asked))
        for equipment in ("standard", "optioned")
    ]
    places = cases.index.get_indexer([one.case for one in questions])
    table = cases.iloc[places].reset_index(drop=True)
    bounds = [claims[one.claim].asked[one.part].claimed or (None, None, None) for one in questions]
    frame = pd.DataFrame(bounds, columns=[CLAIMED, LOW, HIGH], dtype=float)
    table = pd.concat(
        [table, frame.assign(**{f"{CLAIMED}__low": frame[CLAIMED], f"{CLAIMED}__high": frame[CLAIMED]})], axis=1
    )
    asked = [claims[one.claim].asked[one.part] for one in questions]
    conditions = [one.that for one in asked] + [one.when for one in asked if one.when is not None]
    found = truths(table, conditions, rules.kinds, rules.book)
    judged: list[list[ClaimPart]] = [[] for _ in claims]
    for place in range(0, len(questions), 2):
        claim, ask = claims[questions[place].claim], asked[place]
        if ask.when is not None and found[ask.when.text][place + int(claim.as_option)] is not Truth.YES:
            continue
        delivered, optioned = found[ask.that.text][place], found[ask.that.text][place + 1]
        hows = [
            {name: table[f"{name}__how"].iloc[row] for name in ask.columns if f"{name}__how" in table}
            for row in (place, place + 1)
        ]
        judged[questions[place].claim].append(_part(ask, claim, delivered, optioned, hows))
    return judged


def _cases(claims: Sequence[Gathered], rules: ClaimBook) -> pd.DataFrame:
    """Give the evidences as a table of cases with everything that is derived, by the names of the cases."""
    evidences = {claim.evidence.number: claim.evidence for claim in claims}
    table = table_of_cases(((number, row) for number, one in evidences.items() for row in one.rows), rules.book)
    needed = {name for claim in claims for ask in claim.asked for name in ask.columns}
    if needed & set(DERIVED):
        table = pd.concat([table, derive(table, rules.book, only=needed)], axis=1)
    if needed & set(IN_TIME):
        table = pd.concat([table, in_time(table, rules.book)], axis=1)
    return table.set_index("case_id")


def overall(parts: Sequence[ClaimPart]) -> ClaimVerdict:
    """Give the verdict on a claim: that of its weakest part; without parts nothing bears it out."""
    return min((part.verdict for part in parts), key=VERDICTS.index, default="not_supported")


def _part(
    ask: Asked, claim: Gathered, delivered: Truth, optioned: Truth, hows: Sequence[dict[str, str | None]]
) -> ClaimPart:
    said = [(name, one) for name, one in claim.evidence.sayings if ask.stated and one.kind == ask.stated]
    if said:
        in_words, with_options = _by_words([one for _, one in said])
        delivered = in_words if delivered is Truth.UNKNOWN else delivered
        optioned = with_options if optioned is not Truth.YES and with_options is not Truth.UNKNOWN else optioned
    if claim.as_option:
        verdict: ClaimVerdict = {Truth.YES: "supported", Truth.NO: "contradicted"}.get(optioned, "not_supported")  # type: ignore[assignment]
    elif delivered is Truth.YES:
        verdict = "supported"
    elif optioned is Truth.YES:
        verdict = "only_with_options"
    else:
        verdict = "contradicted" if delivered is Truth.NO else "not_supported"
    fitted = claim.as_option or verdict == "only_with_options"
    words, ids = _told(ask, claim, verdict, hows[fitted], fitted=fitted)
    quoted = [f"“{one.printed}” ({on_page(name, one.page)})" for name, one in said]
    words += list(dict.fromkeys(quoted))
    return ClaimPart(ask.means, ask.that.text, ask.columns, delivered, optioned, verdict, "; ".join(words), ids)


def _by_words(said: Sequence[Saying]) -> tuple[Truth, Truth]:
    """Give what words of tables and lists say of the van as delivered, and with options."""
    delivered = [one for one in said if one.availability in ("standard", "unstated")]
    refused = [one for one in said if one.denied or one.availability == "not_available"]
    optional = [one for one in said if one.availability == "optional" and not one.denied]
    if any(not one.denied for one in delivered):
        return Truth.YES, Truth.YES
    first = Truth.NO if refused or optional else Truth.UNKNOWN
    return first, Truth.YES if optional else Truth.NO if refused else Truth.UNKNOWN


def _told(
    ask: Asked, claim: Gathered, verdict: ClaimVerdict, how: dict[str, str | None], *, fitted: bool
) -> tuple[list[str], tuple[str, ...]]:
    """Give the evidence on a part in words, and the facts that it rests on."""
    words: list[str] = []
    ids: list[str] = []
    silent: list[str] = []
    for name in ask.columns:
        if name in how:
            sentence = how[name]
            words += [f"{name}: {sentence}"] if sentence else []
            silent += [] if sentence else [name]
            continue
        standard, optioned = claim.evidence.row(name, "standard"), claim.evidence.row(name, "optioned")
        row = optioned if fitted and optioned is not None and optioned.status != "missing" else standard
        if row is None or row.status == "missing":
            as_option = optioned is not None and optioned.availability == "optional" and verdict != "supported"
            words += [f"{name}: {_value(optioned)} as an option"] if as_option and optioned is not None else []
            ids += optioned.fact_ids if as_option and optioned is not None else ()
            silent += [] if as_option else [name]
            continue
        words.append(f"{name}: {_value(row)}{_remark(row)}")
        ids += row.fact_ids
    if verdict == "not_supported" and silent and (ask.restates or not words):
        words = [*words, ONLY_SAID] if ask.restates else [f"not stated elsewhere: {', '.join(silent)}"]
    return words, tuple(dict.fromkeys(one for one in ids if one in claim.evidence.known))


def _remark(row: Settled) -> str:
    if row.status == "conflicting":
        return f" (statements disagree: {row.note})"
    if row.status == "observed":
        return f" ({row.note})"
    return {"optional": " as an option", "not_available": " (not offered)"}.get(row.availability or "", "")


def _value(row: Settled) -> str:
    if row.num is not None:
        low, high = row.low, row.high
        ranged = low is not None and high is not None and low < high
        return f"{row.num:.4g}{f' ({low:.4g} to {high:.4g})' if ranged else ''} {row.unit}".strip()
    if row.flag is not None:
        return "yes" if row.flag else "no"
    if row.text is None and row.availability == "not_available":
        return "what is named"
    return (row.text or "no value").replace("+", ", ")
