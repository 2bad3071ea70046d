"""Names of vans as heads of tables print them, and of the company as an address does."""

import pytest

from tests.reading.drawn import Page

TABLE = """{above}

| | {one} | {two} | {three} |
|---|---|---|---|
| Overall length | 5.90 m | 6.40 m | 6.95 m |
| GVWR | 3500 kg | 4250 kg | 4400 kg |
| Sleeps | 2 | 3 | 4 |
| Fresh water tank | 90 L | 120 L | 130 L |
| Solar | 100 W | 200 W | 300 W |
"""


def models(vans):
    return {model for _, model, _ in vans}


def test_vans_with_names_of_their_own_take_no_range_from_the_one_named_first(vans_of):
    above = "# Marrowfen Vans\n\n2027 camper vans: Alder, Gorse, Teasel"
    found = vans_of(TABLE.format(above=above, one="Alder", two="Gorse", three="Teasel"))
    assert models(found) == {"Alder", "Gorse", "Teasel"}


def test_a_large_line_that_lists_heads_gives_them_no_range(vans_of):
    above = "# Alder. Gorse.\n\n## Adventure vans for the 2027 model year\n\nBuilt by Marrowfen Vans Ltd."
    found = vans_of(TABLE.format(above=above, one="Alder", two="Alder Plus", three="Gorse"))
    assert models(found) == {"Alder", "Alder Plus", "Gorse"}


def test_a_head_that_only_adds_what_could_be_a_label_to_another_is_a_van(vans_of):
    above = "# Marrowfen Vans\n\n2027 camper vans: Alder, Alder AWD, Teasel"
    found = vans_of(TABLE.format(above=above, one="Alder", two="Alder AWD", three="Teasel"))
    assert models(found) == {"Alder", "Alder AWD", "Teasel"}
    rows = "| Model | Length | GVWR | Sleeps | Solar |\n|---|---|---|---|---|\n"
    for name in ("Alder", "Alder AWD", "Teasel"):
        rows += f"| {name} | 5.90 m | 3500 kg | 2 | 100 W |\n"
    assert models(vans_of(f"{above}\n\n{rows}")) == {"Alder", "Alder AWD", "Teasel"}


def test_the_figure_of_a_code_before_a_word_is_no_measure(vans_of):
    above = "# Drift, model year 2026\n\nMarrowfen Vans Ltd"
    found = vans_of(TABLE.format(above=above, one="K5", two="K7 meadow", three="K7 volt"))
    assert models(found) == {"Drift K5", "Drift K7 meadow", "Drift K7 volt"}


def test_two_ranges_in_one_table_keep_their_names(vans_of):
    above = "# Marrowfen Mill Vans\n\n2026 model guide: Drift and Fellow\n\nTank sizes in litres, 22 and more."
    found = vans_of(TABLE.format(above=above, one="Drift 18", two="Fellow 22", three="Fellow 24"))
    assert models(found) == {"Drift 18", "Fellow 22", "Fellow 24"}


def test_a_title_that_goes_on_in_small_letters_behind_the_code_names_the_van(vans_of):
    lines = "Length: 21 ft\n\nGVWR: 9,350 lb\n\nSleeps: 2\n\nFresh water: 30 gallons\n\nSolar: 200 W\n"
    found = vans_of(f"# The Drift 21 in winter: questions we get\n\n## Cold\n\n{lines}\n## Water\n\n## Heat\n")
    assert models(found) == {"Drift 21"}


@pytest.mark.parametrize(
    "foot",
    [
        "Marrowfen Coach LLC, 14 Fulling Lane, Marrowfen. Printed in May.",
        "Marrowfen Coach, Inc., 700 Plank Road, Marrowfen Mills. Printed in May.",
        "Marrowfen Coach LLC. Eleven people at Marrowfen answer the telephone.",
    ],
)
def test_a_town_of_the_same_name_does_not_shorten_the_makers(vans_of, foot):
    found = vans_of(
        TABLE.format(above="# Drift 2026", one="Drift 18", two="Drift 20", three="Drift 22") + f"\n{foot}\n"
    )
    assert {maker for maker, _, _ in found} == {"Marrowfen Coach"}


def test_a_converter_of_current_is_no_coachbuilder(vans_of):
    rows = (
        "| Converter | 60 A |\n| Length | 6.40 m |\n| GVWR | 3500 kg |\n| Sleeps | 2 |\n| Fresh water tank | 90 L |\n"
    )
    found = vans_of(f"# Marrowfen Drift 21\n\nModel year 2026\n\n| Item | Value |\n|---|---|\n{rows}")
    assert "60 A" not in {maker for maker, _, _ in found}


