"""Common words that name a thing only in some company: "gray and black", "80 L diesel", "Pipes inside, lagged"."""

from __future__ import annotations

import functools

from specscan.finding.language.lexicon import KEPT_ANSWERS, expanded, owns
from specscan.finding.things.denied_of_vans import is_of_vans
from specscan.finding.things.items import Item, Parsed
from specscan.rulebook.book import Rulebook


class ShortNames:
    """Tells where a short name means the thing; ``coordination`` are the words that join like things."""

    def __init__(self, book: Rulebook, coordination: set[str]):
        self.book = book
        self.coordination = coordination
        self.aspects = functools.lru_cache(maxsize=KEPT_ANSWERS)(self._aspects)

    def accepts(
        self, item: Item, parsed: Parsed, split: int, named: list[tuple[Item, list[str]]], shorts: list[Item]
    ) -> bool:
        if any(other.start <= item.start and item.end <= other.end for other, _ in named):
            return False
        in_label = item.start < split
        partners = [other for other, _ in named] + [other for other in shorts if other is not item]
        partners = [p for p in partners if (p.start < split) == in_label and p.clause == item.clause]
        coordinated = any(self._coordinated(item, other, parsed) for other in partners)
        if in_label:
            full = [other for other, _ in named if other.start < split]
            letter = item.end - item.start == 1 and not any(
                self._opens_pair(o, parsed) for o in shorts if o is not item
            )
            letter = letter and not self._is_measured_in(item, parsed, split)
            return coordinated or (not full and not letter) or self._has_aspect_behind(item, parsed, split)
        if any(
            other is not item and self._coordinated(item, other, parsed) and self._share_capacity(item, other)
            for other in shorts
        ):
            return True
        if coordinated and any(self._coordinated(item, other, parsed) for other, _ in named):
            return True
        if any(o is not item and self._each_measured(item, o, parsed) for o in [*shorts, *(p for p, _ in named)]):
            return True
        if self._told_of_another(item, parsed, named) or self._describes(item, parsed, named):
            return False
        if self._opens_pair(item, parsed):
            return True
        if split and self._label_takes(item, parsed, split, named):
            return False
        if self._opens_line(item, parsed, split):
            return True
        participle = any(self.book.things[t].short_with_words for t in item.names("short"))
        before = (
            []
            if participle
            else [
                cue
                for cue in parsed.cues("none", "negation")
                if cue.end <= item.start and (item.first - cue.last <= 1 or is_of_vans(cue, item, parsed, self.book))
            ]
        )
        if before or any(cue.first == item.last for cue in parsed.cues("not_there")):
            return True  # "no propane", "Gas gibt es nicht"
        covers = any(i.has("word", "covers") for i in parsed.items)
        if not covers and any(self.book.things[t].short_with_words for t in item.names("short")):
            owned = {
                (c.kind, c.name)
                for c in (
                    x
                    for o in parsed.items
                    if 0 <= o.first - item.last <= 1 or 0 <= item.first - o.last <= 1
                    for x in o.concepts
                )
                if c.kind == "value" and any(owns(self.book, t, c) for t in item.names("short"))
            }
            if owned:
                return True
        return self._measured(item, item.names("short"), parsed)

    def _is_measured_in(self, item: Item, parsed: Parsed, split: int) -> bool:
        """Tell whether a letter is a label with its unit, and the figure behind one of its kind: "L (m): 5.24"."""
        if parsed.text[: item.start].strip() or not self.book.is_unit(parsed.text[item.end : split].strip(" ():,‖[]")):
            return False
        kinds = {self.book.fields[f].dimension for t in item.names("short") for f in self.book.fields_of(t)}
        return any(i.quantity is not None and i.quantity.dimension in kinds for i in parsed.items if i.start >= split)

    def _has_aspect_behind(self, item: Item, parsed: Parsed, split: int) -> bool:
        """Tell whether what it can have stands right behind a short name in a label: "Gray insulation"."""
        own = {self.book.fields[f].aspect for t in item.names("short") for f in self.book.fields_of(t)} - {""}
        return any(
            other.first == item.last and other.start < split and own & set(other.names("aspect"))
            for other in parsed.items
        )

    def _each_measured(self, item: Item, other: Item, parsed: Parsed) -> bool:
        """Tell whether two names of tanks have a figure each: "2 x 55 L fresh, 1 x 40 L gray"."""
        names = [*other.names("short"), *other.names("thing")]
        if set(names) & set(item.names("short")) or other.clause != item.clause or other.chunk == item.chunk:
            return False
        return self._measured(item, item.names("short"), parsed) and self._measured(other, names, parsed)

    def _told_of_another(self, item: Item, parsed: Parsed, named: list[tuple[Item, list[str]]]) -> bool:
        """Tell whether a participle is said of a thing named before: "Water lines: insulated with ½ in foam"."""
        if not any(self.book.things[t].short_with_words for t in item.names("short")):
            return False
        before = [
            t for other, things in named if other.end <= item.start and other.sentence == item.sentence for t in things
        ]
        told = [c for c in item.concepts if c.kind in ("term", "denied", "value")]
        return any(owns(self.book, t, c) for t in expanded(self.book, before) for c in told)

    def _describes(self, item: Item, parsed: Parsed, named: list[tuple[Item, list[str]]]) -> bool:
        """Tell whether a name only describes the thing right behind it: "6-gallon propane water heater".

        Another of its kind may stand between: "14-litre gas/electric water heater".
        """
        kinds = {c.name for c in item.concepts if c.kind == "value"}
        alike = {n for i in parsed.items for c in i.concepts if c.kind == "value" and c.name in kinds
                 for n in range(i.first, i.last)}  # fmt: skip
        words = list(enumerate(parsed.analysis.tokens))

        def leads(other: Item) -> bool:
            whole = (i.first for i in parsed.items if i.first >= item.last and i.first <= other.first < i.last)
            first = min(whole, default=other.first)  # the "air heater" of a "blown-air heater"
            between = words[item.last : first] if first > item.last else []
            joined = bool(between) and all(n in alike or token.norm in self.coordination for n, token in between)
            return first == item.last or joined and between[-1][0] in alike

        return any(
            other.chunk == item.chunk and any(map(self.book.fields_of, things)) and leads(other)
            for other, things in named
        )

    def _opens_pair(self, item: Item, parsed: Parsed) -> bool:
        """Tell whether a name and a colon stand before a figure that it can have: "Fresh: 27 gal / Gray: 20 gal"."""
        if not parsed.text[item.end :].lstrip().startswith(":"):
            return False
        told = {self.book.fields[f].dimension for t in item.names("short") for f in self.book.fields_of(t)}
        behind = [i.quantity for i in parsed.items if i.quantity is not None and 0 <= i.first - item.last <= 1]
        return any(not quantity.bare and quantity.dimension in told for quantity in behind)

    def _label_takes(self, item: Item, parsed: Parsed, split: int, named: list[tuple[Item, list[str]]]) -> bool:
        """Tell whether the figure beside a name answers the label: "Water heater: 6 gal LP" is no propane tank."""
        labelled = [t for other, things in named if other.start < split for t in expanded(self.book, things)]
        dimensions = {self.book.fields[f].dimension for t in labelled for f in self.book.fields_of(t)} - {""}
        beside = [i.quantity for i in parsed.items if i.quantity is not None and self._adjoins(item, i, parsed)]
        return any(quantity.dimension in dimensions for quantity in beside)

    def stands_beside(self, item: Item, parsed: Parsed) -> bool:
        """Tell whether a figure right beside a common word means the thing: "80 L diesel", "carries 30 gal of water".

        What a tank holds is told by such a word only where it is said to be carried.
        """
        if not self._measured(item, item.names("beside"), parsed):
            return False
        return not self._share_capacity(item, item) or any(
            cue.clause == item.clause and cue.end <= item.start for cue in parsed.cues("carries")
        )

    def whole_label(self, parsed: Parsed, split: int) -> list[tuple[Item, list[str]]]:
        """Give a common word that alone is a label, where a figure answers it: "Diesel: 24.5 gal"."""
        label = parsed.text[:split].strip(" :")
        figures = [i.quantity for i in parsed.items if i.quantity is not None and i.start >= split]
        if len(figures) != 1:
            return []
        found = []
        for item in parsed.items:
            if item.has("beside") and parsed.text[item.start : item.end] == label:
                things = item.names("beside")
                specs = [self.book.fields[name] for thing in things for name in self.book.fields_of(thing)]
                asked = [spec for spec in specs if spec.dimension == figures[0].dimension]
                if any(spec.range is None or spec.range[0] <= figures[0].high for spec in asked):
                    found.append((item, things))
        return found

    def _opens_line(self, item: Item, parsed: Parsed, split: int) -> bool:
        """Tell whether a short name opens a line that goes on with what it can have: "Pipes inside, lagged"."""
        names = item.names("short")
        start, _ = parsed.chunk_span(item.chunk)
        if (
            split
            or parsed.between(start + (item.chunk > 0), item.start)
            or any(self.book.things[t].short_with_words for t in names)
        ):
            return False
        if not all(self.book.fields_of(thing) for thing in names):
            return False
        return any(
            0 <= other.first - item.last <= 3 and other.chunk == item.chunk
            and any(owns(self.book, thing, c) for thing in item.names("short") for c in other.concepts)
            for other in parsed.items
        )  # fmt: skip

    def _measured(self, item: Item, things: list[str], parsed: Parsed) -> bool:
        """Tell whether a quantity that the thing can have stands right beside its name."""
        specs = [self.book.fields[f] for t in things for f in self.book.fields_of(t)]
        for other in parsed.items:
            quantity = other.quantity
            if quantity is None or not self._adjoins(item, other, parsed):
                continue
            for spec in specs:
                inside = spec.range is None or spec.range[0] <= quantity.high <= spec.range[1]
                if spec.dimension == quantity.dimension and inside:
                    return True
        return False

    @staticmethod
    def _adjoins(item: Item, figure: Item, parsed: Parsed) -> bool:
        """Tell whether a figure stands right beside a name, or is the new total: "third panel, 600 W in total".

        A name may also be what it counts: "2 bouteilles de 6 kg", but bottles of 1.5 l hold whatever they may.
        """
        if figure.start <= item.start and item.end <= figure.end:
            return figure.quantity is not None and figure.quantity.dimension != "volume"
        gap = item.first - figure.last if figure.end <= item.start else figure.first - item.last
        if figure.chunk == item.chunk:
            return 0 <= gap <= 1
        added = any(c.chunk == item.chunk and c.end <= item.start for c in parsed.cues("addition"))
        total = any(c.chunk == figure.chunk for c in parsed.cues("total"))
        return added and total and 0 <= gap <= 2 and item.end <= figure.start

    def _share_capacity(self, one: Item, two: Item) -> bool:
        """Tell whether two short names are both of tanks, as in "gray and black below the floor"."""
        return all(
            any(
                self.book.fields[f].aspect == "capacity" and self.book.fields[f].none
                for t in (*i.names("short"), *i.names("beside")) for f in self.book.fields_of(t)
            )
            for i in (one, two)
        )  # fmt: skip

    def _coordinated(self, one: Item, two: Item, parsed: Parsed) -> bool:
        if not self.alike(one, two):
            return False
        left, right = (one, two) if one.start < two.start else (two, one)
        between = parsed.between(left.end, right.start)
        return 0 < len(between) <= 2 and all(word in self.coordination for word in between)

    def alike(self, one: Item, two: Item) -> bool:
        """Tell whether two things can be spoken of together: they have an aspect in common."""
        a, b = (self.aspects((*i.names("thing"), *i.names("short")), tuple(i.names("alone"))) for i in (one, two))
        return bool(a & b) or not a or not b

    def _aspects(self, things: tuple[str, ...], alone: tuple[str, ...]) -> set[tuple[str, str]]:
        """Give aspects and dimensions of the fields of things, and of those of which fields named alone tell."""
        told = [*things, *(t for n in alone for t in self.book.fields[n].of)]
        named = {
            (self.book.fields[f].aspect, self.book.fields[f].dimension)
            for t in expanded(self.book, told)
            for f in self.book.fields_of(t)
        }
        return {pair for pair in named if any(pair)}
