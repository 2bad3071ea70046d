"""Tables of which every other row is shaded, cell by cell: the walls of the shaded rows hold for those between them."""

from __future__ import annotations

from dataclasses import dataclass

from specscan.reading.letters.sheet import Fill, Sheet
from specscan.reading.letters.words import Line, Word, build_lines, segments_of
from specscan.reading.tables.alignment import SEGMENT_GAP

SNAP = 3.0
MIN_CELLS = 3
MAX_ROW = 90.0  # points from one shaded row to the next
LEADING = 1.5  # em from one line of a cell to the next
PADDING = 1.6  # em from the edge of a row to its first line, at most
CENTRED = 0.01  # of the width of the values: by which one set in their middle may miss it
WHITE = (255, 255, 255)

Piece = tuple[str, float, float, float]  # orientation, from, to, at


@dataclass(slots=True)
class _Stripe:
    """A shaded row: its walls from left to right, and its upper and lower edge."""

    walls: list[float]
    top: float
    bottom: float


def stripe_edges(sheet: Sheet, words: list[Word]) -> list[Piece]:
    """Give the edges of the rows that stand between shaded rows of the same cells, and of the one below the last.

    Only where two shaded rows touch, as a head and the first row do, or the band of a group and a row: else the drawn
    edges make no table, and the rows are better found by the white space between the columns. A row is taken in only
    where all its words stand between the walls, on lines as close as those of one cell; a value that reaches over walls
    or is set in the middle of all columns stands in a cell that spans them, as such values do in the shaded rows. Heads
    that stand above the band of the first group are taken in too.
    """
    pieces: list[Piece] = []
    shaded = _bands(sheet)
    striped = _stripes(sheet)
    for group in _alike([stripe for stripe in striped if len(stripe.walls) > MIN_CELLS]):
        spanned = _spanned(group, striped)
        titles = _titles(sheet, words, group[0].walls)
        bands = [*shaded, *titles]
        rows = _with_bands(group, spanned, bands)
        if all(below.top - above.bottom > SNAP for above, below in zip(rows, rows[1:], strict=False)):
            continue
        for band in _wide(group[0].walls, titles):
            if rows[0].top <= band.top <= rows[-1].bottom:  # the edges of shaded boxes are there already
                left, right = band.walls[0], band.walls[-1]
                pieces += [("h", left, right, band.top), ("h", left, right, band.bottom)]
                pieces += [("v", band.top, band.bottom, left), ("v", band.top, band.bottom, right)]
        for above, below in zip(rows, rows[1:], strict=False):
            if SNAP < below.top - above.bottom <= MAX_ROW:
                walls = _walls_of(words, above.walls, above.bottom, below.top, bool(spanned))
                pieces.extend(("v", above.bottom, below.top, x) for x in walls)
        lowest = max([*group, *spanned], key=lambda row: row.bottom)
        last = _last_band(lowest, bands, words) or lowest
        if last is not lowest:
            pieces.extend(("v", lowest.bottom, last.top, x) for x in last.walls)
        end = _end_of_row(words, last)
        if end is not None:
            pieces.extend(("v", last.bottom, end, x) for x in last.walls)
            pieces.append(("h", last.walls[0], last.walls[-1], end))
        start = _start_of_heads(words, rows[0]) if rows[0] not in group else None
        if start is not None:
            pieces.extend(("v", start, rows[0].top, x) for x in last.walls)
            pieces.append(("h", last.walls[0], last.walls[-1], start))
    return pieces


def _bands(sheet: Sheet) -> list[Fill]:
    """Give the shaded boxes that can be the band of a group: as high as a row."""
    return [f for f in sheet.fills if f.color not in (None, WHITE) and f.box.height <= MAX_ROW]


def _titles(sheet: Sheet, words: list[Word], walls: list[float]) -> list[Fill]:
    """Give the white boxes as high as a row that reach over all cells and hold one text alone: bands of groups too."""
    white = (f for f in sheet.fills if f.color == WHITE and f.box.height <= MAX_ROW)
    return [f for f in white if _reaches_over(f, walls) and _holds_title(f, words)]


