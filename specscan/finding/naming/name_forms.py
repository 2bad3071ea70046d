"""How names look in patterns: words with capitals, one after the other."""

from __future__ import annotations

WORD = r"[A-ZÀ-Þ][\w’'-]+"


def words_of_name(most: int) -> str:
    """Give the text of a pattern of one to ``most`` words with capitals, a space between them."""
    return rf"{WORD}(?: {WORD}){{0,{most - 1}}}"
