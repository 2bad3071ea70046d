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


BELOW = """# Marrowfen Drift

Gorse · Alder

## Drift Gorse

Suggested price $118,400

- GVWR 9,070 lb
- Length 19 ft 8 in
- 21-gallon fresh tank
- 16-gallon gray tank, not heated
- 1,000 W inverter

## Drift Alder

### {price}

{line}

- Gray tank warmed by a 12-volt heating pad
- Cassette toilet, 4.5 gallons

## Options

| | Gorse | Alder |
|---|---|---|
| 3,000 W inverter | not offered | $1,250 |
| Bike tray | $560 | $560 |
"""


@pytest.mark.parametrize(
    ("price", "line"),
    [
        ("Suggested price $147,900", "Everything in Gorse, with these changes and additions:"),
        ("Yours for $147,900", "All of the Drift Gorse, plus:"),
    ],
)
def test_a_line_below_the_price_of_a_van_tells_on_which_it_builds(facts_of, price, line):
    told = {
        (fact.field, fact.value, fact.availability)
        for fact in facts_of(BELOW.format(price=price, line=line), "sheet.md")
        if fact.model == "Drift Alder"
    }
    assert ("gray_tank_heat", "electric_pad", "standard") in told  # what heads the list is no option's price
    assert {value for field, value, _ in told if field == "gray_tank_heat"} == {"electric_pad"}
    assert {"gvwr_kg", "length_mm", "fresh_tank_l", "gray_tank_l"} <= {field for field, _, _ in told}
    assert {(value, offer) for field, value, offer in told if field == "inverter_w"} == {
        (1000, "standard"),
        (3000, "optional"),
    }
