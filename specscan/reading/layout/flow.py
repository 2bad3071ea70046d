"""Lines of one column → headings, paragraphs, list items, label-and-value lines, footnotes."""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass, field

from specscan.reading.letters.words import Line, Word, is_bullet, middle_of
from specscan.reading.tables.compose import clean_sign
from specscan.records.text import Kind

LEADING = 1.75  # em from one top to the next within a paragraph
WIDE_LEADING = 1.5  # em: lines further apart may be lines of their own
HEADING_LEADING = 1.45  # em from one line to the next of a heading that was broken by hand
SAME_SIZE = 0.075  # of a font size: lines that differ by less can go on with each other
BROKEN = 1.35  # em from a line of an item to its next, where it is set flush with the sign
LIST_LEADING = 2.2  # em from one item of a plain list to the next
HEADING_RATIO = 1.12
SHORT_PAIR = 8  # words of a line "label: value", which is no sentence though it ends in the stop of a unit
RAGGED = 0.8  # of the widest line: a shorter one was not broken because it was full
DISPLAY = 1.5  # of the usual size: titles of such size break where it looks well
SHORT_WORD = 4  # letters of the small words with which no heading ends
ROOM = 0.75  # of the width of a column: a line that ends before was not full
PRICED = re.compile(r"^[^:\d]{3,}[^:]*:\s+\S?\s?\d")  # a label with its figure
BROKEN_WORDS = 8  # of a line of running text that was broken
SENTENCE_ENDS = re.compile(r"(?:[^\W\d_]{3}|\)|\d)[.!?]\s+[(“\"]?[A-ZÀ-Þ]")
LABELLED = re.compile(r"[^\W\d_](?:[^:.]|(?<=[A-Z])\.){1,50}:\s")  # what opens with a label begins anew
PARTED = re.compile(r"[^|·•]{1,24}(?:\s[|·•]\s[^|·•]{1,24})+")  # "600 | 640 | 700" below a title
SLACK = 2.0  # em by which full lines differ in length
LABELLED_SHARE = 0.5  # of the lines of a list of labels and values, those without a label go on with the line above
NUMBER = re.compile(r"(\d{1,2})[.)]")
CHECK_BOXES = ("[ ]", "[x]", "[X]", "☐", "☑", "☒")


@dataclass(slots=True)
class Item:
    """A piece of running text before it becomes a passage: its kind, lines and signs."""

    kind: Kind
    lines: list[Line]
    mark: str = ""
    sign: str = ""
    level: float = 0.0
    strong: bool = False
    words: list[Word] = field(default_factory=list)


def items_of(
    lines: list[Line], page_size: float, signs: frozenset[str] = frozenset(), right: float = 0.0
) -> list[Item]:
    """Give the items of one column in reading order.

    ``page_size`` is the usual font size of the page, ``signs`` the note signs that its text refers to, ``right`` is how
    far the column reaches at least, tables included.
    """
    items: list[Item] = []
    usual = body_size(lines) if sum(len(line.text) for line in lines) > 240 else page_size
    usual = max(usual, page_size)
    listed = _listed(lines)
    numbered = _numbered(lines)
    colored = _colored_headings(lines, usual)
    shouted = {_style(line) for line in lines if _is_shouted(line, least=4)}
    priced = _price_lines(lines)
    right = max([right, *(line.box.x1 for line in lines)])
    left = min((line.box.x0 for line in lines), default=0.0)
    room = left + ROOM * (right - left)
    for line in lines:
        item = _begin(line, usual, signs)
        if item.kind is Kind.HEADING and id(line) in priced and line.size < 1.5 * usual:
            item = Item(Kind.PROSE, [line], level=line.box.x0)
        if id(line) in numbered and item.kind is Kind.PROSE:
            item = Item(Kind.BULLET, [Line(line.words[1:])], level=line.words[0].box.x0)
        if item.kind is Kind.PROSE and id(line) in colored:
            item = Item(Kind.HEADING, [line], level=line.size, strong=line.bold)
        if item.kind is Kind.PROSE and _is_shouted(line, least=3) and _style(line) in shouted:
            item = Item(Kind.HEADING, [line], level=line.size, strong=line.bold)  # "EAU" among other such headings
        another = item.kind is Kind.HEADING and bool(items) and _is_another(items[-1], line, usual, room)
        if items and id(line) not in listed and not another and _goes_on(items[-1], item, line, right):
            items[-1].lines.append(line)
        else:
            items.append(item)
    return [note for item in items for part in _part_inner_notes(item, signs) for note in _part_notes(part)]


