"""A document of passages → its vans and the facts about them."""

from __future__ import annotations

import re
from collections import defaultdict
from collections.abc import Collection, Mapping
from dataclasses import dataclass, replace

from specscan.finding.cast import Cast, Player
from specscan.finding.doubts import set_aside_doubtful
from specscan.finding.found import Availability, Found, How, Value
from specscan.finding.frames import Statement
from specscan.finding.items import Item, Parsed
from specscan.finding.kit import JOIN, Kit, Kits
from specscan.finding.known_vans import known_cast
from specscan.finding.legend import read_legend
from specscan.finding.names import Place
from specscan.finding.scope import settle_scope
from specscan.finding.special import special_values
from specscan.finding.statements import Draft, StatementMaker
from specscan.finding.van_mentions import VanMentions
from specscan.records.facts import DocumentFacts, Fact, VanName
from specscan.records.text import Box, Document, Kind, Passage
from specscan.rulebook.book import Rulebook

REFERRING = 24  # letters at the start of a paragraph in which a pronoun refers to the one above


@dataclass(slots=True)
class Reading:
    """A statement with all that came of it."""

    draft: Draft
    parsed: Parsed
    split: int
    found: list[Found]
    things: list[str]


class Finder:
    """Finds facts in documents, by the declared rules only."""

    def __init__(self, book: Rulebook):
        self.book = book
        self.kits = Kits(book)

    def find(self, document: Document, named: VanName | None = None) -> DocumentFacts:
        """Give the vans that a document speaks of and the facts about them, rejected candidates included.

        ``named`` is the van that the user says the document is about: it counts where the document names none.
        """
        kit = self.kits.for_document(document)
        cast = kit.casts.read(document)
        if named is not None and not cast.players:
            cast.players.append(Player(named.model, None, {named.model}))
        facts, passages, _ = self._facts(document, kit, cast)
        if not cast.players or (named is None and not self._has_van(cast, facts, document)):
            return DocumentFacts((), (), kit.language, "no van is named or described")
        names = [_van_name(cast, player) for player in cast.players]
        identity = [fact for player in cast.players for fact in _identity(cast, player, self.book)]
        identity = set_aside_doubtful(identity, passages)
        return DocumentFacts(tuple(names), tuple([*identity, *facts]), kit.language)

    def find_about(
        self, document: Document, names: Mapping[str, Collection[str]]
    ) -> tuple[list[Fact], VanMentions, frozenset[str]]:
        """Give what a text states about vans that are known beforehand, and the places at which texts name them.

        ``names`` gives for the id of each van the texts that name it; ``Fact.model`` is then such an id. A statement
        that names no van comes once for each member of the cast, which is given too.
        """
        kit, cast = self.kits.for_document(document), known_cast(names)
        facts, _, vans = self._facts(document, kit, cast)
        return facts, vans, cast.models

    def _facts(self, document: Document, kit: Kit, cast: Cast) -> tuple[list[Fact], list[Passage], VanMentions]:
        cues = kit.lexicon.words.cues
        vans = VanMentions(cast, [*cues.get("carries", []), *cues.get("verbs", [])])
        passages = [p for p in document.passages if p.number not in cast.names.other]
        legend = read_legend(passages, kit.lexicon, vans, self.book.general)
        maker = StatementMaker(kit, vans, legend, passages)
        reader = _Reader(self.book, kit, cast, vans, maker, passages)
        return set_aside_doubtful(reader.facts(), passages), passages, vans

    def _has_van(self, cast: Cast, facts: list[Fact], document: Document) -> bool:
        """Tell whether the document describes a van: enough of its measures, or a model with various figures."""
        evidence = self.book.general.van_evidence
        counted = [f for f in facts if not f.rejected and f.how != "heading"]
        listed = {f.field for f in counted if f.how != "prose"}
        core = listed.intersection(evidence.core)
        if len(core) >= evidence.core_from or (cast.heads and core and len(listed) >= evidence.fields_from):
            return True
        fields = {f.field for f in counted}
        if cast.rostered and len(fields) >= evidence.fields_from:
            return True
        title = cast.players[0].model.casefold()
        named = [p for p in document.passages if title in p.text.casefold()]
        groups = {self.book.fields[name].group for name in (fields if len(named) >= 2 else listed)}
        if not re.search(r"\d", title) or not named:
            return False
        if core and len(listed) >= evidence.fields_from and any(p.kind is Kind.HEADING for p in named):
            return True
        alone = len(named) >= 2 or len(listed) >= 2 * evidence.fields_from
        return alone and len(groups) >= evidence.groups_from


