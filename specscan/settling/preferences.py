"""The declared preferences by which statements become one value."""

from __future__ import annotations

from pydantic import Field

from specscan.records.errors import RuleError
from specscan.records.facts import Fact
from specscan.records.names import plain
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import Entry
from specscan.rulebook.yaml_source import read_yaml
from specscan.settling.confidence import Confidences, load_confidences


class Replaced(Entry):
    """Fields that change together once an option changes one of ``when``."""

    when: list[str]
    fields: list[str]


class SettlingFile(Entry):
    """The file ``rules/settling.yaml``."""

    forms: list[str]
    settle_at: float = Field(ge=0, le=1)
    sure_at: float = Field(ge=0, le=1)
    agree_within: dict[str, float]
    least_stake: float = Field(ge=0)
    never_conflicts: list[str] = Field(default_factory=list)
    longer_wins: list[str] = Field(default_factory=list)
    replaced_together: list[Replaced] = Field(default_factory=list)


class Preferences(SettlingFile):
    """What ``rules/settling.yaml`` says, and the table of ``rules/confidence.yaml``."""

    confidences: Confidences

    def rank(self, fact: Fact) -> int:
        """Give how far down a statement stands among the forms, one read with little confidence behind its kind."""
        place = self.forms.index(fact.how) if fact.how in self.forms else len(self.forms)
        return 2 * place + (5 if fact.confidence < self.sure_at else 0)

    def agree(self, name: str, one: Fact, two: Fact) -> bool:
        """Tell whether two statements about a field say the same."""
        if one.num is not None and two.num is not None:
            slack = self.agree_within.get(one.unit)
            if slack is None:
                slack = self.agree_within["share"] * max(abs(one.num), abs(two.num))
            return abs(one.num - two.num) <= slack + 1e-9
        if one.text is not None and two.text is not None:
            a, b = plain(one.text), plain(two.text)
            if name in self.longer_wins:
                return a.startswith(b) or b.startswith(a)
            return a == b or (name not in self.never_conflicts and one.text == two.text)
        return one.value == two.value


def load_preferences(book: Rulebook) -> Preferences:
    """Give the preferences in the folder of the rules.

    Raises:
        RuleError: a file is missing or wrong, or names a field that is not declared; with file and line.
    """
    source = read_yaml(book.folder / "settling.yaml")
    checked = source.validated(SettlingFile)
    mistakes = list(source.mistakes)
    if checked is not None:
        named = [
            *((("never_conflicts",), name) for name in checked.never_conflicts),
            *((("longer_wins",), name) for name in checked.longer_wins),
            *(
                (("replaced_together", index), name)
                for index, group in enumerate(checked.replaced_together)
                for name in (*group.when, *group.fields)
            ),
        ]
        mistakes += [
            source.mistake(place, f"unknown field {name!r}") for place, name in named if name not in book.fields
        ]
        if "share" not in checked.agree_within:
            mistakes.append(source.mistake(("agree_within",), "agree_within needs a share"))
    if mistakes or checked is None:
        raise RuleError(mistakes)
    return Preferences(**checked.model_dump(), confidences=load_confidences(book.folder))
