"""How sure a statement is: how often statements of its kind were right, by ``rules/confidence.yaml``."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

from pydantic import Field, model_validator

from specscan.records.errors import RuleError
from specscan.records.facts import Fact
from specscan.rulebook.models import Entry
from specscan.rulebook.yaml_source import read_yaml

DISAGREES, SEVERAL = "disagreement", "several"  # the grounds that settling finds
GROUNDS = (
    DISAGREES, SEVERAL, "running_text", "implied", "in_label", "named_above", "several_things", "basis_open", "pieced",
    "picture",
)  # fmt: skip
FORMS = ("identity", "table_cell", "label_value", "mark_row", "list_item", "footnote", "prose", "heading")
SUPPOSED = 0.8  # what is supposed of a kind before it is counted, weighing as one statement; common practice, no source


class Counted(Entry):
    """How many statements of a kind were counted, how many of them were right, and the kind in words.

    ``source`` is where they were counted, if not where the others were: it stays when these are counted anew.
    """

    right: int = Field(ge=0)
    of: int = Field(ge=0)
    says: str = ""
    source: str = ""

    @model_validator(mode="after")
    def _not_more_than_all(self) -> Counted:
        if self.right > self.of:
            raise ValueError(f"{self.right} right of {self.of}")
        return self

    @property
    def share(self) -> float:
        """Give the share that is right, smoothed so that few statements prove little; always below 1."""
        return (self.right + SUPPOSED) / (self.of + 1)


class Confidences(Entry):
    """The file ``rules/confidence.yaml``."""

    source: str
    grounds: dict[str, Counted]
    forms: dict[str, Counted]

    def of(self, fact: Fact) -> float:
        """Give how sure a statement is: as its gravest ground has it, or its form where there is none.

        Two grounds or more besides a disagreement count as ``several``. What people state (confidence 1) stays so.
        """
        if fact.confidence == 1.0:
            return 1.0
        kinds = [self.grounds[ground] for ground in gravest(fact.grounds)] or [self.forms[fact.how]]
        return round(min(kind.share for kind in kinds), 3)

    def why(self, form: str, grounds: Sequence[str]) -> str:
        """Give the grounds of a statement in words, where it has none its form."""
        told = [self.grounds[ground].says for ground in grounds if ground in self.grounds]
        return "; ".join(told) or (self.forms[form].says if form in self.forms else "")


def gravest(grounds: Sequence[str]) -> list[str]:
    """Give the grounds among which the confidence is chosen: those told, and ``several`` where they are many."""
    own = [ground for ground in grounds if ground != DISAGREES]
    return [*grounds, SEVERAL] if len(own) > 1 else list(grounds)


def load_confidences(folder: Path) -> Confidences:
    """Give the table of confidences in a folder of rules.

    Raises:
        RuleError: the file is missing or wrong, or a ground or form is missing or unknown; with file and line.
    """
    source = read_yaml(folder / "confidence.yaml")
    checked = source.validated(Confidences)
    mistakes = list(source.mistakes)
    if checked is not None:
        for block, names, known in (("grounds", checked.grounds, GROUNDS), ("forms", checked.forms, FORMS)):
            mistakes += [
                source.mistake((block, name), f"unknown name {name!r}: use {', '.join(known)}")
                for name in names if name not in known
            ]  # fmt: skip
            mistakes += [source.mistake((block,), f"{name} is missing") for name in known if name not in names]
    if mistakes or checked is None:
        raise RuleError(mistakes)
    return checked
