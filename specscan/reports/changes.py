"""What changed between two scans, or between two vans or model years: per field, with the pages on both sides."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Sequence
from dataclasses import asdict, dataclass
from dataclasses import field as made
from pathlib import Path
from typing import Any, Literal

from specscan.dataset.reader import Reader
from specscan.records.errors import SpecscanError
from specscan.records.names import plain
from specscan.reports.citations import cite
from specscan.reports.explain import value_text

Kind = Literal["changed", "new", "gone", "availability", "status"]
WITHIN = 1e-3  # of a number: less is rounding
IDENTITY = ("maker", "model", "model_year")
Row = dict[str, Any]


@dataclass(frozen=True, slots=True)
class Side:
    """What one side knows of a field: the value in words, its status and availability, and citations."""

    value: str
    status: str
    availability: str
    note: str
    citations: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Change:
    """One field of one van that is not the same on both sides.

    ``kind``: the value ``changed``, is ``new`` (known on the second side only) or ``gone``; or it is the same, and its
    ``availability`` (standard, option) or ``status`` (stated, conflicting, observed) changed.
    """

    field: str
    equipment: str
    kind: Kind
    before: Side
    after: Side


@dataclass(slots=True)
class VanChanges:
    """The changes of a van, or between two vans; and the bands of points on both sides, by rule set and equipment."""

    before: str
    after: str
    changes: list[Change] = made(default_factory=list)
    bands: list[Row] = made(default_factory=list)

    def as_dict(self) -> Row:
        """Give it as plain data for JSON."""
        return asdict(self)


@dataclass(slots=True)
class Comparison:
    """All changes; ``appeared`` and ``vanished`` are vans that only one of two datasets has."""

    pairs: list[VanChanges] = made(default_factory=list)
    appeared: list[str] = made(default_factory=list)
    vanished: list[str] = made(default_factory=list)

    def as_dict(self) -> Row:
        """Give it as plain data for JSON."""
        return asdict(self)


def compare_runs(older: Path, newer: Path, names: Sequence[str] = (), derived: bool = False) -> Comparison:
    """Give what changed from one dataset to another of the same vans; ``names`` are the vans, none for all.

    ``derived`` takes what was worked out too.

    Raises:
        NotFoundError: no such van in the newer dataset.
        DatasetError: a dataset cannot be opened.
        SpecscanError: both are one and the same file.
    """
    if older.exists() and newer.exists() and older.samefile(newer):
        raise SpecscanError(f"{older}: is the same file as the dataset that it is to be compared with; keep a copy")
    with Reader(older) as one, Reader(newer) as two:
        chosen = {two.van(name)["van_id"] for name in names}
        before, after = ({van["van_id"]: van for van in reader.vans()} for reader in (one, two))
        wanted = [van for van in after if not chosen or van in chosen]
        found = Comparison()
        for van in wanted:
            if van in before:
                found.pairs.append(_pair(_Van(one, before[van]), _Van(two, after[van]), derived, same_van=True))
            else:
                found.appeared.append(after[van]["title"])
        found.vanished = [van["title"] for van_id, van in before.items() if van_id not in after and not chosen]
        return found


def compare_vans(db: Path, names: Sequence[str] = (), derived: bool = False) -> Comparison:
    """Give the differences between two vans, or (without names) between all model years of the same van, in order.

    Raises:
        NotFoundError: no such van.
        SpecscanError: not two vans are named.
        DatasetError: the dataset cannot be opened.
    """
    if names and len(names) != 2:
        raise SpecscanError("name two vans, or none for all model years of the same van")
    with Reader(db) as reader:
        pairs = [(reader.van(names[0]), reader.van(names[1]))] if names else _years(reader.vans())
        return Comparison([_pair(_Van(reader, one), _Van(reader, two), derived) for one, two in pairs])


def _years(vans: Sequence[Row]) -> list[tuple[Row, Row]]:
    """Give pairs of model years of the same van, each with the next one there is."""
    groups: dict[tuple[str, str], list[Row]] = defaultdict(list)
    for van in vans:
        if van["model"] and van["model_year"] is not None:
            groups[(plain(van["maker"] or ""), plain(van["model"]))].append(van)
    pairs = []
    for group in groups.values():
        ordered = sorted(group, key=lambda van: van["model_year"])
        pairs += list(zip(ordered, ordered[1:], strict=False))
    return pairs


class _Van:
    """The settled rows, citations and bands of one van of one dataset."""

    def __init__(self, reader: Reader, van: Row):
        self.title, maker = van["title"], van["maker"]
        rows = reader.rows("SELECT * FROM settled WHERE van_id = ?", [van["van_id"]])
        self.rows = {(row["field"], row["equipment"]): row for row in rows}
        self.facts = {
            row["fact_id"]: cite(row, maker)
            for row in reader.rows(
                "SELECT f.fact_id, d.name AS document, f.page, f.printed, f.availability FROM facts AS f "
                "JOIN documents AS d USING (doc_id) WHERE f.van_id = ?", [van["van_id"]],
            )
        }  # fmt: skip
        self.bands = {
            (row["ruleset"], row["equipment"]): (row["points_low"], row["points_high"])
            for row in reader.rows("SELECT * FROM scores WHERE van_id = ? AND criterion = 'total'", [van["van_id"]])
        }

    def side(self, row: Row) -> Side:
        """Give a settled row as one side of a change."""
        cited = (self.facts[one] for one in row["fact_ids"] or [] if one in self.facts)
        return Side(
            value_text(row), row["status"], row["availability"] or "", row["note"] or "", tuple(dict.fromkeys(cited))
        )


def _pair(one: _Van, two: _Van, derived: bool, same_van: bool = False) -> VanChanges:
    found = VanChanges(one.title, two.title)
    for place in one.rows:
        name, equipment = place
        if place not in two.rows or (name in IDENTITY and not same_van):
            continue
        before, after = one.rows[place], two.rows[place]
        if not derived and "derived" in (before["status"], after["status"]):
            continue
        kind = _kind(before, after)
        if kind is not None and not (equipment == "optioned" and _as_delivered(found, name, kind, two.side(after))):
            found.changes.append(Change(name, equipment, kind, one.side(before), two.side(after)))
    for view, band in one.bands.items():
        if view in two.bands and two.bands[view] != band:
            low, high = two.bands[view]
            found.bands.append(
                {"ruleset": view[0], "equipment": view[1], "low_before": band[0], "high_before": band[1], "low": low,
                 "high": high}
            )  # fmt: skip
    return found


def _as_delivered(found: VanChanges, name: str, kind: Kind, after: Side) -> bool:
    """Tell whether the same change was told of the van as delivered."""
    return any(
        (change.field, change.kind, change.after.value) == (name, kind, after.value) and change.equipment == "standard"
        for change in found.changes
    )


def _kind(before: Row, after: Row) -> Kind | None:
    known = [row["status"] != "missing" for row in (before, after)]
    if known == [False, False]:
        return None
    if known == [False, True]:
        return "new"
    if known == [True, False]:
        return "gone"
    if not _same(before, after):
        return "changed"
    if _offer(before) != _offer(after):
        return "availability"
    return "status" if before["status"] != after["status"] else None


def _offer(row: Row) -> str:
    """Give the availability, where what is not said to be standard counts as such, as it does in ``evaluate``."""
    return "standard" if row["availability"] in (None, "", "unstated") else row["availability"]


def _same(before: Row, after: Row) -> bool:
    for name in ("value_num", "value_low", "value_high"):
        one, two = before[name], after[name]
        if (one is None) != (two is None):
            return False
        if one is not None and abs(one - two) > WITHIN * max(abs(one), abs(two)):
            return False
    return (before["value_text"], before["value_flag"]) == (after["value_text"], after["value_flag"])
