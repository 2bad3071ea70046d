"""Whose a statement is that stands below the heading of one van and names others."""

import pytest

HEAD = "Marrowfen Vans\nMarrowfen Drift 2026\n\n"
ROWS = "Length: {} ft\nWheelbase: 150 in\nGVWR: 9,350 lb\nFresh tank: 30 gal\nSolar: 200 W\n"


@pytest.fixture
def stated(read_file, tmp_path):
    """Give a function that puts a line below the first of some vans, and gives the vans that state a field by it."""

    def read(line, field, vans=("19", "21", "24")):
        parts = [f"Drift {van}\n{ROWS.format(van)}" for van in vans]
        parts[0] += f"\n{line}\n"
        path = tmp_path / "vans.txt"
        path.write_text(HEAD + "\n".join(parts))
        return {fact.model[-2:] for fact in read_file(path).found.facts if fact.field == field and not fact.rejected}

    return read


def test_a_sentence_that_begins_with_another_van_is_of_that_van(stated):
    line = (
        "We like it for its size. The Drift 24 is a four-season van. We had it tested down to -20 °F by a laboratory."
    )
    assert stated(line, "season_claim") == {"24"}
    assert stated(line, "rated_min_temp_c") == {"24"}


def test_a_sentence_that_only_compares_is_of_the_van_of_the_heading(stated):
    line = "It is a small van and a light one. Unlike the Drift 24, it has a heated gray tank under the floor."
    assert stated(line, "gray_tank_heat") == {"19"}


def test_a_bracket_at_the_end_of_an_item_names_its_vans(stated):
    assert stated("- 12-volt pad on the gray tank (21, 24)", "gray_tank_heat") == {"21", "24"}


@pytest.mark.parametrize("vans", [("19", "21"), ("19", "21", "24")])
def test_both_below_a_van_are_two_of_its_things(stated, vans):
    assert stated("Gray and black tanks: below the floor, 12-volt pads on both", "gray_tank_heat", vans) == {"19"}


def test_a_note_that_tells_two_kinds_apart_gives_no_van_the_other_kind(facts_of):
    text = (
        "Marrowfen Drift 2026\n\n|  | Drift 19 | Drift 21 |\n|---|---|---|\n| Overall length | 5.41 m | 6.36 m |\n"
        "| GVWR | 3500 kg | 4250 kg |\n| Heater | LP furnace | Diesel hydronic heater |\n"
        "| Heater rating* | 4 kW | 5 kW |\n"
        "\n* LP furnaces: input. Diesel hydronic heaters: output.\n"
    )
    facts = [fact for fact in facts_of(text, "table.md") if fact.field == "heater_type" and not fact.rejected]
    assert {(fact.model[-2:], fact.value) for fact in facts} == {("19", "forced_air"), ("21", "hydronic")}


def test_what_every_van_of_one_range_has_is_not_said_of_the_other_range(facts_of):
    parts = [
        f"## {name}\n\n|  | {name} 19 | {name} 21 |\n|---|---|---|\n| Overall length | {long} m | 6.40 m |\n"
        f"| GVWR | 3500 kg | 3500 kg |\n\n### In every {name}\n\n- {line}\n\n"
        for name, long, line in (("Drift", 5.4, "Single-pane windows"), ("Shoal", 5.9, "Insulated water lines"))
    ]
    facts = [f for f in facts_of("# Marrowfen 2026\n\n" + "".join(parts), "folder.md") if not f.rejected]
    assert {f.model for f in facts if f.field == "window_glazing"} == {"Drift 19", "Drift 21"}
    assert {f.model for f in facts if f.field == "water_lines_insulated"} == {"Shoal 19", "Shoal 21"}


