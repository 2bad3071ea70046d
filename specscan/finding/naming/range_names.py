"""The range to which bare codes belong: from the corner of their table, a sentence, or lines that name both.

"The Drift comes in two lengths: the 540 and the 600 Q" names a range and its vans; tables then say "540" and "600 Q".
"""

from __future__ import annotations

import itertools
import re
from collections import Counter
from collections.abc import Callable, Collection, Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word, count, holds, lowered, may_hold, places, stands_before
from specscan.finding.naming.dated_ranges import DatedRanges
from specscan.finding.naming.file_names import is_in_file
from specscan.finding.naming.full_names import CODE, is_series_word
from specscan.finding.naming.name_forms import article, words_of_name
from specscan.finding.naming.place import PARTED, Names, Place, begins_with, running_lines, without_start
from specscan.finding.naming.title_texts import LIST_JOINT
from specscan.records.text import Document, Kind, Passage
from specscan.rulebook.models import WordFile

NAME = words_of_name(3)
ITEM = r"(?:[A-ZÀ-Þ\d][\w’'.-]*[\w’']|\d)(?: [A-ZÀ-Þ\d][\w’'-]*){0,2}"
NAMED_FIGURE = re.compile(r"([^\W\d_]{3,}(?: [^\W\d_]{3,})*) [A-Z]?\d")
BEFORE = re.compile(rf"({NAME})[ \u00a0]$")
CODED_BEFORE = re.compile(rf"({NAME} [A-Z]?\d[\w-]*)[ \u00a0]$")
OPENED = re.compile(r"[.!?:]\s+$")
SENTENCE_END = re.compile(r"(?<=[.!?])\s+")
FIRST = 14  # passages in which a sentence presents the range
MOST_WORDS = 3
BASE_BEFORE = 40  # letters before a name in which a sentence says that it is the base vehicle's
SHORTEST = 3  # letters of a name
SURE = 3  # points from which a name counts
TOLD = 5  # of a name that a sentence gives
MIN_TRIMS = 2
LEAST_USES = 2  # of each listed name in the text, itself included


