"""Lines of one column → headings, paragraphs, list items, label-and-value lines, footnotes."""

from __future__ import annotations

import re
from itertools import groupby, pairwise

from specscan.reading.layout.bold_values import bold_values
from specscan.reading.layout.broken_lines import LABELLED, ROOM, goes_on, is_another
from specscan.reading.layout.item import Item
from specscan.reading.layout.lettered import lettered
from specscan.reading.layout.line_runs import LIST_LEADING, SIZE, flush_runs, runs_of
from specscan.reading.letters.taglines import is_led_by_title, part_tagline
from specscan.reading.letters.words import CHECK_BOX, Line, Word, is_bullet, middle_of
from specscan.reading.tables.compose import NOTE_SIGNS, clean_sign
from specscan.records.text import Kind

PRICED_CODE = re.compile(r"\d{3}\s+[£$€]\s?\d{1,3}[.,’']\d{3}$")  # a van and its price: "540 £58,450"
HEADING_RATIO = 1.12
RAGGED = 0.8  # of the widest line: a shorter one was not broken because it was full
PRICED = re.compile(r"^[^:\d]{3,}[^:]*:\s+\S?\s?\d")  # a label with its figure
FIGURED = re.compile(
    r"^(?![a-zß-ÿ])[^:]{3,}:\s+\S?\s?\d(?!.*[.!?]\s[A-ZÀ-Þ])"
)  # "4x4 drivetrain: 950", which may be one among others without doubt
SLACK = 2.0  # em by which full lines differ in length
LABELLED_SHARE = 0.5  # of the lines of a list of labels and values, those without a label go on with the line above
LABEL_FIRST = re.compile(r"[^\W\d_][^:.!?]{1,30}: \S")
SMALL_FIRST = re.compile(r"[a-zß-ÿ\d]|[A-Z]{1,5}(?:/[A-Z]{1,3})?(?= [\da-zß-ÿ])")  # "GVWR 3500 kg", "A/C on the roof"
LEAST_LIST = 3  # lines
LONG_LIST = 6
MOST_FULL = 0.4  # of its lines can reach as far as those of running text
NUMBER = re.compile(r"(\d{1,2})[.)]")
LIST = 2  # items, from which their type is no heading's, however small that of the page is
FLUSH = 0.5  # em by which justified lines differ in length, a hyphen at the end included
FULL_WORDS = 6  # of a line of justified text; cells of a column are shorter
MIN_FULL = 3
JUSTIFIED = 0.6  # of the lines of a run that end together
SIGNED = 1.2  # times the usual size of a page's letters: a note below tables in small ones


def items_of(
    lines: list[Line], page_size: float, signs: frozenset[str] = frozenset(), right: float = 0.0
) -> list[Item]:
    """Give the items of one column in reading order.

    ``page_size`` is the usual font size of the page, ``signs`` the note signs that its text refers to, ``right`` is how
    far the column reaches at least, tables included.
    """
    items: list[Item] = []
    usual = body_size(lines) if sum(len(line.text) for line in lines) > 240 else page_size
    listed_sizes = [line.size for line in lines if is_bullet(line.words[0].text) and len(line.words) > 1]
    usual = max(usual, page_size, middle_of(listed_sizes) if len(listed_sizes) >= LIST else 0.0)
    lines = [part for line in lines for part in _with_tagline_apart(line, usual)]
    listed = _listed(lines)
    numbered, lettered_items = _numbered(lines), lettered(lines)
    colored = _colored_headings(lines, usual)
    shouted = {_style(line) for line in lines if _is_shouted(line, least=4)}
    priced = _price_lines(lines)
    paired = bold_values(lines)
    right = max([right, *(line.box.x1 for line in lines)])
    left = min((line.box.x0 for line in lines), default=0.0)
    room = left + ROOM * (right - left)
    edges = _edges(lines)
    for line in lines:
        item = _begin(line, usual, signs)
        if id(line) in lettered_items and item.kind is not Kind.BULLET:
            first = line.words[0]
            item = Item(Kind.BULLET, [Line(line.words[1:])], mark=first.text, level=first.box.x0)
        if item.kind is Kind.HEADING and id(line) in priced and line.size < 1.5 * usual:
            item = Item(Kind.PROSE, [line], level=line.box.x0)
        if id(line) in numbered and item.kind is Kind.PROSE:
            item = Item(Kind.BULLET, [Line(line.words[1:])], level=line.words[0].box.x0)
        if item.kind is Kind.PROSE and id(line) in colored:
            item = Item(Kind.HEADING, [line], level=line.size, strong=line.bold)
        if item.kind is Kind.PROSE and _is_shouted(line, least=3) and _style(line) in shouted:
            item = Item(Kind.HEADING, [line], level=line.size, strong=line.bold)  # "EAU" among other such headings
        if id(line) in paired:
            item = Item(Kind.PROSE, [line], level=line.box.x0)
        another = item.kind is Kind.HEADING and bool(items) and is_another(items[-1], line, usual, room)
        another = another or bool(items) and {id(line), id(items[-1].lines[-1])} <= priced
        another = another or (id(line) in paired and not line.bold)
        if (
            items
            and id(line) not in listed
            and not another
            and goes_on(items[-1], item, line, edges.get(id(line), right))
        ):
            items[-1].lines.append(line)
        else:
            items.append(item)
    return [note for item in items for part in _part_inner_notes(item, signs) for note in _part_notes(part, signs)]


