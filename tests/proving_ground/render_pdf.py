"""Brochures as PDF by ReportLab, with the fourteen fonts every reader has; the same bytes for the same draft."""

from __future__ import annotations

import re
from collections.abc import Sequence
from io import BytesIO
from typing import Any
from xml.sax.saxutils import escape

from reportlab.lib import colors
from reportlab.lib.enums import TA_CENTER
from reportlab.lib.pagesizes import A4, LETTER, landscape
from reportlab.lib.styles import ParagraphStyle
from reportlab.pdfbase.pdfmetrics import stringWidth
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Flowable, Frame, KeepInFrame, Paragraph, Spacer, Table

from tests.proving_ground.pages import (
    Beside,
    Block,
    Bullets,
    Cards,
    Draft,
    Grid,
    Heading,
    Look,
    Page,
    Pairs,
    Para,
    Title,
)

# Signs that the text fonts lack and Zapf Dingbats has.
DINGBATS = "●❍■❏✓✔✗✘◆❖★"
SIGNS = re.compile(f"([{DINGBATS}])")
RULE = colors.Color(0.45, 0.45, 0.45)


def render(draft: Draft) -> bytes:
    """Give a draft as PDF, one page for each of its pages."""
    buffer = BytesIO()
    size = paper(draft.look)
    canvas = Canvas(buffer, pagesize=size, invariant=1)
    canvas.setTitle(draft.title)
    for page in draft.pages:
        draw_page(canvas, page, draft.look, size)
        canvas.showPage()
    canvas.save()
    return buffer.getvalue()


def paper(look: Look) -> tuple[float, float]:
    """Give the width and height of a page in points."""
    size = LETTER if look.letter else A4
    return landscape(size) if look.landscape else size


def draw_page(canvas: Canvas, page: Page, look: Look, size: tuple[float, float]) -> None:
    """Draw the blocks of a page, its head and its foot; the caller ends the page."""
    width, height = size
    setter = _Setter(look, width - 2 * look.margin)
    canvas.setFont(setter.font, 7.5)
    if page.running_head:
        canvas.drawString(look.margin, height - 30, page.running_head)
    if page.foot:
        canvas.drawCentredString(width / 2, 24, page.foot)
    frame = Frame(look.margin, 40, width - 2 * look.margin, height - 84, 0, 0, 0, 0)
    story = setter.story(page.blocks)
    frame.addFromList([KeepInFrame(width - 2 * look.margin, height - 86, story, mode="shrink")], canvas)


