"""Values of one label that semicolons part, each with its van: "diesel (Drift 21); not available on Drift 19", or
behind it: "Drift 21: diesel; Drift 19: none"."""

from __future__ import annotations

import itertools
import re

from specscan.finding.labels_by_van import VanPart
from specscan.finding.language.lexicon import Lexicon
from specscan.finding.marks.legend import AVAILABILITIES
from specscan.finding.naming.van_mentions import VanMentions

CLAUSE = re.compile(r"[^;]+")
BRACKET = re.compile(r"(.*\S)\s*\(([^()]+)\)")  # "25 mm foam (Drift 21)"
BETWEEN = 2  # words at most from "not available" to the van


def clauses_by_van(label: str, body: str, vans: VanMentions, lexicon: Lexicon) -> list[VanPart]:
    """Give the values of a body, each of the vans before its colon, in the bracket behind it, or to which it is said to
    be offered.

    Nothing is given unless each clause has vans and none of them has two.
    """
    if vans.single or ";" not in body:
        return []
    parts: list[VanPart] = []
    for match in CLAUSE.finditer(body):
        clause = match.group().strip(" .")
        part = _part(label, clause, match.start() + match.group().index(clause), vans, lexicon) if clause else None
        if part is None:
            return []
        parts.append(part)
    alone = all(not one.vans & two.vans for one, two in itertools.combinations(parts, 2))
    return parts if len(parts) > 1 and alone else []


def _part(label: str, clause: str, start: int, vans: VanMentions, lexicon: Lexicon) -> VanPart | None:
    name, colon, behind = clause.partition(":")
    if colon:
        own, value = vans.whole(name.strip()), behind.strip()
        return VanPart(label, value, start + clause.rindex(value), own) if own and value else None
    bracket = BRACKET.fullmatch(clause)
    if bracket is not None:
        own = vans.whole(bracket.group(2))
        return VanPart(label, bracket.group(1), start, own) if own and not vans.find(bracket.group(1)) else None
    alone = vans.whole(clause)
    if alone is not None:
        return VanPart(label, clause, start, alone)  # "Drift 21 only"
    named = vans.find(clause)
    cues = [cue for cue in lexicon.cues(lexicon.analyse(clause), *AVAILABILITIES) if cue.start == 0]
    if len(named) != 1 or named[0][1] != len(clause) or not cues:
        return None
    end = max(cue.end for cue in cues)
    close = end <= named[0][0] and len(clause[end : named[0][0]].split()) <= BETWEEN
    return VanPart(label, clause[:end], start, named[0][2]) if close else None
