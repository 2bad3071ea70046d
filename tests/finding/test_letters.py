"""Letters and forms: what names the van in them, and what names those who write and read."""

import pytest

from tests.reading.drawn import Page

SMALL = (
    "  fresh water     20 gal, inside\n  gray water      15 gal, under the floor\n  toilet          cassette\n"
    "  house battery   200 Ah lithium\n  solar           200 W\n"
)
LARGE = SMALL.replace("20 gal", "31 gal").replace("15 gal", "24 gal").replace("200", "400")
LED = "".join(
    f"  {label} {'.' * (22 - len(label))} {value}\n"
    for label, value in (
        ("Länge", "5,98 m"), ("Höhe", "2,75 m"), ("Gesamtgewicht", "3.500 kg"), ("Schlafplätze", "2"),
        ("Frischwasser", "100 l, innen"), ("Abwasser", "90 l, unterflur"), ("Bordbatterie", "95 Ah AGM"),
    )
)  # fmt: skip


def letter(first, second, salutation="Dear Mrs Quill,", end="Kind regards", about="", more=""):
    about = about or f"Re: {first.title()} or {second.title()}? (your list)"
    return (
        f"From: Orla Fenwright <orla@hollinbeck.example>\nTo: Marta Quill\nDate: Mon, 3 Nov 2025 10:40\n"
        f"Subject: {about}\n\n{salutation}\n\nhere are the figures of the 2026 vans, one after the other.\n\n"
        f"{first}\nIt is 19 ft 4 in long and sleeps two. GVWR 8,800 lb.\n\n{SMALL}\n"
        f"{second}\nIt is 22 ft 2 in long and sleeps three. GVWR 9,900 lb.\n\n{LARGE}\n"
        f"{more}\n\n{end}\nOrla Fenwright\nHollinbeck Vans, Inc.\n"
    )


@pytest.mark.parametrize("end", ["Kind regards", "With best wishes,"])
@pytest.mark.parametrize("salutation", ["Dear Mrs Quill,", "Hi Marta!"])
def test_a_letter_names_its_vans_by_headings_with_an_article(vans_of, salutation, end):
    more = "The Wendle is good to 25 F, the Wendle Long to -5 F."
    text = letter("THE WENDLE", "THE WENDLE LONG", salutation, end, "Re: Wendle or Wendle Long?", more)
    assert vans_of(text, "reply.txt") == {("Hollinbeck Vans", name, 2026) for name in ("Wendle", "Wendle Long")}


def test_one_of_the_vans_of_a_letter_is_no_range_of_the_other(vans_of):
    more = "The Wendle is good to 25 F, the Sorrel to -5 F."
    text = letter("THE WENDLE", "THE SORREL", about="Re: Wendle or Sorrel?", more=more)
    assert {model for _, model, _ in vans_of(text, "reply.txt")} == {"Wendle", "Sorrel"}


def test_lists_with_dots_in_a_german_letter_are_each_a_vans_own(vans_of):
    text = (
        "Hohlbeck Reisemobile GmbH\nMühlgasse 4, 78000 Sanddorf\n\nFrau\nIlse Tannhöver\nAm Wehr 9\n\n"
        "Betreff: Kiebitz 54 und Kiebitz 58\n\nSehr geehrte Frau Tannhöver,\n\nvielen Dank für Ihren Brief.\n\n"
        f"DER KIEBITZ 54\n{LED}\nDER KIEBITZ 58\n{LED.replace('100 l', '120 l')}\n"
        "Mit freundlichen Grüßen\nJasper Ohlrogge\nHohlbeck Reisemobile GmbH\n"
    )
    found = vans_of(text, "antwort.txt")
    assert {(maker, model) for maker, model, _ in found} == {
        ("Hohlbeck Reisemobile", name) for name in ("Kiebitz 54", "Kiebitz 58")
    }


