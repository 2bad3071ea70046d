"""Vans that are left out or meant by "the others", names that answer by themselves, labels that ask in other words."""

import pytest

TABLE = """Marrowfen Drift 2026

{above}

| | Drift 19 | Drift 21 | Drift 24 |
|---|---|---|---|
| Overall length | 5.90 m | 6.40 m | 7.00 m |
| GVWR | 3500 kg | 3500 kg | 4000 kg |
| Wheelbase | 3.45 m | 4.04 m | 4.32 m |
{rows}

{below}
"""


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


@pytest.fixture
def read(facts_of):
    def read(below="", rows="", above=""):
        return facts_of(TABLE.format(above=above, rows=rows, below=below), "table.md")

    return read


@pytest.mark.parametrize(
    "text",
    [
        "All vans have a fuel tank of 24 gal, except the 24.",
        "- Fuel tank of 24 gal on all vans except the 24",
        "The fuel tank holds 24 gal, except on the 24.",
    ],
)
def test_a_van_that_is_excepted_does_not_have_the_value(read, text):
    assert set(by_van(read(text), "fuel_tank_l")) == {"Drift 19", "Drift 21"}


def test_the_others_are_the_vans_that_a_line_does_not_name(read):
    facts = read("- Heated floor: standard on the 24, not offered on the others")
    said = {fact.model: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert said == {"Drift 19": "not_available", "Drift 21": "not_available", "Drift 24": "standard"}


def test_a_bed_in_the_rear_does_not_drive_the_rear_wheels(read):
    facts = read("All three share one body with front-wheel drive and the wide bed in the rear. The rest differs.")
    assert set(by_van(facts, "drive").values()) == {"front"}


def test_fuel_asks_for_what_the_thing_burns_under_whose_heading_it_stands(read):
    rows = "| Fuel | {} |"
    vehicle = read(rows=rows.format("gasoline | diesel | diesel"), above="## Base vehicle")
    assert by_van(vehicle, "engine_fuel") == {"Drift 19": "gasoline", "Drift 21": "diesel", "Drift 24": "diesel"}
    assert not by_van(vehicle, "heater_fuel")
    heating = read(rows=rows.format("gasoline | diesel | diesel"), above="## Heating")
    assert by_van(heating, "heater_fuel") == {"Drift 19": "gasoline", "Drift 21": "diesel", "Drift 24": "diesel"}
    assert not by_van(heating, "engine_fuel")
    litres = read(rows=rows.format("24 gal | 24 gal | 31 gal"), above="## Base vehicle")
    assert set(by_van(litres, "fuel_tank_l")) == {"Drift 19", "Drift 21", "Drift 24"}
    assert not by_van(litres, "engine_fuel")


def test_a_basis_in_the_label_goes_before_the_word_for_power(read):
    facts = read(rows="| Heating power (useful) | 2 kW | 4 kW | 4 kW |")
    assert by_van(facts, "heater_output_w") == {"Drift 19": 2000, "Drift 21": 4000, "Drift 24": 4000}
    assert not by_van(facts, "heater_rating_w")


def test_the_word_tanks_behind_two_short_names_means_no_third_tank(read):
    facts = read("Fresh tank in living area; GW and BW tanks underslung.")
    assert set(by_van(facts, "fresh_tank_location").values()) == {"interior"}
    assert set(by_van(facts, "gray_tank_location").values()) == {"underbody"}


def test_the_price_of_the_van_in_a_heading_makes_nothing_an_option(facts_of):
    text = """# Marrowfen Drift 21

## MSRP $186,420. Our price $164,900

Model year: 2026
Overall length: 21 ft
GVWR: 9,350 lb
Fresh tank: 33 gal
"""
    tank = [fact.availability for fact in facts_of(text, "stock.md") if fact.field == "fresh_tank_l"]
    assert tank == ["standard"]


@pytest.mark.parametrize("bracket", ["24 4000 kg", "Drift 24: 4000 kg", "4000 kg on the Drift 24"])
def test_a_van_with_a_figure_of_its_own_in_the_bracket_does_not_have_the_one_before(read, bracket):
    facts = read(f"Towing: fine\n\nMTPLM: 3500 kg ({bracket})\n\nFuel tank: 70 litres (option on the 24: 90 litres)")
    weights = {(fact.model, fact.value) for fact in facts if fact.field == "gvwr_kg" and "MTPLM" in fact.printed}
    assert weights == {("Drift 19", 3500), ("Drift 21", 3500), ("Drift 24", 4000)}


def test_what_is_said_of_the_van_that_is_excepted_takes_nothing_from_the_others(facts_of):
    text = (
        "# Marrowfen Drift 2026\n\nAll three run on gasoline, except the Drift 24, whose engine and heater share one "
        "tank of diesel.\n\n| | Drift 19 | Drift 21 | Drift 24 |\n|---|---|---|---|\n"
        "| Length | 19 ft | 21 ft | 24 ft |\n| GVWR | 8,550 lb | 9,350 lb | 11,030 lb |\n| Sleeps | 2 | 2 | 3 |\n"
    )
    found = {f.model: f.value for f in facts_of(text, "drift.md") if f.field == "engine_fuel" and not f.rejected}
    assert found == {"Drift 19": "gasoline", "Drift 21": "gasoline", "Drift 24": "diesel"}


OTHERS = """# Marrowfen Teal 2026

| | Teal 18 | Teal 20 | Teal 22 |
|---|---|---|---|
| Length | 18 ft | 20 ft | 22 ft |
| Sleeps | 2 | 2 | 3 |
| Black tank (gal) | 0¹ | 10 | 12 |

¹ Teal 18: no black tank; cassette toilet instead. The others have a china toilet that flushes to the black tank.

The Teal 22 is our four-season van. The other two are three-season vans. By the Teal 20 stands a bench; the Teal 22
has Grade 3 to EN 1646-1, the other two Grade 1.
"""


def test_the_others_are_those_that_the_sentence_or_the_one_before_does_not_name(facts_of):
    facts = [fact for fact in facts_of(OTHERS, "sheet.md") if not fact.rejected]
    told = {(f.model, f.field): f.value for f in facts if f.field in ("toilet", "season_claim", "en_grade")}
    grades = {"Teal 18": 1, "Teal 20": 1, "Teal 22": 3}
    assert {model: value for (model, field), value in told.items() if field == "en_grade"} == grades
    assert {model: value for (model, field), value in told.items() if field == "toilet"} == {
        "Teal 18": "cassette", "Teal 20": "fixed_tank", "Teal 22": "fixed_tank",
    }  # fmt: skip
    assert {model for (model, field), value in told.items() if value == "three-season"} == {"Teal 18", "Teal 20"}
