"""Letters that answer question by question: what they quote is another's, and none of it is the answer."""

from __future__ import annotations

import re
from collections.abc import Sequence

QUOTED = re.compile(r"\s{0,3}>")
LEAST = 2  # questions that are quoted and answered, from which on it is such a letter
LONGEST = 6  # lines of a question
ASKING = 0.5  # share of what is quoted that holds a question mark


def without_questions(lines: Sequence[str]) -> tuple[list[str], bool]:
    """Give the lines of a text, empty where it quotes questions that it answers, and whether it does.

    Each quoted piece is short and has an answer below it, and most ask something; behind all answers the letter that
    asked may follow once more. A text that quotes a whole letter, or notes, stays as it is.
    """
    pieces: list[tuple[int, int]] = []
    for place, line in enumerate(lines):
        if not QUOTED.match(line):
            continue
        if pieces and pieces[-1][1] == place:
            pieces[-1] = (pieces[-1][0], place + 1)
        else:
            pieces.append((place, place + 1))
    ends = [*(start for start, _ in pieces[1:]), len(lines)]
    last = pieces[-1:]
    if last and len(pieces) > LEAST and not any(line.strip() for line in lines[last[0][1] :]):
        pieces, ends = pieces[:-1], ends[:-1]  # "> On 2 Nov, the Holts wrote:"
    answered = all(
        end - start <= LONGEST and any(line.strip() for line in lines[end:following])
        for (start, end), following in zip(pieces, ends, strict=False)
    )
    asking = sum(any("?" in line for line in lines[start:end]) for start, end in pieces)
    if len(pieces) < LEAST or not answered or asking < ASKING * len(pieces):
        return list(lines), False
    return ["" if QUOTED.match(line) else line for line in lines], True
