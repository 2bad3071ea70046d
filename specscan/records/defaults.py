"""What is taken where the user names nothing."""

FIRST_RULESET = "deep_winter_wet"

DEFAULT_RULESET = ""
"""The built-in first one where a dataset was scored with it; see ``Reader.ruleset``."""
