"""Claims of brochures against the same maker's figures: the verdict, the evidence, and what may not count as such."""

import shutil

import pytest

from specscan import api
from specscan.judging.claim_rules import load_claims
from specscan.judging.claims import judge_claims
from specscan.settling.preferences import load_preferences
from specscan.settling.settle import settle
from tests.conftest import ROOT

TITLE = "# Marrowfen Drift 21, 2026"
TABLE = """
| Item | Drift 21 |
|---|---|
| Overall length | 5.41 m |
| Wheelbase | 3.45 m |
| Sleeps | 2 |
"""


@pytest.fixture(scope="module")
def claims_of(examiner, book):
    """Give a function that reads one brochure and gives its claims."""
    preferences = load_preferences(book)
    rules = load_claims(book, preferences)

    def read(text, rows="", title=TITLE, table=TABLE):
        document = examiner.examine("drift.md", f"{title}\n\n{text}\n{table}{rows}".encode(), "text")
        return judge_claims([document], settle([document], book, preferences), rules)

    return read


def verdict(claims, kind):
    found = [one for one in claims if one.kind == kind]
    assert len(found) == 1, [(one.kind, one.printed) for one in claims]
    return found[0]


def part(claim, means):
    return next(one for one in claim.parts if one.means.startswith(means))


@pytest.fixture(scope="module")
def boasting(claims_of):
    """Give the claims of a text that promises much over a table that has it as options, or not at all."""
    text = (
        "The Drift 21 offers four-season comfort down to −20 °F. Its fully heated and insulated tanks laugh at frost. "
        "Dual-pane windows throughout keep the cold out. Thirty gallons of fresh water ride along. "
        "Its fully winterized plumbing never sulks."
    )
    rows = (
        "| Fresh water tank | 20 gal |\n| Gray water tank | 70 L |\n| Tank heating pads | optional |\n"
        "| Windows of the living area | dual-pane acrylic |\n| Dump valves | exposed below the floor |\n"
        "| Insulation | 40 mm rigid foam |\n| Heater | diesel air heater, 2.0 kW output |\n"
    )
    return claims_of(text, rows)


def test_heated_tanks_in_the_text_and_pads_as_an_option_in_the_table_hold_only_with_options(boasting):
    claim = verdict(boasting, "tanks_heated")
    assert claim.verdict == "only_with_options"
    assert claim.printed == "Its fully heated and insulated tanks laugh at frost"
    assert "“Tank heating pads: optional”" in part(claim, "the gray tank").because


def test_insulated_tanks_of_which_no_table_says_anything_are_not_borne_out(boasting):
    assert verdict(boasting, "tanks_insulated").verdict == "not_supported"


def test_windows_that_the_table_has_are_borne_out_with_its_words(boasting):
    claim = verdict(boasting, "windows")
    assert claim.verdict == "supported"
    assert claim.parts[0].because == "window_glazing: double"
    assert len(claim.parts[0].fact_ids) == 1
    assert not set(claim.parts[0].fact_ids) & set(claim.fact_ids)


def test_a_figure_of_the_text_that_the_table_has_otherwise_is_contradicted(boasting):
    claim = verdict(boasting, "capacity")
    assert claim.verdict == "contradicted"
    assert "75.71 l" in claim.parts[0].because  # 20 US gallons of 3.785411784 l (NIST SP 811, table 8)


def test_a_season_claim_says_that_it_has_no_standard_definition_and_falls_with_an_exposed_valve(boasting):
    claim = verdict(boasting, "season")
    assert "no standard definition" in claim.note
    assert (claim.said, claim.verdict) == ("four-season", "contradicted")
    assert part(claim, "the dump valves").verdict == "contradicted"
    assert part(claim, "living-space windows").verdict == "supported"


def test_winterized_plumbing_is_a_claim_about_plumbing_and_no_season(boasting):
    assert verdict(boasting, "winter_plumbing").said == "winterized plumbing"
    assert [one.said for one in boasting if one.kind == "season"] == ["four-season"]


def test_a_temperature_that_a_small_heater_cannot_hold_is_not_borne_out_and_shows_the_arithmetic(boasting):
    claim = verdict(boasting, "temperature")
    assert claim.verdict in ("contradicted", "not_supported")
    assert "2000 W of heat" in claim.parts[0].because


def test_a_large_heater_in_a_small_insulated_van_bears_out_a_mild_temperature(claims_of):
    rows = (
        "| Heater | diesel air heater, 6.0 kW output |\n| Windows of the living area | double-glazed |\n"
        "| Insulation of walls, roof and floor | 40 mm rigid foam |\n"
    )
    claim = verdict(claims_of("It was tested down to −5 °C in a climate chamber.", rows), "temperature")
    assert claim.verdict == "supported"


