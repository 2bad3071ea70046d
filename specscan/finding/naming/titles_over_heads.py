"""What stands over the vans of a document: their company, or the name of their range."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import holds, stands_before
from specscan.finding.naming.addresses import has_address
from specscan.finding.naming.full_names import is_series_word
from specscan.finding.naming.names import NameReader
from specscan.finding.naming.place import Names, Place, begins_with
from specscan.finding.naming.range_names import RangeNames, place_of
from specscan.finding.naming.roster import Roster
from specscan.finding.naming.table_heads import HeadReader
from specscan.finding.naming.title_roles import describes_vans, lists_ranges
from specscan.finding.naming.titled_heads import are_titled, ends_in_range, listed_behind
from specscan.records.text import Document, Kind, Passage

MAKERS_CODE = re.compile(r"[A-Z]{2,3}[ -]?\d")  # "TK 540": letters of the maker before a number
FIRST_LINES = 14
FIRST_ALONE = 3  # lines in which a company stands alone


class TitlesOverHeads:
    """Tells titles that name a company from those that name the range of the vans below them."""

    def __init__(self, names: NameReader, heads: HeadReader, range_names: RangeNames, lexicon: Lexicon):
        self.names = names
        self.heads = heads
        self.range_names = range_names
        self.lexicon = lexicon

    def take_house(self, names: Names, heads: Collection[str], document: Document, own: list[Passage]) -> None:
        """Take a title above vans with names of their own for the company, where nothing says that it is a range.

        The title is then read anew: the range may stand below the company, "Marrowfen" above "Drift". In "Marrowfen
        Drift" above headings "Drift Gorse" and "Drift Alder" it stands behind it.
        """
        plain = [self.heads.bare(head) for head in heads]
        whole, place = (names.maker, names.maker_place) if names.maker else (names.title, names.title_place)
        house, behind = ends_in_range(whole, [p.text for p in own if p.kind is Kind.HEADING], plain)
        if house and not names.used and not self.names.is_filler(house):
            names.maker, names.maker_place = house, place
            names.title = names.series = behind
        if not plain or names.maker or names.used:
            return
        runs = self.range_names.runs_behind(names.title, plain, document)
        runs = runs or has_address(names.title, own, self.names.names_no_van)
        if not self._is_house(names.title, plain, own, codes=runs):
            return
        house, place = names.title, names.title_place
        names.maker, names.maker_place = house, place
        names.title = names.series = ""
        self.names.read_title(names, document, own, heads)

    def take_range(self, names: Names, heads: Iterable[str], document: Document, own: list[Passage]) -> None:
        """Take the range of vans whose heads are codes or trims from where it stands, if no title gives it."""
        plain = [self.heads.bare(head) for head in heads]
        if not plain or names.used:
            return
        if names.maker and all(begins_with(head, names.maker) and head != names.maker for head in plain):
            names.title = names.series = ""  # "Marrowfen Drift", "Marrowfen Gorse" are whole names, the company's first
            return
        if self._take_listed(names, plain, own):
            return
        if coded := self.range_names.coded_before(plain, document, own, names.maker):
            names.title = names.series = coded
            names.title_place = place_of(coded, own)
            return
        if describes_vans(names.series, plain, own):
            names.title = names.series = ""
        told = self.is_told("", own, names.maker, plain)
        if names.series and lists_ranges(names.series, plain):
            names.title = names.series = ""
        if names.series and all(begins_with(head, names.series) for head in plain):
            if not told:
                return  # "Drift" and "Drift Snow", not "Solo" and "Solo Plus" of the Drift
            names.title = names.series = ""
        cornered = self.range_names.of_corner(document, names.maker)
        beside = cornered or self.range_names.of_margins(document, names.maker, plain)
        if not told and not beside and are_titled(plain, names.series, document, own):
            names.title = names.series = ""
            return
        alone = names.title == names.series and names.title.casefold() in {head.casefold() for head in plain}
        ranged = alone and any(stands_before(p.text, names.title, head) for p in own for head in plain)
        if alone and not ranged and not all(begins_with(head, names.title) for head in plain):
            names.title = names.series = ""  # the first van of a line that lists them
        name = self.range_names.of_heads(plain, names, document, own)
        named = re.search(r"\d", names.title) is not None and begins_with(names.title, names.series)  # "Drift 22"
        names.confirmed = bool(names.maker and name) and name == names.series and (named or name == beside)
        names.confirmed |= bool(name) and name == self.range_names.before_list(plain, names.maker, own)
        if name and name.casefold() != names.series.casefold():
            before = names.series.removesuffix(f" {name}")
            first = any(p.table is None and p.text.strip() == before for p in own[:FIRST_ALONE])
            house = self.range_names.house_of(name, document)
            if not names.maker and (house or before and (before != names.series or first)):
                # "Marrowfen Drift" or "Marrowfen" over "the Drift S"
                names.maker, names.maker_place = house or before, names.title_place
            names.title = names.series = name
            names.title_place = place_of(name, own)

    def _take_listed(self, names: Names, heads: Collection[str], own: list[Passage]) -> bool:
        """Take the range, with its figure, from a title that lists all heads behind it: "Drift 21 LT • ST • PX"."""
        for text, passage in listed_behind(heads, own):
            base = self.names.clean(text, names.maker)
            words = " ".join(word for word in base.split() if not re.search(r"\d", word))
            used = not names.title and any(one is not passage and holds(one.text, base) for one in own)
            if (
                words
                and (used or begins_with(names.title, base))
                and self.range_names.can_name_range(words, names.maker)
            ):
                names.title = names.series = base
                names.title_place = Place(passage, passage.page, base)
                return True
        return False

    def take_maker_before(self, names: Names, series: str, own: Sequence[Passage]) -> None:
        """Take a title that is no range for the maker where it stands right before that of the vans' heads.

        So what a letter is about names the maker.
        """
        if names.maker or self.names.read_maker_about(names, series):
            return
        word = names.title.isalpha() and not begins_with(names.title, series) and not self.names.is_filler(names.title)
        if word and any(stands_before(p.text, names.title, series) for p in own):
            names.maker, names.maker_place = names.title, names.title_place

    def reread_title(self, names: Names, document: Document, own: list[Passage], codes: Collection[str]) -> None:
        """Take the title anew that is none of some vans, where it is a range's: said so, or with words of titles."""
        self.names.read_title(names, document, own, codes)
        if not names.title:
            return
        lines = [p.text.strip(" .") for p in own[:FIRST_LINES] if p.table is None]
        titled = any(line != names.title and self.names.clean(line, names.maker) == names.title for line in lines)
        if not names.maker or not (titled or self.names.signs.are_seen(names.title, own, codes)):
            names.title = names.series = ""

    def _is_house(self, title: str, heads: list[str], own: list[Passage], *, codes: bool) -> bool:
        """Tell whether a title is the company above vans with names of their own, which no line sets behind it.

        ``codes`` says that they may be codes: the name of their range stands behind the company's elsewhere, or its
        address.
        """
        if not title or re.search(r"\d", title) or self.names.signs.are_seen(title, own, heads):
            return False
        own_names = codes or all(is_series_word(head.split()[0]) or MAKERS_CODE.match(head) for head in heads)
        return own_names and any(
            p.table is None and p.text.strip().casefold() == title.casefold() for p in own[:FIRST_ALONE]
        )

    def take_roster(self, names: Names, roster: Roster, own: list[Passage]) -> None:
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
                and not self.names.letters.framing.match(passage.text)
                and roster.series.casefold() not in before.casefold()
            ):
                names.maker = self.names.cased(before, own)
                names.maker_place = Place(passage, passage.page, passage.text)
                return

    def is_told(self, name: str, own: list[Passage], maker: str, heads: Collection[str]) -> bool:
        """Tell whether a sentence says that all vans of some heads are of a range, of the one named if one is."""
        told = self.range_names.told(own, maker, heads)
        return told is not None and set(heads) <= set(told[1]) and name in ("", told[0])
