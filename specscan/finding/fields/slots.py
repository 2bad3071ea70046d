"""Which field of a thing a quantity fills."""

from __future__ import annotations

import itertools
import re

from specscan.finding.language.quantity import Quantity
from specscan.finding.language.whole_words import any_word
from specscan.finding.things.groups import Group, Sentence
from specscan.finding.things.items import Item, Parsed
from specscan.finding.things.statement import Statement, basis_items, basis_names
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import FieldSpec

CONSUMED, DRAWN = "consumption", "draw"  # aspect and basis of what a heater uses up


class SlotReader:
    """Chooses fields for quantities."""

    def __init__(self, book: Rulebook):
        self.book = book
        self.told_behind = {
            basis: re.compile(rf"\s+(?:{any_word(words)})(?=\s*(?:[,;/.)]|$))", re.IGNORECASE)
            for basis, words in (
                ("input", [word for one in book.words.values() for word in one.heat_in]),
                ("output", [word for one in book.words.values() for word in one.heat_out]),
            )
        }
        self.articles = {word for words in book.words.values() for word in words.drop if word in words.numbers}

    def slot(
        self, quantity: Quantity, item: Item, thing: str, group: Group | None, statement: Statement, sentence: Sentence
    ) -> str | None:
        """Give the field of a thing that a quantity fills, by its dimension, the aspect named and the basis."""
        fields = [
            n for n in self.book.fields_of(thing) if self._measures(self.book.fields[n], quantity, item, sentence)
        ]
        if not fields:
            return None
        aspects = self._aspects(item, group, statement, sentence)
        for basis, told in self.told_behind.items():
            flows = [n for n in fields if self.book.fields[n].basis == basis]
            if flows and (told.match(sentence.parsed.text, item.end) or self._is_labelled(item, basis, sentence)):
                return flows[0]  # "16,000 Btu/h in, 12,800 out", "16,000 Btu/h (output: 12,800)"
        asks = item.start >= sentence.split and DRAWN in label_aspects(self.book, sentence, thing)
        if asks or self._beside_fuel(item, thing, sentence):
            drawn = self._used_up(quantity, fields)  # "Heater current: 48 W at full output"
            if drawn is not None:
                return drawn
        named = [n for n in fields if self.book.fields[n].aspect in aspects]
        own = any(basis_names(i) and i.chunk == item.chunk for i in sentence.parsed.items)
        if (
            statement.note
            and basis_items(statement.note.items)
            and not own
            and any(self.book.fields[n].basis not in ("", DRAWN) for n in named)
        ):
            return self._by_basis(quantity, fields, statement, item, noted=True)  # a note goes before the label
        if named and all(self.book.fields[n].basis == "none" for n in named) and self._says_basis(item, statement):
            return self._by_basis(quantity, fields, statement, item)  # "Heating power (useful): 4 kW"
        if named:
            return self._by_nearest_aspect(item, named, sentence)
        if any(self.book.fields[n].basis for n in fields):
            used = self._used_up(quantity, fields) if CONSUMED in aspects else None
            return used or self._by_basis(quantity, fields, statement, item)
        asked = label_aspects(self.book, sentence, thing)
        if asked and not item.start < sentence.split:
            # "Heated battery: 200 Ah": what is answered by yes or no asks for no other figure
            others = {
                self.book.fields[n].aspect for n in self.book.fields_of(thing) if self.book.fields[n].type != "flag"
            }
            bare = not any(self.book.fields[n].aspect in ("", "capacity") for n in fields)
            if asked & others and bare and not self._beside_answer(item, sentence):
                return None
        return fields[0]

    @staticmethod
    def _is_labelled(item: Item, basis: str, sentence: Sentence) -> bool:
        """Tell whether a word for heat taken in or given off, with a colon, stands right before a figure of a body."""
        parsed, split = sentence.parsed, sentence.split
        return any(c.start >= split > 0 and parsed.text[c.end : item.start].strip() == ":" for c in parsed.cues(basis))

    @staticmethod
    def _says_basis(item: Item, statement: Statement) -> bool:
        """Tell whether the label, or the words beside a figure, say that heat given off or taken in is meant."""
        cues = statement.parsed.cues("input", "output")
        return any(cue.start < statement.split or cue.chunk == item.chunk for cue in cues)

    def only_field(self, quantity: Quantity, statement: Statement, sentence: Sentence) -> str | None:
        """Give the one field that has such a quantity, if the heading speaks of its thing: "Fuel: 0.16 gal/h"."""
        names = self.book.fields_by("dimension").get(quantity.dimension, [])
        labels = sentence.label_groups()
        if len(names) != 1 or not labels or not all(self.book.fields_of(t) for g in labels for t in g.things):
            return None
        return names[0] if set(self.book.fields[names[0]].of) & set(statement.context.things) else None

    def _measures(self, spec: FieldSpec, quantity: Quantity, item: Item, sentence: Sentence) -> bool:
        if spec.type == "number":
            return spec.dimension == quantity.dimension
        if spec.type == "integer" and spec.number == "count":
            return self._counts(quantity, item, sentence)
        return False

    @staticmethod
    def _beside_answer(item: Item, sentence: Sentence) -> bool:
        """Tell whether the figure describes what a label asks for: "Insulation material: hemp batts, 25 mm"."""
        return any(
            i.clause == item.clause and sentence.split <= i.start and i.has("value") for i in sentence.parsed.items
        )

    def _counts(self, quantity: Quantity, item: Item, sentence: Sentence) -> bool:
        """Tell whether a bare figure counts berths: it is small, whole, and next to the word.

        What is an article as well is none behind the word, "les couchages supposent une banquette", and in running text
        not before it: "an oven and a bed".
        """
        if quantity.dimension == "count" and not quantity.bare:
            return quantity.printed_unit in ("people", "persons")
        if not quantity.bare or quantity.high != int(quantity.high) or not 0 <= quantity.high <= 9:
            return False
        if sentence.label_groups() and item.start >= sentence.split:
            return True
        if sentence.noted and not sentence.parsed.text[: item.start].strip():
            return True  # "Three on the Frost, which adds a bunk" of "Two berths"
        article = quantity.worded and sentence.parsed.text[quantity.start : quantity.end].casefold() in self.articles
        if article and sentence.running:
            return False
        bounds = [c for c in sentence.parsed.cues("at_most") if c.chunk == item.chunk and c.last == item.first]
        first = min([c.first for c in bounds], default=item.first)  # "sleeps up to 4"
        near = [
            i for g in sentence.groups if g.clause == item.clause for i in g.items
            if any(self.book.fields[f].number == "count" for t in i.names("thing") for f in self.book.fields_of(t))
            and (0 <= first - i.last <= 1 and not article or 0 <= i.first - item.last <= 2)
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
        return label_aspects(self.book, sentence, None) if group is None or group.label else set()

    def _used_up(self, quantity: Quantity, fields: list[str]) -> str | None:
        """Give the field for what a heater draws, where it uses a power too small for heat: "0.1 gal/h and 45 W"."""
        heat = [spec for n in fields if (spec := self.book.fields[n]).basis == "none" and spec.range is not None]
        if not heat or any(spec.range is not None and quantity.high >= spec.range[0] for spec in heat):
            return None
        return next((n for n in fields if self.book.fields[n].basis == DRAWN), None)

    def _beside_fuel(self, item: Item, thing: str, sentence: Sentence) -> bool:
        """Tell whether what a thing consumes stands beside a figure, be it by its unit alone."""
        told = {spec.dimension for n in self.book.fields_of(thing) if (spec := self.book.fields[n]).aspect == CONSUMED}
        near = (i.quantity for i in sentence.parsed.items if i.sentence == item.sentence and i is not item)
        return any(quantity is not None and quantity.dimension in told for quantity in near)

    def _by_nearest_aspect(self, item: Item, fields: list[str], sentence: Sentence) -> str:
        """Choose among fields of one dimension the one whose aspect stands nearest to the figure."""
        if len(fields) == 1:
            return fields[0]

        in_turn = self._in_turn(item, fields, sentence)
        if in_turn is not None:
            return in_turn

        def distance(name: str) -> int:
            aspect = self.book.fields[name].aspect
            places = [i for i in sentence.parsed.items if i.has("aspect", aspect)]
            near = [i for i in places if i.chunk == item.chunk] or places
            return min((min(abs(i.first - item.last), abs(item.first - i.last)) for i in near), default=99)

        specific = [n for n in fields if self.book.fields[n].basis not in ("", "none")] or fields
        return min(specific, key=distance)

    def _in_turn(self, item: Item, fields: list[str], sentence: Sentence) -> str | None:
        """Give the field of a figure where aspects and figures take turns: "input is 19 kW and output is 15 kW"."""
        asked = {self.book.fields[name].aspect: name for name in fields}
        items = [i for i in sentence.parsed.items if i.sentence == item.sentence]
        aspects = [i for i in items if asked.keys() & set(i.names("aspect")) and i.quantity is None]
        dimension = item.quantity.dimension if item.quantity is not None else ""
        figures = [i for i in items if i.quantity is not None and i.quantity.dimension == dimension]
        turns = sorted([*aspects, *figures], key=lambda i: i.start)
        alternate = all((a in figures) != (b in figures) for a, b in itertools.pairwise(turns))
        if len(figures) < 2 or len(aspects) != len(figures) or not alternate or item not in turns:
            return None
        place = turns.index(item)
        beside = turns[place - 1] if turns[0] in aspects else turns[place + 1]
        named = [name for aspect, name in asked.items() if beside.has("aspect", aspect)]
        return named[0] if len(named) == 1 else None

    def _by_basis(
        self, quantity: Quantity, fields: list[str], statement: Statement, item: Item, *, noted: bool = False
    ) -> str | None:
        """Choose input or output of a heater by what is said with the figure, the label or the note."""
        parsed = statement.parsed
        flows = parsed.cues("input", "output")
        rules = [
            [c for c in flows if c.chunk == item.chunk],
            [c for c in flows if c.clause == item.clause and not self._is_of_another(c, item, parsed)],
            [c for c in flows if c.start < statement.split],
            [c for c in basis_items(parsed.items) if self._goes_on(item, c, parsed)],
            basis_items(statement.note.items) if statement.note is not None else [],
        ]
        if noted:
            rules = rules[-1:]
            if len({name for cue in rules[0] for name in basis_names(cue)}) > 1:
                return None  # "LP furnaces: input. Diesel heaters: output": which of them is meant nobody knows
        for cues in rules:
            bases = {name for cue in cues for name in basis_names(cue)}
            if len(bases) == 1:
                wanted = bases.pop()
                return next((n for n in fields if self.book.fields[n].basis == wanted), None)
            if len(bases) == 2:
                nearest = min(cues, key=lambda c: min(abs(c.first - item.last), abs(item.first - c.last)))
                wanted = basis_names(nearest)[0]
                return next((n for n in fields if self.book.fields[n].basis == wanted), None)
        return next((n for n in fields if self.book.fields[n].basis == "none"), fields[0])

    @staticmethod
    def _is_of_another(cue: Item, item: Item, parsed: Parsed) -> bool:
        """Tell whether a word behind a figure stands with a further one of the kind: "12,000 BTU/h (9,600 output)".

        Or it is the label of one: "12,000 BTU/h (output: 9,600)".
        """
        if cue.start < item.start:
            return False
        kind = item.quantity.dimension if item.quantity is not None else ""
        beside = [one for one in parsed.items if one.chunk == cue.chunk != item.chunk]
        beside += [one for one in parsed.items if parsed.text[cue.end : one.start].strip() == ":"]
        return any(one.quantity is not None and one.quantity.dimension == kind for one in beside)

    @staticmethod
    def _goes_on(item: Item, cue: Item, parsed: Parsed) -> bool:
        """Tell whether a figure goes on about what was said: "The A has an output of 5 kW, the B 6 kW"."""
        own = any(i.clause == item.clause and i.has("thing") for i in parsed.items)
        return not own and cue.sentence == item.sentence and cue.start < item.start


def label_aspects(book: Rulebook, sentence: Sentence, thing: str | None) -> set[str]:
    """Give the aspects that a label names; with a thing only those that it has."""
    found = {name for i in sentence.parsed.items if i.start < sentence.split for name in i.names("aspect")}
    if thing is not None:
        own = {book.fields[n].aspect for n in book.fields_of(thing)}
        return found & own
    return found
