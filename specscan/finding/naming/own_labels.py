"""Vans each with labels for maker and model year of its own: "Make: Marrowfen", "Year: 2023", in its part or column."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence

from specscan.finding.naming.labelled_sheets import labelled
from specscan.finding.naming.listing import Listed
from specscan.finding.naming.place import Names, Place
from specscan.finding.naming.players import Player
from specscan.finding.naming.years import YEAR
from specscan.records.text import Kind, Passage
from specscan.rulebook.models import WordFile

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
    makers = [_told(player, own, words.maker_labels) for player in players]
    labels = {label.casefold() for label in (*words.model_year, *words.year_labels)}
    beside = _beside(own, labels, heads)
    years = [beside.get(player.model) or _told(player, own, labels, year=True) for player in players]
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


def _told(player: Player, own: Sequence[Passage], labels: Iterable[str], *, year: bool = False) -> Told | None:
    """Give what the first such label in the part on a van says."""
    wanted = {label.casefold() for label in labels}
    place = player.place.passage if player.place is not None else None
    heading = place.text if place is not None and place.kind is Kind.HEADING else ""
    for passage in own:
        if passage.number in player.chapter or heading in passage.sections:
            label, text = labelled(passage)
            match = YEAR.search(text) if year and label in wanted else None
            if label in wanted and (match is not None or not year):
                found = match.group(1) if match is not None else text
                return found, Place(passage, passage.page, found)
    return None
