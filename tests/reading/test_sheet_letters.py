"""Letters over the columns of a spreadsheet and numbers beside its rows are no heads; letters that name vans are."""

from specscan.reading.read import read_document

ROWS = (("Overall length", "5.41 m", "5.99 m"), ("GVWR", "3500 kg", "4100 kg"), ("Wheelbase", "3.45 m", "4.04 m"))


def page(*rows):
    cells = "".join("<tr>" + "".join(f"<td>{cell}</td>" for cell in row) + "</tr>" for row in rows)
    return f"<html><body><h1>Marrowfen Vans</h1><table>{cells}</table></body></html>".encode()


def heads(data, hints):
    cells = [p for p in read_document(data, "page.html", "html", hints).passages if p.column is not None]
    return {p.column.text for p in cells}, {p.row.text for p in cells}


def test_letters_and_row_numbers_of_a_spreadsheet_are_left_out(examiner):
    numbered = [(n + 2, *row) for n, row in enumerate(ROWS)]
    sheet = page(("", "A", "B", "C"), ("1", "", "Drift 19", "Drift 21"), *numbered)
    assert heads(sheet, examiner.hints) == ({"Drift 19", "Drift 21"}, {"Overall length", "GVWR", "Wheelbase"})


def test_letters_over_the_labels_too_are_left_out(examiner):
    sheet = page(("A", "B", "C"), ("", "Drift 19", "Drift 21"), *ROWS)
    assert heads(sheet, examiner.hints)[0] == {"Drift 19", "Drift 21"}


def test_letters_over_the_values_alone_name_vans(examiner):
    rows = [(*row, "x") for row in ROWS]
    assert heads(page(("", "A", "B", "C"), *rows), examiner.hints)[0] == {"A", "B", "C"}


def test_a_blank_row_between_the_title_of_a_sheet_and_its_heads_hides_no_heads(examiner):
    sheet = page(("Marrowfen Drift, model year 2026", "", ""), ("", "", ""), ("Item", "Drift 19", "Drift 21"), *ROWS)
    assert heads(sheet, examiner.hints)[0] == {"Drift 19", "Drift 21"}
