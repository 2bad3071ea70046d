"""Tables with a rule below each row and none over their heads: wrapped cells, and labels of several lines."""

from tests.reading.drawn import titled


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def test_vans_as_rows_whose_cells_are_broken_in_the_middle_of_the_rows(facts_of_pdf):
    page = titled()
    columns = (40, 120, 210, 270, 330, 400, 460)
    page.text(330, 86, "Wheelbase,", size=7, bold=True)
    heads = ("Van", "Base vehicle", "Drive", "Length, mm", "mm", "Rating*, W", "Sleeps")
    for x, head in zip(columns, heads, strict=True):
        page.text(x, 94 if head == "mm" else 90, head, size=7, bold=True)
    page.rule(36, 106, 540)
    rows = [
        ("Curlew 21", "Bruska Hauler", "35", "front", "5910", "3450", "4000", "2"),
        ("Curlew 24", "Bruska Hauler", "40", "rear", "6380", "4040", "5000", "4"),
        ("Curlew 27", "Bruska Hauler", "45", "rear", "6980", "4400", "6000", "2"),
    ]
    for n, (van, base, more, *rest) in enumerate(rows):
        top = 112 + 24 * n
        page.text(120, top, base, size=7)
        page.row(top + 4, (40, van), *zip(columns[2:], rest, strict=True), size=7)
        page.text(120, top + 8, more, size=7)
        page.rule(36, top + 20, 540)
    page.text(40, 200, "* Heat output of the diesel heater.", size=7)
    facts = facts_of_pdf(page)
    assert by_van(facts, "length_mm") == {"Curlew 21": 5910, "Curlew 24": 6380, "Curlew 27": 6980}
    assert by_van(facts, "chassis") == {
        "Curlew 21": "Bruska Hauler 35", "Curlew 24": "Bruska Hauler 40", "Curlew 27": "Bruska Hauler 45",
    }  # fmt: skip
    assert by_van(facts, "heater_output_w") == {"Curlew 21": 4000, "Curlew 24": 5000, "Curlew 27": 6000}


def test_a_bold_label_of_two_lines_has_the_values_set_between_them(facts_of_pdf):
    page = titled()
    page.row(90, (200, "Curlew 21"), (300, "Curlew 24"), bold=True)
    page.rule(36, 103, 400)
    rows = [
        (("Overall length",), "5.41 m", "5.99 m"),
        (("Overall width (less", "mirrors)"), "2.05 m", "2.10 m"),
        (("Wheelbase",), "3.45 m", "4.04 m"),
        (("Thermal break, ribs", "to panels"), "No", "Yes"),
        (("GVWR",), "3,500 kg", "4,100 kg"),
    ]
    top = 108
    for labels, *values in rows:
        for n, label in enumerate(labels):
            page.text(40, top + 10 * n, label, size=8, bold=True)
        page.row(top + 5 * (len(labels) - 1), (200, values[0]), (300, values[1]), size=8)
        top += 10 * len(labels) + 8
        page.rule(36, top - 4, 400)
    facts = facts_of_pdf(page)
    assert by_van(facts, "width_mm") == {"Curlew 21": 2050, "Curlew 24": 2100}
    assert by_van(facts, "thermal_break") == {"Curlew 21": False, "Curlew 24": True}
    assert by_van(facts, "solar_w") == {}
