"""Whose a value is, when the words beside it, the headings above it and the sentences before it are weighed."""

from __future__ import annotations

import itertools
import re

from specscan.finding.marks.availability import item_availability
from specscan.finding.marks.each_van import said_of_each
from specscan.finding.marks.excepted import have_their_own, left_out, said_of_others, told_of_others
from specscan.finding.marks.scope import EVERYONE, THE_TWO, Scope, closing_bracket, item_vans
from specscan.finding.things.found import Availability, Found
from specscan.finding.things.items import Item, Parsed

OPENS = re.compile(r"(?:\A|[.!?]\s+)(?:\w{2,3}\s+)?\Z")  # a sentence about a van, with an article at most
ALTERNATIVES = 2  # words from one figure to the other at most, "or" among them
OF_ONE = "said of one of several vans, without saying of which"


def one_of_several(found: Found, parsed: Parsed) -> bool:
    """Tell whether a sentence about several vans says something of one and something else of the other.

    "The A and the B are warm: one burns diesel, the other runs on electricity" does not say which of them does, nor
    does "The Drift comes with two berths or four", of a range.
    """
    if _is_alternative(found.item, parsed) and item_vans(found.item, parsed, 0) not in (None, EVERYONE, THE_TWO):
        return True
    for other in (cue for cue in parsed.cues("the_other") if cue.sentence == found.sentence):
        before = [
            cue.start for cue in parsed.cues("the_one") if cue.sentence == found.sentence and cue.end <= other.start
        ]
        if before and found.start >= max(before):
            return True
    return False


def _is_alternative(item: Item | None, parsed: Parsed) -> bool:
    """Tell whether a figure is one of two that an "or" joins."""
    if item is None or item.quantity is None or "or_joint" not in parsed.by_cue:
        return False
    figures = [i for i in parsed.items if i.quantity is not None and i.quantity.dimension == item.quantity.dimension]
    joined = {cue.last for cue in parsed.cues("or_joint")}
    pairs = [
        (one, two) for one, two in itertools.pairwise(figures)
        if one.clause == two.clause and two.first in joined and two.first - one.last <= ALTERNATIVES
    ]  # fmt: skip
    return any(item is one for pair in pairs for one in pair)


def _are_meant(vans: frozenset[str], item: Item | None, parsed: Parsed) -> bool:
    """Tell whether a sentence below the heading of one van is of others: they begin it, or a bracket ends the item.

    "The Drift 24 is the winter van" stands in any column; "unlike the Drift 24" is of the van of the heading.
    """
    mentions = [i for i in parsed.items if i.vans and i.vans <= vans]
    if item is None or not mentions:
        return False
    opening = any(m.sentence == item.sentence and _opens(m, parsed) for m in mentions)
    return opening or bool(closing_bracket(item, [i for i in parsed.items if i.vans], parsed))


def _opens(mention: Item, parsed: Parsed) -> bool:
    """Tell whether a van begins a sentence, or the part of one that is of it alone: "…, the Drift 24 is warmer"."""
    start = next(bound[0] for bound in parsed.bounds if bound[3] == mention.sentence)
    return OPENS.search(parsed.text[start : mention.start].lstrip(" ,;")) is not None


def _is_refused(found: Found, parsed: Parsed, split: int) -> bool:
    """Tell whether what names a value is answered by words that it cannot be had: "Upgrade to 380 W: not offered"."""
    text = parsed.text
    for cue in parsed.cues("not_available"):
        colon = split == 0 and text[: cue.start].rstrip().endswith(":") and not text[cue.end :].strip(" .")
        answers = 0 < split <= cue.start and not any(map(str.isalnum, text[split : cue.start]))
        if found.start < (split or cue.start) and (colon or answers):
            return True
    return False


def settle_scope(
    found: Found, parsed: Parsed, split: int, scope: Scope, everyone: frozenset[str]
) -> dict[str, Availability | None]:
    """Give the vans for which a value holds, each with its availability (``None``: nothing is said)."""
    if scope.told_each:
        return dict(scope.by_van)
    base = scope.vans if scope.vans is not None else everyone
    each = said_of_each(found.item, parsed) if found.availability is None else {}
    if each and (not scope.headed or base & each.keys()):
        return {van: said for van, said in sorted(each.items()) if not scope.headed or van in base}
    own = have_their_own(found.item, parsed)
    named = item_vans(found.item, parsed, split) if not own else None
    if named is EVERYONE:
        base = everyone
    elif named is THE_TWO:
        # Of four vans "both" are none, and below the heading of one van it is of two of its tanks.
        base = everyone if len(everyone) == 2 and len(base) != 2 and not scope.headed else base
    elif named is not None:
        inside = named & base
        alone = scope.vans is None or not named or scope.headed and _are_meant(named, found.item, parsed)
        base = inside or (named if alone else base)
    excepted = own or (left_out(found.item, parsed) if "except" in parsed.by_cue else frozenset())
    if excepted:
        base = (base - excepted) or (everyone - excepted)
    others: dict[str, Availability] = {}
    if "other_members" in parsed.by_cue:
        base = told_of_others(found.item, parsed, everyone) or base
        others = said_of_others(parsed, everyone) if scope.vans is None else {}
    result: dict[str, Availability | None] = {**others}
    refused = _is_refused(found, parsed, split)
    for van in sorted(base - others.keys()):
        said = found.availability or item_availability(found.item, parsed, split, van)
        withheld = said is Availability.OPTIONAL and scope.of(van) is Availability.NOT_AVAILABLE and split == 0
        if said is Availability.OPTIONAL and refused:
            said = Availability.NOT_AVAILABLE  # "Solar upgrade to 380 W: not available"
        result[van] = said if said is not None and not withheld else scope.of(van)  # "Solar upgrade: NA"
    return result
