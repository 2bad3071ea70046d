"""Rows whose label means by "it" what the row above them is about, below the name of a group that names a thing."""

import pytest

PAGE = """<html lang="{language}"><body><h1>{title}</h1><table>
<tr><th></th><th></th><th>Drift 19</th><th>Drift 22</th></tr>
<tr><td rowspan="2"></td><td>{length}</td><td>5.9 m</td><td>6.4 m</td></tr>
<tr><td>{sleeps}</td><td>2</td><td>3</td></tr>
<tr><td rowspan="4">{group}</td><td>{fresh}</td><td>80 l</td><td>110 l</td></tr>
<tr><td>{where}</td><td>{inside}</td><td>{inside}</td></tr>
<tr><td>{gray}</td><td>70 l</td><td>90 l</td></tr>
<tr><td>{where}</td><td>{below}</td><td>{below}</td></tr>
</table></body></html>"""
EN = {
    "language": "en", "title": "Marrowfen Drift 2027 specifications", "length": "Length", "sleeps": "Sleeps",
    "group": "Plumbing", "fresh": "Fresh tank", "gray": "Gray tank", "where": "where it sits", "inside": "Inside",
    "below": "Under the floor",
}  # fmt: skip
DE = {
    "language": "de", "title": "Marrowfen Drift, Technische Daten 2027", "length": "Länge", "sleeps": "Schlafplätze",
    "group": "Wasserleitungen", "fresh": "Frischwassertank", "gray": "Abwassertank", "where": "wo er sitzt",
    "inside": "im Innenraum", "below": "unter dem Boden",
}  # fmt: skip


@pytest.mark.parametrize("words", [EN, DE])
def test_it_means_the_tank_of_the_row_above_and_not_the_group(read_file, tmp_path, words):
    path = tmp_path / "table.html"
    path.write_text(PAGE.format(**words), encoding="utf-8")
    told = {(f.field, f.model, f.value) for f in read_file(path).found.facts if not f.rejected}
    places = {one for one in told if one[0].endswith("_location")}
    assert places == {
        (field, f"Drift {van}", where)
        for field, where in (("fresh_tank_location", "interior"), ("gray_tank_location", "underbody"))
        for van in (19, 22)
    }


def test_people_asleep_are_berths_and_a_bowl_over_the_black_tank_is_no_cassette(facts_of):
    text = (
        "# Marrowfen Drift 21, model year 2026\n\n| Specification | |\n|---|---|\n| Length | 21 ft |\n"
        "| People: belted / asleep | 4 / 3 |\n| Toilet | Ceramic bowl over black tank |\n| GVWR | 9,350 lb |\n"
    )
    told = {(fact.field, fact.value) for fact in facts_of(text, "drift.md")}
    assert {("sleeps", 3), ("toilet", "fixed_tank")} <= told
