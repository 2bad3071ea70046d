"""Vans that a document describes one after another, each under a heading of its own: "Base from £54,950", "Touring"."""

from __future__ import annotations

import itertools
import re
from collections import Counter
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word, holds
from specscan.finding.naming.alike_lists import differ
from specscan.finding.naming.full_names import PRICE
from specscan.finding.naming.name_forms import article
from specscan.finding.naming.place import PARTED, Place, bears, begins_with, of_range, without_start
from specscan.finding.naming.ranges import RangeReader
from specscan.finding.naming.roster import MOST_LONE
from specscan.records.facts import Fact
from specscan.records.text import Kind, Passage

NAME = re.compile(r"[A-ZÀ-Þ\d][\w’'.-]*(?:(?: &| \+)? [A-ZÀ-Þ\d][\w’'.-]*){0,4}")
CODED = re.compile(r"[A-ZÀ-Þ][\w’'-]+ \d[\w.-]*(?: [A-ZÀ-Þ\d][\w-]*)?")
CODE_BEHIND = r"(?=\w*\d)[\w.-]+(?: [A-ZÀ-Þ\d][\w’'.-]*){0,2}"  # behind the name of a range
SMALL = re.compile(r"[^\W\d_]{3,}(?: [^\W\d_]{2,}){0,2}")
MIN_THINGS = 4  # different things that are spoken of under such a heading
MIN_SHARED = 3  # of them under a sister's heading too
SAME_THINGS = 6  # told under each of several headings, which then need be named nowhere else
MAX_HEADING = 80
LEAD = re.compile(r"([A-ZÀ-Þ\d][^:–—]{1,39}?)(?::|\s[–—-])\s")  # what a paragraph begins with
ORDINAL = re.compile(r"^\s*\d{1,2}[.)]\s+(?=[A-ZÀ-Þ])")  # "2. Drift 21" is the second of some vans
NUMBERED = re.compile(r"(\d{1,2})\s+(?=[A-ZÀ-Þ][^\W\d_])")  # "5 Heating"
NUMBERED_BELOW = re.compile(r"(\d{1,2})\.\d{1,2}\s+[A-ZÀ-Þ]")  # "5.1 The furnace"
LEAST_NUMBERED = 3


@dataclass(slots=True)
class Chapter:
    """The heading above the description of a van, the name in it, the passages under it and the things they tell."""

    name: str
    heading: Passage
    priced: bool
    series: str = ""  # the range that a heading above it names
    passages: list[Passage] = field(default_factory=list)
    things: set[str] = field(default_factory=set)

    @property
    def full_name(self) -> str:
        """Give the name with that of the range above it."""
        return of_range(self.series, self.name)

    @property
    def place(self) -> Place:
        """Give where the name is printed."""
        return Place(self.heading, self.heading.page, self.name)

    @property
    def printed(self) -> set[str]:
        """Give what its van is called: the name, and the whole heading."""
        return {self.name, self.heading.text} if self.heading.kind is Kind.HEADING else {self.name}

    @property
    def numbers(self) -> frozenset[int]:
        """Give the numbers of the passages under the heading."""
        return frozenset(passage.number for passage in self.passages)


