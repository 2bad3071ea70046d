"""A dealer's text on vans of several makers gives each van its own maker, year and facts."""

import pytest

OFFER = """Hello Wren, here is what I have on the lot this week.

2025 MARROWFEN DRIFT 21          stock 4471        demo

Chassis .......... Kelmar Drover 350, 3.6 L V6 gas, RWD
GVWR ............. 9,590 lb
Sleeps ........... 2
Gas tank ......... 25 gal
FW / GW / BW ..... 27 / 24 / 10 gal
Water heater ..... 6 gal LP
Furnace .......... LP forced air, 18,000 BTU/h input

2023 THORNLEIGH HEARTH 20         stock 4480       used

This one I am doing from memory. Kelmar Drover 250 chassis, diesel, rear drive, 19'11" long. Sleeps three. Holds 22
gallons of fresh inside and 18 of gray under the floor, neither tank heated, and there is no black tank. The
Marrowfen people build a good van, and so does Thornleigh.
"""


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def test_each_line_of_year_maker_and_model_begins_a_van(facts_of):
    facts = facts_of(OFFER)
    assert by_van(facts, "maker") == {"Drift 21": "Marrowfen", "Hearth 20": "Thornleigh"}
    assert by_van(facts, "model_year") == {"Drift 21": 2025, "Hearth 20": 2023}
    assert by_van(facts, "sleeps") == {"Drift 21": 2, "Hearth 20": 3}
    assert by_van(facts, "engine_fuel") == {"Drift 21": "gasoline", "Hearth 20": "diesel"}


def test_gas_is_gasoline_in_america_and_bottled_gas_in_britain(facts_of):
    assert by_van(facts_of(OFFER), "fuel_tank_l")["Drift 21"] == pytest.approx(94.6, rel=1e-3)
    british = "Marrowfen Drift 21\nMTPLM: 3500 kg\nBerths: 2\nOverall length: 6.4 m\nGas tank: 25 litres\n"
    facts = facts_of(british)
    assert by_van(facts, "propane_tank_l") == {"Marrowfen Drift 21": 25}
    assert by_van(facts, "fuel_tank_l") == {}


def test_the_fuel_behind_a_water_heaters_size_is_no_tank_of_its_own(facts_of):
    facts = facts_of(OFFER)
    assert by_van(facts, "water_heater_l") == {"Drift 21": pytest.approx(22.71, rel=1e-3)}
    assert by_van(facts, "propane_tank_l") == {}


def test_a_unit_said_once_holds_for_the_next_figure_and_neither_tank_means_both(facts_of):
    facts = facts_of(OFFER)
    assert by_van(facts, "gray_tank_l")["Hearth 20"] == pytest.approx(68.1, rel=1e-3)
    assert by_van(facts, "fresh_tank_heat") == {"Hearth 20": "none"}
    assert by_van(facts, "gray_tank_heat") == {"Hearth 20": "none"}


def test_sister_models_in_prose_share_the_unit(facts_of):
    text = """Marrowfen Drift
Model year 2026

| | Drift 19 | Drift 21 |
|---|---|---|
| Overall length | 19 ft | 21 ft |
| Sleeps | 2 | 3 |
| GVWR | 9,000 lb | 9,590 lb |

Fresh water is where they differ: the 19 carries 20 gallons, the 21 carries 30.
"""
    assert by_van(facts_of(text), "fresh_tank_l") == pytest.approx({"Drift 19": 75.7, "Drift 21": 113.56}, rel=1e-3)


def test_a_drained_van_on_a_lot_claims_no_season(facts_of):
    winterized = "\nIt is winterized right now for the lot, so no water demo, sorry about that, folks.\n"
    assert by_van(facts_of(OFFER + winterized), "season_claim") == {}


def test_what_stands_beside_its_price_is_the_van_and_not_the_dealer_above(vans_of):
    text = (
        "REISEMOBILE FALLWEIDE                                  Inserat-Nr. L-4471\n"
        "Gebraucht- und Vorführwagen, Mühlweg 6\n" + "-" * 72 + "\n\n"
        "MARROWFEN DRIFT 599 Q                         Preis: 52.900 EUR (VB)\n\n"
        "Modelljahr: 2021             Erstzulassung: 11/2020\nKilometer:  58.700           Vorbesitzer: 2\n\n"
        "Länge: 5,99 m\nRadstand: 4.035 mm\nFrischwasser: 100 l\nzul. Gesamtmasse: 3.500 kg\n"
    )
    assert vans_of(text, "angebot.txt") == {("Marrowfen", "Drift 599 Q", 2021)}


