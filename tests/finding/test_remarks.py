"""A remark below the data says of all figures of a thing whether they are what goes in or what comes out."""

import pytest

TEXT = "# Marrowfen Tusk\n\nModel year 2027\n\n- Length: 5.99 m\n- GVWR: 3500 kg\n- Sleeps: 2\n- {heater}\n\n{remark}\n"


@pytest.mark.parametrize(
    ("heater", "remark", "field"),
    [
        ("LP furnace, 16,000 BTU/h", "Tank sizes are nominal. Furnace figures are input ratings.", "heater_input_w"),
        ("Diesel air heater, 4 kW", "Heater ratings are heat output.", "heater_output_w"),
        ("Diesel air heater, 4 kW", "Furnace figures are input ratings.", "heater_rating_w"),
        ("Heater output: 4 kW", "Heater figures are input.", "heater_output_w"),
    ],
)
def test_figures_are_what_a_remark_says_of_their_thing(facts_of, heater, remark, field):
    facts = facts_of(TEXT.format(heater=heater, remark=remark), "tusk.md")
    assert {f.field for f in facts if f.unit and f.field.startswith("heater_") and not f.rejected} == {field}


def test_a_remark_on_figures_says_of_no_van_that_it_has_the_thing(facts_of):
    facts = facts_of(TEXT.format(heater="Diesel hydronic heater", remark="Furnace figures are input."), "tusk.md")
    assert {f.value for f in facts if f.field == "heater_type" and not f.rejected} == {"hydronic"}