def _with_tagline_apart(line: Line, usual: float) -> tuple[Line, ...]:
    """Give a heading and the tagline behind it as lines of their own, any other line alone."""
    parts = part_tagline(line)
    return parts if parts is not None and _is_heading(parts[0], usual) else (line,)


def _edges(lines: list[Line]) -> dict[int, float]:
    """Give where the lines of justified text end by their ids: a narrow paragraph above a wide table fills no more.

    Three lines or more of a run that are set flush on the left end together on the right, all but the last ones.
    """
    found: dict[int, float] = {}
    for run in flush_runs(lines):
        right = max(one.box.x1 for one in run)
        full = [one for one in run if one.box.x1 > right - FLUSH * one.size and len(one.words) >= FULL_WORDS]
        if len(full) >= MIN_FULL and len(full) >= JUSTIFIED * len(run):
            found |= {id(one): right for one in run}
    return found


def _price_lines(lines: list[Line]) -> set[int]:
    """Give the ids of lines that are a label with its figure, next to others of their size: a list in large type."""
    figured = {id(line) for line in lines if FIGURED.search(line.text) and not (line.bold and line.words[-1].bold)}

    def alike(run: list[Line], line: Line) -> bool:
        return {id(run[-1]), id(line)} <= figured and abs(run[-1].size - line.size) < SIZE

    listed = (run for run in runs_of(lines, alike) if sum(PRICED.search(one.text) is not None for one in run) >= 2)
    return {id(one) for run in listed for one in run}


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

    def near(block: list[Line], line: Line) -> bool:
        above = block[-1]
        close = line.base - above.base < LIST_LEADING * line.size and abs(line.size - above.size) < SIZE
        return close and not above.text.endswith(":")  # "Extras:" stands over a list

    found: set[int] = set()
    left = min((line.box.x0 for line in lines), default=0.0)
    right = max((line.box.x1 for line in lines), default=0.0)
    for block in runs_of(lines, near):
        if len(block) >= LEAST_LIST:
            members = _list_members(block) or _small_members(block, left, right)
            found.update(map(id, members or [one for part in _between_text(block) for one in _list_members(part)]))
    return found


def _between_text(block: list[Line]) -> list[list[Line]]:
    """Give the runs of three lines or more of a block between sentences, with the full lines before their ends, and
    headings."""
    widest = max(line.box.width for line in block)
    parts: list[list[Line]] = [[]]
    for line in block:
        if line.text.endswith((".", ";", ":")):
            while parts[-1] and parts[-1][-1].box.width >= RAGGED * widest:
                parts[-1].pop()
            parts.append([])
        elif line.bold:
            parts.append([])
        else:
            parts[-1].append(line)
    return [part for part in parts if len(part) >= LEAST_LIST]


