"""Which of several values in one statement counts: the total, the walls', the more exact word."""

from __future__ import annotations

import itertools

from specscan.finding.marks.availability import item_availability
from specscan.finding.marks.excepted import left_out
from specscan.finding.marks.scope import item_vans
from specscan.finding.things.found import Availability, Found, How, Value
from specscan.finding.things.items import Item, Parsed
from specscan.finding.things.statement import Statement
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import FieldSpec

FEWER_BERTHS = "the smaller of two numbers of berths"
PARTLY_FILLED = "a partial fill beside the full one"
BESIDE_GREATER = (FEWER_BERTHS, PARTLY_FILLED)  # reasons that do not hold where each figure is another van's


def one_each(book: Rulebook, found: list[Found], statement: Statement) -> list[Found]:
    """Of several figures for one field in one sentence keep the total, or the one for the walls."""
    for name in dict.fromkeys(f.field for f in found):
        spec = book.fields[name]
        rows = [f for f in found if f.field == name and not f.rejected]
        if len(rows) < 2:
            continue
        totals = [f for f in rows if any(c.chunk == f.chunk for c in statement.parsed.cues("total"))]
        totals = totals or _sums(rows)
        if totals and len(totals) < len(rows):
            for row in rows:
                if (
                    row not in totals
                    and _is_part(row, totals[0], statement)
                    and not _ordered(totals[0], row, statement)
                ):
                    row.rejected = "a part of a total that is printed too"
        for other, value in spec.prefer_with.items():
            _prefer(book, rows, other, value, statement)
        if spec.number == "count" and spec.several == "highest":
            _without_fewer([f for f in rows if not f.rejected], statement)
        if spec.partly:
            _without_partial(spec, [f for f in rows if not f.rejected], statement)
    return found


def _without_fewer(rows: list[Found], statement: Statement) -> None:
    """Set aside the smaller of several numbers of berths: "2/3", "2 (3)" and "2 or 3" are up to 3, of four two are
    upstairs, as where a bracket behind them says so: "4 berth (2 in the roof)".

    A row that is marked as a whole has the larger: "pop-top with two berths (4 berths)". In a cell such a bracket may
    speak of an option: "2 (3 with the dinette kit)".
    """
    parsed = statement.parsed
    of_them = {cue.first for cue in parsed.cues("of_them")}
    for one, two in itertools.permutations(rows, 2):
        beside = _either(one, two, parsed) or _either(two, one, parsed)
        part = (one.item is not None and one.item.last in of_them) or _bracketed_behind(one, two)
        marked = statement.how is How.MARKED and one.sentence == two.sentence and _of_same_vans(one, two, statement)
        total = any(cue.chunk == two.chunk for cue in parsed.cues("total"))  # "bed for two (sleeps four in all)"
        if (beside or part or marked or total) and (one.value.num or 0) < (two.value.num or 0):
            one.rejected = FEWER_BERTHS


def _either(one: Found, two: Found, parsed: Parsed) -> bool:
    """Tell whether nothing but a stroke or an "or" stands between two figures, or the second is alone in brackets."""
    between = [cue for cue in parsed.cues("or_joint") if one.end <= cue.start and cue.end <= two.start]
    said = parsed.text[one.end : two.start].strip()
    alone = said == "(" and parsed.text[two.end : two.end + 1] == ")"
    return alone or said == "/" or any(said == parsed.text[cue.start : cue.end] for cue in between)


def _bracketed_behind(one: Found, two: Found) -> bool:
    """Tell whether a figure stands in brackets behind another one that does not."""
    apart = one.item is not None and two.item is not None and one.item.depth > two.item.depth
    return apart and two.end <= one.start


def _without_partial(spec: FieldSpec, rows: list[Found], statement: Statement) -> None:
    """Set aside what a tank holds while the van is driven: "10 / 100 l", "100 l (20 l in driving position)"."""
    most = max((row.value.num or 0 for row in rows), default=0)
    told_in_label = any(cue.start < statement.split for cue in statement.parsed.cues("partly_filled"))
    for row in rows:
        told = any(_is_said(cue, row, statement) for cue in statement.parsed.cues("partly_filled"))
        chained = row.item is not None and row.item.quantity is not None and row.item.quantity.chain
        chained = chained or any(_slashed(row, other, statement) for other in rows)
        little = (row.value.num or 0) <= spec.partly * most
        if 0 < (row.value.num or 0) < most and (told or (chained and (told_in_label or little))):
            row.rejected = PARTLY_FILLED


def _is_said(cue: Item, row: Found, statement: Statement) -> bool:
    """Tell whether words stand with a figure: in its part, or in brackets right behind it: "20 l (driving)"."""
    close = statement.parsed.text[row.end : cue.start].strip() == "("
    return cue.start >= statement.split and (cue.chunk == row.chunk or close)


def _slashed(one: Found, two: Found, statement: Statement) -> bool:
    return one is not two and statement.parsed.text[one.end : two.start].strip() == "/"


def _sums(rows: list[Found]) -> list[Found]:
    """Give the figure that is the sum of all the others in its sentence: they are its parts."""
    if len(rows) < 3:
        return []
    for row in rows:
        rest = sum(r.value.num or 0 for r in rows if r is not row)
        if row.value.num and abs(rest - row.value.num) <= 0.02 * row.value.num:
            return [row]
    return []


