"""Text files, typed and pasted."""
