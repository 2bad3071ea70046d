"""What a statement says by merely naming it: equipment, and claims that are kept as printed."""

from __future__ import annotations

from specscan.finding.fields.absence import is_stated
from specscan.finding.fields.answers import is_answer
from specscan.finding.fields.beside import is_negated, spoken_of_another
from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.mentions import Concept
from specscan.finding.things.found import Found, How, Value, found_at
from specscan.finding.things.groups import Group, Sentence
from specscan.finding.things.items import Item
from specscan.finding.things.set_aside import asked_sentences
from specscan.finding.things.statement import Statement
from specscan.rulebook.book import Rulebook


def named_equipment(book: Rulebook, statement: Statement, sentence: Sentence) -> list[Found]:
    """Give yes for equipment that is simply named, in a list or in running text."""
    found: list[Found] = []
    asked = asked_sentences(statement.parsed, statement.split)
    for group in sentence.groups:
        if group.label:
            continue
        for item in group.items:
            if item.sentence in asked:
                continue
            found.extend(_present(book, item, group, statement, sentence))
    return found


def _present(book: Rulebook, item: Item, group: Group, statement: Statement, sentence: Sentence) -> list[Found]:
    found: list[Found] = []
    negated = is_negated(item, statement)
    if negated and not is_stated(book, item, statement):
        return found
    labelled = sentence.label_groups() and statement.how in (How.CELL, How.PAIR)
    if labelled and (negated or not (_is_whole_part(item, statement) or _is_named_again(item, statement))):
        return found
    for thing in [*item.names("thing"), *item.names("short")]:
        spec_thing = book.things.get(thing)
        says = spec_thing.says if spec_thing is not None else {}
        if says and spec_thing is not None and _is_of_another(item, {thing, *spec_thing.stands_for}, statement):
            says = {}
        for name, said in says.items():
            if said.isdecimal() and negated and not item.has("cue"):
                continue  # "gasfrei" denies by itself
            value = Value(num=float(said)) if said.isdecimal() else Value(flag=(said == "yes") != negated)
            found.append(found_at(item, name, value, "named"))
        for name in book.fields_of(thing):
            spec = book.fields[name]
            if spec.type != "flag" or not spec.presence:
                continue
            made = found_at(item, name, Value(flag=not negated), "named")
            made.rejected = spoken_of_another(name, item, statement)
            found.append(made)
    return found


def _is_whole_part(item: Item, statement: Statement) -> bool:
    """Tell whether words are a part of their own of what a label lists: "Plumbing: lines inside; bypass"."""
    parsed = statement.parsed
    start, end = parsed.chunk_span(item.chunk)
    whole = not parsed.text[start : item.start].strip(" ;,") and not parsed.text[item.end : end].strip(" .")
    told = any(statement.split <= i.start < start and (i.tells or i.quantity is not None) for i in parsed.items)
    return whole and item.depth == 0 and told


def _is_named_again(item: Item, statement: Statement) -> bool:
    """Tell whether words begin what a label has and name what it names: "Winter drain kit: bypass valves, taps"."""
    things = {*item.names("thing")}
    begins = not statement.parsed.text[statement.split : item.start].strip(" :‖")
    labels = [i for i in statement.parsed.items if i.start < statement.split]
    return begins and bool(things) and any(things & {*i.names("thing")} for i in labels)


def _is_of_another(item: Item, own: set[str], statement: Statement) -> bool:
    """Tell whether what is fitted is behind a preposition something else's: "trace heating on the waste tap"."""
    parsed = statement.parsed
    joints = [cue for cue in parsed.cues("preposition") if cue.chunk == item.chunk and cue.start >= item.end]
    behind = [i for i in parsed.items if joints and i.chunk == item.chunk and i.start >= joints[0].end]
    named = {name for i in behind for name in (*i.names("thing"), *i.names("short"))}
    return bool(named) and named.isdisjoint(own)


def claims(book: Rulebook, statement: Statement, sentence: Sentence, lexicon: Lexicon) -> list[Found]:
    """Give claims: words that are kept as printed, but for an adjective's ending: "ein wintertaugliches Modell"."""
    found: list[Found] = []
    if "value" not in statement.parsed.kinds:
        return found
    for item in statement.parsed.items:
        for concept in item.concepts:
            if concept.kind != "value" or id(item) in sentence.ignored:
                continue
            for name in book.fields_by("vocabulary").get(concept.name, ()):
                if book.fields[name].text != "matched":
                    continue
                printed = _uninflected(statement.parsed.text[item.start : item.end], concept, lexicon)
                made = found_at(item, name, Value(text=printed), "claim")
                made.rejected = "denied" if is_negated(item, statement) or _is_denied(item, statement) else ""
                made.rejected = made.rejected or spoken_of_another(name, item, statement)
                found.append(made)
    return found


def _uninflected(printed: str, concept: Concept, lexicon: Lexicon) -> str:
    """Give an adjective without the ending that it has before a noun, where it means the same without."""
    if not printed.split()[-1][:1].islower():
        return printed
    for ending in lexicon.words.adjective_endings:
        stem = printed.removesuffix(ending)
        if stem != printed and any(m.concept == concept for m in lexicon.analyse(stem).mentions):
            return stem
    return printed


def _is_denied(item: Item, statement: Statement) -> bool:
    """Tell whether what a label asks about is denied: "A four-season van: no"."""
    return item.start < statement.split and is_answer(statement.parsed, statement.split) in ("no", "unknown")
