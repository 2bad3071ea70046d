"""The heads of tables that name vans."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence
from functools import partial

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.quantities import QuantityReader
from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.counted_vans import CountedVans
from specscan.finding.naming.full_names import PRICE, BareHeads
from specscan.finding.naming.name_forms import SURE_SHARE
from specscan.finding.naming.place import Place, begins_with
from specscan.finding.naming.title_texts import LIST_JOINT
from specscan.records.text import Kind, Passage
from specscan.rulebook.models import WordFile

MAX_HEAD_WORDS = 6
UNIT_IN_BRACKETS = re.compile(r"[(\[]([^()\[\]]{1,12})[)\]]$")
MAX_HEAD = 40
MIN_ROWS = 2
TRIMMED = " .:|–—-"  # round a heading's name, where its price was
FIRST_LINES = 14
LONGEST_LINE = 200
MAX_TRIM_WORDS = 3
ASKED = 8  # different things in the labels of a table, from which its columns can only be vans
NO_TRIMS = ("standard", "optional", "not_available", "yes", "no", "all_vans", "package")  # heads of other columns
PLAN = re.compile(r"\d{2,3} ?[A-Z]{1,2}")  # "21 W" too, though it could be watts
STROKE = re.compile(r" / ")
VALUES = re.compile(r" / |(?<=\d)/(?=\d)")
SHARED = 0.3  # of the cells below a head that names several vans: the others hold for all of them
DECIMAL = re.compile(r"\d[.,]\d(?: [A-ZÀ-Þ][\w’'-]*){0,2}")  # metres of length: "5.4 Fell" beside "6.3"
CODE = re.compile(r"[A-Z]\d{1,3}")  # "R19" over a column is a floorplan and no R-value
WORDS = re.compile(r"[A-ZÀ-Þ][a-zà-ÿ]{2,} [A-ZÀ-Þ][a-zà-ÿ]{2,}")  # "Long Alder"
VARIED = re.compile(r"[A-Z\d]{1,4}-[A-Z]{1,3}$")  # a code with letters of its own behind that of a sister
SIZE = re.compile(r"X{0,2}[SML]")
TIRE = re.compile(r"(?<!\d)\d{3}/\d{2}(?!\d)")  # "225/75 R16 C", one value for all vans


class HeadReader:
    """Finds such heads in documents of one language."""

    def __init__(self, lexicon: Lexicon, quantities: QuantityReader, others: Sequence[WordFile] = ()):
        """Take the readers of one language, and the words of the others: "US units" can head a German table."""
        self.lexicon = lexicon
        self.quantities = quantities
        self.bare_heads = BareHeads(lexicon.words.price_from, quantities)
        words = lexicon.words
        self.settings = {word.casefold() for word in words.setting_words}
        self.stock = {label.strip(" #") for label in words.stock_labels}
        generic = (*words.column_words, *words.fitting_words, *words.unit_systems)
        self.generic = {word.casefold() for word in (*generic, *(w for one in others for w in one.unit_systems))}
        self.counted = re.compile(rf"(?<!\w)(?:{any_word(words.number_signs)})\.? ?(?=\d{{1,3}}(?!\d))", re.IGNORECASE)
        self.coded = {word.casefold() for word in words.code_words}
        self.counted_vans = CountedVans(words)

    def read(self, own: list[Passage], named: frozenset[str]) -> dict[str, Place]:
        """Give the heads of tables that name vans, with where they first stand."""
        tables: dict[int, list[Passage]] = {}
        for passage in own:
            if passage.table is not None:
                tables.setdefault(passage.table, []).append(passage)
        found: dict[str, Place] = {}
        lines = [p.text for p in own[:FIRST_LINES] if p.table is None and len(p.text) <= LONGEST_LINE]
        headings = {self.bare(p.text).strip(TRIMMED) for p in own if p.kind is Kind.HEADING}
        again = _rows_again(tables.values())
        lone = _heads_alone(tables.values())
        if len(lone) > 1 and any(_names_all(line, lone) for line in lines):
            named = named.union(lone)
        heads = [(cells, self._heads_of(cells, named, lines, headings, again)) for cells in tables.values()]
        vans_in_rows = {head for cells, some in heads for head, _ in some if head in _rows(cells)}
        for cells, some in heads:
            rows = set(_rows(cells))
            if rows <= vans_in_rows and rows.isdisjoint(head for head, _ in some):
                continue  # the vans of other tables tell one thing more here, whatever its label is
            for head, place in some:
                for name in self._parted(head, cells):
                    found.setdefault(name, place)
        return found

    def _parted(self, head: str, cells: list[Passage]) -> list[str]:
        """Give the names between strokes of a head over values of as many vans: "Drift / Gorse" over "80 / 110 l"."""
        names = STROKE.split(head)
        below = [len(VALUES.split(p.text)) for p in cells if p.column is not None and p.column.text == head]
        if below.count(len(names)) < max(MIN_ROWS, SHARED * len(below)) or len(set(names)) < len(names):
            return [head]
        return names if len(names) > 1 and all(map(self.can_be_name, names)) else [head]

    def _heads_of(
        self,
        cells: list[Passage],
        named: frozenset[str],
        lines: list[str],
        headings: Collection[str],
        again: Collection[tuple[str, ...]],
    ) -> list[tuple[str, Place]]:
        rows = _rows(cells)
        columns = self._columns(cells, lines, headings)
        known_rows = sum(self.lexicon.knows_label(text) for text in rows)
        known_columns = sum(self.lexicon.knows_label(text) for text in columns)
        if len(columns) > 1 and any(_names_all(line, columns) for line in lines):
            return [(head, _place(cells, head, column=True)) for head in columns]
        if len(rows) >= MIN_ROWS and known_rows >= 0.35 * len(rows) and known_rows >= known_columns:
            heads = self._with_sisters([t for t in columns if t in named or self.can_be_name(t)], columns)
            settings = self._are_settings(columns)
            if settings or len(heads) < len(columns):
                asked = self._asked(rows)
                if len(asked) >= ASKED:
                    heads = [t for t in columns if t in heads or self._can_be_trim(t, asked)]
                elif settings:
                    return []
            heads = [t for t in columns if t in heads or any(t in line for line in lines if _lists(line, t, heads))]
            if self._are_counted(columns, heads, lines):
                heads = columns
            if len(heads) >= 1 and len(heads) >= SURE_SHARE * len(columns):
                return [(h, _place(cells, h, column=True)) for h in heads]
        if len(columns) >= MIN_ROWS and known_columns >= 0.4 * len(columns) and not self._names_others(cells):
            heads = self._with_sisters([text for text in rows if self.can_be_name(text)], rows)
            if heads and tuple(rows) in again:
                heads = [text for text in rows if text in heads or self._is_called(text)]
            if heads and len(heads) >= 0.7 * len(rows):
                return [(h, _place(cells, h, column=False)) for h in heads]
        return []

    def _columns(self, cells: list[Passage], lines: list[str], headings: Collection[str]) -> list[str]:
        """Give the heads of columns; one over nothing but prices counts where a line or heading names a van so.

        "Scholar" over the prices of what is in the price of the "Captain" beside it.
        """
        heads = _unique(p.column.text for p in cells if p.column is not None)
        valued = {p.column.text for p in cells if p.column is not None and not PRICE.search(p.text)}
        return [
            text
            for text in heads
            if text in valued
            or any(_lists(line, text, [one for one in heads if one != text]) for line in lines)
            or any(heading == text or heading.endswith(f" {text}") for heading in headings)
        ]

    def _are_settings(self, columns: list[str]) -> bool:
        """Tell whether heads say how or where something is measured, as "Low" and "High" of a heater do."""
        return self.settings.issuperset(word.casefold() for column in columns for word in column.split())

    def _names_others(self, cells: list[Passage]) -> bool:
        """Tell whether the corner of a table, or the heading right above it, says that its rows name no vans.

        They are packages, or numbers of a dealer's stock.
        """
        above = next((cell.sections[-1] for cell in cells if cell.sections), "")
        stock = above.casefold().strip(" .:#") in self.stock
        packages = len(above) <= MAX_HEAD and self.lexicon.cues(self.lexicon.analyse(above), "package")
        return stock or bool(packages)

    def _with_sisters(self, heads: list[str], columns: list[str]) -> list[str]:
        """Add heads that alone could be labels to others of their kind: "L" to "S" and "M", "Drift L" to "Drift S".

        So "Drift AWD", which could be a label of the drive, is added to "Drift", and "20A", which could be amperes,
        to "20K"; "Long Alder" to "Old Gorse" and "Early Teasel"; "QD-L", of which the
        letter could be a length, to "QD".
        """
        described = len(heads) > 1 and all(map(WORDS.fullmatch, heads))
        sized = any(SIZE.fullmatch(head) for head in heads)
        plans = any(PLAN.fullmatch(head) for head in heads)
        firsts = {head.split()[0] for head in heads if len(head.split()) > 1 and len(head.split()[0]) > 2}
        return [
            text
            for text in columns
            if text in heads
            or (sized and SIZE.fullmatch(text))
            or (plans and PLAN.fullmatch(text))
            or (described and WORDS.fullmatch(text) and self._unknown_words(text))
            or (len(text) <= MAX_HEAD and (text.split()[0] in firsts or any(map(partial(begins_with, text), heads))))
            or (VARIED.match(text) and text.rpartition("-")[0] in heads)
        ]

    def _asked(self, rows: list[str]) -> set[str]:
        """Give the things that the labels of a table name: where they are many, its columns can only be vans."""
        mentions = (self.lexicon.analyse(row).mentions for row in rows if len(row) <= MAX_HEAD)
        return {m.concept.name for some in mentions for m in some if m.concept.kind in ("thing", "alone")}

    def _are_counted(self, columns: list[str], heads: list[str], lines: list[str]) -> bool:
        """Tell whether a line counts as many vans or trims as there are columns, though a head could be a label.

        "In three trims" above "Origin", "Solstice" and "Long Water", or above "Standard", "Comfort" and "Solstice".
        """
        more = [head for head in columns if head not in heads]
        called = all(map(self._is_called, more)) or (len(more) == 1 < len(heads) and more[0][:1].isupper())
        return bool(heads and more) and called and any(len(columns) in self.counted_vans.counts(line) for line in lines)

    def _can_be_trim(self, text: str, asked: set[str]) -> bool:
        """Tell whether a head that could be a label can be what its maker calls a van: "Long", "Long Winter".

        A thing of which a row tells (``asked``) heads no column.
        """
        if PLAN.fullmatch(text) or DECIMAL.fullmatch(text):
            return True
        if not self._is_called(text):
            return False
        told = {m.concept[:2] for m in self.lexicon.analyse(text).mentions}
        return not any(
            (kind in ("thing", "alone") and name not in asked)
            or kind in ("term", "denied")
            or (kind == "cue" and name in NO_TRIMS)
            for kind, name in told
        )

    def _is_called(self, text: str) -> bool:
        """Tell whether a text has the form of a trim's name: few words, all with capitals, none of them generic."""
        words = text.split()
        if not words or len(words) > MAX_TRIM_WORDS or not all(w[0].isupper() and w.isalpha() for w in words):
            return False
        return self.generic.isdisjoint((text.casefold(), words[0].casefold()))

    def _is_described_name(self, text: str) -> bool:
        """Tell whether a text that could be a label has a word with a capital that no label has: "Long Alcove"."""
        words = text.split()
        short = 1 < len(words) <= 2 and all(word[0].isupper() for word in words)
        return short and bool(self._unknown_words(text)) and not self.lexicon.names_thing(text)

    def _unknown_words(self, text: str) -> list[str]:
        return [word for word in text.split() if not self.lexicon.knows_words(word)]

    def bare(self, head: str) -> str:
        """Give a head without signs of notes, prices, measures and remarks."""
        return self.bare_heads.bare(head.strip(" *†"))

    def _without_number_sign(self, name: str) -> str:
        """Give a name without the sign of its number, which denies nothing: "Drift 5" of "Drift No. 5".

        What is no van's keeps it: "Item no. 5", "Battery no. 2".
        """
        sign = self.counted.search(name)
        if sign is None:
            return name
        before = name[: sign.start()].strip()
        if f"{before} {sign.group()}".casefold().strip(" .") in self.coded or (
            before and self.lexicon.knows_label(before)
        ):
            return name
        return self.counted.sub("", name)

    def can_be_name(self, text: str) -> bool:
        """Tell whether a text, a head or heading say, can name a van: it is short and no label, value or remark."""
        plain = self._without_number_sign(self.bare(text))
        if not plain or len(plain) > MAX_HEAD or len(plain.split()) > MAX_HEAD_WORDS:
            return False
        if plain.casefold().strip("()") in self.generic or not any(c.isalnum() for c in plain):
            return False
        if TIRE.search(plain):
            return False
        bracket = UNIT_IN_BRACKETS.search(plain)
        if bracket is not None and self.quantities.units.named(bracket.group(1)):
            return False  # "Mass (kg)"
        words = [word.casefold().strip("()/,") for word in plain.split()]
        if words[0] in self.generic and all(w in self.generic or self.quantities.units.named(w) for w in words):
            return False
        unit = plain.strip("()")
        if len(unit) > 1 and unit.islower() and self.quantities.units.named(unit):
            return False  # "kg" over the weights of options
        if self.lexicon.knows_label(plain) and not re.search(r"\d", plain):
            return self._is_described_name(plain)
        # The figure of a code that is followed by a word measures nothing: "S3 volt" beside "S3 trail".
        measured = [q for q in self.quantities.find(plain) if not (q.bare or plain[: q.start][-1:].isalpha())]
        whole = len(measured) > 1 or any(q.end - q.start >= 0.8 * len(plain) for q in measured)
        if not CODE.fullmatch(plain) and whole:
            return False  # "6 kW", "10/69 l 87 l"
        cues = self.lexicon.cues(self.lexicon.analyse(plain), *NO_TRIMS)
        return not cues


