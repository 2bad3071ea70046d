"""Words of a cell that run out over its edge, where nothing stands beside it, as a spreadsheet prints long ones."""

from __future__ import annotations

from specscan.reading.letters.words import Word
from specscan.reading.tables.crossings import Cell

SPACE = 0.5  # em between two words of one text at most
LEVEL = 0.1  # em by which their baselines may differ


def add_running_over(inside: dict[Cell, list[Word]], words: list[Word]) -> None:
    """Give each cell the words that go on with its last line behind its right edge and stand in no cell."""
    held = {id(word) for own in inside.values() for word in own}
    top, bottom = min(cell[1] for cell in inside), max(cell[3] for cell in inside)
    beside = [w for w in words if top < w.box.middle[1] < bottom and id(w) not in held and not w.direction]
    if not beside:
        return
    for cell, own in inside.items():
        for word in sorted(beside, key=lambda word: word.box.x0) if own else []:
            if word.box.x1 <= cell[2] or not cell[1] < word.box.middle[1] < cell[3]:
                continue
            level = [o for o in own if abs((o.base or o.box.bottom) - (word.base or word.box.bottom)) < LEVEL * o.size]
            before = max((o.box.x1 for o in level), default=None)
            if before is not None and 0 <= word.box.x0 - before <= SPACE * word.size:
                own.append(word)
