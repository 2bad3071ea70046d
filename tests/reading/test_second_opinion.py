"""What pdfium refuses, pdfplumber may still read: the same page gives the same facts either way."""

import pytest

from tests.conftest import ROOT

JUNK = (
    b"some mailer put this before the file\n" * 90
)  # more than the first 1,024 bytes in which readers seek the header


def said(result):
    return {
        (fact.model, fact.field, fact.value, fact.availability, fact.page)
        for fact in result.found.facts
        if not fact.rejected
    }


@pytest.mark.parametrize("name", ["oldersund_ravnkol_2026.pdf", "tressault_gelinotte_2026.pdf"])
def test_a_file_that_pdfium_refuses_states_the_same(examiner, name):
    data = (ROOT / "corpus_demo" / name).read_bytes()
    fast, slow = examiner.examine(name, data, "pdf"), examiner.examine(name, JUNK + data, "pdf")
    assert "pdfium cannot open" in slow.record.message
    assert slow.record.status == "read"
    assert len(said(fast)) > 50
    assert said(slow) == said(fast)


def test_a_file_that_both_refuse_is_named_with_both_reasons(examiner):
    record = examiner.examine("torn.pdf", b"%PDF-1.7\n1 0 obj\n<<", "pdf").record
    assert record.status == "unreadable"
    assert "pdfium" in record.message and "pdfplumber" in record.message
