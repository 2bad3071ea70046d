"""Papers that write of vans are not who builds them; sheets of one van with boxes to tick before the codes."""

PAPER = """THE PLOVER · {paper}

# Two vans for cold water

{text} We took the Drift 19 and the Drift 21 to the shore.

## Drift 19

Length 19 ft 8 in. Width 6 ft 9 in. Wheelbase 155 in. GVWR 9,070 lb. Fresh water 28 gal.

## Drift 21

Length 22 ft 8 in. Width 6 ft 9 in. Wheelbase 170 in. GVWR 9,970 lb. Fresh water 38 gal.
"""


def test_the_line_of_a_magazine_names_no_maker(vans_of):
    text = PAPER.format(
        paper="A MAGAZINE FOR PEOPLE WHO WALK", text="Marrowfen has redrawn its Drift for model year 2027."
    )
    assert vans_of(text) == {("Marrowfen", "Drift 19", 2027), ("Marrowfen", "Drift 21", 2027)}
    text = PAPER.format(paper="A QUARTERLY FOR WALKERS", text="The Drift has been redrawn for model year 2027.")
    assert {maker for maker, _, _ in vans_of(text)} <= {None, ""}


SHEET = """MARROWFEN                                                BUILD SHEET

  [X] fitted to this van     [ ] not fitted to this van
  STD  comes with every Drift 19 S
  OPT  option
  N/A  not available on the Drift 19 S

  MODEL ............ Drift 19 S
  BUILT BY ......... Marrowfen
  MODEL YEAR ....... 2026
  LENGTH ........... 19 ft 7 in
  WIDTH ............ 6 ft 8 in
  GVWR ............. 9,050 lb

  [X] W-01  Fresh tank, 30 gal, inside the cabin                STD
  [X] W-05  Gray tank, 22 gal, under the floor                  STD
  [X] W-06  Gray tank insulated                                 OPT
  [ ] W-09  Black tank, 10 gal, with flush toilet               N/A
  [X] W-11  Cassette toilet, 5 gal                              STD
  [ ] W-12  Composting toilet in place of W-11                  OPT
  [X] W-20  Dump valve in heated compartment                    STD
"""


def test_boxes_to_tick_before_codes_leave_the_mark_behind_the_thing(facts_of):
    told = {(f.field, f.value if f.num is None else round(f.num), f.availability) for f in facts_of(SHEET)}
    assert ("fresh_tank_l", 114, "standard") in told
    assert ("gray_tank_insulated", True, "optional") in told
    assert ("black_tank_l", 38, "not_available") in told
    assert ("toilet", "cassette", "standard") in told
    assert ("toilet", "dry", "optional") in told
    assert ("dump_valve_protection", "heated_compartment", "standard") in told


CHOICE = """<h1>Marrowfen Drift 20</h1><p>Model year 2026. Your build, saved on 3 October.</p>
<table>{rows}</table><table><tr><td>Length</td><td>20 ft 2 in</td></tr><tr><td>Wheelbase</td><td>148 in</td></tr>
<tr><td>GVWR</td><td>9,070 lb</td></tr></table><p>Marrowfen LLC, Mill Street, Farrow.</p>"""
ROWS = (
    ("☑", "Fresh tank, 24 gal, inside the heated cabin", "Included"),
    ("☐", "Gray tank heating pad, 12 V electric", "Option, +$420"),
    ("☑", "Gray tank insulation jacket", "Option, +$260 (you chose this)"),
    ("☑", "Inverter, 2,000 W", "Included"),
    ("—", "Thermal break between ribs and panels", "Not available on this van"),
)


def test_what_was_ticked_is_no_label_of_the_thing_beside_it(facts_of):
    rows = "".join("<tr>" + "".join(f"<td>{cell}</td>" for cell in row) + "</tr>" for row in ROWS)
    told = {(f.field, f.value if f.num is None else round(f.num), f.availability)
            for f in facts_of(CHOICE.format(rows=rows), "x.html")}  # fmt: skip
    assert ("fresh_tank_l", 91, "standard") in told
    assert ("gray_tank_heat", "electric_pad", "optional") in told
    assert ("gray_tank_insulated", True, "optional") in told
    assert ("inverter_w", 2000, "standard") in told
    assert ("thermal_break", True, "not_available") in told
