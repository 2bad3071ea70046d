"""Tables: vans as columns, vans as rows, rows of marks, prices by van."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from tests.proving_ground.equipment import AVAILABILITY, Item
from tests.proving_ground.figures import House
from tests.proving_ground.pages import Block, Cell, Grid, Para, Piece, Said
from tests.proving_ground.rows import Row
from tests.proving_ground.speaker import QUANTITIES
from tests.proving_ground.studio import Studio

# Marks by what they mean; the first set needs no special font, the others are drawn from one that all readers have.
MARK_SETS = (
    ("S", "O", "–"), ("S", "O", "N"), ("●", "❍", "–"), ("■", "❏", "–"), ("✓", "❍", "✗"), ("●", "❍", "✘"),
    ("S", "O", "-"),    ("•", "O", "—"), ("✔", "O", "x"), ("x", "o", "–"), ("◆", "❖", "–"), ("★", "❍", "–"),
)  # fmt: skip
CONVERTED = ("volume", "long", "short", "mass", "power", "temp", "burn")
WEB_SETS = (("●", "○", "–"), ("■", "□", "×"), ("✓", "○", "✗"), ("▲", "△", "—"), ("◉", "◯", "–"))


@dataclass(slots=True)
class MatrixWay:
    """How a house lays out a table with vans as columns."""

    layout: str = "matrix_ruled"
    ruled: bool = True
    zebra: bool = False
    heads: str = "plain"
    groups: str = "row"
    spans: bool = False
    split: str = ""
    per_page: int = 30


def matrix(studio: Studio, groups: Sequence[tuple[str, list[Row]]], way: MatrixWay) -> list[list[Block]]:
    """Give the tables of a specification, one list of blocks for each page that they take."""
    total = sum(len(rows) + 1 for _, rows in groups)
    pages = max(1, -(-total // way.per_page))
    if way.split:
        pages = max(2, pages)
    share = -(-total // pages)
    lines: list[tuple[str, Row | None]] = []
    for name, rows in groups:
        lines += [(name, None), *((name, row) for row in rows)]
    chunks = [lines[start : start + share] for start in range(0, len(lines), share)]
    for here, after in zip(chunks, chunks[1:], strict=False):
        if here[-1][1] is None:
            after.insert(0, here.pop())
    result: list[list[Block]] = []
    for number, chunk in enumerate(chunk for chunk in chunks if chunk):
        bare = way.split == "bare" and number > 0
        grid = _grid(studio, chunk, way, bare)
        note = _silent_note(studio, chunk)
        result.append([grid, *([note] if note else [])])
    return result


def _grid(studio: Studio, lines: Sequence[tuple[str, Row | None]], way: MatrixWay, bare: bool) -> Grid:
    vans = len(studio.family.vans)
    shift = 1 if way.groups == "column" else 0
    traits = [f"heads {way.heads}"] if way.heads != "plain" else []
    traits += [f"group {way.groups}s"] if way.groups in ("row", "column") else []
    grid = Grid(
        layout=way.layout, traits=tuple(traits), ruled=way.ruled, zebra=way.zebra, rotated=way.heads == "rotated"
    )
    grid.columns = vans + 1 + shift
    if not bare:
        grid.heads = _heads(studio, way, shift)
        if way.heads == "chassis above":
            for place, van in enumerate(studio.family.vans):
                grid.state(
                    place, Piece(van.has["chassis"], (Said("chassis", van.has["chassis"]),)), ("heads name bases",)
                )
        for place, cell in enumerate(grid.heads[-1][1 + shift :]):
            studio.name_van(grid, place, cell.text)
    last = ""
    for name, row in lines:
        title = studio.group(name)
        if row is None:
            if way.groups == "row":
                grid.rows.append([Cell(title, grid.columns)])
            continue
        first = [Cell(title if title != last else "")] if shift else []
        last = title
        grid.rows.append([*first, Cell(row.label), *_body(studio, grid, row, way)])
    return grid


def _heads(studio: Studio, way: MatrixWay, shift: int) -> list[list[Cell]]:
    vans = studio.family.vans
    corner = studio.names.corner(studio.speaker.pick("corner", studio.words.texts("headings", "model")))
    start = [Cell("")] * shift
    if way.heads == "stacked" and studio.family.series:
        upper = [*start, Cell(""), Cell(studio.family.series, len(vans))]
        return [upper, [*start, Cell(corner), *(Cell(van.code) for van in vans)]]
    if way.heads == "chassis above":
        runs: list[Cell] = []
        for van in vans:
            base = van.has["chassis"]
            if runs and runs[-1].text == base:
                runs[-1] = Cell(base, runs[-1].span + 1)
            else:
                runs.append(Cell(base))
        label = studio.speaker.label("chassis").text  # no reader knows the names of base vehicles that do not exist
        return [
            [*start, Cell(label), *runs],
            [*start, Cell(corner), *(Cell(studio.head_of(n)) for n in range(len(vans)))],
        ]
    return [[*start, Cell(corner), *(Cell(studio.head_of(place)) for place in range(len(vans)))]]


def _body(studio: Studio, grid: Grid, row: Row, way: MatrixWay) -> list[Cell]:
    texts = [cell.text or _silent(studio, row) for cell in row.cells]
    spanned = way.spans and len(set(texts)) == 1 and len(texts) > 1 and studio.rng.random() < 0.8
    for place, cell in enumerate(row.cells):
        grid.state(place, cell, (*row.traits, *(("spanning cell",) if spanned else ())))
    if spanned:
        return [Cell(texts[0], len(texts))]
    if way.spans and way.ruled and len(texts) > 2 and texts[0] == texts[1]:
        return [Cell(texts[0], 2), *(Cell(text) for text in texts[2:])]
    return [Cell(text) for text in texts]


def _silent(studio: Studio, row: Row) -> str:
    if not row.kind:
        return ""
    return silent_mark(studio)


def silent_mark(studio: Studio) -> str:
    """Give the mark for "does not apply", which this house explains under its table."""
    text: str = studio.speaker.pick("does not apply", studio.words.texts("does_not_apply"))
    return text.replace("=", ":").split(":")[0].strip()


def _silent_note(studio: Studio, lines: Sequence[tuple[str, Row | None]]) -> Para | None:
    if all(cell.text for _, row in lines if row is not None for cell in row.cells):
        return None
    return Para(text=studio.speaker.pick("does not apply", studio.words.texts("does_not_apply")), small=True)


def models_as_rows(studio: Studio, groups: Sequence[tuple[str, list[Row]]], ruled: bool) -> list[Block]:
    """Give tables with one row per van: the rows of the specification, turned, about eight columns to a table."""
    rows = [row for _, found in groups for row in found if row.kind]
    chunks = [rows[start : start + 8] for start in range(0, len(rows), 8)]
    blocks: list[Block] = []
    for chunk in chunks:
        grid = Grid(layout="models_as_rows", ruled=ruled, zebra=not ruled, small=True, columns=len(chunk) + 1)
        usual = studio.speaker.pick("corner of rows", [t for t in studio.words.texts("headings", "model") if t])
        corner = studio.names.corner(usual)
        grid.heads = [[Cell(corner), *(Cell(row.label) for row in chunk)]]
        for place in range(len(studio.family.vans)):
            studio.name_van(grid, place, studio.head_of(place))
            cells = []
            for row in chunk:
                piece = row.cells[place]
                grid.state(place, piece, row.traits)
                cells.append(Cell(piece.text or silent_mark(studio)))
            grid.rows.append([Cell(studio.head_of(place)), *cells])
        blocks.append(grid)
    if any(not cell.text for row in rows for cell in row.cells):
        blocks.append(
            Para(text=studio.speaker.pick("does not apply", studio.words.texts("does_not_apply")), small=True)
        )
    return blocks


def half_way(studio: Studio, groups: Sequence[tuple[str, list[Row]]]) -> list[Block]:
    """Give one table for two times two vans: a second row of heads and the same labels again half way down."""
    vans = studio.family.vans
    half = len(vans) // 2
    rows = [row for _, found in groups for row in found]
    grid = Grid(layout="matrix_heads_half_way", ruled=studio.rng.random() < 0.6, columns=half + 1)
    corner = studio.names.corner(studio.speaker.pick("corner", studio.words.texts("headings", "model")))
    for start in (0, half):
        places = range(start, start + half)
        head = [Cell(corner), *(Cell(studio.head_of(place)) for place in places)]
        if start:
            grid.rows.append(head)
        else:
            grid.heads = [head]
        for place in places:
            studio.name_van(grid, place, studio.head_of(place))
        for row in rows:
            texts = []
            for place in places:
                grid.state(place, row.cells[place], row.traits)
                texts.append(Cell(row.cells[place].text or _silent(studio, row)))
            grid.rows.append([Cell(row.label), *texts])
    note = _silent_note(studio, [("", row) for row in rows])
    return [grid, *([note] if note else [])]


def two_units(studio: Studio, groups: Sequence[tuple[str, list[Row]]]) -> Grid:
    """Give one van's table with a column for each system of units; words stand in both or over both columns."""
    other = House("us" if studio.region != "us" else "au", studio.rng, studio.house.glyphs)
    other.way = studio.house.way
    names = studio.speaker.pick("systems", (("US", "metric"), ("U.S.", "SI"), ("US units", "Metric")))
    names = names if studio.region == "us" else names[::-1]
    grid = Grid(layout="two_units", traits=("a column for each unit",), ruled=studio.rng.random() < 0.5, columns=3)
    grid.heads = [[Cell(""), *(Cell(name) for name in names)]]
    for name, rows in groups:
        grid.rows.append([Cell(studio.group(name), 3)])
        for row in rows:
            cell = row.cells[0]
            if not cell.text:
                continue
            grid.state(0, cell, row.traits)
            twin = _in_other_units(studio, other, row)
            if twin:
                grid.rows.append([Cell(row.label), Cell(cell.text), Cell(twin)])
            else:
                grid.rows.append([Cell(row.label), Cell(cell.text, 2)])
    return grid


