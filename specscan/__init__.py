"""specscan: brochures of camper vans → a dataset of what is stated, what it means in winter, and what is unknown."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    __version__: str


def __getattr__(name: str) -> str:
    """Give ``__version__``, which is looked up only when asked for: the module that knows it is slow to load."""
    if name != "__version__":
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from importlib.metadata import PackageNotFoundError, version

    try:
        return version("specscan")
    except PackageNotFoundError:  # run from a checkout that was never installed
        return "0.0.0"
