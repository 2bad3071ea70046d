"""Whole words are found as patterns would find them, without a pattern for each."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specscan.finding.language.whole_words import (
    Names,
    any_of,
    count,
    holds,
    lowered,
    may_hold,
    stands_at,
    stands_before,
    with_behind,
    without_first,
    without_names,
)

TEXTS = st.text("aAbBéÉıſ1 -.,_\u00a0", max_size=24)
WORDS = st.text("aAbBé1-", min_size=1, max_size=3)


@given(TEXTS, WORDS)
def test_words_are_counted_as_a_pattern_counts_them(text, word):
    found = re.findall(rf"(?<!\w){re.escape(word)}(?!\w)", text)
    assert count(text, word) == len(found)
    assert holds(text, word) == bool(found)


@given(TEXTS, WORDS)
def test_a_text_that_cannot_hold_a_word_does_not(text, word):
    if not may_hold(text, word):
        assert re.search(re.escape(word), text, re.IGNORECASE) is None


@given(TEXTS, WORDS, WORDS)
def test_words_side_by_side_are_those_of_the_pattern(text, first, second):
    pattern = rf"(?<!\w){re.escape(first)}\s+{re.escape(second)}(?!\w)"
    assert stands_before(text, first, second) == bool(re.search(pattern, text, re.IGNORECASE))


@given(TEXTS, WORDS)
def test_the_first_word_is_cut_as_the_pattern_cuts_it(text, first):
    assert without_first(text, first) == re.sub(rf"^{re.escape(first)}\s+", "", text, flags=re.IGNORECASE)


@given(TEXTS, WORDS.map(lowered))
def test_names_are_cut_out_as_the_pattern_cuts_them(text, name):
    assert without_names(text, [name]) == re.sub(rf"(?<!\w){re.escape(name)}(?!\w)", " ", text, flags=re.IGNORECASE)


@given(TEXTS, WORDS)
def test_what_stands_behind_names_is_found_as_one_pattern_of_both_would_find_it(text, name):
    behind = r" ?[ab]+"
    found = [text[start : match.end()] for start, match in with_behind(text, name, re.compile(behind))]
    assert found == re.findall(rf"(?<!\w){re.escape(name)}{behind}", text)


@given(TEXTS, WORDS, st.integers(0, 8))
def test_a_word_stands_at_a_place_where_the_pattern_fits(text, word, place):
    fits = re.compile(rf"{re.escape(word)}(?!\w)").match(text, place)
    assert stands_at(text, word, place) == bool(fits)


@given(TEXTS, st.lists(st.text("ab1é -", min_size=1, max_size=4).map(str.strip).filter(bool), max_size=4))
def test_names_are_found_as_one_pattern_of_all_would_find_them(text, names):
    names = list(dict.fromkeys(" ".join(name.split()) for name in names))
    ordered = "|".join(re.escape(name).replace(r"\ ", r"\s+") for name in sorted(names, key=len, reverse=True))
    pattern = re.compile(rf"(?<![\w.,-])(?:{ordered or '(?!)'})(?![\w]|-\w|[.,]\d)", re.IGNORECASE)
    assert Names(names).find(text) == [match.span() for match in pattern.finditer(text)]


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("The DRIFT  540 and drift", ["DRIFT  540", "drift"]),
        ("Drift 540-D, 540.5, 540", ["Drift", "540"]),
        ("Drifter", []),
        ("Drift 540, and more", ["Drift 540"]),
    ],
)
def test_the_longest_name_counts_and_codes_that_go_on_are_others(text, found):
    assert [text[start:end] for start, end in Names(["drift", "540", "drift 540"]).find(text)] == found


def test_small_letters_stay_in_place():
    text = "İSTANBUL ſtraſſe"
    assert len(lowered(text)) == len(text) and lowered(text) == "istanbul strasse"


def test_an_empty_word_stands_nowhere():
    assert not holds("Marrowfen, Drift 21.", "")
    assert count("Marrowfen, Drift 21.", "") == 0
    assert not stands_before("Marrowfen, Drift 21.", "", "21")
    assert without_names("Marrowfen, Drift.", [""]) == "Marrowfen, Drift."


def test_any_of_some_words_is_found_whole_and_in_any_case_if_asked():
    pattern = any_of(["tank", "holding tank"], whole=True, any_case=True)
    assert pattern.search("Holding Tank, 17 L").group() == "Holding Tank"
    assert pattern.search("tankless") is None and pattern.search("a subtank") is None
    assert any_of(["tank"], whole=True).search("Tank") is None
