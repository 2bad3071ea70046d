"""The name of a group of rows that joins two chapters says nothing of the things of its rows."""


def test_a_chapter_of_climate_and_heat_is_not_the_air_conditioner(facts_of):
    rows = (
        "<tr><td rowspan=2>Maße</td><td>Gesamtlänge</td><td>5,99 m</td><td>6,36 m</td></tr>"
        "<tr><td>Schlafplätze</td><td>2</td><td>4</td></tr>"
        "<tr><td rowspan=3>Klima und Wärme</td><td>Heizung</td><td>Luftheizung</td><td>Wasserheizung</td></tr>"
        "<tr><td>Abgegebene Wärmeleistung</td><td>4000 W</td><td>5300 W</td></tr>"
        "<tr><td>Fußbodenheizung</td><td>nein</td><td>serienmäßig</td></tr>"
    )
    head = "<tr><th></th><th>Modell</th><th>Kranich 59</th><th>Kranich 63</th></tr>"
    text = f"<html><body><h1>Dornmoor Kranich 2026</h1><table>{head}{rows}</table></body></html>"
    facts = facts_of(text, "kranich.html")
    outputs = {fact.model: fact.value for fact in facts if fact.field == "heater_output_w"}
    assert outputs == {"Kranich 59": 4000, "Kranich 63": 5300}
