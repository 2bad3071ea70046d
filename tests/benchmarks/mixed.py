"""Draws whole brochures as makers print them, around the specification pages of the proving ground.

A brochure has 10 to 16 pages: a cover with light type on a photograph; pages of photographs with captions and drawn
ornaments; running text in columns beside a photograph; floorplans of thousands of strokes with a few labels; the
specification as the proving ground draws it; a page of small print; addresses on the last. The same brochure for the
same seed and number. It is a benchmark of speed: what its pictures and stories say is not labelled.
"""

from __future__ import annotations

import io
from collections.abc import Sequence
from functools import cache
from pathlib import Path
from random import Random
from typing import Any

import numpy as np
import yaml
from PIL import Image
from reportlab.lib import colors
from reportlab.lib.styles import ParagraphStyle
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen.canvas import Canvas
from reportlab.platypus import Frame, Paragraph

from tests.proving_ground.maker import draw
from tests.proving_ground.pages import Draft
from tests.proving_ground.render_pdf import draw_page, paper

TEXTS = Path(__file__).parent / "running_text.yaml"
LEAST, MOST = 10, 16  # pages
PHOTO = (900, 600)  # pixels
GRAIN = 12  # of a photograph, so that it packs as badly as a real one
STROKES = (1_200, 6_000)  # of the drawings on a page of floorplans
ORNAMENT = (40, 900)  # curves of the drawn ornaments of a page
SENTENCES = (14, 34)  # of a page of running text
NOTES = (30, 60)  # sentences of small print


def mixed_brochures(folder: Path, count: int, seed: int) -> list[Path]:
    """Draw brochures into a folder, where they are not there yet, and give their files."""
    folder.mkdir(parents=True, exist_ok=True)
    number = 0
    while len(list(folder.iterdir())) < count:
        try:
            brochure = draw(seed, number, renderers=("reportlab",))
        except ValueError:  # a layout that has no printed form
            number += 1
            continue
        (folder / brochure.name).write_bytes(_Maker(brochure.draft, Random(f"{seed}/{number}/mixed")).data())
        number += 1
    return sorted(folder.iterdir())


@cache
def _texts() -> dict[str, dict[str, list[str]]]:
    found: dict[str, dict[str, list[str]]] = yaml.safe_load(TEXTS.read_text("utf-8"))
    return found