def test_a_claim_does_not_bear_itself_out_and_nor_does_its_repetition(claims_of):
    text = (
        "With the heated gray tank of the Drift you keep washing up while the lake outside is slowly making ice.\n\n"
        "Yes, the gray tank is heated, and we are quite proud of it, as anyone who has met us at a fair will know.\n"
    )
    claims = claims_of(text)
    assert [one.verdict for one in claims if one.kind == "tanks"] == ["not_supported", "not_supported"]


def test_running_text_that_admits_the_opposite_contradicts(claims_of):
    text = (
        "A heated gray tank keeps the dishes moving.\n\nIn frost the gray tank must be empty, for it is not heated.\n"
    )
    claims = claims_of(text)
    assert verdict(claims, "tanks").verdict == "contradicted"


def test_what_is_admitted_or_denied_is_no_claim(claims_of):
    claims = claims_of("The dump valve is exposed below the floor. The gray tank is not heated.")
    assert not claims


def test_days_off_the_grid_are_asked_of_what_ends_the_stay(claims_of):
    claim = verdict(claims_of("Stay off-grid for a full seven days."), "days_self_sufficient")
    assert claim.title == "self-sufficient for 7 days"
    assert claim.verdict == "not_supported"


@pytest.mark.parametrize(
    "text", ["The van is prepared for heated tanks.", "It has no heated tanks.", "Hot water tank, heated by gas."]
)
def test_hedges_denials_and_other_tanks_make_no_claim_of_heated_tanks(claims_of, text):
    claims = claims_of(text)
    assert "tanks_heated" not in {one.kind for one in claims}


GERMAN = """
| Länge | 5,41 m |
| Radstand | 3,45 m |
| Schlafplätze | 2 |
| Frischwassertank | 100 l |
| Abwassertank beheizt | Option |
"""
FRENCH = """
| Longueur | 5,41 m |
| Empattement | 3,45 m |
| Couchages | 2 |
| Réservoir d'eau propre | 100 l |
| Réservoir d'eaux usées chauffé | en option |
"""


@pytest.mark.parametrize(
    ("text", "table", "plumbing"),
    [
        ("Beheizte und isolierte Tanks und eine winterfeste Wasseranlage: der Steig 600 ist wintertauglich.", GERMAN,
         "winterfeste Wasseranlage"),
        ("Réservoirs chauffés et isolés, plomberie entièrement hivernisée : c'est un vrai quatre saisons.", FRENCH,
         "plomberie entièrement hivernisée"),
    ],
)  # fmt: skip
def test_german_and_french_claims_are_found_and_judged_alike(claims_of, text, table, plumbing):
    claims = claims_of(text, title="# Weidenau Steig 600, 2026", table=table)
    assert verdict(claims, "winter_plumbing").said == plumbing
    assert part(verdict(claims, "tanks_heated"), "the gray tank").verdict == "only_with_options"
    assert verdict(claims, "season").verdict == "only_with_options"


def test_a_grade_says_what_it_means_and_what_it_does_not(claims_of):
    rows = "| EN 1646-1 | grade 2 |\n| Heater | diesel air heater, 6.0 kW output |\n"
    claim = verdict(claims_of("A van.", rows), "grade")
    assert "The water system is not tested for frost (E09)" in claim.note  # promobil.de, as row E09 names it
    assert "no certification" in claim.note
    assert claim.verdict == "supported"


def test_an_option_does_not_contradict_a_claim_made_of_the_van_with_it(claims_of):
    rows = "| Winter package: heater of 6.0 kW output, diesel; built for −10 °C outside | optional |\n"
    claims = claims_of("A van.", rows)
    assert verdict(claims, "temperature").availability == "optional"
    assert verdict(claims, "temperature").verdict != "contradicted"


def test_a_wrong_condition_is_named_with_file_and_line(tmp_path):
    shutil.copytree(ROOT / "rules", tmp_path / "rules")
    path = tmp_path / "rules" / "claims.yaml"
    text = path.read_text(encoding="utf-8").replace("that: heater_margin_w >= 0", "that: heater_marge_w >= 0")
    path.write_text(text, encoding="utf-8")
    line = next(n for n, one in enumerate(text.splitlines(), start=1) if "heater_marge_w" in one)
    mistakes = api.check_rules(tmp_path / "rules")
    assert mistakes == [f"{path}:{line}: that: unknown column 'heater_marge_w': did you mean heater_margin_w?"]
