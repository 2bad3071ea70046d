"""Names of vans and ranges as the first lines of a document print them, above tables, lists or running text."""

import pytest

from tests.finding.test_names_in_heads import TABLE, models
from tests.reading.drawn import Page

FIGURES = """| | {one} | {two} |
|---|---|---|
| Overall length | 5.90 m | 6.40 m |
| GVWR | 3500 kg | 4250 kg |
| Sleeps | 2 | 3 |
| Fresh water tank | 90 L | 120 L |
| Solar | 100 W | 200 W |
"""


def test_a_name_before_words_of_titles_is_the_range_of_the_vans_listed_below_it(vans_of):
    above = "MARROWFEN\n\nTusk specifications\n\nModel year 2026\n\n{list}\n\nMarrowfen Ltd, 4 Mill Lane.\n\n"
    trims = FIGURES.format(one="Solo", two="Duo")
    assert models(vans_of(above.format(list="Solo, Duo") + trims)) == {"Tusk Solo", "Tusk Duo"}
    plain = above.replace("Tusk", "Brief").format(list="Alder, Gorse")
    assert models(vans_of(plain + FIGURES.format(one="Alder", two="Gorse"))) == {"Alder", "Gorse"}


def test_a_name_alone_in_the_corner_of_the_table_is_the_range_of_trims_listed_on_the_cover(vans_of):
    above = "# Marrowfen 2026\n\n## Hearth L | Duo XL | Brim\n\nMarrowfen Ltd, 4 Mill Lane."
    table = TABLE.format(above=above, one="Hearth L", two="Duo XL", three="Brim")
    assert models(vans_of(table.replace("| | Hearth", "| Tusk | Hearth"))) == {
        "Tusk Hearth L",
        "Tusk Duo XL",
        "Tusk Brim",
    }
    assert models(vans_of(table)) == {"Hearth L", "Duo XL", "Brim"}


def test_a_short_year_alone_is_no_code(vans_of):
    lines = "Length: 5.98 m\n\nGVWR: 3500 kg\n\nSleeps: 2\n\nFresh water: 90 L\n\nSolar: 200 W\n"
    assert models(vans_of(f"# Warm all winter\n\nVans by Marrowfen\n\nMY26\n\n{lines}")) == set()


def test_codes_right_below_words_of_titles_are_the_vans_though_nothing_names_them_again(vans_of):
    bullets = "- Length 5.98 m\n- GVWR 3500 kg\n- Sleeps 2\n- Fresh water tank 90 litres\n- Solar 200 W\n"
    above = "# Marrowfen\n\nOur vans at a glance\n\n640 · 700\n\n## Standard equipment\n\n"
    foot = "\nModel year 2026. Marrowfen Ltd, 4 Mill Lane.\n"
    assert models(vans_of(above + bullets + foot)) == {"640", "700"}


def test_nouns_with_capitals_name_no_van(vans_of):
    lines = "Länge: 5,98 m\n\nGesamtmasse: 3500 kg\n\nSchlafplätze: 2\n\nFrischwassertank: 90 l\n\nSolar: 200 W\n"
    above = "# MARROWFEN\n\nCampingbusse\n\nModelljahr 2026\n\n600\n\n## Unsere Werkstatt\n\nSie steht am Fluss.\n\n"
    assert models(vans_of(f"{above}## Technische Daten\n\n{lines}\nMarrowfen GmbH, Mühlweg 4\n")) == {"600"}


def test_a_heading_below_the_data_of_a_text_names_no_van(vans_of):
    rows = "Height: 9'9\"\nWheelbase: 13'3\"\nInside height: 6'2\"\nBody width: 6'7\"\nSleeps: 2\nSolar: 200 W\n"
    above = "MARROWFEN COACHWORKS\nSpecifications\n2026 models\nThimble\n\nTECHNICAL DATA\n--------------\n\n"
    below = "\nWORTH HEARING\n-------------\n\n* The lamps need no tools\n\nMarrowfen Coachworks Inc., Plank Road\n"
    assert models(vans_of(above + rows + below, "sheet.txt")) == {"Thimble"}


