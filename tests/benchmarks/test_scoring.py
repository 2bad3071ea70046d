"""Scoring: what is right, missing, extra, of the wrong van, on the wrong page, of the wrong availability."""

import pytest

from tests.benchmarks.report import lines, misses, tally
from tests.benchmarks.scoring import score
from tests.proving_ground.maker import draw


@pytest.fixture(scope="module")
def brochure():
    return draw(21, 0, "matrix_ruled", "us", ("reportlab",))


def perfect(brochure):
    """Give rows that state exactly what the brochure prints."""
    rows = []
    for label in brochure.labels:
        number = label.value.replace(".", "", 1).lstrip("-").isdigit()
        flag = {"yes": True, "no": False}.get(label.value)
        text = None if flag is not None or number and label.field not in ("model", "maker") else label.value
        rows.append(
            {
                "van": label.van,
                "field": label.field,
                "value_num": float(label.value) if text is None and flag is None else None,
                "value_text": text,
                "value_flag": flag,
                "type": "flag" if flag is not None else "number" if text is None else "choice",
                "availability": label.availability,
                "page": label.pages[0],
                "printed": label.words[0],
                "found_by": "test",
                "how": "table_cell",
            }
        )
    return rows


def like(rows, row):
    """Give the rows that state the same value of the same field, of whichever van."""
    return [one for one in rows if (one["field"], one["value_num"]) == (row["field"], row["value_num"])]


def total(outcomes):
    return tally(outcomes)["all"]["all"]


def test_a_perfect_scan_has_only_right_values(brochure):
    figures = total(score(brochure, perfect(brochure)))
    assert figures.right == len(brochure.labels) > 20
    assert figures.shares() == (1.0, 1.0, 1.0, 1.0, 1.0, 1.0)


def test_nothing_found_is_all_missing_and_has_no_precision(brochure):
    figures = total(score(brochure, []))
    assert (figures.missing, figures.precision, figures.recall) == (len(brochure.labels), None, 0.0)


def test_a_value_that_is_not_printed_is_extra(brochure):
    rows = perfect(brochure)
    rows.append({**rows[0], "field": "solar_w", "value_num": 9999.0, "value_text": None, "type": "number"})
    outcomes = score(brochure, rows)
    assert [one.field for one in outcomes if one.kind == "extra"] == ["solar_w"]
    assert "9999" in "\n".join(misses(outcomes))


def test_a_value_of_another_van_counts_against_attribution_recall_and_precision(brochure):
    rows = perfect(brochure)
    alone = [row for row in rows if row["type"] == "number" and len(like(rows, row)) == 1]
    chosen = alone[0]
    other = next(van for van in brochure.vans if van != chosen["van"])
    moved = [{**row, "van": other} if row is chosen else row for row in rows]
    outcomes = score(brochure, moved)
    assert [(one.kind, one.field) for one in outcomes if one.kind != "right"] == [
        ("wrong van", chosen["field"]),
        ("extra", chosen["field"]),
    ]


def test_wrong_page_and_availability_leave_the_value_right(brochure):
    rows = perfect(brochure)
    chosen = next(row for row in rows if row["field"].endswith("_tank_l") and row["availability"] == "standard")
    changed = [{**row, "page": "99", "availability": "optional"} if row is chosen else row for row in rows]
    figures = total(score(brochure, changed))
    assert figures.right == len(brochure.labels)
    assert figures.page == figures.right - 1
    assert figures.availability == figures.availability_of - 1


def test_unstated_counts_as_standard(brochure):
    rows = [{**row, "availability": "unstated"} for row in perfect(brochure) if row["availability"] == "standard"]
    figures = total(score(brochure, rows))
    assert figures.availability == figures.availability_of


def test_an_invented_van_makes_the_vans_wrong(brochure):
    rows = perfect(brochure)
    outcomes = score(brochure, [*rows, {**rows[0], "van": "Nobody 12"}])
    assert not any(one.vans_right for one in outcomes)


def test_every_layout_field_and_unit_habit_has_its_row(brochure):
    text = "\n".join(lines(score(brochure, perfect(brochure)), least=1))
    assert "matrix_ruled" in text
    habits = {label.habit for label in brochure.labels if label.habit}
    assert habits and all(habit in text for habit in habits)
    assert all(label.field in text for label in brochure.labels)
