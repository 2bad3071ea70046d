"""Cases tried with answers, kept as numbers of answers, so that what does not differ is worked out once.

Of a hundred thousand cases that are tried most differ in fields that a given quantity or criterion never looks at. Of
those that are alike for it one is made into a row of columns (``distinct``, ``columns``), and what comes of it holds
for all (``which``).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from specscan.judging.answers import Answers, in_range, union_of
from specscan.physics.columns import BASIS, Coded, Columns

LEFT = -1
"""In place of the number of an answer: the field is left as it is."""
MOST = 2**62
ENDS = ("", "__low", "__high")
ALIKE = 0.5
"""The share of cases that may differ, for what they share to be worked out apart."""
ROOMY = 8
"""So many times as many codes may there be as trials, for a table by code to cost less than hashing."""


@dataclass(frozen=True, slots=True)
class _Lot:
    """The trials of one addition: where they begin, the number of each one's case, the answers by field filled."""

    start: int
    rows: NDArray[np.int64]
    picks: dict[str, NDArray[np.int64]]


class Trials:
    """Cases of a table, each with some of its fields filled with answers."""

    def __init__(self, base: Columns, answers: Mapping[str, Answers]):
        """Take the cases, and the answers that their fields can have, by field."""
        self.base, self.answers = base, answers
        self.sizes: list[int] = []  # how many trials each addition has made
        self._lots: list[_Lot] = []
        self._filled: set[str] = set()  # the fields that any trial fills
        self._rows: NDArray[np.int64] | None = None
        self._picks: dict[str, NDArray[np.int16]] = {}
        self._distinct: dict[tuple[str, ...], tuple[NDArray[np.int64], NDArray[np.int64]]] = {}

    def add(self, rows: NDArray, fields: Sequence[str] = (), picks: NDArray | None = None, without: str = "") -> None:
        """Add some cases, each with every combination of answers to some fields.

        ``picks`` has a row for each combination, with the number of the answer to each field. ``without`` names a field
        that is left as it is: those cases match the others one by one.
        """
        combinations = np.empty((1, 0), dtype=np.int64) if picks is None else picks
        tried = {
            name: np.tile(combinations[:, number], len(rows)) for number, name in enumerate(fields) if name != without
        }
        self._lots.append(_Lot(sum(self.sizes), np.repeat(np.asarray(rows, dtype=np.int64), len(combinations)), tried))
        self.sizes.append(len(rows) * len(combinations))
        if self.sizes[-1]:
            self._filled.update(tried)
        self._rows = None
        self._picks.clear()
        self._distinct.clear()

    @property
    def rows(self) -> NDArray[np.int64]:
        """Give for each trial the number of its case."""
        if self._rows is None:
            self._rows = np.concatenate([np.empty(0, dtype=np.int64), *(lot.rows for lot in self._lots)])
        return self._rows

    def picks(self, name: str) -> NDArray[np.int16]:
        """Give for each trial the number of the answer to a field."""
        if name not in self._picks:
            self._picks[name] = found = np.full(sum(self.sizes), LEFT, dtype=np.int16)
            for lot in self._lots:
                if name in lot.picks:
                    found[lot.start : lot.start + len(lot.rows)] = lot.picks[name]
        return self._picks[name]

    def changed(self, fields: Sequence[str]) -> list[str]:
        """Give those of some fields that any trial fills."""
        return [name for name in fields if name in self._filled]

    def distinct(self, fields: Sequence[str]) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
        """Give the first trials of those that are alike in case and answers to some fields, and which each is like."""
        key = tuple(self.changed(fields))
        if key not in self._distinct:
            self._distinct[key] = self._alike(key)
        return self._distinct[key]

    def _alike(self, fields: tuple[str, ...]) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
        asked = frozenset(fields)
        filling: dict[frozenset[str], list[_Lot]] = {}  # lots that fill the same ones of the fields
        for lot in self._lots:
            filling.setdefault(asked.intersection(lot.picks), []).append(lot)
        first, which, count = [np.empty(0, dtype=np.int64)], np.empty(sum(self.sizes), dtype=np.int64), 0
        for filled, lots in filling.items():
            code, room = np.concatenate([lot.rows for lot in lots]), max(1, self.base.size)
            for name in (one for one in fields if one in filled):
                size = len(self.answers[name])
                if room * size > MOST:
                    code = pd.factorize(code)[0]
                    room = int(code.max(initial=0)) + 1
                code, room = code * size + np.concatenate([lot.picks[name] for lot in lots]), room * size
            places = np.concatenate([np.arange(lot.start, lot.start + len(lot.rows)) for lot in lots])
            own, number = _firsts(code, room)
            first.append(places[own])
            which[places] = count + number
            count += len(own)
        return np.concatenate(first), which

    def key(self, trials: NDArray[np.int64], fields: Sequence[str]) -> tuple[object, ...]:
        """Give what makes some trials the same as others of the same cases, as far as some fields go."""
        filled = self.changed(fields)
        return (
            self.rows[trials].tobytes(),
            *((name, self.answers[name], self.picks(name)[trials].tobytes()) for name in filled),
        )

    def columns(self, trials: NDArray[np.int64], fields: Sequence[str]) -> Columns:
        """Give the columns of some fields for some trials, each made when it is asked for."""
        return _Tried(self, trials, fields)

    def numbers_of(self, name: str, trials: NDArray[np.int64]) -> dict[str, NDArray]:
        """Give value and bounds of a number: the fixed answers, then places in the range that is printed."""
        one, rows, picks = self.answers[name], self.rows[trials], self.picks(name)[trials]
        filled = picks != LEFT
        known = self.base.number(name)
        value = in_range(
            one, picks[filled], known.known[rows[filled]], known.low[rows[filled]], known.high[rows[filled]]
        )
        numbers = {column: self.base.floats(column)[rows] for column in (name, f"{name}__low", f"{name}__high")}
        for part in numbers.values():
            part[filled] = value
        return numbers

    def words_of(self, name: str, trials: NDArray[np.int64]) -> Coded:
        """Give the words of a choice, flag, set or text."""
        return self._words(self.answers[name], self.rows[trials], self.picks(name)[trials])

    def bases_of(self, name: str, trials: NDArray[np.int64]) -> Coded:
        """Give what a number counts."""
        one, rows, picks = self.answers[name], self.rows[trials], self.picks(name)[trials]
        per_basis = len(one.fixed) + len(one.places)
        answered = np.where(picks != LEFT, picks // per_basis, LEFT) if one.bases else np.full(len(picks), LEFT)
        return self._coded(name + BASIS, rows, answered, one.bases)

    def has_bases(self, name: str) -> bool:
        """Tell whether anything can be known of what a number counts."""
        return bool(self.answers[name].bases) or name + BASIS in self.base.table

    def _words(self, one: Answers, rows: NDArray, picks: NDArray) -> Coded:
        if not one.kind.open:
            return self._coded(one.field, rows, picks, one.fixed)
        codes, known = self.base.coded(one.field)
        pairs = np.where(picks == LEFT, LEFT, (codes[rows] + 1) * len(one.fixed) + picks)
        words = [union_of(old, str(new)) for old in (None, *known) for new in one.fixed]
        return self._coded(one.field, rows, pairs, words)

    def _coded(self, column: str, rows: NDArray, picks: NDArray, answers: Sequence[object]) -> Coded:
        codes, known = self.base.coded(column)
        words = list(dict.fromkeys([*known, *answers]))
        number = {word: place for place, word in enumerate(words)}
        answered = np.array([*(number[word] for word in answers), LEFT], dtype=np.int64)
        return Coded(np.where(picks == LEFT, codes[rows], answered[picks]), np.array([*words], dtype=object))


class _Tried(Columns):
    """The columns of some fields for some trials: most are asked for only of the few trials that are not alike."""

    def __init__(self, trials: Trials, places: NDArray[np.int64], fields: Sequence[str]):
        super().__init__(pd.DataFrame(index=range(len(places))))
        self._trials, self._places = trials, places
        numbers = [name for name in fields if trials.answers[name].kind.name == "number"]
        self._fields = frozenset(fields)
        self._number_of = {f"{name}{end}": name for name in numbers for end in ENDS}
        self._bases = {name + BASIS: name for name in numbers if trials.has_bases(name)}
        self._words = self._fields.difference(numbers)

    def has(self, name: str) -> bool:
        """Tell whether there is a column of numbers of this name."""
        return name in self._floats or name in self._number_of

    def floats(self, name: str) -> np.ndarray:
        """Give a column of numbers, NaN where unknown."""
        if name not in self._floats and name in self._number_of:
            for column, values in self._trials.numbers_of(self._number_of[name], self._places).items():
                self._floats.setdefault(column, values)
        return super().floats(name)

    def coded(self, name: str) -> Coded:
        """Give a number for the word of each case (-1 where unknown), and the words."""
        if name not in self._codes:
            if name in self._words:
                self._codes[name] = self._trials.words_of(name, self._places)
            elif name in self._bases:
                self._codes[name] = self._trials.bases_of(self._bases[name], self._places)
        return super().coded(name)

    def alike(self, fields: Sequence[str]) -> tuple[Columns, NDArray[np.int64]] | None:
        """Give one of each of the trials that are alike in case and answers to some fields, and which each is like."""
        if not self._replaced.isdisjoint(fields):
            return None
        own = [name for name in fields if name in self._fields]
        first, which = self._trials.distinct(own)
        own_first, number = _firsts(which[self._places], len(first))
        if len(own_first) > ALIKE * self.size:
            return None
        return _Tried(self._trials, self._places[own_first], own), number


def _firsts(code: NDArray[np.int64], room: int) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Give the place of the first of each different code, all below ``room``, and which of these each place is like."""
    if room > ROOMY * len(code):
        code = pd.factorize(code)[0]  # by hashing
        room = int(code.max(initial=-1)) + 1
    place = np.full(room, LEFT, dtype=np.int64)
    place[code[::-1]] = np.arange(len(code))[::-1]
    there = place != LEFT
    return place[there], (np.cumsum(there) - 1)[code]
