"""The README's way from a brochure to what ends the stay: its figures are the program's, and can be redone by hand."""

import re

import pytest
from click.testing import CliRunner

from specscan.cli.main import main
from tests.conftest import ROOT

SECTION = (ROOT / "README.md").read_text(encoding="utf-8").split("## From a brochure")[1].split("\n## ")[0]
BLOCKS = re.findall(r"(?:^    .+\n)+", SECTION, re.MULTILINE)


@pytest.fixture(scope="module")
def told(demo_db):
    command = BLOCKS[0].strip().removeprefix("specscan ").split(" --db")[0]
    words = [word.strip('"') for word in re.findall(r'"[^"]+"|\S+', command)]
    result = CliRunner().invoke(main, [*words, "--db", str(demo_db)], catch_exceptions=False)
    assert result.exit_code == 0
    return " ".join(result.output.split())


def test_every_figure_of_the_example_is_what_the_program_gives(told):
    lines = [" ".join(line.split()).strip("… ") for line in BLOCKS[1].splitlines()]
    parts = [part.strip() for line in lines for part in line.split("…") if part.strip()]
    assert len(parts) > 15
    for part in parts:
        assert part in told, part


def test_the_example_can_be_redone_with_a_calculator():
    # The figures of the README, worked on by plain arithmetic; heat content of propane: EIA, row F01.
    def shown(pattern):
        return float(re.search(pattern, SECTION)[1])

    u = 0.9 / (0.13 + 1 + 0.046 + 0.0407) + 0.1 / (0.13 + 0.15 + 0.0407)
    assert u == pytest.approx(shown(r"m² × ([\d.]+) W"), abs=0.005)
    assert shown(r"([\d.]+) m² ×") * u == pytest.approx(shown(r"walls and rear: ([\d.]+)"), rel=0.01)
    assert 48 * shown(r"× ([\d.]+) \(45.8") - 140 == pytest.approx(shown(r"Lost in the coldest night: (\d+)"), rel=0.01)
    assert 4000 - 2700 == pytest.approx(shown(r"Margin in the coldest night: (\d+)"))
    assert 12 / 507 * 1000 == pytest.approx(shown(r"Usable fuel, tanks full: ([\d.]+)"), rel=0.005)
    watts = 38 * 59.2 - 140
    assert watts == pytest.approx(shown(r"\((\d+) \(1540"), rel=0.01)
    litres = watts * 86400 / (0.8 * 25.5e6)
    assert litres == pytest.approx(shown(r"of propane over ([\d.]+)"), rel=0.01)
    assert 23.7 / litres == pytest.approx(shown(r"Days of heat at this loss: ([\d.]+)"), rel=0.01)
