"""The things, values and figures of a text, and which belong together."""
