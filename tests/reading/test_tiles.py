"""Figures set large with their labels in small type are labels and values."""

import pytest

from specscan.reading.read import read_document
from specscan.records.text import Kind
from tests.reading.drawn import Page

TILES = [
    [("9′ 4″", "EXTERIOR HEIGHT"), ("6′ 3″", "HEADROOM"), ("AWD", "DRIVE")],
    [("9,350 lb", "GVWR"), ("1,420 lb", "TYPICAL PAYLOAD"), ("7,500 lb", "TOW RATING")],
    [("26 gal", "FRESH WATER"), ("20 gal", "GRAY WATER"), ("3 gal", "ELECTRIC WATER HEATER")],
    [("2,000 W", "INVERTER"), ("1¾ in", "RECYCLED-COTTON BATTS,|WALLS AND CEILING"), ("90 L", "FRIDGE")],
]


def values(facts):
    return {fact.field: fact.value for fact in facts}


def tiled(*, above):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 22", size=24, bold=True)
    page.text(50, 72, "Model year 2026, for April to November", size=11)
    for number, tiles in enumerate(TILES):
        top = 120 + 60 * number
        for x, (value, label) in zip((50, 226, 400), tiles, strict=True):
            page.text(x, top if above else top + 13, value, size=18)
            for line, text in enumerate(label.split("|")):
                page.text(x, top + 21 + 10 * line if above else top, text, size=8)
    page.text(50, 400, "The gray tank hangs under the floor without heat of its own.", size=9.5)
    return page


@pytest.mark.parametrize("above", [True, False])
def test_a_large_figure_belongs_to_the_small_label_beside_it(facts_of_pdf, above):
    found = values(facts_of_pdf(tiled(above=above)))
    assert found["fresh_tank_l"] == pytest.approx(98.4, rel=1e-3)
    assert found["gray_tank_l"] == pytest.approx(75.7, rel=1e-3)
    assert found["gvwr_kg"] == pytest.approx(4241, rel=1e-3)
    assert found["drive"] == "all"
    assert found["inverter_w"] == 2000


def test_a_label_of_two_lines_is_read_whole(facts_of_pdf):
    facts = facts_of_pdf(tiled(above=True))
    assert {fact.value for fact in facts if fact.field == "insulated_surfaces"} == {"ceiling", "walls"}


def test_a_title_with_a_smaller_line_below_it_stays_a_heading(examiner):
    document = read_document(tiled(above=True).data(), "drift.pdf", "pdf", examiner.hints)
    assert document.passages[0].kind is Kind.HEADING
    assert {p.row.text for p in document.passages if p.row} >= {"FRESH WATER", "GVWR"}
    assert not any("Drift" in p.text for p in document.passages if p.row)
