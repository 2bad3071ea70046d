"""Answers that a missing field could have: what is tried to find out how much the field is worth."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

import numpy as np
from numpy.typing import NDArray

from specscan.judging.kinds import Kind, Kinds
from specscan.judging.rulesets import RuleSet
from specscan.physics.columns import BETWEEN_WORDS, Columns
from specscan.physics.derived import DERIVED
from specscan.rulebook.book import Rulebook

JUST_BESIDE = 1e-6
"""How far below and above a threshold a number is tried, as a share of it."""
GRID = (0.0, 0.25, 0.5, 0.75, 1.0)
"""Places in a number's range that are tried where it feeds a derived quantity."""
SHORT_GRID = (0.0, 0.5, 1.0)
LIMIT_TOGETHER = 48
"""How many combinations of answers are tried at most where several fields are filled together."""
UNSTATED = "unstated"


@dataclass(frozen=True, slots=True)
class Answers:
    """Answers to one field: numbers, as values and as places in the range of each case, or words or flags."""

    field: str
    kind: Kind
    fixed: tuple[float | str | bool, ...]
    places: tuple[float, ...]
    bases: tuple[str, ...]
    range: tuple[float, float]

    def __len__(self) -> int:
        return max(1, len(self.bases)) * (len(self.fixed) + len(self.places))

    def numbers_of(self, fewer: Answers) -> NDArray[np.int64]:
        """Give the numbers that the answers of ``fewer`` have here, of which all of them are."""
        if fewer is self:
            return np.arange(len(self))
        size = len(self.fixed) + len(self.places)
        choices = [self.fixed.index(one) for one in fewer.fixed]
        choices += [len(self.fixed) + self.places.index(one) for one in fewer.places]
        return np.array([size * basis + one for basis in range(max(1, len(self.bases))) for one in choices])


def answers_of(field: str, ruleset: RuleSet | None, kinds: Kinds, book: Rulebook, short: bool = False) -> Answers:
    """Give the answers that are tried for a field, without a rule set those that do not hang on its thresholds.

    A flag: yes and no. A choice: each word but the vague one. A set: each single word. A number: just below, at and
    above each threshold of the rule set, and a few places in its plausible range (or in the range printed). A text:
    each word that it is compared with. ``short`` gives fewer places, for trying several fields together.
    """
    kind, spec = kinds[field], book.fields[field]
    if kind.name == "flag":
        return Answers(field, kind, (True, False), (), (), (0.0, 0.0))
    if kind.name == "choice":
        return Answers(field, kind, tuple(word for word in kind.words if word != kind.vague), (), (), (0.0, 0.0))
    if kind.name == "set":
        return Answers(field, kind, kind.words, (), (), (0.0, 0.0))
    criteria = ruleset.criteria if ruleset is not None else ()
    conditions = [condition for criterion in criteria for condition in criterion.conditions]
    if kind.name == "text":
        words = dict.fromkeys(word for one in conditions for word in one.literals.get(field, ()))
        return Answers(field, kind, tuple(words), (), (), (0.0, 0.0))
    thresholds = sorted({value for one in conditions for value in one.thresholds.get(field, ())})
    steps = (1.0,) if short else (1 - JUST_BESIDE, 1.0, 1 + JUST_BESIDE)
    near = [value * step for value in thresholds for step in steps]
    if spec.none == "0" and 0.0 not in near:
        near.append(0.0)
    low, high = spec.range or (0.0, max([*thresholds, 1.0]) * 2)
    if spec.type == "integer":
        near += [float(value) for value in range(int(low), int(min(high, low + 10)) + 1)]
    bases = tuple(spec.bases.values()) if len(spec.bases) > 1 else ()
    return Answers(field, kind, tuple(near), SHORT_GRID if short else GRID, bases, (low, high))


def missing(columns: Columns, field: str, kind: Kind, book: Rulebook) -> np.ndarray:
    """Tell in which cases a field is not known, or only in part: a range, a vague word, or words of an open set.

    A number that is known, but not what it counts (a propane tank's basis), is known only in part.
    """
    if kind.name == "number":
        values = columns.number(field)
        lacking = ~values.exact
        if len(book.fields[field].bases) > 1:
            basis = columns.basis(field)
            said = np.isin(basis.astype(str), list(book.fields[field].bases.values()))
            lacking |= ~said & (values.low > 0)
        return lacking
    lacking = ~columns.known(field)
    if kind.vague:
        lacking |= columns.is_word(field, kind.vague)
    if kind.open:
        words = columns.words(field)
        lacking |= np.array([word is not None and len(word.split(BETWEEN_WORDS)) < len(kind.words) for word in words])
    return lacking


def combinations(parts: Sequence[Answers]) -> NDArray[np.int64]:
    """Give the combinations of answers to some fields that are tried: one row each, the number of each answer.

    Where there are more, ``LIMIT_TOGETHER`` of them are taken, evenly spread.
    """
    rows = list(product(*(range(len(one)) for one in parts)))
    if len(rows) > LIMIT_TOGETHER and len(parts) > 1:
        chosen = np.unique(np.linspace(0, len(rows) - 1, LIMIT_TOGETHER).round().astype(int))
        rows = [rows[number] for number in chosen]
    return np.array(rows, dtype=np.int64).reshape(-1, len(parts))


def in_range(one: Answers, picks: NDArray, known: NDArray, low: NDArray, high: NDArray) -> NDArray[np.float64]:
    """Give the numbers that some answers are: the fixed ones first, then places between low and high.

    ``low`` and ``high`` are what is printed, where anything is ``known``: all answers lie within that.
    """
    low, high = np.where(known, low, one.range[0]), np.where(known, high, one.range[1])
    choice = picks % (len(one.fixed) + len(one.places))
    is_fixed = choice < len(one.fixed)
    fixed = np.array([*one.fixed, 0.0], dtype=float)[np.where(is_fixed, choice, len(one.fixed))]
    share = np.array([*one.places, 0.0], dtype=float)[np.where(is_fixed, len(one.places), choice - len(one.fixed))]
    value = np.where(is_fixed, fixed, low + share * (high - low))
    return np.where(known, np.clip(value, low, high), value)


def union_of(old: str | None, new: str) -> str:
    """Give the words of a set with one more."""
    return BETWEEN_WORDS.join(sorted({*(old.split(BETWEEN_WORDS) if old else []), new}))


def ways_of(ruleset: RuleSet) -> list[tuple[str, ...]]:
    """Give the sets of fields that together are enough for a derived quantity that a rule set uses."""
    ways = [way for name in ruleset.columns if name in DERIVED for way in DERIVED[name].ways]
    return [way for way in dict.fromkeys(ways) if len(way) > 1]
