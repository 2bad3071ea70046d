"""How names look in patterns: words with capitals, one after the other."""

from __future__ import annotations

from collections.abc import Callable, Collection

WORD = r"[A-ZÀ-Þ][\w’'-]+"
SPOKEN_NAME = r"[A-ZÀ-Þ][\w’'-]*(?: (?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*))*"  # words with capitals, figures behind them
SURE_SHARE = 0.6  # of several heads or cells that can be nothing but names: from it on all are taken for names


def words_of_name(most: int) -> str:
    """Give the text of a pattern of one to ``most`` words with capitals, a space between them."""
    return rf"{WORD}(?: {WORD}){{0,{most - 1}}}"


def are_mostly_names(texts: Collection[str], can_be_name: Callable[[str], bool]) -> bool:
    """Tell whether most of several texts can be names: "22 L" beside "20 S" is no volume."""
    return sum(map(can_be_name, texts)) >= SURE_SHARE * len(texts)
