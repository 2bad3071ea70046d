"""Cases tried with answers, kept as numbers of answers, so that what does not differ is worked out once.

Of a hundred thousand cases that are tried most differ in fields that a given quantity or criterion never looks at. Of
those that are alike for it one is made into a row of columns (``distinct``, ``columns``), and what comes of it holds
for all (``which``).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
from numpy.typing import NDArray

from specscan.judging.answers import Answers, in_range, union_of
from specscan.physics.columns import BASIS, Coded, Columns

LEFT = -1
"""In place of the number of an answer: the field is left as it is."""
MOST = 2**62


class Trials:
    """Cases of a table, each with some of its fields filled with answers."""

    def __init__(self, base: Columns, answers: Mapping[str, Answers]):
        """Take the cases, and the answers that their fields can have, by field."""
        self.base, self.answers = base, answers
        self.place = {name: number for number, name in enumerate(answers)}
        self.sizes: list[int] = []  # how many trials each addition has made
        self._rows: list[NDArray[np.int64]] = []
        self._picks: list[NDArray[np.int16]] = []

    def add(self, rows: NDArray, fields: Sequence[str] = (), picks: NDArray | None = None, without: str = "") -> None:
        """Add some cases, each with every combination of answers to some fields.

        ``picks`` has a row for each combination, with the number of the answer to each field. ``without`` names a field
        that is left as it is: those cases match the others one by one.
        """
        combinations = np.empty((1, 0), dtype=np.int64) if picks is None else picks
        tried = np.full((len(self.place), len(rows) * len(combinations)), LEFT, dtype=np.int16)
        for number, name in enumerate(fields):
            if name != without:
                tried[self.place[name]] = np.tile(combinations[:, number], len(rows))
        self._rows.append(np.repeat(np.asarray(rows, dtype=np.int64), len(combinations)))
        self._picks.append(tried)
        self.sizes.append(tried.shape[1])

    @property
    def rows(self) -> NDArray[np.int64]:
        """Give for each trial the number of its case."""
        if len(self._rows) != 1:
            self._rows = [np.concatenate(self._rows)] if self._rows else [np.empty(0, dtype=np.int64)]
        return self._rows[0]

    @property
    def picks(self) -> NDArray[np.int16]:
        """Give for each field and trial the number of the answer."""
        if len(self._picks) != 1:
            nothing = np.empty((len(self.place), 0), dtype=np.int16)
            self._picks = [np.concatenate(self._picks, axis=1) if self._picks else nothing]
        return self._picks[0]

    def changed(self, fields: Sequence[str]) -> list[str]:
        """Give those of some fields that any trial fills."""
        return [name for name in fields if name in self.place and bool((self.picks[self.place[name]] != LEFT).any())]

    def distinct(self, fields: Sequence[str]) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
        """Give the first trials of those that are alike in case and answers to some fields, and which each is like."""
        code, room = self.rows, max(1, self.base.size)
        for name in self.changed(fields):
            size = len(self.answers[name]) + 1
            if room * size > MOST:
                _, code = np.unique(code, return_inverse=True)
                room = int(code.max()) + 1
            code, room = code * size + (self.picks[self.place[name]] - LEFT), room * size
        _, first, which = np.unique(code, return_index=True, return_inverse=True)
        return first, which.ravel()

    def key(self, trials: NDArray[np.int64], fields: Sequence[str]) -> tuple[object, ...]:
        """Give what makes some trials the same as others of the same cases, as far as some fields go."""
        filled = self.changed(fields)
        return (
            self.rows[trials].tobytes(),
            *((name, self.answers[name], self.picks[self.place[name]][trials].tobytes()) for name in filled),
        )

    def columns(self, trials: NDArray[np.int64], fields: Sequence[str]) -> Columns:
        """Give the columns of some fields for some trials."""
        numbers: dict[str, NDArray] = {}
        words: dict[str, Coded] = {}
        for name in fields:
            picks, one = self.picks[self.place[name]][trials], self.answers[name]
            if one.kind.name == "number":
                self._fill_numbers(one, self.rows[trials], picks, numbers, words)
            else:
                words[name] = self._words(one, self.rows[trials], picks)
        return Columns.made(len(trials), numbers, words)

    def _fill_numbers(
        self, one: Answers, rows: NDArray, picks: NDArray, numbers: dict[str, NDArray], words: dict[str, Coded]
    ) -> None:
        """Fill value and bounds: the fixed answers, then places between low and high, in the range that is printed."""
        name, filled = one.field, picks != LEFT
        known = self.base.number(name)
        value = in_range(
            one, picks[filled], known.known[rows[filled]], known.low[rows[filled]], known.high[rows[filled]]
        )
        for column in (name, f"{name}__low", f"{name}__high"):
            numbers[column] = part = self.base.floats(column)[rows]
            part[filled] = value
        if one.bases or name + BASIS in self.base.table:
            per_basis = len(one.fixed) + len(one.places)
            answered = np.where(filled, picks // per_basis, LEFT) if one.bases else np.full(len(picks), LEFT)
            words[name + BASIS] = self._coded(name + BASIS, rows, answered, one.bases)

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
