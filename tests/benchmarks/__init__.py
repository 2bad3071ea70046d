"""Measures of how the program does on many drawn documents: commands, not tests."""
