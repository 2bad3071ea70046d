"""Many statements become one value, an honest conflict, or missing with the reason."""

from dataclasses import replace

import pytest

from specscan.records.facts import VanName
from specscan.settling.one_document import consolidate
from specscan.settling.preferences import load_preferences
from specscan.settling.settle import Anew, settle
from tests.settling.made import MODEL, document, fact


@pytest.fixture(scope="module")
def settled(book):
    preferences = load_preferences(book)

    def run(*documents):
        result = settle(documents, book, preferences)
        return {(row.field, row.equipment): row for row in result.settled}

    return run


def test_agreeing_statements_support_each_other(settled):
    row = settled(
        document(fact("fresh_tank_l", 100.0)),
        document(fact("fresh_tank_l", 101.5), doc_id="bbb", name="b.pdf"),
    )[("fresh_tank_l", "standard")]
    assert (row.status, row.num, len(row.fact_ids)) == ("stated", 100.0, 2)


def test_disagreeing_statements_are_a_conflict_that_keeps_them_all(settled):
    row = settled(
        document(fact("fresh_tank_l", 110.0, how="prose", availability="unstated", confidence=0.85)),
        document(fact("fresh_tank_l", 90.0), doc_id="bbb", name="b.pdf"),
    )[("fresh_tank_l", "standard")]
    assert (row.status, row.num, row.low, row.high) == ("conflicting", 90.0, 90.0, 110.0)
    assert len(row.fact_ids) == 2
    assert "a.pdf" in row.note and "b.pdf" in row.note


def test_own_statement_is_preferred_over_a_general_one(book):
    vans = (VanName("Marrowfen", MODEL, 2026), VanName("Marrowfen", "Drift 23", 2026))
    general = [fact("solar_w", 100.0, model=van.model, passage=3) for van in vans]
    result = settle([document(*general, fact("solar_w", 200.0, passage=9), vans=vans)], book, load_preferences(book))
    row = next(r for r in result.settled if r.van_id.endswith("21-2026") and r.field == "solar_w")
    assert (row.status, row.num) == ("conflicting", 200.0)


def test_the_newer_document_is_preferred(settled):
    row = settled(
        document(fact("gvwr_kg", 3500.0), dated="2025-03-01"),
        document(fact("gvwr_kg", 4250.0), doc_id="bbb", name="b.pdf", dated="2026-01-15"),
    )[("gvwr_kg", "standard")]
    assert (row.status, row.num) == ("conflicting", 4250.0)


def test_an_option_is_never_counted_as_standard(settled):
    rows = settled(document(fact("gray_tank_heat", "electric_pad", availability="optional")))
    standard, optioned = rows[("gray_tank_heat", "standard")], rows[("gray_tank_heat", "optioned")]
    assert (standard.status, standard.text, standard.reason) == ("missing", None, "only_optional")
    assert (optioned.status, optioned.text, optioned.availability) == ("stated", "electric_pad", "optional")


def test_an_option_that_repeats_the_standard_is_none(settled):
    rows = settled(document(fact("solar_w", 200.0), fact("solar_w", 200.0, availability="optional", how="list_item")))
    assert len(rows[("solar_w", "optioned")].fact_ids) == 1


def test_the_largest_of_several_options_counts_as_fitted(settled):
    rows = settled(
        document(
            fact("solar_w", 100.0),
            fact("solar_w", 200.0, availability="optional"),
            fact("solar_w", 400.0, availability="optional"),
        )
    )
    assert rows[("solar_w", "standard")].num == 100.0
    assert rows[("solar_w", "optioned")].num == 400.0


def test_not_offered_is_known_and_no_zero(settled):
    rows = settled(
        document(
            fact("heated_floor", True, availability="not_available"),
            fact("solar_w", 260.0, availability="not_available"),
            fact("gray_tank_heat", "electric_pad", availability="not_available"),
        )
    )
    assert rows[("heated_floor", "standard")].flag is False
    assert rows[("gray_tank_heat", "standard")].text == "none"
    solar = rows[("solar_w", "standard")]
    assert (solar.status, solar.num, solar.availability) == ("stated", None, "not_available")


