"""What stands where a name could: dates, towns, base vehicles; and sisters that only a sentence sets side by side."""

import pytest

from tests.finding.test_names_in_heads import models

TABLE = """| | {one} | {two} |
|---|---|---|
| Overall length | 19 ft 6 in | 22 ft 2 in |
| GVWR | 9,350 lb | 11,030 lb |
| Sleeps | 2 | 4 |
| Fresh water tank | 21 gal | 36 gal |
| Solar | 100 W | 400 W |
"""


@pytest.mark.parametrize("line", ["Effective Sept. 9 - supersedes all prior", "Spring"])
def test_since_when_prices_hold_is_no_range(vans_of, line):
    above = f"# Marrowfen\n\n## 2026 price sheet\n\n## {line}\n\n"
    foot = "\nMarrowfen Inc., 4 Mill Lane.\n"
    assert models(vans_of(above + TABLE.format(one="TK-4 Heron", two="TK-6 Bittern") + foot)) == {
        "TK-4 Heron",
        "TK-6 Bittern",
    }


def test_names_with_the_company_before_them_are_whole_whatever_headings_say(vans_of):
    table = TABLE.format(one="Marrowfen Snug", two="Marrowfen Grand")
    text = (
        f"# Autumn price list\n\n{table}\n## Colours\n\nChalk and Moss.\n\n## Lamps\n\nTwo.\n\nMarrowfen Ltd, Hythe.\n"
    )
    assert {(maker, model) for maker, model, _ in vans_of(text)} == {("Marrowfen", "Snug"), ("Marrowfen", "Grand")}


def test_the_town_of_the_workshop_is_no_range(vans_of):
    cards = "".join(
        f"## No. {number}\n\n- Length {length} m\n- Berths {berths}\n- Fresh water tank {tank} litres\n"
        f"- Leisure battery {tank} Ah\n- GVM 3500 kg\n- Solar panel {tank} W\n\n"
        for number, length, berths, tank in ((3, 5.41, 2, 70), (6, 5.99, 4, 100), (8, 6.36, 2, 110))
    )
    above = "# Marrowfen by numbers\n\nAll of them are made by four people in our Hythe workshop.\n\n"
    foot = "Marrowfen Ltd, Tannery Yard, Hythe\n"
    assert models(vans_of(above + cards + foot)) == {"No. 3", "No. 6", "No. 8"}


def test_sisters_of_a_letter_are_not_named_after_their_base_vehicle(vans_of):
    letter = (
        "Marrowfen\nBuilders of camper vans\n\nDear Ms Alder,\n\nBoth the Gorse and the Gorse Plus are built on the "
        "Bruska Carrier 35. The Gorse is 5.99 m long and has two berths. It carries 85 litres of fresh water, is "
        "heated by a 4 kW diesel blown-air heater, and has one 110 Ah AGM leisure battery.\n\nThe "
        "Gorse Plus is 6.36 m long, again with two berths. It carries 100 litres of fresh water and has a 200 Ah "
        "lithium leisure battery. The Winter Pack is extra.\n\nKind regards,\nAda Holt\nfor Marrowfen\n"
    )
    assert models(vans_of(letter, "letter.txt")) == {"Gorse", "Gorse Plus"}


SHEET = (
    "{lead}{label}: {name}\nBuilt on: Bruska Mule\nOverall length: {length} ft\nFresh water tank: {tank} gal\n"
    "Gray water tank: {tank} gal\nSolar: {tank} W\nSleeps: 2\nInsulation: spray foam\n\n"
)


@pytest.mark.parametrize(("one", "two"), [("Model K", "Model L"), ("Gorse 19", "Gorse 22"), ("Alder", "Teasel")])
@pytest.mark.parametrize("lead", ["", "Maker: Marrowfen\n"])
def test_each_sheet_is_of_the_van_that_its_label_names(facts_of, lead, one, two):
    text = SHEET.format(lead=lead, label="Model", name=one, length=19, tank=20)
    text += SHEET.format(lead=lead, label="Model", name=two, length=22, tank=30)
    facts = facts_of(f"{text}Prices on request.\n\nMarrowfen Ltd, 4 Mill Lane, Hythe\n", "sheets.txt")
    lengths = {fact.model: round(fact.value / 304.8) for fact in facts if fact.field == "length_mm"}
    assert lengths == {one: 19, two: 22}


REMARKED = """{above}

{range}| | 540 LB single beds | 600 QB island bed | 636 XT {last} |
|---|---|---|---|
| Length | 5.41 m | 5.99 m | 6.36 m |
| MTPLM | 3500 kg | 3500 kg | 4250 kg |
| Berths | 2 | 2 | 4 |
| Fresh water | 95 litres | 110 litres | 120 litres |
| Waste water | 80 litres | 90 litres | 90 litres |

Packs: Touring Pack for the 540 LB and 600 QB, £640. {told}

Marrowfen Ltd, 4 Mill Lane, Hythe
"""


def test_what_heads_say_of_their_vans_is_no_part_of_the_names(vans_of):
    text = REMARKED.format(above="# Marrowfen Drift 2026", range="", last="ensuite", told="")
    assert models(vans_of(text)) == {"Drift 540 LB", "Drift 600 QB", "Drift 636 XT"}


def test_a_line_alone_over_the_codes_of_a_table_is_their_range(vans_of):
    text = REMARKED.format(
        above="# Warm all year\n\nMarrowfen 2026", range="**DRIFT**\n\n", last="ensuite", told="The Drift is new."
    )
    assert models(vans_of(text)) == {"Drift 540 LB", "Drift 600 QB", "Drift 636 XT"}


LINES = "Length: 6.18 m\n\nGVM: 3500 kg\n\nSleeps: 2\n\nFresh water: 130 L\n\nSolar: 200 W\n\nHeater: diesel, 5 kW\n\n"


def test_the_code_that_the_text_sets_behind_the_title_is_a_part_of_the_name(vans_of):
    text = "# Gorse\n\n## Marrowfen 2026\n\nThe Gorse 22FB by day. The 22FB sleeps two.\n\n"
    assert models(vans_of(f"{text}{LINES}Marrowfen Ltd, Hythe\n")) == {"Gorse 22FB"}


def test_of_two_companies_the_one_that_heads_the_page_made_the_vans(vans_of):
    table = TABLE.format(one="Gorse", two="Gorse Fell")
    text = (
        f"HOLT MARROW · 2026\n\n# Two Gorses\n\n{table}\nHythe Camper Co., High Street. Holt Marrow Inc., Mill Lane.\n"
    )
    assert {maker for maker, _, _ in vans_of(text)} == {"Holt Marrow"}


def test_a_letter_at_the_end_of_the_revision_is_no_part_of_the_company(vans_of):
    text = f"# Marrowfen Gorse 19\n\nVans from Marrowfen Mill\n\n{LINES}MG-27 rev. B   Marrowfen Mill Inc., Hythe\n"
    assert {maker for maker, _, _ in vans_of(text)} == {"Marrowfen Mill"}
