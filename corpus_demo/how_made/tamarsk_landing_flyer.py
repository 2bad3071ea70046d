"""tamarsk_landing_winter_sites_flyer.pdf: a campground's flyer with figures and winter words, but no van; ReportLab."""
import sys

from reportlab.lib import colors
from reportlab.lib.pagesizes import letter
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfgen import canvas
from reportlab.platypus import Paragraph

NAVY, ICE, GOLD = colors.HexColor("#1d2f4f"), colors.HexColor("#dce8f2"), colors.HexColor("#c98f2b")
BODY = ParagraphStyle("b", fontName="Helvetica", fontSize=10.5, leading=15, textColor=NAVY)
LINE = ParagraphStyle("l", parent=BODY, fontSize=10, leading=14.5, leftIndent=12, bulletIndent=0)
SMALL = ParagraphStyle("s", parent=BODY, fontSize=7.6, leading=10)
LEFT = ("Winter site, per night: $34, with 30 A pedestal $41, with 50 A $46", "Sites 12 to 31 take rigs up to 26 ft; ask for longer",
        "Water riser with heat cable, open to −20 °F; bring a heated drinking hose", "Dump station open noon to 2, the valve house is heated",
        "Propane refill: 20 lb cylinder $21, 30 lb $30, frame tanks $3.40 a gallon", "Firewood, dry, 0.75 cu ft: $8")
RIGHT = ("Electric space heater, 1,500 W, to rent: $6", "Insulated window covers, to rent, by the set: $9", "Portable power pack, 1,000 W inverter, 100 Ah lithium: $25",
         "Folding solar panel, 200 W: $12", "Non-toxic RV antifreeze, 1 gal: $7", "Warm room with showers, 40 gal water heater, open all night")
TALK = ("<b>Wednesdays at 7, by the stove: “Why gray tanks freeze first.”</b> Our caretaker Inge has thawed about two hundred of them. She explains heat pads, "
        "skirting, R-values and why four-season is a word and not a number. Free, bring your own mug.")


def block(c, lines, x, y, width):
    for text in lines:
        paragraph = Paragraph(text, LINE, bulletText="•")
        _, height = paragraph.wrap(width, 500)
        y -= height + 3
        paragraph.drawOn(c, x, y)
    return y


def build(path):
    c = canvas.Canvas(path, pagesize=letter)
    c.setTitle("Winter sites")
    width, height = letter
    c.setFillColor(NAVY)
    c.rect(0, height - 210, width, 210, stroke=0, fill=1)
    c.setFillColor(ICE)
    for x, peak in ((40, 70), (150, 110), (290, 80), (420, 120), (540, 90)):
        path_ = c.beginPath()
        path_.moveTo(x - 110, height - 210)
        path_.lineTo(x, height - 210 + peak)
        path_.lineTo(x + 110, height - 210)
        c.drawPath(path_, stroke=0, fill=1)
    c.setFillColor(colors.white)
    c.setFont("Helvetica-Bold", 34)
    c.drawString(54, height - 62, "Open all winter")
    c.setFont("Helvetica", 13)
    c.drawString(56, height - 84, "Tamarsk Landing Campground  ·  winter sites from November 15 to March 31")
    c.setFillColor(GOLD)
    c.setFont("Helvetica-Bold", 15)
    c.drawString(54, height - 246, "On the site")
    c.drawString(318, height - 246, "From the office")
    bottom = min(block(c, LEFT, 54, height - 254, 236), block(c, RIGHT, 318, height - 254, 236))
    c.setFillColor(ICE)
    c.roundRect(54, bottom - 96, 500, 78, 6, stroke=0, fill=1)
    talk = Paragraph(TALK, BODY)
    _, tall = talk.wrap(476, 200)
    talk.drawOn(c, 66, bottom - 28 - tall)
    c.setFillColor(colors.HexColor("#8fa9c4"))
    for x, base, size in ((80, 150, 90), (140, 140, 120), (470, 145, 110), (530, 150, 80)):
        for low in (0, .3, .6):
            path_ = c.beginPath()
            path_.moveTo(x - size * .3 * (1 - low * .6), base + size * low)
            path_.lineTo(x, base + size * (low + .45))
            path_.lineTo(x + size * .3 * (1 - low * .6), base + size * low)
            c.drawPath(path_, stroke=0, fill=1)
    note = Paragraph("No generators between 8 pm and 8 am. Never heat a tent or a vehicle with a cooker or a grill: carbon monoxide kills without smell. Propane is filled by trained staff, by local "
                     "code. Hoses left on an unheated riser belong to the frost. Tamarsk Landing Campground, 1 Shore Loop, Tamarsk Landing. Prices for this winter, tax included.", SMALL)
    _, tall = note.wrap(500, 100)
    note.drawOn(c, 54, 60)
    c.save()


if __name__ == "__main__":
    build(sys.argv[1])
