"""Labels that name the vans of their values: "Chassis, DX4", "Length, DX4 / DX6: 5.41 m / 5.99 m"."""

from __future__ import annotations

import itertools
import re
from dataclasses import dataclass

from specscan.finding.kit import Kit
from specscan.finding.label_parts import LabelParts, starts_of
from specscan.finding.naming.van_mentions import VanMentions

APART = re.compile(r"[,;:([–—/]\s*$|\s-\s*$")  # before the names that end a label
ENDING = re.compile(r"[,;:(]\s*([^,;:()]+?)\s*\)?\s*$")  # what ends a label, which bare numbers may name
SLASH = re.compile(r"\s*[/|]\s*")
JOINT = re.compile(r"\s*(?:[/|,&+]|\band\b|\bet\b|\bund\b|,\s*and\b)\s*", re.IGNORECASE)
EDGES = " ,;:–—-"
Vans = frozenset[str]


@dataclass(frozen=True, slots=True)
class VanPart:
    """A value of a label that names vans: whose it is, and where it begins in the body."""

    label: str
    body: str
    start: int
    vans: Vans


@dataclass(frozen=True, slots=True)
class VanLabel:
    """A label in two: what it asks for, and the names of vans that stand together in it."""

    rest: str
    names: str
    ends: bool  # the names end it, behind a comma, a dash, a colon or in brackets


def van_label(label: str, vans: VanMentions) -> VanLabel | None:
    """Take the names of vans out of a label, where they stand together and something else is left."""
    if vans.single:
        return None
    found = vans.find(label)
    if found:
        between = (label[a[1] : b[0]] for a, b in itertools.pairwise(found))
        if not all(JOINT.fullmatch(gap) for gap in between):
            return None
        start, end = found[0][0], found[-1][1]
    else:
        ending = ENDING.search(label)
        if ending is None or vans.whole(ending.group(1)) is None:
            return None
        start, end = ending.span(1)
    before, behind = label[:start], label[end:]
    rest = f"{before.rstrip(EDGES + '([')} {behind.lstrip(EDGES + ')]')}".strip()
    ends = APART.search(before) is not None and not behind.strip(")] ")
    return VanLabel(rest, label[start:end], ends) if any(map(str.isalpha, rest)) else None


class LabelsByVan:
    """Parts labels of one document by the vans that they name."""

    def __init__(self, kit: Kit, vans: VanMentions, label_parts: LabelParts):
        self.kit, self.vans, self.label_parts = kit, vans, label_parts

    def parts(self, label: str, body: str) -> list[VanPart]:
        """Give the values of a body, each with the label without the vans that it names, and with these vans.

        Several vans between slashes have as many values between slashes. Nothing is given where the label names no van
        apart from the rest of it, or where vans and values are not as many.
        """
        told = van_label(label, self.vans)
        if told is None:
            return []
        owners = [self.vans.whole(part) for part in SLASH.split(told.names)]
        named = [vans for vans in owners if vans]
        if len(named) != len(owners) or any(a & b for a, b in itertools.combinations(named, 2)):
            return []
        if len(named) == 1:
            return [VanPart(told.rest, body, 0, named[0])] if told.ends else []
        amounts = self.kit.quantities.find(body)
        if len(amounts) == 1 and amounts[0].joined:
            return [VanPart(told.rest, body, 0, frozenset().union(*named))]  # "20 gal / 76 L" of both
        values = self.label_parts.amounts(body)
        if len(values) != len(named):
            return [] if len(values) > 1 else [VanPart(told.rest, body, 0, frozenset().union(*named))]
        owned = zip(values, starts_of(body, values), named, strict=True)
        return [VanPart(told.rest, *own) for own in owned]
