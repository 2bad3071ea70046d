"""Dealers' listings of used vans: whose name is whose, and what is said of other stock."""

import pytest

LISTING = """Ludbrook Leisure Ltd      Station Yard, Ludbrook      Stock list
------------------------------------------------------------------
REF LL/40817       PRICE REDUCED       £48,950

                     MARROWFEN DRIFT 57 B
                     Model 2020, first registered 09/2020

Mileage / owners ............... 31,400 / 1
Service history ................ full
Tyres .......................... all-season, 6 mm

WATER
  Fresh tank ................... 95 litres
  Waste tank ................... 80 litres, under the floor

HEAT
  Heater ....................... diesel air heater, 4 kW output
  Battery ...................... 110 Ah AGM

EXTRAS ON THIS VAN
  * Heated waste tank
  * Insulated thermal screens for the cab

WHAT IT DOES NOT HAVE
  - underfloor heating
  - solar panel

ALSO IN STOCK: Marrowfen Drift 64, 120 litres fresh, 200 Ah lithium, £61,000.
"""


@pytest.fixture(scope="module")
def listed(settled_of):
    """The listing above, settled: rows by field and equipment."""
    rows = settled_of(LISTING, name="used.txt")
    return {(field, equipment): row for (_, field, equipment), row in rows.items()}


def test_a_van_for_sale_is_not_named_by_its_stock_number_or_the_dealer(vans_of):
    assert vans_of(LISTING, "used.txt") == {("Marrowfen", "Drift 57 B", 2020)}


def test_the_price_of_the_van_makes_no_option_of_all_it_has(listed):
    assert {listed[field, "standard"].availability for field in ("fresh_tank_l", "gray_tank_l", "battery_ah")} == {
        "standard"
    }
    assert listed["gray_tank_heat", "optioned"].availability == "optional"


def test_what_is_listed_as_not_there_is_denied(listed):
    assert listed["heated_floor", "standard"].flag is False
    assert listed["solar_w", "standard"].num == 0


def test_other_stock_and_tyres_say_nothing_of_the_van(listed):
    assert listed["fresh_tank_l", "standard"].num == 95
    assert listed["battery_ah", "standard"].num == 110
    assert ("season_claim", "standard") not in listed


@pytest.mark.parametrize(("region", "heading", "thing"), [
    ("UK", "Without: ", "Underfloor heating"),
    ("DE", "Nicht an Bord", "Fußbodenheizung"),
    ("FR", "Ce qu'il n'a pas", "Plancher chauffant"),
])  # fmt: skip
def test_headings_of_what_is_not_there(printed, region, heading, thing):
    assert printed(region, f"{heading}\n- {thing}\n- {'Markise' if region == 'DE' else 'Store'}") == {
        "heated_floor": False
    }


def test_a_fresh_arrival_is_named_by_its_dated_line_and_not_by_the_dealer_or_the_file(vans_of):
    text = (
        "LUDBROOK VANS & TRAILERS          Lot 4, Mill Road, Ludbrook\nPh. by appointment\n\n**** JUST ARRIVED ****\n\n"
        "2021 MARROWFEN DRIFT 6 LX                    Stock: L4471\n$98,990 drive away                   61,250 km\n"
        "first registered Feb 2021\n\nA Drift with two keys. Trade-ins welcome.\n\nTHE VAN\n"
        " - Length 6.36m   Width 2.08m\n"
        " - Wheelbase 4040mm\n - GVM 4250kg\n - Sleeps 2\n"
    )
    assert vans_of(text, "ludbrook_used_drift_6lx.txt") == {("Marrowfen", "Drift 6 LX", 2021)}


def test_the_van_of_a_listing_stands_between_wide_gaps_on_a_line_of_its_own(vans_of):
    text = """LUDBROOK CAMPERS & MOTORHOMES
Lot 3 Quay Rd, Ludbrook   |   Dealer lic. QD 0000731   |   Mon-Sat
----------------------------------------------------------------------

>> JUST IN   Marrowfen Drift 6.2   MY23   Stock #L5561

Drive away ........ $131,990
Odometer .......... 48,210 km

Traded by a couple on a smaller van, roadworthy done.

THE TRUCK
 * 6.20 m long, 2.08 m wide, 2.98 m high
 * GVM 4,490 kg
 * 92 L diesel tank

LIVING IN IT
 * Sleeps 2
 * 130 L fresh water, 60 L grey tank
 * 2000 W inverter
"""
    assert vans_of(text, "used_van.txt") == {("Marrowfen", "Drift 6.2", 2023)}


