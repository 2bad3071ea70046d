"""Lines that list things between dots: each is a statement of its own, of the vans and the offer named ahead."""

import pytest

SHEET = """# Marrowfen Drift

| | Drift 19 | Drift 22 |
|---|---|---|
| Length | 5.4 m | 6.0 m |
| Berths | 2 | 2 |
| GVWR | 3,300 kg | 3,500 kg |

{line}
"""
ITEMS = (
    "water lines routed inside the heated cabin · insulated windshield and cab door shades · 30 A shore inlet · "
    "dual-pane acrylic windows in the living area · {alarms}."
)


@pytest.fixture
def told(facts_of):
    def read(line):
        facts = facts_of(SHEET.format(line=line), "sheet.md")
        return {(f.model.split()[-1], f.field, f.value, f.availability) for f in facts}

    return read


@pytest.mark.parametrize(
    ("head", "offer"), [("Standard on every Drift", "standard"), ("Options on all models", "optional")]
)
@pytest.mark.parametrize("alarms", ["carbon monoxide, smoke and LP detectors", "have it serviced by a dealer"])
def test_what_is_said_ahead_of_a_list_holds_for_each_item(told, head, offer, alarms):
    found = told(f"{head}: {ITEMS.format(alarms=alarms)}")
    for van in ("19", "22"):
        assert (van, "water_lines_location", "interior", offer) in found
        assert (van, "cab_shades_insulated", True, offer) in found
        assert (van, "shore_power_a", 30, offer) in found
        assert (van, "window_glazing", "double", offer) in found
    assert not any(field == "water_lines_insulated" for _, field, _, _ in found)  # the shades are insulated


def test_items_that_name_their_vans_are_of_these(told):
    line = "Composting toilet instead of the cassette, Drift 19, $1,280 • 3,000 W inverter, Drift 22, $1,150"
    assert {
        one for one in told(f"{line} • Kayak rail, $610 • Awning, both, $900") if one[1] in ("toilet", "inverter_w")
    } == {
        ("19", "toilet", "dry", "optional"),
        ("22", "inverter_w", 3000, "optional"),
    }


def test_a_package_ahead_of_its_contents_stays_with_them(told):
    line = "Winter pack (for the 19; included with the 22) $1,180 Gray tank pad, 12 V · cab shades, insulated · ladder"
    assert ("22", "cab_shades_insulated", True, "optional") not in told(line + " and a box on the roof of the van")
