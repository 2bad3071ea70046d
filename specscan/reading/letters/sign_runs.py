"""Signs of several vans that stand before an item, one for each: "■ □ ×  All-wheel drive".

They are made one sign, in which ``SIGN_JOINT`` parts those of the vans, so that the item is one of a list. The letters
over them ("P S C  Water") stay what they are and come before the heading.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from specscan.reading.letters.words import DASHES, Line, Word, build_lines, is_bullet
from specscan.records.text import SIGN_JOINT, union

MOST_SIGNS = 5
LEAST_LINES = 4  # with as many signs at one place, of which some differ
BETWEEN = 1.6  # em between two signs, at most
BEHIND = 3.0  # em from the last sign to the item, at most
AHEAD = 1.2  # times as far as the item is from its signs: they are nearer to it than to what stands before them
ALIKE = 0.6  # em by which the first signs of a list may be off
BULLETED = 0.8  # of the items of a list, from which a dash or dot that opens them is their bullet
KINDS = 5  # of signs in one list
SPACE = 0.3  # em between the sign and the item, once it is one


@dataclass(slots=True)
class _Run:
    """Signs ``first`` to ``last`` of a line, and the first word of the item behind them.

    There is none where the item stands a little lower, and a line of another column between them.
    """

    line: Line
    first: int
    last: int
    item: Word | None

    @property
    def signs(self) -> list[Word]:
        return list(self.line.words[self.first : self.last])

    @property
    def x(self) -> float:
        return self.line.words[self.first].box.x0


def with_joined_signs(words: list[Word]) -> list[Word]:
    """Give the words of a page with the signs that stand before the items of a list for several vans as one each."""
    if not _may_hold_runs(words):
        return words
    lines = build_lines([word for word in words if not word.direction])
    joined, dropped = _made_one(lines, words)
    return [joined.get(id(word), word) for word in words if id(word) not in dropped] if joined else words


def lines_with_joined_signs(lines: list[Line]) -> list[Line]:
    """Do the same for lines as they are typed."""
    words = [word for line in lines for word in line.words]
    joined, dropped = _made_one(lines, words) if _may_hold_runs(words) else ({}, set())
    if not joined:
        return lines
    return [Line(joined.get(id(word), word) for word in line.words if id(word) not in dropped) for line in lines]


def _may_hold_runs(words: list[Word]) -> bool:
    return sum(_is_sign(word) for word in words) >= 2 * LEAST_LINES


def _made_one(lines: list[Line], words: list[Word]) -> tuple[dict[int, Word], set[int]]:
    """Give the joined signs by the ids of the first ones, and the ids of the others."""
    runs = [run for line in lines for run in _runs_of(line)]
    joined: dict[int, Word] = {}
    dropped: set[int] = set()
    for group in _lists([run for run in runs if run.item is not None]):
        kinds = {sign.text for run in group for sign in run.signs if is_bullet(sign.text)}
        for run in [*group, *(run for run in runs if run.item is None and _alike(group[0], run))]:
            heads = not all(sign.text in kinds for sign in run.signs)
            first, *others = run.signs
            item = run.item or _beside(run, group[0], words)
            joined[id(first)] = _joined(run, " " if heads else SIGN_JOINT, item)
            dropped |= {id(sign) for sign in others}
    return joined, dropped


def _is_sign(word: Word) -> bool:
    return is_bullet(word.text) or len(word.text) == 1 and word.text.isupper()


def _runs_of(line: Line) -> list[_Run]:
    """Give the runs of two signs or more that stand close to one another.

    They are nearer to their item than to what stands before them.
    """
    found: list[_Run] = []
    words = line.words
    place = 0
    while place < len(words):
        end = place
        while end < len(words) and _is_sign(words[end]) and (end == place or _gap(words, end) <= BETWEEN):
            end += 1
        if 2 <= end - place <= MOST_SIGNS:
            behind = _gap(words, end) if end < len(words) else BEHIND * AHEAD
            ahead = _gap(words, place) if place else BEHIND * AHEAD
            near = behind <= BEHIND and ahead >= AHEAD * behind and any(map(str.isalnum, words[end].text))
            near = near and not _explains(words, end)
            if near or behind > BEHIND:
                found.append(_Run(line, place, end, words[end] if near else None))
        place = max(end, place + 1)
    return found


def _explains(words: tuple[Word, ...], place: int) -> bool:
    """Tell whether another sign follows in the text from a place on: "■ – standard, □ – option" is a legend."""
    for number in range(place + 1, len(words)):
        if _gap(words, number) > BEHIND:
            return False
        if is_bullet(words[number].text) and words[number].text not in DASHES:
            return True
    return False


def _gap(words: tuple[Word, ...], place: int) -> float:
    """Give the space before a word, in em."""
    left, right = words[place - 1], words[place]
    return (right.box.x0 - left.box.x1) / max(left.size, right.size, 1.0)


def _lists(runs: list[_Run]) -> list[list[_Run]]:
    """Give the runs that form lists: below one another, as many signs each, the same few; the list at the left edge
    has nothing before it, as the labels of a table with marks behind them would stand."""
    groups: list[list[_Run]] = []
    for run in runs:
        group = next((g for g in groups if _alike(g[0], run)), None)
        if group is None:
            groups.append([run])
        else:
            group.append(run)
    kept = [group for group in groups if _is_list(group)]
    left = min(kept, key=lambda group: group[0].x, default=None)
    return kept if left is not None and all(run.first == 0 for run in left) else []


def _alike(one: _Run, two: _Run) -> bool:
    near = abs(one.x - two.x) <= ALIKE * one.line.size
    return near and one.last - one.first == two.last - two.first


def _is_list(group: list[_Run]) -> bool:
    signed = [run for run in group if all(is_bullet(sign.text) for sign in run.signs)]
    kinds = {sign.text for run in signed for sign in run.signs}
    # "- ✓ heated floor": the bullet of the list, and one sign
    others = {sign.text for run in group for sign in run.signs[1:]}
    bulleted = sum(run.signs[0].text in DASHES - others for run in group) > BULLETED * len(group)
    return len(signed) >= LEAST_LINES and 2 <= len(kinds) <= KINDS and not bulleted


def _beside(run: _Run, other: _Run, words: list[Word]) -> Word | None:
    """Give the word that stands beside signs, where the items of their list begin."""
    assert other.item is not None
    box, x = run.signs[0].box, other.item.box.x0
    level = [word for word in words if word.box.top < box.middle[1] < word.box.bottom and not word.direction]
    return next((word for word in level if abs(word.box.x0 - x) <= ALIKE * word.size), None)


def _joined(run: _Run, joint: str, item: Word | None) -> Word:
    """Give the signs as one word that reaches up to its item, on the baseline of that: no column begins between."""
    signs = run.signs
    box = union([sign.box for sign in signs])
    assert box is not None
    text = joint.join(sign.text for sign in signs)
    if item is None:
        return replace(signs[0], text=text, box=box)
    reach = max(box.x1, item.box.x0 - SPACE * item.size)
    return replace(signs[0], text=text, box=replace(box, x1=reach), base=item.base)
