"""The winter behaviour of vans as a person likes to read it."""

from __future__ import annotations

import re
from typing import Any

import numpy as np
import pandas as pd
from rich.table import Table
from rich.text import Text

from specscan.cli.consoles import console
from specscan.cli.winter_figures import span_words, value_words
from specscan.physics.words import earliest, figure
from specscan.reports.conditions_words import both_units, conditions_words
from specscan.reports.winter import Outlook

STEP = 10.0
"""Outside temperatures of the printed curve (°C)."""
ASKED = 5
NOTICEABLE = 0.5
"""How far (K) the inside may fall below what is wanted without a word."""
HOURS_SHOWN = (0, 1, 2, 4, 8, 12, 24)
WIND = "Wind takes a tank to the air's temperature faster, never below it; wind chill is about skin."
PLACES = {
    "fresh": "Fresh tank", "gray": "Gray tank", "black": "Black tank", "air": "Air inside", "windows": "Windows",
    "cab_glass": "Cab glass",
}  # fmt: skip
LASTS = {"yes": "nothing that is known ends it before", "no": "it ends before", "unknown": "not certain"}


def print_one(outlook: Outlook, *, arithmetic: bool) -> None:
    """Print all of one van."""
    out = console()
    van = outlook.vans.iloc[0]
    out.print(Text.assemble((van["title"], "bold"), f", {_fitted(outlook)}"))
    out.print(Text(conditions_words(outlook.conditions), style="dim"))
    _limits(out, outlook, van)
    _figures(out, outlook, arithmetic)
    _envelope(out, outlook, arithmetic)
    _curve(out, outlook)
    _cooling(out, outlook)
    _rows(out, "Tanks, while heating and battery last", outlook.tables.tanks, "tank")
    if len(outlook.tables.tanks):
        out.print(Text(f"  {WIND}", style="dim"))
    _rows(out, "Windows and damp", outlook.tables.glass, "pane")
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
        table.add_row(
            Text(van["title"]),
            *(Text(_two_lines(value_words(rows[name]))) for name in COLUMNS),
            Text(first),
            Text(ask),
        )
    out.print(table)
    out.print(Text("Typical value, and in brackets the range over what is open or assumed. Not ranked.", style="dim"))
    _cautions(out, outlook)


def _two_lines(text: str) -> str:
    """Put the range below the value and its unit: ``350 (-1150 to 1360) W``."""
    return re.sub(r"^(.+?) (\(.+\))( \S+)?$", r"\1\3\n\2", text)


COLUMNS = ("heater_margin_w", "lowest_outside_c", "heat_days_at_loss", "stay_days")


def _fitted(outlook: Outlook) -> str:
    return "with printed options fitted" if outlook.equipment == "optioned" else "as delivered"


def _limits(out: Any, outlook: Outlook, van: pd.Series) -> None:
    _head(out, "What ends the stay")
    limits = outlook.tables.limits
    shown = limits[~limits["known"] | ~limits["never"]]
    words = [
        span_words(row, "d") if row["known"] else f"not known, {earliest(row['low'])}" for _, row in shown.iterrows()
    ]
    width = max(map(len, words), default=0)
    for text, (_, row) in zip(words, shown.iterrows(), strict=True):
        out.print(Text(f"  {text:>{width}}  {row['words']}", style="" if row["known"] else "yellow"))
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
            value = value_words(row) if known else row["how"] or f"not known: it needs {row['needs']}"
            out.print(Text.assemble(f"  {title}: ", (value, "" if known else "yellow")))
            if arithmetic and known and row["how"]:
                out.print(Text(f"      {row['how']}", style="dim"))


def _envelope(out: Any, outlook: Outlook, arithmetic: bool) -> None:
    frame = outlook.tables.envelope
    if not len(frame):
        return
    _head(out, "Where the heat goes, for each kelvin between inside and outside")
    for _, row in frame.iterrows():
        out.print(Text(f"  {row['words']}: {span_words(row, 'W/K')}"))
        if arithmetic:
            out.print(Text(f"      {row['how']}", style="dim"))


