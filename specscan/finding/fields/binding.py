"""To which group of things a value or quantity of a statement belongs."""

from __future__ import annotations

from specscan.finding.language.lexicon import owns
from specscan.finding.things.context import Context
from specscan.finding.things.groups import Group, Sentence
from specscan.finding.things.items import Item, Parsed
from specscan.rulebook.book import Rulebook

BEFORE_PLACE = 2  # words between a preposition and the thing that is a place
BEHIND_VAN = 1  # the verb before its pronoun: „Beim 59 ist er frei“
BEFORE_SUBJECT = 4  # words and signs from the beginning of a sentence to its subject


class Binder:
    """Binds items to groups; ``coordination`` join like things, ``purpose`` is "for", ``company`` "with"."""

    def __init__(self, book: Rulebook, coordination: set[str], purpose: set[str], company: set[str]):
        self.book = book
        self.coordination = coordination
        self.purpose = purpose
        self.company = company

    def bind(self, item: Item, sentence: Sentence, context: Context) -> tuple[list[str], Group | None]:
        """Give the things that a value or quantity belongs to, and the group; the context where none is near."""
        parsed = sentence.parsed
        in_label = item.start < sentence.split
        groups = [g for g in sentence.groups if g.label == in_label and not self._only_bounds(g, item, parsed)]
        own = [
            g for g in groups
            if any(i.start < item.end and item.start < i.end for i in g.items)
            or (g.start <= item.start and item.end <= g.end)
        ]  # fmt: skip
        if own:
            return self._member(item, own[0], parsed) or own[0].things, own[0]
        clause = [g for g in groups if g.clause == item.clause]
        if sentence.noted:
            clause = [
                g for g in clause
                if g.chunks[0] <= item.chunk <= g.chunks[1] or any(self.book.fields_of(t) for t in g.things)
            ]  # fmt: skip
        clause = [g for g in clause if g.start < item.start or not _opens_pair(g, parsed)]
        chosen = self._nearest(item, clause, parsed)
        if chosen is not None and item.quantity is None and self._is_place(chosen, item, parsed):
            others = [g for g in clause if g.end <= chosen.start and not self._is_place(g, item, parsed)]
            named = self._nearest(item, others, parsed)
            if named is not None and any(owns(self.book, t, c) for t in named.things for c in item.concepts):
                chosen = named
        if chosen is not None and item.quantity is None:
            chosen = self._served(item, chosen, clause, parsed)
        labels = [] if in_label else sentence.label_groups()
        if labels and (
            chosen is None or not self._close(item, chosen, parsed) or self._is_purpose(item, chosen, parsed)
        ):
            return self._label_things(labels), labels[0]
        if chosen is not None and item.quantity is None and self._is_company(item, chosen, parsed):
            first = next((g for g in clause if g.end <= item.start), None)
            first = first or next((g for g in groups if g.end <= item.start and _same_sentence(g, item)), None)
            if first is None:
                return chosen.things, chosen
            return list(dict.fromkeys([*first.things, *chosen.things])), first
        if chosen is not None:
            return self._last_measured(item, chosen, parsed) or chosen.things, chosen
        if not labels and item.quantity is not None and sentence.started.get(item.clause):
            return sentence.started[item.clause], None  # what words of its own clause bring in
        before = [] if sentence.noted else [g for g in groups if g.end <= item.start and _same_part(g, item, sentence)]
        if before:
            return before[-1].things, before[-1]
        if labels:
            return self._label_things(labels), labels[0]
        meant = self.meant_by_pronoun(item, sentence)
        if meant is not None:
            return meant.things, meant
        near = [i for i in parsed.items if i.chunk == item.chunk and i.has("aspect")] if item.quantity else []
        if sentence.noted and item.clause > 0 and not any(i.vans and i.clause == item.clause for i in parsed.items):
            context = Context()  # only the first clause of a note speaks of what refers to it
        things = aspect_things(self.book, near, context) or sentence.started.get(item.clause) or list(context.things)
        return things, None

    def _is_place(self, group: Group, item: Item, parsed: Parsed) -> bool:
        """Tell whether a thing without fields only says where another is: "tank behind the driver's seat, inside"."""
        if group.end > item.start or any(map(self.book.fields_of, group.things)):
            return False
        first = group.items[0]
        ahead = [c for c in parsed.cues("preposition") if c.chunk == first.chunk and c.end <= first.start]
        return any(first.first - cue.last <= BEFORE_PLACE for cue in ahead)

    def _served(self, item: Item, group: Group, clause: list[Group], parsed: Parsed) -> Group:
        """Give the thing before a word, where the one behind is only what it serves: "an element for shore power"."""
        between = parsed.between(item.end, group.start) if group.start >= item.end else []
        if not between or between[-1] not in self.purpose:
            return group
        concepts = [c for c in item.concepts if c.kind == "value"]
        before = [g for g in clause if g.end <= item.start]
        near = before[-1] if before else None
        told = near is not None and any(owns(self.book, t, c) for t in near.things for c in concepts)
        return near if near is not None and told else group

    def _only_bounds(self, group: Group, item: Item, parsed: Parsed) -> bool:
        """Tell whether words that may name a thing only bound a figure: "jusqu'à 4 couchages" tells no coldest day."""
        bounds = parsed.cues("at_most")
        bounding = all(any(c.start <= i.start and i.end <= c.end for c in bounds) for i in group.items)
        if item.quantity is None or not bounding:
            return False
        told = {self.book.fields[f].dimension for thing in group.things for f in self.book.fields_of(thing)}
        return item.quantity.dimension not in told

    def meant_by_pronoun(self, item: Item, sentence: Sentence) -> Group | None:
        """Give the thing of which running text goes on to speak: "The gray tank is under the floor. It holds 80 l".

        It is the one that the sentence before begins with, where this one begins with a pronoun.
        """
        if not sentence.running or item.start < sentence.split:
            return None
        parsed = sentence.parsed
        if any(cue.sentence == item.sentence and parsed.opens_sentence(cue) for cue in parsed.cues("latter")):
            last = [g for g in sentence.groups if g.items[0].sentence == item.sentence - 1]
            return last[-1] if last else None  # "Ce dernier est chauffé" tells of what was named last
        pronouns = parsed.cues("pronoun") if item.sentence or sentence.asked else []
        number = item.sentence
        while any(cue.sentence == number and _opens(cue, parsed) for cue in pronouns):
            if number == 0:
                return Group(list(sentence.asked), [item]) if sentence.asked else None
            number -= 1
            groups = [g for g in sentence.groups if g.items[0].sentence == number]
            if groups:
                opening = next((b[0] for b in parsed.bounds if b[3] == number), 0)
                begins = len(parsed.between(opening, groups[0].start)) <= BEFORE_SUBJECT
                ahead = [i for i in parsed.items if opening <= i.start < groups[0].start]
                named = any(i.vans or i.has("cue", "verbs") for i in ahead)  # "There is a step by the gray tank."
                asked = "?" in parsed.text[groups[0].end : item.start]
                return groups[0] if begins and not named and not asked else None
        return None

    def _member(self, item: Item, group: Group, parsed: Parsed) -> list[str]:
        """Give the thing of the one member of a list with which a quantity stands: "the tank, the 4-gallon heater"."""
        if item.quantity is None or len(group.items) < 2 or group.chunks[0] == group.chunks[1]:
            return []
        ahead = [i for i in group.items if i.end <= item.start and i.chunk == item.chunk]
        behind = [i for i in group.items if i.start >= item.end and i.chunk == item.chunk]
        near = behind[:1] if not ahead else ahead[-1:] if not behind else []
        if not near or any(word in self.coordination for word in self._words_between(item, near[0], parsed)):
            return []
        return [thing for thing in (*near[0].names("thing"), *near[0].names("short")) if thing in group.things]

    def _last_measured(self, item: Item, group: Group, parsed: Parsed) -> list[str]:
        """Give the last of several things, each with its figure, where a word stands with it alone.

        "Fresh 80 l, waste 65 l under the floor"; behind another comma it would be said of both.
        """
        last = group.items[-1]
        if item.quantity is not None or len(group.items) < 2 or last.end > item.start or last.chunk != item.chunk:
            return []
        figures = {i.chunk for i in parsed.items if i.quantity is not None}
        if group.items[-2].chunk == last.chunk or not figures.issuperset(i.chunk for i in group.items):
            return []
        if any(word in self.coordination for word in parsed.between(last.end, item.start)):
            return []
        return [thing for thing in (*last.names("thing"), *last.names("short")) if thing in group.things]

    @staticmethod
    def _words_between(one: Item, two: Item, parsed: Parsed) -> list[str]:
        return parsed.between(min(one.end, two.end), max(one.start, two.start))

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

    def _is_company(self, item: Item, group: Group, parsed: Parsed) -> bool:
        """Tell whether a thing behind a word is only in company: "the tank is in a heated bay with the valve"."""
        gap = parsed.between(item.end, group.start)
        return bool(gap) and gap[-1] in self.company and group.items[0].chunk == item.chunk

    def _is_purpose(self, item: Item, group: Group, parsed: Parsed) -> bool:
        """Tell whether a thing behind a figure is only what it is for: "one 4 kg bottle for the cooktop"."""
        between = parsed.between(item.end, group.start)
        return len(between) > 1 and between[-1] in self.purpose

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


