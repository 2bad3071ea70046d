"""Things that a statement names together, and a statement cut into such groups."""

from __future__ import annotations

from dataclasses import dataclass, field

from specscan.finding.things.items import Item, Parsed


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
    asked: list[str] = field(default_factory=list)  # things of the question that running text answers
    started: dict[int, list[str]] = field(default_factory=dict)  # things that words bring in, by clause

    def label_groups(self) -> list[Group]:
        """Give the groups that stand in the label."""
        return [group for group in self.groups if group.label]
