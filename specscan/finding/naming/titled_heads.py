"""Heads of columns that the title of the document lists: vans with names of their own, and no trims of a range."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from specscan.finding.language.whole_words import holds
from specscan.finding.naming.full_names import is_series_word
from specscan.finding.naming.place import begins_with
from specscan.finding.naming.title_texts import LIST_JOINT
from specscan.records.text import Document, Kind, Passage

FIRST_LINES = 14
MIN_ALIKE = 2
LONGEST = 80  # letters of a line that lists the heads behind their range
JOINED = rf"{LIST_JOINT.pattern}|\s*[/+]\s*|\s+[–—-]\s+|\s+"
LISTED = re.compile(rf"\.\s+|{LIST_JOINT.pattern}")


def are_titled(heads: Sequence[str], series: str, document: Document, own: Sequence[Passage]) -> bool:
    """Tell whether a line of the first page lists heads, larger than what names a range: "Alder. Gorse." are vans.

    So do several lines of one size that are heads each. What is larger than its range is no list of trims.
    """
    named = {head.casefold() for head in heads if is_series_word(head.split()[0])}
    first = sorted((t for t in document.titles if t.page in (0, 1) and t.size > 0), key=lambda title: title.size)
    stacked = {title.text.strip(" .").casefold(): title.size for title in first}  # the largest of the same text
    alike = [text for text in stacked if text in named and stacked[text] == stacked.get(series.casefold())]
    if len(alike) >= MIN_ALIKE and not any(begins_with(a, b) for a in alike for b in alike if a != b):
        return True
    largest = {True: 0.0, False: 0.0}  # of the lines that list heads, and of those that hold the range
    broken = [p.text for p in own[:FIRST_LINES] if p.kind is Kind.HEADING]  # "Nocturne" over "& Aubade"
    for title in document.titles:
        whole = next((text for text in broken if title.text in text), title.text)
        parts = LISTED.split(whole.strip(" ."))
        lists = len(parts) >= MIN_ALIKE and named.issuperset(map(str.casefold, parts)) or _are_all_of(named, whole)
        if title.page in (0, 1) and (lists or series and holds(title.text, series)):
            largest[lists] = max(largest[lists], title.size)
    return largest[True] > largest[False]


def listed_behind(heads: Collection[str], own: Sequence[Passage]) -> list[tuple[str, Passage]]:
    """Give what stands before all heads in the first lines that list them: "Drift 21" of "Drift 21 LT • ST • PX"."""
    if len(heads) < MIN_ALIKE:
        return []
    head = "|".join(re.escape(head) for head in sorted(heads, key=len, reverse=True))
    lines = [p for p in own[:FIRST_LINES] if sum(one in p.text for one in heads) >= MIN_ALIKE]
    if not lines:
        return []
    pattern = re.compile(rf"(?P<base>.+?)[\s:–—-]+(?P<listed>(?:{head})(?:(?:{JOINED})(?:{head}))+)\W*(?:\d{{4}})?")
    found = []
    for passage in lines:
        match = pattern.fullmatch(passage.text) if passage.table is None and len(passage.text) <= LONGEST else None
        if match is None:
            continue
        listed = re.findall(rf"(?<![\w-])(?:{head})(?![\w-])", match.group("listed"))
        if sorted(listed) == sorted(heads):
            found.append((match.group("base"), passage))
    return found


def ends_in_range(title: str, headings: Collection[str], heads: Collection[str]) -> tuple[str, str]:
    """Give the company and the range of a title that ends in the word which headings have before all heads.

    "Marrowfen Drift" above the headings "Drift Gorse" and "Drift Alder"; two empty texts if it does not.
    """
    house, _, behind = title.rpartition(" ")
    named = {heading.strip(" :").casefold() for heading in headings}
    told = len(heads) >= MIN_ALIKE and all(f"{behind} {head}".casefold() in named for head in heads)
    return (house, behind) if house and told else ("", "")


def _are_all_of(heads: Collection[str], text: str) -> bool:
    """Tell whether a text is nothing but all of some heads, which spaces part: "Alder Gorse Larch"."""
    rest = f" {text.casefold()} "
    for head in sorted(heads, key=len, reverse=True):
        if f" {head} " not in rest:
            return False
        rest = rest.replace(f" {head} ", " ", 1)
    return len(heads) >= MIN_ALIKE and not rest.strip()
