"""The things that the heading or the line above a statement speaks of."""

from __future__ import annotations

from collections.abc import Sequence


class Context:
    """Things by name, in order, and whether anybody has asked for them.

    A statement read without asking means the same under every heading, so it need not be read again under another one.
    """

    __slots__ = ("_things", "asked")

    def __init__(self, things: Sequence[str] = ()):
        self._things = things
        self.asked = False

    @property
    def things(self) -> Sequence[str]:
        """Give the things."""
        self.asked = True
        return self._things
