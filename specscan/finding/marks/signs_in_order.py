"""Whose the signs are that stand side by side before an item: "■ □ ×  All-wheel drive" under the letters "P S C".

A legend tells it ("first mark: Plain; second: Spur"), or the letters with which the names of the vans begin do.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence

from specscan.finding.language.whole_words import any_of
from specscan.finding.naming.van_mentions import VanMentions
from specscan.records.text import Kind, Passage
from specscan.rulebook.models import WordFile

TO_NAME = 24  # letters at most from "first" to the name of its van: "the first mark is for the Plain"
STRETCH = 60  # letters in which the last of them has its van
LONGEST = 200  # letters of a sentence that names the vans in order
SENTENCE = re.compile(r"[.!?]\s+(?=[A-ZÀ-Þ])|\n")


def order_of_signs(passages: Sequence[Passage], words: WordFile, vans: VanMentions) -> tuple[str, ...]:
    """Give the vans of the signs before items, from left to right; none where nothing tells, or two things differ."""
    if vans.single or not any(p.several_marks for p in passages):
        return ()
    turns = [[any_of(place.split("|"), whole=True, any_case=True) for place in turn] for turn in words.places_in_turn]
    listing = any_of(words.in_order, whole=True, any_case=True)
    told = {
        order for p in passages for order in (_counted(p.text, turns, vans), _listed(p.text, listing, vans)) if order
    }
    if not told:
        told = set(_headed(passages, vans))
    return told.pop() if len(told) == 1 else ()


def _counted(text: str, turns: Iterable[Sequence[re.Pattern[str]]], vans: VanMentions) -> tuple[str, ...]:
    """Give the vans of "first mark: Plain; second: Spur; third: Coldspur", or "left: Plain, right: Spur"."""
    for turn in turns:
        found: list[re.Match[str]] = []
        for place in turn:
            match = place.search(text, found[-1].end() if found else 0)
            if match is None:
                break
            found.append(match)
        if len(found) < 2:
            continue
        stops = [*(match.start() for match in found[1:]), found[-1].end() + STRETCH]
        order = [_first_van(text[m.end() : stop], vans) for m, stop in zip(found, stops, strict=True)]
        if "" not in order and len(set(order)) == len(order):
            return tuple(order)
    return ()


def _first_van(text: str, vans: VanMentions) -> str:
    """Give the one van that a text names right at its beginning."""
    named = [(start, models) for start, _, models in vans.find(text)]
    if not named or named[0][0] > TO_NAME or len(named[0][1]) != 1:
        return ""
    return next(iter(named[0][1]))


def _listed(text: str, listing: re.Pattern[str], vans: VanMentions) -> tuple[str, ...]:
    """Give the vans of "from left to right: Plain, Spur, Coldspur"."""
    for sentence in SENTENCE.split(text):
        if len(sentence) > LONGEST or not listing.search(sentence):
            continue
        named = [models for _, _, models in vans.find(sentence)]
        order = [next(iter(models)) for models in named if len(models) == 1]
        if len(order) > 1 and len(order) == len(named) == len(set(order)):
            return tuple(order)
    return ()


def _headed(passages: Iterable[Passage], vans: VanMentions) -> Iterator[tuple[str, ...]]:
    """Give the vans of the letters or codes with which headings over such items begin, and lines right above them."""
    letters = _initials(vans.everyone)
    above = ""
    for passage in passages:
        if passage.several_marks:
            count = len(passage.several_marks)
            for text in (above, *passage.sections[-1:]):
                heads = text.split()[:count]
                named = [letters.get(head) or _only(vans.whole(head)) for head in heads]
                order = tuple(van for van in named if van)
                if len(order) == count == len(set(order)):
                    yield order
        else:
            above = passage.text if passage.kind is not Kind.CELL else ""


def _only(models: frozenset[str] | None) -> str:
    return next(iter(models)) if models is not None and len(models) == 1 else ""


def _initials(models: Iterable[str]) -> dict[str, str]:
    """Give the vans by the letter that begins the first word which they do not all have, where each has its own."""
    words = {model: model.split() for model in models}
    common = set.intersection(*(set(own) for own in words.values())) if words else set()
    found = {model: next((word[0] for word in own if word not in common), "") for model, own in words.items()}
    distinct = "" not in found.values() and len(set(found.values())) == len(found)
    return {letter: model for model, letter in found.items()} if distinct else {}
