"""Vans each under labels of their own: these tell model, maker and year of each, and numbers of stock are no names."""

SHEET = """
Réf. {number}
Marque : {maker}
Modèle : {model}
Millésime : {year}
Longueur : 5,{number} m
Couchages : 2
Eau propre : {number} l
Eaux usées : 70 l
Batterie cellule : 90 Ah AGM
Prix : 41 500 euros

---------------------------------------
"""


def stock(*vans):
    head = "FOURGONS DU GUÉ\nConcession et atelier\n\nNOS FOURGONS D'OCCASION, RÉVISÉS\n\n-----------------"
    return head + "---".join(
        SHEET.format(number=90 + 5 * n, maker=maker, model=model, year=year)
        for n, (maker, model, year) in enumerate(vans)
    )


def test_each_sheet_has_its_own_year_and_its_number_is_no_van(vans_of):
    vans = {("Marrovent", "Drift 54", 2022), ("Marrovent", "Drift 60 Polaire", 2023), ("Marrovent", "Houle 64", 2021)}
    assert vans_of(stock(*sorted(vans))) == vans


def test_each_sheet_has_its_own_maker(vans_of):
    vans = {("Marrovent", "Drift 54", 2022), ("Tournelle", "Houle 64", 2022)}
    assert vans_of(stock(*sorted(vans))) == vans


def test_labelled_lines_under_one_bullet_are_lines_of_their_own(vans_of):
    vans = (("Drift 500", 2025), ("Drift 550 SE", 2026), ("Drift 600 SE Four", 2026))
    items = "\n".join(
        f"* Model: {model}\n  Year: {year} model\n  Base: Calder Porter 30\n  Length 5.{n}8 m, berths 2\n"
        f"  Fresh water {n}5 litres, waste 40 litres\n  Heating: gas blown air\n  Leisure battery: 80 Ah AGM\n"
        for n, (model, year) in enumerate(vans, 4)
    )
    text = (
        "From: Hollin Leisure, Farrow Green\nSubject: Three new Drifts in the yard\n\nGood morning,\n\n"
        "All three are brand-new from Marrowfen, and all can be seen under cover with a cup of tea.\n\n"
        f"{items}\nBest wishes from all at Hollin\nHollin Leisure Ltd, Mill Yard, Farrow Green. Closed Wednesdays.\n"
    )
    assert vans_of(text) == {("Marrowfen", model, year) for model, year in vans}


def parts(*vans):
    return "".join(
        f"\n{model}\n{'=' * len(model)}\n\n{line}\n\nLength: 5.{n}9 m\nFresh water: {n}0 litres\n"
        f"Waste water: {n}5 litres\nLeisure battery: {n}00 Ah AGM\nSolar: {n}20 W\nHeadroom: 1.9{n} m\n"
        for n, (model, line) in enumerate(vans, 5)
    )


def test_the_line_below_a_heading_that_says_who_built_the_van_is_of_that_van(vans_of):
    text = "Buyer’s comparison No. 14\n\nWe borrowed two vans of the 2026 model year in March.\n" + parts(
        ("Drift 58", "Converted by Marrowfen, Mill Lane, Farrow"),
        ("Alder 54", "Built by Thornleigh & Holt, Unit 3, Calder"),
    )
    assert vans_of(text) == {("Marrowfen", "Drift 58", 2026), ("Thornleigh & Holt", "Alder 54", 2026)}


def test_where_a_company_works_is_no_part_of_its_name(vans_of):
    text = "BUILD SHEET\n\nModel: Drift 19 S\nBuilt by: Marrowfen, Bay 2, Line B\nModel year: 2026\n"
    text += "Length: 5.91 m\nFresh water: 80 L\nWaste water: 60 L\n"
    assert vans_of(text) == {("Marrowfen", "Drift 19 S", 2026)}
