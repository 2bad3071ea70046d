"""The code of the only van on a line of its own below its name, which sentences say in one piece."""

SHEET = """# Drift

## 21 FX

Marrowfen Inc. | Model year 2026

The Drift 21 FX is built for people who work outdoors in the wrong month of the year.

| Specification | |
|---|---|
| Length | 21 ft 4 in |
| Sleeps | 2 |
| RSI | 0.75 |
| Inverter | 1,000 W |
"""


def test_a_code_that_a_sentence_sets_behind_the_name_belongs_to_it(read_file, tmp_path):
    path = tmp_path / "sheet.md"
    path.write_text(SHEET, encoding="utf-8")
    assert [van.model for van in read_file(path).found.vans] == ["Drift 21 FX"]


def test_rsi_is_a_unit(facts_of):
    told = {(fact.field, fact.value) for fact in facts_of(SHEET, "sheet.md")}
    assert ("insulation_r_si", 0.75) in told
