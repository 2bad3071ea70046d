"""Labels set as headings, each over its value: a list whose rows stand one below the other."""

PAIRS = [
    ("GVWR / GCWR", "11,030 lb / 15,250 lb"),
    ("Sleeps", "3"),
    ("Propane", "None on board"),
    ("Water lines", "Foam sleeves, all in the cabin"),
    ("Thermal break", "Felt tape on every rib"),
    ("Floor heat", "Glycol loop in the aisle"),
    ("Windows", "Dual-pane, with screens"),
]


def under_headings(pairs):
    return "# Marrowfen Drift 24\n\n2026 data sheet\n\n" + "".join(
        f"## {label}\n\n{value}\n\n" for label, value in pairs
    )


def test_what_stands_alone_under_a_label_is_its_value(facts_of):
    found = {f.field: (f.value, f.availability) for f in facts_of(under_headings(PAIRS), "sheet.md") if not f.rejected}
    assert round(found["gvwr_kg"][0]) == 5003
    assert found["sleeps"] == (3, "standard")
    assert found["propane_tank_l"] == (0, "standard")
    assert found["water_lines_location"] == ("interior", "standard")
    assert found["thermal_break"] == (True, "standard")
    assert found["heated_floor"] == (True, "standard")
    assert found["window_glazing"] == ("double", "standard")


def test_a_chapter_of_several_sentences_is_no_value(facts_of):
    told = "Our vans stay on the road for long. Ask those who have one. None of them came back."
    found = facts_of(under_headings([*PAIRS[:2], *PAIRS[3:], ("Propane", told)]), "sheet.md")
    assert "propane_tank_l" not in {fact.field for fact in found}


def paragraphs(lines):
    return "<html lang='en'><body><h1>Marrowfen Drift 24</h1><h2>In figures</h2>" + "".join(
        f"<p>{line}</p>" for line in lines
    )


def test_lines_of_text_are_labels_and_values_by_turns(facts_of):
    pairs = [("Fuel tank", "24 gal"), ("Inverter", "2,000 W"), ("Floor heat", "Optional"), *PAIRS[:2]]
    lines = [*(line for pair in pairs for line in pair), "Solar, 400 W", "Windows", "Dual-pane"]
    found = {f.field: (f.value, f.availability) for f in facts_of(paragraphs(lines), "sheet.html") if not f.rejected}
    assert round(found["fuel_tank_l"][0]) == 91
    assert found["inverter_w"] == (2000, "standard")
    assert found["heated_floor"] == (True, "optional")
    assert found["sleeps"] == (3, "standard")
    assert found["solar_w"] == (400, "standard")
    assert found["window_glazing"] == ("double", "standard")


def test_lines_that_list_equipment_are_no_labels_of_what_stands_below_them(facts_of):
    lines = ["Inverter", "Awning, 9 ft", "Fuel tank", "Two spare wheels", "Roof fan", "Solar", "Ladder"]
    lines += ["Diesel heater", "Bicycle rack for 4", "Refrigerator", "30 gal of storage", "Water heater", "Two keys"]
    fields = {f.field for f in facts_of(paragraphs(lines), "sheet.html") if not f.rejected}
    assert fields.isdisjoint({"solar_w", "fuel_tank_l", "water_heater_l", "inverter_w"})