@pytest.mark.parametrize(
    ("label", "printed"),
    [
        ("Make and model", "Allendrake Curlew 58 Ridge"),
        ("Make / model", "ALLENDRAKE CURLEW 58 RIDGE"),
    ],
)
def test_a_line_of_make_and_model_names_both(vans_of, label, printed):
    text = (
        "From:     Gail, Tarrowby RV Centre <sales@tarrowby.example>\nTo:       Mr and Mrs P. Ostley\n"
        f"Subject:  Your quote TR-2210\n\nDear Hugh and Bea,\n\nGood to see you both. It is a 2026 model.\n\n"
        f"THE VAN\n  {label} .......... {printed}\n  Length .................. 6200 mm\n"
        "  GVM ..................... 4490 kg\n  Sleeps .................. 2\n  Fresh water ............. 140 L\n"
        "  Grey water .............. 90 L\n\nCheers,\nGail\nTarrowby RV Centre, 18 Quay Road, Tarrowby.\n"
    )
    assert vans_of(text, "quote.txt") == {("Allendrake", "Curlew 58 Ridge", 2026)}


def test_what_a_letter_is_about_names_the_van_that_it_calls_the_van(vans_of):
    text = (
        "From: Gail, Tarrowby RV Centre\nTo: Mr P. Ostley\nSubject: Your quote TR-2210 - Allendrake Curlew 58 Ridge\n\n"
        "Dear Hugh,\n\nHere is the van you sat in, a 2026 model.\n\nTHE VAN\n  Length .................. 6200 mm\n"
        "  GVM ..................... 4490 kg\n  Sleeps .................. 2\n  Fresh water ............. 140 L\n"
        "  Grey water .............. 90 L\n\nAllendrake calls the Ridge snow-ready.\n\nCheers,\nGail\n"
    )
    assert vans_of(text, "quote.txt") == {("Allendrake", "Curlew 58 Ridge", 2026)}


@pytest.mark.parametrize("name", ["Marrowfen RV & Van Center", "Marrowfen Camper Center"])
def test_the_letterhead_of_a_workshop_names_no_van(read_file, tmp_path, name):
    page = Page()
    page.text(50, 40, name, size=26, bold=True)
    page.text(50, 80, "Mill Road 12 at the bend", size=11)
    lines = [
        "Dear neighbor,", "Frost is on its way, and if your van stands outdoors it is time to bring it in.",
        "Furnace check, up to 35,000 BTU .......... $119", "Lithium battery, 100 Ah, heated ........ $1,050",
        "200-watt solar panel, installed .......... $640", "Insulated windshield cover, most vans .......... $129",
        "Below 20 F an unprotected drain valve freezes first. Four-season vans can wait a little.",
        "Propane is $3 a gallon. We fill 20 lb and 30 lb cylinders.",
        "Forty camper vans are on the lot, gas and diesel, two-wheel and all-wheel drive.",
        "See you before the snow,", "The service team at Marrowfen", f"{name} is an independent dealer.",
    ]  # fmt: skip
    for number, line in enumerate(lines):
        page.text(50, 120 + 30 * number, line, size=11)
    path = tmp_path / "letter.pdf"
    path.write_bytes(page.data())
    assert read_file(path).found.vans == ()


COLUMNS = (
    "                          SOLO            SOLO LONG\n  Length                  19' 2\"          21' 4\"\n"
    "  GVWR                    8,900 lb        9,980 lb\n  Fresh water             20 gal          31 gal\n"
    "  Gray water              15 gal          24 gal\n  House battery           200 Ah          400 Ah\n"
)


@pytest.mark.parametrize(
    "about",
    [
        "Your list for the 2027 Tewit Solo and Solo Long",
        "Tewit Solo and Solo Long, model year 2027",
        "Which 2027 van: the Tewit Solo Long, or Solo?",
    ],
)
def test_a_range_that_a_letter_names_once_before_all_heads_of_its_table_goes_before_them(vans_of, about):
    text = (
        f"From: Orla Fenwright, Hollinbeck Van Works\nTo: Marta Quill\nDate: October 14, 2026\nSubject: {about}\n\n"
        f"Dear Marta,\n\nhere is your list.\n\n{COLUMNS}\nYours,\nOrla\n\nHollinbeck Van Works, 3 Mill Lane, Harrow\n"
    )
    assert vans_of(text, "list.txt") == {
        ("Hollinbeck Van Works", f"Tewit {name}", 2027) for name in ("Solo", "Solo Long")
    }


