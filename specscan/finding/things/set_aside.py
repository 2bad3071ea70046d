"""Items of a statement that do not count: what it is instead of, prepared for, warned of or only measured with."""

from __future__ import annotations

from specscan.finding.things.items import Item, Parsed

DONE_NEAR = 2  # words between "fitted" and "last year" at most
LEAST_SUBJECTS = 3  # words of a line of nothing but subjects
SUBJECT_KINDS = {"section", "short", "beside"}
MOST_BEFORE_MAT = 4  # words of its sentence: "The 12 V heating pad"


def _besides(parsed: Parsed, split: int) -> set[int]:
    """Give the items of a label that only qualify it: "height with roof fan", "w/heater"."""
    ignored: set[int] = set()
    for cue in parsed.cues("besides"):
        if cue.start >= split or parsed.text[cue.start - 1 : cue.start] == "/":
            continue  # the "W /" of "L/W/H" is no "with"
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
    warned = _warned_from(parsed) if running or _only_warns(parsed, split) else {}
    if running or not split:
        warned |= {cue.sentence: 0 for cue in parsed.cues("warns_first") if parsed.opens_sentence(cue)}
    ignored |= {id(item) for item in parsed.items if item.start >= warned.get(item.sentence, len(parsed.text))}
    ignored |= _of_others(parsed) if not split else set()
    named_before = {cue.first for cue in parsed.cues("named_before")}
    for cue in parsed.cues("not_for"):
        if cue.last in named_before or cue.has("thing"):
            continue  # "In place of them you may have lithium batteries", and the "places" that are seats
        end = _end_of_replaced(cue, parsed)
        end = min(end, split) if cue.start < split else end  # "Lithium instead of AGM: 200 Ah"
        for item in parsed.items:
            if item.start >= end:
                continue
            if item.start >= cue.end and item.clause == cue.clause and item.depth == cue.depth:
                if item.chunk == cue.chunk or not _breaks(parsed, cue, item):
                    ignored.add(id(item))
    for cue in parsed.cues("hedge"):
        if _rates_cold(cue, parsed):
            continue
        alone = _says_only(cue, parsed, split)
        beside = _chunk_beside(cue, parsed)
        for item in parsed.items:
            if item is not cue and (item.chunk in (cue.chunk, beside) or alone):
                ignored.add(id(item))
    ignored |= _doses(parsed) | _of_mats(parsed) | (_subjects(parsed) if not split else set())
    return ignored | _asked(parsed, split) | _denied_figures(parsed) | _former(parsed)


def _rates_cold(cue: Item, parsed: Parsed) -> bool:
    """Tell whether words such as "prévu pour" say for what cold a van is made: "prévu pour -20 °C"."""
    figures = (i for i in parsed.items if i.quantity is not None and i.chunk == cue.chunk and i.start >= cue.end)
    return cue.has("thing") and any(i.quantity.dimension == "temperature" for i in figures)  # type: ignore[union-attr]


def _of_others(parsed: Parsed) -> set[int]:
    """Give what is said of other vans: "last year's had 90 Ah"; but not "battery, new last year"."""
    cues = [cue for cue in parsed.cues("other_vans") if not _is_when(cue, parsed)]
    return {id(i) for i in parsed.items for cue in cues if i.clause == cue.clause and i.depth >= cue.depth}


def _is_when(cue: Item, parsed: Parsed) -> bool:
    """Tell whether words such as "last year" only say when something was done to this van."""
    done = [one for one in parsed.cues("done_then") if one.clause == cue.clause]
    return any(0 <= cue.first - one.last <= DONE_NEAR or one.first == cue.last for one in done)


def _warned_from(parsed: Parsed) -> dict[int, int]:
    """Give for the numbers of sentences that warn of something where they begin to.

    What stands before a "but" is told: "The Drift is a four-season van, but the tank must be emptied in frost".
    """
    found: dict[int, int] = {}
    for cue in parsed.cues("caution"):
        turns = [turn.start for turn in parsed.cues("contrast") if turn.sentence == cue.sentence]
        begins = max((start for start in turns if start < cue.start), default=0)
        found[cue.sentence] = min(begins, found.get(cue.sentence, begins))
    return found


def _subjects(parsed: Parsed) -> set[int]:
    """Give the words that may name a thing in a line of single words, as in "Contents: water, heating"."""
    words = [token for token in parsed.analysis.tokens if token.norm[0].isalnum()]
    if not LEAST_SUBJECTS <= len(words) <= len({bound[1] for bound in parsed.bounds}):
        return set()
    naming = [item for item in parsed.items if item.has("value") and not SUBJECT_KINDS.isdisjoint(item.by_kind)]
    return set(map(id, naming)) if any(item.has("section") for item in parsed.items) else set()


