"""The command line: it parses and prints; everything else is in ``specscan.api``."""
