"""What is told of all vans but some, and what of these behind them."""

TABLE = """# Marrowfen Drift 2026

|  | Drift 19 | Drift 22 | Drift 24 |
|---|---|---|---|
| Length | 5.97 m | 6.68 m | 7.02 m |
| GVWR | 3,500 kg | 3,800 kg | 4,200 kg |
| Fresh water | 76 L | 114 L | 120 L |
| Gray water | 60 L | 90 L | 95 L |

## Options

"""
ITEM = "- Insulated curtains for the rear doors: optional on every van except the Drift 19"


def said(facts):
    return {fact.model: fact.availability for fact in facts if fact.field == "rear_shades_insulated"}


def test_all_but_one_have_what_the_line_says_and_this_one_what_stands_behind_it(facts_of):
    found = said(facts_of(f"{TABLE}{ITEM}, where they are not available.\n", "brochure.md"))
    assert found == {"Drift 19": "not_available", "Drift 22": "optional", "Drift 24": "optional"}


def test_of_one_that_is_left_out_nothing_is_said(facts_of):
    found = said(facts_of(f"{TABLE}{ITEM}.\n", "brochure.md"))
    assert found == {"Drift 22": "optional", "Drift 24": "optional"}
