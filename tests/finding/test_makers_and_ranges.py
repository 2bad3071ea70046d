"""Whose vans a document describes, and of which range, where neither stands in a title of its own."""

import pytest

from tests.reading.drawn import Page

FIGURES = "- Length: 19 ft 4 in\n- GVWR: 9,070 lb\n- Sleeps: 2\n- Fresh water: 22 gallons\n- Gray water: 15 gallons\n"
MORE = "- Solar: 320 W\n- Furnace: propane, 16,000 BTU\n- Battery: 200 Ah lithium\n"
GERMAN = (
    "- Länge: 5,99 m\n- Gesamtgewicht: 3.500 kg\n- Schlafplätze: 2\n- Frischwasser: 100 l\n"
    "- Abwasser: 90 l\n- Solaranlage: 110 W\n- Bordbatterie: 95 Ah AGM\n"
)
FRENCH = (
    "- Longueur : 5,99 m\n- PTAC : 3 500 kg\n- Couchages : 2\n- Eau propre : 100 l\n- Eaux usées : 90 l\n"
    "- Panneau solaire : 110 W\n- Batterie auxiliaire : 95 Ah AGM\n"
)


@pytest.mark.parametrize(
    "sentence, maker",
    [
        ("Every van on this page is built by hand by Holt & Marrow in an old mill.", "Holt & Marrow"),
        ("Holt Marrow Vans is nine people and a very patient dog.", "Holt Marrow Vans"),
        ("Marrowfen builds camper vans in Hythe, and nothing else.", "Marrowfen"),
    ],
)
def test_sentence_says_who_builds_the_vans(vans_of, sentence, maker):
    assert vans_of(f"# Drift 21\n\n{sentence}\n\n{FIGURES}{MORE}") == {(maker, "Drift 21", None)}


def test_german_and_french_sentences_say_who_builds_the_vans(vans_of):
    german = "# Drift 21\n\nDer Marrowfener Wagenbau baut seit 1987 kurze Campingbusse.\n\n"
    assert vans_of(german + GERMAN) == {("Marrowfener Wagenbau", "Drift 21", None)}
    french = "# Drift 21\n\nMarrowfen est un constructeur de fourgons installé à Hythe.\n\n"
    assert vans_of(french + FRENCH) == {("Marrowfen", "Drift 21", None)}


@pytest.mark.parametrize("sentence", ["We build two vans and like it so.", "Figures are from the maker of the base."])
def test_pronouns_and_common_words_are_no_makers(vans_of, sentence):
    assert vans_of(f"# Drift 21\n\n{sentence}\n\n{FIGURES}{MORE}") == {("", "Drift 21", None)}


def test_a_name_before_an_address_in_the_last_line_is_the_makers(vans_of):
    foot = "\nHolt & Marrow · 12 Quay Road, Hythe\n"
    assert vans_of(f"# The Drift III\n\n{FIGURES}{MORE}{foot}") == {("Holt & Marrow", "Drift III", None)}


def test_a_bold_head_that_opens_a_paragraph_names_a_van(vans_of):
    text = "# Two vans for the high moor\n\n"
    for name in ("Drift 19", "Drift 21 Work & Roam"):
        text += f"**{name}.** One for a month away, with a third bed.\n\n{FIGURES}{MORE}\n"
    assert {model for _, model, _ in vans_of(text)} == {"Drift 19", "Drift 21 Work & Roam"}


def test_headings_name_ranges_above_codes(vans_of):
    text = "PRESS SHEET\nTwo ranges for model year 2026\n\n"
    for heading, code in (("THE DRIFT RANGE", "Model 19"), ("", "Model 21"), ("THE HOLLOW RANGE", "Model 21")):
        text += f"{heading}\nFor those who go.\n\n" if heading else ""
        text += code + "\n" + (FIGURES + MORE).replace("- ", "  ") + "\n"
    assert {model.casefold() for _, model, _ in vans_of(text, "press.txt")} == {"drift 19", "drift 21", "hollow 21"}


def test_a_row_says_which_vans_stand_below_prices_or_lengths(vans_of):
    text = (
        "# Our Drift\n\n| | 5,41 m | 5,99 m | 6,36 m |\n|---|---|---|---|\n"
        "| Grundriss | 540 Q | 600 Q | 640 L |\n| Länge | 5.410 mm | 5.990 mm | 6.360 mm |\n"
        "| Gesamtgewicht | 3.300 kg | 3.500 kg | 4.250 kg |\n| Frischwasser | 90 l | 100 l | 110 l |\n"
        "| Abwasser | 80 l | 90 l | 90 l |\n"
    ).replace("Our Drift", "Der Drift im Modelljahr 2026")
    assert vans_of(text) == {("", f"Drift {code}", 2026) for code in ("540 Q", "600 Q", "640 L")}


