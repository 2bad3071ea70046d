"""Answers that say for which vans a thing is to be had: "3,000 W inverter: option, Drift 24"."""

from __future__ import annotations

import re
from typing import NamedTuple

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.marks.signs import availability_alone
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.things.found import Availability

ANSWER = re.compile(r"([^\d,;:(]{3,40}?)\s*(?:[,;:]|\((?=[^()]*\)\W*$))\s*(.{2,80})")
JOINTS = ("coordination", "number_joint", "or_joint")
CLOSED = re.compile(r"[).]*\s*$")


class OfferedTo(NamedTuple):
    """An availability and the vans that it is told of."""

    availability: Availability
    vans: frozenset[str]


def offered_to(body: str, lexicon: Lexicon, vans: VanMentions) -> OfferedTo | None:
    """Read an answer that is an availability and names of vans, nothing else; ``None`` for any other."""
    match = None if vans.single else ANSWER.fullmatch(body.strip())
    if match is None:
        return None
    named = CLOSED.sub("", match.group(2))
    found = vans.find(named)
    if not found:
        return None
    rest = named
    for start, end, _ in reversed(found):
        rest = rest[:start] + rest[end:]
    joints = {word for name in JOINTS for word in lexicon.words.cues.get(name, ())}
    if any(word.casefold() not in joints for word in re.findall(r"\w+", rest)):
        return None
    availability = availability_alone(lexicon, match.group(1))
    return OfferedTo(availability, vans.named_in(named)) if availability is not None else None