class ChapterReader:
    """Finds the chapters in documents of one language."""

    def __init__(self, lexicon: Lexicon):
        self.lexicon = lexicon
        self.ranges = RangeReader(lexicon)
        self.article = re.compile(article(lexicon.words.articles_of_names))
        self.price = _before(lexicon.words.price_from, r"(?!\w)")
        self.price_word = _before(lexicon.words.price_from, "$")
        self.predicates = any_word(lexicon.words.predicates)
        self.all_of = _before(lexicon.words.all_of, r"\s+")
        words = lexicon.words
        self.kinds = {word.casefold() for word in (*words.model_labels, *words.model_words)} - {*words.range_words}

    def read(
        self,
        own: list[Passage],
        can_be_name: Callable[[str], bool],
        series: str = "",
        clean: Callable[[str], str] = lambda heading: heading,
        maker: str = "",
        labelled: Collection[str] = (),
    ) -> list[Chapter]:
        """Give the chapters of two or more sister vans; none where the headings part one van's description.

        The headings stand side by side, beneath each much the same things are told, and running text or tables use
        each name too, or the heading gives a price. ``clean`` takes common words from a heading: "The Drift 21 in
        numbers"; that of the ``maker`` may stand before some of the names, "Marrowfen Drift 21" beside "Alder 23".
        ``labelled`` are headings that are known to be names.
        """
        sisters: dict[tuple[str, ...], list[Chapter]] = {}
        opened: dict[tuple[str, ...], Chapter] = {}
        ranges: dict[tuple[str, ...], str] = {}
        numbered, alone = _numbered_sections(own), self.ranges.bare(own, can_be_name)
        lists = _first_lists(own, can_be_name)
        listed = frozenset().union(*lists)
        runs, small = _runs(own), _in_small_letters(own)
        for passage, below in itertools.zip_longest(own, own[1:]):
            if passage.text in numbered:
                continue
            if passage.kind is Kind.HEADING:
                if range_name := passage.text if passage.text in alone else self.ranges.name(passage.text):
                    ranges[passage.sections] = range_name
                    continue
                name, priced = self._name(self.ranges.code(passage.text))
                name = name or (passage.text if passage.text in small else "")
                priced = priced or (below is not None and self._prices_van(below))
                name = self._without_maker(name, maker, series)
                if name and name.casefold() == maker.casefold() != series.casefold():
                    continue  # the company's name over a sidebar
                if not name and CODED.fullmatch(bare := clean(passage.text)):
                    name = bare
                if name and (priced or bears(name, series) or name.casefold() in listed or can_be_name(name)):
                    group = passage.sections if passage.sections in ranges else passage.sections[:-1]
                    chapter = Chapter(name, passage, priced, ranges.get(group, ""))
                    opened[(*passage.sections, passage.text)] = chapter
                    sisters.setdefault(group if chapter.series else passage.sections, []).append(chapter)
                    for one in runs.get(passage.number, ()):
                        self._take(one, [chapter])
                continue
            self._tell(passage, opened)
        return self._sisters(sisters.values(), own, series, lists, runs, labelled)

    def led(self, own: Sequence[Passage], can_be_name: Callable[[str], bool], series: str) -> list[Chapter]:
        """Give the chapters of sister vans whose names lead a paragraph each: "Drift 21 – 5.99 m long, …".

        So do sentences on vans of the range, whatever headings their paragraphs have: "The Drift 21 is 5.99 m long."
        """
        sisters: dict[tuple[str, ...], list[Chapter]] = {}
        told = re.compile(
            rf"(?i:{self.article.pattern})?({re.escape(series)} {CODE_BEHIND}) (?:{self.predicates})(?!\w)"
        )
        for passage in own:
            match = LEAD.match(passage.text) if passage.table is None else None
            said = told.match(passage.text) if series and match is None and passage.kind is Kind.PROSE else None
            led = match or said
            name, _ = self._name(led.group(1)) if led is not None else ("", False)
            if name and can_be_name(name):
                chapter = Chapter(name, passage, False)
                self._take(passage, [chapter])
                sisters.setdefault((series,) if said else passage.sections, []).append(chapter)
        return self._sisters(sisters.values(), own, series)

    def _sisters(
        self,
        groups: Iterable[Sequence[Chapter]],
        own: Sequence[Passage],
        series: str,
        lists: Sequence[set[str]] = (),
        runs: Collection[int] = (),
        labelled: Collection[str] = (),
    ) -> list[Chapter]:
        """Give the first of some groups of chapters of which the same things are told, as of vans."""
        for side_by_side in groups:
            full = [one for one in side_by_side if len(one.things) >= MIN_THINGS]
            alike = [a for a in full if any(len(a.things & b.things) >= MIN_SHARED for b in full if b is not a)]
            same = set.intersection(*(one.things for one in alike)) if alike else set()
            titled = any(begins_with(one.name, series) for one in alike)  # "Figures" is no sister of "Drift 19"
            shared = shared_word([one.name for one in alike])
            apart = (
                not titled
                or bool(shared)
                or differ([one.passages for one in alike])
                or all(one.heading.number in runs or CODED.fullmatch(one.name) for one in alike)
            )
            sure = len(same) >= SAME_THINGS and len(alike) == len(full) and apart
            sure = sure or {one.name.casefold() for one in alike} in lists
            sure = sure or all(one.heading.text in labelled for one in alike)
            named = [o for o in alike if sure or o.priced or bears(o.name, series) or _is_used(o, own)]
            if not (series or sure or shared_word([one.name for one in named]) or all(one.series for one in named)):
                continue
            if len(named) >= 2 and len({one.full_name.casefold() for one in named}) == len(named):
                return named
        return []

    def _tell(self, passage: Passage, opened: Mapping[tuple[str, ...], Chapter]) -> None:
        """Add a passage, and the things that it tells, to all chapters above it."""
        depths = range(1, len(passage.sections) + 1) if opened else ()
        over = [one for depth in depths if (one := opened.get(passage.sections[:depth])) is not None]
        if over:
            self._take(passage, over)

    def _take(self, passage: Passage, chapters: Iterable[Chapter]) -> None:
        things = self.lexicon.things_told(passage)
        for chapter in chapters:
            chapter.passages.append(passage)
            chapter.things |= things

    def beside(
        self, own: Sequence[Passage], can_be_name: Callable[[str], bool], taken: Collection[str], maker: str
    ) -> list[Chapter]:
        """Give the chapters of vans that stand in no table, beside others that head columns or rows there.

        Such a heading has a word of its own, another text uses it (one that comes again is that of a group of lines),
        and below it much of a van is told, in no table of the others and in no chapter
        on packages. ``taken`` are the names, ranges and heads of these; the ``maker`` may stand before the name.
        """
        known = {text.casefold() for text in taken}
        opened: dict[tuple[str, ...], Chapter] = {}
        for passage in own:
            if passage.kind is Kind.HEADING:
                name = self._without_maker(self._name(passage.text)[0], maker, "")
                if name and can_be_name(name) and not self.lexicon.knows_words(name) and not self._is_extra(passage):
                    parts = f" {name.casefold()} "  # "Model 540 640" over a table of both
                    ended = any(f"{one} ".endswith(parts) for one in known)  # "636 Cove: included", the Drift 636 Cove
                    if not ended and not any(f" {one} " in parts or begins_with(one, name) for one in known):
                        opened.setdefault((*passage.sections, passage.text), Chapter(name, passage, False))
                continue
            self._tell(passage, opened)
        return [
            one for one in opened.values()
            if len(one.things) >= SAME_THINGS
            and (_is_used(one, list(own)) or any(holds(p.text, one.name) for p in own if p.text != one.heading.text))
            and not any(p.column is not None and p.column.text.casefold() in known for p in one.passages)
        ]  # fmt: skip

    def _is_extra(self, heading: Passage) -> bool:
        """Tell whether a heading stands below one of packages or options: "Deep Winter" under "Packages"."""
        above = [text for text in heading.sections if len(text) <= MAX_HEADING]
        return any(self.lexicon.cues(self.lexicon.analyse(text), "package", "optional") for text in above)

    def _name(self, heading: str) -> tuple[str, bool]:
        """Give the name with which a heading begins, and whether its price follows; else an empty name.

        An article before it and a word for what it names behind it are left out: "The Solo", "Solo trim".
        """
        plain = ORDINAL.sub("", PARTED.split(heading)[0]).strip(" .,")
        if (price := PRICE.search(plain)) is not None and not plain[price.end() :].strip(" ."):
            plain = plain[: price.start()].strip(" ,.")  # "Drift 60 64.900 €"
            before = self.price_word.search(plain)
            plain = plain[: before.start()].strip(" ,.") if before is not None else plain
        plain = self.article.sub("", plain, count=1) if self.article.match(plain) else plain
        match = NAME.match(plain) if len(heading) <= MAX_HEADING else None
        if match is None:
            return "", False
        rest = plain[match.end() :].strip(" ,.")
        rest = "" if rest.casefold() in self.kinds else rest
        priced = self.price.match(rest) is not None
        priced = priced or (price is not None and not rest)
        return (match.group().rstrip("."), priced) if priced or not rest else ("", False)

    def _prices_van(self, passage: Passage) -> bool:
        """Tell whether a line is nothing but the price of a whole van, as it stands below a van's name."""
        if passage.kind in (Kind.HEADING, Kind.CELL) or (price := PRICE.search(passage.text)) is None:
            return False
        before, behind = passage.text[: price.start()].strip(" .,:"), passage.text[price.end() :].strip(" .,*")
        amount = re.sub(r"[.,]\d\d?$|\D", "", price.group().strip("$€£ "))
        dear = amount.isdecimal() and int(amount) > self.lexicon.book.general.option_price_most
        return dear and not behind and (not before or self.price.fullmatch(before) is not None)

    @staticmethod
    def _without_maker(name: str, maker: str, series: str) -> str:
        """Give a name without the company before it, in full or by its first word, which may be that of the range."""
        for start in (maker, maker.partition(" ")[0]):
            if start.casefold() != series.casefold() and begins_with(name, start) and len(name) > len(start):
                return without_start(name, start)
        return name

    def bases(self, chapters: Sequence[Chapter]) -> dict[str, str]:
        """Give for the full name of a chapter that of the one all of which it has too: "All of Base, and:"."""
        found: dict[str, str] = {}
        for chapter in chapters:
            texts = [chapter.heading.text.partition(chapter.name)[2], *(p.text for p in chapter.passages[:1])]
            for text in texts:
                for match in self.all_of.finditer(text):
                    behind = text[match.end() :]
                    others = [
                        o.full_name
                        for o in chapters
                        if o is not chapter and re.match(rf"(?:\w{{2,4}} )?{re.escape(o.name)}(?!\w)", behind)
                    ]
                    if others:
                        found.setdefault(chapter.full_name, max(others, key=len))
        return found