def _holds_title(fill: Fill, words: list[Word]) -> bool:
    inside = [word for word in words if fill.box.holds(*word.box.middle)]
    lines = build_lines(inside)
    return len(lines) == 1 and len(segments_of(lines[0], SEGMENT_GAP)) == 1


def _spanned(group: list[_Stripe], striped: list[_Stripe]) -> list[_Stripe]:
    """Give the shaded rows with cells that span several columns of a group's rows, as rows of its walls.

    They stand among these or no further from them than one row from the next.
    """
    walls = group[0].walls
    found: list[_Stripe] = []
    first, last = group[0].top, group[-1].bottom
    for stripe in [s for s in reversed(striped) if s.top < first] + [s for s in striped if s.top >= first]:
        near = first - MAX_ROW <= stripe.bottom and stripe.top <= last + MAX_ROW
        if near and len(stripe.walls) < len(walls) and _same(stripe.walls[:2], walls[:2]) and _among(stripe, walls):
            found.append(_Stripe(walls, stripe.top, stripe.bottom))
            first, last = min(first, stripe.top), max(last, stripe.bottom)
    return found


def _among(stripe: _Stripe, walls: list[float]) -> bool:
    """Tell whether a row ends where walls end and has no other walls than these."""
    known = all(any(abs(x - wall) <= SNAP for wall in walls) for x in stripe.walls)
    return known and abs(stripe.walls[-1] - walls[-1]) <= SNAP


def _with_bands(group: list[_Stripe], spanned: list[_Stripe], bands: list[Fill]) -> list[_Stripe]:
    """Give shaded rows with the bands of groups between and right above them, which reach over all cells."""
    rows = sorted([*group, *spanned], key=lambda row: row.top)
    first, last = rows[0].top, rows[-1].bottom
    found = [band for band in _wide(group[0].walls, bands) if first - SNAP <= band.bottom <= last]
    return sorted([*rows, *found], key=lambda row: row.top)


def _wide(walls: list[float], bands: list[Fill]) -> list[_Stripe]:
    """Give the bands that reach over all cells, as rows of these walls."""
    return [_Stripe(walls, band.box.top, band.box.bottom) for band in bands if _reaches_over(band, walls)]


def _reaches_over(fill: Fill, walls: list[float]) -> bool:
    return abs(fill.box.x0 - walls[0]) <= SNAP and abs(fill.box.x1 - walls[-1]) <= SNAP


def _last_band(last: _Stripe, bands: list[Fill], words: list[Word]) -> _Stripe | None:
    """Give the band of a group that stands below the last shaded row, at most one row between, and above a row.

    A page can end so: the first row of its last group is not shaded.
    """
    below = [band for band in _wide(last.walls, bands) if 0 <= band.top - last.bottom + SNAP <= MAX_ROW]
    band = min(below, key=lambda band: band.top, default=None)
    if band is None or _end_of_row(words, band) is None:
        return None
    near = band.top - last.bottom <= SNAP
    return band if near or _fits(words, last.walls, last.bottom, band.top) else None


def _stripes(sheet: Sheet) -> list[_Stripe]:
    """Give the shaded rows of a page from top to bottom: boxes side by side, at least two."""
    rows: dict[tuple[int, int], list[Fill]] = {}
    for fill in sheet.fills:
        if fill.color not in (None, WHITE) and fill.box.height <= MAX_ROW:
            rows.setdefault((round(fill.box.top), round(fill.box.bottom)), []).append(fill)
    found = []
    for cells in rows.values():
        cells.sort(key=lambda fill: fill.box.x0)
        joined = all(abs(a.box.x1 - b.box.x0) <= SNAP for a, b in zip(cells, cells[1:], strict=False))
        if len(cells) >= 2 and joined:
            walls = [*(cell.box.x0 for cell in cells), cells[-1].box.x1]
            found.append(_Stripe(walls, cells[0].box.top, cells[0].box.bottom))
    return sorted(found, key=lambda stripe: stripe.top)


