"""The company in the title of a saved page, "Drift 21 - Specifications - Marrowfen"."""

from __future__ import annotations

import re
from collections.abc import Callable

LAST_PART = re.compile(r"\s[|–—-]\s*([^|–—]+)$")
DASH = re.compile(r"\s-\s")


def company_of(title: str, is_seller: Callable[[str], object], is_trade: Callable[[str], bool]) -> str:
    """Give the last part of a page's title, where sites put their company; nothing where that is who sells the vans.

    Of "Compare Drift S and Drift L - 2026 - Marrowfen" the year is no part of it; a description is left out, as in
    "Marrowfen, campers for winter".
    """
    match = LAST_PART.search(title)
    if match is None:
        return ""
    whole = match.group(1).strip()
    *before, last = DASH.split(whole)
    whole = last if before and not any(re.search(r"[^\W\d_]", part) for part in before) else whole
    name, _, behind = whole.partition(",")
    if is_seller(name):
        return ""
    return name if any(map(is_trade, behind.split())) else whole
