"""Tables whose heads change half way down are read under the heads that stand above each value."""


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
