"""Columns of a page: those that are sheets of their own are read apart, prices stay with what they price."""

from itertools import chain

from specscan.reading.read import read_document
from tests.reading.drawn import Page

LABELS = ("Length: {} m", "Sleeps: {}", "Gray tank heated: {}", "Fresh tank heated: {}", "Water lines insulated: {}",
          "Heated floor: {}", "Insulated cab shades: {}")  # fmt: skip
FIRST, SECOND = ("5.99", "2", "no", "yes", "no", "yes", "yes"), ("6.84", "4", "yes", "no", "yes", "no", "no")


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def two_sheets():
    page = Page()
    page.text(50, 40, "Marrowfen Drift", size=22, bold=True)
    page.text(50, 66, "Collection 2026", size=9)
    left = [
        ("BASE", "Kelmar Drover 350 L", "Diesel 2.2 L, 140 hp, RWD", "Length: 5.99 m", "Sleeps: 2", "GVWR: 3500 kg"),
        ("TANKS", "Fresh water: 100 L, inside", "Gray water: 80 L, under the floor", "Pipes inside the van, lagged"),
    ]
    right = [
        ("BASE", "Kelmar Drover 450 XL", "Diesel 2.2 L, 165 hp, AWD", "Length: 6.84 m", "Sleeps: 4", "GVWR: 4500 kg"),
        (
            "TANKS",
            "Fresh water: 140 L, in the double floor",
            "Gray water: 110 L, double floor",
            "Pipes in the double floor",
        ),
    ]
    page.text(50, 90, "Drift 599", size=13, bold=True)
    page.text(320, 90, "Drift 684 Winter", size=13, bold=True)
    for number, (one, two) in enumerate(zip(chain(*left), chain(*right), strict=True)):
        page.row(115 + 15 * number, (50, one), (320, two), size=9)
    return page


def test_two_columns_of_labels_and_values_are_the_sheets_of_two_vans(facts_of_pdf):
    facts = facts_of_pdf(two_sheets())
    assert by_van(facts, "length_mm") == {"Drift 599": 5990, "Drift 684 Winter": 6840}
    assert by_van(facts, "fresh_tank_l") == {"Drift 599": 100, "Drift 684 Winter": 140}
    assert by_van(facts, "gray_tank_location") == {"Drift 599": "underbody", "Drift 684 Winter": "enclosed"}


def test_the_line_under_a_heading_for_the_base_names_it_and_the_next_its_engine(facts_of_pdf):
    facts = facts_of_pdf(two_sheets())
    assert by_van(facts, "chassis") == {"Drift 599": "Kelmar Drover 350 L", "Drift 684 Winter": "Kelmar Drover 450 XL"}
    assert by_van(facts, "engine_fuel") == {"Drift 599": "diesel", "Drift 684 Winter": "diesel"}


def test_pipes_that_open_a_line_are_the_water_lines(facts_of_pdf):
    facts = facts_of_pdf(two_sheets())
    assert by_van(facts, "water_lines_location") == {"Drift 599": "interior", "Drift 684 Winter": "enclosed"}
    assert by_van(facts, "water_lines_insulated") == {"Drift 599": True}


def test_prices_beside_long_lines_make_them_options(facts_of_pdf):
    page = two_sheets()
    page.text(50, 300, "Extras", size=13, bold=True)
    lines = [
        "Solar panel on the roof, 130 W, with its cables and controller (599)",
        "Third solar panel, 510 W in total (684 Winter)",
        "Heating pad 12 V for the gray water tank, switched at the door (599)",
        "Awning, 3.5 m, gray (599 and 684 Winter)",
    ]
    for number, line in enumerate(lines):
        page.row(322 + 15 * number, (50, line), (500, f"{number + 1} 490 €"), size=9)
    facts = facts_of_pdf(page)
    solar = {(f.model, f.value, f.availability) for f in facts if f.field == "solar_w"}
    assert solar == {("Drift 599", 130, "optional"), ("Drift 684 Winter", 510, "optional")}
    heat = {(f.model, f.value, f.availability) for f in facts if f.field == "gray_tank_heat"}
    assert heat == {("Drift 599", "electric_pad", "optional")}


