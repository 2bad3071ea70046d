"""Lines of prices under a heading, which say of each van whether it has what the heading names."""

from __future__ import annotations

import itertools
import re
from bisect import bisect_right
from collections.abc import Sequence

from specscan.finding.kit import Kit
from specscan.finding.language.mentions import Mention
from specscan.finding.language.whole_words import any_word, holds
from specscan.finding.marks.excepted import said_but_of_some
from specscan.finding.marks.legend import AVAILABILITIES, Legend
from specscan.finding.marks.prices import PricedItems, has_price, is_price, lists_prices
from specscan.finding.marks.scope import DESCRIBING, Scope
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.price_rows import price_rows
from specscan.finding.things.found import Availability
from specscan.finding.things.items import Item, Parsed
from specscan.records.text import Kind, Passage

LONGEST = 160
FEW_WORDS = 4
MOST = 0.5  # of the passages of a document
OPEN = re.compile(r"[:·•|–—]\s*$")  # the end of a line of prices that goes on below


class PriceLines:
    """The lines of prices of one document, by page and heading; ``passages`` are the numbers of those lines."""

    def __init__(self, kit: Kit, vans: VanMentions, legend: Legend, passages: list[Passage]):
        self.kit = kit
        self.vans = vans
        words = any_word(kit.lexicon.words.price_of_van)
        self.priced = PricedItems(kit.lexicon.words, kit.lexicon.book.general.option_price_most)
        self.of_van = re.compile(rf"(?<!\w)(?:{words})\W{{0,3}}\d", re.IGNORECASE)
        heads = (*kit.lexicon.words.column_words, *kit.lexicon.words.price_from)
        self.of_prices = {word.casefold() for word in heads}  # "Price" before a price names no package
        self.prices: dict[tuple[int, tuple[str, ...]], dict[str, Availability]] = {}
        self.first: dict[tuple[int, tuple[str, ...]], int] = {}  # the number of the first line of these prices
        self.packs: dict[int, tuple[int, dict[str, Availability]]] = {}  # what a line right above says, and its number
        self.passages: set[int] = set()
        self.headings: set[tuple[int, str]] = set()  # lines of prices that look like headings, each with its page
        self._read(passages, legend)
        for table in price_rows(passages, vans.whole, self.priced, self.of_prices, kit.lexicon):
            under = (table.page, table.sections)
            self.prices.setdefault(under, {}).update(table.told)
            self.first.setdefault(under, table.cells[0].number)
            self.passages.update(cell.number for cell in table.cells)

    def above(self, passage: Passage) -> dict[str, Availability]:
        """Give what the line above a list, or those under the nearest priced heading of a passage, say by van."""
        if passage.number in self.packs:
            return self.packs[passage.number][1]
        for depth in range(len(passage.sections), 0, -1):
            under = passage.sections[:depth]
            prices = self.prices.get((passage.page, under))
            told_before = passage.kind is Kind.PROSE and passage.number < self.first.get((passage.page, under), 0)
            if prices and not told_before:  # below items may stand what they cost, not below what a page tells
                return prices
        return {}

    def offered(self, text: str, scope: Scope) -> Scope:
        """Give what an item of a list says by its prices: for each van, or by the one at its end."""
        optional = scope.availability is Availability.OPTIONAL
        told = self.told(text) if not self.vans.single and (optional or has_price(text)) else {}
        if optional and Availability.STANDARD in told.values():  # below "Extras": "Rear mats; standard on the 21"
            named = {van for _, _, vans in self.vans.find(text) for van in vans}
            others = scope.vans or self.vans.everyone if named <= told.keys() else named
            told = dict.fromkeys(others, Availability.OPTIONAL) | told
        if len(set(told.values())) > 1:  # "Rear mats, the 19, $280; included with the 21"
            return Scope(frozenset(told), None, told, told_each=True)
        offered = not scope.by_van and (self.priced.is_offer(text) or lists_prices(text))
        return Scope(scope.vans, Availability.OPTIONAL) if offered else scope

    def behind(self, text: str) -> tuple[str, dict[str, Availability]] | None:
        """Give the thing before a colon, and what a line says behind it of vans and nothing else, ``None`` for others.

        "Floor heat: the 21 and the 24, $1,700", "Cab covers: 19, $360; 21, included".
        """
        thing, colon, rest = text.partition(": ")
        if not colon or self.vans.single or len(text) > LONGEST or not self.vans.find(rest):
            return None
        parsed, _ = self.kit.parse("", rest, self.vans)
        if any(map(_tells, parsed.items)) or parsed.cues("other_members") or self.vans.find(thing):
            return None
        if parsed.cues("except"):
            spared = said_but_of_some(parsed, self.vans.everyone)
            return (thing, spared) if spared else None
        told = self.told(rest)
        return (thing, told) if told and self.vans.named_in(rest) <= told.keys() else None

    def _read(self, passages: list[Passage], legend: Legend) -> None:
        """Read lines such as "Ridgeway 20: $4,850 · Ridgeway 24 XL: included" under a heading."""
        kinds = (Kind.PROSE, Kind.LINE, Kind.BULLET, Kind.HEADING)
        lines = [p for p in passages if p.kind in kinds and len(p.text) <= LONGEST]
        for passage, *wrapped in _joined([p for p in lines if p.number not in legend.passages]):
            text = " ".join(p.text for p in (passage, *wrapped))
            priced = has_price(text)
            if not priced and passage.sections and passage.sections[-1].rstrip().endswith("?"):
                continue  # it answers: "Can I have a heated floor?" "It is standard in the 22 and optional in the 20"
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
            title = "" if self.priced.tells_van(text) else self._title(text, parsed)
            if not priced and self.kit.lexicon.names_thing(title):
                continue  # "Heated floor. 590: not available. 640: fitted." is of no package
            contents = self._contents(wrapped[-1] if wrapped else passage, passages) if title else []
            offer = self._offer(text, parsed, len(title)) if contents else {}
            telling = any(map(_tells, parsed.items))
            if offer:
                self.packs.update((one.number, (passage.number, offer)) for one in contents)
                if not telling:
                    self.passages.update(p.number for p in (passage, *wrapped))
                continue
            if telling or (title and passage.kind is Kind.BULLET):
                continue  # "Winch for the 21, $2,900" among the items of a list is one of them
            if any(i.quantity is not None and i.quantity.dimension not in ("money", "count") for i in parsed.items):
                continue
            found = self.told(text)
            headed = passage.kind is Kind.HEADING  # a line in bold: it stands over what it prices
            sections = (*passage.sections, passage.text) if headed else passage.sections
            parted = len(found) > 1 and (priced or len({*found.values()}) > 1)  # not "Standard on every Drift"
            above = self.prices.get((passage.page, passage.sections)) if passage.number - 1 in self.passages else None
            if headed and found and above:  # "Not available on Drift 19" in bold below "Drift 21: $8,700"
                above.update(found)
                self.prices[passage.page, sections] = above
                self.first.setdefault((passage.page, sections), passage.number)
                self.headings.add((passage.page, passage.text))
                self.passages.add(passage.number)
                continue
            below = [] if headed or priced else self._second_list(passage, passages)
            if found and below:  # "Standard on the 22, not on the 19" amid lists: for the one below it
                self.packs.update((one.number, (passage.number, found)) for one in below)
                self.passages.update(p.number for p in (passage, *wrapped))
                continue
            if found and sections and (not headed or parted):
                self.prices.setdefault((passage.page, sections), {}).update(found)
                self.first.setdefault((passage.page, sections), passage.number)
                self.passages.update(p.number for p in (passage, *wrapped))

    def _title(self, text: str, parsed: Parsed) -> str:
        """Give the name of a package before the vans and prices of its line: "Winter pack 19: $990, 21: standard"."""
        told = [i.start for i in parsed.items if i.vans or i.has("cue", "all_vans", *AVAILABILITIES)]
        title = text[: min(told, default=0)].strip(" ,:;()–-|·•")
        words = set(re.findall(r"[^\W\d_]{2,}", title.casefold())) - self.of_prices
        return title if words and not has_price(title) else ""

    def _offer(self, text: str, parsed: Parsed, title: int) -> dict[str, Availability]:
        """Give for each van what a line says that tells behind its title only who has a package, and at what price."""
        rest = [item for item in parsed.items if item.start >= title]
        apart = self.vans.single or len({van for item in rest for van in item.vans or ()}) > 1
        apart = apart or self._ends_in_price_of(text)
        return self.told(text) if apart and not any(map(_tells, rest)) else {}

    def _ends_in_price_of(self, text: str) -> bool:
        """Tell whether a line ends in a van, a colon and a price: "Winter pack      19: $990"."""
        named = self.vans.find(text)
        last, colon, price = text[named[-1][1] :].partition(":") if named else ("", "", "")
        return bool(colon) and not last.strip() and is_price(price.strip(" ."))

    def _contents(self, line: Passage, passages: list[Passage]) -> list[Passage]:
        """Give what stands right below a line that offers a package: the items of a list, or one line of text."""
        found: list[Passage] = []
        below = bisect_right(passages, line.number, key=lambda passage: passage.number)
        for passage in passages[below:]:
            kinds = (Kind.BULLET,) if found else (Kind.BULLET, Kind.PROSE, Kind.LINE)
            if passage.kind not in kinds or passage.page != line.page or self._offers(passage.text):
                break
            found.append(passage)
            if passage.kind is not Kind.BULLET:
                break
        return found

    def _second_list(self, line: Passage, passages: list[Passage]) -> list[Passage]:
        """Give the items right below a line that has items above it too, under the same heading."""
        items = [p for p in passages if p.kind is Kind.BULLET and (p.page, p.sections) == (line.page, line.sections)]
        below = self._contents(line, passages)
        listed = below and below[0].kind is Kind.BULLET and below[0].sections == line.sections
        return below if listed and items[0].number < line.number else []

    def _offers(self, text: str) -> bool:
        """Tell whether a line says itself what it costs, or of which vans it speaks."""
        return has_price(text) or bool(self.vans.find(text))

    @staticmethod
    def _heads_most(passage: Passage, passages: list[Passage]) -> bool:
        """Tell whether the heading of a line stands over most of the document: no option, but the van for sale."""
        return sum(p.sections[: len(passage.sections)] == passage.sections for p in passages) > MOST * len(passages)

    def _names_van(self, heading: str) -> bool:
        return any(holds(heading.casefold(), name) for name in self.vans.table if len(name) > 1)

    def told(self, text: str) -> dict[str, Availability]:
        """Give for each van what a line with prices says of it."""
        found: dict[str, Availability] = {}
        before: frozenset[str] = frozenset()  # "the 19, $280": the price stands in a part of its own
        for part in self._van_parts(text):
            analysis = self.kit.lexicon.analyse(part)
            cues = [m for m in analysis.mentions if m.concept.kind == "cue" and m.concept.name in AVAILABILITIES]
            named = frozenset().union(*(models for _, _, models in self.vans.find(part)))
            if (
                any(m.concept.kind == "cue" and m.concept.name == "all_vans" for m in analysis.mentions)
                or self.vans.single
            ):
                named = named or frozenset(next(iter(models)) for models in self.vans.table.values() if models)
            named, before = named or (before if is_price(part) else named), named
            if cues and (in_turn := self._in_turn(cues, part)):
                found.update(in_turn)
                continue
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

    def _in_turn(self, cues: Sequence[Mention], part: str) -> dict[str, Availability]:
        """Give what is said of each of several vans where these and what is said take turns.

        "Standard in the 22 and optional in the 20".
        """
        said = {(cue.start, cue.end): AVAILABILITIES[cue.concept.name] for cue in cues}
        whole = [one for one in said if not any(o != one and o[0] <= one[0] and one[1] <= o[1] for o in said)]
        vans = {(start, end): models for start, end, models in self.vans.find(part)}
        turns = sorted([*whole, *vans])
        ahead, behind = turns[::2], turns[1::2]
        if len(vans) < 2 or len(whole) != len(vans) or {*ahead} not in ({*whole}, {*vans}):
            return {}
        pairs = zip(ahead, behind, strict=True) if ahead[0] in vans else zip(behind, ahead, strict=True)
        return {van: said[cue] for place, cue in pairs for van in vans[place]}

    def _van_parts(self, text: str) -> list[str]:
        """Cut a line of prices into what it says of each van, where names alone part it too: "A $90 B included"."""
        named = sorted((a, b) for a, b, _ in self.vans.find(text))
        starts = [a for a, b in named if re.match(r"\s*:", text[b:])]
        ends = [*(a for a, _ in named), len(text)][1:]
        behind = [text[b:end].strip(" ,;·|") for (_, b), end in zip(named, ends, strict=True)] if named else []
        if named and not text[: named[0][0]].strip() and all(is_price(said) or self._says(said) for said in behind):
            starts = [a for a, _ in named]
        if len(starts) >= 2:
            return [text[a:b] for a, b in itertools.pairwise([*starts, len(text)])]
        return re.split(r"\s[·•|–]\s|[;·•|]|,\s(?=[^\d])", text)

    def _says(self, text: str) -> bool:
        """Tell whether a text says in some words at most that a thing is included, to be had or not to be had."""
        lexicon = self.kit.lexicon
        return len(text.split()) <= FEW_WORDS and bool(lexicon.cues(lexicon.analyse(text), *AVAILABILITIES))


def _tells(item: Item) -> bool:
    figure = item.quantity is not None and not item.quantity.bare and item.quantity.dimension not in DESCRIBING
    return figure or any(item.has(kind) for kind in ("value", "term", "thing", "word"))


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
