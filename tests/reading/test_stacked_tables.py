"""Tables below one another, and lists beside one another, keep to themselves."""

from tests.reading.drawn import titled


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def test_vans_as_rows_of_two_tables_that_begin_alike_are_rows_of_each(facts_of_pdf):
    page = titled()
    page.row(90, (40, "Version"), (110, "Length"), (170, "Height"), (230, "Sleeps"), (290, "Fuel tank"), bold=True)
    page.row(102, (40, "Curlew 21"), (110, "5,910 mm"), (170, "2,610 mm"), (230, "2"), (290, "75 L"))
    page.row(114, (40, "Curlew 24"), (110, "6,380 mm"), (170, "2,840 mm"), (230, "4"), (290, "90 L"))
    heads = (40, "Version"), (91, "Gray tank insulation"), (206, "Hot water"), (270, "Toilet"), (345, "Heated floor")
    page.row(132, *heads, bold=True)
    page.row(144, (40, "Curlew 21"), (91, "No"), (206, "6 L"), (270, "composting"), (345, "included"))
    page.row(156, (40, "Curlew 24"), (91, "included"), (206, "10 L"), (270, "portable"), (345, "No"))
    facts = facts_of_pdf(page)
    assert by_van(facts, "fuel_tank_l") == {"Curlew 21": 75, "Curlew 24": 90}
    assert by_van(facts, "gray_tank_insulated") == {"Curlew 21": False, "Curlew 24": True}
    assert by_van(facts, "heated_floor") == {"Curlew 21": True, "Curlew 24": False}


def test_two_tables_with_columns_of_different_widths_have_their_own_columns(facts_of_pdf):
    page = titled()
    page.row(90, (40, "Version"), (190, "Curlew 21"), (260, "Curlew 24"), (330, "Curlew 27"), bold=True)
    page.row(102, (40, "Overall length"), (190, "5.41 m"), (260, "5.99 m"), (330, "6.36 m"))
    page.row(114, (40, "Gray tank insulation"), (190, "No"), (260, "Yes"), (330, "No"))
    page.row(126, (40, "Heated water lines"), (190, "No"), (260, "No"), (330, "Yes"))
    page.text(40, 142, "Equipment", size=14, bold=True)
    page.row(162, (40, "Version"), (130, "Curlew 21"), (232, "Curlew 24"), (285, "Curlew 27"), bold=True)
    page.row(174, (40, "House battery"), (130, "200 Ah lithium, heated"), (232, "95 Ah"), (285, "two 100 Ah AGM"))
    page.row(186, (40, "Heated floor"), (130, "Yes"), (232, "No"), (285, "No"))
    page.row(198, (40, "Solar"), (130, "200 W on the roof"), (232, "100 W"), (285, "2 x 200 W on the roof"))
    facts = facts_of_pdf(page)
    assert by_van(facts, "gray_tank_insulated") == {"Curlew 21": False, "Curlew 24": True, "Curlew 27": False}
    assert by_van(facts, "water_lines_heated") == {"Curlew 21": False, "Curlew 24": False, "Curlew 27": True}
    assert by_van(facts, "solar_w") == {"Curlew 21": 200, "Curlew 24": 100, "Curlew 27": 400}


def test_the_values_of_two_vans_beside_each_other_are_no_list_of_their_own(facts_of_pdf):
    page = titled()
    page.row(90, (228, "Curlew 21"), (347, "Curlew 24"), (443, "Curlew 27"), bold=True)
    page.row(103, (43, "Overall length"), (228, "5.41 m"), (347, "5.99 m"), (443, "6.36 m"))
    page.row(116, (43, "Fuel tank"), (228, "75 L"), (347, "75 L"), (443, "90 L"))
    page.text(43, 132, "Water", bold=True)
    page.row(147, (43, "Gray / fresh water"), (228, "95/112 L"), (347, "90/120 L"), (443, "102/96 L"))
    page.row(160, (43, "Fresh tank location"), (228, "inside"), (347, "inside"), (443, "inside"))
    page.row(173, (43, "Gray tank heating"), (228, "12 V pad"), (347, "warm air"), (443, "12 V pad"))
    page.row(186, (43, "Gray tank insulation"), (228, "Yes"), (347, "No"), (443, "No"))
    values = (228, "outside underneath the"), (347, "double floor"), (443, "double floor")
    page.row(199, (43, "Gray tank location"), *values)
    page.row(210, (228, "vehicle"))
    facts = facts_of_pdf(page)
    assert by_van(facts, "gray_tank_l") == {"Curlew 21": 95, "Curlew 24": 90, "Curlew 27": 102}
    assert by_van(facts, "gray_tank_insulated") == {"Curlew 21": True, "Curlew 24": False, "Curlew 27": False}


