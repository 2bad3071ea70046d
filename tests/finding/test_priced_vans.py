"""Lines under the name of a package that set a price or a word behind the name of each van, with nothing between."""

import pytest

from specscan.finding.marks.prices import has_price

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


BLATT = """# Marrowfen Drift 2026

| | Drift 5.4 | Drift 6.2 Fell |
|---|---|---|
| Länge | 5,40 m | 6,20 m |
| Schlafplätze | 2 | 3 |
| Gesamtmasse | 3.300 kg | 3.500 kg |
| Abwasser | 60 l | 80 l |

## Pakete

Reifpaket 5.4: 2.490 Euro; 6.2 Fell: serienmäßig

- Elektrische Fußbodenheizung

Ruhepaket 5.4: 1.150 Euro

- Wechselrichter 1.600 W
"""


def test_a_price_with_the_currency_written_out_is_one_and_a_line_may_price_a_pack_for_one_van_alone(facts_of):
    facts = facts_of(BLATT, "blatt.md")
    told = {(fact.field, fact.model.split()[1]): fact.availability for fact in facts}
    assert told["heated_floor", "5.4"] == "optional"
    assert told["heated_floor", "6.2"] == "standard"
    assert told["inverter_w", "5.4"] == "optional"
    assert ("inverter_w", "6.2") not in told


@pytest.mark.parametrize(
    ("text", "priced"), [("890 Euro", True), ("2.0 l Diesel, Euro 6", False), ("2.0 Euro VI", False)]
)
def test_a_class_of_exhaust_is_no_price(text, priced):
    assert has_price(text) is priced
