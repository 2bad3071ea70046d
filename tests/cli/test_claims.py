"""The command ``claims`` and what other commands show of claims."""

import json

import pytest
from click.testing import CliRunner

from specscan import api
from specscan.cli.main import main


def run(*arguments):
    return CliRunner().invoke(main, [str(argument) for argument in arguments], catch_exceptions=False)


def test_a_claim_that_the_own_table_contradicts_is_told_with_words_and_pages_of_both(demo_db):
    said = run("claims", "Sedgewren 19", "--verdict", "contradicted", "--db", demo_db).output
    assert "contradicted: “We fit thirty gallons of fresh water" in said
    assert "“Fresh: 26 gal, below the bench, inside”  brackmere_sedgewren_19.pdf, page 1" in said
    assert "four-season" not in said


def test_every_season_claim_says_that_there_is_no_standard_definition(demo_db):
    claims = api.claims(demo_db)
    seasons = claims[claims["kind"] == "season"]
    assert len(seasons) > 5
    assert all("no standard definition" in note for note in seasons["note"])
    said = run("claims", "--db", demo_db).output
    assert said.count("There is no standard definition") == len(seasons)


def test_every_grade_claim_says_what_the_grade_does_not_mean(demo_db):
    claims = api.claims(demo_db, vans=["Ravnkol 599"])
    grade = claims[claims["kind"] == "grade"].iloc[0]
    assert "does not define" in grade["note"]
    assert "not tested for frost" in run("claims", "Ravnkol 599", "--db", demo_db).output


def test_json_holds_parts_with_their_sources(demo_db):
    rows = json.loads(run("claims", "Sedgewren 19", "--db", demo_db, "--json").output)
    season = next(row for row in rows if row["kind"] == "season")
    gray = next(part for part in season["parts"] if part["means"] == "gray water is kept from freezing")
    assert gray["verdict"] == "only_with_options"
    assert {source["page"] for source in gray["sources"]} == {1, 2}


def test_no_claim_rests_on_its_own_statement(demo_db):
    rows = api.query("SELECT claim_fact_ids, fact_ids FROM claims", demo_db)
    assert len(rows) > 50
    assert not any(set(own) & set(others) for own, others in rows.itertuples(index=False))


def test_all_evidence_is_among_the_facts(demo_db):
    lost = "SELECT id FROM (SELECT unnest(fact_ids) AS id FROM claim_parts) WHERE id NOT IN (SELECT fact_id FROM facts)"
    assert not len(api.query(lost, demo_db))


def test_a_van_that_is_not_there_ends_with_2(demo_db):
    result = run("claims", "Nobody 12", "--db", demo_db)
    assert result.exit_code == 2
    assert "no van is called" in result.output


def test_explain_names_the_claims_with_their_verdicts(demo_db):
    said = run("explain", "Sedgewren 19", "--db", demo_db).output
    assert "contradicted: size of the tanks" in said
    assert "only with options: fit for winter “four-season”  brackmere_sedgewren_19.pdf, page 1" in said


@pytest.mark.parametrize("name", ["claims", "claim_parts"])
def test_claims_are_exported(demo_db, tmp_path, name):
    written = {path.stem: path for path in api.export(demo_db, tmp_path, "parquet")}
    assert written[name].stat().st_size > 0
