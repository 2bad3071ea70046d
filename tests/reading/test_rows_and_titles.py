"""Tables whose rows are numbered or striped, values set for two columns, titles right above the heads."""

import pytest

from specscan.reading.read import read_document
from tests.reading.drawn import Page

SI, US = 250, 380
PALE = (0.93, 0.95, 0.94)


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def numbered():
    page = Page()
    page.text(40, 20, "MARROWFEN", size=12, bold=True)
    page.text(40, 40, "Drift 602", size=20, bold=True)
    page.text(40, 400, "Marrowfen Ltd, Quay Road 12, Marrowfen", size=7)
    page.text(40, 80, "1 Base vehicle", size=11, bold=True)
    page.row(96, (SI, "SI"), (US, "US customary"), size=7)
    rows = [("1.1", "Length overall", "5 985 mm", "235.6 in"), ("1.2", "Driven axle", "Front"),
            ("1.3", "Wheelbase", "4 020 mm", "158.3 in"), ("1.4", "Fuel tank", "80 l", "21.1 gal")]  # fmt: skip
    more = [("2.1", "Fresh water tank", "110 l", "29.1 gal"), ("2.2", "position", "Inside, below the bed at the rear"),
            ("2.3", "Waste water tank", "92 l", "24.3 gal"), ("2.4", "position", "Closed insulated box under the van"),
            ("2.5", "frost protection", "Foam jacket, warm-air duct from the heater"),
            ("2.6", "Hot water", "10 l", "2.6 gal"), ("2.7", "Toilet", "Cassette, 17 l", "Cassette, 4.5 gal"),
            ("2.8", "Pipework", "All inside")]  # fmt: skip
    for top, some in ((108, rows), (250, more)):
        for number, cells in enumerate(some):
            page.row(top + 13 * number, *zip((40, 75, SI, US), cells, strict=False))
    page.text(40, 222, "2 Water and sanitation", size=11, bold=True)
    page.row(238, (SI, "SI"), (US, "US customary"), size=7)
    return page


def test_numbers_of_rows_name_no_vans_and_a_value_over_two_columns_hides_none(facts_of_pdf):
    facts = facts_of_pdf(numbered())
    assert by_van(facts, "model") == {"Drift 602": "Drift 602"}
    assert by_van(facts, "wheelbase_mm") == {"Drift 602": 4020}
    assert by_van(facts, "fresh_tank_l") == pytest.approx({"Drift 602": 110}, rel=0.01)
    assert by_van(facts, "gray_tank_location") == {"Drift 602": "enclosed"}
    assert by_van(facts, "gray_tank_heat") == {"Drift 602": "warm_air"}


def striped():
    page = Page()
    page.text(40, 40, "Drift 2026", size=20, bold=True)
    page.text(40, 400, "Marrowfen Ltd, Quay Road 12, Marrowfen", size=7)
    rows = [("Floorplan", "17A", "19B", "21C"), ("Base vehicle", "Kelmar 250", "Kelmar 350", "Kelmar 350 XL"),
            ("Drive", "RWD", "RWD", "AWD"), ("Length", "19' 4\"", "21' 9\"", "23' 11\""),
            ("Wheelbase", '144"', '159"', '174"'), ("GVWR", "8,900 lb", "9,980 lb", "11,000 lb"),
            ("Fresh water", "18 gal", "28 gal", "35 gal"), ("Gray water", "16 gal", "24 gal", "30 gal")]  # fmt: skip
    for number, cells in enumerate(rows):
        top = 90 + 16 * number
        if number % 2 == 0:
            page.box(36, top - 3, 500, top + 13, PALE if number else (0.1, 0.3, 0.4))
        page.row(top, *zip((40, 180, 280, 380), cells, strict=True), bold=number == 0, color=(number == 0,) * 3)
    return page


def test_words_for_all_values_of_a_striped_row_head_no_new_table(facts_of_pdf):
    facts = facts_of_pdf(striped())
    assert by_van(facts, "drive") == {"Drift 17A": "rear", "Drift 19B": "rear", "Drift 21C": "all"}
    assert by_van(facts, "gvwr_kg") == pytest.approx(
        {"Drift 17A": 4037, "Drift 19B": 4527, "Drift 21C": 4990}, rel=0.01
    )


