"""Words → the text of a passage, every character of which keeps its place; note signs set aside."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import dataclass, field

from specscan.reading.letters.words import Line, Word
from specscan.reading.ocr.reader import OcrReader
from specscan.records.text import Piece

SIGN_ENDS = frozenset("*†‡¹²³⁴⁵⁶⁷⁸⁹)]")  # the last characters of such signs: most words need no closer look
BEFORE_COMMA = re.compile(r"(?<=\w)([*†‡§]{1,3})([,;:])$")
MAY_END = {*SIGN_ENDS, *",;:"}
NOTE_SIGNS = ("*", "**", "†", "††", "‡", "§")
TRAILING_SIGN = re.compile(r"(?<=\S)(\*{1,3}|[†‡]+|[¹²³⁴⁵⁶⁷⁸⁹]+\)?|\(\d\)(?=$)|\[\d\])$")
BRACKETED = re.compile(r"\[\d\]")  # a sign also where it stands apart from its word
LONE_SIGN = re.compile(r"[¹²³⁴-⁹]+")
SUPERSCRIPTS = str.maketrans("¹²³⁴⁵⁶⁷⁸⁹", "123456789")
HYPHENS = str.maketrans("\u2010\u2011", "--")  # other characters for the hyphen, which mean the same
FEET = re.compile(r"\d\s?(?:ft|pi|['′’])\s?\d[\d.½¼¾/-]*$")  # before inches, which then are of length and not of area
POWER = re.compile(r"(?:^|[^a-zA-Z])(?:m|cm|mm|dm|km|ft|in|sq|cu)[²³]\)?$")


@dataclass(frozen=True, slots=True)
class Hints:
    """What reading may ask of the word files without knowing a field.

    ``is_label`` tells whether a text is known as a label of a specification, ``names_thing`` whether it names a thing
    ("gray", not "capacity"), ``heads_labels`` whether it stands over
    the labels of a table, as "specification" or "model", ``names_maker`` whether beside it stands who makes a van,
    ``names_range`` of which range it is,
    ``heads_codes`` whether it stands over the codes of an option
    list; ``is_price`` whether it holds a price;
    ``is_unit`` and ``is_unit_system`` tell units ("mm") and what they belong to ("metric"), ``heads_units`` what
    stands over a column of units; ``keeps_hyphen``
    whether a word broken at a line end after this part is written with its hyphen; ``heads_list``
    whether a text is the heading of a list, as "options" or "standard equipment". ``ocr`` reads
    pages that are pictures; ``knows_word`` tells whether a word belongs to what brochures say, in any language
    of the rules; ``leaves_open`` tells whether a text ends in an article, so that more must follow; ``is_page_foot``
    whether it only numbers a page ("Page 2 of 4"), ``ends_letter`` whether it is what stands above a signature,
    ``means_all`` whether it says that all vans are meant ("both"), ``means_none`` that a van has none of a thing;
    ``value_starts`` gives with which words so many values begin that stand side by side.
    """

    is_label: Callable[[str], bool] = field(default=lambda text: False)
    names_thing: Callable[[str], bool] = field(default=lambda text: False)
    heads_labels: Callable[[str], bool] = field(default=lambda text: False)
    names_maker: Callable[[str], bool] = field(default=lambda text: False)
    names_range: Callable[[str], bool] = field(default=lambda text: False)
    heads_codes: Callable[[str], bool] = field(default=lambda text: False)
    is_price: Callable[[str], bool] = field(default=lambda text: False)
    is_unit: Callable[[str], bool] = field(default=lambda text: False)
    is_unit_system: Callable[[str], bool] = field(default=lambda text: False)
    heads_units: Callable[[str], bool] = field(default=lambda text: False)
    keeps_hyphen: Callable[[str, str], bool] = field(default=lambda before, after: False)
    heads_list: Callable[[str], bool] = field(default=lambda text: False)
    knows_word: Callable[[str], bool] = field(default=lambda word: True)
    leaves_open: Callable[[str], bool] = field(default=lambda text: False)
    is_page_foot: Callable[[str], bool] = field(default=lambda text: False)
    ends_letter: Callable[[str], bool] = field(default=lambda text: False)
    means_all: Callable[[str], bool] = field(default=lambda text: False)
    means_none: Callable[[str], bool] = field(default=lambda text: False)
    value_starts: Callable[[str, int], list[int]] = field(default=lambda text, count: [])
    ocr: OcrReader | None = None


@dataclass(frozen=True, slots=True)
class Composed:
    """Text with the place of each word and the note signs that stood in it."""

    text: str
    pieces: tuple[Piece, ...]
    notes: tuple[str, ...]


def compose(lines: list[Line], hints: Hints) -> Composed:
    """Join the words of lines to one text; words broken at a line end are made whole."""
    text = ""
    pieces: list[Piece] = []
    notes: list[str] = []
    for line in lines:
        opens = True
        for word in line.words:
            if word.raised:
                notes.append(clean_sign(word.text))
                continue
            shown, sign = (word.text, "") if word.text[-1:] not in MAY_END else _without_sign(word, text)
            shown = shown if shown.isascii() else shown.translate(HYPHENS)
            if sign:
                notes.append(sign)
            if not shown:
                continue
            text = _glue(text, shown, opens, pieces, hints)
            pieces.append(Piece(len(text) - len(shown), len(text), word.box))
            opens = False
    return Composed(text, tuple(pieces), tuple(dict.fromkeys(notes)))


def clean_sign(sign: str) -> str:
    """Give a note sign in the form in which text and note agree: ``¹``, ``1)``, ``(1)`` and ``[1]`` are ``1``."""
    return sign.translate(SUPERSCRIPTS).strip("()[].:") or sign


def signs_of(words: list[Word]) -> frozenset[str]:
    """Give the note signs that words refer to, raised or set behind them."""
    found = {clean_sign(word.text) for word in words if word.raised}
    found |= {sign for word in words if (sign := _without_sign(word)[1])}
    return frozenset(found)


def _without_sign(word: Word, before: str = "") -> tuple[str, str]:
    if (amid := BEFORE_COMMA.search(word.text)) is not None:
        return word.text[: amid.start()] + amid.group(2), clean_sign(amid.group(1))  # "Rating*, W"
    if word.text[-1:] not in SIGN_ENDS:
        return word.text, ""
    if BRACKETED.fullmatch(word.text):
        return "", clean_sign(word.text)
    if not before and LONE_SIGN.fullmatch(word.text):
        return "", clean_sign(word.text)  # all that stands in a cell
    match = TRAILING_SIGN.search(word.text)
    if match is None or len(word.text) == len(match.group(1)):
        return word.text, ""
    if POWER.search(word.text) and not FEET.search(before):
        return word.text, ""
    return word.text[: match.start()], clean_sign(match.group(1))


def _is_shouted(text: str) -> bool:
    """Tell whether the last word of a text is set in capitals, two or more."""
    letters = [letter for letter in text.split()[-1] if letter.isalpha()]
    return len(letters) >= 2 and all(letter.isupper() for letter in letters)


def _glue(text: str, shown: str, opens: bool, pieces: list[Piece], hints: Hints) -> str:
    if not text:
        return shown
    if not (opens and text.endswith("-")):
        return f"{text} {shown}"
    ends_open = len(text) > 1 and text[-2].isalpha()
    broken = ends_open and (shown[0].islower() or _is_shouted(text) and _is_shouted(shown))
    if not broken:
        # A hyphen before a capital, a figure or a joining word stays, without a space where it ends a word.
        tight = len(text) > 1 and text[-2].isalnum() and shown[0].isupper()
        return text + shown if tight else f"{text} {shown}"
    before = re.split(r"[\s/(]", text[:-1])[-1]
    if hints.keeps_hyphen(before, shown):
        return text + shown
    if pieces:
        last = pieces[-1]
        pieces[-1] = Piece(last.start, last.end - 1, last.box)
    return text[:-1] + shown
