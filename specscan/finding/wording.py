"""The wording of a statement, and what it says wherever it stands."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import NamedTuple

from specscan.finding.language.units import Unit
from specscan.finding.naming.van_mentions import Named
from specscan.finding.sayings import Said
from specscan.finding.things.found import Found, How
from specscan.finding.things.items import Parsed


class Wording(NamedTuple):
    """All that the meaning of a statement rests on: two of the same wording say the same.

    ``named`` are the places that name vans, ``context`` the things of the heading or the line above, ``sections`` those
    of the heading where the statement ``leads`` what stands under it, ``note`` the part of a footnote that belongs to
    it, with its places; ``headed``: the name of its van stands before it.
    """

    label: str
    body: str
    how: How
    hint: Unit | None
    named: Named
    context: tuple[str, ...]
    sections: tuple[str, ...]
    note: tuple[str, Named] | None
    not_fitted: bool
    leads: bool
    headed: bool = False


@dataclass(slots=True)
class ReadStatement:
    """What a statement says, before vans and availability. It is shared: to be read, not changed."""

    parsed: Parsed
    split: int
    found: list[Found]
    things: list[str]
    said: dict[bool, list[Said]] = field(default_factory=dict)
