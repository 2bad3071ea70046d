"""Confidence means what it says: on brochures that were not counted for it, sure statements are right."""

import shutil

import pytest

from specscan.settling.confidence import load_confidences
from tests.benchmarks.calibration import MEDIA, Judged, counted, fit, judge, lines
from tests.benchmarks.scoring import Scanner
from tests.proving_ground.maker import draw

SEED, SIZE = 6118, 24  # a seed on which nothing was counted or tuned


@pytest.fixture(scope="module")
def judged():
    scanner = Scanner()
    brochures = [draw(SEED, number, "", "", MEDIA) for number in range(SIZE)]
    return [one for brochure in brochures for one in judge(brochure, scanner.scan(brochure))]


def test_statements_from_nine_tenths_are_right_in_98_of_100(judged):
    sure = [one.right for one in judged if one.confidence >= 0.9]
    assert len(sure) > 0.9 * len(judged) > 500
    assert sum(sure) / len(sure) >= 0.98


def test_a_statement_counts_for_its_gravest_ground_alone():
    told = [
        Judged(0.9, "table_cell", (), True), Judged(0.9, "prose", ("running_text",), True),
        Judged(0.9, "prose", ("running_text", "implied"), False),
        Judged(0.7, "prose", ("running_text", "implied", "disagreement"), False),
    ]  # fmt: skip
    rows = {name: rights for (_, name), rights in counted(told).items() if rights}
    assert rows == {"table_cell": [True], "running_text": [True], "several": [False], "disagreement": [False]}
    assert ["all", "from", "0.90", "0.667", "3"] in [line.split() for line in lines(told)]


def test_fitting_writes_counts_and_source_and_keeps_the_words(book, tmp_path):
    before = load_confidences(book.folder)
    shutil.copy(book.folder / "confidence.yaml", tmp_path)
    told = [Judged(0.9, "table_cell", (), True)] * 3 + [Judged(0.9, "prose", ("running_text",), False)]
    fit(told, tmp_path / "confidence.yaml", "four statements made up for a test")
    after = load_confidences(tmp_path)
    assert after.source == "four statements made up for a test"
    assert (after.forms["table_cell"].right, after.forms["table_cell"].of) == (3, 3)
    assert (after.grounds["running_text"].right, after.grounds["running_text"].of) == (0, 1)
    assert after.grounds["pieced"] == before.grounds["pieced"] and before.grounds["pieced"].source  # counted elsewhere
    assert {name: row.says for name, row in after.grounds.items()} == {
        name: row.says for name, row in before.grounds.items()
    }
