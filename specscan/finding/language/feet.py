"""Lengths in feet and inches as they are printed: 20' 11", 6 ft 3 in, 19-4."""

from __future__ import annotations

import re

FEET = r"(?:ft\.?|feet|foot|'|′|’|pi\.?|pieds?)"
INCHES = r"(?:in\.?|inch(?:es)?|\"|″|”|''|’’|po\.?|pouces?)"
FEET_INCHES = re.compile(
    rf"(?<![\d.,])(\d{{1,2}})\s*{FEET}\s*[-,]?\s*"
    rf"((?:\d{{1,2}}(?:[.,]\d+)?)(?:[ -]?[½¼¾⅛⅜⅝⅞]|[ -]\d/\d{{1,2}})?)\s*({INCHES})?(?![\w])"
)
FEET_DASH_INCHES = re.compile(r"^\s*(\d{1,2})\s*[-–'′’]\s*(\d{1,2}(?:\.\d+)?)\s*[\"″”]?\s*$")


def feet_and_inches(text: str) -> float | None:
    """Give millimetres for "19-4" under a head that says feet and inches, else ``None``."""
    match = FEET_DASH_INCHES.match(text)
    if match is None or float(match.group(2)) >= 12:
        return None
    return (int(match.group(1)) * 12 + float(match.group(2))) * 25.4
