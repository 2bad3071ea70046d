"""The maker of the vans in a document, from labels, legal names, titles and the foot of its pages."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Collection

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_of, any_word, count, holds, lowered, places
from specscan.finding.naming.legal_names import LegalNames, trim_codes, without_letter
from specscan.finding.naming.name_forms import unshouted
from specscan.finding.naming.name_labels import NameLabels
from specscan.finding.naming.page_titles import company_of
from specscan.finding.naming.place import PARTED, Names, Place, begins_with, running_lines
from specscan.finding.naming.said_makers import said_patterns
from specscan.finding.naming.small_companies import SmallCompanies
from specscan.records.text import Document, Kind, Passage, Title
from specscan.records.years import MODEL_YEAR
from specscan.rulebook.book import Rulebook

ENDING = 4  # letters of a word for the trade that other words may end with
CAPITALS = re.compile(r"(?<!\w)[A-ZÀ-Þ][\w’'-]+(?: [A-ZÀ-Þ][\w’'-]+){1,3}")
JOINTS = {"&", "+"}  # between the two names of a company
CAPITAL_BEHIND = re.compile(r"[ \u00a0]([A-ZÀ-Þ][\w’'-]+)")
FIRST_NAME = re.compile(r"(?<![\w’'-])([A-ZÀ-Þ][^\W\d_]+|[A-Z]\.) $")  # right before another: "Ada Marrowfen"
LAST_LINES = 3  # where a company's name stands before its address
ADDRESS = re.compile(r"[|•·∙].*(?:\d|@|www\.)")
LETTERS = re.compile(r"[^\W\d_](?:[ \u00a0]{1,3}(?:[^\W\d_]|&)){3,}")
FIRST_SIGNED = 6  # lines in which "by" and a company may stand alone
LETTERS_OF_CODE = 3  # at most, in a shouted name
LONGEST_LINE = 80  # letters of one that names a paper
FIRST_LINES = 3  # where a company's name stands alone
DATED = re.compile(rf"(\D+?)\s+{MODEL_YEAR}")  # a name with the model year behind it


class MakerReader:
    """Finds the maker in documents of one language."""

    def __init__(self, book: Rulebook, lexicon: Lexicon):
        self.book = book
        self.lexicon = lexicon
        self.words = lexicon.words
        self.fillers = {
            phrase.casefold() for phrase in (*self.words.title_fillers, *self.words.vans, *self.words.model_words)
        }
        self.trade = {word.casefold() for word in self.words.cues.get("company", [])}
        self.openers = {
            word.casefold() for word in (*self.words.articles_of_names, *self.words.drop, *self.words.pronouns)
        }
        self.every = {word.casefold() for word in self.words.every_words}
        self.of_other_year = any_of(self.words.not_model_year, whole=False)
        self.imports = re.compile(rf"\W{{1,4}}(?:{any_word(self.words.importer_words)})(?!\w)", re.IGNORECASE)
        sellers = any_word(self.words.seller_words)
        self.seller = re.compile(rf"(?:{sellers})(?!\w)|.*(?<!\w)(?:{sellers})$", re.IGNORECASE)
        self.sent_by = re.compile(
            rf"(?:^|\n)\s*(?i:{any_word(self.words.sender_labels)})\s*:\s*"
            r"([A-ZÀ-Þ][\w’'-]+(?: (?:& )?[A-ZÀ-Þ][\w’'-]+){0,3})\s*(?:$|\n|<)"
        )
        self.labels = NameLabels(lexicon)
        self.said = said_patterns(self.words, self.trade)
        self.of_paper = any_of(self.words.paper_words, whole=True)
        self.joints = {*self.words.cues["preposition"], *self.words.drop} - set(
            self.words.made_by
        )  # "Marrowfen Builders of Campers"
        self.legal_names = LegalNames(self.words, self.trade, self.joints, book.general.legal_forms)
        self.legal = self.legal_names.pattern
        self.form = any_of(book.general.legal_forms, whole=True)
        self.small = SmallCompanies(lexicon, book.general.legal_forms)

    def _read_maker(self, names: Names, document: Document, own: list[Passage], heads: Collection[str]) -> None:
        labelled = self.labels.maker(own)
        if labelled is not None:
            names.maker, names.maker_place = self._strip_legal(labelled[0]), labelled[1]
            return
        if names.used:
            return
        legal = self._legal_name(document, own, heads)
        brand = self._brand_line(document, own, legal[0] if legal is not None else "")
        if brand is not None and (legal is None or self._agree(brand[0], legal[0])):
            names.maker, names.maker_place = self._strip_legal(brand[0]), brand[1]
            if legal is not None and begins_with(brand[0], legal[0]):
                names.maker = legal[0]  # not "Marrowfen Vans" of a page's title where "Marrowfen Ltd" signs
            if legal is not None and self.legal.search(brand[1].text):
                names.maker = self._short(names.maker, document, own)  # the line is the legal name itself
        elif legal is not None:
            names.maker = self._short(legal[0], document, own)
            names.maker_place = self._first_place(legal[0], own) or legal[1]
            for told in (self._signed(document, own), self._said(own)):
                if told is not None and begins_with(names.maker, told[0]):
                    names.maker, names.maker_place = told  # "The Drift by Marrowfen" of Marrowfen Sea & Road Ltd
        elif (small := self.small.read(own)) is not None:
            names.maker, names.maker_place = small[0], Place(small[1], small[1].page, small[0])
        elif (signed := self._sender(own) or self._signed(document, own) or self._said(own)) is not None:
            names.maker, names.maker_place = signed
        elif (company := self._company_in_text(document, own)) is not None:
            names.maker, names.maker_place = company
            names.maker_weak = True

    def _short(self, name: str, document: Document, own: list[Passage]) -> str:
        """Give a company's name without its word for the trade where the document says it so.

        "Marrowfen" for "Marrowfen Vans", of which a page says "Marrowfen Drift" or "Marrowfen calls it".
        """
        stem = self.stem(name)
        tail = name.split()[len(stem.split()) :]
        if not tail:
            return name
        alone = re.compile(rf"(?<!\w){re.escape(stem)}(?!\s+{re.escape(tail[0])}(?!\w))(?!\w)")
        texts = [p.text for p in own] + [t.text for t in document.titles if t.origin in ("page", "html")]
        whole = "\n".join(texts)
        others = (match for match in alone.finditer(whole) if not self._is_person(whole, match))
        return stem if any(not self._is_place(whole, match, stem) for match in others) else name

    def stem(self, name: str) -> str:
        """Give a company's name without the words for its trade at the end: "Marrowfen" of "Marrowfen Campervans"."""
        words = name.split()
        while len(words) > 1 and (self._is_trade(words[-1]) or (len(words) > 2 and words[-1] in self.joints)):
            words.pop()
        return " ".join(words)

    def _is_person(self, text: str, match: re.Match[str]) -> bool:
        """Tell whether a name stands behind a first name or "Mr": the founder's, not the company's."""
        before = FIRST_NAME.search(text, max(0, match.start() - 24), match.start())
        if before is None:
            return False
        initial = before.group(1).endswith(".")  # a letter that terms know too: "a/c"
        return initial or not self.lexicon.knows_words(before.group(1))

    def _is_place(self, text: str, match: re.Match[str], stem: str) -> bool:
        """Tell whether a word is a town: "at Marrowfen", "Marrowfen Mills" where nothing is called Mills."""
        before = re.findall(r"[\w'’]+", text[max(0, match.start() - 16) : match.start()])
        if before and before[-1].casefold() in self.words.cues.get("in_place", []):
            return True
        if text[: match.start()].endswith(", ") and text[match.end() : match.end() + 1] in (".", ",", ""):
            return True  # "14 Fulling Lane, Marrowfen."
        behind = CAPITAL_BEHIND.match(text, match.end())
        if behind is None:
            return False
        word = behind.group(1)
        return count(text, word) <= count(text, f"{stem} {word}")

    def _strip_legal(self, name: str) -> str:
        match = self.legal.match(name + " ")
        return match.group(1).strip(" ,") if match else name

    def _legal_name(self, document: Document, own: list[Passage], heads: Collection[str]) -> tuple[str, Place] | None:
        """Give the name with a legal form behind it that stands most often, the foot of pages included."""
        counts: Counter[str] = Counter()
        places: dict[str, Place] = {}
        printed = [Place(p, p.page, p.text) for p in own] + [place for _, place in running_lines(document)]
        trims = trim_codes(heads, own)
        for where in printed:
            for match in self.legal_names.found(where.text, trims):
                name = re.sub(r"^(?:The|Die|Der|Das|La|Le|©|Copyright|\d{4})\s+", "", match.group(1)).strip(" ,.")
                name = without_letter(re.sub(r"^(?:\d{4}|Copyright|©)\s+", "", name), printed)
                if name and not name.isdigit():
                    counts[name] += 1
                    places.setdefault(name, Place(where.passage, where.page, match.group()))
        sold = {name for name in counts if self.seller.match(name) or self._imports(name, own)}
        counts = Counter({name: number for name, number in counts.items() if name not in sold})
        if not counts:
            return None
        heads = [text for text, _ in running_lines(document)] + [p.text for p in own[:FIRST_LINES]]
        for name in counts:  # a dealer's stands at the foot alone
            counts[name] += any(holds(lowered(text), lowered(name)) for text in heads)
        best = counts.most_common(1)[0][0]
        return best, places[best]

    def _imports(self, name: str, own: list[Passage]) -> bool:
        """Tell whether a line says that a company imports or sells the vans: "Marrowfen Ltd, sole importer"."""
        low = lowered(name)
        texts = (p.text for p in own if name in p.text)
        return any(self.imports.match(text, at + len(name)) for text in texts for at in places(lowered(text), low))

    def _sender(self, own: list[Passage]) -> tuple[str, Place] | None:
        """Give the company that sent a letter, by its word for the trade: "From: Marrowfen Vans"."""
        for passage in own[:FIRST_SIGNED]:
            match = self.sent_by.search(passage.text)
            if match is not None and self._names_company(match.group(1).split()):
                return match.group(1), Place(passage, passage.page, match.group(1))
        return None

    def _brand_line(self, document: Document, own: list[Passage], legal: str) -> tuple[str, Place] | None:
        """Give the line on the first page, or the end of a page title, that is a company's name alone.

        ``legal`` is the name with a legal form behind it, if there is one.
        """
        stem = legal.split()[0].casefold() if legal else ""
        own_words = {word.casefold() for word in legal.split()}
        lines = [p for p in own if p.page in (0, 1) and p.kind in (Kind.HEADING, Kind.PROSE, Kind.LINE)][:14]
        body = " ".join(p.text for p in own if not p.text.isupper())
        for place, passage in enumerate(lines):
            text = self.unspaced(PARTED.split(passage.text)[0].partition(",")[0].strip(" ."), own)
            if stem and (dated := DATED.fullmatch(text)) is not None and dated.group(1).split()[0].casefold() == stem:
                text = dated.group(1)  # "MARROWFEN 2026" of Marrowfen Vans, Inc.
            words = text.split()
            shouted = text.isupper() and 1 <= len(words) <= 3 and not any(c.isdigit() for c in text)
            shouted = shouted and len(text) > 1  # "Q: How long is it?"
            shouted = shouted and not self._names_range(words) and words[0].casefold() not in self.openers  # "THE VAN"
            shouted = shouted and (place < FIRST_LINES or self.cased(text, own) in body)
            known = (
                bool(stem)
                and words
                and words[0].casefold() == stem
                and len(words) <= 3
                and not any(c.isdigit() for c in text)
            )
            more = [word for word in words if word.casefold() not in own_words]
            if stem and any(not self._is_trade(word) or word.islower() for word in more):
                known = shouted = False  # "MARROWFEN DRIFT" of "Marrowfen Ltd" names the range too
            company = place < FIRST_LINES and not stem and self._names_company(words)
            company = company or (not stem and self._is_described(words, passage.text))
            if place < FIRST_LINES and not stem and (since := self._company_since(words)):
                return since, Place(passage, passage.page, since)
            if (shouted and not self.is_filler(text) and (not stem or words[0].casefold() == stem)) or known or company:
                return self.cased(text, own), Place(passage, passage.page, passage.text)
        for title in document.titles:
            if title.origin == "html" and (name := company_of(title.text, self.seller.match, self._is_trade)):
                return name, Place(None, 0, title.text)
        return None

    def unspaced(self, text: str, own: list[Passage]) -> str:
        """Give a line of single letters, "M A R R O W F E N V A N S", as words; any other as it is.

        Its words are told apart as they are printed elsewhere, or before a word for the trade.
        """
        if not LETTERS.fullmatch(text):
            return text
        letters = re.sub(r"\s", "", text)
        pattern = re.compile(r"(?<!\w)" + r"[ \u00a0]?".join(map(re.escape, letters)) + r"(?!\w)", re.IGNORECASE)
        for passage in own:
            for match in pattern.finditer(passage.text):
                if not LETTERS.fullmatch(match.group()):
                    return match.group()
        for word in sorted(self.trade, key=len, reverse=True):
            rest = letters[: -len(word)]
            if len(word) >= ENDING and len(rest) >= ENDING and letters.casefold().endswith(word):
                return f"{rest} {letters[-len(word) :]}"
        return letters

    def _names_range(self, words: list[str]) -> bool:
        """Tell whether a line names a range, by a word for it: "THE DRIFT RANGE"."""
        return bool({words[0].casefold(), words[-1].casefold()} & {word.casefold() for word in self.words.range_words})

    def _company_since(self, words: list[str]) -> str:
        """Give the company of a line that says since when it builds: "Marrowfen Vans Built in Hythe since 1998"."""
        if words and words[0].casefold() in self.openers:
            words = words[1:]
        for end in range(2, min(5, len(words))):
            rest = " ".join(words[end:]).casefold()
            if self._is_trade(words[end - 1]) and self._names_company(words[:end]) and self.of_other_year.search(rest):
                return " ".join(words[:end])
        return ""

    def _names_company(self, words: list[str]) -> bool:
        """Tell whether a line is a name with a word for the trade: "Marrowfen Vans", "Reisemobile Auwald"."""
        if not 2 <= len(words) <= 4 or not all(word[:1].isupper() and word.isalpha() for word in words):
            return False
        other = [word for word in words if not self._is_trade(word)]
        counted = words[0].casefold() in self.words.numbers  # "Two Campers"
        return 1 <= len(other) < len(words) and not counted and not self.is_filler(" ".join(other))

    def _signed(self, document: Document, own: list[Passage]) -> tuple[str, Place] | None:
        """Give the name behind "by" at the end of a title: "The Drift by Marrowfen"."""
        words = any_word(self.words.made_by)
        pattern = re.compile(rf"(?:[\w”“»\"] |^)(?i:{words}) ([A-ZÀ-Þ][\w’'&-]+(?: [A-ZÀ-Þ&][\w’'-]*){{0,3}})$")
        opening = [Title(p.text, p.page, 0.0, "page") for p in own[:FIRST_SIGNED] if p.table is None]
        titles = [one for one in (*document.titles, *opening) if one.page in (0, 1)]
        parted = [(one, part.strip(" .")) for one in titles for part in PARTED.split(one.text)]
        for title, part in parted:
            match = pattern.search(part)
            if match is not None and not self.is_filler(match.group(1)):
                name = self._strip_legal(match.group(1))
                return name, self._first_place(name, own) or Place(None, title.page, title.text)
        return None

    def _said(self, own: list[Passage]) -> tuple[str, Place] | None:
        """Give the company of which a sentence says that it builds the vans: "Marrowfen builds vans in Hythe"."""
        prose = [passage for passage in own if passage.kind in (Kind.PROSE, Kind.BULLET) and passage.table is None]
        for pattern in self.said:
            for passage in prose:
                match = pattern.search(passage.text)
                if match is None:
                    continue
                words = match.group(1).split()
                if words[0].casefold() in self.every:
                    continue  # "Every Drift is a camper"
                while words and (words[0].casefold() in self.openers or self.is_filler(words[0])):
                    words = words[1:]
                if words and not self.is_filler(" ".join(words)):
                    return " ".join(words), Place(passage, passage.page, " ".join(words))
        return None

    def _is_described(self, words: list[str], line: str) -> bool:
        """Tell whether a line names a company and its trade: "Marrowfen, builders of camper vans since 1998"."""
        rest = re.findall(r"\w+", line.partition(",")[2])
        named = 1 <= len(words) <= 3 and all(word[:1].isupper() and word.isalpha() for word in words)
        return named and any(self._is_trade(word) for word in rest[:5]) and not self.is_filler(" ".join(words))

    def running_maker(self, document: Document, series: str) -> tuple[str, Place] | None:
        """Give the name at the head or foot of the pages that is not the range's: "Marrowfen · Season 2026".

        In the last lines a name stands before an address: "Marrowfen & Holt · 12 Quay Road"."""
        last = [p for p in document.passages[-LAST_LINES:] if p.table is None and ADDRESS.search(p.text)]
        foot = [(PARTED.split(p.text)[0], Place(p, p.page, p.text)) for p in last]
        for text, place in [*running_lines(document), *foot]:
            parts = PARTED.split(text)
            if self.names_paper(text):
                continue
            if len(parts) == 2 and parts[0].strip() == series:
                continue  # "Marrowfen | Drift" as well as "Drift | Marrowfen": the order tells nothing alone
            for part in parts:
                name = part.partition(",")[0].strip(" .")
                words = name.split()
                if self._is_plain_name(words) and not (series and series.casefold() in name.casefold()):
                    return self.cased(name, []), Place(place.passage, place.page, name)
        return None

    def _is_plain_name(self, words: list[str]) -> bool:
        """Tell whether words can be a company's name alone: one to three with capitals, or two joined by "&"."""
        name = " ".join(words)
        capital = [word for word in words if word not in JOINTS]
        if not (1 <= len(capital) <= 3 and len(words) <= 4) or {words[0], words[-1]} & JOINTS:
            return False
        named = all(word[:1].isupper() and word.isalpha() for word in capital)
        return named and not self.is_filler(name) and not self.lexicon.knows_label(name)

    def _is_trade(self, word: str) -> bool:
        """Tell whether a word is one for the trade or ends with one: "Vans", "Vanworks", "Reisemobilbau"."""
        plain = word.casefold()
        return any(plain == one or (len(one) >= ENDING and plain.endswith(one)) for one in self.trade)

    def _company_in_text(self, document: Document, own: list[Passage]) -> tuple[str, Place] | None:
        """Give the company that running text or the foot of the pages names, where its name without the trade stands
        elsewhere too: "Marrowfen Campers sold three of them" beside "the Marrowfen Drift"."""
        found: dict[str, Place] = {}
        counts: Counter[str] = Counter()
        stems: Counter[str] = Counter()
        places = [Place(p, p.page, p.text) for p in own if p.kind is not Kind.CELL]
        for where in [*places, *(place for _, place in running_lines(document))]:
            for match in CAPITALS.finditer(where.text):
                words = match.group().split()
                stems.update(set(words))
                if self._names_company(words) and self._is_trade(words[-1]) and not self._is_trade(words[0]):
                    alone = any(part.strip() == match.group() for part in PARTED.split(where.text))
                    counts[match.group()] += 2 if alone else 1
                    found.setdefault(match.group(), Place(where.passage, where.page, match.group()))
        counts = Counter({name: number for name, number in counts.items() if not self._imports(name, own)})
        if not counts:
            return None
        best, count = counts.most_common(1)[0]
        return (best, found[best]) if count > 1 or stems[best.split()[0]] > count else None

    def _agree(self, one: str, two: str) -> bool:
        a, b = one.casefold().split(), two.casefold().split()
        return a[: len(b)] == b or b[: len(a)] == a

    def names_paper(self, line: str) -> bool:
        """Tell whether a short line names a paper that writes of vans: "The Wader, a magazine for walkers"."""
        return len(line) <= LONGEST_LINE and self.of_paper.search(line.casefold()) is not None

    def names_no_van(self, text: str) -> bool:
        """Tell whether a line is words of the trade alone, or the legal form of a company."""
        return self.form.fullmatch(text) is not None or self.is_filler(text)

    def is_filler(self, text: str) -> bool:
        """Tell whether a line says nothing but words of the trade: "SPECIFICATIONS", "BASE", "FRESH WATER"."""
        if text.casefold() in self.fillers or all(w.casefold() in self.fillers for w in text.split()):
            return True
        analysis = self.lexicon.analyse(text)
        told = {i for m in analysis.mentions if m.concept.kind != "distant" for i in range(m.first, m.last)}
        return bool(analysis.tokens) and len(told) == len(analysis.tokens)

    def cased(self, text: str, own: list[Passage]) -> str:
        """Give a shouted name as it is written elsewhere in the document, else with capitals first."""
        if not text.isupper() or len(text) <= 3:
            return text
        for passage in own:
            for place in places(lowered(passage.text), lowered(text)):
                printed = passage.text[place : place + len(text)]
                if not printed.isupper():
                    return printed
        coded = any(c.isdigit() for c in text)  # "TK 590 E"
        return " ".join(unshouted(word, LETTERS_OF_CODE if coded else 0) for word in text.split())

    def _first_place(self, name: str, own: list[Passage]) -> Place | None:
        for passage in own:
            if name.casefold() in passage.text.casefold():
                return Place(passage, passage.page, name)
        return None
