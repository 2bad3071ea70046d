"""Spreadsheets saved as web pages: plain cells everywhere, the heads in heavy type by the tags inside them."""

import pytest

ROWS = [
    ("Fresh water, L", "68", "95", "120"),
    ("Grey water, L", "57", "76", "95"),
    ("Heater output, W", "2,000", "4,000", "6,000"),
]


def sheet(title, rows, heavy=1):
    def cell(text, head):
        inner = f"<font face='Grotesk'>{text}</font>"
        return f"<td align='left'>{'<b>' + inner + '</b>' if head else inner}</td>"

    lines = "".join(
        f"<tr>{''.join(cell(text, number < heavy) for text in row)}</tr>" for number, row in enumerate(rows)
    )
    return f"<h1>{title}</h1><table>{lines}</table>"


@pytest.fixture
def stated(read_file, tmp_path):
    """Give a function that reads a workbook and gives what it states of a field, by van."""

    def read(body, field):
        path = tmp_path / "workbook.html"
        path.write_text(
            f"<html lang='en'><body><p>Marrowfen Vans Ltd. Drift line, model year 2027.</p>{body}</body></html>"
        )
        facts = read_file(path).found.facts
        return {(fact.model, fact.value) for fact in facts if fact.field == field and not fact.rejected}

    return read


VANS = sheet(
    "Sheet 1: Vehicle",
    [
        ("Model", "Base vehicle", "Length (mm)", "Sleeps"),
        ("Drift 17", "Quillan Hauler 2500", "5,410", "2"),
        ("Drift 19", "Quillan Hauler 2500", "5,970", "2"),
        ("Drift 21 Winter", "Quillan Hauler 3500", "6,430", "3"),
    ],
)


def test_short_heads_in_heavy_type_over_later_sheets_name_the_vans_of_the_first(stated):
    page = VANS + sheet("Sheet 2: Water and heat", [("Line", "17", "19", "21 Winter"), *ROWS])
    assert stated(page, "fresh_tank_l") == {("Drift 17", 68), ("Drift 19", 95), ("Drift 21 Winter", 120)}
    assert stated(page, "heater_output_w") == {("Drift 17", 2000), ("Drift 19", 4000), ("Drift 21 Winter", 6000)}


def test_a_label_in_heavy_type_beside_plain_values_heads_nothing(stated):
    rows = "".join(f"<tr><td><b>{label}</b></td><td>{value}</td></tr>" for label, value, *_ in ROWS)
    page = f"<h1>Marrowfen Drift 17</h1><table>{rows}</table>"
    assert {value for _, value in stated(page, "fresh_tank_l")} == {68}


STYLES = "<style>td{font:10pt sans-serif}.h1{font-weight:700;background:#d9e1f2}.h2{font:bold 11pt sans-serif}</style>"
UNITS = [
    ("Vehicle", "Unit", "Drift 17", "Drift 19", "Drift 21 GS"),
    ("Length", "mm", "5,410", "5,970", "6,430"),
    ("Height", "mm", "2,640", "2,790", "2,840"),
    ("Sleeps", "", "2", "2", "3"),
    ("Fresh water", "L", "68", "95", "120"),
    ("Heater output", "W", "2,000", "4,000", "6,000"),
]


@pytest.mark.parametrize("head", ["<td class=h1>", "<td class=h2>", '<td style="font-weight: bold">'])
def test_heads_in_heavy_type_by_a_style_name_vans_beside_the_head_of_units(stated, head):
    rows = "".join(
        "<tr>" + "".join(f"{'<td class=x70>' if number else head}{text}</td>" for text in row) + "</tr>"
        for number, row in enumerate(UNITS)
    )
    assert stated(f"{STYLES}<table>{rows}</table>", "fresh_tank_l") == {
        ("Drift 17", 68), ("Drift 19", 95), ("Drift 21 GS", 120)
    }  # fmt: skip
