"""Rule sets: YAML files that say how vans are judged, checked in full when they are loaded."""

from __future__ import annotations

import json
from dataclasses import dataclass
from pathlib import Path
from typing import Annotated, Any

from pydantic import BaseModel, ConfigDict, Field, StrictBool, StrictFloat, StrictInt, StrictStr, field_validator

from specscan.judging.conditions import Condition, compile_condition
from specscan.judging.kinds import Kinds, column_kinds
from specscan.judging.tree import ConditionError
from specscan.physics.columns import check_value
from specscan.physics.derived import DERIVED
from specscan.records.errors import RuleError, at
from specscan.rulebook.book import Rulebook
from specscan.rulebook.yaml_source import YamlFile, read_yaml

TOTAL = "total"
LIMIT_STEPS = 30
LIMIT_COLUMNS = 30

Text = Annotated[StrictStr, Field(min_length=1, pattern=r"\S")]
Name = Annotated[StrictStr, Field(pattern=r"^[a-z][a-z0-9_]*$", max_length=60)]
Number = StrictInt | StrictFloat
Plain = StrictBool | StrictInt | StrictFloat | StrictStr
Points = Number | Annotated[list[Number], Field(min_length=2, max_length=2)]


class Part(BaseModel):
    """Base of what stands in a rule set: unknown keys are refused."""

    model_config = ConfigDict(extra="forbid", frozen=True, populate_by_name=True)


class Ending(Part):
    """What a criterion gives where no step of its scale holds."""

    award: float = Field(ge=0, le=1, description="share of the weight, 0 to 1", strict=True)
    because: Text = Field(description="the reason, in words a reader of the verdict understands")


class Step(Ending):
    """A step of a scale: what it gives where its condition holds and none before it does."""

    when: Text = Field(description="a yes-or-no question in SQL over fields and derived quantities")


class CriterionPart(Part):
    """One question that is judged, and the scale of its answers: the first step that holds counts."""

    title: Text
    question: Text
    weight: float = Field(gt=0, le=1000, description="points that the best answer gives", allow_inf_nan=False)
    source: Text = Field(description="on what the judgement rests; 'common practice, no source' where on nothing else")
    scale: list[Step] = Field(min_length=1, max_length=LIMIT_STEPS)
    otherwise: Ending = Field(alias="else")


class Example(Part):
    """A van and the points that the rule set must give it."""

    case: Text = Field(description="what the example shows")
    van: dict[Name, Plain | list[Plain]] = Field(
        description="fields and derived quantities: a number, [low, high], yes or no, a word, a list of words"
    )
    expect: dict[Name, Points] = Field(min_length=1, description="criteria, or total: points, or [low, high]")


class RuleSetFile(Part):
    """A file of ``rules/winter``."""

    name: Name = Field(description="the file's name without its ending")
    title: Text
    meaning: Text
    notes: list[Text] = Field(default_factory=list)
    cautions: list[Text] = Field(default_factory=list)
    criteria: dict[Name, CriterionPart] = Field(min_length=1, max_length=60)
    cases: list[Example] = Field(default_factory=list)

    @field_validator("criteria")
    @classmethod
    def total_is_taken(cls, value: dict[str, CriterionPart]) -> dict[str, CriterionPart]:
        """Refuse a criterion with the name of the sum."""
        if TOTAL in value:
            raise ValueError(f"{TOTAL!r} is the name of the sum: choose another")
        return value


@dataclass(frozen=True)
class Criterion:
    """A criterion ready to be judged. ``awards`` and ``reasons`` have one entry per step, and the last for none."""

    name: str
    title: str
    question: str
    weight: float
    source: str
    conditions: tuple[Condition, ...]
    awards: tuple[float, ...]
    reasons: tuple[str, ...]

    @property
    def points(self) -> tuple[float, ...]:
        """Give the points of each step, and last of none."""
        return tuple(round(award * self.weight, 6) for award in self.awards)

    @property
    def columns(self) -> tuple[str, ...]:
        """Give the fields and derived quantities that its conditions use."""
        return tuple(dict.fromkeys(name for one in self.conditions for name in one.columns))


@dataclass(frozen=True)
class RuleSet:
    """A rule set that was checked, with its own examples."""

    name: str
    title: str
    meaning: str
    notes: tuple[str, ...]
    cautions: tuple[str, ...]
    criteria: tuple[Criterion, ...]
    cases: tuple[Example, ...]
    path: Path

    @property
    def points_max(self) -> float:
        """Give the sum of the weights."""
        return round(sum(one.weight for one in self.criteria), 6)

    @property
    def columns(self) -> tuple[str, ...]:
        """Give the fields and derived quantities that its conditions use."""
        return tuple(dict.fromkeys(name for one in self.criteria for name in one.columns))

    @property
    def fields(self) -> tuple[str, ...]:
        """Give the fields that its conditions use, directly or through a derived quantity."""
        names = [DERIVED[name].inputs if name in DERIVED else (name,) for name in self.columns]
        return tuple(dict.fromkeys(field for group in names for field in group))


