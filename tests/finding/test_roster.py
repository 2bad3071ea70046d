"""Which vans a document is about, where a line near the title lists them."""

import pytest

TABLE = """
| | {heads} |
|---|{rules}|
| Overall length (mm) | {lengths} |
| Fresh water (l) | {fresh} |
| Sleeps | {sleeps} |
"""


def table(*heads):
    numbers = range(len(heads))
    return TABLE.format(
        heads=" | ".join(heads),
        rules="|".join("---" for _ in heads),
        lengths=" | ".join(str(5400 + 100 * n) for n in numbers),
        fresh=" | ".join(str(90 + 10 * n) for n in numbers),
        sleeps=" | ".join("2" for _ in numbers),
    )


@pytest.fixture
def vans_of(read_file, tmp_path):
    def read(text, name="brochure.md"):
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        return {(van.maker, van.model) for van in read_file(path).found.vans}

    return read


@pytest.mark.parametrize("joint", [" | ", ", ", " · ", " / ", " "])  # scans lose what stands between names
def test_a_line_of_names_gives_the_vans(vans_of, joint):
    line = joint.join(["Drift 17 N", "Drift 21 RB"])
    listed = "- 100 L fresh water tank\n- 2 kW diesel heater\n- 200 W solar\n"
    text = f"# Marrowfen\n\nDrift 2026\n\n{line}\n\n## Included\n\n{listed}"
    assert vans_of(text) == {("Marrowfen", "Drift 17 N"), ("Marrowfen", "Drift 21 RB")}


def test_one_name_under_that_of_the_range_is_the_van(vans_of):
    text = f"# Marrowfen\n\nDrift: model year 2026\n\nDrift 21\n{table('Value')}"
    assert vans_of(text) == {("Marrowfen", "Drift 21")}


def test_a_van_of_the_line_that_has_no_column_is_kept(vans_of):
    text = f"# Marrowfen\n\n2026 Drift\n\nDrift 17, Drift 19, Drift 21\n{table('17', '21')}"
    assert {model for _, model in vans_of(text)} == {"Drift 17", "Drift 19", "Drift 21"}


def test_heads_that_name_no_van_of_the_line_are_no_vans(vans_of):
    heads = table("Pelmar Haul 250 Drift 17", "Pelmar Haul 350 Drift 19")
    text = f"# Marrowfen\n\n2026 Drift\n\nDrift 17, Drift 19\n{heads}"
    assert {model for _, model in vans_of(text)} == {"Drift 17", "Drift 19"}


def test_sister_models_below_a_single_vans_sheet_are_not_its_vans(vans_of):
    text = f"# Marrowfen Drift 21 (2026)\n{table('Drift 21')}\nKelp 17 | Kelp 19\n"
    assert {model for _, model in vans_of(text)} == {"Drift 21"}


def test_a_letter_full_of_figures_describes_no_van(vans_of):
    text = (
        "# Winter weekend\n\nCome on 14 February. Coffee is 2 $, the raffle has 20 prizes, it was −20 °C last year.\n"
    )
    assert vans_of(text) == set()


TOLD = """
Fuel tank: 80 L (Drift 6.0); 90 L (Drift 7.5).

Overall length: Drift 6.0, 5.98 m; Drift 7.5, 6.94 m.

Fresh water: Drift 6.0, 110 L; Drift 7.5, 190 L. Solar: 200 W. Sleeps 2. GVM: 3550 kg.
"""


@pytest.mark.parametrize("year", ["model year 2026", "MY 2026", "2026"])
def test_a_line_that_ends_in_the_model_year_lists_vans_before_it(vans_of, year):
    told = TOLD.replace("7.5", "7.5 Hilltop")
    text = f"# Marrowfen\n\nData sheet 12\n\nDrift 6.0 and Drift 7.5 Hilltop, {year}\n\n{told}"
    assert vans_of(text) == {("Marrowfen", "Drift 6.0"), ("Marrowfen", "Drift 7.5 Hilltop")}


def test_a_figure_behind_a_point_is_part_of_a_code(vans_of):
    text = f"# Marrowfen\n\n## Drift data\n\nModel year 2026\n{TOLD}"
    assert {model for _, model in vans_of(text)} == {"Drift 6.0", "Drift 7.5"}