def _price_lines(lines: list[Line]) -> set[int]:
    """Give the ids of lines that are a label with its figure, next to others of their size: a list in large type."""
    alike = [bool(PRICED.search(line.text)) and not (line.bold and line.words[-1].bold) for line in lines]
    found: set[int] = set()
    for number in range(len(lines) - 1):
        above, below = lines[number], lines[number + 1]
        if alike[number] and alike[number + 1] and abs(above.size - below.size) < 0.5:
            found |= {id(above), id(below)}
    return found


def _numbered(lines: list[Line]) -> set[int]:
    """Give the ids of lines that are numbered items, 1., 2., 3. and so on."""
    found: list[Line] = []
    runs: list[list[Line]] = []
    for line in lines:
        match = NUMBER.fullmatch(line.words[0].text)
        if match is None or len(line.words) < 2:
            continue
        number = int(match.group(1))
        if number == 1:
            found = []
            runs.append(found)
        if number == len(found) + 1:
            found.append(line)
    return {id(line) for run in runs if len(run) >= 2 for line in run}


def _colored_headings(lines: list[Line], usual: float) -> set[int]:
    """Give the ids of short lines that only their colour sets apart from most of the text: headings in colour."""
    weights: dict[tuple[int, int, int], int] = {}
    for line in lines:
        weights[line.color] = weights.get(line.color, 0) + len(line.text)
    if not weights:
        return set()
    common = max(weights, key=lambda color: weights[color])
    found = []
    for line in lines:
        if line.color == common or len(line.words) > 8 or _saturation(line.color) <= 40:
            continue
        alike = {word.color for word in line.words} == {line.color}
        wordy = line.text[:1].isalpha() and not set(line.text) & set(":.;,!?")
        if alike and wordy and 0.95 * usual <= line.size:
            found.append(line)
    return {id(line) for line in found} if len(found) <= 0.34 * len(lines) else set()


def _saturation(color: tuple[int, int, int]) -> int:
    """Give how far a colour is from gray; captions and small print are often gray, headings are not."""
    return max(color) - min(color)


def _part_inner_notes(item: Item, signs: frozenset[str]) -> list[Item]:
    """Part the small print at each note set into it: "Lines: I inside. * Input rating. U.S. gallons."

    Such a note begins with its sign behind a sentence and ends with its own sentence.
    """
    if item.kind is not Kind.PROSE or not signs:
        return [item]
    words = [word for line in item.lines for word in line.words]
    if not any(_opens_note(words, place, signs) for place in range(1, len(words))):
        return [item]
    parts: list[tuple[str, list[Word]]] = [("", [])]
    for place, word in enumerate(words):
        if place and _opens_note(words, place, signs):
            parts.append((word.text, []))
            continue
        parts[-1][1].append(word)
        if parts[-1][0] and word.text.endswith((".", "!", "?")) and len(parts[-1][1]) > 1:
            parts.append(("", []))
    made = []
    for sign, members in parts:
        lines = _regroup(members, item.lines)
        if lines:
            kind = Kind.FOOTNOTE if sign else Kind.PROSE
            made.append(Item(kind, lines, sign=sign, level=item.level))
    return made


def _opens_note(words: list[Word], place: int, signs: frozenset[str]) -> bool:
    word = words[place]
    symbol = not any(letter.isalnum() for letter in word.text) or word.raised
    return symbol and clean_sign(word.text) in signs and words[place - 1].text.endswith((".", ";", "!", "?"))


def _listed(lines: list[Line]) -> set[int]:
    """Give the ids of lines that form lists without bullets: short lines that each begin anew.

    Three or more lines in a row, all beginning with a capital or a figure, none ending a sentence.
    """
    found: set[int] = set()
    block: list[Line] = []
    left = min((line.box.x0 for line in lines), default=0.0)
    right = max((line.box.x1 for line in lines), default=0.0)
    for line in [*lines, None]:
        near = bool(block) and line is not None and line.base - block[-1].base < LIST_LEADING * line.size
        near = near and not block[-1].text.endswith(":")  # "Extras:" stands over a list
        if line is not None and near and abs(line.size - block[-1].size) < 0.5:
            block.append(line)
            continue
        if len(block) >= 3:
            found.update(id(member) for member in _list_members(block) or _small_members(block, left, right))
        block = [line] if line is not None else []
    return found


