"""What brochures claim, on the comparison page: the words, the verdict, and the evidence of each part."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass
from dataclasses import field as made
from typing import Any

from specscan.dataset.reader import Reader
from specscan.records.claims import VERDICT_WORDS
from specscan.reports.claims import claims_of
from specscan.reports.page_pictures import Cut, Spot
from specscan.reports.page_words import Wording


@dataclass(slots=True)
class ClaimPartShown:
    """One thing that a claim implies: what, the verdict, why, and the statements of its evidence."""

    means: str
    verdict: str
    because: str
    sources: list[dict[str, Any]]


@dataclass(slots=True)
class ClaimShown:
    """A claim with its verdict, parts, and the picture of its words or why there is none."""

    claim_id: str
    title: str
    printed: str
    document: str
    page: int | None
    option: bool
    verdict: str
    verdict_words: str
    note: str
    parts: list[ClaimPartShown]
    cut: Cut | None = None
    why_no_picture: str = ""


@dataclass(slots=True)
class Claims:
    """The claims of all vans, and where those in PDFs stand."""

    by_van: dict[str, list[ClaimShown]] = made(default_factory=lambda: defaultdict(list))
    spots: list[Spot] = made(default_factory=list)


def show_claims(reader: Reader, wording: Wording) -> Claims:
    """Give the claims of a dataset, the doubtful ones of each van first."""
    found = Claims()
    places = {row["claim_id"]: row for row in reader.rows(
        "SELECT c.claim_id, c.doc_id, c.page, c.x0, c.top, c.x1, c.bottom, d.path, d.sha256, d.kind "
        "FROM claims AS c JOIN documents AS d USING (doc_id)"
    )}  # fmt: skip
    for row in claims_of(reader):
        place = places[row["claim_id"]]
        found.by_van[row["van_id"]].append(_claim(row, place, wording))
        if place["kind"] == "pdf" and place["x0"] is not None and place["page"]:
            found.spots.append(
                Spot(
                    row["claim_id"], place["doc_id"], place["path"], place["sha256"], place["page"], place["x0"],
                    place["top"], place["x1"], place["bottom"], 1,
                )
            )  # fmt: skip
    return found


def _claim(row: Mapping[str, Any], place: Mapping[str, Any], wording: Wording) -> ClaimShown:
    why = "the document has no pages to draw" if place["kind"] != "pdf" else "the place on the page is not known"
    parts = [
        ClaimPartShown(
            wording.plain(part["means"]), VERDICT_WORDS[part["verdict"]], wording.plain(part["because"] or ""),
            part["sources"],
        )
        for part in row["parts"]
    ]  # fmt: skip
    return ClaimShown(
        row["claim_id"], row["title"], row["printed"] or "", row["document"], row["page"] or None,
        row["availability"] == "optional", row["verdict"], VERDICT_WORDS[row["verdict"]], row["note"] or "", parts,
        None, why,
    )  # fmt: skip