def test_trims_stand_in_a_line_with_points_between_them(vans_of):
    text = (
        f"# Marrowfen Drift 22\n\nReed · Ice\n\nReed is for summer and Ice for winter.\n\n{FIGURES}{MORE}\n"
        "Reed has one panel. Ice has two panels. Reed sleeps two, Ice sleeps two.\n"
    )
    assert {model.split()[-1] for _, model, _ in vans_of(text)} == {"Reed", "Ice"}


def test_rows_of_codes_stand_under_a_row_that_names_their_range(vans_of):
    heads = ["Van", "Length", "Height", "GVWR", "Fresh water", "Gray water", "Solar"]
    rows = [
        ["DUNNOCK SERIES small, for one or two"],
        ["160", "5.41 m", "2.59 m", "3,300 kg", "70 l", "60 l", "100 W"],
        ["160 AWD", "5.41 m", "2.65 m", "3,500 kg", "70 l", "60 l", "200 W"],
        ["PARTRIDGE SERIES"],
        ["180", "5.99 m", "2.65 m", "3,500 kg", "90 l", "80 l", "200 W"],
        ["210", "6.36 m", "2.79 m", "4,250 kg", "110 l", "90 l", "300 W"],
    ]
    cells = [
        f"<td colspan='7'><b>{row[0]}</b></td>" if len(row) == 1 else "".join(f"<td>{cell}</td>" for cell in row)
        for row in rows
    ]
    table = "<tr>" + "".join(f"<th>{head}</th>" for head in heads) + "</tr>" + "".join(f"<tr>{c}</tr>" for c in cells)
    story = "<h1>The 2026 fleet of Hallbeck Touring</h1><p>The Dunnock came first, the Partridge is newer.</p>"
    found = {model for _, model, _ in vans_of(f"{story}<table>{table}</table>", "fleet.html")}
    assert found == {"Dunnock 160", "Dunnock 160 AWD", "Partridge 180", "Partridge 210"}


@pytest.mark.parametrize(
    ("printed", "maker"),
    [
        (
            "Holt Marrow Van Company Ltd., 9 Winch Road, Hythe. Holt Marrow may change its vans.",
            "Holt Marrow Van Company",
        ),
        ("Holt Marrow Van Company, Inc., 9 Winch Road, Hythe.", "Holt Marrow Van Company"),
        ("Holt Marrow Vans, Inc., 9 Winch Road, Hythe.", "Holt Marrow Vans"),
        ("Holt Marrow Coach Co. LLC, 9 Winch Road, Hythe.", "Holt Marrow Coach"),
        ("Marrowfen Builders of Campers Ltd, 9 Winch Road, Hythe.", "Marrowfen Builders of Campers"),
        ("Marrowfen Builders of Campers Ltd, 9 Winch Road, Hythe. Marrowfen is a small yard.", "Marrowfen"),
        ("Three Vans by Marrowfen Ltd, 9 Winch Road, Hythe.", "Marrowfen"),
    ],
)
def test_of_two_legal_forms_the_first_is_part_of_the_name(vans_of, printed, maker):
    assert vans_of(f"# Drift 21\n\n{FIGURES}{MORE}\n{printed}\n") == {(maker, "Drift 21", None)}


@pytest.mark.parametrize(
    "top",
    [
        "Marrowfen Leisure Vehicles Ltd, Unit 3, Hythe. Every Marrowfen is built to order.",
        "The Marrowfen vans for 2027\n\nMarrowfen Van Works, Inc. · Pier 6, Hythe",
    ],
)
def test_a_company_is_called_as_it_calls_itself_not_by_its_words_for_the_trade(vans_of, top):
    assert {maker for maker, _, _ in vans_of(f"{top}\n\n# Drift 21\n\n{FIGURES}{MORE}")} == {"Marrowfen"}


def test_vans_of_which_a_sentence_speaks_are_no_company(vans_of):
    said = "The Drift vans are three-season campers and we say so."
    found = vans_of(f"# Drift 19 and Drift 21\n\n{said}\n\n## Drift 19\n\n{FIGURES}\n## Drift 21\n\n{FIGURES}{MORE}")
    assert {maker for maker, _, _ in found} == {""}


def test_who_made_the_base_vehicle_is_not_the_maker(vans_of):
    rows = "## Chassis\n\n| Make | Bexton Portage 350 |\n|---|---|\n| Engine | 3.0 L diesel |\n| Drive | Rear |\n"
    assert ("Bexton Portage 350", "Drift 21", 2026) not in vans_of(f"# Drift 21, model year 2026\n\n{rows}\n{FIGURES}")


