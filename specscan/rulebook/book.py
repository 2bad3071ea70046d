"""All knowledge in one place: fields, words, units and values, read from a folder of rules."""

from __future__ import annotations

import functools
import hashlib
import re
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pydantic import Field

from specscan.records.errors import RuleError, at
from specscan.rulebook.claims import ClaimRules
from specscan.rulebook.models import (
    LANGUAGES,
    Entry,
    FieldFile,
    FieldSpec,
    Terms,
    Thing,
    UnitFile,
    ValueSpec,
    WordFile,
)
from specscan.rulebook.yaml_source import YamlFile, read_yaml


class VanEvidence(Entry):
    """From how much on a document describes a van, and does not only speak of vans."""

    core: list[str]
    core_from: int = Field(ge=1)
    measured_from: int = Field(ge=1)
    fields_from: int = Field(ge=1)
    listed_from: int = Field(ge=1)
    groups_from: int = Field(ge=1)
    groups_of_all: int = Field(ge=1)


class Mingling(Entry):
    """From when on a van is given the values of others: see ``finding/mingled.py``."""

    fields_from: int = Field(ge=2)
    differ: float = Field(gt=0, lt=1)


class General(Entry):
    """The file ``rules/words/general.yaml``."""

    legal_forms: list[str]
    rights_signs: list[str]
    quotes: list[str] = []
    file_endings: list[str]
    checks: list[str]
    crosses: list[str]
    open_boxes: list[str]
    inapplicable: list[str]
    currency: list[str]
    not_documents: list[str]
    document_endings: dict[str, list[str]]
    british: list[str]
    american: list[str]
    van_evidence: VanEvidence
    mingling: Mingling
    option_price_most: float = Field(gt=0)


class ValueFile(Entry):
    """A file under ``rules/values``."""

    values: dict[str, ValueSpec]


@dataclass(frozen=True)
class Rulebook:
    """Everything that the program knows, and the folder it came from.

    ``digest`` is of all its files; ``finding_digest`` of those that decide what is found in a document
    (``fields/``, ``words/``, ``claims.yaml`` and ``ocr.yaml``), so that a changed rule set does not make every document
    be read again.
    """

    folder: Path
    digest: str
    finding_digest: str
    fields: dict[str, FieldSpec]
    things: dict[str, Thing]
    aspects: dict[str, Terms]
    vocabularies: dict[str, dict[str, Terms]]
    word_groups: dict[str, Terms]
    words: dict[str, WordFile]
    units: UnitFile
    general: General
    claims: ClaimRules
    values: dict[str, ValueSpec] = field(default_factory=dict)
    _by_thing: dict[str, list[str]] = field(default_factory=dict, init=False, repr=False, compare=False)
    _units: dict[str, str] = field(default_factory=dict, init=False, repr=False, compare=False)
    _by_quality: dict[str, dict[object, list[str]]] = field(default_factory=dict, init=False, repr=False, compare=False)
    _by_cue: dict[str, frozenset[str]] = field(default_factory=dict, init=False, repr=False, compare=False)

    def unit_of(self, name: str) -> str:
        """Give the canonical unit of a field, empty where it has none."""
        if name not in self._units:
            spec = self.fields[name]
            named = self.units.dimensions[spec.dimension].unit if spec.dimension else ""
            self._units[name] = spec.unit or named
        return self._units[name]

    def fields_by(self, quality: str) -> dict[object, list[str]]:
        """Give the fields, in the order of the rules, by what they have of a quality: their aspect, say."""
        if quality not in self._by_quality:
            found: dict[object, list[str]] = {}
            for name, spec in self.fields.items():
                found.setdefault(getattr(spec, quality), []).append(name)
            self._by_quality[quality] = found
        return self._by_quality[quality]

    def choices_of(self, name: str) -> list[str]:
        """Give the words that a choice or set may hold."""
        spec = self.fields[name]
        if spec.choices:
            return list(spec.choices)
        words = [spec.rename.get(word, word) for word in self.vocabularies.get(spec.vocabulary, {})]
        if spec.type == "choice" and spec.none and spec.none not in words:
            words.append(spec.none)
        return list(dict.fromkeys(words))

    def cue_words(self, name: str) -> frozenset[str]:
        """Give the words of a cue in all languages."""
        if name not in self._by_cue:
            self._by_cue[name] = frozenset(word for file in self.words.values() for word in file.cues.get(name, []))
        return self._by_cue[name]

    @functools.cached_property
    def unit_tail(self) -> re.Pattern[str]:
        """Give the pattern of the end of a label that is only its unit: ", kg", "in lb", "(l)"."""
        units = sorted({one for unit in self.units.units for one in unit.spellings}, key=len, reverse=True)
        openers = "|".join(map(re.escape, sorted(self.cue_words("in_unit")))) or "(?!)"
        spelled = "|".join(map(re.escape, units))
        return re.compile(rf"(?:[,:–(\[]|(?<!\w)(?:{openers})\s)\s*(?:{spelled})\s*[)\]]?", re.IGNORECASE)

    def is_unit(self, tail: str) -> bool:
        """Tell whether the end of a label says only in which unit it asks: ", kg", "(l)", "gal"."""
        tail = tail.strip(" ‖")
        return any(self.unit_tail.fullmatch(text) for text in (tail, f", {tail}"))

    @functools.cached_property
    def common_names(self) -> dict[str, list[str]]:
        """Give the things that mean all of several, such as "all tanks", with these."""
        return {name: thing.among for name, thing in self.things.items() if thing.among}

    def fields_of(self, thing: str) -> list[str]:
        """Give the fields that a statement about a thing can fill."""
        if thing not in self._by_thing:
            names = [thing, *self.things[thing].stands_for] if thing in self.things else [thing]
            self._by_thing[thing] = [name for name, spec in self.fields.items() if any(one in spec.of for one in names)]
        return list(self._by_thing[thing])


