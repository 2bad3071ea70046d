"""How available a value in a statement is: by what is said beside it."""

from __future__ import annotations

from specscan.finding.marks.legend import AVAILABILITIES, said_by
from specscan.finding.marks.prices import price_ends
from specscan.finding.marks.scope import DESCRIBING, bracket_behind
from specscan.finding.things.found import Availability
from specscan.finding.things.items import Item, Parsed


def item_availability(item: Item | None, parsed: Parsed, split: int, van: str) -> Availability | None:
    """Give the availability that the words beside a value say, for a van, or ``None``."""
    if item is None or parsed.by_cue.keys().isdisjoint(AVAILABILITIES):
        return None
    cues = [i for i in parsed.items if i.has("cue", *AVAILABILITIES)]
    cues = [c for c in cues if not in_phrase(c, parsed) and not _is_replaced(c, parsed)]
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
    around = (
        _said_of_all(cues, item, parsed) or _of_alternative(cues, item, parsed) or _on_condition(cues, item, parsed)
    )
    if around is not None:
        return around
    if item.depth > 0:
        opening = [c for c in cues if c.chunk == item.chunk - 1 and c.start >= split and _leads_bracket(c, parsed)]
        return said_by(opening) if opening else None  # "option (2,000 W)"
    behind = bracket_behind(item, parsed)
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
    meant = [c for c in cues if c.clause == item.clause - 1] if parsed.goes_on(item.clause) else []
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


def _on_condition(cues: list[Item], item: Item, parsed: Parsed) -> Availability | None:
    """Give the availability of a sentence that ends in what it depends on: "85 L, inside, with the optional tank".

    It has one figure of each kind, none of them beside the condition: "60 L, or 85 L with the optional tank".
    """
    last = [c for c in cues if c.has("cue", "if_equipped") and c.sentence == item.sentence and c.start > item.end]
    if not last or not _opens_chunk(last[-1], parsed):
        return None
    sentence = [i for i in parsed.items if i.sentence == item.sentence and i.quantity is not None]
    kinds = [i.quantity.dimension for i in sentence if i.quantity is not None]
    beside = any(i.chunk == last[-1].chunk for i in sentence)
    return None if beside or len(kinds) > len(set(kinds)) else said_by(last[-1:])


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

    Before a bracket so does a kind that nothing before it tells: "200 Ah, AGM (option)", not "AGM, lithium (option)",
    and the first figure behind a kind: "gel, 2 x 150 Ah (option)", not "gel 90 Ah, 150 Ah (option)".
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
    earlier = [i for i in parsed.items if i.chunk < chunk and i.clause == cue.clause]
    if bracket and not telling and figures and any(i.names("value") for i in earlier) and not _measures(earlier):
        return True
    only = not _measures(figures)
    return bool(figures or telling) and only and (own or not telling)


def _measures(items: list[Item]) -> bool:
    """Tell whether a figure among items does more than describe, as a voltage does."""
    return any(i.quantity is not None and i.quantity.dimension not in DESCRIBING for i in items)


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


def in_phrase(cue: Item, parsed: Parsed) -> bool:
    """Tell whether a word such as "standard" only qualifies another: "standard van", "not an option"."""
    return any(
        other is not cue and other.start <= cue.start and cue.end <= other.end
        and other.end - other.start > cue.end - cue.start
        and any(c.kind in ("cue", "value", "thing") for c in other.concepts)
        for other in parsed.items
    )  # fmt: skip


def _is_replaced(cue: Item, parsed: Parsed) -> bool:
    """Tell whether a word such as "standard" says in place of what a thing comes: "150 Ah instead of standard"."""
    if cue.has("cue", "optional"):
        return False  # "instead of the first one at extra cost"
    before = (other for other in parsed.cues("not_for") if other.end <= cue.start)
    return any(len(parsed.between(other.end, cue.start)) <= 1 for other in before)


def _by_named_van(item: Item, cues: list[Item], parsed: Parsed, van: str) -> Availability | None:
    mentions = [i for i in parsed.items if i.vans]
    tied = [(cue, m.vans) for cue in cues for m in mentions if _right_before(cue, m, parsed)]
    for cue in cues:
        vans = [m for m in mentions if m.chunk == cue.chunk]
        alone = sum(other.chunk == cue.chunk for other, _ in tied) < 2  # else each has its own vans
        meant = cue.sentence == item.sentence or not _tells_of_things(cue.sentence, parsed)
        if vans and alone and meant and _is_apart_cue(cue, parsed) and any(van in m.vans for m in vans):
            return said_by([cue])
    if any(cue.clause == item.clause for cue in cues) and not any(cue.clause == item.clause for cue, _ in tied):
        return None  # "The cab's come with both vans; those of the doors come with the A and are an option on the B"
    prices = price_ends(parsed.text) if tied else []
    priced = [m for m in mentions for end in prices if end <= m.start and len(parsed.between(end, m.start)) <= 1]
    if any(van in m.vans and m.sentence == item.sentence for m in priced):
        return Availability.OPTIONAL  # "standard on the A and $260 on the B"
    said = [cue for cue, vans in tied if van in vans and cue.sentence == item.sentence]
    return said_by(said) if said and len(tied) + len(priced) > 1 else None  # "comes with A and can be ordered for B"


def _tells_of_things(sentence: int, parsed: Parsed) -> bool:
    """Tell whether a sentence names what it speaks of: "Underfloor heating is optional; not on the A"."""
    return any(i.sentence == sentence and (i.has("thing") or i.quantity is not None) for i in parsed.items)


def _right_before(cue: Item, mention: Item, parsed: Parsed) -> bool:
    """Tell whether words stand right before a van, or before "both" vans of a name."""
    if cue.end > mention.start or cue.sentence != mention.sentence:
        return False
    every = [c for c in parsed.cues("two_vans", "all_vans") if cue.end <= c.start and c.end <= mention.start]
    return len(parsed.between(cue.end, mention.start)) - sum(c.last - c.first for c in every) <= 1


def _is_apart_cue(cue: Item, parsed: Parsed) -> bool:
    """Tell whether an availability stands in a chunk without a value of its own."""
    return not any(
        i.chunk == cue.chunk and i is not cue
        and (i.quantity is not None or i.tells)
        for i in parsed.items
    )  # fmt: skip