def test_what_style_alone_sets_apart_on_a_web_page_is_apart(vans_of):
    heads = "".join(
        f'<th><a href="/x"><strong>{name}</strong></a><span class="price">from ${price},400</span></th>'
        for name, price in (("Drift 17", 78), ("Drift 20", 96), ("Drift 20 Nightfall", 134))
    )
    rows = "".join(
        f"<tr><td>{label}</td>{''.join(f'<td>{value}</td>' for value in values)}</tr>"
        for label, values in (("Length", ("17 ft", "20 ft", "20 ft")), ("GVWR", ("8,350 lb", "9,300 lb", "9,950 lb")),
                              ("Sleeps", ("2", "2", "2")), ("Fresh water", ("20 gal", "25 gal", "30 gal")))
    )  # fmt: skip
    page = f"<h1>Compare the Drift</h1><table><thead><tr><td></td>{heads}</tr></thead>{rows}</table>"
    found = vans_of(f'<html lang="en"><body>{page}</body></html>', "compare.html")
    assert models(found) == {"Drift 17", "Drift 20", "Drift 20 Nightfall"}


def test_a_column_of_masses_or_dealers_is_no_van(vans_of):
    rows = "| Insulated gray tank | 4 | 390 |\n| Heated floor | 6 | 840 |\n| Solar, 200 W | 12 | 900 |\n"
    figures = "Length: 6.40 m\n\nGVWR: 3500 kg\n\nSleeps: 2\n\nFresh water: 90 L\n\n"
    head = "# Marrowfen Drift 21\n\nModel year 2026\n\n"
    found = vans_of(f"{head}{figures}| Option | Mass (kg) | Dealer |\n|---|---|---|\n{rows}")
    assert len(found) == 1 and not any("kg" in model or "Dealer" in model for model in models(found))


def test_a_measure_beside_a_label_in_large_type_names_no_van(vans_of):
    table = TABLE.format(above="# Drift 2026", one="Drift 540 Q", two="Drift 600 Q", three="Drift 640 L")
    assert models(vans_of(f"{table}\n# Overall height 2.65 m\n")) == {"Drift 540 Q", "Drift 600 Q", "Drift 640 L"}


MANY = (
    "| {above} |\n|---|---|---|---|\n| Chassis | Lodeman 30 | Lodeman 35 | Lodeman 35 |\n"
    "| Length | 5.40 m | 5.98 m | 5.98 m |\n| Height | 2.58 m | 2.67 m | 2.81 m |\n"
    "| GVWR | 3300 kg | 3500 kg | 3850 kg |\n"
    "| Sleeps | 2 | 3 | 2 |\n| Fresh water tank | 68 L | 98 L | 112 L |\n| Gray water tank | 55 L | 85 L | 90 L |\n"
    "| Solar | 100 W | 200 W | 300 W |\n| Inverter | 1000 W | 1500 W | 2000 W |\n"
    "| Water heater | 10 L | 10 L | 12 L |\n"
)


def test_plain_words_over_a_table_of_many_things_are_trims(vans_of):
    above = "# Drift 2026\n\nThree camper vans by Marrowfen Coach LLC.\n\n"
    found = vans_of(above + MANY.format(above=" | Short | Long | Long Winter"))
    assert models(found) == {"Drift Short", "Drift Long", "Drift Long Winter"}


@pytest.mark.parametrize(
    "heads, rows",
    [
        ("Low | Medium | High", "| Output | 1.6 kW | 2.5 kW | 4.0 kW |\n| Fuel use | 0.2 l/h | 0.3 l/h | 0.5 l/h |\n"),
        ("Front | Rear | Top", "| Length | 1.9 m | 2.1 m | 2.1 m |\n| Width | 0.8 m | 0.8 m | 1.3 m |\n"),
    ],
)  # fmt: skip
def test_plain_words_over_a_table_of_few_things_are_settings_of_the_van(vans_of, heads, rows):
    figures = "GVWR: 3500 kg\n\nLength: 6.36 m\n\nSleeps: 2\n\nFresh water: 90 L\n\n"
    found = vans_of(f"# Drift 21\n\nMarrowfen Coach LLC\n\n{figures}| | {heads} |\n|---|---|---|---|\n{rows}")
    assert models(found) == {"Drift 21"}


def test_a_caption_before_one_code_names_no_range(vans_of):
    above = (
        "# Drift\n\nThree camper vans by Marrowfen Coach LLC.\n\n541, lounge and Folding bed 600, bed across 640 W\n\n"
    )
    found = vans_of(above + TABLE.format(above="Figures", one="541", two="600", three="640 W"))
    assert models(found) == {"Drift 541", "Drift 600", "Drift 640 W"}


