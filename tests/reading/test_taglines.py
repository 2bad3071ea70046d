"""Names of vans in a bar over label-value pairs side by side, each with a tagline in small letters behind it."""

from tests.reading.drawn import Page

LEFT = [("Chassis", "Kelmar 250", "Kelmar 350"), ("Drive", "Front-wheel", "Rear-wheel"),
        ("Length", "5.41 m", "6.36 m"), ("Wheelbase", "3,450 mm", "4,040 mm"), ("GVWR", "3,500 kg", "4,100 kg"),
        ("Fresh water", "70 L", "110 L")]  # fmt: skip
RIGHT = [("Black water", "None", "45 L"), ("Toilet", "Cassette, 17 L", "Fixed, to the black tank"),
         ("Gray water", "60 L", "90 L"), ("Hot water", "10 L", "14 L"), ("Solar", "120 W", "240 W"),
         ("Inverter", "1,000 W", "2,000 W")]  # fmt: skip


def sheets(names, taglines):
    """Two vans below each other, each in a table of four columns under its bar."""
    page = Page()
    page.text(40, 20, "MARROWFEN", size=24, bold=True)
    page.text(40, 60, "Drift range, model year 2026", size=12, bold=True)
    for van, top in enumerate((120, 260)):
        page.box(40, top, 555, top + 16, (0.2, 0.3, 0.4))
        page.text(45, top + 2, names[van], size=12, bold=True, color=(1, 1, 1))
        page.text(120, top + 6, taglines[van], size=8, color=(1, 1, 1))
        for number, (west, east) in enumerate(zip(LEFT, RIGHT, strict=True)):
            below = top + 18 + 14 * number
            for x, cells in ((45, west), (300, east)):
                page.text(x, below, cells[0], size=8, bold=True)
                page.text(x + 90, below, cells[1 + van], size=8)
            page.rule(40, below + 11, 555)
    page.text(40, 420, "Marrowfen Ltd, Quay Road 12, Marrowfen", size=7)
    return page


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field and not fact.rejected}


def test_a_name_with_a_tagline_behind_it_heads_all_columns_of_its_table(facts_of_pdf):
    facts = facts_of_pdf(sheets(["Drift 54A", "Drift 63C"], ["a bed, a stove and a quiet place", "the one for winter"]))
    assert by_van(facts, "wheelbase_mm") == {"Drift 54A": 3450, "Drift 63C": 4040}
    assert by_van(facts, "inverter_w") == {"Drift 54A": 1000, "Drift 63C": 2000}
    assert by_van(facts, "chassis") == {"Drift 54A": "Kelmar 250", "Drift 63C": "Kelmar 350"}


def test_a_long_tagline_heads_its_table_too(facts_of_pdf):
    long = "for two who stay away until the snow is gone and the roads are open again"
    facts = facts_of_pdf(sheets(["Drift 54A", "Drift 63C"], ["a bed, a stove and a quiet place", long]))
    assert by_van(facts, "wheelbase_mm") == {"Drift 54A": 3450, "Drift 63C": 4040}


def test_lighter_letters_behind_a_name_can_be_part_of_it(facts_of_pdf):
    facts = facts_of_pdf(sheets(["Drift 54", "Drift 63"], ["Shore", "Fell"]))
    assert "Drift 54" not in by_van(facts, "wheelbase_mm")


def test_a_company_and_what_its_paper_is_are_no_head_of_a_table(facts_of_pdf):
    page = Page()
    page.text(40, 20, "Marrowfen", size=24, bold=True)
    page.text(430, 32, "Order guide 2026", size=12)
    for x, words in ((40, "Drift 19"), (130, "and"), (190, "Drift 21")):
        page.text(x, 52, words, size=14)
    page.text(40, 84, "Prices are suggested retail in US dollars and do not include freight, tax or title.", size=9)
    for x, words in ((200, "Drift 19"), (320, "Drift 21")):
        page.text(x, 120, words, size=9, bold=True)
    for number, row in enumerate(LEFT):
        for x, words in zip((40, 200, 320), row, strict=True):
            page.text(x, 136 + 14 * number, words, size=9)
    page.text(40, 420, "Marrowfen Motor Van Company, Quay Road 12, Hythe", size=7)
    facts = facts_of_pdf(page)
    assert by_van(facts, "maker") == {"Drift 19": "Marrowfen", "Drift 21": "Marrowfen"}
    assert by_van(facts, "wheelbase_mm") == {"Drift 19": 3450, "Drift 21": 4040}