def test_a_head_that_could_be_a_label_is_a_van_beside_names_of_two_words(vans_of):
    rows = ("Empattement | 3,45 m | 4,04 m | 4,04 m", "PTAC | 3 500 kg | 4 250 kg | 4 400 kg", "Couchages | 2 | 3 | 4",
            "Eau propre | 90 L | 120 L | 130 L", "Panneaux solaires | 100 W | 200 W | 300 W")  # fmt: skip
    table = "| | Vieil Aulne | Long Genet | Doux Chardon |\n|---|---|---|---|\n" + "".join(
        f"| {row} |\n" for row in rows
    )
    above = "# Nos fourgons en bref\n\nAnnée-modèle 2026\n\n"
    found = vans_of(f"{above}{table}\nMarrowfen SARL, 4 rue du Moulin\n")
    assert models(found) == {"Vieil Aulne", "Long Genet", "Doux Chardon"}


def test_trims_that_the_text_calls_by_their_own_words_are_vans_of_the_range_above(vans_of):
    text = (
        "The Solo has a fresh water tank of 30 gallons; the Duo XL 40 gallons. The Solo has a gray tank of 20 gallons; "
        "the Duo XL 25 gallons. The Solo keeps the gray tank in an enclosed bay; the Duo XL keeps it inside.\n\n"
        "The Solo has 200 W of solar on the roof; the Duo XL 300 W. The Solo has a house battery of 105 amp-hours AGM; "
        "the Duo XL has a house battery of 95 amp-hours gel. The Solo has a 2,000 W inverter; the Duo XL 3,000 W.\n\n"
        "The Solo has a diesel air heater; the Duo XL has a propane furnace. The Solo is insulated in walls and roof; "
        "the Duo XL is insulated in walls, roof and floor. The Solo has double-glazed windows; the Duo XL has too.\n"
    )
    found = vans_of(f"# Marrowfen\n\nTusk 2026\n\nSolo, Duo XL\n\n{text}\nMarrowfen Corp. | Plank Road\n")
    assert found == {("Marrowfen", "Tusk Solo", 2026), ("Marrowfen", "Tusk Duo XL", 2026)}


def test_a_van_without_measures_is_told_from_water_heat_energy_and_walls(vans_of):
    def asked(question, answer):
        return f"<h3>{question}</h3><p>{answer}</p>"

    answers = (
        asked("What about water?", "It has a black tank of 16 gallons, a 12 V heat pad on the fresh water tank and "
              "the gray tank below the floor. It has a heated dump valve and a winterizing bypass.")
        + asked("How is the Tusk Quartet heated?", "It has a propane furnace and comes with radiant floor heating.")
        + asked("How long can I stay?", "It carries a propane tank of 15 gallons, a 280 Ah house battery and a "
                "3,600 W inverter.")
        + asked("How well is the Tusk Quartet insulated?", "It has insulated walls, roof and floor and insulated "
                "covers for the rear doors.")
    )  # fmt: skip
    page = f"<h1>The Tusk</h1><p>Tusk Quartet</p>{answers}<p>Marrowfen Coachworks, 2026 model year</p>"
    assert "Tusk Quartet" in models(vans_of(f'<html lang="en"><body>{page}</body></html>', "tusk.html"))


def test_an_address_and_a_measure_in_the_first_lines_name_no_van(vans_of):
    lines = "- Length 5.98 m\n- GVWR 3500 kg\n- Sleeps 2\n- Fresh water tank 90 litres\n- Solar 200 W\n"
    assert models(vans_of(f"# Marrowfen\n\n{lines}\nModel year 2026. Marrowfen Ltd, 4 Mill Lane.\n")) == set()


def test_trims_listed_below_their_range_are_not_named_by_the_first_of_them(vans_of):
    text = (
        "Le Solo mesure 5,97 m de long; le Duo mesure 6,51 m de long. Le Solo a 3 couchages; le Duo a 4 couchages. "
        "Le Solo a un empattement de 3,45 m; le Duo a un empattement de 4,04 m.\n\n"
        "Le Solo a un réservoir de carburant de 82 litres; le Duo a un réservoir de carburant de 90 litres. "
        "Le Solo a un convertisseur de 1800 W; le Duo a un convertisseur de 2000 W.\n\nMarrowfen SARL, Rastow\n"
    )
    found = vans_of(f"Tusk : fiche technique\n\nAM 2026\n\nSolo | Duo\n\n{text}")
    assert models(found) == {"Tusk Solo", "Tusk Duo"}


