"""For which vans a value in a statement holds: by what is said beside it."""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass, field

from specscan.finding.marks.prices import has_price, is_price
from specscan.finding.things.found import Availability
from specscan.finding.things.in_order import alike, van_in_order
from specscan.finding.things.items import Item, Parsed
from specscan.finding.things.sisters import MEANING

LISTED = re.compile(r",\s+(?:[a-zà-ÿ]{2,3}\s+)?")  # between two vans of a list: ", the "
BEGINS = re.compile(r"(?:\A|[.!?]\s+)(?:\w+\s+)?\Z")  # a sentence, with one word at most: "In" every van
WORDS_BETWEEN = 3  # two vans that no list joins: "and the" has two
EVERYONE: frozenset[str] = frozenset({"*"})
THE_TWO: frozenset[str] = frozenset({"**"})  # "both": the two vans of which the text speaks, or all
DESCRIBING = ("voltage", "money", "time")
SHORT_LINE = 110  # letters, in which a bracket at the end speaks of the whole line


@dataclass(slots=True)
class Scope:
    """What holds for a whole statement: its vans (``None``: all) and availability by van.

    ``headed``: a heading named its vans, not the head of a column or a sentence before. ``told_each``: the line says it
    of each of its vans, and nothing else is to be read of that.
    """

    vans: frozenset[str] | None = None
    availability: Availability | None = None
    by_van: dict[str, Availability] = field(default_factory=dict)
    headed: bool = False
    told_each: bool = False

    def of(self, van: str) -> Availability | None:
        """Give the availability on a van."""
        return self.by_van.get(van, self.availability)


def item_vans(item: Item | None, parsed: Parsed, split: int) -> frozenset[str] | None:
    """Give the vans to which the words beside a value tie it, or ``None`` where they name none."""
    mentions = [i for i in parsed.items if i.vans]
    mentions = [i for i in mentions if not (len(mentions) > 1 and _is_denied(i, parsed))]
    if item is None:
        return None
    everyone = [
        cue for cue in parsed.cues("all_vans", "two_vans") if not _overlap(cue, item) and means_all(cue, parsed)
    ]
    near = [cue for cue in everyone if cue.chunk == item.chunk]
    if near:
        return _all_or_two(near)
    in_order = van_in_order(item, parsed)
    if in_order is not None:
        return in_order
    if not mentions:
        return None
    chunk = [m for m in mentions if m.chunk == item.chunk]
    if chunk:
        return _in_turn(item, chunk, parsed) or _union([*_before_comma(chunk[0], mentions, parsed), *chunk])
    behind = bracket_behind(item, parsed)
    if behind is not None:
        held = _in_bracket(behind, mentions, parsed)
        if _in_bracket(behind, everyone, parsed):
            return EVERYONE  # "(all floorplans; included on the 21)"
        if held:
            return _union(held)
    closing = closing_bracket(item, mentions, parsed)
    if closing:
        return _union(closing)
    apart = [m for m in mentions if _is_apart(m, parsed) or _ends_line(m, parsed)]
    clause = [m for m in apart if m.clause == item.clause]
    nearest = [m for m in clause if m.start > item.end and not _figures_between(item, m, parsed)]
    if nearest:
        return _union(_listed(nearest, 1))
    if clause and _closes_clause(clause, item, mentions, parsed):
        return _union(clause)
    if (listed := _end_of_list(item, mentions, parsed)) is not None:
        return listed.vans
    opening = [cue for cue in everyone if _opens_sentence(cue, item, mentions, parsed)]
    if opening:
        return _all_or_two(opening)
    subject = [m for m in mentions if m.sentence == item.sentence and m.start < item.start]
    if len(subject) > 1 and parsed.goes_on(item.clause) and _is_compared(subject, parsed):
        return subject[0].vans  # "The 21 Snow builds on the 21; it is tested to -18 °C"
    leading = [m for m in subject if _leads(m, parsed)]
    if leading:
        return _union(_listed(leading[::-1], -1))
    in_label = [m for m in mentions if m.start < split]
    if in_label:
        return _union(in_label)
    last = [m for m in subject if m.chunk == subject[-1].chunk]
    return _union([*_before_comma(last[0], mentions, parsed), *last]) if last else None