def _doses(parsed: Parsed) -> set[int]:
    """Give the volumes to which something is added: "an ounce of bleach to every 15 gal" of water."""
    ends = {cue.last for cue in parsed.cues("dosed")}
    volumes = [i for i in parsed.items if i.quantity is not None and i.quantity.dimension == "volume"]
    return {id(item) for item in volumes if item.first in ends}


def _of_mats(parsed: Parsed) -> set[int]:
    """Give what a heating mat takes: "The electric mat takes 8 A" is said of no heater, and of no inlet."""
    told: set[int] = set()
    for cue in parsed.cues("mats"):
        start = next((b[0] for b in parsed.bounds if b[3] == cue.sentence), 0)
        if sum(start <= token.start < cue.start for token in parsed.analysis.tokens) <= MOST_BEFORE_MAT:
            told.add(cue.sentence)
    for cue in parsed.cues("pronoun"):  # in order
        if cue.sentence - 1 in told and parsed.opens_sentence(cue):
            told.add(cue.sentence)
    takes = {i.last for i in parsed.items if i.has("aspect")} if told else set()
    return {id(i) for i in parsed.items if i.quantity is not None and i.sentence in told and i.first in takes}


def _only_warns(parsed: Parsed, split: int) -> bool:
    """Tell whether a label has no figure behind it but a caution: "Gas, heating: to be fitted by engineers only"."""
    if not split or not any(cue.start >= split for cue in parsed.cues("caution")):
        return False
    return not any(i.quantity is not None and not i.quantity.bare for i in parsed.items if i.start >= split)


def _former(parsed: Parsed) -> set[int]:
    """Give what was there before: "(was 200 W)", "the stock battery was swapped for", "replaced the original one"."""
    found: set[int] = set()
    for cue in parsed.cues("formerly", "stock_part"):
        start, end = parsed.chunk_span(cue.chunk)
        if cue.chunk > 0 and not any(c.isalnum() for c in parsed.text[start + 1 : cue.start]):
            if cue.depth or cue.has("cue", "formerly"):
                found |= {id(i) for i in parsed.items if i.clause == cue.clause and _with(cue, i)}
                continue
        swaps = [one for one in parsed.cues("swapped") if one.sentence == cue.sentence]
        if not cue.has("cue", "stock_part") or not swaps:
            continue
        behind = [one.start for one in swaps if one.start >= cue.end]
        end = min(behind, default=end)
        found |= {id(i) for i in parsed.items if cue.end <= i.start < end and i.sentence == cue.sentence}
    return found


def _with(cue: Item, item: Item) -> bool:
    """Tell whether an item stands behind a cue, in its brackets or its part of the sentence."""
    return item.start >= cue.end and (item.chunk == cue.chunk or 0 < cue.depth <= item.depth)


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


def _chunk_beside(cue: Item, parsed: Parsed) -> int | None:
    """Give the chunk of which a hedge speaks that is alone in its own: "200 W (coming soon)", "pre-wired, 400 W"."""
    start, end = parsed.chunk_span(cue.chunk)
    words = [t for t in parsed.analysis.tokens if start <= t.start < end and any(c.isalnum() for c in t.norm)]
    hedges = parsed.cues("hedge")
    if not all(any(one.start <= word.start < one.end for one in hedges) for word in words):
        return None
    return cue.chunk + 1 if not start or parsed.text[start] == "‖" else cue.chunk - 1


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
    """Give the figures of a part that begins with "not": "a 50 amp inlet, not one of 70 amp".

    Within a part it is the figure right behind, if it measures what one before does: "with 16 A and not with 36 A".
    """
    found: set[int] = set()
    cues = parsed.cues("not_so")
    figures = [(i, i.quantity.dimension) for i in parsed.items if i.quantity is not None] if cues else []
    for cue in cues:
        start, _ = parsed.chunk_span(cue.chunk)
        if cue.chunk > 0 and not any(c.isalnum() for c in parsed.text[start + 1 : cue.start]):
            found |= {id(i) for i, _ in figures if i.chunk == cue.chunk}
        elif cue.last - cue.first > 1:  # "and not"
            before = {measured for i, measured in figures if i.sentence == cue.sentence and i.end <= cue.start}
            behind = [(i, measured) for i, measured in figures if i.chunk == cue.chunk and i.start >= cue.end]
            found |= {id(i) for i, measured in behind[:1] if measured in before}
    return found


def _breaks(parsed: Parsed, cue: Item, item: Item) -> bool:
    start, _ = parsed.chunk_span(item.chunk)
    return parsed.text[start : start + 1] in (",", "(", ")")
