"""What a mass counts, what encloses tanks and valves, and figures beside labels that ask for something else."""

import pytest

FOAM = {"insulation_material": "rigid_foam"}


@pytest.mark.parametrize(
    "region, line",
    [
        ("UK", "Mass in running order includes the driver at 75 kg, 90 % fuel and 20 litres of fresh water."),
        ("FR", "La masse en ordre de marche comprend le conducteur (75 kg) et 20 l d'eau propre."),
        ("DE", "Die Masse in fahrbereitem Zustand enthält den Fahrer mit 75 kg und 20 l Frischwasser."),
    ],
)
def test_water_that_a_mass_counts_is_no_capacity(states, region, line):
    states(region, line, {})


@pytest.mark.parametrize(
    "region, line",
    [
        ("US", "Heated valve enclosure: standard"),
        ("DE", "Ablaufventil im beheizten Staufach: Serie"),
        ("FR", "Vanne de vidange dans un coffre chauffé : de série"),
    ],
)
def test_valves_in_heated_enclosures(states, region, line):
    states(region, line, {"dump_valve_protection": "heated_compartment"})


@pytest.mark.parametrize(
    "region, line, expected",
    [
        ("UK", "Insulation material: rigid foam, 30 mm", FOAM | {"insulation_thickness_mm": 30}),
        ("DE", "Dämmstoff: XPS-Hartschaum, 32 mm", FOAM | {"insulation_thickness_mm": 32}),
        ("DE", "Heizleistung: 2 bis 6 kW", {"heater_output_w": 6000}),
        ("FR", "Absorption électrique du chauffage (W) : 33", {"heater_power_draw_w": 33}),
        ("FR", "Purge et dérivation pour l’hivernage : de série", {"winterizing_bypass": True}),
        ("DE", "Boiler-Umgehung mit Ablasshähnen für die Winterpause: Serie", {"winterizing_bypass": True}),
    ],
)  # fmt: skip
def test_figures_and_words_that_answer_more_than_the_label_asks(states, region, line, expected):
    states(region, line, expected)


def test_a_label_that_names_the_kind_needs_no_other_answer(states):
    states("US", "12V waste tank heater: Standard", {"gray_tank_heat": "electric_pad"})
    states("US", "Gray tank location: enclosed, insulated belly", {"gray_tank_location": "enclosed"})


@pytest.mark.parametrize(
    "line, charge",
    [("House battery: 2 × AGM, 100 Ah", 200), ("Batteries: two lithium, 100 Ah each", 200),
     ("Battery: two AGM, 100 Ah", 100)],
)  # fmt: skip
def test_batteries_are_counted_before_their_kind(printed, line, charge):
    assert printed("US", line)["battery_ah"] == charge


def test_a_legend_of_codes_without_signs(settled_of):
    rows = settled_of(
        "# Marrowfen Drift\n\nModelljahr 2026\n\nS Serie SA Sonderausstattung, Aufpreis in Euro n. m. nicht möglich\n\n"
        "| | Drift K | Drift L |\n|---|---|---|\n| Länge (mm) | 5410 | 5990 |\n| Gesamtmasse (kg) | 3300 | 3500 |\n"
        "| L × B × H (cm) | 541 × 205 × 258 | 599 × 205 × 279 |\n"
        "| Fußbodenerwärmung, elektrisch | n. m. | SA 890,– |\n| Ablasshähne für die Winterpause | S | S |\n"
    )
    offers = {model: row.availability for (model, field, _), row in rows.items() if field == "heated_floor"}
    assert offers == {"Drift K": "not_available", "Drift L": "optional"}
    heights = {
        model: row.num for (model, field, kit), row in rows.items() if field == "height_mm" and kit == "standard"
    }
    assert heights == {"Drift K": 2580, "Drift L": 2790}


@pytest.mark.parametrize(
    "place", ["an insulated, heated bay", "an insulated and heated bay", "a lagged, heated locker"]
)
def test_a_place_that_is_insulated_and_heated_insulates_no_tank(states, place):
    states("US", f"Gray tank: in {place}", {"gray_tank_location": "enclosed", "gray_tank_heat": "heated_compartment"})


@pytest.mark.parametrize("line", ["Cassettentoilette 17 l", "Toilette: Cassette, 17 l", "Toilettencassette: 17 l"])
def test_a_cassette_with_a_c_is_one(states, line):
    states("DE", line, {"toilet": "cassette", "cassette_l": 17})


def test_aspects_that_a_label_lists_by_commas_take_the_answers_in_order(facts_of):
    rows = (
        "Model | Length | GVWR | Sleeps | Fresh tank: place, heat", "---|---|---|---|---",
        "Drift 19 | 19 ft | 9,050 lb | 2 | in cabin, none", "Drift 21 | 21 ft | 9,900 lb | 3 | under floor, 12 V pads",
    )  # fmt: skip
    text = "# Marrowfen Drift 2026\n\n" + "".join(f"| {row} |\n" for row in rows)
    found = {(f.model, f.field): f.value for f in facts_of(text, "range.md") if f.field.startswith("fresh_tank")}
    assert found == {
        ("Drift 19", "fresh_tank_location"): "interior", ("Drift 19", "fresh_tank_heat"): "none",
        ("Drift 21", "fresh_tank_location"): "underbody", ("Drift 21", "fresh_tank_heat"): "electric_pad",
    }  # fmt: skip


def test_a_tank_in_brackets_is_named_too(states):
    expected = {f"{tank}_tank_location": "underbody" for tank in ("gray", "black")}
    states("US", "Gray (and black) tanks: under floor", expected)
