"""Vans that running text calls by their length, and used vans whose title gives how far they were driven."""

HEAD = """Marrowfen Vans

# Drift

Model year 2026

| Item | 21 QB | 21 TW | 24 QB |
|---|---|---|---|
| Overall width | 2.05 m | 2.05 m | 2.10 m |
| GVWR | 3500 kg | 3500 kg | 4100 kg |
| Wheelbase | 3.45 m | 3.45 m | 4.04 m |
| Fuel tank | 90 L | 90 L | 93 L |

"""


def test_the_21_foot_vans_are_those_called_21(facts_of):
    text = "The 21-foot vans are three-season travelers. The 24-foot vans are four-season.\n"
    told = {(fact.model, fact.value) for fact in facts_of(HEAD + text) if fact.field == "season_claim"}
    assert told == {("Drift 21 QB", "three-season"), ("Drift 21 TW", "three-season"), ("Drift 24 QB", "four-season")}


def test_how_far_a_used_van_was_driven_is_no_part_of_its_name_nor_is_a_stock_number_one(vans_of):
    text = """FOR SALE: MARROWFEN DRIFT 5.9, MY2022, 61,400 km
Stock no. LS-4471 | Listed by Pinda Vans, Curlew Siding | Rego to 03/27
First registered 11/2021. Drive away $92,990

Tidy tourer from a careful couple.

L x W x H: 5.99 m x 2.05 m x 2.71 m
GVM 4,005 kg (tare 3,050)
Berths/belts: 2/2
Motor fuel tank: 90 L
Water: 100 L fresh (inside, under the seat) / 70 L grey (under the floor).
Heating: diesel air heater, 2 kW output
Solar: 160 W factory
"""
    assert vans_of(text, "ad.txt") == {("Marrowfen", "Drift 5.9", 2022)}
