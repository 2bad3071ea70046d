"""The winter behaviour of vans of a dataset under stated conditions."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from pathlib import Path
from typing import Any

import numpy as np
import pandas as pd

from specscan.dataset.reader import Reader
from specscan.judging.narrowing import alternatives, narrowing
from specscan.physics.conditions import Conditions, conditions_named
from specscan.physics.outlook import Tables, tables
from specscan.records.facts import Settled
from specscan.reports.page_rules import WinterRules, load_report_rules
from specscan.rulebook.book import Rulebook, load_rulebook
from specscan.rulebook.questions import question
from specscan.settling.table import case_id, case_table, split_case

QUESTIONS = ["van_id", "field", "narrows", "narrows_what", "makes_known", "instead_of", "question"]


@dataclass(frozen=True)
class Outlook:
    """What winter does to some vans.

    ``vans`` has ``van_id``, ``title`` and ``lasts``: whether no limit binds in the nights of the conditions (``yes``,
    ``no``, ``unknown``). ``tables`` are frames (see ``physics.outlook.Tables``); ``questions`` what to ask, what
    narrows a result most first: ``makes_known`` where the result is not known yet, ``instead_of`` names a field further
    up to which this one is an alternative.
    """

    vans: pd.DataFrame
    conditions: Conditions
    equipment: str
    tables: Tables
    questions: pd.DataFrame
    cautions: list[str]
    groups: dict[str, dict[str, str]]

    def as_dict(self) -> dict[str, Any]:
        """Give all of it as plain data for JSON; what is not known or has no end is null."""
        frames = {one.name: getattr(self.tables, one.name) for one in fields(self.tables)}
        frames |= {"vans": self.vans, "questions": self.questions}
        return {
            "conditions": self.conditions.model_dump(), "equipment": self.equipment, "cautions": self.cautions,
            **{name: _records(frame) for name, frame in frames.items()},
        }  # fmt: skip


def winter(
    db: Path,
    rules: Path,
    vans: Sequence[str] = (),
    conditions: str = "",
    changes: Mapping[str, Any] | None = None,
    equipment: str = "standard",
) -> Outlook:
    """Give the winter behaviour of the named vans, or of all.

    Args:
        conditions: a name in ``conditions.yaml`` or a file; by default those under which the dataset was reckoned.
        changes: figures that stand in place of theirs, by name.
        equipment: ``standard`` (as delivered) or ``optioned``.

    Raises:
        NotFoundError: no such van or conditions.
        RuleError: a rule file is wrong.
        SpecscanError: a figure of the conditions is out of bounds.
        DatasetError: the dataset cannot be opened.
    """
    book = load_rulebook(rules)
    report_rules = load_report_rules(rules)
    with Reader(db) as reader:
        chosen = {reader.van(name)["van_id"] for name in vans}
        titles = {van["van_id"]: van["title"] for van in reader.vans() if not chosen or van["van_id"] in chosen}
        under = conditions_named(rules, conditions) if conditions else _kept(reader) or conditions_named(rules)
        table = _cases(reader, list(titles), equipment, book)
    under = under.changed(changes or {})
    ids = [split_case(case)[0] for case in table["case_id"]]
    made = tables(table, ids, book, under)
    figures = made.figures[made.figures["figure"] == "stay_days"].set_index("van_id")
    listed = pd.DataFrame(
        {
            "van_id": ids, "title": [titles[van] for van in ids],
            "lasts": [_lasts(figures.loc[van], under.nights) for van in ids],
        }
    )  # fmt: skip
    return Outlook(
        listed, under, equipment, made, _questions(table, book, under, made.figures),
        _cautions(table, report_rules.winter, under), report_rules.winter.groups,
    )  # fmt: skip


def _kept(reader: Reader) -> Conditions | None:
    rows = reader.rows("SELECT conditions FROM runs WHERE conditions IS NOT NULL ORDER BY finished_at DESC LIMIT 1")
    return Conditions.model_validate(json.loads(rows[0]["conditions"])) if rows else None


def _cases(reader: Reader, ids: Sequence[str], equipment: str, book: Rulebook) -> pd.DataFrame:
    """Give the table of cases of some vans from their settled rows, in the order of ``ids``."""
    rows = reader.rows(
        "SELECT van_id, field, equipment, status, value_num, value_low, value_high, value_text, value_flag, unit, "
        "availability, reason, note, basis FROM settled WHERE equipment = ? AND status <> 'derived'",
        [equipment],
    )
    settled = [
        Settled(
            row["van_id"], row["field"], row["equipment"], row["status"], num=row["value_num"], low=row["value_low"],
            high=row["value_high"], text=row["value_text"], flag=row["value_flag"], unit=row["unit"] or "",
            basis=row["basis"] or "",
        )
        for row in rows
    ]  # fmt: skip
    table = case_table(settled, book).set_index("case_id", drop=False)
    wanted = [case_id(van, equipment) for van in ids]
    return table.loc[[one for one in wanted if one in table.index]].reset_index(drop=True)


def _questions(table: pd.DataFrame, book: Rulebook, under: Conditions, figures: pd.DataFrame) -> pd.DataFrame:
    found = narrowing(table, book, under)
    found["van_id"] = [split_case(case)[0] for case in found["case_id"]]
    found["question"] = [question(name, book) for name in found["field"]]
    known = figures.set_index(["van_id", "figure"])["value"]
    pairs = zip(found["van_id"], found["narrows_what"], strict=True)
    found["makes_known"] = [not np.isfinite(known[pair]) for pair in pairs]
    asked: dict[str, list[str]] = {}
    places: list[str] = []
    for van, name, what in zip(found["van_id"], found["field"], found["narrows_what"], strict=True):
        others = alternatives(name, what)
        first = next((one for one in asked.setdefault(van, []) if one in others), "")
        places.append(first)
        if not first:
            asked[van].append(name)
    found["instead_of"] = places
    return found[QUESTIONS]


def _lasts(row: pd.Series, nights: int) -> str:
    if not np.isfinite(row["low"]):
        return "unknown"
    if row["low"] >= nights:
        return "yes"
    return "no" if row["high"] < nights else "unknown"


def _cautions(table: pd.DataFrame, rules: WinterRules, under: Conditions) -> list[str]:
    """Give the cautions that concern any of the vans; where fuel or battery are not known, those for all of them."""
    fuels, batteries = table["heater_fuel"].dropna(), table["battery_chemistry"].dropna()
    about = {"every", "water"}
    for fuel in ("propane", "diesel", "gasoline"):
        if len(fuels) < len(table) or fuels.str.contains(fuel).any():
            about.add(fuel)
    if len(batteries) < len(table) or (batteries == "lithium").any():
        about.add("lithium")
    return [one.text for one in rules.cautions if one.about in about]


def _records(frame: pd.DataFrame) -> list[dict[str, Any]]:
    return [{str(name): _plain(value) for name, value in row.items()} for row in frame.to_dict("records")]


def _plain(value: Any) -> Any:
    if isinstance(value, bool | np.bool_):
        return bool(value)
    if isinstance(value, float | np.floating):
        return round(float(value), 6) if np.isfinite(value) else None
    return value.item() if isinstance(value, np.generic) else value
