"""Labels that name the walls and mean their insulation, if the unit or the value is of that."""

import pytest

SHEETS = {
    "Walls (mm)\t25\t40": {"insulation_thickness_mm": {25, 40}},
    "Walls (RSI)\t0.62\t0.97": {"insulation_r_si": {0.62, 0.97}},
    "In the walls\t1 in, R-3.5\t1½ in, R-9": {"insulation_thickness_mm": {25.4, 38.1}, "insulation_r_si": {0.62, 1.58}},
    "Side walls\tmineral wool, 25 mm\tspray foam, 40 mm": {
        "insulation_thickness_mm": {25, 40},
        "insulation_material": {"mineral_wool", "spray_foam"},
    },
    "In den Wänden\t25 mm Mineralwolle\t40 mm Schafwolle": {
        "insulation_thickness_mm": {25, 40},
        "insulation_material": {"mineral_wool", "sheep_wool"},
    },
    "Wände (mm)\t25\t40": {"insulation_thickness_mm": {25, 40}},
    "Parois (mm)\t25\t40": {"insulation_thickness_mm": {25, 40}},
    "Dans les parois\tlaine de mouton, 25 mm\tlaine de roche, 40 mm": {"insulation_thickness_mm": {25, 40}},
}
HEADS = {
    "W": "\tDrift 19\tDrift 21\nOverall length (mm)\t5410\t5990\nGVWR (kg)\t3500\t4250\nWheelbase (mm)\t3450\t4040\n",
    "D": "\tDrift 19\tDrift 21\nLänge (mm)\t5410\t5990\nGesamtmasse (kg)\t3500\t4250\nRadstand (mm)\t3450\t4040\n",
    "F": "\tDrift 19\tDrift 21\nLongueur (mm)\t5410\t5990\nPTAC (kg)\t3500\t4250\nEmpattement (mm)\t3450\t4040\n",
}


def sheet(row):
    language = "F" if "aroi" in row else "D" if "Wänd" in row else "W"
    return f"Marrowfen Drift 2026\n\n{HEADS[language]}{row}\n"


@pytest.mark.parametrize("row", SHEETS)
def test_walls_as_a_label_are_their_insulation(facts_of, row):
    facts = facts_of(sheet(row), "sheet.txt")
    for field, values in SHEETS[row].items():
        told = {fact.value for fact in facts if fact.field == field}
        assert {round(v, 2) if isinstance(v, float) else v for v in told} == values, field


@pytest.mark.parametrize("row", ["Walls\twhite\tgray", "Walls (kg)\t25\t40", "Walls\t25 mm\t40 mm"])
def test_other_values_of_walls_are_none(facts_of, row):
    facts = facts_of(sheet(row), "sheet.txt")
    assert not [fact for fact in facts if fact.field.startswith("insulat")]
