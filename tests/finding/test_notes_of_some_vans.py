"""Notes that several cells refer to, of some vans alone; what depends on an option; what a van is not built with."""

import pytest

NOTED = """<h1>Marrowfen Drift 2026</h1>
<table><tr><th></th><th>Drift 19</th><th>Drift 21</th><th>Drift 23</th></tr>
<tr><td>Overall length</td><td>5.41 m</td><td>6.36 m</td><td>6.60 m</td></tr>
<tr><td>MTPLM</td><td>3,500 kg</td><td>4,250 kg</td><td>4,500 kg</td></tr>
<tr><td>Height at roof vent</td><td>2.58 m</td><td>2.87 m</td><td>2.87 m</td></tr>
<tr><td>Fresh water</td><td>70 litres</td><td>100 litres<sup>3</sup></td><td>110 litres</td></tr>
<tr><td>Waste water</td><td>60 litres</td><td>75 litres</td><td>80 litres</td></tr>
<tr><td>Waste tank</td><td>underslung</td><td>underslung</td><td>in a locker<sup>1</sup></td></tr>
<tr><td>Waste drain tap</td><td>exposed</td><td>exposed</td><td>in the locker<sup>1</sup></td></tr>
<tr><td>Leisure battery</td><td>90 Ah AGM<sup>2</sup></td><td>100 Ah AGM<sup>2</sup></td>
<td>210 Ah lithium</td></tr></table>
<p>¹ {first}</p><p>² Or one 105 Ah lithium battery instead, at extra cost.</p><p>³ {third}</p>"""
HEATED = "Warm air from the heater is led through this locker."


def stated(facts, field):
    found = [fact for fact in facts if fact.field == field and not fact.rejected]
    return {(fact.model.split()[-1], fact.availability, fact.value) for fact in found}


@pytest.fixture
def noted(facts_of):
    """Give a function that gives the facts of the table with some notes."""
    return lambda first=HEATED, third="Measured.": facts_of(NOTED.format(first=first, third=third), "page.html")


def test_a_note_is_of_the_vans_whose_cells_refer_to_it(noted):
    facts = noted()
    assert {van for van, _, value in stated(facts, "gray_tank_heat") if value == "warm_air"} == {"23"}
    assert {van for van, _, ah in stated(facts, "battery_ah") if ah == 105} == {"19", "21"}


def test_a_note_that_names_vans_is_of_those(noted):
    facts = noted("Heated by warm air, on the Drift 21 too.")
    assert "21" in {van for van, _, value in stated(facts, "gray_tank_heat") if value == "warm_air"}


def test_all_of_a_sentence_depends_on_the_option_at_its_end(noted):
    facts = noted(third="85 litres, inboard, with the optional inboard tank.")
    assert ("21", "optional", 85) in stated(facts, "fresh_tank_l")
    assert ("21", "standard", 85) not in stated(facts, "fresh_tank_l")
    assert {told for van, told, _ in stated(facts, "fresh_tank_location") if van == "21"} == {"optional"}


def test_the_first_of_two_figures_does_not_depend_on_the_option(noted):
    facts = noted(third="100 litres, or 85 litres with the optional inboard tank.")
    assert ("21", "standard", 100) in stated(facts, "fresh_tank_l")


def test_the_height_at_a_roof_vent_is_the_height(noted):
    assert {value for _, _, value in stated(noted(), "height_mm")} == {2580, 2870}


@pytest.mark.parametrize(
    ("region", "heading", "item"),
    [
        ("US", "We do not build it with", "a propane furnace"),
        ("FR", "Nous ne le construisons pas avec", "un chauffage à air pulsé au gaz"),
        ("DE", "Wir bauen ihn nicht mit", "einer Luftheizung (Gas)"),
    ],
)
def test_what_a_van_is_not_built_with_is_not_its_heater(settled_of, region, heading, item):
    words = {"US": "Overall length: 21 ft", "FR": "Longueur hors tout : 6,36 m", "DE": "Gesamtlänge: 6,36 m"}
    rows = settled_of(f"Marrowfen Drift 21\n\nMarrowfen\n\n- {words[region]}\n\n## {heading}\n\n- {item}\n")
    told = [row for (_, field, _), row in rows.items() if field == "heater_type"]
    assert all(row.availability == "not_available" or row.status != "stated" for row in told)


@pytest.mark.parametrize("told", ["part inside, part below", "Part indoors, part below"])
def test_pipes_of_which_a_part_runs_below_are_mixed(states, told):
    states("UK", f"Pipe runs: {told}", {"water_lines_location": "mixed"})
