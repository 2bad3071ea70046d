"""Which things a statement speaks of, and which of them a value or quantity belongs to."""

from __future__ import annotations

from dataclasses import dataclass, field

from specscan.finding.items import Item, Parsed
from specscan.finding.lexicon import Concept, Lexicon
from specscan.rulebook.book import Rulebook


@dataclass(slots=True)
class Group:
    """Things named together, as "fresh and gray tank": what is said of one is said of all."""

    things: list[str]
    items: list[Item] = field(default_factory=list)
    label: bool = False

    @property
    def start(self) -> int:
        return self.items[0].start

    @property
    def end(self) -> int:
        return self.items[-1].end

    @property
    def chunks(self) -> tuple[int, int]:
        return self.items[0].chunk, self.items[-1].chunk

    @property
    def clause(self) -> int:
        return self.items[0].clause


@dataclass(slots=True)
class Sentence:
    """A parsed statement with its groups; characters before ``split`` are its label."""

    parsed: Parsed
    split: int
    groups: list[Group]
    ignored: set[int]  # ids of items that do not count
    running: bool = False  # running text, where a subject ends with its sentence
    noted: bool = False  # a footnote, whose subject is what refers to it
    started: dict[int, list[str]] = field(default_factory=dict)  # things that words bring in, by clause

    def label_groups(self) -> list[Group]:
        """Give the groups that stand in the label."""
        return [group for group in self.groups if group.label]


