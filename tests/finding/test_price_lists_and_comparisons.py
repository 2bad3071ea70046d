"""Texts that hold nothing but a comparison of vans, or a price list of codes under the names of their ranges."""

import pytest

ROWS = (
    ("Overall length", "5.41 m", "5.99 m", "6.36 m"),
    ("GVWR", "3500 kg", "3850 kg", "4250 kg"),
    ("Gray water tank", "60 l", "75 l", "90 l"),
    ("Sleeps", "2", "3", "4"),
    ("House battery", "150 Ah AGM", "200 Ah AGM", "300 Ah AGM"),
)


def pasted(*rows):
    return "Compare\n\n" + "\n".join("\t".join(row) for row in rows) + "\n\nPrint this page\n"


def test_what_opens_other_vans_opens_none_above_the_whole_text(vans_of):
    text = pasted(("", "Drift", "Drift S", "Drift XS"), *ROWS)
    assert vans_of(text, "compare.txt") == {("", "Drift", None), ("", "Drift S", None), ("", "Drift XS", None)}


def test_each_column_has_the_year_beside_its_label(vans_of):
    text = pasted(("", "Drift", "Drift S", "Drift XS"), ("Model year", "2025", "2026", "2026"), *ROWS)
    assert vans_of(text, "compare.txt") == {("", "Drift", 2025), ("", "Drift S", 2026), ("", "Drift XS", 2026)}


def test_years_in_a_column_are_those_of_its_rows(vans_of):
    text = "# Fourgons du Gué\n\n| Modèle | Millésime | Longueur | Couchages | Eau propre | Batterie |\n" + (
        "|---|---|---|---|---|---|\n| Houle 54 | 2025 | 5,41 m | 2 | 70 l | 100 Ah |\n"
        "| Houle 60 | 2026 | 5,99 m | 3 | 90 l | 200 Ah |\n"
    )
    assert {van[1:] for van in vans_of(text)} == {("Houle 54", 2025), ("Houle 60", 2026)}


def priced(code, price, *values):
    labels = ("Drive", "Overall length", "MTPLM", "Berths", "Fresh water tank", "Leisure battery")
    rows = "\n".join(f"      {label:.<32} {value}" for label, value in zip(labels, values, strict=True))
    return f"  {code:9}{price}\n{rows}\n\n"


@pytest.mark.parametrize("currency", ["GBP ", "£", "EUR "])
def test_codes_with_prices_stand_under_their_ranges(read_file, tmp_path, currency):
    text = (
        "MARROWFEN CONVERSIONS          RETAIL PRICE LIST, MODEL YEAR 2026\n"
        "=================================================================\n\nDRIFTCOTE\n"
        + priced("540", f"{currency}58,450", "rear-wheel drive", "5,410 mm", "3,500 kg", "2", "100 L", "200 Ah")
        + priced("600", f"{currency}61,900", "rear-wheel drive", "5,990 mm", "3,850 kg", "3", "90 L", "400 Ah")
        + "GORSECOTE\n"
        + priced("640", f"{currency}69,750", "rear-wheel drive", "6,360 mm", "3,500 kg", "4", "120 L", "120 Ah")
        + "Prices include VAT. Marrowfen Conversions Ltd.\n"
    )
    path = tmp_path / "prices.txt"
    path.write_text(text, encoding="utf-8")
    found = read_file(path).found
    assert {van.model for van in found.vans} == {"Driftcote 540", "Driftcote 600", "Gorsecote 640"}
    sleeps = {fact.model: fact.value for fact in found.facts if fact.field == "sleeps"}
    assert sleeps == {"Driftcote 540": 2, "Driftcote 600": 3, "Gorsecote 640": 4}  # dots close to their label
