"""What people bring back: answers about a van, and corrections of what was read in a document."""

from __future__ import annotations

from dataclasses import dataclass

from specscan.records.facts import Equipment, Fact


@dataclass(frozen=True, slots=True)
class Observation:
    """One answer to one field of one van, or, where ``doc`` names a document, what that document really says.

    ``fact`` holds the value, ``None`` where a document was found not to state the field at all; ``answer`` and
    ``unit`` are as written. ``when`` is an ISO date, ``how`` the name of a way in ``rules/observing.yaml``, ``trust``
    its place among them, 0 the most trusted, and ``source`` all three in words. ``van`` is the van's name when the
    answer was given; ``evidence`` a photograph or document; ``line`` the line of the file in which the answer stands.
    """

    van_id: str
    van: str
    field: str
    equipment: Equipment
    fact: Fact | None
    answer: str
    unit: str
    who: str
    when: str
    how: str
    source: str
    trust: int = 0
    evidence: str = ""
    note: str = ""
    doc: str = ""
    page: int = 0
    availability: str = ""
    line: int = 0

    @property
    def said(self) -> str:
        """Give the answer as written, with its unit."""
        return " ".join(part for part in (self.answer, self.unit) if part)
