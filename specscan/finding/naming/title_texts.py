"""The lines and sentences in which a document can name itself: large type, first lines, running lines, its file."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word, count
from specscan.finding.naming.file_names import file_runs, stem_of
from specscan.finding.naming.full_names import PRICE
from specscan.finding.naming.letters import Letter
from specscan.finding.naming.name_forms import SPOKEN_NAME, article
from specscan.finding.naming.place import PARTED, Place, running_lines
from specscan.finding.naming.roster import BARE
from specscan.finding.naming.years import YEAR, YearReader
from specscan.records.text import Document, Kind, Passage, Title
from specscan.records.years import MODEL_YEAR
from specscan.rulebook.book import Rulebook

IN_BRACKETS = re.compile(r"\(([A-ZÀ-Þ][\w’'-]+(?: [A-ZÀ-Þ\d][\w.’'-]*){1,3})\)")  # "Your questions (Drift 21)"
LED = re.compile(r":|\s[–—-]\s")
SPACED = re.compile(r"\s{3,}")
NAMES = re.compile(r"[A-ZÀ-Þ][^\W\d_]+(?: [A-ZÀ-Þ][^\W\d_]*){0,2}")
TOLD_FIGURE = re.compile(r"\d\S* \d+$")
SENTENCE = re.compile(r"[A-ZÀ-Þ].*\s[a-zà-ÿ]{2,}\s.*[.!?]")
LEAST_USES = 3
LONGEST_LINE = 80
DATED = re.compile(rf"{MODEL_YEAR} [A-ZÀ-Þ]")
DATED_NAME = re.compile(
    rf"{MODEL_YEAR} ((?:[A-ZÀ-Þ][\w’'-]* ){{1,3}}(?=\w*\d)[\w.-]+(?: (?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*)){{0,2}})"
)
DATED_WEIGHT = 5
FRAMED = re.compile(r"(?:^|\s)>{2,3}\s*([^<>]{3,60}?)\s*<{2,3}(?!\S)")  # "JUST IN >> Marrowfen Drift 6.2 <<"
PRICED_WEIGHT = 3  # of what stands on one line with its price in a listing
FIRST_SENTENCES = 10  # passages in which a name may be said
CLAUSE_END = re.compile(r"[,;:]| (?:and|et|und) ")
BASE_BEHIND = 30  # letters behind a name in which a sentence says that it is the base vehicle's
SENTENCE_END = re.compile(r"(?<=[.!?:])\s+")
LIST_JOINT = re.compile(r"\s*[,;]\s+|\s+[|·•/]\s+|\s+(?:and|et|und|&)\s+")
MOST_TITLES = 4  # of those in large type on the first page
MOST_TITLES_USED = 6
MORE_TITLES = 4
OPENING = 6  # lines above the first sentence, list or table of a document
OPENING_LETTERS = 60
OPENING_WEIGHT = 2
DATA = 6  # lines with labels above a heading that opens no document
FEW_CELLS = 2  # a label with a single value: no row of a table that tells vans apart
MAX_NAME_WORDS = 6
HOUR = r"(?<!\d)(?:[01]?\d|2[0-4])(?:[.:h]\d\d| ?[ap]\.?m|[ -]?(?:uhr|h)(?!\w))"


class TitleTexts(YearReader):
    """Finds such texts in documents of one language, each with a weight and its place."""

    def __init__(self, book: Rulebook, lexicon: Lexicon):
        super().__init__(book, lexicon)
        self.letter = Letter()  # of the document that is read
        before = article(self.words.articles_of_names, r"(?:\s+[a-zà-ÿ][\w-]*){0,2}")
        self.behind_article = re.compile(rf"(?<!\w){before}(?:{MODEL_YEAR}\s+)?({SPOKEN_NAME})")
        leads = {*self.words.leads_to_name} - {*self.words.cues["is_named"]}
        self.leads_to_base = re.compile(rf"(?<!\w)(?:{any_word(leads)})\s+$", re.IGNORECASE)
        verbs, vans = any_word(self.words.cues["is_named"]), any_word(self.words.vans)
        self.workplace = re.compile(rf"[ -](?:{any_word(self.words.workplaces)})(?!\w)", re.IGNORECASE)
        self.stock_number = re.compile(
            rf"(?:{any_word(self.words.stock_labels)})(?![^\W\d_])\W*(?:[A-Z]{{1,4}} )?(?=\S*\d)\S+", re.IGNORECASE
        )
        # what programs write into a file that nobody gave a title: "drift_2026_range.html", "Drift final.docx"
        endings = any_word(book.general.file_endings)
        self.file_name = re.compile(rf"\S*_\S*|.*\.(?:{endings})", re.IGNORECASE)
        day = rf"(?:{any_word(self.words.weekdays)})s?\.?"
        self.hours = re.compile(
            rf"(?<!\w){day}\s*(?:(?:\w{{1,3}}|[-–—/])\s*{day}(?!\w)|\W{{0,3}}{HOUR})|{HOUR}\W{{1,3}}{day}(?!\w)",
            re.IGNORECASE,
        )
        self.driven = re.compile(rf"\d[\d., \u00a0\u202f]*(?:{any_word(self.words.distances)})", re.IGNORECASE)
        self.is_a_van = re.compile(rf"\s+(?:{verbs})\s+(?:\w+\s+){{0,3}}(?:{vans})(?!\w)", re.IGNORECASE)

    def title_texts(self, document: Document, own: list[Passage]) -> list[tuple[int, str, Place]]:
        """Give the lines in large type, those that open a document, its file's own titles, running lines and its name.

        Each comes with its weight and where it stands.
        """
        texts: list[tuple[int, str, Place]] = []
        first = [t for t in document.titles if t.page in (0, 1) and t.origin == "page" and t.size > 0]
        headings = [p.text for p in own if p.kind is Kind.HEADING and p.page in (0, 1)]
        first = [title for title in first if not _goes_on(title.text, headings)]
        tables = _words_of_tables(own)
        first = [title for title in first if not any(_is_row(title.text, *words) for words in tables)]
        corners = _with_heads(document, own)
        first = [replace(title, text=corners.get(title.text.strip(), title.text)) for title in first]
        names_used = self.used
        for rank, title in enumerate(_largest(first, MOST_TITLES_USED if names_used else MOST_TITLES)):
            dated = 3 if YEAR.search(title.text) and (names_used or self._says_model_year(title.text)) else 0
            place = self._place_of(title, own)
            if self._lists_codes(title.text):
                continue
            weight = 1 if self._stands_below_data(place.passage, own) else 4 - min(rank, 3) + dated
            if SPACED.search(title.text.strip()):  # typed with wide gaps: "JUST IN   Marrowfen Drift 6.2   MY23"
                line = self._without_lead(re.sub(r"^\W+", "", title.text))
                parts = [part.strip() for part in SPACED.split(line)]
                offered = PRICED_WEIGHT if self.used and any(map(PRICE.search, parts[1:])) else 0
                texts += [(weight + offered, part, place) for part in parts if not _is_numbered(part)]
                continue
            texts.append((weight, self._without_past(self._without_lead(title.text)), place))
            texts += [row for row in self._parts(1, title.text, place)[1:] if DATED.match(row[1].strip())]
        for passage in self._opening(own):
            texts = [(max(one[0], OPENING_WEIGHT), *one[1:]) if one[1] == passage.text else one for one in texts]
            if not any(_is_row(passage.text, *words) for words in tables) and not self._lists_codes(passage.text):
                line = self._without_past(passage.text)
                texts.append((OPENING_WEIGHT, line, Place(passage, passage.page, passage.text)))
        texts += [*_framed(own[:12]), *self._dated_lines(own[:12])] if self.used else []
        for passage in own[:12]:
            for name in IN_BRACKETS.findall(passage.text) if len(passage.text) <= LONGEST_LINE else ():
                if sum(count(one.text, name) for one in own) >= LEAST_USES:
                    texts.append((OPENING_WEIGHT, name, Place(passage, passage.page, name)))
            if YEAR.search(passage.text) and len(passage.text) <= LONGEST_LINE and self._says_model_year(passage.text):
                line = self._without_lead(passage.text) if self.used else passage.text
                line = self._without_past(line)
                texts.append((4, line, Place(passage, passage.page, passage.text)))
        seen: set[str] = set()
        texts = [row for row in texts if not (row[1] in seen or seen.add(row[1]))]  # type: ignore[func-returns-value]
        for title in document.titles:
            if title.origin in ("metadata", "html"):
                if not self.file_name.fullmatch(title.text):
                    texts += self._parts(3, title.text, self._place_of(title, own))
            elif title.page > 1 and title.origin == "page" and not SENTENCE.fullmatch(title.text.strip()):
                texts.append((1, title.text, self._place_of(title, own)))
        for text, place in running_lines(document):
            texts += self._parts(1, text, place)
        whole = [row for row in texts if row[1].count(")") <= row[1].count("(")]  # no end of what a line above opened
        whole = [row for row in whole if not self.is_dateline(row[1], own)]
        whole = [row for row in whole if not self.stock_number.match(row[1])]  # "Stock no. LS-41 | Listed by Marrowfen"
        return [row for row in whole if not self.letter.frames(*row[1:])] + list(self.letter.names())

    def _dated_lines(self, first: Sequence[Passage]) -> list[tuple[int, str, Place]]:
        """Give the first line, or what stands left in it, that begins with a year and a name with a figure.

        So listings of used vans call what they offer: "2025 Marrowfen Drift 590      Stock no. 316".
        """
        for passage in first:
            text = passage.text if passage.row is None else passage.row.text
            bare = text.strip(" >*#=~")  # ">> 2025 Marrowfen Drift 590 -- $98,700"
            match = DATED_NAME.fullmatch(bare) or DATED_NAME.fullmatch(PARTED.split(bare)[0])
            if match is not None and not self.lexicon.knows_label(match.group(1)):
                return [(DATED_WEIGHT, text, Place(passage, passage.page, text.strip()))]
        return []

    def _without_lead(self, line: str) -> str:
        """Give a line without the words of the trade that lead to a name: "For sale: Marrowfen Drift 6.2"."""
        lead, *behind = LED.split(line, maxsplit=1)
        words, rest = lead.strip().casefold(), "".join(behind).strip()
        led = words in self.fillers or self.lexicon.cues(self.lexicon.analyse(words), "used")
        return rest if led and rest else line

    def _is_past(self, part: str) -> bool:
        """Tell whether a part of a title says how a used van was used: "one owner", "61,400 km"."""
        driven = self.driven.fullmatch(part.strip(" .")) is not None
        return driven or bool(self.lexicon.cues(self.lexicon.analyse(part), "used"))

    def _without_past(self, line: str) -> str:
        """Give a line about a used van without what it says of its past: "Drift 6.2, MY21, registered 05/2022"."""
        parts = line.split(", ") if self.used else [line]
        past = (n for n, part in enumerate(parts) if self._is_past(part))
        left = ", ".join(parts[: next(past, 0) or None])
        return self._without_kit(left) if self.used else left

    def _without_kit(self, line: str) -> str:
        """Give a line about a used van without the words for engine and drive behind a figure: "Drift 21 AWD diesel".

        Those in small letters are told by these, and with them those in capitals before them; alone these may be name.
        """
        words = line.split()
        figure = max((n for n, word in enumerate(words) if re.search(r"\d", word)), default=len(words))
        end = len(words)
        while end > figure + 1 and words[end - 1].islower() and self.lexicon.knows_words(words[end - 1]):
            end -= 1
        if end == len(words):
            return line
        while end > figure + 1 and len(words[end - 1]) > 2 and self.lexicon.knows_words(words[end - 1]):
            end -= 1
        return " ".join(words[:end])

    def tells_hours(self, line: str) -> bool:
        """Tell whether a line says when somebody is there: "Open Mon-Sat 8.30 - 5"."""
        return self.hours.search(line) is not None

    def of_file(self, document: Document, own: list[Passage]) -> list[tuple[int, str, Place]]:
        """Give what the document prints of the words of its file's name, where it prints them: the longest runs.

        Whoever saved "marrowfen_drift_21_2026.pdf" knew what it is about; what the document calls it is asked of the
        document alone.
        """
        own_titles = [t.text for t in document.titles if t.origin in ("metadata", "html")]
        stems = [stem_of(text) for text in own_titles if self.file_name.fullmatch(text)]
        stems.append(stem_of(document.path))
        heads = (head.text for passage in own for head in (passage.row, passage.column) if head is not None)
        lines = (title.text for title in document.titles if title.page in (0, 1))
        texts = dict.fromkeys([*(passage.text for passage in own), *heads, *lines])
        runs = [run for stem in stems for run in file_runs(stem, texts)]
        if self.used:
            runs = [run for run in runs if re.search(r"\d", run)]  # a dealer's file has the dealer's name
        return [(1, run, self._first_place(run, own) or Place(None, 1, run)) for run in runs]

    def _stands_below_data(self, passage: Passage | None, own: Sequence[Passage]) -> bool:
        """Tell whether a heading stands below the data of a text without pages, and nothing else uses its words."""
        if passage is None or passage.page > 0 or passage.kind is not Kind.HEADING:
            return False
        above = [one for one in own if one.number < passage.number]
        labels = (one.row.text if one.row is not None else one.text.partition(":")[0] for one in above)
        told = sum(self.lexicon.knows_label(label) for label in labels if len(label) <= OPENING_LETTERS)
        return told >= DATA and sum(count(one.text, passage.text) for one in own) < 2

    @staticmethod
    def _lists_codes(line: str) -> bool:
        """Tell whether a line lists the codes of several vans: "540 | 600 Q"."""
        parts = [YEAR.sub("", part).strip() for part in LIST_JOINT.split(line)]
        return len(parts) > 1 and all(BARE.match(part) for part in parts)

    def listed_below(self, own: Sequence[Passage]) -> tuple[list[Passage], set[str]]:
        """Give the names of words that one of the first lines lists and the text uses, and the lines above this one.

        "Alder | Gorse Plus" below "Drift".
        """
        text = "\n".join(p.text for p in own)
        opening = self._opening(own)
        for place, passage in enumerate(opening):
            parts = [part.strip() for part in LIST_JOINT.split(passage.text.strip(" ."))]
            plain = all(NAMES.fullmatch(part) and not self.is_filler(part) for part in parts)
            if len(parts) > 1 and plain and all(count(text, part) >= LEAST_USES for part in parts):
                return opening[:place], {part.casefold() for part in parts}
        return [], set()

    def is_stock_number(self, text: str) -> bool:
        """Tell whether a text is only what tells one of a dealer's vans from others: "Ref KM/2291"."""
        return self.stock_number.fullmatch(text) is not None

    def _opening(self, own: Sequence[Passage]) -> list[Passage]:
        """Give the short lines with which a document opens, before its first sentence, list or table.

        A line with a number of the dealer's stock is passed over.
        """
        found = []
        for passage in own[:OPENING]:
            if self.stock_number.match(passage.text) and len(passage.text) <= OPENING_LETTERS:
                continue
            long = (
                _is_numbered(passage.text)
                or len(passage.text) > OPENING_LETTERS
                or passage.text.endswith((".", "!", "?", ":"))
            )
            if passage.page not in (0, 1) or passage.kind not in (Kind.HEADING, Kind.PROSE, Kind.LINE) or long:
                break
            found.append(passage)
        return found

    def _parts(self, weight: int, text: str, place: Place) -> list[tuple[int, str, Place]]:
        """Give the parts of a line such as "Marrowfen Vans | 2026 Drift 21 | Questions"; one that begins with a year
        weighs more."""
        rows = []
        for part in PARTED.split(text):
            dated = DATED.match(part.strip()) is not None
            rows.append((weight + (3 if dated else 0), part, Place(place.passage, place.page, part.strip())))
        return rows

    def spoken_names(self, document: Document, own: list[Passage]) -> list[tuple[int, str, Place]]:
        """Give names behind an article in titles and in the first sentences: "our Drift 21", "la nouvelle Drift III".

        Where all nouns have capitals a sentence must also give a figure or a numeral.
        """
        rows: list[tuple[int, str, Place]] = []
        titles = [(t.text, self._place_of(t, own)) for t in document.titles if t.page in (0, 1) and t.size > 0]
        prose = [p for p in own[:FIRST_SENTENCES] if p.kind is Kind.PROSE and len(p.text.split()) > 5]
        nouns = self.words.nouns_have_capitals
        everything = [p.text for p in own] + [t.text for t in document.titles if t.origin == "html"]
        for text, place in [*titles[:6], *((p.text, Place(p, p.page, p.text)) for p in prose)]:
            long = len(text.split()) > MAX_NAME_WORDS
            for part in SENTENCE_END.split(text):
                dated = self._says_model_year(part)
                for match in self.behind_article.finditer(part):
                    name = match.group(1)
                    if self.leads_to_base.search(part, 0, match.start()):
                        continue  # "it is on the Marrow 3500": its base vehicle
                    if self.workplace.match(part, match.end()):
                        continue  # "our Hythe workshop"
                    if TOLD_FIGURE.search(name):
                        continue  # "the B62 232 in and the B70 253 in"
                    coded = re.search(r"\d|\b[IVX]{1,4}$", name) is not None
                    sentence = long and match.group() != part.strip(" .!?")  # not "New: the Drift. Freedom for two."
                    again = sum(count(t, name) for t in everything) > 1
                    described = self.is_a_van.match(part, match.end()) is not None
                    if sentence and not (dated or coded or again or described):
                        continue
                    alone = re.sub(r"[\d.,]+$", "", name)  # "the tank 51 l" is no van
                    known = self.lexicon.knows_words(alone)
                    known = known or (nouns and not (coded or described or again or dated))  # "Unsere Idee" is a noun
                    known = known or (
                        sentence and not again and self.labels.names_base(part)
                    )  # it may be the base vehicle's
                    behind = CLAUSE_END.split(part[match.end() :], maxsplit=1)[0][:BASE_BEHIND]
                    # "on the chassis Bruska 350", "the Bruska 350 as its base vehicle"
                    told = (
                        behind.split()[:1] and behind.split()[0] in self.words.predicates
                    )  # "the Drift 6 is built on"
                    known = (
                        known or self.labels.names_base(match.group()) or (not told and self.labels.names_base(behind))
                    )
                    if (nouns and sentence and not (coded or described)) or known or self.is_filler(name):
                        continue
                    rows.append((2 + 3 * dated, name, Place(place.passage, place.page, name)))
        return rows


