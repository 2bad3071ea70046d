"""Heads and feet that come back on every page, and heads of tables that do too."""

from tests.reading.drawn import Page

ROWS = [
    [("Length", "5,410 mm", "5,990 mm"), ("Width", "2,050 mm", "2,050 mm"), ("Sleeps", "2", "3")],
    [("Fresh water tank", "75 L", "95 L"), ("Gray water tank", "60 L", "80 L"), ("Solar", "100 W", "200 W")],
]


def test_heads_of_tables_at_the_top_of_two_pages_are_no_running_heads(facts_of_pdf):
    page = Page()
    page.text(40, 300, "Marrowfen Drift", size=30)
    page.text(40, 360, "Model year 2026", size=12)
    for title, rows in zip(("Technical data", "Tanks and power"), ROWS, strict=True):
        page.canvas.showPage()
        page.text(40, 30, title, size=16, bold=True)
        page.row(60, (260, "Drift K"), (420, "Drift L"), bold=True)
        for number, (label, first, second) in enumerate(rows):
            page.row(90 + 20 * number, (40, label), (260, first), (420, second))
        page.text(40, 810, "Marrowfen · Drift", size=7)
    facts = {(fact.model, fact.field): fact.value for fact in facts_of_pdf(page)}
    names = {model for model, _ in facts}
    assert {name.split()[-1] for name in names} == {"K", "L"}
    short, long = sorted(names)
    assert (facts[short, "fresh_tank_l"], facts[long, "fresh_tank_l"]) == (75, 95)


def test_a_count_of_pages_below_a_short_page_is_no_list_of_vans(facts_of_pdf):
    page = Page()
    page.text(40, 50, "MARROWFEN VANS", size=20, bold=True)
    page.text(40, 80, "Drift | Model year 2026", size=10)
    page.text(280, 130, "1 / 3", size=8)  # the page is short: its foot stands below the text
    for number, rows in enumerate(ROWS, start=2):
        page.canvas.showPage()
        page.text(40, 30, "Specifications", size=14, bold=True)
        page.row(60, (260, "19 Fell"), (420, "19 Moor"), bold=True)
        for place, (label, first, second) in enumerate(rows):
            page.row(90 + 20 * place, (40, label), (260, first), (420, second))
        page.text(40, 200, "Guarantee: 3 years, 1 year on fabrics.", size=9)
        page.text(280, 820, f"{number} / 3", size=8)
    facts = facts_of_pdf(page)
    assert {fact.model for fact in facts} == {"Drift 19 Fell", "Drift 19 Moor"}
    assert {fact.value for fact in facts if fact.field == "fresh_tank_l"} == {75, 95}


def test_the_chapter_beside_the_name_of_a_guide_that_comes_back_says_nothing_of_the_van(facts_of_pdf):
    page = Page()
    chapters = {
        "5 Heat": ("5 Heat", "The van has an air heater that burns diesel.", "It is warm in it."),
        "6 Electricity": ("6.1 Doors", "Overall length: 5,410 mm", "Fresh water tank: 75 L"),
        "7 Gas": ("7.1 Windows", "GVWR: 3,500 kg", "Gray water tank: 60 L"),
    }
    for number, (chapter, (heading, *lines)) in enumerate(chapters.items()):
        if number:
            page.canvas.showPage()
        page.row(30, (40, "Drift 21 Owner's Guide"), (440, chapter), size=8)
        page.text(40, 120, "Marrowfen Drift 21" if not number else "", size=24)
        page.text(40, 160, heading, size=14, bold=True)
        for place, line in enumerate(lines):
            page.text(40, 200 + 40 * place, line)
    assert {fact.value for fact in facts_of_pdf(page) if fact.field == "heater_fuel"} == {"diesel"}


def test_the_number_of_a_page_is_no_side_of_the_van(facts_of_pdf):
    page = Page()
    page.text(40, 50, "MARROWFEN", size=20, bold=True)
    page.text(40, 80, "Drift 640, Modelljahr 2026", size=14, bold=True)
    page.text(40, 120, "Isolierung", size=11, bold=True)
    page.text(40, 140, "Der Drift 640 ist mit Schafwolle isoliert.", size=9)
    page.canvas.showPage()
    for place, text in enumerate(
        ("Isolierung", "Länge: 6,36 m", "Frischwasser: 110 l", "Isolierung: Schafwolle, 40 mm")
    ):
        page.text(40, 40 + 20 * place, text, size=9, bold=not place)
    page.text(40, 130, "Seite 2", size=9)  # below a short list
    assert [fact.value for fact in facts_of_pdf(page) if fact.field == "insulated_surfaces"] == []


def test_a_list_of_the_vans_at_the_foot_of_pages_is_no_range_of_theirs(facts_of_pdf):
    vans = ("Alder", "Gorse", "Teasel")
    page = Page()
    page.text(40, 50, "MARROWFEN", size=30)
    page.text(40, 110, "Brochure for the 2026 season", size=12)
    for title, rows in zip(("Technical data", "Tanks and power"), ROWS, strict=True):
        page.canvas.showPage()
        page.text(40, 30, title, size=16, bold=True)
        page.row(60, *zip((260, 360, 460), vans, strict=True), bold=True)
        for number, (label, first, second) in enumerate(rows):
            page.row(90 + 20 * number, (40, label), (260, first), (360, second), (460, second))
        page.text(40, 810, f"Marrowfen Ltd - {', '.join(vans)} - 2026", size=7)
    assert {fact.model for fact in facts_of_pdf(page)} == set(vans)