def _list_members(block: list[Line]) -> list[Line]:
    """Give the lines of a block that each begin an item of a plain list, none where it is running text.

    Some items may go on over a second line, which begins with a small letter, follows a comma, or has no label below
    a full line that has one; then the ends of the lines must be ragged, which those of running text are not.
    """
    texts = [line.text for line in block]
    if len(block[0].words) > 1 and is_bullet(block[0].words[0].text):
        texts[0] = Line(block[0].words[1:]).text  # a list under one bullet: "* Model: Drift 19", "Year: 2025"
    labelled = sum(LABELLED.match(text) is not None for text in texts) >= LABELLED_SHARE * len(block)
    if texts[0] != block[0].text and not labelled:
        return []
    goes_on = [False] + [
        below[:1].islower() or above.endswith((",", "-", "–", "/", "(", "&")) or labelled and _is_broken(block, number)
        for number, (above, below) in enumerate(pairwise(texts))
    ]
    members = [line for line, more in zip(block, goes_on, strict=True) if not more]
    opened = [text for text, more in zip(texts, goes_on, strict=True) if not more]
    anew = all(text[:1].isupper() or text[:1].isdigit() for text in opened)
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

    ``left`` and ``right`` are the edges of the column. Running text fills its lines, the items of a list do not: of
    a long list some may, if a small letter below does not go on with them. A shouted heading over it is none of it.
    """
    block = block[1:] if _is_shouted(block[0], least=4) else block
    small = all(line.text[:1].islower() or line.text[:1].isdigit() for line in block)
    labelled = all(LABEL_FIRST.match(line.text) for line in block)  # "GVWR: …" below "chassis: …"
    if not (small or labelled or len(block) >= LONG_LIST and all(SMALL_FIRST.match(line.text) for line in block)):
        return []
    if any(line.text.endswith((",", "-", "–", "/", "(", "&", ".", ";", ":")) for line in block):
        return []
    room = left + ROOM * (right - left)
    ends = [(above.box.x1 + 0.3 * above.size + below.words[0].box.width, below) for above, below in pairwise(block)]
    full = [end >= room for end, _ in ends]
    if sum(full) > (MOST_FULL * len(block) if len(block) >= LONG_LIST else 0):
        return []
    anew = (below for end, below in ends if end < right or not below.text[:1].islower() or LABELLED.match(below.text))
    return [block[0], *anew]


def _begin(line: Line, usual: float, signs: frozenset[str]) -> Item:
    first = line.words[0]
    most = SIGNED if first.text in NOTE_SIGNS else 1.02  # a figure may number a heading, "*" does not
    if len(line.words) > 1 and clean_sign(first.text) in signs and line.size <= most * usual:
        return Item(Kind.FOOTNOTE, [Line(line.words[1:])], sign=first.text, level=first.box.x0)
    if len(line.words) > 1 and is_bullet(first.text) and not first.raised:
        rest = Line(line.words[1:])
        if len(rest.words) > 1 and CHECK_BOX.fullmatch(rest.words[0].text):
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
    if len(text) > 90 or not (any(letter.isalpha() for letter in text) or PRICED_CODE.match(text)):
        return False
    if text.endswith((".", ";", ",")) and line.size < 1.3 * usual:
        return False
    words = len(line.words)
    if line.size >= HEADING_RATIO * usual and (words <= 14 or line.size >= 1.5 * usual):
        return True
    if line.bold and words <= 9 and line.size >= 0.9 * usual and ":" not in text[:-1] and not _has_run_in_labels(line):
        return True
    return is_led_by_title(line, HEADING_RATIO * usual) or (words <= 6 and _is_shouted(line, least=4))


def _has_run_in_labels(line: Line) -> bool:
    """Tell whether bold words come by turns with thin ones: "Wheelbase 155 in. GVWR 9,070 lb." amid running text."""
    turns = [bold for bold, _ in groupby(word.bold for word in line.words if any(map(str.isalnum, word.text)))]
    return turns.count(True) > 1


def _is_shouted(line: Line, *, least: int) -> bool:
    if len(line.words) > 6 or not line.text.isupper() or line.text.startswith("("):
        return False  # "(19 FB, 21 RL)" ends an item
    if all(any(map(str.isdigit, word.text)) for word in line.words):
        return False  # "590FB, 600TB" are the codes of vans, with which a line goes on
    letters = [letter for letter in line.text if letter.isalpha()]
    return len(letters) >= least and all(letter.isupper() for letter in letters)


def _style(line: Line) -> tuple[float, bool, tuple[int, int, int]]:
    return round(line.size, 1), line.bold, line.color


def _part_notes(item: Item, signs: frozenset[str]) -> list[Item]:
    """Part a run of footnotes set on one line at each raised sign, and at signs that count on: "1 Input. 2 Usable."."""
    if item.kind is not Kind.FOOTNOTE:
        return [item]
    words = [word for line in item.lines for word in line.words]
    groups: list[list[Word]] = [[]]
    last = clean_sign(item.sign)
    for place, word in enumerate(words):
        if (word.raised and len(word.text) <= 2) or _counts_on(words, place, last, signs):
            groups.append([])
            last = clean_sign(word.text)
        groups[-1].append(word)
    parts = []
    for place, group in enumerate(groups):
        sign = group.pop(0).text if place else item.sign
        lines = _regroup(group, item.lines)
        if lines:
            parts.append(Item(Kind.FOOTNOTE, lines, sign=sign, level=item.level))
    return parts


def _counts_on(words: list[Word], place: int, last: str, signs: frozenset[str]) -> bool:
    """Tell whether a word between two sentences is the sign behind the last note's that the page refers to.

    It is the next number, or another sign than a number: "* No black tank. † Heat output."
    """
    sign = clean_sign(words[place].text)
    counts = sign.isdecimal() and last.isdecimal() and int(sign) == int(last) + 1
    other = sign in NOTE_SIGNS and last in NOTE_SIGNS and sign != last
    if sign not in signs or not (counts or other):
        return False
    behind = words[place + 1].text[:1] if place + 1 < len(words) else ""
    return place > 0 and words[place - 1].text.endswith((".", ";", "!", "?")) and behind.isupper()


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
