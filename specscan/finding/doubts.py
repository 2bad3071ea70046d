"""Facts from pages read as pictures: what rests on a figure that was not read with certainty is set aside."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace

from specscan.records.facts import Fact
from specscan.records.text import Box, Passage

UNSURE_FIGURE = "the figure is not read with certainty"
NEAR = 1.2  # heights of a line: a doubtful figure that stands this close belongs to the same value


def set_aside_doubtful(facts: Sequence[Fact], passages: Sequence[Passage]) -> list[Fact]:
    """Give the facts; those whose value holds or touches a doubtful figure carry the reason why they do not count.

    A value without a figure (a choice, a yes or no) is not touched: its words were matched as a whole.
    """
    doubtful = {passage.number: passage for passage in passages if passage.doubts}
    if not doubtful:
        return list(facts)  # all documents but scans
    result = []
    for fact in facts:
        passage = doubtful.get(fact.passage)
        figure = fact.num is not None or (fact.text is not None and re.search(r"\d", fact.text))
        if passage is not None and figure and not fact.rejected and rests_on_doubt(fact.box, passage):
            fact = replace(fact, rejected=UNSURE_FIGURE)
        result.append(fact)
    return result


def rests_on_doubt(box: Box | None, passage: Passage) -> bool:
    """Tell whether a doubtful figure of the passage or its heads stands in the box or right beside it.

    Where the box is unknown every doubt of the passage counts.
    """
    return bool(passage.doubts) if box is None else any(_touches(place, box) for place in passage.doubts)


def _touches(place: Box, box: Box) -> bool:
    level = place.overlap_y(box) > 0.3 * min(place.height, box.height)
    return level and place.overlap_x(box) > -NEAR * min(place.height, box.height)
