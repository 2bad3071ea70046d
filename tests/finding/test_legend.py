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
        ("n. o.", "S", "S = standard  X = extra cost  n. o. = not offered on this Drift"),
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


def test_a_sign_for_what_comes_with_a_package_says_that_it_is_an_option(facts_of):
    legend = "S = standard  P = comes with the Fell Package ($2,900)  X = not offered"
    facts = facts_of(TABLE.format(no="P", yes="S", legend=legend), "table.md")
    found = {fact.model[-2:]: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert found == {"19": "optional", "21": "standard"}


def test_the_standard_part_that_another_takes_the_place_of_leaves_the_mark_its_meaning(facts_of):
    legend = "S = standard  O = extra cost\n\n"
    rows = (
        "| | Drift 19 | Drift 21 |\n|---|---|---|\n| Lithium battery, 250 Ah, instead of standard | O 900 | O 900 |\n"
    )
    facts = facts_of(TABLE.format(no="O", yes="S", legend=legend + rows), "table.md")
    assert {fact.availability for fact in facts if fact.field == "battery_ah"} == {"optional"}


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


PLAIN_RANGE = """Marrowfen Drift 2026

| Modèle | Longueur (m) | Empattement (mm) | Couchages | Plancher chauffant | Convertisseur |
|---|---|---|---|---|---|
| Drift 540 | 5,41 | 3450 | 2 | – | opt. |
| Drift 600 | 5,99 | 4040 | 3 | opt. | {inverter} |

{legend}
"""


def test_short_words_before_a_colon_are_a_legend(facts_of):
    legend = "série : compris dans le prix opt. : en option – : non proposé sur ce fourgon"
    facts = facts_of(PLAIN_RANGE.format(inverter="série", legend=legend), "table.md")
    found = {fact.model[-3:]: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert found == {"540": "not_available", "600": "optional"}


def test_what_stands_behind_a_legend_in_its_paragraph_is_read(facts_of):
    legend = "Std = standard, – = not offered. The gray tank of the 21 hangs in a heated compartment."
    facts = facts_of(TABLE.format(no="–", yes="Std", legend=legend), "table.md")
    assert {(f.model, f.value) for f in facts if f.field == "gray_tank_location"} == {("Drift 21", "enclosed")}
    found = {fact.model[-2:]: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert found == {"19": "not_available", "21": "standard"}


SIGNED = """Marrowfen Drift 2026

|  | Drift 19 | Drift 21 |
|---|---|---|
| Overall length | 5.41 m | 6.36 m |
| GVWR | {mass} | 4250 kg |
| Wheelbase | 3.45 m | 4.04 m |
| Inverter | {inverter} | 2000 W |
| Black tank | — | 50 L |

{legend}
"""


@pytest.mark.parametrize(
    ("mass", "inverter", "legend"),
    [
        ("3500 kg (EX: 3880 kg)", "EX: 1000 W", "Key: S = standard, EX = extra cost"),
        ("3500 kg (○ 3880 kg)", "1000 W ○", "● standard  ○ extra cost"),
    ],
)
def test_a_sign_beside_a_value_says_whether_it_is_an_option(facts_of, mass, inverter, legend):
    facts = facts_of(SIGNED.format(mass=mass, inverter=inverter, legend=legend), "table.md")
    said = {(f.model, f.field, f.value): f.availability for f in facts}
    assert said["Drift 19", "gvwr_kg", 3500] == "standard"
    assert said["Drift 19", "gvwr_kg", 3880] == "optional"
    assert said["Drift 19", "inverter_w", 1000] == "optional"
    assert said["Drift 21", "inverter_w", 2000] == "standard"


def test_a_sign_that_the_legend_names_in_words(facts_of):
    text = SIGNED.format(mass="3500 kg", inverter="—", legend="A dash means that the floorplan does not have the item.")
    found = {(f.model, f.field): f.value for f in facts_of(text, "table.md")}
    assert found["Drift 19", "black_tank_l"] == 0
    assert found["Drift 19", "inverter_w"] == 0
    unexplained = facts_of(SIGNED.format(mass="3500 kg", inverter="—", legend="Dashing good looks."), "table.md")
    assert not [f for f in unexplained if (f.model, f.field) == ("Drift 19", "black_tank_l")]


def test_what_a_package_holds_is_an_option_of_the_vans_it_is_sold_for(facts_of):
    offers = """
- Sunrise Package (19): second panel, 260 W of solar in total
- Power Pack (21): Lithium battery, 300 Ah. Inverter, 2500 W. $4,900
- Drain kit: under the sink

## Options
- Lithium upgrade (19): replaces the AGM bank with two 100 Ah lithium batteries
- Insulated cab shades (all floorplans; included on the 21)
"""
    facts = facts_of(SIGNED.format(mass="3500 kg", inverter="800 W", legend=offers), "table.md")
    said = {(f.model, f.field, f.value): f.availability for f in facts}
    assert said["Drift 19", "solar_w", 260] == "optional"
    assert said["Drift 21", "battery_ah", 300] == said["Drift 21", "inverter_w", 2500] == "optional"
    assert ("Drift 19", "inverter_w", 2500) not in said
    assert said["Drift 19", "battery_ah", 200] == said["Drift 19", "battery_chemistry", "lithium"] == "optional"
    shades = {van: how for (van, field, _), how in said.items() if field == "cab_shades_insulated"}
    assert shades == {"Drift 19": "optional", "Drift 21": "standard"}


AMOUNTS = """Marrowfen Drift 2026

|  | 540 | 600 | 600 Polar |
|---|---|---|---|
| Overall length | 5.41 m | 5.99 m | 5.99 m |
| GVWR | 3500 kg | 3500 kg | 4250 kg |
| Driven wheels | Rear | Rear | Rear |
| Gray water (L) | 70 | 90 | 90 |

## {heading}

|  | 540 | 600 | 600 Polar | kg |
|---|---|---|---|---|
| Insulated gray tank | 245 | S | S | 4 |
| Heated floor | 890 | 890 | S | 6 |
| Solar panel 120 W | 1,090 | 1,090 | – | 9 |

S = standard; – = not available{figure}
"""


@pytest.mark.parametrize(
    ("heading", "figure"),
    [
        ("Options", ""),
        ("Equipment", "; figure = optional at this price"),
        ("Equipment", ". All prices are in dollars and include delivery."),
    ],
)
def test_bare_figures_among_signs_are_what_an_option_costs(facts_of, heading, figure):
    facts = facts_of(AMOUNTS.format(heading=heading, figure=figure), "table.md")
    vans = ("Drift 540", "Drift 600", "Drift 600 Polar")
    assert {f.model.removeprefix("Marrowfen ") for f in facts} == set(vans)
    said = {(f.field, f.model.removeprefix("Marrowfen ")): (f.value, f.availability) for f in facts}
    assert [said["gray_tank_l", van] for van in vans] == [(70, "standard"), (90, "standard"), (90, "standard")]
    assert [said["gray_tank_insulated", van][1] for van in vans] == ["optional", "standard", "standard"]
    assert [said["heated_floor", van] for van in vans] == [(True, "optional")] * 2 + [(True, "standard")]
    assert [said["solar_w", van] for van in vans] == [(120, "optional")] * 2 + [(120, "not_available")]


@pytest.mark.parametrize(
    ("first", "second"),
    [("1,000 W (O)", "2,000 W (S)"), ("O: 1,000 W", "S: 2,000 W")],
)
def test_a_sign_in_brackets_behind_a_value_says_whether_it_is_an_option(facts_of, first, second):
    row = f"| Inverter | {first} | {second} |\n\nS = standard, O = option, – = not available"
    facts = facts_of(TABLE.format(no="–", yes="S", legend="").rstrip() + f"\n{row}\n", "table.md")
    found = {f.model[-2:]: (f.value, f.availability) for f in facts if f.field == "inverter_w"}
    assert found == {"19": (1000, "optional"), "21": (2000, "standard")}


@pytest.mark.parametrize(
    "legend",
    [
        "S standard   O optional, priced singly   W only in the Winter Package   – not available",
        "S = standard, O = option, W = part of the Winter Pack, – = not available",
    ],
)
def test_the_letter_of_a_package_says_that_a_thing_is_an_option(settled_of, legend):
    text = (
        "Marrowfen Vans\n\n# Drift 2026\n\n| | Drift 19 | Drift 21 |\n|---|---|---|\n| Length | 19 ft | 21 ft |\n"
        f"| GVWR | 8,700 lb | 9,900 lb |\n| Sleeps | 2 | 3 |\n\n## Equipment\n\n{legend}\n\n"
        "| | Drift 19 | Drift 21 |\n|---|---|---|\n| 12 V heating pad on gray tank | W | S |\n"
        "| Insulated cab curtains | – | W |\n| Winterizing bypass | S | O |\n"
    )
    rows = settled_of(text, name="chart.md")
    assert rows["Drift 19", "gray_tank_heat", "optioned"].availability == "optional"
    assert rows["Drift 21", "gray_tank_heat", "standard"].availability == "standard"
    assert rows["Drift 21", "cab_shades_insulated", "optioned"].availability == "optional"


@pytest.mark.parametrize(("said", "expected"), [
    ("Ticked means standard.", ["optional"]),
    ("Ticked boxes mean already yours.", ["optional"]),
    ("Ticked means fitted to the van in our yard.", []),
])  # fmt: skip
def test_boxes_left_open_are_options_where_ticked_ones_are_standard(facts_of, said, expected):
    listing = (
        f"# Marrowfen Drift 21\n\nOverall length: 6.36 m\nGVWR: 3500 kg\nWheelbase: 4.04 m\n\n## Ticks\n\n{said}\n\n"
    )
    listing += "- [x] reversing camera\n- [ ] inverter, 2000 W\n- [ ] heated floor\n"
    facts = [fact for fact in facts_of(listing, "ticks.md") if not fact.rejected]
    assert [fact.availability for fact in facts if fact.field == "inverter_w"] == expected


@pytest.mark.parametrize(("legend", "expected"), [
    ("[X] in the base price\n[ ] at extra cost\n[-] not available on the Drift 21\n", {"not_available"}),
    ("How to read the boxes:   [X] standard\n    [ ] option, tick to order\n    [-] not to be had\n",
     {"not_available"}),
    ("", set()),
])  # fmt: skip
def test_a_box_with_a_sign_of_its_own_says_what_the_legend_tells(facts_of, legend, expected):
    form = "Marrowfen Drift 21\n\nOverall length: 6.36 m\nGVWR: 3500 kg\nWheelbase: 4.04 m\n\n"
    form += f"HOW IT IS MARKED\n{legend}\n"
    form += "HEAT\n[X] Fresh tank, 100 L\n[-] Hydronic heater\n[-] Heated floor\n"
    facts = [fact for fact in facts_of(form) if not fact.rejected]
    assert [fact.value for fact in facts if fact.field == "fresh_tank_l"] == [100]
    assert {fact.availability for fact in facts if fact.field in ("heater_type", "heated_floor")} == expected


def test_letters_in_boxes_say_what_the_legend_tells(facts_of):
    form = "Marrowfen Drift 21\n\nOverall length: 6.36 m\nGVWR: 3500 kg\nWheelbase: 4.04 m\n\nBOXES\n"
    form += "[S] in the base price\n[O] at extra cost\n\nHEAT AND POWER\n[S] Fresh tank, 100 L\n[O] Inverter, 2000 W\n"
    facts = {fact.field: fact for fact in facts_of(form) if not fact.rejected}
    assert (facts["fresh_tank_l"].value, facts["fresh_tank_l"].availability) == (100, "standard")
    assert (facts["inverter_w"].value, facts["inverter_w"].availability) == (2000, "optional")


@pytest.mark.parametrize(("sign", "legend"), [
    ("X", "S standard   O at extra cost   X not needed: the van has its own"),
    ("nr", "S = standard, O = optional, nr = not relevant to this van"),
])  # fmt: skip
def test_a_sign_for_what_has_no_meaning_for_a_van_states_nothing(facts_of, sign, legend):
    text = (
        f"Marrowfen Drift 2026\n\n{legend}\n\n|  | Drift 19 | Drift 21 |\n|---|---|---|\n"
        "| Overall length | 5.41 m | 6.36 m |\n| GVWR | 3500 kg | 4250 kg |\n| Wheelbase | 3.45 m | 4.04 m |\n"
        f"| Inverter, 1200 W | O | {sign} |\n| Heated floor | {sign} | S |\n"
    )
    facts = [fact for fact in facts_of(text, "table.md") if not fact.rejected]
    found = {(fact.field, fact.model[-2:]): fact.availability for fact in facts}
    assert (found["inverter_w", "19"], found["heated_floor", "21"]) == ("optional", "standard")
    assert ("inverter_w", "21") not in found and ("heated_floor", "19") not in found


def test_abbreviations_with_their_meaning_behind_them_and_a_remark(facts_of):
    text = (
        "Marrowfen Drift 2026\n\n| | Drift 19 | Drift 21 | Drift 23 |\n|---|---|---|---|\n"
        "| Overall length | 19 ft 4 in | 21 ft 2 in | 23 ft |\n| GVWR | 8,550 lb | 9,900 lb | 11,000 lb |\n"
        "| Heated floor | N/A | Opt. | Incl. |\n| Foam jacket on gray tank | N/A | Opt. | Incl. |\n\n"
        "Incl. included in the price. Opt. option at extra cost. N/A not available on that model. Gallons are U.S. "
        "gallons; where litres and gallons differ, litres count.\n"
    )
    facts = facts_of(text, "sheet.md")
    for field in ("heated_floor", "gray_tank_insulated"):
        said = {f.model: (f.value, f.availability) for f in facts if f.field == field}
        assert said["Drift 19"] == (True, "not_available")
        assert said["Drift 21"] == (True, "optional")
        assert said["Drift 23"] == (True, "standard")


def test_what_is_said_of_prices_behind_the_last_sign_of_a_legend_takes_nothing_from_it(facts_of):
    legend = "S = included   EX = extra cost   – = not offered; all prices in dollars incl. tax"
    facts = facts_of(TABLE.format(no="–", yes="EX", legend=legend), "table.md")
    for field in ("heated_floor", "gray_tank_heat"):
        found = {fact.model[-2:]: fact.availability for fact in facts if fact.field == field}
        assert found == {"19": "not_available", "21": "optional"}, field


def test_small_abbreviations_before_small_letters_are_a_legend(facts_of):
    legend = "std. in the price; opt. at extra cost; n.o. not offered. Gray tanks hang below the floor."
    facts = facts_of(TABLE.format(no="n.o.", yes="std.", legend=legend), "table.md")
    found = {fact.model[-2:]: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert found == {"19": "not_available", "21": "standard"}


def test_letters_that_name_vans_are_no_signs_of_the_legend(facts_of):
    text = """# Wendrill 540

Model year 2026

The Wendrill 540 C is for the coast, the Wendrill 540 CX for the hills. Prices: $99,000 (C), $120,000 (CX).

## What you get

● fitted to both C and CX ▲ fitted to CX, extra cost on C ◇ fitted to CX only, not available on C

- ● Length 5990 mm
- ● Height 2650 mm
- ● Wheelbase 3450 mm
- ● GVM 3500 kg
- ▲ 2000 W inverter
- ◇ Insulated gray tank
"""
    found = {(f.model[13:], f.field): f.availability for f in facts_of(text, "leaflet.md")}
    assert found["C", "length_mm"] == found["CX", "length_mm"] == "standard"
    assert (found["C", "inverter_w"], found["CX", "inverter_w"]) == ("optional", "standard")
    assert (found["C", "gray_tank_insulated"], found["CX", "gray_tank_insulated"]) == ("not_available", "standard")


def test_a_heading_of_prices_says_of_each_van_whether_it_has_what_stands_below(facts_of):
    text = """# Marrowfen Drift 2026

| | Drift 19 | Drift 21 |
|---|---|---|
| Overall length | 5.41 m | 6.36 m |
| GVWR | 3500 kg | 4250 kg |
| Wheelbase | 3.45 m | 4.04 m |

## Packs

### Frost Pack
#### Drift 19 $1,690 · Drift 21 included

- Heated floor

### Summit Pack
#### Drift 21 $2,950 · Drift 19 not available

- Insulated covers for the rear doors
"""
    found = {(f.model[-2:], f.field): f.availability for f in facts_of(text, "packs.md")}
    assert (found["19", "heated_floor"], found["21", "heated_floor"]) == ("optional", "standard")
    assert found["19", "rear_shades_insulated"] == "not_available"
    assert found["21", "rear_shades_insulated"] == "optional"


def test_a_label_that_ends_in_an_abbreviation_is_no_sentence(facts_of):
    table = TABLE.replace("Heated floor", "Cab shades, insul.").format(no="opt.", yes="std.", legend="")
    found = {fact.model[-2:]: fact.availability for fact in facts_of(table, "table.md") if "cab" in fact.field}
    assert found == {"19": "optional", "21": "standard"}


def test_one_sign_explained_before_a_remark_and_cells_that_do_not_apply(facts_of):
    text = """Marrowfen Drift 2026

| | Solo | Grand Nord |
|---|---|---|
| Longueur | 5 410 mm | 5 998 mm |
| Empattement | 3 450 mm | 4 035 mm |
| PTAC | 3 300 kg | 4 000 kg |

## Options

| | Solo | Grand Nord |
|---|---|---|
| Batterie lithium 150 Ah | 1 350 € | sans objet |
| Convertisseur 1 500 W | 690 € | – |

– : option non disponible sur cette finition. Les options s’ajoutent à la masse en ordre de marche.
"""
    facts = facts_of(text, "options.md")
    assert {f.model.split()[-1] for f in facts if f.field == "battery_ah"} == {"Solo"}
    said = {f.model.split()[-1]: f.availability for f in facts if f.field == "inverter_w"}
    assert said == {"Solo": "optional", "Nord": "not_available"}


def test_a_sign_that_says_first_for_which_model_a_thing_is_not_to_be_had(facts_of):
    text = (
        "Marrowfen Drift 2026\n\n|  | Drift 19 | Drift 21 |\n|---|---|---|\n| Länge | 5,41 m | 6,36 m |\n"
        "| Radstand | 3,45 m | 4,04 m |\n| Zulässige Gesamtmasse | 3.500 kg | 4.250 kg |\n| Fußbodenheizung | – | S |\n"
        "\nS = Serie   Preis = gegen Aufpreis   – = für dieses Modell nicht lieferbar\n"
    )
    facts = facts_of(text, "liste.md")
    found = {fact.model[-2:]: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert found == {"19": "not_available", "21": "standard"}


def test_a_row_of_options_known_by_its_own_words_says_nothing_of_the_thing_above(facts_of):
    text = (
        "Marrowfen Drift 2026\n\n|  | Drift 19 | Drift 21 |\n|---|---|---|\n| Overall length | 5.41 m | 6.36 m |\n"
        "| Wheelbase | 3.45 m | 4.04 m |\n| GVWR | 3500 kg | 4250 kg |\n| Sleeps | 2 | 2 |\n"
        "\n## Options\n\n|  | Drift 19 | Drift 21 |\n|---|---|---|\n"
        "| 12 V heat pad for gray tank | $390 | Included |\n| Insulated cab shades | $260 | Included |\n"
        "| Jump bed (third sleeper) | not offered | $890 |\n"
    )
    facts = [fact for fact in facts_of(text, "folder.md") if not fact.rejected]
    assert {fact.field for fact in facts if "tank" in fact.field} == {"gray_tank_heat"}
    berths = {(fact.model[-2:], fact.value, fact.availability) for fact in facts if fact.field == "sleeps"}
    assert berths == {
        ("19", 2, "standard"), ("21", 2, "standard"), ("19", 3, "not_available"), ("21", 3, "optional"),
    }  # fmt: skip


def test_a_sign_behind_the_words_of_a_label_says_what_the_legend_says_of_it(facts_of):
    facts = facts_of(
        "Marrowfen Drift 540\nTechnical data, model year 2026\n\nEquipment marked with a dagger (†) is optional.\n\n"
        "Wheelbase: 4040 mm\nLength: 5990 mm\nSolar panels: 190 W\nSecond solar panel†, total: 380 W\n"
        "Inverter, large†: 2,000 W\n"
    )
    solar = {fact.value: fact.availability for fact in facts if fact.field == "solar_w"}
    assert solar == {190: "standard", 380: "optional"}
    assert [fact.availability for fact in facts if fact.field == "inverter_w"] == ["optional"]


def test_a_legend_in_the_corner_of_its_table_explains_the_signs_of_all_groups(facts_of):
    corner = "| ■ included □ extra cost × not available | Drift"
    text = TABLE.format(no="×", yes="□", legend="").replace("|  | Drift", corner)
    text = text.replace("| Overall length", "| Measures |  |  |\n| Overall length")
    text = text.replace("| Heated floor", "| Comfort |  |  |\n| Heated floor")
    found = {fact.model[-2:]: fact.availability for fact in facts_of(text, "table.md") if fact.field == "heated_floor"}
    assert found == {"19": "not_available", "21": "optional"}


@pytest.mark.parametrize(("pack", "padded"), [("Pack N", "Option (12 V pad)"), ("Winter Pack", "Cold Pack (12 V pad)")])
def test_cells_that_only_name_a_package_and_offers_that_say_how_in_brackets_are_options(facts_of, pack, padded):
    rows = f"| Inverter 1,800 W | {pack} | standard |\n| Gray tank heated | {padded} | 12 V pad |\n"
    facts = facts_of(TABLE.format(no=pack, yes="standard", legend="").replace("| Heated", f"{rows}| Heated"), "t.md")
    for field in ("heated_floor", "inverter_w", "gray_tank_heat"):
        found = {(fact.model[-2:], fact.availability) for fact in facts if fact.field == field and not fact.rejected}
        assert found == {("19", "optional"), ("21", "standard")}


def test_a_remark_may_stand_behind_a_dash_and_its_meaning(facts_of):
    legend = "— not available. Thicknesses are those of the walls."
    facts = facts_of(TABLE.format(no="—", yes="standard", legend=legend), "table.md")
    found = {fact.model[-2:]: fact.availability for fact in facts if fact.field == "heated_floor"}
    assert found == {"19": "not_available", "21": "standard"}


SENTENCES = [
    ("–", "S", "S standard. O optional at extra cost. – not offered on this van. An empty field means that the line "
     "has no meaning for the van, mostly because it has something better. Tank sizes are nominal and gallons are those "
     "of the country where the van is sold. Rated figures are those on the plate; the larger van needs no other one, "
     "but ask, and keep the letter that you are sent. Weights are those of the lightest van that was weighed here, "
     "without its driver, its water and its bed. Prices are those of May, and they go up each May."),
    ("✗", "✓", "In the lists a tick ( ✓ ) means that it is in the price, a sum in pounds that it can be ordered, and a "
     "cross ( ✗ ) that it cannot be had on that van. All prices are those of May."),
    ("X", "S", "S standard, O extra cost, X not offered on this model. \"Rated down to\" is the outside temperature at "
     "which we will warrant the plumbing for ten hours, with the heater running and all doors shut."),
    ("–", "S", "S = in the price. Prices are in euros with 19 % of tax. “–” = not available for this model."),
    ("N/A", "●", "● fitted as standard\n\nN/A not available on this model"),
    ("–", "standard", "Where there is a dash, it cannot be had on that van. Prices are those of May."),
]  # fmt: skip


@pytest.mark.parametrize(("no", "yes", "legend"), SENTENCES)
def test_sentences_that_explain_signs_amid_others_are_a_legend(facts_of, no, yes, legend):
    facts = facts_of(TABLE.format(no=no, yes=yes, legend=legend), "table.md")
    for field in ("heated_floor", "gray_tank_heat"):
        found = {fact.model[-2:]: fact.availability for fact in facts if fact.field == field}
        assert found == {"19": "not_available", "21": "standard"}, field


@pytest.mark.parametrize(
    ("sign", "said"), [("n/a", "n/a means that the line does not apply."), ("n/a", "“n/a” means: not applicable here.")]
)
def test_a_sign_said_to_have_no_meaning_for_a_van_states_nothing_beside_prices(facts_of, sign, said):
    facts = facts_of(TABLE.format(no=sign, yes="£310", legend=said), "table.md")
    assert {fact.model[-2:]: fact.availability for fact in facts if fact.field == "heated_floor"} == {"21": "optional"}


def test_what_letters_mean_is_no_heading_of_letters_to_the_maker(facts_of):
    legend = "## What the letters mean\n\nS is explained here: S = standard, N = not offered."
    text = TABLE.format(no="N", yes="S", legend=legend)
    found = {fact.model[-2:]: fact.availability for fact in facts_of(text, "table.md") if fact.field == "heated_floor"}
    assert found == {"19": "not_available", "21": "standard"}


@pytest.mark.parametrize(
    "legend",
    [
        "S = standard  W = in the Winter Package ($1,890)  x = not available",
        "S = standard; W = part of the Cold Weather Package; x = not available",
        "S = standard  W = with the Winter Pack (from 1 890 €)  x = not available",
    ],
)
def test_what_a_sign_says_is_in_a_pack_is_an_option_whatever_the_pack_costs(facts_of, legend):
    text = (
        f"# Marrowfen Drift 2026\n\n{legend}\n\n| | Drift 19 | Drift 21 |\n|---|---|---|\n"
        "| Overall length | 5.90 m | 6.40 m |\n| GVM | 3500 kg | 4250 kg |\n| Fresh water tank | 90 L | 120 L |\n"
        "| Insulated gray tank | W | S |\n| Insulated water lines | x | W |\n"
    )
    told = {(f.field, f.model, f.availability) for f in facts_of(text, "drift.md") if f.field.endswith("insulated")}
    assert told == {
        ("gray_tank_insulated", "Drift 19", "optional"),
        ("gray_tank_insulated", "Drift 21", "standard"),
        ("water_lines_insulated", "Drift 19", "not_available"),
        ("water_lines_insulated", "Drift 21", "optional"),
    }


def test_a_sentence_amid_a_paragraph_explains_signs_and_the_rest_is_read(facts_of):
    legend = (
        "The binder in the glovebox says the same in more words, and so does whoever sold you the van. It is coded: "
        "S standard, O extra-cost option, "
        "P only in a package, N not available on this trim. Prices are suggested retail and leave out freight. "
        "Every Drift has a fresh tank of 30 gal."
    )
    facts = facts_of(TABLE.format(no="N", yes="S", legend=legend), "table.md")
    for field in ("heated_floor", "gray_tank_heat"):
        found = {fact.model[-2:]: fact.availability for fact in facts if fact.field == field}
        assert found == {"19": "not_available", "21": "standard"}, field
    assert {fact.model[-2:] for fact in facts if fact.field == "fresh_tank_l" and not fact.rejected} == {"19", "21"}


def test_numbered_sections_of_a_build_sheet_are_no_vans(vans_of):
    sheet = (
        "MARROWFEN VAN FACTORY      BUILD SHEET 7731\n\nMODEL ......... Hollow 20 LX\nMODEL YEAR .... 2026\n"
        "CHASSIS ....... Brannock Ferrow 350\nENGINE ........ gasoline, V6\nDRIVE ......... AWD\n\n"
        "MARKS:  [S] standard on this model    [ ] option, not ordered\n\n"
        "-- 100 DIMENSIONS AND WEIGHT -----------\n[S] 101 Length 6045 mm\n[S] 102 Width 2060 mm\n"
        "[S] 106 GVWR 4309 kg\n"
        "-- 200 PLUMBING ------------------------\n[S] 201 Fresh tank 91 L, inside\n[S] 202 Grey tank 72 L\n"
        "-- 300 SHELL ---------------------------\n[S] 301 Dual-pane windows\n[ ] 302 Heated floor\n"
    )
    assert {model for _, model, _ in vans_of(sheet, "sheet.txt")} == {"Hollow 20 LX"}