class _Reader:
    def __init__(
        self, book: Rulebook, kit: Kit, cast: Cast, vans: VanMentions, maker: StatementMaker, passages: list[Passage]
    ):
        self.book, self.kit, self.cast, self.vans = book, kit, cast, vans
        self.maker, self.passages = maker, passages
        self.everyone = cast.models
        self.topic: tuple[Passage | None, frozenset[str] | None] = (None, None)
        self.notes: dict[tuple[int, str], Passage] = {}
        for passage in passages:
            if passage.kind is Kind.FOOTNOTE:
                for sign in passage.notes[:1]:
                    self.notes.setdefault((passage.page, sign), passage)

    def facts(self) -> list[Fact]:
        """Give the facts of all passages."""
        readings: list[Reading] = []
        row_things: list[str] = []
        place: tuple[object, ...] = ()
        for passage in self.passages:
            here = (passage.block, passage.table, passage.sections)
            if here != place:
                row_things, place = [], here
            for draft in self.maker.drafts(passage):
                if draft.how is How.NOTE:
                    continue
                reading = self._read(draft, row_things)
                readings.append(reading)
                if draft.how in (How.CELL, How.PAIR) and reading.things:
                    row_things = reading.things
        readings.extend(self._note_readings(readings))
        facts: list[Fact] = []
        for reading in readings:
            facts.extend(self._facts_of(reading))
        return _metric_first(self._with_notes(facts, readings), self.passages)

    def _read(self, draft: Draft, row_things: list[str], context: list[str] | None = None) -> Reading:
        sense = self.maker.sense(draft.passage)
        if context is None:
            context = list(sense.things)
            if draft.how in (How.CELL, How.PAIR) and self._goes_on(draft.label):
                context = [*row_things, *context]
            elif draft.how in (How.PROSE, How.HEADING):
                context = []
        parsed, split = self.kit.parse(draft.label, draft.body, self.vans, draft.hint)
        note = self._note(draft)
        statement = Statement(parsed, split, draft.how, context, note)
        found = self.kit.frames.read(statement)
        if draft.not_fitted and draft.how is not How.PROSE:
            found += self._not_fitted(parsed, split, found)
        found += special_values(self.book, self.kit, statement, draft, sense.things)
        groups = self.kit.frames.grouper.form(parsed, split, context).label_groups()
        things = [thing for group in groups for thing in group.things]
        return Reading(draft, parsed, split, found, things)

    def _goes_on(self, label: str) -> bool:
        """Tell whether a row may speak of the thing of the row above: it has no label, or one that is known.

        Under "Height", "Capacity" may go on; "Axle to axle" is something else, even where nobody knows what.
        """
        analysis = self.kit.lexicon.analyse(label)
        return bool(analysis.mentions) or not any(token.norm.isalpha() for token in analysis.tokens)

    def _not_fitted(self, parsed: Parsed, split: int, found: list[Found]) -> list[Found]:
        """Give the things named under "not fitted" that are stated by their mere name."""
        made = []
        for group in self.kit.frames.grouper.form(parsed, split, []).groups:
            for thing, item in ((t, i) for i in group.items for t in i.names("thing")):
                for name in self.book.fields_of(thing):
                    spec = self.book.fields[name]
                    if (
                        spec.none
                        and not spec.presence
                        and spec.aspect in ("", "capacity")
                        and not any(f.field == name for f in found)
                    ):
                        made.append(
                            Found(
                                name, Value(), item.start, item.end, f"{name}:not fitted", item, sentence=item.sentence
                            )
                        )
        return made

    def _note(self, draft: Draft) -> Parsed | None:
        """Give what the first sentence of the note that a statement refers to says of its vans, for the basis."""
        for sign in draft.notes:
            passage = self.notes.get((draft.passage.page, sign))
            if passage is not None:
                return self.kit.parse("", self._clause_for(passage.text, draft.scope.vans), self.vans)[0]
        return self._note_of_others(draft)

    def _note_of_others(self, draft: Draft) -> Parsed | None:
        """Give what a note to other cells of the table says of those without its mark: "others are output"."""
        if draft.passage.table is None:
            return None
        for (page, _), note in self.notes.items():
            if page != draft.passage.page:
                continue
            for part in re.split(r"[;.]", note.text):
                parsed = self.kit.parse("", part, self.vans)[0]
                if parsed.cues("unmarked"):
                    return parsed
        return None

    def _clause_for(self, note: str, models: frozenset[str] | None) -> str:
        """Give the part of a note's first sentence that names the vans, or else its first part.

        "Heat output; Drift 21: gas input" says input of the Drift 21 and output of the others.
        """
        parts = re.split(r";", re.split(r"(?<=[.!?])\s", note)[0])
        for part in parts[1:]:
            named = frozenset().union(*(vans for _, _, vans in self.vans.find(part)))
            if models and models <= named:
                return part
        return parts[0]

    def _note_readings(self, readings: list[Reading]) -> list[Reading]:
        """Read each note in the context of the statements that refer to it."""
        found = []
        for (page, sign), passage in self.notes.items():
            users = [r for r in readings if r.draft.passage.page == page and sign in r.draft.notes]
            things = list(dict.fromkeys(t for r in users for f in r.found for t in f.things))
            things = things or list(dict.fromkeys(t for r in users for t in r.things))
            for draft in self.maker.drafts(passage):
                if len(users) == 1 and draft.scope.vans is None:
                    draft.scope = replace(users[0].draft.scope, by_van=dict(users[0].draft.scope.by_van))
                found.append(self._read(draft, [], things))
        return found

    # facts

    def _facts_of(self, reading: Reading) -> list[Fact]:
        facts: list[Fact] = []
        draft, parsed = reading.draft, reading.parsed
        topics = self._topics(reading)
        for found in reading.found:
            spec = self.book.fields[found.field]
            if draft.how is How.HEADING and spec.text != "matched":
                continue
            scope = draft.scope
            if scope.vans is None and found.sentence in topics:
                scope = replace(scope, vans=topics[found.sentence])
            base = settle_scope(found, parsed, reading.split, scope, self.everyone)
            for van, said in base.items():
                facts.append(self._fact(found, van, said, reading))
        return facts

    def _topics(self, reading: Reading) -> dict[int, frozenset[str]]:
        """Give for each sentence of running text the vans that an earlier sentence set as its subject."""
        topics: dict[int, frozenset[str]] = {}
        if reading.draft.how is not How.PROSE or self.vans.single:
            return topics
        current = self._topic_before(reading)
        last_named: frozenset[str] | None = None
        last = max((i.sentence for i in reading.parsed.items), default=0)
        for number in range(last + 1):
            items = [i for i in reading.parsed.items if i.sentence == number]
            if any(i.has("cue", "all_vans") for i in items):
                current = None
            named = [i.vans for i in items if i.vans]
            named = named or [v for v in [self._of_two(items, reading.parsed.text)] if v]
            if last_named is not None and not named and self._opens_with_pronoun(items):
                current = last_named
            last_named = named[-1] if named else last_named
            if named:
                current = named[-1] if len(named) == 1 else frozenset().union(*named)
            if current is not None:
                topics[number] = current
        self.topic = (reading.draft.passage, current)
        return topics

    def _of_two(self, items: list[Item], text: str) -> frozenset[str] | None:
        """Give the van of two that "the longer one" or "the small one" means, by the figures in their names."""
        definite = set(self.kit.lexicon.words.cues.get("definite", []))
        sizes = [
            i for i in items if i.has("cue", "larger_one", "smaller_one")
            and (text[: i.start].split() or [""])[-1].casefold() in definite
        ]  # fmt: skip
        figures = {model: re.findall(r"\d+(?:\.\d+)?", model) for model in self.everyone}
        if not sizes or len(self.everyone) != 2 or not all(figures.values()):
            return None
        ordered = sorted(self.everyone, key=lambda model: float(figures[model][0]))
        if figures[ordered[0]][0] == figures[ordered[1]][0]:
            return None
        return frozenset({ordered[-1] if sizes[0].has("cue", "larger_one") else ordered[0]})

    @staticmethod
    def _opens_with_pronoun(items: list[Item]) -> bool:
        """Tell whether a sentence begins with a pronoun, meaning the van named last: "A is small, B large. It …"."""
        told = [i for i in items if not i.has("cue", "coordination")]
        return bool(told) and told[0].has("cue", "refers_back")

    def _topic_before(self, reading: Reading) -> frozenset[str] | None:
        """Give the vans of which the paragraph above spoke last, where this one begins "We left it …"."""
        above, vans = self.topic
        passage = reading.draft.passage
        if above is None or (above.block, above.sections) != (passage.block, passage.sections):
            return None
        start = passage.text.casefold()[:REFERRING]
        words = self.kit.lexicon.words.cues.get("refers_back", [])
        return vans if any(re.search(rf"(?<!\w){re.escape(word)}(?!\w)", start) for word in words) else None

    def _fact(self, found: Found, van: str, said: Availability | None, reading: Reading) -> Fact:
        draft = reading.draft
        availability = said
        if availability is None:
            stated = draft.how not in (How.PROSE, How.HEADING)
            availability = Availability.STANDARD if stated else Availability.UNSTATED
        value = found.value
        rejected = found.rejected
        if draft.by_owner:
            availability = Availability.UNSTATED
        if draft.not_fitted and draft.how is not How.PROSE:
            value, rejected = self._absent(found)
            availability = Availability.STANDARD
        page, box = self._place(found, reading)
        option = self.maker.sense(draft.passage).option if availability is Availability.OPTIONAL else ""
        return Fact(
            field=found.field,
            model=van,
            num=value.num,
            low=value.low,
            high=value.high,
            text=value.text,
            flag=value.flag,
            unit=self.book.unit_of(found.field),
            printed=self._printed(found, reading),
            printed_unit=found.unit,
            basis=found.basis,
            availability=availability.value,  # type: ignore[arg-type]
            option=option,
            page=page,
            box=box,
            found_by=found.pattern,
            confidence=self._confidence(found, reading),
            how=draft.how.value,
            weak=found.weak,
            passage=draft.passage.number,
            rejected=rejected,
        )

    def _absent(self, found: Found) -> tuple[Value, str]:
        """Turn equipment named under "not fitted" into its stated absence."""
        spec = self.book.fields[found.field]
        if spec.type == "flag":
            return Value(flag=False), found.rejected
        if spec.none:
            return (Value(text=spec.none) if spec.type == "choice" else Value(num=float(spec.none))), found.rejected
        return found.value, "named as not fitted"

    def _place(self, found: Found, reading: Reading) -> tuple[int, Box | None]:
        draft = reading.draft
        passage = draft.passage
        offset = len(draft.label) + len(JOIN) if draft.label else 0
        start, end = found.start - offset, found.end - offset
        if draft.how is How.MARKED or start < 0:
            head = passage.column if draft.label_from == "column" else passage.row
            if draft.how is How.MARKED or draft.label_from in ("row", "column"):
                return passage.page, head.box if head is not None and head.box is not None else passage.box()
            return passage.page, passage.box()
        if draft.shown:
            return passage.page, passage.box(draft.body_at, draft.body_at + len(draft.shown))
        return passage.page, passage.box(start + draft.body_at, end + draft.body_at)

    def _printed(self, found: Found, reading: Reading) -> str:
        """Give the words that say it: label and cell, list item, or the sentence."""
        draft, parsed = reading.draft, reading.parsed
        if draft.how is How.MARKED:
            return f"{draft.body}: {draft.passage.text}" if draft.passage.text != draft.body else draft.body
        if draft.label:
            return f"{draft.label}: {draft.shown or draft.body}"
        start = max((b[0] for b in parsed.bounds if b[3] == found.sentence), default=0)
        starts = [b[0] for b in parsed.bounds if b[3] == found.sentence]
        ends = [b[0] for b in parsed.bounds if b[3] > found.sentence]
        start, end = (starts[0] if starts else 0), (ends[0] if ends else len(parsed.text))
        return parsed.text[start:end].strip(" .!?") or parsed.text

    def _confidence(self, found: Found, reading: Reading) -> float:
        weights = self.book.general.confidence
        value = weights[reading.draft.how.value]
        if found.weak:
            value = min(value, weights["weak"])
        if found.from_label:
            value += weights["carried_context"]
        elif found.things and self._under_heading(found.things, reading.draft.passage):
            value += weights["own_heading"]
        if found.basis == "product":
            value = min(value, weights["derived_product"])
        if reading.draft.passage.source == "ocr":
            value += weights["ocr"]
        return round(max(0.0, min(1.0, value)), 3)

    def _under_heading(self, things: list[str], passage: Passage) -> bool:
        """Tell whether the nearest heading names the thing that is spoken of."""
        if not passage.sections:
            return False
        mentions = self.kit.lexicon.analyse(passage.sections[-1]).mentions
        named = {m.concept.name for m in mentions if m.concept.kind in ("thing", "short", "section")}
        named |= {t for m in mentions if m.concept.kind == "alone" for t in self.book.fields[m.concept.name].of}
        return bool(named & set(things))

    def _with_notes(self, facts: list[Fact], readings: list[Reading]) -> list[Fact]:
        """Let a note that names a van go before the statement that it belongs to.

        "9 ft 7 in¹" with "¹ Summit 10 ft 2 in" holds for all but the Summit; "200 W⁵" with "⁵ Traverse;
        on Summit 400 W" for the Traverse only.
        """
        users: dict[int, set[int]] = defaultdict(set)
        for reading in readings:
            for sign in reading.draft.notes:
                note = self.notes.get((reading.draft.passage.page, sign))
                if note is not None and note.number != reading.draft.passage.number:
                    users[note.number].add(reading.draft.passage.number)
        result = list(facts)
        for number, passages in users.items():
            note = next(p for p in self.passages if p.number == number)
            own = [f for f in facts if f.passage == number and not f.rejected]
            only = self._only(note.text)
            for index, fact in enumerate(result):
                if fact.passage not in passages or fact.rejected:
                    continue
                other = [f for f in own if f.field == fact.field and f.model == fact.model and f.value != fact.value]
                covered = {f.model for f in own if f.field == fact.field} != self.everyone
                if (other and covered) or (only is not None and fact.model not in only):
                    result[index] = replace(fact, rejected="a footnote says otherwise for this van")
        return result

    def _only(self, text: str) -> frozenset[str] | None:
        """Give the vans to which a note's first words restrict what they belong to."""
        if self.vans.single:
            return None
        first = re.split(r"[;,.]", text)[0]
        return self.vans.whole(first)


