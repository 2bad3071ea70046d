"""Draws small pages for tests: texts, shaded boxes and rules at given places, origin top left."""

from io import BytesIO

from reportlab.pdfgen.canvas import Canvas

WIDTH, HEIGHT = 595, 842


class Page:
    """One page under construction."""

    def __init__(self):
        self.buffer = BytesIO()
        self.canvas = Canvas(self.buffer, pagesize=(WIDTH, HEIGHT))

    def text(self, x, top, text, *, size=9, bold=False, color=(0, 0, 0), reach=0):
        """Set a line whose baseline lies ``top`` + ``size`` points below the upper edge, justified up to ``reach``."""
        self.canvas.setFillColorRGB(*color)
        font = "Helvetica-Bold" if bold else "Helvetica"
        self.canvas.setFont(font, size)
        room = (reach - x - self.canvas.stringWidth(text, font, size)) / text.count(" ") if reach else 0
        self.canvas.drawString(x, HEIGHT - top - size, text, wordSpace=room)

    def row(self, top, *columns, **style):
        """Set texts at one height: pairs of x and text."""
        for x, text in columns:
            self.text(x, top, text, **style)

    def box(self, x0, top, x1, bottom, color):
        """Fill a box."""
        self.canvas.setFillColorRGB(*color)
        self.canvas.rect(x0, HEIGHT - bottom, x1 - x0, bottom - top, stroke=0, fill=1)

    def rule(self, x0, top, x1):
        """Draw a horizontal rule."""
        self.canvas.setStrokeColorRGB(0.5, 0.5, 0.5)
        self.canvas.line(x0, HEIGHT - top, x1, HEIGHT - top)

    def frame(self, x0, top, x1, bottom):
        """Draw the outline of a box."""
        self.canvas.setStrokeColorRGB(0, 0, 0)
        self.canvas.rect(x0, HEIGHT - bottom, x1 - x0, bottom - top, stroke=1, fill=0)

    def data(self):
        """Give the PDF as bytes."""
        self.canvas.save()
        return self.buffer.getvalue()


def titled():
    """Give a page with the title of a range, below which tests set the tables that they are about."""
    page = Page()
    page.text(40, 40, "Pellmarsh Curlew 2026", size=20, bold=True)
    return page