def test_a_word_of_the_trade_names_a_range_where_page_and_file_are_headed_by_it(read_file, tmp_path):
    cells = "".join(
        f"<tr><th>{label}</th><td>{a}</td><td>{b}</td></tr>"
        for label, a, b in (("Length", "19 ft", "22 ft"), ("GVWR", "8,700 lb", "11,000 lb"), ("Sleeps", "2", "4"))
    )
    path = tmp_path / "page.html"
    path.write_text(
        "<html><head><title>Parallel</title></head><body><h1>Parallel</h1><p>Marrowfen Coach LLC, 14 Fulling Lane</p>"
        f"<table><tr><th></th><th>40 FL</th><th>49 RB</th></tr>{cells}</table></body></html>",
        encoding="utf-8",
    )
    assert {van.model for van in read_file(path).found.vans} == {"Parallel 40 FL", "Parallel 49 RB"}


def test_a_letter_and_a_figure_over_a_column_are_a_floorplan_and_no_r_value(vans_of):
    found = vans_of(
        TABLE.format(
            above="# Drift order form, model year 2026\n\nThe Drift is built to order.",
            one="R17",
            two="R19",
            three="R22",
        )
    )
    assert models(found) == {"Drift R17", "Drift R19", "Drift R22"}


def test_a_numbered_section_names_no_van(vans_of):
    lines = "Length: 21 ft\n\nGVWR: 9,350 lb\n\nSleeps: 2\n\nFresh water: 30 gallons\n\nSolar: 200 W\n"
    found = vans_of(f"# The Drift\n\n{lines}\n## 1. Packages\n\n## 2. Packages\n\nThe Drift has packages.\n")
    assert models(found) == {"Drift"}


def test_what_a_line_adds_to_a_van_is_no_part_of_its_name(vans_of):
    above = "# Marrowfen Drift 2026\n\nDrift 18 adds\n\nA rack for bikes."
    found = vans_of(TABLE.format(above=above, one="Drift 18", two="Drift 20", three="Drift 22"))
    assert models(found) == {"Drift 18", "Drift 20", "Drift 22"}


def test_vans_of_a_small_table_are_described_in_running_text(vans_of):
    text = (
        "# Marrowfen launches the Drift\n\n"
        "The Drift Bay is 5.40 m long, the Drift Cove 5.99 m. Each Drift sleeps two.\n\n"
        "| | Drift Bay | Drift Cove |\n|---|---|---|\n| House battery | 100 Ah | 200 Ah |\n| Solar | 100 W | 200 W |\n"
        "| Inverter | 1000 W | 2000 W |\n"
    )
    assert models(vans_of(text)) == {"Drift Bay", "Drift Cove"}


def test_a_trim_that_goes_on_from_another_takes_the_range_too(vans_of):
    text = "The Drift is a camper van. The Drift Duo is for two."
    above = f"Marrowfen Vans\n\n# Drift\n\n## Technical data for three layouts\n\n{text}"
    found = vans_of(TABLE.format(above=above, one="Solo", two="Duo", three="Duo 4x4"))
    assert models(found) == {"Drift Solo", "Drift Duo", "Drift Duo 4x4"}


def test_a_figure_alone_names_a_van_where_the_text_says_so(vans_of):
    text = (
        "# 217\n\nMarrowfen & Holt\n\nModel year 2026\n\n"
        "The 217 is a camper van for two who leave on Friday. Everything in the lists is standard on every 217.\n\n"
        "Length: 21 ft\n\nGVWR: 9,350 lb\n\nSleeps: 2\n\nFresh water: 30 gallons\n\nSolar: 200 W\n\n"
        "Come and sit in one: Marrowfen & Holt Inc., 17 Tannery Lane, Holt Landing.\n"
    )
    found = vans_of(text, name="marrowfen_holt_217_flyer.md")
    assert {(maker, model) for maker, model, _ in found} == {("Marrowfen & Holt", "217")}


def test_a_number_of_stock_is_no_van(vans_of):
    text = (
        "# 2022 Marrowfen Drift 170\n\nUsed camper van, one previous owner, low mileage\n\n"
        "| Stock no. | Model year | Miles | Sleeps |\n|---|---|---|---|\n| MF-3092 | 2022 | 41,870 | 2 |\n\n"
        "Maker: Marrowfen\n\nModel: Drift 170\n\nLength: 21 ft\n\nGVWR: 9,350 lb\n\nFresh water: 30 gallons\n"
    )
    assert vans_of(text) == {("Marrowfen", "Drift 170", 2022)}


