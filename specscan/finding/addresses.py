"""Lines that give a company and where it is: "Marrowfen LLC, Furnace Row, Garnet Falls" is about no furnace."""

from __future__ import annotations

import re
from collections.abc import Sequence

from specscan.finding.language.whole_words import any_of

MOST_WORDS = 14
MOST_OF_NAME = 6  # words up to the legal form
PARTED = re.compile(r"\.?\s*[,;|·•–-]\s*")
SAID = re.compile(r"[.!?:]\s+[A-ZÀ-Þ]|\d\s?[^\W\d_]{1,3}(?![\w.])")  # a sentence or an amount
SMALL = 3  # letters of the longest words that a name can write small: "rue de la Forge"


class Addresses:
    """Tells such lines by the legal form behind the company's name."""

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