class _Setter:
    """Sets blocks as flowables of one look and width."""

    def __init__(self, look: Look, width: float):
        self.look = look
        self.width = width
        self.font = look.font if look.font != "Times" else "Times-Roman"
        self.bold = {"Helvetica": "Helvetica-Bold", "Times": "Times-Bold"}[look.font]

    def style(self, size: float = 0.0, bold: bool = False, color: Any = colors.black, **more: Any) -> ParagraphStyle:
        points = size or self.look.size
        font = self.bold if bold else self.font
        return ParagraphStyle("x", fontName=font, fontSize=points, leading=points * 1.25, textColor=color, **more)

    def para(self, text: str, style: ParagraphStyle | None = None) -> Paragraph:
        return Paragraph(_marked(text), style or self.style())

    def story(self, blocks: Sequence[Block], width: float = 0.0) -> list[Flowable]:
        made: list[Flowable] = []
        for block in blocks:
            made += self._block(block, width or self.width)
            made.append(Spacer(1, 7))
        return made

    def _block(self, block: Block, width: float) -> list[Flowable]:
        if isinstance(block, Title):
            first = self.para(block.lines[0], self.style(20, True, colors.HexColor(self.look.accent)))
            return [first, Spacer(1, 4), *(self.para(line, self.style(12)) for line in block.lines[1:])]
        if isinstance(block, Heading):
            size = 14 if block.level == 1 else 11
            return [self.para(block.text, self.style(size, True, colors.HexColor(self.look.accent)))]
        if isinstance(block, Para):
            return [self.para(block.text, self.style(7.2 if block.small else 0))]
        if isinstance(block, Grid):
            return [self._grid(block, width)]
        if isinstance(block, Pairs):
            return self._pairs(block, width)
        if isinstance(block, Bullets):
            return [self._bullets(block, width)]
        if isinstance(block, Cards):
            return [self._cards(block, width)]
        if isinstance(block, Beside):
            left = width * block.narrow
            cells = [self.story(block.left, left - 14), self.story(block.right, width - left - 14)]
            return [Table([cells], colWidths=[left, width - left], style=_bare(padding=7))]
        return []

    # -- tables -----------------------------------------------------------------------------------------------------

    def _grid(self, grid: Grid, width: float) -> Table:
        size = self._fitting(grid, _widths(grid, width))
        head, body, middle = self.style(size, True), self.style(size), self.style(size, alignment=TA_CENTER)
        data: list[list[Any]] = []
        style: list[tuple[Any, ...]] = [("VALIGN", (0, 0), (-1, -1), "MIDDLE" if grid.ruled else "TOP")]
        for number, row in enumerate([*grid.heads, *grid.rows]):
            is_head = number < len(grid.heads)
            line: list[Any] = []
            for cell in row:
                at = len(line)
                group = not is_head and cell.span == grid.columns
                if is_head and grid.rotated and at > 0 and cell.text:
                    line.append(_Turned(cell.text, self.bold, self.look.size))
                else:
                    line.append(self.para(cell.text, head if is_head or group else middle if cell.span > 1 else body))
                line += [""] * (cell.span - 1)
                if cell.span > 1:
                    style.append(("SPAN", (at, number), (at + cell.span - 1, number)))
            data.append(line)
        style += self._lines(grid, len(data)) + _upright_spans(grid)
        return Table(data, colWidths=_widths(grid, width), style=style, repeatRows=0)

    def _fitting(self, grid: Grid, widths: Sequence[float]) -> float:
        """Give a type size at which no word is wider than its column, so that none is torn apart."""
        size = self.look.size - (1.5 if grid.small else 0)
        widest = 0.0
        for row in grid.rows if grid.rotated else [*grid.heads, *grid.rows]:
            place = 0
            for cell in row:
                room = sum(widths[place : place + cell.span]) - 13
                longest = max((stringWidth(word, self.bold, size) for word in cell.text.split(" ")), default=0)
                widest = max(widest, longest / room)
                place += cell.span
        return size if widest <= 1 else max(4.5, size / widest)

    def _lines(self, grid: Grid, count: int) -> list[tuple[Any, ...]]:
        style: list[tuple[Any, ...]] = [("TOPPADDING", (0, 0), (-1, -1), 2), ("BOTTOMPADDING", (0, 0), (-1, -1), 2.5)]
        heads = len(grid.heads)
        if grid.ruled:
            style.append(("GRID", (0, 0), (-1, -1), 0.5, RULE))
        elif heads:
            style.append(("LINEBELOW", (0, heads - 1), (-1, heads - 1), 0.8, RULE))
        if grid.zebra:
            shade = colors.Color(0.93, 0.94, 0.95)
            style += [("BACKGROUND", (0, row), (-1, row), shade) for row in range(heads + 1, count, 2)]
        return style

    # -- lists ------------------------------------------------------------------------------------------------------

    def _pairs(self, block: Pairs, width: float) -> list[Flowable]:
        heading = self.style(self.look.size + 1, True)
        if block.style in ("tabs", "ruled"):
            return [self._pair_table(block, width, heading)]
        made: list[Flowable] = []
        for label, value in block.rows:
            if not label:
                made += [Spacer(1, 4), self.para(value, heading)]
            elif block.style == "leaders":
                made.append(_Leaders(label, value, self.font, self.look.size, width))
            else:
                made.append(self.para(f"{label}: {value}"))
        return made

    def _pair_table(self, block: Pairs, width: float, heading: ParagraphStyle) -> Table:
        data: list[list[Any]] = []
        style: list[tuple[Any, ...]] = [("VALIGN", (0, 0), (-1, -1), "TOP"), ("TOPPADDING", (0, 0), (-1, -1), 1.5)]
        style.append(("BOTTOMPADDING", (0, 0), (-1, -1), 2))
        for number, (label, value) in enumerate(block.rows):
            if not label:
                data.append([self.para(value, heading), ""])
                style.append(("SPAN", (0, number), (1, number)))
            else:
                data.append([self.para(label), self.para(value)])
        if block.style == "ruled":
            style.append(("LINEBELOW", (0, 0), (-1, -1), 0.4, RULE))
        return Table(data, colWidths=[width * 0.48, width * 0.52], style=style)

    def _bullets(self, block: Bullets, width: float) -> Table:
        made: list[Flowable] = []
        for sign, text in block.items:
            made.append(self.para(f"{sign} {text}") if sign else self.para(text, self.style(self.look.size + 1, True)))
        share = -(-len(made) // block.columns)
        cells = [made[start : start + share] for start in range(0, len(made), share)]
        return Table([cells], colWidths=[width / block.columns] * len(cells), style=_bare())

    def _cards(self, block: Cards, width: float) -> Table:
        cells: list[list[Flowable]] = []
        for card in block.cards:
            lines: list[Flowable] = [self.para(card.title, self.style(11, True)), self.para(card.price), Spacer(1, 3)]
            cells.append([*lines, *(self.para(f"• {text}") for text in card.items)])
        rows = [[*cells[start : start + 2], ""][:2] for start in range(0, len(cells), 2)]
        style = [*_bare(padding=8), ("BOX", (0, 0), (-1, -1), 0.5, RULE), ("INNERGRID", (0, 0), (-1, -1), 0.5, RULE)]
        return Table(rows, colWidths=[width / 2] * 2, style=style)


def _bare(padding: float = 4) -> list[tuple[Any, ...]]:
    return [
        ("VALIGN", (0, 0), (-1, -1), "TOP"), ("LEFTPADDING", (0, 0), (-1, -1), padding),
        ("RIGHTPADDING", (0, 0), (-1, -1), padding), ("TOPPADDING", (0, 0), (-1, -1), padding),
        ("BOTTOMPADDING", (0, 0), (-1, -1), padding),
    ]  # fmt: skip


def _upright_spans(grid: Grid) -> list[tuple[Any, ...]]:
    """Let the name of a group cover the rows of its group, where a column names the groups."""
    starts = [at for at, row in enumerate(grid.rows) if row[0].text]
    if "group columns" not in grid.traits or not starts:
        return []
    shift = len(grid.heads)
    ends = [start - 1 for start in [*starts[1:], len(grid.rows)]]
    return [("SPAN", (0, start + shift), (0, end + shift)) for start, end in zip(starts, ends, strict=True)]


def _widths(grid: Grid, width: float) -> list[float]:
    columns = grid.columns
    if grid.small:
        first = [0.13]
    elif "group columns" in grid.traits:
        first = [0.14, 0.24]
    else:
        first = [0.28 if columns > 4 else 0.38]
    rest = (1 - sum(first)) / (columns - len(first))
    return [width * share for share in [*first, *[rest] * (columns - len(first))]]


def _marked(text: str) -> str:
    return SIGNS.sub(lambda match: f'<font name="ZapfDingbats">{match[1]}</font>', escape(text))


class _Turned(Flowable):
    """A column head that reads upwards."""

    def __init__(self, text: str, font: str, size: float):
        super().__init__()
        self.text, self.font, self.size = text, font, size
        self.length = stringWidth(text, font, size)

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        return self.size * 1.3, self.length + 4

    def draw(self) -> None:
        self.canv.saveState()
        self.canv.rotate(90)
        self.canv.setFont(self.font, self.size)
        self.canv.drawString(2, -self.size, self.text)
        self.canv.restoreState()


class _Leaders(Flowable):
    """A label and its value at the right edge, with dots between; set smaller where the line is too short."""

    def __init__(self, label: str, value: str, font: str, size: float, width: float):
        super().__init__()
        self.label, self.value, self.font, self.size, self.line = label, value, font, size, width
        while self.size > 4.5 and stringWidth(f"{label} .... {value}", font, self.size) > width:
            self.size -= 0.5

    def wrap(self, available_width: float, available_height: float) -> tuple[float, float]:
        return self.line, self.size * 1.45

    def draw(self) -> None:
        dot = stringWidth(".", self.font, self.size) * 1.6
        start = stringWidth(self.label, self.font, self.size) + 3
        end = self.line - stringWidth(self.value, self.font, self.size) - 3
        self.canv.setFont(self.font, self.size)
        self.canv.drawString(0, 3, self.label)
        dots = " ".join("." * max(2, int((end - start) / dot)))
        while stringWidth(dots, self.font, self.size) > end - start and len(dots) > 3:
            dots = dots[:-2]
        self.canv.drawString(start, 3, dots)
        self.canv.drawRightString(self.line, 3, self.value)
