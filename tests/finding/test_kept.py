"""What was read before is not read again, and means the same wherever it is used."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from specscan.finding.kit import JOIN, Kits
from specscan.finding.language.fold import Token
from specscan.finding.language.lexicon import Lexicon
from tests.finding.conftest import HEADS

LANGUAGES = ("en", "fr", "de")
WORDS = (
    "Fresh water tank", "gray", "Chauffage des eaux", "L", "l", "Heizung", "Ab-/Frischwasser", "-", "(l)", "95", "12 V",
    "not heated", "standard", "sans", "Zul.", "mm", "/", ".", "insulated", "d'eau", "Grauwasser", "x", "option",
)  # fmt: skip
TEXTS = st.lists(st.sampled_from(WORDS), max_size=4).map(" ".join)


@pytest.fixture(scope="module")
def lexicons(book):
    return [Lexicon(book, language) for language in LANGUAGES]


@given(label=TEXTS, body=TEXTS)
def test_a_label_and_its_body_put_together_read_as_the_whole_text_does(lexicons, label, body):
    for lexicon in lexicons:
        whole, joined = lexicon.analyse(f"{label}{JOIN}{body}"), lexicon.joined(label, JOIN, body)
        assert joined.tokens == whole.tokens
        assert joined.mentions == whole.mentions


@given(
    words=st.lists(st.sampled_from((*WORDS, "the", "un", "water,", "l'", "17 D", "\n", "Frisch-", "und")), max_size=8)
)
def test_words_between_spaces_fold_as_in_the_whole_text(lexicons, words):
    text = " ".join(words)
    for lexicon in lexicons:
        whole: list[Token] = []
        lexicon.folder._add_tokens(text, 0, len(text), whole)
        assert lexicon.folder.tokens(text) == whole


@given(words=st.lists(st.sampled_from(WORDS), max_size=8))
def test_mentions_of_short_stretches_are_those_of_the_whole_text(lexicons, words):
    for lexicon in lexicons:
        analysis = lexicon.analyse(" ".join(words))
        norms = tuple(token.norm for token in analysis.tokens)
        found = [(m.concept, m.first, m.last) for m in analysis.mentions]
        assert found == [(concept, first, last) for concept, first, last in lexicon._matched(norms)]


def test_terms_that_hold_across_the_ocean_only_are_not_found_though_the_matcher_is_shared(book):
    home = Lexicon(book, "en")
    abroad = Lexicon(book, "en", north_american=False, like=home)
    alone = Lexicon(book, "en", north_american=False)
    assert home.concepts.keys() != abroad.concepts.keys()
    for norms in {*home.concepts, *abroad.concepts}:
        assert abroad._matched(norms) == alone._matched(norms)


def test_the_sign_between_label_and_body_is_a_word_of_no_term(book):
    kits = Kits(book)
    for language in LANGUAGES:
        assert JOIN.strip() not in kits.lexicon(language).known_words


def test_the_same_words_under_other_headings_say_what_these_headings_make_of_them(examiner):
    """The capacity of what the heading names, read in turn under several headings, and a tank that names itself."""
    lines = []
    for heading in ("Fresh water", "Gray water", "Fresh water"):
        lines += [
            f"## {heading}",
            "",
            "| | Drift 21 |",
            "|---|---|",
            "| Capacity | 90 L |",
            "| Black tank | 40 L |",
            "",
        ]
    text = "\n".join([HEADS["US"][""], *lines])
    found = examiner.examine("drift.md", text.encode(), "text").found
    said = [(fact.field, fact.num) for fact in found.facts if fact.num in (90.0, 40.0)]
    assert said == [
        ("fresh_tank_l", 90.0), ("black_tank_l", 40.0), ("gray_tank_l", 90.0), ("black_tank_l", 40.0),
        ("fresh_tank_l", 90.0), ("black_tank_l", 40.0),
    ]  # fmt: skip
