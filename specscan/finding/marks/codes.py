"""Letters that stand for words, as a document's own key says: "Place: I inside, U under the floor"."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.marks.legend import AVAILABILITIES
from specscan.records.text import Kind, Passage

# A label, a colon, then letters each with its words, parted by commas or semicolons, up to the end of the sentence.
CODE = r"[A-Z]{1,2}\d?|[a-z]"
WORDS = r"(?:\d+[ -]?V(?:olt)?\b\s*)?[^\W\d_][^,;.:()]{1,40}"
ENTRY = rf"(?:{CODE})(?:\s*[=–—:-]\s*|\s+){WORDS}"
KEY = re.compile(
    rf"(?:^|(?<=[.;|•·]\s))([^\W\d_][^.:;,]{{1,40}}?)\s*:\s+({ENTRY}(?:\s*[,;·|]\s*{ENTRY})+)(?=\s*(?:[.;|]|$))"
)
PART = re.compile(rf"({CODE})(?:\s*[=–—:-]\s*|\s+)({WORDS})")
PARTS = re.compile(r"\s*[,;·|]\s*")
MAX_BODY = 14
NAMING = ("thing", "short", "aspect", "alone", "section")


@dataclass(slots=True)
class Key:
    """One line of a key: what it is about, as names of concepts, and the words for each letter."""

    about: frozenset[str]
    words: dict[str, str]
    page: int


@dataclass(slots=True)
class Keys:
    """All keys of a document, and which characters of which passages they take up."""

    lexicon: Lexicon
    keys: list[Key] = field(default_factory=list)
    spans: dict[int, list[tuple[int, int]]] = field(default_factory=dict)

    def without_keys(self, passage: Passage) -> str:
        """Give the text of a passage with its keys blanked out, so that places stay."""
        text = passage.text
        for start, end in self.spans.get(passage.number, ()):
            text = text[:start] + " " * (end - start) + text[end:]
        return text

    def meaning(self, label: str, body: str, page: int) -> str:
        """Give the words that the letters of a cell stand for, or an empty text.

        A key that names what the label names goes first, then one of the same page; where several keys remain
        that say different things, nothing is told.
        """
        letters = body.strip()
        if not self.keys or not letters or len(letters) > MAX_BODY:
            return ""
        about = concept_names(self.lexicon, label)
        near = [key for key in self.keys if key.about & about]
        for keys in (near, [k for k in self.keys if k.page == page], self.keys):
            told = {words for key in keys if (words := _spelled(key, letters, fitting=key in near))}
            if told:
                return told.pop() if len(told) == 1 else ""
        return ""


def concept_names(lexicon: Lexicon, text: str) -> frozenset[str]:
    """Give the names of the things and aspects that a label names."""
    return frozenset(m.concept.name for m in lexicon.analyse(text).mentions if m.concept.kind in NAMING)


def _spelled(key: Key, letters: str, *, fitting: bool) -> str:
    """Give the words for a row of letters, ``W C F`` or, where the key fits the label, ``WCF``."""
    parts = [part for part in re.split(r"[\s,+&/]+", letters) if part]
    if not all(part in key.words for part in parts):
        if not fitting or len(parts) != 1 or not all(letter in key.words for letter in letters):
            return ""
        parts = list(letters)
    return ", ".join(key.words[part] for part in parts)


def read_keys(passages: list[Passage], lexicon: Lexicon) -> Keys:
    """Read the keys of letters in a document; letters for standard and option are left to the legend of marks."""
    found = Keys(lexicon)
    for passage in passages:
        if passage.kind is Kind.HEADING:
            continue
        for match in KEY.finditer(passage.text):
            about = concept_names(lexicon, match.group(1))
            entries = [PART.fullmatch(part) for part in PARTS.split(match.group(2))]
            words = {entry.group(1): entry.group(2).strip() for entry in entries if entry is not None}
            if (
                not about
                or len(words) < 2
                or len(words) < len(entries)
                or any(_is_mark(lexicon, w) for w in words.values())
            ):
                continue
            found.keys.append(Key(about, words, passage.page))
            found.spans.setdefault(passage.number, []).append(match.span())
    return found


def _is_mark(lexicon: Lexicon, words: str) -> bool:
    return bool(lexicon.cues(lexicon.analyse(words), *AVAILABILITIES))
