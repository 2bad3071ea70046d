"""Rules of a scanned table are completed where they are pale, and not where a cell spans columns."""

import numpy as np
import pytest

from specscan.reading.letters.sheet import Stroke
from specscan.reading.ocr.gaps import completed
from specscan.records.text import Box

DPI = 144  # two pixels a point
ACROSS = [Stroke(50, y - 0.25, 250, y + 0.25) for y in (50, 70, 90, 110)]
PIECES = [Stroke(149.75, 50, 150.25, 70), Stroke(149.75, 90, 150.25, 110)]  # the middle row's is lost


def page(gray, noise=0.0):
    """Draw a rule at 150 points, in the middle row in this shade of gray on white."""
    picture = np.full((400, 600), 240.0)
    picture[100:220, 300] = 120
    picture[140:180, 300] = gray
    picture += np.random.default_rng(7).normal(0, noise, picture.shape)
    return np.clip(picture, 0, 255).astype(np.uint8)


def added(picture, letters=()):
    before = [*ACROSS, *PIECES]
    return [one for one in completed(before, picture, letters, DPI) if one not in before]


@pytest.mark.parametrize(("gray", "noise"), [(234, 0.0), (215, 6.0)])
def test_a_pale_stretch_of_a_rule_is_completed(gray, noise):
    [stroke] = added(page(gray, noise))
    assert (stroke.top, stroke.bottom, stroke.x0) == (70, 90, 149.75)


@pytest.mark.parametrize("noise", [0.0, 6.0, 20.0])
def test_where_there_is_no_line_a_cell_spans_columns(noise):
    assert added(page(240, noise)) == []


def test_a_rule_is_not_drawn_through_letters():
    assert added(page(215), [Box(147, 75, 153, 85)]) == []


def test_a_lost_stretch_of_a_line_across_is_completed_too():
    upright = [Stroke(x - 0.25, 50, x + 0.25, 90) for x in (50, 100, 150)]
    level = [Stroke(50, 49.75, 150, 50.25), Stroke(50, 89.75, 150, 90.25), Stroke(50, 69.75, 100, 70.25)]
    picture = np.full((300, 400), 240, np.uint8)
    picture[140, 100:300] = 220
    found = [one for one in completed([*upright, *level], picture, (), DPI) if one not in upright + level]
    assert [(one.x0, one.x1, one.top) for one in found] == [(100, 150, 69.75)]
