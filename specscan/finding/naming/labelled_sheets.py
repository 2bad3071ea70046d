"""Documents of several sheets or listings, in each of which a label tells its van: "Model: Drift 19" above its data.

The line with the label is then the heading of its sheet.
"""

from __future__ import annotations

import itertools
from collections import Counter, defaultdict
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from specscan.finding.language.whole_words import holds
from specscan.records.text import Kind, Passage

MIN_SHEETS = 2
MIN_SHARED = 3  # labels that each has with another
LONGEST_LABEL = 40
LINES = (Kind.LINE, Kind.PROSE, Kind.BULLET)


def with_labelled_sheets(
    passages: Sequence[Passage], labels: Iterable[str], can_be_name: Callable[[str], bool]
) -> tuple[tuple[Passage, ...], frozenset[str]]:
    """Give the passages with such lines as headings over their sheets, where two or more are alike, and these names.

    ``labels`` are those beside a van's name. Where headings name the vans already nothing is changed.
    """
    wanted = {label.casefold() for label in labels}
    openers: dict[str, list[int]] = defaultdict(list)
    for place, passage in enumerate(passages):
        label, text = labelled(passage)
        if label in wanted and not (openers[label] and labelled(passages[openers[label][-1]])[1] == text):
            openers[label].append(place)
    for begins in openers.values():
        names = [labelled(passages[place])[1] for place in begins]
        headed = any(holds(above, name) for p in passages for above in p.sections for name in names)
        if len(set(names)) < max(MIN_SHEETS, len(names)) or headed or not all(map(can_be_name, names)):
            continue
        if sheets := _sheets(passages, begins):
            plain = _without_own_headings(passages, sheets)
            return _headed(plain, dict(zip(begins, sheets, strict=True))), frozenset(names)
    return tuple(passages), frozenset()


def labelled(passage: Passage) -> tuple[str, str]:
    """Give the label of a line in small letters and what it tells; empty texts for what has no label."""
    if passage.table is not None:
        single = passage.column is None or not passage.column.text
        label, text = (passage.row.text, passage.text) if single and passage.row is not None else ("", "")
    else:
        label, colon, text = passage.text.partition(":")
        label = label if colon and passage.kind in LINES else ""
    return (label.strip(" :").casefold(), text.strip(" .")) if len(label) <= LONGEST_LABEL else ("", "")


def _sheets(passages: Sequence[Passage], begins: Sequence[int]) -> list[range]:
    """Give the places of the passages of each sheet, nothing where they are not alike.

    What is labelled right before the first name stands before all others too, as "Make" does; a sheet ends with its
    last line that has a sister in another.
    """
    labels = [labelled(passage)[0] for passage in passages]
    before = 0
    while before < begins[0] and labels[begins[0] - before - 1]:
        before += 1
    lead = labels[begins[0] - before : begins[0]]
    if any(labels[max(0, place - before) : place] != lead for place in begins):
        return []
    ends = [*(place - before for place in begins[1:]), len(passages)]
    whole = [range(place - before, end) for place, end in zip(begins, ends, strict=True)]
    told = [{labels[n] for n in sheet if labels[n]} for sheet in whole]
    sheets = []
    for number, sheet in enumerate(whole):
        shared = set().union(*(one & told[number] for other, one in enumerate(told) if other != number))
        if len(shared) <= MIN_SHARED:  # the one of the name counts not
            return []
        sheets.append(range(sheet.start, max(n for n in sheet if labels[n] in shared) + 1))
    return sheets


def _without_own_headings(passages: Sequence[Passage], sheets: Sequence[range]) -> Sequence[Passage]:
    """Give the passages without headings each over one sheet: it is the label that names a van, not "Ref. 1187"."""
    over = [set.intersection(*(set(passages[n].sections) for n in sheet)) for sheet in sheets]
    counts = Counter(heading for headings in over for heading in headings)
    own = {heading for heading, count in counts.items() if count == 1}
    found = []
    for passage in passages:
        if passage.kind is Kind.HEADING and passage.text in own:
            passage = replace(passage, kind=Kind.LINE)
        found.append(replace(passage, sections=tuple(one for one in passage.sections if one not in own)))
    return found


def _headed(passages: Sequence[Passage], sheets: dict[int, range]) -> tuple[Passage, ...]:
    """Give the passages with the line at each place as the heading of its sheet."""
    found = list(passages)
    for place, sheet in sheets.items():
        opener = passages[place]
        name = labelled(opener)[1]
        for n in sheet:
            above = passages[n].sections
            alike = itertools.takewhile(lambda pair: pair[0] == pair[1], zip(above, opener.sections, strict=False))
            shared = len(list(alike))
            found[n] = replace(passages[n], sections=(*above[:shared], name, *above[shared:]))
        start = opener.text.index(name)
        pieces = tuple(
            replace(piece, start=max(0, piece.start - start), end=piece.end - start)
            for piece in opener.pieces
            if piece.end > start
        )
        found[place] = replace(
            opener, kind=Kind.HEADING, text=name, pieces=pieces, table=None, row=None, column=None, row_index=None,
            column_index=None,
        )  # fmt: skip
    return tuple(found)
