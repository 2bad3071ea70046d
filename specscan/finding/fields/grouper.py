"""Which things a statement speaks of, put into groups of those that are spoken of together."""

from __future__ import annotations

from specscan.finding.fields.answers import is_answer
from specscan.finding.fields.binding import Binder, aspect_things
from specscan.finding.language.lexicon import Lexicon, expanded, owns, referred, refers
from specscan.finding.things.context import Context
from specscan.finding.things.groups import Group, Sentence
from specscan.finding.things.items import Item, Parsed
from specscan.finding.things.own_tanks import Named, OwnTanks
from specscan.finding.things.set_aside import ignored_items
from specscan.finding.things.short_names import ShortNames
from specscan.rulebook.book import Rulebook


class Grouper:
    """Forms groups, for one language."""

    def __init__(self, book: Rulebook, lexicon: Lexicon):
        self.book = book
        self.lexicon = lexicon
        self.coordination = {
            norm
            for cue in ("coordination", "or_joint")
            for word in lexicon.words.cues.get(cue, [])
            for norm in lexicon.folder.norms(word)
        }
        self.coordination |= {",", "/", "+"}
        self.short_names = ShortNames(book, self.coordination)
        purpose, company = (
            {norm for word in lexicon.words.cues.get(name, []) for norm in lexicon.folder.norms(word)}
            for name in ("purpose", "company_of")
        )
        self.binder = Binder(book, self.coordination, purpose, company)
        self.articles = {word.casefold() for word in lexicon.words.cues.get("one_more", [])}
        self.own_tanks = OwnTanks(book, company, self.coordination)
        self.meant: dict[tuple[str, ...], set[str]] = {}  # by words that refer to things named elsewhere

    def form(
        self, parsed: Parsed, split: int, context: Context, *, running: bool = False, noted: bool = False
    ) -> Sentence:
        """Give the groups of a statement; a label that names only an aspect gets its thing from it."""
        if not parsed.items:
            return Sentence(parsed, split, [], set(), running, noted)
        ignored = ignored_items(parsed, split, running=running or noted) | self._measured_with(parsed, split)
        named: Named = []
        for item in parsed.items:
            if id(item) in ignored:
                continue
            things = self._things(item)
            if things and split and self._is_short_label(item, parsed, split):
                things = item.names("short")
            if things:
                named.append((item, things))
        named, referring = self._parted(named, parsed)
        named = [pair for pair in named if not self._is_quality(pair, [*named, *referring], parsed, split)]
        if "short" in parsed.kinds:
            shorts = [i for i in parsed.items if i.has("short") and id(i) not in ignored]
            for item in shorts:  # one that is accepted counts as named for those behind it
                asks = item.start < split and item.has("aspect") and self._of_context(item, context)
                if asks and not self._fitting(item.names("short"), parsed, split):
                    continue  # "Fuel" under "Heating" is what the heater burns, but not "Fuel: 24 gal"
                if refers(self.book, item.names("short")) and not self._is_label(item, parsed, split):
                    continue  # "Tanks: heated" tells of all, "Tank heating" not of which
                if self.short_names.accepts(item, parsed, split, named, shorts):
                    named.append((item, self._answered(item.names("short"), parsed, split)))
        if "beside" in parsed.kinds:
            besides = [i for i in parsed.items if i.has("beside") and id(i) not in ignored and i.start >= split]
            named.extend((i, i.names("beside")) for i in besides if self.short_names.stands_beside(i, parsed))
            if split and not named:
                named.extend(self.short_names.whole_label(parsed, split))
        named, short = self._parted(named, parsed)
        referring += short
        named = self._resolved(sorted([*named, *referring], key=lambda pair: pair[0].start), parsed, split)
        named = self.own_tanks.put(named, parsed, split)
        groups = self._groups(named, parsed, split)
        if split and not any(group.label for group in groups):
            groups = [*self._by_aspect(parsed, split, context), *groups]
        return Sentence(parsed, split, groups, ignored, running, noted)

    def _answered(self, things: list[str], parsed: Parsed, split: int) -> list[str]:
        """Give those of several things of one short name that a figure answers: "Fuel: 24 gal diesel" is the tank."""
        fitting = self._fitting(things, parsed, split)
        return fitting if len(things) > 1 and fitting else things

    def _fitting(self, things: list[str], parsed: Parsed, split: int) -> list[str]:
        """Give those of some things that can have one of the figures behind a label."""
        figures = {i.quantity.dimension for i in parsed.items if i.quantity is not None and i.start >= split}
        return [t for t in things if any(self.book.fields[f].dimension in figures for f in self.book.fields_of(t))]

    def _of_context(self, item: Item, context: Context) -> bool:
        """Tell whether a word names an aspect of a thing that the headings name."""
        return any(thing in context.things for thing in aspect_things(self.book, [item], context))

    @staticmethod
    def _is_label(item: Item, parsed: Parsed, split: int) -> bool:
        """Tell whether a word is all of a label."""
        return bool(split) and parsed.text[:split].strip(" :") == parsed.text[item.start : item.end]

    def _is_short_label(self, item: Item, parsed: Parsed, split: int) -> bool:
        """Tell whether a word is all of a label that a bare figure answers: "Beds: 2" counts them."""
        if not item.has("short") or not self._is_label(item, parsed, split):
            return False
        answer = next((i for i in parsed.items if i.start >= split and (i.quantity is not None or i.tells)), None)
        return answer is not None and answer.quantity is not None and answer.quantity.bare

    def _ends_name(self, item: Item, parsed: Parsed) -> bool:
        """Tell whether such a word only ends the short name of a thing: "GW and BW tanks" are no other tanks."""
        return any(i.has("short") and i.last == item.first and i.chunk == item.chunk for i in parsed.items)

    def _parted(self, named: Named, parsed: Parsed) -> tuple[Named, Named]:
        """Give what names things, and what refers to some that are named elsewhere."""
        referring = [pair for pair in named if refers(self.book, pair[1])]
        plain = [pair for pair in named if not refers(self.book, pair[1])]
        return plain, [pair for pair in referring if not self._ends_name(pair[0], parsed)]

    def _resolved(self, named: Named, parsed: Parsed, split: int) -> Named:
        """Put the things that the sentence named before for words such as "neither tank".

        Where none were, "all tanks" means those that the van has (``Thing.among``). Others go.
        """
        found: Named = []
        for item, things in named:
            common = [thing for thing in things if self.book.things[thing].among] if len(things) > 1 else []
            if common:  # "waste tanks" are the gray and the black one, but 30 gallons in them are of the gray one
                plain = [thing for thing in things if thing not in common]
                found.append((item, self._all_of(item, common, parsed, split) or plain))
                continue
            if not refers(self.book, things):
                found.append((item, things))
                continue
            before = [t for other, own in found if other.sentence == item.sentence for t in expanded(self.book, own)]
            measured = any(i.quantity is not None and i.last == item.first for i in parsed.items)
            if measured and before and self.book.fields_of(before[-1]):
                before = before[-1:]  # "makes hot water in a 12-litre tank"
            meant = referred(self.book, things, before)
            if not meant:
                meant = self._all_of(item, things, parsed, split)
            if meant:
                found.append((item, list(dict.fromkeys(meant))))
        return found

    def _all_of(self, item: Item, things: list[str], parsed: Parsed, split: int) -> list[str]:
        """Give all that words such as "all tanks" mean, where something but a size is told of them.

        Of which of them a size is nobody knows; "with both tanks full" tells nothing, and what stands before them,
        as "without heating all tanks must be drained", tells of something else.
        """
        among = [other for thing in things for other in self.book.things[thing].among]
        sizes = {self.book.fields[f].dimension for t in among for f in self.book.fields_of(t)} - {""}
        beside = [i for i in parsed.items if i.sentence == item.sentence]
        denied = bool(split) and is_answer(parsed, split) == "no"  # "Heat on any tank: none, see page 2"
        figures = [i.quantity for i in beside if i.quantity is not None]
        if not denied and any(figure.bare or figure.dimension in sizes for figure in figures):
            return []
        near = [i for i in beside if i.start >= item.end and i.clause == item.clause or item.start < split]
        if any(owns(self.book, t, c) for t in among for i in near for c in i.concepts):
            return among
        asked = {self.book.fields[f].aspect for t in among for f in self.book.fields_of(t)} - {"", "capacity"}
        return among if split and any(i.has("aspect", *asked) for i in near) else []  # "Waste tanks, heat: none"

    def _by_aspect(self, parsed: Parsed, split: int, context: Context) -> list[Group]:
        labels = [i for i in parsed.items if i.start < split]
        items = [i for i in labels if i.has("aspect")]
        if not items:
            return []
        aspects = {name for item in items for name in item.names("aspect")}
        things = aspect_things(self.book, items, context)
        if words := [n for i in labels for n in (*i.names("thing"), *i.names("short")) if refers(self.book, [n])]:
            things = referred(self.book, words, things)  # "tank heat" is of no line or heater that a heading names
        things = [t for t in things if t in context.things or self._can_be_of(t, aspects, parsed, split)]
        return [Group(things, items, True)] if things else []

    def _can_be_of(self, thing: str, aspects: set[str], parsed: Parsed, split: int) -> bool:
        """Tell whether a thing that nothing names can have what a label asks for, where that is a figure.

        "Power: gasoline, 3.0 L" and "Leistung: Diesel, 120 kW" say nothing of a heater.
        """
        specs = [self.book.fields[name] for name in self.book.fields_of(thing)]
        asked = [spec for spec in specs if spec.aspect in aspects]
        if not all(spec.dimension for spec in asked):
            return True
        figures = [i.quantity for i in parsed.items if i.quantity is not None and i.start >= split]
        told = [(q, s.range) for q in figures for s in asked if s.range is not None and s.dimension == q.dimension]
        worded = any(item.tells for item in parsed.items if item.start >= split)
        return not worded or any(quantity.high <= most for quantity, (_, most) in told)

    def _is_quality(self, pair: tuple[Item, list[str]], named: Named, parsed: Parsed, split: int) -> bool:
        """Tell whether a thing named right beside another is only its quality: "tank insulation", "Tank, heating:"."""
        item, things = pair
        words = tuple(token.norm for token in parsed.analysis.tokens[item.first : item.last])
        aspects = {c.name for c in self.lexicon.concepts.get(words, ()) if c.kind == "aspect"}
        if not aspects:
            return False
        label_end = len(parsed.text[:split].rstrip(" :"))
        for other, others in named:
            if other is item or set(others) & set(things):
                continue
            gap = item.first - other.last if other.first < item.first else other.first - item.last
            own = {self.book.fields[f].aspect for t in others for f in self.book.fields_of(t)}
            own |= self._aspects_meant(tuple(others)) if refers(self.book, others) else set()  # "tank heating"
            near = other.chunk == item.chunk or other.end <= item.start and item.end == label_end
            near = near or item.start == 0 and item.end <= other.start and other.end == label_end  # "Heating, gray:"
            if 0 <= gap <= 1 and near and aspects & own:
                return True
        return False

    def _aspects_meant(self, things: tuple[str, ...]) -> set[str]:
        """Give what can be asked of those that words such as "tank" may refer to."""
        if things not in self.meant:
            told = referred(self.book, list(things), list(self.book.things))
            self.meant[things] = {self.book.fields[f].aspect for t in told for f in self.book.fields_of(t)}
        return self.meant[things]

    def _measured_with(self, parsed: Parsed, split: int) -> set[int]:
        """Give things that were only measured with, and have no figure: "Height: 2,890 mm with roof hatch"."""
        found: set[int] = set()
        for cue in parsed.cues("besides") if split else ():
            beside = [i for i in parsed.items if i.start >= split and not parsed.text[i.end : cue.start].strip(" (,")]
            if not any(i.quantity and i.quantity.dimension == "length" for i in beside if i.end < cue.start):
                continue
            behind = [i for i in parsed.items if i.start >= cue.end and i.chunk == cue.chunk]
            if not any(i.quantity for i in behind):
                fields = self.book.fields_of
                found |= {id(i) for i in behind if i.has("thing") and not any(map(fields, i.names("thing")))}
        return found

    def _things(self, item: Item) -> list[str]:
        things = item.names("thing")
        for name in item.names("alone"):
            things.extend(thing for thing in self.book.fields[name].of[:1] if thing not in things)
        return things

    def _groups(self, named: Named, parsed: Parsed, split: int) -> list[Group]:
        groups: list[Group] = []
        for item, things in named:
            label = item.start < split
            last = groups[-1] if groups else None
            if last is not None and last.label == label and item.start < last.end:
                self._join(last, item, things)
            elif last is not None and last.label == label and self._continues(last, item, parsed):
                self._join(last, item, things)
            else:
                groups.append(Group(expanded(self.book, things), [item], label))
        return groups

    def _join(self, group: Group, item: Item, things: list[str]) -> None:
        group.items.append(item)
        group.things.extend(thing for thing in expanded(self.book, things) if thing not in group.things)

    def _continues(self, group: Group, item: Item, parsed: Parsed) -> bool:
        last = group.items[-1]
        if item.clause != last.clause or item.depth != last.depth:
            return False
        first = group.items[0]
        before = _told(parsed, first.chunk, None, first.start) or _tells_itself(first, parsed)
        if (
            item.chunk != last.chunk
            and before
            and (_told(parsed, item.chunk, item.end, None) or _tells_itself(item, parsed))
        ):
            return False  # "pads on the tanks, and the valve in a box", "heated tank, insulated pipes": to each its own
        if self._speaks_apart(group, item) or self._is_one_more(group, item, parsed):
            return False
        inside = [i for i in parsed.items if i.quantity is not None and last.end <= i.start and i.end <= item.start]
        if inside and parsed.text[item.end :].lstrip().startswith(":"):
            return False  # "Gray: 20 gal / Black: 12 gal": each has its own
        if any(i.quantity is not None and i.quantity.bare for i in inside) and _has_figure(item, parsed):
            return False  # "GVM 3500, tare 2815 kg": the second is not of both
        carried = {i.first - 1 for i in inside}  # "with 120 l": the word before belongs to the figure
        between = [
            token.norm
            for n, token in enumerate(parsed.analysis.tokens)
            if last.end <= token.start
            and token.end <= item.start
            and not any(i.start <= token.start < i.end for i in inside)
            and not (n in carried and token.norm in self.binder.company)
        ]
        return all(word in self.coordination for word in between) and len(between) <= 3 and bool(between)

    def _speaks_apart(self, group: Group, item: Item) -> bool:
        """Tell whether a word would state something of the things before it, but is a thing unlike them.

        "A heated gray tank and insulation in the walls".
        """
        if group.label:
            return False  # "Gray water, insulation: standard"
        alike = any(self.short_names.alike(one, item) for one in group.items)
        return not alike and any(owns(self.book, t, c) for t in group.things for c in item.concepts)

    def _is_one_more(self, group: Group, item: Item, parsed: Parsed) -> bool:
        """Tell whether a thing with an article of its own has no part in the figure of the one before it.

        "140 litres of fresh water and a gray tank".
        """
        first, last = group.items[0], group.items[-1]
        figure = next((i for i in parsed.items if i.quantity is not None and i.last == first.first), None)
        if figure is None or figure.clause != first.clause:
            return False
        words = parsed.text[last.end : item.start].casefold().split()
        return any(word in self.articles for word in words)


def _tells_itself(item: Item, parsed: Parsed) -> bool:
    """Tell whether the name of a thing begins with what it states: "insulated pipes"."""
    return any(i.tells and i.start == item.start and i.end < item.end for i in parsed.items)


def _has_figure(item: Item, parsed: Parsed) -> bool:
    """Tell whether a figure stands right behind the name of a thing."""
    return any(other.quantity is not None and other.first == item.last for other in parsed.items)


def _told(parsed: Parsed, chunk: int, after: int | None, before: int | None) -> bool:
    """Tell whether a word that states something stands in a chunk, behind or before a place."""
    return any(
        i.chunk == chunk and (after is None or i.start >= after) and (before is None or i.end <= before) and i.tells
        for i in parsed.items
    )