@pytest.mark.parametrize(
    ("seller", "said"),
    [("HARTLOW CARAVAN YARD", ""), ("HARTLOW LEISURE", "Hartlow Leisure is the seller, not the maker.")],
)
def test_who_sells_a_used_van_gives_it_no_name(vans_of, seller, said):
    text = (
        f"{seller}                                  Stock #4471\nUsed vans, Hartlow Rd, Port Emsey\n{'-' * 60}\n\n"
        "ALLENDRAKE CURLEW 6.4                              $129,990 drive away\n\n"
        "2023 model, first registered Feb 2024, 38,600 km. One owner, full service history.\n\n"
        "  Length ................ 6.36 m\n  GVM ................... 4005 kg\n  Sleeps ................ 2\n"
        "  Fresh ................. 110 L\n  Grey .................. 90 L\n  Solar ................. 340 W\n\n"
        f"Allendrake called it alpine ready when new. {said}\n"
    )
    assert vans_of(text, "stock_4471.txt") == {("Allendrake", "Curlew 6.4", 2023)}


def test_one_keeper_and_a_full_book_tell_a_used_van(vans_of):
    text = (
        "# Ossvane Drift 54\n\nPremière mise en circulation 05/2021, un seul propriétaire, carnet complet. "
        "Visible chez Évasion du Val-Clair.\n\n- Longueur : 5,41 m\n- Largeur : 2,05 m\n- PTAC : 3 500 kg\n"
        "- Couchages : 2\n- Eau propre : 90 litres\n- Eaux usées : 80 litres\n\n"
        "Évasion du Val-Clair SARL, vente depuis 2004.\n"
    )
    assert [(maker, model) for maker, model, _ in vans_of(text, "annonce.md")] == [("Ossvane", "Drift 54")]


@pytest.mark.parametrize("lead", ["USED: ", "FOR SALE: ", "Just in: "])
def test_a_word_of_the_trade_leads_to_the_name_of_a_van_for_sale(vans_of, lead):
    listing = LISTING.replace("MARROWFEN DRIFT 57 B", f"{lead}MARROWFEN DRIFT 57 HI-LO")
    assert vans_of(listing, "used.txt") == {("Marrowfen", "Drift 57 Hi-Lo", 2020)}


@pytest.mark.parametrize("hours", ["Open Tue-Sun 9.30 - 6", "Open Tuesday 9.30 to 18.00"])
def test_a_van_for_sale_is_not_named_by_the_hours_in_which_it_can_be_seen(vans_of, hours):
    listing = LISTING.replace("Station Yard, Ludbrook      Stock list", f"Station Yard, Ludbrook\n{hours}")
    listing = listing.replace(
        "                     MARROWFEN DRIFT 57 B\n                     Model 2020, first registered 09/2020",
        "MARROWFEN DRIFT 57 B          2020 model, first registered 09/2020",
    )
    assert vans_of(listing, "used.txt") == {("Marrowfen", "Drift 57 B", 2020)}


@pytest.mark.parametrize("past", ["Erstzulassung 05/2022", "aus erster Hand, unfallfrei"])
def test_what_stands_behind_a_used_vans_name_of_its_past_is_no_part_of_it(vans_of, past):
    text = (
        "REISEMOBILE HARTLOH  ·  An- und Verkauf  ·  Birkenau\nAngebot Nr. H-7104              Stand: 12.10.2025\n"
        f"{'-' * 60}\n\nMarrowfen Drift 57 B, Modelljahr 2021, {past}\n\nPreis 51.900 EUR  ·  38.600 km  ·  TÜV neu\n\n"
        "Länge ............. 5,99 m\nRadstand .......... 4.035 mm\nzul. Gesamtgewicht  3.500 kg\n\n"
        "Frischwasser 100 Liter, Abwasser 90 Liter. Aufbaubatterie 95 Ah AGM.\n\n"
        "Vorbesitzer pflegten ihn. Reisemobile Hartloh e. K., Inhaber vor Ort.\n"
    )
    assert vans_of(text, "gebraucht.txt") == {("Marrowfen", "Drift 57 B", 2021)}


