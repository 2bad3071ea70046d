"""Small tables below a list that say of each van what all of the list costs, or whether it comes: "Drift 19 | $950"."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable
from dataclasses import dataclass

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.marks.prices import LONGEST_OFFER, PricedItems, is_price
from specscan.finding.marks.signs import availability_alone
from specscan.finding.things.found import Availability
from specscan.records.text import Kind, Passage

LEAST = 2  # vans


@dataclass(frozen=True, slots=True)
class PriceRows:
    """Such a table: its page and headings, what it says of each van, and its cells."""

    page: int
    sections: tuple[str, ...]
    told: dict[str, Availability]
    cells: tuple[Passage, ...]


def price_rows(
    passages: Iterable[Passage],
    named: Callable[[str], frozenset[str] | None],
    priced: PricedItems,
    of_prices: Iterable[str],
    lexicon: Lexicon,
) -> list[PriceRows]:
    """Give the tables that hold for the lists above them, under the same heading.

    Each of their cells is a price that is not a whole van's, or says whether a thing is to be had, for another van:
    ``named`` gives those of its row, or of the head above it where the row is called ``of_prices``, "Price".
    """
    tables: dict[int, list[Passage]] = defaultdict(list)
    lists: dict[tuple[int, tuple[str, ...]], int] = {}  # the number of their first item
    for passage in passages:
        if passage.table is not None:
            tables[passage.table].append(passage)
        elif passage.kind is Kind.BULLET and passage.sections:
            lists.setdefault((passage.page, passage.sections), passage.number)
    words = {*of_prices, ""}
    found = []
    for cells in tables.values():
        under = {(cell.page, _headings(cell, words)) for cell in cells}
        below = len(under) == 1 and lists.get(next(iter(under)), cells[0].number) < cells[0].number
        if not below or len(cells) < LEAST:
            continue
        told: dict[str, Availability] = {}
        for cell in cells:
            vans, said = named(_head(cell, words)), _said(cell.text.strip(), priced, lexicon)
            if vans is None or said is None or vans & told.keys():
                break
            told |= dict.fromkeys(vans, said)
        else:
            found.append(PriceRows(*under.pop(), told, tuple(cells)))
    return found


def _headings(cell: Passage, words: set[str]) -> tuple[str, ...]:
    """Give the headings above a cell, but the corner of its table, "Price"."""
    *outer, last = cell.sections or ("",)
    return tuple(outer) if last.casefold() in words else cell.sections


def _head(cell: Passage, words: set[str]) -> str:
    """Give what can name the van of a cell: its row alone, or its column beside a row called "Price"."""
    row = cell.row.text.strip(" :") if cell.row is not None else ""
    column = cell.column.text.strip(" :") if cell.column is not None else ""
    if column.casefold() in words:
        return row
    return column if row.casefold() in words else ""


def _said(text: str, priced: PricedItems, lexicon: Lexicon) -> Availability | None:
    if len(text) > LONGEST_OFFER:
        return None
    if is_price(text):
        return None if priced.tells_van(text) else Availability.OPTIONAL
    return availability_alone(lexicon, text)
