"""The process that touches documents: started by the scan, one file at a time, bounded in memory and time.

It speaks over its pipes: a request is one line of JSON (path, kind, and the van if the user names it), an answer one
line of JSON (the document's record and findings). Before each page that it reads from its picture, which takes seconds,
it says so with a line of its own. Whatever a document does to this process, only that document is lost.
"""

from __future__ import annotations

import contextlib
import gc
import json
import os
import sys
from pathlib import Path
from typing import TextIO

from specscan.reading.archive import read_content
from specscan.records.documents import ReadDocument
from specscan.records.errors import DocumentError
from specscan.records.facts import VanName
from specscan.rulebook.book import load_rulebook
from specscan.scanning.examine import Examiner, findings_as_json, records_as_json, unreadable
from specscan.scanning.limits import load_limits

PICTURE_PAGE = "picture page"
COLLECT_AFTER = (50_000, 20, 50)  # documents are many small records that are soon dropped: collect seldom


def main(rules: str) -> None:
    """Answer requests until the pipe closes."""
    answers = os.fdopen(os.dup(1), "w", encoding="utf-8")
    os.dup2(2, 1)  # whatever a library prints must not mix with the answers
    limits = load_limits(Path(rules))
    _bound_memory(limits.memory_mb)
    examiner = Examiner(load_rulebook(Path(rules)), lambda: _say(answers, PICTURE_PAGE))
    gc.freeze()  # the rules stay as long as the process: they need not be looked through again and again
    gc.set_threshold(*COLLECT_AFTER)
    _say(answers, "ready")
    for line in sys.stdin:
        request = json.loads(line)
        named = VanName(*request["named"]) if request["named"] else None
        result = _examine(examiner, request["path"], request["kind"], named, limits.file_mb)
        record = records_as_json.dump_json(result.record).decode()
        found = findings_as_json.dump_json(result.found).decode()
        _say(answers, json.dumps({"record": record, "found": found, "took": result.took}))


def _say(answers: TextIO, line: str) -> None:
    answers.write(f"{line}\n")
    answers.flush()


def _examine(examiner: Examiner, path: str, kind: str | None, named: VanName | None, limit_mb: int) -> ReadDocument:
    digest = ""
    try:
        data = read_content(path, limit_mb)
        return examiner.examine(path, data, kind, named)
    except DocumentError as error:
        return unreadable(path, digest, kind, str(error))
    except MemoryError:
        return unreadable(path, digest, kind, "reading it needs more memory than is allowed")
    except RecursionError:
        return unreadable(path, digest, kind, "its content is nested too deeply")
    except Exception as error:  # a fault of ours in one document must not lose the others
        return unreadable(path, digest, kind, f"the reader failed ({type(error).__name__}: {str(error)[:150]})")


def _bound_memory(megabytes: int) -> None:
    with contextlib.suppress(ImportError, ValueError, OSError):
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (megabytes * 1_000_000, megabytes * 1_000_000))
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


if __name__ == "__main__":
    main(sys.argv[1])