@pytest.mark.parametrize("dealer", ["AUTOHOF BIRKENAU - Angebot", "HARTLOH - Gebrauchte Reisemobile"])
def test_a_dash_amid_wide_gaps_parts_the_name_of_a_used_van_from_what_it_is(vans_of, dealer):
    text = (
        f"{dealer}                 Nr. H-7104\n{'-' * 60}\n\n"
        "Marrowfen Drift 57 B  -  Kastenwagen, scheckheftgepflegt\n\n"
        "Preis: 51.900 EUR          Kilometerstand: 38.600 km\nErstzulassung: 05/2022     Modelljahr: 2021\n"
        "Vorbesitzer: 1             TÜV neu\n\nFAHRZEUG\n Länge:               5,99 m\n"
        " Radstand:            4035 mm\n Gesamtgewicht:       3500 kg\n\nWOHNRAUM\n Frischwasser:        100 l\n"
        f" Solar:               100 W\n\n{dealer.partition(' - ')[0].title()}, Talweg 9, Birkenau\n"
    )
    assert vans_of(text, "gebraucht.txt") == {("Marrowfen", "Drift 57 B", 2021)}


DATED = """LUDBROOK MOTORHOMES PTY LTD             Lot 9, Saltbush Rd, Ludbrook
Dealer lic. 12345                       Thu-Sun, or by phone
----------------------------------------------------------------------

2025 Marrowfen Drift 590 Coastal                     Stock No K-4127

Drive away $148,500       Odometer 8,120 km
First registered Mar 2026. Trade-ins welcome.

We have slept in it twice and liked it. We also have a Drift 640 due in September if you need more room.

VEHICLE
-------
Length ........... 5.93 m
Width ............ 2.02 m
GVM .............. 3880 kg
Sleeps ........... 2

WATER
-----
Fresh ............ 120 L, under the bed
Grey ............. 80 L, underslung
Hot water ........ 10 L

HEATING AND POWER
-----------------
Heater ........... diesel air heater, 4 kW output
House battery .... 200 Ah lithium
Solar ............ 2 x 170 W on the roof

BODY
----
Windows .......... double glazed

ALSO AVAILABLE FROM THE MAKER
-----------------------------
[ ] 3000 W inverter instead ............... $1,290
"""


def test_a_dated_line_with_the_stock_number_beside_it_names_what_is_for_sale(vans_of):
    assert vans_of(DATED, "listing.txt") == {("Marrowfen", "Drift 590 Coastal", 2025)}


@pytest.mark.parametrize(
    ("told", "said"),
    [(" - votre spécialiste du fourgon d'occasion", ""), ("", "Loisirs Mesnard n'est ni constructeur ni importateur.")],
)
def test_a_seller_who_says_that_he_builds_none_gives_a_used_van_no_name(vans_of, told, said):
    text = (
        f"LOISIRS MESNARD{told}\nRoute du Phare, Port-Mesnil\n{'-' * 50}\n\n>>> FOURGON D'OCCASION   réf. 4471\n\n"
        "OSSVANE CURLEN 599 F\n\nMillésime 2021 - 1re mise en circulation : 02/2022\nKilométrage : 58 200 km\n\n"
        "PTAC ............... 3500 kg\nHauteur int. ....... 1,90 m\nRéservoir gazole ... 90 l\n"
        f"Panneau solaire .... 100 W\nBatterie cellule ... 95 Ah gel\n\nReprise possible, venez voir. {said}\n"
    )
    assert vans_of(text, "annonce.txt") == {("Ossvane", "Curlen 599 F", 2021)}


