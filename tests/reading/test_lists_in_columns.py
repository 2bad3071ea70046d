"""Lists of equipment that flow from one column to the next keep the heading under which they began."""

from specscan.reading.read import read_document
from tests.reading.drawn import Page

FIRST = ("Heated floor", "Front-wheel drive", "Awning with light strip", "Insulated gray tank", "Reversing camera")
SECOND = ("Water heater of 10 litres", "Winterizing bypass", "Dual-pane windows")
OPTIONS = ("Bike rack for two", "Composting toilet")
THIRD = ("2,000 W inverter", "Insulated fresh tank", "Heated dump valve", "Roof fan with rain sensor")


def brochure(below="", first_top=112):
    """Draw three columns of one list; its second heading stands in the second, the third has none."""
    page = Page()
    page.text(40, 40, "Quillmoor Sandpiper 24, model year 2026", size=20, bold=True)
    page.text(40, 80, "Equipment", size=14, bold=True)
    page.text(40, first_top, "Standard", size=10, bold=True)
    for place, item in enumerate(FIRST):
        page.text(40, first_top + 13 + 11 * place, f"* {item}")
    for place, item in enumerate(SECOND):
        page.text(210, 106 + 11 * place, f"* {item}")
    page.text(210, 140, "Options", size=10, bold=True)
    for place, item in enumerate(OPTIONS):
        page.text(210, 153 + 11 * place, f"* {item}")
    for place, item in enumerate(THIRD):
        page.text(380, 106 + 11 * place, f"* {item}")
    if below:
        page.text(40, first_top + 13 + 11 * len(FIRST), below)
    return page


def test_a_list_goes_on_in_the_next_column_under_its_last_heading(facts_of_pdf):
    said = {fact.field: str(fact.availability) for fact in facts_of_pdf(brochure())}
    assert said["winterizing_bypass"] == said["heated_floor"] == said["gray_tank_insulated"] == "standard"
    assert said["toilet"] == said["fresh_tank_insulated"] == said["inverter_w"] == "optional"


def test_a_sentence_right_below_columns_does_not_hide_them(facts_of_pdf):
    page = brochure("The fridge holds 103 litres and cheese enough for all of a long and rainy week away.")
    said = {fact.field: str(fact.availability) for fact in facts_of_pdf(page)}
    assert said["winterizing_bypass"] == said["gray_tank_insulated"] == "standard"
    assert said["toilet"] == said["fresh_tank_insulated"] == "optional"


def test_items_that_go_on_with_codes_of_vans_or_with_a_noun_stay_whole(examiner):
    page = Page()
    page.text(40, 40, "Serie", size=11, bold=True)
    lines = (
        "* Wasserleitungen beheizt, nur 590FB,", "680ST", "* Warmluftkanal zum Abwassertank, nur", "590FB, 600TB",
        "* Aufstelldach mit Doppelbett, für vier", "Schlafplätze", "* Markise mit Lichtleiste",
    )  # fmt: skip
    for place, line in enumerate(lines):
        page.text(40, 56 + 11 * place, line)
    document = read_document(page.data(), "knutt.pdf", "pdf", examiner.hints)
    texts = [passage.text for passage in document.passages]
    assert "Wasserleitungen beheizt, nur 590FB, 680ST" in texts
    assert "Warmluftkanal zum Abwassertank, nur 590FB, 600TB" in texts
    assert "Aufstelldach mit Doppelbett, für vier Schlafplätze" in texts


def test_brackets_that_are_open_at_the_end_of_a_line_close_in_the_next(facts_of_pdf):
    page = Page()
    page.text(40, 40, "Quillmoor Knot 2026", size=20, bold=True)
    page.row(80, (150, "Knot 640 ST"), (250, "Knot 660 P"), (350, "Knot 660 LX"), bold=True)
    for place, label in enumerate(("Overall length", "Overall width", "Overall height")):
        page.row(93 + 12 * place, (40, label), (150, f"2.{place}4 m"), (250, f"2.{place}5 m"), (350, f"2.{place}6 m"))
    page.text(40, 140, "Options", size=11, bold=True)
    lines = (
        "* Heat tape on the water lines (640", "ST, 660 LX)", "* Insulated gray water tank of all but the small",
        "(660 P)", "* Composting toilet",
    )  # fmt: skip
    for place, line in enumerate(lines):
        page.text(40, 156 + 11 * place, line)
    facts = facts_of_pdf(page)
    assert {f.model for f in facts if f.field == "water_lines_heated"} == {"Knot 640 ST", "Knot 660 LX"}
    assert {f.model for f in facts if f.field == "gray_tank_insulated"} == {"Knot 660 P"}
    assert {str(f.availability) for f in facts if f.field == "toilet"} == {"optional"}


def test_codes_of_vans_parted_by_bars_below_the_year_of_their_range_are_a_line_of_their_own(examiner):
    page = Page()
    page.text(40, 40, "QUILLMOOR", size=20, bold=True)
    page.text(40, 66, "Sandpiper: the 2026 model year")
    page.text(40, 78, "600 | 640 | 700")
    page.text(40, 100, "Equipment by model", size=14, bold=True)
    page.text(40, 120, "A good van is a short list of things that work.")
    document = read_document(page.data(), "sandpiper.pdf", "pdf", examiner.hints)
    texts = [passage.text for passage in document.passages]
    assert "Sandpiper: the 2026 model year" in texts
    assert "600 | 640 | 700" in texts
