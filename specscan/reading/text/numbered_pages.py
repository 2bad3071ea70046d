"""Heads of pages in pasted text: "Marrowfen | Drift 2026 | 2", then "Marrowfen | Drift 2026 | 3"."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable

BEHIND = re.compile(r"^\s*(?P<rest>\S.*?)\s*[|·•–—]\s*(?P<page>\d{1,3})\s*$")
BEFORE = re.compile(r"^\s*(?P<page>\d{1,3})\s*[|·•–—]\s*(?P<rest>\S.*?)\s*$")


def without_numbered_pages(lines: list[str], is_label: Callable[[str], bool]) -> list[str]:
    """Give the lines, of those that only number pages the first without its number and no others.

    They stand alone, say the same but for numbers that count on by one, and are no row of a list ("Sleeps | 2").
    """
    found: dict[str, list[tuple[int, int]]] = defaultdict(list)
    for number, line in enumerate(lines):
        match = BEHIND.match(line) or BEFORE.match(line)
        if match is not None and _stands_alone(lines, number):
            found[" ".join(match["rest"].split())].append((number, int(match["page"])))
    shown = list(lines)
    for rest, places in found.items():
        pages = [page for _, page in places]
        if len(pages) < 2 or pages != list(range(pages[0], pages[0] + len(pages))) or is_label(rest):
            continue
        for number, _ in places:
            shown[number] = ""
        shown[places[0][0]] = rest
    return shown


def _stands_alone(lines: list[str], number: int) -> bool:
    """Tell whether no line with text stands right above or below."""
    beside = [*lines[max(0, number - 1) : number], *lines[number + 1 : number + 2]]
    return not any(line.strip() for line in beside)
