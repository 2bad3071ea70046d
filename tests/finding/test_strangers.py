"""A page about one van that also speaks of a sister: what is said of the sister is not said of it."""

PAGE = """<html><head><title>The Drift 20 in the cold | Marrowfen</title></head><body>
<header><b>Marrowfen</b> <a href="#">Drift 17</a><a href="#">Drift 20</a><a href="#">Letters</a></header>
<article><h1>How the Drift 20 keeps warm</h1>
<p>We make two vans of that name. This page is about the longer one, the Drift 20. The 2026 Drift 20 is 20 ft 4 in long,
weighs 9,990 lb and sleeps two.</p>
<p>Gross vehicle weight rating: 9,990 lb. Wheelbase: 158 in.</p>
<ul><li>Overall length: 20 ft 4 in</li><li>GVWR: 9,990 lb</li><li>Fresh water tank: 30 gal</li><li>Sleeps: 2</li></ul>
<p>{more}</p>
<h2>Questions</h2><details><summary>Does the Drift 17 do all this too?</summary>
<p>Some of it. It has a 22-gallon gray tank with an electric pad. The cassette toilet is the same.</p></details>
<details><summary>Is there gas on board?</summary><p>The Drift 20 has no propane.</p></details>
</article></body></html>"""


def read(facts_of, more):
    return facts_of(PAGE.format(more=more), "page.html")


def by_van(facts, field):
    return {(fact.model, fact.value) for fact in facts if fact.field == field and not fact.rejected}


def test_the_page_is_about_the_van_of_its_title_alone(facts_of):
    facts = read(facts_of, "Our neighbour keeps an old Drift 17 in his barn.")
    assert {fact.model for fact in facts} == {"Drift 20"}
    assert by_van(facts, "sleeps") == {("Drift 20", 2)}


def test_what_stands_under_a_question_about_the_sister_is_not_said_of_the_van(facts_of):
    facts = read(facts_of, "The floor is oak.")
    assert by_van(facts, "gray_tank_l") == by_van(facts, "gray_tank_heat") == by_van(facts, "toilet") == set()
    assert by_van(facts, "propane_tank_l") == {("Drift 20", 0)}


def test_a_sentence_about_the_sister_and_the_one_that_goes_on_are_not_said_of_the_van(facts_of):
    facts = read(facts_of, "The Drift 17 has a diesel heater. It burns 0.1 gallons an hour. We fit 400 W of solar.")
    assert by_van(facts, "heater_fuel") == by_van(facts, "heater_consumption_l_h") == set()
    assert by_van(facts, "solar_w") == {("Drift 20", 400)}


def test_a_sentence_that_names_both_is_said_of_the_van(facts_of):
    facts = read(facts_of, "Like the Drift 17, the Drift 20 has a diesel air heater.")
    assert by_van(facts, "heater_fuel") == {("Drift 20", "diesel")}


def test_two_vans_of_which_a_letter_tells_as_much_are_both_its_vans(facts_of):
    text = (
        "Marrowfen Vans\n\nDrift 17 or Drift 20? An answer\n\n"
        "The Drift 17 is 17 ft 6 in long, its GVWR is 7,900 lb and it sleeps two.\n\n"
        "The Drift 20 is 20 ft 4 in long, its GVWR is 9,990 lb and it sleeps three.\n\n"
        "The Drift 17 has an 18 gal fresh tank and a 15 gal gray tank.\n\n"
        "The Drift 20 has a 30 gal fresh tank and a 24 gal gray tank.\n\n"
        "The Drift 17 has 200 W of solar. The Drift 20 has 400 W.\n"
    )
    assert {fact.model for fact in facts_of(text)} == {"Drift 17", "Drift 20"}


def test_a_year_before_the_word_for_vans_is_their_model_year(vans_of):
    text = (
        "Dear Ro,\n\nthank you for asking about the two 2027 vans on our lot, the Drift 17 and the Drift 20.\n\n"
        "| | Drift 17 | Drift 20 |\n|---|---|---|\n| Length | 17 ft 6 in | 20 ft 4 in |\n"
        "| GVWR | 7,900 lb | 9,990 lb |\n| Sleeps | 2 | 3 |\n\nOur 2019 vans had round lamps.\n"
    )
    assert {year for _, _, year in vans_of(text)} == {2027}
