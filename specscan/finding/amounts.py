"""Cells that hold nothing but a figure: the price of an option, or what it weighs."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Callable, Iterable

from specscan.records.text import Kind, Passage

FIGURE = re.compile(r"[+−–-]?\s?[\d.,'’ \u00a0\u202f]+")
AMOUNT = re.compile(r"\+?\s?\d{2,3}|\+?\s?\d{1,3}(?:[.,'’ \u00a0\u202f]\d{3})+(?:[.,]\d\d)?|\+?\s?\d{4,5}(?:[.,]\d\d)?")


def is_figure(text: str) -> bool:
    """Tell whether a cell holds nothing but a figure: what a thing weighs or costs, beside what is said of each van."""
    return FIGURE.fullmatch(text) is not None


def is_amount(text: str) -> bool:
    """Tell whether a cell holds nothing but a figure that can be the price of an option."""
    return AMOUNT.fullmatch(text) is not None


def rows_of_vans(
    passages: Iterable[Passage], vans_of_head: Callable[[str], frozenset[str] | None]
) -> set[tuple[int | None, int | None]]:
    """Give the rows of tables, by table and row, in which several columns are of vans."""
    counts: Counter[tuple[int | None, int | None]] = Counter()
    for passage in passages:
        if passage.kind is Kind.CELL and passage.column is not None and passage.column.text:
            counts[passage.table, passage.row_index] += vans_of_head(passage.column.text.strip(" :")) is not None
    return {row for row, count in counts.items() if count > 1}
