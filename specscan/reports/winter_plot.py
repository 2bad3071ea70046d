"""Curves of winter as a picture: days of heat by outside temperature, and the inside after the heating stops."""

from __future__ import annotations

import textwrap
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
import pandas as pd

from specscan.records.errors import SpecscanError
from specscan.reports.winter import Outlook

if TYPE_CHECKING:
    from matplotlib.axes import Axes

MOST_VANS = 8
ENDINGS = (".png", ".svg")
# Colours that people with any kind of colour vision can tell apart. Source: M. Okabe and K. Ito, Color Universal Design
# (2008), black first; with dashes, so that they also differ in print.
COLOURS = ("#000000", "#D55E00", "#0072B2", "#009E73", "#CC79A7", "#56B4E9", "#E69F00", "#7F7F7F")
DASHES: tuple[Any, ...] = ("-", "--", "-.", ":", (0, (6, 1)), (0, (1, 1)), (0, (4, 1, 1, 1)), (0, (8, 3)))
FAINT = 0.4
"""How strongly the days of a heater are drawn that runs without a pause and does not hold what is wanted."""
NOTICEABLE = 0.5
"""How far (K) the inside may fall below what is wanted before a curve is drawn faintly."""
BOX: dict[str, Any] = {"facecolor": "white", "alpha": 0.7, "edgecolor": "none", "pad": 1}
BANDS_UP_TO = 3
"""With more vans the ranges would cover one another, and only typical values are drawn."""


def draw(outlook: Outlook, out: Path) -> Path:
    """Write the picture; give its path.

    Raises:
        SpecscanError: more than eight vans, or none with a curve; the ending is neither ``.png`` nor ``.svg``; the
            ``plot`` extra is not installed; or the file cannot be written.
    """
    if out.suffix.casefold() not in ENDINGS:
        raise SpecscanError(f"{out}: a picture ends in {' or '.join(ENDINGS)}")
    if len(outlook.vans) > MOST_VANS:
        raise SpecscanError(f"{len(outlook.vans)} vans are too many for one picture; name at most {MOST_VANS}")
    try:
        from matplotlib.backends.backend_agg import FigureCanvasAgg
        from matplotlib.figure import Figure
    except ImportError as error:
        raise SpecscanError("drawing needs matplotlib: pip install 'specscan[plot]'") from error
    figure = Figure(figsize=(11, 5.6), layout="constrained")
    FigureCanvasAgg(figure)
    days, inside = figure.subplots(1, 2)
    drawn = _days(days, outlook) + _inside(inside, outlook)
    if not drawn:
        raise SpecscanError("nothing to draw: for no van are size or walls, heater and fuel known")
    figure.suptitle(_title(outlook), fontsize=9)
    named = {
        text: handle for one in (days, inside) for handle, text in zip(*one.get_legend_handles_labels(), strict=True)
    }
    order = [title for title in outlook.vans["title"] if title in named]
    handles, labels = [named[title] for title in order], order
    figure.legend(handles, labels, loc="outside lower center", ncols=2, fontsize=9, frameon=False)
    try:
        figure.savefig(out, dpi=140)
    except OSError as error:
        raise SpecscanError(f"{out}: cannot be written ({error.strerror})") from error
    return out


def _days(axes: Axes, outlook: Outlook) -> int:
    curve = outlook.tables.curve.rename(
        columns={"heat_days": "value", "heat_days_low": "low", "heat_days_high": "high", "outside_c": "x"}
    )
    curve["faint"] = curve["held_inside_c"] < outlook.conditions.inside_c - NOTICEABLE
    drawn = _lines(axes, outlook, curve)
    axes.set_xlim(curve["x"].min(), curve["x"].max())
    axes.set_title("Days of heat from the fuel on board", fontsize=10)
    axes.set_xlabel("outside temperature, °C")
    axes.set_ylabel("days")
    if drawn:
        axes.set_yscale("log")
        axes.yaxis.set_major_formatter("{x:g}")
        axes.yaxis.set_minor_formatter("{x:g}")
        axes.tick_params(axis="y", which="minor", labelsize=7)
        _mark(axes, outlook.conditions.nights, f"{outlook.conditions.nights} nights")
        if curve.loc[np.isfinite(curve["value"]), "faint"].any():
            _note(axes, "faint: full output does not hold the wanted temperature", 0.97)
    else:
        axes.set_yticks([])
    _fahrenheit(axes)
    return drawn


