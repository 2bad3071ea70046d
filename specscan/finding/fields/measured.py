"""The quantities of a statement → numbers of fields."""

from __future__ import annotations

from collections.abc import Iterable

from specscan.finding.fields.binding import aspect_things
from specscan.finding.fields.grouper import Grouper
from specscan.finding.fields.preference import one_each
from specscan.finding.fields.slots import SlotReader
from specscan.finding.language.quantity import Quantity
from specscan.finding.things.found import Found, Value, found_at
from specscan.finding.things.groups import Group, Sentence
from specscan.finding.things.items import Item, Parsed
from specscan.finding.things.statement import Statement
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import FieldSpec

BESIDE = 1  # words between a thing and its figure


class MeasureReader:
    """Reads numbers, for one language."""

    def __init__(self, book: Rulebook, grouper: Grouper):
        self.book = book
        self.grouper = grouper
        self.slots = SlotReader(book)

    def read(self, statement: Statement, sentence: Sentence) -> list[Found]:
        """Give the numbers that a statement holds, candidates set aside included."""
        found: list[Found] = []
        for item in statement.parsed.items:
            quantity = item.quantity
            if quantity is None or id(item) in sentence.ignored or self._is_condition(item, statement):
                continue
            if _ends_length(item, statement.parsed):
                continue
            things, group = self.grouper.binder.bind(item, sentence, statement.context)
            things = self._of_chain(item, things, sentence)
            things = self._of_member(item, things, group, sentence)
            made = self._made(item, things, group, statement, sentence, together=True)
            made = made or self._made(item, sentence.started.get(item.clause, ()), None, statement, sentence)
            taken = group is not None and not any(map(self.book.fields_of, things)) and _is_right_behind(item, group)
            meant = None if made or taken else self.grouper.binder.meant_by_pronoun(item, sentence)
            if meant is not None:
                made = self._made(item, meant.things, meant, statement, sentence)
            if not made and all(self.book.fields_of(thing) for thing in things):
                made = self._made(item, self._of_aspect(item, sentence, statement), None, statement, sentence)[:1]
            if not made and not things:
                told = self.book.fields_by("dimension").get(quantity.dimension, ())
                made = [self._of_field(n, item, statement) for n in told if self.book.fields[n].unit_tells]
            if not made and (name := self.slots.only_field(quantity, statement, sentence)) is not None:
                made = [self._of_field(name, item, statement)]
            found += made
        return one_each(self.book, found, statement)

    def _made(
        self,
        item: Item,
        things: Iterable[str],
        group: Group | None,
        statement: Statement,
        sentence: Sentence,
        *,
        together: bool = False,
    ) -> list[Found]:
        """Give the number for each of some things that can have it, said of that thing or of all ``together``."""
        assert item.quantity is not None
        things = list(things)
        slots = [(t, self.slots.slot(item.quantity, item, t, group, statement, sentence)) for t in things]
        return [
            self._number(name, item, item.quantity, statement, things if together else [thing])
            for thing, name in slots
            if name is not None
        ]

    def _of_field(self, name: str, item: Item, statement: Statement) -> Found:
        """Give a number of which only its unit tells of what field it is."""
        assert item.quantity is not None
        return self._number(name, item, item.quantity, statement, list(self.book.fields[name].of))

    def _is_condition(self, item: Item, statement: Statement) -> bool:
        """Tell whether a label says under which condition its value holds: "Fuel burnt at 4 kW: 0.50 l/h".

        In a sentence it is a volume behind another: "It holds 4.9 gal; empty it at about 4 gal".
        """
        parsed = statement.parsed
        around = [c for c in parsed.cues("approximate") if c.last == item.first and c.sentence == item.sentence]
        before = parsed.text[: min([c.start for c in around], default=item.start)].split()
        words = self.grouper.lexicon.words.cues.get("under_condition", [])
        if not before or before[-1].casefold() not in words:
            return False
        measured = [i for i in parsed.items if i.quantity is not None]
        if item.end <= statement.split:
            return any(i.start >= statement.split for i in measured)
        told = [i for i in measured if i.sentence == item.sentence and i.end <= item.start and i.clause < item.clause]
        volume = item.quantity is not None and item.quantity.dimension == "volume"
        return volume and any(i.quantity is not None and i.quantity.dimension == "volume" for i in told)

    def _of_aspect(self, item: Item, sentence: Sentence, statement: Statement) -> list[str]:
        """Give the thing whose aspect is named with a figure: "it draws 38 W from the battery" says it of a heater.

        Not where what another thing has goes before: "the battery has its own heater, which takes up to 90 W".
        """
        aspects = [i for i in sentence.parsed.items if i.has("aspect") and i.chunk == item.chunk]
        things = aspect_things(self.book, aspects, statement.context) if aspects else []
        before = [i for i in sentence.parsed.items if i.sentence == item.sentence and i.end <= item.start]
        others = {thing for i in before for name in i.names("term") for thing in self.book.fields[name].of}
        return things if others <= set(things) else []

    def _of_chain(self, item: Item, things: list[str], sentence: Sentence) -> list[str]:
        """Give of several things in a label the one whose place the quantity has in its own row.

        "Length / width: 5.41 m / 2.05 m" has two of each: first to first, second to second.
        """
        labels = sentence.label_groups()
        if not labels or item.start < sentence.split:
            return things
        ordered = self._in_order(labels)
        absorbed = {t for thing in ordered for t in self._absorbs(thing)}
        ordered = [thing for thing in ordered if thing not in absorbed]
        things = [thing for thing in things if thing not in absorbed]
        if len(ordered) < 2 or set(things) != set(ordered):
            return things
        body = [i for i in sentence.parsed.items if i.quantity is not None and i.start >= sentence.split]
        open_things = list(dict.fromkeys(t for g in labels if g.items[0].depth == 0 for t in g.things if t in ordered))
        if len(body) != len(ordered) and len(open_things) == 1:
            return open_things  # "Fuel tank (engine): 90 l"
        common = len(labels) == 1 and len(labels[0].items) == 1  # a name that stands for several
        if len(body) != len(ordered) and item.quantity is not None and common:
            told = item.quantity.dimension
            able = [t for t in ordered if self._can_be(t, told)]
            if len(able) == 1 and self.book.fields_of(able[0]):
                return able  # "Engine fuel: 24 gal" says of what kind the engine's is elsewhere
        # One figure for several things is nobody's: it may be a sum.
        return [ordered[body.index(item)]] if len(body) == len(ordered) else []

    def _in_order(self, labels: list[Group]) -> list[str]:
        """Give the things of a label in their order; those that a common name counts have their own places.

        "Holding tanks (fresh / gray / black)" has three.
        """
        places: dict[str, int] = {}
        for item in (item for group in labels for item in group.items):
            for thing in (*item.names("thing"), *item.names("short")):
                places.setdefault(thing, item.start)
        ordered = dict.fromkeys((thing, group.start) for group in labels for thing in group.things)
        return list(dict.fromkeys(t for t, _ in sorted(ordered, key=lambda pair: places.get(pair[0], pair[1]))))

    def _can_be(self, thing: str, dimension: str) -> bool:
        """Tell whether a figure of a dimension may be said of a thing; of one without fields everything may."""
        names = self.book.fields_of(thing)
        return not names or any(self.book.fields[name].dimension == dimension for name in names)

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

    def _number(self, name: str, item: Item, quantity: Quantity, statement: Statement, things: list[str]) -> Found:
        name = name if quantity.high else self._told_by_zero(name)
        spec = self.book.fields[name]
        low, high = quantity.low, quantity.high
        num = low if spec.several == "lowest" else high
        if spec.type == "integer":
            num = float(int(num))
        value = Value(num=num, low=low if low != high else None, high=high if low != high else None)
        found = found_at(item, name, value, "quantity", things)
        found.unit = quantity.printed_unit
        found.basis = self._basis(spec, item, statement)
        found.rejected = self._why_not(spec, quantity, item, statement)
        found.weak = any(self._is_of_other(found, other, value, statement) for other, value in spec.prefer_with.items())
        return found

    def _is_of_other(self, found: Found, other: str, value: str, statement: Statement) -> bool:
        """Tell whether a figure is said of the floor, say, where that of the walls is asked for."""
        vocabulary = self.book.fields[other].vocabulary
        for part in ("chunk", "clause", "sentence"):
            near = [i for i in statement.parsed.items if getattr(i, part) == getattr(found.item, part)]
            said = {c.value for i in near for c in i.concepts if c.kind == "value" and c.name == vocabulary}
            if said:
                return value not in said
        return False

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
        if spec.dimension in ("volume", "mass") and _is_aboard(item, parsed):
            return "counted in a mass that is printed"
        if spec.dimension == "volume" and self._is_counted(item, statement):
            return "counted in a mass that is printed"
        if any(0 <= item.first - cue.last <= 1 for cue in parsed.cues("part_of")):
            return "a part of what is printed"  # "140 l, of which 20 l in reserve"
        total = [c for c in parsed.cues("total") if c.chunk == item.chunk or c.start < statement.split]
        added = [c for c in parsed.cues("addition") if self._adds(c, item) or c.start < statement.split]
        added = [c for c in added if not (c.has("cue", "optional") and _ends_part(c, parsed))]  # "120 W was an extra"
        if (
            added
            and not total
            and (spec.type == "number" or spec.number == "count")
            and spec.dimension not in ("temperature", "length")
        ):
            return "an addition whose total is not printed"
        return ""

    def _is_counted(self, item: Item, statement: Statement) -> bool:
        """Tell whether a figure is what a mass counts: "mass in running order, including 20 l of water"."""
        parsed, split = statement.parsed, statement.split
        label = [t for i in parsed.items if i.end <= split <= item.start for t in i.names("thing")]
        if label and all(self.book.things[thing].counts for thing in label):
            return True  # "In running order: driver, 20 l of water"
        for cue in parsed.cues("counts_in"):
            if cue.sentence == item.sentence and cue.end <= item.start:
                before = [
                    t
                    for i in parsed.items
                    if i.sentence == item.sentence and i.end <= cue.start
                    for t in i.names("thing")
                ]
                return any(self.book.things[thing].counts for thing in before)
        return False

    def _told_by_zero(self, name: str) -> str:
        """Give the field that says that there is none of a thing: where "Propane: 0 kg" stands there are 0 litres."""
        fields, spec = self.book.fields, self.book.fields[name]
        sisters = [other for thing in spec.of for other in self.book.fields_of(thing)]
        return next((n for n in (name, *sisters) if fields[n].none == "0" and fields[n].type == spec.type), name)

    @staticmethod
    def _adds(cue: Item, item: Item) -> bool:
        """Tell whether "second" or "extra" stands with a figure: in its part of the sentence or right before."""
        before = cue.end <= item.start and item.chunk - cue.chunk <= 1
        return cue.clause == item.clause and (cue.chunk == item.chunk or before)


