"""Headings that name a van and the one on which it builds, over what it has beyond that one."""

import pytest

SHEET = """# Marrowfen Drift 2026

| | Gorse | Alder | Alder Frost |
|---|---|---|---|
| Length | 5.4 m | 6.0 m | 6.0 m |
| Berths | 2 | 2 | 2 |
| GVWR | 3,300 kg | 3,500 kg | 3,500 kg |
| Waste water | 60 l | 80 l | 80 l |
| Inverter | none | 1,000 W | 3,000 W |

## Gorse

- Gray tank without heat

## Alder adds

- 12-volt heating pads on the gray tank
- Inverter, 1,000 W

## {heading}

- Electric floor heating
- Battery with heated cells
"""


@pytest.mark.parametrize("heading", ["Alder Frost adds to the Alder", "Alder Frost: everything on the Alder, plus"])
def test_a_heading_tells_of_the_van_before_the_one_it_builds_on_which_lends_it_its_list(facts_of, heading):
    facts = facts_of(SHEET.format(heading=heading), "sheet.md")

    def of(field):
        return {
            (fact.model.removeprefix("Marrowfen ").removeprefix("Drift "), fact.value)
            for fact in facts
            if fact.field == field
        }

    assert of("heated_floor") == {("Alder Frost", True)}
    assert of("gray_tank_heat") == {("Gorse", "none"), ("Alder", "electric_pad"), ("Alder Frost", "electric_pad")}
    assert {value for van, value in of("inverter_w") if van == "Alder Frost"} == {3000}
