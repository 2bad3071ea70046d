"""Where the program prints: a terminal with colour, or plain text of full width when piped."""

from __future__ import annotations

import sys

from rich.console import Console

PIPED_WIDTH = 10_000


def console(*, error: bool = False) -> Console:
    """Give the console for answers, or with ``error`` the one for progress and complaints."""
    stream = sys.stderr if error else sys.stdout
    if stream.isatty():
        return Console(file=stream, highlight=False)
    return Console(file=stream, highlight=False, width=PIPED_WIDTH, no_color=True, force_terminal=False)
