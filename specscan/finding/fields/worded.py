"""The words of a statement → values of choices, sets and flags."""

from __future__ import annotations

from collections import defaultdict

from specscan.finding.fields.answers import is_answer, is_not_offered
from specscan.finding.fields.beside import is_negated, spoken_of_another
from specscan.finding.fields.grouper import Grouper
from specscan.finding.fields.slots import CONSUMED, DRAWN, label_aspects
from specscan.finding.fields.words_together import told_together
from specscan.finding.language.lexicon import owns
from specscan.finding.language.mentions import Concept
from specscan.finding.things.found import Found, How, Value, found_at
from specscan.finding.things.groups import Group, Sentence
from specscan.finding.things.items import TELLING, Item
from specscan.finding.things.statement import Statement
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import FieldSpec

USED_UP = {CONSUMED, DRAWN}


class WordReader:
    """Reads words, for one language."""

    def __init__(self, book: Rulebook, grouper: Grouper):
        self.book = book
        self.grouper = grouper
        self.starting: dict[str, list[str]] = defaultdict(list)  # vocabulary → fields whose words bring in their thing
        self.joined: dict[str, list[FieldSpec]] = defaultdict(list)  # vocabulary → fields that are unions of its words
        self.starters = {(tuple(spec.of), spec.vocabulary) for spec in book.fields.values() if spec.starts}
        for name, spec in book.fields.items():
            if spec.starts and spec.of:
                self.starting[spec.vocabulary].append(name)
            if spec.union:
                self.joined[spec.vocabulary].append(spec)

    def start_things(self, statement: Statement, sentence: Sentence) -> None:
        """Note the things that words bring in by themselves, for what stands in the same clause."""
        if "value" not in statement.parsed.kinds:
            return
        for item in statement.parsed.items:
            if id(item) in sentence.ignored:
                continue
            for concept in item.concepts:
                if concept.kind != "value":
                    continue
                things, group = self.grouper.binder.bind(item, sentence, statement.context)
                if self._is_lookalike(group):
                    continue  # "Starter: 80 Ah AGM"
                if group is not None and not group.label and not group.chunks[0] <= item.chunk <= group.chunks[1]:
                    things = []  # "2 x 105 Ah AGM, 160 W solar"
                started = self._started(concept, item, statement, sentence, things)
                if started and not any(owns(self.book, t, concept) for t in things):
                    sentence.started.setdefault(item.clause, started)

    def _is_lookalike(self, group: Group | None) -> bool:
        """Tell whether a label names nothing that has fields: a thing that is none of those looked for."""
        return group is not None and group.label and not any(self.book.fields_of(thing) for thing in group.things)

    def read(self, statement: Statement, sentence: Sentence) -> list[Found]:
        """Give the words of vocabularies and the yes or no that a statement holds."""
        found: list[Found] = []
        if TELLING.isdisjoint(statement.parsed.kinds):
            return found
        figured = any(i.quantity and not i.quantity.bare and i.start >= statement.split for i in statement.parsed.items)
        answer = is_answer(statement.parsed, statement.split) if statement.split else ""
        unfigured = self._lacks_figure(statement)
        for item in statement.parsed.items:
            if id(item) in sentence.ignored or (answer in ("no", "unknown") and item.start < statement.split):
                continue
            asks = unfigured or figured and item.start < statement.split and item.has("aspect")
            # "Electricity: 46 W", "Diesel burnt: not applicable" ask for the heater's figures, and name no fuel
            concepts = [c for c in item.concepts if c.kind in TELLING and not (asks and c.kind == "value")]
            concepts = [c for c in concepts if not self._is_place(c, item, statement, sentence)]
            if not concepts:
                continue
            things, group = self.grouper.binder.bind(item, sentence, statement.context)
            apart = group is not None and not group.label and not group.chunks[0] <= item.chunk <= group.chunks[1]
            if apart and told_together(self.book, item, statement):
                continue
            negated = is_negated(item, statement, group)
            named = _told_by_name(self.book, item, group, statement)
            asked = self._answered(item, statement, sentence)
            taken = any(owns(self.book, thing, concept) for thing in things for concept in concepts)
            for concept in concepts:
                targets = things
                if not any(owns(self.book, thing, concept) for thing in things):
                    if not self._is_lookalike(group):
                        targets = self._started(concept, item, statement, sentence, [] if apart else things)
                    else:
                        targets = []
                    if not (taken or self._follows_own(item, group)):
                        targets = targets or self._meant_before(concept, item, sentence)
                    targets = targets or self._asked_by_label(concept, item, things, sentence)
                    if not taken:  # "All pipes inside, lagged" under "Fresh water"
                        targets = targets or self._under_heading(concept, item, group, statement)
                        targets = targets or self._described(concept, item, things, statement, sentence)
                for thing in targets:
                    if asked and thing not in asked and not any(owns(self.book, own, concept) for own in asked):
                        continue
                    for name in owns(self.book, thing, concept):
                        if name not in named and self._fits(name, concept, item, group, sentence, thing):
                            found.extend(self._worded(name, concept, item, negated, statement, targets, sentence))
        told = {one.field for one in found if not one.from_label}
        self._reject_several_kinds(found)
        return [one for one in found if one.field not in told or not self._is_part_of_label(one, statement)]

    @staticmethod
    def _lacks_figure(statement: Statement) -> bool:
        """Tell whether a label asks how much a thing uses up, and what stands beside it is no figure but a mark."""
        split, items = statement.split, statement.parsed.items
        if statement.how is How.MARKED:
            split = len(statement.parsed.text)
        elif not split or not is_not_offered(statement.parsed, split):
            return False
        asked = {name for item in items if item.start < split for name in item.names("aspect")}
        return bool(asked & USED_UP) and not any(item.quantity for item in items)

    def _reject_several_kinds(self, found: list[Found]) -> None:
        """Set kinds aside that only a label names, and another with it: "Portable / cassette tank"."""
        fields = self.book.fields
        own = [one for one in found if one.from_label and fields[one.field].type == "choice" and one.item is not None]
        own = [one for one in own if one.value.text != fields[one.field].yes]  # "warmed" beside "heater air"
        several = {
            one.field for one in own for other in own
            if one.field == other.field and one.value != other.value and one.end <= other.start
        }  # fmt: skip
        for one in own:
            if one.field in several:
                one.rejected = one.rejected or "its label names several kinds"

    def _is_part_of_label(self, found: Found, statement: Statement) -> bool:
        """Tell whether a word is only the name for what its label asks, or a part of it: "type de traction : 4x4".

        "Furnace: diesel hydronic" says of what kind the furnace is.
        """
        item = found.item
        if not found.from_label or item is None:
            return False
        kind = self.book.fields[found.field].type == "choice"
        over = [i for i in statement.parsed.items if i.start <= item.start and item.end <= i.end]
        if kind and item.has("aspect"):
            return True  # "Gray tank heater: warm-air duct"
        named = [i for i in over if set(i.names("thing")) & set(found.things)]
        return any(kind or i.end - i.start > item.end - item.start for i in named)

    def _asked_by_label(self, concept: Concept, item: Item, things: list[str], sentence: Sentence) -> list[str]:
        """Give the things of the label, where a word answers it and the thing named beside the word cannot have it.

        "Gray tank warming: warm air from the heater" says nothing of the heater.
        """
        if item.start < sentence.split or not all(self.book.fields_of(thing) for thing in things):
            return []
        if self._names_own(item, sentence):
            return []
        asked = {t for g in sentence.label_groups() for t in g.things if owns(self.book, t, concept)}
        return [thing for group in sentence.label_groups() for thing in group.things if thing in asked]

    def _names_own(self, item: Item, sentence: Sentence) -> bool:
        """Tell whether a clause behind the first names a thing of its own: "Lines: inside; valve in a heated box"."""
        groups = [g for g in sentence.groups if not g.label and g.clause == item.clause]
        first = next((i.clause for i in sentence.parsed.items if i.start >= sentence.split), item.clause)
        return first < item.clause and any(any(map(self.book.fields_of, g.things)) for g in groups)

    def _answered(self, item: Item, statement: Statement, sentence: Sentence) -> set[str]:
        """Give the things of the label that words answer, which then say nothing of another thing named beside them.

        "Drain valve: with electric heater", "Tank warming: warm air from the heater" name no kind of heater.
        """
        body = [i for i in statement.parsed.items if i.start >= sentence.split]
        if not sentence.split or item not in body or any(i.sentence != item.sentence for i in body):
            return set()
        if self._names_own(item, sentence):
            return set()
        over = [i for i in body if i.start < item.end and item.start < i.end]
        concepts = [concept for i in over for concept in i.concepts if concept.kind == "value"]
        things = {thing for group in sentence.label_groups() for thing in group.things}
        return {thing for thing in things if any(owns(self.book, thing, concept) for concept in concepts)}

    def _follows_own(self, item: Item, group: Group | None) -> bool:
        """Tell whether a word goes on about a thing before it: "It leaves its dump valve exposed below the frame"."""
        if group is None or group.label or group.end > item.start or group.chunks[1] != item.chunk:
            return False
        return all(self.book.fields_of(thing) for thing in group.things)

    def _meant_before(self, concept: Concept, item: Item, sentence: Sentence) -> list[str]:
        """Give the things that a pronoun means, where they can have a word and the thing named beside it cannot."""
        meant = self.grouper.binder.meant_by_pronoun(item, sentence)
        return [t for t in meant.things if owns(self.book, t, concept)] if meant is not None else []

    def _under_heading(self, concept: Concept, item: Item, group: Group | None, statement: Statement) -> list[str]:
        """Give the thing of the heading, for a word in a part of a list that names nothing: "Diesel 2.2 L, RWD"."""
        apart = group is not None and not group.chunks[0] <= item.chunk <= group.chunks[1]
        figure = any(i.quantity is not None and i.start <= item.start < i.end for i in statement.parsed.items)
        if statement.how is not How.LIST or not apart or figure:  # "15 A inlet, 240 V" heats nothing
            return []
        return [thing for thing in statement.context.things if owns(self.book, thing, concept)][:1]

    def _described(
        self, concept: Concept, item: Item, things: list[str], statement: Statement, sentence: Sentence
    ) -> list[str]:
        """Give the one thing of a list's item that a word can describe, if the thing nearest to it cannot have it, or
        those that go together behind "both".

        "Combination heater (air and hot water), propane": hot water burns nothing.
        """
        if not things or not all(self.book.fields_of(thing) for thing in things):
            return []
        groups = [group for group in sentence.groups if not group.label and group.clause == item.clause]
        inner = all(group.items[0].depth > item.depth for group in groups if set(group.things) & set(things))
        one_name = any(group.items[0].first == item.last for group in groups)  # "LP gas furnace"
        if statement.how is How.PROSE and not (inner or one_name):
            return []
        owning = [[t for t in group.things if owns(self.book, t, concept)] for group in groups]
        owners = {thing for things in owning for thing in things}
        before = [i for i in statement.parsed.cues("two_vans") if i.chunk == item.chunk and i.end <= item.start]
        together = len(owners) > 1 and before and sum(map(bool, owning)) == 1  # "two tanks, both with a glycol loop"
        return list(owners) if len(owners) == 1 or together else []

    def _fits(
        self, name: str, concept: Concept, item: Item, group: Group | None, sentence: Sentence, thing: str
    ) -> bool:
        """Tell whether the label leaves room for the field: "tank heating" does not ask for a place."""
        spec = self.book.fields[name]
        asked = label_aspects(self.book, sentence, thing)
        if item.start < sentence.split:
            return True
        if not asked or spec.aspect in asked or not spec.aspect:
            return True
        if group is not None and not group.label:
            return True
        rivals = [
            other for other in item.concepts
            for field_name in owns(self.book, thing, other) if self.book.fields[field_name].aspect in asked
        ]  # fmt: skip
        return not rivals or concept.value in spec.weak

    def _started(
        self, concept: Concept, item: Item, statement: Statement, sentence: Sentence, things: list[str]
    ) -> list[str]:
        """Give the thing that a word may bring in by itself, as a foam brings in the insulation."""
        names = self.starting.get(concept.name, [])
        if not names or concept.kind != "value":
            return self._started_by_others(concept, item, statement, sentence)
        spec = self.book.fields[names[0]]
        busy = [t for t in things if t not in statement.context.things and self.book.fields_of(t)]
        if busy and not self._backed(item, spec, statement, surfaces_only=True):
            return []
        return [spec.of[0]] if self._backed(item, spec, statement) else []

    def _started_by_others(self, concept: Concept, item: Item, statement: Statement, sentence: Sentence) -> list[str]:
        """Let a surface follow the material that stands in the same clause."""
        if concept.kind != "value":
            return []
        for spec in self.joined.get(concept.name, []):
            for other in statement.parsed.items:
                if not _together(item, other, spec.vocabulary, statement) or id(other) in sentence.ignored:
                    continue
                if any(self._doubtful(c, item) for c in other.concepts):
                    continue
                if any(c.kind == "value" and (tuple(spec.of), c.name) in self.starters for c in other.concepts):
                    return list(spec.of[:1])
        return []

    def _is_place(self, concept: Concept, item: Item, statement: Statement, sentence: Sentence) -> bool:
        """Tell whether a word is where a tank is and no surface, as it is beside a material: "cork under the floor"."""
        if concept.kind != "value" or concept.name not in self.joined:
            return False
        other = any(c.kind == "value" and c.name != concept.name for c in item.concepts)
        return other and not self._started_by_others(concept, item, statement, sentence)

    def _backed(self, item: Item, spec: FieldSpec, statement: Statement, *, surfaces_only: bool = False) -> bool:
        siblings = [s for s in self.book.fields.values() if s.of == spec.of]
        vocabularies = {s.vocabulary for s in siblings if s.union}
        doubtful = any(self._doubtful(c, other) for c in item.concepts for other in statement.parsed.items)
        for other in statement.parsed.items:
            if not any(_together(other, item, vocabulary, statement) for vocabulary in vocabularies or {""}):
                continue
            if any(c.kind == "value" and c.name in vocabularies for c in other.concepts) and not doubtful:
                return True
            if surfaces_only or other.quantity is None:
                continue
            for sibling in siblings:
                if sibling.dimension == other.quantity.dimension and sibling.range is not None:
                    low, high = sibling.range
                    gap = min(abs(other.first - item.last), abs(item.first - other.last))
                    if low <= other.quantity.high <= high and gap <= 4:
                        return True
        return not surfaces_only and any(thing in spec.of for thing in statement.context.things)

    def _doubtful(self, concept: Concept, surface: Item) -> bool:
        """Tell whether a material may be that of a surface itself, and not of what insulates it: a floor of cork."""
        named = {c.value for c in surface.concepts if c.kind == "value"}
        specs = [self.book.fields[name] for name in self.starting.get(concept.name, [])]
        return any(concept.value in spec.doubtful_with.get(value, []) for spec in specs for value in named)

    def _worded(
        self,
        name: str,
        concept: Concept,
        item: Item,
        negated: bool,
        statement: Statement,
        things: list[str],
        sentence: Sentence,
    ) -> list[Found]:
        spec = self.book.fields[name]
        found = found_at(item, name, Value(), concept.value or concept.kind, things)
        found.from_label = item.start < statement.split
        if found.from_label and spec.from_label and _denies(statement):
            return []  # "Floor: not insulated" below "Wall insulation: 20 mm"
        if spec.type == "flag":
            found.value = Value(flag=concept.kind == "term" and not negated)  # "n'est pas chauffée" denies once
            if found.value.flag and statement.how is How.PROSE and self._hypothetical(item, statement):
                return []
            return [found]
        word = spec.rename.get(concept.value, concept.value)
        if spec.choices and word not in spec.choices:
            return []
        if negated:
            if spec.none and concept.value in spec.weak:
                word = spec.none
            elif spec.none and spec.type == "choice" and concept.name == "tank_heating":
                word = spec.none
            else:
                return []
        found.value = Value(text=word)
        found.weak = (concept.value in spec.weak and not negated) or (
            spec.from_label == "weak" and (found.from_label or statement.how is How.PROSE)
        )
        if statement.how is How.PROSE and self._names_thing(item, things, statement):
            found.weak = True
        found.rejected = spoken_of_another(name, item, statement)
        return [found]

    def _names_thing(self, item: Item, things: list[str], statement: Statement) -> bool:
        """Tell whether a word is only part of the name of the thing spoken of: "the hydronic heater"."""
        over = [i for i in statement.parsed.items if i.start <= item.start and item.end <= i.end]
        named = {
            t for i in over for t in (*i.names("thing"), *(o for n in i.names("alone") for o in self.book.fields[n].of))
        }
        return bool(named & set(things))

    @staticmethod
    def _hypothetical(item: Item, statement: Statement) -> bool:
        text = statement.parsed.text
        end = next((i for i in range(item.end, len(text)) if text[i] in ".!?"), len(text))
        return text[end : end + 1] == "?"