def titled():
    page = Page()
    page.row(40, (40, "Camper vans"), (425, "Marrowfen"), size=14)
    page.text(40, 62, "Technical data, model year 2027")
    page.text(40, 400, "Marrowfen Ltd, Quay Road 12, Marrowfen", size=7)
    rows = [("", "Alder", "Gorse", "Teasel Snow"), ("Vehicle",), ("Length", "5450 mm", "5985 mm", "6840 mm"),
            ("Wheelbase", "3260 mm", "3670 mm", "4320 mm"), ("Berths", "2", "3", "4"),
            ("Fresh water", "75 l", "100 l", "140 l"), ("Waste water", "65 l", "85 l", "110 l")]  # fmt: skip
    for number, cells in enumerate(rows):
        page.row(96 + 14 * number, *zip((40, 200, 310, 420), cells, strict=False), bold=number < 2)
    return page


def test_a_title_and_its_maker_in_one_line_above_the_heads_are_no_heads(examiner):
    passages = read_document(titled().data(), "vans.pdf", "pdf", examiner.hints).passages
    heads = [p.column.text for p in passages if p.row is not None and p.row.text == "Length"]
    assert heads == ["Alder", "Gorse", "Teasel Snow"]


def test_a_range_in_capitals_with_words_on_it_over_its_rows(facts_of_pdf):
    page = Page()
    page.text(50, 30, "MARROWFEN", size=24, bold=True)
    page.text(50, 60, "The Wendrill is a three-season van, and the Ordwell a four-season one.", size=9)
    page.row(90, (50, "MODEL"), (115, "BASE VEHICLE"), (230, "LENGTH"), (310, "FRESH TANK"), (420, "SLEEPS"), size=8)
    page.text(50, 106, "WENDRILL on the van body", size=8, bold=True)
    page.row(122, (50, "190"), (115, "Kelmar Porter 25"), (230, "19 ft 5 in"), (310, "22 gal"), (420, "2"), size=8)
    page.row(138, (50, "210 S"), (115, "Kelmar Porter 35"), (230, "21 ft 3 in"), (310, "27 gal"), (420, "3"), size=8)
    page.text(50, 154, "ORDWELL on the wide body", size=8, bold=True)
    page.row(170, (50, "24 FK"), (115, "Brannock 450"), (230, "24 ft 2 in"), (310, "36 gal"), (420, "4"), size=8)
    sleeps = {fact.model: fact.value for fact in facts_of_pdf(page) if fact.field == "sleeps"}
    assert sleeps == {"Wendrill 190": 2, "Wendrill 210 S": 3, "Ordwell 24 FK": 4}


def test_the_company_and_its_paper_over_a_large_title_are_no_row_of_the_table_below_it(facts_of_pdf):
    page = Page()
    page.row(30, (40, "Tollan"), (420, "Prices and data, 2027 model year"), size=9)
    page.text(40, 52, "Larch prices", size=15)
    page.text(40, 76, "Prices in pounds sterling with VAT at 20%.", size=9)
    places = (40, 150, 200, 250, 300, 360, 420)
    rows = [("", "Price", "Length", "Berths", "Fresh", "Waste", "Battery"),
            ("Tollan Larch Plain 5.4", "58,450", "5.41 m", "2", "70 l", "60 l", "95 Ah AGM"),
            ("Tollan Larch Plain 6.0", "62,995", "5.99 m", "2", "90 l", "75 l", "95 Ah AGM"),
            ("Tollan Larch Fine 6.4", "73,250", "6.36 m", "4", "110 l", "90 l", "150 Ah lithium")]  # fmt: skip
    for number, cells in enumerate(rows):
        page.row(98 + 14 * number, *((x, text) for x, text in zip(places, cells, strict=True) if text), size=9)
    page.text(40, 170, "Tollan Ltd, Weir Street, Nether Holt", size=8)
    sleeps = {fact.model: fact.value for fact in facts_of_pdf(page) if fact.field == "sleeps"}
    assert sleeps == {"Larch Plain 5.4": 2, "Larch Plain 6.0": 2, "Larch Fine 6.4": 4}
