"""Text from strangers as it may be shown on a terminal: one line, without control characters; and where it stands.

Source of the danger: ECMA-48 (escape sequences move the cursor, rename the window, paste); Unicode UAX #9 and Technical
Report 36, 2.5 (characters that turn the direction of writing make text look like another).
"""

from __future__ import annotations

import re

NOT_SHOWN = re.compile("[\x00-\x1f\x7f-\x9f\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069\ud800-\udfff]")
PICTURES = 0x2400  # the block of signs that show control characters (Unicode, Control Pictures)
KEPT = frozenset("\n\t")


def visible(text: str) -> str:
    """Give a text on one line, each control character in it as a sign that shows it."""
    return NOT_SHOWN.sub(lambda match: _sign(match.group()), text)


def visible_lines(text: str) -> str:
    """Give a text of several lines; line breaks and tabs stay, other control characters are shown by a sign."""
    return NOT_SHOWN.sub(lambda match: match.group() if match.group() in KEPT else _sign(match.group()), text)


def on_page(document: str, page: int | None) -> str:
    """Give where a statement stands, in words: the document, and the page where it has pages."""
    return f"{document}, page {page}" if page else document


def _sign(character: str) -> str:
    code = ord(character)
    if code < 0x20:
        return chr(PICTURES + code)
    return "\u2421" if code == 0x7F else "\ufffd"


def escaped(json_text: str) -> str:
    """Give JSON text with every such character in its strings as ``\\uXXXX``: the same data, nothing that acts."""
    return NOT_SHOWN.sub(
        lambda match: match.group() if match.group() in KEPT else f"\\u{ord(match.group()):04x}", json_text
    )
