"""The winter behaviour of vans as a person likes to read it."""

from __future__ import annotations

from typing import Any

import numpy as np
import pandas as pd
from rich.table import Table
from rich.text import Text

from specscan.cli.consoles import console
from specscan.physics.words import figure
from specscan.reports.conditions_words import both_units, celsius, conditions_words, fahrenheit
from specscan.reports.winter import Outlook

STEP = 10.0
"""Outside temperatures of the printed curve (°C)."""
ASKED = 5
HOURS_SHOWN = (0, 1, 2, 4, 8, 12, 24)
LASTS = {"yes": "nothing that is known ends it before", "no": "it ends before", "unknown": "not certain"}


def print_one(outlook: Outlook, *, arithmetic: bool) -> None:
    """Print all of one van."""
    out = console()
    van = outlook.vans.iloc[0]
    out.print(Text.assemble((van["title"], "bold"), f", {_fitted(outlook)}"))
    out.print(Text(conditions_words(outlook.conditions), style="dim"))
    _limits(out, outlook, van)
    _figures(out, outlook, arithmetic)
    _curve(out, outlook)
    _cooling(out, outlook)
    _rows(out, "Tanks, while heating and battery last", outlook.tables.tanks, ("tank", "what"))
    _rows(out, "Windows", outlook.tables.glass, ("pane", "what"))
    _draining(out, outlook)
    _grades(out, outlook)
    _questions(out, outlook)
    _cautions(out, outlook)


def print_several(outlook: Outlook) -> None:
    """Print a table of all vans."""
    out = console()
    out.print(Text(conditions_words(outlook.conditions), style="dim"))
    if not len(outlook.vans):
        out.print("no vans in this dataset")
        return
    table = Table(box=None, header_style="bold", pad_edge=False, title=_fitted(outlook), title_justify="left")
    table.add_column("van", overflow="fold")
    for head in ("margin in the coldest night", "holds the inside down to", "days of heat", "days of stay"):
        table.add_column(head, justify="right")
    for head in ("first limit", "ask first"):
        table.add_column(head, overflow="fold")
    figures = outlook.tables.figures.set_index(["van_id", "figure"])
    for _, van in outlook.vans.iterrows():
        rows = {name: figures.loc[(van["van_id"], name)] for name in COLUMNS}
        limits = outlook.tables.limits[outlook.tables.limits["van_id"] == van["van_id"]]
        known = limits[limits["known"] & ~limits["never"]] if len(limits) else limits
        asks = outlook.questions[outlook.questions["van_id"] == van["van_id"]]
        first = str(known["words"].iloc[0]) if len(known) else ""
        ask = str(asks["field"].iloc[0]) if len(asks) else ""
        table.add_row(Text(van["title"]), *(Text(_value(rows[name])) for name in COLUMNS), Text(first), Text(ask))
    out.print(table)
    out.print(Text("Typical value, and in brackets the range over what is open or assumed. Not ranked.", style="dim"))
    _cautions(out, outlook)


COLUMNS = ("heater_margin_w", "lowest_outside_c", "heat_days_at_loss", "stay_days")


def _fitted(outlook: Outlook) -> str:
    return "with printed options fitted" if outlook.equipment == "optioned" else "as delivered"


def _limits(out: Any, outlook: Outlook, van: pd.Series) -> None:
    _head(out, "What ends the stay")
    for _, row in outlook.tables.limits.iterrows():
        if not row["known"]:
            out.print(Text(f"  {'not known':>24}  {row['words']}", style="yellow"))
        elif not row["never"]:
            out.print(Text(f"  {_span(row, 'd'):>24}  {row['words']}"))
    nights = outlook.conditions.nights
    said = LASTS[van["lasts"]]
    out.print(Text(f"  {nights} {'night' if nights == 1 else 'nights'}: {said}.", style="bold"))


def _figures(out: Any, outlook: Outlook, arithmetic: bool) -> None:
    figures = outlook.tables.figures.set_index("figure")
    for group, names in outlook.groups.items():
        _head(out, group)
        for name, title in names.items():
            if name not in figures.index:
                continue
            row = figures.loc[name]
            known = bool(np.isfinite(row["value"]))
            value = _value(row) if known else row["how"] or f"not known: it needs {row['needs']}"
            out.print(Text.assemble(f"  {title}: ", (value, "" if known else "yellow")))
            if arithmetic and known and row["how"]:
                out.print(Text(f"      {row['how']}", style="dim"))


def _curve(out: Any, outlook: Outlook) -> None:
    curve = outlook.tables.curve
    curve = curve[(curve["outside_c"] % STEP == 0) & np.isfinite(curve["heat_days"])]
    if not len(curve):
        return
    _head(out, "Days of heat by outside temperature")
    for _, row in curve.iloc[::-1].iterrows():
        days = {"value": row["heat_days"], "low": row["heat_days_low"], "high": row["heat_days_high"]}
        out.print(f"  {both_units(row['outside_c']):>18}  {_span(days, 'd')}")