def _is_part(row: Found, total: Found, statement: Statement) -> bool:
    same = row.sentence == total.sentence
    bracketed = total.item is not None and total.item.depth > 0
    added = bool(statement.parsed.cues("addition")) or "+" in statement.parsed.text
    smaller = (row.value.num or 0) < (total.value.num or 0)
    return same and smaller and (not bracketed or added)


def _ordered(total: Found, row: Found, statement: Statement) -> bool:
    """Tell whether a total is that of an option, and one before it what is fitted: "130 W; option, 260 W in all"."""
    said = [item_availability(one.item, statement.parsed, statement.split, "") for one in (total, row)]
    apart = total.item is not None and row.item is not None and total.item.clause != row.item.clause
    return apart and said == [Availability.OPTIONAL, None]


def _prefer(book: Rulebook, rows: list[Found], other: str, value: str, statement: Statement) -> None:
    spec = book.fields[other]
    with_value: list[Found] = []
    with_other: list[Found] = []
    for row in rows:
        words: set[str] = set()
        for part in ("chunk", "clause"):
            near = [i for i in statement.parsed.items if row.item and getattr(i, part) == getattr(row.item, part)]
            said = {c.value for i in near for c in i.concepts if c.kind == "value" and c.name == spec.vocabulary}
            words = words or said
        if value in words:
            with_value.append(row)
        elif words:
            with_other.append(row)
    if with_value:
        for row in with_other:
            row.rejected = f"stated for another part than the {value}"


def without_weaker(book: Rulebook, found: list[Found], statement: Statement) -> list[Found]:
    """Drop weak values beside strong ones, and all but the strongest word of a choice."""
    for name in dict.fromkeys(f.field for f in found):
        spec = book.fields[name]
        rows = [f for f in found if f.field == name and not f.rejected]
        strong = [f for f in rows if not f.weak]
        weak = [f for f in rows if f.weak]
        if spec.type == "choice" and weak:
            order = {word: place for place, word in enumerate(spec.weak)}
            for row in weak:
                if spec.strongest and row.value.text == spec.strongest[0]:
                    continue  # what stands beside it says of what it is made: "a hybrid of petrol and electric motor"
                same = [f for f in weak if f.sentence == row.sentence and _of_same_vans(f, row, statement)]
                best = min(order.get(f.value.text or "", 99) for f in same)
                beside = any(f.sentence == row.sentence and _of_same_vans(f, row, statement) for f in strong)
                if beside or order.get(row.value.text or "", 99) > best:
                    row.rejected = "a more exact word stands beside it"
        if spec.strongest and spec.type == "choice":
            _keep_strongest(spec, [f for f in rows if not f.rejected], statement)
        if spec.several == "mixed":
            _mix([f for f in rows if not f.rejected], statement)
        if spec.only_with:
            _require(book, spec, rows, found)
    return found


def _of_same_vans(one: Found, other: Found, statement: Statement) -> bool:
    """Tell whether two values are said of the same vans: "exposed on the A, in a heated box on the B" are not.

    Nor are "all run on gasoline, except the B, whose engine burns diesel".
    """
    if one is other or not any(i.vans for i in statement.parsed.items):
        return True
    if left_out(one.item, statement.parsed) != left_out(other.item, statement.parsed):
        return False
    return _vans_of(one, statement) == _vans_of(other, statement)


def _vans_of(row: Found, statement: Statement) -> frozenset[str] | None:
    return item_vans(row.item, statement.parsed, statement.split)


def _keep_strongest(spec: FieldSpec, rows: list[Found], statement: Statement) -> None:
    """Set aside the less exact words of a choice beside a more exact one; an option beside the standard is another."""
    groups: dict[object, list[Found]] = {}
    for row in rows:
        if row.availability is None:
            offered = item_availability(row.item, statement.parsed, statement.split, "")
            groups.setdefault((row.sentence, offered, _vans_of(row, statement)), []).append(row)
    for same in groups.values():
        words = [row.value.text for row in same]
        if len(set(words)) < 2:
            continue
        best = next((word for word in spec.strongest if word in words), None)
        clauses = {row.item.clause for row in same if row.item is not None}
        for row in same:
            if best is not None and row.value.text != best and len(clauses) == 1:
                row.rejected = "a more exact word stands beside it"


def _mix(rows: list[Found], statement: Statement) -> None:
    """Make one value of different words that are said of the same vans."""
    groups: dict[frozenset[str] | None, list[Found]] = {}
    for row in rows:
        groups.setdefault(_vans_of(row, statement), []).append(row)
    for same in groups.values():
        if len({row.value.text for row in same}) < 2:
            continue
        same[0].value = Value(text="mixed")
        for row in same[1:]:
            row.rejected = "part of a mixed arrangement"


def _require(book: Rulebook, spec: FieldSpec, rows: list[Found], found: list[Found]) -> None:
    for other, words in spec.only_with.items():
        stated = {f.value.text for f in found if f.field == other}
        vocabulary = book.fields[other].vocabulary
        if stated & set(words):
            continue
        for row in rows:
            row.rejected = f"no {' or '.join(words)} {other} is named with it" if vocabulary else "not named with it"
