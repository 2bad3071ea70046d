"""Vans that running text counts and names, where no table, list or heading does."""

import pytest

LETTER = {
    "en": "Hollinbeck Vans, Inc.\nQuay 3, Ost\n\nDear Mr Fenn,\n\nthank you for asking. {said} Model year 2026.\n\n"
    "Fresh water is 25 gallons in both. The {one} has a diesel heater of 4 kW. The {two} has 300 watts of solar.\n\n"
    "Yours,\n\nMarta Quill\n",
    "de": "Hollinbeck Vans GmbH\nAm Kai 3, Ost\n\nSehr geehrter Herr Fenn,\n\n{said} Modelljahr 2026.\n\n"
    "Der Frischwassertank fasst im {one} 100 l. Der {one} hat eine Dieselheizung. Der {two} hat 300 W Solar.\n\n"
    "Mit freundlichen Grüßen\nMarta Quill\n",
    "fr": "Hollinbeck Vans SARL\n3 quai Est\n\nMonsieur,\n\n{said} Millésime 2026.\n\n"
    "Le {one} a un réservoir d'eau propre de 100 l et un chauffage au gazole. Le {two} a 300 W de panneaux solaires."
    "\n\nCordialement\nMarta Quill\n",
}


@pytest.mark.parametrize(
    ("language", "said", "one", "two"),
    [
        ("en", "We make two vans, the Wendle and the Wendle Long.", "Wendle", "Wendle Long"),
        ("en", "We build 2 small vans: Wendle and Sorrel.", "Wendle", "Sorrel"),
        ("en", "There are two of them (the Wendle and the Sorrel), and both are dry.", "Wendle", "Sorrel"),
        ("en", "The Wendle and the Sorrel are our two vans.", "Wendle", "Sorrel"),
        ("de", "Wir bauen zwei Fahrzeuge, den Ahorn und den Ahorn Lang.", "Ahorn", "Ahorn Lang"),
        ("fr", "Nous construisons deux fourgons, le Tarn et le Tarn Long.", "Tarn", "Tarn Long"),
    ],
)
def test_vans_that_a_sentence_counts_and_names_are_the_documents(vans_of, language, said, one, two):
    text = LETTER[language].format(said=said, one=one, two=two)
    assert vans_of(text, "reply.txt") == {("Hollinbeck Vans", name, 2026) for name in (one, two)}


@pytest.mark.parametrize(
    "said", ["We make two vans, the Wendle and a Sorrel or so.", "Both come in three vans, the Wendle and the Sorrel."]
)
def test_a_list_of_another_length_than_told_names_no_vans(vans_of, said):
    assert len(vans_of(LETTER["en"].format(said=said, one="Wendle", two="Wendle"), "reply.txt")) < 2
