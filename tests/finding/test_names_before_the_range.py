"""Vans whose names set another word before that of their range: "Little Drift" and "Great Drift" of the Drift."""

import pytest

HEADS = (
    "{above}\n\n| | {one} | {two} |\n|---|---|---|\n"
    "| Overall length | 5.90 m | 6.40 m |\n| GVWR | 3500 kg | 4250 kg |\n| Sleeps | 2 | 3 |\n"
)


def models(vans):
    return {(maker, model) for maker, model, _ in vans}


@pytest.mark.parametrize(
    "above", ["# Drift\n\nModel year 2027. Two vans by Marrowfen Ltd.", "# Marrowfen\n\n## The 2027 Drift range"]
)
def test_a_head_with_the_ranges_name_at_its_end_is_a_whole_name(vans_of, above):
    found = vans_of(HEADS.format(above=above, one="Little Drift", two="Great Drift"))
    assert models(found) == {("Marrowfen", "Little Drift"), ("Marrowfen", "Great Drift")}


def test_the_company_before_the_range_is_told_by_them(vans_of):
    found = vans_of(HEADS.format(above="# Marrowfen Drift 2027", one="Little Drift", two="Great Drift"))
    assert models(found) == {("Marrowfen", "Little Drift"), ("Marrowfen", "Great Drift")}


def test_the_van_that_is_called_as_the_range_is_none_of_the_two(vans_of):
    rows = "| | Drift | Little Drift | Great Drift |\n|---|---|---|---|\n| Length | 5.90 m | 5.40 m | 6.40 m |\n"
    found = vans_of(f"# Marrowfen Drift 2027\n\n{rows}| Sleeps | 2 | 2 | 3 |\n| GVWR | 3500 kg | 3500 kg | 4250 kg |\n")
    assert models(found) == {("Marrowfen", name) for name in ("Drift", "Little Drift", "Great Drift")}


def test_headings_name_them_too(vans_of):
    lines = "Length: 5.90 m\n\nGVWR: 3500 kg\n\nSleeps: 2\n\nSolar: 100 W\n\n"
    found = vans_of(f"# Marrowfen Drift 2027\n\n## Little Drift\n\n{lines}## Great Drift\n\n{lines}")
    assert models(found) == {("Marrowfen", "Little Drift"), ("Marrowfen", "Great Drift")}
