"""What stands in ``rules/claims.yaml``: claims of brochures, what each implies, and what is held against it."""

from __future__ import annotations

from pydantic import Field, field_validator, model_validator

from specscan.rulebook.models import LANGUAGES, Entry, Terms

CLAIMED = "claimed"  # the name by which conditions speak of the figure that is claimed
OTHERS = "else"


class Implied(Entry):
    """One thing that a claim implies.

    ``that`` is a condition over the columns of a van, ``when`` says of which vans it is asked; ``stated`` names a kind
    of words that say the same in a table or list.
    """

    means: str = Field(min_length=1)
    that: str = Field(min_length=1)
    when: str = ""
    stated: str = ""


class SeasonClass(Entry):
    """Claims about the seasons that mean the same; ``words`` are their texts, or ``else`` for every other."""

    title: str
    words: list[str] | str
    implies: list[Implied]


class Seasons(Entry):
    """Claims about the seasons."""

    no_standard: str = Field(min_length=1)
    classes: dict[str, SeasonClass]

    @model_validator(mode="after")
    def one_for_others(self) -> Seasons:
        """Refuse classes of which none, or several, take what the others do not name."""
        words = [one.words for one in self.classes.values()]
        if [word for word in words if isinstance(word, str)] != [OTHERS]:
            raise ValueError(f"just one class of seasons must have words: {OTHERS}")
        return self


class Temperature(Entry):
    """The claim of a lowest outside temperature."""

    title: str
    note: str
    implies: list[Implied]


class Grade(Entry):
    """The claim of a thermal grade: what each grade means, and what none of them means."""

    title: str
    source: str
    does_not_mean: str
    grades: dict[str, str]
    implies: list[Implied]


class Kind(Entry):
    """A claim that no field holds: the words that make it, and what it implies.

    ``words`` are groups of terms, one of each in a sentence, at most ``within`` words apart. A term of ``not_words`` in
    the same clause undoes it, and so does one of the things ``not_things`` where the first group's words name it (of
    the gray tank there are fields). ``boasts``: it is a claim in a list too, not evidence. ``denies`` says that the
    claim itself denies something ("no cold bridges"), ``figure`` that it comes with a figure: its units, and what one
    of each is worth.
    """

    title: str
    words: list[Terms] = Field(min_length=1)
    implies: list[Implied] = Field(min_length=1)
    within: int = Field(8, ge=1, le=40)
    not_words: Terms = Field(default_factory=dict, alias="not")
    not_things: list[str] = Field(default_factory=list)
    boasts: bool = True
    denies: bool = False
    figure: dict[str, float] = Field(default_factory=dict)

    @field_validator("words")
    @classmethod
    def known_languages(cls, value: list[Terms]) -> list[Terms]:
        """Refuse languages that are not read."""
        for terms in value:
            for language in terms:
                if language not in (*LANGUAGES, "any"):
                    raise ValueError(f"unknown language {language!r}: use {', '.join(LANGUAGES)} or any")
        return value


class Topic(Entry):
    """Fields of which running text makes claims; ``stated`` names for a field the kind of words that say it too."""

    title: str
    fields: list[str]
    stated: dict[str, str] = Field(default_factory=dict)


class ClaimRules(Entry):
    """The file ``rules/claims.yaml``. ``admissions`` are words that nobody would claim, by field."""

    topics: dict[str, Topic]
    admissions: dict[str, list[str]] = Field(default_factory=dict)
    seasons: Seasons
    temperature: Temperature
    grade: Grade
    kinds: dict[str, Kind]

    def parts(self) -> list[tuple[tuple[str | int, ...], Implied]]:
        """Give everything that is implied, with its place in the file."""
        found: list[tuple[tuple[str | int, ...], Implied]] = []
        lists: list[tuple[tuple[str | int, ...], list[Implied]]] = [
            *((("seasons", "classes", name, "implies"), one.implies) for name, one in self.seasons.classes.items()),
            (("temperature", "implies"), self.temperature.implies),
            (("grade", "implies"), self.grade.implies),
            *((("kinds", name, "implies"), one.implies) for name, one in self.kinds.items()),
        ]
        for place, parts in lists:
            found += [((*place, number), part) for number, part in enumerate(parts)]
        return found
