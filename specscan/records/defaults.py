"""What is taken where the user names nothing."""

FIRST_RULESET = "deep_winter_wet"

DEFAULT_RULESET = ""
"""The built-in first one where a dataset was scored with it; see ``Reader.ruleset``."""
UNSURE_BELOW = 0.98  # statements less sure than this are listed as unsure: nearly all that have a ground for doubt
