"""The reader for plain text and Markdown: lines → the same passages as a page of a PDF.

Characters of a line stand on a grid, so the layout steps for pages serve for text as well: each word
is given the box that it would have in type of fixed width.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, field, replace

from specscan.reading.layout.assemble import Assembler
from specscan.reading.layout.flow import items_of
from specscan.reading.layout.item import Item
from specscan.reading.layout.regions import split_columns
from specscan.reading.letters.sign_runs import lines_with_joined_signs
from specscan.reading.letters.words import Line, Word, has_leader
from specscan.reading.tables.alignment import find_aligned
from specscan.reading.tables.compose import Hints, clean_sign, signs_of
from specscan.reading.tables.grid import Grid, GridCell
from specscan.reading.tables.marks import Marks
from specscan.reading.text.barred import barred_rows
from specscan.reading.text.bracketed import with_labels_out_of_brackets
from specscan.reading.text.letters import without_questions
from specscan.reading.text.numbered_pages import without_numbered_pages
from specscan.reading.text.pasted import find_pasted
from specscan.reading.text.short_leaders import with_whole_leaders
from specscan.reading.text.spaced_dashes import with_close_dashes
from specscan.reading.text.stickers import without_stickers
from specscan.reading.text.typed import RULE, heads_columns, tabbed_rows
from specscan.reading.text.typed_bullets import with_dashed_items
from specscan.records.errors import DocumentError
from specscan.records.text import Box, Document, Kind, PageState, Title

EM = 10.0
CHAR = 6.0
PITCH = 12.0
LOWER = 0.9  # of the size of other lines: the heading of a list below one of several lists
TAB = 8
TABLE_ROW = re.compile(r"^\s*\|.*\|\s*$|^[^|]+\|[^|]+(\|[^|]+)*$")
TABLE_RULE = re.compile(r"^\s*\|?\s*:?-{2,}:?\s*(\|\s*:?-{2,}:?\s*)*\|?\s*$")
PAGE_NUMBER = re.compile(r"\d{1,3}")  # on a line of its own, where pages were copied into a text
HASH_HEADING = re.compile(r"^\s{0,3}(#{1,6})\s+(.*?)\s*#*\s*$")
UNDERLINE = re.compile(r"^\s{0,3}([=\-~*_])\1{2,}\s*$")
FENCE = re.compile(r"^\s*(```|~~~)")
EMPHASIS = re.compile(r"(\*\*|__)(?=\S)(.+?)(?<=\S)\1")
SLANTED = re.compile(r"(?<![\w*])([*_])(?=[^\s*_])([^*_]+?)(?<=\S)\1(?![\w*])")
RUN_IN = re.compile(r"^\s{0,3}(\*\*|__)(?=\S)([^*_:]{2,60}?)\.(?:\1|\1\.)\s+([A-ZÀ-Þ].*)$")
# "- **Fresh tank** - 80 litres": a label in bold, parted from its value by a dash
BOLD_LABEL = re.compile(r"^(\s*(?:[-*+•]\s+)?)(\*\*|__)(?=\S)([^*_:]{2,40}?)(?<=\S)\2\s+[-–—]\s+(?=\S)")
TAGS = re.compile(r"<!--.*?-->|</?[a-zA-Z][^<>]{0,200}>")  # anchors and line breaks that Markdown lets through
LINK = re.compile(r"!?\[([^\]]*)\]\([^)]*\)")
MARKS = (
    (b"\xef\xbb\xbf", "utf-8-sig"),
    (b"\xff\xfe\x00\x00", "utf-32"),
    (b"\x00\x00\xfe\xff", "utf-32"),
    (b"\xff\xfe", "utf-16"),
    (b"\xfe\xff", "utf-16"),
)
BINARY = re.compile(rb"[\x00-\x08\x0e-\x1f]")


def decode(data: bytes) -> str:
    """Give the text of a file in UTF-8, in UTF-16 or UTF-32 (Unicode 23.8: by its mark, or by its zeros), or else in
    Windows-1252.

    Raises:
        DocumentError: the file holds binary data.
    """
    name = next((name for mark, name in MARKS if data.startswith(mark)), "") or _unmarked(data[:2000])
    if name:
        try:
            return data.decode(name)
        except UnicodeDecodeError as error:
            raise DocumentError(f"the text is not valid {name.upper()}") from error
    if len(BINARY.findall(data[:20_000])) > 8:
        raise DocumentError("the file holds binary data, not text")
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError:
        return data.decode("cp1252", errors="replace")


def _unmarked(start: bytes) -> str:
    """Tell UTF-16 without a mark: every other byte of Western text is zero."""
    even, odd = start[0::2], start[1::2]
    if len(odd) >= 8 and odd.count(0) > 0.9 * len(odd) and even.count(0) == 0:
        return "utf-16-le"
    if len(odd) >= 8 and even.count(0) > 0.9 * len(even) and odd.count(0) == 0:
        return "utf-16-be"
    return ""


RUN_IN_LEVEL, RUN_IN_WORDS = 5, 7  # of a bold head that opens a paragraph: "**Drift 19.** The little one."
OPENING_LINE, MOST_OPENING = 44, 5  # letters, and lines, of what stands above a text
LISTED = re.compile(r"\S [|·•] \S")
OPENED = re.compile(r"\w[^.!?:;]*$")  # neither heading by signs, nor list, nor sentence
LIMIT_LINE = 6_000  # characters; a paragraph of running text on one line stays below


def read_text(data: bytes, path: str, sha256: str, hints: Hints) -> Document:
    """Read plain text or Markdown.

    Raises:
        DocumentError: the file is empty or holds binary data.
    """
    text = decode(data).replace("\r\n", "\n").replace("\r", "\n").replace("\f", "\n\n")
    if not text.strip():
        raise DocumentError("the file is empty")
    assembler = Assembler(hints, places=False)
    titles: list[Title] = []
    whole = text.split("\n")
    lines, asked = without_questions([line[:LIMIT_LINE] for line in whole])
    cut = any(len(line) > LIMIT_LINE for line in whole)
    said = [f"lines of over {LIMIT_LINE} characters were cut"] if cut else []
    said += ["quoted questions were not read: they are not the writer's"] if asked else []
    lines = without_numbered_pages(lines, hints.is_label)
    lines = without_stickers(with_dashed_items(with_close_dashes(with_whole_leaders(lines))))
    lines = with_labels_out_of_brackets(lines, hints.is_label)
    signs = _note_signs(lines)
    for chunk in _chunks(_with_opening_apart(lines)):
        _add_chunk(chunk, assembler, titles, hints, signs)
    for line in [line for line in lines if line.strip()][:6]:
        titles.append(Title(_plain(line.strip(" #*=-\t")), 0, EM, "page"))
    return Document(
        path=path,
        sha256=sha256,
        kind="text",
        passages=tuple(assembler.passages),
        titles=(*(title for title in titles if title.text), *assembler.corners),
        pages=(PageState(0, None, None, True),),
        message="; ".join(said),
    )


def _with_opening_apart(lines: list[str]) -> list[str]:
    """Give the lines with blank ones between the short ones with which a text opens where one of them is a list.

    So it is with title, maker and vans, "540 | 600 Q", each on a line far shorter than those of the text.
    """
    first = next((number for number, line in enumerate(lines) if line.strip()), 0)
    end = next((number for number in range(first, len(lines)) if not lines[number].strip()), first)
    opening = lines[first:end]
    wide = sum(len(line) > OPENING_LINE for line in lines) > 1
    apart = all(len(line) <= OPENING_LINE and OPENED.match(line) for line in opening)
    lists = any(LISTED.search(line) for line in opening)
    if not (1 < len(opening) <= MOST_OPENING and wide and apart and lists):
        return lines
    return [*lines[:first], *(part for line in opening for part in (line, "")), *lines[end:]]


@dataclass(slots=True)
class Chunk:
    """Lines of one kind: a heading, a table of pipes or tabs, or lines that are laid out like a page.

    ``heads`` are those of its lines that head columns.
    """

    kind: str
    lines: list[str]
    level: int = 0
    rows: list[list[str]] = field(default_factory=list)
    heads: set[str] = field(default_factory=set)


def _chunks(lines: list[str]) -> list[Chunk]:
    chunks: list[Chunk] = []
    index = 0
    fenced = False
    while index < len(lines):
        line = lines[index]
        following = lines[index + 1] if index + 1 < len(lines) else ""
        if FENCE.match(line):
            fenced = not fenced
            index += 1
            continue
        hashed = HASH_HEADING.match(line)
        if hashed and not fenced:
            chunks.append(Chunk("heading", [hashed.group(2)], len(hashed.group(1))))
            index += 1
            continue
        run_in = None if fenced else RUN_IN.match(line)
        if run_in and len(run_in.group(2).split()) <= RUN_IN_WORDS:
            chunks.append(Chunk("heading", [run_in.group(2)], RUN_IN_LEVEL))
            _page(chunks).lines.append(run_in.group(3))
            index += 1
            continue
        rows = tabbed_rows(lines, index) if "\t" in line else None
        if rows is not None:
            chunks.append(Chunk("tabs", [], rows=rows))
            index += len(rows)
            continue
        barred = None if fenced else barred_rows(lines, index)
        if barred is not None:
            chunks.append(Chunk("tabs" if "|" in line else "bars", [], rows=barred[0]))
            index = barred[1]
            continue
        if RULE.match(following) and not RULE.match(line) and heads_columns(line, lines[index + 2 :]):
            _page(chunks).lines.append(line)
            _page(chunks).heads.add(_plain(line))
            index += 2
            continue
        if line.strip() and UNDERLINE.match(following) and not UNDERLINE.match(line) and _short(line):
            chunks.append(Chunk("heading", [line.strip()], 1 if following.strip()[0] == "=" else 2))
            index += 2
            continue
        if RULE.match(line):
            _page(chunks).lines.append("")
            index += 1
            continue
        if "|" in line and TABLE_ROW.match(line) and "|" in following:
            end = index
            while end < len(lines) and "|" in lines[end] and lines[end].strip():
                end += 1
            if _is_pipe_table(lines[index:end]):
                chunks.append(Chunk("table", lines[index:end]))
                index = end
                continue
        _page(chunks).lines.append(line if fenced else re.sub(r"^\s{0,3}>\s?", "", line))
        index += 1
    return chunks


def _is_pipe_table(lines: list[str]) -> bool:
    """Tell whether lines with bars are a table: with a rule, with bars at their edges, or three of as many cells.

    Two lines may be a title and the names below it: "Tarn | Model year 2026", "Tarn 19 | Tarn 21".
    """
    edged = all(line.strip().startswith("|") for line in lines)
    counts = [line.strip().strip("|").count("|") for line in lines]
    return edged or any(TABLE_RULE.match(line) for line in lines) or len(lines) >= 3 and len(set(counts)) == 1


def _short(line: str) -> bool:
    return len(line.strip()) <= 100 and len(re.split(r"\s{3,}", line.strip())) <= 3


def _page(chunks: list[Chunk]) -> Chunk:
    if not chunks or chunks[-1].kind != "page":
        chunks.append(Chunk("page", []))
    return chunks[-1]


def _note_signs(lines: list[str]) -> frozenset[str]:
    """Give the note signs that words refer to; one that begins more than two lines is the bullet of a list."""
    plain = [_plain(line).strip(" |") for line in lines]
    signs = signs_of([word for line in plain for word in _line(line.replace("|", " "), 0).words])
    begins = [clean_sign(line.split()[0]) for line in plain if len(line.split()) > 1]
    return frozenset(sign for sign in signs if begins.count(sign) <= 2)


def _add_chunk(chunk: Chunk, assembler: Assembler, titles: list[Title], hints: Hints, signs: frozenset[str]) -> None:
    if chunk.kind == "heading":
        text = re.split(r"\s{3,}", _plain(chunk.lines[0]))
        size = EM * (2.2 - 0.2 * chunk.level)
        line = _line(" ".join(text), 0, size)
        assembler.add_item(0, Item(Kind.HEADING, [line], level=size, strong=True))
        titles.append(Title(_plain(chunk.lines[0]), 0, size, "page"))
    elif chunk.kind == "table":
        grid = _pipe_grid(chunk.lines)
        if grid is not None:
            assembler.add_grid(0, grid)
    elif chunk.kind in ("tabs", "bars"):
        rows = [[_plain(cell) for cell in row] for row in chunk.rows]
        assembler.add_grid(0, text_grid(rows, head=chunk.kind == "bars" or not rows[0][0]))
    else:
        _add_page([_plain(line) for line in chunk.lines], assembler, hints, signs, chunk.heads)


def _add_page(
    lines: list[str], assembler: Assembler, hints: Hints, signs: frozenset[str], heads: set[str] | None = None
) -> None:
    """Add lines that are laid out like a page; ``heads`` are those that head columns."""
    pasted = find_pasted(lines, hints)
    if pasted is not None:
        _add_page(lines[: pasted.start], assembler, hints, signs, heads)
        assembler.begin_block()
        assembler.add_grid(0, text_grid(pasted.rows, head=pasted.headed))
        assembler.last_table = None
        named = set(pasted.rows[0][1:]) if pasted.headed else set()  # a van's name alone heads a list of its own
        _add_page(lines[pasted.end :], assembler, hints, signs, (heads or set()) | named)
        return
    placed = lines_with_joined_signs([_line(line, number) for number, line in enumerate(lines) if line.strip()])
    if not placed:
        return
    _set_apart(lines, placed, heads or set(), hints)
    for region in split_columns(placed, Marks(), hints):
        assembler.begin_block(region.back)
        rest = region.lines
        while rest:
            found = find_aligned(rest, Marks(), hints)
            if found is None:
                break
            _add_items(items_of(found.before, EM, signs), assembler)
            assembler.add_grid(0, found.grid)
            rest = found.after
        _add_items(items_of(rest, EM, signs), assembler)


def _add_items(items: list[Item], assembler: Assembler) -> None:
    for item in items:
        assembler.add_item(0, item)


def _set_apart(lines: list[str], placed: list[Line], heads: set[str], hints: Hints) -> None:
    """Mark a short line alone between blank lines, a heading in plain text, and the heads of columns as bold.

    What stands above a signature is no heading of it.
    """
    listed = False
    for place, line in enumerate(placed):
        number = round(line.box.top / PITCH)
        if lines[number] in heads or listed and hints.means_all(line.text):
            placed[place] = _bold(line, LOWER if listed else 1.0)
            continue
        if place + 1 < len(placed) and placed[place + 1].text in heads and hints.heads_list(line.text):
            placed[place], listed = _bold(line), True  # "Extras" over "Drift 19" over the list of its extras
            continue
        if _heads_dots(line, placed[place + 1 : place + 2]):
            placed[place] = _bold(line, LOWER)
            continue
        before = lines[number - 1].strip() if number else ""
        before = "" if PAGE_NUMBER.fullmatch(before) else before
        after = lines[number + 1].strip() if number + 1 < len(lines) else ""
        text = lines[number].strip()
        follows_text = bool(after) or _heads_text(lines, number + 1, text)
        alone = not before and len(text) <= 60 and len(text.split()) <= 7
        titled = text[-1:].isalnum() or text.endswith(":") and len(text.split()) <= 4 and bool(after)
        titled = titled or text.endswith("?") and bool(after)  # its answer stands below
        parted = re.search(r"\s{3,}", text) is not None or has_leader(line)
        if alone and titled and not parted and not hints.ends_letter(text) and (follows_text or text.isupper()):
            open_list = after.startswith(tuple("-*•")) or text.endswith(":")
            follows = after[:1].islower() and not open_list
            if not follows:
                placed[place] = _bold(line)


def _heads_dots(line: Line, below: list[Line]) -> bool:
    """Tell whether a line stands further out than the labels and rows of dots right below: "540   £58,450"."""
    text = line.text
    led = bool(below) and has_leader(below[0]) and below[0].box.top - line.box.top < 1.5 * PITCH
    return led and below[0].box.x0 > line.box.x0 and not has_leader(line) and text[-1].isalnum() and len(text) <= 60


def _bold(line: Line, part: float = 1.0) -> Line:
    return Line(replace(word, bold=True, size=part * word.size) for word in line.words)


def _heads_text(lines: list[str], number: int, text: str) -> bool:
    """Tell whether a line with blank lines around it heads what follows: several lines, a list, or a sentence."""
    while number < len(lines) and not lines[number].strip():
        number += 1
    below = [line.strip() for line in lines[number : number + 2]]
    if not text[:1].isupper() or not below or not below[0]:
        return False
    several = len(below) > 1 and bool(below[1]) or below[0].startswith(tuple("-*•"))
    return several or below[0].endswith(".") and len(below[0].split()) >= 5


def _plain(line: str) -> str:
    """Give a line without Markdown emphasis, code marks and link targets; columns stay in place."""
    line = TAGS.sub(" ", line) if "<" in line else line
    line = BOLD_LABEL.sub(r"\1\3: ", LINK.sub(r"\1", line))
    line = EMPHASIS.sub(r"\2", line)
    line = SLANTED.sub(r"\2", line)
    return line.replace("`", "").expandtabs(TAB) if "\t" not in line else _tabs(line)


def _tabs(line: str) -> str:
    """Give tabs as at least three spaces, so that a tab always parts two cells."""
    shown = ""
    for part in line.replace("`", "").split("\t"):
        if shown:
            shown += " " * max(3, TAB - len(shown) % TAB)
        shown += part
    return shown


def _line(text: str, number: int, size: float = EM, left: float = 0.0, bold: bool = False) -> Line:
    words = []
    for match in re.finditer(r"\[[ xX]\]|\S+", text):
        x0, x1 = match.start() * CHAR + left, match.end() * CHAR + left
        box = Box(x0, number * PITCH, x1, number * PITCH + EM)
        words.append(Word(match.group(), box, size, bold, (0, 0, 0), base=number * PITCH + 8))
    return Line(words)


def _pipe_grid(lines: list[str]) -> Grid | None:
    rows: list[list[str]] = []
    headed = False
    for line in lines:
        if TABLE_RULE.match(line):
            headed = len(rows) == 1
            continue
        rows.append([_plain(cell.strip()) for cell in line.strip().strip("|").split("|")])
    if not rows or max(len(row) for row in rows) < 2:
        return None
    return text_grid(rows, head=headed)


def text_grid(rows: list[list[str]], *, head: bool) -> Grid:
    """Give a grid of texts; with ``head`` the first row is set in bold."""
    cols = max(len(row) for row in rows)
    width = 40 * CHAR
    cells = []
    for number, row in enumerate(rows):
        for col, text in enumerate(row):
            line = _line(text, number, left=col * width, bold=head and number == 0)
            cells.append(GridCell(number, col, [line] if line.words else []))
    spans = [(col * width, (col + 1) * width - CHAR) for col in range(cols)]
    box = Box(0, 0, cols * width, len(rows) * PITCH)
    return Grid(cells, len(rows), cols, box, "text", spans)
