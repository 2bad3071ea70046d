"""Rows of dots in plain text of which a long label leaves one dot or two."""

import pytest

from specscan.reading.text.short_leaders import with_whole_leaders

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


ADVERT = """Grenfield RV

>>> 2024 MARROWFEN DRIFT 21 B <<<

THE BASICS
Length........... 21'1"      Ext. height... 9'10"
GVWR............. 11,030#    Hitch......... 5,000#
Sleeps........... 2
Headroom......... 6'5"

TANKS
Fresh/gray/black. 27 / 23 / 10 gal
The fresh tank is inside.
"""


def test_a_second_label_with_dots_is_a_pair_of_its_own_and_one_dot_at_the_place_of_the_others_leads(
    read_file, tmp_path
):
    path = tmp_path / "advert.txt"
    path.write_text(ADVERT, encoding="utf-8")
    facts = {fact.field: fact.value for fact in read_file(path).found.facts if not fact.rejected}
    assert round(facts["length_mm"]) == 6426
    assert round(facts["height_mm"]) == 2997
    assert round(facts["gvwr_kg"]) == 5003
    assert [round(facts[f"{tank}_tank_l"]) for tank in ("fresh", "gray", "black")] == [102, 87, 38]


def test_two_columns_of_pairs_stay_columns():
    rows = [f"{one}.......... 12     {other}..... 7" for one, other in (("Berths", "Seats"), ("Doors", "Lamps"))]
    assert len(with_whole_leaders(rows)) == len(rows)
