"""Sheets of one van each whose first row names it beside its price: "Drift 19 Solo   $84,700" over labels and values.

Such a row is the sheet's heading, though it is set as its other rows are.
"""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import replace

from specscan.finding.naming.full_names import PRICE
from specscan.records.text import Kind, Passage, Piece

MIN_SHEETS = 2
LONGEST_PRICE = 24  # letters: "from $84,700"
MIN_SHARED = 3  # labels that each has with another


def with_sheet_heads(passages: Sequence[Passage], can_be_name: Callable[[str], bool]) -> tuple[Passage, ...]:
    """Give the passages with such rows as headings over the rest of their tables, where two or more are alike."""
    tables: dict[int, list[Passage]] = defaultdict(list)
    for passage in passages:
        if passage.table is not None:
            tables[passage.table].append(passage)
    heads = {number: cells[0] for number, cells in tables.items() if _opens_sheet(cells, can_be_name)}
    labels = {number: {_label(cell) for cell in tables[number][1:]} for number in heads}
    alike = {
        number
        for number, some in labels.items()
        if any(len(some & other) >= MIN_SHARED for beside, other in labels.items() if beside != number)
    }
    if len({_label(heads[number]) for number in alike}) < MIN_SHEETS:
        return tuple(passages)
    return tuple(
        _under(passage, heads[passage.table]) if passage.table is not None and passage.table in alike else passage
        for passage in passages
    )


def _label(cell: Passage) -> str:
    return cell.row.text.strip(" :") if cell.row is not None else ""


def _opens_sheet(cells: Sequence[Passage], can_be_name: Callable[[str], bool]) -> bool:
    """Tell whether the first row of a table of labels and values has a name and a price."""
    single = all(cell.row is not None and (cell.column is None or not cell.column.text) for cell in cells)
    first = cells[0]
    return (
        single
        and len(first.text) <= LONGEST_PRICE
        and PRICE.search(first.text) is not None
        and can_be_name(_label(first))
    )


def _under(cell: Passage, head: Passage) -> Passage:
    """Give a cell under the heading that the first of its table makes; that one becomes the heading."""
    if cell is not head:
        return replace(cell, sections=(*cell.sections, _label(head)))
    box = head.row.box if head.row is not None else None
    pieces = (Piece(0, len(_label(head)), box),) if box is not None else ()
    return replace(
        head, kind=Kind.HEADING, text=_label(head), pieces=pieces, table=None, row=None, column=None, row_index=None,
        column_index=None,
    )  # fmt: skip
