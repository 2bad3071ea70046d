"""Saved web pages."""
