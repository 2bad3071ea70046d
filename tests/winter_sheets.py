"""Data sheets of two invented vans whose winter is reckoned, and the dataset of both."""

from __future__ import annotations

from pathlib import Path

from specscan import api

BROCHURE = """Marrowfen Drift {name}
Model year 2026

Overall length: 5.99 m
Engine: diesel
Fuel tank: 90 L
Fresh water tank: 100 L, inside the heated living space
Gray water tank: 75 L, underslung, not heated
Toilet: composting
Heater: diesel air heater
Heat output: {heat}
House battery: 3,840 Wh lithium
Wall insulation: R-6
"""
SMALL = """Marrowfen Dell 12
Model year 2026

Overall length: 5.41 m
Furnace: 16,000 BTU/h propane
"""


def winter_dataset(folder: Path, heat: str) -> Path:
    """Write both sheets to a folder, the first with a heater of this output, scan them, and give the dataset."""
    (folder / "drift.txt").write_text(BROCHURE.format(name="21", heat=heat), encoding="utf-8")
    (folder / "dell.txt").write_text(SMALL, encoding="utf-8")
    api.scan([folder], folder / "vans.duckdb", jobs=1)
    return folder / "vans.duckdb"