def load_ruleset(path: Path, book: Rulebook) -> RuleSet:
    """Read and check a rule set.

    Raises:
        RuleError: the file cannot be read or has mistakes; all of them are named as ``file:line: reason``.
    """
    source = read_yaml(path)
    file = source.validated(RuleSetFile)
    if file is None:
        raise RuleError(source.mistakes or [at(path, None, "the file is empty")])
    kinds = column_kinds(book)
    if file.name != path.stem:
        source.mistakes.append(source.mistake(("name",), f"name: {file.name!r} is not the file's name {path.stem!r}"))
    criteria = [_criterion(name, part, kinds, source) for name, part in file.criteria.items()]
    for number, example in enumerate(file.cases):
        _check_example(number, example, file, book, source)
    if source.mistakes:
        raise RuleError(source.mistakes)
    lists = (tuple(file.notes), tuple(file.cautions), tuple(criteria), tuple(file.cases))
    return RuleSet(file.name, file.title, file.meaning, *lists, path)


def load_rulesets(folder: Path, book: Rulebook) -> list[RuleSet]:
    """Read every rule set (``*.yaml``) of a folder, in order of name.

    Raises:
        RuleError: a file has mistakes; those of all files are named.
    """
    found: list[RuleSet] = []
    mistakes: list[str] = []
    for path in sorted(folder.glob("*.yaml")):
        try:
            found.append(load_ruleset(path, book))
        except RuleError as error:
            mistakes.extend(error.mistakes)
    if mistakes:
        raise RuleError(mistakes)
    return found


def check_ruleset_file(path: Path, book: Rulebook) -> list[str]:
    """Give every mistake of a rule set as ``file:line: reason``; nothing where it is right.

    The file's own examples are not run: that is ``run_cases``.
    """
    try:
        load_ruleset(path, book)
    except RuleError as error:
        return error.mistakes
    return []


def ruleset_schema() -> dict[str, Any]:
    """Give the JSON Schema of rule set files, for editors; ``rules/ruleset.schema.json`` holds it."""
    schema = RuleSetFile.model_json_schema(by_alias=True)
    return {"$schema": "https://json-schema.org/draft/2020-12/schema", **schema, "title": "specscan rule set"}


def schema_text() -> str:
    """Give the JSON Schema as the text of its file."""
    return json.dumps(ruleset_schema(), indent=2, ensure_ascii=False) + "\n"


def _criterion(name: str, part: CriterionPart, kinds: Kinds, source: YamlFile) -> Criterion:
    """Give a criterion; mistakes in its conditions are noted in ``source`` and leave them out."""
    conditions = []
    for number, step in enumerate(part.scale):
        place = ("criteria", name, "scale", number, "when")
        try:
            conditions.append(compile_condition(step.when, kinds))
        except ConditionError as error:
            source.mistakes.append(source.mistake(place, f"{_dotted(place)}: {error}"))
    made = Criterion(
        name,
        part.title,
        part.question,
        part.weight,
        part.source,
        tuple(conditions),
        (*(step.award for step in part.scale), part.otherwise.award),
        (*(step.because for step in part.scale), part.otherwise.because),
    )
    if len(made.columns) > LIMIT_COLUMNS:
        reason = f"it uses {len(made.columns)} columns; {LIMIT_COLUMNS} are allowed"
        source.mistakes.append(source.mistake(("criteria", name), f"criteria.{name}: {reason}"))
    return made


def _check_example(number: int, example: Example, file: RuleSetFile, book: Rulebook, source: YamlFile) -> None:
    for name, value in example.van.items():
        try:
            check_value(name, value, book, DERIVED)
        except ValueError as error:
            source.mistakes.append(source.mistake(("cases", number, "van", name), f"cases.{number}.van: {error}"))
    for name, points in example.expect.items():
        place = ("cases", number, "expect", name)
        if name not in (*file.criteria, TOTAL):
            source.mistakes.append(source.mistake(place, f"{_dotted(place)}: no such criterion"))
        elif isinstance(points, list) and points[0] > points[1]:
            source.mistakes.append(source.mistake(place, f"{_dotted(place)}: the band runs backwards"))


def _dotted(place: tuple[str | int, ...]) -> str:
    return ".".join(str(part) for part in place)
