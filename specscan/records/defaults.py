"""What is taken where the user names nothing."""

FIRST_RULESET = "deep_winter_wet"
