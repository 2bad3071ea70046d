"""Where the time of a scan goes."""

from __future__ import annotations

import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field


@dataclass(slots=True)
class Timings:
    """Seconds by stage, in the order in which the stages came; ``inside`` are processor seconds of reading processes.

    The stages follow each other; what is ``inside`` is spent by several processes at once, within the stage of reading.
    """

    stages: dict[str, float] = field(default_factory=dict)
    inside: dict[str, float] = field(default_factory=dict)

    @contextmanager
    def of(self, stage: str) -> Iterator[None]:
        """Count the time of what is done under it to a stage."""
        began = time.perf_counter()
        try:
            yield
        finally:
            self.stages[stage] = self.stages.get(stage, 0.0) + time.perf_counter() - began

    def add_inside(self, took: tuple[float, float]) -> None:
        """Add the processor seconds that reading one document and finding what it states took."""
        for name, seconds in zip(("reading pages", "finding statements"), took, strict=True):
            self.inside[name] = self.inside.get(name, 0.0) + seconds
