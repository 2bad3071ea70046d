"""The parsed tree of a saved web page, never deeper than a page can be; the parser fetches nothing."""

from __future__ import annotations

import codecs
import contextlib
import re

from lxml import etree, html

from specscan.reading.web.visible import UNSEEN_TAGS
from specscan.records.errors import DocumentError

LIMIT_DEPTH = 120  # elements; what is nested deeper is taken as plain text of the element at this depth


def parse(data: bytes) -> tuple[html.HtmlElement, list[str]]:
    """Give the root of a page, and what had to be left out of it.

    Raises:
        DocumentError: no HTML can be parsed out of it.
    """
    parser = html.HTMLParser(encoding=_encoding(data), no_network=True, remove_comments=True, huge_tree=True)
    try:
        root = html.document_fromstring(data, parser=parser)
    except (etree.ParserError, etree.XMLSyntaxError, ValueError, LookupError) as error:
        raise DocumentError(f"the HTML cannot be parsed ({error})") from error
    said = []
    if any("RESOURCE_LIMIT" in entry.type_name for entry in parser.error_log):
        said.append("the page is nested too deeply: nothing behind that place was read")
    if _flatten(root):
        said.append(f"what is nested more than {LIMIT_DEPTH} deep was read as plain text")
    return root, said


def _encoding(data: bytes) -> str | None:
    if data.startswith((b"\xff\xfe", b"\xfe\xff")):
        return "utf-16"
    declared = re.search(rb"charset=[\"']?([\w-]+)", data[:4000], re.IGNORECASE)
    with contextlib.suppress(LookupError):  # what no one knows counts as not declared
        if declared:
            return codecs.lookup(declared.group(1).decode("ascii", "replace")).name
    try:
        data.decode("utf-8")
    except UnicodeDecodeError:
        return "cp1252"
    return "utf-8"


def _flatten(root: html.HtmlElement) -> bool:
    """Turn what lies deeper than the limit into text of the element at the limit; tell whether there was any."""
    level, deep = [root], []
    for _ in range(LIMIT_DEPTH):
        level = [child for element in level for child in element]
        if not level:
            return False
    deep = [element for element in level if len(element)]
    for element in deep:
        text = " ".join(_texts(element))
        for child in list(element):
            element.remove(child)
        element.text = text
    return bool(deep)


def _texts(top: html.HtmlElement) -> list[str]:
    parts, waiting = [], [(top, "")]
    while waiting:
        element, tail = waiting.pop()
        if isinstance(element.tag, str) and element.tag not in UNSEEN_TAGS:
            parts.append(element.text or "")
            waiting.extend((child, child.tail or "") for child in reversed(element))
        parts.append(tail)
    return [part for part in parts if part.strip()]
