"""What reading documents of one language needs, made once."""

from __future__ import annotations

import functools
import re
from collections import Counter
from collections.abc import Callable, Iterable
from dataclasses import dataclass, field, replace

from specscan.finding.absent_lists import AbsentLists
from specscan.finding.fields.frames import FrameReader
from specscan.finding.instead import Instead
from specscan.finding.language.feet import feet_and_inches
from specscan.finding.language.lexicon import KEPT_LETTERS, Lexicon, owns
from specscan.finding.language.mentions import Concept
from specscan.finding.language.numbers import FigureReader
from specscan.finding.language.quantities import QuantityReader
from specscan.finding.language.quantity import Quantity
from specscan.finding.language.units import Unit, Units, conversion
from specscan.finding.language.whole_words import any_word, count, holds
from specscan.finding.left_out import fill_units
from specscan.finding.marks.offered_behind import join_offers
from specscan.finding.mounted import MountedNames
from specscan.finding.naming.addresses import Addresses
from specscan.finding.naming.cast import CastReader
from specscan.finding.naming.van_mentions import Named, VanMentions
from specscan.finding.sayings import SayingFinder
from specscan.finding.things.items import Parsed, parse
from specscan.finding.things.sisters import SisterSentences
from specscan.records.text import Document, Passage
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import UnitFile

JOIN = " ‖ "
NEXT_NUMBER = re.compile(r"\s+(?:([^\W\d_]{1,4})\s+)?[-−–]?\d")
LABEL_WEIGHT = 2  # a label that a language knows weighs as much as two of its frequent words
KEPT_PARSES = 3_000  # brochures repeat their labels and values: parsed texts that are kept, so many of each kit
MAX_LABELS = 120
ANSWER_END = re.compile(r"\s*(?:$|[,;(])")
CUSTOMARY = {"pound", "gallon", "foot", "degF", "Btu_it / hour"}  # units of the United States, as pint names them
METRIC = {"kilogram", "liter", "millimeter", "centimeter", "meter", "degC", "kilowatt"}
METRIC_SHARE = 0.3
MIN_REGION_WORDS = 3  # "propane" alone does not make a French document one of Québec
MIN_UNOPPOSED_WORDS = 2  # British words enough where no North American one stands against them
WORD = re.compile(r"[^\W\d_]+")
R_VALUE = Concept("aspect", "insulance")
FEET_AND_INCHES = re.compile(r"\b(?:ft|feet)\s*[-/.–]\s*(?:in|inches)\b", re.IGNORECASE)
IMPERIAL = re.compile(
    r"\b(?:imperial|imp\.?)\s*(?:gal|measure)|gallons?\s+(?:are|is)\s+imperial|\bgallons? impériaux", re.IGNORECASE
)
US_GALLON = re.compile(r"\bU\.?S\.?\s*gal", re.IGNORECASE)
NEAR_GALLON = 0.04  # by which litres and gallons printed side by side may miss a kind of gallon, rounded as they are