@pytest.mark.parametrize(
    ("rows", "note"),
    [
        ("| Heater rating [1] | 4 kW | 5 kW |\n", "[1] Gas furnaces: input. Petrol and diesel heaters: output.\n"),
        ("| Heater rating* | 4 kW | 5 kW |\n", "* Diesel heaters: output; gas furnaces: input.\n"),
    ],
)
def test_a_note_that_tells_kinds_apart_says_of_each_van_what_it_says_of_its_kind(facts_of, rows, note):
    text = (
        "Marrowfen Drift 2026\n\n|  | Drift 19 | Drift 21 |\n|---|---|---|\n| Overall length | 5.41 m | 6.36 m |\n"
        f"| GVWR | 3500 kg | 4250 kg |\n| Heater | Gas furnace | Diesel air heater |\n{rows}\n{note}"
    )
    facts = [fact for fact in facts_of(text, "table.md") if fact.field.startswith("heater_") and not fact.rejected]
    assert {(fact.model[-2:], fact.field, fact.value) for fact in facts} == {
        ("19", "heater_input_w", 4000), ("21", "heater_output_w", 5000),
        ("19", "heater_type", "forced_air"), ("21", "heater_type", "forced_air"),
        ("19", "heater_fuel", "propane"), ("21", "heater_fuel", "diesel"),
    }  # fmt: skip


def test_a_note_may_give_one_van_a_basis_of_its_own(facts_of):
    text = (
        "Marrowfen Drift 2026\n\n|  | Drift 19 | Drift 21 |\n|---|---|---|\n| Overall length | 5.41 m | 6.36 m |\n"
        "| GVWR | 3500 kg | 4250 kg |\n| Space heat | LP furnace | Gasoline hydronic |\n| Rating* | 4 kW | 5 kW |\n\n"
        "* LP furnaces: input. Drift 21: output of the hydronic unit, which needs about 70 W.\n"
    )
    facts = [fact for fact in facts_of(text, "table.md") if not fact.rejected]
    assert {(fact.model[-2:], fact.field, fact.value) for fact in facts if fact.field.startswith("heater_")} == {
        ("19", "heater_input_w", 4000), ("21", "heater_output_w", 5000), ("21", "heater_power_draw_w", 70),
        ("19", "heater_type", "forced_air"), ("21", "heater_type", "hydronic"),
        ("19", "heater_fuel", "propane"), ("21", "heater_fuel", "gasoline"),
    }  # fmt: skip


@pytest.mark.parametrize(
    ("heading", "said"),
    [
        ("List 1. What the price of $91,200 includes", "standard"),
        ("In the price of $91,200", "standard"),
        ("Winter Pack, $2,900", "optional"),
        ("Options not in the price", "optional"),
    ],
)
def test_a_heading_with_a_price_says_whether_it_holds_what_is_below(facts_of, heading, said):
    text = f"# Marrowfen Drift 19\n\n{ROWS.format(19)}\n## {heading}\n\n- 2,000-watt inverter\n- Heated floor\n"
    found = {fact.field: fact.availability for fact in facts_of(text, "offer.md")}
    assert (found["inverter_w"], found["heated_floor"]) == (said, said)


def test_a_title_over_what_is_included_and_what_is_extra_makes_nothing_optional(facts_of):
    title = "# What is included, what costs extra"
    text = f"# Marrowfen Drift 19\n\n{ROWS.format(19)}\n{title}\n\n## On every Drift\n\n- 2,000-watt inverter\n"
    found = {fact.field: fact.availability for fact in facts_of(text, "offer.md")}
    assert found["inverter_w"] == "standard"


@pytest.mark.parametrize(
    ("heading", "labels", "rows"),
    [
        (
            "Insulation and equipment",
            ("Overall length", "GVWR", "Sleeps"),
            ("Roof rails", "Ladder to roof", "Rear door ladder", "Floor mats"),
        ),
        (
            "Isolation et équipement",
            ("Longueur", "PTAC", "Couchages"),
            ("Barres de toit", "Échelle de toit", "Porte-vélos sur porte arrière"),
        ),
        (
            "Isolierung und Ausstattung",
            ("Länge", "Gesamtmasse", "Schlafplätze"),
            ("Dachträger", "Leiter zum Dach", "Türfach"),
        ),
    ],
)
def test_what_is_mounted_on_roof_or_doors_is_not_their_insulation(facts_of, heading, labels, rows):
    table = "|  | Drift 19 | Drift 21 |\n|---|---|---|\n"
    values = ("5.41 m | 6.36 m", "3500 kg | 4250 kg", "2 | 3")
    sizes = "".join(f"| {label} | {value} |\n" for label, value in zip(labels, values, strict=True))
    extras = "".join(f"| {row} | option | standard |\n" for row in rows)
    text = f"# Marrowfen Drift 2026\n\n{table}{sizes}\n## {heading}\n\n{table}{extras}"
    assert not [fact for fact in facts_of(text, "table.md") if fact.field == "insulated_surfaces"]


