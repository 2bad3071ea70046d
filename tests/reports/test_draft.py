"""A draft held against the dataset: what is borne out, contradicted, without evidence, or cannot be checked."""

import json

import pytest
from click.testing import CliRunner

from specscan import api
from specscan.cli.main import main
from specscan.records.errors import NotFoundError, SpecscanError

DRAFT = """# Winter vans compared

The Sallowby Duo carries 30 US gallons and has heated tanks. The Launwerk Rauhreif 636 Nord has a 120 litre fresh water
tank. Its gray tank is heated. It sleeps nine.

The Skerrow 24 LX comes with a lithium battery of 200 Ah. The Currawend 60 HC has a heated floor. The Nonesuch 12 has a
50 gallon fresh tank. The Sallowby Trio drives like a dream.

## Sallowby Trio Winter

- Fresh tank: 22 imperial gallons
"""


@pytest.fixture(scope="module")
def claims(demo_db, tmp_path_factory):
    path = tmp_path_factory.mktemp("draft") / "draft.md"
    path.write_text(DRAFT, encoding="utf-8")
    return api.check_draft(path, demo_db)


def told(claims, field, words):
    found = [claim for claim in claims if claim.field == field and words in claim.words]
    assert len(found) == 1, [(claim.field, claim.words) for claim in claims]
    return found[0]


@pytest.mark.parametrize(
    ("field", "words", "verdict", "van"),
    [
        ("fresh_tank_l", "120 litre", "borne_out", "Launwerk Rauhreif 636 Nord 2026"),
        ("gray_tank_heat", "Its gray tank", "borne_out", "Launwerk Rauhreif 636 Nord 2026"),
        ("sleeps", "sleeps nine", "contradicted", "Launwerk Rauhreif 636 Nord 2026"),
        ("battery_ah", "200 Ah", "borne_out", "Halvenny Skerrow 24 LX 2026"),
        ("battery_chemistry", "lithium", "contradicted", "Halvenny Skerrow 24 LX 2026"),
        ("heated_floor", "heated floor", "without_evidence", "Murrinjal Currawend 60 HC 2026"),
        ("fresh_tank_l", "Fresh tank: 22", "borne_out", "Ebbingford Sallowby Trio Winter 2026"),
        ("gray_tank_heat", "heated tanks", "without_evidence", "Ebbingford Sallowby Duo 2026"),
    ],
)
def test_each_statement_has_its_verdict(claims, field, words, verdict, van):
    claim = told(claims, field, words)
    assert (claim.verdict, claim.van) == (verdict, van)


def test_a_verdict_comes_with_maker_document_page_and_words(claims):
    [source] = told(claims, "battery_chemistry", "lithium").sources
    assert source["citation"] == (
        "Halvenny, halvenny_skerrow_pricelist_2026.pdf, page 1: “House batteries: two 100 Ah AGM”"
    )


def test_what_is_printed_as_an_option_does_not_bear_out_that_a_van_has_it(claims):
    assert told(claims, "heated_floor", "heated floor").because == "printed as an option only: yes"


def test_a_van_that_is_not_in_the_dataset_is_not_taken_for_the_one_before_it(claims):
    claim = told(claims, "fresh_tank_l", "Nonesuch 12")
    assert (claim.verdict, claim.van, claim.sources) == ("not_checked", "", [])


def test_a_sentence_that_goes_on_about_a_van_says_so(claims):
    assert told(claims, "sleeps", "sleeps nine").carried
    assert not told(claims, "fresh_tank_l", "120 litre").carried
    assert not told(claims, "fresh_tank_l", "Fresh tank: 22").carried  # its heading names the van


def test_what_was_not_understood_is_listed_and_not_passed_over(claims):
    [claim] = [claim for claim in claims if "like a dream" in claim.words]
    assert claim.verdict == "not_checked" and "check it by hand" in claim.because


def test_the_command_tells_verdicts_and_pages(demo_db, tmp_path):
    path = tmp_path / "draft.md"
    path.write_text("The Skerrow 24 LX comes with a lithium battery.", encoding="utf-8")
    said = CliRunner().invoke(main, ["draft", str(path), "--db", str(demo_db)])
    assert said.exit_code == 0, said.output
    assert "contradicted  Halvenny Skerrow 24 LX 2026" in said.output and "page 1" in said.output
    data = json.loads(CliRunner().invoke(main, ["draft", str(path), "--db", str(demo_db), "--json"]).output)
    assert [row["verdict"] for row in data] == ["contradicted"]


def test_a_text_that_cannot_be_read_is_an_error(demo_db, tmp_path):
    with pytest.raises(NotFoundError, match=r"gone\.md: no such text"):
        api.check_draft(tmp_path / "gone.md", demo_db)
    (tmp_path / "large.md").write_bytes(b"x" * 2_000_001)
    with pytest.raises(SpecscanError, match="larger than 2 MB"):
        api.check_draft(tmp_path / "large.md", demo_db)
