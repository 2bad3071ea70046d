"""Passages and titles of a document whose headings are given without what counts them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from specscan.records.text import Passage, Title


def under_names(passage: Passage, names: Mapping[str, str]) -> Passage:
    """Give a passage under its headings as ``names`` has them, by what they are as printed."""
    if names.keys().isdisjoint(passage.sections):
        return passage
    return replace(passage, sections=tuple(names.get(text, text) for text in passage.sections))


def title_called(title: Title, names: Mapping[str, str]) -> Title:
    """Give a title as ``names`` has it."""
    return replace(title, text=names[title.text]) if title.text in names else title
