"""The lists of words in the rules, as they come with the program."""

from collections import Counter
from pathlib import Path

import pytest

from specscan.rulebook.yaml_source import read_yaml

RULES = Path(__file__).parent.parent.parent / "rules"


def lists_of(data, place=""):
    if isinstance(data, dict):
        for key, part in data.items():
            yield from lists_of(part, f"{place}.{key}")
    elif isinstance(data, list):
        yield place, data
        for part in data:
            yield from lists_of(part, place)


@pytest.mark.parametrize("folder", ["fields", "words"])
def test_no_term_stands_twice_in_its_list(folder):
    twice = {
        f"{path.name}{place}": doubled
        for path in sorted((RULES / folder).glob("*.yaml"))
        for place, terms in lists_of(read_yaml(path).data)
        if (doubled := [term for term, times in Counter(t for t in terms if isinstance(t, str)).items() if times > 1])
    }
    assert not twice