def _cooling(out: Any, outlook: Outlook) -> None:
    cooling = outlook.tables.cooling
    cooling = cooling[cooling["hours"].isin(HOURS_SHOWN) & np.isfinite(cooling["value"])]
    if not len(cooling):
        return
    _head(out, f"Inside after the heating stops, at {both_units(outlook.conditions.outside_c)} outside")
    for _, row in cooling.iterrows():
        out.print(f"  {figure(row['hours']):>4} h  {_span(row, '°C')}")
    for _, row in outlook.tables.reached.iterrows():
        out.print(f"  {both_units(row['inside_c'])} is reached after {_span(row, 'h')}")


def _rows(out: Any, title: str, frame: pd.DataFrame, names: tuple[str, str]) -> None:
    if not len(frame):
        return
    _head(out, title)
    for _, row in frame.iterrows():
        what = " ".join(str(row[name]).replace("_", " ") for name in names)
        out.print(Text(f"  {what}: {_value(row)}"))


def _draining(out: Any, outlook: Outlook) -> None:
    frame = outlook.tables.draining
    if not len(frame):
        return
    _head(out, f"Glycol for what stays behind when drained, for {both_units(outlook.conditions.coldest_c)}")
    for _, row in frame.iterrows():
        needed = f"{row['purpose']} takes {figure(row['strength'])} % glycol"
        amount = "no amount is strong enough" if row["too_weak"] else _span(row, "l")
        out.print(Text(f"  {needed}; {row['fluid']}: {amount}"))


def _grades(out: Any, outlook: Outlook) -> None:
    frame = outlook.tables.grades
    if not len(frame):
        return
    _head(out, "Against the temperature pairs of EN 1646-1 (an estimate, no certification; its text was not read)")
    for _, row in frame.iterrows():
        warm = {"value": row["warm_up_h"], "low": row["warm_up_h_low"], "high": row["warm_up_h_high"]}
        low, high = row["allowed_h_low"], row["allowed_h_high"]
        allowed = f"{figure(low)} h" if low == high else f"{figure(low)} or {figure(high)} h (sources disagree)"
        would = {"yes": "would be warm in time", "no": "would not be warm in time"}.get(row["fares"], "not certain")
        out.print(
            Text(
                f"  grade {row['grade']}: from {both_units(row['outside_c'])} to {both_units(row['inside_c'])} in "
                f"{_span(warm, 'h')}, allowed {allowed}: {would}"
            )  # fmt: skip
        )


def _questions(out: Any, outlook: Outlook) -> None:
    if not len(outlook.questions):
        return
    _head(out, "What to ask first, and how much of a range the answer takes away on average")
    names = outlook.tables.figures.drop_duplicates("figure").set_index("figure")["meaning"]
    for _, row in outlook.questions.head(ASKED).iterrows():
        out.print(Text(f"  {row['narrows']:4.0%}  {row['field']} (of: {names[row['narrows_what']]})"))
        out.print(Text(f"        {row['question']}", style="dim"))


def _cautions(out: Any, outlook: Outlook) -> None:
    _head(out, "Cautions")
    for text in outlook.cautions:
        out.print(Text(f"  {text}", style="dim"))


def _head(out: Any, text: str) -> None:
    out.print()
    out.print(Text(text, style="bold"))


def _value(row: Any) -> str:
    return _span(row, row["unit"]) if np.isfinite(row["value"]) else "not known"


def _span(row: Any, unit: str) -> str:
    """Give a value with its range and unit; what lies beyond what is told of, in words; °C in °F, too."""
    value, low, high = (float(row[name]) for name in ("value", "low", "high"))
    if unit == "°C":
        if celsius(low) == celsius(high):
            return both_units(value)
        other = f"{fahrenheit(low)} to {fahrenheit(high)} °F"
        return f"{both_units(value)} ({celsius(low)} to {celsius(high)} °C / {other})"
    words = {"d": "days"}.get(unit, unit)
    parts = [_end(one, unit) for one in (value, low, high)]
    text = parts[0] if parts[1] == parts[2] else f"{parts[0]} ({parts[1]} to {parts[2]})"
    return text if set(parts) <= set(ENDS) else f"{text} {words}"


ENDS = ("no end", "never", "at once")


def _end(value: float, unit: str) -> str:
    """Give a figure; the horizons of the rules, a year of stay and two months of cold, are no figures."""
    if unit == "d" and value >= 365:
        return "no end"
    if unit == "h" and value >= 1440:
        return "never"
    if unit in ("d", "h") and value == 0:
        return "at once"
    return "no end" if np.isinf(value) else figure(value)
