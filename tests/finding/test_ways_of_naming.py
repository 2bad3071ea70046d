"""Where names of vans, ranges and makers stand on pages, and how vans are named."""

import pytest

TABLE = "| {corner} | {a} | {b} |\n|---|---|---|\n" + "".join(
    f"| {label} | {one} | {two} |\n"
    for label, one, two in (
        ("Length", "5990 mm", "6360 mm"), ("Width", "2050 mm", "2050 mm"), ("Height", "2650 mm", "2650 mm"),
        ("Fresh water tank", "90 L", "110 L"), ("Gray water tank", "80 L", "95 L"), ("Sleeps", "2", "3"),
    )
)  # fmt: skip
FOOT = "\nMarrowfen Ltd, 12 Quay Road, Hythe.\n"


@pytest.fixture
def names_of(read_file, tmp_path):
    """Give a function that reads a text and gives its vans' models and makers."""

    def read(text):
        path = tmp_path / "pages.md"
        path.write_text(text + FOOT, encoding="utf-8")
        vans = read_file(path).found.vans
        return sorted(van.model for van in vans), {van.maker for van in vans}

    return read


@pytest.mark.parametrize(
    "opening, corner, a, b, models",
    [
        ("# Camper vans 2026", "Wendrill range", "540", "600 Q", ["Wendrill 540", "Wendrill 600 Q"]),
        ("# Camper vans 2026", "Wendrill", "5.4", "6.0 Snow", ["Wendrill 5.4", "Wendrill 6.0 Snow"]),
        (
            "# Technical data\n\nThe Wendrill comes in two lengths: the 540 and the 600 Q.",
            "Model", "540", "600 Q", ["Wendrill 540", "Wendrill 600 Q"],
        ),
        (
            "# Technical data\n\nThere are the Solo and the Duo in the Wendrill range.",
            "", "Solo", "Duo", ["Wendrill Duo", "Wendrill Solo"],
        ),
        ("# Our vans 2026\n\nAlcove | Larder", "Models", "Alcove", "Larder", ["Alcove", "Larder"]),
        ("# Our vans 2026\n\nSolo | Duo", "Wendrill models", "Solo", "Duo", ["Wendrill Duo", "Wendrill Solo"]),
        ("# Our vans at a glance\n\nMY26", "Models", "Q54", "Q60", ["Q54", "Q60"]),
        ("# Our vans at a glance\n\nSeptember 2026", "September 2026", "QX5", "QX6", ["QX5", "QX6"]),
        ("# Wendrill\n\nMarrowfen Ltd, model year 2026", "", "540", "600", ["Wendrill 540", "Wendrill 600"]),
        ("# Wendrill 2026\n\n6 | 6 Winter", "", "6", "6 Winter", ["Wendrill 6", "Wendrill 6 Winter"]),
    ],
)  # fmt: skip
def test_vans_are_named_by_heads_and_by_what_names_their_range(names_of, opening, corner, a, b, models):
    found, makers = names_of(f"{opening}\n\n{TABLE.format(corner=corner, a=a, b=b)}")
    assert found == models
    assert makers == {"Marrowfen"}


@pytest.mark.parametrize(
    "line, maker",
    [
        ("M A R R O W F E N", "Marrowfen"),
        ("O R D W E L L C A M P E R V A N S", "Ordwell Campervans"),
        ("ORDWELL", "Ordwell"),
        ("by Ordwell", "Ordwell"),
    ],
)
def test_a_logo_in_capitals_or_single_letters_and_by_name_the_maker(read_file, tmp_path, line, maker):
    path = tmp_path / "pages.md"
    path.write_text(f"{line}\n\n# Wendrill 2026\n\n{TABLE.format(corner='', a='Wendrill 540', b='Wendrill 600')}")
    assert {van.maker for van in read_file(path).found.vans} == {maker}


