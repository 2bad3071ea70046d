"""Regular expressions of rule files cannot keep the program busy."""

import re

import pytest

from specscan.rulebook.patterns import checked_pattern


@pytest.mark.parametrize(
    "text", ["(a+)+b", "(a|ab)*c", r"(\w+\s?)*$", "((a?)x){60}", "(?=(a*)*)b", "(" * 3, "a" * 2001]
)
def test_what_could_run_away_or_is_no_pattern_is_refused(text):
    with pytest.raises(re.error):
        checked_pattern(text)


@pytest.mark.parametrize("text", [r"\b(carr(?:y|ies)|holds?) (\d[\d.,]*) ?L", "(?:ab){2,}", "(a|b)?c+", "[a-z]+s?$"])
def test_what_rules_use_is_taken(text):
    assert checked_pattern(text).pattern == text
