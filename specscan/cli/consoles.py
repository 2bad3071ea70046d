"""Where the program prints: a terminal with colour, or plain text of full width when piped.

Much of what is printed was written by strangers. It is never taken for markup, and control characters in it, which
could move the cursor or rename the window, are shown as signs.
"""

from __future__ import annotations

import json
import sys
from collections.abc import Iterable, Sequence
from typing import Any

from rich.cells import cell_len
from rich.console import Console, ConsoleOptions, ConsoleRenderable, RenderHook
from rich.segment import Segment
from rich.table import Table
from rich.text import Text

from specscan.records.shown import escaped, visible, visible_lines

PIPED_WIDTH = 10_000


class _Clean:
    def __init__(self, inner: ConsoleRenderable):
        self.inner = inner

    def __rich_console__(self, console: Console, options: ConsoleOptions) -> Iterable[Segment]:
        for segment in console.render(self.inner, options):
            yield segment if segment.control else Segment(visible_lines(segment.text), segment.style)


class _Cleaner(RenderHook):
    def process_renderables(self, renderables: list[ConsoleRenderable]) -> list[ConsoleRenderable]:
        return [_Clean(one) for one in renderables]


def console(*, error: bool = False) -> Console:
    """Give the console for answers, or with ``error`` the one for progress and complaints."""
    stream = sys.stderr if error else sys.stdout
    if stream.isatty():
        made = Console(file=stream, highlight=False, markup=False, emoji=False)
    else:
        made = Console(
            file=stream, highlight=False, markup=False, emoji=False, width=PIPED_WIDTH, no_color=True,
            force_terminal=False,
        )  # fmt: skip
    made.push_render_hook(_Cleaner())
    return made


def print_rows(heads: Sequence[str], rows: Sequence[Sequence[str]]) -> None:
    """Print rows of text under their heads, the first column, of figures, to the right.

    A terminal gets them folded to its width. Piped, where nothing is folded, they are aligned line by line: thousands
    of rows would otherwise wait for a layout that they do not need.
    """
    out = console()
    if out.is_terminal:
        table = Table(box=None, header_style="bold", pad_edge=False)
        for head in heads:
            table.add_column(head, justify="right" if head == heads[0] else "left", overflow="fold")
        for row in rows:
            table.add_row(*map(Text, row))
        out.print(table)
        return
    lines = [[visible(cell) for cell in row] for row in (heads, *rows)]
    widths = [max(map(cell_len, column)) for column in zip(*lines, strict=True)]
    for first, *others in lines:
        cells = [" " * (widths[0] - cell_len(first)) + first]
        cells += [cell + " " * (width - cell_len(cell)) for cell, width in zip(others, widths[1:], strict=True)]
        sys.stdout.write("  ".join(cells).rstrip() + "\n")


def print_json(data: Any) -> None:
    """Print data for programs; what could act on a terminal stands as ``\\uXXXX``, which programs read as it was."""
    print(escaped(json.dumps(data, ensure_ascii=False, indent=2, default=str)))


def print_text(text: str) -> None:
    """Print a text for programs: as it is when piped, with control characters as signs on a terminal."""
    sys.stdout.write(visible_lines(text) if sys.stdout.isatty() else text)
