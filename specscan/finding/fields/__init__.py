"""The values of fields in a statement."""
