"""What stands in field, word and unit files: one model per kind of entry. Unknown keys are refused."""

from __future__ import annotations

from typing import Literal

from pydantic import BaseModel, ConfigDict, Field, field_validator, model_validator

LANGUAGES = ("en", "fr", "de")
Terms = dict[str, list[str]]
FieldType = Literal["number", "integer", "flag", "choice", "set", "text"]


class Entry(BaseModel):
    """Base of all entries."""

    model_config = ConfigDict(extra="forbid", frozen=True, coerce_numbers_to_str=True)


PAIRS = {")": "(", "]": "["}


def _check_term(term: str) -> str:
    """Refuse a term whose brackets do not match: ``[word]`` may be missing, ``(this|that)`` is one of them."""
    opened: list[str] = []
    for letter in term:
        if letter in "[(":
            opened.append(letter)
        elif letter in "])" and (not opened or opened.pop() != PAIRS[letter]):
            raise ValueError(f"a bracket of the term {term!r} is closed that was not opened")
    if opened:
        raise ValueError(f"a bracket of the term {term!r} is not closed")
    return term


def _check_terms(terms: Terms) -> Terms:
    for language, words in terms.items():
        if language not in (*LANGUAGES, "any"):
            raise ValueError(f"unknown language {language!r}: use {', '.join(LANGUAGES)} or any")
        for word in words:
            if not word.strip():
                raise ValueError("an empty term")
            _check_term(word)
    return terms


class Question(Entry):
    """What to ask the maker, where to look, what to measure.

    ``where`` says whether one looks and measures inside (and around) the van or lies underneath it.
    """

    maker: str = ""
    look: str = ""
    where: Literal["inside", "underneath"] = "inside"
    measure: str = ""


class FieldSpec(Entry):
    """A field: what it means, what it may hold, and how documents state it."""

    meaning: str
    type: FieldType
    group: str = "other"
    unit: str = ""
    dimension: str = ""
    range: tuple[float, float] | None = None
    of: list[str] = Field(default_factory=list)
    labels: Terms = Field(default_factory=dict)
    aspect: str = ""
    vocabulary: str = ""
    choices: list[str] = Field(default_factory=list)
    rename: dict[str, str] = Field(default_factory=dict)
    terms: Terms = Field(default_factory=dict)
    denied: Terms = Field(default_factory=dict)
    not_terms: Terms = Field(default_factory=dict)
    not_near: Terms = Field(default_factory=dict)
    alone: Terms = Field(default_factory=dict)
    together: list[str] = Field(default_factory=list)
    denied_by: str = ""
    inside: bool = False
    presence: bool = False
    starts: bool = False
    doubtful_with: dict[str, list[str]] = Field(default_factory=dict)
    none: str = ""
    yes: str = ""
    weak: list[str] = Field(default_factory=list)
    strongest: list[str] = Field(default_factory=list)
    several: Literal["", "highest", "lowest", "mixed"] = ""
    union: bool = False
    from_label: Literal["", "weak"] = ""
    basis: Literal["", "none", "input", "output", "draw"] = ""
    bases: dict[str, str] = Field(default_factory=dict)
    only_with: dict[str, list[str]] = Field(default_factory=dict)
    absent_with: dict[str, list[str]] = Field(default_factory=dict)
    prefer_with: dict[str, str] = Field(default_factory=dict)
    bank: bool = False
    partly: float = 0.0
    unit_tells: bool = False
    product: dict[str, str | list[str]] = Field(default_factory=dict)
    number: Literal["", "count", "grade"] = ""
    text: Literal["", "name", "matched"] = ""
    found_by: Literal["", "identity"] = ""
    ask: Question = Question()

    check = field_validator("labels", "terms", "denied", "not_terms", "not_near", "alone")(_check_terms)

    @model_validator(mode="after")
    def complete(self) -> FieldSpec:
        """Refuse a field that could never be found or judged."""
        if self.type == "number" and not self.dimension:
            raise ValueError("a number needs a dimension")
        if self.type in ("choice", "set") and not self.vocabulary:
            raise ValueError(f"a {self.type} needs a vocabulary")
        if not (self.of or self.labels or self.together or self.starts or self.found_by):
            raise ValueError("nothing says how it is found: give labels, of, together or starts")
        if self.range is not None and self.range[0] > self.range[1]:
            raise ValueError("the range runs backwards")
        return self

    @property
    def tells_absence(self) -> bool:
        """Tell whether the field says that its thing is not there, as a tank of 0 litres does."""
        return bool(self.none) and not self.presence and self.aspect in ("", "capacity")