def _lists(line: str, text: str, heads: Sequence[str]) -> bool:
    """Tell whether a line lists a text beside heads that name vans: "Ridge, Shore Plus and Duo"."""
    listed = [part.strip(" .") for part in LIST_JOINT.split(line)]
    return any(part.endswith(text) for part in listed) and any(part.endswith(head) for part in listed for head in heads)


def _names_all(line: str, heads: Sequence[str]) -> bool:
    """Tell whether a line lists all heads of a table, each alone or behind the name of the range: "540 | 600 Q"."""
    listed = [part.strip(" .") for part in LIST_JOINT.split(line)]
    return all(any(part == head or part.endswith(f" {head}") for part in listed) for head in heads)


def _rows(cells: Iterable[Passage]) -> list[str]:
    return _unique(p.row.text for p in cells if p.row is not None)


def _rows_again(tables: Iterable[Sequence[Passage]]) -> set[tuple[str, ...]]:
    """Give the labels of rows that several tables have under different heads: of what all of them tell, as of vans."""
    headed: dict[tuple[str, ...], set[frozenset[str]]] = {}
    for cells in tables:
        columns = frozenset(p.column.text for p in cells if p.column is not None)
        headed.setdefault(tuple(_rows(cells)), set()).add(columns)
    return {rows for rows, heads in headed.items() if len(heads) > 1 and len(rows) > 1}


def _heads_alone(tables: Iterable[Sequence[Passage]]) -> list[str]:
    """Give the heads of tables of one column each."""
    columns = (_unique(p.column.text for p in cells if p.column is not None) for cells in tables)
    return _unique(heads[0] for heads in columns if len(heads) == 1)


def _unique(texts: Iterable[str]) -> list[str]:
    return [text for text in dict.fromkeys(texts) if text.strip()]


def _place(cells: list[Passage], head: str, *, column: bool) -> Place:
    for cell in cells:
        named = cell.column if column else cell.row
        if named is not None and named.text == head:
            return Place(cell, cell.page, head)
    return Place(None, cells[0].page, head)
