"""Running text in two columns, of which a paragraph goes on at the head of the second."""

from tests.reading.drawn import Page

LEFT = (
    "The Drift 19 is for two who like each other and",
    "need little. It parks where a car does.",
    "The Drift 21 is the youngest. It keeps all of",
    "its tanks indoors, and it is warm. We call",
)
RIGHT = ("it winterised, and we mean this one, after three", "days in the cold store of the dairy in Hythe.")


def test_a_paragraph_that_goes_on_in_the_next_column_is_still_about_its_van(facts_of_pdf):
    page = Page()
    page.text(40, 40, "Marrowfen Drift", size=24, bold=True)
    page.text(40, 80, "Two lengths, one idea", size=14, bold=True)
    for x, lines in ((40, LEFT), (300, RIGHT)):
        for number, line in enumerate(lines):
            page.text(x, 110 + 12 * number + (6 if x == 40 and number > 1 else 0), line)
    page.canvas.showPage()
    page.row(220, (200, "Drift 19"), (320, "Drift 21"), bold=True)
    rows = [
        ("Length", "5.90 m", "6.40 m"),
        ("GVWR", "3500 kg", "4250 kg"),
        ("Sleeps", "2", "3"),
        ("Solar", "100 W", "200 W"),
    ]
    for number, row in enumerate(rows):
        page.row(240 + 16 * number, *zip((40, 200, 320), row, strict=True))
    claims = {fact.model.split()[-1]: fact.value for fact in facts_of_pdf(page) if fact.field == "season_claim"}
    assert claims == {"21": "winterised"}
