"""Parts of a page that belong together are read together, others are not."""

from tests.reading.drawn import Page


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def test_a_shaded_bar_of_wrapped_heads_heads_the_table_below_it(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.box(45, 100, 550, 128, (0.1, 0.2, 0.3))
    white = {"bold": True, "color": (1, 1, 1)}
    page.row(102, (150, "Overall length"), (250, "Fresh water"), (350, "Gray water"), (450, "Sleeps"), **white)
    page.row(113, (50, "Model"), (150, "(m)"), (250, "tank (L)"), (350, "tank (L)"), **white)
    page.row(135, (50, "Drift 19"), (150, "5.90"), (250, "90"), (350, "70"), (450, "2"))
    page.row(153, (50, "Drift 21"), (150, "6.40"), (250, "120"), (350, "100"), (450, "3"))
    page.row(171, (50, "Drift 23"), (150, "6.90"), (250, "140"), (350, "110"), (450, "4"))
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Drift 19": 5900, "Drift 21": 6400, "Drift 23": 6900}
    assert by_van(facts, "gray_tank_l") == {"Drift 19": 70, "Drift 21": 100, "Drift 23": 110}


WHITE = {"bold": True, "color": (1, 1, 1)}


def test_two_tables_of_the_same_vans_side_by_side_are_read_one_after_the_other(facts_of_pdf):
    page = Page()
    page.text(30, 40, "Marrowfen Drift 2026", size=20, bold=True)
    left = [
        ("Overall length (m)", "5.90", "6.40"),
        ("Overall width (m)", "2.05", "2.06"),
        ("Sleeps", "2", "3"),
        ("Wheelbase (mm)", "3665", "4325"),
        ("GVWR (kg)", "3500", "4250"),
        ("Fuel tank (litres)", "75", "90"),
    ]
    right = [("Fresh water (litres)", "90", "120"), ("Heater", "Gas", "Diesel"), ("Gray water (litres)", "70", "95"),
             ("Inverter (W)", "1000", "2000"), ("Solar (W)", "100", "200"), ("Battery", "95 Ah", "200 Ah")]  # fmt: skip
    for x0, rows in ((30, left), (310, right)):
        page.box(x0, 90, x0 + 250, 108, (0.3, 0.1, 0.4))
        page.row(94, (x0 + 120, "Drift 19"), (x0 + 190, "Drift 21"), size=8, **WHITE)
        for number, row in enumerate(rows):
            top = 114 + 18 * number
            page.row(top, *((x0 + 4 + at, text) for at, text in zip((0, 116, 186), row, strict=True)), size=8)
            page.rule(x0, top + (13.6 if x0 < 100 else 13), x0 + 250)  # not quite level
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Drift 19": 5900, "Drift 21": 6400}
    assert by_van(facts, "fresh_tank_l") == {"Drift 19": 90, "Drift 21": 120}
    assert by_van(facts, "solar_w") == {"Drift 19": 100, "Drift 21": 200}


def test_lines_to_fill_in_above_the_bar_of_heads_are_no_rows_of_the_table(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Drift order form, model year 2026", size=20, bold=True)
    page.row(100, (50, "Name " + 30 * "_"), (260, "Phone " + 20 * "_"))
    page.row(
        114, (50, "Please build me a: [ ] Drift R19, from $98,000"), (300, "[ ] Drift R22, from $121,000"), bold=True
    )
    page.box(45, 128, 550, 142, (0.4, 0.2, 0.1))
    page.row(130, (50, "As it leaves the works"), (300, "R19"), (450, "R22"), **WHITE)
    rows = [("Overall length", "19 ft 0 in", "22 ft 2 in"), ("GVWR", "9,040 lb", "10,240 lb"), ("Sleeps", "2", "3"),
            ("Fresh water", "20 gal", "34 gal"), ("Inverter", "1,000 W", "2,000 W")]  # fmt: skip
    for number, (label, one, two) in enumerate(rows):
        page.row(146 + 14 * number, (50, label), (290, one), (440, two))
    facts = facts_of_pdf(page)
    assert by_van(facts, "sleeps") == {"Drift R19": 2, "Drift R22": 3}
    assert by_van(facts, "inverter_w") == {"Drift R19": 1000, "Drift R22": 2000}


def test_the_heads_of_a_table_below_lists_in_columns_stay_with_their_table(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(90, (50, "Standard on every van"), (220, "Drift 21 adds"), (390, "Drift 23 adds"), bold=True, size=10)
    lists = [("Wind-out awning", "Roof rack", "Bike rack"), ("Fly screen", "Bench", "Table"),
             ("Cup holders", "Lamp over the sink", "A drawer for cutlery")]  # fmt: skip
    for number, row in enumerate(lists):
        page.row(106 + 14 * number, *((x, "• " + text) for x, text in zip((50, 220, 390), row, strict=True)))
    page.text(50, 154, "Packs", bold=True, size=10)
    page.row(168, (50, "Pack"), (120, "Contents"), (380, "Drift 21"), (470, "Drift 23"), bold=True)
    page.rule(50, 182, 545)
    page.row(188, (50, "Frost"), (380, "£890"), (470, "£740"))
    page.text(120, 188, "12 V heating pad on the waste water tank")
    page.rule(50, 202, 545)
    page.row(208, (50, "Current"), (380, "£2,300"), (470, "–"))
    page.text(120, 208, "Inverter of 2,000 W under the near seat")
    page.text(50, 240, "–: not offered on that van")
    page.row(300, (300, "Drift 21"), (450, "Drift 23"), bold=True)
    rows = [("Overall length", "6.40 m", "6.95 m"), ("MTPLM", "3500 kg", "4250 kg"), ("Berths", "2", "4")]
    for number, row in enumerate(rows):
        page.row(314 + 14 * number, *zip((50, 300, 450), row, strict=True))
    facts = facts_of_pdf(page)
    pads = {(f.model, f.availability) for f in facts if f.field == "gray_tank_heat"}
    assert pads == {("Drift 21", "optional"), ("Drift 23", "optional")}
    inverters = {(f.model, f.availability) for f in facts if f.field == "inverter_w"}
    assert inverters == {("Drift 21", "optional"), ("Drift 23", "not_available")}


def test_a_cell_that_says_optional_does_not_head_a_list_of_its_own(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    vans, places = ("Drift 5", "Drift 5 AWD", "Drift 6", "Drift 6 Fell"), (170, 270, 370, 470)
    page.row(90, *zip(places, vans, strict=True), bold=True)
    rows = [
        ("Overall length", "5.48 m", "5.48 m", "6.23 m", "6.23 m"),
        ("GVWR", "3,850 kg", "3,850 kg", "4,250 kg", "4,800 kg"),
        ("House battery", "100 Ah lithium", "100 Ah lithium", "230 Ah lithium", "460 Ah lithium,"),
        ("Second battery", "200 Ah total, Opt.", "200 Ah total, Opt.", "460 Ah total, Opt.", "N/A"),
        ("Solar", "115 W, Opt.", "115 W, Incl.", "230 W, Incl.", "460 W, Incl."),
        ("Inverter", "1,000 W, Opt.", "1,000 W, Incl.", "2,000 W, Incl.", "3,000 W, Incl."),
        ("Shore power", "15 A", "15 A", "30 A", "30 A"),
        ("Insulation", "Recycled cotton", "Recycled cotton", "Recycled cotton", "Spray foam"),
        ("Wall thickness", "32 mm (1.25 in)", "32 mm (1.25 in)", "45 mm (1.75 in)", "65 mm (2.5 in)"),
    ]
    for number, (label, *values) in enumerate(rows):
        top = 108 + 15 * number + (9 if number > 2 else 0)
        page.row(top, (50, label), *zip(places, values, strict=True), size=8)
    page.text(470, 147, "heated cells", size=8)
    facts = facts_of_pdf(page)
    assert by_van(facts, "shore_power_a") == dict(zip(vans, (15, 15, 30, 30), strict=True))
    assert by_van(facts, "insulation_thickness_mm") == dict(zip(vans, (32, 32, 45, 65), strict=True))


def test_notes_on_one_line_below_a_table_are_no_row_of_it(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(90, (50, "Model"), (160, "Width (in)"), (260, "Fresh (gal)"), (360, "Gray (gal)"), (460, "Sleeps"))
    page.rule(50, 104, 520)
    rows = [
        ("Drift 18", "80", "21", "17", "2"),
        ("Drift 20", "80", "28", "24", "2"),
        ("Drift 22", "82", "34", "29", "3"),
    ]
    for number, row in enumerate(rows):
        page.row(108 + 14 * number, *zip((50, 160, 260, 360, 460), row, strict=True))
    page.rule(50, 150, 520)
    for x, sign, note in (
        (50, "a", "Mirrors folded."),
        (200, "b", "With the lifting roof."),
        (340, "", "U.S. gallons."),
    ):
        page.text(x, 156, sign, size=5)
        page.text(x + 4, 157, note, size=7)
    facts = facts_of_pdf(page)
    assert by_van(facts, "fresh_tank_l").keys() == {"Drift 18", "Drift 20", "Drift 22"}
    assert {fact.model for fact in facts} == {"Drift 18", "Drift 20", "Drift 22"}


def test_rules_of_one_length_hold_the_rows_of_a_table_together(facts_of_pdf):
    page = Page()
    page.text(40, 30, "Marrowfen Drift 2026", size=16, bold=True)
    page.box(40, 60, 560, 90, (0.1, 0.3, 0.2))
    heads = [(105, "Base vehicle"), (205, "Drive"), (275, "Length (mm)"), (425, "Fresh (L)"), (495, "Sleeps")]
    page.row(71, (45, "Model"), *heads, size=7, **WHITE)
    page.row(67.5, (350, "Headroom"), size=7, **WHITE)
    page.row(74.5, (358, "(mm)"), size=7, **WHITE)
    rows = [("Drift 54", "Merrick 35", "L2H2", "FWD", "5 410", "1 890", "70", "2"),
            ("Drift 60", "Merrick 40", "L3H3", "AWD", "5 990", "2 060", "110", "3"),
            ("Drift 64", "Merrick 42", "L4H3", "AWD", "6 360", "2 060", "140", "3")]  # fmt: skip
    for number, (model, base, body, *values) in enumerate(rows):
        top = 101 + 31 * number  # cells in the middle of high rows, those of two lines above and below it
        page.row(top, *zip((45, 210, 285, 360, 435, 505), (model, *values), strict=True), size=7)
        page.row(top - 3.5, (107, base), size=7)
        page.row(top + 3.5, (115, body), size=7)
        page.rule(40, top + 20, 560)
    facts = facts_of_pdf(page)
    assert by_van(facts, "fresh_tank_l") == {"Drift 54": 70, "Drift 60": 110, "Drift 64": 140}
    assert by_van(facts, "interior_height_mm") == {"Drift 54": 1890, "Drift 60": 2060, "Drift 64": 2060}
    assert by_van(facts, "chassis") == {
        "Drift 54": "Merrick 35 L2H2", "Drift 60": "Merrick 40 L3H3", "Drift 64": "Merrick 42 L4H3",
    }  # fmt: skip


def test_names_of_vans_side_by_side_over_a_price_and_a_few_lines_each_head_no_table(facts_of_pdf):
    page = Page()
    page.text(46, 40, "Marrowfen Drift 2026", size=24, bold=True)
    for x, top in ((46, 140), (303, 140)):
        page.box(x, top, x + 245, top + 22, (0, 0.4, 0.3))
    page.row(144, (53, "Drift Solo"), (310, "Drift Snow"), size=12, **WHITE)
    page.row(182, (46, "66,490"), (303, "84,750"), size=15, bold=True)
    cards = [
        ("The classic with a bed across. For the spring, the", "Fit for winter: the same plan, more insulation and"),
        ("summer and a golden October. What we recommend", "more power. Built for outside temperatures down to"),
        ("for your first tour.", "−20 °C, in which we tried it."),
    ]
    for place, (left, right) in enumerate(cards):
        page.row(214 + 11 * place, (46, left), (303, right))
    page.box(46, 266, 550, 288, (0, 0.4, 0.3))
    page.text(53, 270, "What both have", size=12, **WHITE)
    rows = [("Overall length", "5.99 m"), ("Headroom", "1.90 m"), ("Fuel tank", "90 L"), ("Fresh water tank", "100 L"),
            ("Sleeps", "2"), ("Wheelbase", "4.04 m")]  # fmt: skip
    for place, (label, value) in enumerate(rows):
        page.row(296 + 15 * place, (50, label), (228, value))
    page.row(400, (230, "Drift Solo"), (400, "Drift Snow"), bold=True)
    for place, row in enumerate(
        (("GVWR", "3300 kg", "3500 kg"), ("Solar", "100 W", "200 W"), ("Inverter", "1 kW", "2 kW"))
    ):
        page.row(416 + 15 * place, *zip((50, 230, 400), row, strict=True))
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Drift Solo": 5990, "Drift Snow": 5990}
    assert by_van(facts, "rated_min_temp_c") == {"Drift Snow": -20}


def test_lists_side_by_side_below_a_large_title_on_a_bar_keep_their_own_headings(facts_of_pdf):
    page = Page()
    page.row(20, (50, "Drift 19"), (200, "Drift 21"), size=11, bold=True)
    page.box(50, 43, 540, 64, (0.5, 0.1, 0.2))
    page.text(50, 45, "Standard equipment", size=14, bold=True)
    page.text(50, 85, "Both vans", bold=True)
    page.text(310, 91, "Also Drift 19", bold=True)
    left = [
        "• Cassette toilet, 18 L",
        "• Double-glazed windows",
        "• Shore power 16 A",
        "• Black-out blinds",
        "• LED lamps",
    ]
    right = ["• Propane furnace", "• Fresh water 80 L", "• Induction hob", "• Solar 200 W"]
    below = ["• Diesel air heater", "• Fresh water 110 L", "• Oven", "• Solar 300 W"]
    for number, item in enumerate(left):
        page.text(52, 107 + 13 * number, item)
    for number, item in enumerate(right):
        page.text(312, 107 + 13 * number, item)
    page.text(310, 170, "Also Drift 21", bold=True)
    for number, item in enumerate(below):
        page.text(312, 186 + 13 * number, item)
    facts = facts_of_pdf(page)
    assert by_van(facts, "fresh_tank_l") == {"Drift 19": 80, "Drift 21": 110}
    assert by_van(facts, "solar_w") == {"Drift 19": 200, "Drift 21": 300}
    assert by_van(facts, "cassette_l") == {"Drift 19": 18, "Drift 21": 18}


def test_a_heading_right_below_where_two_columns_end_governs_neither_of_them(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 21", size=24, bold=True)
    page.text(50, 80, "Model year 2026, a van that two people can live in for a month without a quarrel over room.")
    left = ("Length: 19 ft 8 in", "Height: 9 ft 1 in", "Wheelbase: 159 in", "GVWR: 9,350 lb", "Fuel tank: 24 gal")
    right = (
        "Fresh water: 28 gal",
        "Gray water: 25 gal",
        "Battery: 200 Ah AGM",
        "Solar: 380 W",
        "Inverter: 2,000 W",
    )
    for x0, lines in ((50, left), (310, right)):
        for number, line in enumerate(lines):
            page.text(x0, 120 + 16 * number, f"• {line}", size=9)
    page.text(50, 226, "Available at extra cost", size=11, bold=True)
    for number, text in enumerate(("3,000 W inverter", "Electric floor heat", "Awning", "Roof rack")):
        page.text(50, 248 + 14 * number, f"• {text}", size=9)
    said = {(fact.field, fact.value): fact.availability for fact in facts_of_pdf(page) if not fact.rejected}
    assert said["inverter_w", 2000] == said["battery_ah", 200] == said["solar_w", 380] == "standard"
    assert said["inverter_w", 3000] == said["heated_floor", True] == "optional"
