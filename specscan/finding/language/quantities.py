"""Figures with units → quantities in canonical units: ranges, multiples, feet and inches, chains."""

from __future__ import annotations

import functools
import re
from collections.abc import Sequence
from dataclasses import replace

from specscan.finding.language.both_units import joined
from specscan.finding.language.feet import FEET_INCHES
from specscan.finding.language.numbers import MINUS, SPACES, Figure, FigureReader
from specscan.finding.language.quantity import Quantity
from specscan.finding.language.thousands import with_thousands
from specscan.finding.language.units import Unit, Units
from specscan.finding.language.whole_words import any_word

DIGIT = re.compile(r"[\d½¼¾⅓⅔⅛⅜⅝⅞]")
TIMES = re.compile(r"\s*(?:[x×✕]|\bfois\b|\bmal\b)\s*", re.IGNORECASE)
TIMES_BEHIND = re.compile(r"\s*\(?\s*[x×]\s*")
COUNT_OF = re.compile(r"\s*(?:of|at|each of|de|à|zu je|je|zu|mit je)\s*", re.IGNORECASE)
COUNTED = re.compile(
    r"\s+[^\W\d_][\w'’-]*(?:\s+[^\W\d_][\w'’-]*){0,2}\s+(?:of|de|d'|à|zu je|je|at|zu|mit je|@|x|×)\s*", re.IGNORECASE
)
PIECES = re.compile(r"\s*(?:pcs?\.?|pieces?|units?|Stk\.?|Stück|pièces?)\s*(?:of\s*|à\s*|de\s*)?", re.IGNORECASE)
COUNTED_DIMENSIONS = {"charge", "mass", "power", "volume", "energy"}
TO = re.compile(r"\s*(?:-|–|—|−|to|through|à|bis|until|\.\.\.?|…)\s*", re.IGNORECASE)
FROM = re.compile(r"\b(?:de|from|von)\s*$", re.IGNORECASE)  # before the first figure of a range
AND = re.compile(r"\s*(?:and|et|und|&)\s*", re.IGNORECASE)
PLUS = re.compile(r"\s*\(?\+\s*")
SLASH = re.compile(r"\s*/\s*|\s*[x×]\s*")
# A figure before it makes it the size of a tire: "225/75 R16".
R_VALUE = re.compile(
    r"(?<![\w])(?<!\d )R\s*[-–‑]?\s*(?:value\s*(?:of\s*)?)?[:=]?\s*(\d+(?:[.,]\d+)?)(?![\w.,]?\d|\s*m|\w)"
)
RSI_VALUE = re.compile(r"(?<!\w)RSI\s*[-–‑:=]?\s*(\d+(?:[.,]\d+)?)")  # Canada: metric R-value, m²·K/W
METRES = re.compile(r"(?<![\d.,])(\d)\s?m\s?(\d\d)(?![\d.,/]|\s?[^\W\d_]|\s?[x×])")
FEET_JOINT = re.compile(r"\s*,?\s*(?:and|et|und)?\s*", re.IGNORECASE)
SPOKEN = re.compile(r"\d+ (?:feet|foot) \d+")  # "under 6 feet 3, which", but "22 feet 2 berths"
ENDS_PART = re.compile(r"\s*(?:[,.;:)]|$)")
FOOT, INCH = 304.8, 25.4  # millimetres, by definition
MAX_COUNT = 12
COUNTED_BEFORE = re.compile(r"[^\d.;:!?/|+=]{2,40}")  # between a number of things and the amount that each has
MOST_COUNTED_WORDS = 5
KEPT_TEXTS = 8_000  # short texts whose quantities are kept: cells repeat
KEPT_LETTERS = 80


