"""Stickers that listings paste on their titles: "***JUST IN*** 2023 Marrowfen Drift 21 ***CLEAN***"."""

from __future__ import annotations

import re

from specscan.records.years import MODEL_YEAR

SIGNS = r"(?P<sign>\*{2,}|\+{2,}|!{2,}|#{2,}|={2,}|~{2,}|>{2,}|<{2,})"
STICKER = rf"{SIGNS}\s*(?=[^a-zß-ÿ\d]*(?P=sign))[^*+!#=~<>]{{2,24}}(?P=sign)"  # in capitals, without a figure
BEFORE = re.compile(rf"^\s*{STICKER}\s+(?=\w)")
BEHIND = re.compile(rf"(?<=\w)\s+{STICKER}\s*$")
NAME = re.compile(rf"[A-ZÀ-Þ][\w’'-]+ (?:[A-ZÀ-Þ][\w’'-]* ){{0,2}}(?!{MODEL_YEAR}(?!\d))[A-Z]?\d")
FIRST_LINES = 3  # of a text: there its title stands


def without_stickers(lines: list[str]) -> list[str]:
    """Give the lines, and of the first ones that name a van with a figure what is left without their stickers."""
    shown = list(lines)
    for number in [number for number, line in enumerate(lines) if line.strip()][:FIRST_LINES]:
        left = BEHIND.sub("", BEFORE.sub("", lines[number]))
        if NAME.search(left):
            shown[number] = left
    return shown