def test_a_used_van_is_known_by_what_the_end_of_a_long_listing_says(vans_of):
    items = [f"- Cupboard number {number} with a door\n" for number in range(40)]
    text = (
        "PELBURY RV CENTRE\n\n>> NEW STOCK <<\n\n2025 MARROWFEN DRIFT 64  -  2 BERTH\n\nBuild date 11/24\n\n"
        "Length: 6.42 m\n\nGVM: 4,495 kg\n\nWheelbase: 3,750 mm\n\nSleeps: 2\n\nWater: 140 L\n\n" + "".join(items) +
        "\nTrade-ins welcome. Two keys.\n"
    )  # fmt: skip
    assert vans_of(text, "listing.txt") == {("Marrowfen", "Drift 64", 2025)}


def test_words_with_the_usual_space_between_are_parted_by_no_column_of_lines_below(vans_of):
    text = (
        "WAGENHOF FALLWEIDE  *  Uferstr. 11  *  Mo-Sa 9-18 Uhr\n" + "-" * 72 + "\n"
        "Angebot Nr. 4471-G                                   GEBRAUCHTFAHRZEUG\n\n"
        "Marrowfen Schneegang 595 Duo          Modelljahr 2021\n\n"
        "Preis: 48.900 EUR    62.400 km        Erstzulassung 11/2020\n"
        "Vorbesitzer: 2       HU neu           Gasprüfung bis 05/2028\n\n"
        "Gepflegter Kastenwagen, immer in der Scheune, Scheckheft vollständig.\n\n"
        "Radstand ............. 4.035 mm\nzul. Gesamtmasse ..... 3.500 kg\nDieseltank ........... 90 l\n"
        "Stehhöhe ............. 1,90 m\nHeizung .............. Gas-Kombi 4 kW\n"
    )
    assert vans_of(text, "angebot.txt") == {("Marrowfen", "Schneegang 595 Duo", 2021)}


STOCK = """THE FEN MOTORHOME YARD
Used stock, camper vans, October list                 (we are dealers, not builders)

------------------------------------------------------------------------
{one}   MARROWFEN DRIFT 600                              $94,500
------------------------------------------------------------------------
2021 model, first registered March 2022, 61,200 km, two owners

Water       fresh 95 L / grey 70 L
Loo         cassette, 18 L
Hot water   8 L
Solar       160 W
Glass       double glazed windows in the living area

------------------------------------------------------------------------
{other}   THORNLEIGH & HOLT HEARTH 7                         $178,000
------------------------------------------------------------------------
2023 model, registered 11/2023, 22,900 km, one owner

   Battery ......... 300 Ah LiFePO4 12.8 V, self-heating
   Solar ........... 400 W
   Inverter ........ 2600 W
   Windows ......... double glazed
   Covers .......... insulated, cab and rear doors both
"""


@pytest.mark.parametrize(("one", "other"), [("#4471", "#4486"), ("Stock no. A12:", "Stock no. A17:")])
def test_lines_of_stock_number_name_and_price_begin_the_vans_of_a_dealers_list(facts_of, one, other):
    facts = facts_of(STOCK.format(one=one, other=other))
    assert by_van(facts, "maker") == {"Drift 600": "Marrowfen", "Hearth 7": "Thornleigh & Holt"}
    assert by_van(facts, "model_year") == {"Drift 600": 2021, "Hearth 7": 2023}
    assert by_van(facts, "solar_w") == {"Drift 600": 160, "Hearth 7": 400}
    assert by_van(facts, "inverter_w") == {"Hearth 7": 2600}


def test_both_on_the_sheet_of_one_van_of_a_list_are_its_own_two_things(facts_of):
    facts = facts_of(STOCK.format(one="#4471", other="#4486"))
    assert by_van(facts, "rear_shades_insulated") == {"Hearth 7": True}