def inherited(
    facts: list[Fact], bases: Mapping[str, str], chapters: Mapping[str, frozenset[int]], *, anywhere: bool = False
) -> list[Fact]:
    """Give the facts that a van has from the one it builds on: of what that one's chapter tells and its own does not.

    ``bases`` gives for a van the one that it builds on, ``chapters`` the passages of each van's chapter. Where
    tables tell the rest of a van, what is told of it ``anywhere`` is its own. What can be had instead of a thing, or
    cannot, does not take it away.
    """
    lent: dict[str, list[Fact]] = {}

    def told(van: str, everywhere: bool = False) -> list[Fact]:
        stated = (fact for fact in facts if fact.model == van and not fact.rejected)
        return [fact for fact in stated if everywhere or fact.passage in chapters[van]]

    def of(van: str, seen: frozenset[str]) -> list[Fact]:
        if van not in lent:
            base = bases.get(van)
            lent[van] = []
            if base is not None and base not in seen:
                own = {fact.field for fact in told(van, anywhere) if fact.availability in ("standard", "unstated")}
                whole = [*told(base), *of(base, seen | {van})]
                lent[van] = [replace(fact, model=van) for fact in whole if fact.field not in own]
        return lent[van]

    return [fact for van in bases for fact in of(van, frozenset())]