class Grouper:
    """Forms groups and binds items to them, for one language."""

    def __init__(self, book: Rulebook, lexicon: Lexicon):
        self.book = book
        self.lexicon = lexicon
        self.coordination = {
            norm for word in lexicon.words.cues.get("coordination", []) for norm in lexicon.folder.norms(word)
        }
        self.coordination |= {",", "/", "+"}

    def form(
        self, parsed: Parsed, split: int, context: list[str], *, running: bool = False, noted: bool = False
    ) -> Sentence:
        """Give the groups of a statement; a label that names only an aspect gets its thing from it."""
        ignored = self._ignored(parsed, split, running=running)
        named = []
        for item in parsed.items:
            if id(item) in ignored:
                continue
            things = self._things(item)
            if things:
                named.append((item, things))
        referring = [pair for pair in named if self._refers(pair[1])]
        named = [pair for pair in named if not self._refers(pair[1]) and not self._is_quality(pair, named)]
        shorts = [i for i in parsed.items if i.has("short") and id(i) not in ignored]
        named.extend((i, i.names("short")) for i in shorts if self._accepts(i, parsed, split, named, shorts))
        besides = [i for i in parsed.items if i.has("beside") and id(i) not in ignored and i.start >= split]
        named.extend((i, i.names("beside")) for i in besides if self._stands_beside(i, parsed))
        named = self._resolved(sorted([*named, *referring], key=lambda pair: pair[0].start))
        groups = self._groups(named, parsed, split)
        if split and not any(group.label for group in groups):
            groups = [*self._by_aspect(parsed, split, context), *groups]
        return Sentence(parsed, split, groups, ignored, running, noted)

    def _refers(self, things: list[str]) -> bool:
        """Tell whether words name nothing themselves but refer to things named before, as "neither tank" does."""
        specs = [self.book.things.get(thing) for thing in things]
        return bool(specs) and all(s is not None and s.aspect and not s.stands_for for s in specs)

    def _resolved(self, named: list[tuple[Item, list[str]]]) -> list[tuple[Item, list[str]]]:
        """Put the things that the sentence named before for words such as "neither tank"; without such they go."""
        found: list[tuple[Item, list[str]]] = []
        for item, things in named:
            if not self._refers(things):
                found.append((item, things))
                continue
            aspects = {self.book.things[thing].aspect for thing in things}
            before = [t for other, own in found if other.sentence == item.sentence for t in self._expanded(own)]
            meant = [t for t in before if any(self.book.fields[f].aspect in aspects for f in self.book.fields_of(t))]
            meant = [t for t in meant if any(self.book.fields[f].none for f in self.book.fields_of(t))]
            if meant:
                found.append((item, list(dict.fromkeys(meant))))
        return found

    def _by_aspect(self, parsed: Parsed, split: int, context: list[str]) -> list[Group]:
        items = [i for i in parsed.items if i.start < split and i.has("aspect")]
        if not items:
            return []
        things = self.aspect_things(items, context)
        return [Group(things, items, True)] if things else []

    def aspect_things(self, items: list[Item], context: list[str]) -> list[str]:
        """Give the thing whose aspect is named: the one of the context that has it, or the only one there is."""
        owners: list[set[str]] = []
        for item in items:
            for name in item.names("aspect"):
                owners.append({t for s in self.book.fields.values() if s.aspect == name for t in s.of})
        for thing in context:
            if any(thing in own for own in owners):
                return [thing]
        single = {next(iter(own)) for own in owners if len(own) == 1}
        return sorted(single) if len(single) == 1 else []

    def _is_quality(self, pair: tuple[Item, list[str]], named: list[tuple[Item, list[str]]]) -> bool:
        """Tell whether a thing named right beside another is only its quality: "tank insulation"."""
        item, things = pair
        aspects = set(item.names("aspect"))
        if not aspects:
            return False
        for other, others in named:
            if other is item or set(others) & set(things):
                continue
            gap = item.first - other.last if other.start < item.start else other.first - item.last
            own = {self.book.fields[f].aspect for t in others for f in self.book.fields_of(t)}
            if 0 <= gap <= 1 and other.chunk == item.chunk and aspects & own:
                return True
        return False

    def _things(self, item: Item) -> list[str]:
        things = item.names("thing")
        for name in item.names("alone"):
            things.extend(thing for thing in self.book.fields[name].of[:1] if thing not in things)
        return things

    def _besides(self, parsed: Parsed, split: int) -> set[int]:
        """Give the items of a label that only qualify it: "height with roof fan", "w/heater"."""
        ignored: set[int] = set()
        for cue in parsed.cues("besides"):
            if cue.start >= split:
                continue
            before = [
                i for i in parsed.items if i.end <= cue.start and (i.has("thing") or i.has("short") or i.has("alone"))
            ]
            if not before:
                continue
            for item in parsed.items:
                near = item.chunk == cue.chunk or item.chunk == cue.chunk + 1 and item.depth > cue.depth
                if cue.end <= item.start < split and near:
                    ignored.add(id(item))
        return ignored

    def _ignored(self, parsed: Parsed, split: int, *, running: bool) -> set[int]:
        """Give the items that a cue sets aside: "instead of LP", "prewired", "replaces the furnace"."""
        ignored = self._besides(parsed, split)
        if running:
            warned = {cue.sentence for cue in parsed.cues("caution", "other_vans")}
            warned |= {cue.sentence for cue in parsed.cues("warns_first") if parsed.opens_sentence(cue)}
            ignored |= {id(item) for item in parsed.items if item.sentence in warned}
        for cue in parsed.cues("not_for"):
            for item in parsed.items:
                if item.start >= cue.end and item.clause == cue.clause and item.depth == cue.depth:
                    if item.chunk == cue.chunk or not _breaks(parsed, cue, item):
                        ignored.add(id(item))
        for cue in parsed.cues("hedge"):
            for item in parsed.items:
                if item is not cue and item.chunk == cue.chunk:
                    ignored.add(id(item))
        return ignored

    def _accepts(
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
            letter = item.end - item.start == 1
            return coordinated or (not full and not letter)
        if any(
            other is not item and self._coordinated(item, other, parsed) and self._share_capacity(item, other)
            for other in shorts
        ):
            return True
        if coordinated and any(self._coordinated(item, other, parsed) for other, _ in named):
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
                if 0 <= item.first - cue.last <= 1 and cue.end <= item.start
            ]
        )
        if before:
            return True
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

    def _label_takes(self, item: Item, parsed: Parsed, split: int, named: list[tuple[Item, list[str]]]) -> bool:
        """Tell whether the figure beside a name answers the label: "Water heater: 6 gal LP" is no propane tank."""
        labelled = [t for other, things in named if other.start < split for t in self._expanded(things)]
        dimensions = {self.book.fields[f].dimension for t in labelled for f in self.book.fields_of(t)} - {""}
        beside = [i.quantity for i in parsed.items if i.quantity is not None and self._adjoins(item, i, parsed)]
        return any(quantity.dimension in dimensions for quantity in beside)

    def _stands_beside(self, item: Item, parsed: Parsed) -> bool:
        """Tell whether a figure right beside a common word means the thing: "80 L diesel", "carries 30 gal of water".

        What a tank holds is told by such a word only where it is said to be carried.
        """
        if not self._measured(item, item.names("beside"), parsed):
            return False
        return not self._share_capacity(item, item) or any(
            cue.clause == item.clause and cue.end <= item.start for cue in parsed.cues("carries")
        )

    def _opens_line(self, item: Item, parsed: Parsed, split: int) -> bool:
        """Tell whether a short name opens a line that goes on with what it can have: "Pipes inside, lagged"."""
        names = item.names("short")
        if split or item.first > 0 or any(self.book.things[t].short_with_words for t in names):
            return False
        if not all(self.book.fields_of(thing) for thing in names):
            return False
        return any(
            0 <= other.first - item.last <= 2 and other.chunk == item.chunk
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
        """Tell whether a figure stands right beside a name, or is the new total: "third panel, 600 W in total"."""
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
        if not self._alike(one, two):
            return False
        left, right = (one, two) if one.start < two.start else (two, one)
        between = parsed.between(left.end, right.start)
        return 0 < len(between) <= 2 and all(word in self.coordination for word in between)

    def _alike(self, one: Item, two: Item) -> bool:
        """Tell whether two things can be spoken of together: they have an aspect in common."""

        def aspects(item: Item) -> set[tuple[str, str]]:
            things = [
                *item.names("thing"),
                *item.names("short"),
                *(t for n in item.names("alone") for t in self.book.fields[n].of),
            ]
            named = {
                (self.book.fields[f].aspect, self.book.fields[f].dimension)
                for t in self._expanded(things)
                for f in self.book.fields_of(t)
            }
            return {pair for pair in named if any(pair)}

        a, b = aspects(one), aspects(two)
        return bool(a & b) or not a or not b

    def _groups(self, named: list[tuple[Item, list[str]]], parsed: Parsed, split: int) -> list[Group]:
        groups: list[Group] = []
        for item, things in named:
            label = item.start < split
            last = groups[-1] if groups else None
            if last is not None and last.label == label and item.start < last.end:
                self._join(last, item, things)
            elif last is not None and last.label == label and self._continues(last, item, parsed):
                self._join(last, item, things)
            else:
                groups.append(Group(self._expanded(things), [item], label))
        return groups

    def _join(self, group: Group, item: Item, things: list[str]) -> None:
        group.items.append(item)
        group.things.extend(thing for thing in self._expanded(things) if thing not in group.things)

    def _expanded(self, things: list[str]) -> list[str]:
        found: list[str] = []
        for thing in things:
            spec = self.book.things.get(thing)
            found.extend(spec.stands_for if spec and spec.stands_for else [thing])
        return list(dict.fromkeys(found))

    def _continues(self, group: Group, item: Item, parsed: Parsed) -> bool:
        last = group.items[-1]
        if item.clause != last.clause or item.depth != last.depth:
            return False
        inside = [i for i in parsed.items if i.quantity is not None and last.end <= i.start and i.end <= item.start]
        between = [
            token.norm
            for token in parsed.analysis.tokens
            if last.end <= token.start
            and token.end <= item.start
            and not any(i.start <= token.start < i.end for i in inside)
        ]
        return all(word in self.coordination for word in between) and len(between) <= 3 and bool(between)

    def bind(self, item: Item, sentence: Sentence, context: list[str]) -> tuple[list[str], Group | None]:
        """Give the things that a value or quantity belongs to, and the group; the context where none is near."""
        parsed = sentence.parsed
        in_label = item.start < sentence.split
        groups = [g for g in sentence.groups if g.label == in_label]
        own = [
            g for g in groups
            if any(i.start < item.end and item.start < i.end for i in g.items)
            or (g.start <= item.start and item.end <= g.end)
        ]  # fmt: skip
        if own:
            return own[0].things, own[0]
        clause = [g for g in groups if g.clause == item.clause]
        if sentence.noted:
            clause = [
                g for g in clause
                if g.chunks[0] <= item.chunk <= g.chunks[1] or any(self.book.fields_of(t) for t in g.things)
            ]  # fmt: skip
        clause = [g for g in clause if g.start < item.start or not _opens_pair(g, parsed)]
        chosen = self._nearest(item, clause, parsed)
        labels = [] if in_label else sentence.label_groups()
        if labels and (chosen is None or not self._close(item, chosen, parsed)):
            return self._label_things(labels), labels[0]
        if chosen is not None:
            return chosen.things, chosen
        before = [] if sentence.noted else [g for g in groups if g.end <= item.start and _same_part(g, item, sentence)]
        if before:
            return before[-1].things, before[-1]
        if labels:
            return self._label_things(labels), labels[0]
        near = [i for i in parsed.items if i.chunk == item.chunk and i.has("aspect")] if item.quantity else []
        if sentence.noted and item.clause > 0 and not any(i.vans and i.clause == item.clause for i in parsed.items):
            context = []  # only the first clause of a note speaks of what refers to it
        return self.aspect_things(near, context) or sentence.started.get(item.clause) or list(context), None

    @staticmethod
    def _label_things(labels: list[Group]) -> list[str]:
        return list(dict.fromkeys(thing for group in labels for thing in group.things))

    def _close(self, item: Item, group: Group, parsed: Parsed) -> bool:
        """Tell whether a group in the body stands so close that it goes before the label."""
        if group.end <= item.start and _opens_pair(group, parsed):
            return True
        if not group.chunks[0] <= item.chunk <= group.chunks[1]:
            return False
        if group.start >= item.end:
            return group.items[0].first - item.last <= 2
        return item.first - group.items[-1].last <= 3

    def _nearest(self, item: Item, groups: list[Group], parsed: Parsed) -> Group | None:
        before = [g for g in groups if g.end <= item.start]
        after = [g for g in groups if g.start >= item.end]
        same_before = [g for g in before if g.chunks[1] == item.chunk]
        same_after = [g for g in after if g.chunks[0] == item.chunk]
        back = same_before[-1] if same_before else None
        ahead = same_after[0] if same_after else None
        if back is not None and ahead is not None:
            return ahead if self._distance(item, ahead, parsed) < self._distance(item, back, parsed) else back
        if back is not None or ahead is not None:
            return back or ahead
        if before:
            return before[-1]
        return after[0] if after else None

    def _distance(self, item: Item, group: Group, parsed: Parsed) -> float:
        if group.start >= item.end:
            gap = parsed.between(item.end, group.start)
            others = sum(i.quantity is not None for i in parsed.items if item.end <= i.start < group.start)
        else:
            gap = parsed.between(group.end, item.start)
            others = sum(i.quantity is not None for i in parsed.items if group.end <= i.start < item.start)
        joints = sum(word in self.coordination for word in gap)
        return len(gap) + 3 * joints + 3 * others


def _breaks(parsed: Parsed, cue: Item, item: Item) -> bool:
    start, _ = parsed.chunk_span(item.chunk)
    return parsed.text[start : start + 1] in (",", "(", ")")


def _same_part(group: Group, item: Item, sentence: Sentence) -> bool:
    """Tell whether a group may still be the subject: in running text only within its sentence."""
    last = group.items[-1].sentence
    return last == item.sentence if sentence.running else last <= item.sentence


def _opens_pair(group: Group, parsed: Parsed) -> bool:
    """Tell whether a group is the label of an inner pair, as in "3300 kg  MIRO: 2780 kg"."""
    return parsed.text[group.end : group.end + 3].lstrip().startswith(":") and group.items[-1].depth == 0


def owns(book: Rulebook, thing: str, concept: Concept) -> list[str]:
    """Give the fields of a thing that a value, term or aspect can fill."""
    found = []
    for name in book.fields_of(thing):
        spec = book.fields[name]
        if (concept.kind == "value" and spec.vocabulary == concept.name) or (
            concept.kind in ("term", "denied") and concept.name == name
        ):
            found.append(name)
    return found