def test_a_code_with_a_phrase_in_smaller_letters_behind_it_heads_its_data(facts_of_pdf):
    page = Page()
    page.text(40, 20, "KD SERIES", size=24, bold=True)
    page.text(40, 60, "Spec book 2026 | Marrowfen Vans", size=12)
    for van, top in enumerate((120, 320)):
        page.text(40, top, ("KD19", "KD21X")[van], size=16, bold=True)
        page.text(130, top + 6, ("Rear dinette, converts to bed", "Rear bath, side sofa, lifted")[van], size=8)
        page.rule(40, top + 20, 555)
        for number, (west, east) in enumerate(zip(LEFT, RIGHT, strict=True)):
            for x, cells in ((45, west), (300, east)):
                page.text(x, top + 26 + 16 * number, cells[0], size=8, bold=True)
                page.text(x + 90, top + 26 + 16 * number, cells[1 + van], size=8)
    facts = facts_of_pdf(page)
    assert by_van(facts, "wheelbase_mm") == {"KD19": 3450, "KD21X": 4040}
    assert by_van(facts, "inverter_w") == {"KD19": 1000, "KD21X": 2000}


def test_a_band_over_all_of_a_page_heads_what_is_below_without_a_word_at_its_other_side(facts_of_pdf):
    page = Page()
    for van, tagline in enumerate(("Querbett, kompakt", "Einzelbetten")):
        if van:
            page.canvas.showPage()
        page.box(40, 30, 555, 80, (0.2, 0.25, 0.35))
        page.text(50, 36, "Marrowfen \u00b7 Datenblatt", size=8, color=(1, 1, 1))
        page.text(50, 50, ("KD 54 Q", "KD 64 E Allrad")[van], size=20, bold=True, color=(1, 1, 1))
        page.text(470, 62, tagline, size=8, color=(1, 1, 1))
        rows = (("L\u00e4nge", "5,41 m", "6,36 m"), ("Radstand", "3,45 m", "4,04 m"), ("Schlafpl\u00e4tze", "2", "3"),
                ("Frischwasser", "90 l", "110 l"), ("Landanschluss", "10 A", "16 A"))  # fmt: skip
        for number, (label, *values) in enumerate(rows):
            page.row(100 + 14 * number, (42, label), (160, values[van]), size=9)
        page.text(40, 780, "Marrowfen KG, Lohgasse 11 \u00b7 Modelljahr 2026", size=7)
    assert by_van(facts_of_pdf(page), "wheelbase_mm") == {"KD 54 Q": 3450, "KD 64 E Allrad": 4040}


def two_vans_of_two_makers(size):
    """A table of two vans, and below it running text under their names in letters of a size."""
    page = Page()
    page.text(40, 20, "Two vans for the snow", size=16, bold=True)
    for number, row in enumerate([("Model", "Drift", "Skerry"), ("Built by", "Marrowfen", "Orrindale"),
                                  ("Length", "5.41 m", "6.36 m"), ("Wheelbase", "3,450 mm", "4,040 mm"),
                                  ("GVWR", "3,500 kg", "4,100 kg"), ("Fresh water", "70 L", "110 L")]):  # fmt: skip
        page.row(60 + 16 * number, *zip((40, 200, 340), row, strict=True))
    for number, (name, maker, heater) in enumerate(
        [("Drift", "Marrowfen", "diesel air heater"), ("Skerry", "Orrindale", "gas furnace with blown air")]
    ):
        top = 200 + 80 * number
        page.text(40, top, name, size=size, bold=True)
        width = page.canvas.stringWidth(name, "Helvetica-Bold", size)
        page.text(44 + width, top + size - 8.5, f"by {maker}", size=8.5)
        page.text(40, top + 26, f"Inside there is a {heater} and the grey tank is under the floor and", size=9)
        page.text(40, top + 38, "nothing keeps it from freezing. The windows are double glazed all around.", size=9)
    return page


def test_a_title_in_larger_letters_and_its_maker_in_smaller_ones_head_what_is_below(facts_of_pdf):
    facts = facts_of_pdf(two_vans_of_two_makers(11))
    assert by_van(facts, "heater_type") == {"Drift": "forced_air", "Skerry": "forced_air"}
    assert by_van(facts, "heater_fuel") == {"Drift": "diesel", "Skerry": "propane"}
