"""Pictures of the evidence: strips cut from brochure pages, each shared by all statements of its line."""

from __future__ import annotations

import base64
import binascii
import contextlib
import json
import select
import subprocess
import time
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from dataclasses import field as made
from typing import Any

from specscan.records.processes import child_command
from specscan.reports.page_rules import PictureRules

CHUNK = 1 << 16
SAME_LINE = 2.0  # points; boxes of one table row differ by less
LEFT_OUT = "left out to keep this page small"
LONGEST_ANSWER = 20_000_000  # bytes; more than all strips of any page


@dataclass(frozen=True, slots=True)
class Spot:
    """Where a statement stands: its document, page (1-based) and box in points from the page's upper left corner.

    ``weight`` says how much its picture matters where there is no room for all.
    """

    fact_id: str
    doc_id: str
    path: str
    sha256: str
    page: int
    x0: float
    top: float
    x1: float
    bottom: float
    weight: int = 0


@dataclass(frozen=True, slots=True)
class Strip:
    """A picture over the full width of a page: WebP in base64, its place and size in points."""

    name: str
    top: float
    width: float
    height: float
    data: str


@dataclass(frozen=True, slots=True)
class Cut:
    """A statement's picture: the strip, and the marked words in it (points from the strip's upper left corner)."""

    strip: Strip
    x: float
    y: float
    width: float
    height: float


@dataclass(slots=True)
class Pictures:
    """What was cut: by statement a picture, or why there is none; and every strip that is used."""

    cuts: dict[str, Cut] = made(default_factory=dict)
    why_not: dict[str, str] = made(default_factory=dict)
    weights: dict[str, int] = made(default_factory=dict)

    @property
    def strips(self) -> list[Strip]:
        """Give the strips in use, each once."""
        return list({cut.strip.name: cut.strip for cut in self.cuts.values()}.values())

    @property
    def size(self) -> int:
        """Give the bytes of all strips in use."""
        return sum(len(strip.data) for strip in self.strips)

    def within(self, room: float) -> Pictures:
        """Give the pictures for which there are ``room`` bytes; the least important strips are left out first."""
        groups: dict[str, list[str]] = {}
        for fact_id, cut in self.cuts.items():
            groups.setdefault(cut.strip.name, []).append(fact_id)
        order = sorted(groups.values(), key=lambda group: -max(self.weights.get(one, 0) for one in group))
        kept = Pictures(why_not=dict(self.why_not), weights=self.weights)
        for group in order:
            room -= len(self.cuts[group[0]].strip.data)
            if room >= 0:
                kept.cuts.update((one, self.cuts[one]) for one in group)
            else:
                kept.why_not.update(dict.fromkeys(group, LEFT_OUT))
        return kept


def cut_pictures(spots: Sequence[Spot], rules: PictureRules) -> Pictures:
    """Draw the places of statements, each page in a process of its own kind that is bounded in time and memory.

    A page that cannot be drawn costs only its own pictures; ``why_not`` says why.
    """
    found = Pictures(weights={spot.fact_id: spot.weight for spot in spots})
    with contextlib.closing(_Drawer(rules)) as drawer:
        for page_spots in _by_page(spots):
            groups = _lines(page_spots)
            first = page_spots[0]
            answer = drawer.draw(first.path, first.sha256, first.page, [_span(group, rules) for group in groups])
            for number, group in enumerate(groups):
                strip = _strip(answer, number, f"p{first.doc_id}-{first.page}-{number}")
                if strip is None:
                    why = str(answer.get("why") or "the place is not on the page")
                    found.why_not.update((spot.fact_id, why) for spot in group)
                else:
                    found.cuts.update((spot.fact_id, _cut(spot, strip)) for spot in group)
    return found


def _by_page(spots: Sequence[Spot]) -> Iterator[list[Spot]]:
    pages: dict[tuple[str, int], list[Spot]] = {}
    for spot in spots:
        pages.setdefault((spot.doc_id, spot.page), []).append(spot)
    yield from (pages[key] for key in sorted(pages))


