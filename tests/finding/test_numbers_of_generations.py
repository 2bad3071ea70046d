"""Names with the number of a generation, of one range and year, and those that a full stop parts from what follows."""

import pytest

ITEMS = "- Length: {} m\n- Sleeps {}\n- Fresh water {} l\n- Grey water 60 l\n- Gas heater, 4 kW\n- 100 Ah AGM battery\n"


@pytest.mark.parametrize(
    ("title", "model"),
    [
        ("Larch 5.9 Series III", "Larch 5.9 Series III"),
        ("Larch 600 Serie II", "Larch 600 Serie II"),
        ("Larch 5.9 Series 2", "Larch 5.9 Series 2"),
        ("Larch 5.9 Series 2027", "Larch 5.9"),
    ],
)
def test_a_series_with_its_number_is_part_of_the_name(vans_in, title, model):
    language = (
        "Länge: 5,94 m\n\nSchlafplätze: 2\n\nFrischwasser: 90 l\n" if "Serie " in title else ITEMS.format(5.94, 2, 90)
    )
    assert {van for _, van in vans_in(f"# {title}\n\nThe Larch is built by Bruneck.\n\n{language}")} == {model}


def test_names_of_one_range_behind_a_year_tell_of_no_several_makers(vans_in):
    vans = "".join(
        f"## 2027 {name}\n\n{ITEMS.format(length, 2, 80 + length)}\n"
        for name, length in (("Larch 20", 6), ("Larch 20 Duo", 7), ("Larch 23 Duo", 8))
    )
    text = f"# New from Bruneck for 2027\n\n{vans}\nBruneck Co., 4 Weir Street, Tollan\n"
    assert vans_in(text) == {("Bruneck", "Larch 20"), ("Bruneck", "Larch 20 Duo"), ("Bruneck", "Larch 23 Duo")}


def test_a_sentence_on_what_is_new_and_what_is_gone_lists_no_vans(vans_in):
    vans = (("Larch 20F", 5.9), ("Larch XT 20F", 6.1))
    rows = "".join(f"| {name} | {length} m | 2 | 90 l |\n" for name, length in vans)
    table = f"| Model | Length | Sleeps | Fresh water |\n|---|---|---|---|\n{rows}"
    text = f"# Larch price book\n\nBruneck camper vans\n\n{table}\nNew: Larch XT 20F. Dropped: Larch 17B.\n"
    assert {van for _, van in vans_in(text)} == {"Larch 20F", "Larch XT 20F"}


def test_items_that_begin_with_a_van_and_a_full_stop_are_of_it(facts_of):
    text = (
        "# The Larch\n\nBruneck Ltd brings two for the model year 2027.\n\n"
        "- Larch II. Length 5,410 mm, height 2,650 mm. Two berths. Fresh water 65 litres, waste water 55 litres.\n"
        "- Larch III Grand. Length 5,998 mm, height 2,710 mm. Three berths. Fresh water 90 litres.\n"
    )
    facts = facts_of(text, "sheet.md")
    for field, one, two in (("length_mm", 5410, 5998), ("sleeps", 2, 3), ("fresh_tank_l", 65, 90)):
        told = {(fact.model, fact.value) for fact in facts if fact.field == field and not fact.rejected}
        assert told == {("Larch II", one), ("Larch III Grand", two)}
