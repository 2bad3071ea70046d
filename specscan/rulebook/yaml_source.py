"""YAML files with line numbers: unknown and doubled keys are refused with file and line."""

from __future__ import annotations

from pathlib import Path
from typing import Any, TypeVar

import yaml
from pydantic import BaseModel, ValidationError

from specscan.records.errors import RuleError, at
from specscan.records.files import TooLarge, read_ordinary

LIMIT_BYTES = 2_000_000
LIMIT_NODES = 200_000
LIMIT_DEPTH = 40
Place = tuple[str | int, ...]
Model = TypeVar("Model", bound=BaseModel)


class YamlFile:
    """A parsed YAML file: its plain data and the line on which each part of it stands."""

    def __init__(self, path: Path, data: Any, lines: dict[Place, int], mistakes: list[str]):
        self.path = path
        self.data = data
        self.lines = lines
        self.mistakes = mistakes

    def line(self, place: Place) -> int | None:
        """Give the line of a part, or of the nearest part around it."""
        while place:
            if place in self.lines:
                return self.lines[place]
            place = place[:-1]
        return self.lines.get(())

    def mistake(self, place: Place, reason: str) -> str:
        """Give a mistake at a part of the file as ``file:line: reason``."""
        return at(self.path, self.line(place), reason)

    def validated(self, model: type[Model], data: Any = None, base: Place = ()) -> Model | None:
        """Check (a part of) the data against a model; mistakes are noted and give ``None``."""
        try:
            return model.model_validate(self.data if data is None else data)
        except ValidationError as error:
            for detail in error.errors():
                place = (*base, *detail["loc"])
                where = ".".join(str(part) for part in place)
                self.mistakes.append(self.mistake(place, f"{where}: {_reason(detail)}"))
        return None


def _reason(detail: Any) -> str:
    if detail["type"] == "extra_forbidden":
        return "unknown key"
    if detail["type"] == "missing":
        return "missing"
    return str(detail["msg"])


def read_yaml(path: Path) -> YamlFile:
    """Read a YAML file of plain data.

    Raises:
        RuleError: the file is missing, too large, no YAML, or has tags, or doubled keys; all of these
            are named with their lines.
    """
    try:
        raw = read_ordinary(path, LIMIT_BYTES)
    except TooLarge as error:
        raise RuleError([at(path, None, "the file is larger than 2 MB")]) from error
    except OSError as error:
        raise RuleError([at(path, None, f"cannot be read ({error.strerror})")]) from error
    try:
        text = raw.decode("utf-8")
        node = yaml.compose(text, Loader=_loader(text))
    except UnicodeDecodeError as error:
        raise RuleError([at(path, None, "the file is not UTF-8")]) from error
    except yaml.YAMLError as error:
        mark = getattr(error, "problem_mark", None)
        line = mark.line + 1 if mark is not None else None
        raise RuleError([at(path, line, f"no valid YAML: {getattr(error, 'problem', error)}")]) from error
    except RecursionError as error:
        raise RuleError([at(path, None, "the file is nested too deeply")]) from error
    walker = _Walker(path)
    data = walker.value(node, ()) if node is not None else None
    if walker.mistakes:
        raise RuleError(walker.mistakes)
    return YamlFile(path, data, walker.lines, [])


def read_checked(path: Path, model: type[Model]) -> Model:
    """Read a YAML file whose data is all one model.

    Raises:
        RuleError: as ``read_yaml``, or the data does not fit the model; every mistake with file and line.
    """
    source = read_yaml(path)
    checked = source.validated(model)
    if checked is None:
        raise RuleError(source.mistakes)
    return checked


def _loader(text: str) -> Any:
    """Give the fast loader for a text that it takes and that is not nested deeply, else the one that is never harmed.

    The fast one, in C, parses iteratively but composes by recursion, without a bound of its own. Every mistake is told
    by the other one.
    """
    fast = getattr(yaml, "CSafeLoader", yaml.SafeLoader)
    depth = 0
    try:
        for event in yaml.parse(text, Loader=fast):
            if isinstance(event, yaml.CollectionStartEvent):
                depth += 1
            elif isinstance(event, yaml.CollectionEndEvent):
                depth -= 1
            if depth > LIMIT_DEPTH:
                return yaml.SafeLoader
    except yaml.YAMLError:
        return yaml.SafeLoader
    return fast


class _Walker:
    def __init__(self, path: Path):
        self.path = path
        self.lines: dict[Place, int] = {}
        self.mistakes: list[str] = []
        self.count = 0
        self.scalars = yaml.SafeLoader("")

    def value(self, node: yaml.Node, place: Place) -> Any:
        self.count += 1
        if self.count > LIMIT_NODES or len(place) > LIMIT_DEPTH:
            raise RuleError([at(self.path, node.start_mark.line + 1, "the file is too large or nested too deeply")])
        self.lines[place] = node.start_mark.line + 1
        if isinstance(node, yaml.MappingNode):
            return self.mapping(node, place)
        if isinstance(node, yaml.SequenceNode):
            return [self.value(child, (*place, index)) for index, child in enumerate(node.value)]
        if not node.tag.startswith("tag:yaml.org,2002:"):
            self.note(node, f"the tag {node.tag} is not allowed")
            return None
        if node.tag == "tag:yaml.org,2002:timestamp":
            return node.value
        try:
            return self.scalars.construct_object(node)
        except (yaml.YAMLError, ValueError) as error:
            self.note(node, f"not readable: {error}")
            return None

    def mapping(self, node: yaml.MappingNode, place: Place) -> dict[Any, Any]:
        merged: dict[Any, Any] = {}
        own: dict[Any, Any] = {}
        for key_node, value_node in node.value:
            if key_node.tag == "tag:yaml.org,2002:merge":
                sources = value_node.value if isinstance(value_node, yaml.SequenceNode) else [value_node]
                for source in sources:
                    inherited = self.value(source, place)
                    merged.update(inherited if isinstance(inherited, dict) else {})
                continue
            key = str(key_node.value) if isinstance(key_node, yaml.ScalarNode) else None
            if key is None:
                self.note(key_node, "a key must be a plain word")
                continue
            if key in own:
                self.note(key_node, f"the key {key!r} stands twice")
            own[key] = self.value(value_node, (*place, key))
            self.lines[(*place, key)] = key_node.start_mark.line + 1
        self.lines[place] = node.start_mark.line + 1
        return {**merged, **own}

    def note(self, node: yaml.Node, reason: str) -> None:
        self.mistakes.append(at(self.path, node.start_mark.line + 1, reason))
