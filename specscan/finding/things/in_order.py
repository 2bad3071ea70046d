"""Figures or words said of several vans in the order of their names: "The 19 and the 21 carry 20 and 30 gal"."""

from __future__ import annotations

from collections.abc import Callable

from specscan.finding.things.items import Item, Parsed

NOBODY: frozenset[str] = frozenset()  # of several vans, and the text does not tell of which


def side_by_side(one: Item, two: Item, parsed: Parsed) -> bool:
    """Tell whether only a comma, "and" or a word such as "respectively" stands between two items."""
    joints = parsed.cues("number_joint", "respectively")
    tokens = [
        token for token in parsed.analysis.tokens
        if one.end <= token.start < two.start and not any(j.start <= token.start < j.end for j in joints)
    ]  # fmt: skip
    return all(token.norm == "," for token in tokens) and two.start > one.end


def run_of(item: Item, parsed: Parsed, joined: Callable[[Item, Item, Parsed], bool] = side_by_side) -> list[Item]:
    """Give the figures of one dimension, or words of one vocabulary, that stand side by side, the item among them.

    ``joined`` tells what stands so; an item that is none of the text's has no run.
    """
    run = [i for i in parsed.items if i.sentence == item.sentence and (i is item or alike(i, item))]
    place = next((n for n, one in enumerate(run) if one is item), None)
    if place is None:
        return []
    first = last = place
    while first > 0 and joined(run[first - 1], run[first], parsed):
        first -= 1
    while last + 1 < len(run) and joined(run[last], run[last + 1], parsed):
        last += 1
    return run[first : last + 1]


def van_in_order(item: Item, parsed: Parsed) -> frozenset[str] | None:
    """Give the van of a figure or word in a run of as many as vans are named side by side, ``None`` elsewhere.

    With "respectively" the vans may stand apart, or in the sentence before.
    """
    told = [cue for cue in parsed.cues("respectively") if cue.sentence == item.sentence]
    named = [i for i in parsed.items if i.vans and i.sentence == item.sentence]
    if not told and (item.quantity is None or len(named) < 2):
        return None
    run = run_of(item, parsed)
    if len(run) < 2:
        return None
    if not told:
        beside = all(side_by_side(a, b, parsed) for a, b in zip(named, named[1:], strict=False))
        vans = [one.vans for one in named]
        if not beside or len(vans) != len(run) or len(set(vans)) != len(vans):
            return None
        return vans[run.index(item)]
    for number in range(item.sentence, -1, -1):
        vans = list(dict.fromkeys(i.vans for i in parsed.items if i.vans and i.sentence == number))
        if vans:
            fits = len(vans) == len(run) and all(len(one) == 1 for one in vans)
            return vans[run.index(item)] if fits else NOBODY
    return NOBODY


def alike(one: Item, two: Item) -> bool:
    """Tell whether two items are figures of one dimension, or words of one vocabulary."""
    if one.quantity is not None and two.quantity is not None:
        if any(i.quantity.worded and i.quantity.high == 1 for i in (one, two)):  # type: ignore[union-attr]
            return False  # "one of 30 gal"
        return one.quantity.dimension == two.quantity.dimension or one.quantity.bare or two.quantity.bare
    if one.quantity is not None or two.quantity is not None:
        return False
    own = {c.name for c in one.concepts if c.kind == "value"}
    return any(c.kind == "value" and c.name in own for c in two.concepts)


def fill_run(item: Item, parsed: Parsed) -> Item | None:
    """Give the figure with a unit that ends the run in which a bare figure stands: "20 and 30 gallons"."""
    told = any(cue.sentence == item.sentence for cue in parsed.cues("respectively"))
    named = [i for i in parsed.items if i.vans and i.sentence == item.sentence]
    if not told and len(named) < 2:
        return None
    run = run_of(item, parsed)
    behind = [one for one in run if one.start > item.start and one.quantity is not None and not one.quantity.bare]
    if not behind:
        return None
    return behind[0] if told or len(named) == len(run) else None