@pytest.mark.parametrize("package", ["a Winter Pack will stretch", "our Frost Package stretches"])
def test_a_package_of_which_a_sentence_tells_is_no_range(names_of, package):
    opening = (
        f"# Solo, Duo and Larder: the 2026 brochure\n\nThe Solo and the Duo are for summer, though {package} it.\n\n"
    )
    assert names_of(opening + TABLE.format(corner="", a="Solo", b="Duo"))[0] == ["Duo", "Solo"]


def test_a_list_of_codes_in_running_text_names_the_vans_of_the_range(names_of):
    text = (
        "# Wendrill\n\nModel year 2026\n\n540 | 600 Q\n\nThe 540 is 5990 mm long and carries 90 L of fresh water. "
        "The 600 Q is 6360 mm long, sleeps 3 and carries 110 L of fresh water."
    )
    assert names_of(text)[0] == ["Wendrill 540", "Wendrill 600 Q"]


def test_a_line_of_common_words_names_no_range(names_of):
    text = f"# Vans\n\n## Daten und Maße\n\n## What is on which van\n\n{TABLE.format(corner='', a='Q54', b='Q60')}"
    assert names_of(text)[0] == ["Q54", "Q60"]


def test_the_trim_on_a_line_below_the_range_belongs_to_the_only_van(names_of):
    rows = "\n".join(f"- {row}" for row in ("Length: 5990 mm", "Width: 2050 mm", "Height: 2650 mm", "Sleeps: 2"))
    assert names_of(f"# Wendrill\n\nWendrill Solo\n\n{rows}")[0] == ["Wendrill Solo"]


@pytest.mark.parametrize(
    "opening, heads, models, maker",
    [
        ("# Ordwell\n\nWendrill\n\nSolo | Duo", ("Solo", "Duo"), ["Wendrill Duo", "Wendrill Solo"], "Ordwell"),
        ("# Ordwell\n\nWendrill specifications", ("Wendrill 540", "Wendrill 600"),
         ["Wendrill 540", "Wendrill 600"], "Ordwell"),
        ("# Ordwell\n\nSpecifications 2026", ("TK 540 E", "TK 600 L"), ["TK 540 E", "TK 600 L"], "Ordwell"),
        ("# Ordwell\n\n## WHAT IS ON WHICH VAN", ("Long Alcove", "Amber Larder"),
         ["Amber Larder", "Long Alcove"], "Ordwell"),
        ("# Ordwell\n\nEvery Wendrill is a camper for all seasons.", ("Wendrill 540", "Wendrill 600"),
         ["Wendrill 540", "Wendrill 600"], "Ordwell"),
    ],
)  # fmt: skip
def test_a_house_and_its_range_on_lines_of_their_own_are_told_apart(read_file, tmp_path, opening, heads, models, maker):
    path = tmp_path / "pages.md"
    a, b = heads
    path.write_text(f"{opening}\n\n{TABLE.format(corner='', a=a, b=b)}", encoding="utf-8")
    vans = read_file(path).found.vans
    assert sorted(van.model for van in vans) == models
    assert {van.maker for van in vans} == {maker}


LIST = "\n".join(("Length: 5990 mm", "Width: 2050 mm", "Height: 2650 mm", "Sleeps: 2", "Fresh water tank: 90 L"))


@pytest.mark.parametrize(
    "opening, model",
    [
        ("Our vans at a glance\n\n590", "590"),
        ("Camper vans by Marrowfen\n\nTK 590 E", "TK 590 E"),
        ("The Wendrill\n\nWendrill specifications\n\nWendrill Duo XL", "Wendrill Duo XL"),
    ],
)
def test_a_document_of_one_van_names_it_on_a_line_near_its_title(names_of, opening, model):
    assert names_of(f"{opening}\n\n{LIST}\n")[0] == [model]