def _list_members(block: list[Line]) -> list[Line]:
    """Give the lines of a block that each begin an item of a plain list, none where it is running text.

    Some items may go on over a second line, which begins with a small letter, follows a comma, or has no label below
    a full line that has one; then the ends of the lines must be ragged, which those of running text are not.
    """
    texts = [line.text for line in block]
    labelled = sum(LABELLED.match(text) is not None for text in texts) >= LABELLED_SHARE * len(block)
    goes_on = [False] + [
        below[:1].islower() or above.endswith((",", "-", "–", "/", "(", "&")) or labelled and _is_broken(block, number)
        for number, (above, below) in enumerate(itertools.pairwise(texts))
    ]
    members = [line for line, more in zip(block, goes_on, strict=True) if not more]
    anew = all(line.text[:1].isupper() or line.text[:1].isdigit() for line in members)
    open_ended = not any(text.endswith((".", ";", ":")) for text in texts)
    if not (anew and open_ended):
        return []
    words = sum(any(map(str.isalnum, word.text)) for line in block for word in line.words) / len(block)
    widest = max(line.box.width for line in block)
    ragged = sum(line.box.width < RAGGED * widest for line in block[:-1]) >= 0.4 * (len(block) - 1)
    if len(members) == len(block) and (words <= 7 or ragged and words <= 10):
        return members
    return members if ragged and words <= 7 and len(members) >= 0.7 * len(block) else []


def _is_broken(block: list[Line], number: int) -> bool:
    """Tell whether a line with a label was full, and the one below it has no label: it goes on.

    Where the column ends, another line must show.
    """
    above, below = block[number], block[number + 1]
    if not LABELLED.match(above.text) or LABELLED.match(below.text):
        return False
    right = max((line.box.x1 for line in block if line is not above and line is not below), default=0.0)
    return above.box.x1 - SLACK * above.size <= right < above.box.x1 + 0.3 * above.size + below.words[0].box.width


def _small_members(block: list[Line], left: float, right: float) -> list[Line]:
    """Give the lines of a block that all begin with a small letter, where none was broken because its column is full.

    ``left`` and ``right`` are the edges of the column. Running text fills its lines, the items of a list do not.
    """
    if not all(line.text[:1].islower() or line.text[:1].isdigit() for line in block):
        return []
    joined = any(line.text.endswith((",", "-", "–", "/", "(", "&", ".", ";", ":")) for line in block)
    room = left + ROOM * (right - left)
    short = all(
        above.box.x1 + 0.3 * above.size + below.words[0].box.width < room
        for above, below in zip(block, block[1:], strict=False)
    )
    return block if short and not joined else []


def _begin(line: Line, usual: float, signs: frozenset[str]) -> Item:
    first = line.words[0]
    if len(line.words) > 1 and clean_sign(first.text) in signs and line.size <= 1.02 * usual:
        return Item(Kind.FOOTNOTE, [Line(line.words[1:])], sign=first.text, level=first.box.x0)
    if len(line.words) > 1 and is_bullet(first.text) and not first.raised:
        rest = Line(line.words[1:])
        if len(rest.words) > 1 and rest.words[0].text in CHECK_BOXES:
            return Item(Kind.BULLET, [Line(rest.words[1:])], mark=rest.words[0].text, level=first.box.x0)
        if not _is_dash_phrase(first, rest):
            return Item(Kind.BULLET, [rest], mark=first.text, level=first.box.x0)
    if first.raised:
        return Item(Kind.FOOTNOTE, [line], sign="", level=first.box.x0)
    if _is_heading(line, usual):
        return Item(Kind.HEADING, [line], level=line.size, strong=line.bold)
    return Item(Kind.PROSE, [line], level=line.box.x0)


def _is_dash_phrase(first: Word, rest: Line) -> bool:
    """Tell whether a leading dash is a minus sign."""
    near = rest.words[0].box.x0 - first.box.x1 < 0.15 * first.size
    return first.text in "-–—" and near and rest.words[0].text[:1].isdigit()


def _is_heading(line: Line, usual: float) -> bool:
    text = line.text
    if len(text) > 90 or not any(letter.isalpha() for letter in text):
        return False
    if text.endswith((".", ";", ",")) and line.size < 1.3 * usual:
        return False
    words = len(line.words)
    if line.size >= HEADING_RATIO * usual and (words <= 14 or line.size >= 1.5 * usual):
        return True
    if line.bold and words <= 9 and line.size >= 0.9 * usual and ":" not in text[:-1]:
        return True
    return words <= 6 and _is_shouted(line, least=4)


