"""Fields stated by several words that stand together, in any order: insulated + cover + cab."""

from __future__ import annotations

from specscan.finding.fields.answers import is_answer
from specscan.finding.things.found import Found, How, Value
from specscan.finding.things.groups import Sentence
from specscan.finding.things.items import Item
from specscan.finding.things.statement import Statement
from specscan.rulebook.book import Rulebook

REACH = 14  # folded words within which the words of one statement stand
NEGATION_REACH = 2


def together_fields(book: Rulebook, statement: Statement, sentence: Sentence) -> list[Found]:
    """Give the flags whose words all stand in one sentence of the statement (its label included)."""
    found: list[Found] = []
    if "word" not in statement.parsed.kinds:
        return found
    answer = is_answer(statement.parsed, statement.split) if statement.split else ""
    said = {name for item in statement.parsed.items for name in item.by_kind.get("word", ())}
    for name, spec in book.fields.items():
        if not spec.together or not said.issuperset(spec.together):
            continue
        for number in sorted({item.sentence for item in statement.parsed.items}):
            items = [
                i
                for i in statement.parsed.items
                if (i.sentence == number or i.start < statement.split) and id(i) not in sentence.ignored
            ]
            choices = _choices(items, spec.together) if answer != "unknown" else []
            near = (one for one in choices if all(_near(item, one, statement) for item in one))
            chosen = next(near, None)
            if chosen is None:
                continue
            denied = answer == "no" or _denied(chosen, spec.denied_by, statement)
            if statement.how is How.PROSE and "?" in statement.parsed.text[chosen[-1].end : chosen[-1].end + 40]:
                continue
            start, end = min(i.start for i in chosen), max(i.end for i in chosen)
            anchor = max(chosen, key=lambda i: i.start)
            found.append(
                Found(
                    name,
                    Value(flag=not denied),
                    start,
                    end,
                    f"{name}:together",
                    anchor,
                    chunk=anchor.chunk,
                    sentence=number,
                )
            )
            break
    return found


def told_together(book: Rulebook, item: Item, statement: Statement) -> bool:
    """Tell whether a word states something with others of its part: "…, insulated cab screens" is of no tank before."""
    own = item.by_kind.get("word", ())
    beside = {n for i in statement.parsed.items if i.chunk == item.chunk for n in i.by_kind.get("word", ())}
    fields = (spec.together for spec in book.fields.values() if spec.together)
    return any(name in words and beside.issuperset(words) for words in fields for name in own)


def _choices(items: list[Item], groups: list[str]) -> list[list[Item]]:
    """Give for each word of the middle group (the place) those of the others that stand nearest to it.

    Those of its own part go first: "insulated screens for the cab; insulated curtains for the rear doors".
    """
    hits = [[item for item in items if item.has("word", group)] for group in groups]
    if not all(hits):
        return []

    def nearest(found: list[Item], middle: Item) -> Item:
        return min(found, key=lambda i: (i.clause != middle.clause, abs(i.first - middle.first)))

    return [[nearest(found, middle) for found in hits] for middle in hits[1 if len(hits) > 1 else 0]]


def _near(one: Item, chosen: list[Item], statement: Statement) -> bool:
    if statement.split and any(i.start < statement.split for i in chosen):
        return True
    return all(abs(one.first - other.first) <= REACH and one.clause == other.clause for other in chosen)


def _denied(chosen: list[Item], group: str, statement: Statement) -> bool:
    if not group:
        return False
    word = next(item for item in chosen if item.has("word", group))
    if any("denied" in i.by_kind and i.start <= word.start and word.end <= i.end for i in statement.parsed.items):
        return True  # "not insulated" and "uninsulated" are terms of their own
    last = max(chosen, key=lambda item: item.last)
    if any(cue.chunk == last.chunk and 0 <= cue.first - last.last <= 1 for cue in statement.parsed.cues("not_fitted")):
        return True  # "Insulated cab shades are not included"
    return any(
        cue.end <= word.start and 0 <= word.first - cue.last <= NEGATION_REACH and cue.chunk == word.chunk
        for cue in statement.parsed.cues("negation")
    )
