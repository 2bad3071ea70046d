"""The vans of a document and the ways in which it names them."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable

from specscan.finding.chapters import ChapterReader, shared_word
from specscan.finding.full_names import BareHeads, cased_model, full_name, is_series_word, without_groups
from specscan.finding.lexicon import Lexicon
from specscan.finding.listing import read_listing
from specscan.finding.names import NameReader
from specscan.finding.place import Names, Place, without_start
from specscan.finding.players import Cast, Player, add_aliases
from specscan.finding.quantities import QuantityReader
from specscan.finding.roster import LONGEST, PARTS, Roster, match_heads, read_roster, unbroken
from specscan.finding.whole_words import count, without_first
from specscan.finding.years import YEAR
from specscan.records.text import Document, Kind, Passage
from specscan.rulebook.book import Rulebook

MAX_HEAD_WORDS = 6
MAX_HEAD = 40
MIN_ROWS = 2
MAX_TRIM_LINE = 80
SIZE = re.compile(r"X{0,2}[SML]")
CODED = re.compile(r"\d{2,3}(?!\d)")
FIRST_LINES = 14
MAX_TRIMS = 6
TRIM_USES = 3  # in the list itself and at least twice besides
TRIM_JOINTS = {"and", "et", "und", "&"}
TRIM_JOINT = re.compile(r"\s*,\s*(?:and|et|und|&)?\s*|\s+(?:and|et|und|&)\s+")
TRIM = re.compile(r"[A-ZÀ-Þ][\w’'-]{2,}(?: [A-ZÀ-Þ\d][\w’'-]*){0,2}")
VARIANT = re.compile(r"(?=.*\d)[\w.]+(?: [A-ZÀ-Þ\d][\w’'.-]*){0,2}")


class CastReader:
    """Finds the vans in documents of one language."""

    def __init__(self, book: Rulebook, lexicon: Lexicon, quantities: QuantityReader):
        self.book = book
        self.lexicon = lexicon
        self.names = NameReader(book, lexicon)
        self.fillers = [pattern for phrase, pattern in self.names.filling.items() if phrase not in TRIM_JOINTS]
        self.quantities = quantities
        self.chapters = ChapterReader(lexicon)
        self.heads = BareHeads(lexicon.words.price_from, quantities)
        self.generic = {word.casefold() for word in lexicon.words.column_words}

    def read(self, document: Document, named: frozenset[str] = frozenset()) -> Cast:
        """Give the vans of a document; without table heads or trims there is one, named by the title.

        ``named`` are heads of which the document says itself that they name vans.
        """
        names = self.names.read(document)
        own = [p for p in document.passages if p.number not in names.other]
        heads = self._table_heads(own, named)
        lines = [part for p in own[:FIRST_LINES] if len(p.text) <= LONGEST for part in PARTS.split(p.text)]
        alone = [p.text for p in own if p.kind is Kind.HEADING or not (p.row and p.row.text)]
        self._split_maker(names, heads or [*alone, *lines])
        no_codes = {*self.names.fillers, *self.lexicon.words.cues.get("only", [])}  # "19 only" is no code
        roster = read_roster(own, names.series if names.series == names.title else "", no_codes)
        if roster is not None and self._is_other_title(names, roster):
            roster = None
        if roster is not None and heads:
            full = [player.model for player in self._from_heads(heads, names, own)[0]]
            roster = unbroken(roster, full)
            headed = {model.casefold() for model in full}
            listed = {model.casefold() for model in roster.models}
            series = f"{roster.series.casefold()} "
            coded = [model for model in headed if model.startswith(series) and CODED.match(model, len(series))]
            more = [model for model in headed - listed if not model.startswith(tuple(f"{one} " for one in listed))]
            if more and listed <= headed and (len(listed) == 1 or len(coded) == len(headed)):
                roster = None  # a line that names some of the vans in the tables
        if roster is not None and len(roster.codes) == 1 and not heads:
            several = read_listing(own, self.names, self.lexicon) or self._from_text(names, own)
            roster = roster if len(several) < 2 else None
        if roster is not None:
            self._take_names(names, roster, own)
            players = [
                Player(model, Place(roster.passage, roster.passage.page, model), {model, code})
                for model, code in zip(roster.models, roster.codes, strict=True)
            ]
            mapping = match_heads(heads, roster.models, roster.series)
        elif heads:
            players, mapping = self._from_heads(heads, names, own)
            chapters = self._chaptered(names, own)
            if {player.model.casefold() for player in players} <= {player.model.casefold() for player in chapters}:
                players, mapping = chapters, match_heads(heads, [player.model for player in chapters], names.series)
        else:
            listing = read_listing(own, self.names, self.lexicon)
            players = [Player(one.model, one.place, listed=one) for one in listing] or self._from_text(names, own)
            mapping = {}
        if not players and names.title:
            players = [Player(names.title, names.title_place)]
        cast = Cast(names, players, mapping, rostered=roster is not None)
        add_aliases(cast, self.lexicon.words)
        return cast

    @staticmethod
    def _is_other_title(names: Names, roster: Roster) -> bool:
        """Tell whether the title names one van, and the line lists others: "Also: Drift 17 | Drift 19"."""
        title = names.title.casefold()
        return bool(re.search(r"\d", title)) and not any(model.casefold().startswith(title) for model in roster.models)

    def _take_names(self, names: Names, roster: Roster, own: list[Passage]) -> None:
        """Take the range's name from the roster, and the maker from the lines above it where nothing else tells."""
        names.title = names.series = roster.series
        if names.maker:
            return
        for passage in own[: own.index(roster.passage)]:
            plain = self.names.clean(passage.text, "")
            before = re.sub(rf"\s*\b{re.escape(roster.series)}$", "", plain, flags=re.IGNORECASE)
            words = before.split()
            if (
                1 <= len(words) <= 3
                and all(word[0].isupper() and not any(c.isdigit() for c in word) for word in words)
                and not self.lexicon.knows_label(before)
                and roster.series.casefold() not in before.casefold()
            ):
                names.maker = self.names.cased(before, own)
                names.maker_place = Place(passage, passage.page, passage.text)
                return

    @staticmethod
    def _split_maker(names: Names, heads: Iterable[str]) -> None:
        """Take the words of a title that the heads of its vans leave out for the maker.

        "Marrowfen Drift" over the heads "Drift 19" and "Drift 21" is the Drift by Marrowfen.
        """
        words = names.series.split()
        if names.maker or names.used or len(words) < 2:
            return
        named = {head.strip(" *†:").casefold() for head in heads}
        for cut in range(1, len(words)):
            tail, maker = " ".join(words[cut:]), " ".join(words[:cut])
            alike = [head for head in named if re.match(rf"{re.escape(tail.casefold())}\s+\S", head)]
            if len(alike) >= MIN_ROWS and words[0][0].isupper():
                names.maker, names.maker_place = maker, names.title_place
                names.series, names.title = tail, re.sub(rf"^{re.escape(maker)}\s+", "", names.title)
                return
            whole = re.sub(rf"^{re.escape(maker)}\s+", "", names.title)
            if re.search(r"\d", whole) and whole.casefold() in named and words[0][0].isupper():
                names.maker, names.maker_place = maker, names.title_place
                names.series, names.title = tail, whole
                return

    # table heads

    def _table_heads(self, own: list[Passage], named: frozenset[str]) -> dict[str, Place]:
        """Give the heads of tables that name vans, with where they first stand."""
        tables: dict[int, list[Passage]] = {}
        for passage in own:
            if passage.table is not None:
                tables.setdefault(passage.table, []).append(passage)
        found: dict[str, Place] = {}
        for cells in tables.values():
            for head, place in self._heads_of(cells, named):
                found.setdefault(head, place)
        return found

    def _heads_of(self, cells: list[Passage], named: frozenset[str]) -> list[tuple[str, Place]]:
        rows = _unique(p.row.text for p in cells if p.row is not None)
        columns = _unique(p.column.text for p in cells if p.column is not None)
        known_rows = sum(self.lexicon.knows_label(text) for text in rows)
        known_columns = sum(self.lexicon.knows_label(text) for text in columns)
        if len(rows) >= MIN_ROWS and known_rows >= 0.35 * len(rows) and known_rows >= known_columns:
            heads = self._with_sisters([t for t in columns if t in named or self.can_be_name(t)], columns)
            if len(heads) >= 1 and len(heads) >= 0.6 * len(columns):
                return [(h, _place(cells, h, column=True)) for h in heads]
        if len(columns) >= MIN_ROWS and known_columns >= 0.4 * len(columns):
            heads = [text for text in rows if self.can_be_name(text)]
            if heads and len(heads) >= 0.7 * len(rows):
                return [(h, _place(cells, h, column=False)) for h in heads]
        return []

    @staticmethod
    def _with_sisters(heads: list[str], columns: list[str]) -> list[str]:
        """Add heads that alone could be labels to others of their kind: "L" to "S" and "M", "Drift L" to "Drift S"."""
        sized = any(SIZE.fullmatch(head) for head in heads)
        firsts = {head.split()[0] for head in heads if len(head.split()) > 1 and len(head.split()[0]) > 2}
        return [
            text
            for text in columns
            if text in heads
            or (sized and SIZE.fullmatch(text))
            or (len(text) <= MAX_HEAD and text.split()[0] in firsts)
        ]

    def can_be_name(self, text: str) -> bool:
        """Tell whether a text, a head or heading say, can name a van: it is short and no label, value or remark."""
        plain = self.heads.bare(text.strip(" *†"))
        if not plain or len(plain) > MAX_HEAD or len(plain.split()) > MAX_HEAD_WORDS:
            return False
        if plain.casefold().strip("()") in self.generic or not any(c.isalnum() for c in plain):
            return False
        words = [word.casefold().strip("()/,") for word in plain.split()]
        if words[0] in self.generic and all(w in self.generic or self.quantities.units.named(w) for w in words):
            return False
        if self.lexicon.knows_label(plain) and not re.search(r"\d", plain):
            return False
        if any(not q.bare and q.end - q.start >= 0.8 * len(plain) for q in self.quantities.find(plain)):
            return False
        cues = self.lexicon.cues(
            self.lexicon.analyse(plain), "standard", "optional", "not_available", "yes", "no", "all_vans", "package"
        )
        return not cues

    def _from_heads(
        self, heads: dict[str, Place], names: Names, own: list[Passage]
    ) -> tuple[list[Player], dict[str, frozenset[str]]]:
        text = "\n".join(p.text for p in own)
        years = {int(match.group(1)): place for head, place in heads.items() if (match := YEAR.search(head))}
        if names.year is None and len(years) == 1:
            [(names.year, names.year_place)] = years.items()
        full: dict[str, str] = {}
        ranges = self.chapters.ranges.named(own)
        plain = without_groups([self.heads.bare(head.strip(" *†")) for head in heads], names, text, ranges)
        firsts = {head.split()[0] for head in plain if len(head.split()) > 1}
        if (
            len(firsts) == 1
            and len(heads) > 1
            and is_series_word(first := next(iter(firsts)))
            and first.casefold() != names.maker.casefold()
        ):
            if all(head.startswith(first) for head in plain):
                names.series = first
        for head, name in zip(heads, plain, strict=True):
            full[head] = cased_model(full_name(name, names, text, plain), text)
        players: dict[str, Player] = {}
        mapping: dict[str, frozenset[str]] = {}
        for head, model in full.items():
            same = next((m for m in players if m.casefold() == model.casefold()), None)
            if same is None:
                longer = [m for m in full.values() if m.casefold().endswith(" " + model.casefold()) and m != model]
                if longer:
                    mapping[head] = frozenset(longer[:1])
                    continue
                players[model] = Player(model, heads[head])
                same = model
            players[same].aliases.add(head.strip(" *†"))
            mapping[head] = frozenset({same})
        return list(players.values()), mapping

    # running text

    def _from_text(self, names: Names, own: list[Passage]) -> list[Player]:
        """Give trims ("Tolland 23 Traverse") or sister models ("Tarn 19", "Tarn 21") named in the text."""
        text = "\n".join(p.text for p in own)
        headed = self._headed(names, own)
        if len(headed) >= 2:
            return list(headed.values())
        chapters = self._chaptered(names, own)
        if chapters:
            return chapters
        trims = self._continuations(names.title, text)
        if len(trims) < 2:
            trims = self._listed(names, own, text)
        if len(trims) >= 2:
            return [Player(f"{names.title} {t}", self._named(f"{names.title} {t}", own), {t}) for t in trims]
        if names.series and names.series != names.title:
            codes = self._codes(names.series, own)
            if len(codes) >= 2:
                return [Player(f"{names.series} {c}", self._named(f"{names.series} {c}", own), {c}) for c in codes]
        return []

    def _chaptered(self, names: Names, own: list[Passage]) -> list[Player]:
        """Give the vans that are described each under a heading, with the one on which each builds."""
        chapters = self.chapters.read(own, self.can_be_name, names.series)
        shared = shared_word([one.name for one in chapters])
        if shared and not names.series:
            names.title = names.series = self.names.cased(shared, own)
        ranges = {one.series for one in chapters}
        if len(ranges) > 1 or ranges - {"", names.series}:
            names.series = names.title = ""
        models = {
            one.full_name: f"{names.series} {without_start(one.full_name, names.series)}".strip() for one in chapters
        }
        bases = self.chapters.bases(chapters)
        return [
            Player(
                models[one.full_name],
                one.place,
                {one.name, one.heading.text},
                chapter=one.numbers,
                base=models.get(bases.get(one.full_name, ""), ""),
            )
            for one in chapters
        ]

    def _continuations(self, title: str, text: str) -> list[str]:
        if not title or len(title) < 3:
            return []
        counts: Counter[str] = Counter()
        if f"{title} " not in text:
            return []
        for match in re.finditer(rf"(?<!\w){re.escape(title)} ([A-ZÀ-Þ][\w’'-]{{2,}})", text):
            word = match.group(1)
            filler = word.casefold().split("’")[0].split("'")[0]
            if (
                word.casefold() not in self.names.fillers
                and filler not in self.names.fillers
                and not word.endswith(("’s", "'s"))
            ):
                counts[word] += 1
        found = []
        for word in counts:
            alone = count(text, word) - counts[word]
            if alone >= 2:
                found.append(word)
        return found

    def _listed(self, names: Names, own: list[Passage], text: str) -> list[str]:
        """Give trims that a short line near the title lists, "Model year 2025  Bramble and Hoar", and the text uses."""
        if not names.title:
            return []
        for passage in [p for p in own if p.page in (0, 1) and len(p.text) <= MAX_TRIM_LINE][:FIRST_LINES]:
            line = self._without_fillers(passage.text)
            parts = [TRIM_JOINT.split(part.strip(" ,.")) for part in re.split(r"\s{2,}|[•·|:]|\s[–—-]\s", line)]
            for part in [*parts, re.split(r"\s+[•·|/]\s+", line.strip())]:
                found = [one.strip() for one in part]
                if (
                    2 <= len(found) <= MAX_TRIMS
                    and len(set(found)) == len(found)
                    and not any(f"{one} ".startswith(f"{names.title} ") for one in found)
                    and all(TRIM.fullmatch(one) and self.can_be_name(one) for one in found)
                    and all(count(text, one) >= TRIM_USES for one in found)
                ):
                    return found
        return []

    def _without_fillers(self, text: str) -> str:
        for pattern in self.fillers:
            text = pattern.sub("  ", text)
        return YEAR.sub("  ", text)

    def _headed(self, names: Names, own: list[Passage]) -> dict[str, Player]:
        """Give the vans of the series that headings name, each above statements of its own."""
        if not names.series:
            return {}
        governing = {heading for passage in own if passage.kind is not Kind.HEADING for heading in passage.sections}
        found: dict[str, Player] = {}
        for passage in own:
            heading = passage.text.strip(" :*")
            if passage.kind is not Kind.HEADING or passage.text not in governing:
                continue
            name = self.names.clean(heading, names.maker)
            rest = without_first(name, names.series)
            if rest and (rest != name or re.fullmatch(r"\d{3}", rest.split()[0])):
                if VARIANT.fullmatch(rest) and self.can_be_name(rest):
                    player = Player(f"{names.series} {rest}", Place(passage, passage.page, heading))
                    found.setdefault(rest.casefold(), player).aliases.add(heading)
        return found

    def _codes(self, series: str, own: list[Passage]) -> list[str]:
        pattern = re.compile(rf"(?<!\w){re.escape(series)}\s+(\d{{1,3}}(?!\d)(?:\s?[A-Z]{{1,3}}(?!\w))?(?:\s4x4)?)")
        counts: Counter[str] = Counter()
        headed: set[str] = set()
        for passage in own:
            for match in pattern.finditer(passage.text):
                counts[match.group(1)] += 1
                if passage.kind is Kind.HEADING:
                    headed.add(match.group(1))
        return [code for code, count in counts.items() if count >= 2 or code in headed]

    def _named(self, model: str, own: list[Passage]) -> Place | None:
        for passage in own:
            if model.casefold() in passage.text.casefold():
                return Place(passage, passage.page, model)
        return None


def _unique(texts: Iterable[str]) -> list[str]:
    return [text for text in dict.fromkeys(texts) if text.strip()]


def _place(cells: list[Passage], head: str, *, column: bool) -> Place:
    for cell in cells:
        named = cell.column if column else cell.row
        if named is not None and named.text == head:
            return Place(cell, cell.page, head)
    return Place(None, cells[0].page, head)