def test_a_figure_amid_a_page_is_not_its_number(facts_of_pdf):
    """The sleeping places of a label set above its value, on a page with the same number at its foot."""
    pairs = [
        ("Overall length", "5.99 m"),
        ("GVWR", "3,500 kg"),
        ("Sleeps", "2"),
        ("Solar", "200 W"),
        ("Inverter", "900 W"),
    ]
    page = Page()
    page.text(40, 300, "Marrowfen Drift 21", size=30)
    page.text(400, 820, "1", size=8)
    for number in (2, 3):
        page.canvas.showPage()
        page.text(40, 120, "In figures" if number == 2 else "Small print", size=14, bold=True)
        for place, (label, value) in enumerate(pairs if number == 2 else ()):
            page.text(40, 160 + 24 * place, label, size=8)
            page.text(40, 170 + 24 * place, value, size=8, bold=True)
        for place in range(8):
            page.text(40, 500 + 14 * place, "We put on the floor of the shop all that a couple takes along.", size=11)
        page.text(400, 820, str(number), size=8)
    facts = {fact.field: fact.value for fact in facts_of_pdf(page)}
    assert (facts["sleeps"], facts["length_mm"], facts["solar_w"]) == (2, 5990, 200)


def test_the_foot_that_says_for_whom_a_sheet_is_names_no_range(facts_of_pdf):
    page = Page()
    foot = "Marrowfen Coachworks, Inc. - 2026 Buyer's Sheet"
    page.text(50, 40, "Marrowfen", size=24, bold=True)
    page.text(50, 70, "2026 BUYER'S SHEET", size=12)
    page.text(50, 90, "BW18 goes where a pickup goes. BW21 is the one our own people buy.", size=9)
    page.row(780, (50, foot), (500, "1"), size=8)
    page.canvas.showPage()
    page.row(60, (50, "Model"), (120, "Drive"), (190, "Length"), (270, "GVWR"), (350, "Sleeps"), size=9, bold=True)
    page.row(76, (50, "BW18"), (120, "RWD"), (190, "216 in"), (270, "8,700 lb"), (350, "2"), size=9)
    page.row(92, (50, "BW21"), (120, "RWD"), (190, "254 in"), (270, "9,600 lb"), (350, "3"), size=9)
    page.row(108, (50, "BW21 Trek"), (120, "AWD"), (190, "254 in"), (270, "9,900 lb"), (350, "4"), size=9)
    page.row(780, (50, foot), (500, "2"), size=8)
    facts = facts_of_pdf(page)
    assert {f.model: f.value for f in facts if f.field == "sleeps"} == {"BW18": 2, "BW21": 3, "BW21 Trek": 4}


def test_two_vans_in_the_title_are_no_company(read_file, tmp_path):
    page = Page()
    foot = "Marrowfen · Dealer sheet MF-26-04 · all values approximate"
    page.text(50, 40, "Drift & Gorse", size=26, bold=True)
    page.text(50, 76, "Marrowfen’s two vans for model year 2026 – data for dealers", size=11)
    page.text(50, 100, "Gorse is the small one. Drift is the big one. Marrowfen fits a dry toilet in both.", size=9)
    page.row(124, (50, "Gorse"), (310, "Drift"), size=13, bold=True)
    rows = [("Base vehicle: Kelmar Porter 25", "Base vehicle: Brannock Cargo 35"), ("Drive: front", "Drive: AWD"),
            ("Length: 213 in.", "Length: 267 in."), ("GVWR: 8,550 lb.", "GVWR: 11,030 lb."),
            ("Fresh water: 16 gal., interior", "Fresh water: 36 gal., interior"), ("Solar: 175 W", "Solar: 520 W"),
            ("Inverter: 1,200 W", "Inverter: 3,000 W"), ("Shore power: 15 A", "Shore power: 30 A")]  # fmt: skip
    for number, (left, right) in enumerate(rows):
        page.row(144 + 13 * number, (50, left), (310, right), size=9)
    page.text(50, 790, foot, size=7)
    page.canvas.showPage()
    page.text(50, 40, "Packages", size=14, bold=True)
    page.row(64, (50, "Package"), (310, "Gorse"), (420, "Drift"), size=9, bold=True)
    page.row(78, (50, "Shades: insulated covers for all cab glass"), (310, "$1,180"), (420, "$1,290"), size=9)
    page.row(92, (50, "Ski: 12 V heat pad on the gray tank"), (310, "$900"), (420, "included"), size=9)
    page.text(50, 790, foot, size=7)
    path = tmp_path / "sheet.pdf"
    path.write_bytes(page.data())
    vans = {(van.maker, van.model) for van in read_file(path).found.vans}
    assert vans == {("Marrowfen", "Gorse"), ("Marrowfen", "Drift")}
