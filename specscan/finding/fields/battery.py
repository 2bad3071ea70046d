"""Battery banks: series adds volts, parallel adds ampere-hours, charge times voltage is energy."""

from __future__ import annotations

import re
from collections.abc import Collection
from dataclasses import replace

from specscan.finding.things.found import Found, Value
from specscan.finding.things.items import Item, Parsed
from specscan.rulebook.book import Rulebook

VEHICLE_VOLTS = 12.9  # no bank has less than its vehicle's 12 V: two of 6 V stand in series
KIND_WORDS = 4  # between the number of batteries and the charge of each
MOST_BATTERIES = 8
SEVERAL = re.compile(r"\s*[×x](?=\s)")
LOW_VOLTS, HIGH_VOLTS = 5.0, 60.0


def bank_values(book: Rulebook, parsed: Parsed, found: list[Found]) -> list[Found]:
    """Mend the charge of batteries in series, and give the energy where charge and voltage are printed.

    E = Q · U with the nominal voltage of the bank as printed (reference rows U24, U25, B09).
    """
    made: list[Found] = []
    if not any(book.fields[one.field].bank for one in found):
        return made  # what is mended is a charge, and what is made from it a product of it
    for name, spec in book.fields.items():
        if spec.bank:
            for row in [f for f in found if f.field == name and not f.rejected and f.item is not None]:
                _mend(row, parsed, spec.of)
        if spec.product:
            made.extend(_products(book, name, parsed, found))
    return made


def _voltage(row: Found, parsed: Parsed, things: Collection[str]) -> Item | None:
    """Give the nearest voltage that can be that of a charge; ``things`` are those that have such a charge."""
    assert row.item is not None
    near = [
        item for item in parsed.items
        if item.quantity is not None and item.quantity.dimension == "voltage" and item.sentence == row.sentence
        and LOW_VOLTS <= item.quantity.each <= HIGH_VOLTS
        and (item.depth == row.item.depth or _bracketed(row.item, item, parsed))
        and not _apart(row.item, item, parsed) and not _of_another(row.item, item, parsed, things)
    ]  # fmt: skip
    if not near:
        return None
    return min(near, key=lambda item: abs(item.first - row.item.first) if row.item else 0)


def _bracketed(charge: Item, volts: Item, parsed: Parsed) -> bool:
    """Tell whether brackets behind a charge hold a voltage and nothing else: "3 × 120 Ah lithium (12.8 V)"."""
    alone = parsed.text[volts.start - 1 : volts.start] == "(" and parsed.text[volts.end : volts.end + 1] == ")"
    return alone and charge.end <= volts.start and volts.depth == charge.depth + 1


def _apart(charge: Item, volts: Item, parsed: Parsed) -> bool:
    """Tell whether an option begins between a charge and a voltage: "2 × 100 Ah; option 3 × 150 Ah, 12.8 V"."""
    left, right = sorted((charge, volts), key=lambda item: item.start)
    return any(left.end <= cue.start and cue.end <= right.start for cue in parsed.cues("optional", "standard"))


def _of_another(charge: Item, volts: Item, parsed: Parsed, things: Collection[str]) -> bool:
    """Tell whether a voltage stands with another thing, in a part of a list: "12 V pad for the gray tank; 300 Ah"."""
    if charge.chunk == volts.chunk:
        return False
    named = {name for i in parsed.items if i.chunk == volts.chunk for name in i.names("thing")}
    return bool(named) and named.isdisjoint(things)


