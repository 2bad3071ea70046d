"""Draws several documents on the same vans, and on other ones of their maker, settles them together, says how well.

python -m tests.benchmarks.dossiers --count 40 --seed 1
"""

from __future__ import annotations

import argparse
import sys
from collections import Counter
from collections.abc import Sequence

from specscan.records.documents import Settlement
from specscan.records.facts import Settled
from specscan.records.names import plain
from specscan.reports.evaluate import IDENTITY
from specscan.settling.settle import settle
from tests.benchmarks.scoring import Scanner
from tests.proving_ground.dossiers import Dossier, draw_dossier
from tests.proving_ground.truth import same


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; give 0."""
    parser = argparse.ArgumentParser(
        prog="python -m tests.benchmarks.dossiers", description=(__doc__ or "").split("\n")[0]
    )
    parser.add_argument(
        "--count", type=int, default=40, help="how many dossiers of three documents, two of a maker (40)"
    )
    parser.add_argument("--seed", type=int, default=1, help="the seed from which all is drawn (1)")
    parser.add_argument("--misses", action="store_true", help="list what is wrong")
    told = parser.parse_args(arguments)
    scanner = Scanner()
    counts: Counter[str] = Counter()
    wrong: list[str] = []
    for number in range(0, told.count, 2):
        first = draw_dossier(told.seed, number)
        counted, missed = weigh(scanner, [first, draw_dossier(told.seed, number + 1, first.family)])
        counts += counted
        wrong += missed
    print("\n".join(lines(counts)))
    print("\n".join(wrong if told.misses else []))
    return 0


def weigh(scanner: Scanner, dossiers: Sequence[Dossier]) -> tuple[Counter[str], list[str]]:
    """Give counts of what comes out where dossiers are settled together, and what is wrong in words."""
    brochures = [brochure for dossier in dossiers for brochure in dossier.brochures]
    settlement = settle([scanner.examined(one) for one in brochures], scanner.book, scanner.preferences)
    counts: Counter[str] = Counter(vans=sum(len(dossier.vans) for dossier in dossiers), found=len(settlement.vans))
    wrong: list[str] = []
    for dossier in dossiers:
        rows = _rows(settlement, dossier)
        counts["joined"] += sum(van in {name for name, _ in rows} for van in dossier.vans)
        for (van, field), value in dossier.agreed.items():
            if field in IDENTITY:
                continue
            row = rows.get((van, field))
            kind = "missing" if row is None or row.status == "missing" else row.status
            kind = "right" if kind == "stated" and row is not None and same(field, _shown(row), value) else kind
            counts[f"agreed {kind if kind != 'stated' else 'wrong'}"] += 1
            wrong += [f"{dossier.brochures[0].name} [{van}] {field} {value}: {kind}"] if kind != "right" else []
        for van, field in dossier.disputed:
            row = rows.get((van, field))
            counts[f"disputed {row.status if row is not None else 'missing'}"] += 1
            if row is None or row.status != "conflicting":
                wrong.append(f"{dossier.brochures[0].name} [{van}] {field}: contradiction not told")
    return counts, wrong


def _rows(settlement: Settlement, dossier: Dossier) -> dict[tuple[str, str], Settled]:
    names = {van.van_id: model for model in dossier.vans for van in settlement.vans if plain(van.model) == plain(model)}
    return {
        (names[row.van_id], row.field): row
        for row in settlement.settled
        if row.equipment == "standard" and row.van_id in names
    }


def _shown(row: Settled) -> str:
    if row.flag is not None:
        return "yes" if row.flag else "no"
    return str(row.num) if row.num is not None else row.text or ""


def lines(counts: Counter[str]) -> list[str]:
    """Give the counts as text."""
    agreed = sum(number for name, number in counts.items() if name.startswith("agreed"))
    disputed = sum(number for name, number in counts.items() if name.startswith("disputed"))
    return [
        f"Vans: {counts['joined']} of {counts['vans']} joined over their documents; {counts['found']} in all.",
        f"What all documents agree on: {counts['agreed right']} of {agreed} settled rightly, {counts['agreed wrong']} "
        f"wrongly, {counts['agreed conflicting']} held for a conflict.",
        f"What two tables contradict each other in: {counts['disputed conflicting']} of {disputed} told as a conflict.",
    ]


if __name__ == "__main__":
    sys.exit(main())
