"""Names of makers and models, made alike for comparison."""

from __future__ import annotations

import re
import unicodedata


def plain(text: str) -> str:
    """Give a name case-folded, without accents' composition, punctuation and spacing, for comparison."""
    return re.sub(r"[\W_]+", "", unicodedata.normalize("NFKC", text).casefold())
