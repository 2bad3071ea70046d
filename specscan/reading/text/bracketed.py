"""Labels in square brackets before their values, as dealers type them: "[Fuel]  93 L", "[Shore]  30 A"."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

LABEL = re.compile(r"(?:^|(?<=\s{2})|(?<=\t))\s*\[(?=[^\W\d_])([^\[\]]{2,40})\](?=[ \t]+\S)[ \t]*:?[ \t]*")
LEAST = 4  # such labels in a text; a lone remark in brackets is none
KNOWN_SHARE = 0.5


def with_labels_out_of_brackets(lines: Sequence[str], is_label: Callable[[str], bool]) -> list[str]:
    """Give lines with a label, a tab and its value for each such label, where most of them are known.

    What stands further in below a value goes on with it, or is a line of its own where that one was not full.
    """
    labels = [match.group(1).strip() for line in lines for match in LABEL.finditer(line)]
    if len(labels) < LEAST or sum(map(is_label, labels)) < KNOWN_SHARE * len(labels):
        return list(lines)
    widest = max(map(len, lines))
    given: list[str] = []
    last, at = "", -1  # the line above, if it belongs to a label; where that stands
    for line in lines:
        parts = _parts(line)
        if parts:
            given.extend(parts)
            last, at = line, len(line) - len(line.lstrip())
        elif last and line.strip() and len(line) - len(line.lstrip()) > at + 1:
            if _is_broken(last, line, widest):
                given[-1] += f" {line.strip()}"
            else:
                given.append(line.strip())
            last = line
        else:
            given.append(line)
            last = ""
    return given


def _parts(line: str) -> list[str]:
    """Give the labels of a line with their values, if it begins with one."""
    found = list(LABEL.finditer(line))
    if not found or line[: found[0].start()].strip():
        return []
    ends = [*(match.start() for match in found[1:]), len(line)]
    return [
        f"{match.group(1).strip()}\t{line[match.end() : end].strip()}" for match, end in zip(found, ends, strict=True)
    ]


def _is_broken(line: str, below: str, widest: int) -> bool:
    """Tell whether a line ends where its width does, so that what stands below is the same sentence."""
    first = below.split()[0]
    return line.rstrip().endswith((",", ";", "/", "-")) or len(line.rstrip()) + 1 + len(first) >= widest