def _mend(row: Found, parsed: Parsed, things: Collection[str]) -> None:
    assert row.item is not None and row.item.quantity is not None
    quantity = row.item.quantity
    volts = _voltage(row, parsed, things)
    if _wired("series_pairs", row, parsed):
        batteries = _counted(row.item, volts, parsed)
        if batteries % 2:
            row.rejected = "pairs in series, and how many is not printed"
        row.value = Value(num=quantity.each * (batteries // 2 or 1))
        return
    series = _wired("in_series", row, parsed)
    parallel = _wired("in_parallel", row, parsed)
    tight = volts is not None and "/" in parsed.text[min(volts.end, row.end) - 1 : max(volts.start, row.start) + 1][:4]
    if series and quantity.count > 1:
        row.value = Value(num=quantity.each)
    elif quantity.count == 1 and not series and (batteries := _of_kind(row, parsed)) > 1:
        row.value = Value(num=quantity.each * batteries)
    elif (
        (parallel or tight)
        and volts is not None
        and volts.quantity is not None
        and quantity.count == 1 < volts.quantity.count
    ):
        row.value = Value(num=quantity.each * volts.quantity.count)


def _wired(cue: str, row: Found, parsed: Parsed) -> bool:
    """Tell whether the sentence of a charge says how the batteries are wired, by the words of a cue.

    Behind an option that begins between them it says so of others: "2 × 6 V, 220 Ah in series, option 2 × 150 Ah", and
    outside brackets of what they hold: "2 × 6 V, 220 Ah in series (3 × 120 Ah optional)".
    """
    assert row.item is not None
    said = [one for one in parsed.cues(cue) if one.sentence == row.sentence and one.depth >= row.item.depth]
    return any(not _apart(row.item, one, parsed) for one in said)


def _counted(charge: Item, volts: Item | None, parsed: Parsed) -> int:
    """Give how many batteries are told beside their charge, their voltage or before both: "4 x 6 V, 210 Ah"."""
    assert charge.quantity is not None
    if volts is None or volts.quantity is None or charge.quantity.count > 1:
        return charge.quantity.count
    return volts.quantity.count if volts.quantity.count > 1 else _batteries(charge, volts, parsed)


def _batteries(charge: Item, volts: Item, parsed: Parsed) -> int:
    """Give how many batteries are counted before their voltage and charge: "deux batteries 6 V de 220 Ah"."""
    first = min(charge.start, volts.start)
    counts = [
        item for item in parsed.items
        if item.quantity is not None and item.quantity.bare and item.quantity.dimension == "count"
        and item.chunk == charge.chunk and item.end <= first
    ]  # fmt: skip
    named = counts and any(i.has("thing") and 0 <= i.first - counts[-1].last <= 1 for i in parsed.items)
    number = int(counts[-1].quantity.each) if named and counts[-1].quantity is not None else 1
    return number if 2 <= number <= MOST_BATTERIES else 1


def _of_kind(row: Found, parsed: Parsed) -> int:
    """Give how many batteries of a charge are told before their kind: "2 × AGM, 100 Ah", "two lithium, 100 Ah each".

    Before "each" no kind need be named: "there are two, 100 Ah each".
    """
    assert row.item is not None
    item = row.item
    each = any(0 <= cue.first - item.last <= 1 and cue.start >= item.end for cue in parsed.cues("each"))
    for other in parsed.items:
        counted = other.quantity is not None and other.quantity.bare and other.quantity.count == 1
        if not counted or other.sentence != item.sentence or not 0 < item.first - other.last <= KIND_WORDS:
            continue
        assert other.quantity is not None
        number = other.quantity.each
        told = each or SEVERAL.match(parsed.text, other.end)
        if number == int(number) and 2 <= number <= MOST_BATTERIES and told:
            kinds = [i for i in parsed.items if other.end <= i.start and i.end <= item.start]
            plain = all(i.quantity is None or i.quantity.bare for i in kinds)  # "4" of "LiFePO4"
            kinded = any(c.kind == "value" for i in kinds for c in i.concepts)
            if plain and (kinded or each and all(i.has("cue", "coordination") for i in kinds)):
                return int(number)
    return 1


def _products(book: Rulebook, name: str, parsed: Parsed, found: list[Found]) -> list[Found]:
    spec = book.fields[name]
    charges = [
        f
        for f in found
        if f.item is not None and f.item.quantity is not None and not f.rejected and book.fields[f.field].bank
    ]
    stated = [f for f in found if f.field == name and not f.rejected]
    made = []
    for row in charges:
        volts = _voltage(row, parsed, book.fields[row.field].of)
        if volts is None or volts.quantity is None or row.value.num is None or row.item is None:
            continue
        if any(other.sentence == row.sentence for other in stated):
            continue
        charge = row.item.quantity
        assert charge is not None
        in_series = row.value.num == charge.each and charge.count > 1
        nominal = volts.quantity.each * (charge.count if in_series else 1)
        if _wired("series_pairs", row, parsed):
            nominal = volts.quantity.each * 2
        elif volts.quantity.count > 1 and charge.count == 1:
            if _wired("in_series", row, parsed) or volts.quantity.low <= VEHICLE_VOLTS:
                nominal = volts.quantity.low
            elif row.value.num == charge.each:
                continue  # two of 12 V: nobody says whether in series
        elif volts.quantity.count == charge.count == 1 and _wired("in_series", row, parsed):
            nominal = volts.quantity.each * _batteries(row.item, volts, parsed)
        start, end = min(row.start, volts.start), max(row.end, volts.end)
        made.append(
            replace(
                row, field=name, value=Value(num=row.value.num * nominal), start=start, end=end,
                pattern=f"{name}:charge × voltage", unit=f"{row.unit} × {volts.quantity.printed_unit}", basis="product",
            )
        )  # fmt: skip
        if spec.range and not spec.range[0] <= (made[-1].value.num or 0) <= spec.range[1]:
            made[-1].rejected = "implausible: outside the plausible range"
    return made
