"""A line that explains marks right above the heads of a table is no row of it."""

MARKED = """Marrowfen Drift 2027

{legend}

                                   Drift 18   Drift 19   Drift 20
-----------------------------------------------------------------
Heated dump valve                  x          –          o
Bunk kit, sleeps 4 in total        o          –          –
Awning with LED strip              x          x          x
Sine wave inverter, 3600 W         –          x          x
"""


def test_a_legend_of_letters_above_the_heads_of_a_typed_table(facts_of):
    legend = "x standard equipment   o optional at extra charge   – not available"
    facts = facts_of(MARKED.format(legend=legend))
    valve = {(f.model, f.availability) for f in facts if f.field == "dump_valve_protection"}
    assert valve == {("Drift 18", "standard"), ("Drift 19", "not_available"), ("Drift 20", "optional")}
    assert {f.model for f in facts if f.field == "inverter_w" and f.availability == "not_available"} == {"Drift 18"}