def priced_page():
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=22, bold=True)
    page.row(90, (250, "Drift 19"), (350, "Drift 21"), (450, "Drift 23"), size=9, bold=True)
    rows = [("Overall length", "5.90 m", "6.40 m", "6.90 m"), ("Wheelbase", "3.45 m", "4.04 m", "4.30 m"),
            ("Sleeps", "2", "3", "4"), ("GVWR", "3500 kg", "3880 kg", "4495 kg")]  # fmt: skip
    for number, (label, *values) in enumerate(rows):
        page.row(106 + 15 * number, (50, label), *zip((250, 350, 450), values, strict=True), size=9)
    blue = {"size": 9, "color": (0.1, 0.4, 0.5)}
    page.text(50, 200, "Winter package", **blue)
    page.text(380, 200, "Drift 19: $1,290   Drift 21: $1,190   Drift 23: included", size=9)
    page.text(60, 214, "• Insulated covers for the cab windows", size=9)
    page.text(60, 228, "• Water lines insulated", size=9)
    page.text(50, 252, "At extra cost", **blue)
    page.row(266, (60, "• Heating pad 12 V at the gray water tank (Drift 19)"), (500, "$280"), size=9)
    page.row(280, (60, "• All-wheel drive (Drift 21)"), (500, "$7,900"), size=9)
    return page


def test_a_priced_title_says_of_each_van_how_the_list_below_it_comes(facts_of_pdf):
    facts = facts_of_pdf(priced_page())
    expected = {("Drift 19", "optional"), ("Drift 21", "optional"), ("Drift 23", "standard")}
    for field in ("cab_shades_insulated", "water_lines_insulated"):
        assert {(f.model, f.availability) for f in facts if f.field == field} == expected


def test_a_priced_list_does_not_take_the_heads_of_a_table_above(facts_of_pdf):
    facts = facts_of_pdf(priced_page())
    assert {(f.model, f.value) for f in facts if f.field == "gray_tank_heat"} == {("Drift 19", "electric_pad")}
    assert {(f.model, f.value) for f in facts if f.field == "drive"} == {("Drift 21", "all")}


def test_a_heading_over_two_columns_of_a_list_heads_both(facts_of_pdf):
    page = Page()
    page.text(50, 20, "Marrowfen Motorhomes", size=9)
    page.text(50, 40, "Drift", size=22, bold=True)
    page.text(50, 66, "Model year 2026. Wold is for summer, Fell is for winter.", size=9)
    lists = [
        ("Wold from 54,950", ["Two berths", "60-litre fresh tank", "2 kW petrol heater"],
         ["95 Ah AGM battery", "16 A hook-up", "Portable toilet"]),
        ("Fell from 61,400", ["Four berths", "85-litre fresh tank", "4 kW diesel heater"],
         ["230 Ah lithium battery", "120 W solar panel", "Cassette toilet"]),
    ]  # fmt: skip
    top = 95
    for heading, left, right in lists:
        page.text(50, top, heading, size=13, bold=True)
        for number, (one, two) in enumerate(zip(left, right, strict=True)):
            page.row(top + 18 + 14 * number, (50, f"– {one}"), (320, f"– {two}"), size=9)
        top += 90
    facts = facts_of_pdf(page)
    assert by_van(facts, "fresh_tank_l") == {"Drift Wold": 60, "Drift Fell": 85}
    assert by_van(facts, "battery_ah") == {"Drift Wold": 95, "Drift Fell": 230}
    assert by_van(facts, "solar_w") == {"Drift Fell": 120}


