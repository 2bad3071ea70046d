"""How far columns of a page reach: from where each begins to the last line that leaves the white space between them."""

from __future__ import annotations

from collections.abc import Sequence

from specscan.reading.letters.words import Line

GUTTER = 0.65  # em of white space
EDGE = 1.0  # points before the right column
HIGHER = 1.5  # em by which a text may begin above the one at its left
CLOSE, APART = 0.8, 0.3  # em between two of its lines, and how much more there is above the first
MORE = 1.15  # times the widest step within the columns: what stands further below is something else


def reach(held: Sequence[Line], rest: Sequence[Line], x: float, em: float) -> tuple[int, float]:
    """Give how many of the lines below two columns still belong to them, and where to part these.

    ``held`` are the lines that the white space at ``x`` parts, ``rest`` those below them, ``em`` the usual font size.
    A line belongs to them as long as it leaves that white space and stands no further below the line above it in its
    column than others do.
    """
    left = max((side.box.x1 for line in held if (side := line.sides(x)[0]) is not None), default=x)
    right = min((side.box.x0 for line in held if (side := line.sides(x)[1]) is not None), default=x)
    x = max(x, right - EDGE)  # a longer line of the left column may still come
    steps: list[float] = []
    last: dict[int, float] = {}
    for line in held:
        for place, side in enumerate(line.sides(x)):
            if side is not None:
                steps += [side.box.top - last[place]] if place in last else []
                last[place] = side.box.bottom
    most = MORE * max(steps, default=0.0)
    for number, line in enumerate(rest):
        west, east = line.sides(x)
        left = max(left, west.box.x1) if west is not None else left
        right = min(right, east.box.x0) if east is not None else right
        if right - left < GUTTER * em:
            return number, x
        for place, side in enumerate((west, east)):
            if side is not None:
                if place not in last or side.box.top - last[place] > most:
                    return number, x
                last[place] = side.box.bottom
    return len(rest), x


def begins_higher(left: Sequence[Line], right: Sequence[Line], above: float) -> bool:
    """Tell whether a text begins up to a line above the one at its left, and nothing stands right above it.

    So stands the rest of a paragraph at the head of a column beside one that opens with white space. ``above`` is
    where the last line above both ends.
    """
    if not left or len(right) < 2:
        return False
    em, step = right[0].size, right[1].box.top - right[0].box.bottom
    higher = 0 < left[0].box.top - right[0].box.top < HIGHER * em
    return higher and step < CLOSE * em and right[0].box.top - above > step + APART * em
