"""How a statement is cited: maker, document, page and words."""

from __future__ import annotations

from typing import Any

from specscan.records.shown import on_page

LONGEST = 240


def cite(source: dict[str, Any], maker: str | None) -> str:
    """Give the citation of a statement: ``Tolland, made.pdf, page 1: “Fresh water tank: 100 litres”``.

    ``source`` has ``document``, ``page`` and ``printed``, and may have ``availability``; ``maker`` is whose van it is.
    """
    whose = f"{maker}, " if maker else ""
    option = " (an option)" if source.get("availability") == "optional" else ""
    return f"{whose}{on_page(source['document'], source.get('page'))}: “{short_words(source['printed'] or '')}”{option}"


def short_words(text: str, longest: int = LONGEST) -> str:
    """Give printed words on one line, very long ones cut off with an ellipsis."""
    flat = " ".join(text.split())
    return flat if len(flat) <= longest else flat[: longest - 1] + "…"
