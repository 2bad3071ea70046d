"""What names a document's vans, maker and year outside of its tables: title, imprint, edges of pages, properties."""

from __future__ import annotations

from collections.abc import Sequence
from random import Random

from tests.proving_ground.chatter import Chatter
from tests.proving_ground.naming import Naming, letterspaced
from tests.proving_ground.pages import Block, Page, Para, Piece, Said, Title
from tests.proving_ground.truth import UnfairError
from tests.proving_ground.vans import Family
from tests.proving_ground.words import Words


class NamePlates:
    """Prints the names of one family in the ways of its house."""

    def __init__(self, naming: Naming, family: Family, words: Words, chatter: Chatter, rng: Random):
        self.naming, self.family, self.words, self.chatter, self.rng = naming, family, words, chatter, rng

    # -- the title --------------------------------------------------------------------------------------------------

    def title(self, vans_below: bool) -> Title:
        """Give the title; the vans stand below where asked for and where the house lists them."""
        block = Title(layout="title", lines=self._headline())
        if self.naming.slogan:
            block.lines.insert(0, self.rng.choice(self.words.texts("slogans")))
        if above := self._maker_line():
            block.lines.insert(0, above)
        if self.naming.year == "subtitle":
            block.lines.append(self._written("years"))
        if self.naming.year == "short":
            block.lines.append(self._written("years_short"))
        if vans_below and (self.naming.listed or len(self.family.vans) == 1):
            self._list_vans(block)
        text = " ".join(block.lines)
        self._state_maker(block, text)
        self._state_year(block, text)
        return block

    def _maker_line(self) -> str:
        maker = self.family.maker
        ways = {"a line of its own": maker, "capitals": maker.upper(), "letterspaced": letterspaced(maker)}
        return ways.get(self.naming.maker, "")

    def _headline(self) -> list[str]:
        """Give the largest line: the range where the title names it, else what the document is about."""
        ranged = self.naming.range_in_title and bool(self.family.series)
        dated = self.naming.year == "in the title"
        kind = ("titles" if dated else "titles_undated") if ranged else ("titles_bare" if dated else "titles_general")
        ways = [way for way in self.words.texts(kind) if ("{maker}" in way) == (self.naming.maker == "in the title")]
        way = self.rng.choice(ways)
        if self.naming.maker == "by":
            by = self.words.book["by"]
            way = f"{way} {by} {{maker}}" if way.endswith("{series}") or not ranged else f"{way}\n{by} {{maker}}"
        return self._filled(way).split("\n")

    def _list_vans(self, block: Title) -> None:
        """Name the vans below the title: whole, or by what follows the range that the title names."""
        short = self.naming.range_in_title and bool(self.family.series) and self.naming.heads_are_codes
        called = [van.code if short and len(self.family.vans) > 1 else van.model for van in self.family.vans]
        if self.naming.heads_are_codes and not self.naming.range_in_title:
            called = [van.code for van in self.family.vans]
        block.lines.append(self.rng.choice((" · ", ", ", " | ")).join(called))
        for place, words in enumerate(called):
            self.name_van(block, place, words)

    def name_van(self, block: Block, place: int, words: str = "") -> None:
        """Note that a block names a van, by its whole name unless other words are given."""
        model = self.family.vans[place].model
        block.state(place, Piece(words or model, (Said("model", model),)))

    # -- elsewhere --------------------------------------------------------------------------------------------------

    def sentence(self) -> Para | None:
        """Give the sentence that names range and vans, where only it does."""
        if self.naming.place != "codes, range in a sentence":
            return None
        codes = [van.code for van in self.family.vans]
        the = self.words.book["the_van"]
        told = [the.format(van=code) for code in codes]
        listed = f"{', '.join(told[:-1])} {self.words.book['and']} {told[-1]}"
        way = self.rng.choice(self.words.texts("range_sentences"))
        block = Para(layout="title", text=way.format(series=self.family.series, vans=listed))
        for place, code in enumerate(codes):
            self.name_van(block, place, code)
        return block

    def corner(self, usual: str) -> str:
        """Give the corner cell of a table whose columns or rows are the vans."""
        if self.naming.place != "codes, range in the corner":
            return usual
        return self.rng.choice(self.words.texts("corners")).format(series=self.family.series)

    def imprint(self, block: Block) -> list[str]:
        """Give the lines of the imprint, and note what they state."""
        alone = self.naming.maker in ("imprint alone", "in the title", "running foot")
        with_maker = alone or not self.family.series or self.rng.random() < 0.5
        lines = [self.chatter.footer(with_maker)]
        if with_maker:
            self._state_maker(block, lines[0])
        if self.naming.year == "small print":
            lines.insert(0, f"{self._written('years_printed')}")
            self._state_year(block, lines[0])
        return lines

    def edges(self, pages: Sequence[list[Block]]) -> list[Page]:
        """Give pages with running heads and feet, and their numbers."""
        head, naming = "", self.naming
        if naming.place == "codes, range in the running head" and len(pages) < 2:
            raise UnfairError("a line that runs over one page tells nobody that it names the range")
        if naming.place == "codes, range in the running head":
            head = self._filled(self.rng.choice(self._fit("running_heads")))
        elif naming.range_in_title and self.family.series and self.rng.random() < 0.5:
            head = self._filled(self.rng.choice(self._fit("running_heads")))
        number = self.rng.choice(self.words.texts("page_words")) if self.rng.random() < 0.6 else ""
        foot = []
        if naming.maker == "running foot":
            foot.append(self.family.maker)
        if naming.year == "running foot":
            foot.append(self._written("years"))
        result = []
        for place, blocks in enumerate(pages, start=1):
            shown = " · ".join([*foot, *([number.format(n=place, m=len(pages))] if number else [])])
            first = naming.place == "codes, range in the running head" or place > 1
            page = Page(blocks, head if first else "", shown)
            for block in blocks[:1]:
                self._state_maker(block, shown)
                self._state_year(block, shown)
            result.append(page)
        return result

    def properties(self) -> str:
        """Give the title in the document's properties; a web page's is its <title>."""
        family = self.family
        if self.naming.range_in_title and family.series:
            return self.rng.choice((f"{family.series} {family.year}", f"{family.series} {family.year}", family.series))
        return str(self.rng.choice(("", self.words.texts("titles_general")[0], f"{family.maker} {family.year}")))

    def file_name(self) -> str:
        """Give a name for the file, without its number."""
        named = self.naming.range_in_title and self.rng.random() < 0.7
        return (
            f"{self.family.maker} {self.family.series}".strip() if named else f"{self.family.maker} {self.family.year}"
        )

    def everyone(self) -> list[str]:
        """Give the subjects of a sentence about all vans."""
        ranged = self.family.series and self.naming.range_in_title
        ways = self.words.texts("subjects_all" if ranged else "subjects_all_bare")
        return [way.format(series=self.family.series) for way in ways]

    # -- small words ------------------------------------------------------------------------------------------------

    def _fit(self, kind: str) -> list[str]:
        """Give the templates that name neither maker nor year where the house prints them elsewhere alone."""
        ways = self.words.texts(kind)
        fit = [
            way for way in ways
            if ("{maker}" not in way or self.naming.maker in ("in the title", "a line of its own"))
            and ("{year}" not in way or self.naming.year == "in the title")
        ]  # fmt: skip
        return fit or [way for way in ways if way == "{series}"]

    def _written(self, kind: str) -> str:
        return self._filled(self.rng.choice(self.words.texts(kind)))

    def _filled(self, way: str) -> str:
        family = self.family
        return way.format(maker=family.maker, series=family.series, year=family.year, yy=str(family.year)[2:])

    def _state_maker(self, block: Block, text: str) -> None:
        squeezed = "".join(self.family.maker.split()).casefold()
        if squeezed not in "".join(text.split()).casefold():
            return
        for place in range(len(self.family.vans)):
            piece = Piece(self.family.maker, (Said("maker", self.family.maker),))
            block.state(place, piece)

    def _state_year(self, block: Block, text: str) -> None:
        year = str(self.family.year)
        words = year if year in text else f"MY{year[2:]}" if f"MY{year[2:]}" in text else f"MJ{year[2:]}"
        if words not in text:
            return
        for place in range(len(self.family.vans)):
            block.state(place, Piece(words, (Said("model_year", year),)))
