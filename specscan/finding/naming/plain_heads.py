"""Heads that name vans without what is no part of a name: signs of makers' rights, articles.

"Drift™" is the Drift; where the columns of a table are headed "le Drift", "la Gorse", or "« Drift »", "« Gorse »", the
articles and quotation marks say no more than that these are names. "(formerly Short)" behind a name tells of another.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Collection, Sequence
from dataclasses import replace

from specscan.finding.language.whole_words import any_word, places
from specscan.finding.naming.name_forms import article
from specscan.records.text import Document, Head, Passage
from specscan.rulebook.book import General
from specscan.rulebook.models import WordFile

LEAST = 2  # heads of one table with an article


class PlainHeads:
    """Takes such signs and words from the heads of documents of one language."""

    def __init__(self, general: General, words: WordFile):
        articles, former = words.articles_before_names, any_word(words.cues["formerly"])
        pairs = "|".join(
            rf"{re.escape(two[0])}\s?([^{re.escape(two)}]+?)\s?{re.escape(two[1])}" for two in general.quotes
        )
        self.quoted = re.compile(rf"\s*(?:{pairs or '(?!)'})\s*")
        self.sign = re.compile(rf"(?<=[\w’'])\s?(?:{any_word(general.rights_signs)})")
        # what a van was called before, and that it is new: no part of its name
        new = any_word(words.new_van_words)
        self.renamed = re.compile(rf"(?<=\w)\s*\((?:(?i:{former})(?!\w)[^()\d]*[A-ZÀ-Þ\d][^()]*|(?i:{new}))\)")
        self.article = re.compile(rf"({article(articles)})(?=[A-ZÀ-Þ\d])")

    def without_signs(self, passages: Sequence[Passage]) -> tuple[Passage, ...]:
        """Give the passages without signs of makers' rights in the heads of their rows and columns and above them."""
        return tuple(self._without_signs(p) if self._has_sign(p) else p for p in passages)

    def unsigned(self, document: Document) -> Document:
        """Give a document without such signs in its texts, for the readers of names; what it states is quoted whole."""
        passages = tuple(
            replace(p, text=self.sign.sub("", p.text)) if self.sign.search(p.text) else p for p in document.passages
        )
        return replace(document, passages=passages)

    def _bare(self, passages: Sequence[Passage]) -> tuple[Passage, ...]:
        """Give the passages without former names behind heads of columns, and quotation marks round heads."""

        def bare(head: Head, pattern: re.Pattern[str] | None) -> str:
            text = head.text if pattern is None else pattern.sub("", head.text)
            match = self.quoted.fullmatch(text)
            return text if match is None else match.group(match.lastindex or 0)

        rows = {p.row.text: bare(p.row, None) for p in passages if p.table is not None and p.row is not None}
        columns = {
            p.column.text: bare(p.column, self.renamed)
            for p in passages
            if p.table is not None and p.column is not None
        }
        rows, columns = ({text: own for text, own in one.items() if own != text} for one in (rows, columns))
        if not rows and not columns:
            return tuple(passages)
        return tuple(_with_heads(p, rows, columns) for p in passages)

    def without_articles(self, passages: Sequence[Passage], titles: Sequence[str]) -> tuple[Passage, ...]:
        """Give the passages without such signs round heads, and the articles with which all heads of a table begin.

        An article with a capital may be a part of the names: most must stand elsewhere without it. ``titles`` are
        the lines that stand out.
        """
        passages = self._bare(passages)
        heads: dict[tuple[int, bool], dict[str, str]] = defaultdict(dict)
        for passage in passages:
            for head, across in ((passage.row, False), (passage.column, True)):
                if passage.table is not None and head is not None and head.text.strip():
                    match = self.article.match(head.text)
                    heads[passage.table, across][head.text] = head.text[match.end() :] if match else head.text
        plain = {place: names for place, names in heads.items() if _all_differ(names)}
        if not plain:
            return tuple(passages)
        texts = [*(passage.text for passage in passages), *titles]
        plain = {
            place: names
            for place, names in plain.items()
            if all(head[0].islower() or name[0].isdigit() for head, name in names.items())
            or 2 * self._stand_bare(names.values(), texts) >= len(names)
        }
        return tuple(
            _with_heads(p, plain.get((p.table, False), {}), plain.get((p.table, True), {}))
            if p.table is not None
            else p
            for p in passages
        )

    def _has_sign(self, passage: Passage) -> bool:
        texts = (*passage.sections, *(head.text for head in (passage.row, passage.column) if head is not None))
        return any(map(self.sign.search, texts))

    def _without_signs(self, passage: Passage) -> Passage:
        row, column = (
            head and replace(head, text=self.sign.sub("", head.text)) for head in (passage.row, passage.column)
        )
        sections = tuple(self.sign.sub("", heading) for heading in passage.sections)
        return replace(passage, row=row, column=column, sections=sections)

    def _stand_bare(self, names: Collection[str], texts: Sequence[str]) -> int:
        """Give how many names stand somewhere without an article before them."""
        led = re.compile(rf"(?<!\w){self.article.pattern}")
        found = set()
        for text in texts:
            behind = {match.end() for match in led.finditer(text)}
            found |= {name for name in names if any(place not in behind for place in places(text, name))}
        return len(found)


def _all_differ(names: dict[str, str]) -> bool:
    """Tell whether all heads, given with what they are without an article, have one, and differ without it too."""
    led = all(head != name for head, name in names.items())
    return led and len(names) >= LEAST and len(set(names.values())) == len(names)


def _with_heads(passage: Passage, rows: dict[str, str], columns: dict[str, str]) -> Passage:
    """Give a cell of a table with other heads where its own have another text, anything else as it is."""
    if passage.table is None:
        return passage
    row, column = _renamed(passage.row, rows), _renamed(passage.column, columns)
    same = row is passage.row and column is passage.column
    return passage if same else replace(passage, row=row, column=column)


def _renamed(head: Head | None, names: dict[str, str]) -> Head | None:
    return head if head is None or head.text not in names else replace(head, text=names[head.text])
