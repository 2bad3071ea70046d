"""Why a value is not known: one of a short list of reasons, from what was set aside and what could not be read."""

from __future__ import annotations

from collections.abc import Sequence

from specscan.finding.doubts import UNSURE_FIGURE
from specscan.records.documents import DocumentRecord
from specscan.records.facts import Fact, Reason, Settled


def missing(
    van_id: str, name: str, optional: bool, set_aside: Sequence[Fact], documents: Sequence[DocumentRecord], unit: str
) -> Settled:
    """Give the row of a field that nobody stated, with the reason.

    ``optional`` says that it is printed as an option only; ``set_aside`` holds the rejected candidates.
    """
    reason, note = _why(optional, set_aside, documents)
    return Settled(van_id, name, "standard", "missing", unit=unit, reason=reason, note=note)


def _why(optional: bool, set_aside: Sequence[Fact], documents: Sequence[DocumentRecord]) -> tuple[Reason, str]:
    if optional:
        return "only_optional", "printed only as an option"
    for reason in ("implausible", "ambiguous"):
        for fact in set_aside:
            if fact.rejected.startswith(reason):
                return reason, f"“{_short(fact.printed)}”: {fact.rejected}"  # type: ignore[return-value]
    for fact in set_aside:
        if fact.rejected == UNSURE_FIGURE:
            return "unreadable_page", f"“{_short(fact.printed)}”: {fact.rejected}"
    unread = [document for document in documents if document.unread]
    if unread:
        pages = "; ".join(f"{d.name}: {'page' if len(d.unread) == 1 else 'pages'} {_listed(d.unread)}" for d in unread)
        return "unreadable_page", f"it may stand on what could not be read ({pages})"
    return "not_stated", "no document states it"


def _short(text: str, length: int = 90) -> str:
    flat = " ".join(text.split())
    return flat if len(flat) <= length else flat[: length - 1] + "…"


def _listed(numbers: Sequence[int]) -> str:
    return ", ".join(str(number) for number in numbers)