def test_a_letter_that_describes_a_van_in_sentences_names_it_and_not_its_base_vehicle(vans_of):
    text = (
        "Marrowfen Vans\nNews from the yard, no. 12\n\nHello from the yard,\n\nTHE NEW VAN\n-----------\n\n"
        "So: the Afterword. It is a 2027 model, it is on the Lennard Portage 3500 with the 3.0 liter diesel, and it\n"
        "drives all four wheels. It is 21 feet 5 inches long and 6 feet 10 inches wide. The wheelbase is 159 inches\n"
        "and the GVWR is 10,100 pounds. Two people sleep in it.\n\nWATER\n\n"
        "Fresh water in the Afterword is 34 gallons. Gray water is 27 gallons.\n\nHEAT\n\n"
        "A diesel air heater, 13,600 BTU per hour of output.\n\nDOES IT DO WINTER?\n\n"
        "It does. In January we put the Afterword into a cold chamber at minus 10 Fahrenheit for two nights.\n\n"
        "Marrowfen Vans LLC, 2 Tannery Lane, Penhollow\n"
    )
    assert vans_of(text, name="letter.txt") == {("Marrowfen Vans", "Afterword", 2027)}


def test_a_shouted_company_leaves_no_range_of_its_last_word(vans_of):
    above = "MARROWFEN COACH COMPANY\n\n# 2026 Model Year Comparison\n\nMarrowfen vans are built by hand."
    table = TABLE.format(above=above, one="MB180", two="MB200", three="MB200-W")
    assert models(vans_of(table + "\nMarrowfen Coach Company, Inc., 12 Osier Lane\n")) == {"MB180", "MB200", "MB200-W"}


def test_the_short_form_of_one_of_the_vans_is_no_range(vans_of):
    above = "Marrowfen Coach LLC, 14 Fulling Lane\n\nThe range for 2026\n\nMinus thirty is all the Polar needs.\n"
    assert models(vans_of(TABLE.format(above=above, one="Kilo", two="Mike", three="Mike Polar"))) == {
        "Kilo", "Mike", "Mike Polar",
    }  # fmt: skip


def test_what_stands_over_prices_is_no_range_of_the_codes_beside_it(vans_of):
    prices = "| Base prices | 540 | 600 | 600 Frost |\n|---|---|---|---|\n| ex works | 61,900 | 65,400 | 79,800 |\n"
    above = f"# Drift\n\nPrice list of the model year 2026\n\nThe Drift changes its coat twice a year.\n\n{prices}"
    assert models(vans_of(TABLE.format(above=above, one="540", two="600", three="600 Frost"))) == {
        "Drift 540", "Drift 600", "Drift 600 Frost",
    }  # fmt: skip


@pytest.mark.parametrize("number", ["No. 14", "Issue 14", "Vol. 3", "Sheet no. 27"])
def test_the_number_of_an_issue_names_no_van(vans_of, number):
    above = f"MARROWFEN  {number}  THE 2026 VANS\n\n# Alder & Gorse\n\nThe Alder is small. The Gorse is warm."
    table = TABLE.replace(" {three} |", "").replace("|---|---|---|---|", "|---|---|---|")
    table = "\n".join(
        line.rsplit("|", 2)[0] + "|" if line.startswith("| ") and "m |" in line else line for line in table.split("\n")
    )
    assert models(vans_of(table.format(above=above, one="Alder", two="Gorse"))) == {"Alder", "Gorse"}


def test_sections_of_a_sheet_are_no_trims_of_its_van(vans_of):
    rows = "Länge: 5,99 m\n\nSchlafplätze: 2\n\nFrischwasser: 115 l\n\nAbwasser: 95 l\n\nSolar: 200 W\n"
    text = (
        f"MARROWFEN WAGENBAU\n\n# Drift 599\n\nDatenblatt zum Modelljahr 2027\n\nDer Drift 599 ist kurz.\n\n"
        f"## Technische Daten\n\n{rows}\n## Optionen\n\n{rows}"
    )
    assert models(vans_of(text, name="datenblatt.md")) == {"Drift 599"}


def test_a_row_of_vans_heads_a_table_whatever_its_label_says(vans_of):
    text = (
        "# Drift\n\nDrift 20 and Drift 24. Base equipment, packages and prices for 2026\n\n"
        "| Every base van | Drift 20, from $94,500 | Drift 24, from $129,000 |\n"
        "| Chassis | Calder Workman 2500 | Calder Workman 3500 |\n| Length | 19 ft 8 in | 23 ft 9 in |\n"
        "| GVWR | 9,010 lb | 11,030 lb |\n| Sleeps | 2 | 2 |\n| Fresh tank | 22 gal | 34 gal |\n"
    )
    assert models(vans_of(text, name="drift.txt")) == {"Drift 20", "Drift 24"}


