"""Tables whose first column names ranges and the second the vans of each: "Drift" beside "540" and "600 Q"."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import replace

from specscan.finding.naming.name_forms import are_mostly_names
from specscan.finding.naming.place import of_range
from specscan.records.text import Head, Passage


def with_range_columns(
    passages: Sequence[Passage],
    labels: Sequence[str],
    can_be_name: Callable[[str], bool],
    range_of: Callable[[str], str],
) -> tuple[Passage, ...]:
    """Give the passages with range and van as the labels of such rows.

    ``labels`` are heads of the column of the vans, ``range_of`` gives the range that a text names, or an empty text.
    A range stands beside two of its vans or more, in a cell over their rows, in each row or in the first one only.
    """
    wanted = {label.casefold() for label in labels}
    tables: dict[int, list[Passage]] = defaultdict(list)
    for passage in passages:
        if passage.table is not None and passage.row is not None and passage.column is not None:
            tables[passage.table].append(passage)
    named: dict[tuple[int | None, int | None], Head] = {}
    beside: set[int] = set()
    for cells in tables.values():
        vans = [
            cell for cell in cells if cell.column is not None and cell.column.text.strip(" .:").casefold() in wanted
        ]
        first = min((cell.column_index or 0 for cell in vans), default=0)
        vans = [cell for cell in vans if (cell.column_index or 0) == first]  # "Type" of a battery may stand further on
        ranges = _ranges(vans, range_of)
        names = [of_range(ranges[cell.number], cell.text) for cell in vans] if ranges else []
        sure = are_mostly_names([cell.text for cell in vans], can_be_name)
        if not names or not sure or len({*names}) < len(names) or len({cell.row_index for cell in vans}) < len(vans):
            continue
        named |= {
            (cell.table, cell.row_index): Head(name, cell.box(), cell.notes)
            for cell, name in zip(vans, names, strict=True)
        }
        beside |= {cell.number for cell in vans}
    if not named:
        return tuple(passages)
    return tuple(
        replace(passage, row=named.get((passage.table, passage.row_index), passage.row))
        for passage in passages
        if passage.number not in beside
    )


def _ranges(vans: Sequence[Passage], range_of: Callable[[str], str]) -> dict[int, str]:
    """Give the range beside each of some cells, none where one has none or where no range has two of them."""
    found: dict[int, str] = {}
    last = ""
    for cell in vans:
        label = cell.row.text if cell.row is not None else ""
        last = range_of(label) if label.strip() else last
        if not last:
            return {}
        found[cell.number] = last
    return found if 1 <= len(set(found.values())) < len(found) else {}
