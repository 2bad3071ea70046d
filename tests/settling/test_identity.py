"""Whose fact is it: documents meet in one van, or stay apart."""

import pytest

from specscan.records.errors import RuleError
from specscan.records.facts import VanName
from specscan.settling.identity import assign_vans
from specscan.settling.manifest import ManifestRow, read_manifest
from specscan.settling.manifested import apply_manifest
from tests.settling.made import document, fact

FORMS = ["Inc.", "GmbH"]


def vans_of(*names):
    documents = [document(doc_id=f"d{n}", name=f"{n}.pdf", vans=(name,)) for n, name in enumerate(names)]
    vans, mapping = assign_vans(documents, FORMS)
    return [(van.maker, van.model, van.model_year) for van in vans], mapping


def test_same_maker_model_and_year_are_one_van():
    vans, mapping = vans_of(VanName("Marrowfen", "Drift 21", 2026), VanName("MARROWFEN Inc.", "Drift-21", 2026))
    assert len(vans) == 1
    assert len(set(mapping.values())) == 1


def test_different_years_stay_apart():
    vans, _ = vans_of(VanName("Marrowfen", "Drift 21", 2025), VanName("Marrowfen", "Drift 21", 2026))
    assert [year for *_, year in vans] == [2025, 2026]


def test_a_document_without_a_year_joins_the_only_van_that_fits():
    vans, _ = vans_of(VanName("Marrowfen", "Drift 21", None), VanName("Marrowfen", "Drift 21", 2026))
    assert vans == [("Marrowfen", "Drift 21", 2026)]


def test_a_document_without_a_year_stays_apart_where_two_years_fit():
    vans, _ = vans_of(
        VanName("Marrowfen", "Drift 21", None),
        VanName("Marrowfen", "Drift 21", 2025),
        VanName("Marrowfen", "Drift 21", 2026),
    )
    assert len(vans) == 3


def test_a_name_that_no_document_of_its_own_takes_apart_is_taken_apart_by_another():
    vans, mapping = vans_of(VanName("Marrowfen", "Drift 21", 2026), VanName("", "Marrowfen Drift 21", 2026))
    assert vans == [("Marrowfen", "Drift 21", 2026)]
    assert len(set(mapping.values())) == 1
    vans, _ = vans_of(VanName("Marrowfen", "Drift 24", 2026), VanName("", "Marrowfen Drift 21", 2026))
    assert len(vans) == 2  # nobody says that Marrowfen is the maker of a Drift 21


def test_same_model_of_another_maker_is_another_van():
    vans, _ = vans_of(VanName("Marrowfen", "Drift 21", 2026), VanName("Quillby", "Drift 21", 2026))
    assert len(vans) == 2


def test_model_with_and_without_the_makers_name_is_one():
    vans, _ = vans_of(VanName("Marrowfen", "Marrowfen Drift 21", 2026), VanName("Marrowfen", "Drift 21", 2026))
    assert len(vans) == 1


def test_manifest_overrules_what_the_document_says():
    before = document(fact("model", "Drift 21", how="identity"), fact("fresh_tank_l", 90.0))
    after, notes = apply_manifest(before, [ManifestRow("a.pdf", "Quillby", "Tarn 5", 2024, 2)])
    assert after.found.vans == (VanName("Quillby", "Tarn 5", 2024),)
    counting = {(f.field, f.value, f.model) for f in after.found.facts if not f.rejected}
    assert ("fresh_tank_l", 90.0, "Tarn 5") in counting
    assert ("model", "Tarn 5", "Tarn 5") in counting
    assert ("model", "Drift 21", "Tarn 5") not in counting
    assert notes == []


def test_manifest_row_for_a_model_that_is_not_there_is_named():
    vans = (VanName("Marrowfen", "Drift 21", 2026), VanName("Marrowfen", "Drift 23", 2026))
    _, notes = apply_manifest(document(vans=vans), [ManifestRow("a.pdf", "", "Drift 99", None, 7)])
    assert len(notes) == 1
    assert "manifest.csv:7" in notes[0] and "Drift 99" in notes[0]


@pytest.mark.parametrize(
    ("text", "wrong"),
    [
        ("file,maker,model\na.pdf,X,Y\n", r":1: .*year"),
        ("file,maker,model,year\na.pdf,X,Y,soon\n", r":2: 'soon' is no year"),
        ("file,maker,model,year\n,X,Y,2026\n", r":2: no file"),
    ],
)
def test_a_wrong_manifest_names_its_line(tmp_path, text, wrong):
    path = tmp_path / "manifest.csv"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(RuleError, match=wrong):
        read_manifest(path)