def _alike(stripes: list[_Stripe]) -> list[list[_Stripe]]:
    """Group shaded rows of the same walls, from top to bottom."""
    groups: list[list[_Stripe]] = []
    for stripe in stripes:
        for group in groups:
            if _same(group[-1].walls, stripe.walls) and stripe.top - group[-1].bottom <= MAX_ROW:
                group.append(stripe)
                break
        else:
            groups.append([stripe])
    return groups


def _same(one: list[float], two: list[float]) -> bool:
    return len(one) == len(two) and all(abs(a - b) <= SNAP for a, b in zip(one, two, strict=True))


def _between(words: list[Word], walls: list[float], top: float, bottom: float) -> list[Word]:
    return [w for w in words if top < w.box.middle[1] < bottom and walls[0] < w.box.middle[0] < walls[-1]]


def _walls_of(words: list[Word], walls: list[float], top: float, bottom: float, spanned: bool) -> list[float]:
    """Give the walls of a row that is not shaded, or none where its words do not stand between them.

    ``spanned``: cells of shaded rows span several columns, and so may those of this row: what is set in the middle of
    all columns, or reaches over walls between them.
    """
    if not spanned:
        return walls if _fits(words, walls, top, bottom) else []
    lines = build_lines(_between(words, walls, top, bottom))
    parts = [part for line in lines for part in segments_of(line, SEGMENT_GAP)]
    values = [part for part in parts if part.box.middle[0] > walls[1]]
    kept = walls
    if len(values) == 1 and _in_the_middle(values[0], walls):
        kept = [*walls[:2], walls[-1]]
    crossed = {x for x in kept[2:-1] for part in values if part.box.x0 < x - 1 and part.box.x1 > x + 1}
    kept = [x for x in kept if x not in crossed]
    return kept if _fits(words, kept, top, bottom) else []


def _in_the_middle(value: Line, walls: list[float]) -> bool:
    return abs(value.box.middle[0] - (walls[1] + walls[-1]) / 2) <= CENTRED * (walls[-1] - walls[1])


def _fits(words: list[Word], walls: list[float], top: float, bottom: float) -> bool:
    held = _between(words, walls, top, bottom)
    crossing = any(word.box.x0 < x - 1 and word.box.x1 > x + 1 for word in held for x in walls)
    lines = build_lines(held)
    close = all(b.base - a.base <= LEADING * b.size for a, b in zip(lines, lines[1:], strict=False))
    return bool(held) and close and not crossing and _touched(held, walls) >= MIN_CELLS - 1


def _touched(words: list[Word], walls: list[float]) -> int:
    """Give how many cells hold words."""
    return len({sum(x < word.box.middle[0] for x in walls) for word in words})


def _start_of_heads(words: list[Word], band: _Stripe) -> float | None:
    """Give the upper edge of the heads right above the first band, or ``None`` where no bold words stand so."""
    lines = build_lines(_between(words, band.walls, band.top - MAX_ROW, band.top))
    if not lines or band.top - lines[-1].box.bottom > PADDING * lines[-1].size:
        return None
    heads = lines[-1]
    start = heads.box.top - 0.3 * heads.size
    fits = heads.bold and heads.box.x0 > band.walls[1] and _fits(words, band.walls, start, band.top)
    return start if fits else None


def _end_of_row(words: list[Word], stripe: _Stripe) -> float | None:
    """Give the lower edge of a row that stands right below a shaded one, or ``None`` where none does."""
    lines = build_lines(_between(words, stripe.walls, stripe.bottom, stripe.bottom + MAX_ROW))
    end = stripe.bottom
    for line in lines:
        reach = PADDING if end == stripe.bottom else LEADING - 1
        if line.box.top - end > reach * line.size:
            break
        end = max(end, line.box.bottom)
    if end == stripe.bottom or not _fits(words, stripe.walls, stripe.bottom, end):
        return None
    return end + 0.3 * lines[0].size
