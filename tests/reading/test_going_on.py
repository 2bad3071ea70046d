"""Tables without rules that group, begin anew or go on: each value keeps the head and label that are printed for it."""

from tests.reading.drawn import Page

BASICS = [
    ("Overall length", "5.90 m", "6.40 m", "6.95 m"),
    ("Wheelbase", "3.45 m", "4.04 m", "4.04 m"),
    ("Sleeps", "2", "3", "4"),
    ("GVWR", "3500 kg", "4250 kg", "4400 kg"),
]
MORE = [
    ("Interior height", "1.88 m", "1.90 m", "1.92 m"),
    ("Overall height", "2.70 m", "2.75 m", "2.80 m"),
    ("Overall width", "2.05 m", "2.05 m", "2.05 m"),
    ("Fuel tank", "75 L", "90 L", "90 L"),
    ("Hot water", "10 L", "10 L", "12 L"),
]
TANKS = [("Fresh water tank", "90 L", "120 L", "130 L"), ("Gray water tank", "70 L", "100 L", "110 L")]
VANS = ("Drift 19", "Drift 21", "Drift 23")
XS = (50, 250, 350, 450)


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def of_vans(*values):
    return dict(zip(VANS, values, strict=True))


def titled():
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    return page


def rows(page, top, texts, xs=XS, **style):
    """Set rows of a table from ``top`` on; give where the next one goes."""
    for number, values in enumerate(texts):
        page.row(top + 14 * number, *((x, v) for x, v in zip(xs, values, strict=True) if v), **style)
    return top + 14 * len(texts)


def begun(heading="Model"):
    """Set the beginning of the three vans' table; give the page and where its next row goes."""
    page = titled()
    rows(page, 90, [(heading, *VANS)], bold=True)
    return page, rows(page, 106, BASICS)


def test_groups_beside_the_labels_are_no_labels(facts_of_pdf):
    page = titled()
    xs = (50, 130, 280, 370, 460)
    rows(page, 90, [("", "", *VANS)], xs, bold=True)
    drive = ("Drive", "front-wheel", "all-wheel", "front-wheel")
    body = [("", *row) for row in (drive, *BASICS, *TANKS)]
    body[0] = ("Body", *body[0][1:])
    body[5] = ("Water", *body[5][1:])
    for number, values in enumerate(body):
        rows(page, 104 + 11 * number, [values], xs)  # set so close that wrapped labels would be no closer
    facts = facts_of_pdf(page)
    assert by_van(facts, "drive") == of_vans("front", "all", "front")
    assert by_van(facts, "length_mm") == of_vans(5900, 6400, 6950)
    assert by_van(facts, "sleeps") == of_vans(2, 3, 4)
    assert by_van(facts, "fresh_tank_l") == of_vans(90, 120, 130)
    assert by_van(facts, "gray_tank_l") == of_vans(70, 100, 110)


def test_heads_that_come_again_half_way_in_another_order_head_what_is_below(facts_of_pdf):
    page, top = begun("Dimensions")
    rows(page, top + 4, [("Water", *VANS[::-1])], bold=True)
    rows(page, top + 20, [(label, *values[::-1]) for label, *values in TANKS])
    facts = facts_of_pdf(page)
    assert by_van(facts, "sleeps") == of_vans(2, 3, 4)
    assert by_van(facts, "fresh_tank_l") == of_vans(90, 120, 130)
    assert by_van(facts, "gray_tank_l") == of_vans(70, 100, 110)


def test_a_table_that_goes_on_overleaf_with_other_widths_keeps_its_heads(facts_of_pdf):
    page, _ = begun()
    page.canvas.showPage()
    rows(page, 60, [*TANKS, ("Interior height", "1.88 m", "1.90 m", "1.92 m")], (50, 180, 265, 350))
    facts = facts_of_pdf(page)
    assert by_van(facts, "fresh_tank_l") == of_vans(90, 120, 130)
    assert by_van(facts, "interior_height_mm") == of_vans(1880, 1900, 1920)


