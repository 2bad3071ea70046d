"""Letters in heads of vans that look like something else: legal forms of companies, names of groups of columns."""

TABLE = (
    "| | {a} | {b} | {c} |\n|---|---|---|---|\n| Overall length | 5.41 m | 5.99 m | 6.36 m |\n| Berths | 2 | 2 | 4 |\n"
    "| Fresh water | 70 litres | 100 litres | 110 litres |\n| Waste water | 60 litres | 75 litres | 20 gal |\n"
    "| Wheelbase | 3,450 mm | 4,035 mm | 4,035 mm |\n"
)


def test_the_letters_of_a_trim_behind_the_range_are_no_legal_form(vans_of):
    text = (
        "# MARROWFEN\n\n# Drift\n\n## Model year 2026. SE, SL and HT\n\nDrift is a hill with more sheep than men.\n\n"
        "The Drift SE is the small one, the Drift SL the middle one. The Drift HT has a high top.\n\n"
        "# Drift: technical data\n\n" + TABLE.format(a="SE", b="SL", c="HT")
    )
    assert vans_of(text) == {("Marrowfen", f"Drift {code}", 2026) for code in ("SE", "SL", "HT")}


def test_a_legal_form_behind_the_company_of_vans_with_other_letters_stays_one(vans_of):
    text = "# Drift\n\nModel year 2026\n\n" + TABLE.format(a="S", b="L", c="XL") + "\nMarrowfen SE, Mill Lane 4, Ost\n"
    assert vans_of(text) == {("Marrowfen", f"Drift {code}", 2026) for code in ("S", "L", "XL")}


def test_letters_that_headings_set_behind_the_range_in_turn_are_no_legal_forms(vans_of):
    sheet = "- Overall length {length} m\n- Berths {berths}\n- Fresh water {water} litres\n- Waste water 60 litres\n\n"
    text = (
        "# MARROWFEN\n\nCampers for hills, model year 2026\n\n## Drift SE\n\n"
        + sheet.format(length=5.41, berths=2, water=70)
        + "## Drift HT\n\n"
        + sheet.format(length=5.99, berths=4, water=100)
    )
    assert vans_of(text) == {("Marrowfen", "Drift SE", 2026), ("Marrowfen", "Drift HT", 2026)}


def test_letters_before_a_number_stay_where_the_number_is_a_figure_elsewhere(vans_of):
    text = "# MARROWFEN VANS\n\n# Drift\n\nModel year 2026\n\n" + TABLE.format(a="LS 18", b="LS 20", c="LS 22 4x4")
    names = {"Drift LS 18", "Drift LS 20", "Drift LS 22 4x4"}
    assert vans_of(text) == {("Marrowfen Vans", name, 2026) for name in names}
