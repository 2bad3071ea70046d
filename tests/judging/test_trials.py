"""Cases tried with answers: what is worked out once for those that are alike is what each gives by itself."""

import numpy as np
import pytest

from specscan.judging.answers import answers_of
from specscan.judging.kinds import column_kinds
from specscan.judging.trials import Trials
from specscan.physics.columns import Columns
from specscan.physics.derived import DERIVED, derive_ends
from tests.physics.test_derived import EXAMPLE

VANS = (EXAMPLE, {"heater_fuel": "diesel", "length_mm": 6900, "battery_ah": 180}, {})
CHANGES = 400


@pytest.fixture(scope="module")
def answers(book):
    fields = dict.fromkeys(name for one in DERIVED.values() for name in one.inputs)
    return {name: answers_of(name, None, column_kinds(book), book) for name in fields}


@pytest.fixture(scope="module")
def tried(book, vans, answers):
    """Vans with many answers to two fields at a time, as chance has it: columns that share, and plain ones."""
    trials, chance = Trials(Columns(vans(*VANS)), answers), np.random.default_rng(1)
    for _ in range(CHANGES):
        two = [str(name) for name in chance.choice(list(answers), 2, replace=False)]
        picks = np.column_stack([chance.integers(0, len(answers[name]), 3) for name in two])
        trials.add(np.arange(len(VANS)), two, picks)
    shared = trials.columns(np.arange(len(trials.rows)), list(answers))
    numbers = [name for name, one in answers.items() if one.kind.name == "number"]
    ends = {f"{name}{end}": shared.floats(f"{name}{end}") for name in numbers for end in ("", "__low", "__high")}
    words = {name: shared.coded(name) for name in answers if name not in numbers}
    bases = {f"{name}__basis": shared.coded(f"{name}__basis") for name in numbers}
    return shared, Columns.made(shared.size, ends, {**words, **bases})


def test_what_is_shared_by_cases_is_what_each_gives_by_itself(tried, book):
    shared, plain = tried
    few, which = shared.alike(["length_mm", "insulation_r_si"])
    assert few.size < shared.size / 10 and len(which) == shared.size
    one, other = derive_ends(shared, book), derive_ends(plain, book)
    differ = [name for name in one if not np.array_equal(one[name], other[name], equal_nan=True)]
    assert differ == []
    assert all(np.isfinite(one[name]).any() for name in DERIVED)
