"""thornquay_wendle_2026.pdf: US brochure of three floorplans, written as flat OpenDocument for LibreOffice Writer."""
import sys

import art
from odf import cell, cell_style, column_style, covered, document, para, picture, style, table

INK, RULE = "#1f2f3d", "0.6pt solid #1f2f3d"
FONT = 'style:font-name="Lato" fo:font-family="Lato"'
STYLES = "".join((
    style("Default", text=f'{FONT} fo:font-size="10.5pt" fo:language="en" fo:country="US"'),
    style("Maker", 'fo:margin-top="0.3in" fo:text-align="end"', f'{FONT} fo:font-size="15pt" fo:letter-spacing="0.12in" fo:color="#a63d2f"'),
    style("Title", 'fo:text-align="end"', f'{FONT} fo:font-size="54pt" fo:font-weight="bold" fo:color="{INK}"'),
    style("Sub", 'fo:text-align="end" fo:margin-bottom="0.4in"', f'{FONT} fo:font-size="15pt" fo:color="#566"'),
    style("H", 'fo:margin-top="0.22in" fo:margin-bottom="0.06in" fo:keep-with-next="always"', f'{FONT} fo:font-size="17pt" fo:font-weight="bold" fo:color="#a63d2f"'),
    style("HP", 'fo:break-before="page" fo:margin-bottom="0.1in"', f'{FONT} fo:font-size="20pt" fo:font-weight="bold" fo:color="#a63d2f"'),
    style("P", 'fo:margin-bottom="0.09in" fo:line-height="135%" fo:text-align="justify"', f'{FONT} fo:font-size="10.5pt"'),
    style("B", 'fo:margin-left="0.22in" fo:text-indent="-0.16in" fo:margin-bottom="0.03in"', f'{FONT} fo:font-size="10pt"'),
    style("Small", 'fo:margin-top="0.05in"', f'{FONT} fo:font-size="7.5pt" fo:color="#444"'),
    style("Picture", 'fo:margin-top="0.1in"'),
    style("Cell", "", f'{FONT} fo:font-size="8.6pt"'),
    style("CellC", 'fo:text-align="center"', f'{FONT} fo:font-size="8.6pt"'),
    style("Head", 'fo:text-align="center"', f'{FONT} fo:font-size="10pt" fo:font-weight="bold" fo:color="#ffffff"'),
    style("Group", 'fo:text-align="center"', f'{FONT} fo:font-size="8.6pt" fo:font-weight="bold" fo:color="#a63d2f"'),
    style("Bold", text='fo:font-weight="bold"', family="text"),
    style("High", text='style:text-position="super 62%"', family="text"),
))
AUTO = "".join((
    column_style("W1", "0.8in"), column_style("W2", "1.75in"), column_style("W3", "1.48in"),
    cell_style("C", f'fo:border="{RULE}" fo:padding="0.03in" style:vertical-align="middle"'),
    cell_style("D", f'fo:border="{RULE}" fo:padding="0.04in" fo:background-color="{INK}"'),
))

# (group, [(label, value, value, value)]); None: the value before it runs on
ROWS = [
    ("Vehicle", [
        ("Built on", "Orvane Lugger 250", "Orvane Lugger 350", "Orvane Lugger 350 Long"),
        ("Powertrain", "3.6 L V6, unleaded gasoline, 280 hp", None, None),
        ("Driven wheels", "Rear", None, "AWD"),
        ("Length × width × height (in)", "214 × 81 × 108", "236 × 81 × 110", "262 × 81 × 113"),
        ("Standing room (in)", "74", "75", "75"),
        ("Wheelbase (in)", "137", "154", "170"),
        ("GVWR (lb)", "8,910", "9,350", "11,020"),
        ("Payload, typical (lb)", "2,050", "1,890", "2,760"),
        ("Seat belts", "4", "4", "5"),
        ("Sleeps", "2", "2", "4"),
        ("Gasoline tank (gal)", "25 ^a^", None, None),
    ]),
    ("Water", [
        ("Fresh (gal)", "20", "28", "33"),
        ("Sinks and shower: gray (gal)", "16", "25", "28"),
        ("Toilet waste: black (gal)", "No black tank", "11", "No black tank"),
        ("Toilet", "Cassette, 4.8 gal", "Fixed, gravity flush", "Cassette, 4.8 gal"),
        ("Fresh tank place", "Inside, behind the wheel well", None, "Inside, under the bed"),
        ("Waste tank place", "Below the floor", None, "Closed bay, below the floor"),
        ("Waste tank heat", "None", "12 V pads", "Furnace duct into the bay"),
        ("Plumbing (PEX)", "All indoors", None, None),
        ("Dump valve", "Below the floor, bare", "Below the floor, foam cap", "In the heated bay"),
        ("Water heater", "2.5 gal, electric", "6 gal, LP", "6 gal, LP and electric"),
    ]),
    ("Heat", [
        ("Furnace", "Gasoline air heater", "LP furnace, ducted air", None),
        ("Furnace rating (Btu/h)", "11,900 ^b^", "18,000 ^c^", None),
        ("Furnace current draw (W)", "34", "46", None),
        ("LP on board", "None", "One 20 lb cylinder", "Frame tank, 9.6 gal usable"),
    ]),
    ("Power", [
        ("House bank", "100 Ah AGM, 12 V", "Two 6 V golf-cart AGM, 210 Ah, in series", "300 Ah LiFePO4, 3,840 Wh"),
        ("Solar (W)", "100", "200", "2 × 200"),
        ("Inverter (W)", "None", "1,000", "3,000"),
        ("Shore cord (A)", "30", None, None),
    ]),
    ("Shell", [
        ("Wall fill", "Mineral wool, 1¼ in", None, "Spray foam, 1¾ in"),
        ("Wall R-value", "R-5", None, "R-9"),
        ("Filled surfaces", "Walls, roof", "Walls, roof", "Walls, roof, floor"),
        ("Galley and lounge windows", "Dual pane; rear doors single pane", "Dual pane", "Dual pane"),
    ]),
]