def _is_aboard(item: Item, parsed: Parsed) -> bool:
    """Tell whether a figure is the driver's, or a volume beside his: "with driver (75 kg), fuel, 20 l of water"."""
    for cue in parsed.cues("laden_with"):
        beside = [i for i in parsed.items if i.sentence == cue.sentence and i.quantity is not None]
        own = [i for i in beside if 0 <= i.first - cue.last <= 1 and _measures(i, "mass")]
        if cue.sentence == item.sentence and (own or any(_measures(i, "share") for i in beside)):
            return item in own or _measures(item, "volume")
    return False


def _measures(item: Item, dimension: str) -> bool:
    return item.quantity is not None and item.quantity.dimension == dimension


def _ends_part(cue: Item, parsed: Parsed) -> bool:
    """Tell whether nothing stands behind a word up to the next comma, colon or bracket."""
    _, end = parsed.chunk_span(cue.chunk)
    return not any(letter.isalnum() for letter in parsed.text[cue.end : end])


def _is_right_behind(item: Item, group: Group) -> bool:
    """Tell whether a figure stands beside a thing that takes it to itself: "It'll tow 2,800 kg"."""
    last = group.items[-1]
    return last.chunk == item.chunk and 0 <= item.first - last.last <= BESIDE


def _ends_length(item: Item, parsed: Parsed) -> bool:
    """Tell whether a number word is the rest of a length: "six metres five, two beds"."""
    quantity = item.quantity
    if quantity is None or not (quantity.bare and quantity.worded):
        return False
    lengths = [i for i in parsed.items if i.quantity is not None and i.quantity.dimension == "length"]
    return any(parsed.text[i.end : item.start].isspace() for i in lengths if i.end < item.start)
