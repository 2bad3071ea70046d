"""One drawn page → blocks in reading order: runs of text and tables."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field, replace

from specscan.reading.layout.callouts import items_of_callout, part_callouts
from specscan.reading.layout.flow import items_of
from specscan.reading.layout.framed import split_cards
from specscan.reading.layout.item import Item
from specscan.reading.layout.over_columns import join_over
from specscan.reading.layout.regions import split_columns
from specscan.reading.layout.two_languages import with_one_label
from specscan.reading.letters.sheet import Sheet
from specscan.reading.letters.words import Line, Word, build_lines
from specscan.reading.tables.alignment import find_aligned
from specscan.reading.tables.bold_labels import part_bold_labels
from specscan.reading.tables.captions import part_captions
from specscan.reading.tables.cards import holds_cards
from specscan.reading.tables.cell_labels import with_cell_labels
from specscan.reading.tables.compose import Hints, signs_of
from specscan.reading.tables.drawn_heads import with_body, with_printed_heads
from specscan.reading.tables.grid import Grid, GridCell
from specscan.reading.tables.lattice import find_ruled
from specscan.reading.tables.marks import Marks
from specscan.reading.tables.tiles import find_tiles
from specscan.records.text import Box, union

PLACEHOLDER = "\ufffc"
BAR_HEIGHT, BAR_WIDTH = 6.0, 20.0  # em of body text: a shaded row of a table, its head above all
SMALL_GAP = 1.6  # em between turned lines of one head


@dataclass(slots=True)
class Region:
    """Blocks of one column, card or side-bar, in reading order. ``inner``: a card on the page.

    ``headed``: its headings are those of one column of several and do not govern what follows.
    """

    blocks: list[list[Item] | Grid] = field(default_factory=list)
    inner: bool = False
    box: Box | None = None  # of a card
    back: int = 0  # begun under the headings above the region so many before this one
    headed: bool = False


def read_regions(
    sheet: Sheet,
    words: list[Word],
    lines: list[Line],
    size: float,
    hints: Hints,
    skip: Callable[[Line], bool] | None = None,
    referred: frozenset[str] = frozenset(),
) -> list[Region]:
    """Give the regions of a page in reading order; lines that ``skip`` tells are left out.

    ``words`` are those of the sheet, ``lines`` those of its upright words, ``size`` is the font size of its body text,
    ``referred`` are signs of notes that the page before refers to and does not explain.
    """
    turned = _turned_labels([word for word in words if word.direction])
    upright = [word for word in words if not word.direction]
    ruled, used = find_ruled(sheet, [*upright, *turned])
    cards = [(grid, cell) for grid in ruled if holds_cards(grid) for cell in grid.cells if not cell.empty]
    ruled = [with_cell_labels(grid) for grid in ruled if not holds_cards(grid)]
    if used:
        upright = [word for word in upright if id(word) not in used]
        turned = [word for word in turned if id(word) not in used]
    marks = _marks(sheet, size)
    signs = signs_of(words) | referred
    regions: list[Region] = []
    upright, callouts = part_callouts(upright)
    parted = bool(used or callouts)
    for index, group in enumerate(split_cards(sheet, upright)):
        own = build_lines(group) if parted or group is not upright else lines
        own = with_one_label([line for line in own if skip is None or not skip(line)], hints)
        if index == 0:
            own = _with_placeholders(own, ruled)
        for column in split_columns(own, marks, hints) if own else []:
            region = Region(inner=index > 0, back=column.back, headed=column.headed and not index)
            if index:
                region.box = union([line.box for line in own])
            for block in _blocks(column.lines, marks, ruled, size, signs, hints):
                if isinstance(block, Grid) and block.found == "aligned":
                    _add_turned_heads(block, turned)
                region.blocks.append(block)
            before, first = regions[-1].blocks[-1:] if regions else [], region.blocks[:1]
            if not index and before and first and isinstance(before[0], list) and isinstance(first[0], list):
                join_over(before[0], first[0])
            regions.append(region)
    for grid, card in cards:
        # What stands above the boxes heads all of the first row, wherever it ends.
        box = grid.box if card.row == 0 else card.box
        for column in split_columns(card.lines, marks, hints):
            blocks = _blocks(column.lines, marks, [], size, signs, hints)
            regions.append(Region(blocks, inner=True, box=box, back=column.back))
    for callout in callouts:
        regions.append(Region([items_of_callout(callout)], inner=True, box=callout[0].box))
    for word in turned:
        regions.append(Region([items_of([Line([replace(word, direction=0)])], size)], inner=True))
    return regions


def _with_placeholders(lines: list[Line], ruled: list[Grid]) -> list[Line]:
    """Put a stand-in line where each ruled table lies, so that it keeps its place among the text."""
    stand_ins = []
    for index, grid in enumerate(ruled):
        word = Word(f"{PLACEHOLDER}{index}", grid.box, 8.0, False, (0, 0, 0), base=grid.box.top)
        stand_ins.append(Line([word]))
    return sorted([*lines, *stand_ins], key=lambda line: line.box.top)


def _blocks(
    lines: list[Line], marks: Marks, ruled: list[Grid], size: float, signs: frozenset[str], hints: Hints
) -> list[list[Item] | Grid]:
    blocks: list[list[Item] | Grid] = []
    pending: list[Line] = []
    right = max((line.box.x1 for line in lines), default=0.0)
    for line in lines:
        text = line.words[0].text
        if text.startswith(PLACEHOLDER):
            grid = ruled[int(text[1:])]
            headed = with_printed_heads(pending, grid)
            above = pending if headed is None else pending[: -headed[1]]
            blocks.extend(_text_blocks(above, marks, size, signs, hints, right))
            blocks.append(grid if headed is None else headed[0])
            pending = []
        else:
            pending.append(line)
    blocks.extend(_text_blocks(pending, marks, size, signs, hints, right))
    for place in range(len(blocks) - 1, 0, -1):
        body = blocks[place]
        joined = with_body(blocks[place - 1], body) if isinstance(body, Grid) else None
        if joined is not None:
            blocks[place - 1 : place + 1] = [joined]
    return blocks


def _text_blocks(
    lines: list[Line], marks: Marks, size: float, signs: frozenset[str], hints: Hints, right: float
) -> list[list[Item] | Grid]:
    captions = part_captions(lines, hints)
    parts = [part for one in captions for part in ([one] if isinstance(one, Grid) else part_bold_labels(one, hints))]
    if any(isinstance(part, Grid) for part in parts):
        made = [
            [part] if isinstance(part, Grid) else _text_blocks(part, marks, size, signs, hints, right) for part in parts
        ]
        return [block for blocks in made for block in blocks]
    tiles = find_tiles(lines, hints)
    if tiles is not None:
        before = _text_blocks(tiles.before, marks, size, signs, hints, right)
        return [*before, tiles.grid, *_text_blocks(tiles.after, marks, size, signs, hints, right)]
    blocks: list[list[Item] | Grid] = []
    rest = lines
    while rest:
        found = find_aligned(rest, marks, hints)
        if found is None:
            break
        if found.before:
            blocks.append(items_of(found.before, size, signs, right))
        blocks.append(found.grid)
        rest = found.after
    if rest:
        blocks.append(items_of(rest, size, signs, right))
    return blocks


def _marks(sheet: Sheet, size: float) -> Marks:
    marks = Marks()
    for stroke in sheet.strokes:
        if stroke.horizontal:
            marks.floors.append(((stroke.top + stroke.bottom) / 2, stroke.x0, stroke.x1))
        else:
            marks.walls.append(((stroke.x0 + stroke.x1) / 2, stroke.top, stroke.bottom))
    for fill in sheet.fills:
        box = fill.box
        if box.height > 0.5 * sheet.height:
            continue
        if box.height <= BAR_HEIGHT * size and box.width >= BAR_WIDTH * size:
            marks.bars.append(box)
        marks.floors.append((box.top, box.x0, box.x1))
        marks.floors.append((box.bottom, box.x0, box.x1))
    marks.pieces, marks.floors = marks.floors, _joined(marks.floors)
    return marks


def _joined(floors: list[tuple[float, float, float]]) -> list[tuple[float, float, float]]:
    """Join pieces of one horizontal rule (borders drawn cell by cell)."""
    joined: list[tuple[float, float, float]] = []
    for y, x0, x1 in sorted(floors, key=lambda f: (round(f[0]), f[1])):
        if joined and abs(joined[-1][0] - y) <= 1.2 and x0 <= joined[-1][2] + 4 and x1 >= joined[-1][1] - 4:
            last = joined[-1]
            joined[-1] = (last[0], min(last[1], x0), max(last[2], x1))
        else:
            joined.append((y, x0, x1))
    return joined


def _turned_labels(words: list[Word]) -> list[Word]:
    """Join turned words to the labels that they form; each becomes one word with one box."""
    lines: list[list[Word]] = []
    for word in sorted(words, key=lambda w: (w.direction, round(w.base), _along(w))):
        last = lines[-1][-1] if lines else None
        if (
            last is not None
            and last.direction == word.direction
            and abs(last.base - word.base) < 0.4 * word.size
            and -0.5 * word.size <= _along(word) - _along_end(last) < 1.2 * word.size
        ):
            lines[-1].append(word)
        else:
            lines.append([word])
    labels = [_one_word(line) for line in lines]
    labels.sort(key=lambda w: (w.direction, w.base))
    merged: list[Word] = []
    for label in labels:
        last = merged[-1] if merged else None
        if (
            last is not None
            and last.direction == label.direction
            and 0 < label.base - last.base < SMALL_GAP * label.size
            and last.box.overlap_y(label.box) > 0.3 * min(last.box.height, label.box.height)
        ):
            box = union([last.box, label.box])
            assert box is not None
            merged[-1] = replace(last, text=f"{last.text} {label.text}", box=box, base=label.base)
        else:
            merged.append(label)
    return merged


def _along(word: Word) -> float:
    return -word.box.bottom if word.direction == 270 else word.box.top


def _along_end(word: Word) -> float:
    return -word.box.top if word.direction == 270 else word.box.bottom


def _one_word(words: list[Word]) -> Word:
    box = union([word.box for word in words])
    assert box is not None
    return replace(words[0], text=" ".join(word.text for word in words), box=box)


def _add_turned_heads(grid: Grid, turned: list[Word]) -> None:
    """Give an unruled table the turned heads that stand above its columns, and take them out."""
    above = [word for word in turned if _stands_above(word.box, grid)]
    if len(above) < 2:
        return
    above += [word for word in turned if word not in above and any(_is_beside(word.box, one.box) for one in above)]
    above = [word for word in above if grid.box.x0 - 12 <= word.box.middle[0] <= grid.box.x1 + 12]
    heads: list[GridCell] = []
    for word in above:
        middle = word.box.middle[0]
        col = min(
            range(len(grid.columns)),
            key=lambda i: max(grid.columns[i][0] - middle, middle - grid.columns[i][1], 0.0),
        )
        heads.insert(0, GridCell(0, col, [Line([replace(word, bold=True)])]))
        turned.remove(word)
    grid.set_above(heads)


def _is_beside(box: Box, other: Box) -> bool:
    """Tell whether two turned labels begin or end level with each other: short and long heads of one row."""
    return min(abs(box.top - other.top), abs(box.bottom - other.bottom)) <= 4


def _stands_above(box: Box, grid: Grid) -> bool:
    near = -4 <= grid.box.top - box.bottom <= 24
    return near and grid.box.x0 - 12 <= box.middle[0] <= grid.box.x1 + 12