@dataclass(slots=True)
class Kit:
    """Readers for one language and one kind of gallon."""

    language: str
    lexicon: Lexicon
    units: Units
    quantities: QuantityReader
    frames: FrameReader
    casts: CastReader
    sayings: SayingFinder
    sisters: SisterSentences
    mounted: MountedNames = field(init=False)
    absent: AbsentLists = field(init=False)
    addresses: Addresses = field(init=False)
    instead: Instead = field(init=False)
    kept: Callable[[str, str, Unit | None, Named], tuple[Parsed, int]] = field(init=False)

    def __post_init__(self) -> None:
        self.mounted = MountedNames(self.lexicon)
        self.absent = AbsentLists(self.lexicon)
        self.addresses = Addresses(self.lexicon.book.general.legal_forms)
        self.instead = Instead(self.lexicon)
        self.kept = functools.lru_cache(maxsize=KEPT_PARSES)(self._parse)

    def parse(self, label: str, body: str, vans: VanMentions | None, hint: Unit | None = None) -> tuple[Parsed, int]:
        """Parse a label and what stands with it as one text; give it and where the label ends.

        What is given may be shared with others who asked the same: it is to be read, not changed.
        """
        return self.parse_named(label, body, hint, self.named(label, body, vans))

    def parse_named(self, label: str, body: str, hint: Unit | None, named: Named) -> tuple[Parsed, int]:
        """Parse as ``parse`` does, where the places that name vans are known."""
        if named and label:
            named = self._naming(label, body, named)
        if len(label) + len(body) <= KEPT_LETTERS:
            return self.kept(label, body, hint, named)
        return self._parse(label, body, hint, named)

    def _naming(self, label: str, body: str, named: Named) -> Named:
        """Leave out the place of a word that opens the answer to a label: "Drive: 4x4", though a van is called so."""
        offset = len(label) + len(JOIN)
        opening = [(start, end) for start, end, _ in named if start == offset]
        if not opening or ANSWER_END.match(body, opening[0][1] - offset) is None:
            return named
        book, end = self.lexicon.book, opening[0][1] - offset
        asked = [m.concept.name for m in self.lexicon.analyse(label).mentions if m.concept.kind == "thing"]
        words = [m.concept for m in self.lexicon.analyse(body).mentions if m.start == 0 and m.end == end]
        if any(owns(book, thing, word) for thing in asked for word in words if word.kind == "value"):
            return tuple(place for place in named if place[0] != offset)
        return named

    @staticmethod
    def named(label: str, body: str, vans: VanMentions | None) -> Named:
        """Give the places of the joined text at which vans are named."""
        return vans.called(f"{label}{JOIN}{body}" if label else body) if vans is not None else ()

    def _parse(self, label: str, body: str, hint: Unit | None, named: Named) -> tuple[Parsed, int]:
        text = f"{label}{JOIN}{body}" if label else body
        split = len(label) + 1 if label else 0
        offset = len(label) + len(JOIN) if label else 0
        quantities = self.quantities.find(label) if label else []
        feet = feet_and_inches(body) if label and FEET_AND_INCHES.search(label) else None
        if feet is not None:
            found = [Quantity(feet, feet, "length", "ft-in", 0, len(body), each=feet)]
        else:
            hint, degrees = hint if hint is not None else self._hint(label), self._asks_for_degrees(label or body)
            found = self.quantities.find(body, hint, degrees=degrees)
            own = [(start - offset, end - offset) for start, end, _ in named if start >= offset]
            if swallowed := [place for place in own if self._goes_over(place[1], found, body)]:
                found = self.quantities.find(_blotted(body, swallowed), hint, degrees=degrees)
        quantities = quantities + [replace(q, start=q.start + offset, end=q.end + offset) for q in found]
        analysis = self.lexicon.joined(label, JOIN, body) if label else None
        parsed = parse(text, self.lexicon, quantities, named, analysis, None if label else self.sisters)
        join_offers(parsed)
        fill_units(parsed, self.lexicon.book, self.quantities)
        return parsed, split

    def _goes_over(self, end: int, quantities: list[Quantity], text: str) -> bool:
        """Tell whether a figure begins in the name of a van and goes on behind it in another number.

        "We rate the Drift 20 to 15 °F"; "19 pi 6 po" is a length.
        """
        if not any(figure.start < end < figure.end for figure in quantities):
            return False
        behind = NEXT_NUMBER.match(text, end)
        return behind is not None and (not behind.group(1) or self.units.named(behind.group(1)) is None)

    def _asks_for_degrees(self, text: str) -> bool:
        """Tell whether a label, or running text, speaks of a temperature of the van."""
        book = self.lexicon.book
        named = [m.concept.name for m in self.lexicon.analyse(text).mentions if m.concept.kind == "thing"]
        return any(book.fields[f].dimension == "temperature" for thing in named for f in book.fields_of(thing))

    def _hint(self, label: str) -> Unit | None:
        """Give the unit that a label says for bare figures; an R-value is North American or metric as its document."""
        if not label:
            return None
        unit = self.units.in_head(label, self.lexicon.words.cues.get("in_unit"))
        if unit is None and any(m.concept == R_VALUE for m in self.lexicon.analyse(label).mentions):
            return self.units.r_unit(north_american=self.quantities.north_american)
        return unit or self._last_word(label)

    def _last_word(self, label: str) -> Unit | None:
        """Give the unit that is the last word of a label if what it names is measured in such: "Solar W"."""
        named, _, last = label.rstrip(" .:*").rpartition(" ")
        unit = self.units.named(last) if named and not named[-1].isdigit() else None
        if unit is None:
            return None  # "Inverter, 1,000 W" asks for no watts
        book = self.lexicon.book
        concepts = [m.concept for m in self.lexicon.analyse(named).mentions]
        things = [concept.name for concept in concepts if concept.kind in ("thing", "short")]
        asked = {book.fields[field].dimension for thing in things for field in book.fields_of(thing)}
        aspects = {concept.name for concept in concepts if concept.kind in ("aspect", "alone")}
        asked |= {
            spec.dimension for name, spec in book.fields.items() if {spec.aspect, name} & aspects
        }  # "Heat output kW"
        return unit if unit.dimension in asked else None