def shared_word(names: Sequence[str]) -> str:
    """Give the word with which all of several names of more words begin, or an empty text."""
    firsts = {name.split()[0] for name in names}
    longer = all(len(name.split()) > 1 for name in names)
    return firsts.pop() if len(firsts) == 1 and longer and len(names) > 1 else ""


def _numbered_sections(own: Sequence[Passage]) -> set[str]:
    """Give the headings of numbered sections, such as "5 Heating".

    Their numbers follow one another, "4", "5", "6", or headings below them go on with theirs: "5.1 The furnace".
    """
    headings = {passage.text for passage in own if passage.kind is Kind.HEADING}
    found = {text: int(match.group(1)) for text in headings if (match := NUMBERED.match(text))}
    below = {int(match.group(1)) for text in headings if (match := NUMBERED_BELOW.match(text))}
    numbers = sorted(found.values())
    in_row = len(numbers) >= LEAST_NUMBERED and numbers == list(range(numbers[0], numbers[0] + len(numbers)))
    apart = len({NUMBERED.sub("", text) for text in found}) == len(found)
    return set(found) if apart and (in_row or below & set(numbers)) else set()


def _in_small_letters(own: Sequence[Passage]) -> set[str]:
    """Give the headings that can be names in a document whose headings all are in small letters, and a text uses."""
    headings = [passage.text for passage in own if passage.kind is Kind.HEADING]
    if not headings or not all(map(str.islower, headings)):
        return set()
    text = "\n".join(passage.text for passage in own if passage.kind is not Kind.HEADING and passage.table is None)
    return {heading for heading in headings if SMALL.fullmatch(heading) and holds(text, heading)}