def _lines(spots: Iterable[Spot]) -> list[list[Spot]]:
    """Give the statements of a page in groups that one strip shows: those that stand at the same height."""
    groups: list[list[Spot]] = []
    for spot in sorted(spots, key=lambda one: (one.top, one.bottom)):
        for group in groups[-3:]:
            if abs(group[0].top - spot.top) < SAME_LINE and abs(group[0].bottom - spot.bottom) < SAME_LINE:
                group.append(spot)
                break
        else:
            groups.append([spot])
    return groups


def _span(group: Sequence[Spot], rules: PictureRules) -> tuple[float, float]:
    top = max(0.0, min(spot.top for spot in group) - rules.margin_points)
    bottom = max(spot.bottom for spot in group) + rules.margin_points
    return top, min(bottom, top + rules.tallest_points)


def _strip(answer: dict[str, Any], number: int, name: str) -> Strip | None:
    """Give a strip as the drawing process answered it; nothing where the answer is not what a picture looks like."""
    try:
        one = answer["strips"][number]
        data = base64.b64decode(one["data"], validate=True)
        top, width, height = float(one["top"]), float(answer["width"]), float(one["height"])
    except (KeyError, IndexError, TypeError, ValueError, binascii.Error):
        return None
    if data[:4] != b"RIFF" or data[8:12] != b"WEBP" or not (0 < width < 1e5 and 0 < height < 1e5):
        return None
    return Strip(name, top, width, height, base64.b64encode(data).decode())


def _cut(spot: Spot, strip: Strip) -> Cut:
    left, right = max(0.0, spot.x0 - 1.5), min(strip.width, spot.x1 + 1.5)
    upper, lower = max(0.0, spot.top - strip.top - 1.5), min(strip.height, spot.bottom - strip.top + 1.5)
    return Cut(strip, left, upper, max(1.0, right - left), max(1.0, lower - upper))


class _Drawer:
    """The drawing process; started when first needed, ended when it takes too long, not asked again about that file."""

    def __init__(self, rules: PictureRules):
        self.rules = rules
        self.process: subprocess.Popen[bytes] | None = None
        self.buffer = b""
        self.given_up: dict[str, str] = {}

    def draw(self, path: str, sha256: str, page: int, spans: Sequence[tuple[float, float]]) -> dict[str, Any]:
        if path in self.given_up:
            return {"why": self.given_up[path]}
        request = {"path": path, "sha256": sha256, "page": page, "strips": spans}
        line = self._ask(json.dumps(request))
        if line is not None:
            with contextlib.suppress(ValueError, RecursionError):
                answer = json.loads(line)
                if isinstance(answer, dict):
                    return answer
        self.close()
        self.given_up[path] = "drawing its pages failed or took too long"
        return {"why": self.given_up[path]}

    def _ask(self, request: str) -> bytes | None:
        try:
            process = self.process or self._start()
            assert process.stdin is not None
            process.stdin.write(request.encode() + b"\n")
            process.stdin.flush()
        except OSError:
            return None
        return self._line(process)

    def _start(self) -> subprocess.Popen[bytes]:
        command, environment = child_command("specscan.reports.page_cutter")
        self.process = subprocess.Popen(
            command, env=environment,
            stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL,
        )  # fmt: skip
        self.buffer = b""
        assert self.process.stdin is not None
        bounds = self.rules.model_dump(include={"memory_mb", "file_mb", "pixels_per_point", "widest_pixels", "quality"})
        self.process.stdin.write(json.dumps(bounds).encode() + b"\n")
        return self.process

    def _line(self, process: subprocess.Popen[bytes]) -> bytes | None:
        assert process.stdout is not None
        deadline = time.monotonic() + self.rules.seconds_per_page
        while b"\n" not in self.buffer:
            left = deadline - time.monotonic()
            if left <= 0 or not select.select([process.stdout.fileno()], [], [], left)[0]:
                return None
            chunk = process.stdout.read1(CHUNK)  # type: ignore[attr-defined]
            if not chunk or len(self.buffer) > LONGEST_ANSWER:
                return None
            self.buffer += chunk
        line, _, self.buffer = self.buffer.partition(b"\n")
        return line

    def close(self) -> None:
        if self.process is None:
            return
        with contextlib.suppress(OSError):
            self.process.kill()
        self.process.wait()
        for pipe in (self.process.stdin, self.process.stdout):
            if pipe is not None:
                with contextlib.suppress(OSError):
                    pipe.close()
        self.process = None
