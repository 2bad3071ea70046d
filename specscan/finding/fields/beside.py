"""What stands beside a word and changes whether it counts: a negation, another thing."""

from __future__ import annotations

from specscan.finding.things.groups import Group
from specscan.finding.things.items import Item, Parsed
from specscan.finding.things.statement import Statement

NEGATION_REACH = 3
DISTANT_REACH = 5  # folded words between a value and a word that takes it to itself


def is_negated(item: Item, statement: Statement, group: Group | None = None) -> bool:
    """Tell whether a negation before a word denies it: "not heated"."""
    parsed = statement.parsed
    if any(
        cue.chunk == item.chunk
        and cue.start >= item.end
        and _ends(cue, item, parsed)
        and not _goes_on(item, cue, parsed, group)
        for cue in parsed.cues("not_last")
    ):
        return True
    if any(
        cue.start >= item.end and parsed.text[item.end : cue.start].strip() == ":"
        for cue in parsed.cues("no", "none", "not_fitted")
    ):
        return True  # "Underfloor heating: no" amid running text
    if _joined_to_denied(item, statement, group) or _neither(item, group, parsed) or _is_not_fitted(item, parsed):
        return True
    for cue in parsed.cues("negation"):
        # The one thing that is denied as a whole takes no words of the reach: "no fresh water tank is heated".
        denied = group is not None and group.items[0].first == cue.last and cue.has("cue", "denies_thing")
        last = group.items[0].last if group is not None and denied else cue.last
        if cue.end <= item.start and cue.chunk == item.chunk and item.first - last <= NEGATION_REACH:
            # A thing between takes the negation to itself: "no pump, tank heated".
            # The thing that the word is said of does not: "neither tank heated", nor the one that is denied as a whole.
            own = group.items if group is not None and (len(group.things) > 1 or denied) else []
            between = [i for i in parsed.items if cue.end <= i.start and i.end <= item.start and i.has("thing")]
            between = [i for i in between if i not in own]
            if not between and not (cue.start < statement.split <= item.start):
                return True
    return False


def _is_not_fitted(item: Item, parsed: Parsed) -> bool:
    """Tell whether it is said of a thing that it is not fitted: "A heated floor is not fitted", "not equipped with"."""
    for cue in parsed.cues("not_fitted"):
        behind = cue.start >= item.end
        if not behind and cue.clause == item.clause and parsed.text[cue.end :].lstrip().startswith(":"):
            return True  # "Not included: heated floor, awning"
        if cue.chunk != item.chunk or cue.sentence != item.sentence:
            continue
        first, last = (item, cue) if behind else (cue, item)
        between = [i for i in parsed.items if first.end <= i.start and i.end <= last.start]
        near = 0 <= last.first - first.last <= (NEGATION_REACH if behind else 1)
        if near and not any(i.tells or i.has("thing") for i in between):
            return True
    return False


def _joined_to_denied(item: Item, statement: Statement, group: Group | None) -> bool:
    """Tell whether a word is joined by "or" to one that is denied: "not heated or insulated"."""
    parsed = statement.parsed
    before = [
        other for other in parsed.items
        if 0 < item.first - other.last <= 2 and other.chunk == item.chunk
        and any(cue.first == other.last and cue.last == item.first for cue in parsed.cues("or_joint"))
    ]  # fmt: skip
    return any(
        other.has("denied")
        or any(c.kind == "value" and c.value == "none" for c in other.concepts)
        or (other.tells and is_negated(other, statement, group))
        for other in before
    )


def _neither(item: Item, group: Group | None, parsed: Parsed) -> bool:
    """Tell whether "neither" stands before what a word is said of: "neither A nor B is heated", "neither tank"."""
    if group is None or item.start < group.end:
        return False
    return any(
        cue.clause == item.clause and 0 <= group.items[0].first - cue.last <= 1 for cue in parsed.cues("neither")
    )


def _ends(cue: Item, item: Item, parsed: Parsed) -> bool:
    """Tell whether a negation ends its part of the sentence and so denies it: "beheizt den Abwassertank nicht"."""
    _, end = parsed.chunk_span(cue.chunk)
    return not any(c.isalnum() for c in parsed.text[cue.end : end]) and item.sentence == cue.sentence


def _goes_on(item: Item, cue: Item, parsed: Parsed, group: Group | None) -> bool:
    """Tell whether a negation at the end belongs to a later word: "hat einen isolierten Tank und beheizt ihn nicht".

    So does one behind a later word with a thing of its own: "hält den Tank frostfrei und beheizt den anderen nicht".
    """
    between = [i for i in parsed.items if item.end <= i.start and i.end <= cue.start]
    told, things = [i for i in between if i.tells], [i for i in between if i.has("thing")]
    own = group is not None and group.end <= item.start
    return any(thing.end <= other.start or (own and other.end <= thing.start) for other in told for thing in things)


def spoken_of_another(name: str, item: Item, statement: Statement) -> str:
    """Give why a word does not count where one stands near that takes it to something else, else an empty text."""
    near = [
        i for i in statement.parsed.items
        if i.clause == item.clause and abs(i.chunk - item.chunk) <= 1
        and max(i.first - item.last, item.first - i.last) <= DISTANT_REACH
    ]  # fmt: skip
    near += [i for i in statement.parsed.items if i.start < statement.split or item.start < statement.split]
    beyond = {cue.last for cue in statement.parsed.cues("apart_from")}  # "behind the cab" is not of the cab
    named = any(i.has("distant", name) and i.first not in beyond for i in near)
    return "another thing is spoken of beside it" if named else ""
