"""murrinjal_range_2026.pdf: Australian range sheet, models as rows, ReportLab.

The pages are stored upright with /Rotate 90, as a print shop delivers landscape work.
"""
import sys

from reportlab.lib import colors
from reportlab.lib.pagesizes import A4
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont
from reportlab.pdfgen import canvas
from reportlab.platypus import Paragraph, Table, TableStyle

LATO = "/usr/share/fonts/truetype/lato/Lato-%s.ttf"
for name in ("Regular", "Bold", "Black"):
    pdfmetrics.registerFont(TTFont("Lato-" + name, LATO % name))
pdfmetrics.registerFontFamily("Lato-Regular", normal="Lato-Regular", bold="Lato-Bold")
SHORT, LONG = A4
RUST, SAND, SOIL = colors.HexColor("#b4552d"), colors.HexColor("#f7ead8"), colors.HexColor("#4a2a1c")
BODY = ParagraphStyle("b", fontName="Lato-Regular", fontSize=10.5, leading=15.5, textColor=SOIL)
CELL = ParagraphStyle("c", fontName="Lato-Regular", fontSize=7.9, leading=9.6, textColor=colors.black)
NAME = ParagraphStyle("n", parent=CELL, fontName="Lato-Bold", textColor=RUST)
HEAD = ParagraphStyle("h", parent=CELL, fontName="Lato-Bold", fontSize=7.6, leading=9.2, textColor=SOIL)
NOTE = ParagraphStyle("f", fontName="Lato-Regular", fontSize=7.2, leading=9.4, textColor=SOIL)

MODELS = ("Currawend 54", "Currawend 60", "Currawend 60 HC", "Tawnyback 68")
SIZE = (("Model", "Base van", "Driven wheels", "L × W × H (m)", "Headroom (m)", "Wheelbase (mm)", "GVM (kg)", "Tare (kg)", "Berths", "Diesel tank (L)"),
        ("Rosvik Hauler 35 M", "front", "5.55 × 2.06 × 2.62", "1.89", "3500", "3500", "2840", "2", "80"),
        ("Rosvik Hauler 35 L", "front", "6.02 × 2.06 × 2.72", "1.92", "4040", "3500", "3010", "2", "90"),
        ("Rosvik Hauler 45 L", "all four", "6.02 × 2.06 × 2.86", "1.92", "4040", "4495", "3390", "2", "90"),
        ("Rosvik Hauler 45 XL", "rear", "6.84 × 2.08 × 2.94", "1.97", "4300", "4495", "3520", "4", "105"))
SIZE_W = (92, 92, 62, 104, 62, 66, 56, 56, 50, 64)
WATER = (("Model", "Fresh / grey / black (L)", "Fresh tank", "Grey tank", "Grey tank warming", "Dunny", "Water lines", "Lines lagged", "Dump valve", "Hot water (L)"),
         ("80 / 50 / nil", "indoors", "under floor", "not warmed", "portable, 12 L", "indoors", "no", "bare", "nil"),
         ("110 / 80 / nil", "indoors", "under floor", "12 V pad, option", "cassette, 18 L", "indoors", "yes", "bare", "10"),
         ("110 / 80 / nil", "indoors", "heated locker", "warm air off the heater", "cassette, 18 L", "indoors", "yes", "heated locker", "10"),
         ("140 / 100 / 55", "indoors", "under floor, lagged", "12 V pad", "fixed, flushes to black tank", "part indoors, part under floor", "yes", "lagged boot", "14"))
