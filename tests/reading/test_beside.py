"""Two vans, or two lists, side by side: each column is read by itself, to its end."""

from tests.reading.drawn import Page


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def two_vans(rows, *, step=14, size=9):
    """Give a page with a list of words for each of two vans; a row without a value is a heading."""
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.text(50, 66, "Drift 19, Drift 21", size=10)
    page.text(50, 80, "Technical data", size=14, bold=True)
    page.row(104, (50, "Drift 19"), (320, "Drift 21"), size=11, bold=True)
    for number, (label, one, two) in enumerate(rows):
        top = 126 + step * number
        page.row(top, (50, label), (320, label), size=size, bold=not one)
        if one:
            page.row(top, (170, one), (440, two), size=size)
    return page


WORDS = [
    ("Water", "", ""),
    ("Fresh tank insulated", "yes", "no"),
    ("Water lines heated", "no", "yes"),
    ("Toilet", "cassette", "dry"),
    ("Body", "", ""),
    ("Window glazing", "double", "single"),
    ("Thermal break", "yes", "no"),
]


def test_two_vans_with_the_same_labels_are_no_rows_of_each_other_though_their_values_are_words(facts_of_pdf):
    facts = facts_of_pdf(two_vans(WORDS))
    assert by_van(facts, "fresh_tank_insulated") == {"Drift 19": True, "Drift 21": False}
    assert by_van(facts, "toilet") == {"Drift 19": "cassette", "Drift 21": "dry"}
    assert by_van(facts, "thermal_break") == {"Drift 19": True, "Drift 21": False}


def test_rows_as_close_as_the_lines_of_a_wrapped_label_stay_rows(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 19 2026", size=20, bold=True)
    lines = [
        ("Insulation of fresh", "no"), ("water tank", ""), ("Insulation of gray", "included"), ("water tank", ""),
        ("Water lines in the", "included"), ("floor heated", ""), ("Drain valve", "insulated"),
        ("Inverter", "2000 W"), ("Isothermal blinds in", "no"), ("the cab", ""), ("Sleeps", "3"),
    ]  # fmt: skip
    for number, (label, value) in enumerate(lines):
        page.row(100 + 10.5 * number, (50, label), *([(200, value)] if value else []), size=9)
    found = {fact.field: fact.value for fact in facts_of_pdf(page)}
    assert (found["fresh_tank_insulated"], found["gray_tank_insulated"], found["water_lines_heated"]) == (0, 1, 1)
    assert (found["dump_valve_protection"], found["inverter_w"], found["sleeps"]) == ("insulated", 2000, 3)


def test_a_column_is_read_to_its_end_though_the_one_beside_it_is_shorter(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 19 2026", size=20, bold=True)
    left = ["Length in m: 5.99", "Sleeps: 2", "Fresh water in litres: 90", "Gray water in litres: 70",
            "Inverter: 2000 W", "Solar in W: 200", "Fuel tank in litres: 75", "Water heater in litres: 10"]  # fmt: skip
    right = ["Options", "• Heated floor", "• Bicycle carrier", "• Awning"]
    for number, text in enumerate(left):
        page.text(50, 100 + 14 * number, text)
    for number, text in enumerate(right):
        page.text(320, 100 + 14 * number, text, bold=not number)
    page.text(
        50, 230, "Figures of the maker may change without notice; ask your dealer before you sign anything at all."
    )
    marked = {fact.field: fact.availability for fact in facts_of_pdf(page)}
    assert marked["heated_floor"] == "optional"
    assert {marked[field] for field in ("solar_w", "fuel_tank_l", "water_heater_l")} == {"standard"}


def test_a_heading_and_a_line_below_two_halves_of_a_table_belong_to_what_follows(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen Drift 19 2026", size=20, bold=True)
    halves = ([("Length", "5.99 m"), ("Sleeps", "2"), ("Fresh water", "90 L"), ("Gray water", "70 L")],
              [("Inverter", "2000 W"), ("Solar", "200 W"), ("Battery", "95 Ah"), ("Shore power", "16 A")])  # fmt: skip
    for x0, rows in zip((50, 300), halves, strict=True):
        for number, (label, value) in enumerate(rows):
            page.text(x0, 100 + 14 * number, label, bold=True)
            page.text(x0 + 90, 100 + 14 * number, value)
            page.rule(x0, 112 + 14 * number, x0 + 190)
    page.text(50, 180, "Optional equipment", size=14, bold=True)
    page.text(50, 198, "From the works, in spring", size=9)
    words = "Each of these is fitted by hand in the hall behind the chapel, and none of them can be added later on, so"
    page.text(50, 230, words)
    page.text(50, 241, "do think of the winter before you sign.")
    page.text(50, 262, "• Heated floor")
    page.text(50, 276, "• Awning")
    marked = {fact.field: fact.availability for fact in facts_of_pdf(page)}
    assert marked["heated_floor"] == "optional"
    assert {marked[field] for field in ("inverter_w", "solar_w", "shore_power_a")} == {"standard"}


def test_the_heading_of_the_second_column_does_not_govern_what_follows_both(facts_of_pdf):
    page = two_vans(WORDS)
    page.canvas.showPage()
    page.text(50, 40, "Standard equipment", size=10, bold=True)
    for number, text in enumerate(["Inverter 2000 W", "Solar panels 300 W", "Awning", "Water heater bypass"]):
        page.text(50, 60 + 14 * number, f"• {text}")
    facts = facts_of_pdf(page)
    assert by_van(facts, "inverter_w") == {"Drift 19": 2000, "Drift 21": 2000}
    assert by_van(facts, "solar_w") == {"Drift 19": 300, "Drift 21": 300}


def test_rows_of_columns_that_end_at_different_heights_hide_no_label(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 19 2026", size=20, bold=True)
    left = [("Wheelbase", "3665 mm"), ("Sleeps", "2"), ("Fuel tank", "75 L"), ("Inverter", "1000 W"),
            ("Solar", "200 W"), ("Gray tank", "70 L"), ("Fresh tank", "90 L"), ("GVWR", "3500 kg")]  # fmt: skip
    right = [("Heater", "diesel, forced air"), ("Power", "4 kW"), ("Toilet", "cassette"), ("Warranty", "3 years"),
             ("Bench", "two seats"), ("Shore power", "16 A"), ("Awning", "3.2 m"), ("Fridge", "90 L")]  # fmt: skip
    for number, (label, value) in enumerate(left):
        page.row(100 + 15 * number, (50, label), (150, value))
    for number, (label, value) in enumerate(right):
        page.row(106 + 15 * number, (320, label), (430, value))
    found = {fact.field: fact.value for fact in facts_of_pdf(page)}
    assert (found["sleeps"], found["fuel_tank_l"], found["gray_tank_l"], found["fresh_tank_l"]) == (2, 75, 70, 90)
    assert (found["toilet"], found["shore_power_a"]) == ("cassette", 16)