def load_rulebook(folder: Path) -> Rulebook:
    """Read the rules under ``folder``.

    Raises:
        RuleError: a file is missing or wrong; every mistake is named with file and line.
    """
    mistakes: list[str] = []
    digest, finding = hashlib.sha256(), hashlib.sha256()
    files: dict[str, YamlFile] = {}
    for path in sorted(folder.rglob("*.yaml")):
        relative = path.relative_to(folder).as_posix()
        try:
            files[relative] = read_yaml(path)
        except RuleError as error:
            mistakes.extend(error.mistakes)
            continue
        content = relative.encode() + b"\0" + path.read_bytes() + b"\0"
        digest.update(content)
        if relative.startswith(("fields/", "words/")) or relative in ("ocr.yaml", "claims.yaml"):
            finding.update(content)
    if mistakes:
        raise RuleError(mistakes)
    book = _Builder(folder, files, mistakes).build(digest.hexdigest(), finding.hexdigest())
    if book is None or mistakes:
        raise RuleError(mistakes)
    return book


class _Builder:
    def __init__(self, folder: Path, files: dict[str, YamlFile], mistakes: list[str]):
        self.folder, self.files, self.mistakes = folder, files, mistakes

    def build(self, digest: str, finding: str) -> Rulebook | None:
        words = self._words()
        units = self._one("words/units.yaml", UnitFile)
        general = self._one("words/general.yaml", General)
        claims = self._one("claims.yaml", ClaimRules)
        fields, things, aspects, vocabularies, groups = self._fields()
        values = self._values()
        if self.mistakes or units is None or general is None or claims is None:
            return None
        for name, spec in fields.items():
            if spec.labels:
                own = things.get(name, Thing())
                merged = {lang: [*getattr(own, lang), *spec.labels.get(lang, [])] for lang in (*LANGUAGES, "any")}
                things[name] = own.model_copy(update=merged)
                if name not in spec.of:
                    fields[name] = spec.model_copy(update={"of": [*spec.of, name]})
        self._cross_check(fields, things, aspects, vocabularies, groups, units)
        for name, value in values.items():
            if value.stands_for and value.stands_for not in fields:
                source, place = self.where[("values", name)]
                self.mistakes.append(source.mistake(place, f"values.{name}: unknown field {value.stands_for!r}"))
        self._check_claims(claims, fields)
        return Rulebook(
            self.folder,
            digest,
            finding,
            fields,
            things,
            aspects,
            vocabularies,
            groups,
            words,
            units,
            general,
            claims,
            values,
        )

    def _one(self, name: str, model: Any) -> Any:
        source = self.files.get(name)
        if source is None:
            self.mistakes.append(at(self.folder / name, None, "the file is missing"))
            return None
        checked = source.validated(model)
        self.mistakes.extend(source.mistakes)
        return checked

    def _words(self) -> dict[str, WordFile]:
        found = {}
        for language in LANGUAGES:
            checked = self._one(f"words/{language}.yaml", WordFile)
            if checked is not None:
                found[language] = checked
        return found

    def _fields(self) -> tuple[Any, ...]:
        fields: dict[str, FieldSpec] = {}
        things: dict[str, Thing] = {}
        aspects: dict[str, Terms] = {}
        vocabularies: dict[str, dict[str, Terms]] = {}
        groups: dict[str, Terms] = {}
        self.where: dict[tuple[str, str], tuple[YamlFile, tuple[str, ...]]] = {}
        for name, source in self.files.items():
            if not name.startswith("fields/"):
                continue
            checked = source.validated(FieldFile)
            self.mistakes.extend(source.mistakes)
            if checked is None:
                continue
            targets: dict[str, dict[str, Any]] = {
                "fields": fields, "things": things, "aspects": aspects,
                "vocabularies": vocabularies, "words": groups,
            }  # fmt: skip
            for kind, target in targets.items():
                for key, value in getattr(checked, kind).items():
                    if key in target and kind != "aspects":
                        self.mistakes.append(
                            source.mistake((kind, key), f"{kind}.{key} is declared in another file too")
                        )
                    self.where[(kind, key)] = (source, (kind, key))
                    target[key] = value if key not in target else _merged(target[key], value)
        return fields, things, aspects, vocabularies, groups

    def _values(self) -> dict[str, ValueSpec]:
        found: dict[str, ValueSpec] = {}
        for name, source in self.files.items():
            if name.startswith("values/"):
                checked = source.validated(ValueFile)
                self.mistakes.extend(source.mistakes)
                found.update(checked.values if checked is not None else {})
                for key in checked.values if checked is not None else ():
                    self.where[("values", key)] = (source, ("values", key))
        return found

    def _check_claims(self, claims: ClaimRules, fields: Any) -> None:
        """Name fields and kinds that claims speak of and that are not declared; conditions are checked by judging."""
        source = self.files["claims.yaml"]
        for topic, one in claims.topics.items():
            for name in one.fields:
                if name not in fields:
                    self.mistakes.append(source.mistake(("topics", topic), f"unknown field {name!r}"))
            for kind in one.stated.values():
                if kind not in claims.kinds:
                    self.mistakes.append(source.mistake(("topics", topic, "stated"), f"unknown kind {kind!r}"))
        for name in claims.admissions:
            if name not in fields:
                self.mistakes.append(source.mistake(("admissions", name), f"unknown field {name!r}"))
        for place, part in claims.parts():
            if part.stated and part.stated not in claims.kinds:
                self.mistakes.append(source.mistake(place, f"unknown kind {part.stated!r}"))

    def _cross_check(self, fields: Any, things: Any, aspects: Any, vocabularies: Any, groups: Any, units: Any) -> None:
        for name, spec in fields.items():
            checks = [
                (spec.dimension and spec.dimension not in units.dimensions, f"unknown dimension {spec.dimension!r}"),
                (spec.aspect and spec.aspect not in aspects, f"unknown aspect {spec.aspect!r}"),
                (spec.vocabulary and spec.vocabulary not in vocabularies, f"unknown vocabulary {spec.vocabulary!r}"),
                *((thing not in things, f"unknown thing {thing!r}") for thing in spec.of),
                *((group not in groups, f"unknown word group {group!r}") for group in spec.together),
                *(
                    (other not in fields, f"unknown field {other!r}")
                    for other in (*spec.only_with, *spec.absent_with, *spec.prefer_with)
                ),
            ]
            for wrong, reason in checks:
                if wrong:
                    source, place = self.where[("fields", name)]
                    self.mistakes.append(source.mistake(place, f"fields.{name}: {reason}"))
        for name, thing in things.items():
            for other in (*thing.stands_for, *thing.among):
                if other not in things:
                    source, place = self.where[("things", name)]
                    self.mistakes.append(source.mistake(place, f"things.{name}: unknown thing {other!r}"))


def _merged(one: Terms, two: Terms) -> Terms:
    return {lang: [*one.get(lang, []), *two.get(lang, [])] for lang in {*one, *two}}
