"""Vans in papers of those who sell, test or own them: whose they are, and what they are called."""

import pytest

ROWS = "Length: {} m\n\nBerths: {}\n\nFresh water: 90 litres\n\nWaste water: 75 litres\n\nLeisure battery: 100 Ah AGM\n"


def test_whose_dealer_a_company_is_has_made_its_vans(vans_in):
    vans = (
        f"## Thornleigh Hearth 600 SE\n\n{ROWS.format(5.98, 2)}\n## Thornleigh Hearth 640 XE\n\n{ROWS.format(6.41, 3)}"
    )
    text = (
        f"# New vans in stock\n\nGorse Hill Motorhomes, Ring Road, Gorse Hill. Thornleigh dealer since 1998.\n\n{vans}"
    )
    assert vans_in(text) == {("Thornleigh", "Hearth 600 SE"), ("Thornleigh", "Hearth 640 XE")}


def test_a_dealer_by_its_name_has_made_no_van_and_an_edition_may_stand_behind_two_names(vans_in):
    told = "<h2>{}</h2><ul><li>Länge {} m</li><li>{} Schlafplätze</li><li>Frischwassertank 70 l</li>"
    told += "<li>Abwassertank 60 l</li><li>Gas-Warmluftheizung</li><li>Batterie 100 Ah Gel</li></ul>"
    vans = told.format("Ulmwerk Drossel Firn", "5,40", 2) + told.format("Ulmwerk Drossel XL Firn", "6,35", 4)
    head = "<title>Sondermodelle „Firn“ von Ulmwerk – Autohaus Brandl</title><p>Autohaus Brandl · Gewerbering 9</p>"
    page = f"<html lang='de'>{head}<h1>Ulmwerk Drossel Firn</h1><p>Modelljahrs 2026</p>{vans}</html>"
    assert vans_in(page, "haus.html") == {("Ulmwerk", "Drossel Firn"), ("Ulmwerk", "Drossel XL Firn")}


@pytest.mark.parametrize("said", ["Thornleigh builds eleven vans a month.", "The Hearth is built by Thornleigh."])
def test_in_a_test_of_several_makers_one_of_which_is_said_to_build_all_names_are_parted(vans_in, said):
    rows = "<tr><td>Length</td><td>5.98 m</td><td>6.05 m</td></tr><tr><td>Berths</td><td>2</td><td>4</td></tr>"
    rows += "<tr><td>Fresh water</td><td>85 litres</td><td>90 litres</td></tr>"
    heads = "<tr><th></th><th>Thornleigh</th><th>Ossvane</th></tr>"
    heads += "<tr><th></th><th>Hearth Six</th><th>Tamarsk Long</th></tr>"
    text = f"<p>{said} The Ossvane costs less. Buy the Hearth for its joinery, the Tamarsk for the children.</p>"
    page = f"<title>Two vans | Byways</title><h1>Two ways to go</h1>{text}<table>{heads}{rows}</table>"
    assert vans_in(page, "test.html") == {("Thornleigh", "Hearth Six"), ("Ossvane", "Tamarsk Long")}


def test_vans_that_lead_a_paragraph_each_are_sisters(vans_in):
    told = "**Drift {}** - {} mm long, sleeps 2, with 80 L of fresh water and 70 L of grey. A propane furnace. "
    told += "Battery: {}."
    sizes = (("22", 5990, "200 Ah"), ("22 Nord", 6010, "400 Ah"), ("25 Bunk", 6970, "99 Ah"))
    vans = "\n\n".join(told.format(*one) for one in sizes)
    text = f"# Marrowfen Vans: what is new for 2027\n\nThe Drift is in its sixth year.\n\n{vans}\n\nMarrowfen Vans Inc."
    assert {model for _, model in vans_in(text)} == {"Drift 22", "Drift 22 Nord", "Drift 25 Bunk"}


@pytest.mark.parametrize("price", ["54.900,-", "54.900,–", "54.900"])
def test_dots_and_a_price_without_a_currency_stand_behind_the_name(vans_in, price):
    told = "   Länge 5,05 m, 2 Schlafplätze, Frischwasser 45 l, Abwasser 40 l, innen\n   Dieselheizung (Luft) 2 kW\n"
    told += "   Lithium-Bordbatterie 100 Ah\n"
    vans = "\n".join(f"DROSSEL {code} {30 * '.'} {price}\n{told}" for code in ("4.1", "4.2", "5.1 ALLRAD"))
    text = "ULMWERK  -  PREISLISTE MODELLJAHR 2027\n"
    text += f"gültig ab 01.08.2026, alle Preise in Euro inkl. MwSt.\n\n{vans}\n"
    text += "Serienmäßig bei allen sind die Drehsitze vorn und das Bett im Heck. Zwei Jahre Garantie.\n"
    models = {model.casefold() for _, model in vans_in(text, "preise.txt")}
    assert models == {"drossel 4.1", "drossel 4.2", "drossel 5.1 allrad"}


def test_an_owner_says_of_what_edition_the_van_is(vans_in):
    text = "FOR SALE - 2023 Thornleigh Hearth II Harbour Edition\n\nPrice: £43,750 ono\nMileage: 18,200\nOwners: 2\n\n"
    text += "Selling our much loved Thornleigh. The Harbour Edition was the last of the Hearth II.\n\n"
    text += "- 5.05 m long\n- two berths\n- 42 litre fresh tank, 36 litre waste tank\n"
    text += "- diesel heater, blown air, 2 kW\n- 100 W solar on the roof\n- two scratches on the door\n"
    text += "- 110 Ah AGM leisure battery\n\nFull service history.\n"
    assert vans_in(text, "sale.txt") == {("Thornleigh", "Hearth II Harbour Edition")}


def test_an_announcement_that_greets_its_readers_is_of_the_van_in_its_first_line(vans_in):
    text = (
        "[ANNONCE PARTICULIER]  Fourgon aménagé Penmarec Galet 599 Boréal\n\nPrix : 49 800 €\nKilométrage : 33 500 km\n"
    )
    text += "\nBonjour,\n\nNous vendons notre Galet 599 Boréal, première main, contrôle technique vierge.\n\n"
    text += "Longueur 5,99 m\n2 couchages\nEau propre : 105 litres\nBatterie cellule : lithium 100 Ah\n"
    assert vans_in(text, "annonce.txt") == {("Penmarec", "Galet 599 Boréal")}


@pytest.mark.parametrize(
    "about, said",
    [("Thornleigh Hearth No. 4 and Hearth No. 6", "Both are vans for two."),
     ("Your visit", "Both are built by Thornleigh.")],
)  # fmt: skip
def test_a_letter_says_whose_the_vans_are_that_it_offers(vans_in, about, said):
    table = "| | Hearth No. 4 | Hearth No. 6 |\n|---|---|---|\n| Length | 5.5 m | 6.2 m |\n| Berths | 2 | 3 |\n"
    table += "| Waste water | 45 L | 75 L |\n| Fresh water | 60 L | 90 L |\n"
    text = (
        f"Subject: {about}\n\nDear Ms Abbot,\n\nIt was good to meet you. {said}\n\n{table}\nYours sincerely,\n\nTom\n"
    )
    assert {maker for maker, _ in vans_in(text, "letter.md")} == {"Thornleigh"}
