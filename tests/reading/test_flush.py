"""Labels at the left edge and values at the right edge of a column, and lines "label: value" that were broken."""

from tests.reading.drawn import Page

ROWS = [
    ("Chassis", "Kelmar Drover 350 L"), ("Overall length of the vehicle", "5998 mm"), ("Sleeps", "2"),
    ("Inverter", "2000 W"), ("Solar panels on the roof, total", "300 W"), ("Toilet", "removable cassette"),
    ("Gray water tank, insulation", "no"), ("Shore power", "16 A"), ("Water heater", "10 L"),
    ("Insulated blinds for the windows of the cab", "yes"),
]  # fmt: skip


def test_values_set_at_the_right_edge_belong_to_the_labels_at_the_left(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 19 2026", size=20, bold=True)
    for number, (label, value) in enumerate(ROWS):
        top = 100 + 14 * number
        page.text(50, top, label)
        page.canvas.drawRightString(270, 842 - top - 9, value)
    found = {fact.field: fact.value for fact in facts_of_pdf(page)}
    assert (found["length_mm"], found["solar_w"], found["inverter_w"], found["water_heater_l"]) == (5998, 300, 2000, 10)
    assert (found["toilet"], found["gray_tank_insulated"], found["cab_shades_insulated"]) == ("cassette", 0, 1)


def test_a_line_of_a_list_of_labels_goes_on_below_where_it_was_full(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 19 2026", size=20, bold=True)
    lines = ["Länge: 5,99 m", "Schlafplätze: 2", "Abwassertank (Einbauort / Heizung): unter dem",
             "Fahrzeugboden / unbeheizt", "Frischwassertank: 100 l, im Innenraum am Bett", "Solaranlage: 200 W",
             "Bordtoilette: Kassette"]  # fmt: skip
    for number, text in enumerate(lines):
        page.text(50, 100 + 12 * number, text)
    found = {fact.field: fact.value for fact in facts_of_pdf(page)}
    assert (found["gray_tank_location"], found["gray_tank_heat"]) == ("underbody", "none")
    assert (found["fresh_tank_l"], found["solar_w"]) == (100, 200)


def test_a_line_with_its_value_is_no_caption_of_the_heading_below_it(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 19 2026", size=20, bold=True)
    top = 90
    groups = [("Base", "Fuel tank (L): 75"), ("Water", "Water heater (L): 10"), ("Power", "Solar (W): 300"),
              ("Mains", "Shore power: 16 A"), ("Body", "Sleeps: 2")]  # fmt: skip
    for heading, text in groups:
        page.text(50, top, heading, size=10.5, bold=True)
        page.text(50, top + 14, text)
        top += 27
    found = {fact.field: fact.value for fact in facts_of_pdf(page)}
    assert (found["fuel_tank_l"], found["water_heater_l"], found["solar_w"]) == (75, 10, 300)
    assert (found["shore_power_a"], found["sleeps"]) == (16, 2)


def test_bold_items_with_plain_prices_in_larger_type_than_the_small_print_are_options(facts_of_pdf):
    page = Page()
    page.text(40, 40, "Marrowfen Drift 21", size=20, bold=True)
    page.text(40, 70, "Model year 2026", size=10)
    for number, line in enumerate(("Overall length: 21 ft", "GVWR: 9,350 lb", "Wheelbase: 159 in", "Sleeps: 2")):
        page.text(40, 100 + 14 * number, line, size=9)
    page.canvas.showPage()
    page.text(40, 40, "Price list of options", size=14, bold=True)
    items = ("Insulated screens for the cab windows:", "Dump valve with insulated sleeve:", "Heated floor:")
    for number, item in enumerate(items):
        page.text(40, 70 + 16 * number, item, size=10, bold=True)
        page.text(250, 70 + 16 * number, f"${number + 1},150", size=10)
    for number in range(12):
        page.text(
            40, 160 + 8 * number, "Prices may change without notice and hold until the end of the season only.", size=6
        )
    optional = {fact.field for fact in facts_of_pdf(page) if fact.availability == "optional"}
    assert optional == {"cab_shades_insulated", "dump_valve_protection", "heated_floor"}


def test_label_and_value_that_both_go_on_below_are_one_row_and_a_wide_space_parts_what_fills_the_column(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 19 2026", size=20, bold=True)
    rows = [
        ("Länge über alles", "5998 mm"), ("Anzahl der Schlafplätze", "2"), ("Wechselrichter", "2000 W"),
        ("Abwassertank isoliert", "nein"), ("Solaranlage auf dem Dach, gesamt", "300 W"), ("Landstrom", "16 A"),
        ("Toilette", "herausnehmbare Kassette"), ("Isolierte Verdunkelung im Fahrerhaus", "ja"),
    ]  # fmt: skip
    for number, (label, value) in enumerate(rows):
        page.text(50, 100 + 14 * number, label)
        page.canvas.drawRightString(276.5, 842 - (100 + 14 * number) - 9, value)
    for top, label, value in ((212, "Frischwassertank:", "im geschlossenen"), (223, "Einbauort", "Unterboden")):
        page.text(50, top, label)
        page.text(165, top, value)
    page.text(50, 240, "Flächen mit Dämmung")
    page.canvas.drawRightString(276.5, 842 - 249, "Wände + Dach + Boden + Türen")
    found = [(fact.field, fact.value) for fact in facts_of_pdf(page)]
    assert [value for field, value in found if field == "fresh_tank_location"] == ["enclosed"]
    assert {value for field, value in found if field == "insulated_surfaces"} == {"walls", "ceiling", "floor", "doors"}


def test_a_last_label_that_ends_in_an_article_goes_on_below(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 19 2026", size=20, bold=True)
    rows = [
        ("Länge über alles", "5998 mm"), ("Schlafplätze", "2"), ("Wechselrichter", "2000 W"), ("Warmwasser", "10 l"),
        ("Wasserleitungen", "innen"), ("Anordnung des", "in geschlossenem Fach"),
    ]  # fmt: skip
    for number, (label, value) in enumerate(rows):
        page.text(50, 100 + 14 * number, label)
        page.text(150, 100 + 14 * number, value)
    page.text(50, 182, "Trinkwassertanks")
    found = [(fact.field, fact.value) for fact in facts_of_pdf(page)]
    assert ("fresh_tank_location", "enclosed") in found
    assert [value for field, value in found if field == "water_lines_location"] == ["interior"]
