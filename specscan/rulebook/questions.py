"""What to ask about a field that nothing tells of."""

from __future__ import annotations

from specscan.rulebook.book import Rulebook


def question(name: str, book: Rulebook) -> str:
    """Give what to ask the maker about a field, where to look and what to measure, in one text."""
    ask = book.fields[name].ask
    parts = [
        f"Ask the maker: {ask.maker}" if ask.maker else "",
        f"Look: {ask.look}" if ask.look else "",
        f"Measure: {ask.measure}" if ask.measure else "",
    ]
    said = [part if part.endswith(("?", ".")) else f"{part}." for part in parts if part]
    return " ".join(said) or f"Ask the maker: {book.fields[name].meaning}?"
