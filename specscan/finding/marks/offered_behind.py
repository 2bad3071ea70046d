"""Sentences that only say how a thing is to be had: "The inverter is standard in the 22. It is optional in the 20."."""

from __future__ import annotations

from specscan.finding.marks.legend import AVAILABILITIES
from specscan.finding.things.items import Parsed

OF_THINGS = ("thing", "short", "alone", "value", "term", "aspect")


def join_offers(parsed: Parsed) -> None:
    """Let sentences of pronouns, vans and availabilities alone be further clauses of the sentence before them."""
    if "pronoun" not in parsed.by_cue or parsed.by_cue.keys().isdisjoint(AVAILABILITIES):
        return
    joined = {cue.sentence for cue in parsed.cues("pronoun") if cue.sentence and parsed.opens_sentence(cue)}
    joined = {number for number in joined if _only_offers(number, parsed)}
    if not joined:
        return
    numbers = {number: number - sum(one <= number for one in joined) for number in {b[3] for b in parsed.bounds}}
    parsed.bounds[:] = [(*bound[:3], numbers[bound[3]], bound[4]) for bound in parsed.bounds]
    for item in parsed.items:
        item.sentence = numbers[item.sentence]


def _only_offers(number: int, parsed: Parsed) -> bool:
    own = [i for i in parsed.items if i.sentence == number]
    if not any(i.vans for i in own) or not any(i.has("cue", *AVAILABILITIES) for i in own):
        return False
    if any(i.has(kind) for i in own for kind in OF_THINGS) or any(i.quantity is not None for i in own):
        return False
    tokens = [
        token for n, token in enumerate(parsed.analysis.tokens)
        if token.norm.isalpha() and not any(i.first <= n < i.last or i.start <= token.start < i.end for i in own)
        and own[0].start <= token.start < own[-1].end
    ]  # fmt: skip
    return not tokens
