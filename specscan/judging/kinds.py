"""What the columns that a condition may use can hold."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from specscan.physics.derived import DERIVED
from specscan.rulebook.book import Rulebook

KindName = Literal["number", "flag", "choice", "set", "text"]


@dataclass(frozen=True, slots=True)
class Kind:
    """What a column holds.

    ``words`` are the words of a choice or set. ``denies`` is the word of a choice that says that a thing is not there
    (``none``), ``vague`` the one that says that it is, but not which (a tank that is heated, it is not said how): it
    stands for any of the others. An ``open`` set holds what documents name, and what they do not name is not denied.
    """

    name: KindName
    words: tuple[str, ...] = ()
    denies: str = ""
    vague: str = ""
    open: bool = False

    @property
    def any_of(self) -> frozenset[str]:
        """Give the words for which the vague one may stand."""
        return frozenset(word for word in self.words if word not in (self.denies, self.vague))


def column_kinds(book: Rulebook) -> dict[str, Kind]:
    """Give what each column holds that a condition may use: the fields and the derived quantities."""
    kinds: dict[str, Kind] = {name: Kind("number") for name in DERIVED}
    for name, spec in book.fields.items():
        if spec.type in ("number", "integer"):
            kinds[name] = Kind("number")
        elif spec.type == "flag":
            kinds[name] = Kind("flag")
        elif spec.type == "choice":
            kinds[name] = Kind("choice", tuple(book.choices_of(name)), spec.none, spec.yes)
        elif spec.type == "set":
            # A set that is gathered over several lines is a list of what was named, not of all there is.
            kinds[name] = Kind("set", tuple(book.choices_of(name)), open=spec.union)
        else:
            kinds[name] = Kind("text")
    return kinds


def uncertain_sql(column: str, kind: Kind) -> tuple[str, str]:
    """Give SQL that tells where a column is not known at all, and where it is known only in part."""
    if kind.name == "number":
        low, high = quoted(f"{column}__low"), quoted(f"{column}__high")
        return f"({low} IS NULL)", f"({low} < {high})"
    name = quoted(column)
    if kind.vague:
        return f"({name} IS NULL)", f"({name} = {text(kind.vague)})"
    if kind.open:
        return f"({name} IS NULL)", f"(len(string_split({name}, '+')) < {len(kind.words)})"
    return f"({name} IS NULL)", "FALSE"


def quoted(name: str) -> str:
    """Give a name as an SQL identifier."""
    return '"' + name.replace('"', '""') + '"'


def text(value: str) -> str:
    """Give a text as an SQL literal."""
    return "'" + value.replace("'", "''") + "'"


Kinds = Mapping[str, Kind]
