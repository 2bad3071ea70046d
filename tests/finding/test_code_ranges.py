"""Documents of several ranges: of which of them each code is, told by groups, sentences or the codes' first letters."""

import pytest

from tests.finding.conftest import sleeps_in

COLUMNS = ("Drive", "Length", "Fresh water", "Solar", "Sleeps")
FIGURES = {
    "W-45": ("FWD", "5.41 m", "80 L", "100 W", "2"), "W-52E": ("FWD", "5.99 m", "95 L", "200 W", "2"),
    "O-60": ("RWD", "6.73 m", "120 L", "200 W", "3"), "O-60X": ("4x4", "6.73 m", "120 L", "400 W", "3"),
}  # fmt: skip
FOOT = "<p>Marrowfen Coaches LLC, 12 Quay Road, Hythe.</p>"
FULL = {"Wendrill W-45": 2, "Wendrill W-52E": 2, "Ordwell O-60": 3, "Ordwell O-60X": 3}
BARE = {code: int(figures[-1]) for code, figures in FIGURES.items()}
BOTH = "<p>The Wendrill is the van for town. The Ordwell is the one that people ring about.</p>"
GROUPS = {"WENDRILL": ("W-45", "W-52E"), "ORDWELL": ("O-60", "O-60X")}


def table(*rows):
    return "<table>" + "".join(f"<tr>{''.join(f'<td>{cell}</td>' for cell in row)}</tr>" for row in rows) + "</table>"


def rows_of(groups, codes=None):
    """Give a table with a row a van below rows that name its group."""
    rows = "<tr>" + "".join(f"<th>{head}</th>" for head in ("Model", *COLUMNS)) + "</tr>"
    for group, members in groups.items():
        rows += f'<tr><td colspan="6"><b>{group}</b></td></tr>' if group else ""
        for code in members:
            cells = ((codes or {}).get(code, code), *FIGURES[code])
            rows += f"<tr>{''.join(f'<td>{cell}</td>' for cell in cells)}</tr>"
    return f"<table>{rows}</table>"


def columns_of(codes):
    """Give a table with a column a van."""
    rows = ((label, *(FIGURES[code][place] for code in codes)) for place, label in enumerate(COLUMNS))
    return table(("", *codes), *rows)


@pytest.fixture
def sleeps_of(read_file, tmp_path):
    """Give a function that reads a page and tells how many sleep in each of its vans."""

    def read(body, title="Marrowfen Coaches"):
        path = tmp_path / "line.html"
        path.write_text(f"<title>{title}</title><h1>{title}</h1>{body}{FOOT}", encoding="utf-8")
        return sleeps_in(read_file(path).found)

    return read


OPTIONS = table(
    ("Option", *FIGURES), ("Awning", "$900", "$900", "$900", "$900"), ("Inverter", "—", "$700", "$700", "STD"),
    ("Insulated cab covers", "$240", "$240", "STD", "STD"),
)  # fmt: skip


@pytest.mark.parametrize(
    "title, body",
    [
        ("Marrowfen Coaches", BOTH + rows_of(GROUPS) + OPTIONS),
        ("Marrowfen Coaches", BOTH + "".join(f"<h2>{one.title()}</h2>{columns_of(GROUPS[one])}" for one in GROUPS)),
        ("Marrowfen Coaches", "".join(f"<h2>{one.title()}</h2>{rows_of({'': GROUPS[one]})}" for one in GROUPS)),
        ("Wendrill &amp; Ordwell", "<p>Technical data 2026</p>" + columns_of(FIGURES)),
        ("Marrowfen Coaches", BOTH + columns_of(FIGURES)),
        ("Marrowfen Coaches", "<p>The Wendrill comes as W-45 and W-52E, the Ordwell as the O-60 and the O-60X.</p>"
         + columns_of(FIGURES)),
        ("Marrowfen Coaches", "<p>There are two Wendrills, W-45 and W-52E, and two Ordwells, O-60 and O-60X.</p>" + BOTH
         + columns_of(FIGURES)),
    ],
)  # fmt: skip
def test_codes_of_two_ranges_are_named_after_the_one_they_stand_under_or_are_told_of(sleeps_of, title, body):
    assert sleeps_of(body, title) == FULL


def test_groups_of_numbers_are_ranges_where_running_text_speaks_of_them(sleeps_of):
    numbers = {"W-45": "450", "W-52E": "520 E", "O-60": "600", "O-60X": "600 X"}
    expected = {"Wendrill 450": 2, "Wendrill 520 E": 2, "Ordwell 600": 3, "Ordwell 600 X": 3}
    assert sleeps_of(BOTH + rows_of(GROUPS, numbers)) == expected


@pytest.mark.parametrize(
    "said, groups",
    [
        ("On the Brannock or the Kelmar. The Brannock is driven in front.", ("BRANNOCK", "KELMAR")),
        ("Two lengths, one kitchen.", ("SHORT WHEELBASE", "LONG WHEELBASE")),
    ],
)
def test_groups_of_one_range_by_base_vehicle_or_length_are_no_ranges(sleeps_of, said, groups):
    grouped = dict(zip(groups, GROUPS.values(), strict=True))
    assert sleeps_of(f"<p>{said}</p>" + rows_of(grouped), "Wendrill 2026") == {
        f"Wendrill {code}": sleeps for code, sleeps in BARE.items()
    }


