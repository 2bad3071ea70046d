"""Makes scans: pages of a PDF as pictures, spoiled as a scanner and a fax-weary original spoil them."""

from dataclasses import dataclass
from io import BytesIO

import numpy as np
import pypdfium2 as pdfium
from PIL import Image, ImageFilter
from reportlab.lib.utils import ImageReader
from reportlab.pdfgen import canvas


@dataclass(frozen=True)
class Spoil:
    """What goes wrong between the printed page and the file.

    ``skew`` in degrees clockwise; ``noise`` the standard deviation in levels of gray; ``paper`` and ``ink`` the levels
    to which white and black move; ``shade`` how much darker one edge is than the other; ``blur`` a radius in
    pixels at 150 dpi; ``specks`` spots of dust for each million pixels; ``jpeg`` the quality; ``fold`` how much darker
    the shadow of a fold across the page is.
    """

    dpi: int = 150
    skew: float = 0.0
    noise: float = 0.0
    paper: int = 255
    ink: int = 0
    shade: int = 0
    blur: float = 0.0
    specks: int = 0
    jpeg: int = 90
    fold: int = 0


def render(document, number, dpi):
    """Draw a page (1-based) in shades of gray."""
    picture = document[number - 1].render(scale=dpi / 72, grayscale=True).to_numpy()
    return picture.reshape(picture.shape[:2])


def spoil(picture, how, seed=1):
    """Give the picture as a bad scan shows it; the same seed gives the same spots."""
    chance = np.random.default_rng(seed)
    image = Image.fromarray(picture)
    if how.skew:
        image = image.rotate(-how.skew, resample=Image.Resampling.BICUBIC, fillcolor=255)
    if how.blur:
        image = image.filter(ImageFilter.GaussianBlur(how.blur * how.dpi / 150))
    levels = np.asarray(image, dtype=np.float32)
    levels = how.ink + levels * (how.paper - how.ink) / 255
    if how.shade:
        levels -= np.linspace(0, how.shade, levels.shape[1], dtype=np.float32)[None, :]
    if how.fold:
        away = np.abs(np.arange(levels.shape[0]) - chance.uniform(0.3, 0.7) * levels.shape[0]) / how.dpi
        levels -= how.fold * np.exp(-((away / 0.15) ** 2)).astype(np.float32)[:, None]
    if how.noise:
        levels += chance.normal(0, how.noise, levels.shape).astype(np.float32)
    height, width = levels.shape
    for _ in range(how.specks * height * width // 1_000_000):
        y, x, size = chance.integers(height), chance.integers(width), chance.integers(1, 1 + how.dpi // 60)
        levels[y : y + size, x : x + size] = chance.integers(0, 120)
    return np.clip(levels, 0, 255).astype(np.uint8)


def as_pdf(pictures, dpi, jpeg=90):
    """Give a PDF that holds nothing but pictures, one a page."""
    images = [Image.fromarray(picture) for picture in pictures]
    buffer = BytesIO()
    images[0].save(buffer, "PDF", save_all=True, append_images=images[1:], resolution=dpi, quality=jpeg)
    return buffer.getvalue()


def scanned(data, how=None, pages=None, seed=1):
    """Give a PDF (bytes) as a scan of itself: the pages of ``pages``, 1-based, or all."""
    how = how or Spoil()
    document = pdfium.PdfDocument(data)
    numbers = pages or range(1, len(document) + 1)
    pictures = [spoil(render(document, number, how.dpi), how, seed + number) for number in numbers]
    document.close()
    return as_pdf(pictures, how.dpi, how.jpeg)


def with_garbage(scan, original):
    """Give a PDF of pictures with an invisible text layer of other letters than are drawn, as a broken export has."""
    pictured, printed = pdfium.PdfDocument(scan), pdfium.PdfDocument(original)
    buffer = BytesIO()
    page = canvas.Canvas(buffer)
    for number in range(1, len(pictured) + 1):
        width, height = pictured[number - 1].get_size()
        page.setPageSize((width, height))
        page.drawImage(ImageReader(Image.fromarray(render(pictured, number, 150))), 0, 0, width, height)
        text = page.beginText(40, height - 40)
        text.setTextRenderMode(3)
        text.setFont("Helvetica", 8)
        for line in printed[number - 1].get_textpage().get_text_range().splitlines():
            text.textLine("".join(chr(ord(c) + 1) if c.isascii() and c.isalpha() else c for c in line))
        page.drawText(text)
        page.showPage()
    page.save()
    return buffer.getvalue()
