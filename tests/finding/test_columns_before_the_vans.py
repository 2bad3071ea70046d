"""Tables with vans down the side behind a column of order numbers, or of the companies that make them."""

import pytest

from tests.finding.test_names_in_heads import models

HEADS = ["Length (m)", "Berths", "Fresh (l)", "Waste (l)", "Battery", "Price"]
VALUES = [
    ["5.50", "2", "70", "60", "100 Ah lithium", "52,300"],
    ["5.41", "2", "85", "70", "110 Ah AGM", "54,950"],
    ["5.98", "3", "100", "90", "150 Ah lithium", "66,400"],
]


def table(*columns):
    heads = [head for head, _ in columns] + HEADS
    rows = [[column[n] for _, column in columns] + VALUES[n] for n in range(3)]
    body = "".join(f"<tr>{''.join(f'<td>{cell}</td>' for cell in row)}</tr>" for row in rows)
    return f"<table><tr>{''.join(f'<th>{head}</th>' for head in heads)}</tr>{body}</table>"


@pytest.mark.parametrize(
    "columns",
    [
        [("Maker", ["Marrowfen", "Thornleigh", "Hollin"]), ("Model", ["Drift 55", "Hearth II", "Gorse LWB"])],
        [("Model", ["Drift 55", "Hearth II", "Gorse LWB"]), ("Maker", ["Marrowfen", "Thornleigh", "Hollin"])],
    ],
)
def test_a_column_tells_who_makes_each_van_down_the_side(vans_of, columns):
    page = (
        "<html lang='en'><head><title>Buyers' table: small vans | Lamp &amp; Ladle</title></head><body>"
        "<p>Lamp &amp; Ladle, the monthly for people with a van</p><h1>Buyers' table: three for under 70 grand</h1>"
        f"<p>Figures are the makers' own, for the 2027 model year.</p>{table(*columns)}</body></html>"
    )
    expected = {("Marrowfen", "Drift 55", 2027), ("Thornleigh", "Hearth II", 2027), ("Hollin", "Gorse LWB", 2027)}
    assert vans_of(page, name="table.html") == expected


@pytest.mark.parametrize("head", ["Description", "Model"])
def test_order_numbers_before_the_vans_are_no_names(vans_of, head):
    columns = [("Order no.", ["MF-26-410", "MF-26-415", "MF-26-620"]), (head, ["Drift 4", "Drift 4 Max", "Drift 6"])]
    page = (
        f"<html lang='en'><h1>Marrowfen</h1><h2>2027 retail price sheet</h2>{table(*columns)}"
        "<p>Marrowfen Inc. · 11 Mercantile St., Hollin Springs</p></html>"
    )
    assert models(vans_of(page, name="prices.html")) == {"Drift 4", "Drift 4 Max", "Drift 6"}