def _is_shouted(line: Line, *, least: int) -> bool:
    if len(line.words) > 6 or not line.text.isupper() or line.text.startswith("("):
        return False  # "(19 FB, 21 RL)" ends an item
    if all(any(map(str.isdigit, word.text)) for word in line.words):
        return False  # "590FB, 600TB" are the codes of vans, with which a line goes on
    letters = [letter for letter in line.text if letter.isalpha()]
    return len(letters) >= least and all(letter.isupper() for letter in letters)


def _style(line: Line) -> tuple[float, bool, tuple[int, int, int]]:
    return round(line.size, 1), line.bold, line.color


def _goes_on(item: Item, begun: Item, line: Line, right: float) -> bool:
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
        return indented or line.text[:1].islower() or above.text.endswith((",", "(", "/", "&")) or broken
    if item.kind is Kind.PROSE:
        return _fills(item, line, right if step > WIDE_LEADING * line.size else 0.0)
    return True


def _is_another(item: Item, line: Line, usual: float, room: float) -> bool:
    """Tell whether a line below a heading is one of its own: there was ``room`` for its first word, and it begins anew.

    Titles in display type are broken by hand.
    """
    above = item.lines[-1]
    last = above.words[-1].text
    open_ended = last.endswith(("-", ",", "–", "/", "(", "&", ":")) or (len(last) <= SHORT_WORD and last.islower())
    if line.size >= DISPLAY * usual or abs(above.box.x0 - line.box.x0) > 0.5 * line.size or open_ended:
        return False
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
    if _breaks_off(above, item, line):
        return True
    if len(item.lines) == 1 and PARTED.fullmatch(line.text) and len(above.words) < BROKEN_WORDS:
        return False
    if len(item.lines) == 1 and LABELLED.match(above.text) and LABELLED.match(line.text):
        return False
    paired = ":" in above.text[:40] and ":" in line.text[:40]
    if paired and (not above.text.endswith(".") or len(above.words) <= SHORT_PAIR):  # "Length: 17 ft. 11 in."
        return False
    widest = max(right, *(part.box.x1 for part in [*item.lines, line]))
    room = widest - above.box.x1
    first = line.words[0]
    return room < first.box.width + 0.4 * line.size or (len(above.words) >= 7 and room < 0.12 * widest)


def _breaks_off(above: Line, item: Item, line: Line) -> bool:
    """Tell whether a long line ends amid its second sentence: it is running text, and the next line goes on with it."""
    text = above.text
    if len(above.words) < BROKEN_WORDS or text.endswith((".", "!", "?", ":", ";")) or not SENTENCE_ENDS.search(text):
        return False
    widest = max(part.box.x1 for part in [*item.lines, line])
    return above.box.x1 >= ROOM * widest and not LABELLED.match(line.text)


def _part_notes(item: Item) -> list[Item]:
    """Part a run of footnotes set on one line at each raised sign."""
    if item.kind is not Kind.FOOTNOTE:
        return [item]
    words = [word for line in item.lines for word in line.words]
    groups: list[list[Word]] = [[]]
    for _index, word in enumerate(words):
        starts = word.raised and len(word.text) <= 2
        if starts:
            groups.append([])
        groups[-1].append(word)
    parts = []
    for place, group in enumerate(groups):
        sign = group.pop(0).text if place else item.sign
        lines = _regroup(group, item.lines)
        if lines:
            parts.append(Item(Kind.FOOTNOTE, lines, sign=sign, level=item.level))
    return parts


def _regroup(words: list[Word], lines: list[Line]) -> list[Line]:
    wanted = {id(word) for word in words}
    grouped = [Line([word for word in line.words if id(word) in wanted]) for line in lines]
    return [line for line in grouped if line.words]


def body_size(lines: list[Line]) -> float:
    """Give the font size in which most letters of a page are set."""
    weights: dict[float, int] = {}
    for line in lines:
        weights[round(line.size, 1)] = weights.get(round(line.size, 1), 0) + len(line.text)
    if not weights:
        return 10.0
    most = max(weights.values())
    # The smallest of the sizes in common use, so that a page of large display text keeps its headings.
    common = [size for size, weight in weights.items() if weight >= 0.5 * most]
    return middle_of(common)
