"""Vans each with labels for maker and model year of its own: "Make: Marrowfen", "Year: 2023", in its part or column.

A line below a van's heading that begins with who built it does as much: "Converted by Marrowfen, Mill Lane, Farrow".
"""

from __future__ import annotations

import functools
import re
from collections.abc import Iterable, Mapping, Sequence

from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.houses import COMPANY, MAX_WORDS
from specscan.finding.naming.labelled_sheets import labelled
from specscan.finding.naming.listing import Listed
from specscan.finding.naming.name_labels import before_address, first_statement
from specscan.finding.naming.place import Names, Place
from specscan.finding.naming.players import Player
from specscan.finding.naming.years import YEAR
from specscan.records.text import Kind, Passage
from specscan.rulebook.models import WordFile

FIRST_LINES = 3  # of the part on a van, among which who built it stands

Told = tuple[str, Place]


def take_own_labels(
    players: Sequence[Player],
    names: Names,
    own: Sequence[Passage],
    words: WordFile,
    heads: Mapping[str, frozenset[str]],
) -> None:
    """Give vans the makers and years that labels in their own parts tell, where these differ from van to van.

    Years may stand beside a label in the vans' columns or rows too; ``heads`` maps the heads of these to vans.
    """
    signed = _signing(tuple(words.built_by))
    parts = _parts(players, own)
    makers = [_told(part, words.maker_labels) or _built(part, signed) for part in parts]
    labels = {label.casefold() for label in (*words.model_year, *words.year_labels)}
    beside = _beside(own, labels, heads)
    dated = _dating(tuple(sorted(labels)))
    years = [
        beside.get(player.model) or _told(part, labels, year=True) or _dated(part, dated)
        for player, part in zip(players, parts, strict=True)
    ]
    several = [len({told[0].casefold() for told in some if told is not None}) > 1 for some in (makers, years)]
    if not any(several) or any(player.listed is not None for player in players):
        return
    for player, maker, year in zip(players, makers, years, strict=True):
        company = maker[0] if maker is not None else names.maker
        place = maker[1] if maker is not None else names.maker_place or player.place or Place(None, 0, company)
        own_year = (int(year[0]), year[1]) if year is not None else (None, None)
        told = own_year if year is not None or several[1] else (names.year, names.year_place)
        player.listed = Listed(company, player.model, place, *told)


def _beside(own: Sequence[Passage], labels: Iterable[str], heads: Mapping[str, frozenset[str]]) -> dict[str, Told]:
    """Give the year that stands in each van's column, or row, beside one of some labels."""
    found: dict[str, Told] = {}
    for passage in own if heads else ():
        for label, head in ((passage.row, passage.column), (passage.column, passage.row)):
            vans = heads.get(head.text, frozenset()) if head is not None else frozenset()
            if label is None or len(vans) != 1 or label.text.casefold().strip(" :") not in labels:
                continue
            if (match := YEAR.search(passage.text)) is not None:
                found.setdefault(next(iter(vans)), (match.group(1), Place(passage, passage.page, match.group(1))))
    return found


def _told(part: Sequence[Passage], labels: Iterable[str], *, year: bool = False) -> Told | None:
    """Give what the first such label in the part on a van says."""
    wanted = {label.casefold() for label in labels}
    for passage in part:
        label, text = labelled(passage)
        match = YEAR.search(text) if year and label in wanted else None
        if label in wanted and (match is not None or not year):
            found = match.group(1) if match is not None else before_address(first_statement(text))
            return found, Place(passage, passage.page, found)
    return None


@functools.lru_cache(maxsize=8)
def _signing(built_by: tuple[str, ...]) -> re.Pattern[str]:
    """Give what finds the company behind one of these words at the beginning of a line."""
    return re.compile(rf"(?i:{any_word(built_by)}) ({COMPANY})(?=$|[,;(·|–—]| [(·|–—-])")


def _built(part: Sequence[Passage], signed: re.Pattern[str]) -> Told | None:
    """Give the company with which the first lines of the part on a van say that it was built."""
    for passage in part[:FIRST_LINES]:
        match = signed.match(passage.text) if passage.table is None else None
        if match is not None and len(passage.text.split()) <= MAX_WORDS:
            return match.group(1), Place(passage, passage.page, match.group(1))
    return None


@functools.lru_cache(maxsize=8)
def _dating(labels: tuple[str, ...]) -> re.Pattern[str]:
    """Give what finds the year right behind one of some labels."""
    return re.compile(rf"(?<!\w)(?i:{any_word(labels)})\s+{YEAR.pattern}")


def _dated(part: Sequence[Passage], dated: re.Pattern[str]) -> Told | None:
    """Give the year that the first lines of the part on a van tell among others: "Converter: Marrowfen. Model year
    2027"."""
    for passage in part[:FIRST_LINES]:
        match = dated.search(passage.text) if passage.table is None else None
        if match is not None and len(passage.text.split()) <= MAX_WORDS:
            return match.group(1), Place(passage, passage.page, match.group(0))
    return None


def _parts(players: Sequence[Player], own: Sequence[Passage]) -> list[list[Passage]]:
    """Give what stands in the part on each van: in its chapter, or below a heading that names it."""
    numbered = {passage.number: passage for passage in own}
    below: dict[str, list[Passage]] = {}
    for passage in own:
        for section in set(passage.sections):
            below.setdefault(section, []).append(passage)
    parts = []
    for player in players:
        place = player.place.passage if player.place is not None else None
        headings = {player.model, place.text if place is not None and place.kind is Kind.HEADING else ""}
        found = {p.number: p for heading in headings for p in below.get(heading, ())}
        found |= {number: numbered[number] for number in player.chapter if number in numbered}
        parts.append([found[number] for number in sorted(found)])
    return parts
