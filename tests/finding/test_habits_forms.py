"""The same labels and values in the forms in which pages print them: rows, matrices, bullets, dot leaders, columns.

Each form is one document whose vans all have the same figures; what it states is compared in one go.
"""

import html
import io

import pytest
from reportlab.pdfgen.canvas import Canvas

from tests.finding.conftest import IDENTITY, value_of

VANS = ("Drift 19", "Drift 21", "Drift 24")
# of a region: label, value, what a van's row or line of it states
SHEETS = {
    "US": [
        ("Length / width / height", "250 / 81 / 110 in", {"length_mm": 6350, "width_mm": 2057.4, "height_mm": 2794}),
        ("GVWR/UVW/OCCC", "9,350/7,600/1,750 lb", {"gvwr_kg": 4241.1}),
        ("GCWR", "13,930 lb", {}),
        ("Sleeps", "2 + 1", {"sleeps": 3}),
        ("Fresh water capacity w/heater", "33 gal", {"fresh_tank_l": 124.9}),
        ("Gray tank", "neither insulated nor heated", {"gray_tank_insulated": False, "gray_tank_heat": "none"}),
        ("House battery", "2 x 6 V, 220 Ah in series", {"battery_ah": 220, "battery_wh": 2640}),
        ("Battery heating", "No", {"battery_heated": False}),
        ("DC-DC charger", "60 A", {}),
        ("Solar", "2 x 165 W", {"solar_w": 330}),
        ("Inverter remote", "no", {}),
        ("Walls", "spray foam, 1.5 in", {"insulation_material": "spray_foam", "insulated_surfaces": "walls",
                                         "insulation_thickness_mm": 38.1}),
        ("Roof air conditioner", "13,500 BTU", {}),
        ("DEF tank", "8 gal", {}),
    ],
    "DE": [
        ("Länge/Breite/Höhe", "6358/2050/2590 mm", {"length_mm": 6358, "width_mm": 2050, "height_mm": 2590}),
        ("Leergewicht/zGG", "2850/3500 kg", {"gvwr_kg": 3500}),
        ("Schlaf-/Sitzplätze", "2/4", {"sleeps": 2}),
        ("Frisch-/Abwassertank", "100/92 l", {"fresh_tank_l": 100, "gray_tank_l": 92}),
        ("AdBlue Tankinhalt", "40 l", {}),
        ("Bordbatterie", "12V/100Ah", {"battery_ah": 100, "battery_wh": 1200}),
        ("Batterieheizung", "nein", {"battery_heated": False}),
        ("Ladebooster", "45 A", {}),
        ("Isolierung Wand/Dach/Boden", "25/40/30 mm",
         {"insulation_thickness_mm": 25, "insulated_surfaces": "ceiling+floor+walls"}),
        ("Kühlschrank", "90 l", {}),
    ],
    "FR": [
        ("Longueur / largeur / hauteur", "6358 / 2050 / 2590 mm",
         {"length_mm": 6358, "width_mm": 2050, "height_mm": 2590}),
        ("PTAC", "3 450 kg", {"gvwr_kg": 3450}),
        ("Couchages", "2 + 1", {"sleeps": 3}),
        ("Eaux usées / eau propre", "90 / 100 l", {"fresh_tank_l": 100, "gray_tank_l": 90}),
        ("Chauffage de la batterie", "non", {"battery_heated": False}),
        ("Toit", "laine de chanvre", {"insulation_material": "natural_fiber", "insulated_surfaces": "ceiling"}),
        ("Réfrigérateur", "90 l", {}),
        ("Charge utile", "650 kg", {}),
    ],
}  # fmt: skip
YEARS = {"US": "Model year 2026", "DE": "Modelljahr 2026", "FR": "Millésime 2026"}
COLONS = {"US": ": ", "DE": ": ", "FR": " : "}


def of_one(region, write, head="Marrowfen Drift 21"):
    rows = [(label, value) for label, value, _ in SHEETS[region]]
    return f"{head}\n\n{YEARS[region]}\n\n" + "\n".join(write(label, value) for label, value in rows) + "\n"


def bullets(region):
    text = of_one(region, lambda label, value: f"- {label}{COLONS[region]}{value}", "# Marrowfen Drift 21")
    return "sheet.md", text.encode(), "text"


def dots(region):
    text = of_one(region, lambda label, value: f"{label} {'.' * (60 - len(label) - len(value))} {value}")
    return "sheet.txt", text.encode(), "text"


def pipes(region):
    head = f"# Marrowfen Drift\n\n{YEARS[region]}\n\n| | {' | '.join(VANS)} |\n|---|---|---|---|\n"
    rows = [f"| {label} | {' | '.join([value] * 3)} |" for label, value, _ in SHEETS[region]]
    return "sheet.md", (head + "\n".join(rows) + "\n").encode(), "text"


def page(region, rows):
    cells = "".join("<tr>" + "".join(f"<td>{html.escape(cell)}</td>" for cell in row) + "</tr>" for row in rows)
    text = f"<html><body><h1>Marrowfen Drift</h1><p>{YEARS[region]}</p><table>{cells}</table></body></html>"
    return "sheet.html", text.encode(), "html"


def matrix(region):
    return page(region, [["", *VANS], *([label, *[value] * 3] for label, value, _ in SHEETS[region])])


def vans_as_rows(region):
    rows = [[van, *(value for _, value, _ in SHEETS[region])] for van in VANS]
    return page(region, [["", *(label for label, _, _ in SHEETS[region])], *rows])


def columns_of_a_pdf(region):
    buffer = io.BytesIO()
    canvas = Canvas(buffer, invariant=1)
    canvas.setFont("Helvetica-Bold", 18)
    canvas.drawString(60, 780, "Marrowfen Drift")
    canvas.setFont("Helvetica", 9)
    canvas.drawString(60, 760, YEARS[region])
    for number, row in enumerate([["", *VANS], *([label, *[value] * 3] for label, value, _ in SHEETS[region])]):
        canvas.setFont("Helvetica-Bold" if not number else "Helvetica", 7)
        for place, cell in zip((60, 180, 310, 440), row, strict=True):
            canvas.drawString(place, 730 - 16 * number, cell)
    canvas.save()
    return "sheet.pdf", buffer.getvalue(), "pdf"


FORMS = (bullets, dots, pipes, matrix, vans_as_rows, columns_of_a_pdf)


@pytest.mark.parametrize("form", FORMS, ids=[form.__name__ for form in FORMS])
@pytest.mark.parametrize("region", SHEETS)
def test_a_sheet_states_the_same_in_every_form(settled_of, region, form):
    name, data, kind = form(region)
    expected = {field: value for _, _, told in SHEETS[region] for field, value in told.items()}
    stated = {}
    for (model, field, equipment), row in settled_of(data, name=name, kind=kind).items():
        if equipment == "standard" and field not in IDENTITY:
            stated.setdefault(model, {})[field] = value_of(row)
    assert len(stated) == (1 if form in (bullets, dots) else 3)
    for model, fields in stated.items():
        assert fields.keys() == expected.keys(), (model, fields.keys() ^ expected.keys())
        for field, told in expected.items():
            exact = isinstance(told, str | bool)
            assert fields[field] == (told if exact else pytest.approx(told, rel=0.006)), (model, field)