def test_a_base_vehicle_of_a_sentence_and_a_figure_behind_a_code_are_no_range(vans_of):
    text = (
        "The B56 uses the Strimm Lugger 250 as its base vehicle and the B62 uses the Strimm Lugger 250 as its base "
        "vehicle. The B56 is 225 in long and the B62 232 in. The B56 rides on a 136 in wheelbase, the B62 170 in.\n\n"
        "The B56 has a 25-gallon fuel tank and the B62 has a 23-gallon fuel tank. The B56 has a 37-gallon freshwater "
        "tank and the B62 has a 30-gallon freshwater tank.\n"
    )
    foot = "\nMarrowfen Inc. | Rastow\n"
    assert models(vans_of(f"# Marrowfen\n\nCamper vans\n\nSpecifications MY25\n\nB56, B62\n\n{text}{foot}")) == {
        "B56",
        "B62",
    }


def test_a_capital_behind_the_maker_is_the_ranges_though_common_words_follow(vans_of):
    table = TABLE.format(above="# Marrowfen Tusk brochure\n\nModel year 2027", one="540", two="600", three="640")
    foot = "\nMarrowfen Ltd, 4 Mill Lane.\n"
    assert models(vans_of(table + foot)) == {"Tusk 540", "Tusk 600", "Tusk 640"}


def test_names_set_below_one_another_in_the_largest_type_are_vans_and_no_range_with_its_trim(read_file, tmp_path):
    page = Page()
    page.text(40, 30, "MARROWFEN CAMPERVANS", size=13)
    for place, name in enumerate(("Alder", "Gorse")):
        page.text(40, 60 + 38 * place, name, size=34, bold=True)
    page.text(40, 150, "Brochure for the 2026 season", size=13)
    page.text(40, 180, "There are two vans in our yard. The Alder is the short one, the Gorse the long one.")
    rows = [row.strip("| ").split(" | ") for row in FIGURES.format(one="Alder", two="Gorse").splitlines()]
    page.row(220, (240, "Alder"), (400, "Gorse"), bold=True)
    for place, row in enumerate(rows[2:]):
        page.row(240 + 16 * place, *zip((40, 240, 400), row, strict=True))
    path = tmp_path / "vans.pdf"
    path.write_bytes(page.data())
    assert {van.model for van in read_file(path).found.vans} == {"Alder", "Gorse"}


def test_a_code_beside_the_model_year_alone_names_the_only_van(vans_of):
    bullets = "- Länge 5,98 m\n- Gesamtmasse 3500 kg\n- Schlafplätze 2\n- Frischwassertank 90 l\n- Solar 200 W\n"
    above = "# Unsere Wagen auf einen Blick von Marrowfen\n\nMJ 2027 660\n\n## Technische Daten\n\n"
    assert models(vans_of(f"{above}{bullets}\nMarrowfen AG, Mühlweg 4\n")) == {"660"}


def test_a_wall_of_r_values_in_a_list_of_two_vans_names_no_van(vans_of):
    text = (
        "Le Alder mesure 234 po de long et le Gorse 241 po. Le Alder a un réservoir de carburant de 87 litres et le "
        "Gorse 68 litres. Le Alder a une valeur R des murs de R11 et le Gorse R5.\n\n"
        "Le Alder a pour surfaces isolées plafond et parois et le Gorse a pour surfaces isolées plafond.\n"
    )
    assert models(vans_of(f"# Marrowfen\n\nFourgons 2027\n\nAlder · Gorse\n\n{text}\nMarrowfen inc., Velden\n")) == {
        "Alder",
        "Gorse",
    }


