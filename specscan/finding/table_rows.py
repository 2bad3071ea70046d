"""What is told of whole rows of tables: their unit in a column of its own, and rows that nobody can give to a van."""

from __future__ import annotations

from collections.abc import Callable, Iterable

from specscan.records.text import Kind, Passage
from specscan.rulebook.book import Rulebook

Row = tuple[int | None, int | None]  # table and number of a row


def unit_cells(passages: Iterable[Passage], book: Rulebook) -> dict[Row, str]:
    """Give the units that stand in a column of their own, by row."""
    return {
        (p.table, p.row_index): p.text
        for p in passages
        if p.table is not None and p.row_index is not None and p.column is not None
        and is_unit_head(p.column.text, book)
    }  # fmt: skip


def is_unit_head(head: str, book: Rulebook) -> bool:
    """Tell whether a head stands over a column of units, which states nothing itself."""
    told = head.strip(" .").casefold()
    return any(told in file.unit_heads for file in book.words.values())


def unclear_rows(passages: Iterable[Passage], heads: Callable[[str], bool]) -> set[Row]:
    """Give the rows of tables without heads that hold different values; ``heads`` tells whether a text heads a column.

    Of several vans nobody knows which value is whose.
    """
    texts: dict[Row, set[str]] = {}
    for passage in passages:
        if passage.kind is Kind.CELL and passage.column is not None and not heads(passage.column.text):
            texts.setdefault((passage.table, passage.row_index), set()).add(passage.text)
    return {key for key, values in texts.items() if len(values) > 1}