def test_a_page_of_a_shop_names_the_van_below_its_menu(vans_of):
    text = (
        "Skip to content\nFree delivery on bedding over £60  |  Vans by appointment  |  0 items  £0.00\n\n"
        "MARROWFEN CAMPERS\nHome    Vans    Bedding    Gift cards    Our shed    Basket (0)\n\n"
        "Home > Vans > Ready to go > Drift 5.4\n\nDRIFT 5.4 - VAN NO. 117\n\nThe Drift is the smallest van we make,\n"
        "and the one we keep for ourselves. It is a 2026 model.\n\nSPECIFICATION\n\nLength: 5.41 m\nBerths: 2\n"
        "Fresh water: 72 litres\nWaste water: 60 litres\nSolar: 175 W\nInverter: 1200 W\n"
    )
    assert models(vans_of(text, name="marrowfen_drift_54_shop_page.txt")) == {"Drift 5.4"}


def test_a_code_that_begins_with_the_letter_of_its_range_has_its_whole_name(vans_of):
    above = "MARROWFEN\n\n# Range V\n\nTechnical data, model year 2026\n\nV54 D · V60 D · V60 H\n\nThe V54 D is short."
    table = TABLE.format(above=above, one="V54 D", two="V60 D", three="V60 H")
    assert models(vans_of(table)) == {"V54 D", "V60 D", "V60 H"}


def test_a_letter_says_in_brackets_of_which_van_it_is(vans_of):
    text = (
        "From:    Orla Tennick <orla@marrowfen.example>\nTo:      A buyer <buyer@post.example>\n"
        "Subject: Re: Questions before we sign (Drift 22)\n\nHi,\n\nThe Drift 22 is a 2026 model. It is 22 ft 1 in\n"
        "long and sleeps 2. We had a Drift 22 in the chamber.\n\n"
        "Fresh water: 34 gal\nGray water: 30 gal\nInverter: 2,000 W\n"
        "GVWR: 9,350 lb\nSolar: 400 W\n"
    )
    assert models(vans_of(text, name="re_questions.txt")) == {"Drift 22"}


def test_headings_name_vans_between_common_words(vans_of):
    rows = "Length: {} m\n\nSleeps: 2\n\nFresh water: {} L\n\nGray water: 60 L\n\nSolar: {} W\n\n"
    text = (
        "MARROWFEN VANS\n\n# Short stories\n\nTwo vans for 2026: the Alder 19 and the Gorse 23.\n\n"
        f"## The Alder 19 in numbers\n\n{rows.format(5.9, 80, 100)}"
        f"## The Gorse 23 in numbers\n\n{rows.format(6.9, 120, 300)}"
    )
    assert models(vans_of(text)) == {"Alder 19", "Gorse 23"}


def test_the_company_opens_a_line_of_several_parts(vans_of):
    above = "# Alder and Gorse\n\nMarrowfen Vans | MY26 range sheet | three vans, one shed\n\nA Marrowfen is wired."
    found = vans_of(TABLE.format(above=above, one="Alder 54", two="Alder 60", three="Gorse 60"))
    assert {maker for maker, _, _ in found} == {"Marrowfen Vans"}


def test_a_van_that_customers_had_before_is_none_of_the_page(vans_of):
    rows = "Length: 5.9 m\n\nSleeps: 2\n\nFresh water: 80 L\n\nGray water: 60 L\n\nSolar: 100 W\n\n"
    said = "Moved up from a Drift 18 with 18 gallons of water. The Drift 18 was smaller.\n"
    text = f"MARROWFEN VANS\n\n# Drift 20\n\nModel year 2026\n\n{rows}## What customers say (31)\n\n{said}"
    assert models(vans_of(text)) == {"Drift 20"}


@pytest.mark.parametrize("foot", ["Marrowfen Drift 2027", "Data sheet Drift"])
def test_words_before_the_range_in_a_running_line_are_no_part_of_it(read_file, tmp_path, foot):
    page = Page()
    page.text(40, 30, "MARROWFEN COACHWORKS", size=10, bold=True)
    page.text(40, 50, "Drift", size=24, bold=True)
    page.text(40, 85, "Model year 2027. The first Drift was finished on a day of sleet.")
    page.row(120, (40, "By the numbers"), (260, "17T"), (360, "20B"), (460, "22D"), bold=True)
    rows = [
        ("Overall length", "5.41 m", "5.99 m", "6.36 m"),
        ("GVWR", "3500 kg", "4250 kg", "4400 kg"),
        ("Sleeps", "2", "3", "4"),
        ("Fresh water", "70 L", "90 L", "110 L"),
        ("Solar", "1 W", "2 W", "3 W"),
    ]
    for number, row in enumerate(rows):
        page.row(140 + 14 * number, *zip((40, 260, 360, 460), row, strict=True))
    page.text(40, 815, foot, size=7)
    path = tmp_path / "drift.pdf"
    path.write_bytes(page.data())
    assert {van.model for van in read_file(path).found.vans} == {"Drift 17T", "Drift 20B", "Drift 22D"}


