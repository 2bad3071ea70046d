"""Small brochures for the tests of scanning."""

import io

from reportlab.lib.pdfencrypt import StandardEncryption
from reportlab.pdfgen.canvas import Canvas

LINES = """Marrowfen {model}
Model year {year}

Overall length: 6.40 m
Wheelbase: 4.04 m
Sleeps: 2
Fresh water tank: {fresh} L
Gray water tank: 70 L
Furnace: 16,000 BTU/h propane
"""


def text(model="Drift 21", year=2026, fresh=100):
    """Give a brochure as plain text."""
    return LINES.format(model=model, year=year, fresh=fresh)


def pdf(password=None, **told):
    """Give a brochure as a PDF, encrypted where a password (or reportlab's encryption) is given."""
    buffer = io.BytesIO()
    canvas = Canvas(
        buffer, invariant=1, encrypt=StandardEncryption(password) if isinstance(password, str) else password
    )
    for number, line in enumerate(text(**told).splitlines()):
        canvas.setFont("Helvetica", 18 if number == 0 else 10)
        canvas.drawString(72, 760 - 16 * number, line)
    canvas.showPage()
    canvas.save()
    return buffer.getvalue()