class Kits:
    """Makes and keeps the kits."""

    def __init__(self, book: Rulebook):
        self.book = book
        self.units = Units(book.units)
        self.customary = _printed(book.units, CUSTOMARY)
        self.metric = _printed(book.units, METRIC)
        self.twice = _side_by_side(book.units)
        self.gallons = {one.casefold() for unit in book.units.units if unit.pint == "gallon" for one in unit.spellings}
        self.frequent = {language: set(file.detect) for language, file in book.words.items()}
        self.lexicons: dict[tuple[str, bool], Lexicon] = {}
        self.kits: dict[tuple[str, bool, bool], Kit] = {}

    def lexicon(self, language: str, *, north_american: bool = True) -> Lexicon:
        """Give the lexicon of a language, with the terms as they are meant in North America or elsewhere."""
        key = (language, north_american)
        if key not in self.lexicons:
            like = self.lexicons.get((language, not north_american))
            self.lexicons[key] = Lexicon(self.book, language, north_american=north_american, like=like)
        return self.lexicons[key]

    def others(self, language: str) -> list[Lexicon]:
        """Give the lexicons of all languages but one."""
        return [self.lexicon(one) for one in self.book.words if one != language]

    def kit(self, language: str, *, imperial: bool, north_american: bool = True) -> Kit:
        """Give the kit of a language for documents with US or imperial gallons, of North America or elsewhere."""
        key = (language, imperial, north_american)
        if key not in self.kits:
            lexicon = self.lexicon(language, north_american=north_american)
            words = self.book.words[language]
            quantities = QuantityReader(
                FigureReader(words), self.units, words.minus, imperial=imperial, north_american=north_american,
                fahrenheit=north_american and language == "en", each=(words.cues["each"], words.cues["each_ahead"]),
                optional=words.cues["optional"],
                flows=[*words.cues["input"], *words.cues["output"], *words.heat_in, *words.heat_out],
            )  # fmt: skip
            casts = CastReader(self.book, lexicon, quantities)
            like = self.kits.get((language, not imperial, north_american))  # these rest on the lexicon alone
            frames = like.frames if like is not None else FrameReader(self.book, lexicon)
            sayings = like.sayings if like is not None else SayingFinder(lexicon)
            sisters = like.sisters if like is not None else SisterSentences(lexicon)
            self.kits[key] = Kit(language, lexicon, self.units, quantities, frames, casts, sayings, sisters)
        return self.kits[key]

    def for_document(self, document: Document) -> Kit:
        """Give the kit that fits a document: its language and its gallons."""
        text = whole_text(document)
        folded = text.casefold()
        language = self.language_of(folded, document.language, labels_of(document))
        hits = self._hits(folded)
        north_american = self._is_north_american(text, folded, language, hits)
        imperial = self._is_imperial(text, folded, hits, document.passages)
        return self.kit(language, imperial=imperial, north_american=north_american)

    def language_of(self, text: str, declared: str = "", labels: Iterable[str] = ()) -> str:
        """Give the language whose frequent words and labels a text holds most of; a declared one weighs in."""
        known = {name: sum(self.lexicon(name).knows_label(label) for label in labels) for name in self.book.words}
        words = WORD.findall(text.casefold())
        counted = Counter(words)
        scores = {}
        for language in self.book.words:
            scores[language] = sum(counted[word] for word in self.frequent[language]) + (
                0.05 * len(words) if language == declared else 0
            )
            scores[language] += LABEL_WEIGHT * known[language]
        best = max(scores, key=lambda name: scores[name])
        return best if scores[best] > 0 else (declared if declared in self.book.words else "en")

    def _is_imperial(self, text: str, folded: str, hits: tuple[int, int], passages: Iterable[Passage]) -> bool:
        """Tell whether a document's gallons are imperial; ``folded`` is its text without capitals."""
        if "imp" in folded and IMPERIAL.search(text):
            return True
        if "gal" in folded and US_GALLON.search(text):
            return False
        printed = 0
        if any(one in folded for one in self.gallons):
            printed = self._gallons_printed(text) or self._gallons_printed(_rows_of(passages))
        if printed:
            return printed > 0
        british, american = hits
        return british > american and british >= (MIN_REGION_WORDS if american else MIN_UNOPPOSED_WORDS)

    def _gallons_printed(self, text: str) -> int:
        """Give how many more volumes in litres and gallons agree with imperial gallons than with those of the US."""
        balance = 0
        us, imperial = (conversion(name, "liter")[0] for name in ("gallon", "imperial_gallon"))
        for match in self.twice.finditer(text):
            found = {key: float(value.replace(",", ".")) for key, value in match.groupdict().items() if value}
            litres, gallons = found.get("l1", found.get("l2", 0.0)), found.get("g1", found.get("g2", 0.0))
            if gallons:
                size = litres / gallons
                balance += abs(size - imperial) < NEAR_GALLON * imperial
                balance -= abs(size - us) < NEAR_GALLON * us
        return balance

    def _is_north_american(self, text: str, folded: str, language: str, hits: tuple[int, int]) -> bool:
        """Tell whether a document's words and units are of North America; ``folded`` is its text without capitals."""
        british, american = hits
        if language == "en" and american == british:
            return len(self.customary.findall(text)) > METRIC_SHARE * len(self.metric.findall(text))
        if language == "en":
            return american > british
        customary = sum(count(folded, word) for word in self.book.words[language].customary_words)
        return american > british and max(american, customary) >= MIN_REGION_WORDS

    def _hits(self, folded: str) -> tuple[int, int]:
        """Give how many British and how many North American words a text without capitals holds."""
        general = self.book.general
        return sum(holds(folded, one) for one in general.british), sum(holds(folded, one) for one in general.american)


