"""Several documents on the same vans, and documents of one maker, settled together."""

import pytest

from tests.benchmarks.dossiers import weigh
from tests.benchmarks.scoring import Scanner
from tests.proving_ground.dossiers import draw_dossier


@pytest.fixture(scope="module")
def scanner():
    return Scanner()


def test_documents_on_the_same_vans_join_and_their_contradictions_are_told(scanner):
    dossier = next(one for number in range(20) if (one := draw_dossier(31, number)).disputed)
    counts, wrong = weigh(scanner, [dossier])
    assert counts["joined"] == counts["found"] == len(dossier.vans)
    assert counts["agreed wrong"] == 0, wrong
    assert counts["disputed conflicting"] == len(dossier.disputed), wrong
    assert counts["agreed right"] >= 0.9 * sum(n for name, n in counts.items() if name.startswith("agreed"))


def test_vans_of_one_maker_in_other_documents_stay_apart(scanner):
    first = draw_dossier(32, 0)
    second = draw_dossier(32, 1, first.family)
    counts, wrong = weigh(scanner, [first, second])
    assert counts["joined"] == counts["found"] == len(first.vans) + len(second.vans), wrong
    assert counts["agreed wrong"] == 0, wrong
