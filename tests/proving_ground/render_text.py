"""Brochures as plain text and as Markdown."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

from tests.proving_ground.pages import Beside, Block, Bullets, Cards, Draft, Grid, Heading, Pairs, Para, Title

WIDTH = 78


def render(draft: Draft, markdown: bool) -> bytes:
    """Give a draft as text; pages follow one another without a sign, as pasted or exported text does."""
    lines: list[str] = []
    for page in draft.pages:
        for block in page.blocks:
            lines += [*_block(block, markdown), ""]
    return ("\n".join(lines).rstrip() + "\n").encode()


def _block(block: Block, markdown: bool) -> list[str]:
    if isinstance(block, Title):
        return [f"# {block.lines[0]}", *_spaced(block.lines[1:])] if markdown else list(block.lines)
    if isinstance(block, Heading):
        if markdown:
            return [f"{'##' if block.level == 1 else '###'} {block.text}"]
        return [block.text.upper() if block.level == 1 else block.text, "-" * len(block.text)]
    if isinstance(block, Para):
        return [block.text] if markdown else textwrap.wrap(block.text, WIDTH, break_on_hyphens=False)
    if isinstance(block, Grid):
        return _pipes(block) if markdown else _columns(block)
    if isinstance(block, Pairs):
        return _pairs(block, markdown)
    if isinstance(block, Bullets):
        return _bullets(block, markdown)
    if isinstance(block, Cards):
        lines: list[str] = []
        for card in block.cards:
            lines += [f"### {card.title}" if markdown else card.title, card.price, ""]
            lines += [*(f"- {text}" for text in card.items), ""]
        return lines[:-1]
    if isinstance(block, Beside):
        return [line for part in (*block.left, *block.right) for line in [*_block(part, markdown), ""]]
    return []


def _spaced(lines: Sequence[str]) -> list[str]:
    return [part for line in lines for part in ("", line)]


def _spread(grid: Grid, row: Sequence[object]) -> list[str]:
    """Give a row's texts, one for each column; a spanning cell's text stands in every column that it covers."""
    texts: list[str] = []
    for cell in row:
        texts += [cell.text] * cell.span  # type: ignore[attr-defined]
    return texts


def _pipes(grid: Grid) -> list[str]:
    rows = [_spread(grid, row) for row in grid.heads]
    head = rows[-1] if rows else [""] * grid.columns
    lines = ["| " + " | ".join(head) + " |", "|" + "---|" * grid.columns]
    for row in grid.rows:
        if row[0].span == grid.columns:
            texts = [f"**{row[0].text}**", *[""] * (grid.columns - 1)]
        else:
            texts = _spread(grid, row)
        lines.append("| " + " | ".join(texts) + " |")
    return lines


def _columns(grid: Grid) -> list[str]:
    heads = [_spread(grid, row) for row in grid.heads]
    body = [[row[0].text] if row[0].span == grid.columns else _spread(grid, row) for row in grid.rows]
    full = [row for row in (*heads, *body) if len(row) == grid.columns]
    widths = [max(len(row[place]) for row in full) + 3 for place in range(grid.columns)]
    lines = []
    for number, row in enumerate([*heads, *body]):
        if len(row) == 1:
            lines += ["", row[0]]
            continue
        lines.append("".join(text.ljust(width) for text, width in zip(row, widths, strict=True)).rstrip())
        if number == len(heads) - 1:
            lines.append("-" * sum(widths))
    return lines


def _pairs(block: Pairs, markdown: bool) -> list[str]:
    lines: list[str] = []
    width = max((len(label) for label, _ in block.rows), default=0) + 3
    if markdown and block.style in ("ruled", "tabs"):
        return _pair_pipes(block)
    for label, value in block.rows:
        if not label:
            lines += ["", f"### {value}" if markdown else value]
            if markdown:
                lines.append("")
        elif markdown:
            lines.append(f"- **{label}:** {value}" if block.style == "colon" else f"- {label}: {value}")
        elif block.style == "leaders":
            lines.append(f"{label} ".ljust(width + 6, ".") + f" {value}")
        elif block.style == "tabs":
            lines.append(f"{label}\t{value}")
        elif block.style == "ruled":
            lines.append(f"{label.ljust(width)}{value}")
        else:
            lines.append(f"{label}: {value}")
    return lines[1:] if lines and not lines[0] else lines


def _pair_pipes(block: Pairs) -> list[str]:
    lines = ["| | |", "|---|---|"]
    for label, value in block.rows:
        lines.append(f"| {label} | {value} |" if label else f"| **{value}** | |")
    return lines


def _bullets(block: Bullets, markdown: bool) -> list[str]:
    lines: list[str] = []
    for sign, text in block.items:
        if not sign:
            lines += ["", f"### {text}" if markdown else text, *([""] if markdown else [])]
        else:
            shown = "-" if markdown and sign in "•–*-" else f"- {sign}" if markdown else sign
            lines.append(f"{shown} {text}")
    return lines[1:] if lines and not lines[0] else lines