def test_a_list_of_the_data_of_one_van_describes_it_though_it_is_named_once(names_of):
    data = (
        "Driven wheels: rear", "Seats / berths: 4 / 2", "Battery: 280 Ah gel, 12 V", "Solar: 2 × 150 W",
        "Fresh tank location: inside", "Gray tank insulated: yes", "Heater draw: 22 W", "Inverter: none",
        "Water lines insulated: no", "Insulation: sheep's wool, 1.5 in", "Winterizing bypass: yes",
    )  # fmt: skip
    found, _ = names_of("# Wendrill\n\nby Marrowfen Wendrill Solo\n\n" + "\n".join(f"- {line}" for line in data))
    assert len(found) == 1 and found[0].startswith("Wendrill")


def test_the_number_of_a_page_or_a_year_alone_names_no_van(names_of):
    for line in ("3", "2026"):
        assert names_of(f"Our vans at a glance\n\n{line}\n\n{LIST}\n")[0] in ([], ["Marrowfen"])


@pytest.mark.parametrize(
    "imprint, maker",
    [("Ordwell SA, Ostbruck.", "Ordwell"), ("14 Fuller Lane, Adelaide, SA 5000.", ""), ("TK NV 540 TK NV 600", "")],
)
def test_short_legal_forms_are_told_from_states_and_codes(read_file, tmp_path, imprint, maker):
    path = tmp_path / "pages.md"
    path.write_text(f"# Specifications\n\n{TABLE.format(corner='', a='TK 540', b='TK 600')}\n{imprint}\n", "utf-8")
    assert {van.maker for van in read_file(path).found.vans} == {maker}


def test_a_van_of_one_word_that_running_text_describes_is_found(names_of):
    text = (
        "# Our vans at a glance\n\nThimble\n\nYou asked about the Thimble; here is what it has.\n\n"
        "The Thimble is 2.69 m high and rides on a wheelbase of 4325 mm. It sleeps 2 and has a GVWR of 3850 kg.\n\n"
        "The Thimble carries 90 litres of fresh water and has a cassette toilet.\n"
    )
    assert names_of(text)[0] == ["Thimble"]


def test_the_base_vehicle_in_a_list_of_two_is_no_van(names_of):
    text = (
        "# Our vans\n\nThe Amber Hearth stands on the Bruska 35 L2H2 and the Quiet Spindle on the Bruska 35 L3H2.\n\n"
        + TABLE.format(corner="", a="Amber Hearth", b="Quiet Spindle")
    )
    assert names_of(text)[0] == ["Amber Hearth", "Quiet Spindle"]


def test_heads_that_come_again_half_way_down_name_other_vans(read_file, tmp_path):
    rows = "".join(
        f"<tr><td>{corner}</td><td>{a}</td><td>{b}</td></tr>"
        for one, two in (("590 Cove", "590 Ridge"), ("590 Vale", "590 Shore"))
        for corner, a, b in (
            ("Specification", one, two), ("Length", "5990 mm", "6360 mm"), ("Width", "2050 mm", "2050 mm"),
            ("Height", "2650 mm", "2650 mm"), ("Fresh water tank", "90 L", "110 L"), ("Sleeps", "2", "3"),
        )
    )  # fmt: skip
    path = tmp_path / "page.html"
    path.write_text(f"<h1>Marrowfen</h1><p>The Wendrill 2026</p><table>{rows}</table><p>{FOOT}</p>", "utf-8")
    assert sorted(van.model for van in read_file(path).found.vans) == [
        "Wendrill 590 Cove", "Wendrill 590 Ridge", "Wendrill 590 Shore", "Wendrill 590 Vale",
    ]  # fmt: skip


