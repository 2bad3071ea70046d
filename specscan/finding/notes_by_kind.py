"""Notes that say something else of each kind of a thing: "LP furnaces: input. Diesel heaters: output"."""

from __future__ import annotations

import itertools
import re
from collections.abc import Iterable
from typing import NamedTuple

from specscan.finding.language.lexicon import Lexicon
from specscan.records.text import Passage

PART = re.compile(r"(?<=[.!?])\s+|;\s*")
CLAUSE = re.compile(r",\s+")
FIGURE = re.compile(r"\d")
LABELLED = re.compile(r"([^:]+):\s+\D+$")  # a figure is no answer that tells kinds apart
Kinds = dict[str, set[str]]  # by vocabulary


class Said(NamedTuple):
    """What a cell says, with its label or head."""

    label: str
    text: str


class KindPart(NamedTuple):
    """A part of a note: of which kinds of a thing it speaks, and what it says."""

    things: set[str]
    kinds: Kinds
    text: str


class NotesByKind:
    """Tells of which kind of a thing each part of a note speaks, and of which kind that of a column is."""

    def __init__(self, lexicon: Lexicon, passages: Iterable[Passage]):
        self.lexicon = lexicon
        self.below: dict[tuple[int | None, str], list[Said]] = {}  # under a head
        self.beside: dict[tuple[int | None, str], list[Said]] = {}  # in a row
        for passage in passages:
            if passage.row is not None and passage.column is not None:
                row, column = passage.row.text, passage.column.text
                self.below.setdefault((passage.table, column), []).append(Said(row, passage.text))
                self.beside.setdefault((passage.table, row), []).append(Said(column, passage.text))

    def parts(self, note: str) -> list[KindPart]:
        """Give the parts of a note that tells kinds of one thing apart, none of another."""
        labelled = [(match.group(1), text) for text in PART.split(note) if (match := LABELLED.match(text))]
        if not labelled:  # "Output for the diesel heaters; for the LP furnace the input is given"
            labelled = [(text, text) for text in PART.split(note) if text and not FIGURE.search(text)]
        made = self._parts(labelled)
        if not made:  # "Input for LP furnaces, output for the gasoline heaters"
            for sentence in PART.split(note):
                if not FIGURE.search(sentence):
                    made = made or self._parts([(text, text) for text in CLAUSE.split(sentence.rstrip("."))])
        return made

    def _parts(self, labelled: list[tuple[str, str]]) -> list[KindPart]:
        """Give those that name a kind of a thing, none where all name the same or one alone does."""
        if len(labelled) < 2:
            return []
        said = [self._said(label) for label, _ in labelled]
        asked = self._vocabularies({thing for _, things in said for thing in things})
        made = []
        for (_, text), (kinds, things) in zip(labelled, said, strict=True):
            if own := {name: told for name, told in kinds.items() if name in asked}:
                made.append(KindPart(things, own, text))
        alike = any(one.kinds == other.kinds for one, other in itertools.combinations(made, 2))
        return made if len(made) > 1 and not alike else []

    def part_for(self, parts: list[KindPart], passage: Passage) -> str | None:
        """Give the part of a note that speaks of the kind which the cells over and below a cell name, or its row."""
        if passage.column is None or passage.row is None:
            return None
        asked = {thing for part in parts for thing in part.things}
        below = self.below.get((passage.table, passage.column.text), [])
        for cells in (below, self.beside.get((passage.table, passage.row.text), [])):
            own: Kinds = {}
            for label, text in cells:
                kinds, things = self._said(f"{label}: {text}")
                if asked & things:
                    exact, _ = self._said(text)  # under "Furnace" a hydronic heater is hydronic
                    for name, told in (kinds | exact).items():
                        own.setdefault(name, set()).update(told)
            fitting = [part for part in parts if all(own.get(name, set()) & told for name, told in part.kinds.items())]
            if len(fitting) == 1:
                return fitting[0].text
        return None

    def _vocabularies(self, things: Iterable[str]) -> set[str]:
        """Give the vocabularies in which the kinds of things are told."""
        book = self.lexicon.book
        return {book.fields[name].vocabulary for thing in things for name in book.fields_of(thing)} - {""}

    def _said(self, text: str) -> tuple[Kinds, set[str]]:
        kinds: Kinds = {}
        things: set[str] = set()
        for mention in self.lexicon.analyse(text).mentions:
            concept = mention.concept
            if concept.kind == "value":
                kinds.setdefault(concept.name, set()).add(concept.value)
            elif concept.kind == "thing":
                things.add(concept.name)
        return kinds, things
