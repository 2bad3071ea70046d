"""Edges, crossings, cells and tables, held against pdfplumber's table steps (pdfplumber.table, the reference)."""

from hypothesis import given, settings
from hypothesis import strategies as st
from pdfplumber import table as reference

from specscan.reading.tables.crossings import Crossings, Edge, merged, tables

SLACK = 3.0

# On a raster wider than all tolerances, so that no edge is moved by less than a rounding error.
places = st.integers(0, 7).map(lambda step: 20.0 * step)
edges = st.builds(
    lambda across, at, ends: Edge(across, at, min(ends), max(ends)),
    st.booleans(),
    places,
    st.tuples(places, places).filter(lambda ends: ends[0] != ends[1]),
)


def as_reference(edge):
    """Give an edge as pdfplumber has it."""
    if edge.across:
        box = {"x0": edge.start, "x1": edge.stop, "top": edge.at, "bottom": edge.at}
    else:
        box = {"x0": edge.at, "x1": edge.at, "top": edge.start, "bottom": edge.stop}
    size = {"width": box["x1"] - box["x0"], "height": box["bottom"] - box["top"], "doctop": box["top"]}
    return {**box, **size, "orientation": "h" if edge.across else "v", "object_type": "line"}


@settings(max_examples=150, deadline=None)
@given(st.lists(edges, min_size=1, max_size=40))
def test_cells_and_tables_are_those_of_the_reference(drawn):
    joined = reference.merge_edges([as_reference(edge) for edge in drawn], SLACK, SLACK, SLACK, SLACK)
    expected = reference.intersections_to_cells(reference.edges_to_intersections(joined, SLACK, SLACK))

    cells = Crossings(merged(drawn, SLACK, SLACK), SLACK).cells()

    assert cells == expected
    assert tables(cells) == reference.cells_to_tables(expected)


def test_edges_that_nearly_lie_on_one_line_become_one_and_gaps_are_closed():
    drawn = [Edge(True, 100.0, 0.0, 50.0), Edge(True, 101.0, 52.0, 90.0), Edge(True, 140.0, 0.0, 90.0)]

    assert merged(drawn, SLACK, SLACK) == [Edge(True, 100.5, 0.0, 90.0), Edge(True, 140.0, 0.0, 90.0)]


def test_an_edge_that_ends_a_little_short_of_another_still_meets_it():
    frame = [Edge(True, 0.0, 0.0, 100.0), Edge(True, 40.0, 0.0, 100.0)]
    walls = [Edge(False, x, 2.0, 38.0) for x in (0.0, 50.0, 100.0)]

    cells = Crossings([*frame, *walls], SLACK).cells()

    assert cells == [(0.0, 0.0, 50.0, 40.0), (50.0, 0.0, 100.0, 40.0)]
