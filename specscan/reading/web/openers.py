"""What opens the parts of a saved web page: the heads of accordions, and tabs above the panels that they show."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator

from lxml import html

HEADING_TAGS = ("h1", "h2", "h3", "h4", "h5", "h6", "th", "dt")
WRAPPERS = 3  # elements around a head that hold nothing else, at most
LONGEST_TITLE = 60


class Openers:
    """The elements of one page that open others.

    ``heads`` stand right above what they open, and are its headings; ``opened`` is what they open, ``boxes`` what holds
    both; ``titles`` gives the words of the tab that shows a panel, which stands elsewhere.
    """

    def __init__(self, root: html.HtmlElement, is_furniture: Callable[[html.HtmlElement], bool]):
        """Look through a page; what ``is_furniture`` is no content, and neither is what opens it."""
        named = {element.get("id"): element for element in root.iter() if element.get("id")}
        self.heads: set[html.HtmlElement] = set()
        self.opened: set[html.HtmlElement] = set()
        self.boxes: set[html.HtmlElement] = set()
        self.titles: dict[html.HtmlElement, str] = {}
        self.is_furniture = is_furniture
        for element in root.iter():
            if not isinstance(element.tag, str):
                continue
            labelling = named.get(element.get("aria-labelledby") or "")
            if element.get("role") == "tabpanel" and labelling is not None:
                self._show(element, labelling)
            ids = [name for name in (element.get("aria-controls") or "").split() if name in named]
            controlled = [named[name] for name in ids]
            self.opened.update(controlled)
            if element.get("role") == "tab":
                for panel in controlled:
                    self._show(panel, element)
            elif element.get("aria-expanded") is not None and _title(element):
                self._open(element, ids)

    def _show(self, panel: html.HtmlElement, tab: html.HtmlElement) -> None:
        title = _title(tab)
        if title and tab.get("role") == "tab":
            self.titles.setdefault(panel, title)

    def _open(self, head: html.HtmlElement, ids: list[str]) -> None:
        if any(around.tag in HEADING_TAGS for around in _around(head)):
            if head.tag == "button":
                self.heads.add(head)  # its words are those of the heading
            return
        below = next((one for one in map(_next, _around(head)) if one is not None), None)
        if below is None or self.is_furniture(below) or ids and below.get("id") not in ids:
            return
        self.heads.add(head)
        self.opened.add(below)
        self.boxes.add(below.getparent())


def _title(element: html.HtmlElement) -> str:
    """Give the words of an element, if they are few and can be a title."""
    text = re.sub(r"\s+", " ", element.text_content()).strip()
    return text if len(text) <= LONGEST_TITLE and any(c.isalpha() for c in text) else ""


def _around(head: html.HtmlElement) -> Iterator[html.HtmlElement]:
    """Give an element and the ones around it that hold nothing else."""
    yield head
    for _ in range(WRAPPERS):
        around = head.getparent()
        if around is None or around.tag not in (*HEADING_TAGS, "div", "header"):
            return
        if around.tag == "div" and len([child for child in around if isinstance(child.tag, str)]) > 1:
            return
        yield around
        head = around


def _next(element: html.HtmlElement) -> html.HtmlElement | None:
    """Give the element right behind one, with no text between."""
    if (element.tail or "").strip():
        return None
    return next((one for one in element.itersiblings() if isinstance(one.tag, str)), None)
