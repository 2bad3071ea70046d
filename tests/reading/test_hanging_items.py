"""Items of lists that break behind a small word, and notes below tables in smaller letters."""

from tests.reading.drawn import titled


def test_an_item_that_ends_in_a_small_word_goes_on_in_the_next_line(facts_of_pdf):
    page = titled()
    page.row(90, (200, "Curlew 19"), (300, "Curlew 22"), bold=True)
    for place, row in enumerate(
        [("Length", "5.97 m", "6.68 m"), ("GVWR", "3500 kg", "3800 kg"), ("Fresh water", "76 L", "114 L"),
         ("Gray water", "60 L", "90 L")]
    ):  # fmt: skip
        page.row(104 + 14 * place, *zip((40, 200, 300), row, strict=True))
    page.text(40, 200, "Extras", size=13, bold=True)
    page.text(40, 222, "• Heat for the floor: ask your dealer, who knows best what there is at the works this year")
    page.text(40, 234, "• Under-floor heating: standard on the Curlew 22, not available on the")
    page.text(40, 246, "Curlew 19.")
    page.text(40, 258, "• Awning: optional")
    said = {fact.model: fact.availability for fact in facts_of_pdf(page) if fact.field == "heated_floor"}
    assert said == {"Curlew 22": "standard", "Curlew 19": "not_available"}


def test_a_note_with_a_star_may_stand_in_somewhat_larger_letters_than_the_tables(facts_of_pdf):
    page = titled()
    page.row(90, (200, "Curlew 19"), (300, "Curlew 22"), bold=True, size=6.6)
    rows = [("Length", "5.97 m", "6.68 m"), ("GVWR", "3500 kg", "3800 kg"), ("Fresh water", "76 L", "114 L"),
            ("Gray water", "60 L", "90 L"), ("Heater output (kW)", "2.0", "4.0*"), ("Inverter (W)", "600", "1000"),
            ("Solar (W)", "100", "200"), ("Hot water (L)", "none", "10")]  # fmt: skip
    for place, row in enumerate(rows):
        page.row(104 + 11 * place, *zip((40, 200, 300), row, strict=True), size=6.6)
    page.text(40, 240, "* 6.0 kW output with the larger furnace, an option.", size=7.2)
    found = {(fact.model, fact.value) for fact in facts_of_pdf(page) if fact.field == "heater_output_w"}
    assert found == {("Curlew 19", 2000), ("Curlew 22", 4000), ("Curlew 22", 6000)}
