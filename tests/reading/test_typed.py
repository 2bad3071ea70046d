"""Tables typed into plain text: tabs, and heads over a rule of dashes."""

import pytest

from specscan.reading.read import read_document

BY_TABS = """MARROWFEN COACHES
Drift 20 MB and Drift 24 MB, model year 2026

SIZE
\tLength\tWidth\tHeight\tHeadroom\tWheelbase
Drift 20 MB\t19' 5"\t80"\t9' 6"\t6' 3"\t144"
Drift 24 MB\t24' 1"\t80"\t9' 10"\t6' 3"\t170"

POWER
\tDrift 20 MB\tDrift 24 MB
Battery\t200 Ah AGM\t630 Ah lithium, 12.8 V
Inverter\t1,000 W\t3,000 W
Shore power\t30 A\t50 A
"""

RULED = """MARROWFEN COACH                                2026 ORDER GUIDE
======================================================================
DRIFT 19 and DRIFT 22
Key: S = standard   O = optional   NA = not available

                                            19              22
----------------------------------------------------------------------
CHASSIS
Chassis ...........................  Kelmar Cargo 2500   Kelmar Cargo 3500
Wheelbase, in. ....................  135                 155
Sleeps ............................  2                   3
GVWR, lb ..........................  8,900               9,900

WATER
Fresh water, gal ..................  20                  30
Heated holding tanks (pads) .......  NA                  O
"""


def by_van(facts, field):
    return {fact.model.casefold(): fact.value for fact in facts if fact.field == field}


@pytest.fixture
def facts_of_text(read_file, tmp_path):
    """Give a function that stores a text, reads it and returns its counting facts."""

    def read(text):
        path = tmp_path / "sheet.txt"
        path.write_text(text)
        return [fact for fact in read_file(path).found.facts if not fact.rejected]

    return read


def test_each_tab_ends_a_cell_whatever_the_width_of_the_text(facts_of_text):
    facts = facts_of_text(BY_TABS)
    assert by_van(facts, "width_mm") == pytest.approx({"drift 20 mb": 2032, "drift 24 mb": 2032})
    assert by_van(facts, "interior_height_mm") == pytest.approx({"drift 20 mb": 1905, "drift 24 mb": 1905})
    assert by_van(facts, "shore_power_a") == {"drift 20 mb": 30, "drift 24 mb": 50}


def test_heads_over_a_rule_head_the_columns_below_it(facts_of_text):
    facts = facts_of_text(RULED)
    assert len(by_van(facts, "model")) == 2
    assert sorted(by_van(facts, "fresh_tank_l").values()) == pytest.approx([75.7, 113.6], rel=1e-2)
    assert sorted(by_van(facts, "sleeps").values()) == [2, 3]
    assert [f.availability for f in facts if f.field == "gray_tank_heat" and f.model.endswith("22")] == ["optional"]


def test_a_heading_underlined_stays_a_heading(facts_of_text):
    text = "Marrowfen Drift 22 2026      Data sheet\n======================\nSleeps: 3\nGVWR: 3500 kg\nLength: 5.99 m\n"
    facts = facts_of_text(text)
    assert set(by_van(facts, "sleeps").values()) == {3}


def test_labels_in_bold_before_a_dash_are_labels_and_anchors_are_no_text(examiner):
    lines = ('<a name="heat"></a>', "- **Fresh tank** - 80 litres", "* **Base vehicle** – Bruska 35<br>")
    text = "\n".join(["# Marrowfen Drift 21", "", *lines])
    document = read_document(text.encode(), "page.md", "text", examiner.hints)
    assert [p.text for p in document.passages] == [
        "Marrowfen Drift 21",
        "Fresh tank: 80 litres",
        "Base vehicle: Bruska 35",
    ]


GROUPED = """MARROWFEN
MK21-D, MK24-R

FIGURES
-------

           Version             MK21-D            MK24-R
------------------------------------------------------------
Size       Width [m]           2.05              2.05
           Headroom [m]        1.98              1.98
           Length [m]          5.41              5.99
Tanks      Fresh water [l]     75                95
           Grey water [l]      60                80
           Toilet              cassette          dry separating
"""


def test_heads_over_labels_count_where_groups_stand_on_their_left(facts_of_text):
    facts = facts_of_text(GROUPED)
    assert by_van(facts, "fresh_tank_l") == {"mk21-d": 75, "mk24-r": 95}
    assert by_van(facts, "length_mm") == pytest.approx({"mk21-d": 5410, "mk24-r": 5990})


def test_spaces_that_do_not_break_part_no_cells_below_heads_in_another_order(facts_of):
    text = """Hollowfen
Brent | Model year 2026

SIZES
-----

                          Brent 20          Brent 25
----------------------------------------------------

Overall length            5.79 m            5.97 m
Sleeps                    2                 4
Fuel tank                 91 L              87 L

EQUIPMENT
---------

                          Brent 25                    Brent 20
--------------------------------------------------------------

Heating
Heater output             16\u00a0000\u00a0BTU/h                2\u00a0000\u00a0W
Heated floor              Yes                         no
Fuel use at full output   0.52\u00a0L/h                    0.28\u00a0L/h

Power
Inverter                  3\u00a0000\u00a0W                     1\u00a0000\u00a0W
Solar                     220\u00a0W                       none
"""
    facts = facts_of(text)
    assert {f.model: f.value for f in facts if f.field == "heated_floor"} == {"Brent 25": True, "Brent 20": False}
    assert {f.model: f.value for f in facts if f.field == "solar_w"} == {"Brent 25": 220, "Brent 20": 0}
