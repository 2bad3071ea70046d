"""Loose talk of reviews, "carries 30 gallons", "heated tanks", and what it is taken for: ``rules/drafts.yaml``."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from specscan.records.errors import RuleError
from specscan.records.text import Document
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import Entry
from specscan.rulebook.yaml_source import read_yaml


class Loose(Entry):
    """A way of talking, as a pattern, and what is meant by it."""

    says: str
    means: str


class Drafts(Entry):
    """The file ``rules/drafts.yaml``."""

    loose: list[Loose]


Talk = Sequence[tuple[re.Pattern[str], str]]


def load_loose(book: Rulebook) -> list[tuple[re.Pattern[str], str]]:
    """Give the patterns of loose talk and what they mean.

    Raises:
        RuleError: the file is missing or wrong, or a pattern is none; with file and line.
    """
    source = read_yaml(book.folder / "drafts.yaml")
    checked = source.validated(Drafts)
    found = []
    for number, one in enumerate(checked.loose if checked is not None else []):
        try:
            pattern = re.compile(one.says, re.IGNORECASE)
            re.sub(pattern, one.means, "")
            found.append((pattern, one.means))
        except (re.error, IndexError) as error:
            source.mistakes.append(source.mistake(("loose", number), f"no pattern: {error}"))
    if source.mistakes:
        raise RuleError(source.mistakes)
    return found


def read_loose(document: Document, talk: Talk) -> tuple[Document, dict[str, str]]:
    """Give a document with loose talk put exactly, and for what was put in the words that stood there."""
    said: dict[str, str] = {}

    def put(match: re.Match[str], means: str) -> str:
        exact = match.expand(means)
        said[exact] = match.group()
        return exact

    passages = []
    for passage in document.passages:
        text = passage.text
        for pattern, means in talk:
            text = pattern.sub(lambda match, means=means: put(match, means), text)  # type: ignore[misc]
        passages.append(passage if text == passage.text else replace(passage, text=text, pieces=()))
    return replace(document, passages=tuple(passages)), said