def test_the_date_of_a_letter_is_no_model_year_beside_that_before_the_name_of_its_van(vans_of):
    text = (
        "From: Orla Fenwright, Hollinbeck Van Works\nTo: Marta Quill\nDate: October 14, 2026\n"
        "Subject: Hollinbeck Tewit 19\n\nDear Marta,\n\nas we agreed, here is the quotation for a 2027 Hollinbeck "
        "Tewit 19 in slate gray, with what we wrote on the back of the leaflet when you were here.\n\n"
        f"{SMALL}\nYours,\nOrla\n"
    )
    assert {year for _, _, year in vans_of(text, "tewit.txt")} == {2027}


@pytest.mark.parametrize(
    "above",
    [
        "12 Quay Road\nHexworth\n\n9 November\n\nDear Mr Ostley,",
        "12 Quay Road\nHexworth\n\nMr P. Ostley\n38 Chapel Lane\nOverby\n\n9th November 2025\n\nDear Peter,",
    ],
)
def test_the_town_in_the_address_above_a_letter_is_neither_its_van_nor_its_maker(vans_of, above):
    text = (
        f"{above}\n\nyou ask about the van. Mine is a Marrowfen Drift 58 of model year 2024, the same as yours, and "
        "you have seen it at the car park in Hexworth.\n\nIt is 5.98 m long, 2.05 m wide and 2.73 m high, and the "
        "wheelbase is 4,035 mm. The mass allowed is 3,500 kg. There are two berths. The fresh water tank holds 115 "
        "litres and sits inside, the waste tank holds 92 litres and hangs under the floor. "
        "The fuel tank takes 90 litres. Inside you can stand up to 1.92 m.\n\nThe heater is a gas furnace with "
        "blown air, the battery a 100 Ah AGM. The walls are insulated with 30 mm of mineral wool.\n\n"
        "Yours sincerely,\nOttilie Brack\n"
    )
    assert vans_of(text, "letter.txt") == {("Marrowfen", "Drift 58", 2024)}


ANSWERS = (
    "{0} 21: length 20 ft 10 in, height 9 ft 2 in.\n\n{0} 24: length 24 ft 1 in, height 9 ft 9 in.\n\n"
    "{0} 21: fresh 25 gal, gray 21 gal. {0} 24: fresh 36 gal, gray 30 gal.\n\n"
    "Both: no black tank. Cassette toilet, 4.8 gal, in {0} 21; composting\ntoilet in {0} 24.\n\n"
    "GVWR is 9,350 lb for {0} 21 and 11,030 lb for {0} 24. Water heater: 6 gal in {0} 21, 4 gal in {0} 24.\n\n"
    "{0} 21: 200 Ah AGM battery, 200 W of solar. {0} 24: 600 Ah lithium battery, 500 W of solar.\n"
)


@pytest.mark.parametrize("about", ["Fwd: Re: Questions on the two Tewit vans", "Re: the Tewit range"])
def test_a_name_that_stands_before_figures_and_the_word_for_vans_alone_is_their_range(read_file, tmp_path, about):
    path = tmp_path / "mail.txt"
    path.write_text(
        f"From: Orla Fenwright, Hollinbeck\nTo: Marta Quill\nDate: Tue, 14 Oct 2025 08:12\nSubject: {about}\n\n"
        f"Hi Marta,\n\nhere are the answers. I answer for Tewit 21 and Tewit 24 one after the other.\n\n"
        f"{ANSWERS.format('Tewit')}\nBest wishes\nOrla\n\nHollinbeck LLC, Dike Street 17, Harrow\n"
    )
    found = read_file(path).found
    assert {van.model for van in found.vans} == {"Tewit 21", "Tewit 24"}
    assert not [fact for fact in found.facts if fact.field == "drive"]  # "Fwd:"
