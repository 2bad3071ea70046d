"""The process from which those that touch documents are forked, and what these do: one file at a time, bounded.

Rules take seconds to load, so they are loaded once, here, by a process that never opens a document. It listens at a
socket: ``start`` with two handles forks a reading process that reads its requests from one and answers at the other;
``end`` and a number kills that process. A request is one line of JSON (path, kind, and the van if the user names it),
an answer one line of JSON (the document's record and findings). Before each page that it reads from its picture, which
takes seconds, a reading process says so with a line of its own. Whatever a document does to it, only that document
is lost. When the other end of the socket closes, all of them end.
"""

from __future__ import annotations

import contextlib
import gc
import json
import os
import signal
import socket
import sys
from pathlib import Path
from typing import NoReturn, TextIO

from specscan.reading.archive import read_content
from specscan.records.documents import ReadDocument
from specscan.records.errors import DocumentError
from specscan.records.facts import VanName
from specscan.rulebook.book import load_rulebook
from specscan.scanning.answers import findings_as_json, records_as_json, unreadable
from specscan.scanning.examine import Examiner
from specscan.scanning.fork_server import PICTURE_PAGE, READY

COLLECT_AFTER = (50_000, 20, 50)  # documents are many small records that are soon dropped: collect seldom


class Voice:
    """Where a reading process says what it does."""

    def __init__(self) -> None:
        self.answers: TextIO = sys.stderr

    def say(self, line: str) -> None:
        """Give a line to whoever listens."""
        self.answers.write(f"{line}\n")
        self.answers.flush()

    def begins_picture_page(self) -> None:
        """Say that a page is going to be read from its picture."""
        self.say(PICTURE_PAGE)


def main(rules: str, handle: str) -> None:
    """Load rules, then start and end reading processes as asked, until the socket closes."""
    os.dup2(2, 1)  # whatever a library prints must not mix with the answers
    voice = Voice()
    examiner = Examiner(load_rulebook(Path(rules)), voice.begins_picture_page)
    gc.freeze()  # the rules stay as long as the process: they need not be looked through again and again
    gc.set_threshold(*COLLECT_AFTER)
    reading: set[int] = set()
    with socket.socket(fileno=int(handle)) as asked:
        asked.sendall(READY)
        try:
            while True:
                message, handles, _, _ = socket.recv_fds(asked, 1024, 2)
                if not message:
                    return
                wish = json.loads(message)
                if "end" in wish:
                    answer = _ended(wish["end"])
                    reading.discard(wish["end"])
                else:
                    answer = os.fork()
                    if answer == 0:
                        asked.close()
                        requests, answers = handles
                        _read(examiner, voice, requests, answers, wish["memory_mb"], wish["file_mb"])
                    reading.add(answer)
                    for one in handles:
                        os.close(one)
                asked.sendall(b"%d\n" % answer)
        finally:
            for number in reading:
                _ended(number)


def _ended(number: int) -> int:
    """Kill a reading process and give how it ended: minus the signal, if one ended it."""
    with contextlib.suppress(ProcessLookupError):
        os.kill(number, signal.SIGKILL)
    return os.waitstatus_to_exitcode(os.waitpid(number, 0)[1])


def _read(examiner: Examiner, voice: Voice, requests: int, answers: int, memory_mb: int, limit_mb: int) -> NoReturn:
    """Answer requests until the pipe closes, then end this process."""
    status = 1
    try:
        _bound_memory(memory_mb)
        with os.fdopen(requests, encoding="utf-8") as lines, os.fdopen(answers, "w", encoding="utf-8") as voice.answers:
            for line in lines:
                request = json.loads(line)
                named = VanName(*request["named"]) if request["named"] else None
                result = _examine(examiner, request["path"], request["kind"], named, limit_mb)
                record = records_as_json.dump_json(result.record).decode()
                found = findings_as_json.dump_json(result.found).decode()
                voice.say(json.dumps({"record": record, "found": found, "took": result.took}))
        status = 0
    finally:
        os._exit(status)  # what is left to do at the end of the forking process is not this one's


def _examine(examiner: Examiner, path: str, kind: str | None, named: VanName | None, limit_mb: int) -> ReadDocument:
    try:
        data = read_content(path, limit_mb)
        return examiner.examine(path, data, kind, named)
    except DocumentError as error:
        return unreadable(path, "", kind, str(error))
    except MemoryError:
        return unreadable(path, "", kind, "reading it needs more memory than is allowed")
    except RecursionError:
        return unreadable(path, "", kind, "its content is nested too deeply")
    except Exception as error:  # a fault of ours in one document must not lose the others
        return unreadable(path, "", kind, f"the reader failed ({type(error).__name__}: {str(error)[:150]})")


def _bound_memory(megabytes: int) -> None:
    with contextlib.suppress(ImportError, ValueError, OSError):
        import resource

        resource.setrlimit(resource.RLIMIT_AS, (megabytes * 1_000_000, megabytes * 1_000_000))
        resource.setrlimit(resource.RLIMIT_CORE, (0, 0))


if __name__ == "__main__":
    main(*sys.argv[1:])
