"""Claims of documents: the words, what they imply, and what bears them out or contradicts them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from specscan.records.facts import Availability
from specscan.records.text import Box
from specscan.records.truth import Truth

ClaimVerdict = Literal["supported", "only_with_options", "contradicted", "not_supported"]
VERDICTS: tuple[ClaimVerdict, ...] = ("contradicted", "only_with_options", "not_supported", "supported")
VERDICT_WORDS: dict[ClaimVerdict, str] = {
    "contradicted": "contradicted", "only_with_options": "only with options",
    "not_supported": "not borne out", "supported": "borne out",
}  # fmt: skip


@dataclass(frozen=True, slots=True)
class ClaimPart:
    """One thing that a claim implies, and what is known of it.

    ``delivered`` and ``optioned`` say whether it holds for the van as delivered and with the printed options fitted,
    by all that is stated but the claim itself. ``because`` tells the evidence in words, ``fact_ids`` the statements.
    """

    means: str
    condition: str
    columns: tuple[str, ...]
    delivered: Truth
    optioned: Truth
    verdict: ClaimVerdict
    because: str
    fact_ids: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Claim:
    """A claim of one document about one van, with its verdict.

    ``kind`` is ``season``, ``temperature``, ``grade``, a topic or a kind of ``rules/claims.yaml``; ``title`` says it in
    words. ``fact_ids`` are the facts that the claim itself makes. ``note`` is what has to be said beside it.
    """

    claim_id: str
    van_id: str
    doc_id: str
    kind: str
    title: str
    said: str
    printed: str
    how: str
    availability: Availability
    page: int
    box: Box | None
    verdict: ClaimVerdict
    because: str
    note: str
    fact_ids: tuple[str, ...]
    parts: tuple[ClaimPart, ...]
