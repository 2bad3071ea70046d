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
