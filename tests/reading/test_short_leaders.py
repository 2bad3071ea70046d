"""Rows of dots in plain text of which a long label leaves one dot or two."""

import pytest

ROWS = {"PTAC": "3 300 kg", "Hauteur intérieure": "1,90 m", "Couchages": "2"}


@pytest.fixture
def facts_of(read_file, tmp_path):
    """Give a function that reads a sheet typed with rows of dots and one more row: what it states, by field."""

    def read(more):
        path = tmp_path / "drift.txt"
        rows = [f"{label} ".ljust(22, ".") + f" {value}" for label, value in ROWS.items()]
        text = ["MARROWFEN DRIFT 600", "", "Millésime 2026", "", "LE FOURGON", rows[0], more, *rows[1:]]
        path.write_text("\n".join(text), encoding="utf-8")
        return {fact.field: fact.value for fact in read_file(path).found.facts if not fact.rejected}

    return read


@pytest.mark.parametrize("label", ["Long. / larg. / haut .", "Longueur/largeur/h. .."])
def test_a_long_label_leaves_one_dot_or_two(facts_of, label):
    facts = facts_of(f"{label} 5,99 m / 2,05 m / 2,65 m")
    assert [facts.get(f"{side}_mm") for side in ("length", "width", "height")] == [5990, 2050, 2650]
    assert facts["gvwr_kg"] == 3300


def test_a_colon_between_two_rows_of_dots_stands_for_one_and_heads_nothing(facts_of):
    facts = facts_of("Eaux propres / eaux usées : 90 / 75 l")
    assert (facts["fresh_tank_l"], facts["gray_tank_l"]) == (90, 75)
