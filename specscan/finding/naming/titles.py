"""The title of a document, the name of its range or of its only van: from lines in large type, labels, sentences."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection, Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word, count, holds
from specscan.finding.naming.clean_titles import CleanTitles, without_signs
from specscan.finding.naming.label_pairs import LabelPairs
from specscan.finding.naming.place import PARTED, Names, Place, begins_with
from specscan.finding.naming.title_texts import LIST_JOINT, MAX_NAME_WORDS
from specscan.finding.naming.years import YEAR
from specscan.records.text import Document, Kind, Passage
from specscan.records.years import MODEL_YEAR
from specscan.rulebook.book import Rulebook

PLAIN_TITLE = 2.5  # points from which a title or label is taken without asking sentences
WORD = re.compile(r"\w+")
NUMBER = re.compile(r"\d{2,4}")  # that alone is a name
NUMBER_USES = 2
ADDRESS = re.compile(r"\.?\s*[,;|·•–-]\s*\S")  # behind the legal form
MEASURED = re.compile(r"(\D{3,}?) \d[\d.,]* ?[a-z°]{1,3}")
AMOUNT = re.compile(r"\d[\d.,' \u00a0\u202f]*\s([^\W\d]{2,}|[€$£])")
PRICED = re.compile(r"\d[\d.,' \u00a0\u202f]*\s?[€$£](?!\w)")
USES = 2  # of a name in the text, that in the list of vans included
DATE = re.compile(rf"(?<!\d)(?:0?[1-9]|1[0-2])[/.]{MODEL_YEAR}$")  # "registered here 11/2021"
LONGEST_JOINT = 3  # letters of a word between names: "and", "und", "et"
NUMBERED = re.compile(r"^\d{1,2}(?:\.\d{1,2})*[.)] +(?=[^\W\d_])")  # "3. Packages" heads a section


class TitleReader(CleanTitles):
    """Finds titles in documents of one language."""

    def __init__(self, book: Rulebook, lexicon: Lexicon):
        super().__init__(book, lexicon)
        self.signed_by = re.compile(rf"(?:{any_word(self.words.made_by)})(?: [A-ZÀ-Þ]|$)")  # "Drift by Marrowfen"
        self.legal_words = {form.casefold() for form in book.general.legal_forms}  # "COMPANY" is left of a name
        self.common_words = self.lexicon.known_words | self.function_words
        self.seasons = {word.casefold() for word in self.words.seasons}
        self.label_pairs = LabelPairs(self.words, lambda text: self.is_label(text) or self.is_filler(text))
        name, sellers = r"[A-ZÀ-Þ][\w’'-]*(?: (?:& )?[A-ZÀ-Þ][\w’'-]*)", any_word(self.words.seller_words)
        self.sells = re.compile(
            rf"(?<!\w)({name}{{0,3}}(?= (?i:{any_word(self.words.seller_says)})(?!\w))"
            rf"|{name}{{0,2}} (?i:{sellers})(?!\w)|(?i:{sellers}) {name}{{0,2}})"
        )
        self.sold_at = re.compile(rf"(?<!\w)(?:{sellers})$", re.IGNORECASE)
        self.stock = re.compile(rf"\s*(?:{any_word(self.words.seller_stock)})(?!\w)", re.IGNORECASE)

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
        labelled = self.label_pairs.model_of_range(own) or self.labels.read(own, self.words.model_labels)
        candidates: Counter[str] = Counter()
        rests: dict[str, set[str]] = {}  # of names, the lines of which they are what is left without common words
        whole: set[str] = set()
        shown: dict[str, tuple[str, Place]] = {}
        texts = self.title_texts(document, own)
        dealers = self._dealers(own) if names.used else set()
        letterhead = self._letterhead(document, own, names.maker)
        said = self.spoken_names(document, own) if spoken else []
        if heads:  # "the Bruska 35" of a sentence is not the range of "Alcove" and "Larder"
            said = [row for row in said if not re.search(r"\d", row[1]) and self.signs.are_seen(row[1], own, heads)]
            said = [row for row in said if not any(head.endswith(f" {row[1]}") for head in heads)]  # one of the vans
        texts += said
        known = {self.clean(text, names.maker).casefold() for _, text, _ in texts}
        # What only the file's name tells to be the title comes after what a sentence tells: it is seldom all of it.
        # The company that heads a document stands in the file's name as well.
        house = self._above_dated(own, names.maker)
        filed = {self.clean(row[1], names.maker).casefold(): row for row in self.of_file(document, own)}
        texts += [row for key, row in filed.items() if key not in (house, letterhead) and (spoken or key in known)]
        for weight, text, place in texts:
            name = self.clean(text, names.maker)
            if not name or len(name.split()) > MAX_NAME_WORDS or self._is_address(text) or self.tells_hours(text):
                continue
            if self._is_seller(text):
                continue
            key = name.casefold()
            if not self._is_in_one(name, text):
                continue  # "Drift Gorse" of "Drift and Gorse"
            if self.lexicon.names_thing(name.rpartition(". ")[0]):
                continue  # "Overall length. 590: 5.93 m. 640: 6.41 m"
            if not self.letter.says(name, place):
                continue
            stock = self.is_stock_number(key) or self.is_stock_number(text.strip(" ."))
            if self._is_left_over(key) or stock or DATE.search(key) or self._is_amount(key):
                continue
            if any(begins_with(key, dealer) for dealer in dealers):
                continue
            candidates[key] += weight
            line = self._shortened(text, names.maker)
            noun = self.words.nouns_have_capitals and line.partition(" ")[0].casefold() in self.function_words
            amid = not self.words.nouns_have_capitals and not begins_with(
                text.strip(), name
            )  # "Marrowfen Drift brochure"
            behind = line[len(key) :].lstrip() if line.casefold().startswith(key) else ""
            if noun or (not amid and behind[:1].islower() and self.signed_by.match(behind) is None):
                rests.setdefault(key, set()).add(line)  # a capital that may only begin the line, or that of a noun
            else:
                whole.add(key)
            if key not in shown or (shown[key][0].isupper() and not name.isupper()):
                shown[key] = (name, place)
        if said and letterhead in candidates:
            candidates[letterhead] -= 3
        if house in candidates:
            candidates[house] -= 3
        if labelled is not None and any(c.isalnum() for c in labelled[0]) and len(labelled[0].split()) <= 5:
            name = self.clean(labelled[0], names.maker)
            if name:
                candidates[name.casefold()] += 6
                shown.setdefault(name.casefold(), (name, labelled[1]))
        rests = {key: lines for key, lines in rests.items() if key not in whole}
        sure = self._twice_headed(document, names.maker)
        makers = {word.casefold() for word in names.maker.split()}
        above, listed = self.listed_below(own) if not heads else ([], set())
        ranges = {self.clean(passage.text, names.maker).casefold() for passage in above} & candidates.keys() - listed
        if any(self._is_plain_name(shown[key][0].split()) for key in ranges):
            for key in [key for key in candidates if any(begins_with(key, one) for one in listed)]:
                del candidates[key]  # trims of the range above them
        best, score = self._best_title(candidates, shown, own, rests, sure, heads, makers)
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

    @staticmethod
    def _is_in_one(name: str, text: str) -> bool:
        """Tell whether a name stands in one piece in the line of which it is left; years, brackets and signs aside."""
        words, said = (" ".join(WORD.findall(part.casefold())) for part in (name, without_signs(text)))
        return f" {words} " in f" {said} "

    def names_nothing(self, line: str, maker: str) -> bool:
        """Tell whether a line says nothing but words of titles and the maker: "Our vans at a glance"."""
        name = self.clean(line, maker).casefold()
        return not name or self._is_left_over(name)

    def _is_left_over(self, name: str) -> bool:
        """Tell whether common words are all that is left of a line: "Maße" of "Daten und Maße", "Unsere"."""
        words = name.split()
        if all(word in self.function_words for word in words) or name in self.seasons:
            return True
        common = self.common_words.issuperset(self.lexicon.folder.norms(name))
        return common and not re.search(r"\d", name) and self.is_label(name)

    def _is_amount(self, name: str) -> bool:
        """Tell whether a line is a figure with its unit, as miles and prices of used vans are; "600 L" is a name.

        What goes on behind a price says how it is meant: "58 900 € TTC".
        """
        match = AMOUNT.fullmatch(name)
        return PRICED.match(name) is not None or match is not None and self.lexicon.book.is_unit(match.group(1))

    def _is_address(self, text: str) -> bool:
        """Tell whether a line gives a company with where it is: "Marrowfen Ltd, 4 Mill Lane"."""
        match = self.legal.search(text)
        return match is not None and ADDRESS.match(text, match.end()) is not None

    def _is_seller(self, line: str) -> bool:
        """Tell whether a line is the name of who sells or mends vans and builds none: "Marrowfen RV & Van Center",
        "Marrowfen - used campervans"."""
        name, *rest = PARTED.split(line)
        name = name.strip(" .")
        sells = self.sold_at.search(name) is not None or any(map(self.stock.match, rest))
        return sells and not re.search(r"\d", name)

    def _dealers(self, own: list[Passage]) -> set[str]:
        """Give the companies of a listing, by a legal form, a word for sellers or a sentence: they name no van."""
        found = {match.group(1) for passage in own for match in self.legal.finditer(passage.text)}
        found |= {match.group(1) for passage in own for match in self.sells.finditer(passage.text)}
        return {self.clean(name, "").casefold() for name in found}

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

    def _above_dated(self, own: list[Passage], maker: str) -> str:
        """Give the first line where it is a name alone and another name stands below it with the model year.

        It is the company's rather than the range's: "Marrowfen" above "Drift, model year 2026". A line with the
        company that is known is of no range.
        """
        lines = [passage.text.strip(" .") for passage in self._opening(own)]
        if len(lines) < 2 or not self._is_plain_name(lines[0].split()):
            return ""
        dated = [self.clean(line, "") for line in lines[1:] if YEAR.search(line)]
        if any(YEAR.search(line) or self._lists_codes(line) for line in lines[2:]):
            dated.append(self.clean(lines[1], ""))  # the line between, above year and codes
        known = {lines[0].casefold(), maker.casefold()}
        named = [name for name in dated if self._is_plain_name(name.split()) and name.casefold() not in known]
        return lines[0].casefold() if named else ""

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

    def _stands_over_vans(self, lines: set[str], own: list[Passage], heads: Collection[str]) -> bool:
        """Tell whether one of some lines opens the document above one that lists its vans: "Drift data", "Solo, Duo".

        ``heads`` are those of tables that name vans; where there are none, the text goes on with each name.
        """
        named = {head.casefold() for head in heads}
        opening = self._opening(own)
        text = "\n".join(p.text for p in own)
        above = next((n for n, p in enumerate(opening) if any(line in p.text for line in lines)), len(opening))
        for passage in opening[above + 1 :]:
            parts = LIST_JOINT.split(passage.text.strip(" ."))
            listed = [part for part in parts if part.casefold() in named or (not named and count(text, part) > USES)]
            if len(parts) > 1 and len(listed) == len(parts):
                return True
        return False

    def _best_title(
        self,
        candidates: Counter[str],
        shown: dict[str, tuple[str, Place]],
        own: list[Passage],
        rests: dict[str, set[str]],
        sure: set[str],
        heads: Collection[str],
        makers: set[str],
    ) -> tuple[str | None, float]:
        """Give the best name and its points; what is ``sure`` to be a title may be a word that specifications use.

        ``makers`` are the words of the company's name.
        """
        body = " ".join(p.text for p in own).casefold()
        best, score = None, 1.0  # a line that stands once on some later page names nothing
        for key, weight in candidates.items():
            words = key.split()
            plain = NUMBERED.sub("", key)
            if not any(c.isalpha() for c in key) and not self._is_number_name(key, body):
                continue
            if self.legal_words.issuperset(words) or (self.is_label(key) and not self.signs.are_called(key, own)):
                continue
            if (measured := MEASURED.fullmatch(key)) is not None and self.is_label(measured.group(1)):
                continue  # "Length 5.98 m"
            if plain != key and (self.is_label(plain) or self.is_filler(plain)):
                continue
            if len(words) > 1 and self.lexicon.cues(self.lexicon.analyse(words[-1]), "package"):
                continue  # "Cold Country Package"
            if self.is_filler(key) if key not in sure else key in self.fillers:
                continue
            if key in rests and not any(c.isdigit() for c in key):
                if not (self._stands_alone(key, rests[key], own) or self._stands_over_vans(rests[key], own, heads)):
                    continue  # "Brief" of "Brief specification"
            if self._is_saying(words) or self.signs.is_sister(key, own, heads) or self._lists_names(key, heads):
                continue  # "What Is On" of a shouted "WHAT IS ON WHICH VAN"; a van among others, or several
            seen = self.signs.are_seen(shown[key][0], own, heads)
            if not seen and makers and makers.issuperset(words):
                continue  # "Sundry" of "Finch & Sundry"
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

    def _lists_names(self, title: str, heads: Collection[str]) -> bool:
        """Tell whether a title is made of two or more heads of tables and common words: "Nocturne & Aubade"."""
        found = [head for head in heads if holds(title, head.casefold())]
        for head in sorted(found, key=len, reverse=True):
            title = re.sub(rf"(?<!\w){re.escape(head.casefold())}(?!\w)", " ", title)
        rest = [word for word in re.findall(r"\w+", title) if len(word) > LONGEST_JOINT]
        return len(found) > 1 and self.model_labels.issuperset(rest)

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
        known = self.lexicon.knows_words(text)  # "Mallow Run" is none
        return known or self.lexicon.names_thing(text)

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
