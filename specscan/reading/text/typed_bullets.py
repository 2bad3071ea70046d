"""Full stops and letters "o" that stand for bullets in typed lists: ". Fresh water 100 litres", "o Solar 200 W"."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Sequence

TYPED = re.compile(r"(\s*)([.o]) (?=\w)")
LEAST = 3  # lines of a text that begin with the sign


def with_dashed_items(lines: Sequence[str]) -> list[str]:
    """Give lines with a dash for each such sign, where several lines begin with it."""
    matches = [TYPED.match(line) for line in lines]
    counts = Counter(match.group(2) for match in matches if match is not None)
    return [
        line if match is None or counts[match.group(2)] < LEAST else f"{match.group(1)}- {line[match.end() :]}"
        for line, match in zip(lines, matches, strict=True)
    ]