def test_the_description_of_a_used_van_is_no_name(vans_of):
    text = (
        "HARBOR CAMPER SALES\nStock no. N-2268\n\n2022 Marrow Drift 19T - used camper van\n"
        "Price: $84,500   Miles: 41,870   First registered: March 2023\n\nDescription\n-----------\n"
        "One owner, always garaged. The Drift 19T has twin beds.\n\n"
    )
    assert {model for _, model, _ in vans_of(text + FIGURES + MORE, "listing.txt")} == {"Drift 19T"}


def test_a_line_of_vans_that_breaks_within_the_last_name(vans_of):
    text = (
        "# Marrow\n\n## Drift\n\nDrift 21 Larch | Drift 21 Fell | Drift 21\n\n## Dune\n\nModel year 2026\n\n"
        "| | Drift 21 Larch | Drift 21 Fell | Drift 21 Dune |\n|---|---|---|---|\n"
        "| Length | 19 ft | 20 ft | 21 ft |\n| GVWR | 9,070 lb | 9,070 lb | 9,350 lb |\n| Sleeps | 2 | 2 | 3 |\n"
    )
    assert {model for _, model, _ in vans_of(text)} == {"Drift 21 Larch", "Drift 21 Fell", "Drift 21 Dune"}


def test_a_sign_of_a_legend_is_no_legal_form(vans_of):
    legend = "S = Serie   SA = Sonderausstattung gegen Aufpreis   – = nicht erhältlich"
    table = "| | Drift 540 | Drift 600 |\n|---|---|---|\n| Länge | 5410 mm | 5990 mm |\n| Höhe | 2650 mm | 2650 mm |\n"
    rows = "| Radstand | 3450 mm | 4035 mm |\n| Frischwasser | 90 l | 100 l |\n| Solarmodul 110 W | SA | S |\n"
    text = (
        f"MARROWFEN REISEMOBILE\n\n# Drift\n\nModelljahr 2027\n\n{table}{rows}\n{legend}\n\nMarrowfen Reisemobile GmbH"
    )
    assert {maker for maker, _, _ in vans_of(text)} == {"Marrowfen Reisemobile"}


@pytest.mark.parametrize(
    ("said", "figures"),
    [
        ("two kinds this year, all built by Ossvane in Hythe.", FIGURES + MORE),
        ("zwei Wagen, alle gebaut von Ossvane in Hythe.", GERMAN),
        ("deux fourgons, tous construits par Ossvane, à Hythe.", FRENCH),
    ],
)
def test_who_built_them_all_is_the_maker_and_not_who_hires_them_out(vans_of, said, figures):
    text = f"HYTHE CAMPER HIRE\n\n{said}\n\nDrift 21\n\n{figures}"
    assert {maker for maker, _, _ in vans_of(text, "fleet.txt")} == {"Ossvane"}


@pytest.mark.parametrize("founder", ["Edda", "A.", "Grandmother"])
def test_the_founders_name_is_no_short_name_of_the_company(vans_of, founder):
    text = (
        "# Drift\n\n2026 brochure\n\n"
        f"It began when {founder} Ossvane built one in a barn in Hythe.\n\nDrift 21\n\n{FIGURES + MORE}\n\n"
        "Ossvane Vans Ltd\n"
    )
    assert {maker for maker, _, _ in vans_of(text, "brochure.md")} == {"Ossvane Vans"}


def test_the_name_that_signs_goes_before_the_same_with_a_word_for_vans(vans_of):
    lines = "<li>Length 5.98 m, width 2.04 m</li><li>Fresh water tank 90 litres</li><li>Waste tank 80 litres</li>"
    page = (
        f"<h1>Drift 6, model year 2026</h1><ul>{lines}<li>Solar 140 W</li></ul><p>Marrowfen Ltd, Dyke Lane, Hythe.</p>"
    )
    html = f"<html lang='en'><head><title>Drift 6 | Marrowfen camper vans</title></head><body>{page}</body></html>"
    assert vans_of(html, "drift.html") == {("Marrowfen", "Drift 6", 2026)}


def test_words_for_the_paper_behind_a_range_at_the_head_of_pages_are_no_part_of_it(read_file, tmp_path):
    page = Page()
    page.text(40, 40, "Price Book", size=24, bold=True)
    page.text(40, 75, "K Series, model year 2027", size=16, bold=True)
    page.text(40, 110, "This book is about two vans: K-48 and K-56. The K-56 is the long one.")
    page.text(40, 780, "Marrowfen Mobile Works Corp., 4 Fulling Lane")
    rows = [("", "K-48", "K-56"), ("Overall length", "5.41 m", "5.99 m"), ("GVWR", "3500 kg", "4250 kg"),
            ("Sleeps", "2", "3"), ("Fresh water", "70 L", "90 L"), ("Solar", "100 W", "200 W")]  # fmt: skip
    for title in ("Model content", "Terms"):
        page.canvas.showPage()
        page.row(20, (40, "Marrowfen Mobile Works"), (420, "K Series Price Book, 2027"), size=8)
        page.text(40, 60, title, size=12, bold=True)
        if title == "Terms":
            page.text(40, 90, "Deposit 10 %, balance on completion.")
            break
        for number, row in enumerate(rows):
            page.row(90 + 15 * number, *zip((40, 260, 380), row, strict=True), bold=not number)
    path = tmp_path / "book.pdf"
    path.write_bytes(page.data())
    assert {(van.maker, van.model) for van in read_file(path).found.vans} == {
        ("Marrowfen Mobile Works", "K-48"),
        ("Marrowfen Mobile Works", "K-56"),
    }


