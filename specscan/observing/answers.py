"""An answer as a person writes it → a value of the vocabulary: figures with their units, words, yes or no."""

from __future__ import annotations

import re
import unicodedata
from dataclasses import replace

from specscan.finding.language.numbers import FigureReader
from specscan.finding.language.quantities import QuantityReader
from specscan.finding.language.quantity import Quantity
from specscan.finding.language.units import Units
from specscan.observing.rules import ObservingRules
from specscan.records.facts import Fact
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import FieldSpec

FOUND_BY = "observed"
LANGUAGE = "en"
AMBIGUOUS = re.compile(r"^\D*\d{1,3},\d{3}(?:\D|$)")


class AnswerError(ValueError):
    """An answer is not one that the field can have; the message says why."""


class AnswerReader:
    """Reads answers against the vocabulary. Gallons are US gallons unless the unit says imperial ("imp gal")."""

    def __init__(self, book: Rulebook, rules: ObservingRules):
        self.book, self.rules = book, rules
        words = book.words[LANGUAGE]
        self.units = Units(book.units)
        self.quantities = QuantityReader(FigureReader(words), self.units, words.minus)

    def is_none(self, answer: str) -> bool:
        """Tell whether a cell holds no answer: empty, or words such as "don't know"."""
        return not answer.strip() or _folded(answer) in map(_folded, self.rules.no_answer)

    def is_not_stated(self, answer: str) -> bool:
        """Tell whether an answer says that a document does not state the field."""
        return _folded(answer) in map(_folded, self.rules.not_stated)

    def read(self, name: str, answer: str, unit: str = "", *, imperial: bool = False) -> Fact:
        """Give the value that an answer means, as a fact without van or document.

        Args:
            name: a field of the vocabulary.
            answer: the answer as written, such as ``27 gal``, ``yes`` or ``electric pad``; a figure may be a range.
            unit: the unit where it is not written in the answer.
            imperial: whether the van's documents print imperial gallons; a bare gallon is then refused, for the
                answer may mean either.

        Raises:
            AnswerError: the field is not in the vocabulary, or the answer is none that it can have.
        """
        spec = self.book.fields.get(name)
        if spec is None:
            raise AnswerError(f"there is no field {name!r} in the vocabulary")
        answer, unit = _clean(answer), _clean(unit)
        if len(answer) > self.rules.longest_text:
            raise AnswerError(f"the answer is longer than {self.rules.longest_text} letters")
        made = Fact(name, "", unit=self.book.unit_of(name), printed=answer, found_by=FOUND_BY, confidence=1.0)
        if spec.type in ("number", "integer"):
            return self._number(made, spec, answer, unit, imperial)
        if unit:
            raise AnswerError(f"{name} has no unit, but the unit is {unit!r}")
        if spec.type == "flag":
            return replace(made, flag=self._flag(answer))
        if spec.type == "text":
            return replace(made, text=answer)
        words = self.book.choices_of(name)
        if spec.type == "choice":
            return replace(made, text=_word(answer, words))
        parts = [part for part in re.split(r"[+,;/]", answer) if part.strip()]
        return replace(made, text="+".join(sorted({_word(part, words) for part in parts})))

    def _flag(self, answer: str) -> bool:
        for value, words in ((True, self.rules.yes), (False, self.rules.no)):
            if _folded(answer) in map(_folded, words):
                return value
        raise AnswerError(f"{answer!r} is neither yes nor no")

    def _number(self, made: Fact, spec: FieldSpec, answer: str, unit: str, imperial: bool) -> Fact:
        if spec.none == "0" and _folded(answer) in map(_folded, ["none", *self.rules.no]):
            return replace(made, num=0.0)
        quantity, rest = self._quantity(f"{answer} {unit}".strip())
        if AMBIGUOUS.match(answer) and spec.type == "number":
            raise AnswerError(f"{answer!r} can be read in two ways: write the figure without the comma")
        if quantity.bare and spec.dimension:
            raise AnswerError(f"the unit is missing: {answer} of what ({self._units_like(spec.dimension)})?")
        if not quantity.bare and quantity.dimension != spec.dimension:
            raise AnswerError(f"{answer} {unit}".strip() + f" is no {spec.dimension or 'plain number'}")
        if imperial and self._either_gallon(quantity):
            raise AnswerError(
                f"{answer} {unit}".strip() + ": the documents print imperial gallons; say US gal or imp gal"
            )
        basis = self._basis(rest, spec)
        low, high = quantity.low, quantity.high
        if spec.type == "integer" and not (low.is_integer() and high.is_integer()):
            raise AnswerError(f"{answer!r} is no whole number")
        nothing = high == 0 and spec.none == "0"
        if spec.range is not None and not nothing and not spec.range[0] <= low <= high <= spec.range[1]:
            span = f"{spec.range[0]:g} to {spec.range[1]:g} {made.unit}".strip()
            raise AnswerError(f"{high:.6g} {made.unit}".strip() + f" is implausible: {made.field} lies within {span}")
        return replace(
            made, num=low if spec.several == "lowest" else high, low=low, high=high, basis=basis,
            printed_unit=quantity.printed_unit,
        )  # fmt: skip

    def _quantity(self, text: str) -> tuple[Quantity, str]:
        found = self.quantities.find(text)
        if len(found) != 1:
            raise AnswerError(f"{text!r} holds {'no figure' if not found else 'more than one figure'}")
        return found[0], (text[: found[0].start] + " " + text[found[0].end :]).strip(" .,;()-−–")

    def _either_gallon(self, quantity: Quantity) -> bool:
        unit = self.units.named(quantity.printed_unit)
        plain = "us" not in quantity.printed_unit.casefold().replace(".", "")
        return unit is not None and unit.imperial_factor != unit.factor and plain

    def _basis(self, rest: str, spec: FieldSpec) -> str:
        """Give what a figure counts, where the field knows several ways ("38 l water capacity")."""
        if not rest:
            return ""
        for word in spec.bases.values():
            if _folded(rest) == _folded(word):
                return word
        allowed = f"; what may stand beside the figure: {', '.join(spec.bases.values())}" if spec.bases else ""
        raise AnswerError(f"{rest!r} beside the figure is not understood{allowed}")

    def _units_like(self, dimension: str) -> str:
        spellings = [spec.spellings[0] for spec in self.book.units.units if spec.dimension == dimension and spec.pint]
        return ", ".join(dict.fromkeys([self.book.units.dimensions[dimension].unit, *spellings]))


def _word(answer: str, words: list[str]) -> str:
    for word in words:
        if _folded(word) == _folded(answer):
            return word
    listed = ", ".join(words)
    raise AnswerError(f"{answer.strip()!r} is none of the words: {listed}")


def _clean(text: str) -> str:
    """Give a text on one line, without control characters."""
    return " ".join("".join(c if c.isprintable() else " " for c in unicodedata.normalize("NFC", text)).split())


def _folded(text: str) -> str:
    return re.sub(r"[\s_-]+", " ", text.strip()).casefold()