@pytest.mark.parametrize(
    "opening, corner, heads, models",
    [
        ("# Ordwell\n\nSolo | Solo Plus\n\nThe Wendrill comes in two sizes: the Solo and the Solo Plus.", "",
         ("Solo", "Solo Plus"), ["Wendrill Solo", "Wendrill Solo Plus"]),
        ("# Ordwell\n\nPale Wendrill, model year 2026", "", ("540", "600"), ["Pale Wendrill 540", "Pale Wendrill 600"]),
        ("# Ordwell\n\nPale Wendrill\n\nModel year 2026", "", ("540", "600"),
         ["Pale Wendrill 540", "Pale Wendrill 600"]),
        ("# Our vans\n\nMY2026", "Model", ("TK 540", "TK 600"), ["TK 540", "TK 600"]),
        ("# Ordwell\n\nOur vans 2026\n\n540 · 600", "Wendrill", ("540", "600"), ["Wendrill 540", "Wendrill 600"]),
        ("# Wendrill 19 build sheet, MY2026", "Item", ("Solo", "Duo"), ["Wendrill 19 Duo", "Wendrill 19 Solo"]),
    ],
)  # fmt: skip
def test_the_range_of_trims_and_codes_is_the_name_that_is_none_of_them(names_of, opening, corner, heads, models):
    found, _ = names_of(f"{opening}\n\n{TABLE.format(corner=corner, a=heads[0], b=heads[1])}")
    assert found == models


def test_vans_are_named_by_headings_of_the_rank_of_their_groups(names_of):
    body = "### Size\n\nLength: 5990 mm\n\nHeight: 2650 mm\n\nSleeps: 2\n\n### Water\n\nFresh water tank: 90 L\n\n"
    text = "# The Wendrill\n\n" + "".join(f"### Wendrill {code}\n\n{body}" for code in ("680 P", "680 D"))
    assert names_of(text)[0] == ["Wendrill 680 D", "Wendrill 680 P"]


@pytest.mark.parametrize("title", ["marrowfen_2026_range.html", "Fens prices final.xlsx"])
def test_a_title_that_is_the_name_of_a_file_is_no_range(read_file, tmp_path, title):
    rows = "".join(
        f"<tr><td>{label}</td><td>{one}</td><td>{two}</td></tr>"
        for label, one, two in (
            ("", "Lapwing", "Curlew"), ("Length", "5990 mm", "6360 mm"), ("Width", "2050 mm", "2050 mm"),
            ("Height", "2650 mm", "2650 mm"), ("Fresh water tank", "90 L", "110 L"), ("Sleeps", "2", "3"),
        )
    )  # fmt: skip
    path = tmp_path / "page.html"
    page = f"<html><head><title>{title}</title></head><body><p>MARROWFEN</p><h1>Lapwing</h1><h1>Curlew</h1>"
    path.write_text(f"{page}<p>Two vans for 2026</p><p>{FOOT}</p><table>{rows}</table></body></html>", "utf-8")
    assert sorted(van.model for van in read_file(path).found.vans) == ["Curlew", "Lapwing"]


def test_letters_behind_the_title_that_the_text_uses_alone_name_two_vans(names_of):
    text = (
        "# Wendrill 540\n\nModel year 2026\n\nThe Wendrill 540 C is for the coast, the Wendrill 540 CX for the hills. "
        "Prices start at $99,000 (C) and $120,000 (CX).\n\n- Length 5990 mm\n- Height 2650 mm\n- Sleeps 2\n"
        "- Fresh water tank 90 L on the C and 120 L on the CX\n- Inverter 2000 W\n"
    )
    assert names_of(text)[0] == ["Wendrill 540 C", "Wendrill 540 CX"]


def test_a_floorplan_that_could_be_watts_heads_a_column_of_many_things(names_of):
    more = (
        "| GVWR | 3500 kg | 4000 kg |\n| Wheelbase | 3.45 m | 4.04 m |\n| Solar | 100 W | 200 W |\n"
        "| Toilet | cassette | dry |\n| Heater | diesel | diesel |\n| Inverter | 1000 W | 2000 W |\n"
        "| Battery | 100 Ah | 200 Ah |\n| Drive | rear | all |\n"
    )
    found, _ = names_of(f"# Wendrill 2026\n\n{TABLE.format(corner='', a='21 K', b='23 W')}{more}")
    assert found == ["Wendrill 21 K", "Wendrill 23 W"]


