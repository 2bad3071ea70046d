"""Ruled tables without an outer edge: their last column is one all the same."""

from specscan.reading.tables.crossings import Edge
from specscan.reading.tables.open_sides import open_sides

RULES = [Edge(True, 80.0 + 14 * row, 50.0, 740.0) for row in range(8)]
TOP, BOTTOM = RULES[0].at, RULES[-1].at


def walls(*places, top=TOP, bottom=BOTTOM):
    return [Edge(False, x, top, bottom) for x in places]


def test_the_right_side_is_closed_where_the_rules_end_one_column_further():
    drawn = walls(50.0, 220.0, 350.0, 480.0, 610.0)
    assert open_sides([*RULES, *drawn], 3.0) == walls(740.0)


def test_an_edge_at_the_head_alone_leaves_the_side_open():
    drawn = [*walls(50.0, 220.0, 350.0, 480.0, 610.0), *walls(740.0, bottom=TOP + 10)]
    assert open_sides([*RULES, *drawn], 3.0) == walls(740.0)


def test_labels_at_the_left_may_be_wider_than_columns():
    assert open_sides([*RULES, *walls(260.0, 380.0, 500.0, 620.0, 740.0)], 3.0) == walls(50.0)


def test_the_last_column_may_be_half_as_wide_again_as_the_usual_one_and_a_little_more():
    assert open_sides([*RULES, *walls(50.0, 220.0, 320.0, 420.0, 570.0)], 3.0) == walls(740.0)


def test_what_may_hold_several_columns_is_not_closed():
    assert open_sides([*RULES, *walls(50.0, 220.0)], 3.0) == []  # values without rules between them
    assert open_sides([*RULES, *walls(50.0, 220.0, 290.0, 360.0)], 3.0) == []


def test_a_whole_table_stays_as_it_is():
    assert open_sides([*RULES, *walls(50.0, 220.0, 350.0, 480.0, 610.0, 740.0)], 3.0) == []


def test_a_bar_of_heads_twice_as_high_as_the_rows_closes_no_side_of_a_short_table():
    rules = [Edge(True, y, 50.0, 740.0) for y in (80.0, 108.0, 122.0, 136.0, 150.0)]
    drawn = [*walls(220.0, 350.0, 480.0, 610.0, bottom=150.0), *walls(50.0, 740.0, bottom=108.0)]
    assert {edge.at for edge in open_sides([*rules, *drawn], 3.0)} == {50.0, 740.0}


def test_two_tables_of_one_width_below_each_other_are_closed_each_by_its_own_walls():
    below = [Edge(True, rule.at + 200, 51.0, 739.0) for rule in RULES]
    drawn = walls(150.0, 280.0, 410.0, 540.0, 640.0)
    others = walls(170.0, 300.0, 420.0, 530.0, 630.0, top=TOP + 200, bottom=BOTTOM + 200)
    found = open_sides([*RULES, *below, *drawn, *others], 3.0)
    assert sorted((edge.at, edge.start) for edge in found) == [
        (50.0, TOP), (51.0, TOP + 200), (739.0, TOP + 200), (740.0, TOP),
    ]  # fmt: skip