def _is_denied(mention: Item, parsed: Parsed) -> bool:
    """Tell whether a part of a sentence only says of which van something is not: "the 21, not the 19, as …"."""
    start, end = parsed.chunk_span(mention.chunk)
    cue = next(
        (c for c in parsed.cues("negation", "not_so") if c.chunk == mention.chunk and c.end <= mention.start), None
    )
    if cue is None or any(map(str.isalnum, parsed.text[start : cue.start])) or parsed.text[start : start + 1] != ",":
        return False
    alone = len(parsed.between(cue.end, mention.start)) <= 1 and not any(
        map(str.isalnum, parsed.text[mention.end : end])
    )
    return alone and any(i.vans and i.sentence == mention.sentence and i.end <= start for i in parsed.items)


def _end_of_list(item: Item, mentions: list[Item], parsed: Parsed) -> Item | None:
    """Give the van at the end of a list of alike words: "walls on the 19; walls, floor and doors on the 21"."""
    van = next((m for m in mentions if m.clause == item.clause and m.start >= item.end), None)
    if van is None or van.chunk == item.chunk or item.quantity is not None:
        return None
    between = [i for i in parsed.items if item.end <= i.start < van.start and (i.tells or i.quantity is not None)]
    ends = any(i.chunk == van.chunk for i in between)
    return van if ends and all(_of_one_kind(i, item) for i in between) else None


def _is_compared(mentions: list[Item], parsed: Parsed) -> bool:
    """Tell whether a sentence begins with a van and names the next one amid what it says of it, not in a list."""
    first, second = mentions[:2]
    opens = BEGINS.search(parsed.text, 0, first.start) is not None
    return opens and len(parsed.text[first.end : second.start].split()) >= WORDS_BETWEEN


def _all_or_two(cues: list[Item]) -> frozenset[str]:
    return EVERYONE if any(cue.has("cue", "all_vans") for cue in cues) else THE_TWO


def _opens_sentence(cue: Item, item: Item, mentions: list[Item], parsed: Parsed) -> bool:
    """Tell whether words for all vans begin a sentence, up to the next van: "In every van the tank is inside, …"."""
    if cue.sentence != item.sentence or cue.end > item.start:
        return False
    first = BEGINS.search(parsed.text, 0, cue.start) is not None
    return first and not any(cue.end <= m.start < item.start for m in mentions)


def means_all(cue: Item, parsed: Parsed) -> bool:
    """Tell whether words mean all vans; "both" does where it ends its part and no two things are named before it.

    Of several words ("bei beiden doppelt verglast") it may go on in small letters: a noun would have a capital.
    """
    if cue.has("cue", "all_vans"):
        return True
    behind = parsed.text[cue.end :].lstrip()[:1]
    if behind not in ("", ".", ",", ";", ")") and not (cue.last - cue.first > 1 and behind.islower()):
        return False
    before = [i for i in parsed.items if i.sentence == cue.sentence and i.end <= cue.start]
    return len({name for i in before for kind in ("thing", "short") for name in i.names(kind)}) < 2


def _listed(mentions: list[Item], step: int) -> list[Item]:
    """Give the mentions of vans in the first one's chunk and in the chunks that follow without a gap: "A, B and C"."""
    found = [m for m in mentions if m.chunk == mentions[0].chunk]
    while more := [m for m in mentions if m.chunk == found[-1].chunk + step and m.sentence == found[0].sentence]:
        found += more
    return found


def _before_comma(mention: Item, mentions: list[Item], parsed: Parsed) -> list[Item]:
    """Give the vans that a list names before one, each behind a comma: "The 18, the 20 and the 23"."""
    found: list[Item] = []
    first = mention
    for other in reversed([m for m in mentions if m.end <= mention.start and m.sentence == mention.sentence]):
        if not LISTED.fullmatch(parsed.text, other.end, first.start):
            break
        found.append(other)
        first = other
    return found


def _in_bracket(chunk: int, mentions: list[Item], parsed: Parsed) -> list[Item]:
    """Give the vans named in the bracket that a chunk opens, all of "(541, 599 and 636)"."""
    start, _ = parsed.chunk_span(chunk)
    end = parsed.text.find(")", start)
    return [m for m in mentions if m.depth > 0 and start <= m.start < (end if end >= 0 else len(parsed.text))]