def _rows_of(passages: Iterable[Passage]) -> str:
    """Give the cells of each row of tables side by side, as where litres and gallons have columns of their own."""
    rows: dict[tuple[int, int], list[str]] = {}
    for passage in passages:
        if passage.table is not None and passage.row_index is not None:
            rows.setdefault((passage.table, passage.row_index), []).append(passage.text)
    return "\n".join(" / ".join(cells) for cells in rows.values() if len(cells) > 1)


def _side_by_side(units: UnitFile) -> re.Pattern[str]:
    """Give a pattern of volumes printed in litres and gallons: "72 litres (15.8 gal)", "12 gal / 45 L"."""
    names = ("liter", "gallon")
    spelled = [[one for unit in units.units if unit.pint == name for one in unit.spellings] for name in names]
    litre, gallon = map(any_word, spelled)
    figure, joint = r"\d{1,3}(?:[.,]\d)?", r"\s*[(/]\s*"
    first = rf"(?P<l1>{figure})\s?(?:{litre}){joint}(?P<g1>{figure})\s?(?:{gallon})"
    second = rf"(?P<g2>{figure})\s?(?:{gallon}){joint}(?P<l2>{figure})\s?(?:{litre})"
    return re.compile(rf"(?<![\d.,])(?:{first}|{second})(?!\w)", re.IGNORECASE)


def _printed(units: UnitFile, names: set[str]) -> re.Pattern[str]:
    """Give a pattern of figures with one of the units."""
    spellings = [
        re.escape(one) for unit in units.units if unit.pint in names for one in unit.spellings if one[0].isalpha()
    ]
    spellings += ["°F"] if "degF" in names else ["°C"]
    return re.compile(rf"\d[\s\u00a0\u202f-]?(?:{'|'.join(spellings)})(?![\w])")


def labels_of(document: Document) -> set[str]:
    """Give the texts of a document that may be labels: heads of rows and columns, and what stands before a colon."""
    found = {head.text for p in document.passages for head in (p.row, p.column) if head is not None}
    found |= {p.text.partition(":")[0] for p in document.passages if ":" in p.text[:40]}
    return set(sorted(found - {""})[:MAX_LABELS])


def whole_text(document: Document) -> str:
    """Give all text of a document, heads of tables included once."""
    parts: list[str] = []
    seen: set[str] = set()
    for passage in document.passages:
        parts.append(passage.text)
        for head in (passage.row, passage.column):
            if head is not None and head.text not in seen:
                seen.add(head.text)
                parts.append(head.text)
    return "\n".join(parts)


def _blotted(text: str, places: list[tuple[int, int]]) -> str:
    """Give a text with letters for the figures of some places."""
    for start, end in places:
        text = text[:start] + "x" * (end - start) + text[end:]
    return text