class QuantityReader:
    """Finds the quantities in texts of one language."""

    def __init__(
        self,
        figures: FigureReader,
        units: Units,
        minus: list[str],
        *,
        each: tuple[Sequence[str], Sequence[str]] = ((), ()),
        optional: Sequence[str] = (),
        flows: Sequence[str] = (),
        imperial: bool = False,
        north_american: bool = True,
        fahrenheit: bool = False,
    ):
        """``each`` are words for "each" behind an amount and before it, ``optional`` those for what costs extra,
        ``flows`` those for what goes into a heater or comes out.

        The flags say where the text is from.
        """
        self.north_american = north_american
        self.fahrenheit = fahrenheit
        self.figures = figures
        self.units = units
        self.imperial = imperial
        self.minus = re.compile(rf"(?:(?<![\w\d)])[{MINUS}]|\b(?:{'|'.join(minus)}))\s*$", re.IGNORECASE)
        behind, ahead = map(any_word, each)
        self.each_behind = re.compile(rf"\s*,?\s*\b(?:{behind})\s*(?=[.,;:)\]/]|$)", re.IGNORECASE)
        self.each_ahead = re.compile(rf"\b(?:{ahead})\s*$", re.IGNORECASE)
        flow = any_word(flows) if flows else "(?!)"
        self.flow_behind = re.compile(rf"\s*\b(?:{flow})\b", re.IGNORECASE)
        self.to_next_flow = re.compile(rf"\s*(?:(?:{flow})\b)?\s*[(,/]\s*", re.IGNORECASE)
        self.optional = re.compile(rf"[^()]*?\b(?:{any_word(optional)})\b", re.IGNORECASE)
        self._kept = functools.lru_cache(maxsize=KEPT_TEXTS)(self._read)

    def find(self, text: str, hint: Unit | None = None, *, degrees: bool = False) -> list[Quantity]:
        """Give the quantities of a text in order; bare figures too.

        ``hint`` is the unit that a table head gives for bare figures; ``degrees`` says that temperatures are asked for.
        The list may be shared with others who asked about the same text: it is to be read, not changed.
        """
        if not DIGIT.search(text) and not self.figures.worded.search(text):
            return []
        if len(text) <= KEPT_LETTERS:
            return self._kept(text, hint, degrees)
        return self._read(text, hint, degrees)

    def _read(self, text: str, hint: Unit | None, degrees: bool) -> list[Quantity]:
        special = self._feet_inches(text) + self._metres(text) + self._r_values(text) + self._rsi_values(text)
        taken = [(q.start, q.end) for q in special]
        found = list(special)
        figures = [f for f in self.figures.find(text) if not any(a < f.end and f.start < b for a, b in taken)]
        figures = with_thousands(text, figures, self.units, hint)
        index, end = 0, 0
        while index < len(figures):
            if figures[index].start < end:  # the "2" of "1.25 m2K/W" is of its unit
                index += 1
                continue
            quantity, used = self._quantity(text, figures, index, hint, degrees=degrees)
            found.extend(quantity)
            index, end = index + used, max((q.end for q in quantity), default=0)
        found.sort(key=lambda q: q.start)
        found = self._flows(text, self._chains(text, self._feet_and_inches(text, found)))
        found = self._ranges(text, found)
        if hint is not None:
            found = [self._hinted(q, hint) for q in found]
        return joined(text, found)

    def _quantity(
        self, text: str, figures: list[Figure], index: int, hint: Unit | None = None, *, degrees: bool = False
    ) -> tuple[list[Quantity], int]:
        """Read the quantity that begins at a figure; give it and how many figures it took."""
        figure = figures[index]
        unit = self._here(self.units.at(text, figure.end))
        if unit is not None and hint is not None and self.units.is_word(unit, hint):
            unit = None
        if unit is None and (degrees or self.minus.search(text[: figure.start].rstrip(SPACES))):
            unit = self.units.degrees(text, figure.end)
        count, used, start = 1, 1, figure.start
        following = figures[index + 1] if index + 1 < len(figures) else None
        if unit is None and following is not None and self._multiplies(text, figure, following):
            unit = self._here(self.units.at(text, following.end))
            if unit is not None or TIMES.fullmatch(
                text[figure.end : following.end - (following.end - following.start)]
            ):
                count, used = int(figure.value), 2
                figure = following
        low = figure.value * self._sign(text, figure, unit or hint)
        if unit is None:
            return [self._bare(low, start if count == 1 else figures[index].start, figure, count)], used
        made = self._made(low, low, unit, start, unit.end)
        times = self._times_behind(text, unit, figures[index + 1 :]) if used == 1 else 1
        if times > 1:
            low, made, count, used = low * times, replace(made, end=figures[index + 1].end), times, 2
        count = self._counted_before(text, figures, index, unit) if count == 1 else count
        if count > 1:
            made = replace(made, low=made.low * count, high=made.high * count, count=count, each=made.low)
        return [replace(made, worded=figure.worded)], used

    def _times_behind(self, text: str, unit: Unit, figures: list[Figure]) -> int:
        """Give the multiple printed behind an amount, as in "100 Ah x 2" or "165 W (x2)", else 1."""
        if not figures or unit.dimension not in COUNTED_DIMENSIONS:
            return 1
        times = figures[0]
        plain = text[times.start : times.end].isdecimal() and 2 <= times.value <= MAX_COUNT
        if not plain or not TIMES_BEHIND.fullmatch(text[unit.end : times.start]):
            return 1
        return 1 if self.units.at(text, times.end) is not None else int(times.value)

    def _counted_before(self, text: str, figures: list[Figure], index: int, unit: Unit) -> int:
        """Give the number of things of which each has an amount, as in "2 cylinders, 11 kg each", else 1.

        Some words may stand between, and a word such as "each" stands right behind the amount or before it.
        """
        if index == 0 or unit.dimension not in COUNTED_DIMENSIONS:
            return 1
        number, figure = figures[index - 1], figures[index]
        between = text[number.end : figure.start]
        if re.match(r"[\w-]", text[max(0, number.start - 1) : number.start]):
            return 1  # the "4" of "LiFePO4 batteries, 100 Ah each"
        if number.value != int(number.value) or not 2 <= number.value <= MAX_COUNT or self.units.at(text, number.end):
            return 1
        if not COUNTED_BEFORE.fullmatch(between) or len(between.split()) > MOST_COUNTED_WORDS:
            return 1
        told = self.each_behind.match(text, unit.end) or self.each_ahead.search(between)
        return int(number.value) if told else 1

    def _here(self, unit: Unit | None) -> Unit | None:
        """Give a unit as it is meant where the document is from: bare degrees are °F in the United States."""
        meant = self.units.american.get(unit.printed) if unit is not None and self.fahrenheit else None
        return replace(meant, end=unit.end) if meant is not None and unit is not None else unit

    def _bare(self, value: float, start: int, figure: Figure, count: int) -> Quantity:
        return Quantity(
            value * count, value * count, "count", "", start, figure.end, count, value, bare=True, worded=figure.worded
        )

    def _multiplies(self, text: str, figure: Figure, following: Figure) -> bool:
        if not figure.worded and not text[figure.start : figure.end].isdecimal():
            return False  # "5.63 × 2.00 × 2.61 m"
        if not 2 <= figure.value <= MAX_COUNT or figure.value != int(figure.value):  # it may be too large to be finite
            return figure.value == 1 and bool(TIMES.fullmatch(text[figure.end : following.start]))
        between = text[figure.end : following.start]
        if TIMES.fullmatch(between):
            return True
        bracketed = text[figure.start - 1 : figure.start] == "(" and between.strip() in (")", ") x", ") ×")
        if bracketed:
            return True
        if COUNTED.fullmatch(between) or PIECES.fullmatch(between):
            counted = self.units.at(text, following.end)
            return counted is not None and counted.dimension in COUNTED_DIMENSIONS
        if COUNT_OF.fullmatch(between):
            unit = self.units.at(text, following.end)
            return unit is not None and not self._spans_to(text, figure, following, unit)
        return figure.worded and between in (" ", "-", "\u00a0") and self.units.at(text, following.end) is not None

    @staticmethod
    def _spans_to(text: str, figure: Figure, following: Figure, unit: Unit) -> bool:
        """Tell whether "à" stands in a range: "de 2 à 6 kW", "5 à 10 °C"; "2 à 105 Ah" are two batteries."""
        if TO.fullmatch(text[figure.end : following.start]) is None or not figure.value < following.value:
            return False
        few = unit.dimension == "power" and following.value <= MAX_COUNT  # nothing of so few watts is counted
        return few or unit.dimension not in COUNTED_DIMENSIONS or FROM.search(text[: figure.start]) is not None

    def _sign(self, text: str, figure: Figure, unit: Unit | None) -> float:
        if unit is None or unit.dimension != "temperature":
            return 1.0
        before = text[: figure.start].rstrip(SPACES)
        match = self.minus.search(before)
        if match is None:
            return 1.0
        # "from 5 to -20" has a minus sign, "0 - 20" a range.
        return 1.0 if re.search(r"\d\s*$", before[: match.start()]) and match.group() in "-–" else -1.0

    def _made(self, low: float, high: float, unit: Unit, start: int, end: int) -> Quantity:
        a, b = unit.convert(low, imperial=self.imperial), unit.convert(high, imperial=self.imperial)
        return Quantity(min(a, b), max(a, b), unit.dimension, unit.printed, start, end, each=a)

    def _feet_inches(self, text: str) -> list[Quantity]:
        found = []
        for match in FEET_INCHES.finditer(text):
            inches = self.figures.value(match.group(2))
            quoted = not match.group(3)
            signed = re.match(r"\d+\s*['′’]", match.group()) or SPOKEN.fullmatch(match.group())
            ends = not SPOKEN.fullmatch(match.group()) or ENDS_PART.match(text, match.end())
            if inches is None or inches >= 12 or (quoted and not (signed and ends)):
                continue
            total = (int(match.group(1)) * 12 + inches) * 25.4
            found.append(Quantity(total, total, "length", "ft in", match.start(), match.end(), each=total))
        return found

    def _metres(self, text: str) -> list[Quantity]:
        """Give lengths in metres and centimetres: "5 m 99"."""
        return [
            Quantity(mm, mm, "length", "m", match.start(), match.end(), each=mm)
            for match in METRES.finditer(text)
            for mm in [1000.0 * int(match.group(1)) + 10.0 * int(match.group(2))]
        ]

    def _feet_and_inches(self, text: str, found: list[Quantity]) -> list[Quantity]:
        """Join feet and the inches behind them, in words or figures: "twenty-one feet and four inches"."""
        result: list[Quantity] = []
        for quantity in found:
            last = result[-1] if result else None
            if (
                last is not None
                and self._is_in(last, FOOT)
                and self._is_in(quantity, INCH)
                and quantity.high < FOOT
                and FEET_JOINT.fullmatch(text[last.end : quantity.start])
            ):
                total = last.low + quantity.low
                result[-1] = replace(last, low=total, high=total, each=total, end=quantity.end, printed_unit="ft in")
            else:
                result.append(quantity)
        return result

    def _is_in(self, quantity: Quantity, millimetres: float) -> bool:
        unit = self.units.named(quantity.printed_unit) if quantity.dimension == "length" else None
        return unit is not None and abs(unit.factor - millimetres) < 1e-6 and quantity.count == 1

    def _r_values(self, text: str) -> list[Quantity]:
        found = []
        for match in R_VALUE.finditer(text):
            value = self.figures.value(match.group(1))
            if value is not None:
                si = value * self.units.r_unit(north_american=self.north_american).factor
                found.append(Quantity(si, si, "insulance", "R", match.start(), match.end(), each=si))
        return found

    def _rsi_values(self, text: str) -> list[Quantity]:
        found = []
        for match in RSI_VALUE.finditer(text):
            value = self.figures.value(match.group(1))
            if value is not None:
                found.append(Quantity(value, value, "insulance", "RSI", match.start(), match.end(), each=value))
        return found

    def _chains(self, text: str, found: list[Quantity]) -> list[Quantity]:
        """Give bare figures the unit that stands behind the last member of "a × b × c unit"."""
        result = list(found)
        for place in range(len(result) - 1, 0, -1):
            right, left = result[place], result[place - 1]
            between = text[left.end : right.start]
            if not (left.bare and left.count == 1 and not right.bare and SLASH.fullmatch(between)):
                continue
            unit = self.units.named(right.printed_unit)
            if unit is None:
                continue
            made = self._made(left.low, left.high, unit, left.start, left.end)
            result[place - 1] = replace(made, chain=1)
            result[place] = replace(right, chain=right.chain or 1)
        return result

    def _flows(self, text: str, found: list[Quantity]) -> list[Quantity]:
        """Give a bare figure of heat the unit of the one before: "12,000 BTU/h input (9,600 output)"."""
        result = list(found)
        for place in range(1, len(result)):
            last, quantity = result[place - 1], result[place]
            if last.bare or last.dimension != "power" or not quantity.bare or quantity.count > 1:
                continue
            unit = self.units.named(last.printed_unit)
            beside = self.to_next_flow.fullmatch(text[last.end : quantity.start])
            if unit is not None and beside and self.flow_behind.match(text, quantity.end):
                result[place] = self._made(quantity.low, quantity.high, unit, quantity.start, quantity.end)
        return result

    def _ranges(self, text: str, found: list[Quantity]) -> list[Quantity]:
        """Join "a to b unit", "a unit to b unit", "2 + 1" and "a - b" to ranges."""
        result: list[Quantity] = []
        for quantity in found:
            last = result[-1] if result else None
            if last is None or last.chain or last.is_range:
                result.append(quantity)
                continue
            between = text[last.end : quantity.start]
            if PLUS.fullmatch(between) and last.bare and quantity.bare:
                if between.lstrip()[:1] == "(" and self.optional.match(text, quantity.end):
                    total = last.low + quantity.low
                    result.append(replace(quantity, low=total, high=total))  # "2 (+ 1 option)": two, or three
                    continue
                close = quantity.end + (between.lstrip()[:1] == "(" and text[quantity.end : quantity.end + 1] == ")")
                result[-1] = replace(last, high=last.low + quantity.low, end=close)
            elif TO.fullmatch(between) and self._spans(last, quantity):
                result[-1] = self._range(last, quantity)
            else:
                result.append(quantity)
        return result

    def _spans(self, left: Quantity, right: Quantity) -> bool:
        if left.count > 1 or right.count > 1:
            return False
        if left.bare and right.bare:
            return 0 <= left.low < right.low
        if left.bare:
            unit = self.units.named(right.printed_unit)
            return unit is not None and (left.low < right.each or unit.dimension == "temperature" or True)
        return left.dimension == right.dimension and left.low < right.high

    def _range(self, left: Quantity, right: Quantity) -> Quantity:
        if left.bare and not right.bare:
            unit = self.units.named(right.printed_unit)
            assert unit is not None
            left = self._made(left.low, left.high, unit, left.start, left.end)
        return replace(
            right, low=min(left.low, right.low), high=max(left.high, right.high), start=left.start, each=right.high
        )

    def with_unit(self, quantity: Quantity, spelling: str) -> Quantity | None:
        """Give a bare quantity in a unit, ``None`` where the spelling is no unit."""
        unit = self.units.named(spelling)
        return self._hinted(quantity, unit) if unit is not None else None

    def _hinted(self, quantity: Quantity, hint: Unit) -> Quantity:
        if not quantity.bare:
            return quantity
        made = self._made(quantity.low, quantity.high, hint, quantity.start, quantity.end)
        return replace(made, count=quantity.count, each=made.low / max(1, quantity.count))