def _largest(titles: Sequence[Title], most: int) -> list[Title]:
    """Give the largest titles, so many as told, and some more where these are as large: text has one size."""
    ordered = sorted(titles, key=lambda title: -title.size)
    smallest = ordered[most - 1].size if len(ordered) > most else 0.0
    return ordered[:most] + [title for title in ordered[most : most + MORE_TITLES] if title.size == smallest]


def _goes_on(line: str, headings: Sequence[str]) -> bool:
    """Tell whether a line ends a heading of several lines amid a name: "Here is the new Drift" / "22 N, for 2027"."""
    return not line[:1].isupper() and any(heading.endswith(f" {line}") for heading in headings)


def _is_numbered(text: str) -> bool:
    """Tell whether a text holds a number of stock, a licence or a telephone."""
    return re.search(r"\d{4}", YEAR.sub("", text)) is not None


def _with_heads(document: Document, own: Sequence[Passage]) -> dict[str, str]:
    """Give by the lines that run on from the corner of a table to the heads beside it what stands in the corner.

    "Drift 62 L" is "Drift 62" over the labels and "L" over the first of several trims.
    """
    heads: dict[int, dict[str, None]] = {}
    for passage in own:
        if passage.table is not None and passage.column is not None:
            heads.setdefault(passage.table, {})[passage.column.text] = None
    found = {}
    for title in document.titles:
        line = title.text.strip()
        for head in heads.get(title.table, ()) if title.origin == "corner" and title.table is not None else ():
            line = f"{line} {head}"
            found[line] = title.text.strip()
    return found


