"""The model year of the vans in a document, from titles, headings, lines near the figures and running lines."""

from __future__ import annotations

import re
from collections.abc import Collection, Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_of, any_word, stands_at
from specscan.finding.naming.maker import MakerReader
from specscan.finding.naming.name_forms import WORD, article
from specscan.finding.naming.place import PARTED, Names, Place, begins_with, running_lines
from specscan.records.text import Document, Kind, Passage, Title
from specscan.records.years import MODEL_YEAR
from specscan.rulebook.book import Rulebook

YEAR = re.compile(rf"(?<![\d/.,-])({MODEL_YEAR})(?![\d/-]|\s*(?:mm|kg|W|Wh|lb|l|L|€|\$)\b)")
CLAUSE_END = re.compile(r"[.;(|·•]\s?|\s[–—]\s")
DATED = re.compile(r"([^\W\d_]{3,9})\.?(?:\s+\d{1,2}(?:st|nd|rd|th)?,?)?\s*$")  # "November", "Nov. 12,"
RANGE = re.compile(rf"^{WORD} ")  # or a company, before the name of a van
SHORT_LINE = 40  # letters
PLACE = r"[^\W\d_][\w’'-]*(?: [^\W\d_][\w’'-]*){0,3}"
SHORT = 3  # letters of a word for the model year that stands before two figures: MY26
CENTURY = 2000
FIRST_YEAR = 1990
OFFERED = 2.5  # points of the year for which vans are counted or said to be there
OF_VANS = -1.0  # points of a year before a word for vans: it counts in headings and on the first lines


def begins_with_name(text: str, name: str) -> bool:
    """Tell whether a text begins with a name, however it is shouted, or with a company and the name."""
    return any(one.casefold().startswith(name.casefold()) for one in (text, RANGE.sub("", text)))