def _in_other_units(studio: Studio, other: House, row: Row) -> str:
    """Give the figure of a row's only cell in the other system; empty where it has none, or not within 1 %."""
    cell = row.cells[0]
    quantity = QUANTITIES.get(row.kind, "")
    if len(cell.says) != 1 or quantity not in CONVERTED:
        return ""
    own = studio.house.figure(quantity, float(cell.says[0].value))
    twin = other.figure(quantity, own.value)
    agree = abs(twin.value - own.value) <= 0.01 * abs(own.value)
    return twin.text if own.text == cell.text and agree else ""


def mark_set(studio: Studio, web: bool) -> tuple[str, str, str]:
    """Give this house's marks for standard, optional and not available."""
    options = (*MARK_SETS, *WEB_SETS, *WEB_SETS) if web else MARK_SETS
    words = studio.words.book["marks"]["words"]
    spelled = tuple(studio.speaker.pick(("mark word", mark), words[mark]) for mark in "SON")
    chosen: tuple[str, str, str] = studio.speaker.pick("marks", [*options, spelled, spelled])
    return chosen


def legend(studio: Studio, marks: Sequence[str], shown: str = "SON") -> str:
    """Give the line that explains the marks; empty where they are words and explain themselves."""
    if len(marks[0]) > 1:
        return ""
    way = studio.speaker.pick("legend", studio.words.texts("marks", "legend"))
    parts = []
    for mark, letter in zip(marks, "SON", strict=True):
        if letter not in shown:
            continue
        said = studio.speaker.pick(("legend", letter), studio.words.texts("marks", "legend_words", letter))
        join = way if mark not in ("–", "-", "—") or "–" not in way else "{m} = {t}"
        parts.append(join.format(m=mark, t=said))
    return studio.speaker.pick("legend join", ("   ", ", ", "; ", " · ")).join(parts)


