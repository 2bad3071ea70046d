"""Vans that a text introduces one after another, each above its data: "First the Drift:", "And the Drift Max:"."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.naming.labelled_sheets import labelled
from specscan.finding.naming.listing import Listed
from specscan.finding.naming.name_forms import SPOKEN_NAME, article
from specscan.finding.naming.place import Names, Place, begins_with
from specscan.finding.naming.players import Player
from specscan.records.text import Kind, Passage

LEAST = 2
MIN_THINGS = 4  # things told below each, the same ones below all


def read_introduced(
    own: Sequence[Passage],
    names: Names,
    lexicon: Lexicon,
    articles: Collection[str],
    can_be_name: Callable[[str], bool],
) -> list[Player]:
    """Give the vans whose names, the title and what goes on from it if there is one, end lines with a colon above data.

    The same things are told of all. What is told of each ends with the next, with a heading, or with a line that tells
    nothing.
    """
    pattern = re.compile(rf"(?:^|(?<=\s)){article(articles)}({SPOKEN_NAME}) ?:$")
    lines = [(p, match.group(1)) for p in own if p.table is None and (match := pattern.search(p.text))]
    models = [model for _, model in lines]
    titled = not names.title or all(begins_with(model, names.title) for model in models)
    if not titled or len(models) < LEAST or len({*models}) < len(models) or not all(map(can_be_name, models)):
        return []
    found, shared = [], []
    for line, model in lines:
        told = _below(line, {one.number for one, _ in lines}, own, lexicon)
        shared.append({thing for passage in told for thing in lexicon.things_told(passage)})
        if not told:
            return []
        place, end = Place(line, line.page, model), told[-1].number + 1
        own_part = Listed(names.maker, model, place, names.year, names.year_place, told[0].number, end)
        found.append(Player(model, place, {model}, own_part))
    return found if len(set.intersection(*shared)) >= MIN_THINGS else []


def _below(line: Passage, openers: Collection[int], own: Sequence[Passage], lexicon: Lexicon) -> list[Passage]:
    """Give the passages right below a line that tell of something, or have a label."""
    found: list[Passage] = []
    for passage in own:
        if passage.number <= line.number:
            continue
        tells = labelled(passage)[0] or lexicon.things_told(passage)
        if passage.number in openers or passage.kind is Kind.HEADING or not tells:
            break
        found.append(passage)
    return found
