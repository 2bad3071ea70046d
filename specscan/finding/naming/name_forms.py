"""How names look in patterns: words with capitals, one after the other."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Iterable

from specscan.finding.language.whole_words import any_word

WORD = r"[A-ZÀ-Þ][\w’'-]+"
SPOKEN_NAME = r"[A-ZÀ-Þ][\w’'-]*(?: (?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*))*"  # words with capitals, figures behind them
# That of a base vehicle: words with a capital or a figure in them, as "Kelmar Drover 3500 Ext" or "e-Bask 350 L2H2".
BASE_WORD = r"(?:[A-ZÀ-Þ][\w’'-]*|[a-z]-[A-Z][\w-]*|\d(?:(?:[\w.-]|,(?=\d))*\w)?(?:\s?t\b)?|[A-Z]\d\w*)"
BASE_NAME = re.compile(rf"{BASE_WORD}(?:\s+{BASE_WORD}){{0,6}}")
VOWEL = re.compile(r"[aeiouyäöüéèêáóí]", re.IGNORECASE)
SURE_SHARE = 0.6  # of several heads or cells that can be nothing but names: from it on all are taken for names


def article(articles: Iterable[str], between: str = "") -> str:
    """Give the text of a pattern of an article and what parts it from the name behind it: "the Drift", "l’Orme".

    ``between`` are words that may stand between the two, as in "the new Drift"; behind an apostrophe none do.
    """
    forms = {form for word in articles for form in (word, word.replace("’", "'"))}
    return rf"(?i:{any_word(forms)})(?:(?<=[’'])|{between}\s+)"


def words_of_name(most: int) -> str:
    """Give the text of a pattern of one to ``most`` words with capitals, a space between them."""
    return rf"{WORD}(?: {WORD}){{0,{most - 1}}}"


def are_mostly_names(texts: Collection[str], can_be_name: Callable[[str], bool]) -> bool:
    """Tell whether most of several texts can be names: "22 L" beside "20 S" is no volume."""
    return sum(map(can_be_name, texts)) >= SURE_SHARE * len(texts)


def unshouted(word: str, most: int) -> str:
    """Give a shouted word with a capital first, "Hi-Top" too; a word of ``most`` letters is a code and stays."""
    parts = word.split("-")
    spoken = all(part.isalpha() and (len(parts) == 1 or VOWEL.search(part)) for part in parts)
    return "-".join(map(str.capitalize, parts)) if spoken and len(word) > most else word
