"""Text cells of CSV files that a spreadsheet does not take for formulas.

Source of the danger: OWASP, "CSV Injection" (cells that begin with =, +, -, @, tab, carriage return or line feed,
or with the full-width forms of the first four).
"""

from __future__ import annotations

import re

LEADING = ("=", "+", "-", "@", "\t", "\r", "\n", "＝", "＋", "－", "＠")
NUMBER = re.compile(r"[+-]?\d+(?:[.,]\d+)?")


def guarded(text: str) -> str:
    """Give a text cell with an apostrophe before it where it begins like a formula; a plain number stays.

    A cell that begins with apostrophes and then like a formula gets one more, so that ``unguarded`` gives back every
    text as it was.
    """
    return f"'{text}" if text.lstrip("'").startswith(LEADING) and not NUMBER.fullmatch(text) else text


def unguarded(text: str) -> str:
    """Give back a cell as it was before ``guarded``."""
    return text[1:] if text.startswith("'") and text.lstrip("'").startswith(LEADING) else text