class Thing(Entry):
    """A part of a van that documents speak of; its terms by language."""

    en: list[str] = Field(default_factory=list)
    fr: list[str] = Field(default_factory=list)
    de: list[str] = Field(default_factory=list)
    any: list[str] = Field(default_factory=list)
    plural: Terms = Field(default_factory=dict)  # terms that name it in the plural alone: "waste tanks"
    short: Terms = Field(default_factory=dict)
    beside: Terms = Field(default_factory=dict)
    short_with_words: bool = False
    sections: Terms = Field(default_factory=dict)
    stands_for: list[str] = Field(default_factory=list)
    among: list[str] = Field(default_factory=list)  # those of these that the van has: "all tanks"
    absorbs: list[str] = Field(default_factory=list)
    tank_names: list[str] = Field(default_factory=list)
    tank_most: float = Field(
        default=0.0, ge=0
    )  # litres of such a tank, where nothing but a comma joins it to its thing
    tank_not: dict[str, list[str]] = Field(
        default_factory=dict
    )  # beginnings of words that name other tanks, by language
    counts: bool = False  # a mass that counts what is on board: "includes the driver and 20 l of water"
    aspect: str = ""
    says: dict[str, str] = Field(default_factory=dict)

    check = field_validator("plural", "short", "beside", "sections")(_check_terms)

    @field_validator("en", "fr", "de", "any")
    @classmethod
    def whole(cls, value: list[str]) -> list[str]:
        """Refuse terms with unmatched brackets."""
        return [_check_term(term) for term in value]

    def terms(self, language: str) -> list[str]:
        """Give the terms for documents in a language, those for any language included."""
        return [*getattr(self, language, []), *self.any]


class FieldFile(Entry):
    """A file under ``rules/fields``."""

    things: dict[str, Thing] = Field(default_factory=dict)
    aspects: dict[str, Terms] = Field(default_factory=dict)
    vocabularies: dict[str, dict[str, Terms]] = Field(default_factory=dict)
    words: dict[str, Terms] = Field(default_factory=dict)
    fields: dict[str, FieldSpec] = Field(default_factory=dict)

    @field_validator("aspects", "words")
    @classmethod
    def terms(cls, value: dict[str, Terms]) -> dict[str, Terms]:
        """Refuse terms that could never be found."""
        return {name: _check_terms(terms) for name, terms in value.items()}

    @field_validator("vocabularies")
    @classmethod
    def values(cls, value: dict[str, dict[str, Terms]]) -> dict[str, dict[str, Terms]]:
        """Refuse terms that could never be found."""
        return {name: {word: _check_terms(terms) for word, terms in words.items()} for name, words in value.items()}

    @field_validator("fields", "things", "vocabularies")
    @classmethod
    def names(cls, value: dict[str, object]) -> dict[str, object]:
        """Refuse names that could not be columns."""
        for name in value:
            if not name.isidentifier() or name != name.lower():
                raise ValueError(f"{name!r} is no plain lower-case name")
        return value


