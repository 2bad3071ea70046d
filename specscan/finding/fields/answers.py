"""Labels answered by yes, no, none, standard or option: what the answer means for the field asked."""

from __future__ import annotations

import re

from specscan.finding.fields.absence import denying_cues, is_of_label
from specscan.finding.language.lexicon import owns
from specscan.finding.things.found import Found, How, Value, found_at
from specscan.finding.things.groups import Group, Sentence
from specscan.finding.things.items import Item, Parsed
from specscan.finding.things.statement import Statement
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import FieldSpec

BRACKETED = re.compile(r"[(\[][^)\]]{1,8}[)\]]")
_COUNTED = re.compile(r"\w+,")
POSITIVE = ("yes", "standard", "optional", "not_available", "if_equipped")
NEGATIVE = ("no", "none", "not_fitted")


def is_answer(parsed: Parsed, split: int) -> str:
    """Give ``yes``, ``no`` or ``unknown`` where the body of a statement begins with such an answer, else ''."""
    body = [item for item in parsed.items if item.start >= split]
    lead = _lead(parsed, split)
    if lead is None:
        return ""
    if lead.has("cue", "unknown") and not any(i.quantity or i.tells for i in body):
        return "unknown"
    if lead.has("cue", "not_available", "optional", "standard", "if_equipped", "yes"):
        return "yes"
    if lead.has("cue", *NEGATIVE):
        return "no"
    return ""


def is_not_offered(parsed: Parsed, split: int) -> bool:
    """Tell whether the body of a statement begins with words by which what the label names is not to be had."""
    lead = _lead(parsed, split)
    return lead is not None and lead.has("cue", "not_available")


def _lead(parsed: Parsed, split: int) -> Item | None:
    """Give the cue with which the body begins, or that follows how many there are: "two, fitted"."""
    words = [token for token in parsed.analysis.tokens if token.start >= split]
    cues = [item for item in parsed.items if item.start >= split and item.has("cue", *POSITIVE, *NEGATIVE, "unknown")]
    if not words or not cues:
        return None
    plain = [token for token in words if token.norm not in (":", "‖", "-", ",")]
    counted = {i.start for i in parsed.items if i.quantity is not None and i.quantity.bare}
    if len(plain) > 1 and plain[0].start in counted and _COUNTED.match(parsed.text, plain[0].start):
        plain = plain[1:]
    if not plain:
        return None
    first = plain[0]
    lead = [cue for cue in cues if cue.start == first.start]
    return max(lead, key=lambda cue: cue.end) if lead else None


def answer_fields(book: Rulebook, statement: Statement, sentence: Sentence, *, head_last: bool) -> list[Found]:
    """Give the values of a label that is answered by yes, no, none or an availability.

    ``head_last``: the last word of a label says what it names, as in English; else the first, as in French.
    """
    found = _denials(book, statement, sentence)
    labels = sentence.label_groups()
    if not labels:
        return found
    parsed = statement.parsed
    answer = is_answer(parsed, statement.split)
    if answer in ("", "unknown") or (
        answer == "no" and not is_of_label(book, parsed, statement.split, head_last=head_last)
    ):
        return found
    lead = _lead(parsed, statement.split)
    assert lead is not None
    things = list(dict.fromkeys(thing for group in labels for thing in group.things))
    asked = {name for item in parsed.items if item.start < statement.split for name in item.names("aspect")}
    told = [i for i in parsed.items if i.start >= statement.split and (i.tells or i.quantity is not None)]
    plain = is_plain(book, parsed, statement.split, things) or _denies_kind(book, lead, parsed)
    for thing in things:
        if answer == "no" and _is_modifier(thing, labels):
            continue  # "Gray tank heating unit: none" says nothing of the tank's being there
        for name in _asked_fields(book, thing, asked, labels[0].items, statement):
            spec = book.fields[name]
            value = _answered(spec, answer)
            if value is None or (answer == "yes" and told and spec.type != "flag"):
                continue
            if answer == "yes" and spec.yes and _names_kind(spec, parsed, statement.split):
                continue
            if (
                answer == "no"
                and spec.type == "choice"
                and not spec.aspect
                and _names_kind(spec, parsed, statement.split)
            ):
                continue  # "Toilet cassette: none" denies this kind alone
            if answer == "no" and _goes_on(book, lead, told, things):
                continue
            if answer == "no" and spec.type != "flag" and not spec_aspects(book, name) & asked and not plain:
                continue  # "Waste tank jacketing: no" says nothing of the tank's being there
            found.append(found_at(lead, name, value, "answer", [thing]))
    return found


def _is_modifier(thing: str, labels: list[Group]) -> bool:
    """Tell whether a thing only says of what another is that is named right behind it."""
    items = [item for group in labels for item in group.items]
    own = [item for item in items if thing in (*item.names("thing"), *item.names("short"))]
    return bool(own) and any(
        other.first == item.last and thing not in other.names("thing") for item in own for other in items
    )


