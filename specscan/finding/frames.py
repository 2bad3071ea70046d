"""One statement → the values it gives for the things it speaks of."""

from __future__ import annotations

from dataclasses import dataclass, field

from specscan.finding.answers import answer_fields, is_answer
from specscan.finding.battery import bank_values
from specscan.finding.found import Found, How, Value
from specscan.finding.groups import Group, Grouper, Sentence, owns
from specscan.finding.items import Item, Parsed
from specscan.finding.lexicon import Concept, Lexicon
from specscan.finding.quantities import Quantity
from specscan.finding.words_together import together_fields
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import FieldSpec

NEGATION_REACH = 3
DISTANT_REACH = 5  # folded words between a value and a word that takes it to itself
JOINED_BY = "‖"


@dataclass(slots=True)
class Statement:
    """A label and what stands with it, or a free piece of text, parsed as one text.

    ``split`` is where the label ends (0 without one); ``context`` the things that the heading or the
    line above speaks of; ``answer`` tells that the body says only yes, no, none or available.
    """

    parsed: Parsed
    split: int
    how: How
    context: list[str] = field(default_factory=list)
    note: Parsed | None = None


class FrameReader:
    """Reads statements of documents of one language."""

    def __init__(self, book: Rulebook, lexicon: Lexicon):
        self.book = book
        self.lexicon = lexicon
        self.grouper = Grouper(book, lexicon)

    def read(self, statement: Statement) -> list[Found]:
        """Give the values that a statement holds, candidates set aside included."""
        sentence = self.grouper.form(
            statement.parsed, statement.split, statement.context,
            running=statement.how in (How.PROSE, How.HEADING), noted=statement.how is How.NOTE,
        )  # fmt: skip
        if any(item.has("word", "covers") for item in statement.parsed.items):
            statement.context = []  # a line about window covers does not go on about what the heading names
        self._start_things(statement, sentence)
        found = self._quantities(statement, sentence)
        found += self._values(statement, sentence)
        found += self._presence(statement, sentence)
        found += answer_fields(self.book, statement, sentence)
        found += together_fields(self.book, statement, sentence)
        found += self._texts(statement, sentence)
        found += bank_values(self.book, statement.parsed, found)
        return self._cleaned(found, statement)

    # quantities

    def _quantities(self, statement: Statement, sentence: Sentence) -> list[Found]:
        found: list[Found] = []
        for item in statement.parsed.items:
            quantity = item.quantity
            if quantity is None or id(item) in sentence.ignored:
                continue
            things, group = self.grouper.bind(item, sentence, statement.context)
            things = self._of_chain(item, things, sentence)
            things = self._of_member(item, things, group, sentence)
            placed = False
            for thing in things:
                name = self._slot(quantity, item, thing, group, statement, sentence)
                if name is not None:
                    found.append(self._number(name, item, quantity, statement, things))
                    placed = True
            if not placed and all(self.book.fields_of(thing) for thing in things):
                for thing in self._of_aspect(item, sentence, statement):
                    name = self._slot(quantity, item, thing, None, statement, sentence)
                    if name is not None and not placed:
                        found.append(self._number(name, item, quantity, statement, [thing]))
                        placed = True
            if not placed and (name := self._only_field(quantity, statement, sentence)) is not None:
                found.append(self._number(name, item, quantity, statement, list(self.book.fields[name].of)))
        return self._one_each(found, statement)

    def _of_aspect(self, item: Item, sentence: Sentence, statement: Statement) -> list[str]:
        """Give the thing whose aspect is named with a figure: "it draws 38 W from the battery" says it of a heater."""
        aspects = [i for i in sentence.parsed.items if i.has("aspect") and i.chunk == item.chunk]
        return self.grouper.aspect_things(aspects, statement.context) if aspects else []

    def _of_chain(self, item: Item, things: list[str], sentence: Sentence) -> list[str]:
        """Give of several things in a label the one whose place the quantity has in its own row.

        "Length / width: 5.41 m / 2.05 m" has two of each: first to first, second to second.
        """
        labels = sentence.label_groups()
        if not labels or item.start < sentence.split:
            return things
        ordered = list(dict.fromkeys(thing for group in labels for thing in group.things))
        absorbed = {t for thing in ordered for t in self._absorbs(thing)}
        ordered = [thing for thing in ordered if thing not in absorbed]
        things = [thing for thing in things if thing not in absorbed]
        if len(ordered) < 2 or set(things) != set(ordered):
            return things
        body = [i for i in sentence.parsed.items if i.quantity is not None and i.start >= sentence.split]
        # One figure for several things is nobody's: it may be a sum.
        return [ordered[body.index(item)]] if len(body) == len(ordered) else []

    def _absorbs(self, thing: str) -> list[str]:
        spec = self.book.things.get(thing)
        return list(spec.absorbs) if spec is not None else []

    def _of_member(self, item: Item, things: list[str], group: Group | None, sentence: Sentence) -> list[str]:
        """Give the member of a group that a quantity stands next to: "26 gal gray and 14 gal black tank"."""
        if group is None or len(group.items) < 2 or group.label:
            return things
        figures = [
            i for i in sentence.parsed.items
            if i.quantity is not None and i.clause == group.clause and i.quantity.dimension == item.quantity.dimension  # type: ignore[union-attr]
            and (group.start - 40 <= i.start <= group.end + 40)
        ]  # fmt: skip
        if len(figures) < 2:
            return things
        leads = figures[0].start < group.items[0].start

        def distance(member: Item) -> tuple[float, bool]:
            ahead = member.start >= item.end
            between = (
                sentence.parsed.between(item.end, member.start)
                if ahead
                else sentence.parsed.between(member.end, item.start)
            )
            joints = sum(word in self.grouper.coordination for word in between)
            return len(between) + 5 * joints, ahead != leads

        member = min(group.items, key=distance)
        own = [*member.names("thing"), *member.names("short"), *member.names("beside")]
        return [thing for thing in things if thing in own] or things

    def _slot(
        self, quantity: Quantity, item: Item, thing: str, group: Group | None, statement: Statement, sentence: Sentence
    ) -> str | None:
        fields = [
            n for n in self.book.fields_of(thing) if self._measures(self.book.fields[n], quantity, item, sentence)
        ]
        if not fields:
            return None
        aspects = self._aspects(item, group, statement, sentence)
        named = [n for n in fields if self.book.fields[n].aspect in aspects]
        own = any(_basis_names(i) and i.chunk == item.chunk for i in sentence.parsed.items)
        if (
            statement.note
            and _bases(statement.note.items)
            and not own
            and any(self.book.fields[n].basis for n in named)
        ):
            return self._by_basis(quantity, fields, statement, item, noted=True)  # a note goes before the label
        if named:
            return self._by_nearest_aspect(item, named, sentence)
        if any(self.book.fields[n].basis for n in fields):
            return self._by_basis(quantity, fields, statement, item)
        label_aspects = self._label_aspects(sentence, thing)
        if label_aspects and not item.start < sentence.split:
            others = {self.book.fields[n].aspect for n in self.book.fields_of(thing)}
            if label_aspects & others and not any(self.book.fields[n].aspect in ("", "capacity") for n in fields):
                return None
        return fields[0]

    def _only_field(self, quantity: Quantity, statement: Statement, sentence: Sentence) -> str | None:
        """Give the one field that has such a quantity, if the heading speaks of its thing: "Fuel: 0.16 gal/h"."""
        names = [n for n, s in self.book.fields.items() if s.dimension == quantity.dimension]
        labels = sentence.label_groups()
        if len(names) != 1 or not labels or not all(self.book.fields_of(t) for g in labels for t in g.things):
            return None
        return names[0] if set(self.book.fields[names[0]].of) & set(statement.context) else None

    def _measures(self, spec: FieldSpec, quantity: Quantity, item: Item, sentence: Sentence) -> bool:
        if spec.type == "number":
            return spec.dimension == quantity.dimension
        if spec.type == "integer" and spec.number == "count":
            return self._counts(quantity, item, sentence)
        return False

    def _counts(self, quantity: Quantity, item: Item, sentence: Sentence) -> bool:
        """Tell whether a bare figure counts berths: it is small, whole, and next to the word."""
        if quantity.dimension == "count" and not quantity.bare:
            return quantity.printed_unit in ("people", "persons")
        if not quantity.bare or quantity.high != int(quantity.high) or not 0 <= quantity.high <= 9:
            return False
        if sentence.label_groups() and item.start >= sentence.split:
            return True
        near = [
            i for g in sentence.groups if g.clause == item.clause for i in g.items
            if any(self.book.fields[f].number == "count" for t in i.names("thing") for f in self.book.fields_of(t))
            and (0 <= item.first - i.last <= 1 or 0 <= i.first - item.last <= 2)
        ]  # fmt: skip
        return bool(near)

    def _aspects(self, item: Item, group: Group | None, statement: Statement, sentence: Sentence) -> set[str]:
        """Give the aspects named in the chunk of an item, else those of the label."""
        near = {
            name
            for other in sentence.parsed.items
            if other.chunk == item.chunk and (other.start < sentence.split) == (item.start < sentence.split)
            for name in other.names("aspect")
        }
        if near:
            return near
        return self._label_aspects(sentence, None) if group is None or group.label else set()

    def _label_aspects(self, sentence: Sentence, thing: str | None) -> set[str]:
        found = {name for i in sentence.parsed.items if i.start < sentence.split for name in i.names("aspect")}
        if thing is not None:
            own = {self.book.fields[n].aspect for n in self.book.fields_of(thing)}
            return found & own
        return found

    def _by_nearest_aspect(self, item: Item, fields: list[str], sentence: Sentence) -> str:
        """Choose among fields of one dimension the one whose aspect stands nearest to the figure."""
        if len(fields) == 1:
            return fields[0]

        def distance(name: str) -> int:
            aspect = self.book.fields[name].aspect
            places = [i for i in sentence.parsed.items if i.has("aspect", aspect)]
            near = [i for i in places if i.chunk == item.chunk] or places
            return min((min(abs(i.first - item.last), abs(item.first - i.last)) for i in near), default=99)

        specific = [n for n in fields if self.book.fields[n].basis not in ("", "none")] or fields
        return min(specific, key=distance)

    def _by_basis(
        self, quantity: Quantity, fields: list[str], statement: Statement, item: Item, *, noted: bool = False
    ) -> str | None:
        """Choose input or output of a heater by what is said with the figure, the label or the note."""
        parsed = statement.parsed
        rules = [
            [c for c in parsed.cues("input", "output") if c.chunk == item.chunk],
            [c for c in parsed.cues("input", "output") if c.clause == item.clause],
            [c for c in parsed.cues("input", "output") if c.start < statement.split],
            _bases(statement.note.items) if statement.note is not None else [],
        ]
        if noted:
            rules = rules[-1:]
        for cues in rules:
            bases = {name for cue in cues for name in _basis_names(cue)}
            if len(bases) == 1:
                wanted = bases.pop()
                return next((n for n in fields if self.book.fields[n].basis == wanted), None)
            if len(bases) == 2:
                nearest = min(cues, key=lambda c: min(abs(c.first - item.last), abs(item.first - c.last)))
                wanted = _basis_names(nearest)[0]
                return next((n for n in fields if self.book.fields[n].basis == wanted), None)
        return next((n for n in fields if self.book.fields[n].basis == "none"), fields[0])

    def _number(self, name: str, item: Item, quantity: Quantity, statement: Statement, things: list[str]) -> Found:
        spec = self.book.fields[name]
        low, high = quantity.low, quantity.high
        num = low if spec.several == "lowest" else high
        if spec.type == "integer":
            num = float(int(num))
        value = Value(num=num, low=low if low != high else None, high=high if low != high else None)
        found = Found(
            name, value, item.start, item.end, f"{name}:quantity", item, quantity.printed_unit, things=things,
            chunk=item.chunk, sentence=item.sentence,
        )  # fmt: skip
        found.basis = self._basis(spec, item, statement)
        found.rejected = self._why_not(spec, quantity, item, statement)
        return found

    def _basis(self, spec: FieldSpec, item: Item, statement: Statement) -> str:
        if spec.basis:
            return spec.basis if spec.basis != "none" else "unstated"
        if not spec.bases:
            return ""
        for cue, basis in spec.bases.items():
            if statement.parsed.cues(cue) or (statement.note is not None and statement.note.cues(cue)):
                return basis
        return "unstated"

    def _why_not(self, spec: FieldSpec, quantity: Quantity, item: Item, statement: Statement) -> str:
        nothing = quantity.high == 0 and spec.none == "0"  # a printed zero says that there is none
        if spec.range is not None and not nothing and not spec.range[0] <= quantity.high <= spec.range[1]:
            if not (spec.range[0] <= quantity.low <= spec.range[1] and spec.several == "lowest"):
                return "implausible: outside the plausible range"
        parsed = statement.parsed
        reach = [
            i for i in parsed.items
            if i.start < statement.split or i.chunk == item.chunk
            or (i.sentence == item.sentence and min(abs(i.first - item.last), abs(item.first - i.last)) <= 4)
        ]  # fmt: skip
        if any(i.has("distant", name) for i in reach for name in i.names("distant") if self.book.fields[name] is spec):
            return "another thing is spoken of beside it"
        total = [c for c in parsed.cues("total") if c.chunk == item.chunk or c.start < statement.split]
        added = [c for c in parsed.cues("addition") if self._adds(c, item) or c.start < statement.split]
        if added and not total and spec.type == "number" and spec.dimension not in ("temperature", "length"):
            return "an addition whose total is not printed"
        return ""

    @staticmethod
    def _adds(cue: Item, item: Item) -> bool:
        """Tell whether "second" or "extra" stands with a figure: in its part of the sentence or right before."""
        before = cue.end <= item.start and item.chunk - cue.chunk <= 1
        return cue.clause == item.clause and (cue.chunk == item.chunk or before)

    def _one_each(self, found: list[Found], statement: Statement) -> list[Found]:
        """Of several figures for one field in one sentence keep the total, or the one for the walls."""
        for name in {f.field for f in found}:
            spec = self.book.fields[name]
            rows = [f for f in found if f.field == name and not f.rejected]
            if len(rows) < 2:
                continue
            totals = [f for f in rows if any(c.chunk == f.chunk for c in statement.parsed.cues("total"))]
            totals = totals or self._sums(rows)
            if totals and len(totals) < len(rows):
                for row in rows:
                    if row not in totals and self._is_part(row, totals[0], statement):
                        row.rejected = "a part of a total that is printed too"
            for other, value in spec.prefer_with.items():
                self._prefer(rows, other, value, statement)
        return found

    @staticmethod
    def _sums(rows: list[Found]) -> list[Found]:
        """Give the figure that is the sum of all the others in its sentence: they are its parts."""
        if len(rows) < 3:
            return []
        for row in rows:
            rest = sum(r.value.num or 0 for r in rows if r is not row)
            if row.value.num and abs(rest - row.value.num) <= 0.02 * row.value.num:
                return [row]
        return []

    def _is_part(self, row: Found, total: Found, statement: Statement) -> bool:
        same = row.sentence == total.sentence
        bracketed = total.item is not None and total.item.depth > 0
        added = bool(statement.parsed.cues("addition")) or "+" in statement.parsed.text
        smaller = (row.value.num or 0) < (total.value.num or 0)
        return same and smaller and (not bracketed or added)

    def _prefer(self, rows: list[Found], other: str, value: str, statement: Statement) -> None:
        spec = self.book.fields[other]
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

    # words

    def _start_things(self, statement: Statement, sentence: Sentence) -> None:
        """Note the things that words bring in by themselves, for what stands in the same clause."""
        for item in statement.parsed.items:
            if id(item) in sentence.ignored:
                continue
            for concept in item.concepts:
                things, _ = self.grouper.bind(item, sentence, statement.context)
                started = self._started(concept, item, statement, sentence, things)
                if concept.kind == "value" and started and not any(owns(self.book, t, concept) for t in things):
                    sentence.started.setdefault(item.clause, started)

    def _values(self, statement: Statement, sentence: Sentence) -> list[Found]:
        found: list[Found] = []
        answer = is_answer(statement.parsed, statement.split) if statement.split else ""
        for item in statement.parsed.items:
            if id(item) in sentence.ignored or (answer in ("no", "unknown") and item.start < statement.split):
                continue
            concepts = [c for c in item.concepts if c.kind in ("value", "term", "denied")]
            if not concepts:
                continue
            things, group = self.grouper.bind(item, sentence, statement.context)
            negated = self._negated(item, statement, group)
            for concept in concepts:
                targets = things
                if not any(owns(self.book, thing, concept) for thing in things):
                    targets = self._started(concept, item, statement, sentence, things)
                    targets = targets or self._asked_by_label(concept, item, things, sentence)
                    targets = targets or self._under_heading(concept, item, group, statement)
                for thing in targets:
                    for name in owns(self.book, thing, concept):
                        if self._fits(name, concept, item, group, sentence, thing):
                            found.extend(self._worded(name, concept, item, negated, statement, targets, sentence))
        return found

    def _asked_by_label(self, concept: Concept, item: Item, things: list[str], sentence: Sentence) -> list[str]:
        """Give the things of the label, where a word answers it and the thing named beside the word cannot have it.

        "Gray tank warming: warm air from the heater" says nothing of the heater.
        """
        if item.start < sentence.split or not all(self.book.fields_of(thing) for thing in things):
            return []
        asked = {t for g in sentence.label_groups() for t in g.things if owns(self.book, t, concept)}
        return [thing for group in sentence.label_groups() for thing in group.things if thing in asked]

    def _under_heading(self, concept: Concept, item: Item, group: Group | None, statement: Statement) -> list[str]:
        """Give the thing of the heading, for a word in a part of a list that names nothing: "Diesel 2.2 L, RWD"."""
        apart = group is not None and not group.chunks[0] <= item.chunk <= group.chunks[1]
        if statement.how is not How.LIST or not apart:
            return []
        return [thing for thing in statement.context if owns(self.book, thing, concept)][:1]

    def _fits(
        self, name: str, concept: Concept, item: Item, group: Group | None, sentence: Sentence, thing: str
    ) -> bool:
        """Tell whether the label leaves room for the field: "tank heating" does not ask for a place."""
        spec = self.book.fields[name]
        asked = self._label_aspects(sentence, thing)
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
        names = [n for n, s in self.book.fields.items() if s.starts and s.vocabulary == concept.name and s.of]
        if not names or concept.kind != "value":
            return self._started_by_others(concept, item, statement, sentence)
        spec = self.book.fields[names[0]]
        busy = [t for t in things if t not in statement.context and self.book.fields_of(t)]
        if busy and not self._backed(item, spec, statement, surfaces_only=True):
            return []
        return [spec.of[0]] if self._backed(item, spec, statement) else []

    def _started_by_others(self, concept: Concept, item: Item, statement: Statement, sentence: Sentence) -> list[str]:
        """Let a surface follow the material that stands in the same clause."""
        if concept.kind != "value":
            return []
        for _name, spec in self.book.fields.items():
            if spec.vocabulary != concept.name or not spec.union:
                continue
            for other in statement.parsed.items:
                if other.clause != item.clause or id(other) in sentence.ignored:
                    continue
                for starter in self.book.fields.values():
                    if (
                        starter.starts
                        and starter.of == spec.of
                        and any(c.kind == "value" and c.name == starter.vocabulary for c in other.concepts)
                    ):
                        return list(spec.of[:1])
        return []

    def _backed(self, item: Item, spec: FieldSpec, statement: Statement, *, surfaces_only: bool = False) -> bool:
        siblings = [s for s in self.book.fields.values() if s.of == spec.of]
        vocabularies = {s.vocabulary for s in siblings if s.union}
        for other in statement.parsed.items:
            if other.clause != item.clause:
                continue
            if any(c.kind == "value" and c.name in vocabularies for c in other.concepts):
                return True
            if surfaces_only or other.quantity is None:
                continue
            for sibling in siblings:
                if sibling.dimension == other.quantity.dimension and sibling.range is not None:
                    low, high = sibling.range
                    if low <= other.quantity.high <= high and abs(other.first - item.last) <= 4:
                        return True
        return not surfaces_only and any(thing in spec.of for thing in statement.context)

    def _negated(self, item: Item, statement: Statement, group: Group | None = None) -> bool:
        parsed = statement.parsed
        for cue in parsed.cues("negation"):
            if cue.end <= item.start and cue.chunk == item.chunk and item.first - cue.last <= NEGATION_REACH:
                # A thing between takes the negation to itself: "no pump, tank heated".
                # The thing that the word is said of does not: "neither tank heated".
                own = group.items if group is not None and len(group.things) > 1 else []
                between = [i for i in parsed.items if cue.end <= i.start and i.end <= item.start and i.has("thing")]
                between = [i for i in between if i not in own]
                if not between and not (cue.start < statement.split <= item.start):
                    return True
        return False

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
        pattern = f"{name}:{concept.value or concept.kind}"
        found = Found(
            name, Value(), item.start, item.end, pattern, item, things=things, chunk=item.chunk, sentence=item.sentence
        )
        found.from_label = item.start < statement.split
        if spec.type == "flag":
            found.value = Value(flag=(concept.kind == "term") != negated)
            if found.value.flag and statement.how is How.PROSE and self._hypothetical(item, statement):
                return []
            return [found]
        word = spec.rename.get(concept.value, concept.value)
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
        found.rejected = self._distant(spec, name, item, statement)
        return [found]

    def _names_thing(self, item: Item, things: list[str], statement: Statement) -> bool:
        """Tell whether a word is only part of the name of the thing spoken of: "the hydronic heater"."""
        over = [i for i in statement.parsed.items if i.start <= item.start and item.end <= i.end]
        named = {
            t for i in over for t in (*i.names("thing"), *(o for n in i.names("alone") for o in self.book.fields[n].of))
        }
        return bool(named & set(things))

    def _distant(self, spec: FieldSpec, name: str, item: Item, statement: Statement) -> str:
        near = [
            i for i in statement.parsed.items
            if i.clause == item.clause and abs(i.chunk - item.chunk) <= 1
            and max(i.first - item.last, item.first - i.last) <= DISTANT_REACH
        ]  # fmt: skip
        near += [i for i in statement.parsed.items if i.start < statement.split]
        return "another thing is spoken of beside it" if any(i.has("distant", name) for i in near) else ""

    @staticmethod
    def _hypothetical(item: Item, statement: Statement) -> bool:
        text = statement.parsed.text
        end = next((i for i in range(item.end, len(text)) if text[i] in ".!?"), len(text))
        return text[end : end + 1] == "?"

    def _presence(self, statement: Statement, sentence: Sentence) -> list[Found]:
        """Give yes for equipment that is simply named, in a list or in running text."""
        found: list[Found] = []
        for group in sentence.groups:
            if group.label:
                continue
            for item in group.items:
                found.extend(self._present(item, group, statement, sentence))
        return found

    def _present(self, item: Item, group: Group, statement: Statement, sentence: Sentence) -> list[Found]:
        found: list[Found] = []
        negated = self._negated(item, statement)
        if sentence.label_groups() and statement.how in (How.CELL, How.PAIR):
            return found
        for thing in [*item.names("thing"), *item.names("short")]:
            spec_thing = self.book.things.get(thing)
            for name, said in (spec_thing.says if spec_thing else {}).items():
                flag = (said == "yes") != negated
                found.append(
                    Found(
                        name,
                        Value(flag=flag),
                        item.start,
                        item.end,
                        f"{name}:named",
                        item,
                        chunk=item.chunk,
                        sentence=item.sentence,
                    )
                )
            for name in self.book.fields_of(thing):
                spec = self.book.fields[name]
                if spec.type != "flag" or not spec.presence:
                    continue
                made = Found(
                    name,
                    Value(flag=not negated),
                    item.start,
                    item.end,
                    f"{name}:named",
                    item,
                    chunk=item.chunk,
                    sentence=item.sentence,
                )
                made.rejected = self._distant(spec, name, item, statement)
                found.append(made)
        return found

    def _texts(self, statement: Statement, sentence: Sentence) -> list[Found]:
        """Give claims: words that are kept as printed."""
        found: list[Found] = []
        for item in statement.parsed.items:
            for concept in item.concepts:
                if concept.kind != "value" or id(item) in sentence.ignored:
                    continue
                for name, spec in self.book.fields.items():
                    if spec.text != "matched" or spec.vocabulary != concept.name:
                        continue
                    printed = statement.parsed.text[item.start : item.end]
                    made = Found(
                        name,
                        Value(text=printed),
                        item.start,
                        item.end,
                        f"{name}:claim",
                        item,
                        chunk=item.chunk,
                        sentence=item.sentence,
                    )
                    made.rejected = "denied" if self._negated(item, statement) else ""
                    made.rejected = made.rejected or self._distant(spec, name, item, statement)
                    found.append(made)
        return found

    def _cleaned(self, found: list[Found], statement: Statement) -> list[Found]:
        """Drop weak values beside strong ones, and all but the strongest word of a choice."""
        for name in {f.field for f in found}:
            spec = self.book.fields[name]
            rows = [f for f in found if f.field == name and not f.rejected]
            strong = [f for f in rows if not f.weak]
            weak = [f for f in rows if f.weak]
            if spec.type == "choice" and weak:
                order = {word: place for place, word in enumerate(spec.weak)}
                for row in weak:
                    same = [f for f in weak if f.sentence == row.sentence]
                    best = min(order.get(f.value.text or "", 99) for f in same)
                    beside = any(f.sentence == row.sentence for f in strong)
                    if beside or order.get(row.value.text or "", 99) > best:
                        row.rejected = "a more exact word stands beside it"
            if spec.strongest and spec.type == "choice":
                self._keep_strongest(spec, [f for f in rows if not f.rejected])
            if spec.several == "mixed":
                self._mix(spec, [f for f in rows if not f.rejected])
            if spec.only_with:
                self._require(spec, rows, found)
        return found

    def _keep_strongest(self, spec: FieldSpec, rows: list[Found]) -> None:
        for sentence in {row.sentence for row in rows}:
            same = [row for row in rows if row.sentence == sentence and row.availability is None]
            words = [row.value.text for row in same]
            if len(set(words)) < 2:
                continue
            best = next((word for word in spec.strongest if word in words), None)
            clauses = {row.item.clause for row in same if row.item is not None}
            for row in same:
                if best is not None and row.value.text != best and len(clauses) == 1:
                    row.rejected = "a more exact word stands beside it"

    def _mix(self, spec: FieldSpec, rows: list[Found]) -> None:
        words = {row.value.text for row in rows}
        if len(words) < 2:
            return
        keep = rows[0]
        keep.value = Value(text="mixed")
        for row in rows[1:]:
            row.rejected = "part of a mixed arrangement"

    def _require(self, spec: FieldSpec, rows: list[Found], found: list[Found]) -> None:
        for other, words in spec.only_with.items():
            stated = {f.value.text for f in found if f.field == other}
            vocabulary = self.book.fields[other].vocabulary
            if stated & set(words):
                continue
            for row in rows:
                row.rejected = (
                    f"no {' or '.join(words)} {other} is named with it" if vocabulary else "not named with it"
                )


def _basis_names(item: Item) -> list[str]:
    """Give whether words say input or output, as a cue or as the name of an aspect."""
    return [name for name in (*item.names("cue"), *item.names("aspect")) if name in ("input", "output")]


def _bases(items: list[Item]) -> list[Item]:
    return [item for item in items if _basis_names(item)]
