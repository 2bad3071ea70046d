"""How a van might fare against the temperature pairs of EN 1646-1: an estimate and no certification.

The standard's text was not read; secondary sources agree on the pairs and disagree on the time for grade 3 (4 h or
2 h, rows E02 to E06). Its clauses on even warmth and, for grade 3, on running water are not estimated here.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import pandas as pd

from specscan.physics.assumptions import HOUR, Assumptions
from specscan.physics.balance import warming_time
from specscan.physics.columns import Columns
from specscan.physics.design import at_design
from specscan.physics.envelope import Envelope
from specscan.physics.ranges import Range, monotone
from specscan.physics.words import figure, per, span
from specscan.records.truth import Truth
from specscan.rulebook.book import Rulebook

GRADES = {2: "two", 3: "three"}
FLAGS = {Truth.YES: True, Truth.NO: False, Truth.UNKNOWN: None}


@dataclass(frozen=True, slots=True)
class GradeView:
    """An estimate for one grade: temperatures (°C), loss (W), time to warm up (s), allowed time (s), mean U (W/(m²·K)).

    ``fares``: whether it would warm up in time: yes for every value in the ranges, no for none, else unknown.
    """

    grade: int
    outside: float
    inside: float
    loss: Range
    warm_up: Range
    allowed: Range
    mean_u: Range
    mean_u_limit: float
    fares: list[Truth]


def grade_views(envelope: Envelope, output: Range, values: Assumptions) -> list[GradeView]:
    """Give the estimates for grades 2 and 3, from a soaked van at the outside temperature and full output (W).

    Time longer than a day counts as a day. The limits of mean U (row E10) are from memory and only shown.
    """
    views = []
    for grade, name in GRADES.items():
        outside = float(values.celsius(f"grade_{name}_outside").typical)
        inside = float(values.celsius("grade_inside").typical)
        allowed = values[f"grade_{name}_hours"]
        loss = envelope.total.times(inside - outside)
        time = monotone(
            lambda conductance, capacity, output, cold=outside, warm=inside: warming_time(
                conductance, capacity, output, cold, warm, cold
            ),
            {"conductance": envelope.total, "capacity": values["van_heat_capacity"]}, {"output": output}, most=86400.0,
        )  # fmt: skip
        fares = [
            _fares(low, high, allowed)
            for low, high in zip(np.atleast_1d(time.low), np.atleast_1d(time.high), strict=True)
        ]
        limit = float(values[f"grade_{name}_transmittance"].typical)
        views.append(GradeView(grade, outside, inside, loss, time, allowed, envelope.mean_u, limit, fares))
    return views


def _fares(low: float, high: float, allowed: Range) -> Truth:
    if high <= float(allowed.low):
        return Truth.YES
    if low > float(allowed.high):
        return Truth.NO
    return Truth.UNKNOWN


def in_time(table: pd.DataFrame, book: Rulebook) -> pd.DataFrame:
    """Give for each case whether it would warm up in the time of each grade, and a sentence that tells the reckoning.

    The columns are ``grade_two_in_time`` and ``grade_three_in_time`` (nullable booleans), and the same with ``__how``
    (``None`` where nothing can be said). Unknown where neither size nor walls, or no heater's rating, are known.
    """
    columns, values = Columns(table), Assumptions(book)
    winter = at_design(columns, values)
    output = winter.output
    known = winter.sized & output.known
    result: dict[str, object] = {}
    for view in grade_views(winter.envelope, output, values):
        name = f"grade_{GRADES[view.grade]}_in_time"
        fares = view.fares * columns.size if len(view.fares) == 1 else view.fares
        truths = [FLAGS[one] if ok else None for one, ok in zip(fares, known, strict=True)]
        result[name] = pd.array(truths, dtype="boolean")
        result[f"{name}__how"] = pd.Series(
            [_how(view, output, case) if known[case] else None for case in range(columns.size)],
            dtype=object, index=table.index,
        )  # fmt: skip
    return pd.DataFrame(result, index=table.index)


def _how(view: GradeView, output: Range, case: int) -> str:
    hours, loss = view.warm_up.times(1 / HOUR), view.loss
    return (
        f"{span(output, case)} W of heat against {span(loss, case)} W lost at {figure(view.outside)} °C "
        f"outside and {figure(view.inside)} °C inside: {span(hours, case)} h to warm the soaked van; the grade "
        f"asks for {per(view.allowed, HOUR)} h."
    )
