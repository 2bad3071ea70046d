"""Tables whose heads change half way down are read under the heads that stand above each value."""

import pytest

from specscan.reading.read import read_document


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


VANS_IN_ANOTHER_ORDER = """Marrowfen Drift 2026

| Dimensions | Drift 19 | Drift 21 |
|---|---|---|
| Overall length | 5.90 m | 6.40 m |
| Sleeps | 2 | 3 |
| Wheelbase | 3.45 m | 4.04 m |
| Water | Drift 21 | Drift 19 |
| Fresh water tank | 120 L | 90 L |
| Gray water tank | 100 L | 70 L |
"""

LABELS_IN_HEADS_TWICE = """<html><body><h1>Marrowfen Drift 2026</h1><table>
<tr><th>Model</th><th>Overall length</th><th>Wheelbase</th><th>Sleeps</th></tr>
<tr><td>Drift 19</td><td>5.90 m</td><td>3.45 m</td><td>2</td></tr>
<tr><td>Drift 21</td><td>6.40 m</td><td>4.04 m</td><td>3</td></tr>
<tr><td colspan="4">Water</td></tr>
<tr><th>Model</th><th>Fresh water tank</th><th>Gray water tank</th><th>Gray tank heating</th></tr>
<tr><td>Drift 19</td><td>90 L</td><td>70 L</td><td>none</td></tr>
<tr><td>Drift 21</td><td>120 L</td><td>100 L</td><td>12 V pad</td></tr>
</table></body></html>"""


def test_vans_that_head_the_lower_half_in_another_order_keep_their_own_values(facts_of):
    facts = facts_of(VANS_IN_ANOTHER_ORDER)
    assert by_van(facts, "length_mm") == {"Drift 19": 5900, "Drift 21": 6400}
    assert by_van(facts, "fresh_tank_l") == {"Drift 19": 90, "Drift 21": 120}
    assert by_van(facts, "gray_tank_l") == {"Drift 19": 70, "Drift 21": 100}


def test_new_labels_half_way_down_head_what_is_below_them(facts_of):
    facts = facts_of(LABELS_IN_HEADS_TWICE, "range.html")
    assert by_van(facts, "wheelbase_mm") == {"Drift 19": 3450, "Drift 21": 4040}
    assert by_van(facts, "gray_tank_l") == {"Drift 19": 70, "Drift 21": 100}
    assert by_van(facts, "gray_tank_heat") == {"Drift 19": "none", "Drift 21": "electric_pad"}


PAIRS_SIDE_BY_SIDE = """<html><body><h1>Marrowfen Drift 2026</h1><p>Model year 2026</p><table>
<tr><td colspan="4"><b>Drift 19</b></td></tr>
<tr><td>Sleeps</td><td>2</td><td>Length</td><td>5.90 m</td></tr>
<tr><td>Gray tank</td><td>70 L</td><td>Wheelbase</td><td>3.45 m</td></tr>
<tr><td>Fresh tank</td><td>90 L</td><td>Solar</td><td>200 W</td></tr>
<tr><td{span}><b>Drift 22</b></td>{rest}</tr>
<tr><td>Sleeps</td><td>3</td><td>Length</td><td>6.40 m</td></tr>
<tr><td>Gray tank</td><td>80 L</td><td>Wheelbase</td><td>4.04 m</td></tr>
<tr><td>Fresh tank</td><td>110 L</td><td>Solar</td><td>400 W</td></tr>
</table></body></html>"""


@pytest.mark.parametrize(("span", "rest"), [(' colspan="4"', ""), ("", "<td></td>" * 3)])
def test_the_heading_of_a_group_of_rows_heads_the_pairs_on_the_right_too(facts_of, span, rest):
    facts = facts_of(PAIRS_SIDE_BY_SIDE.format(span=span, rest=rest), "range.html")
    assert by_van(facts, "sleeps") == {"Drift 19": 2, "Drift 22": 3}
    assert by_van(facts, "length_mm") == {"Drift 19": 5900, "Drift 22": 6400}
    assert by_van(facts, "solar_w") == {"Drift 19": 200, "Drift 22": 400}


def test_what_stands_in_one_row_as_in_the_next_is_no_label(facts_of):
    text = """<html><body><h1>Marrowfen Drift 2026</h1><table>
<tr><th>Model</th><th>Base vehicle</th><th>Drive</th><th>Length</th><th>Sleeps</th></tr>
<tr><td>Drift 19</td><td>Kelmar 250</td><td>RWD</td><td>5.90 m</td><td>2</td></tr>
<tr><td>Drift 21</td><td>Kelmar 350</td><td>RWD</td><td>6.40 m</td><td>3</td></tr>
<tr><td>Drift 23</td><td>Kelmar 350</td><td>AWD</td><td>6.90 m</td><td>4</td></tr>
</table></body></html>"""
    facts = facts_of(text, "range.html")
    assert by_van(facts, "length_mm") == {"Drift 19": 5900, "Drift 21": 6400, "Drift 23": 6900}
    assert by_van(facts, "drive") == {"Drift 19": "rear", "Drift 21": "rear", "Drift 23": "all"}


def test_the_name_of_a_group_over_many_rows_is_no_label_that_comes_again(examiner):
    rows = [("Fresh tank", "95 l", "110 l"), ("Gray tank", "70 l", "85 l"), ("Hot water", "6 l", "10 l"),
            ("Gray tank heated", "no", "yes"), ("Toilet", "cassette", "dry"), ("Water lines heated", "no", "yes"),
            ("Bypass", "yes", "yes"), ("Dump valve heated", "no", "yes")]  # fmt: skip
    body = "".join(
        f"<tr>{'<td rowspan=8>Water</td>' if not place else ''}<td>{'</td><td>'.join(row)}</td></tr>"
        for place, row in enumerate(rows)
    )
    head = "<tr><th></th><th></th><th>Drift Solo</th><th>Drift Duo</th></tr>"
    first = f"<table>{head}<tr><td>Size</td><td>Length</td><td>5.99 m</td><td>6.36 m</td></tr></table>"
    page = f"<html><body><h1>Marrowfen Drift 2026</h1>{first}<table>{body}</table></body></html>"
    passages = read_document(page.encode(), "page.html", "html", examiner.hints).passages
    below = {p.row.text for p in passages if p.row and p.text in ("cassette", "dry")}
    assert below == {"Toilet"}
