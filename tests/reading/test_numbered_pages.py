"""Pasted text in which the heads of pages came along: they are no row of a table and no van."""

import pytest

from specscan.reading.text.numbered_pages import without_numbered_pages

PASTED = """{heads[0]}

A van for three seasons. There are two, the 19 and the 22 E.

{heads[1]}

SPECIFICATIONS
                        DRIFT 19                  DRIFT 22 E
Platform                Calder Drover 250         Calder Volt 350
Length                  19 ft 4 in                22 ft 1 in
GVWR                    8,900 lb                  10,140 lb
Solar                   200 W                     410 W
Inverter                1,500 W                   3,000 W

{heads[2]}

SPECIFICATIONS (cont.)
                        DRIFT 19                  DRIFT 22 E
Fresh / gray            21 / 18 gal               28 / 26 gal
Gray tank heater        none                      12 V pad
Shore power             30 A                      50 A

Marrowfen LLC, Ost. Have the heater looked at once a year.
"""


@pytest.mark.parametrize("head", ["Marrowfen  |  Drift 2026  |  {}", "{} · Marrowfen Drift 2026"])
def test_heads_that_count_pages_are_no_part_of_the_tables_below_them(facts_of, head):
    facts = facts_of(PASTED.format(heads=[head.format(page) for page in (2, 3, 4)]), "pasted.txt")
    for field, values in (
        ("solar_w", (200, 410)),
        ("shore_power_a", (30, 50)),
        ("gray_tank_heat", ("none", "electric_pad")),
    ):
        assert {f.model: f.value for f in facts if f.field == field} == dict(
            zip(("Drift 19", "Drift 22 E"), values, strict=True)
        )


def test_labels_with_their_counts_and_codes_that_do_not_count_on_number_no_pages():
    lines = ["Sleeps | 2", "", "Sleeps | 3", "", "Drift | 19", "", "Drift | 21", ""]
    assert without_numbered_pages(lines, lambda text: text == "Sleeps") == lines
