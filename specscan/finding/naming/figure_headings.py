"""Figures alone in large type above what is told of a van: "540" and "600" over two lists of labels and values.

Alone on a line a figure can be anything, a page's number or a value that catches the eye. It names a van where the
first page has sisters of its size, figures or names that begin with one, and each stands right above labels and values.
"""

from __future__ import annotations

import itertools
import re
from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace

from specscan.finding.naming.years import YEAR
from specscan.records.text import Kind, Passage, Title

FIGURE = re.compile(r"\d{2,4}|\d[.,]\d{1,2}")
FIRST_FIGURE = re.compile(rf"(?:{FIGURE.pattern})(?: [A-ZÀ-Þ\d][\w’'-]*){{0,2}}")
SAME_SIZE = 0.3  # points by which the type of sisters may differ
LEAST_LABELS = 4  # right below each of them
LEAST_SHARED = 3  # of these labels below all of them
LEAST = 2  # sisters


def with_figure_headings(
    passages: Sequence[Passage], titles: Iterable[Title], knows_label: Callable[[str], bool]
) -> tuple[Passage, ...]:
    """Give the passages with such figures as headings of what stands below them."""
    if not any(_is_figure(passage) for passage in passages):
        return tuple(passages)
    sizes = {title.text.strip(): title.size for title in titles if title.origin == "page" and title.size > 0}
    sisters = [
        (place, labels)
        for place, passage in enumerate(passages)
        if passage.text.strip() in sizes and (_is_figure(passage) or _is_named(passage))
        if len(labels := _labels_below(passages, place, knows_label)) >= LEAST_LABELS
    ]
    found = [(place, labels) for place, labels in sisters if _is_figure(passages[place])]
    if not found:
        return tuple(passages)
    size = sizes[passages[found[0][0]].text.strip()]
    alike = [row for row in sisters if abs(sizes[passages[row[0]].text.strip()] - size) <= SAME_SIZE]
    names = {passages[place].text.strip() for place, _ in alike}
    shared = set.intersection(*(labels for _, labels in alike)) if alike else set()
    if len(alike) < LEAST or len(names) < len(alike) or len(shared) < LEAST_SHARED:
        return tuple(passages)
    return _headed(passages, [place for place, _ in alike])


def _is_figure(passage: Passage) -> bool:
    text = passage.text.strip()
    plain = passage.kind in (Kind.PROSE, Kind.LINE) and passage.table is None
    return plain and FIGURE.fullmatch(text) is not None and YEAR.fullmatch(text) is None


def _is_named(passage: Passage) -> bool:
    return passage.kind is Kind.HEADING and FIRST_FIGURE.fullmatch(passage.text.strip()) is not None


def _below(passages: Sequence[Passage], place: int) -> list[Passage]:
    """Give what stands below a figure up to the next one or a heading, on its page."""
    behind = itertools.takewhile(
        lambda p: p.page == passages[place].page and p.kind is not Kind.HEADING and not _is_figure(p),
        passages[place + 1 :],
    )
    return list(behind)


def _labels_below(passages: Sequence[Passage], place: int, knows_label: Callable[[str], bool]) -> set[str]:
    """Give the labels of the table that stands right below, whose columns have no heads."""
    cells = itertools.takewhile(lambda p: p.table is not None, _below(passages, place))
    labels = {p.row.text for p in cells if p.row is not None and (p.column is None or not p.column.text)}
    return {label for label in labels if knows_label(label)}


def _headed(passages: Sequence[Passage], places: Sequence[int]) -> tuple[Passage, ...]:
    """Give the passages with some of them as headings of one rank."""
    made = list(passages)
    above = passages[places[0]].sections
    for place in places:
        shared = itertools.takewhile(
            lambda pair: pair[0] == pair[1], zip(above, passages[place].sections, strict=False)
        )
        above = tuple(one for one, _ in shared)
    for place in places:
        heading = passages[place].text.strip()
        made[place] = replace(passages[place], kind=Kind.HEADING, text=heading, sections=above)
        for number, passage in enumerate(_below(passages, place), start=place + 1):
            made[number] = replace(passage, sections=(*above, heading))
    return tuple(made)
