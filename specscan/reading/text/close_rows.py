"""Tables pasted row by row with a single space between their cells: "Fresh water 22 gal, in cabin 30 gal, in cabin"."""

from __future__ import annotations

import re

from specscan.reading.tables.compose import Hints
from specscan.reading.text.fallen_cells import Pasted

MIN_ROWS = 6
PARTED_SHARE = 0.7  # of the rows: those of which the values can be told apart
FIGURED_SHARE = 0.4  # of the rows: those whose values have the same figures and units
MAX_COLUMNS = 5
LABEL_WORDS = 6
FIGURE = re.compile(r"[^\w]?\d[\d.,/]*\W?$")
OPEN_ENDS = (",", "x", "×", "/", "-", "–", "+", "&", "(")  # before a figure that goes on with the value


def find_close_rows(lines: list[str], hints: Hints) -> Pasted | None:
    """Give the first such table, or ``None``.

    Its first line names the vans, all of which begin with the same word, and each line below it opens with a known
    label. A row of which nobody can tell where one value ends is left out; where there are many, it is no table.
    """
    for start, line in enumerate(lines[:-MIN_ROWS]):
        heads = _heads(line.split(), hints)
        if not heads:
            continue
        rows: list[list[str]] = []
        end, figured = start + 1, 0
        while end < len(lines) and (labels := _labels(lines[end], hints)):
            row, sure = _row(lines[end].split(), labels, len(heads))
            figured += sure
            rows += [row] if row else []
            end += 1
        count = end - start - 1
        if count >= MIN_ROWS and len(rows) >= PARTED_SHARE * count and figured >= FIGURED_SHARE * count:
            return Pasted(start, end, [["", *heads], *rows], True)
    return None


def _heads(words: list[str], hints: Hints) -> list[str]:
    """Give the names in a line of nothing but names that begin with the same word, each of which goes on."""
    if not words or "   " in " ".join(words) or not words[0][:1].isupper():
        return []
    starts = [place for place, word in enumerate(words) if word == words[0]]
    names = [" ".join(words[a:b]) for a, b in zip(starts, [*starts[1:], len(words)], strict=True)]
    several = 2 <= len(names) <= MAX_COLUMNS and len({*names}) == len(names)
    plain = all(
        len(name.split()) <= 4 and all(word[0].isupper() or word[0].isdigit() for word in name.split())
        for name in names
    )
    return names if several and plain and not hints.is_label(words[0]) else []


def _labels(line: str, hints: Hints) -> list[int]:
    """Give of how many words the known labels are that open a line, most first."""
    words = line.split()
    if "   " in line.strip() or line.strip().endswith("."):
        return []
    return [
        count
        for count in range(min(LABEL_WORDS, len(words) - 1), 0, -1)
        if _begins(words, count)
        and not any(map(str.isdigit, "".join(words[:count])))
        and hints.is_label(" ".join(words[:count]))
    ]


def _row(words: list[str], labels: list[int], columns: int) -> tuple[list[str], bool]:
    """Give the label and the values of a row, and whether their figures and units say so; none where nobody can tell.

    Of several labels the longest counts behind which there are as many values as columns.
    """
    found = []
    for count in labels:
        values, sure = _parted(words[count:], columns)
        if values:
            found.append(([" ".join(words[:count]), *values], sure))
    return next((one for one in found if one[1]), found[0] if found else ([], False))


def _begins(words: list[str], place: int) -> bool:
    """Tell whether a value can begin with a word: one with a capital or a figure."""
    first = words[place][0]
    return (first.isupper() or words[place].lstrip("(±~<>≈-–")[:1].isdigit()) and not (
        place and words[place - 1].endswith(OPEN_ENDS)
    )


def _parted(words: list[str], count: int) -> tuple[list[str], bool]:
    """Give words as so many values, none where they cannot be told apart; and whether figures and units say so."""
    if len(words) % count == 0:
        size = len(words) // count
        parts = [words[place : place + size] for place in range(0, len(words), size)]
        if len({tuple("0" if FIGURE.match(word) else word for word in part) for part in parts}) == 1 and all(
            any(map(str.isdigit, "".join(part))) for part in parts
        ):
            return [" ".join(part) for part in parts], True
    starts = [place for place in range(1, len(words)) if _begins(words, place)]
    if len(starts) != count - 1:
        return [], False
    parts = [words[a:b] for a, b in zip([0, *starts], [*starts, len(words)], strict=True)]
    bare = [len(part) == 1 and FIGURE.match(part[0]) is not None for part in parts]
    lower = any(word[:1].islower() for word in words)
    ends = len({part[-1].split("-")[-1] for part in parts}) == 1  # "Rear-wheel All-wheel", "Single pane Dual pane"
    return ([" ".join(part) for part in parts], False) if not any(bare) and (lower or ends) else ([], False)
