"""Heads of columns that go on with what is said of their vans: "600 DB double bed", "Drift for the whole crew".

Other places of the document print the name alone: a title line, another table, the text.
"""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Callable, Collection, Sequence
from dataclasses import replace

from specscan.finding.language.whole_words import any_word, holds
from specscan.finding.naming.name_forms import are_mostly_names
from specscan.records.text import Head, Passage

MIN_REMARKED = 2  # heads of one table


class HeadRemarks:
    """Takes such remarks from the heads of documents of one language."""

    def __init__(self, joints: Collection[str], can_be_name: Callable[[str], bool]):
        """``joints`` are small words inside of names and lists of them: "and", "of"."""
        self.joints = {joint.casefold() for joint in joints}
        self.can_be_name = can_be_name

    def without(self, passages: Sequence[Passage], titles: Sequence[str]) -> tuple[Passage, ...]:
        """Give the passages without remarks in the heads of columns, or rows; ``titles`` are lines that stand out."""
        return self._without_in(self._without_in(tuple(passages), titles, "column"), titles, "row")

    def _without_in(self, passages: tuple[Passage, ...], titles: Sequence[str], side: str) -> tuple[Passage, ...]:
        heads: dict[int, dict[str, None]] = defaultdict(dict)
        for passage in passages:
            head: Head | None = getattr(passage, side)
            if passage.table is not None and head is not None and head.text.strip():
                heads[passage.table][head.text] = None
        plain = {table: found for table, texts in heads.items() if (found := self._named(list(texts)))}
        if side == "row":  # "Fuel at high output" is a label
            plain = {t: found for t, found in plain.items() if all(re.search(r"\d", name) for name in found.values())}
        if not plain:
            return passages
        texts = [passage.text for passage in passages]
        plain = {table: found for table, found in plain.items() if _are_told(found, heads, [*texts, *titles])}
        made = []
        for passage in passages:
            head = getattr(passage, side)
            if passage.table in plain and head is not None:
                told = plain[passage.table].get(head.text, head.text)
                head = replace(head, text=told)
                passage = replace(passage, column=head) if side == "column" else replace(passage, row=head)
            made.append(passage)
        return tuple(made)

    def _named(self, heads: Sequence[str]) -> dict[str, str]:
        """Give for the heads of a table the names with which they begin, nothing where they do not all have one."""
        names = {head: self._before_remark(head) for head in heads}
        remarked = [head for head, name in names.items() if name != head]
        apart = len({name.casefold() for name in names.values()}) == len(heads)
        if len(remarked) < MIN_REMARKED or not apart or not are_mostly_names(names.values(), self.can_be_name):
            return {}
        return {head: names[head] for head in remarked}

    def _before_remark(self, head: str) -> str:
        words = head.split()
        for place, word in enumerate(words[1:], start=1):
            if word.replace("-", "").rstrip(",").isalpha() and word.islower() and len(word) > 1:
                return head if word in self.joints else " ".join(words[:place]).rstrip(" ,:–—-")
        return head


def _are_told(names: dict[str, str], columns: dict[int, dict[str, None]], texts: Sequence[str]) -> bool:
    """Tell whether most of some names stand elsewhere without what follows in their heads, and these stand nowhere."""
    whole = [[head for head in names if holds(text, head)] for text in texts]
    if any(len(some) == 1 for some in whole):
        return False  # but a line with two or more is the row of the heads itself
    heads = {head for table in columns.values() for head in table} - names.keys()
    texts = [text for text, some in zip(texts, whole, strict=True) if not some]
    told = 0
    for head, name in names.items():
        remark = head[len(name) :].split()[0]
        alone = re.compile(rf"(?<!\w){re.escape(name)}(?!\w)(?!\s+(?:{any_word([remark])})(?!\w))")
        told += any(alone.search(text) for text in (*texts, *heads))
    return 2 * told >= len(names)
