"""Tables of web pages that go on with the one above them, whose heads alone name the vans."""

import pytest

FIRST = (
    "<table><caption>Sizes</caption><tr><th></th><th>{one}</th><th>{two}</th></tr><tr><td>Length</td><td>5.9 m</td>"
    "<td>6.4 m</td></tr><tr><td>Sleeps</td><td>2</td><td>3</td></tr><tr><td>GVWR</td><td>3500 kg</td>"
    "<td>4250 kg</td></tr></table>"
)
SECOND = (
    "<table><caption>Water and power</caption><tr><td>Fresh water</td><td>80 L</td><td>110 L</td></tr>"
    "<tr><td>Solar</td><td>100 W</td><td>200 W</td></tr></table>"
)
THIRD = (
    "<h3>Warmth</h3><table><tr><td>Heater output</td><td>2 kW</td><td>4 kW</td></tr><tr><td>Windows</td>"
    "<td>Double-pane</td><td>Double-pane</td></tr></table>"
)


@pytest.fixture
def stated(read_file, tmp_path):
    """Give a function that reads a page and gives what it states of a field, by van."""

    def read(body, field):
        path = tmp_path / "compare.html"
        path.write_text(f"<html lang='en'><body><h1>Two vans for 2026</h1>{body}</body></html>", encoding="utf-8")
        facts = read_file(path).found.facts
        return {(fact.model, fact.value) for fact in facts if fact.field == field and not fact.rejected}

    return read


def test_tables_below_captions_and_headings_stand_under_the_vans_of_the_first(stated):
    page = FIRST.format(one="Alder", two="Alder Fell") + SECOND + THIRD
    assert stated(page, "fresh_tank_l") == {("Alder", 80), ("Alder Fell", 110)}
    assert stated(page, "heater_output_w") == {("Alder", 2000), ("Alder Fell", 4000)}


def test_a_table_below_a_paragraph_is_not_known_to_be_of_the_vans_above(stated):
    page = FIRST.format(one="Alder", two="Alder Fell") + "<p>And these are our trailers.</p>" + SECOND
    assert stated(page, "fresh_tank_l") == set()


def test_a_table_with_more_columns_has_other_heads(stated):
    wide = SECOND.replace("<td>80 L</td>", "<td>80 L</td><td>95 L</td>").replace(
        "<td>100 W</td>", "<td>100 W</td><td>150 W</td>"
    )
    assert stated(FIRST.format(one="Alder", two="Alder Fell") + wide, "fresh_tank_l") == set()


HEADS = "<div class='top'><div></div><div>Alder</div><div>Alder Fell</div></div>"
ROWS = (
    "<details open><summary>Water</summary><div><div>Fresh water</div><div>80 L</div><div>110 L</div></div>"
    "<div><div>Waste water</div><div>70 L</div><div>90 L</div></div><div><div>Length</div><div>5.9 m</div>"
    "<div>6.4 m</div></div></details><details><summary>Warmth</summary><div><div>Heater output</div><div>2 kW</div>"
    "<div>4 kW</div></div><div><div>Heater fuel</div><div>Diesel</div><div>Petrol</div></div><div><div>Windows</div>"
    "<div>Double-pane</div><div>Double-pane</div></div></details>"
)


def test_a_row_of_names_alone_heads_the_parts_of_the_comparison_below_it(stated):
    assert stated(HEADS + ROWS, "fresh_tank_l") == {("Alder", 80), ("Alder Fell", 110)}
    assert stated(HEADS + ROWS, "heater_output_w") == {("Alder", 2000), ("Alder Fell", 4000)}
    tables = SECOND.replace("Solar", "Length").replace("100 W", "5.9 m").replace("200 W", "6.4 m")
    assert stated(HEADS + tables + THIRD, "fresh_tank_l") == {("Alder", 80), ("Alder Fell", 110)}


def test_a_row_of_names_above_running_text_heads_nothing(stated):
    assert stated(HEADS + "<p>And these are our trailers.</p>" + ROWS, "fresh_tank_l") == set()
