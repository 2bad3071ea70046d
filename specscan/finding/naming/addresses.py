"""Companies by the last lines of a document: "Marrowfen, 12 Quay Road, Ost", "marrowfen ltd · quay road 12"."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Sequence

from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.place import begins_with
from specscan.records.text import Passage

LAST_LINES = 3
BETWEEN = r"\s*[,|·•–-]\s+"
WORDS = r"([^\W\d][^,|·•\d]{3,}?)"
STREET = re.compile(rf"{BETWEEN}(?:\d{{1,4}}[a-z]? {WORDS}|{WORDS} \d{{1,4}}[a-z]?){BETWEEN}[^,|·•]*[^\W\d]{{3}}")


def has_address(name: str, own: Sequence[Passage], is_filler: Callable[[str], bool]) -> bool:
    """Tell whether one of the last lines gives a name with its address, street and town.

    ``is_filler`` tells what is said of a document: "Drift, price list 3, valid from May" is no address.
    """
    texts = [passage.text for passage in own[-LAST_LINES:] if passage.table is None]
    foot = [text for text in texts if name and begins_with(text.replace(",", " ,"), name)]
    streets = [match for text in foot if (match := STREET.match(text, len(name))) is not None]
    return any(not is_filler(match.group(1) or match.group(2)) for match in streets)


def small_company(own: Sequence[Passage], legal_forms: Iterable[str]) -> tuple[str, Passage] | None:
    """Give the company that writes itself in small letters before its legal form, and where another line begins."""
    form = any_word({one.casefold() for one in legal_forms})
    pattern = re.compile(rf"([^\W\d_][\w’'-]*(?: [^\W\d_][\w’'-]*)?),? (?:{form})(?={BETWEEN}|$)")
    for passage in own[-LAST_LINES:]:
        match = pattern.match(passage.text)
        if match is not None and match.group(1).islower():
            others = (one for one in own if one is not passage and one.table is None)
            again = next((one for one in others if begins_with(one.text.strip(" ."), match.group(1))), None)
            return (match.group(1), again) if again is not None else None
    return None
