"""The comparison page: one HTML file that needs no network and no server."""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import UTC, datetime
from importlib import resources
from pathlib import Path
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined
from markupsafe import Markup

from specscan import __version__
from specscan.dataset.reader import Reader
from specscan.judging.rulesets import RuleSet, load_rulesets
from specscan.records.errors import SpecscanError
from specscan.reports import page_words
from specscan.reports.page_data import EQUIPMENTS, PageData, gather
from specscan.reports.page_pictures import Pictures, cut_pictures
from specscan.reports.page_rules import ReportRules, load_report_rules
from specscan.reports.page_winter import WinterShown, show_winter
from specscan.reports.winter import winter
from specscan.rulebook.book import Rulebook, load_rulebook
from specscan.rulebook.models import ValueSpec

LONGEST_QUOTE = 400
CONTROLS = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\ufffe\uffff]")


@dataclass(frozen=True, slots=True)
class Page:
    """A page that was made, and what is in it."""

    html: str
    vans: int
    pictures: int
    without_picture: int


@dataclass(frozen=True, slots=True)
class Knowledge:
    """What the rules at hand say: rule sets by name, assumptions, and whether the dataset was made with these rules."""

    rulesets: dict[str, RuleSet]
    values: dict[str, ValueSpec]
    same: bool

    @property
    def cautions(self) -> list[str]:
        """Give the cautions of all rule sets, each once."""
        return list(dict.fromkeys(text for one in self.rulesets.values() for text in one.cautions))


@dataclass(frozen=True, slots=True)
class Report:
    """All that a report says, in whatever form it is written; ``ruleset`` is shown first."""

    data: PageData
    know: Knowledge
    ruleset: str
    rules: ReportRules


def gather_report(db: Path, rules: Path, ruleset: str, names: Sequence[str] = ()) -> Report:
    """Gather a report on a dataset; arguments and errors as for ``make_page``."""
    book = load_rulebook(rules)
    report_rules = load_report_rules(rules)
    with Reader(db) as reader:
        ruleset = reader.ruleset(ruleset)
        data = gather(reader, names, report_rules, rules)
    knowledge = _knowledge(book, data)
    if knowledge.same and data.vans:
        data.winter = _winter(db, rules, data)
    return Report(data, knowledge, ruleset, report_rules)


def make_page(db: Path, rules: Path, ruleset: str, names: Sequence[str] = ()) -> Page:
    """Make the comparison page of a dataset.

    ``rules`` is the folder of rules; where they are not those that the dataset was made with, the page says so and
    leaves out what it cannot vouch for. ``ruleset`` is shown first; ``names`` are the vans, none for all.

    Raises:
        NotFoundError: no such van or rule set.
        DatasetError: the dataset cannot be opened.
        RuleError: the rules are wrong.
    """
    report = gather_report(db, rules, ruleset, names)
    shown = report.rules.page
    pictures = cut_pictures(report.data.spots, shown.pictures)
    html = _filled(report, pictures)
    too_much = len(html.encode()) - shown.most_mb * 1e6
    if too_much > 0:
        pictures = pictures.within(pictures.size - too_much)
        html = _filled(report, pictures)
    return Page(html, len(report.data.vans), len(pictures.cuts), len(pictures.why_not))


def _winter(db: Path, rules: Path, data: PageData) -> WinterShown:
    """Give the winter of the vans under the conditions of the last scan."""
    vans = [van.van_id for van in data.vans]
    outlooks = {equipment: winter(db, rules, vans, equipment=equipment) for equipment in EQUIPMENTS}
    return show_winter(outlooks, data.wording)


def _filled(report: Report, pictures: Pictures) -> str:
    _hang(report.data, pictures)
    return render(
        "page.html.j2", "page", data=report.data, strips=pictures.strips, know=report.know, first=report.ruleset,
        equipments=page_words.EQUIPMENTS,
    )  # fmt: skip


def _hang(data: PageData, pictures: Pictures) -> None:
    """Put each picture, or why there is none, to its statement."""
    for van in data.vans:
        for value in van.values:
            for source in value.sources:
                source.cut = pictures.cuts.get(source.fact_id)
                if source.cut is None and source.fact_id in pictures.why_not:
                    source.why_no_picture = pictures.why_not[source.fact_id]
        for claim in van.claims:
            claim.cut = pictures.cuts.get(claim.claim_id)
            claim.why_no_picture = pictures.why_not.get(claim.claim_id, claim.why_no_picture)


def _knowledge(book: Rulebook, data: PageData) -> Knowledge:
    same = book.digest == data.run["rules_sha256"]
    loaded = {one.name: one for one in load_rulesets(book.folder / "winter", book)}
    used = {row["ruleset"] for row in data.rulesets}
    return Knowledge({name: one for name, one in loaded.items() if name in used}, book.values if same else {}, same)


def render(template: str, name: str, **content: Any) -> str:
    """Fill a template with content, every text escaped; ``name``.css and, where there is one, ``name``.js go inside.

    The page's content policy allows exactly that style and script, pictures inside the page, and nothing else.
    """
    folder = resources.files("specscan.reports") / "templates"
    style = (folder / f"{name}.css").read_text(encoding="utf-8")
    code = folder / f"{name}.js"
    script = code.read_text(encoding="utf-8") if code.is_file() else ""
    policy = f"default-src 'none'; img-src data:; style-src '{_digest(style)}'; base-uri 'none'; form-action 'none'"
    if script:
        policy += f"; script-src '{_digest(script)}'"
    return _environment().get_template(template).render(
        style=Markup(style), script=Markup(script), policy=policy, version=__version__,
        today=datetime.now(UTC).date().isoformat(), words=page_words, **content,
    )  # fmt: skip


def _digest(text: str) -> str:
    return "sha256-" + base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()


def _environment() -> Environment:
    environment = Environment(
        loader=PackageLoader("specscan.reports", "templates"), autoescape=True, undefined=StrictUndefined,
        trim_blocks=True, lstrip_blocks=True,
    )  # fmt: skip
    environment.filters.update(
        quote=_quote, figure=page_words.figure, points=page_words.points, anchor=_anchor, sentence=_sentence
    )
    return environment


def _quote(text: str) -> str:
    """Give printed words for showing: control signs taken out, white space as one blank, very long ones cut."""
    flat = " ".join(CONTROLS.sub("", text).split())
    return flat if len(flat) <= LONGEST_QUOTE else flat[: LONGEST_QUOTE - 1] + "…"


def _sentence(text: str) -> str:
    """Give a text that ends as a sentence does."""
    return text if not text or text.endswith((".", "?", "!", "…")) else f"{text}."


def _anchor(text: str) -> str:
    """Give a text as part of an identifier in the page."""
    return re.sub(r"[^A-Za-z0-9_-]+", "-", text)


def write_text(out: Path, text: str) -> None:
    """Write a file so that no half of it is ever seen under its name.

    Raises:
        SpecscanError: it cannot be written.
    """
    part = out.with_name(f".{out.name}.part")
    try:
        part.write_text(text, encoding="utf-8", newline="")
        part.replace(out)
    except OSError as error:
        part.unlink(missing_ok=True)
        raise SpecscanError(f"{out}: cannot be written ({error.strerror})") from error
