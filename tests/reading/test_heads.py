"""Which row of a table heads its columns."""

import pytest

from specscan.finding.kit import labels_of
from specscan.reading.read import read_document

TABLE = """Marrowfen Drift 2026

| {corner} | 680 Larch | 680 Fell |
|---|---|---|
| Drive | front | AWD |
| Fresh tank | 80 L | 110 L |
"""


@pytest.mark.parametrize("corner", ["Models", "Layout", "Type"])
def test_a_corner_that_says_models_heads_the_names_beside_it(examiner, corner):
    page = "<html><body><table>{}</table></body></html>".format(
        "".join(
            "<tr>" + "".join(f"<td>{cell.strip()}</td>" for cell in line.strip("|").split("|")) + "</tr>"
            for line in TABLE.format(corner=corner).splitlines()
            if line.startswith("|") and "---" not in line
        )
    )
    document = read_document(page.encode(), "page.html", "html", examiner.hints)
    heads = {(p.row.text, p.column.text): p.text for p in document.passages if p.row and p.column}
    assert heads[("Fresh tank", "680 Fell")] == "110 L"


def test_a_label_with_one_value_is_no_head(examiner):
    page = b"<html><body><table><tr><td>Model</td><td>Drift 680</td></tr><tr><td>Berths</td><td>2</td></tr></table>"
    document = read_document(page, "page.html", "html", examiner.hints)
    assert labels_of(document) >= {"Model", "Berths"}


@pytest.mark.parametrize("corner", ["Model", ""])
def test_other_vans_that_head_the_columns_half_way_down_head_what_is_below(examiner, corner):
    rows = [(corner, "Drift 18 Q", "Drift 23 T"), ("Drive", "rear", "AWD"), ("Fresh tank", "80 L", "110 L"),
            ("Sleeps", "2", "3"), (corner, "Drift 23 X", "Drift 24 D"), ("Drive", "AWD", "rear"),
            ("Fresh tank", "95 L", "120 L"), ("Sleeps", "4", "2")]  # fmt: skip
    body = "".join("<tr>" + "".join(f"<td>{cell}</td>" for cell in row) + "</tr>" for row in rows)
    page = f"<html><body><h1>Marrowfen Drift 2026</h1><table>{body}</table></body></html>"
    document = read_document(page.encode(), "page.html", "html", examiner.hints)
    cells = {(p.row.text, p.column.text): p.text for p in document.passages if p.row and p.column}
    assert cells[("Fresh tank", "Drift 23 T")] == "110 L"
    assert cells[("Fresh tank", "Drift 24 D")] == "120 L"
    assert cells[("Sleeps", "Drift 23 X")] == "4"
