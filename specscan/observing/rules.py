"""How answers are read: ``rules/observing.yaml``."""

from __future__ import annotations

from pydantic import ConfigDict, Field

from specscan.records.errors import RuleError
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import Entry
from specscan.rulebook.yaml_source import read_yaml

FILE = "observing.yaml"


class Way(Entry):
    """A way in which an answer was come by: its name, the words for it, and how it is told."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True)
    name: str
    words: list[str] = Field(alias="as")
    says: str

    def source(self, who: str, when: str) -> str:
        """Give by whom and when, in words."""
        return self.says.replace("{who}", who).replace("{when}", when)


class ObservingRules(Entry):
    """The file ``rules/observing.yaml``."""

    ways: list[Way] = Field(min_length=1)
    read_again: Way
    yes: list[str]
    no: list[str]
    no_answer: list[str]
    not_stated: list[str]
    longest_text: int = Field(gt=0)

    def way(self, word: str) -> tuple[Way, int] | None:
        """Give the way that a word names and its place among the ways, ``None`` for no way."""
        wanted = word.strip().casefold()
        for place, way in enumerate([*self.ways, self.read_again]):
            if wanted == way.name or wanted in (one.casefold() for one in way.words):
                return way, place
        return None


def load_observing(book: Rulebook) -> ObservingRules:
    """Give the rules for answers.

    Raises:
        RuleError: the file is missing or wrong, or a way does not say by whom and when; with file and line.
    """
    source = read_yaml(book.folder / FILE)
    checked = source.validated(ObservingRules)
    mistakes = list(source.mistakes)
    if checked is not None:
        for place, way in [
            *((("ways", n), w) for n, w in enumerate(checked.ways)),
            (("read_again",), checked.read_again),
        ]:
            if "{who}" not in way.says or "{when}" not in way.says:
                mistakes.append(source.mistake(place, "says must hold {who} and {when}"))
    if mistakes or checked is None:
        raise RuleError(mistakes)
    return checked
