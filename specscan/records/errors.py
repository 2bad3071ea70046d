"""Errors that a user can act on: each names the file, and where it can the page or line."""

from __future__ import annotations

from pathlib import Path


class SpecscanError(Exception):
    """Base of all errors that specscan raises on purpose."""


class DocumentError(SpecscanError):
    """A document cannot be read; the message says why in words a user understands."""


class NotFoundError(SpecscanError):
    """A van, a table or a file that was asked for is not there."""


class DatasetError(SpecscanError):
    """The DuckDB file is missing, locked, of another version or not a dataset of specscan."""


class QueryError(SpecscanError):
    """A query is not read-only SQL over the dataset."""


class RuleError(SpecscanError):
    """Mistakes in rule, field or word files, all of them at once.

    ``mistakes`` is a list of lines ``file:line: reason``.
    """

    def __init__(self, mistakes: list[str]):
        self.mistakes = list(mistakes)
        super().__init__("\n".join(self.mistakes))


def at(path: Path | str, line: int | None, reason: str) -> str:
    """Give a mistake as ``file:line: reason``; without a line as ``file: reason``."""
    return f"{path}:{line}: {reason}" if line else f"{path}: {reason}"