def test_a_noun_with_its_article_is_no_range_where_all_nouns_have_capitals(names_of):
    rows = (("Länge", "5990 mm"), ("Frischwassertank", "90 l"), ("Abwassertank", "80 l"), ("Schlafplätze", "2"),
            ("Radstand", "4035 mm"))  # fmt: skip
    table = "| | Q5 | Q6 |\n|---|---|---|\n" + "".join(f"| {a} | {b} | {b} |\n" for a, b in rows)
    told = "Im Frost steht er in der Scheune. Hinter der Scheune fahren der Q5 und der Q6 weiter."
    assert names_of(f"# Wendrill\n\nKatalog 2026\n\n{told}\n\n{table}")[0] == ["Wendrill Q5", "Wendrill Q6"]


def test_a_name_that_begins_like_a_word_for_stock_is_a_name(names_of):
    data = {"Weights": "Base van: Kelmar Cargo 2500\n- GVWR: 8,900 lb", "Water systems": "Fresh water: 20 gal",
            "Heat": "Heater: propane", "Power": "Inverter: 1000 W", "Sleeping": "Sleeps: 2"}  # fmt: skip
    text = "".join(f"### {head}\n\n- {lines}\n\n" for head, lines in data.items())
    assert names_of(f"# Marrowfen\n\nVinter 2026\n\nVinter 23 ST\n\n## The figures\n\n{text}")[0] == ["Vinter 23 ST"]


@pytest.mark.parametrize("corner", ["", "Specification"])
def test_names_in_metres_stand_below_the_row_of_base_vehicles(read_file, tmp_path, corner):
    rows = (("Base vehicle", "Kelmar 30", "Kelmar 35", "Kelmar 35"), ("Length", "5.41 m", "6.02 m", "6.56 m"),
            ("Height", "2.70 m", "2.75 m", "2.80 m"), ("GVWR", "3300 kg", "3500 kg", "4000 kg"),
            ("Sleeps", "2", "2", "3"), ("Fresh water tank", "90 L", "110 L", "130 L"),
            ("Gray water tank", "80 L", "95 L", "95 L"), ("Inverter", "1000 W", "1000 W", "2000 W"),
            ("Heater", "diesel", "diesel", "propane"), ("Toilet", "cassette", "dry", "cassette"))  # fmt: skip
    heads = "<tr><th>Base vehicle</th><th>Kelmar 30</th><th colspan=2>Kelmar 35</th></tr>"
    heads += f"<tr><th>{corner}</th><th>5.4 Shore</th><th>6.0</th><th>6.5 Ridge</th></tr>"
    body = "".join(f"<tr>{''.join(f'<td>{cell}</td>' for cell in row)}</tr>" for row in rows)
    path = tmp_path / "page.html"
    path.write_text(f"<h1>Wendrill 2026</h1><table>{heads}{body}</table><p>{FOOT}</p>", "utf-8")
    found = read_file(path).found
    assert {van.model for van in found.vans} == {"Wendrill 5.4 Shore", "Wendrill 6.0", "Wendrill 6.5 Ridge"}
    tanks = {f.model.split(" ", 1)[1]: f.value for f in found.facts if f.field == "fresh_tank_l" and not f.rejected}
    assert tanks == {"5.4 Shore": 90, "6.0": 110, "6.5 Ridge": 130}


def test_two_ranges_in_the_title_are_no_range_of_their_vans(names_of):
    found, _ = names_of(
        f"# Wendrill and Ordwell 2026\n\n{TABLE.format(corner='', a='Wendrill 540', b='Ordwell 600 L')}"
    )
    assert found == ["Ordwell 600 L", "Wendrill 540"]