def test_not_offered_changes_nothing_beside_a_standard_value(settled):
    rows = settled(document(fact("solar_w", 100.0), fact("solar_w", 260.0, availability="not_available")))
    assert rows[("solar_w", "standard")].num == rows[("solar_w", "optioned")].num == 100.0


def test_an_optional_heater_takes_the_figures_of_the_standard_one_with_it(settled):
    rows = settled(
        document(
            fact("heater_type", "forced_air"),
            fact("heater_consumption_l_h", 0.25),
            fact("heater_type", "combined", availability="optional"),
        )
    )
    assert rows[("heater_consumption_l_h", "standard")].num == 0.25
    assert rows[("heater_consumption_l_h", "optioned")].status == "missing"


def test_a_set_over_several_lines_is_their_union(settled):
    rows = settled(
        document(
            fact("insulated_surfaces", "walls", passage=1),
            fact("insulated_surfaces", "ceiling", passage=2),
            fact("insulated_surfaces", "floor", passage=3, availability="optional"),
        )
    )
    assert rows[("insulated_surfaces", "standard")].text == "ceiling+walls"
    assert rows[("insulated_surfaces", "optioned")].text == "ceiling+floor+walls"


def test_an_implied_word_yields_to_an_exact_one(settled):
    row = settled(
        document(fact("gray_tank_heat", "unspecified", weak=True), fact("gray_tank_heat", "warm_air", passage=2))
    )[("gray_tank_heat", "standard")]
    assert (row.status, row.text) == ("stated", "warm_air")


def test_a_word_that_only_an_implication_contradicts_is_still_a_conflict_with_none(settled):
    row = settled(document(fact("gray_tank_heat", "none"), fact("gray_tank_heat", "hydronic", passage=2, how="prose")))[
        ("gray_tank_heat", "standard")
    ]
    assert (row.status, row.text) == ("conflicting", "none")


def test_what_is_read_with_less_confidence_than_is_asked_for_does_not_count(book):
    told = [document(fact("solar_w", 100.0), fact("inverter_w", 2000.0, passage=2, grounds=("picture",)))]
    preferences = load_preferences(book)
    least = preferences.confidences.grounds["picture"].share
    for asked, status in ((least - 0.01, "stated"), (least + 0.01, "missing")):
        rows = settle(told, book, preferences.model_copy(update={"settle_at": asked})).settled
        found = {row.field: row.status for row in rows if row.equipment == "standard"}
        assert found["solar_w"] == "stated" and found["inverter_w"] == status


@pytest.mark.parametrize(
    ("documents", "reason"),
    [
        ([document()], "not_stated"),
        ([document(unread=(3,), status="partly_read")], "unreadable_page"),
        ([document(fact("fresh_tank_l", 9000.0, rejected="implausible: outside the plausible range"))], "implausible"),
        ([document(fact("fresh_tank_l", 90.0, rejected="ambiguous: two vans share the row"))], "ambiguous"),
    ],
)
def test_what_is_missing_has_a_reason(settled, documents, reason):
    row = settled(*documents)[("fresh_tank_l", "standard")]
    assert (row.status, row.reason, row.num) == ("missing", reason, None)


def test_every_van_has_a_row_for_every_field_and_both_equipments(book, settled):
    rows = settled(document(fact("fresh_tank_l", 100.0)))
    assert set(rows) == {(name, equipment) for name in book.fields for equipment in ("standard", "optioned")}


def test_order_of_documents_does_not_matter(book):
    one = document(fact("fresh_tank_l", 100.0))
    two = document(fact("fresh_tank_l", 120.0), doc_id="bbb", name="b.pdf")
    preferences = load_preferences(book)
    forward, backward = settle([one, two], book, preferences), settle([two, one], book, preferences)
    assert forward.vans == backward.vans
    assert sorted(map(repr, forward.settled)) == sorted(
        map(repr, (replace(row, fact_ids=row.fact_ids) for row in backward.settled))
    )