def test_marks_under_the_names_of_two_vans_stay_with_their_lines(facts_of_pdf):
    page = titled()
    page.text(40, 130, "S = standard   O = option   X = not available")
    lines = [
        ("Coolant loop through the gray water tank", "S", "X"),
        ("12 V heating pad on the fresh water tank below the bed", "O", "O"),
        ("Insulated covers for the windows of the driver's cab", "X", "O"),
        ("Winterizing bypass of the water heater and its taps", "O", "S"),
        ("Smoke and carbon monoxide alarms in the living area", "S", "S"),
        ("Heated floor in the living area and the wash room", "S", "X"),
    ]
    page.row(60, (40, "Version"), (150, "Curlew 21"), (260, "Curlew 24"), bold=True)
    for place, label in enumerate(("Overall length", "Overall width", "Overall height")):
        page.row(74 + 12 * place, (40, label), (150, f"2.{place + 1}0 m"), (260, f"2.{place + 4}0 m"))
    page.row(154, (400, "Curlew 21"), (470, "Curlew 24"), bold=True)
    for place, (label, one, two) in enumerate(lines):
        page.row(168 + 14 * place, (40, label), (415, one), (485, two))
    facts = facts_of_pdf(page)
    availability = {(f.model, f.field): str(f.availability) for f in facts}
    assert availability["Curlew 21", "fresh_tank_heat"] == "optional"
    assert availability["Curlew 24", "heated_floor"] == "not_available"


def test_a_van_named_above_the_first_heading_of_its_list_heads_the_list(facts_of_pdf):
    page = titled()
    vans = (40, "Curlew 21 P", "200 W", "cassette"), (310, "Curlew 24 T", "none", "composting")
    for x0, van, solar, toilet in vans:
        page.text(x0, 90, van, size=10, bold=True)
        page.text(x0, 105, "Vehicle", size=10, bold=True)
        page.text(x0, 118, "Chassis: Tirrow Haul 35 L2H2 with the high roof")
        page.text(x0, 130, "Sleeps: 2")
        page.text(x0, 142, "Fuel tank: 75 L")
        page.text(x0, 158, "Living area", size=10, bold=True)
        page.text(x0, 171, f"Solar: {solar}")
        page.text(x0, 183, f"Toilet: {toilet}")
    facts = facts_of_pdf(page)
    assert by_van(facts, "solar_w") == {"Curlew 21 P": 200, "Curlew 24 T": 0}
    assert by_van(facts, "toilet") == {"Curlew 21 P": "cassette", "Curlew 24 T": "dry"}


def test_a_unit_that_is_broken_at_its_hyphen_keeps_it(facts_of_pdf):
    page = titled()
    page.row(90, (40, "Version"), (150, "Curlew 21"), (260, "Curlew 24"), bold=True)
    page.row(104, (40, "House battery"), (150, "LiFePO4, 150 amp-"), (260, "AGM, 95 amp-hours"))
    page.row(115, (150, "hours, heated"))
    for place, label in enumerate(("Overall length", "Overall width", "Overall height")):
        page.row(130 + 13 * place, (40, label), (150, f"2.{place + 1}0 m"), (260, f"2.{place + 4}0 m"))
    assert by_van(facts_of_pdf(page), "battery_ah") == {"Curlew 21": 150, "Curlew 24": 95}


