"""Lines of prices under a heading, which say of each van whether it has what the heading names."""

from __future__ import annotations

import itertools
import re

from specscan.finding.kit import Kit
from specscan.finding.language.whole_words import any_word, holds
from specscan.finding.marks.legend import AVAILABILITIES, Legend
from specscan.finding.marks.prices import has_price
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.things.found import Availability
from specscan.records.text import Kind, Passage

LONGEST = 160
MOST = 0.5  # of the passages of a document
OPEN = re.compile(r"[:·•|–—]\s*$")  # the end of a line of prices that goes on below


class PriceLines:
    """The lines of prices of one document, by page and heading; ``passages`` are the numbers of those lines."""

    def __init__(self, kit: Kit, vans: VanMentions, legend: Legend, passages: list[Passage]):
        self.kit = kit
        self.vans = vans
        words = any_word(kit.lexicon.words.price_of_van)
        self.of_van = re.compile(rf"(?<!\w)(?:{words})\W{{0,3}}\d", re.IGNORECASE)
        self.prices: dict[tuple[int, tuple[str, ...]], dict[str, Availability]] = {}
        self.passages: set[int] = set()
        self.headings: set[tuple[int, str]] = set()  # lines of prices that look like headings, each with its page
        self._read(passages, legend)

    def above(self, passage: Passage) -> dict[str, Availability]:
        """Give what the lines under the nearest priced heading of a passage say, by van."""
        for depth in range(len(passage.sections), 0, -1):
            prices = self.prices.get((passage.page, passage.sections[:depth]))
            if prices:
                return prices
        return {}

    def _read(self, passages: list[Passage], legend: Legend) -> None:
        """Read lines such as "Ridgeway 20: $4,850 · Ridgeway 24 XL: included" under a heading."""
        kinds = (Kind.PROSE, Kind.LINE, Kind.BULLET, Kind.HEADING)
        lines = [p for p in passages if p.kind in kinds and len(p.text) <= LONGEST]
        for passage, *wrapped in _joined([p for p in lines if p.number not in legend.passages]):
            text = " ".join(p.text for p in (passage, *wrapped))
            priced = has_price(text)
            mentions = self.kit.lexicon.analyse(text).mentions
            if not priced and not any(m.concept.kind == "cue" and m.concept.name in AVAILABILITIES for m in mentions):
                continue
            parsed, _ = self.kit.parse("", text, self.vans)
            cues = parsed.cues(*AVAILABILITIES)
            named = any(i.vans or i.has("cue", "all_vans") for i in parsed.items)
            if not (priced and passage.sections) and not (cues and named):
                continue
            if priced and (self.of_van.search(text) or self._heads_most(passage, passages)):
                continue
            if priced and not named and passage.sections and self._names_van(passage.sections[-1]):
                continue  # what the whole van costs
            if any(i.has("value") or i.has("term") or i.has("thing") or i.has("word") for i in parsed.items):
                continue
            if any(i.quantity is not None and i.quantity.dimension not in ("money", "count") for i in parsed.items):
                continue
            found = self._price_parts(text)
            headed = passage.kind is Kind.HEADING  # a line in bold: it stands over what it prices
            sections = (*passage.sections, passage.text) if headed else passage.sections
            parted = len(found) > 1 and (priced or len({*found.values()}) > 1)  # not "Standard on every Drift"
            above = self.prices.get((passage.page, passage.sections)) if passage.number - 1 in self.passages else None
            if headed and found and above:  # "Not available on Drift 19" in bold below "Drift 21: $8,700"
                above.update(found)
                self.prices[passage.page, sections] = above
                self.headings.add((passage.page, passage.text))
                self.passages.add(passage.number)
                continue
            if found and sections and (not headed or parted):
                self.prices.setdefault((passage.page, sections), {}).update(found)
                self.passages.update(p.number for p in (passage, *wrapped))

    @staticmethod
    def _heads_most(passage: Passage, passages: list[Passage]) -> bool:
        """Tell whether the heading of a line stands over most of the document: no option, but the van for sale."""
        return sum(p.sections[: len(passage.sections)] == passage.sections for p in passages) > MOST * len(passages)

    def _names_van(self, heading: str) -> bool:
        return any(holds(heading.casefold(), name) for name in self.vans.table if len(name) > 1)

    def _price_parts(self, text: str) -> dict[str, Availability]:
        """Give for each van what a line of prices says."""
        found: dict[str, Availability] = {}
        for part in self._van_parts(text):
            analysis = self.kit.lexicon.analyse(part)
            cues = [m for m in analysis.mentions if m.concept.kind == "cue" and m.concept.name in AVAILABILITIES]
            named = frozenset().union(*(models for _, _, models in self.vans.find(part)))
            if (
                any(m.concept.kind == "cue" and m.concept.name == "all_vans" for m in analysis.mentions)
                or self.vans.single
            ):
                named = named or frozenset(next(iter(models)) for models in self.vans.table.values() if models)
            if cues:
                longest = max(cues, key=lambda m: m.last - m.first)
                said = AVAILABILITIES[longest.concept.name]
            elif has_price(part):
                said = Availability.OPTIONAL
            else:
                continue
            for van in named:
                found[van] = said
        return found

    def _van_parts(self, text: str) -> list[str]:
        """Cut a line of prices into what it says of each van, also where only the names part it: "A: $90 B: $80"."""
        starts = [a for a, b, _ in self.vans.find(text) if re.match(r"\s*:", text[b:])]
        if len(starts) >= 2:
            return [text[a:b] for a, b in itertools.pairwise([*starts, len(text)])]
        return re.split(r"\s[·•|–]\s|[;·•|]|,\s(?=[^\d])", text)


def _joined(passages: list[Passage]) -> list[list[Passage]]:
    """Give lines, one that is broken off before the price or between two vans together with those that end it."""
    found: list[list[Passage]] = []
    for passage in passages:
        last = found[-1][-1] if found else None
        if (
            last is not None
            and OPEN.search(last.text)
            and last.number + 1 == passage.number
            and (last.sections, last.kind) == (passage.sections, passage.kind)
        ):
            found[-1].append(passage)
        else:
            found.append([passage])
    return found