def _curve(out: Any, outlook: Outlook) -> None:
    curve = outlook.tables.curve
    curve = curve[(curve["outside_c"] % STEP == 0) & np.isfinite(curve["heat_days"])]
    if not len(curve):
        return
    _head(out, "Days of heat by outside temperature")
    wanted = outlook.conditions.inside_c
    for _, row in curve.iloc[::-1].iterrows():
        days = {"value": row["heat_days"], "low": row["heat_days_low"], "high": row["heat_days_high"]}
        held = row["held_inside_c"]
        short = f"; full output holds only {both_units(held)} inside" if held < wanted - NOTICEABLE else ""
        out.print(Text(f"  {both_units(row['outside_c']):>18}  {span_words(days, 'd')}{short}"))


def _cooling(out: Any, outlook: Outlook) -> None:
    cooling = outlook.tables.cooling
    cooling = cooling[cooling["hours"].isin(HOURS_SHOWN) & np.isfinite(cooling["value"])]
    if not len(cooling):
        return
    _head(out, f"Inside after the heating stops, at {both_units(outlook.conditions.outside_c)} outside")
    for _, row in cooling.iterrows():
        out.print(f"  {figure(row['hours']):>4} h  {span_words(row, '°C')}")
    for _, row in outlook.tables.reached.iterrows():
        out.print(f"  {both_units(row['inside_c'])} is reached after {span_words(row, 'h')}")


def _rows(out: Any, title: str, frame: pd.DataFrame, place: str) -> None:
    if not len(frame):
        return
    _head(out, title)
    for _, row in frame.iterrows():
        out.print(Text(f"  {PLACES[row[place]]}, {row['what']}: {value_words(row)}"))


def _draining(out: Any, outlook: Outlook) -> None:
    frame = outlook.tables.draining
    if not len(frame):
        return
    _head(out, f"Propylene glycol for what stays behind when drained, for {both_units(outlook.conditions.coldest_c)}")
    for purpose, rows in frame.groupby("purpose", sort=False):
        out.print(Text(f"  {purpose}: takes {figure(rows['strength'].iloc[0])} % glycol in all that stays behind"))
        for _, row in rows.iterrows():
            out.print(Text(f"      {row['fluid']}: {_amount(row)}"))


def _amount(row: pd.Series) -> str:
    """Give litres of a fluid, or which strength of it is too weak however much is taken."""
    low, high = (figure(row[name]) for name in ("share_low", "share_high"))
    spread = low if low == high else f"{low} to {high}"
    if np.isinf(row["low"]):
        return f"too weak at {spread} %, however much is taken"
    if row["too_weak"]:
        return (
            f"too weak at the usual {figure(row['share'])} %, however much is taken; at {high} % "
            f"{figure(row['low'])} l or more"
        )  # fmt: skip
    return span_words(row, "l")


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
                f"{span_words(warm, 'h')}, allowed {allowed}: {would}"
            )  # fmt: skip
        )
        mean = {"value": row["mean_u"], "low": row["mean_u_low"], "high": row["mean_u_high"]}
        out.print(
            Text(
                f"      mean U {span_words(mean, 'W/(m²·K)')}, limit {figure(row['mean_u_limit'])} (from memory)",
                style="dim",
            )
        )


def _questions(out: Any, outlook: Outlook) -> None:
    asked = outlook.questions[outlook.questions["instead_of"] == ""]
    if not len(asked):
        return
    _head(out, "What to ask first, and what the answer does on average")
    names = outlook.tables.figures.drop_duplicates("figure").set_index("figure")["meaning"]
    for _, row in asked.head(ASKED).iterrows():
        others = outlook.questions[outlook.questions["instead_of"] == row["field"]]["field"]
        instead = f", or {' or '.join(others)}" if len(others) else ""
        out.print(Text(f"  {row['field']}{instead}: {_gain(row)} “{names[row['narrows_what']]}”"))
        out.print(Text(f"      {row['question']}", style="dim"))


def _gain(row: pd.Series) -> str:
    if not row["makes_known"]:
        return f"takes {row['narrows']:.0%} off the range of"
    return "makes known" if row["narrows"] >= 1 else "helps to make known"


def _cautions(out: Any, outlook: Outlook) -> None:
    _head(out, "Cautions")
    for text in outlook.cautions:
        out.print(Text(f"  {text}", style="dim"))


def _head(out: Any, text: str) -> None:
    out.print()
    out.print(Text(text, style="bold"))