def _words_of_tables(own: Sequence[Passage]) -> list[tuple[set[str], set[str]]]:
    """Give the first words and all words of the heads of each table, and of the cells of each row."""
    texts: dict[tuple[int, int | None], set[str]] = {}
    for passage in own:
        if passage.table is None:
            continue
        if passage.column is not None:
            texts.setdefault((passage.table, None), set()).add(passage.column.text)
        row = texts.setdefault((passage.table, passage.row_index or 0), set())
        row |= {passage.text, passage.row.text if passage.row is not None else ""}
    return [
        ({words[0] for words in parts if words}, {word for words in parts for word in words})
        for place, parts in ((place, [text.split() for text in some]) for place, some in texts.items())
        if place[1] is None or len(parts) > FEW_CELLS
    ]


def _is_row(title: str, firsts: set[str], words: set[str]) -> bool:
    """Tell whether a prominent line is a row of a table: all its words stand there, and begin two or more cells."""
    said = {word.strip(",") for word in title.split() if any(c.isalnum() for c in word)}
    return said <= words and len(said & firsts) > 1


def _framed(first: Iterable[Passage]) -> list[tuple[int, str, Place]]:
    """Give what pairs of arrows frame in the first lines of an advertisement: the name of what it offers."""
    found = ((passage, match) for passage in first for match in FRAMED.finditer(passage.text))
    return [(DATED_WEIGHT, match[1], Place(passage, passage.page, match[1])) for passage, match in found]
