"""Whether a line goes on with the item above it, because that was broken, or begins one of its own."""

from __future__ import annotations

import re

from specscan.reading.layout.item import Item
from specscan.reading.letters.words import Line
from specscan.records.text import Kind

LEADING = 1.75  # em from one top to the next within a paragraph
WIDE_LEADING = 1.5  # em: lines further apart may be lines of their own
HEADING_LEADING = 1.45  # em from one line to the next of a heading that was broken by hand
SAME_SIZE = 0.075  # of a font size: lines that differ by less can go on with each other
BROKEN = 1.35  # em from a line of an item to its next, where it is set flush with the sign
SHORT_PAIR = 8  # words of a line "label: value", which is no sentence though it ends in the stop of a unit
DISPLAY = 1.5  # of the usual size: titles of such size break where it looks well
SHORT_WORD = 4  # letters of the small words with which no heading ends
INDENT = 1.0  # em by which a list is set further in than the line above it
ROOM = 0.75  # of the width of a column: a line that ends before was not full
BROKEN_WORDS = 8  # of a line of running text that was broken
SENTENCE_ENDS = re.compile(r"(?:[^\W\d_]{3}|\)|\d)[.!?]\s+[(“\"]?[A-ZÀ-Þ]")
LABELLED = re.compile(r"[^\W\d_](?:[^:.]|(?<=[A-Z])\.){1,50}:\s")  # what opens with a label begins anew
CODES = re.compile(r"[^,\d]{0,12}\d[^,]{0,16}(?:, [^,\d]{0,12}\d[^,]{0,16})+")  # "630 Fell, 630 Moor" below a title
PARTS = re.compile(r"\s[|·•]\s")
PARTED = re.compile(r"[^|·•]{1,24}(?:\s[|·•]\s[^|·•]{1,24})+")  # "600 | 640 | 700" below a title


def goes_on(item: Item, begun: Item, line: Line, right: float) -> bool:
    """Tell whether a line goes on with the item above it; ``right`` is where the column ends."""
    above = item.lines[-1]
    if begun.kind in (Kind.BULLET, Kind.FOOTNOTE):
        return False
    step = line.base - above.base
    close = 0 < step < LEADING * max(line.size, above.size)
    alike = abs(line.size - above.size) <= SAME_SIZE * above.size
    if item.kind is Kind.HEADING:
        same = begun.kind is Kind.HEADING and alike and item.strong == begun.strong
        # Headings of one rank stand further apart than the lines of one that was not broken for want of room.
        broken = step < HEADING_LEADING * line.size or above.box.x1 + line.words[0].box.width + 0.3 * line.size > right
        return same and broken and close and item.lines[0].color == line.color and not _all_caps(item, line)
    if item.kind is Kind.BULLET and close and alike and _in_brackets(item, line):
        return True
    if begun.kind is Kind.HEADING:
        # A short bold or capital line right below running text is a heading; below a list item that
        # is bold itself it is its second line.
        return item.kind is Kind.BULLET and item.lines[0].bold and close and alike
    if not (close and alike):
        return False
    if item.kind is Kind.BULLET:
        indented = line.box.x0 >= item.lines[0].box.x0 - 0.6 * line.size
        full = above.box.x1 + line.words[0].box.width + 0.3 * line.size > right
        broken = full and step <= BROKEN * line.size and line.box.x0 >= item.level - 1
        hangs = line.box.x0 >= item.level - 1 and _hangs_open(above)
        return indented or line.text[:1].islower() or above.text.endswith((",", "(", "/", "&")) or broken or hangs
    if item.kind is Kind.PROSE:
        return _fills(item, line, right if step > WIDE_LEADING * line.size else 0.0)
    return True


def _hangs_open(above: Line) -> bool:
    """Tell whether a long line ends in a small word that no item ends in: "optional on the Drift 19 and on the".

    Behind a figure it may be a unit.
    """
    last = above.words[-1].text
    small = last.isalpha() and last.islower() and 1 < len(last) < SHORT_WORD
    return small and len(above.words) >= BROKEN_WORDS and not any(map(str.isdigit, above.words[-2].text))


def is_another(item: Item, line: Line, usual: float, room: float) -> bool:
    """Tell whether a line below a heading is one of its own: there was ``room`` for its first word, and it begins anew.

    Titles in display type are broken by hand.
    """
    above = item.lines[-1]
    last = above.words[-1].text
    open_ended = last.endswith(("-", ",", "–", "/", "(", "&", ":")) or (len(last) <= SHORT_WORD and last.islower())
    codes = CODES.fullmatch(line.text) is not None and not above.text.endswith(",")
    if line.size >= DISPLAY * usual or abs(above.box.x0 - line.box.x0) > 0.5 * line.size or (open_ended and not codes):
        return False
    if codes:
        return True
    return above.box.x1 + 0.3 * above.size + line.words[0].box.width < room and not line.text[:1].islower()


def _in_brackets(item: Item, line: Line) -> bool:
    """Tell whether a line opens with brackets, or stands in those that an item opens: "Solar (640 | ST)"."""
    text = " ".join(part.text for part in item.lines)
    return line.text.startswith("(") or text.count("(") > text.count(")") and ")" in line.text


def _all_caps(item: Item, line: Line) -> bool:
    return item.lines[-1].text.isupper() != line.text.isupper()


def _fills(item: Item, line: Line, right: float) -> bool:
    """Tell whether a line goes on with the paragraph above, rather than being a line of its own.

    It goes on where the line above was broken because it was full: the first word of the new line
    would not have fitted behind it. ``right`` is where the column ends at least, for lines so far apart that each may
    be one of its own.
    """
    above = item.lines[-1]
    if line.text[:1].islower() or above.text.endswith(("-", ",", "–", "/", "(", "&")):
        return True
    if _breaks_off(above, item, line) or _breaks_pair(above.text):
        return True
    if len(item.lines) == 1 and PARTED.fullmatch(line.text) and len(above.words) < BROKEN_WORDS:
        return False
    if len(item.lines) == 1 and LABELLED.match(line.text):
        indented = line.box.x0 - above.box.x0 > INDENT * line.size  # a list of labels below what it is about
        if LABELLED.match(above.text) or (indented and above.text[-1:].isalnum()):
            return False
    paired = ":" in above.text[:40] and ":" in line.text[:40]
    if paired and (not above.text.endswith(".") or len(above.words) <= SHORT_PAIR):  # "Length: 17 ft. 11 in."
        return False
    widest = max(right, *(part.box.x1 for part in [*item.lines, line]))
    room = widest - above.box.x1
    first = line.words[0]
    return room < first.box.width + 0.4 * line.size or (len(above.words) >= 7 and room < 0.12 * widest)


def _breaks_pair(text: str) -> bool:
    """Tell whether a line ends amid the last of several pairs: "19 P: included · 21 P: $900 · 24" before "TB: $900".

    It may end in the colon.
    """
    *before, last = PARTS.split(text)
    return bool(before) and ":" not in last.rstrip(": ") and all(":" in part for part in before)


def _breaks_off(above: Line, item: Item, line: Line) -> bool:
    """Tell whether a long line ends amid its second sentence: it is running text, and the next line goes on with it."""
    text = above.text
    if len(above.words) < BROKEN_WORDS or text.endswith((".", "!", "?", ":", ";")) or not SENTENCE_ENDS.search(text):
        return False
    widest = max(part.box.x1 for part in [*item.lines, line])
    return above.box.x1 >= ROOM * widest and not LABELLED.match(line.text)
