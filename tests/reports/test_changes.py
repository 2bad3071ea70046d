"""What changed between scans, vans and model years, with the pages on both sides."""

import shutil

import pytest
from click.testing import CliRunner

from specscan import api
from specscan.cli.main import main
from specscan.records.errors import SpecscanError
from tests.scanning.made import text


@pytest.fixture(scope="module")
def runs(tmp_path_factory):
    """Give the dataset before and after a brochure was printed anew, and one came in."""
    folder = tmp_path_factory.mktemp("runs")
    brochures = folder / "brochures"
    brochures.mkdir()
    (brochures / "old.txt").write_text(text(fresh=100, year=2025))
    (brochures / "new.txt").write_text(text(fresh=100))
    api.scan([brochures], folder / "vans.duckdb", jobs=1)
    shutil.copy(folder / "vans.duckdb", folder / "before.duckdb")
    (brochures / "new.txt").write_text(text(fresh=120) + "Floor heating: yes\n")
    (brochures / "more.txt").write_text(text(model="Drift 23", fresh=90))
    api.scan([brochures], folder / "vans.duckdb", jobs=1)
    return folder / "before.duckdb", folder / "vans.duckdb"


def test_between_two_scans_each_change_is_told_with_the_words_on_both_sides(runs):
    before, after = runs
    found = api.changes(after, since=before)
    changed = [pair for pair in found.pairs if pair.changes]
    assert [pair.after for pair in changed] == ["Marrowfen Drift 21 2026"]
    changes = {(change.field, change.equipment): change for change in changed[0].changes}
    assert set(changes) == {("fresh_tank_l", "standard"), ("heated_floor", "standard")}
    tank = changes[("fresh_tank_l", "standard")]
    assert (tank.kind, tank.before.value, tank.after.value) == ("changed", "100 l", "120 l")
    assert "new.txt" in tank.before.citations[0] and "100" in tank.before.citations[0]
    assert "120" in tank.after.citations[0]
    assert changes[("heated_floor", "standard")].kind == "new"
    assert any(band["ruleset"] == "deep_winter_wet" for band in changed[0].bands)
    assert found.appeared == ["Marrowfen Drift 23 2026"] and found.vanished == []
    assert api.changes(before, since=after).vanished == ["Marrowfen Drift 23 2026"]


def test_a_dataset_does_not_differ_from_its_copy(runs, tmp_path):
    found = api.changes(runs[1], since=shutil.copy(runs[1], tmp_path / "copy.duckdb"), derived=True)
    assert all(not pair.changes and not pair.bands for pair in found.pairs) and len(found.pairs) == 3


def test_comparing_a_dataset_with_itself_is_refused_in_plain_words(runs):
    said = CliRunner().invoke(main, ["changes", "--db", str(runs[1]), "--since", str(runs[1])])
    assert said.exit_code == 2
    assert "is the same file as the dataset that it is to be compared with" in said.output


def test_model_years_of_a_van_are_compared_without_naming_them(runs):
    found = api.changes(runs[1])
    [pair] = found.pairs
    assert (pair.before, pair.after) == ("Marrowfen Drift 21 2025", "Marrowfen Drift 21 2026")
    assert {change.field for change in pair.changes} == {"fresh_tank_l", "heated_floor"}
    [pair] = api.changes(runs[1], ["Drift 21 2026", "Drift 23"]).pairs
    assert {change.field: change.after.value for change in pair.changes}["fresh_tank_l"] == "90 l"
    with pytest.raises(SpecscanError, match="name two vans"):
        api.changes(runs[1], ["Drift 23"])


def test_the_command_prints_pages_and_bands(demo_db):
    said = CliRunner().invoke(main, ["changes", "--db", str(demo_db)])
    assert said.exit_code == 0, said.output
    assert "Halvenny Skerrow 20 2023 → Halvenny Skerrow 20 2026" in said.output
    assert "Halvenny, halvenny_skerrow_pricelist_2026.pdf, page 1: “Fuel tank: 24 US gal”" in said.output
    assert "deep_winter_wet, as delivered: " in said.output