def marks_matrix(studio: Studio, items: Sequence[Item], web: bool, way: MatrixWay) -> list[Block]:
    """Give a table of equipment with a mark under each van, and its legend."""
    marks = mark_set(studio, web)
    symbol = dict(zip("SON", marks, strict=True))
    vans = studio.family.vans
    style = "marks as words" if len(marks[0]) > 1 else f"marks {' '.join(marks)}"
    grid = Grid(
        layout="marks_matrix", traits=(style,), ruled=way.ruled, zebra=way.zebra, rotated=way.heads == "rotated"
    )
    grid.columns = len(vans) + 1
    grid.heads = [[Cell(""), *(Cell(studio.head_of(place)) for place in range(len(vans)))]]
    for place in range(len(vans)):
        studio.name_van(grid, place, studio.head_of(place))
    lines: list[tuple[str, Item | None, list[str]]] = [
        (item.piece.text, item, [symbol.get(mark, "") for mark in item.marks]) for item in items
    ]
    for text in studio.chatter.features(studio.rng.randint(2, 5)):
        lines.append((text, None, [symbol[studio.rng.choice("SSON")] for _ in vans]))
    studio.rng.shuffle(lines)
    for text, item, shown in lines:
        grid.rows.append([Cell(text), *(Cell(mark) for mark in shown)])
        if item is not None:
            state_item(grid, item)
    line = legend(studio, marks)
    note = [Para(text=line)] if line else []
    return [*note, grid] if studio.speaker.chance("legend above", 0.5) else [grid, *note]


def state_item(block: Block, item: Item) -> None:
    """Note in a block what an item states of each van."""
    for place, mark in enumerate(item.marks):
        if mark:
            says = tuple(replace(said, availability=AVAILABILITY[mark]) for said in item.piece.says)
            block.state(place, Piece(item.piece.text, says))


def price_matrix(studio: Studio, items: Sequence[Item]) -> Grid:
    """Give a table of options with a price under each van, or that it is included, or not offered."""
    words = studio.words.book["price_words"]
    vans = studio.family.vans
    grid = Grid(
        layout="option_prices", traits=("prices by van",), ruled=studio.rng.random() < 0.5, columns=len(vans) + 1
    )
    grid.heads = [[Cell(""), *(Cell(studio.head_of(place)) for place in range(len(vans)))]]
    for place in range(len(vans)):
        studio.name_van(grid, place, studio.head_of(place))
    for item in items:
        price = studio.chatter.price()
        shown = {"S": words["included"], "O": price, "N": words["not_available"]}
        grid.rows.append([Cell(item.piece.text), *(Cell(shown[mark]) for mark in item.marks)])
        state_item(grid, item)
    for text in studio.chatter.features(2):
        grid.rows.append([Cell(text), *(Cell(studio.chatter.price()) for _ in vans)])
    return grid
