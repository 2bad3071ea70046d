"""The table of cases as physics sees it: typed columns, and a table made from examples written by hand.

A table has one row per case. A number has the columns ``f``, ``f__low``, ``f__high`` (NaN where unknown) and may have
``f__basis``; a flag is a nullable boolean; a choice, set or text is a word or ``None``.
"""

from __future__ import annotations

import copy
from collections.abc import Callable, Collection, Mapping, Sequence
from typing import Any, NamedTuple

import numpy as np
import pandas as pd
from numpy.typing import NDArray

from specscan.physics.ranges import Mask, Range, hull, pick
from specscan.rulebook.book import Rulebook

NUMBERS = ("number", "integer")
BASIS = "__basis"
BETWEEN_WORDS = "+"


class Coded(NamedTuple):
    """A column of words: the number of each case's word (-1 where unknown), and the words."""

    codes: NDArray[np.integer]
    words: NDArray[np.object_]


class Columns:
    """Typed access to a table of cases. A column that the table lacks is unknown in every case."""

    def __init__(self, table: pd.DataFrame):
        self.table = table
        self.size = len(table)
        self._floats: dict[str, np.ndarray] = {}
        self._codes: dict[str, Coded] = {}
        self._numbers: dict[str, Range] = {}
        self._masks: dict[tuple[str, ...], Mask] = {}
        self._replaced: frozenset[str] = frozenset()
        self.worked: dict[str, Any] = {}  # what was worked out from these columns already, by name

    @classmethod
    def made(cls, size: int, numbers: Mapping[str, np.ndarray], words: Mapping[str, Coded]) -> Columns:
        """Give columns that are at hand as arrays, without a table: those of numbers, and those of words."""
        return cls(pd.DataFrame(index=range(size))).with_columns(numbers, words)

    def with_columns(self, numbers: Mapping[str, np.ndarray], words: Mapping[str, Coded]) -> Columns:
        """Give the same cases with some columns in place of those of the same name."""
        made = copy.copy(self)
        made._floats, made._codes = {**self._floats, **numbers}, {**self._codes, **words}
        made._numbers, made._masks, made.worked = {}, {}, {}
        made._replaced = self._replaced.union(numbers, words)
        return made

    def alike(self, fields: Sequence[str]) -> tuple[Columns, NDArray[np.int64]] | None:
        """Give one of each of the cases that are alike in some fields, and which of these each case is like.

        ``None`` where that is not known without looking at the cases, or where hardly any are alike.
        """
        return None

    def has(self, name: str) -> bool:
        """Tell whether there is a column of numbers of this name."""
        return name in self._floats or name in self.table.columns

    def number(self, name: str) -> Range:
        """Give a number in the canonical unit of its field. Bounds that are missing are the value itself."""
        if name not in self._numbers:
            value = self.floats(name)
            low, high = self.floats(f"{name}__low"), self.floats(f"{name}__high")
            self._numbers[name] = Range.of(
                np.where(np.isnan(low), value, low), value, np.where(np.isnan(high), value, high)
            )
        return self._numbers[name]

    def words(self, name: str) -> np.ndarray:
        """Give an array of words, ``None`` where unknown."""
        codes, different = self.coded(name)
        return np.array([*different, None], dtype=object)[codes]

    def basis(self, name: str) -> np.ndarray:
        """Give what a number counts, ``None`` where nothing is said."""
        return self.words(name + BASIS)

    def is_word(self, name: str, *words: str) -> Mask:
        """Tell where a choice is one of the words; false where it is unknown."""
        return self._where((name, "is", *words), lambda value: value in words)

    def holds(self, name: str, word: str) -> Mask:
        """Tell where a set holds a word; false where it is unknown."""
        return self._where((name, "holds", word), lambda value: word in value.split(BETWEEN_WORDS))

    def known(self, name: str) -> Mask:
        """Tell where a word is known."""
        return self._where((name, "known"), lambda value: True)

    def _where(self, asked: tuple[str, ...], test: Callable[[str], bool]) -> Mask:
        """Test each different word once, and once for all that ask the same; false where nothing is known."""
        if asked not in self._masks:
            codes, different = self.coded(asked[0])
            answers = np.array([*(test(str(word)) for word in different), False], dtype=bool)
            self._masks[asked] = found = answers[codes]
            found.flags.writeable = False
        return self._masks[asked]

    def coded(self, name: str) -> Coded:
        """Give a number for the word of each case (-1 where unknown), and the words; worked out once a column."""
        if name not in self._codes:
            column = self.table[name] if name in self.table.columns else pd.Series([], dtype=object)
            if not len(column):
                codes, different = np.full(self.size, -1), np.empty(0, dtype=object)
            else:
                codes, different = pd.factorize(column)
            self._codes[name] = Coded(codes, np.asarray(different, dtype=object))
        return self._codes[name]

    def floats(self, name: str) -> np.ndarray:
        """Give a column of numbers as it stands in the table, NaN where unknown."""
        if name not in self._floats:
            if name not in self.table.columns:
                return np.full(self.size, np.nan)
            if self.table[name].dtype == np.float64:
                found = self.table[name].to_numpy()
            else:
                numbers = pd.to_numeric(self.table[name], errors="coerce")
                found = numbers.to_numpy(dtype=float, na_value=np.nan)
            self._floats[name] = found
        return self._floats[name]