def test_behind_a_dash_stands_what_is_for_sale_and_no_mileage_is_its_name(vans_of):
    sheet = (
        "À VENDRE — fourgon aménagé AUBREVIN Courlis 600 Givre\nMise à jour : 3 mars\n\n"
        "Vendeur : Les Grèves Loisirs\nAménageur : Atelier Aubrevin\n\n"
        "Kilométrage : 48 700 km — 1re mise en circulation : 05/2022 — année-modèle : 2022\nPremière main.\n\n"
        "LE VÉHICULE\n  Empattement ........ 4 035 mm\n  PTAC ............... 3 500 kg\n  Gazole ............. 90 l\n"
        "  Couchages .......... 2\n  Eau propre ......... 90 l\n  Eaux usées ......... 70 l\n  Batterie ....... 95 Ah\n"
    )
    assert vans_of(sheet, "annonce.txt") == {("Atelier Aubrevin", "Courlis 600 Givre", 2022)}


def test_a_price_with_words_behind_it_and_what_a_garage_sells_name_no_used_van(vans_of):
    text = (
        "GARAGE VIEUXPRE  -  véhicules de loisirs d'occasion\nAnnonce n° 118-C              mise à jour : 3/09/2025\n"
        f"{'-' * 60}\n\nMARROWFEN DRIFT 599 G                                51 300 € TTC\n\n"
        "Millésime 2022  |  1re mise en circulation 03/2023  |  41 000 km\n"
        "Première main, carnet complet, non-fumeur. Visible sur parc, à Vieuxpre.\n\n"
        "Fourgon très propre. Marrowfen le donne pour un fourgon quatre saisons.\n\nDIMENSIONS\n"
        ". Longueur ............ 5,99 m\n. Largeur ............. 2,05 m\n. PTAC ................ 3500 kg\n"
        ". Couchages ........... 2\n\nCELLULE\n. Eau propre .......... 100 litres\n"
        ". Batterie cellule .... AGM 95 Ah\n. Chauffage ........... combiné air/eau au gaz, 4000 W\n"
    )
    assert vans_of(text, "annonce.txt") == {("Marrowfen", "Drift 599 G", 2022)}


@pytest.mark.parametrize(
    "title",
    [
        "***JUST IN*** 2023 Allendrake Curlew 64 Q AWD diesel ***CLEAN***",
        "+++ NEW ARRIVAL +++ 2023 Allendrake Curlew 64 Q",
        "2023 Allendrake Curlew 64 Q diesel",
    ],
)
def test_stickers_engine_and_drive_in_the_title_of_a_used_van_are_no_part_of_its_name(vans_of, title):
    text = (
        f"{title}\nHartlow Van Exchange | Exit 9, Port Emsey | Mon-Sat 9-6\nOdometer: 31,206 mi   In service since: "
        "May 2024\n\nOne owner, one cat, and a long list of mountains. All of it was tried out in our own yard.\n\n"
        ">> SPECS\nchassis: Bruska Hauler 3500, diesel, all-wheel drive\nGVWR 11,030 lb\nsleeps 2\n"
        "fresh tank 28 gal\ngray tank 24 gal, under the floor\nLP tank 11.5 gal\nsolar 190 W\ninverter 2000 W\n"
    )
    assert vans_of(text, "stock_0093.txt") == {("Allendrake", "Curlew 64 Q", 2023)}


def test_a_nearly_new_van_on_a_dealers_page_is_its_makers(vans_in):
    text = """LUDBROOK & SONS RV  ::  Highway 9, Ludbrook
new + nearly new campers  ::  closed Sundays

2025 Marrowfen Drift 59 TB    stock LS-4471
-------------------------------------------
$148,900 / demo unit, 4,100 km / first plated June 2025

Length........ 5.93 m
GVWR.......... 4,080 kg
Fresh......... 100 L under the dinette, inside
Grey.......... 78 L under the floor
House bank.... 2 x 230 Ah lithium, 12.8 V
Inverter...... 3000 W

CAN'T HAVE ON THIS ONE
  fixed toilet, propane furnace

Marrowfen rates it to -25 C. Trade-ins welcome.
Ludbrook & Sons RV Ltd. Dealer licence on the wall.
"""
    assert vans_in(text, "listing.txt") == {("Marrowfen", "Drift 59 TB")}