WATER_W = (92, 92, 58, 74, 76, 76, 76, 50, 58, 52)
POWER = (("Model", "Heater", "Heat (kW)†", "Diesel burnt, flat out (L/h)", "Draws (W)", "LPG bottles", "House battery", "Solar (W)", "Inverter (W)"),
         ("diesel air heater", "2.0", "0.26", "28", "1 × 4 kg", "100 Ah AGM", "160", "nil"),
         ("diesel air heater", "4.0", "0.51", "42", "1 × 4 kg", "120 Ah lithium, 12.8 V", "200", "1000, option"),
         ("diesel hydronic", "5.0", "0.63", "86", "nil", "2 × 120 Ah lithium, 12.8 V, with heat pads", "2 × 200", "2000"),
         ("LPG air-and-water unit, two-in-one", "6.4", "see manual", "58", "2 × 9 kg", "300 Ah lithium, 12.8 V", "600", "3000"))
POWER_W = (92, 116, 62, 78, 56, 62, 128, 56, 54)
SHELL = (("Model", "Wall insulation", "Insulated", "Wall R-value (m²K/W)", "Thermal break", "Living-area windows", "Cab shades, insulated", "Rear door shades, insulated", "Floor heating", "Suits nights down to"),
         ("polyester wool, 20 mm", "walls, roof", "0.5", "no", "single", "option", "not offered", "no", "5 °C"),
         ("polyester wool, 30 mm", "walls, roof, floor", "0.75", "no", "double", "yes", "option", "no", "−2 °C"),
         ("XPS board and reflective foil, 35 mm", "walls, roof, floor, doors", "1.0", "yes", "double", "yes", "yes", "option", "−18 °C"),
         ("fibreglass batts, 40 mm", "walls, roof, floor", "0.9", "no", "double", "yes", "option", "no", "−5 °C"))
SHELL_W = (92, 96, 84, 62, 52, 60, 62, 72, 58, 66)

STORY = [
    "Wirrabatta is eleven hours from anywhere with a traffic light. The works is the old shearing shed, the test track is the road to "
    "the tip, and the quality department is a kelpie called Mavis who refuses to ride in anything that rattles.",
    "We build two series. The <b>Currawend</b> is the small one, in three versions. The <b>Tawnyback 68</b> is the big one, with bunks, "
    "a proper loo with its own black tank, and 800 watts of sun on the roof for the fridge that never has enough beer in it. The "
    "Tawnyback's black tank is lagged, hangs under the floor beside the grey one and has its own 12 V pad.",
    "Most of our customers chase the warm. If you chase the snow instead, up past Mount Dunderby where the gums go sideways, you want the "
    "<b>Currawend 60 HC</b>. HC is High Country. It is the only four-season van we make, and we will talk you out of the others if you "
    "tell us you have skis.",
    "On every van: 2.2 L turbo-diesel, 15 A caravan inlet, a winter drain kit, a carbon monoxide alarm, and an LPG compliance plate where "
    "there is LPG. Never sleep with a cooker lit.",
]
OPTIONS = ("Currawend 60: second lithium battery, 240 Ah in all, $2,150", "Tawnyback 68: all-wheel drive, $14,900",
           "Tawnyback 68: diesel air-and-water unit instead of LPG, 5.5 kW heat output, $1,980",
           "Currawend 54: diesel burner does not change, but a 10 L hot-water tank can be added, $890", "All: bull bar, snorkel, second awning")


def wrap(cells, style):
    return [Paragraph(cell, style) for cell in cells]


def sheet(data, widths):
    rows = [wrap(data[0], HEAD)] + [[Paragraph(model, NAME)] + wrap(cells, CELL) for model, cells in zip(MODELS, data[1:])]
    table = Table(rows, colWidths=widths)
    table.setStyle(TableStyle([("BACKGROUND", (0, 0), (-1, 0), SAND), ("LINEBELOW", (0, 0), (-1, -1), .4, RUST), ("VALIGN", (0, 0), (-1, -1), "MIDDLE"),
                               ("LEFTPADDING", (0, 0), (-1, -1), 4), ("RIGHTPADDING", (0, 0), (-1, -1), 3), ("TOPPADDING", (0, 0), (-1, -1), 3.5),
                               ("BOTTOMPADDING", (0, 0), (-1, -1), 3.5)]))
    return table