def test_a_table_of_other_columns_overleaf_takes_no_heads(facts_of_pdf):
    page, _ = begun()
    page.canvas.showPage()
    rows(page, 60, [("Fresh water tank", "90 L", "120 L"), ("Gray water tank", "70 L", "100 L")], (50, 180, 265))
    facts = facts_of_pdf(page)
    assert by_van(facts, "sleeps") == of_vans(2, 3, 4)
    assert not by_van(facts, "fresh_tank_l")


def test_a_value_between_the_columns_of_two_vans_is_true_of_both(facts_of_pdf):
    page = titled()
    xs = (50, 250, 400)
    rows(page, 90, [("Model", *VANS[:2])], xs, bold=True)
    top = rows(page, 106, [row[:3] for row in BASICS + MORE], xs)
    page.row(top, (50, "Fresh water tank"), (322, "120 litres"))
    rows(page, top + 14, [row[:3] for row in TANKS[1:]], xs)
    facts = facts_of_pdf(page)
    assert by_van(facts, "fresh_tank_l") == {"Drift 19": 120, "Drift 21": 120}
    assert by_van(facts, "gray_tank_l") == {"Drift 19": 70, "Drift 21": 100}


def test_a_value_in_the_column_of_one_van_says_nothing_of_the_other(facts_of_pdf):
    page = titled()
    xs = (50, 250, 400)
    rows(page, 90, [("Model", *VANS[:2])], xs, bold=True)
    top = rows(page, 106, [row[:3] for row in BASICS + MORE], xs)
    page.row(top, (50, "Fresh water tank"), (250, "120 litres"))
    rows(page, top + 14, [row[:3] for row in TANKS[1:]], xs)
    assert by_van(facts_of_pdf(page), "fresh_tank_l") == {"Drift 19": 120}


def noted(page, sign, overleaf):
    """Set a table whose heaters refer to a note, at the foot of the page or of the next."""
    rows(page, 90, [("Model", *VANS)], bold=True)
    top = rows(page, 106, [*BASICS, *TANKS, (f"Heater rating{sign}", "4.0 kW", "4.0 kW", "6.0 kW")])
    if overleaf:
        page.canvas.showPage()
        page.text(50, 60, "Paint and fabrics", size=13, bold=True)
        page.text(50, 80, "The colours of fabrics can differ from those that are shown here.")
        top = 600
    page.text(50, top + 20, f"{sign} Gas input of the burner.", size=7)


def test_a_note_overleaf_says_what_the_figures_that_refer_to_it_are(facts_of_pdf):
    page = titled()
    noted(page, "*", overleaf=True)
    facts = facts_of_pdf(page)
    assert by_van(facts, "heater_input_w") == of_vans(4000, 4000, 6000)
    assert not by_van(facts, "heater_output_w")


def test_a_sign_with_a_bracket_leads_to_its_note(facts_of_pdf):
    page = titled()
    noted(page, "¹)", overleaf=False)
    facts = facts_of_pdf(page)
    assert by_van(facts, "heater_input_w") == of_vans(4000, 4000, 6000)
    assert not by_van(facts, "heater_output_w")


def test_the_only_van_of_a_page_stands_over_its_values_above_the_first_group(facts_of_pdf):
    page = titled()
    for number, (vans, xs) in enumerate(((VANS[:1], (50, 250)), (VANS[1:], (50, 250, 350)))):
        page.canvas.showPage()
        page.text(50, 40, "In figures", size=14, bold=True)
        rows(page, 70, [("", *vans)], xs, bold=True)
        picked = [(row[0], *row[1 + number : 2 + 2 * number]) for row in [*BASICS, *TANKS]]
        page.text(50, 84, "Chassis and size", bold=True)
        end = rows(page, 98, picked[:4], xs)
        page.text(50, end, "Water", bold=True)
        rows(page, end + 14, picked[4:], xs)
    facts = facts_of_pdf(page)
    assert by_van(facts, "fresh_tank_l") == of_vans(90, 120, 130)
    assert by_van(facts, "sleeps") == of_vans(2, 3, 4)


