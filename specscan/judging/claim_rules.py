"""The claims of ``rules/claims.yaml`` with their conditions checked and ready to be asked."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field

from specscan.judging.conditions import Condition, compile_condition
from specscan.judging.kinds import Kind, Kinds, column_kinds
from specscan.judging.tree import ConditionError
from specscan.records.errors import RuleError
from specscan.records.facts import Fact
from specscan.records.names import plain
from specscan.rulebook.book import Rulebook
from specscan.rulebook.claims import CLAIMED, OTHERS, ClaimRules, Implied
from specscan.rulebook.yaml_source import read_yaml
from specscan.settling.preferences import Preferences

LOW, HIGH = f"{CLAIMED}_low", f"{CLAIMED}_high"
VAGUE = "yes, not said how"
IN_TIME = ("grade_two_in_time", "grade_three_in_time")


@dataclass(frozen=True, slots=True)
class Asked:
    """One thing that a claim implies, as a condition; ``when`` tells of which vans it is asked.

    ``claimed`` with its bounds is the figure that is claimed, ``stated`` the kind of words that say the same elsewhere.
    ``restates``: the claim is a value of one field, which running text gives.
    """

    means: str
    that: Condition
    when: Condition | None = None
    stated: str = ""
    claimed: tuple[float, float, float] | None = None
    restates: bool = False

    @property
    def columns(self) -> tuple[str, ...]:
        """Give the fields and derived quantities that are asked for."""
        return tuple(name for name in self.that.columns if name not in (CLAIMED, LOW, HIGH))


@dataclass
class ClaimBook:
    """What claims imply. ``rules`` is the file, ``kinds`` what the columns of conditions hold."""

    rules: ClaimRules
    book: Rulebook
    preferences: Preferences
    kinds: Kinds
    topics: dict[str, str] = field(default_factory=dict)
    compiled: dict[str, Condition] = field(default_factory=dict)

    def condition(self, text: str) -> Condition:
        """Give a condition, compiled once."""
        if text not in self.compiled:
            self.compiled[text] = compile_condition(text, self.kinds)
        return self.compiled[text]

    def asked(self, implied: Sequence[Implied], claimed: float | None = None) -> tuple[Asked, ...]:
        """Give what is implied as questions, with the figure that is claimed."""
        bounds = None if claimed is None else (claimed, claimed, claimed)
        return tuple(
            Asked(
                one.means, self.condition(one.that), self.condition(one.when) if one.when else None, one.stated, bounds
            )
            for one in implied
        )

    def season(self, said: str) -> tuple[str, list[Implied]]:
        """Give title and implications of a claim about the seasons."""
        classes = self.rules.seasons.classes.values()
        others = next(one for one in classes if one.words == OTHERS)
        named = (one for one in classes if one is not others and plain(said) in {plain(word) for word in one.words})
        found = next(named, others)
        return found.title, found.implies

    def same(self, fact: Fact) -> Asked:
        """Give the question whether other statements give a field the value that a fact of running text gives it."""
        name, kind = fact.field, self.kinds[fact.field]
        stated = self.rules.topics[self.topics[name]].stated.get(name, "")
        if fact.num is not None:
            slack = self.preferences.agree_within.get(fact.unit)
            slack = self.preferences.agree_within["share"] * abs(fact.num) if slack is None else slack
            text, claimed = f"{name} >= {LOW} and {name} <= {HIGH}", (fact.num, fact.num - slack, fact.num + slack)
            return Asked(f"{name}: {fact.num:.4g} {fact.unit}".strip(), self.condition(text), None, "", claimed, True)
        if fact.flag is not None:
            return Asked(f"{name}: yes", self.condition(name), None, stated, restates=True)
        word = fact.text or ""
        if kind.name == "set":
            text = " and ".join(f"contains({name}, '{one}')" for one in word.split("+"))
        elif kind.vague and word == kind.vague:
            text = f"{name} <> '{kind.denies}'"
        else:
            text = f"{name} = '{word}'"
        shown = VAGUE if kind.vague and word == kind.vague else word.replace("+", ", ")
        return Asked(f"{name}: {shown}", self.condition(text), None, stated, restates=True)

    def is_boast(self, fact: Fact) -> bool:
        """Tell whether a fact claims something, and does not deny or admit it."""
        if fact.field not in self.topics or fact.value in (None, False, 0):
            return False
        kind = self.kinds[fact.field]
        return fact.text is None or fact.text not in (kind.denies, *self.rules.admissions.get(fact.field, ()))

    def is_loose(self, fact: Fact) -> bool:
        """Tell whether a fact of running text claims without saying how: "heated", "insulated", no place, no figure."""
        vague = fact.flag is True or (fact.text is not None and fact.text == self.kinds[fact.field].vague)
        return fact.availability == "unstated" and vague and self.is_boast(fact)


def load_claims(book: Rulebook, preferences: Preferences) -> ClaimBook:
    """Give the claims of the rules, ready to be judged.

    Raises:
        RuleError: a condition is wrong; all of them are named with file and line.
    """
    rules = book.claims
    kinds = dict(column_kinds(book))
    kinds |= {name: Kind("number") for name in (CLAIMED, LOW, HIGH)} | {name: Kind("flag") for name in IN_TIME}
    made = ClaimBook(rules, book, preferences, kinds)
    made.topics = {name: topic for topic, one in rules.topics.items() for name in one.fields}
    wrong: list[tuple[tuple[str | int, ...], str]] = []
    for place, part in rules.parts():
        for key, text in (("that", part.that), ("when", part.when)):
            try:
                if text:
                    made.condition(text)
            except ConditionError as error:
                wrong.append(((*place, key), f"{key}: {error}"))
    if wrong:
        source = read_yaml(book.folder / "claims.yaml")  # for the lines; else the rule book's reading will do
        raise RuleError([source.mistake(place, why) for place, why in wrong])
    return made
