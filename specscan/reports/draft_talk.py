"""Loose talk of reviews, "carries 30 gallons", and how a text goes on about a van: ``rules/drafts.yaml``."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace

from pydantic import Field

from specscan.records.errors import RuleError
from specscan.records.text import Document
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import Entry
from specscan.rulebook.patterns import checked_pattern
from specscan.rulebook.yaml_source import read_yaml


class Loose(Entry):
    """A way of talking, as a pattern, and what is meant by it."""

    says: str
    means: str


class Drafts(Entry):
    """The file ``rules/drafts.yaml``."""

    loose: list[Loose]
    goes_on: list[str] = Field(min_length=1)
    names: str


Loosely = Sequence[tuple[re.Pattern[str], str]]


@dataclass(frozen=True, slots=True)
class Talk:
    """Patterns of loose talk with what they mean, of how a sentence goes on about a van, and of names."""

    loose: Loosely
    goes_on: re.Pattern[str]
    names: re.Pattern[str]

    def carries_on(self, sentence: str) -> bool:
        """Tell whether a sentence that names no known van can only be about the one named before it."""
        plain = sentence.strip(" -*•\t")
        return bool(self.goes_on.match(plain)) or not self.names.search(plain)


def load_talk(book: Rulebook) -> Talk:
    """Give what the rules say about drafts.

    Raises:
        RuleError: the file is missing or wrong, or a pattern is none; with file and line.
    """
    source = read_yaml(book.folder / "drafts.yaml")
    checked = source.validated(Drafts)
    found: list[tuple[re.Pattern[str], str]] = []
    names = re.compile(r"(?!)")
    for number, one in enumerate(checked.loose if checked is not None else []):
        try:
            pattern = checked_pattern(one.says, re.IGNORECASE)
            re.sub(pattern, one.means, "")
            found.append((pattern, one.means))
        except (re.error, IndexError) as error:
            source.mistakes.append(source.mistake(("loose", number), f"no pattern: {error}"))
    if checked is not None:
        try:
            names = checked_pattern(checked.names)
        except re.error as error:
            source.mistakes.append(source.mistake(("names",), f"no pattern: {error}"))
    if source.mistakes or checked is None:
        raise RuleError(source.mistakes)
    begins = "|".join(re.escape(words) for words in sorted(checked.goes_on, key=len, reverse=True))
    return Talk(found, re.compile(rf"(?:{begins})\b", re.IGNORECASE), names)


def read_loose(document: Document, talk: Loosely) -> tuple[Document, dict[str, str]]:
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