def test_one_of_several_vans_is_not_the_range_of_the_others(vans_of):
    above = (
        "# FINCH & MARROWFEN\n\nAll our vans, 2026\n\nWe make three vans. The Telegram is happy in frost;\n"
        "there are the Alder, Telegram, and the Gorse. The Telegram gets there before the Alder and the Gorse do."
    )
    table = TABLE.format(above=above, one="Alder", two="Telegram", three="Gorse")
    assert models(vans_of(table)) == {"Alder", "Telegram", "Gorse"}


def test_a_trim_that_is_called_as_owners_are_makes_no_used_van(vans_of):
    above = (
        "MARROWFEN Van builders\n\n# Drift 21\n\nKeeper and Warden 2026\n\nThe keeper opens the gate. In Keeper trim\n"
        "it is a three-season van; the Keeper sleeps two.\n"
    )
    rows = "- Length 6.40 m\n- GVWR 4250 kg\n- Fresh water 90 L\n- Gray water 70 L\n- Solar 200 W\n- Keeper: 2 berths\n"
    found = vans_of(f"{above}\n{rows}")
    assert {year for _, _, year in found} == {2026} and {maker for maker, _, _ in found} != {""}


def test_the_label_before_the_vans_of_a_row_is_no_range_of_them(vans_of):
    above = "MARROWFEN\n\n# Our vans 2026\n\nEvery model is a van for all seasons.\n\n## Version H58 H68 H72"
    assert models(vans_of(TABLE.format(above=above, one="H58", two="H68", three="H72"))) == {"H58", "H68", "H72"}


def test_the_range_may_stand_over_the_labels_beside_a_column_of_groups(read_file, tmp_path):
    page = Page()
    page.text(40, 30, "A table for long roads, model year 2026", size=16, bold=True)
    rows = [
        ("", "Drift", "700 Cove", "700 Vale"),
        ("Sizes", "Overall length (m)", "5.73", "6.09"),
        ("", "Overall height (m)", "2.66", "2.62"),
        ("", "GVWR (kg)", "3500", "4100"),
        ("Water", "Fresh water (litres)", "111", "153"),
        ("", "Gray water (litres)", "92", "122"),
    ]
    for number, row in enumerate(rows):
        top = 70 + 20 * number
        for x0, x1, text in zip((40, 110, 260, 340), (110, 260, 340, 420), row, strict=True):
            if x0 > 40 or text or not number:
                tall = {"Sizes": 3, "Water": 2}.get(text, 1)
                page.frame(x0, top, x1, top + 20 * tall)
            page.text(x0 + 4, top + 5, text, bold=not number)
    page.text(40, 220, "Marrowfen Mobile Ltd, 4 Fulling Lane")
    path = tmp_path / "table.pdf"
    path.write_bytes(page.data())
    assert {van.model for van in read_file(path).found.vans} == {"Drift 700 Cove", "Drift 700 Vale"}


def test_figures_that_a_sentence_tells_of_vans_are_no_codes_of_theirs(vans_of):
    text = (
        "MARROWFEN\n\n# Partir quand les autres restent\n\nDrift | Modèle 2027\n\nAlder · Solo Plus · Larch\n\n"
        "L'Alder a un empattement de 345 cm, le Solo Plus de 404 cm et le Larch de 404 cm.\n\n"
        "L'Alder demande 69 W au chauffage, le Solo Plus 74 W et le Larch 82 W.\n\n"
        "Réservoir d'eau propre : l'Alder 70 l, le Solo Plus 90 l et le Larch 110 l. Le Larch est long.\n"
    )
    assert not [model for model in models(vans_of(text, name="drift.md")) if "W" in model]


def test_a_table_of_equipment_alone_describes_the_vans_over_its_columns(facts_of):
    rows = "".join(
        f"| {label} | {one} | {two} |\n"
        for label, one, two in (
            ("Fresh water tank", "70 L", "110 L"), ("Fresh tank insulated", "no", "yes"), ("Fuel tank", "75 L", "95 L"),
            ("Inverter", "1000 W", "2000 W"), ("Solar", "100 W", "300 W"), ("Toilet", "cassette", "dry"),
            ("Water lines heated", "no", "yes"), ("Water lines insulated", "yes", "yes"),
            ("Insulated rear door shades", "no", "yes"), ("Windows", "double-glazed", "double-glazed"),
        )
    )  # fmt: skip
    facts = facts_of(f"# Drift 2026\n\n## Equipment\n\n|  | Drift Solo | Drift Duo |\n|---|---|---|\n{rows}", "a.md")
    assert {fact.model: fact.value for fact in facts if fact.field == "solar_w"} == {
        "Drift Solo": 100,
        "Drift Duo": 300,
    }