class RangeNames:
    """Finds ranges in documents of one language."""

    def __init__(
        self,
        lexicon: Lexicon,
        others: Sequence[WordFile],
        is_filler: Callable[[str], bool],
        can_be_name: Callable[[str], bool],
        clean: Callable[[str, str], str],
    ):
        words = lexicon.words
        self.lexicon, self.is_filler, self.can_be_name, self.clean = lexicon, is_filler, can_be_name, clean
        self.dated = DatedRanges(lexicon, clean, self.can_name_range)
        before, ranges = article(words.articles_of_names), any_word(words.range_words)
        joints = any_word({*words.cues.get("number_joint", []), "&"})
        item = rf"(?:{before})?({ITEM})"
        self.item = re.compile(item)
        either = any_word({*words.cues.get("number_joint", []), *words.cues.get("or_joint", []), "&"})
        self.joint = re.compile(rf"\s*[,;|/]\s*(?:(?:{either})\s+)?|\s+(?:{either})\s+")
        self.list = re.compile(rf"{item}(?:, {item})*,? (?:{joints}) {item}")
        self.named = [
            re.compile(rf"(?<!\w){pattern}")
            for pattern in (
                rf"(?i:{ranges})[ \u00a0]+({NAME})",
                rf"({NAME})[ -](?i:{ranges})(?!\w)",
                rf"{before}({NAME})",
            )
        ]
        self.leads_to_base = re.compile(rf"(?<!\w)(?:{any_word(words.leads_to_name)})\s+$", re.IGNORECASE)
        self.house = re.compile(rf"({NAME}) (?i:{ranges}) (?=({NAME}))")
        self.article = re.compile(before)
        self.about = {word.casefold() for word in (*words.range_words, *words.model_words, *words.articles_of_names)}
        generic = (
            *words.column_words,
            *words.code_words,
            *words.model_labels,
            *words.unit_systems,
            *words.made_by,
            *words.every_words,
        )
        self.generic = {word.casefold() for word in generic} | self.about
        self.generic |= {word.casefold() for word in lexicon.book.general.legal_forms}  # "Marrowfen Coach Company"
        self.months = {month.casefold() for one in others for month in one.months}
        self.generic |= {
            w.casefold() for one in others for w in (*one.articles_of_names, *one.drop, *one.pronouns, *one.months)
        }

    # a range and its vans in one sentence

    def told(
        self, own: Sequence[Passage], maker: str, vans: Collection[str] = ()
    ) -> tuple[str, list[str], Passage] | None:
        """Give range, codes and passage of the sentence that lists the vans of a range; each is used elsewhere too.

        ``vans`` are texts that are known to name vans, as heads of tables do.
        """
        for passage in own[:FIRST]:
            if passage.kind not in (Kind.PROSE, Kind.BULLET, Kind.LINE) or passage.table is not None:
                continue
            for sentence in SENTENCE_END.split(passage.text):
                for match in self.list.finditer(sentence):
                    codes = [one.group(1) for one in self.item.finditer(sentence, match.start(), match.end())]
                    known = [code for code in codes if code in vans or self.can_be_name(code)]
                    if len(set(codes)) != len(codes) or not known or self._are_dated(codes):
                        continue
                    rest = f"{sentence[: match.start()]} | {sentence[match.end() :]}"
                    name = self._named_in(rest, maker, vans, own)
                    others = [f"{name} {code}" for code in codes if code not in known]
                    if not all(any(holds(p.text, other) for p in own) for other in others):
                        continue  # "the Duo and the Shore Plus" of the Drift, where "Drift Shore Plus" stands too
                    coded = all(re.search(r"\d", code) for code in codes)
                    if not coded and any(re.search(r"\d", code) for code in codes):
                        continue  # "on the Bruska 35, and the Larder"
                    if CODE.match(codes[0]) and any(map(NAMED_FIGURE.match, codes)):
                        continue  # "The Drift has walls of R11 and the Larch R5"
                    if name and (coded or _are_used(codes, own)) and not any(_is_told_of(code, own) for code in codes):
                        return name, codes, passage
        return None

    def _are_dated(self, codes: Collection[str]) -> bool:
        """Tell whether what a sentence lists are days: "on our Open Day, November 8 and 9"."""
        return any(word.casefold().strip(".") in self.months for code in codes for word in code.split())

    def _named_in(self, text: str, maker: str, vans: Collection[str], own: Sequence[Passage]) -> str:
        by_article = self.named[-1] if self.lexicon.words.nouns_have_capitals else None
        for pattern in self.named:
            for match in pattern.finditer(text):
                name = match.group(1)
                if self._leads_to_base(text[: match.start()]):
                    continue  # "built on the Bruska 35"
                opens = not text[: match.start()].strip(" |")
                if pattern is by_article and not (
                    opens or any(p.kind is Kind.HEADING and holds(p.text, name) for p in own)
                ):
                    continue  # "hinter der Scheune": any noun has a capital
                one_of_them = name in vans and not all(begins_with(van, name) for van in vans)
                if self.can_name_range(name, maker) and not one_of_them:
                    return name
        return ""

    def _leads_to_base(self, text: str) -> bool:
        """Tell whether the words before a name say that it is the base vehicle's: "both are built on the"."""
        if self.leads_to_base.search(text) is None:
            return False
        lead = text[-BASE_BEFORE:].rstrip()
        mentions = self.lexicon.analyse(lead).mentions
        return any(m.concept.name == "chassis" and m.end == len(lead) for m in mentions)

    def can_name_range(self, name: str, maker: str, *, said: bool = False) -> bool:
        """Tell whether a text can be the name of a range: words with capitals that are neither label nor maker.

        Where the text is ``said`` to be a range it may hold a word of labels beside its own: "Long Drift range".
        """
        words = name.split()
        own = said and any(map(self.lexicon.knows_none, words))
        return (
            1 <= len(words) <= MOST_WORDS
            and all(word[0].isupper() and any(c.isalpha() for c in word) for word in words)
            and not re.search(r"\d", name)
            and not LIST_JOINT.search(name)  # "Alder, Gorse, Teasel" at the foot of a page
            and not begins_with(maker, name)
            and not begins_with(name, maker)
            and not f" {maker}".casefold().endswith(f" {name}".casefold())  # "Marrowfen" of the "Atelier Marrowfen"
            and self.generic.isdisjoint((name.casefold(), words[0].casefold()))
            and len(name) >= SHORTEST
            and not self.is_filler(name)
            and (own or not self.lexicon.knows_label(name))
            and not self.lexicon.cues(self.lexicon.analyse(name), "package")  # "a Winter Pack", "Pack Hiver"
        )

    # the range of codes over columns

    def of_heads(self, heads: Sequence[str], names: Names, document: Document, own: Sequence[Passage]) -> str:
        """Give the range that the pages give to bare codes, an empty text where none is sure."""
        texts = [p.text for p in own] + [t.text for t in document.titles if t.origin != "file"]
        if names.series and any(stands_before(text, names.series, head) for text in texts for head in heads):
            return ""  # the title's
        points: Counter[str] = Counter()
        printed = {t.text.strip(" .:") for t in document.titles if t.origin == "corner"}
        corners = {self._corner(text): text for text in printed}
        for corner, whole in corners.items():
            spoken = any(holds(p.text, corner) for p in own if p.table is None and p.text.strip(" .:") != corner)
            if len(corners) > 1 and not spoken:
                continue  # "HEATING" and "ELECTRICAL" over the labels of two tables
            if self.can_name_range(corner, names.maker, said=corner != whole):
                points[corner] += SURE if spoken or not names.series else SURE - 1  # "Base prices" over the codes
                points[corner] += 2 * self.lexicon.knows_none(corner)
        for line in lines_over_tables(own) if all(CODE.match(head) for head in heads) else ():
            spoken = any(holds(lowered(p.text), lowered(line)) for p in own if p.text.strip(" .:") != line)
            if spoken and self.can_name_range(line, names.maker) and self.lexicon.knows_none(line):
                points[line] += SURE
        if names.maker and (above := line_over_codes(heads, own)) and self.can_name_range(above, names.maker):
            points[above] += SURE * self.lexicon.knows_none(above)
        if all(CODE.match(head) for head in heads) and (dated := self.dated.read(document, own, names.maker)):
            points[dated] += SURE
        for title in document.titles:
            if title.page in (0, 1) and title.size > 0 and (name := self._of_range_word(title.text, names.maker)):
                points[name] += TOLD
        told = self.told(own, names.maker, heads)
        if told is not None and {code.casefold() for code in told[1]} & {head.casefold() for head in heads}:
            points[told[0]] += TOLD
        for name, number in self._before(heads, texts).items():
            sister = any(begins_with(name, head) or holds(f" {head} ", name) for head in heads)
            if not sister and self.can_name_range(name, names.maker):
                points[name] += SURE * number if number > 1 or len(heads) == 1 else SURE - 1
                points[name] += names.series.endswith(f" {name}")  # of "Marrowfen Drift" the Drift
        if before := self.before_list(heads, names.maker, own):
            points[before] += SURE
        ranged = any(all(begins_with(head, one) for head in heads) for one in heads)  # "Drift", "Drift Snow"
        for line, _ in running_lines(document):
            for part in PARTED.split(line):
                name = self._corner(self.clean(part, names.maker))
                if names.series and name.endswith(f" {names.series}"):
                    name = names.series  # the company's short name, or a word for the paper, before it
                listed = sum(holds(name, head) for head in heads) > 1  # "Alder et Gorse" at the foot of pages
                if self.can_name_range(name, names.maker) and not listed:
                    points[name] += 2
                    points[name] += int((bool(names.maker) and not ranged) or all(CODE.match(head) for head in heads))
        if names.series:
            points[names.series] += 1 + (not self.is_filler(names.series))
            points[names.series] += any(p.text == names.series and p.table is None for p in own[:FIRST])
        for name in points:
            points[name] += is_in_file(name, document.path)
        best = max(points, key=lambda name: points[name], default="")
        return best if points[best] >= SURE else ""

    def of_lone(self, heads: Sequence[str], names: Names, document: Document, own: Sequence[Passage]) -> str:
        """Give the range of the only van, the title of which is a mere code; an empty text where none is sure."""
        dated = self.dated.read(document, own, names.maker)
        return dated or self.dated.on_way(document, own, names.maker, heads[0])

    def before_list(self, heads: Sequence[str], maker: str, own: Sequence[Passage]) -> str:
        """Give the name that amid a text stands before a list of all heads: "your letter on the Drift Solo and Duo".

        Who makes them must be known: "your letter on Marrowfen Solo and Duo" may name no more than that.
        """
        low = {lowered(head) for head in heads}
        texts = [p.text for p in own if all(may_hold(p.text, head) for head in low)] if maker and len(low) > 1 else []
        for parts in map(self.joint.split, texts):
            for first in range(len(parts) - len(low) + 1):
                lead, *between, last = parts[first : first + len(low)]
                opening = max((head for head in low if lowered(lead).endswith(f" {head}")), key=len, default="")
                ending = max((head for head in low if begins_with(last.strip(" .?!"), head)), key=len, default="")
                match = BEFORE.search(lead[: len(lead) - len(opening)])
                listed = {opening, *map(lowered, between), ending} == low
                before = lead[: match.start()].rstrip() if match is not None else ""
                if match is None or not listed or not (first or before) or before.endswith((".", "!", "?")):
                    continue  # "Choose Solo, Duo and Trio": at the beginning any word has a capital
                if self.can_name_range(match.group(1), maker):
                    return match.group(1)
        return ""

    def coded_before(self, heads: Sequence[str], document: Document, own: Sequence[Passage], maker: str) -> str:
        """Give the name with its figure that stands right before each of some trims: "the Drift 21 Scholar".

        Trims are words; an empty text says that there is none.
        """
        if len(heads) < MIN_TRIMS or not all(is_series_word(head.split()[0]) for head in heads):
            return ""
        texts = {text for p in own for text in (p.text, *(head.text for head in (p.row, p.column) if head is not None))}
        texts |= {title.text for title in document.titles if title.origin != "file"}
        names: list[set[str]] = []
        for head in heads:
            leads = [text[max(0, at - 40) : at] for text in texts if head in text for at in places(text, head)]
            found = [match.group(1) for lead in leads if (match := CODED_BEFORE.search(lead)) is not None]
            names.append({without_start(self._without_article(name), maker) for name in found})
        shared = set.intersection(*names)
        return next(iter(shared)) if len(shared) == 1 else ""

    def _of_range_word(self, title: str, maker: str) -> str:
        """Give the name beside a word such as "range" that stands amid a title: "Marrowfen série Drift – prices"."""
        for pattern in self.named[:-1]:
            match = pattern.search(title)
            if match is not None and match.start() > 0 and self.can_name_range(match.group(1), maker, said=True):
                return match.group(1)
        return ""

    def house_of(self, name: str, document: Document) -> str:
        """Give the company that a title sets before a word for ranges and the range's name, an empty text for none."""
        matches = (self.house.search(title.text) for title in document.titles if title.page in (0, 1))
        return next((match.group(1) for match in matches if match is not None and match.group(2) == name), "")

    def of_label(self, label: str) -> str:
        """Give the range that a label names alone or beside a word such as "range", an empty text where it is none."""
        name = self._corner(label)
        return name if self.can_name_range(name, "") else ""

    def of_corner(self, document: Document, maker: str) -> str:
        """Give the range that the corner of a table names beside a word for vans: "Drift models" over trims."""
        for title in document.titles:
            name = self._corner(title.text) if title.origin == "corner" else ""
            if name and name != title.text.strip(" .:") and self.can_name_range(name, maker, said=True):
                return name
        return ""

    def of_margins(self, document: Document, maker: str, heads: Collection[str]) -> str:
        """Give the one name that stands in corners of tables or heads and feet of pages beside that of the maker."""
        texts = [t.text for t in document.titles if t.origin == "corner"]
        texts += [part for line, _ in running_lines(document) for part in PARTED.split(line)] if maker else []
        names = {self._corner(self.clean(text, maker)) for text in texts}
        names = {name for name in names if self.can_name_range(name, maker) and self.lexicon.knows_none(name)}
        sisters = any(begins_with(head, name) or begins_with(name, head) for head in heads for name in names)
        return "" if len(names) != 1 or sisters else names.pop()

    def runs_behind(self, title: str, heads: Collection[str], document: Document) -> bool:
        """Tell whether the name of a range stands behind a title at the head or foot of pages: "Marrowfen | Drift".

        So it is where all heads are codes, which a range has and a company has not.
        """
        if not title or not all(CODE.match(head) for head in heads):
            return False
        parted = [[part.strip() for part in PARTED.split(line)] for line, _ in running_lines(document)]
        names = {parts[1] for parts in parted if len(parts) == 2 and parts[0] == title}
        return any(self.can_name_range(name, title) and self.lexicon.knows_none(name) for name in names)

    def _corner(self, text: str) -> str:
        """Give a text without words such as "range" and "models"."""
        return " ".join(word for word in text.strip(" .:").split() if word.casefold() not in self.about)

    def _before(self, heads: Sequence[str], texts: Sequence[str]) -> Counter[str]:
        """Give the names that stand right before codes, each with the number of codes that it stands before."""
        found: dict[str, set[str]] = {}
        for text in texts:
            for head in heads:
                for start in places(text, head) if head in text else ():
                    lead = text[max(0, start - 40) : start]
                    match = BEFORE.search(lead)
                    if match is not None and not _tells_of_last(lead[: match.start()], heads):
                        opens = not lead[: match.start()].strip() or OPENED.search(lead, 0, match.start())
                        # "L’Orme 54" at the start of a sentence; amid one the capital would be of the name
                        name = self._without_article(match.group(1)) if opens else match.group(1)
                        name = " ".join(w for w in name.split() if w.casefold() not in self.about)
                        found.setdefault(name, set()).add(head)
        return Counter({name: len(codes) for name, codes in found.items() if name})

    def _without_article(self, name: str) -> str:
        match = self.article.match(name)
        return name[match.end() :] if match is not None else name


