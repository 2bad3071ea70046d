"""What the signs of a document mean: its own legend of marks for standard, optional, not offered."""

from __future__ import annotations

import re
from dataclasses import dataclass, field

from specscan.finding.found import Availability
from specscan.finding.lexicon import Lexicon
from specscan.finding.van_mentions import VanMentions
from specscan.records.text import Kind, Passage
from specscan.rulebook.book import General

SIGN = r"[●○◦▪▫■□◆◇❖❍★☆✓✔✗✘✕•►▶⬤◯✱✦✪▲△▼•–—-]|[\ue000-\uf8ff]"
SYMBOL = re.compile(rf"(?:^|(?<=\s)|(?<=[;,(]))({SIGN})\s*[=:]?\s*(?=[^\W\d_])")
LETTER = re.compile(r"(?:^|(?<=[\s;,(|]))([A-Z]{1,3}|[a-z]{1,2}|[–—*-]|✓|✔)\s*[=:–-]\s*(?=[^\W\d_])")
DASH_SIGNS = {"-", "–", "—", "−"}


@dataclass(slots=True)
class Meaning:
    """What a sign says: an availability for all vans, or one for each van that is named."""

    default: Availability | None = None
    by_van: dict[str, Availability] = field(default_factory=dict)

    def of(self, van: str) -> Availability | None:
        """Give what the sign says of a van."""
        return self.by_van.get(van, self.default)


class Legend:
    """The signs of one document."""

    def __init__(self, general: General):
        self.signs: dict[str, Meaning] = {}
        self.checks = set(general.checks)
        self.passages: set[int] = set()

    def meaning(self, text: str) -> Meaning | None:
        """Give what a cell or bullet sign means, or ``None`` where it is no sign of the legend."""
        plain = text.strip()
        found = self.signs.get(plain) or self.signs.get(_dash(plain))
        if found is not None:
            return found
        if plain in self.checks:
            return Meaning(Availability.STANDARD)
        return None


AVAILABILITIES = {
    "standard": Availability.STANDARD,
    "optional": Availability.OPTIONAL,
    "if_equipped": Availability.OPTIONAL,
    "not_available": Availability.NOT_AVAILABLE,
}


def read_legend(passages: list[Passage], lexicon: Lexicon, vans: VanMentions, general: General) -> Legend:
    """Read the legends of a document; a sign without a legend stays without meaning."""
    legend = Legend(general)
    for passage in passages:
        for text in _texts(passage):
            entries = _entries(text)
            meanings = [(sign, _meaning(words, lexicon, vans)) for sign, words in entries]
            sound = [(sign, meaning) for sign, meaning in meanings if meaning is not None]
            lettered = any(sign.isalpha() for sign, _ in sound)
            if not sound or (lettered and len(sound) < 2) or len(text) > 420:
                continue
            if len(sound) == 1 and not _is_bare_legend(text, sound[0][0], lexicon):
                continue
            for sign, meaning in sound:
                legend.signs[_dash(sign)] = meaning
            legend.passages.add(passage.number)
    return legend


def _dash(sign: str) -> str:
    return "–" if sign in DASH_SIGNS else sign


def _texts(passage: Passage) -> list[str]:
    if passage.kind is Kind.BULLET and passage.mark:
        return [f"{passage.mark} {passage.text}"]
    texts = [passage.text]
    if passage.row is not None and passage.row.text:
        texts = [f"{passage.row.text} {passage.text}", passage.row.text]
        if passage.column is not None and passage.column.text:
            texts.append(passage.column.text)
    return [*texts, *passage.sections[-1:]]


def _entries(text: str) -> list[tuple[str, str]]:
    """Cut a legend into signs and the words behind them."""
    places = [(m.start(1), m.end(), m.group(1)) for m in SYMBOL.finditer(text)]
    places += [(m.start(1), m.end(), m.group(1)) for m in LETTER.finditer(text)]
    places = sorted({start: (start, end, sign) for start, end, sign in places}.values())
    entries = []
    for index, (_, end, sign) in enumerate(places):
        stop = places[index + 1][0] if index + 1 < len(places) else len(text)
        entries.append((sign, text[end:stop].strip(" ;,|")))
    return entries


def _meaning(words: str, lexicon: Lexicon, vans: VanMentions) -> Meaning | None:
    """Give what the words behind a sign say; they must begin with an availability."""
    if not words or len(words) > 90:
        return None
    meaning = Meaning()
    for part in re.split(r"[,;]", words):
        analysis = lexicon.analyse(part)
        cues = [m for m in analysis.mentions if m.concept.kind == "cue" and m.concept.name in AVAILABILITIES]
        if not cues:
            continue
        lead = [m for m in cues if m.first <= 2]
        if not lead:
            return None
        longest = max(lead, key=lambda m: (m.last - m.first, m.concept.name == "not_available"))
        availability = AVAILABILITIES[longest.concept.name]
        named = [van for _, _, models in vans.find(part) for van in models]
        if named:
            for van in named:
                meaning.by_van[van] = availability
        elif meaning.default is None:
            meaning.default = availability
    if meaning.default is None and not meaning.by_van:
        return None
    return meaning


def _is_bare_legend(text: str, sign: str, lexicon: Lexicon) -> bool:
    """Tell whether a text of one sign is a legend and not an item of a list that begins with the sign."""
    rest = text.replace(sign, "", 1).strip(" =:")
    analysis = lexicon.analyse(rest)
    told = [m for m in analysis.mentions if m.concept.kind in ("thing", "value", "term")]
    return "=" in text or (not told and len(analysis.tokens) <= 10)
