"""Vans that no table and no list names: under headings, in trims that the text uses, in running text."""

from __future__ import annotations

import itertools
import re
from collections import Counter
from collections.abc import Callable, Collection, Sequence

from specscan.finding.language.whole_words import count, holds, without_first, without_names
from specscan.finding.naming.chapters import CODED, Chapter, ChapterReader, shared_word
from specscan.finding.naming.introduced import read_introduced
from specscan.finding.naming.led_items import read_led
from specscan.finding.naming.name_forms import article
from specscan.finding.naming.names import NameReader
from specscan.finding.naming.place import Names, Place, begins_with, of_range, without_start
from specscan.finding.naming.players import Player
from specscan.finding.naming.years import YEAR
from specscan.records.text import Kind, Passage

MAX_TRIM_LINE = 80
FIRST_LINES = 14
MAX_TRIMS = 6
ALWAYS = 0.8  # of the places of the first word of a trim: those before its second
TRIM_USES = 3  # in the list itself and at least twice besides
SAID_USES = 2  # where the list says that it is one of trims
TOLD_AS_OFTEN = 0.75  # as the van that is the title of its document
TRIM_JOINTS = {"and", "et", "und", "&", "or", "ou", "oder"}
NUMBERED = re.compile(r"^\W*\d{1,4}\W+(?=[^\W\d_]{3})")
TRIM_JOINT = re.compile(r"\s*,\s*(?:(?:and|et|und|&)\s+)?|\s+(?:and|et|und|&|or|ou|oder)\s+")
TRIM = re.compile(r"[A-ZÀ-Þ][\w’'-]{2,}(?: [A-ZÀ-Þ\d][\w’'-]*){0,2}")
LETTERS = r"[A-Z]{1,3}(?![\w’'/-])"  # "Drift 600 S" and "Drift 600 SX"
MORE = r"(?:[A-ZÀ-Þ][\w’'-]*|\d[\w-]*)(?: (?:[A-ZÀ-Þ][\w’'-]*|\d[\w-]*))?"  # behind a name: "Plus", "XL 4x4"
LETTERS_ALONE = re.compile(LETTERS)
SMALL = re.compile(r"[^\W\d_]+(?: [^\W\d_]+)?")  # behind a name that is itself in small letters: "drift two"
CODED_SHARE = 3  # times as often as alone the name of a range stands before the codes of its vans
VARIANT = re.compile(r"(?=.*\d)[\w.]+(?: [A-ZÀ-Þ\d][\w’'.-]*){0,2}")


