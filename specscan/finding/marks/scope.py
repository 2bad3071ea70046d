"""For which vans, and how available, a value in a statement is: by what is said beside it."""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass, field

from specscan.finding.marks.legend import AVAILABILITIES, said_by
from specscan.finding.marks.prices import has_price, is_price
from specscan.finding.things.found import Availability
from specscan.finding.things.in_order import van_in_order
from specscan.finding.things.items import Item, Parsed
from specscan.finding.things.sisters import MEANING

LISTED = re.compile(r",\s+(?:[a-zà-ÿ]{2,3}\s+)?")  # between two vans of a list: ", the "
BEGINS = re.compile(r"(?:\A|[.!?]\s+)(?:\w+\s+)?\Z")  # a sentence, with one word at most: "In" every van
EVERYONE: frozenset[str] = frozenset({"*"})
THE_TWO: frozenset[str] = frozenset({"**"})  # "both": the two vans of which the text speaks, or all
DESCRIBING = ("voltage", "money", "time")
SHORT_LINE = 110  # letters, in which a bracket at the end speaks of the whole line


@dataclass(slots=True)
class Scope:
    """What holds for a whole statement: its vans (``None``: all) and availability by van.

    ``headed``: a heading named its vans, not the head of a column or a sentence before.
    """

    vans: frozenset[str] | None = None
    availability: Availability | None = None
    by_van: dict[str, Availability] = field(default_factory=dict)
    headed: bool = False

    def of(self, van: str) -> Availability | None:
        """Give the availability on a van."""
        return self.by_van.get(van, self.availability)


def item_vans(item: Item | None, parsed: Parsed, split: int) -> frozenset[str] | None:
    """Give the vans to which the words beside a value tie it, or ``None`` where they name none."""
    mentions = [i for i in parsed.items if i.vans]
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
    behind = _bracket_behind(item, parsed)
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
    opening = [cue for cue in everyone if _opens_sentence(cue, item, mentions, parsed)]
    if opening:
        return _all_or_two(opening)
    leading = [m for m in mentions if m.sentence == item.sentence and m.start < item.start and _leads(m, parsed)]
    if leading:
        return _union(_listed(leading[::-1], -1))
    in_label = [m for m in mentions if m.start < split]
    if in_label:
        return _union(in_label)
    subject = [m for m in mentions if m.sentence == item.sentence and m.start < item.start]
    last = [m for m in subject if m.chunk == subject[-1].chunk]
    return _union([*_before_comma(last[0], mentions, parsed), *last]) if last else None


def _all_or_two(cues: list[Item]) -> frozenset[str]:
    return EVERYONE if any(cue.has("cue", "all_vans") for cue in cues) else THE_TWO


def _opens_sentence(cue: Item, item: Item, mentions: list[Item], parsed: Parsed) -> bool:
    """Tell whether words for all vans begin a sentence, up to the next van: "In every van the tank is inside, …"."""
    if cue.sentence != item.sentence or cue.end > item.start:
        return False
    first = BEGINS.search(parsed.text, 0, cue.start) is not None
    return first and not any(cue.end <= m.start < item.start for m in mentions)


def means_all(cue: Item, parsed: Parsed) -> bool:
    """Tell whether words mean all vans; "both" does where it ends its part and no two things are named before it."""
    if cue.has("cue", "all_vans"):
        return True
    if parsed.text[cue.end :].lstrip()[:1] not in ("", ".", ",", ";", ")"):
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
    """Give the van of a figure where vans and figures take turns: "200 W on the 19 and 400 W on the 21"."""
    if item.quantity is None or len(mentions) < 2:
        return None
    figures = [
        i for i in parsed.items
        if i.quantity is not None and i.chunk == item.chunk and i.quantity.dimension == item.quantity.dimension
    ]  # fmt: skip
    turns = sorted([*mentions, *figures], key=lambda i: i.start)
    if len(figures) != len(mentions) or any(bool(a.vans) == bool(b.vans) for a, b in itertools.pairwise(turns)):
        return None
    place = turns.index(item)
    return turns[place - 1].vans if turns[0].vans else turns[place + 1].vans


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


def _bracket_behind(item: Item, parsed: Parsed) -> int | None:
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


