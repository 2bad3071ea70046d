"""What finding and settling give: vans, facts, settled values, gaps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from specscan.records.text import Box

Availability = Literal["standard", "optional", "not_available", "unstated"]
Equipment = Literal["standard", "optioned"]
SettledStatus = Literal["stated", "observed", "conflicting", "derived", "missing"]
Reason = Literal["not_stated", "only_optional", "conflicting", "unreadable_page", "implausible", "ambiguous"]


@dataclass(frozen=True, slots=True)
class Fact:
    """One statement about one field of one van, as one document makes it.

    A number is ``num`` with its interval ``low`` to ``high`` where a range is printed. ``how`` says in
    which form the statement stands (table_cell, label_value, list_item, mark_row, footnote, prose,
    heading, identity). ``rejected`` is empty for a fact that counts. ``grounds`` names why it may be misread, by
    the keys of ``rules/confidence.yaml``; ``confidence`` follows from them and the form when the document's facts
    are settled, and is 1 from the start for what people state themselves.
    """

    field: str
    model: str
    num: float | None = None
    low: float | None = None
    high: float | None = None
    text: str | None = None
    flag: bool | None = None
    unit: str = ""
    printed: str = ""
    printed_unit: str = ""
    basis: str = ""
    availability: Availability = "unstated"
    option: str = ""
    page: int = 0
    box: Box | None = None
    found_by: str = ""
    confidence: float = 0.0
    how: str = ""
    weak: bool = False
    passage: int = 0
    rejected: str = ""
    grounds: tuple[str, ...] = ()

    @property
    def value(self) -> float | str | bool | None:
        """Give the value whatever its type."""
        if self.num is not None:
            return self.num
        return self.text if self.text is not None else self.flag


@dataclass(frozen=True, slots=True)
class Saying:
    """Words of a document that say what no field holds: a claim in running text, evidence in a table or list.

    ``kind`` is a kind of ``rules/claims.yaml``, ``said`` the words that make it, ``printed`` the statement around them,
    ``figure`` the number of days where one is claimed. ``denied``: a table or list says that it is not so.
    """

    kind: str
    model: str
    said: str
    printed: str
    how: str
    availability: Availability
    denied: bool = False
    figure: float | None = None
    page: int = 0
    box: Box | None = None
    passage: int = 0


@dataclass(frozen=True, slots=True)
class VanName:
    """A van as one document names it."""

    maker: str
    model: str
    year: int | None


@dataclass(frozen=True, slots=True)
class DocumentFacts:
    """All that was found in one document."""

    vans: tuple[VanName, ...]
    facts: tuple[Fact, ...]
    language: str
    message: str = ""
    sayings: tuple[Saying, ...] = ()


@dataclass(frozen=True, slots=True)
class Settled:
    """One value of one van and field, for the van as delivered or with its options fitted."""

    van_id: str
    field: str
    equipment: Equipment
    status: SettledStatus
    num: float | None = None
    low: float | None = None
    high: float | None = None
    text: str | None = None
    flag: bool | None = None
    unit: str = ""
    basis: str = ""
    availability: Availability | None = None
    fact_ids: tuple[str, ...] = ()
    reason: Reason | None = None
    note: str = ""
