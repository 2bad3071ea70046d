"""What is said beside every score."""

CAUTION = (
    "A score is no safety certificate. Carbon monoxide, propane, antifreeze, batteries and being stranded in the cold "
    "can kill: follow the makers' manuals and local codes, and leave gas and electrical work to licensed people."
)