def test_a_label_in_two_languages_with_its_values_half_way_between_is_one_row(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen Drift · 2026", size=18, bold=True)
    page.row(70, (240, "Drift S"), (400, "Drift M"), size=9, bold=True)
    rows = [
        ("Länge", "Length", "5.450 mm", "5.985 mm"),
        ("Radstand", "Wheelbase", "3.260 mm", "3.670 mm"),
        ("Frischwasser", "Fresh water", "75 l", "100 l"),
        ("Grauwasser", "Grey water", "65 l", "85 l"),
        ("Schlafplätze", "Berths", "2", "4"),
    ]
    for number, (german, english, one, two) in enumerate(rows):
        top = 90 + 26 * number
        page.text(50, top, german, size=9)
        page.row(top + 5, (240, one), (400, two), size=9)
        page.text(50, top + 10, english, size=9)
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Drift S": 5450, "Drift M": 5985}
    assert by_van(facts, "gray_tank_l") == {"Drift S": 65, "Drift M": 85}
    assert by_van(facts, "sleeps") == {"Drift S": 2, "Drift M": 4}


def test_headings_of_a_van_and_of_its_first_chapter_are_two_where_the_first_had_room(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen", size=18, bold=True)
    page.text(50, 54, "Drift 2026", size=9)
    page.canvas.showPage()
    page.text(50, 40, "In numbers", size=14, bold=True)
    page.row(80, (50, "Drift 599"), (320, "Drift 684"), size=11, bold=True)
    chapters = {0: "Body and weights", 2: "Water", 5: "Cabin"}
    top = 98
    for number, (label, one, two) in enumerate(zip(LABELS, FIRST, SECOND, strict=True)):
        if number in chapters:
            page.row(top, (50, chapters[number]), (320, chapters[number]), size=11, bold=True)
            top += 18
        page.row(top, (50, label.format(one)), (320, label.format(two)), size=9)
        top += 16
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Drift 599": 5990, "Drift 684": 6840}
    assert by_van(facts, "heated_floor") == {"Drift 599": True, "Drift 684": False}


def test_lines_that_had_room_are_each_their_own_above_a_table_too(examiner):
    page = Page()
    page.text(50, 30, "Marrowfen", size=20, bold=True)
    page.text(50, 60, "Drift, model year 2026", size=9)
    page.text(50, 75.6, "Drift 21D", size=9)
    page.text(50, 100, "Sleeper vans", size=11, bold=True)
    page.text(50, 118, "Base", size=11, bold=True)
    for number, row in enumerate([("Wheelbase", "3.45 m"), ("Sleeps", "2"), ("Fresh water", "90 L")]):
        page.row(136 + 16 * number, (50, row[0]), (320, row[1]), size=9)
    read = read_document(page.data(), "sheet.pdf", "pdf", examiner.hints)
    texts = ["Marrowfen", "Drift, model year 2026", "Drift 21D", "Sleeper vans", "Base"]
    assert [passage.text for passage in read.passages if passage.row is None] == texts


def test_labelled_lines_half_way_between_those_of_another_list_are_not_their_values(facts_of_pdf):
    page = Page()
    page.row(40, (50, "Drift 599"), (320, "Drift 684"), size=13, bold=True)
    for number, (label, one, two) in enumerate(zip(LABELS, FIRST, SECOND, strict=True)):
        page.text(50, 70 + 15 * number + (6 if number > 1 else 0), label.format(one), size=9)
        page.text(320, 70 + 15 * number, label.format(two), size=9)
    facts = facts_of_pdf(page)
    assert by_van(facts, "heated_floor") == {"Drift 599": True, "Drift 684": False}
    assert by_van(facts, "cab_shades_insulated") == {"Drift 599": True, "Drift 684": False}


def test_marks_and_lone_values_between_two_labels_are_no_labels_themselves(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen Drift · 2026", size=18, bold=True)
    page.row(70, (240, "Drift S"), (340, "Drift M"), (440, "Drift L"), size=9, bold=True)
    rows = [
        ("Länge", "Length", "5.450 mm", "5.985 mm", "6.360 mm"),
        ("Frischwasser", "Fresh water", "75 l", "100 l", "110 l"),
        ("Radstand", "Wheelbase", "3.260 mm", "3.670 mm", "4.035 mm"),
        ("Schlafplätze", "Berths", "2", "2", "4"),
        ("Abwassertank isoliert", "Insulated grey tank", "W", "S", "S"),
        ("Fußbodenheizung", "Heated floor", "–", "W", "S"),
        ("Fenster im Wohnraum", "Cabin windows", "Doppelverglasung"),
    ]
    for number, (german, english, *values) in enumerate(rows):
        top = 90 + 26 * number
        page.text(50, top, german, size=9)
        page.row(top + 5, *zip((240, 340, 440) if len(values) > 1 else (322,), values, strict=True), size=9)
        page.text(50, top + 10, english, size=9)
    page.text(50, 290, "S = Serie · standard   W = Wunschausstattung · optional   – = nicht erhältlich", size=8)
    facts = facts_of_pdf(page)
    said = {(f.field, f.model): f.availability for f in facts}
    assert said["gray_tank_insulated", "Drift S"] == "optional"
    assert said["gray_tank_insulated", "Drift M"] == "standard"
    assert said["heated_floor", "Drift S"] == "not_available"
    assert said["heated_floor", "Drift L"] == "standard"
    assert by_van(facts, "window_glazing") == {"Drift S": "double", "Drift M": "double", "Drift L": "double"}


def test_values_for_all_vans_half_way_between_their_columns_do_not_join_these(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(80, (292, "Drift RL"), (432, "Drift TB"), bold=True)
    rows = [("Base vehicle", "Lennard Portage 35"), ("Driven wheels", "Front"), ("Overall length", "5.99 m"),
            ("Overall width", "2.08 m"), ("Overall height", "2.65 m"), ("Wheelbase", "4,035 mm"), ("Fuel", "90 litres"),
            ("MTPLM", "3,500 kg", "3,650 kg"), ("Berths", "2", "3"), ("Fresh water", "85 litres", "70 litres"),
            ("Solar", "100 W", "150 W"), ("Mains hook-up", "16 A"), ("Hot water", "10 litres")]  # fmt: skip
    for number, (label, *values) in enumerate(rows):
        top = 96 + 14 * number
        page.text(50, top, label)
        for middle, value in zip((381,) if len(values) == 1 else (310, 452), values, strict=True):
            page.text(middle - 2.1 * len(value), top, value)
    facts = facts_of_pdf(page)
    assert by_van(facts, "gvwr_kg") == {"Drift RL": 3500, "Drift TB": 3650}
    assert by_van(facts, "length_mm") == {"Drift RL": 5990, "Drift TB": 5990}
    assert by_van(facts, "solar_w") == {"Drift RL": 100, "Drift TB": 150}


def test_narrow_texts_side_by_side_right_above_a_table_are_no_rows_of_it(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Drift 2026", size=22, bold=True)
    page.text(50, 420, "Marrowfen Ltd, Quay Road 12, Marrowfen", size=7)
    texts = {
        "Solo": ("Two long seats, a loose", "table, nothing in the way.", "At night they make one", "very large bed."),
        "Duo": (
            "Two fixed beds on top of",
            "a garage, with a shower",
            "across the middle of the",
            "van and a drying rail.",
        ),
        "Trio": (
            "A bed below a roof that",
            "lifts, for those who bring",
            "a friend with whom they",
            "are still on good terms.",
        ),
    }
    for x, (name, lines) in zip((60, 220, 380), texts.items(), strict=True):
        page.text(x, 90, name, size=12, bold=True)
        for number, line in enumerate(lines):
            page.text(x, 106 + 14 * number, line, size=10)
    rows = [("", "Solo", "Duo", "Trio"), ("Berths", "1", "2", "3"), ("MTPLM", "3,300 kg", "3,500 kg", "3,650 kg"),
            ("Fresh water", "95 litres", "110 litres", "80 litres"), ("Length", "5.41 m", "5.99 m", "6.36 m"),
            ("Waste water", "80 litres", "90 litres", "70 litres")]  # fmt: skip
    for number, row in enumerate(rows):
        page.row(180 + 20 * number, *zip((52, 200, 325, 425), row, strict=True), bold=number == 0)
    facts = facts_of_pdf(page)
    assert by_van(facts, "sleeps") == {"Drift Solo": 1, "Drift Duo": 2, "Drift Trio": 3}
    assert by_van(facts, "fresh_tank_l") == {"Drift Solo": 95, "Drift Duo": 110, "Drift Trio": 80}


def test_a_box_below_two_columns_is_of_both_and_its_list_goes_on_in_a_second_column(facts_of_pdf):
    page = two_sheets()
    page.box(40, 300, 570, 420, (230, 235, 240))
    page.text(50, 312, "On both vans", size=12, bold=True)
    for number, line in enumerate(("Winterizing bypass", "Smoke alarm", "Roof fan", "Blackout blinds")):
        page.text(50, 332 + 14 * number, f"• {line}")
    page.text(230, 312, "Options", size=12, bold=True)
    for top, line in (
        (332, "• Awning"),
        (346, "• Insulated rear door"),
        (357, "  covers (599)"),
        (371, "• Bicycle rack"),
    ):
        page.text(230, top, line)
    for top, line in ((328, "• Heated floor (599 and"), (339, "  684 Winter)"), (353, "• Solar, 400 W in all"),
                      (364, "  (684 WINTER)"), (378, "• Inverter, 2000 W")):  # fmt: skip
        page.text(400, top, line)
    facts = facts_of_pdf(page)
    assert by_van(facts, "winterizing_bypass") == {"Drift 599": True, "Drift 684 Winter": True}
    offers = {(fact.model, fact.field): fact.availability for fact in facts if not fact.rejected}
    assert offers["Drift 599", "heated_floor"] == offers["Drift 684 Winter", "heated_floor"] == "optional"
    assert [key for key in offers if key[1] == "rear_shades_insulated"] == [("Drift 599", "rear_shades_insulated")]
    assert offers["Drift 684 Winter", "solar_w"] == offers["Drift 684 Winter", "inverter_w"] == "optional"
    assert ("Drift 599", "solar_w") not in offers


def test_a_text_goes_on_about_its_van_at_the_head_of_the_next_column(facts_of_pdf):
    page = Page()
    page.text(40, 30, "Colvert", size=24, bold=True)
    page.text(40, 62, "Les fourgons Marrowfen, millésime 2026 : Colvert S et Colvert XL", size=12)
    left = [
        "Chez Marrowfen, on aménage des fourgons",
        "comme d’autres réparent des montres, une",
        "pièce après l’autre et sans se presser.",
        "La Colvert S se gare devant la boulangerie.",
        "La Colvert XL va plus loin et plus haut.",
    ]
    right = [
        "C’est notre fourgon toutes saisons, conçu",
        "pour des nuits jusqu’à −14 °C. On y dort",
        "bien, on y lit mieux encore, et le matin",
        "il y a de la place pour deux bols de café",
        "et pour la carte de toute la région.",
    ]
    for x, lines in ((40, left), (310, right)):
        for number, line in enumerate(lines):
            page.text(x, 100 + 13 * number, line)
    page.canvas.showPage()
    page.row(40, (200, "Colvert S"), (360, "Colvert XL"), bold=True)
    rows = [("Longueur", "5,13 m", "6,36 m"), ("PTAC", "3 300 kg", "3 500 kg"), ("Couchages", "2", "2")]
    for number, row in enumerate(rows):
        page.rule(40, 55 + 16 * number, 540)
        page.row(58 + 16 * number, *zip((40, 200, 360), row, strict=True))
    found = {(f.model, f.field, f.value) for f in facts_of_pdf(page) if f.field in ("season_claim", "rated_min_temp_c")}
    assert found == {("Colvert XL", "season_claim", "toutes saisons"), ("Colvert XL", "rated_min_temp_c", -14)}


def test_a_wide_value_and_values_in_the_middle_do_not_join_two_columns(facts_of_pdf):
    """A value for all reaches over both gutters, and one of the first column over the place of another."""
    page = Page()
    page.text(40, 40, "Marrowfen Tusk 2027", size=18, bold=True)
    xs = (44, 204, 315, 426)
    rows = [
        ("Model", "159", "170", "178"), ("Fresh water tank", "90 L", "100 L", "110 L"),
        ("Heater output", "18,000 BTU/h (5.3 kW)", "13,500 BTU/h (4.0 kW)", "12,300 BTU/h (3.6 kW)"),
        ("Inverter", "1,000 W", "3,600 W", "3,000 W"), ("Gray water tank", "60 L", "70 L", "80 L"),
        ("Sleeps", "2", "3", "4"), ("Water heater", "10 L", "6 L", "12 L"), ("Solar", "100 W", "200 W", "300 W"),
    ]  # fmt: skip
    for place, row in enumerate(rows):
        page.row(80 + 16 * place, *zip(xs, row, strict=True))
    shared = [("Propane", "there is no propane carried", 336),
              ("Wall insulation", "1.5 in of cork, a foil and some more cork", 295),
              ("Towing capacity", "2268 kg", 369), ("Usage", "4-season", 367)]  # fmt: skip
    for place, (label, value, x) in enumerate(shared):
        page.row(210 + 16 * place, (44, label), (x, value))
    facts = facts_of_pdf(page)
    inverters = {(fact.model.split()[-1], round(fact.value)) for fact in facts if fact.field == "inverter_w"}
    assert inverters == {("159", 1000), ("170", 3600), ("178", 3000)}


def test_a_sentence_goes_on_at_the_head_of_a_column_that_begins_higher_than_the_one_before(facts_of_pdf):
    page = Page()
    page.text(40, 30, "Marrowfen Gorse 21 2026", size=18, bold=True)
    left = [
        "Three of us drove the first Gorse to the lake",
        "and came home with wet boots and a list of",
        "things that we would do in another way. What",
        "you can buy today is the ninth van, and all its",
        "water lines run behind the benches and over",
    ]
    right = [
        "the wheel arch inside the heated cabin, which",
        "is where you are and where the stove is, so no",
        "cable has to be wound round anything at all.",
        "The ladder folds and the table turns round, and",
        "nobody has ever asked us for anything else yet.",
    ]
    for number in range(5):
        page.row(90 + 11 * number + 11 * (number > 1), (310, right[number]))
        page.row(101 + 11 * number + 11 * (number > 2), (40, left[number]))
    page.text(
        40, 200, "In winter we drive up to the pass with a thermometer, a shovel and a loaf of bread, and come back."
    )
    page.canvas.showPage()
    for number, row in enumerate(
        [("Length", "19 ft"), ("Sleeps", "2"), ("Fresh tank", "25 gal"), ("Battery", "90 Ah")]
    ):
        page.row(58 + 16 * number, *zip((40, 200), row, strict=True))
    lines = {f.field: f.value for f in facts_of_pdf(page) if f.field.startswith("water_lines") and not f.rejected}
    assert lines == {"water_lines_location": "interior"}


def test_running_text_in_two_columns_set_off_by_half_a_line_keeps_every_line(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen Drift 21 · 2026", size=18, bold=True)
    left = [
        "The Drift 21 has 190 W of solar panels and carries",
        "fresh water for a week in its heated tank of steel.",
        "Insulated water lines run along the inner wall only.",
        "Double-glazed windows keep the frost outside, and a",
        "heated floor keeps your feet warm on a cold morning.",
        "The gray tank of 80 litres has an electric heat pad.",
    ]
    for number, line in enumerate(left):
        page.text(50, 90 + 12 * number, line, size=9.5)
        page.text(310, 96 + 12 * number, "We build in a barn by the river, and the dog", size=9.5)
    facts = facts_of_pdf(page)
    assert by_van(facts, "solar_w") == {"Drift 21": 190}
    assert by_van(facts, "gray_tank_heat") == {"Drift 21": "electric_pad"}
    assert by_van(facts, "window_glazing") == {"Drift 21": "double"}
    assert by_van(facts, "heated_floor") == {"Drift 21": True}