def test_the_name_beside_a_word_for_ranges_in_the_title_is_the_range_and_no_importer_the_maker(read_file, tmp_path):
    rows = (("Longueur", "5410 mm", "5990 mm"), ("Hauteur", "2580 mm", "2650 mm"), ("Couchages", "2", "3"),
            ("Eau propre", "85 l", "100 l"), ("PTAC", "3300 kg", "3500 kg"))  # fmt: skip
    table = "| Référence | 541 | 599 |\n|---|---|---|\n" + "".join(f"| {' | '.join(row)} |\n" for row in rows)
    opening = "# Ordwell série Wendrill – fourgons\n\nGrand Large, importateur exclusif – tarif 2026\n\n"
    path = tmp_path / "tarif.md"
    path.write_text(f"{opening}{table}\nGrand Large SARL, 12 quai Sud, Hythe.\n", encoding="utf-8")
    vans = read_file(path).found.vans
    assert {(van.maker, van.model) for van in vans} == {("Ordwell", "Wendrill 541"), ("Ordwell", "Wendrill 599")}


def test_columns_of_two_systems_of_units_are_no_vans(read_file, tmp_path):
    rows = (("Longueur", "20 pi 11 po", "6375 mm"), ("Hauteur", "9 pi 2 po", "2794 mm"),
            ("Empattement", "159 po", "4039 mm"), ("Eau douce", "26 gal US", "98 l"))  # fmt: skip
    body = "".join(f"| {' | '.join(row)} |\n" for row in rows)
    path = tmp_path / "fiche.md"
    path.write_text(
        f"# Wendrill 21\n\n| | Mesures américaines | Mesures métriques |\n|---|---|---|\n{body}{FOOT}", "utf-8"
    )
    assert [van.model for van in read_file(path).found.vans] == ["Wendrill 21"]


def test_who_sent_a_letter_made_the_van_where_its_name_says_so(read_file, tmp_path):
    path = tmp_path / "letter.txt"
    path.write_text(
        "De : Atelier Ordwell <bonjour@ordwell.example>\nObjet : Re: votre fourgon Wendrill\n\nBonjour,\n\n"
        "La Wendrill mesure 5,98 m de long, 2,05 m de large et 2,75 m de haut. Réservoir d'eau propre : 90 l.\n"
        "PTAC : 3 500 kg. La Wendrill a deux couchages et un panneau solaire de 200 W.\n",
        "utf-8",
    )
    assert [(van.maker, van.model) for van in read_file(path).found.vans] == [("Atelier Ordwell", "Wendrill")]


def test_corners_that_differ_from_table_to_table_are_headings_and_no_range(names_of):
    other = "| HEATING | Alcove | Larder |\n|---|---|---|\n| Heater | propane | diesel |\n| Heated floor | no | yes |\n"
    text = f"# Retail prices 2026\n\n{TABLE.format(corner='ELECTRICAL', a='Alcove', b='Larder')}\n{other}"
    assert names_of(text)[0] == ["Alcove", "Larder"]


def test_a_line_that_lists_ranges_lists_no_vans(names_of):
    rows = (("Länge", "5,41 m", "5,99 m"), ("Frischwassertank", "80 l", "105 l"), ("Abwassertank", "70 l", "90 l"),
            ("Schlafplätze", "2", "3"))  # fmt: skip
    text = "# Preisliste 2026\n\nBaureihe Wendrill · Baureihe Ordwell\n\n"
    for series, codes in (("Wendrill", ("541", "599 E")), ("Ordwell", ("636 Q", "680"))):
        text += f"## Baureihe {series}\n\n| | {' | '.join(codes)} |\n|---|---|---|\n"
        text += "".join(f"| {' | '.join(row)} |\n" for row in rows) + "\n"
    assert names_of(text)[0] == ["Ordwell 636 Q", "Ordwell 680", "Wendrill 541", "Wendrill 599 E"]


@pytest.mark.parametrize(
    "title, one, two",
    [
        ("# Wendrill 20\n\nTwo trims: Base Camp and High Camp", "Base Camp", "High Camp"),
        ("# The Wendrill 20 in two trims: Basecamp and Overwinter", "Basecamp", "Overwinter"),
    ],
)
def test_trims_of_which_a_line_says_that_it_lists_them_are_vans_whatever_words_they_are(names_of, title, one, two):
    text = f"{title}\n\nMY2026\n\nThe Wendrill 20 is one van. {one} is for May, {two} for us.\n\n"
    data = f"- Length: 20 ft\n- GVWR: 9,350 lb\n- Sleeps: 2\n- Rear-wheel drive on {one}, all-wheel on {two}\n"
    assert names_of(text + data)[0] == [f"Wendrill 20 {one}", f"Wendrill 20 {two}"]


