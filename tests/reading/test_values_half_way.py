"""Tables whose rows are drawn without rules, with the names of groups at the left and values for all half way."""

from tests.reading.drawn import Page

VANS = ("540 E", "600 P", "630 RB", "636 DX")
PLACES = (244, 320, 397, 474)
LABELS = 125
HALF_WAY = 376


def drawn(rows, gap=17.0):
    page = Page()
    page.text(50, 30, "Marrowfen", size=20, bold=True)
    page.text(50, 54, "Drift 2026", size=12, bold=True)
    page.row(86, (LABELS, "Floorplan"), *zip(PLACES, VANS, strict=True), size=8, bold=True)
    top = 86 + gap
    for groups, label, values in rows:
        for number, name in enumerate(groups):
            page.text(56, top + 10 * number, name, size=8)
        middle = HALF_WAY - page.canvas.stringWidth(values, "Helvetica", 8) / 2 if isinstance(values, str) else 0
        placed = [(middle, values)] if isinstance(values, str) else zip(PLACES, values, strict=True)
        page.row(top, (LABELS, label), *placed, size=8)
        top += gap
    return page


ROWS = [
    ((), "Overall length", ("5.41 m", "5.99 m", "6.36 m", "6.40 m")),
    ((), "Solar", ("440 W", "190 W", "400 W", "410 W")),
    ((), "Inverter", ("1800 W", "3000 W", "3600 W", "2000 W")),
    ((), "Water heater", ("12 l", "8 l", "9 l", "10 l")),
    (("Energy",), "House battery", ("300 Ah", "200 Ah", "280 Ah", "220 Ah")),
]


def test_a_value_for_all_right_below_the_heads_does_not_part_them_from_their_rows(facts_of_pdf):
    rows = [(("Water",), "Heated water lines", "standard"), *ROWS, (("Body",), "Wall insulation", "foam, 20 mm"),
            ((), "EN 1646-1", "grade 3")]  # fmt: skip
    facts = facts_of_pdf(drawn(rows, gap=21.0))
    for field, values in (("solar_w", (440, 190, 400, 410)), ("battery_ah", (300, 200, 280, 220))):
        found = {f.model: f.value for f in facts if f.field == field}
        assert found == {f"Drift {van}": value for van, value in zip(VANS, values, strict=True)}
    assert {f.model for f in facts if f.field == "water_lines_heated"} == {f"Drift {van}" for van in VANS}


def test_the_name_of_a_group_wrapped_beside_its_rows_does_not_join_two_of_them(facts_of_pdf):
    rows = [(("Chassis and", "dimensions"), "Base van", ("Ombrek 35", "Ombrek 30", "Ombrek 35", "Ombrek 35")),
            *ROWS]  # fmt: skip
    facts = facts_of_pdf(drawn(rows))
    assert {f.value for f in facts if f.field == "chassis"} == {"Ombrek 35", "Ombrek 30"}
    assert len([f for f in facts if f.field == "length_mm"]) == len(VANS)


