"""``python -m specscan PATH…``: prints the facts of documents, one a line."""

from __future__ import annotations

import sys
from pathlib import Path

from specscan.api import Scanner, documents_under
from specscan.records.errors import DocumentError, NotFoundError, RuleError

USAGE = "usage: python -m specscan PATH…   prints the facts found in files and folders, tab-separated"


def main(arguments: list[str]) -> int:
    """Print the facts of all documents; give 0, 1 (some could not be read) or 2 (the call or the rules are wrong)."""
    if not arguments or arguments[0] in ("-h", "--help"):
        print(USAGE, file=sys.stdout if arguments else sys.stderr)
        return 0 if arguments else 2
    try:
        scanner = Scanner()
        paths = [path for argument in arguments for path in documents_under(Path(argument), scanner.book)]
    except (RuleError, NotFoundError) as error:
        print(error, file=sys.stderr)
        return 2
    refused = 0
    for path in paths:
        try:
            found = scanner.read(path)
        except DocumentError as error:
            refused += 1
            print(f"not read: {error}", file=sys.stderr)
            continue
        if found.message:
            print(f"{path.name}: {found.message}", file=sys.stderr)
        for fact in found.facts:
            if not fact.rejected:
                words = " ".join(fact.printed.split())
                page = str(fact.page or "")
                print(path.name, page, fact.model, fact.field, fact.value, fact.availability, words, sep="\t")
    return 1 if refused else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