def _first_lists(own: Sequence[Passage], can_be_name: Callable[[str], bool]) -> list[set[str]]:
    """Give the names, in small letters, of each line of the first page that lists some: "Alcove · Long Hearth".

    One of them at least must be a name for certain.
    """
    found = []
    for line in (p.text for p in own if p.page in (0, 1) and p.kind is not Kind.CELL and len(p.text) <= MAX_HEADING):
        parts = [part.strip() for part in PARTED.split(line)]
        if 2 <= len(parts) <= MOST_LONE and all(map(NAME.fullmatch, parts)) and any(map(can_be_name, parts)):
            found.append({part.casefold() for part in parts})
    return found


def _runs(own: Sequence[Passage]) -> dict[int, list[Passage]]:
    """Give what follows a heading of its own kind up to the next such, by the number of its passage.

    Its groups have headings of the same rank, which come again after its sister: "Alcove", "Water", "Heating",
    "Hearth", "Water", "Heating". It ends where the rank does, or before a heading behind the last that comes again.
    """
    found: dict[int, list[Passage]] = {}
    texts = Counter((p.sections, p.text) for p in own if p.kind is Kind.HEADING)
    begins = [
        n for n, (one, below) in enumerate(itertools.pairwise(own))
        if one.kind is below.kind is Kind.HEADING and one.sections == below.sections
        and texts[one.sections, one.text] == 1 and texts[below.sections, below.text] > 1
    ]  # fmt: skip
    for number, end in itertools.pairwise([*begins, len(own)]):
        rank, run = own[number].sections, own[number + 1 : end]
        left = next((n for n, p in enumerate(run) if p.sections[: len(rank)] != rank), len(run))
        ranked = [n for n, p in enumerate(run[:left]) if p.kind is Kind.HEADING and p.sections == rank]
        last = max(n for n in ranked if texts[rank, run[n].text] > 1)
        stop = next((n for n in ranked if n > last), left)
        found[own[number].number] = [p for p in run[:stop] if p.kind is not Kind.HEADING]
    return found


def _is_used(chapter: Chapter, own: Sequence[Passage]) -> bool:
    """Tell whether running text or the head of a column uses the name too."""
    pattern = re.compile(rf"(?<!\w){re.escape(chapter.name)}(?!\w)", re.I if chapter.name.isupper() else 0)
    texts = (p.column.text if p.column is not None else p.text for p in own if p.kind is not Kind.HEADING)
    return any(match.group()[0] == chapter.name[0] for text in texts for match in pattern.finditer(text))


def _before(words: Sequence[str], behind: str) -> re.Pattern[str]:
    return re.compile(rf"(?<!\w)(?:{any_word(words)}){behind}", re.IGNORECASE)
