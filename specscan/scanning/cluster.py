"""Reading on more than one machine: an existing Dask cluster reads the files in parts, this process loads the parts.

Dask distributed is taken because it hands the work of a machine that is lost to others, starts in under a second and
needs no service besides its scheduler (measured: ``DEVELOPERS.md``). Parts are Parquet files at an address that all
machines reach; the dataset loads them in one statement.
"""

from __future__ import annotations

import tempfile
import uuid
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from specscan import __version__
from specscan.records.errors import SpecscanError
from specscan.scanning.addresses import COMMAND, opened
from specscan.scanning.cluster_part import read_part
from specscan.scanning.pool import Task
from specscan.scanning.timings import Timings

FILES_PER_PART = 50
TRIES = 5  # machines that may be lost over one part before it is given up
CONNECT_SECONDS = 20


@dataclass(frozen=True, slots=True)
class Cluster:
    """A cluster by the address of its scheduler; ``parts`` is the address of the folder where machines put their parts.

    Without ``parts`` a folder for temporary files is used, which is right only where all machines are this one.
    """

    scheduler: str
    parts: str = ""
    files_per_part: int = FILES_PER_PART

    def read(
        self,
        tasks: Sequence[Task],
        made_by: Callable[[Task], str],
        rules: Path,
        take: Callable[[list[str]], None],
        timings: Timings,
        progress: Callable[[int, int, str], None] | None = None,
    ) -> None:
        """Have all files read, and hand the Parquet files with what was found to ``take``, as local paths.

        Raises:
            SpecscanError: the cluster cannot be reached, lost too many machines over one part, or cannot write.
        """
        batches = [tasks[start : start + self.files_per_part] for start in range(0, len(tasks), self.files_per_part)]
        if not batches:
            return
        content = {str(one.relative_to(rules)): one.read_bytes() for one in sorted(rules.rglob("*")) if one.is_file()}
        with self._client() as client, _folder(self.parts) as parts:
            done = 0
            calls = [
                client.submit(
                    read_part, batch, [made_by(task) for task in batch], content, __version__,
                    f"{parts}/{number:06d}.parquet", key=f"specscan-part-{uuid.uuid4().hex}",
                )
                for number, batch in enumerate(batches)
            ]  # fmt: skip
            written = []
            for part, took in self._results(client, calls):
                written.append(part)
                done += len(took)
                for one in took:
                    timings.add_inside(one)
                if progress is not None:
                    progress(done, len(tasks), part.rsplit("/", 1)[-1])
            with tempfile.TemporaryDirectory() as near:
                take([_near(part, Path(near)) for part in sorted(written)])

    @contextmanager
    def _client(self) -> Iterator[Any]:
        try:
            import dask
            from distributed import Client
        except ImportError as error:
            raise SpecscanError(f"--cluster needs the cluster extra: {COMMAND}") from error
        with dask.config.set({"distributed.scheduler.allowed-failures": TRIES}):
            try:
                client = Client(self.scheduler, timeout=CONNECT_SECONDS, set_as_default=False)
            except (OSError, ValueError) as error:
                raise SpecscanError(f"{self.scheduler}: no cluster answers there ({error})") from error
            with client, client.as_current():
                yield client

    def _results(self, client: Any, calls: list[Any]) -> Iterator[tuple[str, list[tuple[float, float]]]]:
        from distributed import as_completed

        for call in as_completed(calls):
            try:
                yield call.result()
            except SpecscanError:
                raise
            except Exception as error:
                raise SpecscanError(f"the cluster failed on a part ({type(error).__name__}: {error})") from error


@contextmanager
def _folder(parts: str) -> Iterator[str]:
    """Give the address of a new folder for the parts of this scan; it is taken away in the end."""
    if not parts:
        with tempfile.TemporaryDirectory() as place:
            yield f"file://{place}"
        return
    address = f"{parts.rstrip('/')}/specscan-{uuid.uuid4().hex[:12]}"
    system, place = opened(address)
    system.makedirs(place, exist_ok=True)
    try:
        yield address
    finally:
        system.rm(place, recursive=True)


def _near(part: str, folder: Path) -> str:
    """Give a local path of a part, copied here where it lies elsewhere."""
    system, place = opened(part)
    if part.startswith("file://"):
        return str(place)
    target = folder / part.rsplit("/", 1)[-1]
    system.get_file(place, str(target))
    return str(target)