METRIC = {"mm", "cm", "m", "kg", "l", "L", "l/h", "L/h", "W", "kW", "°C", "m²·K/W", "litres", "liters"}


def _metric_first(facts: list[Fact], passages: list[Passage]) -> list[Fact]:
    """Where a row prints a value in US and in metric units side by side, keep the metric one."""
    rows = {p.number: (p.table, p.row_index) for p in passages if p.table is not None}
    groups: dict[tuple[object, ...], list[int]] = defaultdict(list)
    for index, fact in enumerate(facts):
        if fact.num is not None and not fact.rejected and fact.passage in rows:
            groups[(fact.field, fact.model, fact.availability, rows[fact.passage])].append(index)
    result = list(facts)
    for members in groups.values():
        metric = [i for i in members if facts[i].printed_unit in METRIC]
        if not metric or len(metric) == len(members):
            continue
        for index in members:
            twin = next((facts[m] for m in metric if _near(facts[m], facts[index])), None)
            if index not in metric and twin is not None:
                result[index] = replace(facts[index], rejected="the same value stands beside it in metric units")
    return result


def _near(one: Fact, two: Fact) -> bool:
    assert one.num is not None and two.num is not None
    if one.unit == "°C":
        return abs(one.num - two.num) <= 1.5
    return abs(one.num - two.num) <= 0.05 * max(abs(one.num), abs(two.num))


