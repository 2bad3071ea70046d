"""halvenny_skerrow_pricelist_2026.pdf: two sheets of a spreadsheet, flat OpenDocument printed by LibreOffice Calc."""
import sys
from xml.sax.saxutils import escape

from odf import SPACES

BASE = [
    ("Item", "Skerrow 20", "Skerrow 24 LX"),
    ("#Platform",),
    ("Base vehicle", "Orvane Lugger 250 High", "Orvane Lugger 350 Long"),
    ("Engine", "3.0 L turbo-diesel V6", "3.0 L turbo-diesel V6"),
    ("Driveline", "RWD", "RWD"),
    ("O.A. length", "239 in", "276 in"),
    ("O.A. width, mirrors off", "80.5 in", "80.5 in"),
    ("O.A. height incl. A/C", "112 in", "114 in"),
    ("Interior height", "75 in", "76 in"),
    ("Wheelbase", "155 in", "170 in"),
    ("GVWR / GCWR", "9,590 lb / 14,500 lb", "11,020 lb / 15,250 lb"),
    ("Sleeps", "up to 2", "up to 3"),
    ("Seat belts", "4", "4"),
    ("Fuel tank", "24 US gal", "24 US gal"),
    ("#Plumbing",),
    ("Fresh tank", "24 US gal, in cabin", "32 US gal, in cabin"),
    ("Grey tank", "20 US gal, under floor", "28 US gal, under floor"),
    ("Black tank", "none", "12 US gal, under floor"),
    ("Toilet", "cartridge (cassette), 4.9 US gal", "china bowl, flushes to black tank"),
    ("Heat on any tank", "none, see W1", "none, see W1"),
    ("Water lines", "all in cabin", "all in cabin"),
    ("Waste valves", "exposed behind skirt", "exposed behind skirt"),
    ("Winterizing bypass", "yes", "yes"),
    ("Water heater", "LP, on demand", "LP, 6 US gal"),
    ("#Heat and LP",),
    ("Furnace", "LP, forced air, 16,000 BTU/h in", "LP, forced air, 20,000 BTU/h in"),
    ("LP supply", "two 11 lb cylinders", "frame tank, 13.0 US gal w.c."),
    ("In-floor heat", "no", "no, see W2"),
    ("#Electrical",),
    ("House batteries", "two 100 Ah wet-cell lead-acid", "two 100 Ah AGM"),
    ("Solar", "none, roof port only", "190 W"),
    ("Inverter", "none", "1,500 W"),
    ("Shore power", "30 A", "30 A"),
    ("#Body",),
    ("Insulation, walls and ceiling", "fibreglass batt, 1.5 in, R-5", "fibreglass batt, 1.5 in, R-5"),
    ("Living-area glass", "dual pane, single pane in rear doors", "dual pane"),
]
BASE_NOTES = ("in: burner input. w.c.: water capacity; a tank is filled to 80 % of it. Capacities in US gallons. GVWR: gross vehicle weight rating.",
              "As delivered at this price both Skerrows are three-season vans. If you mean to ski, read W1 and W2 on the next sheet before you sign.")
OPTIONS = [
    ("Code", "Option or package", "Skerrow 20", "Skerrow 24 LX"),
    ("#Packages",),
    ("W1", "Winter One: 12 V heat pads on all waste tanks; heat cable along the water lines; insulated boots over the waste valves; "
           "insulated covers for windshield and cab doors", "$3,980", "$4,450"),
    ("W2", "Winter Two (order with W1): diesel hydronic heater, 17,000 BTU/h output, replaces the LP furnace; warm-water floor heat; glycol loop "
           "on the fresh tank; 2 in spray foam, R-12, in walls, ceiling and floor instead of the batts. Built for −22 °F (−30 °C) outside", "N.O.", "$12,800"),
    ("#Power",),
    ("B1", "Lithium bank, 300 Ah, 12.8 V, replaces the batteries", "$3,600", "$3,300"),
    ("B2", "Lithium bank, 600 Ah, 12.8 V, self-heating, replaces the batteries", "$8,400", "$7,900"),
    ("S1", "Solar, 380 W in all", "$1,900", "$980"),
    ("I1", "Inverter, 2,000 W", "$1,450", "$650"),
    ("G1", "LP generator, 2.8 kW", "N.O.", "$5,200"),
    ("#Chassis and cabin",),
    ("D1", "All-wheel drive", "$8,700", "N.O."),
    ("L1", "Lifting roof with bed, sleeps 4 in all", "$12,900", "N.O."),
    ("K1", "Second fresh tank, 40 US gal in all", "N.O.", "$1,100"),
    ("R1", "Insulated covers for rear door glass", "$290", "STD"),
    ("A1", "Power awning, 10 ft", "$1,650", "STD"),
    ("C1", "Oven in place of drawers", "$720", "$720"),
    ("T1", "Trailer wiring, 7-pin, 5,000 lb", "$410", "STD"),
]
OPTION_NOTES = ("A price: can be ordered at that price. STD: in the base price. N.O.: not offered on this model.",
                "Dollars before tax and freight. Options add weight and reduce payload. LP, 120 V and heater work by licensed trades to local code; the carbon monoxide and LP "
                "alarms stay in every van. Halvenny Inc., 400 Mill Road, Coldharrow. List HS-26-B, effective December 1, 2025. Supersedes HS-26-A.")


