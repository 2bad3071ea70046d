"""Vans offered under numbers in a letter, an owner's letter that says the name once, trims that are legal forms too."""

import pytest

from tests.finding.test_names_in_heads import models

OFFER = """Autohaus Hollmann, Inh. D. Hollmann
Reisemobile und Gartentechnik
Lindenstraße 40, Ostwalde

                                              Ostwalde, 14. November 2026
Familie Sommer
Krummer Weg 5
Ostwalde

Angebot Nr. 26-1183: Marrowfen Drift

Sehr geehrte Familie Sommer,

wie besprochen bieten wir Ihnen zwei Neufahrzeuge des Modelljahrs 2027 an, beide auf Calder Kurier 35.

1. Marrowfen Drift 5.9 Komfort
   Länge 5,93 m, 2 Schlafplätze
   Frischwassertank 90 l, Abwassertank 85 l
   Luftheizung mit Diesel, 4 kW
   Aufbaubatterie 95 Ah AGM
   Hauspreis 59.480,00 EUR

2. Marrowfen Drift 6.3 Komfort Plus
   Länge 6,34 m, 3 Schlafplätze
   Frischwassertank 110 l, Abwassertank 95 l
   Kombiheizung mit Gas, 6 kW
   Aufbaubatterie 160 Ah Lithium
   Hauspreis 67.950,00 EUR

Der Drift 5.9 Komfort ist ab Lager lieferbar, der Drift 6.3 Komfort Plus voraussichtlich im März.

Mit freundlichen Grüßen
Dagmar Hollmann
"""


def test_each_number_of_an_offer_is_a_van_with_its_own_data(vans_of, facts_of):
    found = {("Marrowfen", "Drift 5.9 Komfort", 2027), ("Marrowfen", "Drift 6.3 Komfort Plus", 2027)}
    assert vans_of(OFFER, name="angebot.txt") == found
    lengths = {fact.model: fact.value for fact in facts_of(OFFER) if fact.field == "length_mm"}
    assert lengths == {"Drift 5.9 Komfort": 5930, "Drift 6.3 Komfort Plus": 6340}


def test_an_owner_says_the_whole_name_once_and_then_only_its_word(vans_of):
    text = (
        "To the readers' pages\n\nSubject: our Marrowfen Drift 6\n\nDear Sir or Madam,\n\n"
        "It is a 2026 model on the Calder Carrier. The Drift is 5.99 metres long. There are two berths.\n\n"
        "Marrowfen fit a 95-litre fresh tank inside the van and hang a 70-litre waste tank under it.\n"
        "The heating is a diesel air heater of 4 kW. The walls are insulated with sheep's wool.\n\n"
        "Yours faithfully,\nA. Hollin (Mr)\n"
    )
    assert vans_of(text, name="letter.txt") == {("Marrowfen", "Drift 6", 2026)}


def test_limited_behind_a_code_is_a_trim(vans_of):
    text = (
        "# 2021 Marrowfen Drift 22RB Limited\n\nUsed camper van, one previous owner, low mileage\n\n"
        "Length: 22 ft\n\nGVWR: 9,350 lb\n\nSleeps: 2\n\nFresh water: 30 gallons\n\nStock #U4471\n"
    )
    assert models(vans_of(text)) == {"Drift 22RB Limited"}


SENT_ON = """From: Ada Holt <ada@holt.example>
To: Ivo Holt <ivo@holt.example>
{subject} Drift 59 / Drift 64

Drift 59: Length 5.93 m, width 2.05 m, rear-wheel drive.

Drift 64: Length 6.36 m, width 2.05 m, rear-wheel drive.

Marrowfen Ltd, Mill Yard, Farrow.
"""


@pytest.mark.parametrize("subject", ["Subject: Fwd: Re:", "Re: Fwd:"])
def test_a_letter_sent_on_says_nothing_of_driven_wheels(read_file, tmp_path, subject):
    path = tmp_path / "letter.txt"
    path.write_text(SENT_ON.format(subject=subject), encoding="utf-8")
    facts = [fact for fact in read_file(path).found.facts if fact.field == "drive" and not fact.rejected]
    assert {fact.value for fact in facts} == {"rear"}, facts
