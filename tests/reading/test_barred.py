"""Tables whose cells bars part, copied with heads that ran together and lines that were broken."""

import pytest

from specscan.reading.read import read_document

HEAD = "Technical data {heads}\n"
ROWS = """VEHICLE
Overall length | 5.80 m | 6.42 m
Maximum technically permissible laden mass |
3300 kg | 4200 kg
Berths | 2 | 4
WATER (gallons are imperial)
Fresh water | 18 gal, inside | 26 gal, inside
HEAT
Heater | diesel blown air | gas combination heater, air
and water
Insulation | foam sheet, | mineral wool, 45 mm
25 mm
Solar | option, 120 W | 240 W

The small fridge takes 70 litres, the big one 140 litres, and both of them hum a little.
"""


def cells(examiner, text):
    passages = read_document(text.encode(), "drift.txt", "text", examiner.hints).passages
    return {(p.row.text, p.column.text): p.text for p in passages if p.row is not None and p.column is not None}


@pytest.mark.parametrize(
    ("heads", "vans"),
    [("Drift 58 Drift 64 X", ("Drift 58", "Drift 64 X")), ("58 64 X", ("58", "64 X")),
     ("| Drift Fell | Drift Moor", ("Drift Fell", "Drift Moor"))],
)  # fmt: skip
def test_heads_that_ran_together_are_parted_and_broken_cells_are_whole(examiner, heads, vans):
    found = cells(examiner, "Marrowfen Drift 2026\n\n" + HEAD.format(heads=heads) + ROWS)
    small, large = vans
    assert found["Maximum technically permissible laden mass", small] == "3300 kg"
    assert found["Heater", large] == "gas combination heater, air and water"
    assert found["Insulation", small] == "foam sheet, 25 mm"
    assert found["Insulation", large] == "mineral wool, 45 mm"
    assert found["Solar", large] == "240 W"


@pytest.mark.parametrize("heads", ["Fell Moor Plus", "for 2026 and 2027", "of the Drift 58 and the Drift 64 X"])
def test_heads_that_nothing_parts_name_no_columns(examiner, heads):
    found = cells(examiner, "Marrowfen Drift 2026\n\n" + HEAD.format(heads=heads) + ROWS)
    assert {column for _, column in found} == {""}
