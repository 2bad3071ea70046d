"""Trims of one van: how sheets, headings and lines name them."""

import pytest

from tests.finding.conftest import sleeps_in

PLAIN = {
    "Height": "8 ft 8 in", "House battery": "100 Ah AGM", "Inverter": "600 W", "Gray tank": "15 gal",
    "Heater": "gasoline air heater", "Drive": "front", "Sleeps": "2",
}  # fmt: skip
RICH = {
    "Height": "9 ft 1 in", "House battery": "300 Ah lithium", "Inverter": "2,000 W", "Gray tank": "18 gal",
    "Heater": "diesel hydronic", "Drive": "all four", "Sleeps": "3",
}  # fmt: skip
COMMON = {"Length": "19 ft 3 in", "Width": "6 ft 8 in", "Wheelbase": "147 in", "Fresh water": "21 gal"}
OPENING = "<h1>Drift 21</h1><p>Marrowfen Vans, 2026</p>{}<h2>The same in both</h2>{}"
SAID = "<p>One van, built two ways: the Scholar and the Captain</p>"
SLEEPS = {"Drift 21 Scholar": 2, "Drift 21 Captain": 3}


def table(*rows):
    return "<table>" + "".join(f"<tr>{''.join(f'<td>{cell}</td>' for cell in row)}</tr>" for row in rows) + "</table>"


OFFERS = "<h2>Extras</h2>" + table(
    ("Item", "Scholar", "Captain"), ("Solar, 190 W", "$740", "included"), ("Roof fan", "$390", "included"),
    ("Insulated cab covers", "$280", "included"), ("Second battery, 200 Ah in all", "$420", "no"),
)  # fmt: skip


@pytest.fixture
def sleeps_of(read_file, tmp_path):
    """Give a function that reads a page of the Drift 21 and tells how many sleep in each of its vans."""

    def read(body, said=""):
        path = tmp_path / "page.html"
        opening = OPENING.format(said, table(*COMMON.items()))
        path.write_text(f"<title>Marrowfen Drift 21</title>{opening}{body}", encoding="utf-8")
        return sleeps_in(read_file(path).found)

    return read


def sheets(one, other):
    return f"<h2>{one}</h2>{table(*PLAIN.items())}<h2>{other}</h2>{table(*RICH.items())}"


@pytest.mark.parametrize(
    "one, other",
    [
        ("The Scholar", "The Captain"), ("Scholar trim", "Captain trim"), ("Trim: Scholar", "Trim: Captain"),
        ("Trim level Scholar", "Trim level Captain"), ("Drift 21 Scholar", "Drift 21 Captain"),
    ],
)  # fmt: skip
def test_headings_name_trims_with_words_for_what_they_are(sleeps_of, one, other):
    assert sleeps_of(sheets(one, other)) == SLEEPS


@pytest.mark.parametrize("one, other", [("Scholar", "Captain"), ("Scholar – from $84,700", "Captain – from $121,300")])
def test_a_trim_all_of_whose_extras_have_prices_is_one_of_the_vans(sleeps_of, one, other):
    assert sleeps_of(sheets(one, other) + OFFERS, SAID) == SLEEPS


def test_a_column_of_prices_names_no_van_of_which_nobody_speaks(sleeps_of):
    offers = OFFERS.replace("Scholar", "Retail").replace("Captain", "Drift 21")
    assert sleeps_of(table(*PLAIN.items()) + offers) == {"Drift 21": 2}


def test_sheets_that_open_with_a_name_and_its_price_are_each_of_that_van(sleeps_of):
    sheet = [table((name, price), *rows.items()) for name, price, rows in
             (("Drift 21 Scholar", "$84,700", PLAIN), ("Drift 21 Captain", "from $121,300", RICH))]  # fmt: skip
    assert sleeps_of("<h2>Two build sheets</h2>" + "".join(sheet) + OFFERS, SAID) == SLEEPS


def test_letters_over_columns_are_trims_behind_the_code_in_the_title(sleeps_of):
    rows = ((label, value, RICH[label]) for label, value in PLAIN.items())
    assert sleeps_of(table(("", "S", "SL"), *rows), "<p>One body, two trims: S and SL.</p>") == {
        "Drift 21 S": 2, "Drift 21 SL": 3,
    }  # fmt: skip


def test_the_van_above_the_sheets_of_its_trims_is_none_beside_them(sleeps_of):
    assert sleeps_of(sheets("Drift 21 Comfort", "Drift 21 Winter")) == {"Drift 21 Comfort": 2, "Drift 21 Winter": 3}


def test_trims_of_which_a_line_tells_and_running_text_speaks_once_are_vans(sleeps_of):
    said = "<p>Two trims: Scholar and Captain.</p>"
    told = "<p>The Scholar sleeps two and has a battery of 100 Ah. The Captain sleeps three and has 300 Ah.</p>"
    assert sleeps_of(told, said) == SLEEPS


