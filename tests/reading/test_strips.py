"""White strips through rows of words: which ends of rows are looked at for a gutter."""

from specscan.reading.layout.strips import strips_below
from specscan.reading.letters.words import Line, Word
from specscan.records.text import Box


def band(top, *spans):
    return [Line([Word("x", Box(x0, top, x1, top + 9), 9.0, False, (0, 0, 0)) for x0, x1 in spans])]


def test_a_strip_that_opens_beyond_a_narrow_first_row_is_found():
    bands = [band(0, (50, 100), (103, 200)), band(12, (50, 200), (300, 400)), band(24, (50, 190), (300, 400))]
    assert [end for end, _ in strips_below(bands, 0, 9.0, (50, 400))] == [3, 2]


def test_rows_are_left_as_soon_as_no_strip_can_open_any_more():
    class Counted(list):
        asked = 0

        def __getitem__(self, place):
            self.asked += 1
            return super().__getitem__(place)

    bands = Counted(band(12 * n, (50, 100), (103, 200), (203, 400)) for n in range(500))
    assert list(strips_below(bands, 0, 9.0, (50, 400))) == []
    assert bands.asked == 1
