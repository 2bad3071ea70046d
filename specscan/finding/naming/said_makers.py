"""Sentences that say whose work the vans are."""

from __future__ import annotations

import re
from collections.abc import Collection

from specscan.finding.language.whole_words import any_word
from specscan.rulebook.models import WordFile


def said_patterns(words: WordFile, trade: Collection[str]) -> tuple[re.Pattern[str], ...]:
    """Give the patterns of sentences that say whose work the vans are; ``trade`` are the words for it."""
    name = r"[A-ZÀ-Þ][\w’'-]+(?:(?: (?:&|\+))? [A-ZÀ-Þ][\w’'-]+){0,3}"
    vans = rf"(?<!\w)(?i:{any_word({*words.vans, *words.model_words})})(?!\w)"
    builds, built = any_word(words.builds), any_word(words.built_by)
    articles = any_word(words.articles_of_names)
    firm = any_word({*trade} - {word.casefold() for word in words.vans})
    of_trade, is_a, verbs = any_word(trade), any_word(words.is_a), any_word(words.cues["is_named"])
    return (
        re.compile(rf"{vans}[^.!?]{{0,60}}?(?<!\w)(?i:{built}) ({name})"),
        re.compile(rf"(?<!\w)({name}) (?:{builds})(?!\w)[^.!?]{{0,60}}?{vans}"),
        # "Marrowfen is a builder of campers", but "The Drift is a small camper", "Drift is the van for two"
        re.compile(rf"(?:^|[.!?] )(?!(?i:{articles}) )({name}) (?:{is_a}) (?:[\w-]+ ){{0,2}}(?i:{firm})(?!\w)"),
        re.compile(rf"(?:^|[.!?] )({name} (?=[A-ZÀ-Þ])(?i:{of_trade})) (?:{verbs})(?!\w)"),
    )