def _denies_kind(book: Rulebook, lead: Item, parsed: Parsed) -> bool:
    """Tell whether an answer says that such a thing is not there, whatever else the label says: "none (no tank)"."""
    named = [t for i in parsed.items if i.first == lead.last and i.chunk == lead.chunk for t in i.names("thing")]
    return any(book.things[t].aspect == "capacity" and not book.things[t].stands_for for t in named if t in book.things)


def _names_kind(spec: FieldSpec, parsed: Parsed, split: int) -> bool:
    """Tell whether a label says itself of which kind a thing is, so that "yes" adds nothing: "12 V pad: yes"."""
    kinds = (c for i in parsed.items if i.start < split for c in i.concepts if c.kind == "value")
    return any(c.name == spec.vocabulary and c.value not in ("none", spec.yes) for c in kinds)


def spec_aspects(book: Rulebook, name: str) -> set[str]:
    """Give the aspect of a field that a label may name, capacity apart, which the bare thing has too."""
    return {book.fields[name].aspect} - {"", "capacity"}


def is_plain(book: Rulebook, parsed: Parsed, split: int, things: list[str]) -> bool:
    """Tell whether a label says no more than what it names: "Black tank flush" asks for something else."""
    known = [
        i for i in parsed.items
        if i.start < split and (i.quantity is not None or i.has("cue") or _names(book, i, things))
    ]  # fmt: skip
    words = [(n, t) for n, t in enumerate(parsed.analysis.tokens) if t.start < split and t.norm.isalpha()]
    label = parsed.text[:split]
    end = max((i.end for i in parsed.items if i.end <= split and _names(book, i, things)), default=0)
    if book.is_unit(label[end:]):
        words = [(place, word) for place, word in words if word.start < end]
    aside = [match.span() for match in BRACKETED.finditer(label)]  # a unit, as in "LP (lb)"
    return all(
        any(i.first <= place < i.last or i.quantity is not None and i.start <= word.start < i.end for i in known)
        or any(a <= word.start < b for a, b in aside)
        for place, word in words
    )


def _names(book: Rulebook, item: Item, things: list[str]) -> bool:
    named = {t for t in (*item.names("thing"), *item.names("short")) if book.fields_of(t) or book.things[t].stands_for}
    return bool(named) or item.has("alone") or item.has("aspect", "capacity")


def _goes_on(book: Rulebook, lead: Item, told: list[Item], things: list[str]) -> bool:
    """Tell whether "no" or "not" belongs to a word right behind it that the things asked for can have: "not heated"."""
    return any(
        item.chunk == lead.chunk and 0 <= item.first - lead.last <= 2
        and (item.quantity is not None or any(owns(book, thing, c) for thing in things for c in item.concepts))
        for item in told
    )  # fmt: skip


def _asked_fields(book: Rulebook, thing: str, asked: set[str], items: list[Item], statement: Statement) -> list[str]:
    names = book.fields_of(thing)
    named = [[book.things[t] for t in item.names("thing") if t in book.things] for item in items]
    own = {spec.aspect for specs in named for spec in specs if spec.aspect and not (spec.among and len(specs) > 1)}
    wanted = (asked | own) & {book.fields[n].aspect for n in names}
    if wanted:
        return [n for n in names if book.fields[n].aspect in wanted]
    return [
        n
        for n in names
        if book.fields[n].presence
        or book.fields[n].none in ("0", "none")
        and not book.fields[n].aspect
        or book.fields[n].aspect == "capacity"
    ]


def _answered(spec: FieldSpec, answer: str) -> Value | None:
    if spec.type == "flag":
        return Value(flag=answer == "yes")
    if answer == "yes":
        return Value(text=spec.yes) if spec.yes else None
    if not spec.none:
        return None
    if spec.type in ("number", "integer"):
        return Value(num=float(spec.none))
    return Value(text=spec.none)


def _denials(book: Rulebook, statement: Statement, sentence: Sentence) -> list[Found]:
    """Give the stated absence of a thing: "no black tank", "without inverter", "none on board"."""
    found: list[Found] = []
    for group in sentence.groups:
        if group.label:
            continue
        for item in group.items:
            cues = denying_cues(book, item, statement)
            if not cues or statement.how is How.HEADING:
                continue
            for thing in [*item.names("thing"), *item.names("short")]:
                for name in book.fields_of(thing):
                    spec = book.fields[name]
                    value = _answered(spec, "no")
                    if spec.tells_absence and value is not None:
                        made = found_at(item, name, value, "absent", [thing])
                        made.start = cues[0].start
                        found.append(made)
    return found
