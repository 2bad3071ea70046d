"""Worker processes: each reads one file at a time, and is ended when it takes too long or dies."""

from __future__ import annotations

import contextlib
import json
import os
import queue
import select
import threading
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from specscan.records.documents import ReadDocument
from specscan.records.facts import VanName
from specscan.scanning.answers import findings_as_json, records_as_json, unreadable
from specscan.scanning.fork_server import PICTURE_PAGE, ForkServer, fork_server
from specscan.scanning.limits import Limits

CHUNK = 1 << 16
MOST_PICTURE_PAGES = 400  # more than the reader ever announces; a worker that goes on and on is not believed
LONGEST_ANSWER = 400_000_000  # bytes; the findings of any document are far below


@dataclass(frozen=True, slots=True)
class Task:
    """A file to read: its path, the digest of its content, its kind, and the van it is about if the user says so."""

    path: str
    sha256: str
    kind: str | None
    named: VanName | None = None


def examine_all(tasks: Sequence[Task], rules: Path, limits: Limits, jobs: int) -> Iterator[tuple[Task, ReadDocument]]:
    """Read files in ``jobs`` processes; give each with its task as it is done.

    A file on which a worker dies or takes longer than allowed comes back as ``unreadable``, with why.

    Raises:
        WorkerFailed: no worker could be started; with what it said.
    """
    if not tasks:
        return
    with fork_server(rules) as server:
        yield from _examined_by(server, tasks, limits, jobs)


def _examined_by(
    server: ForkServer, tasks: Sequence[Task], limits: Limits, jobs: int
) -> Iterator[tuple[Task, ReadDocument]]:
    todo: queue.SimpleQueue[Task] = queue.SimpleQueue()
    for task in tasks:
        todo.put(task)
    done: queue.SimpleQueue[tuple[Task, ReadDocument] | BaseException | None] = queue.SimpleQueue()
    stop = threading.Event()
    threads = [
        threading.Thread(target=_serve, args=(todo, done, stop, server, limits), daemon=True)
        for _ in range(max(1, min(jobs, len(tasks))))
    ]
    for thread in threads:
        thread.start()
    running = len(threads)
    try:
        while running:
            result = done.get()
            if result is None:
                running -= 1
            elif isinstance(result, BaseException):
                raise result
            else:
                yield result
    finally:
        stop.set()
        for thread in threads:
            thread.join(timeout=10)


def _serve(
    todo: queue.SimpleQueue[Task],
    done: queue.SimpleQueue[tuple[Task, ReadDocument] | BaseException | None],
    stop: threading.Event,
    server: ForkServer,
    limits: Limits,
) -> None:
    worker: _Worker | None = None
    served = 0
    try:
        while not stop.is_set():
            try:
                task = todo.get_nowait()
            except queue.Empty:
                break
            if worker is not None and served >= limits.files_per_worker:
                worker.end()
                worker = None
            if worker is None:
                worker, served = _Worker(server, limits), 0
            result, alive = worker.ask(task)
            served += 1
            if not alive:
                worker.end()
                worker = None
            done.put((task, result))
    except BaseException as error:
        done.put(error)
    finally:
        if worker is not None:
            worker.end()
        done.put(None)


def _answered(line: bytes, task: Task) -> ReadDocument | None:
    """Give what a worker answered; ``None`` where that is no answer, for a document may have taken the worker over."""
    try:
        answer = json.loads(line)
        record = records_as_json.validate_json(answer["record"])
        found = findings_as_json.validate_json(answer["found"])
        reading, finding = (float(seconds) for seconds in answer["took"])
    except (ValueError, TypeError, KeyError, RecursionError):
        return None
    return ReadDocument(replace(record, path=task.path), found, (reading, finding))


class _Worker:
    def __init__(self, server: ForkServer, limits: Limits):
        self.server = server
        self.limits = limits
        self.reading = server.start(limits)
        self.buffer = b""
        self.closed = False  # it has let go of its end
        self.ended = False

    def ask(self, task: Task) -> tuple[ReadDocument, bool]:
        """Give what the worker read, and whether it still lives; each page read from its picture adds to its time."""
        named = (task.named.maker, task.named.model, task.named.year) if task.named else None
        request = json.dumps({"path": task.path, "kind": task.kind, "named": named}) + "\n"
        limits = self.limits
        with contextlib.suppress(OSError):
            self._write(request.encode())
        allowed = limits.seconds_per_file
        deadline = time.monotonic() + allowed
        pages = 0
        while (line := self._line(deadline - time.monotonic())) == PICTURE_PAGE.encode() and pages < MOST_PICTURE_PAGES:
            pages += 1
            allowed += limits.seconds_per_picture_page
            deadline += limits.seconds_per_picture_page
        if line is not None:
            answered = _answered(line, task)
            why = "the reading process gave an answer that is none"
            return answered or unreadable(task.path, task.sha256, task.kind, why), answered is not None
        if len(self.buffer) > LONGEST_ANSWER:
            why = "the reading process gave an answer without end"
        elif not self.closed:
            why = f"reading it took longer than {allowed:g} s"
        else:
            why = f"the reading process died on it (exit {self.end()})"
        return unreadable(task.path, task.sha256, task.kind, why), False

    def _write(self, content: bytes) -> None:
        while content:
            content = content[os.write(self.reading.requests, content) :]

    def _line(self, seconds: float) -> bytes | None:
        """Give the next line of the worker; ``None`` where it ends or takes too long."""
        handle = self.reading.answers
        deadline = time.monotonic() + seconds
        while b"\n" not in self.buffer:
            left = deadline - time.monotonic()
            if left <= 0 or not select.select([handle], [], [], left)[0]:
                return None
            chunk = os.read(handle, CHUNK)
            if not chunk:
                self.closed = True
                return None
            self.buffer += chunk
            if len(self.buffer) > LONGEST_ANSWER:
                return None
        line, _, self.buffer = self.buffer.partition(b"\n")
        return line

    def end(self) -> int | None:
        """Kill the process and close its pipes; give how it ended, once."""
        if self.ended:
            return None
        self.ended = True
        return self.server.stop(self.reading)