@pytest.mark.parametrize(
    ("heading", "name"),
    [
        ("Serie, Extra, gibt es nicht", "sieb.md"),
        ("Standard, option, not fitted", "sieve.md"),
    ],
)
def test_a_heading_that_lists_what_marks_can_say_denies_nothing_below_it(facts_of, heading, name):
    german = name == "sieb.md"
    labels = ("Fußbodenheizung", "Wechselrichter 900 W") if german else ("Heated floor", "900 W inverter")
    marked = "".join(f"| {label} | ● | ○ |\n" for label in labels)
    text = (
        f"# Marrowfen Drift\n\n|  | Drift 19 | Drift 21 |\n|---|---|---|\n"
        f"| {'Länge' if german else 'Length'} | 5990 mm | 6360 mm |\n\n## {heading}\n\n"
        f"● {'serienmäßig' if german else 'standard'}   ○ {'auf Wunsch' if german else 'optional'}\n\n"
        f"|  | Drift 19 | Drift 21 |\n|---|---|---|\n{marked}"
    )
    facts = [fact for fact in facts_of(text, name) if fact.field in ("heated_floor", "inverter_w")]
    assert {(fact.model[-2:], fact.field, fact.value, fact.availability) for fact in facts} == {
        ("19", "heated_floor", True, "standard"),
        ("21", "heated_floor", True, "optional"),
        ("19", "inverter_w", 900, "standard"),
        ("21", "inverter_w", 900, "optional"),
    }


def test_all_of_a_range_are_those_in_whose_names_it_stands(facts_of):
    text = (
        "# The Drift range 2026\n\nAll Drifts have a thermal break. Every Drift has a heated floor.\n\n"
        "| | Drift 54 | Drift 60 L | Grand Drift |\n|---|---|---|---|\n| Length | 5.41 m | 5.99 m | 6.36 m |\n"
        "| Sleeps | 2 | 2 | 3 |\n| GVWR | 3300 kg | 3500 kg | 4000 kg |\n| Gray tank | 65 l | 85 l | 95 l |\n"
    )
    facts = facts_of(text, "range.md")
    for field in ("thermal_break", "heated_floor"):
        assert {f.model for f in facts if f.field == field} == {"Drift 54", "Drift 60 L", "Grand Drift"}, field


POSTER = """# Marrowfen Drift 59

Model year 2026. Length 5.95 m. Width 2.05 m. GVWR 3,500 kg. Wheelbase 3.60 m.

## {heading}

- 95 litres
- {item}
"""


def test_pipes_that_are_lagged_say_nothing_of_the_tank_of_the_heading(facts_of):
    facts = facts_of(POSTER.format(heading="Fresh water", item="All pipes inside, lagged"), "x.md")
    told = {fact.field: fact.value for fact in facts}
    assert told["water_lines_insulated"] is True
    assert "fresh_tank_insulated" not in told


def test_a_heating_mat_is_no_mat_for_windows(facts_of):
    facts = facts_of(POSTER.format(heading="Waste water", item="Tank insulated, with 12 V heating mat"), "x.md")
    told = {fact.field: fact.value for fact in facts}
    assert (told["gray_tank_l"], told["gray_tank_insulated"], told["gray_tank_heat"]) == (95, True, "electric_pad")


def test_the_head_of_the_labels_of_a_spreadsheet_is_no_heading_of_lines(facts_of):
    text = POSTER.format(heading="Shell", item="Two doors") + (
        "\n## Line\n\n| | Value |\n|---|---|\n| Wall insulation | Foam board |\n| Insulated | walls, ceiling |\n"
    )
    told = {(fact.field, fact.value) for fact in facts_of(text, "x.md")}
    assert ("insulated_surfaces", "ceiling") in told
    assert "water_lines_insulated" not in {field for field, _ in told}


def test_places_under_a_heading_of_covers_have_covers(facts_of):
    item = "Cab: insulated set, option\n- Rear doors: insulated, standard"
    told = {
        (fact.field, fact.value, fact.availability)
        for fact in facts_of(POSTER.format(heading="Shades", item=item), "x.md")
    }
    assert ("cab_shades_insulated", True, "optional") in told
    assert ("rear_shades_insulated", True, "standard") in told
    assert "insulated_surfaces" not in {field for field, _, _ in told}