def _inside(axes: Axes, outlook: Outlook) -> int:
    drawn = _lines(axes, outlook, outlook.tables.cooling.rename(columns={"hours": "x"}))
    axes.set_title(f"Inside after the heating stops, at {outlook.conditions.outside_c:g} °C outside", fontsize=10)
    axes.set_xlabel("hours")
    axes.set_ylabel("°C inside")
    axes.set_xlim(0, 24)
    if drawn:
        _mark(axes, 0.0, "water freezes")
    other = axes.secondary_yaxis("right", functions=(_to_fahrenheit, _to_celsius))
    other.set_ylabel("°F inside")
    return drawn


def _lines(axes: Axes, outlook: Outlook, frame: pd.DataFrame) -> int:
    """Draw a line for each van that has values, and name the others; give how many were drawn."""
    drawn, without = 0, []
    for number, (_, van) in enumerate(outlook.vans.iterrows()):
        own = frame[(frame["van_id"] == van["van_id"]) & np.isfinite(frame["value"])]
        if not len(own):
            without.append(van["title"])
            continue
        style: dict[str, Any] = {"color": COLOURS[number], "linestyle": DASHES[number]}
        faint = own["faint"] if "faint" in own else pd.Series(False, index=own.index)
        axes.plot(own["x"], own["value"].where(~faint), label=van["title"], **style)
        axes.plot(own["x"], own["value"].where(faint), alpha=FAINT, **style)
        if len(outlook.vans) <= BANDS_UP_TO:
            axes.fill_between(own["x"], own["low"], own["high"], color=COLOURS[number], alpha=0.12, linewidth=0)
        drawn += 1
    axes.grid(alpha=0.25)
    if without:
        _note(axes, "no curve, for something is not known or no fuel is burned:\n" + "\n".join(without), 0.03)
    return drawn


def _mark(axes: Axes, height: float, text: str) -> None:
    axes.axhline(height, color="#999999", linewidth=0.8)
    axes.annotate(text, (0.99, height), xycoords=("axes fraction", "data"), ha="right", va="bottom", fontsize=8,
                  color="#555555", bbox=BOX)  # fmt: skip


def _note(axes: Axes, text: str, height: float) -> None:
    axes.text(0.02, height, text, transform=axes.transAxes, ha="left", va="top" if height > 0.5 else "bottom",
              fontsize=8, color="#555555", bbox=BOX)  # fmt: skip


def _fahrenheit(axes: Axes) -> None:
    other = axes.secondary_xaxis("top", functions=(_to_fahrenheit, _to_celsius))
    other.tick_params(labelsize=8)
    other.set_xlabel("°F", fontsize=8)


def _to_fahrenheit(celsius: Any) -> Any:
    return np.asarray(celsius) * 1.8 + 32


def _to_celsius(fahrenheit: Any) -> Any:
    return (np.asarray(fahrenheit) - 32) / 1.8


def _title(outlook: Outlook) -> str:
    one = outlook.conditions
    few = len(outlook.vans) <= BANDS_UP_TO
    text = (
        f"{one.inside_c:g} °C inside, wind {one.wind_m_s:g} m/s, {one.people} "
        f"{'person' if one.people == 1 else 'people'}, propane {one.propane_share:.0%} and vehicle fuel "
        f"{one.vehicle_fuel_share:.0%} full. "
        f"{'Lines: typical; shaded: the range over what is open or assumed. ' if few else ''}"
        "Estimates; follow makers' manuals and local codes."
    )
    return "\n".join(textwrap.wrap(text, 150))
