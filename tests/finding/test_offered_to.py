"""For which vans a thing is to be had: in answers that name them, and in legends that deny them."""

import pytest

from tests.finding.two_drifts import two_drifts


def offered(facts, field):
    return {(f.model, f.availability) for f in facts if f.field == field and not f.rejected}


@pytest.mark.parametrize("line", ["3,000 W inverter: option, Drift 21.", "3,000 W inverter: option (Drift 21)."])
def test_an_option_that_names_a_van_is_of_no_other(facts_of, line):
    text = (
        two_drifts() + f"\nInsulated cab shades: option, both vans. {line} Insulated rear shades: standard, Drift 19.\n"
    )
    facts = facts_of(text, "leaflet.md")
    assert offered(facts, "inverter_w") == {("Drift 21", "optional")}
    assert offered(facts, "rear_shades_insulated") == {("Drift 19", "standard")}


@pytest.mark.parametrize("denied", ["Drift 21 standard, not for Drift 19", "standard on Drift 21, not on Drift 19"])
def test_a_legend_that_denies_a_van_says_that_it_cannot_be_had_on_it(facts_of, denied):
    legend = f"\n■ both vans, standard   □ both vans, option   ✦ {denied}\n"
    facts = facts_of(two_drifts() + legend + "\n■ Solar 200 W\n\n□ Solar 400 W\n\n✦ Inverter 2000 W\n", "leaflet.md")
    assert offered(facts, "inverter_w") == {("Drift 21", "standard"), ("Drift 19", "not_available")}