def turn(c):
    """Draw as if the page lay on its side."""
    c.setPageRotation(90)
    c.transform(0, 1, -1, 0, SHORT, 0)


def put(c, flowable, x, top, width):
    _, height = flowable.wrap(width, 1000)
    flowable.drawOn(c, x, top - height)
    return top - height


def title(c, text, x, y, size=15):
    c.setFillColor(RUST)
    c.setFont("Lato-Black", size)
    c.drawString(x, y, text)


def hills(c, y):
    for colour, points in (("#e8b483", (0, 60, 130, 120, 300, 70, 480, 140, 690, 80, 842, 110)), ("#c9733f", (0, 20, 200, 70, 420, 30, 640, 84, 842, 40))):
        path = c.beginPath()
        path.moveTo(0, y)
        for i in range(0, len(points), 2):
            path.lineTo(points[i], y + points[i + 1])
        path.lineTo(LONG, y)
        c.setFillColor(colors.HexColor(colour))
        c.drawPath(path, stroke=0, fill=1)


def van(c, x, y, s):
    c.setFillColor(colors.HexColor("#f4f1ea"))
    c.roundRect(x, y + 8 * s, 110 * s, 50 * s, 5 * s, stroke=0, fill=1)
    c.roundRect(x + 90 * s, y + 8 * s, 45 * s, 26 * s, 5 * s, stroke=0, fill=1)
    c.setFillColor(colors.HexColor("#6d8796"))
    for dx in (12, 52, 92):
        c.roundRect(x + dx * s, y + 36 * s, (26 if dx < 90 else 16) * s, 14 * s, 2 * s, stroke=0, fill=1)
    c.setFillColor(SOIL)
    for dx in (26, 108):
        c.circle(x + dx * s, y + 8 * s, 9 * s, stroke=0, fill=1)


def build(path):
    c = canvas.Canvas(path, pagesize=(LONG, SHORT))  # it swaps them for a turned page
    c.setTitle("Murrinjal range")
    turn(c)
    hills(c, 0)
    van(c, 600, 40, 1.5)
    title(c, "MURRINJAL", 50, 530, 40)
    c.setFillColor(SOIL)
    c.setFont("Lato-Regular", 14)
    c.drawString(52, 508, "Range sheet, model year 2026  ·  Currawend  ·  Tawnyback")
    top = 480
    for text in STORY:
        top = put(c, Paragraph(text, BODY), 52, top, 520) - 8
    c.showPage()
    turn(c)
    for heading, data, widths, top in (("Size and mass", SIZE, SIZE_W, 535), ("Water and waste", WATER, WATER_W, 330)):
        title(c, heading, 60, top + 8)
        put(c, sheet(data, widths), 60, top, 722)
    put(c, Paragraph("nil: not fitted. Option: can be had at extra cost. Height with roof hatch; width without mirrors. Tanks are measured to the brim. "
                     "GVM is what the loaded van may weigh.", NOTE), 60, 70, 722)
    c.showPage()
    turn(c)
    for heading, data, widths, top in (("Heat and power", POWER, POWER_W, 545), ("Shell", SHELL, SHELL_W, 380)):
        title(c, heading, 60, top + 8)
        put(c, sheet(data, widths), 60, top, 722)
    title(c, "Options worth asking about", 60, 178)
    top = 172
    for line in OPTIONS:
        top = put(c, Paragraph("– " + line, CELL), 60, top, 722) - 1.5
    put(c, Paragraph("† Heat output; Tawnyback 68: gas input, upper stage. nil: not fitted. Option: can be had at extra cost. The last column is our own "
                     "advice, with the heater on. Gas work is for licensed gasfitters. Murrinjal Pty Ltd, 1 Shed Road, Wirrabatta. Prices in dollars, drive-away "
                     "extra. Printed June 2025; subject to change.", NOTE), 60, 84, 722)
    c.save()


if __name__ == "__main__":
    build(sys.argv[1])