def test_a_compound_that_is_broken_behind_a_joining_word_keeps_its_hyphen(facts_of_pdf):
    page = titled()
    page.row(90, (40, "Version"), (150, "Curlew 21"), (290, "Curlew 24"), bold=True)
    page.row(104, (40, "Heating"), (150, "Diesel air-and-"), (290, "Diesel blown air"))
    page.row(115, (150, "water unit, 6 kW"))
    for place, label in enumerate(("Overall length", "Overall width", "Overall height")):
        page.row(130 + 13 * place, (40, label), (150, f"2.{place + 1}0 m"), (290, f"2.{place + 4}0 m"))
    assert by_van(facts_of_pdf(page), "heater_type") == {"Curlew 21": "combined", "Curlew 24": "forced_air"}


def test_heads_of_two_lines_half_way_beside_others_head_a_further_table_too(facts_of_pdf):
    page = titled()
    page.row(90, (40, "Model"), (130, "Length (mm)"), (230, "Wheelbase (mm)"), (350, "Sleeps"), bold=True, size=8)
    page.row(106, (40, "Curlew 21"), (130, "5910"), (230, "3450"), (350, "2"), size=8)
    page.row(122, (40, "Curlew 24"), (130, "6380"), (230, "4035"), (350, "4"), size=8)
    page.text(40, 142, "Heating and power", size=11, bold=True)
    page.text(330, 164, "Electrical", bold=True, size=8)
    page.text(230, 168.5, "Fuel burnt", bold=True, size=8)
    page.row(173, (40, "Model"), (130, "Heat output (kW)"), (330, "draw of the"), (430, "Solar (W)"), bold=True, size=8)
    page.text(230, 177.5, "at most (l/h)", bold=True, size=8)
    page.text(330, 182, "heater (W)", bold=True, size=8)
    page.row(198, (40, "Curlew 21"), (130, "2.0"), (230, "0.25"), (330, "30"), (430, "100"), size=8)
    page.row(214, (40, "Curlew 24"), (130, "4.0"), (230, "0.51"), (330, "45"), (430, "200"), size=8)
    facts = facts_of_pdf(page)
    assert by_van(facts, "heater_consumption_l_h") == {"Curlew 21": 0.25, "Curlew 24": 0.51}
    assert by_van(facts, "heater_power_draw_w") == {"Curlew 21": 30, "Curlew 24": 45}
    assert by_van(facts, "heater_output_w") == {"Curlew 21": 2000, "Curlew 24": 4000}


def test_two_lists_whose_rows_drift_apart_keep_their_labels_with_their_values(facts_of_pdf):
    page = titled()
    left = [("Length", "6.36 m"), ("Width", "2.05 m without its mirrors"), ("Height", "2.84 m"), ("Headroom", "1.96 m"),
            ("Wheelbase", "4.03 m"), ("GVWR", "4,005 kg"), ("Payload", "610 kg"), ("Sleeps", "Three"),
            ("Fuel tank", "90 l"), ("Toilet", "Cassette")]  # fmt: skip
    right = [("Heated floor", "Optional"), ("Propane tank", "38 l, usable"), ("Solar", "300 W; 600 W optional"),
             ("Inverter", "2,000 W"), ("Shore power", "30 A"), ("Thermal break", "No"), ("Rear shades", "Optional"),
             ("Dump valve", "Exposed"), ("Hot water", "10 l"), ("Windows", "Double-glazed")]  # fmt: skip
    for number, (label, value) in enumerate(left):
        page.row(90 + 11 * number, (40, label), (110, value), size=8)
    for number, (label, value) in enumerate(right):
        page.row(92.2 + 11 * number, (250, label), (370, value), size=8)
    facts = facts_of_pdf(page)
    assert set(by_van(facts, "thermal_break").values()) == {False}
    assert set(by_van(facts, "inverter_w").values()) == {2000}
    assert {fact.availability for fact in facts if fact.field == "heated_floor"} == {"optional"}
