"""Lines under the name of a package that set a price or a word behind the name of each van, with nothing between."""

import pytest

GUIDE = """# Marrowfen Drift 2026

| | Drift Solo | Drift Duo |
|---|---|---|
| Length | 5.4 m | 6.0 m |
| Berths | 2 | 3 |
| GVWR | 3,300 kg | 3,500 kg |
| Waste water | 60 l | 80 l |

## Extras

### Rime pack

{line}

- Electric floor heating
- 12-volt heating pad on the waste tank
"""


@pytest.mark.parametrize(
    ("line", "solo", "duo"),
    [
        ("Solo $2,490 Duo included", "optional", "standard"),
        ("Solo not offered Duo $3,350", "not_available", "optional"),
        ("Drift Solo standard Drift Duo $1,200", "standard", "optional"),
    ],
)
def test_what_stands_behind_the_name_of_a_van_holds_for_it_alone(facts_of, line, solo, duo):
    facts = facts_of(GUIDE.format(line=line), "guide.md")
    for field in ("heated_floor", "gray_tank_heat"):
        told = {fact.model.split()[-1]: fact.availability for fact in facts if fact.field == field}
        assert told == {"Solo": solo, "Duo": duo}