class YearReader(MakerReader):
    """Finds the model year in documents of one language."""

    def __init__(self, book: Rulebook, lexicon: Lexicon):
        super().__init__(book, lexicon)
        self.used = False
        self.date = dates(self.words.months, self.words.dates_from)
        self.dateline = re.compile(rf"({PLACE}(?:, {PLACE})?), {self.date.pattern}", re.IGNORECASE)
        self.month_names = {month.casefold() for file in book.words.values() for month in file.months}
        self.months = {month[:3].casefold() for file in book.words.values() for month in file.months}
        self.of_model_year = any_of(self.words.model_year, whole=True)
        self.right_before = re.compile(rf"(?<!\w)(?:{any_word(self.words.model_year)})\s+$", re.IGNORECASE)
        self.right_behind = re.compile(rf"\s+(?:{any_word(self.words.model_year)})(?!\w)", re.IGNORECASE)
        editions = any_word(self.words.editions)
        self.edition_before = re.compile(rf"(?<!\w)(?:{editions})\s+$", re.IGNORECASE)
        self.edition_behind = re.compile(rf"\s+(?:{editions})(?!\w)", re.IGNORECASE)
        self.article = re.compile(article(self.words.articles_of_names))
        self.joint_words = {"&", "+", *(word.casefold() for word in self.words.cues.get("number_joint", []))}
        self.paper = re.compile(rf"(?<!\w)(?:{any_word(self.words.papers)})\s+$", re.IGNORECASE)
        self.other_words = re.compile(rf"(?<!\w)(?:{any_word(self.words.not_model_year)})\w*")
        short = [phrase.upper() for phrase in self.words.model_year if len(phrase) <= SHORT]
        vans = any_word([*self.words.vans, *self.words.model_words])
        counted = [word for word, number in self.words.numbers.items() if number > 1]
        offered = any_word([*self.words.vans, *self.words.model_words, *self.words.range_words, *counted])
        self.offered_for = re.compile(rf"(?<!\w)(?:{offered})\s+(?:{any_word(self.words.for_year)})\s+$", re.IGNORECASE)
        self.of_vans = re.compile(rf"\s(?:{vans})(?!\w)", re.IGNORECASE)
        self.short_year = re.compile(rf"(?<!\w)(?:{any_word(short)})[ \u00a0]?['’]?(?:20)?(\d\d)(?!\d)")

    def is_dateline(self, line: str, own: Sequence[Passage]) -> bool:
        """Tell whether a line says where and when something was written: "Fenmouth, 3 October 2025".

        Where another line sets a figure behind the same words they are a name, not a place.
        """
        match = self.dateline.fullmatch(line.strip(" .–—-"))
        if match is None:
            return False
        named = re.compile(rf"{re.escape(match.group(1))} \S*\d", re.IGNORECASE)
        return not any(named.match(passage.text) for passage in own)

    def _is_month(self, before: str) -> bool:
        word = DATED.search(before)
        return word is not None and word.group(1).casefold()[:3] in self.months

    def _says_model_year(self, text: str) -> bool:
        return bool(self.of_model_year.search(text.casefold()))

    def says_year(self, names: Names) -> bool:
        """Tell whether the model year stands where it is called so: "model year 2026"."""
        return names.year_place is not None and self._says_model_year(names.year_place.text)

    def _place_of(self, title: Title, own: list[Passage]) -> Place:
        for passage in own:
            if passage.page == title.page and title.text in passage.text:
                return Place(passage, passage.page, title.text)
        return Place(None, title.page, title.text)

    def read_year(self, names: Names, document: Document, own: list[Passage], heads: Collection[str] = ()) -> None:
        """Read the model year, where anything tells it for certain enough; ``heads`` name vans."""
        named = names.series or names.title  # "LH-148" has a figure from its first word on
        found: list[tuple[float, int, Place]] = []
        beside: list[tuple[float, int, Place]] = []
        for weight, text, place in self._year_texts(document, own):
            for match in YEAR.finditer(text) if "19" in text or "20" in text else ():
                value = int(match.group(1))
                points = weight + self._year_points(text, match)
                after = text[match.end() :].lstrip()
                if named and self._is_edition(text, match, named):
                    points = max(points, weight + 2.0)  # "Drift 21, edition 2027", whatever edition that of a paper is
                if named and begins_with_name(after, named):
                    points = max(points, weight + 3.0)  # "2027 Drift 19  2027 Drift 21"
                elif self._stands_before(after, heads) and FIRST_YEAR <= value:
                    beside.append((weight + 3.0, value, place))
                if points <= 0 or value < FIRST_YEAR:
                    continue
                found.append((points, value, place))
            for match in self.short_year.finditer(text):
                found.append((weight + 3.0, CENTURY + int(match.group(1)), place))
        latest = max((year for _, year, _ in found), default=0)
        found += [one for one in beside if one[1] >= latest]  # "a 2023 Drift 19" among vans of 2027 is another van
        # what is printed as text is surer than what was recognised in a picture
        printed = [one for one in found if one[2].passage is None or one[2].passage.source != "ocr"]
        if found:
            _, names.year, names.year_place = max(printed or found, key=lambda one: one[0])

    def _is_edition(self, text: str, match: re.Match[str], named: str) -> bool:
        """Tell whether a short line that begins with a van's or a range's name says of which year its edition is."""
        lead = self.article.sub("", text, count=1) if self.article.match(text) else text
        beside = self.edition_before.search(text, 0, match.start()) or self.edition_behind.match(text, match.end())
        return beside is not None and begins_with(lead.replace(",", " ,"), named) and len(text) <= SHORT_LINE

    @staticmethod
    def _stands_before(text: str, names: Collection[str]) -> bool:
        """Tell whether a text begins with a name, or with that of a range and one: "Solo" in "Drift Solo and Duo"."""
        return any(stands_at(text, name, 0) or stands_at(RANGE.sub("", text), name, 0) for name in names)

    def _year_texts(self, document: Document, own: list[Passage]) -> list[tuple[float, str, Place]]:
        texts: list[tuple[float, str, Place]] = []
        for index, passage in enumerate(own):
            weight = 0.0
            short = len(passage.text) <= 70 and passage.kind is not Kind.CELL
            following = own[index + 1 : index + 5]
            if short and sum(p.kind is Kind.CELL for p in following) >= 2:
                weight = 3.0
            elif passage.kind is Kind.HEADING or passage.page in (0, 1) and index < 12:
                weight = 2.0
            texts.append((weight, passage.text, Place(passage, passage.page, passage.text)))
        for title in document.titles:
            if title.origin in ("metadata", "html") or title.page in (0, 1):
                where = self._place_of(title, own)
                texts += [(1.5, part, where) for part in {title.text, *PARTED.split(title.text)}]
        for text, where in running_lines(document):
            texts += [(1.5, part, where) for part in PARTED.split(text)]
        stem = document.path.rsplit("/", 1)[-1]
        texts.append((0.5, re.sub(r"[_-]", " ", stem), Place(None, 1, stem)))
        return texts

    def _titles_document(self, before: str) -> bool:
        """Tell whether a year stands behind nothing but the kind of document: "Fiche technique 2026  5.4 6.0"."""
        return len(before.split()) in (1, 2, 3) and self.is_filler(before.strip())

    def _titles_more(self, before: str) -> bool:
        """Tell whether a document is titled by more than what has other years: "Prices and specifications 2027"."""
        more = self.other_words.sub(" ", before.casefold())
        words = [word for word in more.split() if word not in self.joint_words]
        return more != before.casefold() and self._titles_document(" ".join(words))

    def _closes(self, text: str, match: re.Match[str]) -> bool:
        """Tell whether a year closes a line behind a kind of paper: "Marrowfen, builders in Ost   catalog 2027"."""
        return not text[match.end() :].strip(" .") and self.paper.search(text, 0, match.start()) is not None

    def _year_points(self, text: str, match: re.Match[str]) -> float:
        before, after = text[: match.start()].casefold()[-28:], text[match.end() :].casefold()[:24]
        near = CLAUSE_END.split(before)[-1] + " " + CLAUSE_END.split(after)[0]
        right_beside = self.right_before.search(before) or self.right_behind.match(after)
        if self.of_other_year.search(near) and not right_beside and not self._titles_more(text[: match.start()]):
            return -6.0  # but "Model 2021, registered in November"
        if self._is_month(before):
            return -6.0
        if (
            self.used
            and re.search(r"(?:^|used|pre-owned|gebraucht|occasion)\s*$", before.strip())
            and re.match(r"\s+[a-zà-ÿ]", after)
        ):
            return 3.5
        said = self.of_model_year.search(near) is not None
        if not said and self.of_vans.match(after):
            return OF_VANS  # "our 2026 vans"
        if not said and self.offered_for.search(before):
            return OFFERED  # "here are the three for 2026"
        bare = match.group(1) == text.strip() or len(text) <= SHORT_LINE or self._titles_document(text[: match.start()])
        bare = bare or self._closes(text, match)
        return 3.0 if said else (0.5 if bare else -2.5)


def dates(months: Sequence[str], since: Sequence[str]) -> re.Pattern[str]:
    """Give the pattern of a date, with the words for since when or how long something holds: "Effective Oct. 6"."""
    short = [f"{month[:length]}." for month in months for length in (3, 4) if len(month) > length]
    month = rf"(?<!\w)(?:{any_word(months)}|{any_word(short)})(?!\w)"
    day = r"(?<!\w)(?:0?[1-9]|[12]\d|3[01])(?:\.|st|nd|rd|th|er)?(?![\w.-])"
    year = rf",?\s+{MODEL_YEAR}(?!\w)"
    return re.compile(
        rf"(?:(?<!\w)(?:{any_word(since)})\s+)?(?:{day}\s+{month}(?:{year})?|{month}(?:\s+{day}(?:{year})?|{year}))",
        re.IGNORECASE,
    )
