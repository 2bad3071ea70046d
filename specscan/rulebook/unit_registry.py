"""pint's registry of units (NIST SP 811), made once a process: that takes longer than all that is asked of it."""

from __future__ import annotations

import functools


@functools.cache
def unit_registry():  # type: ignore[no-untyped-def]
    """Give the registry, ``pint.UnitRegistry``."""
    import pint

    return pint.UnitRegistry()
