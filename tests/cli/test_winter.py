"""``specscan winter``: every part of a van's winter can be reached, and its words are right."""

import json
import re

import numpy as np
import pytest
from click.testing import CliRunner

from specscan.cli.main import main
from specscan.cli.winter_figures import span_words
from tests.winter_sheets import winter_dataset


@pytest.fixture(scope="module")
def db(tmp_path_factory):
    return winter_dataset(tmp_path_factory.mktemp("winter"), "2 kW")


def run(db, *arguments):
    return CliRunner().invoke(main, ["winter", *map(str, arguments), "--db", str(db)], catch_exceptions=False)


@pytest.fixture(scope="module")
def told(db):
    result = run(db, "Drift 21", "--outside", "-4F", "--nights", "5", "--arithmetic")
    assert result.exit_code == 0
    return result.output


@pytest.mark.parametrize(
    "part",
    [
        "-20 °C / -4 °F outside on average, -30 °C / -22 °F in the coldest night",
        "What ends the stay",
        "5 nights: not certain.",
        "Margin in the coldest night: -",
        "Holds the inside down to",
        "Days of heat at this loss",
        "Propane vaporizes fast enough down to: The heater burns no propane.",
        "Days until the battery is empty",
        "Days of fresh water: 5 (2.5 to 10) days",
        "Days until the gray tank is full",
        "Water standing in lines at 0 °C after: not known: it needs where the water lines run",
        "Where the heat goes",
        "full output holds only",
        "Inside after the heating stops",
        "Gray tank, to ice that blocks, parked",
        "at 90 km/h",
        "wind chill is about skin",
        "wet from a relative humidity of",
        "heat for that air",
        "Propylene glycol for what stays behind",
        "too weak",
        "an estimate, no certification",
        "allowed 2 or 4 h (sources disagree)",
        "What to ask first",
        "Carbon monoxide",
        "Follow makers' manuals, local codes and licensed practice.",
    ],
)
def test_every_part_of_the_winter_of_a_van_is_told(told, part):
    assert part in " ".join(told.split()).replace("  ", " ")


def test_no_estimate_is_called_safe(told):
    assert not re.search(r"\bsafe(ly|ty)?\b", told, re.IGNORECASE)


def test_arithmetic_can_be_redone_by_hand(told):
    words = " ".join(told.split())
    # 48 K × W/K less the people = W: the sentence's own figures, to their three digits.
    kelvin, per_kelvin, people, watts = re.search(
        r"(\d+) K between .*? × ([\d.]+) \(.*? W/K .*? less (\d+) \(.*? people = (\d+) \(", words
    ).groups()
    assert float(kelvin) * float(per_kelvin) - float(people) == pytest.approx(float(watts), rel=0.01)
    area, u, first, parts, second, rib = re.search(
        r"([\d.]+) m² × ([\d.]+) W/\(m²·K\), U = ([\d.]+)/\(([\d. +]+)\) \+ ([\d.]+)/\(([\d. +]+)\)", words
    ).groups()
    layers = sum(map(float, parts.split(" + ")))
    ribs = sum(map(float, rib.split(" + ")))
    assert float(first) / layers + float(second) / ribs == pytest.approx(float(u), rel=0.01)
    walls = float(re.search(r"walls and rear: ([\d.]+)", words)[1])
    assert float(area) * float(u) == pytest.approx(walls, rel=0.01)


def test_several_vans_are_a_table_with_the_question_to_ask_first(db):
    output = run(db).output
    assert "Marrowfen Drift 21 2026" in output and "Marrowfen Dell 12 2026" in output
    assert "not known" in output and "Not ranked" in output and "ask first" in output


def test_json_has_the_same_figures(db):
    found = json.loads(run(db, "Drift 21", "--outside", "-20C", "--json").output)
    assert found["conditions"]["outside_c"] == -20
    figures = {row["figure"]: row for row in found["figures"]}
    assert figures["fresh_water_days"]["value"] == pytest.approx(5)
    assert figures["heat_loss_w"]["how"]


def test_dry_and_plugged_in_leaves_the_fuel_alone(db):
    output = run(db, "Drift 21", "--dry", "--shore-power").output
    ends = output.split("What ends the stay")[1].split("Heat\n")[0]
    assert "the fuel for heat" in ends
    assert "water" not in ends and "the battery" not in ends and "toilet" not in ends


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (["--outside", "cold"], "is no temperature; write it like -20C or -4F"),
        (["--outside", "30C"], "outside_c"),
        (["--coldest", "-5C"], "coldest_c is above outside_c"),
        (["--people", "0"], "people"),
        (["--conditions", "summer"], "no conditions are called 'summer'"),
        (["Nobody 9"], "Nobody 9"),
        (["--plot", "picture.gif"], "ends in .png or .svg"),
    ],
)
def test_a_wrong_call_says_why_and_ends_with_2(db, arguments, said):
    result = run(db, *arguments)
    assert result.exit_code == 2
    assert said in result.output


def row(value, low=None, high=None):
    return {"value": value, "low": value if low is None else low, "high": value if high is None else high}


@pytest.mark.parametrize(
    ("figures", "unit", "words"),
    [
        (row(5.0, 2.5, 10.0), "d", "5 (2.5 to 10) days"),
        (row(0.25, 0.02, 7.2), "d", "6 h (29 min to 7.2 days)"),
        (row(0.25, 0.125, 0.5), "d", "6 (3 to 12) h"),
        (row(365.0, 0.1, 365.0), "d", "no end (2.4 h to no end)"),
        (row(365.0), "d", "no end"),
        (row(0.0), "d", "at once"),
        (row(0.0, 0.0, 365.0), "d", "at once (at once to no end)"),
        (row(1440.0, 0.7, 1440.0), "h", "never (42 min to never)"),
        (row(1440.0), "h", "never"),
        (row(1.5, 0.5, 1.9), "h", "90 (30 to 114) min"),
        (row(-20.0), "°C", "-20 °C / -4 °F"),
        (row(-60.0, -60.0, -31.0), "°C", "≤ -60 °C / ≤ -76 °F (≤ -60 to -31 °C / ≤ -76 to -24 °F)"),
        (row(4.2, 3.0, np.inf), "l", "4.2 (3 to no end) l"),
    ],
)
def test_figures_are_told_in_units_that_suit_them(figures, unit, words):
    assert span_words(figures, unit) == words