def test_a_range_behind_the_title_at_the_head_of_pages_is_that_of_the_codes(read_file, tmp_path):
    rows = [row.strip("| ").split(" | ") for row in FIGURES.format(one="540", two="630").splitlines()]
    page = Page()
    page.text(40, 20, "Marrowfen | Tusk", size=7)
    page.text(40, 80, "Marrowfen", size=30, bold=True)
    page.text(40, 120, "Camper vans", size=12)
    page.text(40, 140, "540 · 630", size=12)
    page.canvas.showPage()
    page.text(40, 20, "Marrowfen | Tusk", size=7)
    page.row(80, (240, "540"), (400, "630"), bold=True)
    for place, row in enumerate(rows[2:]):
        page.row(100 + 16 * place, *zip((40, 240, 400), row, strict=True))
    path = tmp_path / "vans.pdf"
    path.write_bytes(page.data())
    assert {(van.maker, van.model) for van in read_file(path).found.vans} == {
        ("Marrowfen", "Tusk 540"),
        ("Marrowfen", "Tusk 630"),
    }


def test_signs_that_point_to_a_title_are_no_part_of_the_name(vans_of):
    lines = "Length: 5.98 m\n\nGVWR: 3500 kg\n\nSleeps: 2\n\nFresh water: 90 L\n\nSolar: 200 W\n"
    above = "MARROWFEN CAMPERVANS\n\n>>> DRIFT 560 <<< (model year 2027)\n\nThe Drift 560 is for two.\n\n"
    assert models(vans_of(above + lines, "sheet.txt")) == {"Drift 560"}


def test_a_title_above_codes_is_the_company_where_a_sentence_gives_them_a_range(vans_of):
    text = (
        "La gamme Tusk compte le 600 et le 636.\n\nLe 600 mesure 5,44 m de long. Le 600 a 2 couchages. "
        "Le 600 a un PTAC de 3,5 t.\n\nLe 636 mesure 6,36 m de long. Le 636 a 4 couchages. "
        "Le 636 a un PTAC de 3,85 t.\n"
    )
    found = vans_of(f"# Marrowfen\n\nCaractéristiques techniques\n\nMillésime 2027\n\n600 · 636\n\n{text}")
    assert found == {("Marrowfen", "Tusk 600", 2027), ("Marrowfen", "Tusk 636", 2027)}


def test_a_range_signed_by_its_maker_in_the_title_is_that_of_the_codes(vans_of):
    table = FIGURES.format(one="630", two="700")
    found = vans_of(
        f"# Tusk by Marrowfen\n\n## Technical data\n\n{table}\nMarrowfen Ltd, 4 Mill Lane, 2027 model year.\n"
    )
    assert models(found) == {"Tusk 630", "Tusk 700"}


def test_codes_with_a_letter_have_the_range_of_which_running_text_speaks(vans_of):
    text = (
        "# Wendrill\n\nS 541 | S 599 A\n\nModelljahr 2026\n\nDer Wendrill ist in zwei Längen zu haben, als kurzer "
        "S 541 und als S 599 A.\n\n| | S 541 | S 599 A |\n|---|---|---|\n| Gesamtlänge | 5,41 m | 5,99 m |\n"
        "| Gesamtgewicht | 3.500 kg | 3.500 kg |\n| Frischwasser | 90 l | 110 l |\n| Schlafplätze | 2 | 3 |\n\n"
        "Marrowfen GmbH, Hythe.\n"
    )
    assert {model for _, model, _ in vans_of(text)} == {"Wendrill S 541", "Wendrill S 599 A"}


def test_names_between_which_the_sign_is_lost_are_no_one_name(vans_of):
    text = (
        "Marrowfen order guide, model year 2026\n\n# Wendrill 20 Wendrill 22 Highmoor 22\n\nWendrill is the short one. "
        "Two of them are a Wendrill.\n\n| | Wendrill 20 | Wendrill 22 | Highmoor 22 |\n"
        "|---|---|---|---|\n| Length | 5.41 m | 5.99 m | 6.36 m |\n| GVM | 3500 kg | 3500 kg | 4250 kg |\n"
        "| Fresh water | 90 l | 110 l | 110 l |\n| Sleeps | 2 | 3 | 2 |\n\nMarrowfen Ltd, Hythe.\n"
    )
    assert {model for _, model, _ in vans_of(text)} == {"Wendrill 20", "Wendrill 22", "Highmoor 22"}