def cell(text, style, span=1):
    more = f' table:number-columns-spanned="{span}"' if span > 1 else ""
    return (f'<table:table-cell table:style-name="{style}" office:value-type="string"{more}><text:p>{escape(text)}</text:p></table:table-cell>'
            + "<table:covered-table-cell/>" * (span - 1))


def row(cells, style="R"):
    return f'<table:table-row table:style-name="{style}">{cells}</table:table-row>'


def sheet(name, title, subtitle, widths, data, notes, centred):
    count = len(widths)
    rows = [row(cell(title, "T", count), "RT"), row(cell(subtitle, "S", count)), row(cell("", "N", count))]
    for number, line in enumerate(data):
        if line[0].startswith("#"):
            rows.append(row(cell(line[0][1:], "G", count)))
        else:
            styles = ["H"] * count if number == 0 else ["C"] * (count - centred) + ["M"] * centred
            rows.append(row("".join(map(cell, line, styles))))
    rows.append(row(cell("", "N", count)))
    rows += [row(cell(note, "N", count), "RN") for note in notes]
    columns = "".join(f'<table:table-column table:style-name="{width}"/>' for width in widths)
    return f'<table:table table:name="{name}" table:style-name="TA">{columns}{"".join(rows)}</table:table>'


def cell_style(name, cell_properties, text, paragraph=""):
    return (f'<style:style style:name="{name}" style:family="table-cell"><style:table-cell-properties {cell_properties}/>'
            f'<style:paragraph-properties {paragraph}/><style:text-properties style:font-name="Liberation Sans" fo:font-family="Liberation Sans" {text}/></style:style>')


def build():
    line = 'fo:border="0.5pt solid #8795a1" fo:padding="0.03in" fo:wrap-option="wrap" style:vertical-align="middle"'
    styles = "".join((
        cell_style("T", 'style:vertical-align="middle"', 'fo:font-size="20pt" fo:font-weight="bold" fo:color="#123a5a"'),
        cell_style("S", "", 'fo:font-size="10pt" fo:color="#555555"'),
        cell_style("H", line + ' fo:background-color="#123a5a"', 'fo:font-size="9pt" fo:font-weight="bold" fo:color="#ffffff"', 'fo:text-align="center"'),
        cell_style("G", line + ' fo:background-color="#d8e4ee"', 'fo:font-size="9pt" fo:font-weight="bold" fo:color="#123a5a"'),
        cell_style("C", line, 'fo:font-size="9pt"'),
        cell_style("M", line, 'fo:font-size="9pt"', 'fo:text-align="center"'),
        cell_style("N", 'fo:wrap-option="wrap"', 'fo:font-size="8pt" fo:color="#333333"'),
        *(f'<style:style style:name="{name}" style:family="table-column"><style:table-column-properties style:column-width="{width}"/></style:style>'
          for name, width in (("K", "0.55in"), ("L", "2.1in"), ("W", "4.2in"), ("V", "2.55in"), ("U", "1.25in"))),
        *(f'<style:style style:name="{name}" style:family="table-row"><style:table-row-properties {properties}/></style:style>'
          for name, properties in (("R", 'style:use-optimal-row-height="true"'), ("RT", 'style:row-height="0.4in" style:use-optimal-row-height="false"'),
                                   ("RN", 'style:row-height="0.5in" style:use-optimal-row-height="false"'))),
        '<style:style style:name="TA" style:family="table" style:master-page-name="MP"><style:table-properties table:display="true"/></style:style>',
        '<style:page-layout style:name="PL"><style:page-layout-properties fo:page-width="8.5in" fo:page-height="11in" fo:margin="0.6in" '
        'style:scale-to-X="1" style:scale-to-Y="1" style:print="objects"/></style:page-layout>'))
    body = sheet("Base", "HALVENNY  Skerrow 20 and 24 LX", "2026 model year: price list and equipment. Sheet 1 of 2, what the base price buys ($118,400 / $139,900)",
                 ["L", "V", "V"], BASE, BASE_NOTES, 2)
    body += sheet("Options", "Skerrow 2026 options", "Sheet 2 of 2, what you can add", ["K", "W", "U", "U"], OPTIONS, OPTION_NOTES, 2)
    return (f'<?xml version="1.0" encoding="UTF-8"?><office:document {SPACES} office:version="1.3" '
            f'office:mimetype="application/vnd.oasis.opendocument.spreadsheet"><office:automatic-styles>{styles}</office:automatic-styles>'
            f'<office:master-styles><style:master-page style:name="MP" style:page-layout-name="PL"><style:header style:display="false"/><style:footer style:display="false"/>'
            f'</style:master-page></office:master-styles><office:body><office:spreadsheet>{body}</office:spreadsheet></office:body></office:document>')


if __name__ == "__main__":
    open(sys.argv[1], "w", encoding="utf-8").write(build())
