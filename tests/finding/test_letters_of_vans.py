"""Vans called by the letter of their codes, and paragraphs that say of each what it has and what it can have."""

import pytest

SHEET = """# Marrowfen 2026

| | D19 | D22 | {w} |
|---|---|---|---|
| Length | 5.4 m | 6.0 m | 6.4 m |
| Berths | 2 | 2 | 2 |
| GVWR | 3,300 kg | 3,500 kg | 3,500 kg |
| Heating (Btu/h) | LP furnace, 16,000 in, 12,800 out | LP furnace, 20,000 in / 16,000 out | Hydronic, 17,000 out |

{line}
"""


@pytest.fixture
def told(facts_of):
    def read(line, field, w="W25"):
        facts = facts_of(SHEET.format(line=line, w=w), "sheet.md")
        return {(f.model.split()[-1], f.value, f.availability) for f in facts if f.field == field}

    return read


@pytest.mark.parametrize("named", ["D coaches", "the D series", "D models"])
def test_a_letter_with_a_word_for_vans_names_those_whose_codes_begin_with_it(told, named):
    line = f"Gray tanks hang below the floor on {named} and sit in an insulated, heated bay on the W25."
    assert {(van, place) for van, place, _ in told(line, "gray_tank_location")} == {
        ("D19", "underbody"), ("D22", "underbody"), ("W25", "enclosed"),
    }  # fmt: skip
    valves = told(f"On {named} the dump valves are exposed.", "dump_valve_protection")
    assert {van for van, _, _ in valves} == {"D19", "D22"}


def test_a_class_of_vehicles_is_no_letter_of_theirs(told):
    line = "Class D coaches are a matter of taste. Dump valves are exposed on class D coaches."
    assert {van for van, _, _ in told(line, "dump_valve_protection")} == {"D19", "D22", "W25"}


def test_what_goes_in_and_what_comes_out_is_told_behind_figures_of_heat(told):
    assert {(van, round(value)) for van, value, _ in told("", "heater_input_w")} == {("D19", 4689), ("D22", 5861)}
    assert {(van, round(value)) for van, value, _ in told("", "heater_output_w")} == {
        ("D19", 3751), ("D22", 4689), ("W25", 4982),
    }  # fmt: skip


OPTIONS = (
    "Factory options. D19: 12 V pad for the gray tank, $310. D22 and W25: pop-top with double bed, $9,850; "
    "300 Ah lithium battery bank, $2,940. Heated floor: standard on W25, not offered on D coaches."
)


def test_a_paragraph_of_things_with_their_prices_says_for_each_van_what_it_can_have(told):
    assert told(OPTIONS, "gray_tank_heat") == {("D19", "electric_pad", "optional")}
    assert told(OPTIONS, "battery_ah") == {("D22", 300, "optional"), ("W25", 300, "optional")}
    assert told(OPTIONS, "heated_floor") == {
        ("W25", True, "standard"), ("D19", True, "not_available"), ("D22", True, "not_available"),
    }  # fmt: skip
