"""Vans described one after another under headings of their own, and what a trim has from the one it builds on."""

import pytest

RANGE = """# Marrowfen Motorhomes

## Drift

### The trim guide, model year 2026

Two trims on one body. Wold is for summer, Fell for the rest of the year.

#### {first}

- Two berths on the pull-out bed
- 60-litre fresh water tank, inside
- 50-litre waste water tank under the floor
- Petrol air heater, 2 kW
- One 95 Ah AGM leisure battery
- 16 A mains hook-up

#### {second}

- 230 Ah lithium leisure battery
- 85-litre fresh water tank, inside
- 120 W solar panel
- Diesel air heater, 4 kW
- Sleeps four under the lifting roof
"""


@pytest.fixture
def read(read_file, tmp_path):
    def of(text, name="guide.md"):
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        found = read_file(path).found
        values = {(f.model, f.field): f for f in found.facts if not f.rejected and f.model}
        return {(van.maker, van.model, van.year) for van in found.vans}, values

    return of


@pytest.mark.parametrize("first, second", [("Wold", "Fell"), ("Wold from £54,950", "Fell from £61,400")])
def test_sister_headings_above_the_same_things_name_the_vans(read, first, second):
    vans, facts = read(RANGE.format(first=first, second=second))
    assert vans == {("Marrowfen Motorhomes", "Drift Wold", 2026), ("Marrowfen Motorhomes", "Drift Fell", 2026)}
    assert facts["Drift Wold", "battery_ah"].value == 95
    assert facts["Drift Fell", "battery_ah"].value == 230
    assert ("Drift Fell", "gray_tank_l") not in facts


def test_the_price_of_a_van_makes_its_equipment_no_option(read):
    _, facts = read(RANGE.format(first="Wold from £54,950", second="Fell from £61,400"))
    assert facts["Drift Fell", "solar_w"].availability == "standard"


@pytest.mark.parametrize("words", ["All of Wold, and:", "Everything in Wold plus", "Same as Wold, and"])
def test_a_trim_has_what_the_one_it_builds_on_has_and_it_does_not_replace(read, words):
    _, facts = read(RANGE.format(first="Wold from £54,950", second=f"Fell from £61,400. {words}"))
    assert facts["Drift Fell", "gray_tank_l"].value == 50
    assert facts["Drift Fell", "gray_tank_l"].printed == "50-litre waste water tank under the floor"
    assert facts["Drift Fell", "fresh_tank_l"].value == 85
    assert facts["Drift Fell", "battery_chemistry"].value == "lithium"
    assert ("Drift Wold", "solar_w") not in facts


def test_headings_that_part_the_description_of_one_van_name_none(read):
    text = RANGE.replace("Two trims on one body. Wold is for summer, Fell for the rest of the year.", "One van.")
    vans, _ = read(text.format(first="In figures", second="On the road"))
    assert {model for _, model, _ in vans} <= {"Drift"}


def test_the_year_before_the_name_and_the_company_in_the_foot_are_read(read):
    text = (
        "Questions people ask us\n\nMarrowfen Coachcraft · 2026 Drift 21 RD · Questions\n\n"
        "Length: 6.36 m\nGVWR: 4,100 kg\nFresh water: 100 L\nSleeps: 2\nWheelbase: 3.80 m\n"
    )
    vans, _ = read(text, "questions.txt")
    assert vans == {("Marrowfen Coachcraft", "Drift 21 RD", 2026)}


def test_the_date_of_registration_beside_it_does_not_hide_the_model_year(read):
    text = (
        "Subject: RE: Drift 560\n\nThank you for your call about the Marrowfen Drift 560. It is a 2023 model (first "
        "registered March 2024).\n\nLength: 5.60 m\nMTPLM: 3500 kg\nFresh water: 90 litres\nBerths: 2\n"
    )
    vans, _ = read(text, "letter.txt")
    assert vans == {("Marrowfen", "Drift 560", 2023)}


def test_a_heading_such_as_compare_above_the_whole_page_opens_no_other_vans(read):
    rows = "\n".join(
        f"| {label} | {one} | {two} |"
        for label, one, two in [
            ("Length", "17 ft 9 in", "21 ft 11 in"),
            ("GVWR", "8,600 lb", "10,360 lb"),
            ("Fresh water", "20 gal", "30 gal"),
            ("Sleeps", "2", "4"),
        ]
    )
    text = f"# Compare the Drifts\n\nModel year 2026.\n\n| | Drift SR | Drift LR |\n|---|---|---|\n{rows}\n"
    vans, facts = read(text)
    assert {(model, year) for _, model, year in vans} == {("Drift SR", 2026), ("Drift LR", 2026)}
    assert facts["Drift LR", "sleeps"].value == 4


