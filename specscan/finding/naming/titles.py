"""The title of a document, the name of its range or of its only van: from lines in large type, labels, sentences."""

from __future__ import annotations

import functools
import re
from collections import Counter
from collections.abc import Collection, Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word, count, may_hold, without_name
from specscan.finding.naming.maker import JOINTS
from specscan.finding.naming.place import PARTED, Names, Place, running_lines
from specscan.finding.naming.range_signs import RangeSigns
from specscan.finding.naming.roster import BARE
from specscan.finding.naming.years import YEAR, YearReader
from specscan.records.text import Document, Kind, Passage
from specscan.rulebook.book import Rulebook

DATED = re.compile(r"(?:19|20)\d\d [A-ZÀ-Þ]")
MAX_NAME_WORDS = 6
FIRST_SENTENCES = 10  # passages in which a name may be said
SENTENCE_END = re.compile(r"(?<=[.!?:])\s+")
SPOKEN_NAME = r"[A-ZÀ-Þ][\w’'-]*(?: (?:[A-ZÀ-Þ][\w’'-]*|\d[\w.-]*))*"
PLAIN_TITLE = 2.5  # points from which a title or label is taken without asking sentences
LIST_JOINT = re.compile(r"\s*[,;]\s+|\s+[|·•/]\s+|\s+(?:and|et|und|&)\s+")
OPENING = 6  # lines above the first sentence, list or table of a document
OPENING_LETTERS = 60
OPENING_WEIGHT = 2
KEPT_TITLES = 4_000
SMALL_END = re.compile(r"(?:\s+[a-zà-ÿ]{1,4})+\s*$")
BEHIND_CODE = re.compile(r"((?:^|\s)(?=\S*\d)[\w.-]+)(?:\s+[a-zà-ÿ]{2,}){2,}\s*$")  # "Drift 21 in winter"
NUMBER = re.compile(r"\d{2,4}")  # that alone is a name
NUMBER_USES = 2
NUMBERED = re.compile(r"^\d{1,2}(?:\.\d{1,2})*[.)] +(?=[^\W\d_])")  # "3. Packages" heads a section
FEW_CELLS = 2  # a label with a single value: no row of a table that tells vans apart


