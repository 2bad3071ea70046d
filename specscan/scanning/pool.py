"""Worker processes: each reads one file at a time, and is ended when it takes too long or dies."""

from __future__ import annotations

import contextlib
import json
import queue
import select
import subprocess
import threading
import time
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from pathlib import Path

from specscan.records.documents import ReadDocument
from specscan.records.errors import SpecscanError
from specscan.records.facts import VanName
from specscan.records.processes import child_command
from specscan.scanning.examine import findings_as_json, records_as_json, unreadable
from specscan.scanning.limits import Limits
from specscan.scanning.worker import PICTURE_PAGE

START_SECONDS = 120.0
CHUNK = 1 << 16
MOST_PICTURE_PAGES = 400  # more than the reader ever announces; a worker that goes on and on is not believed
LONGEST_COMPLAINT = 2_000  # bytes of one line
LONGEST_ANSWER = 400_000_000  # bytes; the findings of any document are far below


@dataclass(frozen=True, slots=True)
class Task:
    """A file to read: its path, the digest of its content, its kind, and the van it is about if the user says so."""

    path: str
    sha256: str
    kind: str | None
    named: VanName | None = None


class WorkerFailed(SpecscanError):
    """A worker process could not even be started."""


def examine_all(tasks: Sequence[Task], rules: Path, limits: Limits, jobs: int) -> Iterator[tuple[Task, ReadDocument]]:
    """Read files in ``jobs`` processes; give each with its task as it is done.

    A file on which a worker dies or takes longer than allowed comes back as ``unreadable``, with why.

    Raises:
        WorkerFailed: no worker could be started; with what it said.
    """
    todo: queue.SimpleQueue[Task] = queue.SimpleQueue()
    for task in tasks:
        todo.put(task)
    done: queue.SimpleQueue[tuple[Task, ReadDocument] | BaseException | None] = queue.SimpleQueue()
    stop = threading.Event()
    threads = [
        threading.Thread(target=_serve, args=(todo, done, stop, rules, limits), daemon=True)
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
    rules: Path,
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
                worker, served = _Worker(rules), 0
            result, alive = worker.ask(task, limits)
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
    def __init__(self, rules: Path):
        command, environment = child_command("specscan.scanning.worker", str(rules.absolute()))
        self.process = subprocess.Popen(
            command,
            env=environment,
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
        )
        self.buffer = b""
        self.said: list[bytes] = []
        threading.Thread(target=self._drain, daemon=True).start()
        if self._line(START_SECONDS) != b"ready":
            self.end()
            raise WorkerFailed(f"a reading process could not be started: {self._last_words()}")

    def _drain(self) -> None:
        assert self.process.stderr is not None
        while line := self.process.stderr.readline(LONGEST_COMPLAINT):
            self.said = [*self.said[-20:], line]

    def _last_words(self) -> str:
        return b"".join(self.said[-3:]).decode(errors="replace").strip() or "no reason given"

    def ask(self, task: Task, limits: Limits) -> tuple[ReadDocument, bool]:
        """Give what the worker read, and whether it still lives; each page read from its picture adds to its time."""
        assert self.process.stdin is not None
        named = (task.named.maker, task.named.model, task.named.year) if task.named else None
        request = json.dumps({"path": task.path, "kind": task.kind, "named": named}) + "\n"
        with contextlib.suppress(OSError):
            self.process.stdin.write(request.encode())
            self.process.stdin.flush()
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
        elif self.process.poll() is None:
            why = f"reading it took longer than {allowed:g} s"
        else:
            why = f"the reading process died on it (exit {self.process.returncode})"
        return unreadable(task.path, task.sha256, task.kind, why), False

    def _line(self, seconds: float) -> bytes | None:
        """Give the next line of the worker; ``None`` where it ends or takes too long."""
        assert self.process.stdout is not None
        handle = self.process.stdout.fileno()
        deadline = time.monotonic() + seconds
        while b"\n" not in self.buffer:
            left = deadline - time.monotonic()
            if left <= 0 or not select.select([handle], [], [], left)[0]:
                return None
            chunk = self.process.stdout.read1(CHUNK)  # type: ignore[attr-defined]
            if not chunk:
                with contextlib.suppress(subprocess.TimeoutExpired):
                    self.process.wait(timeout=5)
                return None
            self.buffer += chunk
            if len(self.buffer) > LONGEST_ANSWER:
                return None
        line, _, self.buffer = self.buffer.partition(b"\n")
        return line

    def end(self) -> None:
        """Kill the process and close its pipes."""
        with contextlib.suppress(OSError):
            self.process.kill()
        self.process.wait()
        for pipe in (self.process.stdin, self.process.stdout):
            if pipe is not None:
                with contextlib.suppress(OSError):
                    pipe.close()