def test_vans_in_a_row_of_their_own_below_heads_of_groups(read_file, tmp_path):
    page = """<html lang="en"><body><h1>2026 Drift by Marrowfen Vans</h1><table>
<tr><th></th><th>Short body</th><th colspan="2">Long body</th></tr>
<tr><td>Floor plan</td><td>D-144</td><td>D-170</td><td>D-170XL</td></tr>
<tr><td>Length</td><td>17' 9"</td><td>19' 7"</td><td>20' 11"</td></tr>
<tr><td>GVWR</td><td>8,600 lb</td><td>9,000 lb</td><td>9,350 lb</td></tr>
<tr><td>Sleeps</td><td>2</td><td>2</td><td>3</td></tr></table></body></html>"""
    path = tmp_path / "drift.html"
    path.write_text(page, encoding="utf-8")
    found = read_file(path).found
    assert {van.model for van in found.vans} == {"Drift D-144", "Drift D-170", "Drift D-170XL"}
    assert {f.model: f.value for f in found.facts if f.field == "sleeps"} == {
        "Drift D-144": 2,
        "Drift D-170": 2,
        "Drift D-170XL": 3,
    }


def test_an_adjective_that_only_begins_a_heading_is_no_range(read):
    rows = "| Length | 5.41 m | 5.99 m |\n| MTPLM | 3,300 kg | 3,500 kg |\n| Berths | 2 | 4 |\n"
    text = "# Marrowfen\n\nPrice list, 2026 season\n\n## Brief specification\n\n"
    text += f"| | Plover | Dunlin |\n|---|---|---|\n{rows}"
    text += "\nMarrowfen Ltd, The Old Dairy, Fenny Wold. Prices include VAT.\n"
    vans, _ = read(text)
    assert vans == {("Marrowfen", "Plover", 2026), ("Marrowfen", "Dunlin", 2026)}


def test_headings_that_share_a_word_give_the_range_where_the_title_does_not(read):
    rows = "Length: {}\nGVWR: 9,050 lb.\nSleeps: 2\nFresh: {} gal.\nSolar: 200 W\nBattery: 200 Ah AGM\n\n"
    text = (
        "HAZEL FEN VAN WORKS\nSummary for dealers, 2027 model year\n\nPIPER 17\n\n"
        + rows.format("17 ft. 11 in.", 20)
        + "PIPER 21\n\n"
        + rows.format("21 ft. 2 in.", 30)
    )
    vans, facts = read(text, "summary.txt")
    assert {(model.casefold(), year) for _, model, year in vans} == {("piper 17", 2027), ("piper 21", 2027)}


@pytest.mark.parametrize(
    "head, model",
    [
        ("Drift 5.4<small>ab 54.900 €</small>", "Drift 5.4"),
        ("Drift 6.0 Allrad ab 71.900 €", "Drift 6.0 Allrad"),
        ("5,41 m Drift 540", "Drift 540"),
        ("Drift Zwei der mit dem großen Bett", "Drift Zwei"),
    ],
)
def test_prices_measures_and_remarks_in_a_head_are_no_part_of_the_name(read_file, tmp_path, head, model):
    page = f"""<html lang="de"><body><h1>Unser Drift im Modelljahr 2026</h1><table>
<tr><th></th><th>{head}</th><th>Drift Quer</th></tr>
<tr><td>Länge</td><td>5.413 mm</td><td>5.998 mm</td></tr>
<tr><td>Zul. Gesamtmasse</td><td>3.300 kg</td><td>3.500 kg</td></tr>
<tr><td>Schlafplätze</td><td>2</td><td>3</td></tr></table></body></html>"""
    path = tmp_path / "drift.html"
    path.write_text(page, encoding="utf-8")
    found = read_file(path).found
    assert {van.model for van in found.vans} == {model, "Drift Quer"}


def test_a_van_that_only_a_sentence_names(read):
    text = (
        "# Room for two, and for the dog\n\nWe build one van only. The Pallid Reach II for model year 2026 keeps the "
        "wide galley.\n\n- Length: 19 ft 7 in\n- GVWR: 9,070 lb\n- Sleeps: 2\n- Fresh tank: 21 gal\n- Solar: 400 W\n"
    )
    vans, _ = read(text)
    assert {(model, year) for _, model, year in vans} == {("Pallid Reach II", 2026)}


