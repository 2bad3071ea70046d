"""Rows of packages: what a package holds stands in one cell, and beside it on which van it comes, and at what price."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Iterable

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.marks.legend import Legend
from specscan.finding.marks.prices import LONGEST_OFFER, is_price
from specscan.finding.marks.signs import availability_alone
from specscan.finding.things.found import Availability
from specscan.records.text import Kind, Passage

Row = tuple[int | None, int | None]  # table and number of a row


def offers_by_row(
    passages: Iterable[Passage], headed: Callable[[str], frozenset[str] | None], legend: Legend, lexicon: Lexicon
) -> dict[Row, dict[str, Availability]]:
    """Give the availability by van of rows in which each cell below the name of a van says that and no more.

    ``headed`` gives the vans that the head of a column names. Rows without another cell, of what a package holds, are
    left out.
    """
    rows: dict[Row, list[Passage]] = defaultdict(list)
    for passage in passages:
        if passage.kind is Kind.CELL and passage.column is not None:
            rows[passage.table, passage.row_index].append(passage)
    found: dict[Row, dict[str, Availability]] = {}
    for row, cells in rows.items():
        vans = [headed(cell.column.text.strip(" :")) if cell.column is not None else None for cell in cells]
        if all(vans) or not any(vans):
            continue
        offers: dict[str, Availability] = {}
        for cell, named in zip(cells, vans, strict=True):
            said = _said(cell.text, legend, lexicon) if named else None
            if named and said is None:
                break
            offers |= dict.fromkeys(named or (), said) if said is not None else {}
        else:
            found[row] = offers
    return found


def _said(text: str, legend: Legend, lexicon: Lexicon) -> Availability | None:
    plain = text.strip()
    meaning = legend.meaning(plain)
    if meaning is not None:
        return meaning.default
    if len(plain) > LONGEST_OFFER:
        return None
    if is_price(plain):
        return Availability.OPTIONAL
    return availability_alone(lexicon, plain)
