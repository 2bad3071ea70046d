"""Files for people to read, print and fill in."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from specscan.api.places import rules_of
from specscan.records.defaults import DEFAULT_RULESET

if TYPE_CHECKING:
    from specscan.reports.page import Page
    from specscan.reports.sheet import Sheet


def report(
    db: str | Path,
    out: str | Path,
    *,
    vans: Sequence[str] = (),
    ruleset: str = DEFAULT_RULESET,
    rules: str | Path | None = None,
) -> Page:
    """Write the comparison page of a dataset to an HTML file; give the page.

    ``vans`` are the vans to show (all by default), ``ruleset`` the one shown first. See
    ``specscan.reports.page.make_page`` for errors.
    """
    from specscan.reports.page import make_page, write_text

    page = make_page(Path(db), rules_of(db, rules), ruleset, vans)
    write_text(Path(out), page.html)
    return page


def written_report(
    db: str | Path,
    out: str | Path,
    form: str = "markdown",
    *,
    vans: Sequence[str] = (),
    ruleset: str = DEFAULT_RULESET,
    rules: str | Path | None = None,
) -> str:
    """Write what the comparison page says as ``markdown`` or ``json`` to a file; give the text.

    Other arguments and errors as for ``report``.
    """
    from specscan.reports.page import write_text
    from specscan.reports.written import write_json, write_markdown

    if form not in ("markdown", "json"):
        raise ValueError(f"unknown form {form!r}: use markdown or json")
    write = write_json if form == "json" else write_markdown
    text = write(Path(db), rules_of(db, rules), ruleset, vans)
    write_text(Path(out), text)
    return text


def sheet(
    db: str | Path,
    out: str | Path,
    *,
    csv: str | Path | None = None,
    vans: Sequence[str] = (),
    ruleset: str = DEFAULT_RULESET,
    everything: bool = False,
    rules: str | Path | None = None,
) -> Sheet:
    """Write the questions that are still open as a page to print, and with ``csv`` as a file to fill in; give both.

    See ``specscan.reports.sheet.make_sheet`` for the other arguments and errors.
    """
    from specscan.reports.page import write_text
    from specscan.reports.sheet import make_sheet

    folder = rules_of(db, rules)
    made = make_sheet(Path(db), folder, ruleset, vans, everything)
    write_text(Path(out), made.html)
    if csv is not None:
        write_text(Path(csv), made.csv)
    return made
