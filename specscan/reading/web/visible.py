"""Which elements of a saved web page a reader sees: no scripts, navigation, banners, hidden parts."""

from __future__ import annotations

import re

from lxml import html

from specscan.reading.web.openers import Openers

UNSEEN_TAGS = {
    "script", "style", "template", "noscript", "nav", "form", "button", "select", "option", "svg",
    "iframe", "object", "embed", "canvas", "video", "audio", "head", "input", "textarea", "dialog",
}  # fmt: skip
UNSEEN_ROLES = {"navigation", "search", "menu", "menubar", "dialog", "alertdialog"}
# Names that page authors give to parts which are no content; common practice, no source.
UNSEEN_NAMES = re.compile(
    r"(?:^|[-_\s])(?:cookie\w*|consent|gdpr|newsletter|breadcrumbs?|crumbs?|navbar|nav|menu|skip-link|"
    r"sr-only|visually-hidden|social|share|comments?|comment-list|reviews?)(?:$|[-_\s])",
    re.IGNORECASE,
)
HIDING = re.compile(r"display\s*:\s*none|visibility\s*:\s*hidden|opacity\s*:\s*0(?:\.0+)?\s*(?:;|$|!)", re.IGNORECASE)
CSS_RULE = re.compile(r"([^{}]{1,500})\{([^{}]{0,2000})\}")
HEAVY = re.compile(
    r"font-weight\s*:\s*(?:bold|bolder|[6-9]00)\b|(?<![\w-])font\s*:[^;{}]{0,40}?(?<![\w-])(?:bold|bolder|[6-9]00)\s",
    re.IGNORECASE,
)
COLUMNS = re.compile(r"grid-template-columns\s*:\s*([^;{}]{1,200})", re.IGNORECASE)
REPEAT = re.compile(r"repeat\(\s*(\d{1,2})\s*,\s*(?:[^()]|\([^()]*\)){1,80}\)")
FUNCTION = re.compile(r"[a-z-]{1,20}\([^()]{0,80}\)")  # "minmax(0, 1fr)" is one column
SIMPLE = re.compile(r"^(?:\w+)?(?:[.#][\w-]+)(?:\[[\w-]+\])?$")
# Every repetition is bounded, or a style sheet made for it would keep the pattern busy for hours.
MEDIA = re.compile(
    r"@media[^{]{0,80}?(?:print|max-width|min-width|prefers)[^{]{0,80}\{"
    r"(?:[^{}]{0,500}\{[^{}]{0,2000}\}){0,200}[^{}]{0,500}\}"
)
MENU_LINKS = 3  # links of a site's header that are a menu, common practice, no source
LIMIT_CSS = 300_000  # characters of one style sheet


class Visibility:
    """Answers whether an element of one page is seen, from its tag, attributes and the page's style."""

    def __init__(self, root: html.HtmlElement):
        self.hidden_names, self.heavy_names, self.tracks = _own_style(root)
        self.openers = Openers(root, is_furniture)
        self.menus = {link for header in root.iter("header") for link in _menu_of(header)}

    def sees(self, element: html.HtmlElement) -> bool:
        """Tell whether a reader can see the element, if need be by opening an accordion."""
        if not isinstance(element.tag, str):
            return False
        if is_furniture(element) and not (element.tag == "button" and element in self.openers.heads):
            return False
        if element in self.menus:
            return False
        if element.get("role") == "tabpanel" or element in self.openers.opened:
            return True
        if element.get("hidden") is not None or element.get("aria-hidden") == "true":
            return False
        if HIDING.search(element.get("style") or ""):
            return False
        return self.hidden_names.isdisjoint(_keys(element))

    def is_heavy(self, element: html.HtmlElement) -> bool:
        """Tell whether an element is set in heavy type by its own style, as in the heads of a saved spreadsheet."""
        own = HEAVY.search(element.get("style") or "") is not None
        return own or not self.heavy_names.isdisjoint(_keys(element))

    def columns_of(self, element: html.HtmlElement) -> int:
        """Give the number of columns in which the page's style lays out the children of an element, 0 for none."""
        own = COLUMNS.search(element.get("style") or "")
        if own is not None:
            return _count_tracks(own.group(1))
        names = (f".{name}" for name in (element.get("class") or "").split())
        return next((self.tracks[name] for name in names if name in self.tracks), 0)


def is_furniture(element: html.HtmlElement) -> bool:
    """Tell whether an element is no content by its tag, role or name: a script, a menu, a form, a share bar."""
    if element.tag in UNSEEN_TAGS or element.get("role") in UNSEEN_ROLES:
        return True
    return UNSEEN_NAMES.search(f"{element.get('class') or ''} {element.get('id') or ''}") is not None


def _keys(element: html.HtmlElement) -> set[str]:
    """Give the classes and the id of an element as style sheets call them."""
    keys = {f".{name}" for name in (element.get("class") or "").split()}
    return keys | {f"#{element.get('id')}"} if element.get("id") else keys


def _own_style(root: html.HtmlElement) -> tuple[set[str], set[str], dict[str, int]]:
    """Give the classes and ids that the page's own style sheets hide outright, those that they set in heavy type, and
    those whose children they set in a grid, each with its number of columns."""
    hidden: set[str] = set()
    heavy: set[str] = set()
    tracks: dict[str, int] = {}
    for style in root.iter("style"):
        css = MEDIA.sub("", _without_comments((style.text or "")[:LIMIT_CSS]))
        for selectors, body in CSS_RULE.findall(css):
            hides, columns = HIDING.search(body), COLUMNS.search(body)
            if hides:
                hidden |= _names(selectors)
            if HEAVY.search(body):
                heavy |= _names(selectors)
            if columns:
                tracks |= dict.fromkeys(_names(selectors), _count_tracks(columns.group(1)))
    return hidden, heavy, tracks


def _names(selectors: str) -> set[str]:
    """Give the classes and ids that a rule of a style sheet is for, where it asks for nothing else."""
    simple = (selector.strip() for selector in selectors.split(","))
    return {re.sub(r"^\w+", "", selector).split("[")[0] for selector in simple if SIMPLE.match(selector)}


def _count_tracks(text: str) -> int:
    """Give how many columns "2fr repeat(3, 1fr)" names (CSS Grid Layout 1, 7.2)."""
    repeated = REPEAT.findall(text)
    return len(FUNCTION.sub("x", REPEAT.sub("", text)).split()) + sum(map(int, repeated))


def _without_comments(css: str) -> str:
    parts, place = [], 0
    while (start := css.find("/*", place)) >= 0:
        parts.append(css[place:start])
        end = css.find("*/", start + 2)
        if end < 0:
            return "".join(parts)
        place = end + 2
    return "".join([*parts, css[place:]])


def _menu_of(header: html.HtmlElement) -> list[html.HtmlElement]:
    """Give the links that make the menu of a site's header; the first stays where it is the name of the site."""
    if any(parent.tag in ("article", "main", "section") for parent in header.iterancestors()):
        return []
    links = list(header.iter("a"))
    if len(links) < MENU_LINKS:
        return []
    opens = next((child for child in header.iter() if isinstance(child.tag, str) and child is not header), None)
    named = opens is not None and links[0] is opens and not any(map(str.isdigit, opens.text_content()))
    return links[1:] if named else links