def _van_name(cast: Cast, player: Player) -> VanName:
    if player.listed is not None:
        return VanName(player.listed.maker, player.model, player.listed.year)
    return VanName(cast.names.maker, player.model, cast.names.year)


def _identity(cast: Cast, player: Player, book: Rulebook) -> list[Fact]:
    """Give maker, model and model year of a van as facts with their places."""
    names, name = cast.names, _van_name(cast, player)
    listed = player.listed.place if player.listed is not None else None
    rows: list[tuple[str, object, Place | None]] = [
        ("maker", name.maker, listed or names.maker_place),
        ("model", name.model, player.place or names.title_place),
        ("model_year", name.year, listed or names.year_place),
    ]
    facts = []
    for field_name, value, place in rows:
        if value in ("", None):
            continue
        passage = place.passage if place is not None else None
        facts.append(
            Fact(
                field=field_name,
                model=player.model,
                num=float(value) if isinstance(value, int) else None,
                text=value if isinstance(value, str) else None,
                printed=place.text if place is not None else str(value),
                availability="standard",
                page=place.page if place is not None else 0,
                box=passage.box() if passage is not None and passage.text else None,
                found_by=f"{field_name}:identity",
                confidence=book.general.confidence["identity"],
                how="identity",
                passage=passage.number if passage is not None else 0,
            )
        )
    return facts