def _together(surface: Item, other: Item, vocabulary: str, statement: Statement) -> bool:
    """Tell whether a word stands in the clause of another, or answers a label that names only surfaces."""
    if surface.clause == other.clause:
        return True
    split = statement.split
    if not surface.start < split <= other.start:
        return False
    places = {
        n for i in statement.parsed.items if i.start < split
        if i.has("cue", "coordination") or any(c.kind == "value" and c.name == vocabulary for c in i.concepts)
        for n in range(i.first, i.last)
    }  # fmt: skip
    tokens = [(n, t) for n, t in enumerate(statement.parsed.analysis.tokens) if t.start < split and t.norm.isalpha()]
    return bool(places) and all(n in places for n, _ in tokens)


def _told_by_name(book: Rulebook, item: Item, group: Group | None, statement: Statement) -> set[str]:
    """Give the fields that the name of a thing tells by itself in running text: "front-wheel drive" and a rear bed."""
    if statement.how is not How.PROSE or group is None:
        return set()
    if any(name.start <= item.start < name.end for name in group.items):
        return set()
    told: set[str] = set()
    for name in group.items:
        over = [i for i in statement.parsed.items if name.start <= i.start < name.end]
        vocabularies = {c.name for i in over for c in i.concepts if c.kind == "value"}
        specs = {field: book.fields[field] for field in name.names("alone")}
        told |= {field for field, spec in specs.items() if spec.vocabulary in vocabularies and not spec.union}
    return told


def _denies(statement: Statement) -> bool:
    """Tell whether what answers a label denies that something is so, whatever the thing: "not insulated"."""
    return any("denied" in item.by_kind for item in statement.parsed.items if item.start >= statement.split)
