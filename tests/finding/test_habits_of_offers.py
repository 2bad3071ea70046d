"""What is standard and what options make of it in one cell; heat put in and given out; lines that tell of no van."""

import pytest

BTU_H = 0.29307107  # NIST SP 811 (2008), Appendix B, BTU (IT) an hour
GALLON = 3.785411784  # the same

ENGLISH = "| Overall length | 5.41 m | 6.36 m |\n| Height | 2.65 m | 2.7 m |\n| GVWR | 3500 kg | 3500 kg |\n"
GERMAN = "| Gesamtlänge | 5,41 m | 6,36 m |\n| Höhe | 2,65 m | 2,7 m |\n| Zul. Gesamtgewicht | 3500 kg | 3500 kg |\n"
FRENCH = "| Longueur hors tout | 5,41 m | 6,36 m |\n| Hauteur | 2,65 m | 2,7 m |\n| PTAC | 3500 kg | 3500 kg |\n"

NOTED = """# Marrowfen Drift 2026

| Model | Overall length | Heater | BTU/h* |
|---|---|---|---|
| Drift 19 | 19 ft | LP furnace | 16,000 |
| Drift 21 | 21 ft | Diesel hydronic | 17,000 |
| Drift 24 | 24 ft | | 18,000 |

* Input for LP furnaces, output for the diesel heaters.
"""


@pytest.mark.parametrize(
    ("rows", "label", "cells"),
    [
        (ENGLISH, "Solar (W), std. / max.", ("100 / 200", "200 / 400")),
        (ENGLISH, "Solar, std. / opt.", ("100 W / 200 W", "200 W / 400 W")),
        (GERMAN, "Solar (W) Serie / Option", ("100/200", "200/400")),
        (FRENCH, "Solaire (W), de série / en option", ("100 / 200", "200 / 400")),
    ],
)
def test_the_second_figure_is_what_an_option_makes_of_the_first(facts_of, rows, label, cells):
    facts = facts_of(
        f"# Marrowfen Drift 2026\n\n| | Drift 19 | Drift 21 |\n|---|---|---|\n{rows}"
        f"| {label} | {cells[0]} | {cells[1]} |\n"
    )
    found = {(f.model, f.availability, f.value) for f in facts if f.field == "solar_w" and not f.rejected}
    assert found == {
        ("Drift 19", "standard", 100), ("Drift 19", "optional", 200),
        ("Drift 21", "standard", 200), ("Drift 21", "optional", 400),
    }  # fmt: skip


@pytest.mark.parametrize(
    ("region", "line", "expected"),
    [
        ("US", "Furnace: 12,000 BTU/h input (9,600 output)",
         {"heater_input_w": 12000 * BTU_H, "heater_output_w": 9600 * BTU_H, "heater_type": "forced_air"}),
        ("US", "Furnace: 12,000 BTU/h (9,600 output)",
         {"heater_rating_w": 12000 * BTU_H, "heater_output_w": 9600 * BTU_H, "heater_type": "forced_air"}),
        ("DE", "Heizung: Nennwärmebelastung 6 kW (5,2 Wärmeleistung)",
         {"heater_input_w": 6000, "heater_output_w": 5200}),
    ],
)  # fmt: skip
def test_a_figure_in_brackets_is_of_the_kind_that_stands_with_it(printed, region, line, expected):
    stated = {field: value for field, value in printed(region, line).items() if field in expected}
    assert stated == {k: v if isinstance(v, str) else pytest.approx(v, rel=0.001) for k, v in expected.items()}


def test_a_column_headed_by_a_unit_goes_on_about_the_thing_before_it_and_its_note_parts_kinds(facts_of):
    facts = facts_of(NOTED)
    heat = {(f.model, f.field): f.value for f in facts if f.field.startswith("heater_") and f.field.endswith("put_w")}
    assert heat == {
        ("Drift 19", "heater_input_w"): pytest.approx(16000 * BTU_H, rel=0.001),
        ("Drift 21", "heater_output_w"): pytest.approx(17000 * BTU_H, rel=0.001),
    }
    fuels = {f.model: f.value for f in facts if f.field == "heater_fuel" and not f.rejected}
    assert fuels == {"Drift 19": "propane", "Drift 21": "diesel"}


@pytest.mark.parametrize(
    ("region", "line"),
    [
        ("US", "Marrowfen LLC, Furnace Row, Garnet Falls"),
        ("US", "Marrowfen Motor Coaches Inc. · Propane Street · Garnet Falls"),
        ("DE", "Marrowfen GmbH, Am Gaslager, Kaltenbach"),
    ],
)
def test_an_address_tells_nothing_of_a_van(states, region, line):
    states(region, line, {})


def test_a_sentence_with_a_company_in_it_is_no_address(printed):
    told = printed("US", "Marrowfen Inc., based in Garnet Falls, fits a diesel furnace and 30 gal of fresh water.")
    assert told["heater_fuel"] == "diesel"


def test_the_tank_of_a_cassette_toilet_is_no_portable_toilet(states):
    states("US", "Cassette toilet with a 4.8 gal portable tank", {"toilet": "cassette", "cassette_l": 4.8 * GALLON})


@pytest.mark.parametrize(
    ("region", "line"),
    [
        ("US", "Dump valves: in bay, heated"),
        ("FR", "Vanne de vidange : dans un coffret chauffé"),
        ("DE", "Ablassventil: im Staukasten, beheizt"),
    ],
)
def test_a_valve_in_a_place_with_heat_is_in_a_heated_compartment(states, region, line):
    states(region, line, {"dump_valve_protection": "heated_compartment"})


@pytest.mark.parametrize(
    ("region", "line", "expected"),
    [
        ("US", "Height over air conditioner: 8 ft 11 in", {"height_mm": 107 * 25.4}),
        ("UK", "Height: 2,890 mm with roof hatch", {"height_mm": 2890}),
        ("FR", "Vanne de vidange : sous gaine isolante", {"dump_valve_protection": "insulated"}),
    ],
)
def test_what_a_height_was_measured_with_and_what_a_valve_stands_in(states, region, line, expected):
    states(region, line, expected)


def test_heat_whose_note_is_not_found_is_left_out_and_not_said_to_be_without_basis(facts_of):
    page = (
        "<h1>Marrowfen Drift 2026</h1><table><tr><th></th><th>Drift 19</th><th>Drift 21</th></tr>"
        "<tr><td>Overall length</td><td>5.41 m</td><td>6.36 m</td></tr>"
        "<tr><td>GVWR</td><td>3500 kg</td><td>4250 kg</td></tr>"
        "<tr><td>Height</td><td>2.65 m</td><td>2.7 m</td></tr>"
        "<tr><td>Furnace, BTU/h</td><td>12,000<sup>2</sup></td><td>16,000</td></tr></table>"
    )
    heat = {f.model for f in facts_of(page, "page.html") if f.field == "heater_rating_w"}
    assert heat == {"Drift 21"}
