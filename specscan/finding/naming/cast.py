"""The vans of a document and the ways in which it names them."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence
from functools import partial

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.quantities import QuantityReader
from specscan.finding.language.whole_words import stands_before
from specscan.finding.naming.addresses import hosts
from specscan.finding.naming.bases_in_heads import BasesInHeads
from specscan.finding.naming.chapters import ChapterReader
from specscan.finding.naming.code_ranges import CodeRanges, with_ranges, with_row_ranges
from specscan.finding.naming.explained import ExplainedNames
from specscan.finding.naming.full_names import (
    CODE,
    are_numbered,
    cased_model,
    columns_beside,
    full_name,
    is_series_word,
    without_groups,
)
from specscan.finding.naming.head_remarks import HeadRemarks
from specscan.finding.naming.house_words import take_called_without, without_house
from specscan.finding.naming.listing import read_listing
from specscan.finding.naming.longer_titles import LongerTitles
from specscan.finding.naming.names import NameReader
from specscan.finding.naming.own_labels import take_own_labels
from specscan.finding.naming.place import Names, Place, begins_with, of_range
from specscan.finding.naming.plain_heads import PlainHeads
from specscan.finding.naming.players import Cast, Player, add_aliases
from specscan.finding.naming.range_names import RangeNames, place_of
from specscan.finding.naming.roster import (
    LONGEST,
    PARTS,
    Roster,
    match_heads,
    read_coded,
    read_lone,
    read_roster,
    unbroken,
)
from specscan.finding.naming.several_makers import SeveralMakers
from specscan.finding.naming.table_heads import HeadReader
from specscan.finding.naming.title_roles import (
    can_be_of,
    is_house_of,
    is_other_title,
    split_maker,
)
from specscan.finding.naming.titles_over_heads import TitlesOverHeads
from specscan.finding.naming.told_names import ToldNames
from specscan.finding.naming.years import YEAR
from specscan.records.text import Document, Kind, Passage, Title
from specscan.rulebook.book import Rulebook

CODED = re.compile(r"\d{2,3}(?!\d)")
FIRST_LINES = 14
MOSTLY = 0.6  # of the cells below the name of a range that are labels


class CastReader:
    """Finds the vans in documents of one language."""

    def __init__(self, book: Rulebook, lexicon: Lexicon, quantities: QuantityReader):
        self.book = book
        self.lexicon = lexicon
        self.names = NameReader(book, lexicon)
        self.chapters = ChapterReader(lexicon)
        self.heads = HeadReader(lexicon, quantities, list(book.words.values()))
        self.can_be_name = self.heads.can_be_name
        others = list(book.words.values())
        self.range_names = RangeNames(lexicon, others, self.names.names_no_van, self.can_be_name, self.names.clean)
        self.code_ranges = CodeRanges(lexicon, self.chapters.ranges)
        joints = (*lexicon.words.cues["number_joint"], *lexicon.words.drop, *lexicon.words.made_by)
        self.remarks = HeadRemarks(joints, self.can_be_name)
        self.plain_heads = PlainHeads(book.general, lexicon.words)
        self.several = SeveralMakers(self.names, lexicon, self.heads.bare)
        self.bases_in_heads = BasesInHeads(lexicon.words, self.can_be_name)
        self.longer = LongerTitles(self.names, self.can_be_name)
        self.explained = ExplainedNames(lexicon.words)
        self.told = ToldNames(self.names, self.chapters, self.can_be_name)
        self.over_heads = TitlesOverHeads(self.names, self.heads, self.range_names, lexicon)

    def with_ranges(self, passages: Sequence[Passage], titles: Sequence[Title]) -> tuple[Passage, ...]:
        """Give the passages of a document of several ranges with its range before each bare code in a head.

        What heads say of their vans behind the names is left out.
        """
        lines = [title.text for title in titles]
        passages = self.remarks.without(self.plain_heads.without_articles(passages, lines), lines)
        ranged = with_ranges(passages, self.code_ranges.read(passages, titles, self.can_be_name))
        return with_row_ranges(ranged, self.code_ranges.of_rows(ranged))

    def _can_be_counted(self, text: str) -> bool:
        return self.can_be_name(text) and not self.names.names_no_van(text)

    def _can_be_code(self, text: str) -> bool:
        return self.can_be_name(text) and self.names.short_year.fullmatch(text) is None  # "MY26"

    def read(
        self, document: Document, named: frozenset[str] = frozenset(), labelled: frozenset[str] = frozenset()
    ) -> Cast:
        """Give the vans of a document; without table heads or trims there is one, named by the title.

        ``named`` are heads of which the document says itself that they name vans, ``labelled`` such headings.
        """
        document = self.plain_heads.unsigned(document)
        other = self.names.other_passages(document)
        own = [p for p in document.passages if p.number not in other]
        heads = self.heads.read(own, named)
        ranged = [head for head in heads if self._heads_range(head, heads, own)]
        heads = {head: place for head, place in heads.items() if head not in ranged}
        # vans that a sentence counts and lists are named as heads of columns name them
        counted = {} if heads else self.heads.counted_vans.read(own, self._can_be_counted)
        heads = heads or counted
        names = self.names.read(document, own, heads)
        names.other, names.labelled = other, labelled
        if several := self.several.read(heads, own):
            names.maker = names.title = names.series = ""
            mapping = {
                head: frozenset({player.model}) for player in several for head in heads if head in player.aliases
            }
            cast = Cast(names, several, mapping)
            add_aliases(cast, self.lexicon.words, [passage.text for passage in own])
            return cast
        if ranged and not names.used and not re.search(r"\d", names.title):
            names.title = names.series = self.chapters.ranges.name(ranged[0]) or ranged[0]
        self.over_heads.take_house(names, heads, document, own)
        self.over_heads.take_range(names, heads, document, own)
        lines = [part for p in own[:FIRST_LINES] if len(p.text) <= LONGEST for part in PARTS.split(p.text)]
        alone = [p.text for p in own if p.kind is Kind.HEADING or not (p.row and p.row.text)]
        split_maker(names, heads or [*alone, *lines], hosts(own))
        words = self.lexicon.words
        no_codes = {*self.names.fillers, *words.cues.get("only", []), *words.model_year}  # "19 only" is no code
        titled = names.series == names.title or (
            not heads and not names.used and begins_with(names.title, names.series)
        )
        roster = read_roster(own, names.series if titled else "", no_codes)
        if roster is not None and (
            is_other_title(names, roster) or roster.series.casefold() in self.range_names.generic
        ):
            roster = None  # "Baureihe Drift · Baureihe Gorse" lists ranges
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
            elif len(listed) == 1 and not match_heads(heads, roster.models, roster.series):
                roster = None  # the heading of a van that stands in no table
        beside: list[Player] = []
        if roster is not None and len(roster.codes) == 1 and not heads:
            listing = read_listing(own, self.names, self.lexicon)
            beside = [] if listing else self.told.read(names, own)
            roster = roster if len(listing or beside) < 2 else None
        told = self.range_names.told(own, names.maker) if not heads else None
        if told is not None and roster is not None and is_house_of(names, roster, told):
            names.maker, names.maker_place = names.title, names.title_place
            names.title, roster = "", None
        if told is not None and roster is None and not names.used and can_be_of(names.title, told[0], told[1]):
            roster = Roster(told[0], tuple(told[1]), told[2])
        explained = None if heads else self.explained.read(own, self.can_be_name)
        roster, shorts = explained or (roster, ())
        rostered = roster is not None
        if roster is not None:
            self.over_heads.take_roster(names, roster, own)
            mapping = match_heads(heads, roster.models, roster.series)
            # A van is shown where its figures stand, the head of a column, rather than where it is listed.
            shown = {next(iter(vans)): heads[head] for head, vans in reversed(mapping.items()) if len(vans) == 1}
            players = [
                Player(model, shown.get(model, Place(roster.passage, roster.passage.page, model)), {model, code})
                for model, code in zip(roster.models, roster.codes, strict=True)
            ]
            for player, short in zip(players, shorts, strict=False):
                player.aliases.add(short)
            for player in players:
                plain = {self.heads.bare(head) for head, vans in mapping.items() if vans == {player.model}}
                player.aliases |= {head for head in plain if player.model.endswith(f" {head}")}  # "Scholar" says it
        elif heads:
            players, mapping = self._from_heads(heads, names, own)
            chapters = self.told.chaptered(names, own)
            if {player.model.casefold() for player in players} <= {player.model.casefold() for player in chapters}:
                players, mapping = chapters, match_heads(heads, [player.model for player in chapters], names.series)
            else:
                players += self.told.beside(names, own, heads, players)
        else:
            listing = read_listing(own, self.names, self.lexicon)
            players = [Player(one.model, one.place, listed=one) for one in listing]
            if not players:
                players = self._alone(names, document, own)
                rostered = len(players) > 1
            players = players or beside or self._with_range(self.told.read(names, own), names, document, own)
            mapping = {}
        if names.year is None and names.series:
            self.names.read_year(names, document, own, heads)  # "the 2026 Drift Series", now that the range is known
        take_called_without(names, players, self.names.letter.body)
        mapping = without_house(names, players, mapping, self.names.stem, self.can_be_name)
        if not players and names.title:
            names.title = self.longer.read(names, document, own)
            players = self._with_range([Player(names.title, names.title_place)], names, document, own)
        take_own_labels(players, names, own, self.lexicon.words, mapping)
        cast = Cast(names, players, mapping, rostered=rostered or bool(counted))
        add_aliases(cast, self.lexicon.words, [passage.text for passage in own])
        return cast

    def _alone(self, names: Names, document: Document, own: list[Passage]) -> list[Player]:
        """Give the vans of a line that lists names of no common range, where no other title names the range."""
        plain = "" if not names.title or self.names.is_filler(names.title) else names.title
        if names.used or names.labelled or self.told.are_listed(names, own):
            return []
        clean = partial(self.names.clean, maker=names.maker)
        nothing = partial(self.names.names_nothing, maker=names.maker)
        listed = read_lone(own, plain, self._can_be_code, clean, nothing)
        if {name for name, _ in listed} <= set(names.maker.split()):
            listed = []  # "Marrowfen & Holt" is the company
        if listed:
            names.title = names.series = ""
            self.over_heads.reread_title(names, document, own, [name for name, _ in listed])
        elif not names.title:
            listed = read_coded(own, self._can_be_code, clean)
        codes = [name for name, _ in listed]
        if listed and (name := self.range_names.of_heads(codes, names, document, own)):
            names.title = names.series = name
        return [Player(of_range(names.series, name), Place(passage, passage.page, name)) for name, passage in listed]

    def _with_range(self, players: list[Player], names: Names, document: Document, own: list[Passage]) -> list[Player]:
        """Give vans that headings call by mere codes with the name of their range, where it stands above or beside."""
        codes = [player.model for player in players]
        if names.series or not codes or not all(map(CODE.match, codes)):
            return players
        several = len(codes) > 1
        read = self.range_names.of_heads if several else self.range_names.of_lone
        if name := read(codes, names, document, own) if several or not names.used else "":
            names.title = names.series = self.names.cased(name, own)
            names.title_place = place_of(name, own)
            for player in players:
                player.model, player.base = (
                    of_range(names.series, one) if one else "" for one in (player.model, player.base)
                )
        return players

    def _heads_range(self, head: str, heads: Collection[str], own: list[Passage]) -> bool:
        """Tell whether a head names the range of the others: "The Drift range", "Drift" over the labels of a table.

        What has values of its own is one of them, whatever it is called: "Drift Hi-Line" between "Drift" and "Gorse".
        """
        if len(heads) < 3:
            return False
        below = [p.text for p in own if head in (p.column and p.column.text, p.row and p.column and p.row.text)]
        labels = sum(self.lexicon.knows_label(text) for text in below)
        if below and labels < MOSTLY * len(below):
            return False
        return bool(self.chapters.ranges.name(head) or (below and self.range_names.of_label(head)))

    def _from_heads(
        self, heads: dict[str, Place], names: Names, own: list[Passage]
    ) -> tuple[list[Player], dict[str, frozenset[str]]]:
        text = "\n".join(p.text for p in own)
        years = {int(match.group(1)): place for head, place in heads.items() if (match := YEAR.search(head))}
        if names.year is None and len(years) == 1:
            [(names.year, names.year_place)] = years.items()
        full: dict[str, str] = {}
        ranges = self.chapters.ranges.named(own)
        plain = without_groups([self.heads.bare(head) for head in heads], names, text, ranges)
        firsts = {head.split()[0] for head in plain if len(head.split()) > 1}
        is_told = self.over_heads.is_told
        if (
            len(firsts) == 1
            and len(heads) > 1
            and is_series_word(first := next(iter(firsts)))
            and first.casefold() != names.maker.casefold()
            and not (first in plain and (names.confirmed or is_told(names.series, own, names.maker, plain)))
            and not (names.series and all(stands_before(text, names.series, head) for head in plain))
        ):
            if all(head.startswith(first) for head in plain):
                names.series = first
                self.over_heads.take_maker_before(names, first, own)
        names.numbered = self.names.says_year(names) and are_numbered(plain, names.year)
        beside = columns_beside(heads, own)
        for head, name in zip(heads, plain, strict=True):
            others = [one for one, printed in zip(plain, heads, strict=True) if printed not in beside[head]]
            full[head] = cased_model(full_name(name, names, text, plain, others), text)
        players: dict[str, Player] = {}
        mapping: dict[str, frozenset[str]] = {}
        ranged = [model for model in full.values() if model.startswith(f"{names.series} ")] if names.series else []
        for head, model in full.items():
            sister = beside[head] and not any(
                re.search(r"\d", one) for one in ranged
            )  # "Drift", "Drift Plus", "Drift Max"
            if len(ranged) > 1 and model == names.series and len(ranged) == len(full) - 1 and not sister:
                mapping[head] = frozenset(ranged)  # the range of all the others heads a table
                continue
            same = next((m for m in players if m.casefold() == model.casefold()), None)
            if same is None:
                others = [m for printed, m in full.items() if printed not in beside[head]]
                longer = [m for m in others if m.casefold().endswith(" " + model.casefold()) and m != model]
                if len(longer) == 1 or (longer and model != names.series):  # "Drift" beside "Little" and "Great Drift"
                    mapping[head] = frozenset(longer[:1])
                    continue
                players[model] = Player(model, heads[head])
                same = model
            players[same].aliases.add(head.strip(" *†"))
            mapping[head] = frozenset({same})
        return list(players.values()), mapping
