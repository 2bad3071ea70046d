"""Vans that a statement leaves out: "all have it, except the 540"; "standard on the 600, not offered on the others"."""

from __future__ import annotations

import re

from specscan.finding.marks.legend import AVAILABILITIES, said_by
from specscan.finding.things.found import Availability
from specscan.finding.things.items import Item, Parsed

BRACKET = re.compile(r"\s*\([^()]*\)")
NEAR = 1.01  # figures that differ less are the same in two units
STOP = re.compile(r"[.!?;](?:\s|$)")


def left_out(item: Item | None, parsed: Parsed) -> frozenset[str]:
    """Give the vans that are excepted from what a value says: those behind "except", the value right before it.

    Of several values in front of the exception only those of the last part of the sentence are meant.
    """
    if item is None:
        return frozenset()
    for cue in parsed.cues("except"):
        behind = [m for m in parsed.items if m.vans and m.chunk == cue.chunk and m.start >= cue.end]
        if not behind or item.start >= cue.start or STOP.search(parsed.text, item.end, cue.start):
            continue
        if any(i.vans and i.end <= cue.start and i.chunk == cue.chunk for i in parsed.items):
            continue
        everyone = parsed.cues("all_vans", "two_vans")  # "all vans" tells nothing of driven wheels
        ahead = [i for i in parsed.items if i.end <= cue.start and (i.quantity is not None or i.tells)]
        told = [i.chunk for i in ahead if not any(c.start <= i.start < c.end for c in everyone)]
        if told and item.chunk == max(told):
            return frozenset().union(*(m.vans for m in behind))
    return frozenset()


def said_but_of_some(parsed: Parsed, everyone: frozenset[str]) -> dict[str, Availability]:
    """Give what is said of all vans but some, and of these behind them: "optional on all except the 54, not there".

    Nothing is given where other vans are named before the exception.
    """
    cues = parsed.cues("except")
    if len(cues) != 1:
        return {}
    said = [i for i in parsed.items if i.has("cue", *AVAILABILITIES)]
    ahead = [i for i in said if i.end <= cues[0].start]
    named = [i for i in parsed.items if i.vans]
    if not ahead or not named or named[0].start < cues[0].end:
        return {}
    left = frozenset().union(*(i.vans for i in named))
    told = dict.fromkeys(sorted(everyone - left), said_by(ahead))
    behind = [i for i in said if i.start >= named[-1].end]
    return told | (dict.fromkeys(sorted(left), said_by(behind)) if behind else {})


def have_their_own(item: Item | None, parsed: Parsed) -> frozenset[str]:
    """Give the vans for which a bracket right behind a figure gives another one: "3,500 kg (Polar 4,250 kg)".

    What a bracket offers is no such figure: "100 Ah (option on the Polar: 200 Ah)".
    """
    if item is None or item.quantity is None:
        return frozenset()
    end = max((i.end for i in parsed.items if i.chunk == item.chunk), default=item.end)
    opening = BRACKET.match(parsed.text, end)
    if opening is None or any(i.vans and i.sentence == item.sentence and i.start < end for i in parsed.items):
        return frozenset()
    held = [i for i in parsed.items if opening.start() < i.start < opening.end()]
    offered = any(i.has("cue", *AVAILABILITIES) for i in held)
    figures = [i.quantity for i in held if i.quantity is not None]
    alike = bool(figures) and all(one.dimension == item.quantity.dimension for one in figures)
    if (
        offered
        or not alike
        or any(one.low <= item.quantity.high * NEAR and item.quantity.low <= one.high * NEAR for one in figures)
    ):
        return frozenset()
    return frozenset().union(*(i.vans for i in held))


def told_of_others(item: Item | None, parsed: Parsed, vans: frozenset[str]) -> frozenset[str]:
    """Give the vans that a sentence does not name before "the others", where it tells these a value of their own.

    "The 19 has 200 W, the others have 400 W" and "200 W on the 19, 400 W on the others"; not "the 19 has, like the
    others, 200 W".
    """
    if item is None:
        return frozenset()
    for cue in parsed.cues("other_members"):
        opens = not _words(_start_of(cue, parsed), cue.start, parsed)
        told_in = _last_named(cue, parsed) if opens else cue.sentence  # "… The other two are for summer."
        ahead = [m for m in parsed.items if m.vans and m.sentence == told_in and m.end <= cue.start]
        named = frozenset().union(*(m.vans for m in ahead))
        more = any(m.vans and m.sentence == cue.sentence and m.start >= cue.end for m in parsed.items)
        if item.sentence != cue.sentence or not named or more:
            continue
        own = item.chunk == cue.chunk and not any(
            m.start < cue.start and m.chunk == cue.chunk for m in parsed.items
        )  # "the 24 has grade 3, the other two grade 2"
        subject = item.start >= cue.end and (opens or own or _right_behind("coordination", cue, parsed))
        behind = item.chunk == cue.chunk and item.end <= cue.start and _right_behind("preposition", cue, parsed)
        if own and not opens:
            named = ahead[-1].vans
        if subject or (behind and not any(m.chunk == cue.chunk for m in ahead)):
            return vans - named
    return frozenset()


def _start_of(cue: Item, parsed: Parsed) -> int:
    """Give where the sentence of a cue begins."""
    return next((bound[0] for bound in parsed.bounds if bound[3] == cue.sentence), 0)


def _last_named(cue: Item, parsed: Parsed) -> int:
    """Give the sentence before that of a cue if it names vans, else one that there is not."""
    before = [m.sentence for m in parsed.items if m.vans and m.sentence < cue.sentence]
    return max(before) if before and max(before) == cue.sentence - 1 else -1


def _right_behind(kind: str, cue: Item, parsed: Parsed) -> bool:
    """Tell whether nothing but an article stands between a cue of some kind, or the start of a clause, and a cue."""
    ends = [i.end for i in parsed.cues(kind)]
    if kind == "coordination":
        ends += [start for start, _, clause, _, _ in parsed.bounds if clause]
    return any(end <= cue.start and not _words(end, cue.start, parsed) for end in ends)


def _words(start: int, end: int, parsed: Parsed) -> list[str]:
    """Give the words between two places, articles and signs left out."""
    return [word for word in parsed.between(start, end) if word[0].isalnum()]


def said_of_others(parsed: Parsed, vans: frozenset[str]) -> dict[str, Availability]:
    """Give the availability on the vans that a statement does not name, where it says one of "the others"."""
    named = frozenset(van for item in parsed.items for van in item.vans)
    others = vans - named
    if not named or not others:
        return {}
    for cue in parsed.cues("other_members"):
        before = [i for i in parsed.items if i.chunk == cue.chunk and i.end <= cue.start]
        said = [i for i in before if i.has("cue", *AVAILABILITIES)]
        if said:
            return dict.fromkeys(sorted(others), said_by(said))
    return {}
