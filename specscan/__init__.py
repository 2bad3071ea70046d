"""specscan: brochures of camper vans → a dataset of what is stated, what it means in winter, and what is unknown."""

from importlib.metadata import PackageNotFoundError, version

try:
    __version__ = version("specscan")
except PackageNotFoundError:  # run from a checkout that was never installed
    __version__ = "0.0.0"
