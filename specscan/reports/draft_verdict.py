"""One statement of a draft against what is settled of the van: borne out, contradicted, or without evidence."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any, Literal

from specscan.judging.kinds import Kind
from specscan.records.facts import Fact
from specscan.settling.preferences import Preferences

Verdict = Literal["borne_out", "contradicted", "without_evidence", "not_checked"]


Tell = Callable[[Mapping[str, Any]], str]
"""Puts the value of a row into words; an empty text where it has none."""


@dataclass(frozen=True, slots=True)
class Judgement:
    """A verdict, why, and the settled row on which it rests (``None``: on none)."""

    verdict: Verdict
    because: str
    row: Mapping[str, Any] | None


def judge_claim(
    claim: Fact, standard: Mapping[str, Any], optioned: Mapping[str, Any], kind: Kind, preferences: Preferences,
    tell: Tell,
) -> Judgement:  # fmt: skip
    """Give the verdict on a statement.

    ``standard`` and ``optioned`` are the settled rows of its van and field, as delivered and with options fitted. A
    statement that says that the thing is an option is held against the latter, any other against the former: what is
    printed as an option only does not bear out that a van *has* it.
    """
    if claim.availability == "optional":
        return _option(claim, standard, optioned, kind, preferences, tell)
    if standard["status"] == "missing":
        if standard["reason"] == "only_optional":
            printed = tell(optioned) or "it"
            return Judgement("without_evidence", f"printed as an option only: {printed}", optioned)
        return Judgement("without_evidence", standard["note"] or "no document states it", standard)
    if standard["status"] == "conflicting":
        return Judgement("without_evidence", f"documents disagree: {standard['note']}", standard)
    if claim.availability == "not_available":
        refused = standard["availability"] == "not_available"
        said = "not offered" if refused else f"stated: {tell(standard)}"
        return Judgement("borne_out" if refused else "contradicted", said, standard)
    verdict, because = _compare(claim, standard, kind, preferences, tell)
    return Judgement(verdict, because, standard)


def _option(
    claim: Fact, standard: Mapping[str, Any], optioned: Mapping[str, Any], kind: Kind, preferences: Preferences,
    tell: Tell,
) -> Judgement:  # fmt: skip
    if optioned["availability"] == "optional":
        verdict, because = _compare(claim, optioned, kind, preferences, tell)
        return Judgement(verdict, f"{because}; as an option", optioned)
    if standard["status"] == "missing" or standard["status"] == "conflicting":
        return Judgement("without_evidence", standard["note"] or "no document states it", standard)
    if standard["availability"] == "not_available":
        return Judgement("contradicted", "not offered", standard)
    verdict, because = _compare(claim, standard, kind, preferences, tell)
    if verdict == "borne_out":
        return Judgement("contradicted", f"stated as standard, not as an option: {because}", standard)
    return Judgement("without_evidence", f"no such option is stated; as delivered {because}", standard)


def _compare(
    claim: Fact, row: Mapping[str, Any], kind: Kind, preferences: Preferences, tell: Tell
) -> tuple[Verdict, str]:
    printed = tell(row)
    stated = f"{'observed' if row['status'] == 'observed' else 'stated'}: {printed or 'not offered'}"
    if row["availability"] == "not_available":
        denies = claim.flag is False or claim.num == 0 or (kind.denies != "" and claim.text == kind.denies)
        return ("borne_out" if denies else "contradicted"), "the documents say that it is not offered"
    if kind.name == "set":
        return _compare_sets(claim.text or "", row["value_text"] or "", kind, stated)
    if kind.name == "choice" and claim.text != row["value_text"] and kind.vague:
        if claim.text == kind.vague and row["value_text"] != kind.denies:
            return "borne_out", stated
        if row["value_text"] == kind.vague and claim.text != kind.denies:
            return "without_evidence", f"it is stated, but not of which kind ({printed})"
    known = Fact(
        claim.field, "", row["value_num"], row["value_low"], row["value_high"], row["value_text"], row["value_flag"],
        row["unit"] or "",
    )  # fmt: skip
    if preferences.agree(claim.field, known, claim):
        return "borne_out", stated
    if claim.num is not None and known.low is not None and known.high is not None and known.low < known.high:
        if known.low <= claim.num <= known.high:
            return "borne_out", f"within what is {stated}"
    if claim.field in preferences.never_conflicts:
        return "without_evidence", f"otherwise {stated}"
    return "contradicted", stated


def _compare_sets(said: str, known: str, kind: Kind, stated: str) -> tuple[Verdict, str]:
    claimed, there = set(said.split("+")), set(known.split("+"))
    if claimed <= there:
        return "borne_out", stated
    if kind.open:
        lacking = ", ".join(sorted(claimed - there))
        return "without_evidence", f"{stated}; nothing on {lacking}"
    return "contradicted", stated
