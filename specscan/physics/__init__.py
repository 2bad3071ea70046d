"""Settled values to derived ones: one module per phenomenon, pure functions over arrays of cases."""

from specscan.physics.derived import DERIVED, Derived, derive, derive_numbers

__all__ = ["DERIVED", "Derived", "derive", "derive_numbers"]