def test_cells_set_as_close_as_the_rows_go_on_without_a_label(facts_of_pdf):
    page = Page()
    page.text(40, 30, "Marrowfen Drift 2026", size=18)
    page.row(80, (240, "Drift 19"), (366, "Drift 21"), size=8, bold=True)
    lines = [
        ("Length", "5,410 mm", "5,990 mm"), ("Wheelbase", "3,450 mm", "4,035 mm"), ("GVWR", "3,500 kg", "3,500 kg"),
        ("Sleeps", "2", "2"), ("Gray water tank", "below the floor,", "below the floor,"),
        ("", "not insulated", "insulated, heated by"), ("", "", "warm air"), ("Fresh water tank", "85 L", "100 L"),
        ("Insulated surfaces", "walls, ceiling", "walls, ceiling, floor,"), ("", "", "doors"),
        ("Inverter", "1,000 W", "2,000 W"),
    ]  # fmt: skip
    for number, (label, *cells) in enumerate(lines):
        page.row(100 + 11 * number, (40, label), (240, cells[0]), (366, cells[1]), size=8)
    facts = {(fact.model[-2:], fact.field, fact.value) for fact in facts_of_pdf(page)}
    assert {("19", "gray_tank_insulated", False), ("21", "gray_tank_heat", "warm_air")} <= facts
    assert {value for van, field, value in facts if field == "insulated_surfaces" and van == "21"} == {
        "walls", "ceiling", "floor", "doors",
    }  # fmt: skip


def test_the_heading_below_the_code_of_an_option_is_no_second_line_of_it(facts_of_pdf):
    page = Page()
    page.text(40, 30, "Marrowfen Drift 2026", size=18)
    page.text(40, 70, "S = standard, price = option", size=8)
    for top in (88, 102, 205):
        page.rule(40, top, 520)
    page.row(90, (320, "Drift 19"), (420, "Drift 21"), size=8, bold=True)
    lines = [
        ("2010", "Insulated gray water tank", "190 €", "S"), ("2030", "Insulated water lines, all of", "190 €", "S"),
        ("", "them below the floor", "", ""), ("2041", "Composting toilet", "790 €", "S"), ("Electrics", "", "", ""),
        ("3011", "Solar, 130 W", "890 €", "S"), ("3020", "Inverter, 2,000 W", "990 €", "S"),
        ("3031", "Reversing camera", "390 €", "S"), ("3040", "Lithium battery, 200 Ah", "2,190 €", "S"),
    ]  # fmt: skip
    for number, (code, text, *prices) in enumerate(lines):
        page.row(105 + 11 * number, (40, code), (100, text), (320, prices[0]), (420, prices[1]), size=8)
    rows = [("Length", "5,410 mm", "5,990 mm"), ("GVWR", "3,500 kg", "3,500 kg"), ("Sleeps", "2", "2")]
    page.row(390, (320, "Drift 19"), (420, "Drift 21"), size=8, bold=True)
    for number, (label, *cells) in enumerate(rows):
        page.row(405 + 11 * number, (40, label), (320, cells[0]), (420, cells[1]), size=8)
    printed = {fact.field: fact.printed for fact in facts_of_pdf(page)}
    assert "Composting toilet" in printed["toilet"]
    assert "Electrics" not in printed["toilet"]
    assert "all of them below" in printed["water_lines_insulated"]


def test_justified_text_in_wide_leading_above_a_wider_table_is_one_paragraph(facts_of_pdf):
    page = titled()
    lines = (
        "The Drift 19 is short, and the Drift 21 has a bed across",
        "Gantry Fell, where our cold chamber is. We have built the",
        "Drift 23, which has a double floor, for nights of minus",
        "22 °C and for one passenger.",
    )
    for number, line in enumerate(lines):
        page.text(50, 70 + 13.7 * number, line, size=9, reach=290 if number < 3 else 0)
    rows(page, 150, [("Model", *VANS), *BASICS], (50, 300, 400, 500))
    assert by_van(facts_of_pdf(page), "rated_min_temp_c") == {"Drift 23": -22}