def test_sizes_and_names_that_could_be_labels_are_vans_beside_their_sisters(read):
    rows = "| Longueur | 4,99 m | 5,40 m | 5,99 m |\n| PTAC | 3 000 kg | 3 300 kg | 3 500 kg |\n"
    rows += "| Couchages | 4 | 2 | 3 |\n"
    vans, _ = read(
        f"# Sarcelle 2026\n\nLa Sarcelle existe en trois tailles.\n\n| | S | M | L |\n|---|---|---|---|\n{rows}"
    )
    assert {model for _, model, _ in vans} == {"Sarcelle S", "Sarcelle M", "Sarcelle L"}


def test_names_of_ranges_over_codes(read_file, tmp_path):
    page = """<html lang="en"><body><h1>Two families at a glance, model year 2027</h1><table>
<tr><th></th><th colspan="2">Tansy</th><th>Brome</th></tr>
<tr><td></td><td>170</td><td>190</td><td>210</td></tr>
<tr><td>Length</td><td>5.18 m</td><td>5.79 m</td><td>6.40 m</td></tr>
<tr><td>GVWR</td><td>3 500 kg</td><td>3 900 kg</td><td>4 490 kg</td></tr>
<tr><td>Sleeps</td><td>2</td><td>2</td><td>3</td></tr></table></body></html>"""
    path = tmp_path / "glance.html"
    path.write_text(page, encoding="utf-8")
    assert {van.model for van in read_file(path).found.vans} == {"Tansy 170", "Tansy 190", "Brome 210"}


def test_the_year_that_only_the_heads_give(read_file, tmp_path):
    page = """<html lang="en"><body><h1>Marrowfen Vans Ltd.</h1><table>
<tr><th></th><th>2027 Drift 5S</th><th>2027 Drift 6S</th></tr>
<tr><td>Length</td><td>5.18 m</td><td>5.79 m</td></tr>
<tr><td>GVWR</td><td>3 500 kg</td><td>3 900 kg</td></tr>
<tr><td>Sleeps</td><td>2</td><td>3</td></tr></table></body></html>"""
    path = tmp_path / "drift.html"
    path.write_text(page, encoding="utf-8")
    assert {(van.model, van.year) for van in read_file(path).found.vans} == {("Drift 5S", 2027), ("Drift 6S", 2027)}


@pytest.mark.parametrize("below", ["### 5.1 The furnace\n\n", ""])
def test_numbered_sections_of_a_guide_are_no_vans(read, below):
    water = "The fresh water tank holds 30 gallons. The gray tank holds 25 gallons. It sleeps 2. It burns propane.\n"
    power = "The battery is 200 Ah. Solar panels of 200 W charge it. The fresh water pump and the furnace need it.\n"
    first, second = ("5 Heating", "7 Electricity") if below else ("2 Heating", "3 Electricity")
    third = "" if below else "## 1 Before you start\n\nRead all of it.\n\n"
    vans, _ = read(
        "# Drift 21\n\nOwner's guide, model year 2026\n\nMarrowfen Coach LLC\n\nGVWR: 9,350 lb\n\nLength: 21 ft\n\n"
        f"{third}## {first}\n\n{below}{water}\n## {second}\n\n{power}{water}"
    )
    assert vans == {("Marrowfen Coach", "Drift 21", 2026)}


@pytest.mark.parametrize("maker", ["", "Hollin "])
def test_vans_of_two_ranges_under_headings_some_of_which_begin_with_the_company(read, maker):
    body = "- Length: {} m\n- GVM: 3500 kg\n- Sleeps: 2\n- Fresh water: 90 L\n- Solar: 200 W\n- Toilet: cassette\n\n"
    text = (
        "# Pipit & Dunlin\n\nSpecifications, 2026 models\n\nThe Pipit 540 is the short one. The Dunlin 620 is the "
        f"other.\n\n## {maker}Pipit 540\n\n{body.format(5.41)}## Dunlin 620\n\n{body.format(6.2)}"
        "Hollin Campers Pty Ltd, 3 Quay Road, Fenny Wold. Hollin Campers.\n"
    )
    vans, facts = read(text)
    assert {(model, year) for _, model, year in vans} == {("Pipit 540", 2026), ("Dunlin 620", 2026)}
    assert facts["Dunlin 620", "length_mm"].value == 6200