@pytest.mark.parametrize("sign", ["’", "'"])
def test_the_article_before_a_vowel_is_no_part_of_a_range(vans_of, sign):
    above = "# Nos fourgons de l’année 2026\n\nL’Orme 48 est un fourgon court. L’Orme 55 Neige est plus long.\n\n"
    rows = ("Longueur | 5,41 m | 5,98 m", "Eau propre | 80 l | 100 l", "Eaux grises | 70 l | 90 l",
            "Couchages | 2 | 3", "Panneaux solaires | 100 W | 200 W")  # fmt: skip
    table = "| | 48 | 55 Neige |\n|---|---|---|\n" + "".join(f"| {row} |\n" for row in rows)
    assert {model for _, model, _ in vans_of((above + table).replace("’", sign))} == {"Orme 48", "Orme 55 Neige"}
    said = (
        "FOURGONS MARROWFEN\n\nNous vous présentons l’Orme 48. L’Orme 48 est notre fourgon court : longueur 5,41 m.\n"
    )
    said += "Réservoir d’eaux grises : 70 litres. Dans l’Orme 48, le chauffage est au gaz.\n"
    assert {model for _, model, _ in vans_of(said.replace("’", sign))} == {"Orme 48"}


@pytest.mark.parametrize("dealer", ["authorised dealer", "dealer for Ossvane", "importer"])
def test_a_dealer_that_says_so_is_not_the_maker_of_what_it_offers(vans_of, dealer):
    text = (
        f"From: Sales, Hythe Motorhomes ({dealer})\nTo: Mr and Mrs Thorne\nSubject: Your quote, Ossvane Drift 21\n\n"
        f"Dear Jo,\n\nHere are the figures of the Drift 21.\n\nOssvane calls it small.\n\n{FIGURES}{MORE}\n"
        "Kind regards,\nMerle\nHythe Motorhomes, Shed 4, Quay Road\n"
    )
    assert vans_of(text, "quote.txt") == {("Ossvane", "Drift 21", None)}


def test_a_year_behind_the_name_at_the_top_is_no_part_of_it(read_file, tmp_path):
    path = tmp_path / "drift.md"
    path.write_text(
        "# MARROWFEN 2026\n\n## Drift 22\n\n- Length 6.0 m\n- Berths 2\n- GVWR 3,500 kg\n- Fresh water 90 l\n\n"
        "Marrowfen Vans, Inc., Lower Mill, Holt. Capacities are nominal.\n"
    )
    assert [van.maker for van in read_file(path).found.vans] == ["Marrowfen"]


def test_what_a_page_says_of_the_company_behind_a_comma_is_no_part_of_its_name(read_file, tmp_path):
    path = tmp_path / "drift.html"
    path.write_text(
        "<html><head><title>Drift 636 – Marrowfen, fourgons aménagés</title></head><body><h1>Drift 636</h1><ul>"
        "<li>Longueur : 6,36 m</li><li>PTAC : 3 500 kg</li><li>Eau propre : 100 l</li><li>Couchages : 2</li></ul>"
        "</body></html>"
    )
    assert [van.maker for van in read_file(path).found.vans] == ["Marrowfen"]


def test_a_year_before_the_company_in_a_pages_title_is_no_part_of_it(read_file, tmp_path):
    rows = "".join(
        f"<div class='r'><span>{label}</span><span>{one}</span><span>{two}</span></div>"
        for label, one, two in [
            ("", "Drift S", "Drift LX"),
            ("Length", "18 ft 4 in", "20 ft 8 in"),
            ("Height", "8 ft 11 in", "9 ft 6 in"),
            ("Wheelbase", "136 in", "156 in"),
            ("Fuel tank", "19 gal", "25 gal"),
            ("Inverter", "600 W", "2,000 W"),
        ]
    )
    path = tmp_path / "page.html"
    path.write_text(
        "<html lang='en'><head><title>Compare Drift S and Drift LX - 2026 - Marrowfen</title></head><body>"
        f"<h1>Compare: Drift S or Drift LX?</h1><p>Model year 2026.</p>{rows}</body></html>",
        encoding="utf-8",
    )
    assert {van.maker for van in read_file(path).found.vans} == {"Marrowfen"}
