"""Dotted and dashed rules, drawn as tiny boxes, part rows as drawn lines do."""

import numpy as np
import pytest

from specscan.reading.letters.dashes import dashed_rules
from tests.reading.drawn import Page

ROWS = [
    (("Heater",), ("Gasoline air", "heater"), ("Diesel hydronic",)),
    (("heat output,", "maximum"), ("6,800 BTU/h",), ("17,000 BTU/h",)),
    (("House battery",), ("200 Ah AGM, 12 V",), ("600 Ah lithium,", "12.8 V")),
    (("Wall insulation",), ('1" polyester', "batts"), ('2" spray foam',)),
    (("Thermal break, ribs to", "panels"), ("No",), ("Yes",)),
    (("Length",), ("5.41 m",), ("5.99 m",)),
    (("Sleeps",), ("2",), ("3",)),
    (("GVWR",), ("3500 kg",), ("4000 kg",)),
]


def dashes(page, y):
    for number in range(150):
        page.box(40 + 3 * number, y, 41.5 + 3 * number, y + 0.75, (0, 0, 0))


def test_dashed_rules_part_rows_whose_cells_are_wrapped(facts_of_pdf):
    page = Page()
    page.text(40, 40, "Marrowfen Drift 2026", size=16, bold=True)
    page.row(90, (220, "Drift 19"), (370, "Drift 21"), bold=True)
    top = 108
    dashes(page, top - 3)
    for cells in ROWS:
        lines = max(map(len, cells))
        for x, texts in zip((40, 220, 370), cells, strict=True):
            begin = top + 5.5 * (lines - len(texts))  # each cell is set in the middle of its row
            for number, text in enumerate(texts):
                page.text(x, begin + 11 * number, text)
        top += 11 * lines + 4
        dashes(page, top - 3)
    facts = {(f.model, f.field): f.value for f in facts_of_pdf(page)}
    assert facts["Drift 19", "heater_output_w"] == pytest.approx(1993, rel=1e-3)
    assert facts["Drift 21", "insulation_material"] == "spray_foam"
    assert (facts["Drift 19", "thermal_break"], facts["Drift 21", "thermal_break"]) == (False, True)


def test_a_few_dots_and_scattered_ones_make_no_rule():
    row = [(10 + 2 * n, 50.0, 11 + 2 * n, 51.0) for n in range(5)]
    apart = [(10 + 20 * n, 80.0, 11 + 20 * n, 81.0) for n in range(30)]
    down = [(300.0, 100 + 2 * n, 301.0, 101 + 2 * n) for n in range(40)]
    (rule,) = dashed_rules(np.array([*row, *apart, *down]))
    assert (rule.x0, rule.top, rule.bottom) == (300.0, 100.0, 179.0)
