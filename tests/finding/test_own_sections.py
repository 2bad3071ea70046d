"""Running text in parts that are each about one van, though the headings do not say so."""

import pytest

TEXT = """# Marrowfen

Drift 21 · Drift 24 TD

Model year 2026

## The short cart

{one} is built for our lanes. {of_one}

The heat comes from a diesel air heater with an output of 4 kW. The walls hold 38 mm of sheep’s wool.

The fresh tank stands inside the cabin. The gray tank of the {short} hangs below the floor.

The dump valve is insulated.

## The long cart

{two} has twin doors at the back.

It is warmed by a hydronic heater with an output of 5 kW. The walls hold 50 mm of spray foam.

The fresh tank stands inside the cabin. The gray tank and the dump valve sit in a bay.

{of_two}

Marrowfen Ltd, 4 Mill Lane.
"""


@pytest.fixture
def told(read_file, tmp_path):
    def read(**parts):
        names = {"one": "The Drift 21", "two": "The Drift 24 TD", "short": "21", "of_one": "", "of_two": ""}
        path = tmp_path / "magazine.md"
        path.write_text(TEXT.format(**{**names, **parts}), encoding="utf-8")
        facts = [fact for fact in read_file(path).found.facts if not fact.rejected]
        return {(f.model, f.num) for f in facts if f.field in ("heater_output_w", "insulation_thickness_mm")}

    return read


def test_what_a_part_says_is_of_the_van_that_it_alone_names(told):
    assert told(of_two="The 24 TD was tested to −22 °C.") == {
        ("Drift 21", 4000),
        ("Drift 21", 38),
        ("Drift 24 TD", 5000),
        ("Drift 24 TD", 50),
    }


def test_parts_that_name_both_vans_are_of_none_alone(told):
    both = told(of_two="The 24 TD was tested to −22 °C.", of_one="It is shorter than the Drift 24 TD by a step.")
    assert ("Drift 24 TD", 4000) in both
