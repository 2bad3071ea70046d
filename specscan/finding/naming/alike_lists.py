"""Lists of the same labels with values of their own: they tell of several vans, whatever these are called."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from specscan.finding.naming.labelled_sheets import labelled
from specscan.records.text import Passage

SAME_LABELS = 6  # that two lists have in common
OWN_VALUES = 3  # of them with another value in each


def differ(lists: Sequence[Sequence[Passage]]) -> bool:
    """Tell whether all of several lists have the same labels, many of them with other values: no van has two of each.

    So "Monday" and "Tuesday" above "Length: 5.41 m" and "Length: 5.99 m" are vans, for all that one is the title.
    """
    told = [{label: text for label, text in map(labelled, one) if label and text} for one in lists]
    for one, other in itertools.combinations(told, 2):
        same = one.keys() & other.keys()
        if len(same) < SAME_LABELS or sum(one[label] != other[label] for label in same) < OWN_VALUES:
            return False
    return len(told) > 1
