"""Maker, series, model and year of the vans in a document, from titles, table heads and text."""

from __future__ import annotations

import re
from collections import Counter, defaultdict
from collections.abc import Collection

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.houses import HouseReader, behind_trade, parted
from specscan.finding.naming.letters import LetterReader
from specscan.finding.naming.make_and_model import MakeAndModel
from specscan.finding.naming.maker import FIRST_LINES
from specscan.finding.naming.place import PARTED, Names, Place, begins_with, without_start
from specscan.finding.naming.titles import TitleReader
from specscan.records.text import Document, Kind, Passage
from specscan.rulebook.book import Rulebook

USED_CUES = 3
FIRST_ASKED, LAST_ASKED = 40, 8  # passages in which a seller says that a van is used, at the beginning and the end
LONGEST_LEAD = 40
MOST_WORDS = 5  # of a company's name
FEW = 6  # passages: a page of fewer has no part that is most of it


class NameReader(TitleReader):
    """Finds names in documents of one language."""

    def __init__(self, book: Rulebook, lexicon: Lexicon):
        super().__init__(book, lexicon)
        self.used_terms: dict[str, list[tuple[str, ...]]] = defaultdict(list)  # what goes on behind their first words
        for norms in lexicon.terms_of_cue("used"):
            self.used_terms[norms[0]].append(norms[1:])
        self.houses = HouseReader(lexicon)
        self.letters = LetterReader(lexicon)
        self.makes = MakeAndModel(self.words.make_model_labels, self._is_trade)
        counted = (*self.words.model_words, *self.words.vans)
        self.counted = {norm for word in counted for norm in lexicon.folder.norms(word)}

    def read(self, document: Document, own: list[Passage], heads: Collection[str] = ()) -> Names:
        """Give maker, series, year and title of a document; what is not printed stays empty.

        ``own`` are the passages that do not speak of other vans; ``heads`` are those of tables that name vans.
        """
        names = Names()
        own = [p for p in own if p.table is not None or not self.names_paper(p.text)]
        names.used = self.used = self._is_used(own)
        self.letter = self.letters.read(own)
        if not heads and self.makes.read(names, own):
            names.title = self.cased(names.title, own)
            names.maker, names.series = self.cased(names.maker, own), self._series(names.title)
            self.read_year(names, document, own)
            return names
        self._read_maker(names, document, own, heads)
        if (built := self.houses.builder_of_all(own) or self.houses.dealt_in(own)) is not None:
            company, passage = built  # the line at the top may be of who hires or sells them
            names.maker, names.maker_place = company, Place(passage, passage.page, company)
        self.read_title(names, document, own, heads)
        self._read_edition(names, own)
        self.read_year(names, document, own, heads)
        if not names.maker and names.title:
            house = parted(names.title, self.houses.companies(own)) or behind_trade(names.title, self._is_trade)
            names.maker, names.title = house or ("", names.title)  # "Marrowfen Drift 21" where "Marrowfen calls it" so
            names.maker_place, names.series = names.title_place if house else None, self._series(names.title)
        if not names.maker:
            self._read_builder(names, document, own, heads)
        if names.title and (not names.maker or names.maker_weak):
            self._read_before_title(names, own)
        if names.title and not names.maker and not names.used:
            self._read_above_title(names, own)
        if names.series and not names.maker and not names.used:
            running = self.running_maker(document, names.series)
            if running is not None:
                names.maker, names.maker_place = running
        return names

    def _read_builder(self, names: Names, document: Document, own: list[Passage], heads: Collection[str]) -> None:
        """Take the company that is said to build the vans, and a title anew that is this company alone."""
        plain = (re.sub(r"\W+$", "", head) for head in heads)
        known = dict.fromkeys((names.title, names.series, *plain))
        built = self.houses.builder_of(known, own) or self.houses.built_of(known, own)
        built = built or (None if names.used else self.houses.building_title(names.title, own))
        built = built or self.houses.builder_at(own, self._is_trade) or self.houses.signing(own, self._is_trade)
        if built is None or self.is_filler(built[0]):
            return
        names.maker, names.maker_place = built[0], Place(built[1], built[1].page, built[0])
        if begins_with(names.maker, names.title):
            names.title = names.series = ""
            self.read_title(names, document, own, heads)

    def with_edition(self, name: str, line: str) -> str:
        """Give a name with the word for editions that a line sets behind it, and nothing else: "Drift 21 Jubilee
        Edition", not "Drift 21 Edition"."""
        word = without_start(line, name) if begins_with(line, name) else ""
        last = name.split()[-1].casefold()
        own = last.isalpha() and not self.is_filler(last)
        return f"{name} {word}" if own and word[:1].isupper() and word in self.words.edition_words else name

    def _read_edition(self, names: Names, own: list[Passage]) -> None:
        """Take back a word for editions behind the name of one, where a text says both alone: "the Harbour Edition".

        Behind a figure and the name of one it is taken where it stands in one line with them.
        """
        if re.search(r"\d", names.title):
            lines = [p.text.strip(" .:*") for p in own if p.kind is Kind.HEADING and p.page in (0, 1)]
            if longer := [name for line in lines if (name := self.with_edition(names.title, line)) != names.title]:
                names.title = longer[0]
                return
        last = names.title.split()[-1] if " " in names.title else ""
        if not last.isalpha():
            return
        edition = re.compile(rf"{re.escape(last)} ({any_word(self.words.edition_words)})(?!\w)")
        found = [(p.text[: match.start()], match.group(1)) for p in own for match in edition.finditer(p.text)]
        before = names.title.removesuffix(last)
        if len({lead.endswith(before) for lead, _ in found}) > 1:  # behind the name, and without the rest of it
            names.title = f"{names.title} {found[0][1]}"

    def _read_before_title(self, names: Names, own: list[Passage]) -> None:
        """Take the one word that running text sets before the name: "your call about the Marrowfen Drift 560".

        It may be said in full: "Ours is a Marrowfen, the Drift 560".
        """
        if self.read_maker_about(names, names.title):
            return
        a, the = (any_word(self.words.cues[cue]) for cue in ("one_more", "definite"))
        told = rf"(?<=[a-zà-ÿ] )(?:(?:{a}) )?([A-ZÀ-Þ][\w’'-]{{2,}})(?:,? (?:{the}))? {re.escape(names.title)}(?!\w)"
        pattern = re.compile(told)
        for passage in own:
            match = pattern.search(passage.text)
            if match is not None and passage.kind in (Kind.PROSE, Kind.BULLET) and not self.is_filler(match.group(1)):
                name = self._whole_company(passage.text[: match.end(1)], own) or match.group(1)
                names.maker, names.maker_place = name, Place(passage, passage.page, name)
                return

    def _whole_company(self, lead: str, own: list[Passage]) -> str:
        """Give what opens a line before a title where it opens another line too, before a comma: "Atelier of the Fen".

        Small words between those with capitals are part of it.
        """
        again = sum(begins_with(PARTED.split(p.text)[0].replace(",", " ,"), lead) for p in own if p.table is None)
        words = lead.split()
        short = all(word[:1].isupper() or word in self.joints for word in words) and len(words) <= MOST_WORDS
        return lead if again > 1 and short and words[0][0].isupper() else ""

    def read_maker_about(self, names: Names, name: str) -> bool:
        """Take the one word before a name in what a letter is about, "Your enquiry: Marrowfen Drift 560", if one is."""
        pattern = re.compile(rf"(?:^|[:–-] |[a-zà-ÿ] )([A-ZÀ-Þ][\w’'-]{{2,}}) {re.escape(name)}(?!\w)")
        for text, passage in self.letter.about:
            match = pattern.search(text)
            if match is not None and not self.is_filler(match.group(1)):
                names.maker, names.maker_place = match.group(1), Place(passage, passage.page, match.group(1))
                return True
        return False

    def _read_above_title(self, names: Names, own: list[Passage]) -> None:
        """Take the name that stands alone above the first line with the title, as on a letterhead."""
        for passage in own[:FIRST_LINES]:
            if passage.number in self.letter.framed:
                continue  # "Dear Marvella,", and the town where she lives
            if passage.table is not None or names.series.casefold() in passage.text.casefold():
                return
            if self.letters.framing.match(passage.text):
                continue  # "From: yard@marrowfen.example"
            words = passage.text.strip(" .").split()
            small = [place for place, word in enumerate(words) if word.islower()]
            said = passage.text.rstrip().endswith((".", "!", "?"))  # "Thank you for asking about our vans."
            if small and not said and self.lexicon.cues(self.lexicon.analyse(" ".join(words[small[0] :])), "company"):
                words = words[: small[0]]  # "Marrowfen    builders of camper vans"
            if not self._is_plain_name(words) and (bare := self.clean(passage.text, "").split()) != words:
                words = bare  # "MARROWFEN  PRICE LIST 2026"
            counted = bool(words) and words[0].casefold() in self.words.numbers  # "Two vans for cold water"
            if self._is_plain_name(words) and not counted:
                name = self.cased(" ".join(words), own)
                names.maker, names.maker_place = name, Place(passage, passage.page, " ".join(words))
                return

    def other_passages(self, document: Document) -> set[int]:
        """Give the passages under headings such as "you may also like" or "comments"."""
        found = set()
        known: dict[str, bool] = {}
        governed = Counter(heading for passage in document.passages for heading in set(passage.sections))
        most = max(0.5 * len(document.passages), FEW)  # "Compare our vans" above the whole page opens no others
        tables = Counter((p.block, p.sections) for p in document.passages if p.table is not None)
        under: tuple[object, ...] = ()
        for passage in document.passages:
            under = self._opens_others(passage) or under
            if self._leads_with_others(passage):
                found.add(passage.number)
            below = under and under == (passage.block, passage.sections) and passage.kind is not Kind.HEADING
            if below and tables[passage.block, passage.sections] < most:
                found.add(passage.number)
            for heading in passage.sections[-2:] + ((passage.text,) if passage.kind is Kind.HEADING else ()):
                if heading not in known:
                    cues = len(heading) <= 60 and self.lexicon.cues(
                        self.lexicon.analyse(heading), "other_vans", "comments"
                    )
                    known[heading] = bool(cues) and governed[heading] < most
                if known[heading]:
                    found.add(passage.number)
        return found

    def _leads_with_others(self, passage: Passage) -> bool:
        """Tell whether a line begins with words for other vans and a colon: "Also in stock: Drift 19, 80 litres"."""
        lead, colon, _ = passage.text.partition(":")
        if not colon or len(lead) > LONGEST_LEAD or passage.kind is Kind.CELL:
            return False
        analysis = self.lexicon.analyse(lead)
        cues = self.lexicon.cues(analysis, "other_vans")
        return any(cue.first == 0 and cue.last == len(analysis.tokens) for cue in cues)

    def _opens_others(self, passage: Passage) -> tuple[object, ...]:
        """Give block and headings of a line that says only "Comments" or "You may also like", else nothing."""
        if passage.kind is Kind.HEADING or len(passage.text) > 40:
            return ()
        analysis = self.lexicon.analyse(passage.text)
        cues = self.lexicon.cues(analysis, "other_vans", "comments")
        if not cues:
            return ()
        words = [t for t in analysis.tokens if t.norm not in self.counted and not t.norm.isdecimal()]  # "3 comments"
        alone = any(all(m.start <= t.start < m.end for t in words) for m in cues)
        return (passage.block, passage.sections) if alone else ()

    def _is_used(self, passages: list[Passage]) -> bool:
        ends = [*passages[:FIRST_ASKED], *passages[max(FIRST_ASKED, len(passages) - LAST_ASKED) :]]
        said = [text for p in ends for text in ((p.row.text, p.text) if p.row is not None else (p.text,))]
        words = [token.norm for text in said for token in self.lexicon.analyse(text).tokens]
        if self._used_at(words) < USED_CUES:
            return False  # nearly all brochures: seen from their words, without a look for all terms in so long a text
        text = " ".join(said)
        cues = {text[m.start : m.end].casefold() for m in self.lexicon.cues(self.lexicon.analyse(text), "used")}
        return len(cues) >= USED_CUES

    def _used_at(self, words: list[str]) -> int:
        """Give at how many places of folded words a term for used vans may stand, ends of passages left out."""
        words = [word for word in words if word != "."]
        return sum(
            any(tuple(words[place + 1 : place + 1 + len(rest)]) == rest for rest in self.used_terms[word])
            for place, word in enumerate(words)
            if word in self.used_terms
        )