def test_names_that_all_begin_alike_do_not_tell_of_which_range_a_code_is(sleeps_of):
    said = "<p>The Wendrill is the van for town. The Waskett is the one that people ring about.</p>"
    codes = {"W-45": "W-45", "W-52E": "W-52E"}
    assert sleeps_of(said + columns_of(codes)).keys() <= {"W-45", "W-52E"} | {f"Wendrill {code}" for code in codes}


def test_the_book_of_prices_is_no_range(read_file, tmp_path):
    path = tmp_path / "book.html"
    body = "<p>Price book 2026</p>" + columns_of(("W-45", "W-52E"))
    path.write_text(f"<title>Price book 2026</title><h1>Marrowfen Coaches</h1>{body}{FOOT}", encoding="utf-8")
    assert {van.model for van in read_file(path).found.vans} == {"W-45", "W-52E"}


@pytest.mark.parametrize("named", ["Both Ordwells have", "The Ordwells have", "The two Ordwells of our range have"])
def test_the_plural_of_a_range_names_its_vans(read_file, tmp_path, named):
    path = tmp_path / "brochure.html"
    said = f"<p>{named} a thermal break, a felt strip.</p>"
    path.write_text(f"<h1>Marrowfen 2026</h1>{BOTH}{said}{rows_of(GROUPS)}{FOOT}", encoding="utf-8")
    facts = [fact for fact in read_file(path).found.facts if fact.field == "thermal_break" and not fact.rejected]
    assert {fact.model for fact in facts} == {"Ordwell O-60", "Ordwell O-60X"}


def test_whichever_one_chooses_means_all_of_them(read_file, tmp_path):
    path = tmp_path / "brochure.html"
    said = "<p>The Wendrill stays at home in frost. Whichever you choose, the winterizing bypass is easy to find.</p>"
    path.write_text(f"<h1>Marrowfen 2026</h1>{BOTH}{said}{rows_of(GROUPS)}{FOOT}", encoding="utf-8")
    facts = [fact for fact in read_file(path).found.facts if fact.field == "winterizing_bypass" and not fact.rejected]
    assert {fact.model for fact in facts} == set(FULL)


def test_the_corner_of_each_table_names_the_range_of_its_columns(vans_of):
    text = "# The vans of Marrowfen\n\nDrift is small, Larch is not. Model year 2026.\n\n"
    for name, one, two in (("Drift", "One", "Two"), ("Larch", "6", "6 AWD")):
        text += (
            f"| {name} | {one} | {two} |\n|---|---|---|\n| Length | 5.41 m | 5.99 m |\n| GVM | 3100 kg | 3500 kg |\n"
        )
        text += "| Fresh water | 70 L | 100 L |\n| Grey water | 60 L | 80 L |\n| Sleeps | 2 | 3 |\n\n"
    assert {model for _, model, _ in vans_of(text)} == {"Drift One", "Drift Two", "Larch 6", "Larch 6 AWD"}


def test_a_group_in_the_case_of_its_text_is_a_range_that_stands_before_one_of_its_codes(sleeps_of):
    said = "<p>The Wendrill is for town. A floor heater may be had on the Ordwell. The Ordwell O-60 is warm.</p>"
    numbers = {"W-45": "19 B", "W-52E": "22 B", "O-60": "O-60", "O-60X": "25 LX"}
    grouped = {group.title(): codes for group, codes in GROUPS.items()}
    expected = {"Wendrill 19 B": 2, "Wendrill 22 B": 2, "Ordwell O-60": 3, "Ordwell 25 LX": 3}
    assert sleeps_of(said + rows_of(grouped, numbers)) == expected


def test_rows_of_the_same_word_under_two_ranges_are_vans_of_each(sleeps_of):
    groups = {"WENDRILL": ("W-45", "W-52E"), "ORDWELL": ("O-60", "O-60X")}
    words = {"W-45": "Short", "W-52E": "Long", "O-60": "Long", "O-60X": "Long AWD"}
    expected = {"Wendrill Short": 2, "Wendrill Long": 2, "Ordwell Long": 3, "Ordwell Long AWD": 3}
    assert sleeps_of(BOTH + rows_of(groups, words)) == expected


def test_a_code_of_four_figures_that_is_no_year_of_a_model_is_kept(vans_of):
    text = """<html><body><p>Marrowfen LLC</p><h1>Camper vans for 2026</h1><p>Drift | Gorse</p>
<table><tr><th>Floorplan</th><th>Overall length</th><th>GVWR</th><th>Sleeps</th></tr>
<tr><td colspan="4"><b>Drift</b></td></tr>
<tr><td>1960</td><td>19 ft 8 in</td><td>9,050 lb</td><td>2</td></tr>
<tr><td>2170</td><td>21 ft 6 in</td><td>9,900 lb</td><td>4</td></tr>
<tr><td colspan="4"><b>Gorse</b></td></tr>
<tr><td>2480</td><td>24 ft 1 in</td><td>11,030 lb</td><td>3</td></tr></table></body></html>"""
    assert {model for _, model, _ in vans_of(text, "page.html")} == {"Drift 1960", "Drift 2170", "Gorse 2480"}
