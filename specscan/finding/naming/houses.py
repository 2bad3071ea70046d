"""Vans of several makers, each named with its own: "Marrowfen Drift" and "Thornleigh Hearth 20" over two columns.

A name begins with a company's only where the document says of that company alone what only companies do: "built by
Marrowfen", "Thornleigh calls it". Otherwise "Drift Solo" and "Alder Duo" are vans of two ranges.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Mapping, Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word, stands_at, with_behind
from specscan.finding.naming.full_names import is_series_word
from specscan.finding.naming.name_forms import article, words_of_name
from specscan.finding.naming.place import PARTED
from specscan.records.text import Kind, Passage

COMPANY = rf"{words_of_name(3)}(?: [&+] {words_of_name(2)})?"  # "Marrowfen & Holt"
NAME = re.compile(r"[A-ZÀ-Þ][\w’'-]+(?: [A-ZÀ-Þ\d][\w’'.-]*){1,4}")
SIGNED_NAME = r"[A-ZÀ-Þ][\w’'-]+(?: (?:[A-ZÀ-Þ][\w’'.-]*|\d[\w.-]*)){0,4}"
LEAST = 2  # makers
HOST = re.compile(r"(?<![\w@.-])(?:www\.)?([a-z]{4,})\.[a-z]{2,}(?![\w@-])")
SENTENCE_END = re.compile(r"(?<=[.!?])\s+")
MOST_WORDS = 4  # of a company's name
MAX_WORDS = 14  # of a line above the description of a van

House = tuple[str, str]  # a maker and what it calls a van


class HouseReader:
    """Parts the names of vans into maker and model in documents of one language."""

    def __init__(self, lexicon: Lexicon):
        words = lexicon.words
        by = rf"(?<!\w)(?i:{any_word(words.built_by)}|(?:{any_word(words.vans)}) (?:{any_word(words.made_by)}))"
        self.said = re.compile(rf"{by} ({COMPANY})")
        vans = any_word((*words.vans, *words.model_words))
        self.builds = re.compile(
            rf"(?<!\w)({COMPANY}) (?:{any_word(words.builds)})(?!\w)[^.!?]{{0,60}}?(?<!\w)(?i:{vans})(?!\w)"
        )
        self.we_build = re.compile(rf"(?<!\w)(?:{any_word(words.we_build)})(?!\w)", re.IGNORECASE)
        self.we_sign = re.compile(rf"\W*({COMPANY})[,.:]? (?i:{any_word(words.we_build)})(?!\w)")
        self.vans = re.compile(rf"(?<!\w)(?:{any_word((*words.vans, *words.model_words))})(?!\w)", re.IGNORECASE)
        self.does = re.compile(rf"(?<!\w)({COMPANY}) (?:{any_word(words.houses_do)})(?!\w)")
        self.building = rf" (?:{any_word(words.houses_do)})(?!\w)"
        self.houses_do = [f" {word}" for word in words.houses_do]
        self.all_built = re.compile(
            rf"(?<!\w)(?i:{any_word(words.every_words)})(?: (?:{any_word(words.numbers)}))?"
            rf"(?: (?:{any_word(words.predicates)}))?"
            rf" (?i:{any_word(words.built_by)}) ({COMPANY})"  # "both are built by Marrowfen"
        )
        built, verbs = any_word(words.built_by), any_word(words.predicates)
        self.built = re.compile(rf"(?: [A-Z\d][\w.-]*){{0,2}},?(?: (?:{verbs}))?(?: \w+)? (?i:{built}) ({COMPANY})")
        made, apart = any_word((*words.made_by, *words.of_company)), any_word(words.built_behind)
        self.built_behind = re.compile(
            rf"(?: [A-Z\d][\w.-]*){{0,2}} (?:{verbs})(?: \w+)? (?:{made}) ({COMPANY})"
            rf"(?= [^.!?,;]*?(?<!\w)(?:{apart})(?!\w))"
        )
        self.dealers = any_word(words.dealer_words)
        self.dealt = (
            re.compile(rf"(?<!\w)([A-ZÀ-Þ][\w’']+)[ -](?i:{self.dealers})(?!\w)"),
            re.compile(rf"(?<!\w)(?i:{self.dealers}) ([A-ZÀ-Þ][\w’'-]+)(?!\w)"),  # "concessionnaire Marrowfen"
        )
        self.labels = {label.casefold() for label in words.maker_labels}
        self.legal = {form.casefold().strip(".") for form in lexicon.book.general.legal_forms}
        self.behind = re.compile(rf",? (?:{any_word(words.of_company)})(?:(?<=['’])| )")  # "d’Oste"
        self.openers = {word.casefold() for word in (*words.articles_of_names, *words.pronouns)}
        self.led = re.compile(rf"^{article(words.articles_of_names)}")
        self.knows_label = lexicon.knows_label
        # what opens the line of a van in a dealer's list: "#4471", "Stock no. 12:"
        self.stock = rf"(?:[#№] ?[\w-]*\d[\w-]*|(?i:{any_word(words.stock_labels)})[ .:#]+[\w-]*\d[\w-]*)[ .:–—-]+"
        maker = rf"(?i:{any_word((*words.made_by, *words.built_by))}) (?P<maker>{COMPANY})"
        self.built_line = re.compile(rf"(?i:{any_word(words.built_by)})(?!\w)")
        self.signed = re.compile(
            rf"(?:{self.stock})?(?P<name>{SIGNED_NAME})(?:,| [–—|·-])? \(?{maker}(?=$|[,;.:()]| [(–—|·-])"
        )

    def companies(self, own: Iterable[Passage]) -> frozenset[str]:
        """Give the companies, in small letters, of which a document says that they build or name vans."""
        found = set()
        for passage in own:
            text = passage.text
            does = any(word in text for word in self.houses_do)  # told before all names of the text are looked at
            for pattern in (self.said, self.does) if does else (self.said,):
                for match in pattern.finditer(text):
                    words = match.group(1).casefold().split()
                    found.add(" ".join(words[1:] if words[0] in self.openers else words))
        return frozenset(found)

    def building_title(self, title: str, own: Iterable[Passage]) -> tuple[str, Passage] | None:
        """Give a title and where a text says that it does what only companies do: "Marrowfen builds both by hand"."""
        said = re.compile(rf"(?<!\w){re.escape(title)}{self.building}")
        return next(((title, p) for p in own if p.table is None and said.search(p.text)), None) if title else None

    def builder_of_all(self, own: Iterable[Passage]) -> tuple[str, Passage] | None:
        """Give the company of which a text says that it built all its vans: "two kinds, all built by Marrowfen"."""
        return next(((m.group(1), p) for p in own if (m := self.all_built.search(p.text)) is not None), None)

    def builder_of(self, names: Iterable[str], own: Iterable[Passage]) -> tuple[str, Passage] | None:
        """Give the company of which a text says that it builds one of some vans, or its range: "Marrowfen builds the
        Drift in two lengths"."""
        known = [name for name in names if name]
        for passage in own if known else ():
            if not any(word in passage.text for word in self.houses_do):
                continue
            for match in self.does.finditer(passage.text):
                behind = self.led.sub("", passage.text[match.end() :].lstrip(), count=1)
                company = self.led.sub("", match.group(1), count=1)
                told = any(stands_at(behind, name, 0) for name in known if name != company)
                if told and company.casefold() not in self.openers:
                    return company, passage
        return None

    def built_of(self, names: Iterable[str], own: Sequence[Passage]) -> tuple[str, Passage] | None:
        """Give the company by which one of some vans, or its range, is said to be built: "every Drift is built by
        Marrowfen & Holt", "jeder Drift wird von Marrowfen in Handarbeit gebaut"."""
        for passage in (p for p in own if p.table is None):
            for pattern in (self.built, self.built_behind):
                for name in filter(None, names):
                    for _, match in with_behind(passage.text, name, pattern):
                        if match.group(1) != name:
                            return match.group(1), passage
        return None

    def builder_at(self, own: Iterable[Passage], is_trade: Callable[[str], bool]) -> tuple[str, Passage] | None:
        """Give the company by the web address at which those who write say that they build vans.

        "The vans we build here at marrowfen.example" are Marrowfen's; "marrowfen-vans.example" leaves open what the
        company is called.
        """
        for passage in own:
            for sentence in SENTENCE_END.split(passage.text) if self.we_build.search(passage.text) else ():
                hosts = {match.group(1) for match in HOST.finditer(sentence)}
                told = len(hosts) == 1 and not any(map(is_trade, hosts))
                if told and self.we_build.search(sentence) and self.vans.search(sentence):
                    return hosts.pop().capitalize(), passage
        return None

    def signing(self, own: Iterable[Passage], is_trade: Callable[[str], bool]) -> tuple[str, Passage] | None:
        """Give the company with which a line begins that goes on to say that they build: "Marrowfen Vans, we build …".

        Its word for the trade tells that it is one.
        """
        for passage in own:
            match = self.we_sign.match(passage.text) if passage.table is None else None
            if match is not None and " " in match.group(1) and is_trade(match.group(1).split()[-1]):
                return match.group(1), passage
        return None

    def dealt_in(self, own: Sequence[Passage]) -> tuple[str, Passage] | None:
        """Give the company whose dealer a text is of, where a heading begins with its name: "Marrowfen dealer"."""
        for passage in own:
            for match in (match for pattern in self.dealt for match in pattern.finditer(passage.text)):
                # no "Licensed dealer, open till six" as a heading
                headed = re.compile(rf"{re.escape(match.group(1))} (?!(?i:{self.dealers}))[A-ZÀ-Þ\d]")
                if any(headed.match(p.text) for p in own if p.kind is Kind.HEADING):
                    return match.group(1), passage
        return None

    def of_heads(self, heads: Mapping[str, str], own: Sequence[Passage]) -> dict[str, House]:
        """Give maker and model for each of some heads by what is left of them bare; none where one has no maker."""
        if len(heads) < LEAST:
            return {}
        made = self._made_by(own)
        companies = self.companies(own) | {company.casefold() for company in made.values()}
        building = (match for p in own for match in self.builds.finditer(p.text))
        companies |= {match.group(1).casefold() for match in building if match.group(1) not in heads.values()}
        companies |= self._named_behind(heads.values(), own)
        found = {head: house for head, bare in heads.items() if (house := parted(bare, companies)) is not None}
        models = {house[1].casefold(): house for house in found.values()}
        for head, bare in heads.items():
            if head not in found and bare.casefold() in models:
                found[head] = models[bare.casefold()]  # a further table says the model alone
            elif head not in found and head in made:
                found[head] = made[head], bare
        found |= _called_alike({head: bare for head, bare in heads.items() if head not in found}, own) if found else {}
        return found if len(found) == len(heads) and _are_several(list(set(found.values()))) else {}

    def _made_by(self, own: Iterable[Passage]) -> dict[str, str]:
        """Give by the head of its column, or row, the company that a row or column such as "Made by" has for it.

        Legal forms are left out.
        """
        found: dict[str, str] = {}
        for passage in own:
            for label, head in ((passage.row, passage.column), (passage.column, passage.row)):
                if (
                    label is None
                    or head is None
                    or not head.text
                    or label.text.casefold().strip(" :") not in self.labels
                ):
                    continue
                words = passage.text.split()
                while len(words) > 1 and words[-1].casefold().strip(".,") in self.legal:
                    words.pop()
                company = " ".join(words).strip(" ,")
                if re.fullmatch(COMPANY, company):  # no "60 A" of a converter of current
                    found.setdefault(head.text, company)
        return found

    def _named_behind(self, names: Iterable[str], own: Sequence[Passage]) -> frozenset[str]:
        """Give the companies, in small letters, that a text sets behind their vans: "the Drift 6 by Marrowfen"."""
        text = "\n".join(p.text for p in own if p.table is None)
        found = set()
        for words in (name.split() for name in names):
            for cut in range(1, len(words)):
                company, model = " ".join(words[:cut]), " ".join(words[cut:])
                behind = (match.end() for _, match in with_behind(text, model, self.behind))
                if any(stands_at(text, company, place) for place in behind):
                    found.add(company.casefold())
        return frozenset(found)

    def of_lines(self, own: list[Passage]) -> list[tuple[Passage, House]]:
        """Give the lines that name a van with its maker above what they tell of it: "Stand 12: Marrowfen Drift"."""
        companies = self.companies(own)
        found: list[tuple[Passage, House]] = []
        for passage in own if len(companies) >= LEAST else ():
            if passage.table is not None or len(passage.text.split()) > MAX_WORDS:
                continue
            parts = [part.partition(",")[0].strip(" .") for part in PARTED.split(passage.text)]
            houses = [house for part in parts if (house := parted(part, companies)) is not None]
            if len(houses) == 1 and (not found or found[-1][1] != houses[0]):
                found.append((passage, houses[0]))
        if _are_several([house for _, house in found]):
            return found
        return self._of_headings(own) or self._signed(own)

    def _signed(self, own: list[Passage]) -> list[tuple[Passage, House]]:
        """Give the lines that name a van with its maker behind it: "#0417 Drift 19 TB, by Marrowfen, model year 2023".

        All may be of one maker.
        """
        found: list[tuple[Passage, House]] = []
        for passage in own:
            if passage.table is not None or len(passage.text.split()) > MAX_WORDS:
                continue
            match = self.signed.match(passage.text)
            built = self.built_line.match(passage.text) is not None  # "Converted by Marrowfen" names no van
            if match is not None and not built and not self.knows_label(match.group("name")):
                house = match.group("maker"), match.group("name")
                if not found or found[-1][1] != house:
                    found.append((passage, house))
        models = {model.casefold() for _, (_, model) in found}
        return found if LEAST <= len(models) == len(found) else []

    def _of_headings(self, own: list[Passage]) -> list[tuple[Passage, House]]:
        """Give the headings that are names of vans with their makers, where a text tells one company at least."""
        headings = {p.text: p for p in reversed(own) if p.kind is Kind.HEADING and NAME.fullmatch(p.text)}
        names = {text: text for text in reversed(headings)}
        companies = self.companies(own) | self._named_behind(names, own) if len(names) >= LEAST else frozenset()
        found = {text: house for text in names if (house := parted(text, companies)) is not None}
        for text in names if found else ():
            found |= _called_alike({text: text}, own) if text not in found else {}
        houses = [(headings[text], found[text]) for text in names if text in found]
        return houses if _are_several([house for _, house in houses]) else []