def test_a_german_sentence_that_opens_with_the_range_names_it(names_of):
    rows = (("Länge", "5990 mm"), ("Frischwassertank", "90 l"), ("Abwassertank", "80 l"), ("Schlafplätze", "2"))
    table = "| | 590 Q | 630 N |\n|---|---|---|\n" + "".join(f"| {a} | {b} | {b} |\n" for a, b in rows)
    told = "Den Wendrill gibt es in zwei Größen: der 590 Q und der 630 N."
    assert names_of(f"# Technische Daten\n\n{told}\n\n{table}")[0] == ["Wendrill 590 Q", "Wendrill 630 N"]


def test_the_market_for_which_a_guide_is_printed_names_no_van(names_of):
    text = "# Marrowfen\n\nQ5 Q6\n\nCampervans, MY2026. Specification guide for the United Kingdom and Ireland.\n\n"
    told = "Prices begin at £68,450 (Q5) and £74,995 (Q6).\n\n"
    assert names_of(f"{text}{told}{TABLE.format(corner='', a='Q5', b='Q6')}")[0] == ["Q5", "Q6"]


def test_the_heading_of_the_first_group_is_no_part_of_the_vans_above_it(names_of):
    body = "Length: 5990 mm\n\nHeight: 2650 mm\n\nSleeps: 2\n\nFresh water tank: 90 L\n\n"
    text = "# Wendrill\n\nWendrill, model year 2026\n\n" + "".join(
        f"## Wendrill 5 {trim} Vehicle\n\n{body}" for trim in ("Cove", "Fell")
    )
    assert names_of(text)[0] == ["Wendrill 5 Cove", "Wendrill 5 Fell"]


def test_headings_of_groups_are_ranges_where_a_text_sets_them_before_the_codes_below(read_file, tmp_path):
    heads = ("Model", "Chassis", "Length (in)", "GVWR (lb)", "Sleeps", "Fresh water (gal)", "Solar (W)")
    vans = {"WENDRILL": (("20 S", "2"), ("22 L", "3")), "ORDWELL": (("D24", "4"),)}
    rows = "<tr>" + "".join(f"<th>{head}</th>" for head in heads) + "</tr>"
    for group, members in vans.items():
        rows += f'<tr><td colspan="7"><b>{group}</b></td></tr>'
        for code, sleeps in members:
            cells = (code, "Kelmar 250", "237", "9,000", sleeps, "24", "200")
            rows += f"<tr>{''.join(f'<td>{cell}</td>' for cell in cells)}</tr>"
    told = "Pick the Wendrill 20 S if you sleep near trees. The Ordwell D24 carries no propane at all."
    path = tmp_path / "lineup.html"
    path.write_text(f"<h1>Wendrill &amp; Ordwell</h1><table>{rows}</table><p>{told}</p><p>{FOOT}</p>", "utf-8")
    found = read_file(path).found
    assert {van.model for van in found.vans} == {"Wendrill 20 S", "Wendrill 22 L", "Ordwell D24"}
    sleeps = {f.model: f.value for f in found.facts if f.field == "sleeps" and not f.rejected}
    assert sleeps == {"Wendrill 20 S": 2, "Wendrill 22 L": 3, "Ordwell D24": 4}


