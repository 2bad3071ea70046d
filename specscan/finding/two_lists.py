"""Several figures printed twice, in two units: "30 / 24 / 12 gal (114 / 91 / 45 L)"."""

from __future__ import annotations

import re

from specscan.finding.language.quantities import QuantityReader
from specscan.finding.language.quantity import Quantity

LISTS = (
    re.compile(r"(?P<one>[^()\[\]]*\d[^()\[\]]*?)\s*[(\[](?P<two>[^()\[\]]*\d[^()\[\]]*)[)\]]\s*\.?"),
    re.compile(r"(?P<one>.*?\d.*?)\s*[,;|·=–—]\s+(?P<two>.*\d.*?)\.?"),
    re.compile(r"(?P<one>.*?\d.*?)\s+/\s+(?P<two>.*\d.*?)\.?"),  # "5.95 x 2.05 m / 19'6\" x 6'9\""
)
JOINTS = (re.compile(r"\s*/\s*"), re.compile(r"\s*[x×]\s*"))
ROUNDED = 0.03  # by which two figures for one amount may differ, rounded as they are; common practice, no source


def without_second(body: str, quantities: QuantityReader) -> str:
    """Give a body of several figures without those that repeat them in another unit; any other body as it is."""
    for joint in JOINTS:
        if len(joint.findall(body)) < 2:
            continue
        for lists in LISTS:
            match = lists.fullmatch(body)
            if match is not None and _are_same(joint.split(match["one"]), joint.split(match["two"]), quantities):
                return match["one"].rstrip()
    return body


def _are_same(ones: list[str], twos: list[str], quantities: QuantityReader) -> bool:
    """Tell whether two lists have as many figures, and the last of both, which has the unit, is one amount."""
    if len(ones) < 2 or len(ones) != len(twos) or not all(any(c.isdigit() for c in part) for part in [*ones, *twos]):
        return False
    one, two = _amount(ones[-1], quantities), _amount(twos[-1], quantities)
    if one is None or two is None or one.dimension != two.dimension or one.printed_unit == two.printed_unit:
        return False
    return abs(one.low - two.low) <= ROUNDED * abs(one.low)


def _amount(part: str, quantities: QuantityReader) -> Quantity | None:
    """Give the only amount with a unit in a part, else ``None``."""
    found = quantities.find(part)
    return found[0] if len(found) == 1 and not found[0].bare else None
