"""Rows of option lists whose own column says for which vans they are to be had: "Fits: 19 and 21", "For: all"."""

from __future__ import annotations

import itertools
from collections import defaultdict
from collections.abc import Callable, Sequence

from specscan.records.text import Kind, Passage
from specscan.rulebook.models import WordFile

LEAST_CELLS = 2
Row = tuple[int | None, int | None]  # table and number of a row


class FittingRows:
    """The vans that columns such as "Fits" name, by row, and the cells of these columns."""

    def __init__(
        self,
        passages: Sequence[Passage],
        headed: Callable[[str], frozenset[str] | None],
        words: WordFile,
        is_sign: Callable[[str], bool],
    ):
        """``headed`` gives the vans that a cell names as a whole, ``is_sign`` tells a sign of the legend."""
        self.vans: dict[Row, frozenset[str]] = {}
        self.cells: set[int] = set()
        heads = {head.casefold() for head in words.fitting_words}
        models = words.model_words[0]  # "All" is said for "All models"
        columns: dict[tuple[Row, tuple[str, ...], frozenset[str] | None], list[Passage]] = defaultdict(list)
        for passage in passages:
            head = passage.column.text.strip(" :.") if passage.column is not None else ""
            if passage.kind is Kind.CELL and passage.row and passage.row.text:
                if is_sign(passage.text) and head.casefold() not in heads:
                    continue  # "S" for what is standard, in the column of the X4, is not the S2 and the S4
                of_van = headed(head) if head and head.casefold() not in heads else None
                if not head or of_van or head.casefold() in heads:
                    below = passage.sections if of_van else ()
                    columns[(passage.table, passage.column_index), below, of_van or None].append(passage)
        for (_, _, of_van), cells in columns.items():
            if not _is_headed(cells) and len({cell.text for cell in cells}) < LEAST_CELLS:
                continue  # without a head a column tells of vans if it does not say the same of all
            told = (headed(cell.text) or headed(f"{cell.text} {models}") for cell in cells)
            named = [*itertools.takewhile(bool, told)]  # values below vans: the first of them ends it
            if len(named) < max(len(cells), LEAST_CELLS) or {*named} == {of_van}:
                continue  # options below a table of vans may stand in its columns, but name others than their head
            for cell, vans in zip(cells, named, strict=True):
                self.cells.add(cell.number)
                self.vans[cell.table, cell.row_index] = vans or frozenset()
        rows = {(p.table, p.row_index) for p in passages if p.kind is Kind.CELL and p.number not in self.cells}
        self.alone = {row for row in self.vans if row not in rows}  # rows that have no other cell

    def of(self, passage: Passage) -> frozenset[str] | None:
        """Give the vans for which the row of a cell is to be had, or ``None`` where no column says so."""
        return self.vans.get((passage.table, passage.row_index)) if passage.kind is Kind.CELL else None

    def repeats(self, passage: Passage) -> bool:
        """Tell whether a cell says no more than for which vans the rest of its row holds."""
        return passage.number in self.cells and (passage.table, passage.row_index) not in self.alone


def _is_headed(cells: Sequence[Passage]) -> bool:
    return any(cell.column is not None and cell.column.text.strip(" :.") for cell in cells)