def test_the_code_between_the_range_and_its_trims_is_part_of_their_names(vans_of):
    above = "# Marrowfen Tusk\n\n## Tusk 600 Solo\n\nFor two.\n\n## Tusk 600 Duo\n\nFor four."
    assert models(vans_of(TABLE.format(above=above, one="Solo", two="Duo", three="Tusk 640 Brim"))) == {
        "Tusk 600 Solo",
        "Tusk 600 Duo",
        "Tusk 640 Brim",
    }


def test_letters_behind_the_code_of_a_sister_name_a_van_though_they_could_be_a_label(vans_of):
    above = "# Drift\n\nBuilt in the British Isles."
    found = vans_of(TABLE.format(above=above, one="RB", two="QD", three="QD-W"))
    assert models(found) == {"Drift RB", "Drift QD", "Drift QD-W"}


def test_a_letter_before_all_codes_stays_where_a_text_has_it_before_one_of_them(vans_of):
    said = "The short one of the Drift models has 54 cm of aisle. The Q 61 FB sleeps four."
    above = f"# Marrowfen Drift\n\n2027 price list\n\n{said}\n\nBuilt by Marrowfen Vans Ltd."
    found = vans_of(TABLE.format(above=above, one="Q 54", two="Q 61 FB", three="Q 66 DB"))
    assert models(found) == {"Drift Q 54", "Drift Q 61 FB", "Drift Q 66 DB"}


def test_figures_that_ran_together_name_no_vans(vans_of):
    text = (
        "# Marrowfen Drift 2026\n\n| | 10/69 l 87 l | 10/165 l 63 l |\n|---|---|---|\n| Sleeps | 2 | 3 |\n"
        "| Overall length | 5.40 m | 5.99 m |\n| Wheelbase | 3.80 m | 4.04 m |\n\nMarrowfen Ltd, Holmbeck.\n"
    )
    assert not any("69" in model or "165" in model for _, model, _ in vans_of(text))


def test_a_size_of_tires_over_all_columns_is_no_van(vans_of):
    rows = (
        "| | 600XL | 636RB | 225/75 R16 C |",
        "|---|---|---|---|",
        "| Length | 5.99 m | 6.36 m | 6.36 m |",
        "| Sleeps | 2 | 3 | 3 |",
        "| Fresh water | 90 L | 99 L | 99 L |",
        "| Solar | 90 W | 90 W | 90 W |",
    )
    text = "# Marrowfen Tusk 2027\n\n600XL · 636RB\n\n" + "\n".join(rows) + "\n\nMarrowfen Ltd, 4 Mill Lane\n"
    assert models(vans_of(text)) == {"Tusk 600XL", "Tusk 636RB"}


@pytest.mark.parametrize(
    ("sign", "title", "lead"),
    [
        ("No. ", "Marrowfen Drift", ""),
        ("No. ", "Drift", "Drift "),
        ("Nr. ", "Drift", "Drift "),
        ("n° ", "Drift", "Drift "),
    ],
)
def test_the_sign_of_a_number_in_a_vans_name_denies_nothing(vans_of, sign, title, lead):
    numbers = [f"{lead}{sign}{number}" for number in (3, 4, 6)]
    found = vans_of(
        TABLE.format(above=f"# {title}\n\n2027", **dict(zip(("one", "two", "three"), numbers, strict=True)))
    )
    assert models(found) == {f"{title} {sign}{number}" for number in (3, 4, 6)}


def test_a_numbered_part_of_a_van_heads_no_column_of_vans(vans_of):
    found = vans_of(
        TABLE.format(above="# Drift\n\n2027", one="Battery no. 1", two="Battery no. 2", three="Battery no. 3")
    )
    assert not any("no." in model for model in models(found))


def test_the_range_that_corners_name_stays_before_trims_that_begin_alike(vans_of):
    table = TABLE.format(above="", one="Solo", two="Solo Plus", three="Solo Far").replace("| |", "| Drift |")
    found = vans_of(
        f"MARROWFEN\n\n# Drift – 2026 models\n\nSolo · Solo Plus · Solo Far\n{table}\nMarrowfen Vans Ltd.\n"
    )
    assert models(found) == {"Drift Solo", "Drift Solo Plus", "Drift Solo Far"}


