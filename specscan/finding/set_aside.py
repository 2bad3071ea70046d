"""Items of a statement that do not count: what it is instead of, prepared for, warned of or only measured with."""

from __future__ import annotations

from specscan.finding.items import Item, Parsed


def _besides(parsed: Parsed, split: int) -> set[int]:
    """Give the items of a label that only qualify it: "height with roof fan", "w/heater"."""
    ignored: set[int] = set()
    for cue in parsed.cues("besides"):
        if cue.start >= split:
            continue
        before = [
            i for i in parsed.items if i.end <= cue.start and (i.has("thing") or i.has("short") or i.has("alone"))
        ]
        if not before:
            continue
        for item in parsed.items:
            near = item.chunk == cue.chunk or item.chunk == cue.chunk + 1 and item.depth > cue.depth
            if cue.end <= item.start < split and near:
                ignored.add(id(item))
    return ignored


def ignored_items(parsed: Parsed, split: int, *, running: bool) -> set[int]:
    """Give the items that a cue sets aside: "instead of LP", "prewired", "replaces the furnace"."""
    ignored = _besides(parsed, split)
    if running:
        warned = {cue.sentence for cue in parsed.cues("caution")}
        warned |= {cue.sentence for cue in parsed.cues("warns_first") if parsed.opens_sentence(cue)}
        ignored |= {id(item) for item in parsed.items if item.sentence in warned}
    others = {cue.clause for cue in parsed.cues("other_vans")} if not split else set()
    ignored |= {id(item) for item in parsed.items if item.clause in others}
    for cue in parsed.cues("not_for"):
        end = _end_of_replaced(cue, parsed)
        for item in parsed.items:
            if item.start >= end:
                continue
            if item.start >= cue.end and item.clause == cue.clause and item.depth == cue.depth:
                if item.chunk == cue.chunk or not _breaks(parsed, cue, item):
                    ignored.add(id(item))
    for cue in parsed.cues("hedge"):
        alone = _says_only(cue, parsed, split)
        for item in parsed.items:
            if item is not cue and (item.chunk == cue.chunk or alone):
                ignored.add(id(item))
    return ignored | _asked(parsed, split) | _denied_figures(parsed)


def _end_of_replaced(cue: Item, parsed: Parsed) -> int:
    """Give where what is replaced ends: "replaces the AGM bank with two lithium batteries" goes on with what comes."""
    if not cue.has("cue", "replaces"):
        return len(parsed.text)
    behind = [c.start for c in parsed.cues("replaced_by") if c.start >= cue.end and c.chunk == cue.chunk]
    return min(behind, default=len(parsed.text))


def _says_only(cue: Item, parsed: Parsed, split: int) -> bool:
    """Tell whether the label or what answers it is nothing but a hedge: "Solar 120 W: prepared"."""
    if not split:
        return False
    part = [t for t in parsed.analysis.tokens if (t.start < split) == (cue.start < split) and t.norm.isalnum()]
    return all(cue.start <= token.start < cue.end for token in part)


def asked_sentences(parsed: Parsed, split: int) -> set[int]:
    """Give the numbers of the sentences behind a label that are questions."""
    if "?" not in parsed.text:
        return set()
    ends = {place for place, letter in enumerate(parsed.text) if letter == "?" and place >= split}
    return {bound[3] - 1 for bound in parsed.bounds if bound[0] in ends}


def _asked(parsed: Parsed, split: int) -> set[int]:
    """Give the figures and words that a question asks about and does not state: "50 A? No, 30 A"."""
    asked = asked_sentences(parsed, split)
    told = ("value", "term", "denied", "alone")
    return {
        id(item) for item in parsed.items
        if item.sentence in asked and item.start >= split and (item.quantity is not None or any(map(item.has, told)))
    }  # fmt: skip


def _denied_figures(parsed: Parsed) -> set[int]:
    """Give the figures of a part that begins with "not": "a 50 amp inlet, not one of 70 amp"."""
    found: set[int] = set()
    for cue in parsed.cues("not_so"):
        start, _ = parsed.chunk_span(cue.chunk)
        if cue.chunk > 0 and not any(c.isalnum() for c in parsed.text[start + 1 : cue.start]):
            found |= {id(i) for i in parsed.items if i.quantity is not None and i.chunk == cue.chunk}
    return found


def _breaks(parsed: Parsed, cue: Item, item: Item) -> bool:
    start, _ = parsed.chunk_span(item.chunk)
    return parsed.text[start : start + 1] in (",", "(", ")")