class TitleReader(YearReader):
    """Finds titles in documents of one language."""

    def __init__(self, book: Rulebook, lexicon: Lexicon):
        super().__init__(book, lexicon)
        self.filling = {
            phrase: re.compile(rf"(?<!\w){re.escape(phrase)}(?!\w)", re.IGNORECASE)
            for phrase in sorted(self.fillers, key=lambda phrase: (-len(phrase), phrase))
        }
        self.legal_words = {form.casefold() for form in book.general.legal_forms}  # "COMPANY" is left of a name
        articles = any_word(self.words.articles_of_names)
        self.behind_article = re.compile(
            rf"(?<!\w)(?i:{articles})(?:\s+[a-zà-ÿ][\w-]*){{0,2}}\s+(?:(?:19|20)\d\d\s+)?({SPOKEN_NAME})"
        )
        leads = {*self.words.leads_to_name} - {*self.words.cues["is_named"]}
        self.leads_to_base = re.compile(rf"(?<!\w)(?:{any_word(leads)})\s+$", re.IGNORECASE)
        dating = any_word(self.words.model_year)
        self.dated = re.compile(
            rf"(?<!\w)(?:{dating})\s+(?=(?:19|20)\d\d(?!\d))|(?<=\d\d\d\d)\s+(?:{dating})(?!\w)", re.IGNORECASE
        )
        verbs, vans = any_word(self.words.cues["is_named"]), any_word(self.words.vans)
        function = (*self.words.drop, *self.words.articles_of_names, *self.words.made_by, *self.words.pronouns)
        self.function_words = {word.casefold() for word in (*function, *self.words.every_words)}
        self.common_words = self.lexicon.known_words | self.function_words
        cues = self.words.cues
        small = (*self.words.predicates, *cues["is_named"], *cues["preposition"], *cues["before_number"])
        self.words_of_sayings = {word.casefold() for word in small} | self.function_words
        self.signs = RangeSigns(lexicon)
        self.is_a_van = re.compile(rf"\s+(?:{verbs})\s+(?:\w+\s+){{0,3}}(?:{vans})(?!\w)", re.IGNORECASE)
        self.clean = functools.lru_cache(maxsize=KEPT_TITLES)(self._clean)

    def read_title(
        self,
        names: Names,
        document: Document,
        own: list[Passage],
        heads: Collection[str] = (),
        *,
        spoken: bool = False,
    ) -> None:
        """Read the title; names from sentences count only where titles and labels give none that is worth much.

        ``heads`` are those of tables that name vans.
        """
        labelled = self._labelled(own, self.words.model_labels)
        candidates: Counter[str] = Counter()
        rests: dict[str, set[str]] = {}  # of names, the lines of which they are what is left without common words
        whole: set[str] = set()
        shown: dict[str, tuple[str, Place]] = {}
        texts = self._title_texts(document, own)
        letterhead = self._letterhead(document, own, names.maker)
        said = self._spoken_names(document, own) if spoken else []
        if heads:  # "the Bruska 35" of a sentence is not the range of "Alcove" and "Larder"
            said = [row for row in said if not re.search(r"\d", row[1]) and self.signs.are_seen(row[1], own, heads)]
        texts += said
        for weight, text, place in texts:
            name = self.clean(text, names.maker)
            if not name or len(name.split()) > MAX_NAME_WORDS:
                continue
            key = name.casefold()
            if self._is_left_over(key):
                continue
            candidates[key] += weight
            line = self._shortened(text, names.maker)
            noun = self.words.nouns_have_capitals and line.partition(" ")[0].casefold() in self.function_words
            if noun or (line.casefold().startswith(key) and line[len(key) :].lstrip()[:1].islower()):
                rests.setdefault(key, set()).add(line)  # a capital that may only begin the line, or that of a noun
            else:
                whole.add(key)
            if key not in shown or (shown[key][0].isupper() and not name.isupper()):
                shown[key] = (name, place)
        if said and letterhead in candidates:
            candidates[letterhead] -= 3
        if (house := self._above_dated(own)) in candidates:
            candidates[house] -= 3
        if labelled is not None and any(c.isalnum() for c in labelled[0]) and len(labelled[0].split()) <= 5:
            name = self.clean(labelled[0], names.maker)
            if name:
                candidates[name.casefold()] += 6
                shown.setdefault(name.casefold(), (name, labelled[1]))
        rests = {key: lines for key, lines in rests.items() if key not in whole}
        sure = self._twice_headed(document, names.maker)
        best, score = self._best_title(candidates, shown, own, rests, sure, heads)
        if (score < PLAIN_TITLE or best == letterhead) and not spoken:
            return self.read_title(names, document, own, heads, spoken=True)
        if best is None:
            return
        name, place = shown[best]
        names.title = self.cased(name, own) if name.isupper() else name
        names.title_place = self._title_place(names.title, own) or place
        if names.used and not names.maker:
            self._split_used(names, own)
        names.series = self._series(names.title)

    def _is_left_over(self, name: str) -> bool:
        """Tell whether common words are all that is left of a line: "Maße" of "Daten und Maße", "Unsere"."""
        words = name.split()
        if all(word in self.function_words for word in words):
            return True
        common = self.common_words.issuperset(self.lexicon.folder.norms(name))
        return common and not re.search(r"\d", name) and self.is_label(name)

    def _letterhead(self, document: Document, own: list[Passage], maker: str) -> str:
        """Give the first line where it can be the maker's name, and nothing else uses it: it may name no van.

        It is smaller than another line of the page.
        """
        largest = max((t for t in document.titles if t.page in (0, 1)), key=lambda t: t.size, default=None)
        first = own[0].text.strip(" .") if own and own[0].table is None else ""
        if not self._is_plain_name(first.split()) or any(first in passage.text for passage in own[1:]):
            return ""
        if largest is None or largest.text.strip(" .") == first:
            return ""
        return self.clean(first, maker).casefold()

    def _above_dated(self, own: list[Passage]) -> str:
        """Give the first line where it is a name alone and another name stands below it with the model year.

        It is the company's rather than the range's: "Marrowfen" above "Drift, model year 2026".
        """
        lines = [passage.text.strip(" .") for passage in self._opening(own)]
        if len(lines) < 2 or not self._is_plain_name(lines[0].split()):
            return ""
        dated = [self.clean(line, "") for line in lines[1:] if YEAR.search(line)]
        if any(YEAR.search(line) or self._lists_codes(line) for line in lines[2:]):
            dated.append(self.clean(lines[1], ""))  # the line between, above year and codes
        named = [name for name in dated if self._is_plain_name(name.split()) and name.casefold() != lines[0].casefold()]
        return lines[0].casefold() if named else ""

    def _title_texts(self, document: Document, own: list[Passage]) -> list[tuple[int, str, Place]]:
        texts: list[tuple[int, str, Place]] = []
        first = [t for t in document.titles if t.page in (0, 1) and t.origin == "page" and t.size > 0]
        tables = _words_of_tables(own)
        first = [title for title in first if not any(_is_row(title.text, *words) for words in tables)]
        names_used = self.used
        for rank, title in enumerate(sorted(first, key=lambda t: -t.size)[: 6 if names_used else 4]):
            dated = 3 if YEAR.search(title.text) and (names_used or self._says_model_year(title.text)) else 0
            place = self._place_of(title, own)
            if self._lists_codes(title.text):
                continue
            texts.append((4 - min(rank, 3) + dated, title.text, place))
            texts += [row for row in self._parts(1, title.text, place)[1:] if DATED.match(row[1].strip())]
        for passage in self._opening(own):
            texts = [(max(one[0], OPENING_WEIGHT), *one[1:]) if one[1] == passage.text else one for one in texts]
            if not any(_is_row(passage.text, *words) for words in tables) and not self._lists_codes(passage.text):
                texts.append((OPENING_WEIGHT, passage.text, Place(passage, passage.page, passage.text)))
        for passage in own[:12]:
            if YEAR.search(passage.text) and len(passage.text) <= 80 and self._says_model_year(passage.text):
                texts.append((4, passage.text, Place(passage, passage.page, passage.text)))
        seen: set[str] = set()
        texts = [row for row in texts if not (row[1] in seen or seen.add(row[1]))]  # type: ignore[func-returns-value]
        for title in document.titles:
            if title.origin in ("metadata", "html"):
                texts += self._parts(3, title.text, self._place_of(title, own))
            elif title.page > 1 and title.origin == "page":
                texts.append((1, title.text, self._place_of(title, own)))
        for text, place in running_lines(document):
            texts += self._parts(1, text, place)
        stem = re.sub(r"\.\w+$", "", document.path.rsplit("/", 1)[-1])
        number = re.match(r"\d+(?=[_\-\s])", stem)
        if number is not None and not any(number.group() in passage.text for passage in own):
            stem = stem[number.end() :]  # files are numbered
        texts.append((1, " ".join(p.capitalize() for p in re.split(r"[_\-\s]+", stem)), Place(None, 1, stem)))
        return texts

    @staticmethod
    def _lists_codes(line: str) -> bool:
        """Tell whether a line lists the codes of several vans: "540 | 600 Q"."""
        parts = [YEAR.sub("", part).strip() for part in LIST_JOINT.split(line)]
        return len(parts) > 1 and all(BARE.match(part) for part in parts)

    @staticmethod
    def _opening(own: Sequence[Passage]) -> list[Passage]:
        """Give the short lines with which a document opens, before its first sentence, list or table."""
        found = []
        for passage in own[:OPENING]:
            numbered = re.search(r"\d{4}", YEAR.sub("", passage.text)) is not None  # of stock
            long = numbered or len(passage.text) > OPENING_LETTERS or passage.text.endswith((".", "!", "?", ":"))
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

    def _spoken_names(self, document: Document, own: list[Passage]) -> list[tuple[int, str, Place]]:
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
                    coded = re.search(r"\d|\b[IVX]{1,4}$", name) is not None
                    sentence = long and match.group() != part.strip(" .!?")  # not "New: the Drift. Freedom for two."
                    again = sum(count(t, name) for t in everything) > 1
                    described = self.is_a_van.match(part, match.end()) is not None
                    if sentence and not (dated or coded or again or described):
                        continue
                    known = self.lexicon.known_words.issuperset(self.lexicon.folder.norms(name))
                    known = known or (sentence and not again and self.names_base(part))  # it may be the base vehicle's
                    known = known or self.names_base(match.group())  # "on the chassis Bruska 350"
                    if (nouns and sentence and not (coded or described)) or known or self.is_filler(name):
                        continue
                    rows.append((2 + 3 * dated, name, Place(place.passage, place.page, name)))
        return rows

    def _shortened(self, text: str, maker: str) -> str:
        """Give the first part of a title without maker, years and signs, its common words kept."""
        text = YEAR.sub(" ", re.sub(r"\([^)]*\)|[®™©]", " ", PARTED.split(text)[0]))
        return re.sub(r"[\s?!]+", " ", without_name(text, maker)).strip(" ,.;:-–|/'’&")

    def _clean(self, text: str, maker: str) -> str:
        """Give a title without maker, years, brackets and words such as "specifications"."""
        text = PARTED.split(text)[0]
        text = re.sub(r"\([^)]*\)|[®™©]|[$€£]\s?[\d.,]+", " ", text)
        text = YEAR.sub(" ", self.dated.sub(" ", self.short_year.sub(" ", text)))
        whole = text
        text = without_name(text, maker)  # before the words of the trade that its name may hold
        if any(joint in maker.split() for joint in JOINTS):
            text = without_name(text, " ".join(word for word in maker.split() if word not in JOINTS))  # as files do
        for pattern in self.filling.values():
            text = pattern.sub(" ", text)
        if text != whole:
            text = SMALL_END.sub("", text)  # "Drift im" of "Drift im Modelljahr 2026"
        whole = text
        text = self.form.sub(" ", text)
        words = maker.split()
        for start in (" ".join(words[:most]) for most in range(len(words) - 1, 0, -1)):
            if may_hold(text, start):
                text = without_name(text, start)  # "Marrowfen Mill" of "Marrowfen Mill Vans"
                break
        if text != whole:
            text = SMALL_END.sub("", text)  # "Drift by Marrowfen"
        text = BEHIND_CODE.sub(r"\1", text)
        return re.sub(r"[\s?!]+", " ", text).strip(" ,.;:-–|/'’&")

    def _twice_headed(self, document: Document, maker: str) -> set[str]:
        """Give the names that are the largest line of the first page and the title in the file's own data."""
        first = [t for t in document.titles if t.page in (0, 1) and t.origin == "page" and t.size > 0]
        largest = max((t.size for t in first), default=0.0)
        own = {self.clean(t.text, maker).casefold() for t in document.titles if t.origin in ("metadata", "html")}
        return {name for t in first if t.size == largest and (name := self.clean(t.text, maker).casefold()) in own}

    def _stands_alone(self, name: str, lines: set[str], own: list[Passage]) -> bool:
        """Tell whether what is left of lines without their common words stands anywhere without these words."""
        pattern = re.compile(rf"(?<!\w){re.escape(name)}s?(?!\w)", re.IGNORECASE)
        heads = {head.text for passage in own for head in (passage.row, passage.column) if head is not None}
        texts = {passage.text for passage in own} | heads
        matches = (m for text in texts if not any(line in text for line in lines) for m in pattern.finditer(text))
        return any(match.group()[0].isupper() for match in matches)

    def _best_title(
        self,
        candidates: Counter[str],
        shown: dict[str, tuple[str, Place]],
        own: list[Passage],
        rests: dict[str, set[str]],
        sure: set[str],
        heads: Collection[str],
    ) -> tuple[str | None, float]:
        """Give the best name and its points; what is ``sure`` to be a title may be a word that specifications use."""
        body = " ".join(p.text for p in own).casefold()
        best, score = None, 1.0  # a line that stands once on some later page names nothing
        for key, weight in candidates.items():
            words = key.split()
            plain = NUMBERED.sub("", key)
            if not any(c.isalpha() for c in key) and not self._is_number_name(key, body):
                continue
            if self.is_label(key) or self.legal_words.issuperset(words):
                continue
            if plain != key and (self.is_label(plain) or self.is_filler(plain)):
                continue
            if self.is_filler(key) if key not in sure else key in self.fillers:
                continue
            if key in rests and not any(c.isdigit() for c in key) and not self._stands_alone(key, rests[key], own):
                continue  # "Brief" of "Brief specification"
            if self._is_saying(words) or self.signs.is_sister(key, own, heads):
                continue  # "What Is On" of a shouted "WHAT IS ON WHICH VAN"; a van among others
            seen = self.signs.are_seen(shown[key][0], own, heads)
            if not seen and key not in sure and self.common_words.issuperset(self.lexicon.folder.norms(key)):
                continue  # "Specifications", "Sizes"
            points = float(weight)
            points += 3 if re.search(r"\d", key) else 0
            points += 3 * seen
            points += min(3, count(body, key) - 1)
            points -= 1.5 * max(0, len(words) - 3)
            points -= 4 * self._is_phrase(key, words)
            points -= 3 * sum(word.isalpha() and word.islower() and len(word) > 1 for word in shown[key][0].split())
            if points > score:
                best, score = key, points
        return best, score

    def _is_number_name(self, text: str, body: str) -> bool:
        """Tell whether a figure alone is a van's name: the text says "the 214" and "every 214"."""
        if not NUMBER.fullmatch(text) or YEAR.fullmatch(text):
            return False
        words = any_word({*self.words.articles_of_names, *self.words.every_words})
        verbs = any_word(self.words.predicates)
        pattern = rf"(?<!\w)(?:{words}) {text}(?= (?:{verbs})(?!\w)|[.;:!?)]|, \D|$)"  # counts no things, has no unit
        return len(re.findall(pattern, body, re.IGNORECASE)) >= NUMBER_USES

    def _is_phrase(self, text: str, words: Sequence[str]) -> bool:
        """Tell whether a line is a saying, a date or a row of codes rather than a name: "Three ways to run"."""
        coded = len(words) > 2 and all(any(c.isdigit() for c in word) for word in words)
        dated = any(word in self.month_names for word in words)
        said = any(word in self.words.drop or word in self.words.numbers for word in words[:1])
        return "," in text or coded or dated or said or any(word in self.words.drop for word in words)

    def _is_saying(self, words: Sequence[str]) -> bool:
        """Tell whether a line of three or more words has small ones that no name has, whatever its capitals."""
        coded = any(c.isdigit() for word in words for c in word)
        return len(words) > 2 and not coded and not self.words_of_sayings.isdisjoint(words)

    def is_label(self, text: str) -> bool:
        """Tell whether a prominent line is the label of a specification and no name."""
        if not self.lexicon.knows_label(text) or re.search(r"\d", text):
            return False
        things = any(m.concept.kind in ("thing", "short", "alone") for m in self.lexicon.analyse(text).mentions)
        return things or self.lexicon.known_words.issuperset(self.lexicon.folder.norms(text))  # "Mallow Run" is none

    def _title_place(self, title: str, own: list[Passage]) -> Place | None:
        """Give the place of a name beside a specification, else the first one."""
        for passage in own:
            if passage.kind is Kind.HEADING and title.casefold() in passage.text.casefold():
                same = [p for p in own if p.page == passage.page and p.kind is Kind.CELL]
                if len(same) >= 4:
                    return Place(passage, passage.page, title)
        return self._first_place(title, own)

    def _split_used(self, names: Names, own: list[Passage]) -> None:
        """Part "Maker Series 540" of a dealer's listing: the first of several words is the maker."""
        words = names.title.split()
        alphabetic = [w for w in words if w[:1].isalpha() and len(w) > 2]
        if len(alphabetic) >= 2 and words[0] in alphabetic:
            names.maker = self.cased(words[0], own) if words[0].isupper() else words[0]
            names.maker_place = names.title_place
            names.title = " ".join(words[1:])
            names.title = self.cased(names.title, own) if names.title.isupper() else names.title

    def _series(self, title: str) -> str:
        """Give the words of a title before its first figure."""
        kept = []
        for word in title.split():
            if any(c.isdigit() for c in word) or word.casefold() in ("and", "et", "und", "&", ","):
                break
            kept.append(word.strip(","))
        return " ".join(kept)


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