def aspect_things(book: Rulebook, items: list[Item], context: Context) -> list[str]:
    """Give the thing whose aspect is named: the one of the context that has it, or the only one there is."""
    owners: list[set[str]] = []
    for item in items:
        for name in item.names("aspect"):
            owners.append({t for field in book.fields_by("aspect").get(name, ()) for t in book.fields[field].of})
    for thing in context.things if owners else ():
        if any(thing in own for own in owners):
            return [thing]
    single = {next(iter(own)) for own in owners if len(own) == 1}
    return sorted(single) if len(single) == 1 else []


def _same_sentence(group: Group, item: Item) -> bool:
    return group.items[0].sentence == item.sentence


def _same_part(group: Group, item: Item, sentence: Sentence) -> bool:
    """Tell whether a group may still be the subject: in running text only within its sentence."""
    last = group.items[-1].sentence
    if not sentence.running or last == item.sentence:
        return last <= item.sentence
    opened = next((b[0] for b in sentence.parsed.bounds if b[3] == item.sentence), 0)
    return last == item.sentence - 1 and sentence.parsed.text[opened : opened + 1] == "?"  # "50 A? No, 30 A"


def _opens(cue: Item, parsed: Parsed) -> bool:
    """Tell whether a sentence begins with a pronoun, or with nothing but vans before it: "On the 20 it is exposed"."""
    if parsed.opens_sentence(cue):
        return True
    start = next((bound[0] for bound in parsed.bounds if bound[3] == cue.sentence), 0)
    vans = [i for i in parsed.items if i.vans and start <= i.start and i.end <= cue.start]
    if not vans:
        return False
    ahead, behind = parsed.between(start, vans[0].start), parsed.between(vans[-1].end, cue.start)
    ahead, behind = ([word for word in words if word[0].isalnum()] for words in (ahead, behind))
    return len(vans) == 1 and len(ahead) <= BEFORE_PLACE and len(behind) <= BEHIND_VAN


def _opens_pair(group: Group, parsed: Parsed) -> bool:
    """Tell whether a group is the label of an inner pair, as in "3300 kg  MIRO: 2780 kg" or "(empty: 2780 kg)"."""
    return parsed.text[group.end : group.end + 3].lstrip().startswith(":")
