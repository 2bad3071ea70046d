"""Signs of option tables mean what the document's own legend says of them."""

import pytest

TABLE = """Marrowfen Drift 2026

|  | Drift 19 | Drift 21 |
|---|---|---|
| Overall length | 5.41 m | 6.36 m |
| GVWR | 3500 kg | 4250 kg |
| Driven wheels | Rear | Rear |
| Wheelbase | 3.45 m | 4.04 m |
| Heated floor | {no} | {yes} |
| 12 V heating pad on the gray tank | {no} | {yes} |

{legend}
"""


@pytest.mark.parametrize(
    ("no", "yes", "legend"),
    [
        ("no", "Std", "Std = fitted as standard. “no” means that the item cannot be ordered on that model."),
        ("N.O.", "STD", "STD: in the base price. N.O.: not offered on this model."),
        ("n/o", "std", "std = included. n/o = not offered on that Drift."),
        ("NA", "S", "Key: S = standard   NA = not available   FW/GW/BW = fresh, gray and black water. U.S. gallons"),
    ],
)  # fmt: skip
def test_a_sign_of_the_legend_says_what_is_not_offered(facts_of, no, yes, legend):
    facts = facts_of(TABLE.format(no=no, yes=yes, legend=legend), "table.md")
    for field in ("heated_floor", "gray_tank_heat"):
        found = {fact.model[-2:]: fact.availability for fact in facts if fact.field == field}
        assert found == {"19": "not_available", "21": "standard"}, field


def test_a_legend_without_signs_between_its_parts_and_with_a_remark_behind_it(facts_of):
    legend = (
        "● standard Opt extra cost — not offered. On the 21 the floor is laid at the end, by two people and a radio."
    )
    facts = facts_of(TABLE.format(no="—", yes="●", legend=legend), "table.md")
    found = {fact.model[-2:]: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert found == {"19": "not_available", "21": "standard"}


def test_prices_beside_marks_say_only_what_a_thing_costs_where_it_can_be_had(facts_of):
    text = """Marrowfen Drift 2026

|  | Drift 19 | Drift 21 | Drift 24 | Price |
|---|---|---|---|---|
| Heated floor | – | • | S | $850 |
| 12 V heating pad on the gray tank | – | • | S | $310 |
| Lithium battery, 250 Ah | – | • | S | $3,450 |

S standard on this floorplan • may be ordered – not offered

| | Drift 19 | Drift 21 | Drift 24 |
|---|---|---|---|
| Overall length | 5.41 m | 6.36 m | 7.1 m |
| GVWR | 3500 kg | 4250 kg | 4500 kg |
"""
    facts = [fact for fact in facts_of(text, "options.md") if not fact.rejected]
    for field in ("heated_floor", "gray_tank_heat", "battery_ah"):
        found = {(fact.model[-2:], fact.availability) for fact in facts if fact.field == field}
        assert found == {("19", "not_available"), ("21", "optional"), ("24", "standard")}, field