def matrix():
    rows = [cell("", "D", "Head", 2) + covered(1) + "".join(cell(name, "D", "Head") for name in ("18 K", "21 B", "24 F"))]
    for group, lines in ROWS:
        for position, (label, *values) in enumerate(lines):
            row = cell(group, "C", "Group", rows=len(lines)) if position == 0 else covered(1)
            row += cell(label, "C")
            column = 0
            while column < 3:
                span = 1
                while column + span < 3 and values[column + span] is None:
                    span += 1
                row += cell(values[column], "C", "CellC", columns=span) + covered(span - 1)
                column += span
            rows.append(row)
    return table("Wendle", ["W1", "W2", "W3", "W3", "W3"], rows, head_rows=1)


BODY = "".join((
    picture(art.scene(700, 470, "forest", "#a63d2f", "#f2e6d0"), "7in", "4.7in"),
    para("Maker", "THORNQUAY"),
    para("Title", "Wendle"),
    para("Sub", "Model year 2026\nthree floorplans for people with wet dogs"),
    para("P", "Port Oddney has four hundred houses, one traffic light and a harbor that freezes from the edges in. Thornquay has built "
              "vans in the old net loft since the herring left. You can still smell it when it rains, which is often."),
    para("HP", "Pick your length"),
    para("P", "**Wendle 18 K** is the kitchen one. It has a counter as long as the van is wide, a couch that becomes a bed for two, and room "
              "in any parking lot in Norrick. **Wendle 21 B** puts a bath across the back. We filled it for thirty gallons of fresh "
              "water, because a shower that ends in the middle of a song is not a shower. **Wendle 24 F** is for families: bunks "
              "at the side, a queen bed aft, belts for five."),
    para("P", "The 18 K and the 21 B are honest three-season vans. If you hear otherwise from a salesman, ask for his name and send it "
              "to us. The 24 F is our only four-season floorplan. It passed the night of January 19 in the cold hall of the Norrick "
              "Institute at −8 °F, tanks full, and every tap ran at breakfast."),
    picture(art.scene(700, 300, "night", "#e9e2d0", "#a63d2f"), "7in", "3in"),
    para("H", "Things we are asked"),
    para("P", "**Can I heat with the engine off?** Yes. All three floorplans heat from their own burner. **Can I store it in the yard?** "
              "Yes, drained. The booklet in the glove box has a page for it, with pictures. **Why is there no TV?** Look out of the window."),
    para("P", "**What does it weigh with us in it?** More than you think. Go to a scale with full tanks, both children and the dog."),
    para("HP", "Wendle 2026: the numbers"),
    matrix(),
    para("Small", "^a^ 24 F: 31 gal. ^b^ Output. ^c^ Input; output of the same furnace 14,400 Btu/h. Height is measured over the roof fan, width "
                  "without mirrors. Capacities are nominal, U.S. gallons. GVWR is the limit for the loaded van."),
    para("HP", "What comes with it"),
    *(para("B", "▸ " + line) for line in (
        "Insulated covers for the windshield and both cab doors, in a bag with a name tag",
        "Low-point drains and a winterizing bypass behind the water heater",
        "Smoke and carbon monoxide alarms; LP alarm where there is LP",
        "Bug screens, dimmable lights, two tables on swing arms, a broom",
        "9 ft awning with a crank you can replace at any hardware store")),
    para("H", "What you can add"),
    *(para("B", "▸ " + line) for line in (
        "AWD, 18 K and 21 B: $6,900",
        "12 V pad for the waste tank, 18 K: $540",
        "Inverter, 2,000 W, 18 K: $1,480",
        "Lithium bank, 300 Ah, in place of the AGM bank, 21 B: $3,950",
        "Two 20 lb LP cylinders instead of one, 21 B: $310",
        "Electric floor heat, 24 F: $1,150",
        "Insulated covers for the rear door glass, all floorplans: $260",
        "Bike tray, ladder, tow mirrors, lumber rack")),
    para("H", "Before you light anything"),
    para("P", "A blocked exhaust fills a van with carbon monoxide, which you cannot smell. Clear the snow from around it every time. Test "
              "the alarms weekly. LP lines are for licensed fitters and must meet the code of your state or province. Treat an "
              "unheated waste tank only with non-toxic RV antifreeze, never with engine coolant."),
    para("Small", "Thornquay Inc., 2 Net Loft Lane, Port Oddney, Norrick. Prices in U.S. dollars before tax and freight. We change things when "
                  "we find better ones, and not always in time for the printer. Form W26-2, October 2025."),
))

if __name__ == "__main__":
    open(sys.argv[1], "w", encoding="utf-8").write(document(BODY, AUTO, STYLES))
