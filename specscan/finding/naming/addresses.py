"""Lines that give a company with its address: "Marrowfen, 12 Quay Road, Ost"."""

from __future__ import annotations

import re
import unicodedata
from collections.abc import Callable, Iterable, Sequence

from specscan.finding.language.whole_words import any_of
from specscan.finding.naming.place import begins_with
from specscan.records.text import Passage

LAST_LINES = 3
BETWEEN = r"\s*[,|·•–-]\s+"
WORDS = r"([^\W\d][^,|·•\d]{3,}?)"
STREET = re.compile(rf"{BETWEEN}(?:\d{{1,4}}[a-z]? {WORDS}|{WORDS} \d{{1,4}}[a-z]?){BETWEEN}[^,|·•]*[^\W\d]{{3}}")
MOST_WORDS = 14
MOST_OF_NAME = 6  # words up to the legal form
PARTED = re.compile(r"\.?\s*[,;|·•–-]\s*")
SAID = re.compile(r"[.!?:]\s+[A-ZÀ-Þ]|\d\s?[^\W\d_]{1,3}(?![\w.])")  # a sentence or an amount
HOST = re.compile(r"(?:www\.|https?://(?:www\.)?|\w@)([a-z\d-]{3,})\.[a-z]{2,}", re.IGNORECASE)
SMALL = 3  # letters of the longest words that a name can write small: "rue de la Forge"


def hosts(own: Iterable[Passage]) -> frozenset[str]:
    """Give the hosts of the web and mail addresses in a document, in small letters: "marrowfen-vans"."""
    return frozenset(match.group(1).casefold() for passage in own for match in HOST.finditer(passage.text))


def plain_letters(name: str) -> str:
    """Give a name as web addresses write it: in small letters without accents."""
    return "".join(c for c in unicodedata.normalize("NFKD", name.casefold()) if c.isalnum())


def has_address(name: str, own: Sequence[Passage], is_filler: Callable[[str], bool]) -> bool:
    """Tell whether one of the last lines gives a name with its address, street and town.

    ``is_filler`` tells what is said of a document: "Drift, price list 3, valid from May" is no address.
    """
    texts = [passage.text for passage in own[-LAST_LINES:] if passage.table is None]
    foot = [text for text in texts if name and begins_with(text.replace(",", " ,"), name)]
    streets = [match for text in foot if (match := STREET.match(text, len(name))) is not None]
    return any(not is_filler(match.group(1) or match.group(2)) for match in streets)


class Addresses:
    """Tells lines that are an address, about no van: "Marrowfen LLC, Furnace Row, Garnet Falls" has no furnace.

    The legal form behind the company's name tells them.
    """

    def __init__(self, legal_forms: Sequence[str]):
        """``legal_forms`` are what stands behind the names of companies, "Ltd"."""
        self.form = any_of(legal_forms, whole=True)

    def is_one(self, text: str) -> bool:
        """Tell whether a text is a company with its address: names and numbers alone, no sentence and no amount."""
        form = self.form.search(text)
        if form is None or len(text.split()) > MOST_WORDS or len(text[: form.end()].split()) > MOST_OF_NAME:
            return False
        parted = PARTED.match(text, form.end())
        if parted is None or SAID.search(text[form.end() :]):
            return False
        words = re.findall(r"[^\W\d_]+", text[: form.start()] + text[parted.end() :])
        return all(word[:1].isupper() or len(word) <= SMALL for word in words)
