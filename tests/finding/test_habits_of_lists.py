"""What lists below headings say: what every van of a maker has, what can be added, what is not on this van."""

import pytest

HEAD = "# Marrowfen\n\nThe Tern and the Gannet, 2026\n\n"
VAN = "## {}\n\n- Overall length: {} ft\n- Wheelbase: 150 in\n- GVWR: 9,350 lb\n- Fresh tank: 30 gal\n- Solar: 200 W\n"


@pytest.fixture
def told(facts_of):
    """Give a function that puts text behind two vans of one maker, and gives what it states of a field."""

    def read(text, field):
        document = HEAD + VAN.format("Tern", 19) + "\n" + VAN.format("Gannet", 22) + "\n" + text
        return {(f.model, f.value, f.availability) for f in facts_of(document) if f.field == field and not f.rejected}

    return read


@pytest.mark.parametrize("heading", ["On every Marrowfen", "Every Marrowfen"])
def test_what_every_van_of_a_maker_has_is_of_all_its_vans(told, heading):
    stated = told(f"### {heading}\n\n- Dual-pane acrylic windows\n- Insulated shades for the cab\n", "window_glazing")
    assert stated == {("Tern", "double", "standard"), ("Gannet", "double", "standard")}


def test_what_can_be_added_to_a_van_is_an_option(told):
    stated = told("### You can add to a Gannet\n\n- Insulated shades for the rear doors\n", "rear_shades_insulated")
    assert stated == {("Gannet", True, "optional")}


@pytest.mark.parametrize(
    ("region", "heading", "item"),
    [
        ("AU", "What you can add", "Heated floor"),
        ("AU", "Things to add", "Heated floor"),
        ("FR", "Ce que vous pourrez ajouter", "Plancher chauffant"),
        ("DE", "Was Sie noch dazunehmen können", "Fußbodenheizung"),
    ],
)
def test_what_a_reader_can_add_is_an_option(states, region, heading, item):
    states(region, f"{heading}\n\n- {item}\n", {"heated_floor": ("option", True)})


def test_a_sentence_that_counts_is_no_label_of_the_figures_behind_its_colon(facts_of):
    text = (
        "# Marrowfen Drift 6\n\nRoom for a friend\n\nThree people sleep in a Drift: two across the back and one on the "
        "dinette, if that one is short. The kitchen faces the door, and the door faces the water.\n\n"
        "- Overall length: 5.99 m\n- Berths: 2\n- Fresh water: 90 litres\n- Grey water: 80 litres\n"
    )
    stated = {(fact.value, fact.availability) for fact in facts_of(text) if fact.field == "sleeps"}
    assert stated == {(3, "unstated"), (2, "standard")}


@pytest.mark.parametrize(
    ("region", "heading", "item"),
    [
        ("FR", "PAS SUR CE VÉHICULE", "plancher chauffant"),
        ("FR", "Pas dans ce fourgon", "plancher chauffant"),
        ("DE", "Nicht in diesem Fahrzeug", "Fußbodenheizung"),
    ],
)
def test_what_is_not_on_this_van_is_absent(states, region, heading, item):
    states(region, f"{heading}\n\n- {item}\n", {"heated_floor": False})


def test_a_kind_of_toilet_that_is_not_on_a_van_yields_to_the_one_that_is(states):
    states("FR", "WC : toilettes sèches\n\nPas sur ce fourgon\n\n- Cassette WC\n", {"toilet": "dry"})


@pytest.mark.parametrize(
    ("region", "line"),
    [
        ("US", "- Cell heating of the house battery"),
        ("FR", "- Réchauffage de la batterie"),
        ("DE", "- Batterieheizung"),
        ("DE", "- Bordbatterie mit Zellheizung"),
        ("DE", "- Bordbatterie im beheizten Sitzkasten"),
    ],
)
def test_a_battery_is_heated_however_it_is_said(states, region, line):
    states(region, line, {"battery_heated": True})


@pytest.mark.parametrize(
    ("region", "line", "volume"),
    [
        ("US", "Toilet: Portable, 5 gal. holding tank", 18.927),
        ("UK", "Toilet: Portable, 15-litre waste tank, in a cupboard", 15),
    ],
)
def test_the_only_tank_beside_a_portable_toilet_is_its_own(states, region, line, volume):
    states(region, line, {"toilet": "portable", "cassette_l": volume})


def test_a_tank_with_a_size_of_its_own_is_no_toilet_tank(states):
    line = "Toilet: cassette, 18 l; waste tank 90 l"
    states("UK", line, {"toilet": "cassette", "cassette_l": 18})


def test_the_fill_of_a_tank_and_its_inlet_in_french(states):
    states("FR", "Plein de gazole : 71 litres", {"fuel_tank_l": 71})
    states("FR", "Prise 220 V extérieure 16 A", {"shore_power_a": 16})


@pytest.mark.parametrize("cell", ["standard bank is larger", "larger as standard"])
def test_a_cell_that_says_that_the_standard_one_is_larger_gives_no_figure(facts_of, cell):
    table = (
        "# Marrowfen Drift 2026\n\n| | Drift 19 | Drift 21 |\n|---|---|---|\n| Length | 5.41 m | 6.36 m |\n"
        "| GVWR | 3500 kg | 4250 kg |\n| Leisure battery | 100 Ah | 200 Ah |\n"
        f"| Larger battery, 150 Ah | Option | {cell} |\n"
    )
    stated = {(f.model, f.value) for f in facts_of(table) if f.field == "battery_ah" and f.availability == "standard"}
    assert stated == {("Drift 19", 100), ("Drift 21", 200)}


def test_windows_of_insulating_glass_are_double(states):
    states("DE", "Alle Fenster im Wohnraum sind isolierverglast.", {"window_glazing": "double"})


def test_a_title_by_the_maker_says_how_it_calls_itself(vans_of):
    text = (
        "# Drift 21\n\nby Marrowfen · 2026 guide\n\n- Overall length: 19 ft\n- Wheelbase: 150 in\n- GVWR: 9,350 lb\n"
        "- Fresh tank: 30 gal\n- Solar: 200 W\n\nMarrowfen Sea & Road Inc., Slip 9, Hythe.\n"
    )
    assert vans_of(text) == {("Marrowfen", "Drift 21", 2026)}


@pytest.mark.parametrize("heading", ["2026 - base equipment and option packages", "Base equipment & options"])
def test_base_equipment_beside_options_in_a_heading_is_no_option(settled_of, heading):
    rows = settled_of(
        f"# Marrowfen Drift\n\n## {heading}\n\n|  | Drift 19 | Drift 22 |\n|---|---|---|\n| Length | 19 ft | 22 ft |\n"
        "| GVWR | 9,350 lb | 9,990 lb |\n| Toilet | Cassette | Cassette |\n| Solar | 100 W | 200 W |\n",
        name="chart.md",
    )
    assert {rows[van, "solar_w", "standard"].availability for van in ("Drift 19", "Drift 22")} == {"standard"}
