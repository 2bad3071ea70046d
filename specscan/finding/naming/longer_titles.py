"""The only van of a document whose title names it in part: its trim, edition or code stands in a line or sentence."""

from __future__ import annotations

import re
from collections.abc import Callable

from specscan.finding.language.whole_words import count, holds
from specscan.finding.naming.names import NameReader
from specscan.finding.naming.place import Names, begins_with, without_start
from specscan.records.text import Document, Passage

FIRST_LINES = 14
LONGEST_ALONE = 40  # letters of a line that can be a name
NAMED_LINE = re.compile(
    r"(?:[A-ZÀ-Þ][\w’'-]*|\d{1,3}(?: ?[A-Z]{1,3})?)(?: [A-ZÀ-Þ\d][\w’'.-]*){0,2}"
)  # "Alpine Edition", "21 FX"
LETTERED_CODE = r"(?=\w*\d)(?=[\d-]*[A-Z])(?!\d[xX]\d)[A-Z\d][A-Z\d-]+"  # "22FB", "P22-LB", no "4x4"


class LongerTitles:
    """Finds the whole name in documents of one language."""

    def __init__(self, names: NameReader, can_be_name: Callable[[str], bool]):
        self.names = names
        self.can_be_name = can_be_name

    def read(self, names: Names, document: Document, own: list[Passage]) -> str:
        """Give the title with the trim that one of the first lines alone sets behind it: "Drift Solo"."""
        if names.used:
            return names.title
        if said := self._said_longer(names, own):
            return said
        if re.search(r"\d", names.title):
            return names.title
        lines = {p.text.strip(" .") for p in own[:FIRST_LINES] if p.table is None and p.page in (0, 1)}
        lines |= {t.text.strip(" .") for t in document.titles if t.page in (0, 1) and t.size > 0}
        longer = [line for line in lines if begins_with(line, names.title) and len(line) > len(names.title)]
        longer = [line for line in longer if self.names.clean(line, names.maker) == line]
        longer = [line for line in longer if not begins_with(without_start(line, names.title), names.title)]
        rest = without_start(longer[0], names.title) if len(longer) == 1 else ""
        named = re.fullmatch(r"[A-ZÀ-Þ\d][\w’'.-]*(?: [A-ZÀ-Þ\d][\w’'.-]*)?", rest) is not None
        if not named or self.names.is_filler(rest):
            return names.title
        return longer[0] if self.can_be_name(longer[0]) and not self.names.is_label(rest) else names.title

    def _said_longer(self, names: Names, own: list[Passage]) -> str:
        """Give the title with the line below it, or with the one code, that the text too sets behind it.

        "Drift 6" above "Alpine Edition" where a sentence says "the Drift 6 Alpine Edition"; "Drift" where it says
        "Drift 22FB" and "the 22FB".
        """
        said = [p.text for p in own if p.table is None and len(p.text) > LONGEST_ALONE]
        lines = [p.text.strip(" .") for p in own[:FIRST_LINES] if p.table is None and NAMED_LINE.fullmatch(p.text)]
        more = {line for line in lines if any(holds(text, f"{names.title} {line}") for text in said)}
        more = {line for line in more if not self.names.names_nothing(line, names.maker) and self.can_be_name(line)}
        if not more and not re.search(r"\d", names.title):
            behind = re.compile(rf"(?<!\w){re.escape(names.title)} ({LETTERED_CODE})(?!\w)")
            text = "\n".join(p.text for p in own)
            more = {code for code in behind.findall(text) if not self.names.lexicon.knows_label(code)}
            more = more if all(count(text, code) > 1 for code in more) else set()
        return f"{names.title} {more.pop()}" if len(more) == 1 else ""