def test_words_in_two_columns_of_values_are_no_list_beside_the_first_column(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen", size=20, bold=True)
    page.row(60, (LABELS, "Model"), (250, "Drift 20"), (356, "Drift 22"), (462, "Drift 24"), bold=True)
    rows = [
        ("Overall length", "18'-10\"", "20'-7\"", "20'-9\""),
        ("Sleeps", "2", "2", "4"),
        ("Fresh water / (gal)", "44", "18", "28"),
        ("Gray holding tank", "26 gal", "25 gal", "26 gal"),
        ("Black water capacity", "16 gal", "13 gal", "12 gal"),
        ("Potable water tank / position", "enclosed bay", "inside, under bed", "enclosed bay"),
        ("Heating of potable / water tank", "not heated", "not heated", "heated"),
        ("Place of gray tank", "under floor", "inside, under bed", "enclosed bay"),
        ("Gray tank frost / protection", "12 V heating mat", "unheated", "12 V heating mat"),
        ("Gray tank / insulated", "Yes", "No", "Yes"),
        ("Black tank / position", "inside, under bed", "inside, under bed", "under floor"),
    ]
    top = 77.0
    for label, *values in rows:
        first, *wrapped = label.split(" / ")
        page.row(top, (LABELS, first), *zip((250, 356, 462), values, strict=True))
        for line in wrapped:
            top += 12.5
            page.text(LABELS, top, line)
        top += 17
    found = {f.model: round(f.value) for f in facts_of_pdf(page) if f.field == "black_tank_l"}
    assert found == {"Drift 20": 61, "Drift 22": 49, "Drift 24": 45}


def test_values_for_all_half_way_make_no_column_of_their_own(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen", size=20, bold=True)
    page.text(50, 54, "Drift 2026", size=12, bold=True)
    page.row(86, *zip((168, 268, 367, 467), VANS, strict=True), size=8, bold=True)
    rows = [("Overall length", ("5.41 m", "5.99 m", "6.36 m", "6.40 m")), ("Shore power", "30 A"), ("Awning", "no"),
            *((label, values) for _, label, values in ROWS[1:]),
            ("Sleeps", ("2", "2", "3", "4")), ("Belted seats", ("2", "4", "4", "4")), ("Doors", ("4", "4", "5", "5")),
            ("Cabin battery", ("100 Ah AGM", "200 Ah lithium-ion, 12 V", "400 Ah lithium", "410 Ah lithium")),
            ]  # fmt: skip
    for number, (label, values) in enumerate(rows):
        middle = 353 - page.canvas.stringWidth(values, "Helvetica", 8) / 2 if isinstance(values, str) else 0
        placed = [(middle, values)] if isinstance(values, str) else zip((168, 268, 367, 467), values, strict=True)
        page.row(103 + 17 * number, (56, label), *placed, size=8)
    page.row(103 + 17 * number + 10, (367, "12.8 V"), (467, "heated"), size=8)
    found = {f.model: f.value for f in facts_of_pdf(page) if f.field == "battery_chemistry"}
    assert found == {"Drift 540 E": "agm", **dict.fromkeys((f"Drift {van}" for van in VANS[1:]), "lithium")}


def test_a_word_that_justified_type_sets_apart_once_makes_no_column_either(facts_of_pdf):
    page = Page()
    page.text(50, 30, "Marrowfen", size=20, bold=True)
    page.text(50, 54, "Drift 2026", size=12, bold=True)
    page.row(86, *zip((222, 330, 444), VANS[:3], strict=True), size=8, bold=True)
    wide = "20 mm of polyester fleece"
    rows = [("Overall length", ("5.41 m", "5.99 m", "6.36 m")), ("Wall insulation", (wide, wide, "40 mm of hemp felt")),
            ("Roof covering", (wide, wide, "40 mm of hemp felt")),
            *((label, values[:3]) for _, label, values in ROWS[1:]),
            *((f"Drawer {n}, depth", ("40 cm", "50 cm", "60 cm")) for n in range(14))]  # fmt: skip
    top = 103
    for label, values in rows:
        page.row(top, (56, label), *zip((222, 330, 444), values, strict=True), size=8)
        top += 15
    page.row(
        top, (56, "Heating"), (222, "Diesel heater"), (330, "Gas combined"), (413, "(air"), (444, "Diesel"), size=8
    )
    walls = {f.model: f.value for f in facts_of_pdf(page) if f.field == "insulation_thickness_mm"}
    assert walls == {"Drift 540 E": 20, "Drift 600 P": 20, "Drift 630 RB": 40}


def test_a_strip_where_lone_values_lie_over_one_another_is_no_column(facts_of_pdf):
    """Most rows have one value for the first two vans; wide values of the last two leave a strip between them."""
    page = Page()
    page.text(50, 30, "Marrowfen", size=20, bold=True)
    page.text(50, 54, "Drift 2026", size=12, bold=True)
    middles = {"a": 284, "b": 384, "ab": 334, "c": 493, "d": 651, "cd": 571.5, "abcd": 492}
    page.canvas.setPageSize((800, 842))

    def row(top, label, bold=False, **values):
        page.text(49, top, label, size=8, bold=bold)
        for key, value in values.items():
            width = page.canvas.stringWidth(value, "Helvetica-Bold" if bold else "Helvetica", 8)
            page.text(middles[key] - width / 2, top, value, size=8, bold=bold)

    row(86, "", bold=True, a="19 K", b="19 KT", c="22 R", d="22 RX")
    row(104, "Heater output", ab="3 kW", c="4 kW", d="5 kW")
    row(121, "Heating power draw", ab="36 W", c="44 W", d="92 W")
    row(138, "Heated floor", ab="no", c="optional", d="yes")
    row(155, "Drive", ab="rear", c="rear", d="four wheels")
    row(172, "Roof air conditioner", abcd="on the roof")
    row(
        189,
        "Battery",
        a="100 Ah AGM",
        b="2 x 100 Ah AGM",
        c="300 Ah lithium, 12.8 V",
        d="2 x 300 Ah lithium, 12.8 V, heated",
    )
    row(206, "Solar", a="100 W", b="200 W", c="330 W", d="660 W")
    row(223, "Inverter", ab="1000 W", c="2000 W", d="3000 W")
    row(240, "Shore power", abcd="30 A connection")
    row(257, "Insulation", ab="glass fiber", cd="closed-cell spray foam")
    row(274, "Insulated surfaces", ab="walls, ceiling", c="walls, ceiling, floor", d="walls, ceiling, floor, doors")
    row(291, "Windows", ab="single pane", cd="dual pane")
    row(308, "Insulated shades, cab", a="no", b="no", c="yes", d="yes")
    row(325, "Rated for use down to", ab="-2 C", c="-15 C", d="-30 C")
    facts = facts_of_pdf(page)
    for field, values in (("solar_w", (100, 200, 330, 660)), ("heater_output_w", (3000, 3000, 4000, 5000))):
        found = {f.model: f.value for f in facts if f.field == field}
        assert found == dict(zip(("Drift 19 K", "Drift 19 KT", "Drift 22 R", "Drift 22 RX"), values, strict=True))