def item_availability(item: Item | None, parsed: Parsed, split: int, van: str) -> Availability | None:
    """Give the availability that the words beside a value say, for a van, or ``None``."""
    if item is None or parsed.by_cue.keys().isdisjoint(AVAILABILITIES):
        return None
    cues = [i for i in parsed.items if any(c.kind == "cue" and c.name in AVAILABILITIES for c in i.concepts)]
    cues = [c for c in cues if not _in_phrase(c, parsed) and not _is_replaced(c, parsed)]
    if not cues:
        return None
    named = _by_named_van(item, cues, parsed, van)
    if named is not None:
        return named
    leading = [c for c in cues if c.start >= split and _opens_list(c, parsed)]
    before = [c for c in leading if c.start < item.start and _same_stretch(c, item, parsed)]
    if before:
        return said_by(before[-1:])
    cues = [c for c in cues if c not in leading]
    own = [c for c in cues if c.chunk == item.chunk and (c.start < split) == (item.start < split)]
    if own:
        return said_by(own)
    around = _said_of_all(cues, item, parsed) or _of_alternative(cues, item, parsed)
    if around is not None:
        return around
    if item.depth > 0:
        opening = [c for c in cues if c.chunk == item.chunk - 1 and c.start >= split and _leads_bracket(c, parsed)]
        return said_by(opening) if opening else None  # "option (2,000 W)"
    behind = _bracket_behind(item, parsed)
    if behind is not None:
        held = [c for c in cues if c.chunk == behind]
        if held and _is_apart_cue(held[0], parsed):
            return said_by(held)
    apart = [c for c in cues if c.sentence == item.sentence and c.depth == 0 and _is_apart_cue(c, parsed)]
    apart = [c for c in apart if not _leads_another(c, item, parsed)]
    if apart:
        return said_by(apart)
    bracketed = [c for c in cues if c.sentence == item.sentence and c.depth > 0 and _is_apart_cue(c, parsed)]
    before = [c for c in bracketed if c.start < item.start]
    if before and (before[-1].has("cue", "if_equipped") or before[-1].start < split):
        return said_by(before)
    meant = [c for c in cues if c.clause == item.clause - 1] if _opens_with_pronoun(item, parsed) else []
    if meant:
        return said_by(meant[-1:])
    label = [c for c in cues if c.start < split]
    return said_by(label) if label else None


def _leads_another(cue: Item, item: Item, parsed: Parsed) -> bool:
    """Tell whether an availability behind a figure leads another such figure: "130 W; second panel option, 260 W"."""
    if item.quantity is None or cue.start < item.end or cue.clause == item.clause:
        return False
    figures = (i.quantity for i in parsed.items if i.clause == cue.clause and i.start >= cue.end)
    return any(figure is not None and figure.dimension == item.quantity.dimension for figure in figures)


def _opens_with_pronoun(item: Item, parsed: Parsed) -> bool:
    """Tell whether a clause goes on about what the one before offers: "a battery (option); it has its own heater"."""
    start = next((bound[0] for bound in parsed.bounds if bound[2] == item.clause), 0)
    return any(
        cue.clause == item.clause and not any(letter.isalnum() for letter in parsed.text[start : cue.start])
        for cue in parsed.cues("pronoun")
    )


def _said_of_all(cues: list[Item], item: Item, parsed: Parsed) -> Availability | None:
    """Give the availability with which a list begins or ends that describes one thing, for a member of the list.

    "Two 105 Ah, AGM, optional two 150 Ah, lithium": the option goes on up to the end. "3 x 105 Ah, lithium, 12 V
    (optional)": a voltage alone is no option, so all of it is.
    """
    around = [c for c in cues if c.clause == item.clause and c.sentence == item.sentence]
    opening = [c for c in around if c.chunk < item.chunk and c.depth == item.depth and _opens_chunk(c, parsed)]
    if opening and not _names_another(opening[-1].chunk, item.chunk, parsed):
        return said_by(opening[-1:])
    closing = [c for c in around if c.chunk > item.chunk and _closes_description(c, item.depth, parsed)]
    if closing and not _names_another(item.chunk, closing[0].chunk, parsed):
        return said_by(closing[:1])
    return None


def _of_alternative(cues: list[Item], item: Item, parsed: Parsed) -> Availability | None:
    """Give the availability that ends a bracket, for what else is in it, where this stands for what is before it.

    "100 Ah, 12.8 V (two 100 Ah, 12.8 V, with internal heaters optional)": another figure of the same kind.
    """
    start, end = parsed.text.rfind("(", 0, item.start), parsed.text.find(")", item.end)
    if item.depth == 0 or start < 0 or end < 0:
        return None
    closing = [c for c in cues if start < c.start and c.end <= end and not parsed.text[c.end : end].strip()]
    if not closing or _names_another(item.chunk, closing[0].chunk, parsed):
        return None
    figures = [(i.start, i.quantity.dimension) for i in parsed.items if i.quantity is not None and i.end <= end]
    before = {dimension for at, dimension in figures if at < start} - set(DESCRIBING)
    return said_by(closing) if before & {dimension for at, dimension in figures if at > start} else None


def _opens_chunk(cue: Item, parsed: Parsed) -> bool:
    start, end = parsed.chunk_span(cue.chunk)
    return not parsed.text[start : cue.start].strip(" ,;(") and bool(parsed.text[cue.end : end].strip())


