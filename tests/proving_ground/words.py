"""The proving ground's own phrase books: how houses of six regions name things, say values and chatter."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import yaml

FOLDER = Path(__file__).parent / "words"
LANGUAGES = {"us": "en", "uk": "en", "au": "en", "fr": "fr", "qc": "fr", "de": "de"}
ONLY_IN = re.compile(r"\s*@([a-z+]+)")


@dataclass(frozen=True, slots=True)
class Phrase:
    """Words as printed, with slots in braces, and what they state beyond their own field."""

    text: str
    beyond: tuple[tuple[str, str], ...] = ()


class Words:
    """The phrase books of one region."""

    def __init__(self, region: str):
        self.region = region
        self.language = LANGUAGES[region]
        self.book: dict[str, Any] = {}
        for name in ("", "_features", "_chrome", "_absences"):
            text = (FOLDER / f"{self.language}{name}.yaml").read_text(encoding="utf-8")
            self.book.update(yaml.safe_load(text))

    def phrases(self, *path: str) -> list[Phrase]:
        """Give the phrases at a place of the book that are said in this region; none where the place is unknown."""
        found: Any = self.book
        for step in path:
            if step not in found:
                return []
            found = found[step]
        return [phrase for text in found if (phrase := self._phrase(str(text))) is not None]

    def texts(self, *path: str) -> list[str]:
        """Give the bare words at a place of the book.

        Raises:
            KeyError: nothing is said there in this region.
        """
        found = [phrase.text for phrase in self.phrases(*path)]
        if not found:
            raise KeyError(f"{self.region}: no words at {'/'.join(path)}")
        return found

    def rows(self, *path: str) -> list[tuple[str, str]]:
        """Give pairs of label and value, of this region."""
        found: Any = self.book
        for step in path:
            found = found[step]
        pairs = [(self._phrase(str(label)), str(value)) for label, value in found]
        return [(label.text, value) for label, value in pairs if label is not None]

    def _phrase(self, text: str) -> Phrase | None:
        text, _, beyond = text.partition("=>")
        if match := ONLY_IN.search(text):
            if self.region not in match[1].split("+"):
                return None
            text = text[: match.start()] + text[match.end() :]
        if match := ONLY_IN.search(beyond):
            if self.region not in match[1].split("+"):
                return None
            beyond = beyond[: match.start()]
        facts = tuple(
            (name.strip(), value.strip())
            for name, _, value in (part.partition("=") for part in beyond.split(","))
            if name.strip()
        )
        return Phrase(text.strip(), facts)


@cache
def words_of(region: str) -> Words:
    """Give the phrase books of a region, read once."""
    return Words(region)


def capital(text: str) -> str:
    """Give words with a capital first letter."""
    return text[:1].upper() + text[1:]
