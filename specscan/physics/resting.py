"""Parts of a result that rest on few fields, worked out once for all cases that are alike in these.

Weighing questions tries each van with hundreds of answers. Most of them change nothing in a part: a propane tank does
not change the loss of heat.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property
from typing import Protocol, TypeVar, cast

import numpy as np
from numpy.typing import NDArray

from specscan.physics.ranges import Range

Part = TypeVar("Part")


class Reckoned(Protocol):
    """Cases for which something is worked out."""

    def alike(self, fields: tuple[str, ...]) -> tuple[Reckoned, NDArray[np.int64]] | None:
        """Give fewer cases, and which of these each is like, in some fields; ``None`` where none are known to be."""


Owner = TypeVar("Owner", bound=Reckoned)


def resting_on(*fields: str) -> Callable[[Callable[[Owner], Part]], cached_property[Part]]:
    """Let a part of a result be worked out when it is asked for, once for all cases that are alike in ``fields``.

    These must be all fields that can change it: of others it sees nothing where cases are alike.
    """

    def made(work: Callable[[Owner], Part]) -> cached_property[Part]:
        def give(owner: Owner) -> Part:
            found = owner.alike(fields)
            if found is None:
                return work(owner)
            few, which = found
            return taken(getattr(few, work.__name__), which)

        give.__doc__ = work.__doc__
        return cached_property(give)

    return made


def taken(part: Part, which: NDArray[np.int64]) -> Part:
    """Give a part of fewer cases for all: ``which`` of the fewer each is. What is the same for all is left so."""
    return cast(Part, _taken(part, which))


def _taken(part: object, which: NDArray[np.int64]) -> object:
    if isinstance(part, dict):
        return {name: _taken(one, which) for name, one in part.items()}
    if isinstance(part, Range):
        return Range(*(one[which] if one.ndim else one for one in (part.low, part.typical, part.high)))
    assert isinstance(part, np.ndarray)
    return part[which]