def closing_bracket(item: Item, mentions: list[Item], parsed: Parsed) -> list[Item]:
    """Give the vans in the bracket that ends a short line and names the only vans in it."""
    text = parsed.text.rstrip(" .;")
    opening, closing = text.rfind("("), text.rfind(")")
    if is_price(text[closing + 1 :]):
        text = text[: closing + 1]
    if len(text) > SHORT_LINE or not text.endswith(")") or opening < 0:
        return []
    inside = [m for m in mentions if m.start > opening]
    return inside if inside and len(inside) == len(mentions) and item.start < opening else []


def _overlap(one: Item, two: Item) -> bool:
    """Tell whether two senses of the same words are meant, as of "all four" under "driven wheels"."""
    return one.start < two.end and two.start < one.end


def _in_turn(item: Item, mentions: list[Item], parsed: Parsed) -> frozenset[str] | None:
    """Give the van of a figure or word where vans and these take turns: "200 W on the 19 and 400 W on the 21".

    So they do in "inside the cabin on the 19 and in a double floor on the 21".
    """
    if len(mentions) < 2:
        return None
    figures = [i for i in parsed.items if i.chunk == item.chunk and (i is item or _of_one_kind(i, item))]
    turns = sorted([*mentions, *figures], key=lambda i: i.start)
    if len(figures) != len(mentions) or any(bool(a.vans) == bool(b.vans) for a, b in itertools.pairwise(turns)):
        return None
    place = turns.index(item)
    return turns[place - 1].vans if turns[0].vans else turns[place + 1].vans


def _of_one_kind(one: Item, two: Item) -> bool:
    """Tell whether two items are figures of one dimension or words of one vocabulary."""
    if one.quantity is not None and two.quantity is not None:
        return one.quantity.dimension == two.quantity.dimension
    return alike(one, two)


def _union(mentions: list[Item]) -> frozenset[str]:
    return frozenset().union(*(m.vans for m in mentions))


def _closes_clause(clause: list[Item], item: Item, mentions: list[Item], parsed: Parsed) -> bool:
    """Tell whether vans named at the end of a clause own all of it, as in "105 Ah, 12 V, on A; 400 Ah, on B"."""
    behind = all(
        m.start > i.end
        for m in clause
        for i in parsed.items
        if i.clause == item.clause
        and i.quantity is not None
        and i.quantity.dimension not in DESCRIBING
        and not has_price(parsed.text[max(0, i.start - 4) : i.end + 4])
    )
    elsewhere = any(m.sentence == item.sentence and m.clause != item.clause for m in mentions)
    closing = len(parsed.text) <= SHORT_LINE and len({m.chunk for m in mentions}) == 1
    return behind and (elsewhere or closing)


def bracket_behind(item: Item, parsed: Parsed) -> int | None:
    """Give the chunk of the bracket that follows right behind a value's chunk."""
    _, end = parsed.chunk_span(item.chunk)
    return item.chunk + 1 if parsed.text[end : end + 1] in ("(", "[") else None


def _is_apart(mention: Item, parsed: Parsed) -> bool:
    """Tell whether a van is named in a chunk of its own, without a value beside it."""
    return not any(
        i.chunk == mention.chunk and (i.quantity is not None or any(c.kind in MEANING for c in i.concepts))
        for i in parsed.items
    )


def _ends_line(mention: Item, parsed: Parsed) -> bool:
    """Tell whether a van ends a line of one thing, behind its last figure: "Furnace, propane, 9 kW on the 19"."""
    if parsed.text[mention.end :].strip() or any(clause for _, _, clause, _, _ in parsed.bounds):
        return False
    return not any(i.chunk == mention.chunk and (i.has("thing") or i.has("short")) for i in parsed.items)


def _leads(mention: Item, parsed: Parsed) -> bool:
    start, end = parsed.chunk_span(mention.chunk)
    return _is_apart(mention, parsed) and parsed.text[end : end + 1] in (":", "–", "—", "")


def _figures_between(item: Item, mention: Item, parsed: Parsed) -> bool:
    """Tell whether a figure of another thing stands between; a voltage only describes what it stands with."""
    return any(
        i.quantity is not None and i.quantity.dimension not in DESCRIBING and item.end <= i.start < mention.start
        for i in parsed.items
    )
