"""Texts from outside put into Markdown as words and nothing else."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from jinja2 import Environment, PackageLoader, StrictUndefined

from specscan import __version__
from specscan.reports import page_words
from specscan.reports.citations import short_words

SIGNS = re.compile(r"([\\`*_\[\]<>|~#&$])")
CONTROLS = re.compile(r"[\x00-\x08\x0b-\x1f\x7f-\x9f\ufffe\uffff]")
LIST_SIGN = re.compile(r"^(\d+)([.)])(?=\s|$)|^([-+=])(?=[-+=\s]|$)")


def md(text: object) -> str:
    """Give a text for one line of Markdown, in which nothing is markup: signs escaped, white space as one blank."""
    flat = SIGNS.sub(r"\\\1", " ".join(CONTROLS.sub("", str(text)).split()))
    return LIST_SIGN.sub(lambda sign: f"{sign[1]}\\{sign[2]}" if sign[1] else f"\\{sign[3]}", flat)


def fill(template: str, **content: Any) -> str:
    """Fill a Markdown template; whatever comes from outside has to go through its filter ``md``."""
    environment = Environment(
        loader=PackageLoader("specscan.reports", "templates"), autoescape=False, undefined=StrictUndefined,
        trim_blocks=True, lstrip_blocks=True, keep_trailing_newline=True,
    )  # fmt: skip
    environment.filters.update(md=md, short=short_words, points=page_words.points)
    return environment.get_template(template).render(words=page_words, version=__version__, **content)


def table_lines(head: Sequence[str], rows: Sequence[Sequence[str]]) -> str:
    """Give a table of cells that are Markdown already."""
    lines = [head, ["---"] * len(head), *rows]
    return "".join(f"| {' | '.join(line)} |\n" for line in lines)