DRIFTS = """# Drift

Preisliste 2026 der Marrowfen Mobil GmbH. Es gibt den Drift in zwei Ausführungen.

## {first}

- Länge: 5,98 m
- Frischwasser: 80 l, im Innenraum
- Abwasser: 60 l, unbeheizt
- Solar: 150 W
- Batterie: 100 Ah Lithium

## {second}

- Länge: 5,98 m
- Frischwasser: 100 l, im Innenraum
- Abwasser: 75 l, mit Warmluft beheizt
- Solar: 300 W
- Batterie: 200 Ah Lithium
"""


@pytest.mark.parametrize(
    "first, second, models",
    [
        ("Drift 60 64.900 €", "Drift 60 Winter 84.300 €", {"Drift 60", "Drift 60 Winter"}),
        ("Drift 60 € 64.900,–", "Drift 64 € 84.300,–", {"Drift 60", "Drift 64"}),
        ("Der Marrowfen Drift", "Der Marrowfen Drift Lang", {"Drift", "Drift Lang"}),
    ],
)
def test_headings_with_a_price_or_with_article_and_maker_name_vans(read, first, second, models):
    vans, _ = read(DRIFTS.format(first=first, second=second))
    assert {model for _, model, _ in vans} == models


SHEET = """# Drift

Marrowfen 2026 specification sheet. The Drift comes in two lengths, S and L; for a full winter we build the Alder LX.

|  | S | L |
|---|---|---|
| Length | 5.41 m | 6.36 m |
| Fresh water | 70 L | 95 L |
| Waste water | 55 L, under the floor | 80 L, under the floor |
| Solar | 100 W | 200 W |
| Berths | 2 | 3 |

# {heading}

{opening} is ours for the cold months.

- Length 6.93 m, four-wheel drive
- 130 L fresh tank in the cabin
- 105 L waste tank, heated by warm air
- 400 W of solar
- 300 Ah lithium battery
- Diesel heater, 5 kW
- Double-glazed windows
"""


def test_a_van_with_a_chapter_of_its_own_stands_beside_those_of_a_table(read):
    vans, facts = read(SHEET.format(heading="Alder LX", opening="The Alder LX"))
    assert {model for _, model, _ in vans} == {"Drift S", "Drift L", "Alder LX"}
    tanks = {model: fact.value for (model, field), fact in facts.items() if field == "fresh_tank_l"}
    assert tanks == {"Drift S": 70, "Drift L": 95, "Alder LX": 130}


def test_a_chapter_under_common_words_is_no_van(read):
    vans, _ = read(SHEET.format(heading="Winter equipment", opening="This winter equipment"))
    assert {model for _, model, _ in vans} == {"Drift S", "Drift L"}


def test_what_stands_under_packages_is_no_van_however_much_it_adds(read):
    text = SHEET.format(heading="Hoar Moon", opening="The Hoar Moon").replace("| S | L |", "| Drift S | Drift L |")
    assert {"Drift S", "Drift L", "Hoar Moon"} == {model for _, model, _ in read(text)[0]}
    packages = text.replace("# Hoar Moon", "# Packages\n\n## Hoar Moon\n\n### $9,800 on the L")
    assert {model for _, model, _ in read(packages)[0]} == {"Drift S", "Drift L"}


def test_a_van_of_another_name_with_a_chapter_of_its_own_stands_beside_two_of_a_range(read):
    lines = (
        "- Length {} m\n- 130 L fresh tank\n- 105 L waste tank\n- {} W of solar\n- 300 Ah battery\n"
        "- Sleeps 2\n- Headroom 1.90 m\n\n"
    )
    text = "# MARROWFEN\n\nThe Drift is our small diesel van. The Alder is what came of a year of thinking.\n\n"
    for name, length, solar in (("Drift 19", 5.41, 100), ("Drift 21", 6.36, 200), ("Alder EV", 6.02, 600)):
        text += f"# {name}\n\n{lines.format(length, solar)}"
    text += "# What is meant by winter\n\nThe Drift 21 and the Alder EV have stood outdoors at -25 °C.\n"
    vans, facts = read(text)
    assert {model for _, model, _ in vans} == {"Drift 19", "Drift 21", "Alder EV"}
    solar = {model: fact.value for (model, field), fact in facts.items() if field == "solar_w"}
    assert solar == {"Drift 19": 100, "Drift 21": 200, "Alder EV": 600}


