"""Years for which vans are offered, and names of editions."""

import pytest

ROWS = (
    "Length: {} m\n\nSleeps: {}\n\nFresh water: 90 litres\n\nGrey water: 75 litres\n\nLeisure battery: 100 Ah AGM\n\n"
)
SHEETS = f"## Larch 20\n\n{ROWS.format(5.9, 2)}## Larch 20 Jubilee Edition\n\n{ROWS.format(5.9, 2)}"


@pytest.mark.parametrize(
    ("said", "year"),
    [
        ("Bruneck has built campervans on one base since 2004; here are the two for 2027.", 2027),
        ("Bruneck has built campervans since 2004; the prices are good for 2027.", None),
    ],
)
def test_a_year_for_which_vans_are_offered_is_the_model_year(vans_of, said, year):
    text = f"# The Larch\n\n{said}\n\n{SHEETS}"
    assert {(model, told) for _, model, told in vans_of(text)} == {
        ("Larch 20", year),
        ("Larch 20 Jubilee Edition", year),
    }