@pytest.mark.parametrize("trim", ["Drift Hi-Line", "Drift Sport-Line", "Drift Snow Line"])
def test_a_trim_called_a_line_is_a_van_and_no_range_of_the_others(read_file, tmp_path, trim):
    """The word for ranges is part of its name: values stand below it as below the others."""
    page = "<h1>Drift, {} and Gorse</h1><p>Marrowfen Vans, 2026</p>{}"
    rows = table(("Sleeps", "2", "4", "3"), ("Length", "5.41 m", "5.99 m", "6.36 m"), ("Height", "2.59 m", "2.8 m", ""))
    heads = f"<tr><th></th><th>Drift</th><th>{trim}</th><th>Gorse</th></tr>"
    path = tmp_path / "page.html"
    path.write_text(page.format(trim, rows.replace("<table>", f"<table>{heads}")), encoding="utf-8")
    assert sleeps_in(read_file(path).found) == {"Drift": 2, trim: 4, "Gorse": 3}


def test_two_trims_of_which_running_text_tells_in_turn_are_vans_though_one_is_called_by_words_of_lists(vans_of):
    text = (
        "The Shore Plus measures 590 cm from bumper to bumper and has a wheelbase of 345 cm. It sleeps 2.\n\n"
        "The Shore Plus has an insulated fresh water tank and carries 100 W of rooftop solar.\n\n"
        "The Shore Plus has a house battery of 100 Ah and a heated gray tank.\n\n"
        "The Quartet measures 640 cm from bumper to bumper and has a wheelbase of 432 cm. It sleeps 4.\n\n"
        "The Quartet has a heated gray tank and a 10-litre water heater.\n\n"
        "The Quartet has a house battery of 150 Ah and double-glazed windows.\n\n"
    )
    found = vans_of(f"# Tusk – 2027 models\n\nShore Plus | Quartet\n\n{text}Marrowfen Pty Ltd, 4 Mill Lane\n")
    assert {model for _, model, _ in found} == {"Tusk Shore Plus", "Tusk Quartet"}


def test_a_line_that_counts_the_vans_it_lists_names_trims_whatever_it_calls_them(vans_of):
    text = (
        "# Drift 21\n\n## One van, two tempers: Base Meadow and High Meadow\n\nMARROWFEN 2027 model year\n\n"
        "Base Meadow is a three-season van. High Meadow is a four-season van.\n\n## Equipment\n\n"
        "- Fresh water tank, 26 gal\n- Rear-wheel drive (Base Meadow)\n- All-wheel drive (High Meadow)\n- Sleeps 2\n"
    )
    assert {model for _, model, _ in vans_of(text)} == {"Drift 21 Base Meadow", "Drift 21 High Meadow"}


TWO_WORDS = """# Marrowfen Drift 21

Base Camp and High Camp, model year 2026. Marrowfen Vans, Inc.

Drift 21 Base Camp is where most trips start. Drift 21 High Camp goes where the creek stops.

- Rear-wheel drive on Base Camp, four-wheel drive on High Camp
- House battery on Base Camp: 200 Ah AGM
- House battery on High Camp: 300 Ah lithium
- Solar 190 W (Base Camp), 380 W (High)
- Length 21 ft 3 in, width 6 ft 9 in
- 27 gal fresh tank inside the cabin
- LP furnace, 16,000 BTU/h
"""


def test_a_trim_has_all_of_the_words_that_always_stand_together(facts_of):
    drives = {fact.model: fact.value for fact in facts_of(TWO_WORDS, "drift.md") if fact.field == "drive"}
    assert drives == {"Drift 21 Base Camp": "rear", "Drift 21 High Camp": "all"}


EITHER = """# The Drift

Basecamp or Highcamp. Your hill, your call.

Marrowfen   2026 model year

Basecamp is the honest one. Highcamp is our four-season van; Basecamp is a three-season van.

Marrowfen Mfg. Inc., 118 Quay Road, Hythe.

- Rear-wheel drive on Basecamp
- All-wheel drive on Highcamp
- 20 ft 6 in long, 6 ft 8 in wide, 9 ft 6 in high
- GVWR 9,950 lb
- 24-gallon fresh tank, inside
"""


def test_a_line_that_offers_either_of_two_trims_lists_them(read_file, tmp_path):
    path = tmp_path / "drift.md"
    path.write_text(EITHER)
    found = read_file(path).found
    assert {(van.maker, van.model) for van in found.vans} == {
        ("Marrowfen", "Drift Basecamp"),
        ("Marrowfen", "Drift Highcamp"),
    }
    assert {f.model: f.value for f in found.facts if f.field == "drive"} == {
        "Drift Basecamp": "rear",
        "Drift Highcamp": "all",
    }
