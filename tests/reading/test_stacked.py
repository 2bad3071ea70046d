"""Heads over several lines: the upper one belongs to every column that it spans."""

import pytest

from tests.reading.drawn import Page

BOLD = {"bold": True, "size": 8}


def by_van(facts, field):
    return {fact.model: fact.value for fact in facts if fact.field == field}


def drawn():
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.box(45, 100, 560, 140, (0.85, 0.85, 0.9))
    page.row(104, (177, "SIZE (in)"), (340, "TANKS (gal)"), **BOLD)
    page.row(110, (50, "MODEL"), (475, "SLEEPS"), **BOLD)
    page.row(
        120, (130, "length"), (180, "width"), (230, "height"), (300, "fresh"), (350, "gray"), (400, "black"), **BOLD
    )
    page.box(125, 116, 270, 116.6, (0, 0, 0))
    page.box(295, 116, 430, 116.6, (0, 0, 0))
    rows = [("Drift 19", 236, 81, 110, 27, 24, 0, 2), ("Drift 21", 252, 81, 112, 36, 30, 15, 3)]
    for number, (model, *figures) in enumerate(rows):
        xs = (130, 180, 230, 300, 350, 400, 480)
        page.row(146 + 16 * number, (50, model), *((x, str(f)) for x, f in zip(xs, figures, strict=True)), size=8)
    return page


def test_the_unit_of_an_upper_head_holds_for_all_columns_over_which_its_rule_runs(facts_of_pdf):
    facts = facts_of_pdf(drawn())
    assert by_van(facts, "length_mm") == pytest.approx({"Drift 19": 5994.4, "Drift 21": 6400.8})
    assert by_van(facts, "height_mm") == pytest.approx({"Drift 19": 2794, "Drift 21": 2844.8})
    assert by_van(facts, "gray_tank_l") == pytest.approx({"Drift 19": 90.85, "Drift 21": 113.56}, rel=1e-3)


def test_a_printed_zero_is_a_stated_nothing(facts_of_pdf):
    assert by_van(facts_of_pdf(drawn()), "black_tank_l") == pytest.approx({"Drift 19": 0, "Drift 21": 56.78}, rel=1e-3)


def test_without_rules_an_upper_head_belongs_to_the_columns_in_whose_middle_it_stands(facts_of_pdf):
    page = Page()
    page.text(50, 40, "Marrowfen Drift 2026", size=20, bold=True)
    page.row(104, (145, "SIZE (in)"), (312, "TANKS (gal)"), **BOLD)
    page.row(
        116, (50, "MODEL"), (130, "length"), (190, "height"), (300, "fresh"), (360, "gray"), (475, "SLEEPS"), **BOLD
    )
    rows = [("Drift 19", 236, 110, 27, 24, 2), ("Drift 21", 252, 112, 36, 30, 3)]
    for number, (model, *figures) in enumerate(rows):
        xs = (130, 190, 300, 360, 480)
        page.row(134 + 16 * number, (50, model), *((x, str(f)) for x, f in zip(xs, figures, strict=True)), size=8)
    facts = facts_of_pdf(page)
    assert by_van(facts, "height_mm") == pytest.approx({"Drift 19": 2794, "Drift 21": 2844.8})
    assert by_van(facts, "fresh_tank_l") == pytest.approx({"Drift 19": 102.2, "Drift 21": 136.27}, rel=1e-3)