class ToldNames:
    """Finds such vans in documents of one language."""

    def __init__(self, names: NameReader, chapters: ChapterReader, can_be_name: Callable[[str], bool]):
        self.names = names
        self.chapters = chapters
        self.can_be_name = can_be_name
        self.fillers = [phrase for phrase in names.filling if phrase not in TRIM_JOINTS]

    def read(self, names: Names, own: list[Passage]) -> list[Player]:
        """Give trims ("Tolland 23 Traverse") or sister models ("Tarn 19", "Tarn 21") named in the text."""
        text = "\n".join(p.text for p in own)
        headed = self._headed(names, own)
        described = self._chapters(names, own)
        alone = len(headed) >= 2 and not self.chapters.ranges.bare(own, self.can_head_chapter)
        if alone and not self._are_some(list(headed.values()), described):
            return [*headed.values(), *self.beside(names, own, (), list(headed.values()))]
        chapters = self._named_by(described, names, own)
        if chapters or len(headed) >= 2:
            return chapters or list(headed.values())
        if led := read_led(own, names.title, self.names.lexicon, self.can_head_chapter):
            base = names.title if re.search(r"\d", names.title) else names.series
            return [
                Player(of_range(base, name), Place(item, item.page, name), {name}, chapter=frozenset({item.number}))
                for name, item in led
            ]
        words = self.names.words
        if met := read_introduced(own, names, self.names.lexicon, words.articles_of_names, self.can_head_chapter):
            return met
        trims = self._continuations(names, text)
        if len(trims) < 2:
            trims = self._listed(names, own, text)
        if len(trims) >= 2:
            return [Player(f"{names.title} {t}", self._named(f"{names.title} {t}", own), {t}) for t in trims]
        if sisters := self._beside_longer(names, own, text):
            return [Player(one, self._named(one, own)) for one in sisters]
        if names.series and (names.series != names.title or self._is_only_range(names.title, own)):
            codes = self._codes(names, own)
            if len(codes) >= 2:
                return [Player(f"{names.series} {c}", self._named(f"{names.series} {c}", own), {c}) for c in codes]
        return self._named_by(self.chapters.led(own, self.can_head_chapter, names.series), names, own)

    def chaptered(self, names: Names, own: list[Passage]) -> list[Player]:
        """Give the vans that are described each under a heading, with the one on which each builds."""
        return self._named_by(self._chapters(names, own), names, own)

    def _named_by(self, chapters: Sequence[Chapter], names: Names, own: list[Passage]) -> list[Player]:
        shared = shared_word([one.name for one in chapters])
        if shared and not names.series:
            names.title = names.series = self.names.cased(shared, own)
        self._take_shorter(names, [one.full_name for one in chapters])
        ranges = {one.series for one in chapters}
        coded = all(CODED.fullmatch(one.full_name) for one in chapters)
        firsts = {one.full_name.split()[0] for one in chapters}  # "Alder 19" and "Gorse 23" are of no common range
        if len(ranges) > 1 or ranges - {"", names.series} or (coded and len(firsts) > 1):
            names.series = names.title = ""
        if any(one.full_name.casefold() == names.series.casefold() for one in chapters) and not all(
            begins_with(one.full_name, names.series) for one in chapters
        ):
            names.series = names.title = ""  # one of the vans is no range of the others
        trims = not any(re.search(r"\d", one.full_name) for one in chapters)
        base = names.title if trims and begins_with(names.title, names.series) else names.series
        models = {one.full_name: of_range(base, self.names.cased(one.full_name, own)) for one in chapters}
        bases = self.chapters.bases(chapters)
        return [
            Player(
                models[one.full_name],
                one.place,
                one.printed,
                chapter=one.numbers,
                base=models.get(bases.get(one.full_name, ""), ""),
            )
            for one in chapters
        ]

    @staticmethod
    def _take_shorter(names: Names, vans: Sequence[str]) -> None:
        """Take for the range the words with which all vans begin, where the title names one of them: "Drift Jubilee 30"
        above "Drift" and "Drift Jubilee 30", "Drift Snow" above "Drift Snow" and "Drift XL Snow"."""
        alike = itertools.takewhile(
            lambda words: len(set(words)) == 1, zip(*(van.split() for van in vans), strict=False)
        )
        base = " ".join(words[0] for words in alike)
        above = begins_with(names.series, base) and names.series.casefold() != base.casefold()
        if above and any(begins_with(van, names.series) for van in vans):
            names.title = names.series = base

    def _chapters(self, names: Names, own: list[Passage]) -> list[Chapter]:
        def bare(heading: str) -> str:
            return self.names.cased(self.names.clean(heading, names.maker), own)

        return self.chapters.read(own, self.can_head_chapter, names.series, bare, names.maker, names.labelled)

    @staticmethod
    def _are_some(players: Sequence[Player], chapters: Sequence[Chapter]) -> bool:
        """Tell whether some vans are those of one range of several that are described in the same way."""
        described = {one.full_name.casefold() for one in chapters if CODED.fullmatch(one.full_name)}
        return {player.model.casefold() for player in players} < described and len(described) == len(chapters)

    def beside(self, names: Names, own: list[Passage], heads: Collection[str], players: list[Player]) -> list[Player]:
        """Give the vans that have a heading of their own beside the ``players``, whose names head columns or rows."""
        taken = {names.series, names.maker, *heads, *(player.model for player in players)} - {""}
        chapters = self.chapters.beside(own, self.can_head_chapter, taken, names.maker)
        return [Player(one.name, one.place, one.printed, chapter=one.numbers) for one in chapters]

    def can_head_chapter(self, name: str) -> bool:
        """Tell whether a heading can be the name of a van: no "Technical data", whatever stands below it."""
        if self.chapters.ranges.is_lettered(name):
            return True
        return self.can_be_name(name) and not self.names.is_filler(name) and not self._names_section(name)

    def _names_section(self, name: str) -> bool:
        """Tell whether a number and words of the trade name a section, as of a build sheet: "200 PLUMBING"."""
        rest = NUMBERED.sub("", name)
        return rest != name and (self.names.is_label(rest) or self.names.is_filler(rest))

    def _continuations(self, names: Names, text: str) -> list[str]:
        title = names.title
        if not title or len(title) < 3:
            return []
        counts: Counter[str] = Counter()
        if f"{title} " not in text:
            return []
        named = re.compile(rf"(?<!\w){re.escape(title)} ({LETTERS}|[A-ZÀ-Þ][\w’'-]{{2,}})")
        for match in named.finditer(text):
            word = match.group(1)
            filler = word.casefold().split("’")[0].split("'")[0]
            if (
                word.casefold() not in self.names.fillers
                and filler not in self.names.fillers
                and not word.endswith(("’s", "'s"))
                and word not in names.maker.split()
            ):
                counts[word] += 1
        found = []
        rest = named.sub("", text)
        for word in counts:
            units = len(re.findall(rf"\d {word}(?!\w)", rest)) if LETTERS_ALONE.fullmatch(word) else 0  # "110 L"
            if count(rest, word) - units >= 2:
                found.append(self._whole(word, text))
        return found

    def _beside_longer(self, names: Names, own: list[Passage], text: str) -> list[str]:
        """Give the title's van and those with more behind its name that a sentence lists beside it.

        "Both the Drift and the Drift Plus are …": the text speaks of each elsewhere too.
        """
        title = names.title
        if not title or text.count(f"{title} ") < SAID_USES:
            return []
        the = article(self.names.words.articles_of_names)
        name = rf"{re.escape(title)}(?: (?P<{{}}>{MORE}))?"
        listed = re.compile(
            rf"(?<!\w){name.format('first')}(?:{TRIM_JOINT.pattern})(?:{the})?{name.format('second')}(?!\w| [A-ZÀ-Þ\d])"
        )
        pairs = [match.group("first", "second") for p in own for match in listed.finditer(p.text)]
        found = {more or "" for pair in pairs if not all(pair) for more in pair}
        longer = [more for more in found if more]
        plain = count(text, title) - sum(count(text, f"{title} {more}") for more in longer)
        told = all(count(text, f"{title} {more}") >= SAID_USES and self._can_follow(more) for more in longer)
        return (
            [title, *(f"{title} {more}" for more in sorted(longer))] if longer and told and plain >= SAID_USES else []
        )

    def _can_follow(self, more: str) -> bool:
        """Tell whether words can stand behind a van's name in that of its sister: no "Winter Pack", "2025", "Range"."""
        extra = self.names.lexicon.cues(self.names.lexicon.analyse(more), "package")
        return not (extra or YEAR.search(more) or more.casefold() in self.names.fillers)

    def _whole(self, word: str, text: str) -> str:
        """Give a trim with the word that stands behind its first one nearly wherever that stands: "Base Camp".

        The end of a line may part the two.
        """
        behind = re.findall(rf"(?<!\w){re.escape(word)}(?!\w)(?: ([A-ZÀ-Þ][\w’'-]{{2,}}))?", text)
        second, uses = Counter(behind).most_common(1)[0]
        common = not second or second.casefold() in self.names.fillers
        if (
            common
            or uses < ALWAYS * len(behind)
            or self.names.lexicon.cues(self.names.lexicon.analyse(second), "package")
        ):
            return word
        return f"{word} {second}"

    def are_listed(self, names: Names, own: list[Passage]) -> bool:
        """Tell whether a line says that it lists the trims of the title's van: "The Drift 22 in two trims: A and B"."""
        return bool(self._listed(names, own, "\n".join(p.text for p in own), said_only=True))

    def _listed(self, names: Names, own: list[Passage], text: str, *, said_only: bool = False) -> list[str]:
        """Give trims that a short line near the title lists, "Model year 2025  Bramble and Hoar", and the text uses."""
        if not names.title:
            return []
        for passage in [p for p in own if p.page in (0, 1) and len(p.text) <= MAX_TRIM_LINE][:FIRST_LINES]:
            line = self._without_fillers(passage.text)
            said = any(holds(passage.text, word) for word in self.names.words.model_words)  # "Two trims: …"
            counted = self._counted(passage.text)  # "One van, two characters: …"
            if said_only and not (said or counted):
                continue
            parts = [TRIM_JOINT.split(part.strip(" ,.")) for part in re.split(r"\s{2,}|[•·|:]|\.\s|\s[–—-]\s", line)]
            for part in [*parts, re.split(r"\s+[•·|/]\s+", line.strip())]:
                found = [one.strip() for one in part]
                told = said or len(found) == counted
                if (
                    2 <= len(found) <= MAX_TRIMS
                    and len(set(found)) == len(found)
                    and not set(found) <= set(names.maker.split())
                    and not any(f"{one} ".startswith(f"{names.title} ") for one in found)
                    and all(TRIM.fullmatch(one) for one in found)
                    and all(told or self.can_be_name(one) or self.names.signs.are_seen(one, own, ()) for one in found)
                    and all(count(text, one) >= (SAID_USES if told else TRIM_USES) for one in found)
                    and (told or not said_only)
                ):
                    return found
        return []

    def _counted(self, text: str) -> int:
        """Give how many things a line says that it lists behind its colon: 2 of "One van, two tempers: A and B"."""
        lead, colon, _ = text.partition(":")
        words = re.split(r"\W+", lead.casefold()) if colon else []
        counts = [int(number) for word in words if (number := self.names.words.numbers.get(word, 0)) > 1]
        return counts[-1] if counts else 0

    def _without_fillers(self, text: str) -> str:
        return YEAR.sub("  ", without_names(text, self.fillers, "  "))

    def _headed(self, names: Names, own: list[Passage]) -> dict[str, Player]:
        """Give the vans of the series that headings name, each above statements of its own."""
        if not names.series:
            return {}
        governing = {heading for passage in own if passage.kind is not Kind.HEADING for heading in passage.sections}
        labelled = self.names.labels.read(own, self.names.words.model_labels)
        told = labelled is not None and re.search(r"\d", labelled[0]) is not None  # the model: other numbers are none
        found: dict[str, Player] = {}
        for passage, following in zip(own, [*own[1:], None], strict=True):
            heading = passage.text.strip(" :*")
            grouped = following is not None and following.kind is Kind.HEADING  # above groups of the same rank
            if passage.kind is not Kind.HEADING or not (passage.text in governing or grouped):
                continue
            name = self.names.clean(heading, names.maker)
            rest = without_first(name, names.series)
            if rest and (rest != name or re.fullmatch(r"\d{3}", rest.split()[0])):
                small = names.series.islower() and SMALL.fullmatch(rest)
                section = rest == name and (told or self._names_section(rest))
                if (VARIANT.fullmatch(rest) or small) and self.can_be_name(rest) and not section:
                    rest = self.names.with_edition(rest, heading[max(heading.find(rest), 0) :])
                    player = Player(f"{names.series} {rest}", Place(passage, passage.page, heading))
                    found.setdefault(rest.casefold(), player).aliases.add(heading)
        return self._without_group(self._without_title(found))

    @staticmethod
    def _without_title(found: dict[str, Player]) -> dict[str, Player]:
        """Take from vans the one that all others build on and stand under: "Drift 21" above its trims' headings."""
        for code, player in found.items():
            place = player.place.passage if player.place is not None else None
            others = [one.place.passage for one in found.values() if one is not player and one.place is not None]
            under = [one for one in others if one is not None and place is not None and place.text in one.sections]
            if len(under) > 1 and len(under) == len(others) and all(begins_with(one, code) for one in found):
                return {one: beside for one, beside in found.items() if one != code}
        return found

    def _without_group(self, found: dict[str, Player]) -> dict[str, Player]:
        """Take from vans the heading of their first group of rows, printed right below each: "Drift 5 Vehicle"."""
        lasts = {player.model.split()[-1] for player in found.values()}
        if len(found) < 2 or len(lasts) > 1 or not self.names.is_filler(last := lasts.pop()):
            return found
        for player in found.values():
            player.model = player.model.removesuffix(f" {last}")
        return {name.removesuffix(f" {last.casefold()}"): player for name, player in found.items()}

    def _codes(self, names: Names, own: list[Passage]) -> list[str]:
        """Give the codes that stand behind the name of the range twice or in a heading which is no question.

        Where the title is one of these vans, the others are told of nearly as often as this one, or headed.
        """
        series = names.series
        pattern = re.compile(
            rf"(?<!\w){re.escape(series)}\s+(\d{{1,3}}(?:\.\d)?(?![.,]?\d)(?:\s?[A-Z]{{1,3}}(?!\w))?(?:\s4x4)?)"
        )
        counts: Counter[str] = Counter()
        headed: set[str] = set()
        for passage in own:
            for match in pattern.finditer(passage.text):
                counts[match.group(1)] += 1
                if passage.kind is Kind.HEADING and not passage.text.rstrip().endswith("?"):
                    headed.add(match.group(1))
        most = TOLD_AS_OFTEN * counts[without_start(names.title, series)]
        return [code for code, count in counts.items() if count >= max(2, most) or code in headed]

    def _is_only_range(self, title: str, own: list[Passage]) -> bool:
        """Tell whether a title is hardly ever said of a van: figures stand behind it, or words for several of them,
        "the Drift vans", "every Drift". What a letter is about may be the range too."""
        words = self.names.words
        several = {word.casefold() for word in (*words.model_words, *words.range_words, *words.every_words)}
        called = re.compile(rf"(?:([^\W\d_]+)\s+)?(?<!\w){re.escape(title)}(?!\w)\s*(\d|[^\W\d_]*)", re.IGNORECASE)
        texts = [passage.text for passage in own if passage.number not in self.names.letter.framed]
        used = [match.groups("") for text in texts for match in called.finditer(text)]
        coded = sum(behind.isdigit() for _, behind in used)
        alone = sum(
            not behind.isdigit() and several.isdisjoint((before.casefold(), behind.casefold()))
            for before, behind in used
        )
        return coded >= CODED_SHARE * alone

    def _named(self, model: str, own: list[Passage]) -> Place | None:
        for passage in own:
            if model.casefold() in passage.text.casefold():
                return Place(passage, passage.page, model)
        return None
