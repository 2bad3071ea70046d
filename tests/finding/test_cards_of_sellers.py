"""The cards of who sells used vans."""

USED = """CURLEW HEATH MOTORHOMES  |  pre-loved campers and vans
Lot 4, Saltbush Drive, Curlew Heath        Dealer licence 00417

    >> 2021 MARROWFEN SWAGGER 610 <<        Stock no. CF3382
    $104,990 drive away            first rego 02/2022

THE VAN
- Drive        rear wheel, diff lock
- Wheelbase    3520 mm
- GVM          4490 kg
- Sleeps       2, seats 4 belted

WATER
- 120 L fresh, 80 L grey, both slung under the floor

Trade-ins welcome. We also have a 2019 Swagger 540 coming in, ask Deb.
"""


def test_who_sells_pre_loved_vans_builds_none_and_another_vans_year_is_not_this_ones(vans_of):
    assert vans_of(USED, "listing.txt") == {("Marrowfen", "Swagger 610", 2021)}
