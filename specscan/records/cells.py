"""Text cells of CSV files that a spreadsheet does not take for formulas.

Source of the danger: OWASP, "CSV Injection" (cells that begin with =, +, -, @, tab or carriage return).
"""

from __future__ import annotations

import re

LEADING = ("=", "+", "-", "@", "\t", "\r")
NUMBER = re.compile(r"[+-]?\d+(?:[.,]\d+)?")


def guarded(text: str) -> str:
    """Give a text cell with an apostrophe before it where it begins like a formula; a plain number stays."""
    return f"'{text}" if text.startswith(LEADING) and not NUMBER.fullmatch(text) else text


def unguarded(text: str) -> str:
    """Give back a cell as it was before ``guarded``."""
    return text[1:] if text.startswith("'") and text[1:].startswith(LEADING) else text
