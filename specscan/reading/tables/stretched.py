"""Lines of a cell that are set to the width of its column: the gap in them parts no columns."""

from __future__ import annotations

from specscan.reading.letters.words import Line
from specscan.reading.tables.gutters import Parted

AROUND = 30  # lines above and below, in which columns show
FLUSH = 0.3  # em by which the parts of a column begin at one place
MIN_FLUSH = 3  # other lines with a part that begins there
EVEN = 0.3  # em by which the spaces of a line that is set to a width differ
PITCH = 1.6  # em to the line with which the cell goes on


def join_stretched(kept: list[Parted]) -> list[Parted]:
    """Give lines with their segments, those of a stretched line of a cell as one: "Gas heater      with" over "coil".

    The cell goes on in the next line, which has no label, and nothing else begins where the gap ends.
    """
    return [(line, _joined(segments, place, kept)) for place, (line, segments) in enumerate(kept)]


def _joined(segments: list[Line], place: int, kept: list[Parted]) -> list[Line]:
    if len(segments) < 3 or place + 1 == len(kept):
        return segments
    line, (below, parts) = kept[place][0], kept[place + 1]
    if not 0 < below.base - line.base < PITCH * line.size or parts[0].box.x0 < segments[1].box.x0 - line.size:
        return segments
    near = range(max(0, place - AROUND), min(len(kept), place + AROUND))
    around = [part for at in near if at != place for part in kept[at][1]]
    for first, (left, right) in enumerate(zip(segments[1:], segments[2:], strict=False), 1):
        flush = [part for part in around if abs(part.box.x0 - left.box.x0) < FLUSH * line.size]
        begins = right.box.x0 - line.size
        end = segments[first + 2].box.x0 - line.size if first + 2 < len(segments) else float("inf")
        if (
            len(flush) >= MIN_FLUSH
            and any(abs(part.box.x0 - left.box.x0) < FLUSH * line.size for part in parts)
            and (right.text[:1].islower() or _is_even(segments, first, line.size))
            and not any(begins <= part.box.x0 < end for part in around)
        ):
            joined = Line([*left.words, *right.words])
            return _joined([*segments[:first], joined, *segments[first + 2 :]], place, kept)
    return segments


def _is_even(segments: list[Line], first: int, size: float) -> bool:
    """Tell whether the gap behind a segment is as wide as the one before its last word, or as the next one.

    So a line is set that fills its column, whatever its words begin with: "ja,    Heizmatte    am    Boden-".
    """
    left, right = segments[first : first + 2]
    gap = right.box.x0 - left.box.x1
    before = [b.box.x0 - a.box.x1 for a, b in zip(left.words[-2:], left.words[-1:], strict=False)]
    behind = [one.box.x0 - right.box.x1 for one in segments[first + 2 : first + 3]]
    return any(abs(other - gap) < EVEN * size for other in (*before, *behind))
