"""Letters: who wrote to whom and when names no van, the line that says what a letter is about may."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word, holds, lowered
from specscan.finding.naming.name_forms import SPOKEN_NAME
from specscan.finding.naming.place import Place
from specscan.records.text import Passage

FIRST = 20  # passages in which a letter is opened
LONGEST = 60  # letters of a line that opens or ends one
LONGEST_ABOUT = 120  # of one that says what it is about
SIGNED = 6  # passages below the end in which somebody signs
ABOUT_WEIGHT = 4
NAMES = re.compile(SPOKEN_NAME)
PARTS = re.compile(r"[,;:?!()|•·]+|\s[–—-]+\s|\s+/\s+")
STREET = re.compile(r"(\d{1,4}[a-z]?),? [^\W\d_][^\d,]*|[^\W\d_][^\d,]* \d{1,4} ?[a-z]?")  # "2 Quay Road", "Kaiweg 2"
TOWN = re.compile(r"(?:[A-Z]{1,2}-)?(\d{4,5} )?[^\W\d_][^\d,:]*(?:,? [A-Z][A-Z\d]{1,3} \d[A-Z]{2})?")
NUMBERED = re.compile(r"(?=\S*\d{3})(?=\S*[^\W\d_])\S+|\d{4,}")  # "TR-2210": of a quote or an order


@dataclass(frozen=True, slots=True)
class Letter:
    """What of a document is the frame of a letter; empty where it is none."""

    opened: int = -1  # the number of the passage that opens it
    framed: frozenset[int] = frozenset()  # those of sender, recipient, date, salutation and signature
    lines: frozenset[str] = frozenset()  # the texts of these, as one-line texts in small letters
    about: tuple[tuple[str, Passage], ...] = ()  # what it is about, without the label
    body: str = field(default="", repr=False)  # what is written below the salutation, in small letters

    def frames(self, text: str, place: Place) -> bool:
        """Tell whether a line is part of the frame."""
        number = place.passage.number if place.passage is not None else None
        return number in self.framed or _plain(text) in self.lines

    def says(self, name: str, place: Place) -> bool:
        """Tell whether a name is one that what is written speaks of, where it stands above, or not on the page.

        What the letter is about by a name with a figure need not be named again: "your Drift 21" is "the van" below.
        """
        above = place.passage is None or place.passage.number <= self.opened
        if any(place.passage is passage for _, passage in self.about) and any(map(str.isdigit, name)):
            return True
        words = lowered(name).split()
        coded = [n for n, word in enumerate(words) if any(map(str.isdigit, word))]
        # "our Drift 21" below "For sale: Marrowfen Drift 21"
        short = (" ".join(words[start:]) for start in range(1, coded[0] if coded else 0))
        return not self.lines or not above or any(holds(self.body, one) for one in (lowered(name), *short))

    def names(self) -> Iterator[tuple[int, str, Place]]:
        """Give the names in what the letter is about, each with its weight and place."""
        for text, passage in self.about:
            for part in PARTS.split(text):
                for match in NAMES.finditer(part):
                    words = [word for word in match.group().split() if not NUMBERED.fullmatch(word)]
                    if words:
                        yield ABOUT_WEIGHT, " ".join(words), Place(passage, passage.page, match.group())


class LetterReader:
    """Reads the frames of letters of one language."""

    def __init__(self, lexicon: Lexicon):
        words = lexicon.words
        self.opens = re.compile(rf"(?:{any_word(words.salutations)})(?!\w)", re.IGNORECASE)
        self.ends = re.compile(rf"(?:{any_word(words.closings)})(?!\w)", re.IGNORECASE)
        labels = any_word((*words.sender_labels, *words.recipient_labels))
        self.framing = re.compile(rf"(?:{labels})\s*:", re.IGNORECASE)
        months = any_word(words.months)
        day = rf"\d{{1,2}}\w{{0,2}}\.? (?:{months})|(?:{months}) \d{{1,2}}"
        self.dated = re.compile(rf"\b(?:{day})(?!\w)", re.IGNORECASE)
        self.subject = re.compile(rf"(?:(?:{any_word(words.subject_labels)})\s*[:.]\s*)+", re.IGNORECASE)

    def read(self, own: Sequence[Passage]) -> Letter:
        """Give the frame of a letter, an empty one for a document that nobody addressed to anybody."""
        opened = next((n for n, passage in enumerate(own[:FIRST]) if self._opens(_line(passage))), None)
        if opened is None:
            return Letter()
        about, framed = [], [own[opened]]
        for passage in own[: opened + 3]:
            line = _line(passage)
            match = self.subject.match(line)
            if match is not None and len(line) <= LONGEST_ABOUT:
                about.append((line[match.end() :], passage))
                framed.append(passage)  # taken apart, it names vans
            elif self.framing.match(line) and passage.number < own[opened].number:
                framed.append(passage)
        framed += self._address(own[:opened])
        ending = next((n for n in range(len(own) - 1, opened, -1) if self._ends(_line(own[n]))), None)
        if ending is not None:
            framed += own[ending : ending + SIGNED]
        written = [p for p in own[opened + 1 :] if p not in framed]
        return Letter(
            own[opened].number,
            frozenset(passage.number for passage in framed),
            frozenset(_plain(_line(passage)) for passage in framed),
            tuple(about),
            lowered("\n".join(_line(passage) for passage in written)),
        )

    def _address(self, above: Sequence[Passage]) -> list[Passage]:
        """Give the lines above the salutation that are street and town of who writes or reads, where a date is told.

        A number behind the street may be that of a van: there the town has its own too, "Kaiweg 2" above "24123 Ost".
        """
        lines = [_line(passage) for passage in above]
        if not any(len(line) <= LONGEST and self.dated.search(line) for line in lines):
            return []
        found: list[Passage] = []
        for place, (line, below) in enumerate(itertools.pairwise(lines)):
            street, town = STREET.fullmatch(line), TOWN.fullmatch(below)
            short = max(len(line), len(below)) <= LONGEST and not self.dated.search(line)
            if short and street is not None and town is not None and (street.group(1) or town.group(1)):
                found += above[place : place + 2]
        return found

    def _opens(self, line: str) -> bool:
        """Tell whether a line is a salutation: "Dear Pauline," and not "Hello winter"."""
        return len(line) <= LONGEST and line.endswith((",", "!", ":")) and self.opens.match(line) is not None

    def _ends(self, line: str) -> bool:
        """Tell whether a line ends a letter, with or without who signs behind it: "Kind regards", "Cheers, Ann"."""
        match = self.ends.match(line) if len(line) <= LONGEST else None
        return match is not None and (match.end() == len(line) or line[match.end()] in ",.!")


def _line(passage: Passage) -> str:
    """Give a passage with the label beside it: what stands behind "From:" may have been read as a cell."""
    label = passage.row.text if passage.row is not None else ""
    return f"{label} {passage.text}".strip()


def _plain(text: str) -> str:
    return " ".join(text.split()).casefold()