def test_a_heading_of_one_van_and_a_table_of_others_name_all_three(read):
    text = """# Marrowfen campers 2026

We make two ranges: the Drift, a nimble two-berth, and the Alder, for long quiet stretches of road.

## Drift range

### Marrowfen Drift 54

- External length: 5.42 m
- Fresh water: 70 L, under the body
- Grey water: 50 L, under the body
- Heater: diesel air heater, 2 kW
- Solar: 160 W
- House battery: 120 Ah AGM
- GVM: 3300 kg

### Options for the Drift 54

- Inverter, 1200 W: $1190

## Alder range

| | Alder Tourer | Alder Family |
|---|---|---|
| External length | 6.39 m | 6.39 m |
| Fresh water | 110 L | 140 L |
| Grey water | 90 L | 95 L |
| Berths | 2 | 4 |
"""
    vans, facts = read(text)
    assert {model for _, model, _ in vans} == {"Drift 54", "Alder Tourer", "Alder Family"}
    tanks = {model: fact.value for (model, field), fact in facts.items() if field == "fresh_tank_l"}
    assert tanks == {"Drift 54": 70, "Alder Tourer": 110, "Alder Family": 140}


def test_names_alone_above_headings_of_codes_are_ranges_of_their_own(vans_of):
    lines = (
        "- Length: {} ft\n- Sleeps: 2\n- Fresh water: 24 gal\n- Gray water: 20 gal\n- Solar: 200 W\n- Inverter: 2 kW\n"
    )
    lines += "\n"
    alder = "".join(f"### {code}\n\n{lines.format(length)}" for code, length in (("186 T", 18), ("203 M", 20)))
    gorse = "".join(f"### Gorse {code}\n\n{lines.format(length)}" for code, length in (("224", 22), ("224 Snow", 22)))
    text = (
        "# Marrowfen\n\nAlder and Gorse camper vans | 2027\n\n"
        f"## Alder\n\nThe Alder is our three-season van.\n\n{alder}## Gorse\n\nThe Gorse is longer.\n\n{gorse}"
    )
    assert {model for _, model, _ in vans_of(text)} == {"Alder 186 T", "Alder 203 M", "Gorse 224", "Gorse 224 Snow"}


BROKEN_HEADS = """# Marrowfen Drift 2026

| | 540FB | 640N |
|---|---|---|
| Overall length | 5.40 m | 5.99 m |
| Sleeps | 2 | 4 |
| Wheelbase | 3.80 m | 4.04 m |

## Model 540FB 640N

- Fresh tank 90 l
- Gray tank 70 l
- Solar 200 W
- Inverter 1500 W
- Shore power 30 A
- Heated floor
- Cassette toilet

## Model 540FB 640N

- Water heater 10 l

Marrowfen Ltd, Holmbeck.
"""


def test_a_heading_of_two_vans_is_no_third(read):
    vans, _ = read(BROKEN_HEADS)
    assert {model for _, model, _ in vans} == {"Drift 540FB", "Drift 640N"}


DESCRIBED = """## {name}

- Base vehicle: Kelmar Porter 25
- Length: {length}
- Height: 8 ft 10 in
- GVWR: 8,200 lb
- Fresh water: {fresh}
- Gray water: 11 gal, under the floor
- House battery: 100 Ah AGM
- Solar: 100 W
- Windows: single pane

"""


def test_vans_of_two_ranges_each_under_the_companys_name_and_its_own(vans_of):
    vans = (("Alder 170", "17 ft 9 in", "14 gal"), ("Alder 190", "19 ft 8 in", "22 gal"),
            ("Gorse 24 W", "24 ft 2 in", "36 gal"), ("Gorse 24 E", "24 ft 2 in", "40 gal"))  # fmt: skip
    sheets = "".join(DESCRIBED.format(name=f"Marrowfen {name}", length=long, fresh=fresh) for name, long, fresh in vans)
    opening = "The Gorse is our long range.\n\nMarrowfen Vans, Inc., Hythe."
    text = f"# Marrowfen\n\nAlder and Gorse. The 2026 vans.\n\n{opening}\n\n{sheets}"
    assert {model for _, model, _ in vans_of(text)} == {name for name, _, _ in vans}


def test_the_companys_name_over_the_specification_is_no_van(vans_of):
    text = (
        "# Drift 620\n\nMarrowfen, model year 2026\n\nThe Drift 620 is our all-season tourer. Marrowfen builds it.\n\n"
        + DESCRIBED.format(name="Options, at extra cost", length="6,200 mm", fresh="120 l")
        + DESCRIBED.format(name="MARROWFEN", length="6,200 mm", fresh="120 l")
        + DESCRIBED.format(name="Drift 620", length="6,200 mm", fresh="120 l")
        + "## Who we are\n\nMarrowfen Coaches Pty Ltd, 12 Quay Road, Hythe.\n"
    )
    assert {model for _, model, _ in vans_of(text)} == {"Drift 620"}