def test_short_lines_above_a_text_stand_each_for_itself_where_one_lists_vans(vans_of):
    text = (
        "Drift 2026\nby Marrowfen\n20 | 22 | 25\n\n"
        "Born of a wish to wake up somewhere else, each Drift is a four-season van with a 30 A inlet.\n\n"
        "DATA\n\n- Overall length 19 ft (20), 21 ft (22, 25)\n"
        "- Fresh water tank 30 gal, enclosed in the heated bay (22)\n"
        "- GVWR 9,350 lb\n- Sleeps 2\n- Width 81 in\n- Height 9 ft\n- Solar 200 W (20, 22)\n- Solar 400 W (25)\n"
    )
    assert vans_of(text, "drift.txt") == {("Marrowfen", f"Drift {code}", 2026) for code in (20, 22, 25)}


def test_trims_of_a_van_with_a_figure_keep_its_name_though_one_begins_the_other(vans_of):
    above = "# Drift 22 Order Guide\n\nMARROWFEN VANWORKS\n\nModel Year 2026. Trims: Trek and Trek Polar\n\n"
    foot = "\nMarrowfen Vanworks LLC, Mill Lane 12. Trek Polar is our four-season Drift.\n"
    found = vans_of(above + FIGURES.format(one="Trek", two="Trek Polar") + foot, "drift_22_guide.md")
    assert models(found) == {"Drift 22 Trek", "Drift 22 Trek Polar"}


def test_a_package_in_large_letters_is_no_range(vans_of):
    text = (
        "Marrowfen                                Order guide 2026\n\n"
        "This guide covers both Pinion models, the KD-19 and the KD-22. The Pinion is named after the wing feather.\n\n"
        "# Cold Country Package\n\nTwo tank pads and a heated valve.\n\n# Weights and measures\n\n"
    )
    found = vans_of(text + FIGURES.format(one="KD-19", two="KD-22") + "\nMarrowfen LLC, 12 Quay Road.\n", "guide.md")
    assert models(found) == {"Pinion KD-19", "Pinion KD-22"}


def test_codes_with_prices_over_the_list_of_a_package_name_no_further_van(vans_of):
    table = FIGURES.format(one="Drift 636 Cove", two="Drift 636 Moor")
    packages = (
        "\n## Option packages\n\n## Comfort Package\n\n## 636 Cove: included · 636 Moor: £3850\n\n- 100 W solar array\n"
        "- Insulated waste tank\n- Fresh tank insulation\n- Bunk kit, sleeps 4 in total\n- Tow bar, 1700 kg\n\n"
        "## Power Package\n\n## all models: £4950\n\n- Dump valve in heated compartment\n"
        "- Coolant loop through the waste tank\n- 122 litres compressor fridge\n"
    )
    found = vans_of(f"# Marrowfen Drift 2026\n\n{table}{packages}")
    assert models(found) == {"Drift 636 Cove", "Drift 636 Moor"}


@pytest.mark.parametrize(
    ("dateline", "name"),
    [
        ("Fenmouth, 18 September 2025", "en"),
        ("Fenmouth, le 18 septembre 2025", "fr"),
        ("Fenmouth, den 3. Oktober 2025", "de"),
    ],
)
def test_where_and_when_a_release_was_written_is_no_title(vans_of, dateline, name):
    data = {
        "en": "Overall length: {} m\n\nFresh water tank: 80 L\n\nGVWR: 3500 kg\n\nSleeps: 2\n\nSolar: 200 W\n\n",
        "fr": "Longueur hors tout : {} m\n\nEau propre : 80 l\n\nPTAC : 3500 kg\n\nCouchages : 2\n\nBoiler : 10 l\n\n",
        "de": "Gesamtlänge: {} m\n\nFrischwasser: 80 l\n\nGesamtgewicht: 3500 kg\n\nSchlafplätze: 2\n\n",
    }[name]
    above = f"# PRESSE 2026\n\n## {dateline}\n\nMarrowfen. Fenmouth!\n\n"
    text = f"{above}## Drift 540\n\n{data.format(5.41)}## Drift 600 Alder\n\n{data.format(5.99)}"
    assert models(vans_of(text)) == {"Drift 540", "Drift 600 Alder"}
