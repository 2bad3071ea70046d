"""Tables whose heads are groups and whose vans stand in a row of their own: "Floor plan: C-144, C-170, C-170XL"."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Collection, Sequence
from dataclasses import replace

from specscan.finding.language.whole_words import holds
from specscan.finding.naming.name_forms import SURE_SHARE
from specscan.finding.naming.place import of_range
from specscan.records.text import Head, Passage

FIRST_ROWS = 2  # of a table: the base vehicle may stand above the vans
CODED = re.compile(r"\d[\d.]*(?: ?[A-ZÀ-Þ][\w-]*){0,2}$|[A-Z]{1,3}[ -]?\d[\w-]*(?: [A-Z]{1,2})?$")

NAMED_CODE = re.compile(r"([A-ZÀ-Þ][\w’'-]{2,}) [A-Z]{0,3}-?\d")

Column = tuple[int | None, str]  # a column's number and its printed head


def with_model_rows(
    passages: Sequence[Passage],
    labels: Sequence[str],
    can_be_name: Callable[[str], bool],
    range_of: Callable[[str], str] = lambda label: "",
    titles: Sequence[str] = (),
    ranges: Collection[str] = (),
) -> tuple[tuple[Passage, ...], frozenset[str]]:
    """Give the passages with the vans of such a row as the heads of the columns below them, and these heads.

    It counts only where the heads that are printed do not tell the columns apart. Tables with the same heads, as the
    parts of one that goes on over headings and pages, get the same vans. ``labels`` are labels of such rows;
    ``range_of`` gives the range that a label names, as "Drift" before "540" and "600 Q", or an empty text; it may
    stand in one of the document's ``titles`` too. ``ranges`` are labels of a row above with the range of each van.
    """
    wanted = {label.casefold() for label in labels}
    tables: dict[int, list[Passage]] = defaultdict(list)
    for passage in passages:
        if passage.table is not None and passage.column is not None and passage.row is not None:
            tables[passage.table].append(passage)
    named: dict[Column, Head] = {}
    rows: set[tuple[int | None, int | None]] = set()
    for cells in tables.values():
        first = min(cell.row_index or 0 for cell in cells)
        labelled, series = _below_ranges(cells, wanted, ranges, can_be_name)
        labelled = labelled or _ranged(cells, range_of)
        top = [cell for cell in cells if cell.row_index == first]
        row = labelled or _unlabelled(cells, can_be_name) or _of_one_range(top, titles)
        texts = {cell.text for cell in row}
        headed = _are_ranges(row, can_be_name)
        over = {cell.number: series.get(_column(cell), _head(cell) if headed else "") for cell in row}
        apart = {(over[cell.number], cell.text) for cell in row}  # "600" of the Drift, "600" of the Gorse
        if not (2 <= len(row) == len(apart) and len({cell.row_index for cell in row}) == 1):
            continue
        sure = sum(can_be_name(text) for text in texts)  # beside "540 Q", "640 L" is no volume
        told = _are_told_apart(cells) and not (labelled and _are_described(cells))
        if told or sure < (SURE_SHARE if labelled else 1) * len(texts):
            continue
        above = range_of(row[0].row.text) if labelled and row[0].row is not None else ""
        for cell in row:
            name = of_range(over[cell.number] or above, cell.text)
            named[_column(cell)] = Head(name, cell.box(), cell.notes)
        rows.add((row[0].table, row[0].row_index))
    if not named:
        return tuple(passages), frozenset()
    renamed = {
        number
        for number, cells in tables.items()
        if {_column(cell) for cell in cells} <= named.keys() and (not _are_told_apart(cells) or _are_described(cells))
    }
    made = tuple(
        replace(passage, column=named[_column(passage)]) if passage.table in renamed else passage
        for passage in passages
        if (passage.table, passage.row_index) not in rows or passage.table is None
    )
    return made, frozenset(head.text for head in named.values())


def _below_ranges(
    cells: Sequence[Passage], models: Collection[str], labels: Collection[str], can_be_name: Callable[[str], bool]
) -> tuple[list[Passage], dict[Column, str]]:
    """Give the cells of rows with labels of ``models``, and what a row of ranges above them says of each column.

    Such a row has one of ``labels``, some of which are labels of models too, or it is the first of two with labels of
    models: "Model: Drift, Drift" above "Version: 600, 640". There it says the same of all columns, or no figure.
    """
    known = {label.casefold() for label in labels}
    vans = [cell for cell in cells if _label(cell) in models]
    above = [cell for cell in cells if _label(cell) in known] or [cell for cell in vans if cell.row_index == _top(vans)]
    below = [cell for cell in vans if cell not in above]
    texts = {cell.text for cell in above}
    rows, named = ({cell.row_index or 0 for cell in some} for some in (above, below))
    if not len(rows) == len(named) == 1 or max(rows) > min(named) or not all(map(can_be_name, texts)):
        return vans, {}
    worded = not any(re.search(r"\d", text) for text in texts)
    ranged = worded and (_label(above[0]) in known or all(CODED.match(cell.text) for cell in below))
    told = {_column(cell): cell.text for cell in above}
    alike = told.keys() == {_column(cell) for cell in below}
    return (below, told) if alike and (ranged or len(texts) == 1) else (vans, {})


def _top(cells: Sequence[Passage]) -> int | None:
    return min((cell.row_index or 0 for cell in cells), default=None)


def _ranged(cells: Sequence[Passage], range_of: Callable[[str], str]) -> list[Passage]:
    """Give the cells of a row near the top that begin with codes behind the name of their range."""
    for number in sorted({cell.row_index or 0 for cell in cells})[:FIRST_ROWS]:
        row = [cell for cell in cells if (cell.row_index or 0) == number]
        if all(CODED.match(cell.text) for cell in row) and row[0].row is not None and range_of(row[0].row.text):
            return row
    return []


def _unlabelled(cells: Sequence[Passage], can_be_name: Callable[[str], bool]) -> list[Passage]:
    """Give the cells of the first row without labels near the top that can be names, which a group may stand above.

    "5.4 m" over "Drift 19" and "Drift 21".
    """
    first = min(cell.row_index or 0 for cell in cells)
    columns = {cell.column_index for cell in cells}
    for number in range(first, first + FIRST_ROWS):
        row = [cell for cell in cells if cell.row_index == number and not _label(cell)]
        if row and {cell.column_index for cell in row} == columns and all(can_be_name(cell.text) for cell in row):
            return row
    return []


def _of_one_range(row: Sequence[Passage], titles: Sequence[str]) -> list[Passage]:
    """Give the cells of a row that go on from one word of the title with codes: "Drift 19, $94,500", "Drift 21".

    The label before them may be anything, as "Every base van"; base vehicles stand in no title.
    """
    matches = [NAMED_CODE.match(cell.text) for cell in row]
    words = {match.group(1) for match in matches if match is not None}
    return [*row] if None not in matches and len(words) == 1 and any(holds(t, *words) for t in titles) else []


def _label(cell: Passage) -> str:
    return cell.row.text.strip(" :").casefold() if cell.row is not None else ""


def _head(cell: Passage) -> str:
    return cell.column.text if cell.column is not None else ""


def _are_ranges(row: Sequence[Passage], can_be_name: Callable[[str], bool]) -> bool:
    """Tell whether the heads above codes are names of ranges: "Tussock" over "170" and "190", "Bracken" over "210".

    One may go on from another, or from a word that all begin with: "Tussock" and "Tussock Plus".
    """
    heads = {_head(cell) for cell in row}
    coded = all(cell.text[:1].isdigit() for cell in row)
    alike = len({head.partition(" ")[0] for head in heads}) == 1
    words = all(len(head.split()) == 1 or (alike and len(head.split()) == 2) for head in heads)
    return coded and len(heads) > 1 and words and all(map(can_be_name, heads))


def _column(cell: Passage) -> Column:
    return cell.column_index, _head(cell)


def _are_described(cells: Sequence[Passage]) -> bool:
    """Tell whether the heads are descriptions, each with a word in small letters: "Short body", "Long body"."""
    heads = {_head(cell) for cell in cells}
    return all(any(word.isalpha() and word.islower() for word in head.replace(",", " ").split()) for head in heads)


def _are_told_apart(cells: Sequence[Passage]) -> bool:
    """Tell whether every column of a table has a head that no other has."""
    columns = {_column(cell) for cell in cells}
    heads = [head for _, head in columns]
    return all(heads) and len(set(heads)) == len(heads)
