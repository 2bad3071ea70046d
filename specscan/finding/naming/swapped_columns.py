"""Tables whose rows begin with a number or a maker, the van standing in the column behind it.

"Order no. | Description | Length" over "4100 | Drift 4 | 19 ft" and "Maker | Model | Length" over "Marrowfen | Drift".
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Collection, Sequence
from dataclasses import replace

from specscan.finding.naming.name_forms import are_mostly_names
from specscan.records.text import Head, Passage, Title

EDGES = " .:#"
LEAST_LABELS = 3  # heads of columns that are labels: what is sold beside vans has hardly more than a price
LEAST_ROWS = 2


def with_vans_first(
    passages: Sequence[Passage],
    titles: Sequence[Title],
    models: Collection[str],
    leading: Collection[str],
    is_label: Callable[[str], bool],
    can_be_name: Callable[[str], bool],
) -> tuple[Passage, ...]:
    """Give the passages with the vans as the labels of such rows, and what was their label in the vans' column.

    ``models`` are heads of the column of the vans, ``leading`` those of what stands before it.
    """
    wanted, before = ({one.casefold().strip(EDGES) for one in some} for some in (models, leading))
    corners = {
        title.table: title.text for title in titles
        if title.table is not None and title.text.casefold().strip(EDGES) in before
    }  # fmt: skip
    rows: dict[int, list[Passage]] = defaultdict(list)
    for passage in passages if corners else ():
        if passage.table in corners and passage.table is not None and passage.row is not None and passage.column:
            rows[passage.table].append(passage)
    swapped: dict[tuple[int | None, int | None], Passage] = {}
    for cells in rows.values():
        heads = {cell.column_index: cell.column.text for cell in cells if cell.column is not None}
        if sum(map(is_label, heads.values())) < LEAST_LABELS:
            continue
        named = [place for place, head in heads.items() if head.casefold().strip(EDGES) in wanted]
        first = min((place for place in heads if place is not None), default=None)
        if not named and first is not None and not is_label(heads[first]):
            named = [first]
        vans = [cell for cell in cells if [cell.column_index] == named]
        texts = {cell.text for cell in vans}
        told = len({cell.row_index for cell in cells}) == len(vans) == len(texts) >= LEAST_ROWS
        if told and are_mostly_names(texts, can_be_name):
            swapped |= {(cell.table, cell.row_index): cell for cell in vans}

    def swap(passage: Passage) -> Passage:
        van = swapped.get((passage.table, passage.row_index)) if passage.table is not None else None
        if van is None or passage.row is None or passage.column is None:
            return passage
        row = Head(van.text, van.box(), van.notes)
        if passage is not van:
            return replace(passage, row=row)
        column = replace(passage.column, text=corners[passage.table])  # type: ignore[index]
        return replace(passage, text=passage.row.text, pieces=(), notes=(), row=row, column=column)

    return tuple(map(swap, passages)) if swapped else tuple(passages)
