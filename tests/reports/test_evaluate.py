"""The figures of an evaluation, counted by hand on a dataset of a dozen facts."""

import pytest

from specscan.records.errors import RuleError
from specscan.reports.evaluate import evaluate
from tests.dataset.made import settled, write

HEAD = "doc,van,field,value,availability,page\n"
TYPES = {
    "fresh_tank_l": "number", "solar_w": "number", "heated_floor": "flag", "toilet": "choice",
    "insulated_surfaces": "set", "maker": "text", "model": "text", "sleeps": "integer",
}  # fmt: skip


def fact(number, field, *, doc="a", van="drift", page=1, availability="standard", **value):
    return {
        "fact_id": f"{doc}-{number}", "van_id": van, "field": field, "doc_id": doc, "page": page, "printed": "words",
        "availability": availability, "found_by": "test", **value,
    }  # fmt: skip


@pytest.fixture
def judged(tmp_path):
    """Give a function that evaluates facts of brochures a.pdf and b.pdf against the lines of a gold file."""

    def judge(facts, gold, **files):
        names = [
            {"doc_id": doc, "name": f"{doc}.pdf", "path": f"{tmp_path}/{doc}.pdf", "status": "read"} for doc in "ab"
        ]
        rows = [settled(one["field"], van=one["van_id"], fact_ids=[one["fact_id"]]) for one in facts]
        vans = {(one["van_id"], one["doc_id"]) for one in facts}
        db = write(
            tmp_path / f"vans{len(list(tmp_path.iterdir()))}.duckdb",
            *rows,
            facts=facts,
            documents=names,
            fields=[{"field": name, "type": kind} for name, kind in TYPES.items()],
            van_names=[{"van_id": van, "doc_id": doc, "model": van.title()} for van, doc in vans],
        )
        for name, text in {"gold.csv": gold, **files}.items():
            (tmp_path / name.replace("__", ".")).write_text(text if "status" in text else HEAD + text, encoding="utf-8")
        return evaluate(tmp_path / "gold.csv", db)

    return judge


def test_right_extra_and_missing_are_counted(judged):
    facts = [fact(1, "fresh_tank_l", value_num=100.0), fact(2, "solar_w", value_num=50.0)]
    result = judged(facts, "a.pdf,,fresh_tank_l,101.5,standard,1\na.pdf,,toilet,cassette,standard,1\n")
    assert (result.overall.right, result.overall.extra, result.overall.missing) == (1, 1, 1)
    assert result.overall.precision == result.overall.recall == result.overall.f1 == 0.5
    assert {(miss.kind, miss.field) for miss in result.misses} == {("extra", "solar_w"), ("missing", "toilet")}


@pytest.mark.parametrize(("value", "right"), [(98.0, 1), (97.9, 0), (102.0, 1), (102.1, 0)])
def test_a_number_is_right_within_two_percent(judged, value, right):
    assert (
        judged([fact(1, "fresh_tank_l", value_num=value)], "a.pdf,,fresh_tank_l,100,standard,1\n").overall.right
        == right
    )


def test_names_compare_without_case_and_punctuation_and_sets_as_a_whole(judged):
    facts = [
        fact(1, "maker", value_text="MARROW-FEN Vans"),
        fact(2, "insulated_surfaces", value_text="ceiling+walls"),
    ]
    gold = "a.pdf,,maker,Marrowfen Vans,standard,1\na.pdf,,insulated_surfaces,ceiling+floor+walls,standard,1\n"
    assert judged(facts, gold).overall.right == 1


def test_page_and_availability_are_figures_of_their_own(judged):
    facts = [
        fact(1, "fresh_tank_l", value_num=100.0, page=2, availability="unstated"),
        fact(2, "heated_floor", value_flag=True, availability="optional"),
        fact(3, "sleeps", value_num=2.0, availability="optional"),
    ]
    gold = "a.pdf,,fresh_tank_l,100,standard,1\na.pdf,,heated_floor,yes,standard,1\na.pdf,,sleeps,2,standard,1\n"
    overall = judged(facts, gold).overall
    assert overall.page == pytest.approx(2 / 3)
    assert overall.availability == 0.5  # unstated counts as standard; sleeps is an identity field and left out


def test_a_value_of_another_van_is_wrong_twice(judged):
    facts = [fact(1, "fresh_tank_l", van="drift", value_num=100.0), fact(2, "solar_w", van="tarn", value_num=50.0)]
    overall = judged(facts, "a.pdf,Drift,fresh_tank_l,100,standard,1\na.pdf,Drift,solar_w,50,standard,1\n").overall
    assert (overall.right, overall.extra, overall.missing) == (1, 1, 1)


def test_a_document_without_labels_in_the_same_folder_counts_against_precision(judged):
    facts = [fact(1, "fresh_tank_l", value_num=100.0), fact(1, "solar_w", doc="b", value_num=50.0)]
    gold = "a.pdf,,fresh_tank_l,100,standard,1\n"
    assert judged(facts, gold).overall.extra == 1
    other = judged(facts, gold, gold_scanned__csv="b.pdf,,solar_w,50,standard,1\n")
    assert other.overall.extra == 0
    assert other.not_judged == ["b.pdf"]


def test_statuses_are_compared_where_they_are_told(judged):
    result = judged(
        [], "a.pdf,,toilet,cassette,standard,1\n", expected__csv="doc,status\na.pdf,unreadable\nb.pdf,read\n"
    )
    assert [(miss.doc, miss.expected, miss.found) for miss in result.misses if miss.kind == "status"] == [
        ("a.pdf", "unreadable", "read")
    ]


def test_a_gold_file_without_a_column_is_refused(judged, tmp_path):
    judged([], "")
    (tmp_path / "gold.csv").write_text("doc,van,field,value\n")
    with pytest.raises(RuleError, match=r"gold\.csv:1: .*availability"):
        evaluate(tmp_path / "gold.csv", tmp_path / "never_opened.duckdb")
