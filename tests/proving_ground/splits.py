"""Tables of the same vans that stand apart: two with the vans in another order, one parted by van over facing pages."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tests.proving_ground.grids import MatrixWay, matrix
from tests.proving_ground.pages import Block, Cell, Grid, Page
from tests.proving_ground.studio import Studio


def two_tables(studio: Studio, web: bool) -> list[Page]:
    """Give two tables on the same vans, the second with its columns in another order."""
    groups = studio.plan(0.55)
    half = max(1, len(groups) // 2)
    way = MatrixWay("two_tables", ruled=studio.rng.random() < 0.5, zebra=studio.rng.random() < 0.5, per_page=60)
    order = list(range(len(studio.family.vans)))
    studio.rng.shuffle(order)
    first = [block for blocks in matrix(studio, groups[:half], way) for block in blocks]
    second = [block for blocks in matrix(studio, groups[half:], way) for block in blocks]
    parts = [studio.heading("specs"), *first], [studio.heading("equipment"), *_with_columns(second, order)]
    blocks: list[Block] = [studio.title(vans_below=True), *parts[0]]
    if studio.rng.random() < 0.5:
        return [Page([*blocks, *parts[1], studio.small_print()])]
    return [Page(blocks), Page([*parts[1], studio.small_print()])]


def facing_pages(studio: Studio, web: bool) -> list[Page]:
    """Give one table parted by van: some vans on the left page, the others on the right one, the labels on both."""
    groups = studio.plan(studio.rng.choice((0.4, 0.55)))
    way = MatrixWay("facing_pages", ruled=studio.rng.random() < 0.5, zebra=studio.rng.random() < 0.5, per_page=60)
    blocks = [block for blocks in matrix(studio, groups, way) for block in blocks]
    vans = len(studio.family.vans)
    cut = studio.rng.randint(1, vans - 1)
    sides = [_with_columns(blocks, places) for places in (range(cut), range(cut, vans))]
    pages = [Page([studio.title(vans_below=True)])]
    pages += [Page([studio.heading("specs"), *side]) for side in sides]
    pages[-1].blocks.append(studio.small_print())
    return pages


def _with_columns(blocks: Sequence[Block], order: Sequence[int]) -> list[Block]:
    """Give blocks whose tables have the columns of these vans alone, in this order."""
    return [_ordered(block, order) if isinstance(block, Grid) else block for block in blocks]


def _ordered(grid: Grid, order: Sequence[int]) -> Grid:
    shift = 2 if "group columns" in grid.traits else 1
    columns = shift + len(order)

    def row(cells: list[Cell]) -> list[Cell]:
        if len(cells) == 1:
            return [Cell(cells[0].text, columns)]
        return [*cells[:shift], *(cells[shift + place] for place in order)]

    claims = [claim for claim in grid.claims if claim.van in order]
    return replace(
        grid, heads=list(map(row, grid.heads)), rows=list(map(row, grid.rows)), columns=columns, claims=claims
    )
