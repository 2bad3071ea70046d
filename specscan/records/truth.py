"""Three-valued truth: yes, no, unknown.

Kleene's strong logic of indeterminacy: ``unknown and no`` is no, ``unknown or yes`` is yes,
everything else that meets unknown stays unknown. Source: S. C. Kleene, *Introduction to
Metamathematics* (1952), section 64; SQL uses the same tables (ISO/IEC 9075).
"""

from __future__ import annotations

from enum import Enum


class Truth(Enum):
    """A verdict that can be unknown. There is no conversion to ``bool``: ask ``is Truth.YES``."""

    YES = "yes"
    NO = "no"
    UNKNOWN = "unknown"

    @classmethod
    def of(cls, value: bool | None) -> Truth:
        """Give the truth of an SQL-like boolean, where ``None`` is unknown."""
        if value is None:
            return cls.UNKNOWN
        return cls.YES if value else cls.NO

    def __and__(self, other: Truth) -> Truth:
        if Truth.NO in (self, other):
            return Truth.NO
        return Truth.YES if self is other is Truth.YES else Truth.UNKNOWN

    def __or__(self, other: Truth) -> Truth:
        if Truth.YES in (self, other):
            return Truth.YES
        return Truth.NO if self is other is Truth.NO else Truth.UNKNOWN

    def __invert__(self) -> Truth:
        return {Truth.YES: Truth.NO, Truth.NO: Truth.YES, Truth.UNKNOWN: Truth.UNKNOWN}[self]

    def __bool__(self) -> bool:
        raise TypeError("a Truth has three values: compare it with `is Truth.YES` or `is Truth.NO`")
