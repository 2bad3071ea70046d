"""What one file may cost: ``rules/limits.yaml``."""

from __future__ import annotations

from pathlib import Path

from pydantic import Field

from specscan.reading.archive import ArchiveLimits
from specscan.rulebook.models import Entry
from specscan.rulebook.yaml_source import read_checked


class Limits(Entry):
    """Bounds on reading one file."""

    seconds_per_file: float = Field(gt=0)
    seconds_per_picture_page: float = Field(ge=0)
    memory_mb: int = Field(ge=500)
    file_mb: int = Field(gt=0)
    files_per_worker: int = Field(gt=0)
    archive_files: int = Field(gt=0)
    archive_unpacked_mb: int = Field(gt=0)
    archive_ratio: int = Field(gt=0)

    @property
    def archives(self) -> ArchiveLimits:
        """Give the bounds on archives."""
        return ArchiveLimits(self.archive_files, self.archive_unpacked_mb, self.file_mb, self.archive_ratio)


def load_limits(folder: Path) -> Limits:
    """Give the limits in a folder of rules.

    Raises:
        RuleError: the file is missing or wrong, with file and line.
    """
    return read_checked(folder / "limits.yaml", Limits)
