"""Names of companies with their legal form behind them: "Marrowfen Ltd"."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Collection, Iterable, Sequence

from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.place import Place
from specscan.records.text import Kind, Passage
from specscan.rulebook.models import WordFile

SHORT_FORM = re.compile(r"[A-Z]{2}|Oy")  # of companies, which codes and states can be too
CODED = re.compile(r"(.+) ([A-Z]{2,3})")  # a name and the letters of a trim: "Drift SE"


class LegalNames:
    """Tells them in texts of one language."""

    def __init__(self, words: WordFile, trade: Iterable[str], joints: Iterable[str], legal_forms: Sequence[str]):
        """``trade`` are words for what companies do, ``joints`` the small words between those of a name."""
        word = r"[A-ZÀ-ÖØ-Þ][\w'’&-]*"
        between = rf"(?:[ \u00a0](?:{any_word(joints)})){{1,2}}(?:[ \u00a0]|(?<=[dl])['’])"  # "of", "de la", "d’"
        said = rf"(?=[A-ZÀ-ÖØ-Þ])(?i:{any_word(trade)}){between}{word}"
        house = rf"(?=[A-ZÀ-ÖØ-Þ])(?i:{any_word(words.builder_words)}){between}{word}"  # "Makers of the Fen"
        name = rf"(?:{house}|{word})(?:[ \u00a0](?:&|and|et|und|{said}|{word})){{0,4}}"
        form = any_word(legal_forms)
        dotted = any_word(one for one in legal_forms if one.endswith("."))
        short = any_word(one for one in legal_forms if SHORT_FORM.fullmatch(one))
        # Of "Marrowfen Van Company Ltd." the last form alone is no part of the name, of "Marrowfen Van Co. Ltd" both.
        # "NV 540" is a van, "Adelaide, SA" a town, "S and SE" are two trims.
        self.pattern = re.compile(
            rf"({name}?)(?<! and)(?<! et)(?<! und)"
            rf"(?:,?[ \u00a0](?!(?:{short})(?!\w))|[ \u00a0](?=(?:{short})(?!\w|[ \u00a0-]?\d)))"
            rf"(?:(?:{dotted}),?[ \u00a0](?=(?:{form})(?!\w)))?"
            rf"(?:{form})(?!\w|\s*=)(?!,?[ \u00a0](?:{form})(?!\w))"  # no sign of a legend: "S = Serie SA = Option"
        )

    def found(self, text: str, trims: Collection[str]) -> list[re.Match[str]]:
        """Give those of a text; what is one of ``trims`` is no legal form there."""
        matches = self.pattern.finditer(text)
        return [one for one in matches if text[one.end(1) : one.end()].strip(" \u00a0,") not in trims]


def trim_codes(heads: Iterable[str], own: Iterable[Passage]) -> set[str]:
    """Give the words of heads that name vans, and letters that headings set behind one name in turn.

    "SE" and "SA" are trims beside "HT", and no legal forms.
    """
    coded: dict[str, set[str]] = defaultdict(set)
    for passage in own:
        match = CODED.fullmatch(passage.text.strip()) if passage.kind is Kind.HEADING else None
        if match is not None:
            coded[match.group(1).casefold()].add(match.group(2))
    turns = {code for codes in coded.values() if len(codes) > 1 for code in codes}
    return turns | {word for head in heads for word in head.split()}


def without_letter(name: str, printed: Sequence[Place]) -> str:
    """Give a company's name without the letter that stood before it on its line, "rev. B   Marrowfen Vans Inc."."""
    letter, _, rest = name.partition(" ")
    if len(letter) > 1 or not rest:
        return name
    alone = re.compile(rf"(?<!\w)(?<!{re.escape(letter)} ){re.escape(rest)}(?!\w)")
    return rest if any(alone.search(place.text) for place in printed) else name