def test_a_sentence_in_large_type_names_no_range(read_file, tmp_path):
    page = Page()
    page.text(40, 40, "Marrowfen Reisemobile", size=20)
    page.text(40, 70, "Modelle 2027", size=16)
    page.canvas.showPage()
    for top, cells in enumerate(
        (("", "630", "660"), ("Länge (mm)", "5 615", "5 975"), ("Schlafplätze", "2", "3"),
         ("Frischwasser", "90 l", "95 l"), ("Grauwasser", "70 l", "80 l"), ("Solaranlage", "100 W", "200 W"))
    ):  # fmt: skip
        page.row(60 + 20 * top, (40, cells[0]), (240, cells[1]), (360, cells[2]))
    page.text(40, 300, "Der Solarladeregler verträgt 40 A.", size=14)
    path = tmp_path / "vans.pdf"
    path.write_bytes(page.data())
    assert {van.model for van in read_file(path).found.vans} == {"630", "660"}


@pytest.mark.parametrize("margin", ["Marrowfen \u00b7 Gamme 2026", "Marrowfen \u00b7 Sittelle et Harfang"])
def test_neither_the_company_nor_a_list_of_vans_in_margins_is_a_range(read_file, tmp_path, margin):
    page = Page()
    for sheet in range(2):
        if sheet:
            page.canvas.showPage()
        page.text(40, 20, margin, size=8)
        page.text(40, 40, "Carrosserie Marrowfen" if not sheet else "Cellule", size=20)
        rows = (("", "Sittelle", "Harfang"), ("Longueur", "5,41 m", "5,99 m"), ("PTAC", "3 300 kg", "3 500 kg"),
                ("Couchages", "2", "3"), ("Eau propre", "70 l", "95 l"))  # fmt: skip
        for top, cells in enumerate(rows):
            page.row(90 + 20 * top, (40, cells[0]), (240, cells[1]), (360, cells[2]), bold=not top)
    page.text(40, 400, "Carrosserie Marrowfen SARL, 3 quai de la Filature", size=7)
    path = tmp_path / "gamme.pdf"
    path.write_bytes(page.data())
    assert {van.model for van in read_file(path).found.vans} == {"Sittelle", "Harfang"}


def test_two_columns_of_one_table_are_two_vans_though_one_name_ends_in_the_other(vans_of):
    text = (
        "# Marrowfen, builders of vans\n\nDrift & Grand Drift\n\nCollection 2026\n\n"
        "The Drift is small. The Grand Drift is long.\n\n"
        "| | Drift | Grand Drift |\n|---|---|---|\n| Length | 5.40 m | 5.80 m |\n| Height | 2.64 m | 2.68 m |\n"
        "| GVWR | 3300 kg | 3500 kg |\n| Fresh water | 80 l | 110 l |\n| Sleeps | 2 | 3 |\n\nMarrowfen Ltd, Hythe.\n"
    )
    assert {model for _, model, _ in vans_of(text)} == {"Drift", "Grand Drift"}


def test_the_companys_word_before_all_names_is_no_part_of_them(vans_of):
    text = (
        "# Marrowfen Campervans\n\nModel year 2026 · Brochure and technical data\n\n"
        "Marrowfen Drift 54 · Marrowfen Drift 60 · Marrowfen Gorse 60\n\nThe Gorse is longer. Drifts are small.\n\n"
        "| | Drift 54 | Drift 60 | Gorse 60 |\n|---|---|---|---|\n| Length | 5.41 m | 5.99 m | 5.99 m |\n"
        "| Height | 2.60 m | 2.60 m | 2.78 m |\n| MTPLM | 3300 kg | 3500 kg | 3500 kg |\n| Berths | 2 | 2 | 4 |\n"
    )
    vans = {(maker, model) for maker, model, _ in vans_of(text)}
    assert vans == {("Marrowfen Campervans", model) for model in ("Drift 54", "Drift 60", "Gorse 60")}


def test_letters_of_a_code_are_no_weight(vans_of):
    rows = (("Length", "5.97 m", "6.68 m"), ("Width", "2.08 m", "2.08 m"), ("GVWR", "3,878 kg", "4,241 kg"),
            ("Fresh water", "76 L", "114 L"), ("Gray water", "68 L", "98 L"), ("Solar", "100 W", "190 W"))  # fmt: skip
    table = "<table><tr><th></th><th>Drift 19</th><th>Drift 22 LB</th></tr>" + "".join(
        f"<tr>{''.join(f'<td>{cell}</td>' for cell in row)}</tr>" for row in rows
    )
    page = f"<h1>Marrowfen</h1><h2>The Drift 2026</h2><p>We sell the Drift 19 and the Drift 22 LB.</p>{table}</table>"
    assert {model for _, model, _ in vans_of(page, "guide.html")} == {"Drift 19", "Drift 22 LB"}
