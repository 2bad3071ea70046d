"""Words, numbers, units and the terms of the rules."""
