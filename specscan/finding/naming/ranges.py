"""Headings that name a range of vans, "The Drift range", above the codes of its vans: "Model 19", "Model 21".

Such codes head the columns of a table, or its rows, or chapters of their own.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Sequence
from dataclasses import replace

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.full_names import CODE, PRICE
from specscan.finding.naming.name_forms import are_mostly_names, words_of_name
from specscan.finding.naming.place import begins_with, of_range, without_start
from specscan.records.text import Head, Kind, Passage

REMARK = re.compile(r"\s*[,;:–—-]?\s+[a-zà-þ].*")  # behind the name: "compact, for two travelers"
BARE = re.compile(r"[A-ZÀ-Þ][^\W\d_]{2,}(?:[’'-][^\W\d_]+)*")
CODED_HEADING = re.compile(r"\d{2,3}(?: ?[A-ZÀ-Þ][\w’'.-]*){0,2}")
CODED_ROW = re.compile(r"[A-Z]{0,3}-?\d")
NAME = words_of_name(2)
LETTER = re.compile(r"[A-Z]")


class RangeReader:
    """Finds the names of ranges in headings of one language."""

    def __init__(self, lexicon: Lexicon):
        words = lexicon.words
        ranges, articles = (any_word(one) for one in (words.range_words, words.articles_of_names))
        self.lexicon = lexicon
        self.range_words = {word.casefold() for word in words.range_words}
        self.range = re.compile(rf"(?:(?i:{articles})\s+)?(?:(?i:{ranges})\s+({NAME})|({NAME})[ -](?i:{ranges}))")
        self.model = re.compile(
            rf"(?i:{any_word({*words.model_labels, *words.model_words})})(?:\s*:)?\s+(?=[\dA-ZÀ-Þ])"
        )

    def name(self, heading: str, *, remarked: bool = False) -> str:
        """Give the range that a heading names, an empty text where it names none.

        ``remarked``: words in small letters may follow the name, as in a row that opens a group of a table.
        """
        plain = heading.strip(" .:")
        match = self.range.fullmatch(plain)
        if match is None and remarked and (start := self.range.match(plain)) and REMARK.fullmatch(plain[start.end() :]):
            match = start
        name = (match.group(1) or match.group(2)) if match else ""
        return "" if not name or self.lexicon.knows_label(name) else name

    def named(self, passages: Sequence[Passage]) -> frozenset[str]:
        """Give the ranges, in small letters, that headings above passages name."""
        headings = {heading for passage in passages for heading in passage.sections}
        return frozenset(name.casefold() for text in headings if (name := self.name(text, remarked=True)))

    def bare(self, passages: Sequence[Passage], can_be_name: Callable[[str], bool]) -> frozenset[str]:
        """Give headings of a name alone that are ranges: sisters, each above headings of codes or of names behind it.

        "Wexmoor" above "186 T" and "203 M", beside "Gorse" above "Gorse 224": a word that no brochure uses. Prices may
        stand behind the codes.
        """
        coded: dict[tuple[str, ...], set[str]] = defaultdict(set)
        for passage in passages:
            over = passage.sections[-1] if passage.kind is Kind.HEADING and passage.sections else ""
            plain = without_start(_without_price(passage.text), over)
            if over and CODED_HEADING.fullmatch(plain) and can_be_name(passage.text):
                coded[passage.sections[:-1]].add(over)
        return frozenset(
            over for found in coded.values() if len(found) > 1
            for over in found if BARE.fullmatch(over) and self.lexicon.knows_none(over)
        )  # fmt: skip

    def code(self, heading: str) -> str:
        """Give a heading without the word "Model", or "Trim:", before a name; "Model K" is one itself."""
        if self.is_lettered(heading):
            return heading
        return self.model.sub("", heading, count=1) if self.model.match(heading) else heading

    def is_lettered(self, name: str) -> bool:
        """Tell whether a name is a letter behind a word such as "Model", which is a part of it then: "Model K"."""
        match = self.model.match(name)
        if match is None or LETTER.fullmatch(name, match.end()) is None:
            return False
        word = match.group().strip().casefold()
        return ":" not in word and word not in self.range_words  # "Series R" may be the range of "R 540"

    def with_full_heads(self, passages: Sequence[Passage], can_be_name: Callable[[str], bool]) -> tuple[Passage, ...]:
        """Give the passages with the range before mere codes over the columns of tables that stand under it.

        Where all rows of a table begin with codes, these are the vans, and the range of its group stands before each.
        """
        coded = _tables_of_codes(passages, can_be_name)
        above: dict[str, str] = {}

        def range_of(sections: Sequence[str]) -> str:
            name = ""
            for heading in sections:
                if heading not in above:
                    above[heading] = self.name(heading, remarked=True)
                name = above[heading] or name
            return name

        made = []
        for passage in passages:
            row, column = passage.row, passage.column
            if passage.table is not None and column is not None and (name := range_of(passage.sections)):
                if row is not None and passage.table in coded:
                    passage = replace(passage, row=with_range(row, name))
                elif CODE.match(column.text) and can_be_name(column.text):
                    passage = replace(passage, column=with_range(column, name))
            made.append(passage)
        return tuple(made)


def with_range(head: Head, name: str) -> Head:
    """Give a head with the name of its range before it, once."""
    return head if begins_with(head.text, name) else replace(head, text=of_range(name, head.text))


def _without_price(heading: str) -> str:
    """Give a heading without the price that ends it."""
    price = PRICE.search(heading)
    return heading[: price.start()].strip(" .,") if price and not heading[price.end() :].strip(" .") else heading


def _tables_of_codes(passages: Sequence[Passage], can_be_name: Callable[[str], bool]) -> set[int]:
    """Give the tables of two or more rows all of which begin with codes, most that can be names: "170", "210 Polar"."""
    rows: dict[int, set[str]] = defaultdict(set)
    for passage in passages:
        if passage.table is not None and passage.row is not None:
            rows[passage.table].add(passage.row.text)
    return {
        table for table, labels in rows.items()
        if len(labels) > 1
        and all(CODED_ROW.match(text) for text in labels)
        and are_mostly_names(labels, can_be_name)
    }  # fmt: skip
