"""Where values begin that stand side by side with nothing between them: "under floor heated bay" of two vans."""

from __future__ import annotations

import re
from collections.abc import Iterable

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.mentions import Mention

WORD = re.compile(r"\S+")
GOES_ON = re.compile(r"[,/+&(–-]\s*$")  # before what is of the same value
JOINTS = ("number_joint", "or_joint")  # likewise: "and", "or"
ANSWERS = ("yes", "no", "none", "standard", "optional", "not_available")
FIGURED = re.compile(r"(?<!\S)(?:\d+ ?[x×] ?)?\d[\d.,]* ?[^\W\d_]{1,3} $")  # "95 Ah " before the kind of a battery
PLAIN = re.compile(r"(?<![\w-])(?<!\d )[^\W\d_]{2,}")  # no unit behind a figure


def value_starts(text: str, count: int, lexicon: Lexicon) -> list[int]:
    """Give the words, counted from 0, with which so many values of one kind begin, or nothing where that is not sure.

    The first must begin the text, each must be a known word of one vocabulary, and the text holds no unknown words.
    """
    analysis = lexicon.analyse(text)
    found = analysis.mentions
    places = {match.start(): number for number, match in enumerate(WORD.finditer(text))}
    asked = [{(m.start, m.end) for m in found if m.concept.kind == kind} for kind in ("thing", "aspect")]
    names = set.intersection(*asked)  # the "heater" of "Waste tank heater none" is no value
    answers = lexicon.cues(analysis, *ANSWERS)  # "no optional"
    kinds: dict[str, list[Mention]] = {"": answers} if answers else {}
    for mention in found:
        if mention.concept.kind == "value" and (mention.start, mention.end) not in names:
            kinds.setdefault(mention.concept.name, list(answers)).append(mention)
    behind = {cue.last for cue in lexicon.cues(analysis, *JOINTS)}
    starts: set[tuple[int, ...]] = set()
    for mentions in kinds.values():
        opening = [m for m in _widest(mentions) if m.first not in behind and not GOES_ON.search(text[: m.start])]
        begun = tuple(m.start for m in opening)
        figured = [FIGURED.search(text[:start]) for start in begun]
        if all(figured):
            begun = tuple(match.start() for match in figured if match is not None)
        if len(begun) == count and begun[0] == 0 and all(start in places for start in begun):
            starts.add(begun)
    if len(starts) != 1 or not all(map(lexicon.knows_words, PLAIN.findall(text))):
        return []
    return [places[start] for start in next(iter(starts))]


def _widest(mentions: Iterable[Mention]) -> list[Mention]:
    """Give the mentions that lie in no other, in order, those at one place once."""
    kept: list[Mention] = []
    for mention in sorted(mentions, key=lambda m: (m.start, -m.end)):
        if not kept or mention.start >= kept[-1].end:
            kept.append(mention)
    return kept