def _tells_of_last(lead: str, heads: Sequence[str]) -> bool:
    """Tell whether what follows is said of the code before it: "Alcove" in "540 · Alcove 600 · Alcove"."""
    code = lead.rstrip(" \u00a0·•∙|:–—-")
    return code != lead.rstrip() and any(f" {code}".endswith(f" {head}") for head in heads)


def lines_over_tables(own: Sequence[Passage]) -> set[str]:
    """Give the lines alone that stand right above tables: "DRIFT" over the columns "19 B" and "21 R"."""
    kinds = (Kind.LINE, Kind.HEADING)
    found: set[str] = set()
    opened: set[int | None] = {None}
    for above, below in itertools.pairwise(own):
        # a line amid a table heads a group of its rows: "Electrics"
        if above.kind in kinds and above.table is None and below.table not in opened:
            found.add(above.text.strip(" .:"))
        opened.add(below.table)
    return found


def line_over_codes(heads: Collection[str], own: Sequence[Passage]) -> str:
    """Give the line alone that stands right above each of two or more codes, as on sheets of a range; else nothing."""
    above: dict[str, set[str]] = {}
    for one, below in itertools.pairwise(own):
        if below.kind is Kind.HEADING and (code := below.text.strip(" .:")) in heads and CODE.match(code):
            above.setdefault(code, set()).add(one.text.strip(" .:") if one.kind in (Kind.LINE, Kind.HEADING) else "")
    lines = set().union(*above.values())
    return lines.pop() if len(lines) == 1 and len(above) == len(heads) > 1 else ""


def _is_told_of(code: str, own: Sequence[Passage]) -> bool:
    """Tell whether a figure behind a name is what a sentence tells of it: "the Larch 82 W" where others say "Larch"."""
    match = NAMED_FIGURE.match(code)
    text = "\n".join(p.text for p in own) if match is not None else ""
    return match is not None and count(text, match.group(1)) > count(text, code) + 1


def _are_used(names: Collection[str], own: Sequence[Passage]) -> bool:
    """Tell whether text and heads of tables use each name as often as names of vans are."""
    heads = {head.text for p in own for head in (p.row, p.column) if head is not None}
    everything = "\n".join([*(p.text for p in own), *heads])
    return all(count(everything, name) >= LEAST_USES for name in names)


def place_of(name: str, own: Sequence[Passage]) -> Place | None:
    """Give where a name first stands."""
    passage = next((p for p in own if name in p.text), None)
    return Place(passage, passage.page, name) if passage is not None else None
