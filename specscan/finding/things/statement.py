"""A statement of a document, parsed: what all that reads it has before it."""

from __future__ import annotations

from dataclasses import dataclass, field

from specscan.finding.things.context import Context
from specscan.finding.things.found import How
from specscan.finding.things.groups import Sentence
from specscan.finding.things.items import Item, Parsed


@dataclass(slots=True)
class Statement:
    """A label and what stands with it, or a free piece of text, parsed as one text.

    ``split`` is where the label ends (0 without one); ``context`` the things that the heading or the
    line above speaks of; ``answer`` tells that the body says only yes, no, none or available.
    """

    parsed: Parsed
    split: int
    how: How
    context: Context = field(default_factory=Context)
    note: Parsed | None = None
    plain: tuple[Context, Sentence] | None = None  # its groups with the context that they were formed in


def basis_names(item: Item) -> list[str]:
    """Give whether words say input or output, as a cue or as the name of an aspect."""
    return [name for name in (*item.names("cue"), *item.names("aspect")) if name in ("input", "output")]


def basis_items(items: list[Item]) -> list[Item]:
    """Give the items that say input or output; "not input" says neither."""
    denied = {item.end + 1 for item in items if item.has("cue", "negation", "not_for")}
    return [item for item in items if basis_names(item) and item.start not in denied]
