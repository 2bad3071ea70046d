"""Lines above an unruled table that are parted as its rows are: its title, "Marrowfen    Data sheet" over the heads."""

from __future__ import annotations

from specscan.reading.tables.compose import Hints
from specscan.reading.tables.gutters import Parted, em_of

TITLE_SIZE = 1.4  # times the size of the rows
MIN_HEADS = 3  # parts of heads below such a title
GAP = 1.1  # em: a blank line
MOST = 4  # lines of such a title


def below_large_title(kept: list[Parted], first: int, last: int) -> int:
    """Give where a range begins without the large line at its top that has a range at the left, its maker at the right.

    A line of running text or a subtitle parts it from the rows. The large line may also stand below them,
    over heads of three parts or more.
    """
    em = em_of([line for line, _ in kept[first:last]])
    title, parts = kept[first]
    cornered = title.box.x0 < min(line.box.x0 for line, _ in kept[first + 1 : last]) + em if first + 1 < last else False
    if not cornered or len(parts) > 2 or len(kept[first + 1][1]) > 1:
        return first
    begin = next((n for n in range(first + 1, last) if len(kept[n][1]) > 1), first)
    large = kept[first + 1][0].size >= TITLE_SIZE * em and len(kept[begin][1]) >= MIN_HEADS
    return begin if large or title.size >= TITLE_SIZE * em else first


def below_lines_apart(kept: list[Parted], first: int, last: int, hints: Hints) -> int:
    """Give where a range begins without lines of two parts that a blank one parts from heads with an open corner.

    What stands at their left is no label of the row's value: a company with the kind of paper, a range with its year.
    """
    em = em_of([line for line, _ in kept[first:last]])
    for place in range(first + 1, min(first + MOST, last - 2) + 1):
        (above, parts), (heads, names), (below, _) = kept[place - 1], kept[place], kept[place + 1]
        if len(parts) != 2 or hints.is_label(parts[0].text):
            break
        if heads.box.top - above.box.bottom < GAP * em:
            continue
        cornered = heads.box.x0 > max(kept[first][0].box.x0, below.box.x0) + em
        return place if cornered and len(names) > 1 else first
    return first