def by_word(columns: Columns, name: str, ranges: Mapping[str, Range], usual: Range | None = None) -> Range:
    """Give what goes with the word of a choice; where it is unknown, or a word not named here, the hull over all.

    The typical value of a hull is that of ``usual``, else of the first range.
    """
    result = hull(*ranges.values())
    if usual is not None:
        result = result.at(usual.typical)
    for word, one in ranges.items():
        result = pick(columns.is_word(name, word), one, result)
    return result


def by_flag(columns: Columns, name: str, yes: Range, no: Range, usual: Range | None = None) -> Range:
    """Give what goes with a flag; where it is unknown the hull over both, with the typical value of ``usual``."""
    return by_word(columns, name, {"True": yes, "False": no}, no if usual is None else usual)


def table_of(cases: Sequence[Mapping[str, Any]], book: Rulebook, numbers: Collection[str] = ()) -> pd.DataFrame:
    """Give the table of cases that examples written by hand stand for.

    Each example maps fields to values: a number, ``[low, high]`` or ``[low, value, high]`` (two give the middle as the
    value), yes or no, a word, or for a set its words as a list or joined with ``+``; ``<field>__basis`` says what a
    number counts. ``numbers`` names further columns of numbers, such as derived ones. What is not named is unknown.

    Raises:
        ValueError: a name is not known or a value does not fit its field; the message names both.
    """
    for case in cases:
        for name, value in case.items():
            check_value(name, value, book, numbers)
    columns: dict[str, Any] = {"case_id": pd.Series([str(n) for n in range(len(cases))], dtype=object)}
    for name in [*book.fields, *(name for name in numbers if any(name in case for case in cases))]:
        values = [case.get(name) for case in cases]
        if name not in book.fields or book.fields[name].type in NUMBERS:
            bounds = np.array([_bounds(value) for value in values], dtype=float).reshape(-1, 3)
            columns[f"{name}__low"], columns[name], columns[f"{name}__high"] = bounds.T
            columns[name + BASIS] = pd.Series([case.get(name + BASIS) for case in cases], dtype=object)
        elif book.fields[name].type == "flag":
            columns[name] = pd.array(values, dtype="boolean")
        else:
            joined = [_joined(value) if book.fields[name].type == "set" else value for value in values]
            columns[name] = pd.Series(joined, dtype=object)
    return pd.DataFrame(columns)


def check_value(name: str, value: Any, book: Rulebook, numbers: Collection[str]) -> None:
    """Check one value of an example as ``table_of`` takes it.

    Raises:
        ValueError: the name is not known or the value does not fit its field; the message names both.
    """
    field = name.removesuffix(BASIS)
    if name.endswith(BASIS) and field in book.fields and book.fields[field].type in NUMBERS:
        bases = [*book.fields[field].bases.values(), "unstated"]
        if value not in bases:
            raise ValueError(f"{name}: {value!r} is not one of {', '.join(bases)}")
        return
    if name not in book.fields and name not in numbers:
        raise ValueError(f"{name}: no such field or derived quantity")
    kind = book.fields[name].type if name in book.fields else "number"
    if kind in NUMBERS:
        parts = value if isinstance(value, list | tuple) else [value]
        if len(parts) not in (1, 2, 3) or any(isinstance(p, bool) or not isinstance(p, int | float) for p in parts):
            raise ValueError(f"{name}: {value!r} is no number, [low, high] or [low, value, high]")
        if list(parts) != sorted(parts):
            raise ValueError(f"{name}: {value!r} is not in ascending order")
    elif kind == "flag":
        if not isinstance(value, bool):
            raise ValueError(f"{name}: {value!r} is neither yes nor no")
    else:
        _check_words(name, value, kind, book)


def _check_words(name: str, value: Any, kind: str, book: Rulebook) -> None:
    words = value if isinstance(value, list | tuple) else [value]
    if not words or any(not isinstance(word, str) for word in words) or (kind != "set" and len(words) > 1):
        raise ValueError(f"{name}: {value!r} is no word" + (" or list of words" if kind == "set" else ""))
    if kind == "text":
        return
    allowed = book.choices_of(name)
    parts = [part for word in words for part in word.split(BETWEEN_WORDS)] if kind == "set" else words
    for word in parts:
        if word not in allowed:
            raise ValueError(f"{name}: {word!r} is not one of {', '.join(allowed)}")


def _bounds(value: Any) -> tuple[float, float, float]:
    if value is None:
        return np.nan, np.nan, np.nan
    parts = [float(part) for part in (value if isinstance(value, list | tuple) else [value])]
    middle = parts[1] if len(parts) == 3 else (parts[0] + parts[-1]) / 2
    return parts[0], middle, parts[-1]


def _joined(value: Any) -> str | None:
    if value is None:
        return None
    words = value if isinstance(value, list | tuple) else str(value).split(BETWEEN_WORDS)
    return BETWEEN_WORDS.join(sorted(set(words)))
