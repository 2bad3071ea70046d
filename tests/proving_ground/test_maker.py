"""The brochure maker: what it says a brochure states stands on its pages, and is put in the vocabulary's words."""

import random
from pathlib import Path

import pytest

from tests.proving_ground.families import FAMILIES
from tests.proving_ground.figures import STYLES, House
from tests.proving_ground.maker import draw
from tests.proving_ground.selfcheck import faults, page_texts
from tests.proving_ground.truth import is_number

WITHOUT_BROWSER = ("reportlab", "html", "text", "markdown")
SIZE = 90

# The words of choices and sets, from the contract (field vocabulary).
HEAT = "none electric_pad hydronic warm_air heated_compartment unspecified".split()
PLACES = "interior underbody enclosed".split()
CONTRACT = {
    "drive": "rear front all".split(),
    "engine_fuel": "diesel gasoline electric hybrid".split(),
    "toilet": "fixed_tank cassette dry portable none".split(),
    "water_lines_location": "interior enclosed exterior mixed".split(),
    "dump_valve_protection": "heated_compartment heated insulated exposed".split(),
    "heater_type": "forced_air hydronic combined electric heat_pump radiant".split(),
    "heater_fuel": "propane diesel gasoline electric".split(),
    "battery_chemistry": "lithium agm gel flooded".split(),
    "insulation_material": (
        "spray_foam rigid_foam foam_sheet mineral_wool fiberglass synthetic_fiber natural_fiber sheep_wool cork "
        "reflective_foil"
    ).split(),
    "insulated_surfaces": "walls ceiling floor doors".split(),
    "window_glazing": "double single mixed".split(),
    **{f"{tank}_tank_heat": HEAT for tank in ("fresh", "gray", "black")},
    **{f"{tank}_tank_location": PLACES for tank in ("fresh", "gray", "black")},
}


@pytest.fixture(scope="module")
def brochures():
    return [draw(11, number, renderers=WITHOUT_BROWSER) for number in range(SIZE)]


@pytest.mark.parametrize("number, layout", list(enumerate(FAMILIES)))
def test_every_label_stands_on_the_pages_it_names(number, layout):
    regions = sorted(STYLES)
    brochure = draw(12, number, layout, regions[number % len(regions)], WITHOUT_BROWSER)
    assert brochure.labels
    assert faults(brochure) == []


def test_a_label_that_is_not_printed_is_found_out():
    brochure = draw(12, 0, "list_colon", "us", WITHOUT_BROWSER)
    label = next(one for one in brochure.labels if one.field != "model")
    label.words = ["words that no page prints"]
    assert len(faults(brochure)) == 1


@pytest.mark.parametrize("renderer", WITHOUT_BROWSER)
def test_same_seed_gives_the_same_bytes(renderer):
    one, two = (draw(13, 5, "list_colon", "de", (renderer,)) for _ in range(2))
    assert one.data == two.data
    assert [label.value for label in one.labels] == [label.value for label in two.labels]


def test_labels_are_in_the_vocabulary_of_the_contract(brochures, book):
    for label in (label for brochure in brochures for label in brochure.labels):
        spec = book.fields[label.field]
        assert label.availability in ("standard", "optional", "not_available")
        assert is_number(label.field) == (spec.type in ("number", "integer")), label.field
        if spec.type in ("number", "integer"):
            float(label.value)
        elif spec.type == "flag":
            assert label.value in ("yes", "no")
        elif spec.type == "choice":
            assert label.value in CONTRACT[label.field], label
        elif spec.type == "set":
            words = label.value.split("+")
            assert words == sorted(words) and set(words) <= set(CONTRACT[label.field]), label


def test_every_field_of_the_vocabulary_is_drawn(brochures, book):
    drawn = {label.field for brochure in brochures for label in brochure.labels}
    assert set(book.fields) - drawn == set()


def test_every_availability_and_region_and_layout_is_drawn(brochures):
    assert {label.availability for one in brochures for label in one.labels} == {
        "standard",
        "optional",
        "not_available",
    }
    assert {one.region for one in brochures} == set(STYLES)
    assert len({one.layout for one in brochures}) >= len(FAMILIES) - 3


def test_legend_and_marks_are_read_back_as_drawn():
    shown = set()
    for number in range(40):
        brochure = draw(16, number, "marks_matrix", renderers=("reportlab",))
        text = "".join(page_texts(brochure))
        for block in (block for page in brochure.draft.pages for block in page.all_blocks()):
            for trait in block.traits:
                if trait.startswith("marks ") and trait != "marks as words":
                    signs = {sign for sign in trait.removeprefix("marks ").split() if sign in "".join(block.texts())}
                    shown |= signs
                    assert all(sign in text for sign in signs), brochure.name
    assert {"●", "❍", "■", "❏", "✓", "✗", "◆", "❖"} <= shown


# Factors: NIST Special Publication 811 (2008), appendix B.8: US gallon 3.785412 l, foot 0.3048 m, pound 0.4535924 kg,
# Btu(IT)/h 0.2930711 W, degree Fahrenheit (t - 32)/1.8, ft²·h·°F/Btu 0.1761102 m²·K/W.
@pytest.mark.parametrize(
    "quantity, style, value, text, meaning",
    [
        ("volume", "gal", 102.0, "27 gal", 27 * 3.785412),
        ("long", "ft in", 5918.0, "19 ft 5 in", 19.41667 * 304.8),
        ("mass", "lb", 4105.0, "9,050 lb", 9050 * 0.4535924),
        ("power", "BTU/h", 4689.0, "16,000 BTU/h", 16000 * 0.2930711),
        ("temp", "°F", -28.9, "-20 °F", (-20 - 32) / 1.8),
        ("r", "R-", 1.2328, "R-7", 7 * 0.1761102),
        ("thickness", "½ in", 38.0, "1½ in", 38.1),
    ],
)
def test_a_figure_means_what_the_units_definition_says(quantity, style, value, text, meaning):
    house = House("us", random.Random(0))
    house.styles[quantity] = style
    house.way = type(house.way)(",", ".", " ")
    figure = house.figure(quantity, value)
    assert figure.text == text
    assert figure.value == pytest.approx(meaning, rel=5e-4)


def test_the_maker_takes_no_words_from_the_program():
    """Words taken from the rules would ask them what they already know."""
    sources = {path.name: path.read_text(encoding="utf-8") for path in Path(__file__).parent.glob("*.py")}
    maker = {name: text for name, text in sources.items() if not name.startswith("test_")}
    assert "words.py" in maker
    assert [name for name, text in maker.items() if "specscan" in text or "rules/" in text] == []
