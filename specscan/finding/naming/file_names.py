"""What a document prints of the name of its file: "Drift 21" of "marrowfen_drift_21_2026.pdf"."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Iterable

WORD = re.compile(r"[^\W_]+")
UMLAUTS = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ø": "oe", "å": "aa", "æ": "ae", "œ": "oe", "ß": "ss"})


def file_runs(stem: str, texts: Iterable[str]) -> list[str]:
    """Give the words of a file's name that stand side by side in texts too, as these print them, in order of the name.

    ``stem`` is the name without its ending. A run that is part of a longer one is left out; letters with marks may
    stand in the name without them, or as two letters: "pfnuestel" and "pfnustel" are "Pfnüstel".
    """
    words = [_plain(word) for word in WORD.findall(stem.casefold())]
    first: dict[str, list[int]] = {}
    for place, word in enumerate(words):
        first.setdefault(word, []).append(place)
    longest: dict[int, tuple[int, str]] = {}  # by place in the name: how many words, and how they are printed
    for text in texts:
        tokens = list(WORD.finditer(text))
        forms = [_forms(token.group()) for token in tokens]
        for at, own in enumerate(forms):
            for start in (place for form in own for place in first.get(form, ())):
                length = 1
                while (
                    start + length < len(words)
                    and at + length < len(forms)
                    and words[start + length] in forms[at + length]
                    and not text[tokens[at + length - 1].end() : tokens[at + length].start()].strip("-–_ \u00a0")
                ):
                    length += 1
                if length > longest.get(start, (0, ""))[0]:
                    longest[start] = length, text[tokens[at].start() : tokens[at + length - 1].end()]
    ends = 0
    found = []
    for start, (length, run) in sorted(longest.items()):
        if start + length > ends:
            found.append(run)
            ends = start + length
    return found


def stem_of(path: str) -> str:
    """Give the name of a file without its folder and its ending."""
    return re.sub(r"\.\w+$", "", path.rsplit("/", 1)[-1])


def is_in_file(name: str, path: str) -> bool:
    """Tell whether the name of a file has all words of a name side by side."""
    return file_runs(stem_of(path), [name]) == [name]


def _forms(word: str) -> tuple[str, ...]:
    """Give the ways in which a printed word may stand in a file's name."""
    small = word.casefold()
    if small.isascii():
        return (small,)
    return tuple(dict.fromkeys((_plain(small), _plain(small.translate(UMLAUTS)))))


def _plain(word: str) -> str:
    """Give a word without the marks on its letters."""
    return "".join(sign for sign in unicodedata.normalize("NFKD", word) if not unicodedata.combining(sign))