def _closes_description(cue: Item, depth: int, parsed: Parsed) -> bool:
    """Tell whether an availability ends a chunk, or stands in a bracket behind one, that only describes: a voltage.

    Before a bracket so does a kind that nothing before it tells: "200 Ah, AGM (option)", not "AGM, lithium (option)".
    """
    start, end = parsed.chunk_span(cue.chunk)
    if parsed.text[cue.end : end].strip():
        return False
    bracket = not parsed.text[start : cue.start].strip(" ,;(")
    if parsed.text[start : start + 1] != "(" if bracket else cue.depth > depth:
        return False
    chunk = cue.chunk - bracket
    held = [i for i in parsed.items if i.chunk == chunk and i is not cue]
    figures = [i for i in held if i.quantity is not None]
    telling = [i for i in held if i.tells and not any(f.start <= i.start and i.end <= f.end for f in figures)]
    kinds = {name for i in telling for name in i.names("value")}
    before = {name for i in parsed.items if i.chunk < chunk and i.clause == cue.clause for name in i.names("value")}
    own = bracket and kinds.isdisjoint(before) and all(i.names("value") and not i.has("term") for i in telling)
    only = {i.quantity.dimension for i in figures if i.quantity is not None} <= set(DESCRIBING)
    return bool(figures or telling) and only and (own or not telling)


def _names_another(first: int, last: int, parsed: Parsed) -> bool:
    """Tell whether a thing is named behind chunk ``first``, up to chunk ``last``."""
    return any(first < i.chunk <= last and i.has("thing") for i in parsed.items)


def _leads_bracket(cue: Item, parsed: Parsed) -> bool:
    """Tell whether an availability stands right before a bracket, behind no figure: "option (2,000 W)"."""
    _, end = parsed.chunk_span(cue.chunk)
    figures = any(i.chunk == cue.chunk and i.quantity is not None for i in parsed.items)
    return parsed.text[end : end + 1] == "(" and not parsed.text[cue.end : end].strip() and not figures


def _opens_list(cue: Item, parsed: Parsed) -> bool:
    """Tell whether an availability leads what follows, and only that: "100 W (option: 200 W)"."""
    _, end = parsed.chunk_span(cue.chunk)
    return parsed.text[end : end + 1] == ":" and _is_apart_cue(cue, parsed)


def _same_stretch(cue: Item, item: Item, parsed: Parsed) -> bool:
    """Tell whether no bracket or sentence ends between two items."""
    depths = [depth for start, _, _, _, depth in parsed.bounds if cue.end <= start <= item.start]
    return cue.sentence == item.sentence and item.depth >= cue.depth and min(depths, default=0) >= cue.depth


def _in_phrase(cue: Item, parsed: Parsed) -> bool:
    """Tell whether a word such as "standard" only qualifies another: "standard van", "not an option"."""
    return any(
        other is not cue and other.start <= cue.start and cue.end <= other.end
        and other.end - other.start > cue.end - cue.start
        and any(c.kind in ("cue", "value", "thing") for c in other.concepts)
        for other in parsed.items
    )  # fmt: skip


def _is_replaced(cue: Item, parsed: Parsed) -> bool:
    """Tell whether a word such as "standard" says in place of what a thing comes: "150 Ah instead of standard"."""
    before = (other for other in parsed.cues("not_for") if other.end <= cue.start)
    return any(len(parsed.between(other.end, cue.start)) <= 1 for other in before)


def _by_named_van(item: Item, cues: list[Item], parsed: Parsed, van: str) -> Availability | None:
    for cue in cues:
        vans = [i for i in parsed.items if i.vans and i.chunk == cue.chunk]
        if vans and _is_apart_cue(cue, parsed) and any(van in v.vans for v in vans):
            return said_by([cue])
    tied = [(cue, i.vans) for cue in cues for i in parsed.items if i.vans and _right_before(cue, i, parsed)]
    said = [cue for cue, vans in tied if van in vans and cue.sentence == item.sentence]
    return said_by(said) if said and len(tied) > 1 else None  # "comes with the A and can be ordered for the B"


def _right_before(cue: Item, mention: Item, parsed: Parsed) -> bool:
    return (
        cue.end <= mention.start
        and cue.sentence == mention.sentence
        and len(parsed.between(cue.end, mention.start)) <= 1
    )


def _is_apart_cue(cue: Item, parsed: Parsed) -> bool:
    """Tell whether an availability stands in a chunk without a value of its own."""
    return not any(
        i.chunk == cue.chunk and i is not cue
        and (i.quantity is not None or i.tells)
        for i in parsed.items
    )  # fmt: skip
