"""Options whose own column, without a head, says for which vans they are."""

from tests.reading.drawn import Page


def test_a_column_without_a_head_that_names_vans_throughout_says_for_which_each_option_is(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(80, (220, "Drift 19"), (330, "Drift 21"), bold=True)
    for place, row in enumerate([("Length", "5.41 m", "5.99 m"), ("GVM", "3500 kg", "3500 kg"), ("Berths", "2", "2")]):
        page.row(100 + 16 * place, *zip((50, 220, 330), row, strict=True))
    page.text(50, 180, "Ask for these", size=14, bold=True)
    extras = [
        ("Inverter, 2,000 W", "Drift 19", "$890"),
        ("Heated floor", "Drift 21", "$1,380"),
        ("Solar panel, 200 W", "all", "$700"),
        ("Awning", "all", "$1,150"),
    ]
    for place, row in enumerate(extras):
        page.row(204 + 16 * place, *zip((50, 290, 430), row, strict=True))
    facts = facts_of_pdf(page)
    told = {(f.field, f.model, f.availability) for f in facts if f.field in ("inverter_w", "heated_floor", "solar_w")}
    assert told == {
        ("inverter_w", "Drift 19", "optional"),
        ("heated_floor", "Drift 21", "optional"),
        ("solar_w", "Drift 19", "optional"),
        ("solar_w", "Drift 21", "optional"),
    }
