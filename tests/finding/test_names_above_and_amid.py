"""Vans whose range stands above their codes alone, and vans that the first words of paragraphs name."""

import pytest

ROWS = (
    "Length: {} m\n\nSleeps: {}\n\nFresh water: 90 litres\n\nGray water: 75 litres\n\nHouse battery: 100 Ah AGM\n\n"
    "Furnace: propane, 16,000 BTU\n\n"
)


@pytest.mark.parametrize(("above", "series"), [("SANDLARK", "Sandlark "), ("SPECIFICATIONS", "")])
def test_the_line_above_each_code_is_the_range(vans_of, above, series):
    sheets = "".join(
        f"## {above}\n\n## {code}\n\nTwin beds, rear bath.\n\n{ROWS.format(length, 2)}\n"
        for code, length in (("20MB", 6.1), ("23TB", 7.2))
    )
    foot = "See all Sandlark vans at a dealer near you.\n\nTollan Inc. reserves the right to change designs.\n"
    assert {model for _, model, _ in vans_of(sheets + foot)} == {f"{series}20MB", f"{series}23TB"}


@pytest.mark.parametrize(
    ("one", "two", "more"),
    [
        (
            "The Larch 56 is 5.61 m long and sleeps two. It carries 80 litres of fresh water and has a 150 Ah lithium "
            "battery and a diesel air heater.",
            "The Larch 62 Duo is 6.20 m long and sleeps four. It carries 120 litres of fresh water and has a 300 Ah "
            "lithium battery and a gas heater.",
            "Both are built by Tollan Ltd.",
        ),
        (
            "Der Larch 56 ist 5,61 m lang und hat zwei Schlafplätze. Er hat 80 Liter Frischwasser, eine "
            "Lithiumbatterie mit 150 Ah und eine Dieselheizung.",
            "Der Larch 62 Duo ist 6,20 m lang und hat vier Schlafplätze. Er hat 120 Liter Frischwasser, eine "
            "Lithiumbatterie mit 300 Ah und eine Gasheizung.",
            "Beide baut die Tollan GmbH.",
        ),
    ],
)
def test_paragraphs_that_begin_with_a_van_of_the_range_tell_of_it(facts_of, one, two, more):
    text = f"# Larch\n\n## A nest\n\n{one}\n\n## Room for four\n\n{two}\n\n{more}\n"
    facts = [fact for fact in facts_of(text, "sheet.md") if not fact.rejected]
    for field, values in (("length_mm", (5610, 6200)), ("sleeps", (2, 4)), ("battery_ah", (150, 300))):
        told = {(fact.model, fact.value) for fact in facts if fact.field == field}
        assert told == set(zip(("Larch 56", "Larch 62 Duo"), values, strict=True))
