"""A code in a cell says what the list of options says behind that code, and only of the vans whose cells have it."""

HEAD = "# Marrowfen Drift\n\nModel year 2026\n\n"
MATRIX = (
    "| | Drift 19 | Drift 21 | Drift 24 |\n|---|---|---|---|\n| Overall length | 19 ft | 21 ft | 24 ft |\n"
    "| GVWR | 9,350 lb | 9,350 lb | 11,000 lb |\n| Sleeps | 2 | 2 | 4 |\n"
)
OPTIONS = (
    "\n## Options\n\n- O-314 Tank heating pads $590\n- O-221 Electric floor heating $890\n- O-402 400 W solar $1,250\n"
)


def told(facts, field):
    return {(f.model, f.value, f.availability) for f in facts if f.field == field}


def test_the_words_behind_a_code_answer_the_label_as_an_option(facts_of):
    rows = "| Gray tank heating | O-314 | O-314 | none |\n"
    assert told(facts_of(HEAD + MATRIX + rows + OPTIONS, "drift.md"), "gray_tank_heat") == {
        ("Drift 19", "electric_pad", "optional"),
        ("Drift 21", "electric_pad", "optional"),
        ("Drift 24", "none", "standard"),
    }


def test_only_the_vans_whose_cells_have_a_code_have_its_option(facts_of):
    rows = "| Heated floor | – | O-221 | O-221 |\n| Solar | 200 W | 200 W (O-402) | O-402 |\n"
    facts = facts_of(HEAD + MATRIX + rows + OPTIONS, "drift.md")
    assert told(facts, "heated_floor") == {("Drift 21", True, "optional"), ("Drift 24", True, "optional")}
    assert told(facts, "solar_w") == {
        ("Drift 19", 200, "standard"),
        ("Drift 21", 200, "standard"),
        ("Drift 21", 400, "optional"),
        ("Drift 24", 400, "optional"),
    }


def test_codes_in_a_column_of_a_price_list_are_the_ones_that_cells_point_to(facts_of):
    table = "".join(
        "<tr>" + "".join(f"<td>{cell}</td>" for cell in row.split("|")) + "</tr>"
        for row in (
            "|Drift 19|Drift 21",
            "Length|19 ft|21 ft",
            "GVWR|9,350 lb|9,350 lb",
            "Sleeps|2|2",
            "Inverter|–|E07",
        )
    )
    prices = "".join(
        f"<tr><td>{code}</td><td>{option}</td><td>{price}</td></tr>"
        for code, option, price in (
            ("Code", "Option", "Price"),
            ("P12", "Awning", "$590"),
            ("E07", "Inverter, 2,000 W", "$990"),
        )
    )
    text = f"<html><body><h1>Marrowfen Drift</h1><p>Model year 2026</p><table>{table}</table><h2>Options</h2>"
    facts = facts_of(f"{text}<table>{prices}</table></body></html>", "drift.html")
    assert told(facts, "inverter_w") == {("Drift 21", 2000, "optional")}


def test_a_code_that_no_list_explains_says_nothing(facts_of):
    facts = facts_of(HEAD + MATRIX + "| Gray tank heating | O-314 | O-314 | O-999 |\n", "drift.md")
    assert not told(facts, "gray_tank_heat")


def test_numbers_of_articles_that_rise_are_no_labels_whatever_stands_over_them(facts_of):
    rows = (
        ("1101", "Batterie LiFePO4, insgesamt 400 Ah", "1.620", "3.240"),
        ("1104", "Solarmodul 200 W", "S", "1.150"),
        ("1110", "Wechselrichter 2.000 W", "S", "–"),
        ("2007", "Wasserleitungen isoliert", "S", "S"),
    )
    text = (
        "# Rauhtann\n\nModelljahr 2026\n\n| | RT 541 | RT 600 |\n|---|---|---|\n| Länge | 5,41 m | 5,99 m |\n"
        "| Gesamtmasse | 3.500 kg | 3.880 kg |\n| Schlafplätze | 2 | 3 |\n\n## Preise\n\n"
        "S = Serie · – = nicht erhältlich · Preise in €\n\n"
    )
    for head in ("Art.", "Kennung"):
        table = f"| {head} | Bezeichnung | RT 541 | RT 600 | kg |\n|---|---|---|---|---|\n"
        table += "".join(f"| {' | '.join(row)} | 7 |\n" for row in rows)
        facts = facts_of(text + table, "liste.md")
        assert {(f.model[-3:], f.value, f.availability) for f in facts if f.field == "inverter_w"} == {
            ("541", 2000, "standard"),
            ("600", 2000, "not_available"),
        }
        assert told(facts, "water_lines_insulated") == {(m, True, "standard") for m in {f.model for f in facts}}
