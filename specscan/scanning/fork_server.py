"""The process that loads the rules once and from which reading processes are forked (``worker``), seen from here."""

from __future__ import annotations

import atexit
import contextlib
import hashlib
import json
import os
import signal
import socket
import subprocess
import threading
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from specscan.records.errors import SpecscanError
from specscan.records.processes import child_command
from specscan.scanning.limits import Limits

START_SECONDS = 120.0
READY = b"ready\n"
PICTURE_PAGE = "picture page"
LONGEST_COMPLAINT = 2_000  # bytes of one line


class WorkerFailed(SpecscanError):
    """A reading process could not even be started."""


@dataclass(frozen=True, slots=True)
class Reading:
    """A reading process: its number, and the handles at which it takes requests and gives answers."""

    number: int
    requests: int
    answers: int


class ForkServer:
    """A process with rules loaded that starts reading processes; it opens no documents itself.

    Raises:
        WorkerFailed: it could not be started; with what it said.
    """

    def __init__(self, rules: Path):
        ours, theirs = socket.socketpair()
        command, environment = child_command("specscan.scanning.worker", str(rules.absolute()), str(theirs.fileno()))
        self.process = subprocess.Popen(
            command,
            env=environment,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.DEVNULL,
            stderr=subprocess.PIPE,
            pass_fds=[theirs.fileno()],
            start_new_session=True,  # an interrupt from the keyboard is for this process, which then lets it end
        )
        theirs.close()
        self.socket = ours
        self.lock = threading.Lock()
        self.users = 0  # scans that go on
        self.said: list[bytes] = []
        self.listener = threading.Thread(target=self._drain, daemon=True)
        self.listener.start()
        if self._answer(START_SECONDS) != READY:
            self.end()
            raise WorkerFailed(f"a reading process could not be started: {self._last_words()}")

    def _drain(self) -> None:
        assert self.process.stderr is not None
        with self.process.stderr as lines:
            while line := lines.readline(LONGEST_COMPLAINT):
                self.said = [*self.said[-20:], line]

    def _last_words(self) -> str:
        self.listener.join(timeout=5)
        return b"".join(self.said[-3:]).decode(errors="replace").strip() or "no reason given"

    def _answer(self, seconds: float | None = None) -> bytes:
        """Give the next line that the process says; empty where it has ended or takes too long."""
        self.socket.settimeout(seconds)
        line = b""
        with contextlib.suppress(OSError):
            while not line.endswith(b"\n") and (more := self.socket.recv(64)):
                line += more
        return line

    def start(self, limits: Limits) -> Reading:
        """Start a reading process.

        Raises:
            WorkerFailed: it could not be started.
        """
        to_them, requests = os.pipe()
        answers, from_them = os.pipe()
        wish = json.dumps({"memory_mb": limits.memory_mb, "file_mb": limits.file_mb}).encode()
        with self.lock:
            with contextlib.suppress(OSError):
                socket.send_fds(self.socket, [wish], [to_them, from_them])
            number = self._answer(START_SECONDS)
        for one in (to_them, from_them):
            os.close(one)
        if not number:
            for one in (requests, answers):
                os.close(one)
            raise WorkerFailed(f"a reading process could not be started: {self._last_words()}")
        return Reading(int(number), requests, answers)

    def stop(self, reading: Reading) -> int | None:
        """Kill a reading process; give how it ended (minus the signal, if one ended it), ``None`` if nobody knows."""
        with self.lock:
            with contextlib.suppress(OSError):
                self.socket.sendall(json.dumps({"end": reading.number}).encode())
            status = self._answer(START_SECONDS)
        for one in (reading.requests, reading.answers):
            with contextlib.suppress(OSError):
                os.close(one)
        return int(status) if status else None

    @property
    def lives(self) -> bool:
        """Tell whether the process is still there."""
        return self.process.poll() is None

    def end(self) -> None:
        """End the process and all that it started."""
        self.socket.close()
        try:
            self.process.wait(timeout=5)
        except subprocess.TimeoutExpired:
            with contextlib.suppress(OSError):
                os.killpg(self.process.pid, signal.SIGKILL)
            self.process.wait()


_kept: dict[str, ForkServer] = {}  # one at most
_keeping = threading.Lock()


@contextlib.contextmanager
def fork_server(rules: Path) -> Iterator[ForkServer]:
    """Give a server with the rules of a folder; the last one stays, for the next scan by the same rules.

    Raises:
        WorkerFailed: it could not be started.
    """
    key = _key(rules)
    with _keeping:
        server = _kept.get(key)
        if server is None or not server.lives:
            _let_go()
            server = _kept[key] = ForkServer(rules)
        server.users += 1
    try:
        yield server
    finally:
        with _keeping:
            server.users -= 1
            if not server.users and _kept.get(key) is not server:
                server.end()


def _key(rules: Path) -> str:
    """Give what a server rests on: the content of the rules, and whose child it is."""
    digest = hashlib.sha256(b"%d" % os.getpid())
    for one in sorted(rules.rglob("*")):
        if one.is_file():
            digest.update(b"%s\0%s" % (os.fsencode(one.relative_to(rules)), hashlib.sha256(one.read_bytes()).digest()))
    return digest.hexdigest()


def _let_go() -> None:
    """Keep no server; one that nobody uses ends at once."""
    while _kept:
        _, server = _kept.popitem()
        if not server.users:
            server.end()


@atexit.register
def end_fork_server() -> None:
    """End the server that was kept, and with it what was forked from it; one in use ends after its scan."""
    with _keeping:
        _let_go()