@pytest.mark.parametrize("fields", [{"fresh_tank_l"}, {"insulated_surfaces"}, {"heater_output_w", "fresh_tank_l"}])
def test_rows_of_some_fields_are_those_among_the_rows_of_all(book, fields):
    preferences = load_preferences(book)
    one = document(
        fact("fresh_tank_l", 110.0, how="prose"), fact("fresh_tank_l", 90.0),
        fact("insulated_surfaces", "walls"), fact("insulated_surfaces", "floor"),
        fact("heater_fuel", "propane"), fact("heater_output_w", 4000.0),
        fact("heater_fuel", "diesel", availability="optional"),
    )  # fmt: skip
    settlement = settle([one], book, preferences)
    anew = Anew(settlement.vans[0], settlement.facts, [one.record], book, preferences)
    left_out = frozenset({settlement.facts[0].fact_id})
    whole = {(row.field, row.equipment): row for row in anew.without(left_out) if row.field in fields}
    part = {(row.field, row.equipment): row for row in anew.without(left_out, fields)}
    assert {key: part[key] for key in whole} == whole and len(whole) == 2 * len(fields)


@pytest.mark.parametrize(
    ("black", "toilet", "counts"), [(0.0, "cassette", False), (None, "dry", False), (45.0, "cassette", True)]
)
def test_what_is_said_of_gray_and_black_tanks_is_not_said_of_a_van_without_a_black_one(settled, black, toilet, counts):
    pads = [fact(f"{tank}_tank_heat", "electric_pad", printed="gray and black tanks") for tank in ("gray", "black")]
    told = [fact("black_tank_l", black)] if black is not None else []
    rows = settled(document(*pads, *told, fact("toilet", toilet)))
    assert rows[("gray_tank_heat", "standard")].status == "stated"
    assert (rows[("black_tank_heat", "standard")].status == "stated") is counts


def test_a_black_tank_that_can_be_ordered_may_be_heated(settled):
    tank = fact("toilet", "fixed_tank", availability="optional")
    rows = settled(document(fact("toilet", "cassette"), tank, fact("black_tank_heat", "electric_pad")))
    assert rows[("black_tank_heat", "standard")].status == "stated"


def test_a_cassette_that_can_be_ordered_does_not_say_that_there_is_no_black_tank(settled):
    cassette = fact("toilet", "cassette", availability="optional")
    rows = settled(document(cassette, fact("black_tank_heat", "electric_pad")))
    assert rows[("black_tank_heat", "standard")].status == "stated"


def test_surfaces_that_a_sentence_names_join_the_walls_of_a_label(book):
    walls = fact("insulated_surfaces", "walls", weak=True)
    said = [replace(walls, text=word, how="prose", passage=2) for word in ("ceiling", "floor", "walls")]
    facts = consolidate([walls, *said], book, load_preferences(book))
    assert {one.text for one in facts if not one.rejected} == {"ceiling+floor+walls"}


@pytest.mark.parametrize(("word", "stays"), [("heated_compartment", True), ("unspecified", False)])
def test_a_heated_bay_stays_beside_pads_that_can_be_ordered(settled, word, stays):
    bay = fact("gray_tank_heat", word, weak=True)
    row = settled(document(bay, fact("gray_tank_heat", "electric_pad", availability="optional")))
    assert (row[("gray_tank_heat", "standard")].text == word) is stays


@pytest.mark.parametrize("fields", [None, {"black_tank_heat"}])
def test_what_is_said_of_a_part_comes_back_without_the_statement_that_there_is_none(book, fields):
    preferences = load_preferences(book)
    one = document(fact("toilet", "cassette"), fact("black_tank_heat", "electric_pad"))
    settlement = settle([one], book, preferences)
    anew = Anew(settlement.vans[0], settlement.facts, [one.record], book, preferences)
    cassette = next(row.fact_id for row in settlement.facts if row.fact.field == "toilet")
    for left_out, counts in (set(), False), ({cassette}, True):
        rows = anew.without(frozenset(left_out), fields)
        row = next(row for row in rows if (row.field, row.equipment) == ("black_tank_heat", "standard"))
        assert (row.status == "stated") is counts


def test_what_is_only_implied_but_offered_stays_beside_another_that_is_delivered(settled):
    rows = settled(
        document(
            fact("battery_chemistry", "agm"),
            fact("battery_chemistry", "lithium", weak=True, passage=2, availability="optional"),
        )
    )
    assert rows[("battery_chemistry", "standard")].text == "agm"
    assert rows[("battery_chemistry", "optioned")].text == "lithium"
