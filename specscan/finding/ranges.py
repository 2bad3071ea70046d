"""Headings that name a range of vans, "The Drift range", above the codes of its vans: "Model 19", "Model 21"."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import replace

from specscan.finding.full_names import CODE
from specscan.finding.lexicon import Lexicon
from specscan.finding.place import begins_with
from specscan.records.text import Head, Passage

NAME = r"[A-ZÀ-Þ][\w’'-]+(?: [A-ZÀ-Þ][\w’'-]+)?"


class RangeReader:
    """Finds the names of ranges in headings of one language."""

    def __init__(self, lexicon: Lexicon):
        words = lexicon.words
        ranges, articles = (_any(one) for one in (words.range_words, words.articles_of_names))
        self.lexicon = lexicon
        self.range = re.compile(rf"(?:(?i:{articles})\s+)?(?:(?i:{ranges})\s+({NAME})|({NAME})[ -](?i:{ranges}))")
        self.model = re.compile(rf"(?i:{_any({*words.model_labels, *words.model_words})})\s+(?=[\dA-ZÀ-Þ])")

    def name(self, heading: str) -> str:
        """Give the range that a heading names, an empty text where it names none."""
        match = self.range.fullmatch(heading.strip(" .:"))
        name = (match.group(1) or match.group(2)) if match else ""
        return "" if not name or self.lexicon.knows_label(name) else name

    def code(self, heading: str) -> str:
        """Give a heading without the word "Model" before a code."""
        return self.model.sub("", heading, count=1) if self.model.match(heading) else heading

    def with_full_heads(self, passages: Sequence[Passage], can_be_name: Callable[[str], bool]) -> tuple[Passage, ...]:
        """Give the passages with the range before mere codes over the columns of tables that stand under it."""
        above: dict[str, str] = {}
        made = []
        for passage in passages:
            head, name = passage.column, ""
            if head is not None and passage.table is not None:
                for heading in passage.sections:
                    if heading not in above:
                        above[heading] = self.name(heading)
                    name = above[heading] or name
            if head is not None and name and CODE.match(head.text) and can_be_name(head.text):
                if not begins_with(head.text, name):
                    passage = replace(passage, column=Head(f"{name} {head.text}", head.box, head.notes))
            made.append(passage)
        return tuple(made)


def _any(words: Sequence[str] | set[str]) -> str:
    return "|".join(map(re.escape, sorted(words, key=len, reverse=True))) or "(?!)"
