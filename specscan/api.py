"""One function per task: what the command line will call, and programs can call now."""

from __future__ import annotations

from fnmatch import fnmatch
from pathlib import Path
from typing import TYPE_CHECKING

from specscan.finding.finder import Finder
from specscan.reading.compose import Hints
from specscan.reading.read import read_document
from specscan.records.errors import NotFoundError
from specscan.rulebook.book import Rulebook, load_rulebook

if TYPE_CHECKING:
    from specscan.records.facts import DocumentFacts

SHIPPED = Path(__file__).parent / "_shipped" / "rules"
BESIDE = Path(__file__).parent.parent / "rules"


def rules_folder() -> Path:
    """Give the folder of the built-in rules: inside an installed wheel, else beside the package in a checkout."""
    return SHIPPED if SHIPPED.is_dir() else BESIDE


def kind_of(path: Path, book: Rulebook) -> str | None:
    """Give the kind of document that a file's name says it is, ``None`` where no reader takes it."""
    ending = path.suffix.casefold()
    return next((kind for kind, endings in book.general.document_endings.items() if ending in endings), None)


def documents_under(path: Path, book: Rulebook) -> list[Path]:
    """Give the documents of a folder in order of name, not of its sub-folders; a file is given as it is.

    Files of other kinds and those that the rules name as no documents (a readme) are left out of a folder.
    Raises ``NotFoundError`` where there is no such path.
    """
    if path.is_file():
        return [path]
    if not path.is_dir():
        raise NotFoundError(f"{path}: no such file or folder")
    return [
        one
        for one in sorted(path.iterdir())
        if one.is_file()
        and kind_of(one, book)
        and not any(fnmatch(one.name.casefold(), pattern) for pattern in book.general.not_documents)
    ]


class Scanner:
    """Reads documents one by one with the rules of one folder."""

    def __init__(self, rules: Path | None = None):
        """Load the rules of ``rules``, the built-in ones by default.

        Raises ``RuleError`` with every mistake named by file and line.
        """
        self.book = load_rulebook(rules or rules_folder())
        self.finder = Finder(self.book)
        lexicons = [self.finder.kits.lexicon(language) for language in self.book.words]
        kept = {word.casefold() for words in self.book.words.values() for word in words.keeps_hyphen}
        self.hints = Hints(
            is_label=lambda text: any(lexicon.knows_label(text) for lexicon in lexicons),
            keeps_hyphen=lambda before, after: before.casefold() in kept,
            heads_list=lambda text: any(lexicon.heads_list(text) for lexicon in lexicons),
        )

    def read(self, path: Path) -> DocumentFacts:
        """Give the vans and facts of one document, rejected candidates included.

        Raises ``NotFoundError`` where there is no such file, ``DocumentError`` where it cannot be read.
        """
        if not path.is_file():
            raise NotFoundError(f"{path}: no such file")
        kind = kind_of(path, self.book)
        return self.finder.find(read_document(path.read_bytes(), path.name, kind, self.hints))