class Ending(Entry):
    """A word ending that does not count: ``from`` (a pattern) becomes ``to`` in words of ``least`` letters."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True)
    pattern: str = Field(alias="from")
    to: str = ""
    least: int = 4


class WordFile(Entry):
    """A file under ``rules/words`` for one language."""

    language: str
    detect: list[str]
    drop: list[str]
    head: Literal["first", "last"]
    decimal: str
    thousands: list[str]
    endings: list[Ending]
    spelling: dict[str, str]
    compounds: list[str]
    numbers: dict[str, float]
    fractions: dict[str, float] = {}
    ordinals: dict[str, int] = {}
    ordinal_ends: list[str] = []
    measured: dict[str, list[str]] = {}
    abbreviations: list[str]
    minus: list[str]
    keeps_hyphen: list[str]
    cues: dict[str, list[str]]
    model_year: list[str]
    not_model_year: list[str]
    year_labels: list[str] = []
    of_company: list[str] = []
    editions: list[str] = []
    papers: list[str] = []
    maker_labels: list[str]
    sure_maker_labels: list[str] = []
    builder_words: list[str] = []
    model_labels: list[str]
    title_fillers: list[str]
    column_words: list[str]
    setting_words: list[str]
    code_words: list[str]
    fitting_words: list[str]
    unit_systems: list[str]
    model_words: list[str]
    range_words: list[str] = []
    months: list[str]
    seasons: list[str]
    workplaces: list[str]
    dates_from: list[str]
    weekdays: list[str]
    every_words: list[str] = []
    made_by: list[str] = []
    vans: list[str] = []
    lengths_of_vans: list[str] = []
    pronouns: list[str] = []
    row_questions: list[str] = []
    question_words: list[str] = []
    past_vans: list[str] = []
    until: list[str] = []
    waste_tanks: dict[str, str] = {}  # the word for one such tank, and for several
    option_cells: list[str] = []  # cells that say no more than that a thing is an option
    toilet_tanks: dict[str, str] = {}  # the word for the tank of a toilet, and for one of its own
    heat_in: list[str] = []
    heat_out: list[str] = []
    vehicle_classes: list[str] = []
    helping_verbs: list[str] = []
    predicates: list[str] = []
    is_a: list[str] = []
    builds: list[str] = []
    built_by: list[str] = []
    built_behind: list[str] = []
    houses_do: list[str] = []
    we_build: list[str] = []
    importer_words: list[str] = []
    paper_words: list[str] = []
    for_year: list[str] = []
    edition_words: list[str] = []
    dealer_words: list[str] = []
    customary_words: list[str] = []
    seller_words: list[str] = []
    seller_says: list[str] = []
    seller_stock: list[str] = []
    sender_labels: list[str] = []
    recipient_labels: list[str] = []
    subject_labels: list[str] = []
    salutations: list[str] = []
    closings: list[str] = []
    make_model_labels: list[str] = []
    leads_to_name: list[str] = []
    behind_name: list[str] = []
    begins_as: list[str] = []
    base_label: str = ""
    mounted_on: list[str] = []
    stands_on: list[str] = []
    no_base: list[str] = []
    joined_to_base: list[str] = []
    unit_heads: list[str] = []
    articles_of_names: list[str] = []
    new_van_words: list[str] = []
    articles_before_names: list[str] = []
    nouns_have_capitals: bool = False
    plurals_of_names: list[str] = ["s"]  # endings of a plural, of a range's name too where it stands for its vans
    cases_of_names: list[str] = []  # endings of a van's name that is a noun
    price_from: list[str] = []
    price_of_van: list[str] = []
    worth: list[str] = []
    adjective_endings: list[str] = []
    number_labels: list[str] = []
    number_signs: list[str] = []
    distances: list[str] = []
    stock_labels: list[str] = []
    page_words: list[str] = []
    page_joints: list[str] = []
    all_of: list[str] = []
    amount_words: list[str] = []
    amount_costs: list[str] = []
    prices_in: list[str] = []
    amount_else: list[str] = []
    figure_words: list[str] = []
    values_in_turn: list[str] = []
    stroke_words: list[str] = []
    comes_first: list[str] = []
    does_not_offer: list[str] = []
    walls_alone: list[str] = []
    wall_insulation: str = ""
    places_in_turn: list[list[str]] = []
    in_order: list[str] = []
    comes_second: list[str] = []
    sign_names: dict[str, str] = {}
    tank_letters: dict[str, str] = {}  # of a label: "F/G/B"
    sign_means: list[str] = []
    sign_shown: list[str] = []
    lone_figure: list[str] = []
    sign_absent: list[str] = []
    sign_inapplicable: list[str] = []


class Dimension(Entry):
    """A quantity and the unit in which it is kept; ``pint`` is its name for pint."""

    unit: str
    pint: str | None = None


class UnitSpec(BaseModel):
    """Ways to print a unit, its dimension, and its name for pint (``None``: known only to be set aside)."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True)
    spellings: list[str] = Field(alias="as")
    dimension: str
    pint: str | None = None
    imperial: str | None = None
    american: str | None = None
    whole: bool = False


class UnitFile(Entry):
    """The file ``rules/words/units.yaml``."""

    dimensions: dict[str, Dimension]
    units: list[UnitSpec]
    degree_letters: dict[str, str] = Field(default_factory=dict)
    only_behind_a_figure: list[str] = Field(default_factory=list)
    also_words: list[str] = Field(default_factory=list)


Evidence = Literal["published", "computed", "common practice, no source", "from memory, not verified"]


class ValueSpec(Entry):
    """A constant or assumption: low, typical and high, unit and source.

    ``unit`` is written as pint reads it. ``evidence`` says how well the value is founded; ``reference`` lists the rows
    of the project's table of reference values on which it rests. ``stands_for`` names the field in whose place an
    assumption stands where no document prints it: it then counts as an open question, not as a spread.
    """

    low: float = Field(allow_inf_nan=False)
    typical: float = Field(allow_inf_nan=False)
    high: float = Field(allow_inf_nan=False)
    unit: str
    source: str = Field(min_length=1)
    evidence: Evidence = "published"
    reference: list[str] = Field(default_factory=list)
    stands_for: str = ""
    note: str = ""

    @model_validator(mode="after")
    def ordered(self) -> ValueSpec:
        """Refuse a typical value outside its bounds."""
        if not self.low <= self.typical <= self.high:
            raise ValueError("low, typical and high must be in order")
        return self


class Marks(Entry):
    """Signs by which makers show what is standard, and how reading is weighed."""

    standard: list[str]
    optional: list[str]
    not_available: list[str]
