"""Items of lists that letters mark, as the legend explains them; lines that only begin with a letter are none."""

from specscan.reading.read import read_document
from tests.reading.drawn import Page


def page(*lines):
    made = Page()
    made.text(40, 30, "Pellmarsh Curlew 21", size=20, bold=True)
    made.text(40, 60, "Model year 2026. Overall length 5.41 m. Wheelbase 3.45 m. GVWR 3,500 kg. Sleeps 2.")
    for n, line in enumerate(lines):
        made.text(40, 90 + 14 * n, line)
    return made


def told(facts, field):
    return {(fact.value, fact.availability) for fact in facts if fact.field == field}


LEGEND = "x = included   o = available as an option"


def test_letters_with_a_legend_mark_items_each_of_its_own(facts_of_pdf):
    items = (
        "x No black tank",
        "o Insulated rear window covers",
        "x 21 gal of fresh water",
        "o 12 V heat pad on gray tank",
    )
    facts = facts_of_pdf(
        page(LEGEND, "", *items, "x Inverter, 600 W", "x Two-burner cooktop", "o Awning with LED strip")
    )
    assert told(facts, "black_tank_l") == {(0, "standard")}
    assert told(facts, "black_tank_insulated") == set()
    assert told(facts, "rear_shades_insulated") == {(True, "optional")}
    assert told(facts, "gray_tank_heat") == {("electric_pad", "optional")}
    assert told(facts, "inverter_w") == {(600, "standard")}


def test_letters_among_bullets_mark_items_too(facts_of_pdf):
    items = ("• Fresh water tank, 21 gal", "O Solar array of 800 W in total", "• Gray water tank, 32 gal", "O AWD")
    facts = facts_of_pdf(page("• standard   O available as an option", "", *items, "O Heated floor", "• Roof fan"))
    assert told(facts, "solar_w") == {(800, "optional")}
    assert told(facts, "drive") == {("all", "optional")}
    assert told(facts, "heated_floor") == {(True, "optional")}


def test_measures_that_a_letter_heads_are_no_items(examiner):
    lines = ("L 5.99 m outside", "W 2.05 m outside", "H 2.71 m outside")
    document = read_document(page(*lines).data(), "sheet.pdf", "pdf", examiner.hints)
    texts = " ".join(passage.text for passage in document.passages)
    assert all(line in texts for line in lines)
    assert not any(passage.mark for passage in document.passages)