def test_heads_of_two_ranges_keep_theirs_though_the_title_was_taken_for_one(names_of):
    rows = "".join(
        f"| {label} | {one} | {one} | {two} | {two} |\n"
        for label, one, two in (("Length", "5410 mm", "6360 mm"), ("Fresh water tank", "70 L", "110 L"),
                                ("Gray water tank", "60 L", "95 L"), ("Sleeps", "2", "3"))
    )  # fmt: skip
    text = (
        "# MARROWFEN\n\n## The 2026 range: Marrowfen Pelling and Marrowfen Vantrey\n\nThe Pelling is short. A Pelling "
        "is what you buy for the street, and the Vantrey is for the hills.\n\n"
        f"| | Pelling 18 | Pelling 21 | Vantrey S | Vantrey L |\n|---|---|---|---|---|\n{rows}"
    )
    assert names_of(text)[0] == ["Pelling 18", "Pelling 21", "Vantrey L", "Vantrey S"]


@pytest.mark.parametrize(
    "opening",
    [
        "# Marrowfen\n\n## Wendrill 21 Scholar and Wendrill 21 Captain\n\nOrder guide",
        "# Marrowfen\n\nPrice guide 2026\n\nThe Wendrill 21 Scholar is for two, the Wendrill 21 Captain for three.",
        "# Wendrill 21 Scholar / Wendrill 21 Captain\n\nMarrowfen price guide 2026",
        "# Marrowfen\n\n| Model | Price |\n|---|---|\n| Wendrill 21 Scholar | $84,000 |\n"
        "| Wendrill 21 Captain | $99,000 |",
    ],
)  # fmt: skip
def test_trims_over_columns_have_the_name_and_figure_that_the_pages_set_before_each(names_of, opening):
    found, makers = names_of(f"{opening}\n\n{TABLE.format(corner='', a='Scholar', b='Captain')}")
    assert found == ["Wendrill 21 Captain", "Wendrill 21 Scholar"]
    assert makers == {"Marrowfen"}


@pytest.mark.parametrize(
    "opening, models",
    [
        ("## The Wildflower Collection 2026\n\nClover | Yarrow\n\nEvery van in the wildflower collection is made by "
         "two people. Clover is our smallest, and Yarrow the longer one.", ["Clover", "Yarrow"]),
        ("## The Wildflower Collection 2026\n\nClover | Yarrow\n\nEvery van in the Wildflower collection is made by "
         "two people. Clover is our smallest, and Yarrow the longer one.", ["Wildflower Clover", "Wildflower Yarrow"]),
    ],
)  # fmt: skip
def test_a_word_for_the_range_that_the_text_writes_small_is_no_part_of_names(names_of, opening, models):
    assert names_of(f"# Marrowfen\n\n{opening}\n\n{TABLE.format(corner='Model', a='Clover', b='Yarrow')}")[0] == models


def test_a_range_that_the_corner_says_it_is_may_hold_a_word_of_labels(names_of):
    found, _ = names_of(
        "# Nos fourgons 2027\n\n600, 640\n\n| Gamme Long Wendrill | 600 | 640 |\n|---|---|---|\n"
        "| Longueur | 5,99 m | 6,36 m |\n| Largeur | 2,05 m | 2,05 m |\n| Couchages | 2 | 3 |\n"
        "| Eau propre | 100 l | 120 l |\n| Eaux usées | 90 l | 100 l |\n\nMarrowfen SARL, Hythe.\n"
    )
    assert found == ["Long Wendrill 600", "Long Wendrill 640"]


def test_a_slogan_with_an_and_leaves_the_line_of_names_below_it(names_of):
    text = (
        "# Come in and shut the door\n\nMarrowfen Vans\n\nModels 2027\n\nWendrill · Larch\n\n"
        "The Wendrill has rear-wheel drive, the Larch has front-wheel drive. The Wendrill sleeps 2, the Larch sleeps "
        "3. The Wendrill has a gray tank of 84 l, the Larch has a gray tank of 89 l. The Wendrill is 5.99 m long, the "
        "Larch is 6.36 m long. The Wendrill has a GVM of 3500 kg, the Larch has a GVM of 4100 kg.\n"
    )
    assert names_of(text)[0] == ["Larch", "Wendrill"]