class _Maker:
    def __init__(self, draft: Draft, rng: Random):
        self.draft, self.rng = draft, rng
        self.words = _texts()[draft.language]
        self.size = paper(draft.look)
        self.buffer = io.BytesIO()
        self.canvas = Canvas(self.buffer, pagesize=self.size, invariant=1)
        self.canvas.setTitle(draft.title)
        self.chance = np.random.default_rng(rng.randrange(1 << 30))

    def data(self) -> bytes:
        """Give the brochure as PDF."""
        rng, canvas = self.rng, self.canvas
        specs = len(self.draft.pages)
        filling = max(rng.randint(LEAST, MOST) - specs - 3, 4)  # without cover, small print and addresses
        kinds = [self._photographs, self._running_text, self._floorplans, self._running_text]
        middle = [kinds[place % len(kinds)] for place in range(filling)]
        if rng.random() < 0.5:
            rng.shuffle(middle)
        self._cover()
        for page in middle:
            page()
        for one in self.draft.pages:
            draw_page(canvas, one, self.draft.look, self.size)
            canvas.showPage()
        self._small_print()
        self._addresses()
        canvas.save()
        return self.buffer.getvalue()

    # -- pages ------------------------------------------------------------------------------------------------------

    def _cover(self) -> None:
        width, height = self.size
        self._photo(0, 0, width, height)
        self.canvas.setFillColor(colors.white)
        self.canvas.setFont("Helvetica-Bold", 34)
        self.canvas.drawString(48, height - 120, self.draft.title)
        self.canvas.setFont("Helvetica", 15)
        self.canvas.drawString(48, height - 150, self.rng.choice(self.words["headings"]))
        self._ornaments()
        self.canvas.showPage()

    def _photographs(self) -> None:
        width, height = self.size
        rows = self.rng.choice((1, 2, 3))
        tall = (height - 90) / rows
        for row in range(rows):
            parts = self.rng.choice((1, 2))
            wide = (width - 72) / parts
            for part in range(parts):
                x, y = 36 + part * wide, 45 + row * tall
                self._photo(x, y + 16, wide - 8, tall - 28)
                self.canvas.setFillColor(colors.black)
                self.canvas.setFont("Helvetica-Oblique", 8)
                self.canvas.drawString(x, y + 4, self.rng.choice(self.words["captions"]))
        self._ornaments()
        self.canvas.showPage()

    def _running_text(self) -> None:
        width, height = self.size
        top = height - 60
        if self.rng.random() < 0.6:
            self._photo(36, height * 0.62, width - 72, height * 0.33)
            top = height * 0.6
        columns = self.rng.choice((1, 2, 2, 3))
        wide = (width - 72) / columns
        count = self.rng.randint(*SENTENCES)
        for column in range(columns):
            story = [self._para(self.rng.choice(self.words["headings"]), 13, bold=True)]
            own = [self._sentence() for _ in range(max(3, count // columns))]
            story += [self._para(" ".join(own[start : start + 4]), 9.5) for start in range(0, len(own), 4)]
            Frame(36 + column * wide, 40, wide - 10, top - 40, 0, 0, 0, 0).addFromList(story, self.canvas)
        self._ornaments()
        self.canvas.showPage()

    def _floorplans(self) -> None:
        width, height = self.size
        plans = self.rng.choice((1, 2))
        strokes = self.rng.randint(*STROKES) // plans
        for plan in range(plans):
            y = 70 + plan * (height - 120) / plans
            self._plan(50, y, width - 100, min(220.0, (height - 160) / plans), strokes)
            self.canvas.setFillColor(colors.black)
            self.canvas.setFont("Helvetica-Bold", 12)
            self.canvas.drawString(50, y - 18, self.rng.choice(self.words["captions"]))
        self.canvas.showPage()

    def _small_print(self) -> None:
        width, height = self.size
        count = self.rng.randint(*NOTES)
        for column in range(2):
            own = [f"{self.rng.choice(self.words['legal'])}." for _ in range(count // 2)]
            story = [self._para(" ".join(own[start : start + 6]), 6.5) for start in range(0, len(own), 6)]
            x = 36 + column * (width - 72) / 2
            Frame(x, 40, (width - 72) / 2 - 10, height - 90, 0, 0, 0, 0).addFromList(story, self.canvas)
        self.canvas.showPage()

    def _addresses(self) -> None:
        self._ornaments()
        self.canvas.setFillColor(colors.black)
        self.canvas.setFont("Helvetica", 9)
        self.canvas.drawString(48, 90, self.draft.title)
        self.canvas.drawString(48, 76, self.rng.choice(self.words["headings"]))
        self.canvas.showPage()

    # -- parts ------------------------------------------------------------------------------------------------------

    def _sentence(self) -> str:
        rng, words = self.rng, self.words
        opens, things, does, ends = (rng.choice(words[part]) for part in ("opens", "things", "does", "ends"))
        return f"{opens} {things} {does}, {ends}."

    def _para(self, text: str, size: float, *, bold: bool = False) -> Paragraph:
        font = "Helvetica-Bold" if bold else "Helvetica"
        return Paragraph(
            text, ParagraphStyle("x", fontName=font, fontSize=size, leading=size * 1.3, spaceAfter=size / 2)
        )

    def _photo(self, x: float, y: float, width: float, height: float) -> None:
        coarse = self.chance.integers(0, 256, (9, 13, 3), np.uint8)
        picture = Image.fromarray(coarse).resize(PHOTO, Image.Resampling.BICUBIC)
        grain = self.chance.normal(0, GRAIN, (PHOTO[1], PHOTO[0], 3))
        picture = Image.fromarray(np.clip(np.asarray(picture) + grain, 0, 255).astype(np.uint8))
        packed = io.BytesIO()
        picture.save(packed, "JPEG", quality=75)
        packed.seek(0)
        self.canvas.drawImage(ImageReader(packed), x, y, width, height)

    def _ornaments(self) -> None:
        """Draw waves, stars and the outline of a hill, as the edges of pages and logos have them."""
        width, height = self.size
        canvas, count = self.canvas, self.rng.randint(*ORNAMENT)
        canvas.setFillColor(colors.HexColor(self.draft.look.accent))
        canvas.setStrokeColor(colors.HexColor(self.draft.look.accent))
        canvas.setLineWidth(0.4)
        steps = self.chance.normal(0, 6, (count, 6))
        x, y = float(self.chance.uniform(0, width)), float(self.chance.uniform(0, height))
        for place, step in enumerate(steps.tolist()):
            if place % 30 == 0:
                x, y = float(self.chance.uniform(0, width)), float(self.chance.uniform(0, height))
            path = canvas.beginPath()
            path.moveTo(x, y)
            path.curveTo(x + step[0], y + step[1], x + step[2], y + step[3], x + step[4], y + step[5])
            path.lineTo(x + step[4] + 3, y + step[5])
            canvas.drawPath(path, stroke=1, fill=place % 3 == 0)
            x, y = x + step[4], y + step[5]

    def _plan(self, x: float, y: float, width: float, height: float, strokes: int) -> None:
        """Draw a floorplan: outer walls, furniture as boxes and curves, hatching, labels, a few of them in a corner."""
        canvas, chance = self.canvas, self.chance
        canvas.setStrokeColor(colors.black)
        canvas.setLineWidth(1.2)
        canvas.roundRect(x, y, width, height, 12)
        canvas.setLineWidth(0.3)
        shapes = chance.uniform(0, 1, (strokes, 4)).tolist()
        for place, (a, b, c, d) in enumerate(shapes):
            left, low = x + a * width * 0.9, y + b * height * 0.9
            kind = place % 20
            if kind < 12:  # hatching, seams of cushions, grain of the floor
                canvas.line(left, low, left + (c - 0.5) * 14, low + (d - 0.5) * 14)
            elif kind < 15:
                canvas.line(left, low, left + c * 12, low)
            elif kind < 18:
                canvas.bezier(left, low, left + c * 5, low + 6, left + 8, low + d * 5, left + 9, low)
            else:
                canvas.rect(left, low, 3 + c * 18, 3 + d * 12, fill=0)
        canvas.setFillColor(colors.black)
        canvas.setFont("Helvetica", 6.5)
        for label in self.rng.sample(self.words["labels"], 6):
            canvas.drawString(x + self.rng.random() * width * 0.8, y + self.rng.random() * height * 0.9, label)


def what_it_holds(files: Sequence[Path]) -> dict[str, Any]:
    """Count what a set of brochures holds: documents, pages, characters and drawn objects a page, megabytes."""
    import pypdfium2 as pdfium

    pages = characters = drawn = 0
    for file in files:
        document = pdfium.PdfDocument(file)
        for page in document:
            pages += 1
            characters += page.get_textpage().count_chars()
            drawn += sum(1 for _ in page.get_objects(max_depth=3))
        document.close()
    size = sum(file.stat().st_size for file in files) / 1e6
    return {
        "documents": len(files), "pages": pages, "characters a page": characters // pages,
        "drawn objects a page": drawn // pages, "megabytes": round(size),
    }  # fmt: skip
