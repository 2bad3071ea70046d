"""What one can do on the comparison page: switch, sort, filter, open; with mouse and keyboard."""

import re

import pytest

ASK, BRAM, COLD = "Tolland Askerdale 20", "Tolland Bramwith 24", "Tolland Coldbeck 17"
DAYS = "Days of heat at the stated temperature"


@pytest.fixture
def page(opened, made_page):
    """Give the page of the three hand-made vans, opened."""
    return opened(made_page).page


def listed(page):
    """Give the vans as the table lists them."""
    return page.locator("#table tbody tr:visible").evaluate_all("rows => rows.map(row => row.dataset.name)")


def points_of(page, van):
    return page.locator(f"tr[data-name='{van}'] [data-key=points]:visible .number").inner_text()


def sort_by(page, head):
    page.get_by_role("button", name=head, exact=True).click()


def filters(page):
    page.get_by_text("Show only some vans").click()


def test_switching_the_rule_set_and_equipment_switches_points_and_reasons(page):
    assert points_of(page, ASK) == "80 to 90"
    page.get_by_label("Judged by").select_option(label="Without water")
    assert points_of(page, ASK) == "5 to 6"
    assert page.locator("article:visible .headline:visible .number").all_inner_texts() == [
        "5 to 6", "20 to 30", "40 to 50",
    ]  # fmt: skip
    page.get_by_label("Judged by").select_option(label="With water")
    page.get_by_label("Equipment").select_option(label="with printed options fitted")
    assert points_of(page, ASK) == "85 to 95"
    assert page.locator("#table [data-key=apart]:visible").first.inner_text().startswith("above 2, below 0")


def test_switching_units_switches_values(page):
    """100 l are 26.42 US gallons of 3.785411784 l (definition)."""
    page.get_by_role("button", name="Open all parts").click()
    value = page.locator("#van-1-fresh_tank_l strong")
    assert value.inner_text() == "100 L"
    page.get_by_label("Units").select_option(label="US")
    assert value.inner_text() == "26.42 gal"


def test_sorting_by_points_goes_by_what_is_certain_and_back(page):
    assert listed(page) == [ASK, BRAM, COLD]
    sort_by(page, "Points")
    assert listed(page) == [ASK, BRAM, COLD]
    sort_by(page, "Points")
    assert listed(page) == [COLD, BRAM, ASK]
    page.get_by_label("Judged by").select_option(label="Without water")
    assert listed(page) == [ASK, BRAM, COLD]  # 5, 20, 40 under the other rule set
    assert page.locator("th[data-sort=points]").get_attribute("aria-sort") == "ascending"
    assert page.locator("th[data-sort=name]").get_attribute("aria-sort") is None


def test_vans_where_the_figure_is_not_known_come_last_both_ways(page):
    sort_by(page, DAYS)
    assert listed(page) == [BRAM, ASK, COLD]
    sort_by(page, DAYS)
    assert listed(page) == [ASK, BRAM, COLD]


def test_the_page_says_that_its_order_is_no_ranking(page):
    sort_by(page, "Points")
    assert "where bars overlap, this is no ranking" in page.get_by_role("status").inner_text()


def test_sorting_works_with_the_keyboard_alone(page):
    page.get_by_role("button", name=DAYS, exact=True).focus()
    page.keyboard.press("Enter")
    assert listed(page) == [BRAM, ASK, COLD]


def test_filtering_by_name_takes_vans_from_table_and_page(page):
    filters(page)
    page.get_by_label("Name contains").fill("bram")
    assert listed(page) == [BRAM]
    assert page.locator("article:visible h3").all_inner_texts() == [BRAM]
    assert page.get_by_role("status").inner_text().startswith("Vans shown: 1 of 3,")
    page.get_by_role("button", name="Show all vans").click()
    assert len(listed(page)) == 3


def test_what_is_not_known_may_meet_a_filter_but_not_for_certain(page):
    """Days of heat: 3 to 6, 8 to 12, not known."""
    filters(page)
    page.get_by_label(f"{DAYS}, at least").fill("5")
    assert listed(page) == [ASK, BRAM, COLD]
    page.get_by_label("Show a van if it").select_option(label="meets this for certain")
    assert listed(page) == [BRAM]
    page.get_by_label(f"{DAYS}, at least").fill("")
    page.get_by_label("Points, at least").fill("70")
    assert listed(page) == [ASK]
    page.get_by_label("Show a van if it").select_option(value="possible")
    assert listed(page) == [ASK, BRAM]


def test_a_link_opens_the_evidence_and_goes_there(page):
    page.locator("article").first.get_by_text("Points and reasons").locator("visible=true").click()
    link = page.locator("#van-1").locator("xpath=..").locator(".rests a:visible").first
    target = link.get_attribute("href")
    link.click()
    page.locator(target).wait_for(state="visible")
    assert page.locator(target).evaluate("one => one.getBoundingClientRect().top < innerHeight")


def test_opening_and_closing_all_parts(page):
    parts = page.locator("article details")
    page.get_by_role("button", name="Open all parts").click()
    assert parts.evaluate_all("all => all.every(one => one.open)")
    page.get_by_role("button", name="Close all parts").click()
    assert not parts.evaluate_all("all => all.some(one => one.open)")


def test_without_scripts_the_page_still_shows_a_whole_view(opened, made_page):
    page = opened(made_page, java_script_enabled=False).page
    assert page.get_by_text("Scripts are switched off").is_visible()
    text = page.locator("main").inner_text()
    assert re.search(r"80 to 90\s+of 100", text) and "5 to 6" not in text


def test_curves_follow_units_equipment_and_filter(opened, demo_page):
    page = opened(demo_page).page
    curves = page.locator(".curves figure:visible")
    vans = page.locator("#table tbody tr").count()
    assert curves.count() == vans > 20
    duo = curves.filter(has_text="Sallowby Duo")
    assert duo.locator("p:visible").inner_text().endswith("°C.")
    assert page.get_by_role("button", name="Days of heat at -20 °C", exact=True).is_visible()
    page.get_by_label("Units").select_option(label="US")
    assert duo.locator("p:visible").inner_text().endswith("°F.")
    assert page.get_by_role("button", name="Days of heat at -4 °F", exact=True).is_visible()
    assert duo.locator("use[href='#axis-us']:visible").count() == 1
    assert duo.locator("use[href='#axis-metric']:visible").count() == 0
    sort_by(page, "Heater holds down to")
    assert "listed by “Heater holds down to”, lowest certain figure first" in page.get_by_role("status").inner_text()
    assert curves.first.locator("figcaption").inner_text() == listed(page)[0]
    filters(page)
    page.get_by_label("Name contains").fill("Sallowby Duo")
    assert curves.count() == 1


def test_a_van_tells_what_ends_its_stay_and_how_its_claims_fare(opened, demo_page):
    page = opened(demo_page).page
    van = page.locator("article").filter(has=page.get_by_role("heading", name="Ebbingford Sallowby Duo 2026"))
    van.get_by_text("In winter: what ends the stay").click()
    assert "): the battery" in van.locator(".limits:visible").inner_text()
    assert "fuel over" in van.locator("div:visible > h5:has-text('heat_days') ~ .note").first.inner_text()
    van.get_by_text("What is claimed, and what bears it out").click()
    claim = van.locator(".claim:visible").first
    assert "not borne out" in claim.locator("h5").inner_text()
    assert claim.locator(".cutting").is_visible()
