"""The ranges of bare codes in a document of several: groups of a table, sentences, or the codes' first letters.

"WEXMOOR" above the rows "W-45" and "W-52", "the Dapplin comes as the D-60 and the D-66", or "Wexmoor & Dapplin" over
the columns "W-45" and "D-60": whoever reads it knows to which range each code belongs.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import replace

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word, count, holds, places
from specscan.finding.naming.name_forms import are_mostly_names
from specscan.finding.naming.place import PARTED
from specscan.finding.naming.ranges import RangeReader, with_range
from specscan.records.text import Head, Kind, Passage, Title

CODED = re.compile(r"[A-Z]{0,3}[ -]?\d")
LETTERS = re.compile(r"([A-Z]{1,3})[ -]?\d")
BARE = re.compile(r"[^\W\d_][\w’'-]+(?: [^\W\d_][\w’'-]+)?")
WORD = re.compile(r"[A-ZÀ-Þ][^\W\d_]{2,}(?:[’'-][^\W\d_]+)*(?: [A-ZÀ-Þ][^\W\d_]{2,}(?:[’'-][^\W\d_]+)*)?")
SENTENCE_END = re.compile(r"(?<=[.!?])\s+|\n")
SHOUTED = re.compile(r"([A-ZÀ-Þ]{3,}(?: [A-ZÀ-Þ]{3,})?)\s+[a-zß-ÿ]")
LISTED = re.compile(r"\s+&\s+|\s+[|·•]\s+|,\s+")
MAX_HEAD = 40
FEW = 2


class CodeRanges:
    """Finds the ranges of codes in documents of one language."""

    def __init__(self, lexicon: Lexicon, ranges: RangeReader):
        words = lexicon.words
        self.lexicon = lexicon
        self.ranges = ranges
        articles = any_word(words.articles_of_names)
        self.articles = {word.casefold() for word in words.articles_of_names}
        self.article = re.compile(rf"(?<!\w)(?i:{articles})[ \u00a0]*$")
        self.on_base = re.compile(rf"(?<!\w)(?i:{any_word(words.mounted_on)})\s+(?:(?i:{articles})\s+)?$")
        company = (*words.made_by, *lexicon.book.general.legal_forms)
        self.company = re.compile(rf"\s+(?i:{any_word(company)})(?!\w)")

    def read(
        self, passages: Sequence[Passage], document_titles: Sequence[Title], can_be_name: Callable[[str], bool]
    ) -> dict[str, str]:
        """Give for each bare code that heads columns or rows its range, nothing where they are not of several."""
        corners = {t.table: t.text.strip(" .:") for t in document_titles if t.table is not None}
        if cornered := self._cornered(passages, corners, can_be_name):
            return cornered
        titles = [title.text for title in document_titles if title.origin == "page"]
        codes = _codes(passages, can_be_name)
        if len(codes) < FEW:
            return {}
        texts = [p.text for p in passages if p.table is None]
        headings = [*titles, *(p.text for p in passages if p.kind is Kind.HEADING)]
        for found in (
            self._grouped(passages, codes, texts),
            self._told(texts, codes, headings),
            self._lettered([*titles, *texts], codes),
        ):
            if codes <= found.keys() and len(set(found.values())) > 1:
                return found
        return {}

    def _cornered(
        self, passages: Sequence[Passage], corners: Mapping[int, str], can_be_name: Callable[[str], bool]
    ) -> dict[str, str]:
        """Give the ranges that stand in the corners of tables, each before the heads of its columns: "Drift | 6 | 8".

        Each is named outside of its table too; no head stands in tables of two of them.
        """
        if len(set(corners.values())) < FEW:
            return {}
        texts = [p.text for p in passages if p.table is None]
        heads: dict[int, set[str]] = defaultdict(set)
        for passage in passages:
            table, column = passage.table, passage.column
            if table is not None and table in corners and column is not None and column.text.strip():
                heads[table].add(column.text)
        found: dict[str, str] = {}
        for table, codes in heads.items():
            name = corners[table]
            named = self._can_be_range(name) and name[:1].isupper() and self.lexicon.knows_none(name)
            if not named or len(codes) < FEW or not are_mostly_names(codes, can_be_name):
                continue
            own = any(code.casefold().startswith(name.casefold()) for code in codes)
            if own or not any(holds(text, name) for text in texts):
                continue
            if any(found.get(code, name) != name for code in codes):
                return {}
            found.update(dict.fromkeys(codes, name))
        return found if len(set(found.values())) >= FEW else {}

    def _grouped(self, passages: Sequence[Passage], codes: Collection[str], texts: Sequence[str]) -> dict[str, str]:
        """Give the ranges that are headings of groups, or of tables: each code stands under one of them only."""
        over: dict[str, set[str]] = defaultdict(set)
        for passage in passages:
            for head in (passage.row, passage.column) if passage.table is not None else ():
                if head is not None and head.text in codes:
                    over[head.text].update(passage.sections)
        shared = set.intersection(*over.values()) if over else set()
        groups = {
            code: [one for one in map(_shouted, found - shared) if self._can_be_range(one)]
            for code, found in over.items()
        }
        found = {code: one[0] for code, one in groups.items() if len(one) == 1}
        below: dict[str, set[str]] = defaultdict(set)
        for code, group in found.items():
            below[group].add(code)
        if any(len(one) > 1 for one in groups.values()) or len(below) < FEW:
            return {}
        said = {group: self._said_name(group, some, texts) for group, some in below.items()}
        lettered = all(all(c[0] == group[0] and c[0].isalpha() for c in some) for group, some in below.items())
        told = sum(bool(name) for name in said.values())
        own = all(map(self.lexicon.knows_none, below)) and not any(self._is_base(name, passages) for name in below)
        spoken = {group: self._spoken_name(group, texts) for group in below}
        carries = any(self._carries(name, texts) for name in below)
        if not (told == len(below) or own and (told or lettered or all(spoken.values()) and not carries)):
            return {}
        return {code: said[group] or spoken[group] or group.strip(" .:") for code, group in found.items()}

    def of_rows(self, passages: Sequence[Passage]) -> dict[int, str]:
        """Give the range of each passage whose row stands in a group of that name, another group having such a row too.

        "Long" under "DRIFT" and under "GORSE" is two vans where the columns are labels and the text speaks of both.
        """
        texts = [p.text for p in passages if p.table is None]
        tables: dict[int, list[Passage]] = defaultdict(list)
        for passage in passages:
            if passage.table is not None and passage.row is not None and passage.row.text.strip():
                tables[passage.table].append(passage)
        found: dict[int, str] = {}
        again = False
        for cells in tables.values():
            under = {cell.sections for cell in cells}
            shared = set.intersection(*map(set, under))
            groups = {sections: [_shouted(one) for one in sections if one not in shared] for sections in under}
            said = {sections: self.ranges.name(own[0]) for sections, own in groups.items() if len(own) == 1}
            known = all(said.get(sections) for sections in under)  # "Series Drift" over "Long"
            if len(under) < FEW or any(
                len(own) != 1 or not (known or self._is_own_name(own[0])) for own in groups.values()
            ):
                continue
            names = said if known else {under: self._spoken_name(own[0], texts) for under, own in groups.items()}
            if not all(names.values()) or not self._have_labels(cells, ranged=known):
                continue
            found.update((cell.number, names[cell.sections]) for cell in cells)
            below: dict[str, set[str]] = defaultdict(set)
            for cell in cells:
                below[cell.row.text if cell.row is not None else ""].add(names[cell.sections])
            again = again or known or any(len(over) > 1 for over in below.values())
        return found if again else {}

    def _is_own_name(self, group: str) -> bool:
        words = " ".join(word for word in group.split() if not any(map(str.isdigit, word)))  # "V1" is no voltage
        return self._can_be_range(group) and bool(words) and self.lexicon.knows_none(words)

    def _have_labels(self, cells: Sequence[Passage], *, ranged: bool) -> bool:
        """Tell whether most columns have labels for heads, and most rows have none; "AWD" may be part of a name.

        Where the groups are ``ranged``, said to be ranges, "L" and "L AWD" are no lengths either.
        """
        columns = {cell.column.text for cell in cells if cell.column is not None}
        labels = sum(self.lexicon.knows_label(one) for one in columns)
        rows = {cell.row.text for cell in cells if cell.row is not None}
        own = ranged or sum(map(self.lexicon.names_thing, rows)) < len(rows) / 2
        return labels >= len(columns) / 2 and own

    def _can_be_range(self, heading: str) -> bool:
        plain = heading.strip(" .:")
        return BARE.fullmatch(plain) is not None and not self.lexicon.knows_label(plain)

    @staticmethod
    def _said_name(group: str, codes: Iterable[str], texts: Sequence[str]) -> str:
        """Give a heading as texts write it before one of the codes below it: "Wexmoor" for "WEXMOOR"."""
        said = re.compile(rf"(?<!\w)((?i:{re.escape(group.strip(' .:'))}) )(?:{any_word(codes)})(?!\w)")
        own = (text for text in texts if group not in text or not group.isupper())  # "DRIFT" stands for "Drift"
        found = (match for text in own if (match := said.search(text)) is not None)
        return next((match.group(1).strip() for match in found), "")

    @staticmethod
    def _spoken_name(group: str, texts: Sequence[str]) -> str:
        """Give a heading as running text writes it, an empty text where none does."""
        plain = group.strip(" .:")
        spoken = re.compile(rf"(?<!\w){re.escape(plain)}(?!\w)", re.IGNORECASE)
        found = (match for text in texts if len(text) > len(group) + 1 and (match := spoken.search(text)) is not None)
        return next((match.group() for match in found if match.group()[0].isupper()), "")

    def _is_base(self, name: str, passages: Sequence[Passage]) -> bool:
        """Tell whether a cell with a label for base vehicles holds a name."""
        plain = name.strip(" .:").casefold()
        for passage in passages:
            if passage.table is not None and plain in passage.text.casefold():
                heads = (head.text for head in (passage.row, passage.column) if head is not None)
                if any(m.concept.name == "chassis" for head in heads for m in self.lexicon.analyse(head).mentions):
                    return True
        return False

    def _carries(self, name: str, texts: Sequence[str]) -> bool:
        """Tell whether a text sets "on the" before a name, as before that of a base vehicle."""
        plain = name.strip(" .:").casefold()
        folded = (text.casefold() for text in texts)
        return any(self.on_base.search(text[:start]) for text in folded for start in places(text, plain))

    def _told(self, texts: Sequence[str], codes: Collection[str], headings: Sequence[str]) -> dict[str, str]:
        """Give the ranges that sentences set before their codes, each named by a word that no brochure uses.

        Where all nouns have capitals, titles or ``headings`` must hold it.
        """
        found: dict[str, set[str]] = defaultdict(set)
        coded = re.compile(rf"(?<![\w-])(?:{any_word(codes)})(?![\w-])")
        everything = "\n".join(texts)
        for text in texts:
            for sentence in SENTENCE_END.split(text) if any(code in text for code in codes) else ():
                spans = [(match.start(), match.group()) for match in coded.finditer(sentence)]
                taken = [(start, start + len(code)) for start, code in spans]
                names = [
                    (match.start(), name)
                    for match in WORD.finditer(sentence)
                    if not any(start < match.end() and match.start() < end for start, end in taken)
                    and (name := self._name_at(sentence, match, everything))
                ]
                for start, code in spans:
                    before = [name for place, name in names if place < start]
                    if before:
                        found[code].add(before[-1])
        sure = {code: next(iter(names)) for code, names in found.items() if len(names) == 1}
        if not self.lexicon.words.nouns_have_capitals:
            return sure
        return {code: name for code, name in sure.items() if any(holds(text, name) for text in headings)}

    def _name_at(self, sentence: str, match: re.Match[str], everything: str) -> str:
        """Give the name of a range that stands in a sentence, an empty text where it can be none."""
        name = _single(self._without_article(match.group()), everything)
        if self.company.match(sentence, match.end()) or self.on_base.search(sentence[: match.start()]):
            return ""
        led = name != match.group() or self.article.search(sentence[: match.start()]) is not None
        return name if name and self.lexicon.knows_none(name) and (led or count(everything, name) >= FEW) else ""

    def _without_article(self, name: str) -> str:
        first, _, rest = name.partition(" ")
        return rest if first.casefold() in self.articles else name

    def _lettered(self, texts: Sequence[str], codes: Collection[str]) -> dict[str, str]:
        """Give the ranges of whose names the codes bear the first letters, where each can be only one."""
        starts = {code: match.group(1) for code in codes if (match := LETTERS.match(code)) is not None}
        if starts.keys() != set(codes) or len(set(starts.values())) < FEW:
            return {}
        everything = "\n".join(texts)
        names: dict[str, set[str]] = defaultdict(set)
        for text in texts:
            listed = {part.strip(" .:") for part in LISTED.split(text)}
            for match in WORD.finditer(text):
                plain = self._without_article(match.group())
                led = plain != match.group() or self.article.search(text[: match.start()]) is not None
                if not (led or plain in listed) or self.company.match(text, match.end()):
                    continue
                for word in plain.split():
                    name = _single(word, everything)
                    begun = [start for start in set(starts.values()) if name.upper().startswith(start)]
                    sure = led and not self.lexicon.words.nouns_have_capitals or count(everything, name) >= FEW
                    if begun and sure and self.lexicon.knows_none(name):
                        names[max(begun, key=len)].add(name)
        return {code: next(iter(names[start])) for code, start in starts.items() if len(names[start]) == 1}


def _single(name: str, everything: str) -> str:
    """Give a name without the ending of several, where it stands without it too: "two Wexmoors"."""
    return name[:-1] if name.endswith("s") and holds(everything, name[:-1]) else name


def _shouted(heading: str) -> str:
    """Give the name in capitals that stands before what a heading says of it: "DRIFT" of "DRIFT on the van body".

    A dash, a bar or a colon parts the two where the name is written as others are: "Drift 6 – length 6.05 m".
    """
    match = SHOUTED.match(heading)
    return match.group(1) if match is not None else PARTED.split(heading)[0]


def with_row_ranges(passages: Sequence[Passage], ranges: Mapping[int, str]) -> tuple[Passage, ...]:
    """Give the passages, by whose numbers ranges are given, with its range before the head of each row."""
    if not ranges:
        return tuple(passages)
    return tuple(
        replace(p, row=with_range(p.row, ranges[p.number])) if p.row is not None and p.number in ranges else p
        for p in passages
    )


def with_ranges(passages: Sequence[Passage], ranges: Mapping[str, str]) -> tuple[Passage, ...]:
    """Give the passages with its range before each code that heads a column or a row."""
    if not ranges:
        return tuple(passages)

    def whole(head: Head | None) -> Head | None:
        name = ranges.get(head.text) if head is not None else None
        return head if head is None or name is None else with_range(head, name)

    return tuple(replace(p, row=whole(p.row), column=whole(p.column)) if p.table is not None else p for p in passages)


def _codes(passages: Sequence[Passage], can_be_name: Callable[[str], bool]) -> set[str]:
    """Give the codes that head most columns, or most rows, of tables, nearly all of which can be names."""
    heads: dict[tuple[int, bool], set[str]] = defaultdict(set)
    for passage in passages:
        if passage.table is None:
            continue
        for head, across in ((passage.row, False), (passage.column, True)):
            if head is not None and head.text.strip() and len(head.text) <= MAX_HEAD:
                heads[passage.table, across].add(head.text)
    found = set()
    for texts in heads.values():
        if all(CODED.match(text) for text in texts) and are_mostly_names(texts, can_be_name):
            found |= texts
    return found
