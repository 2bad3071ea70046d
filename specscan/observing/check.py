"""Rows of answers → observations, each checked against the vocabulary, the vans and the documents."""

from __future__ import annotations

import difflib
import os
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date
from pathlib import Path
from typing import get_args

from specscan.observing.answers import AnswerError, AnswerReader
from specscan.observing.rules import ObservingRules, Way
from specscan.observing.sheet_rows import SheetRow
from specscan.records.errors import at
from specscan.records.facts import Availability, Equipment, Fact
from specscan.records.observations import Observation


@dataclass(frozen=True, slots=True)
class Known:
    """What answers may speak of: vans (id → name), and documents (name → pages or none, ids of their vans).

    ``imperial`` are the ids of vans whose documents print imperial gallons.
    """

    vans: Mapping[str, str]
    documents: Mapping[str, tuple[int | None, frozenset[str]]]
    imperial: frozenset[str] = frozenset()


@dataclass(slots=True)
class Checked:
    """What came of rows: observations, mistakes as ``file:line: reason``, and how many rows hold no answer."""

    observations: list[Observation] = field(default_factory=list)
    mistakes: list[str] = field(default_factory=list)
    without_answer: int = 0


class Checker:
    """Checks the rows of one file.

    ``known`` is what the dataset has; ``None`` for the kept file, which may speak of vans that are not there now.
    ``evidence_from`` is the folder from which paths of evidence are told, ``keep_in`` the one they are kept from.
    """

    def __init__(
        self, reader: AnswerReader, rules: ObservingRules, path: Path, known: Known | None, today: date, keep_in: Path
    ):
        self.reader, self.rules, self.path = reader, rules, path
        self.known, self.today, self.keep_in = known, today, keep_in

    def check(self, rows: Sequence[SheetRow]) -> Checked:
        """Give the observations of rows; a wrong row costs only itself, so that all mistakes are named at once."""
        result = Checked()
        for row in rows:
            if self.reader.is_none(row.cells["answer"]):
                result.without_answer += 1
                continue
            mistakes: list[str] = []
            made = self._observation(row, mistakes)
            if made is not None and not mistakes:
                result.observations.append(made)
            result.mistakes += [at(self.path, row.line or None, reason) for reason in mistakes]
        return result

    def _observation(self, row: SheetRow, mistakes: list[str]) -> Observation | None:
        cells = row.cells
        van_id = self._van(cells["van_id"], mistakes)
        if not cells["who"]:
            mistakes.append("who saw it is missing")
        self._date(cells["when"], mistakes)
        way = self._way(cells, mistakes)
        page = self._place(cells, van_id, mistakes)
        equipment = cells["equipment"] or "standard"
        if equipment not in get_args(Equipment):
            mistakes.append(f"equipment is {equipment!r}: use {' or '.join(get_args(Equipment))}")
        if cells["availability"] and cells["availability"] not in get_args(Availability):
            mistakes.append(f"availability is {cells['availability']!r}: use {', '.join(get_args(Availability))}")
        fact = self._fact(cells, van_id, mistakes)
        evidence = self._evidence(cells["evidence"], mistakes)
        if way is None or mistakes:
            return None
        name = (self.known.vans.get(van_id, "") if self.known is not None else "") or cells["van"]
        return Observation(
            van_id, name, cells["field"], equipment, fact, cells["answer"], cells["unit"], cells["who"],  # type: ignore[arg-type]
            cells["when"], way[0].name, way[0].source(cells["who"], cells["when"]), way[1], evidence, cells["note"],
            cells["doc"], page, cells["availability"], row.line,
        )  # fmt: skip

    def _van(self, name: str, mistakes: list[str]) -> str:
        if self.known is None or name in self.known.vans:
            if not name:
                mistakes.append("van_id is missing")
            return name
        near = " or ".join(difflib.get_close_matches(name, self.known.vans, 3, 0.5))
        hint = f"; perhaps {near}" if near else ""
        mistakes.append(f"the dataset has no van {name!r}{hint}" if name else "van_id is missing")
        return name

    def _date(self, text: str, mistakes: list[str]) -> None:
        try:
            when = date.fromisoformat(text)
        except ValueError:
            mistakes.append(f"when is {text!r}: write the date as 2026-02-28" if text else "when is missing")
            return
        if when > self.today:
            mistakes.append(f"{text} lies in the future")

    def _way(self, cells: Mapping[str, str], mistakes: list[str]) -> tuple[Way, int] | None:
        correction = bool(cells["doc"])
        way = self.rules.way(cells["how"] or (self.rules.read_again.name if correction else ""))
        names = ", ".join(one.name for one in self.rules.ways)
        if way is None:
            mistakes.append(f"how is {cells['how']!r}: use {names}" if cells["how"] else f"how is missing: use {names}")
        elif (way[0] == self.rules.read_again) != correction:
            mistakes.append(
                f"a correction of a document (doc) is come by as {self.rules.read_again.name!r}"
                if correction
                else f"{way[0].name!r} needs the document (doc) that was read again"
            )
        return way

    def _place(self, cells: Mapping[str, str], van_id: str, mistakes: list[str]) -> int:
        """Check the document and page of a correction; give the page, 0 for none."""
        name, text = cells["doc"], cells["page"]
        if not name:
            if text:
                mistakes.append("a page without a document (doc)")
            return 0
        if text and not (text.isdigit() and int(text) >= 1):
            mistakes.append(f"page is {text!r}: pages count from 1")
            return 0
        page = int(text) if text else 0
        if self.known is None:
            return page
        if name not in self.known.documents:
            near = difflib.get_close_matches(name, self.known.documents, 2, 0.5)
            mistakes.append(
                f"the dataset has no document {name!r}" + (f"; perhaps {' or '.join(near)}" if near else "")
            )
            return page
        pages, vans = self.known.documents[name]
        if pages and not page:
            mistakes.append(f"the page of {name} is missing")
        if page > (pages or 0):
            mistakes.append(
                f"{name} has {f'{pages} pages' if pages else 'no pages: leave page empty'}, not page {page}"
            )
        if van_id in self.known.vans and van_id not in vans:
            mistakes.append(f"{name} does not speak of {van_id}")
        return page

    def _fact(self, cells: Mapping[str, str], van_id: str, mistakes: list[str]) -> Fact | None:
        if cells["doc"] and self.reader.is_not_stated(cells["answer"]) and cells["field"] in self.reader.book.fields:
            return None
        try:
            imperial = self.known is not None and van_id in self.known.imperial
            return self.reader.read(cells["field"], cells["answer"], cells["unit"], imperial=imperial)
        except AnswerError as error:
            mistakes.append(str(error))
            return None

    def _evidence(self, text: str, mistakes: list[str]) -> str:
        """Give a photograph's or document's path from the folder where answers are kept."""
        if not text or self.known is None:
            return text
        path = Path(text) if Path(text).is_absolute() else self.path.parent / text
        if not path.is_file():
            mistakes.append(f"evidence: there is no file {text}")
            return text
        return Path(os.path.relpath(path.resolve(), self.keep_in.resolve())).as_posix()
