"""Drawn edges → crossings → cells → tables.

The steps and their tolerances are those of pdfplumber's table finder (`table.py`, MIT licence): edges that nearly lie
on one line are put on it, touching ones joined; a cell is the smallest box whose corners are crossings that edges
connect; cells that share a corner are a table. Here an edge is three numbers and the edges through a crossing are the
bits of one, where pdfplumber makes a dictionary of each and compares sets of them.
"""

from __future__ import annotations

import itertools
from collections import defaultdict
from typing import NamedTuple

import numpy as np

from specscan.reading.tables.spans import joined

Cell = tuple[float, float, float, float]  # x0, top, x1, bottom
Point = tuple[float, float]


class Edge(NamedTuple):
    """A straight edge from ``start`` to ``stop``; ``at`` is its y if it lies across the page, else its x."""

    across: bool
    at: float
    start: float
    stop: float


def merged(edges: list[Edge], snap: float, join: float) -> list[Edge]:
    """Give edges with those on nearly one line (``snap`` points from one to the next) put on it, and touching ones
    joined: gaps up to ``join`` points are closed.
    """
    result: list[Edge] = []
    for across in (True, False):
        own = [edge for edge in edges if edge.across is across]
        group_of: dict[float, int] = {}
        for number, group in enumerate(_clusters(sorted({edge.at for edge in own}), snap)):
            group_of.update(dict.fromkeys(group, number))
        groups: dict[int, list[Edge]] = defaultdict(list)
        for edge in own:
            groups[group_of[edge.at]].append(edge)
        for number in sorted(groups):
            members = groups[number]
            at = sum(edge.at for edge in members) / len(members)
            spans = [(edge.start, edge.stop) for edge in members]
            result += [Edge(across, at, start, stop) for start, stop in joined(spans, join)]
    return result


def _clusters(values: list[float], tolerance: float) -> list[list[float]]:
    """Part numbers in order where the step from one to the next is wider than ``tolerance``."""
    groups: list[list[float]] = []
    for value in values:
        if groups and value <= groups[-1][-1] + tolerance:
            groups[-1].append(value)
        else:
            groups.append([value])
    return groups


class Crossings:
    """The points where edges across and down the page meet, with the edges through each as the bits of two numbers."""

    def __init__(self, edges: list[Edge], slack: float):
        """``slack`` is how far, in points, an edge may end short of another that it meets."""
        down = sorted((edge for edge in edges if not edge.across), key=lambda edge: (edge.at, edge.start))
        over = sorted((edge for edge in edges if edge.across), key=lambda edge: (edge.at, edge.start))
        self.down: dict[Point, int] = defaultdict(int)
        self.over: dict[Point, int] = defaultdict(int)
        if not down or not over:
            return
        x, top, bottom = (np.array([getattr(edge, name) for edge in down])[:, None] for name in ("at", "start", "stop"))
        y, left, right = (np.array([getattr(edge, name) for edge in over])[None, :] for name in ("at", "start", "stop"))
        meet = (top <= y + slack) & (bottom >= y - slack) & (x >= left - slack) & (x <= right + slack)
        for one, two in zip(*(places.tolist() for places in np.nonzero(meet)), strict=True):
            point = down[one].at, over[two].at
            self.down[point] |= 1 << one
            self.over[point] |= 1 << two

    def __len__(self) -> int:
        return len(self.down)

    def cells(self) -> list[Cell]:
        """Give the smallest cell right below each crossing, from left to right and top to bottom."""
        columns: dict[float, list[float]] = defaultdict(list)
        rows: dict[float, list[float]] = defaultdict(list)
        points = sorted(self.down)
        for x, y in points:
            columns[x].append(y)
            rows[y].append(x)
        place: dict[Point, tuple[int, int]] = {}
        for x, ys in columns.items():
            for index, y in enumerate(ys):
                place[x, y] = index, 0
        for y, xs in rows.items():
            for index, x in enumerate(xs):
                place[x, y] = place[x, y][0], index
        found = []
        for x, y in points:
            in_column, in_row = place[x, y]
            cell = self._smallest(x, y, columns[x][in_column + 1 :], rows[y][in_row + 1 :])
            if cell is not None:
                found.append(cell)
        return found

    def _smallest(self, x: float, y: float, below: list[float], right: list[float]) -> Cell | None:
        down, over = self.down, self.over
        beside = list(itertools.takewhile(lambda other: over[x, y] & over[other, y], right))
        for bottom in below:
            if not down[x, y] & down[x, bottom]:
                return None  # the edge ends above it, and so above all that follow
            for edge in beside:
                corner = edge, bottom
                if corner in down and down[corner] & down[edge, y] and over[corner] & over[x, bottom]:
                    return x, y, edge, bottom
        return None


def tables(cells: list[Cell]) -> list[list[Cell]]:
    """Give the groups of two or more cells that share corners, from top to bottom."""
    found: list[list[Cell]] = []
    left = cells
    while left:
        group: list[Cell] = []
        corners: set[Point] = set()
        grown = True
        while grown and left:
            rest = []
            for cell in left:
                own = {(cell[0], cell[1]), (cell[0], cell[3]), (cell[2], cell[1]), (cell[2], cell[3])}
                if not group or not corners.isdisjoint(own):
                    corners |= own
                    group.append(cell)
                else:
                    rest.append(cell)
            grown = len(rest) < len(left)
            left = rest
        found.append(group)
    found.sort(key=lambda group: min((cell[1], cell[0]) for cell in group))
    return [group for group in found if len(group) > 1]
