"""What the pages of a scanned document say together: the sizes of their letters, and names that were read differently.

A name comes back in titles, heads and feet of pages. Where a word of no language was not read with certainty, and one
much like it was, somewhere in the document, it is that one.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from difflib import SequenceMatcher

import numpy as np

from specscan.reading.letters.sheet import Glyph, Letters, Sheet
from specscan.reading.ocr.sheet import Spelled, settled_sizes

# Common practice, no source.
SURE = 0.9  # likelihood of its least likely sign from which on a word is read with certainty
ALIKE = 0.84  # share of signs that two readings of one name have in common
SHORTEST = 5  # letters of a name that is told by another reading
STRIPPED = "(),;:.|·"


def names_agreed(
    pages: Sequence[tuple[Sheet, list[Glyph], list[Spelled]]], knows_word: Callable[[str], bool]
) -> list[tuple[str, str]]:
    """Put the surer reading of a name in place of unsure ones on the sheets of a document; give what was changed.

    ``pages`` are the sheets with their glyphs and the words that these make; ``knows_word`` tells common words.
    """
    names = {
        word.text.strip(STRIPPED).casefold()
        for _, _, words in pages
        for word in words
        if word.sure >= SURE and _may_be_name(word, knows_word)
    }
    changed = []
    for sheet, glyphs, words in pages:
        put: dict[int, tuple[int, list[Glyph]]] = {}
        for word in words:
            if word.sure >= SURE or not _may_be_name(word, knows_word):
                continue
            name = _name_like(word.text.strip(STRIPPED).casefold(), names)
            if name:
                meant = word.text.replace(word.text.strip(STRIPPED), _cased(name, word.text.strip(STRIPPED)))
                put[word.first] = word.last, _spread(meant, glyphs[word.first : word.last])
                changed.append((word.text, meant))
        if put:
            sheet.letters = Letters.of(_with(glyphs, put))
    return changed


def _may_be_name(word: Spelled, knows_word: Callable[[str], bool]) -> bool:
    core = word.text.strip(STRIPPED)
    return len(core) >= SHORTEST and core.isalpha() and core[0].isupper() and not knows_word(core)


def _name_like(text: str, names: set[str]) -> str:
    """Give the one name that is much like a text, empty where there is none or there are several."""
    if text in names:
        return ""
    alike = [
        name
        for name in names
        if abs(len(name) - len(text)) <= 2
        and name[0] == text[0]
        and SequenceMatcher(None, name, text, autojunk=False).ratio() >= ALIKE
    ]
    return alike[0] if len(alike) == 1 else ""


def _cased(name: str, like: str) -> str:
    return name.upper() if like.isupper() else name.capitalize()


def _spread(text: str, old: list[Glyph]) -> list[Glyph]:
    """Give the glyphs of a word that is spelled otherwise, spread evenly over its place."""
    first, last = old[0], old[-1]
    step = (last.stop - first.start) / len(text)
    width = (last.box.x1 - first.box.x0) / len(text)
    level = first.style.direction in (0, 180)
    return [
        replace(
            first,
            text=sign,
            start=first.start + number * step,
            stop=first.start + (number + 1) * step,
            box=replace(first.box, x0=first.box.x0 + number * width, x1=first.box.x0 + (number + 1) * width)
            if level
            else first.box,
        )
        for number, sign in enumerate(text)
    ]


def _with(glyphs: list[Glyph], put: dict[int, tuple[int, list[Glyph]]]) -> list[Glyph]:
    result: list[Glyph] = []
    number = 0
    while number < len(glyphs):
        last, meant = put.get(number, (number + 1, [glyphs[number]]))
        result += meant
        number = last
    return result


def sizes_agreed(sheets: Sequence[Sheet]) -> None:
    """Give nearly equal font sizes on all sheets of a document one value: a heading is as prominent on every page."""
    found = [np.unique(sheet.letters.size, return_counts=True) for sheet in sheets if len(sheet.letters)]
    if not found:
        return
    sizes = np.concatenate([values for values, _ in found]).tolist()
    weights = np.concatenate([counts for _, counts in found]).tolist()
    known = dict(zip(sizes, settled_sizes(sizes, weights), strict=True))
    for sheet in sheets:
        letters = sheet.letters
        sheet.letters = replace(
            letters,
            size=np.array([known[size] for size in letters.size.tolist()], letters.size.dtype),
            styles=[replace(style, em=known.get(style.em, style.em)) for style in letters.styles],
        )
