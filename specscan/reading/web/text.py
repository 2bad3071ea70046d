"""The text of elements of a web page, as it is shown."""

from __future__ import annotations

import re

from lxml import html

from specscan.reading.letters.words import Line, Word
from specscan.reading.text.plain import CHAR, EM, PITCH
from specscan.reading.web.visible import Visibility
from specscan.records.text import Box

INLINE = {
    "a", "abbr", "b", "bdi", "bdo", "cite", "code", "data", "del", "dfn", "em", "font", "i", "ins", "kbd",
    "label", "mark", "q", "s", "samp", "small", "span", "strong", "sub", "sup", "time", "tt", "u", "var", "wbr", "img",
}  # fmt: skip
HEADINGS = {"h1": 1, "h2": 2, "h3": 3, "h4": 4, "h5": 5, "h6": 6, "summary": 4, "caption": 5, "legend": 4}
NO_ROWS = {"li", "p", "table", "dl", "ul", "details", *HEADINGS}
JOINED = ("sup", "sub", "wbr", "img")  # what stands in these belongs to the word beside it
STRONG = {"b", "strong", "th", "dt"}
SUPERSCRIPTS = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")


def squash(text: str) -> str:
    """Give a text with single spaces."""
    return re.sub(r"\s+", " ", text).strip()


def is_block(seen: Visibility, element: html.HtmlElement) -> bool:
    """Tell whether an element stands on lines of its own, or holds one that does."""
    if not isinstance(element.tag, str):
        return False
    if element.tag not in INLINE and element.tag != "br":
        return True
    return any(is_block(seen, child) for child in element)


def inline_text(seen: Visibility, element: html.HtmlElement) -> str:
    """Give the text of an inline element; note signs in ``sup`` keep their form, ``sub`` joins."""
    if not isinstance(element.tag, str) or not seen.sees(element):
        return ""
    if element.tag == "br":
        return " "
    if element.tag == "img":
        return ""
    inner = _joined(seen, element)
    if element.tag == "sup" and re.fullmatch(r"\s*\(?\d\)?\s*", inner):
        return inner.strip(" ()").translate(SUPERSCRIPTS)
    return inner


def full_text(seen: Visibility, element: html.HtmlElement) -> str:
    """Give all text of an element, its blocks parted by spaces."""
    return _joined(seen, element)


def _joined(seen: Visibility, element: html.HtmlElement) -> str:
    """Give the text of an element with a space wherever style sets its parts apart, though nothing is between them.

    Blocks stand on lines of their own, and so do small print and inline elements side by side: labels and values.
    """
    text = element.text or ""
    last = ""  # the element right before, if no text is between
    for child in element:
        if not isinstance(child.tag, str):
            text += child.tail or ""
            continue
        if child.tag == "br":
            text, last = f"{text} {child.tail or ''}", ""
            continue
        if not seen.sees(child):
            text += child.tail or ""
            continue
        inline = child.tag in INLINE
        inner = inline_text(seen, child) if inline else full_text(seen, child)
        apart = child.tag == "small" or last not in ("", *JOINED) and child.tag not in JOINED
        if not inline:
            text += f" {inner} "
        elif apart and set_apart(text, inner):
            text += f" {inner}"
        else:
            text += inner
        tail = child.tail or ""
        text += f" {tail}" if child.tag == "small" and inner[-1:].isalnum() and tail[:1].isalnum() else tail
        last = "" if tail or not inner.strip() else child.tag
    return text


def all_strong(seen: Visibility, element: html.HtmlElement) -> bool:
    """Tell whether all text of an element is in heavy type by its tags or style, as in heads of a saved spreadsheet."""
    if seen.is_heavy(element):
        return True
    if squash(element.text or ""):
        return False
    children = [child for child in element if isinstance(child.tag, str)]
    if any(squash(child.tail or "") for child in element):
        return False
    shown = [child for child in children if squash(full_text(seen, child))]
    return bool(shown) and all(child.tag in STRONG or all_strong(seen, child) for child in shown)


def set_apart(before: str, text: str) -> bool:
    """Tell whether a text begins a word, or with a sign of a legend, right behind one that ends a word."""
    return before[-1:].isalnum() and (text[:1].isalnum() or text[1:2].isspace())


def html_line(text: str, *, size: float = EM, bold: bool = False, row: int = 0, offset: float = 0.0) -> Line:
    """Give a text as the words of a line, each with the box that it would have in type of fixed width."""
    words = []
    at = 0
    for part in squash(text).split(" "):
        if not part:
            continue
        box = Box(offset + at * CHAR, row * PITCH, offset + (at + len(part)) * CHAR, row * PITCH + EM)
        words.append(Word(part, box, size, bold, (0, 0, 0), base=row * PITCH + 8))
        at += len(part) + 1
    return Line(words)
