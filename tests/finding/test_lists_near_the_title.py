"""Names in a list near the title, beside words that are no names, and a sentence of trims."""

import pytest


@pytest.mark.parametrize("heading", ["Camper vans | Model year 2026", "2026 camper vans"])
def test_a_list_of_names_below_a_line_of_common_words(vans_of, heading):
    text = (
        f"{heading}\n\nThimble, Alcove\n\nThe Thimble has an interior height of 195 cm. It sleeps 2.\n\n"
        "The Thimble has a cassette toilet and 200 W of solar.\n\nThe Alcove is 2.05 m wide and sleeps 3.\n\n"
        "The Alcove has a gray tank of 70 l. The Alcove plugs into 10 A shore power.\n\nMarrowfen Ltd, Holmbeck.\n"
    )
    assert {model for _, model, _ in vans_of(text, "vans.txt")} == {"Thimble", "Alcove"}


def test_a_trim_whose_name_is_a_word_of_lists(vans_of):
    text = (
        "# Marrowfen\n\nThere are the Duo and the Shore Plus in the Sallet range.\n\n"
        "The Sallet Duo is 5.49 m long and sleeps 2. The Sallet Duo has a gray tank of 70 l.\n\n"
        "The Sallet Shore Plus is 5.99 m long and sleeps 3. The Sallet Shore Plus has a gray tank of 90 l.\n"
    )
    assert {model for _, model, _ in vans_of(text)} == {"Sallet Duo", "Sallet Shore Plus"}


def test_the_watts_of_an_inverter_are_no_year(vans_of):
    text = (
        "# Marrowfen Drift 2025\n\nMarrowfen Drift 23 TB\n\nLength: 6.36 m\n\nSleeps: 2\n\nGray tank: 70 l\n\n"
        "Fresh tank: 90 l\n\nShore power: 30 A\n\nHeated floor: no\n\n## Options\n\n2000 W Sine Inverter\n\n"
        "Solar panel, 300 W\n\nAwning, 3 m\n\nDump valve with heater\n\nWater lines heated\n\nThermal break: yes\n"
    )
    vans = vans_of(text)
    assert len(vans) == 1 and all(model.endswith("Drift 23 TB") for _, model, _ in vans)


TRIO = """# MARROWFEN CAMPERS

## Alder Gorse Larch

Technical specification, season 2026

The Alder is a two-berth, the Gorse has a lounge, the Larch is the long one.

| | Alder | Gorse | Larch |
|---|---|---|---|
| Overall length | 5413 mm | 5998 mm | 6363 mm |
| Fresh water | 70 litres | 95 litres | 115 litres |
| Waste water | 60 litres | 85 litres | 100 litres |
| Berths | 2 | 2 | 4 |
"""


def test_names_with_nothing_but_spaces_between_them_are_no_range_with_its_trim(vans_of):
    assert {model for _, model, _ in vans_of(TRIO)} == {"Alder", "Gorse", "Larch"}


AS_DELIVERED = """Marrowfen Drift 2026

TEL QUE LIVRÉ
-------------

Modèle                     18D          21N
--------------------------------------------
Couchages                  2            3
Longueur                   5,40 m       5,99 m
Eaux usées                 70 l         90 l
Eau propre                 80 l         110 l

Marrowfen SARL, Rastow
"""


def test_a_heading_that_says_as_delivered_is_no_range(vans_of):
    assert {model for _, model, _ in vans_of(AS_DELIVERED, "fiche.txt")} == {"Drift 18D", "Drift 21N"}


TRIMS = """# MARROWFEN MOTOR CAMPERS

# {title}

The {range} is built on one body.

## Common to all

| | |
|---|---|
| Overall length | 6426 mm |
| Fresh water tank | 110 L |
| Wheelbase | 4039 mm |

## Equipment

| | {one} | {two} | {three} |
|---|---|---|---|
| Furnace, forced air, propane | S | S | – |
| Inverter 1,000 W | S | S | – |
| Solar panel 200 W | – | S | S |
| Tank heating pads, gray tank | – | O | S |
"""


@pytest.mark.parametrize("joint", [" • ", "/", ", ", " & ", " "])
@pytest.mark.parametrize(
    ("base", "heads"), [("Drift 21", ("LT", "ST", "PX")), ("Drift", ("S", "SL", "X4")), ("Drift 21", ("S", "SL", "X4"))]
)
def test_the_trims_behind_a_range_in_its_title_are_no_part_of_the_range(vans_of, joint, base, heads):
    one, two, three = heads
    text = TRIMS.format(title=f"{base} {joint.join(heads)}", range=base, one=one, two=two, three=three)
    assert {model for _, model, _ in vans_of(text)} == {f"{base} {head}" for head in heads}


@pytest.mark.parametrize("days", ["November 8 and 9", "May 8 and June 9"])
def test_the_days_of_a_weekend_are_no_vans(vans_of, days):
    text = (
        "# Marrowfen Vans\n\n## Alder\n\nThe Alder is our small one. Come and see it on our Open Barn weekend, "
        f"{days}, whatever the weather. Coffee from 8 to 9 each day.\n\n- Length 5.41 m\n- 70 L fresh tank\n"
        "- 55 L waste tank\n- 100 W of solar\n- Sleeps 2\n"
    )
    assert {model for _, model, _ in vans_of(text)} <= {"Alder"}