def parted(name: str, companies: frozenset[str]) -> House | None:
    """Give maker and model where a name begins with that of a company and goes on with one or a code."""
    words = name.split()
    for cut in range(len(words) - 1, 0, -1):
        named = all(word[0].isupper() or word[0].isdigit() for word in words)
        if named and " ".join(words[:cut]).casefold() in companies:
            return " ".join(words[:cut]), " ".join(words[cut:])
    return None


def behind_trade(name: str, is_trade: Callable[[str], bool]) -> House | None:
    """Give maker and model where a company's word for its trade stands before a name with a figure.

    "Marrowfen Coachworks" and "Drift 21" of "Marrowfen Coachworks Drift 21".
    """
    words = name.split()
    last = max((cut for cut, word in enumerate(words) if is_trade(word)), default=0)
    company, model = words[: last + 1], words[last + 1 :]
    if not 0 < last < MOST_WORDS or not model or is_trade(words[0]) or not all(word[0].isupper() for word in company):
        return None
    named = is_series_word(words[0]) and is_series_word(model[0]) and model[0][0].isupper()
    return (" ".join(company), " ".join(model)) if named and re.search(r"\d", " ".join(model)) else None


def _called_alike(heads: Mapping[str, str], own: Iterable[Passage]) -> dict[str, House]:
    """Give maker and model for heads of which running text uses both alone: "the Marrowfen", "the Drift" and no code.

    A model with a figure may stand alone as a whole, "the Drift 600 S", where the company does not.
    So the other names are parted where one of them is said to be a company's.
    """
    text = "\n".join(p.text for p in own if p.table is None and p.kind is not Kind.HEADING)
    found = {}
    for head, bare in heads.items():
        maker, _, model = bare.partition(" ")
        first = model.partition(" ")[0]
        if not (first and is_series_word(maker) and is_series_word(first)):
            return {}
        alone = re.search(rf"(?<!\w){re.escape(maker)}(?!\w| {re.escape(first)})", text)
        if " " in model and re.search(r"\d", model):
            alone = alone or re.search(rf"(?<!\w)(?<!{re.escape(maker)} ){re.escape(model)}(?!\w)", text)
        called = re.search(rf"(?<!\w)(?<!{re.escape(maker)} ){re.escape(first)}(?!\w)", text)
        if alone is None or called is None:
            return {}
        found[head] = maker, model
    return found


def _are_several(houses: list[House]) -> bool:
    """Tell whether names are of two makers or more, and no model is named twice."""
    makers = {maker.casefold() for maker, _ in houses}
    return len(makers) >= LEAST and len({model.casefold() for _, model in houses}) == len(houses)
