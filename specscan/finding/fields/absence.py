"""Things said to be absent: "no black tank", "without inverter"; a thing denied of something else is not absent."""

from __future__ import annotations

import re

from specscan.finding.things.denied_of_vans import is_of_vans
from specscan.finding.things.found import How
from specscan.finding.things.items import Item, Parsed
from specscan.finding.things.statement import Statement
from specscan.rulebook.book import Rulebook

LETTERS = str.isalpha
NAMING = ("thing", "short", "alone", "aspect")


def denying_cues(book: Rulebook, item: Item, statement: Statement) -> list[Item]:
    """Give the words by which a statement says that a thing is absent: "no" of "no black tank on board".

    "No inverter noise", "no better solar", "needs no propane", "Without shore power the fridge runs on gas" say nothing
    of it.
    """
    parsed = statement.parsed
    definite = book.cue_words("definite")
    cues = [
        cue for cue in parsed.cues("none", "negation")
        if cue.end <= item.start and cue.chunk == item.chunk and _denies(cue, item, parsed, book)
        and cue.start >= (statement.split if statement.split <= item.start else 0)
    ]  # fmt: skip
    said = [cue for cue in cues if _is_whole(item, parsed) and not _is_condition(cue, item, statement, definite)]
    return said or ([cue for cue in parsed.cues("not_there") if _is_all_said(cue, item, parsed)])


def _is_all_said(cue: Item, item: Item, parsed: Parsed) -> bool:
    """Tell whether a sentence says no more than that a thing is not there: "Einen Wechselrichter gibt es nicht"."""
    if cue.first != item.last or cue.sentence != item.sentence:
        return False
    start = next(bound[0] for bound in parsed.bounds if bound[3] == item.sentence)
    end = next((bound[0] for bound in parsed.bounds if bound[3] > item.sentence), len(parsed.text))
    end = next((place for place in [parsed.text.find(";", cue.end, end)] if place >= 0), end)
    vans = [i for i in parsed.items if i.vans and cue.end <= i.start < end]
    if vans and any(vans[0].start > i.start >= cue.end for i in parsed.cues("neither")):
        end = next(i.start for i in parsed.cues("neither") if i.start >= cue.end)  # ", weder im A noch im B"
    ahead = re.findall(r"[^\W\d_]+", parsed.text[start : item.start])
    opens = len(ahead) <= 1 and not re.search(r"\d", parsed.text[start:end])  # "Einen Wechselrichter"
    return opens and not any(map(LETTERS, parsed.text[cue.end : end]))


def _denies(cue: Item, item: Item, parsed: Parsed, book: Rulebook) -> bool:
    """Tell whether a negation belongs to a thing and not to what is done to it: "does not heat the tank"."""
    gap = item.first - cue.last
    if parsed.text[cue.start : cue.end].casefold() in book.cue_words("answer_only"):
        return False  # "Chauffage du réservoir non eau propre": an answer amid a label of two lines
    if is_of_vans(cue, item, parsed, book):
        return True
    definite = book.cue_words("definite")
    if set(parsed.text[cue.end : item.start].casefold().split()) & definite:
        return False  # "ne chauffe pas la cuve" denies the heating, "pas de cuve" the tank
    if gap == 1 and cue.has("cue", "denies_thing"):
        between = [i for i in parsed.items if cue.end <= i.start and i.end <= item.start]
        return not between  # not "no heated tank", "no second tank", "no better tank"
    return gap == 0


def _is_whole(item: Item, parsed: Parsed) -> bool:
    """Tell whether what stands behind a thing leaves it as it is: a sign, the end, or words such as "on board"."""
    tokens = parsed.analysis.tokens
    behind = tokens[item.last] if item.last < len(tokens) else None
    if behind is None or not any(map(LETTERS, behind.norm)):
        return True
    near = [i for i in parsed.items if i.first == item.last]
    if any(i.has("cue", "comparing") for i in near):
        return False
    return any((i.vans or i.has("cue", "behind_absent", "coordination", "yes", "not_so")) for i in near)


def _is_condition(cue: Item, item: Item, statement: Statement, definite: frozenset[str]) -> bool:
    """Tell whether a thing is denied only of a case or of something else that does not need it."""
    parsed = statement.parsed
    if any(i.last == cue.first for i in parsed.cues("needs")):
        return True
    if cue.has("cue", "neither") and any(
        i.tells and i.clause == item.clause and i.start > item.start for i in parsed.items
    ):
        return True  # "neither tank is heated"
    end = next((bound[0] for bound in parsed.bounds if bound[3] > item.sentence), len(parsed.text))
    behind = parsed.text[item.end : end]
    if not cue.has("cue", "lacking") or not parsed.opens_sentence(cue) or not any(map(LETTERS, behind)):
        return False
    told = behind.strip().startswith(",") and behind.casefold().strip(", ").split()[0] in definite
    return statement.how is How.PROSE or told  # "Without shore power, the fridge runs on gas"


def is_stated(book: Rulebook, item: Item, statement: Statement) -> bool:
    """Tell whether a denial ahead of a thing says that the thing is absent, or whether none stands ahead of it."""
    before = [c for c in statement.parsed.cues("negation") if c.end <= item.start and c.chunk == item.chunk]
    return not before or bool(denying_cues(book, item, statement))


def is_of_label(book: Rulebook, parsed: Parsed, split: int, *, head_last: bool) -> bool:
    """Tell whether what is denied of a label is denied of what it names: "Gray tank heater control" is a control.

    The word that says what a thing is stands last in English and German, first in French.
    """
    if any(cue.start < split for cue in parsed.cues("addition")):
        return False  # that there is no second battery says nothing of the first
    tokens = parsed.analysis.tokens
    ends = [c.start for c in parsed.cues("preposition") if c.start < split and not _inside(c, parsed)]
    end = min((place for place in ends if head_last), default=split)
    words = [
        place for place, token in enumerate(tokens)
        if token.start < end and any(map(LETTERS, token.norm)) and parsed.item_at(token.start, token.end).depth == 0
    ]  # fmt: skip
    named = [i for i in parsed.items if i.start < end and i.depth == 0 and (i.tells or any(map(i.has, NAMING)))]
    if not words or not named:
        return True
    last = max(named, key=lambda item: item.last)
    if book.is_unit(parsed.text[last.end : split]):
        words = [place for place in words if tokens[place].start < last.end]
    beside = last.last if head_last or not words else words[0]
    asked = [i for i in named if i.tells or any(t in book.things and book.things[t].aspect for t in i.names("thing"))]
    heads = {n for n in (*range(last.first, last.last), beside) if n in words}
    heads -= {n for i in asked for n in range(i.first, i.last)}  # "Heating cable: none" asks for the cable
    spoken = {parsed.text[tokens[n].start : tokens[n].end].casefold() for n in heads} | {tokens[n].norm for n in heads}
    if book.cue_words("accessory") & spoken:
        return False  # "Mains lead: none" says nothing of the inlet
    if beside not in words or (head_last and parsed.text[last.end : tokens[beside].start].strip()):
        return True  # "Thermische Trennung der Holme": what an article joins only says whose it is
    return any(item.first <= beside < item.last or _within(tokens[beside].start, item) for item in parsed.items)


def _inside(cue: Item, parsed: Parsed) -> bool:
    """Tell whether a cue is part of a longer term: the "in" of "in-floor heating"."""
    return any(
        i is not cue and i.first <= cue.first and cue.last <= i.last and i.last - i.first > 1 for i in parsed.items
    )


def _within(place: int, item: Item) -> bool:
    return item.quantity is not None and item.start <= place < item.end
