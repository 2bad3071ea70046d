"""Paragraphs that break at the foot of a column and go on at the head of the next."""

from __future__ import annotations

from specscan.reading.layout.item import Item
from specscan.reading.layout.seams import is_copy
from specscan.records.text import Kind

SAME_SIZE = 0.3  # points
LEAST_WORDS = 4  # of the part at the foot of a column
ENDS = (".", "!", "?", ":", ";")


def join_over(above: list[Item], below: list[Item]) -> None:
    """Give the last paragraph of a column the first one of the next column's, where it goes on there."""
    first = next((place for place, item in enumerate(below) if not is_copy(item.lines[0].words)), None)
    if above and first is not None and _goes_on(above[-1], below[first]):
        above[-1].lines.extend(below.pop(first).lines)


def _goes_on(last: Item, first: Item) -> bool:
    """Tell whether a paragraph has no end, and another goes on with a small letter in the same size beside it."""
    if last.kind is not Kind.PROSE or first.kind is not Kind.PROSE:
        return False
    foot, head = last.lines[-1], first.lines[0]
    words = sum(len(line.words) for line in last.lines)
    beside = head.box.x0 > foot.box.x1 and head.box.top < foot.box.top
    alike = abs(foot.size - head.size) <= SAME_SIZE and foot.bold == head.bold
    return words >= LEAST_WORDS and beside and alike and not foot.text.endswith(ENDS) and head.text[:1].islower()
