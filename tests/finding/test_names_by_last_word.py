"""Texts that call a van by the last word of its name: "the Tundra" for the Drift 21 Tundra beside a Drift 19."""

SHEET = (
    "Marrowfen Drift, model year 2026\n\n"
    "| | Drift 19 | Drift 21 {word} |\n|---|---|---|\n"
    "| Overall length | 19 ft 4 in | 21 ft 2 in |\n| GVWR | 8,550 lb | 9,900 lb |\n| Sleeps | 2 | 2 |\n\n"
)


def by_van(facts, field):
    return {(fact.model, fact.value) for fact in facts if fact.field == field}


def test_the_last_word_behind_an_article_names_its_van(facts_of):
    text = (
        "The 19 has a propane furnace of 16,000 BTU/h output. The Tundra has a diesel air heater that delivers 5.0 kW. "
        "Windows are single-pane on the 19, double-pane on the Tundra.\n"
    )
    facts = facts_of(SHEET.format(word="Tundra") + text)
    assert by_van(facts, "heater_fuel") == {("Drift 19", "propane"), ("Drift 21 Tundra", "diesel")}
    assert by_van(facts, "window_glazing") == {("Drift 19", "single"), ("Drift 21 Tundra", "double")}


def test_in_german_too(facts_of):
    text = (
        "Marrowfen Drift, Modelljahr 2026\n\n| | Drift 540 | Drift 600 Tundra |\n|---|---|---|\n"
        "| Länge | 5,41 m | 5,99 m |\n| Zulässiges Gesamtgewicht | 3.500 kg | 3.850 kg |\n| Schlafplätze | 2 | 2 |\n\n"
        "Der 540 hat eine Gasheizung. Der Tundra hat eine Dieselheizung mit 4 kW.\n"
    )
    facts = facts_of(text)
    assert by_van(facts, "heater_fuel") == {("Drift 540", "propane"), ("Drift 600 Tundra", "diesel")}


def test_two_words_behind_the_code_name_it_and_are_no_claim(facts_of):
    text = (
        "Marrowfen Drift, millésime 2026\n\n| | Drift 54 | Drift 60 Plage | Drift 60 Grand Froid |\n|---|---|---|---|\n"
        "| Longueur | 5,41 m | 5,99 m | 5,99 m |\n| Couchages | 2 | 2 | 3 |\n| PTAC | 3500 kg | 3500 kg | 3500 kg |\n\n"
        "Tous sont vendus « toutes saisons ». Pour la Grand Froid, elle est conçue pour −19 °C.\n"
    )
    facts = facts_of(text)
    assert by_van(facts, "rated_min_temp_c") == {("Drift 60 Grand Froid", -19)}
    assert {value for _, value in by_van(facts, "season_claim")} == {"toutes saisons"}


def test_a_word_that_the_text_never_uses_so_names_no_van(facts_of):
    text = "Lounge: the windows around it are double-pane. The Lounge Pack has a rug.\n"
    facts = facts_of(SHEET.format(word="Lounge") + text)
    assert by_van(facts, "window_glazing") == {("Drift 19", "double"), ("Drift 21 Lounge", "double")}


LETTER = (
    "Dear Ro,\n\nthank you for asking about our two 2027 vans, the Drift 19 and the Drift 21 Tundra.\n\n"
    "| | Drift 19 | Drift 21 Tundra |\n|---|---|---|\n| Overall length | 19 ft 4 in | 21 ft 2 in |\n"
    "| GVWR | 8,550 lb | 9,900 lb |\n| Sleeps | 2 | 2 |\n\n"
)


def test_the_code_alone_names_a_van_whose_name_goes_on(facts_of):
    facts = facts_of(LETTER + "For the 21: third solar panel (600 W in all), $720\n")
    assert by_van(facts, "solar_w") == {("Drift 21 Tundra", 600)}


def test_the_name_behind_an_earlier_year_is_another_van(facts_of):
    text = "You will find a 2023 Drift 19 on the used page. It has a 16-gallon gray tank.\n"
    assert by_van(facts_of(LETTER + text), "gray_tank_l") == set()


def test_the_plural_of_a_ranges_name_means_its_vans(facts_of):
    text = (
        "Marrowfen: Habicht und Sperling, Modelljahr 2026\n\n"
        "| | Habicht 54 | Habicht 60 | Sperling 64 |\n|---|---|---|---|\n"
        "| Länge | 5,41 m | 5,99 m | 6,36 m |\n| Zulässiges Gesamtgewicht | 3.500 kg | 3.850 kg | 4.250 kg |\n"
        "| Schlafplätze | 2 | 2 | 2 |\n\nDer Sperling 64 ist wintertauglich. Die Habichte haben eine Gasheizung.\n"
    )
    assert by_van(facts_of(text), "heater_fuel") == {("Habicht 54", "propane"), ("Habicht 60", "propane")}
