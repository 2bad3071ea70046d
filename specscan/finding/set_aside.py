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
        warned = {cue.sentence for cue in parsed.cues("caution", "other_vans")}
        warned |= {cue.sentence for cue in parsed.cues("warns_first") if parsed.opens_sentence(cue)}
        ignored |= {id(item) for item in parsed.items if item.sentence in warned}
    for cue in parsed.cues("not_for"):
        for item in parsed.items:
            if item.start >= cue.end and item.clause == cue.clause and item.depth == cue.depth:
                if item.chunk == cue.chunk or not _breaks(parsed, cue, item):
                    ignored.add(id(item))
    for cue in parsed.cues("hedge"):
        for item in parsed.items:
            if item is not cue and item.chunk == cue.chunk:
                ignored.add(id(item))
    return ignored


def _breaks(parsed: Parsed, cue: Item, item: Item) -> bool:
    start, _ = parsed.chunk_span(item.chunk)
    return parsed.text[start : start + 1] in (",", "(", ")")
