"""Ranges that stand beside their vans, above some of them only, or in a row of a typed table."""

import pytest

HEADS = ("Model", "Length", "GVWR", "Fresh water", "Gray water", "Sleeps")
VANS = {
    "Ospren": {"A190": ("19 ft", "9,050 lb", "20 gal", "18 gal", "2"),
               "A210": ("21 ft", "9,350 lb", "26 gal", "22 gal", "2")},
    "Kittel": {"K240": ("23 ft", "11,030 lb", "36 gal", "30 gal", "4"),
               "K240 X": ("23 ft", "11,030 lb", "36 gal", "31 gal", "3")},
}  # fmt: skip
NAMES = {"Ospren A190", "Ospren A210", "Kittel K240", "Kittel K240 X"}
TITLE = "Ospren and Kittel touring vans, model year 2026"
SAID = "An Ospren is a three-season van. A Kittel is four-season."


def models(found):
    return {model for _, model, _ in found}


def row(cells, tag="td"):
    return "<tr>" + "".join(f"<{tag}>{cell}</{tag}>" for cell in cells) + "</tr>"


@pytest.mark.parametrize("corner", ["Range", ""])
@pytest.mark.parametrize("form", ["merged", "repeated", "first"])
def test_ranges_stand_in_a_column_of_their_own(vans_of, corner, form):
    table = row((corner, *HEADS), "th")
    for name, vans in VANS.items():
        for place, (code, values) in enumerate(vans.items()):
            cell = f"<td rowspan='{len(vans)}'>{name}</td>" if form == "merged" and not place else ""
            cell = f"<td>{name if form == 'repeated' or not place else ''}</td>" if form != "merged" else cell
            table += f"<tr>{cell}{''.join(f'<td>{one}</td>' for one in (code, *values))}</tr>"
    page = f"<h1>Price guide</h1><h2>{TITLE}</h2><table>{table}</table><p>{SAID}</p><p>Havelow Inc., 9 Weir Street.</p>"
    assert models(vans_of(page, "guide.html")) == NAMES


def typed(cells):
    return "".join(f"{cell:<16}" for cell in cells).rstrip() + "\n"


def test_shouted_ranges_between_the_rows_of_a_typed_table_are_no_part_of_codes(vans_of):
    text = f"HAVELOW\n\nPrice guide\n{TITLE}\n\n{typed(HEADS)}{'-' * 90}\n"
    for name, vans in VANS.items():
        text += name.upper() + "\n" + "".join(typed((code, *values)) for code, values in vans.items())
    assert models(vans_of(f"{text}\n{SAID}\n\nHavelow Inc., 9 Weir Street.\n", "guide.txt")) == NAMES


def test_a_range_above_the_first_of_its_codes_is_that_of_the_others_too(vans_of):
    codes = [code for vans in VANS.values() for code in vans]
    text = f"HAVELOW\n\nPrice guide\n{TITLE}\n\n{typed(('', 'OSPREN', '', 'KITTEL'))}{typed(('', *codes))}{'-' * 80}\n"
    for place, head in enumerate(HEADS[1:]):
        text += typed((head, *(values[place] for vans in VANS.values() for values in vans.values())))
    assert models(vans_of(f"{text}\n{SAID}\n\nHavelow Inc., 9 Weir Street.\n", "guide.txt")) == NAMES


def test_the_type_of_a_battery_further_on_names_no_van(vans_of):
    table = row(("Series", "Variant", "Length (mm)", "GVM (kg)", "House battery", "Type"), "th")
    for name, vans in VANS.items():
        for place, code in enumerate(vans):
            cell = f"<td rowspan='{len(vans)}'>{name}</td>" if not place else ""
            values = ("5 998", "3 500", f"2 x {90 + 10 * place} Ah", "AGM")
            table += f"<tr>{cell}{''.join(f'<td>{one}</td>' for one in (code, *values))}</tr>"
    page = f"<h1>Price guide</h1><h2>{TITLE}</h2><table>{table}</table><p>{SAID}</p><p>Havelow Inc., 9 Weir Street.</p>"
    assert models(vans_of(page, "guide.html")) == NAMES
