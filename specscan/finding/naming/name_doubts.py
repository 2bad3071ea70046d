"""Which names of vans are doubtful: those put together from a code and words that no line gives as the range."""

from __future__ import annotations

import re

from specscan.finding.language.whole_words import holds
from specscan.finding.naming.place import begins_with
from specscan.finding.naming.players import Cast, Player
from specscan.records.text import Document

SIGNS = re.compile(r"[®™©]")


def pieced_names(cast: Cast, document: Document) -> frozenset[str]:
    """Give the vans whose name no text has in one piece, and of which no line, head or title is the range alone.

    Documents by other authors, at first sight: of ten such names five were wrong, of 57 others five.
    """
    passages = [passage for passage in document.passages if passage.number not in cast.names.other]
    heads = (head.text for p in passages for head in (p.row, p.column) if head is not None)
    titles = (title.text for title in document.titles if title.origin != "file")
    texts = {_plain(text) for text in (*(p.text for p in passages), *heads, *titles)}
    lines = {text.strip(" .:") for text in texts}
    return frozenset(
        player.model
        for player in cast.players
        if player.listed is None
        and _start_of(player, cast) not in lines
        and not any(holds(text, _plain(player.model)) for text in texts)
    )


def _start_of(player: Player, cast: Cast) -> str:
    """Give what stands before the code in a van's name."""
    model = _plain(player.model)
    if begins_with(model, _plain(cast.names.series)):
        return _plain(cast.names.series)
    codes = (_plain(alias) for alias in player.aliases)
    longest = max((code for code in codes if model.endswith(f" {code}")), key=len, default="")
    return model.removesuffix(longest).strip() or model.partition(" ")[0]


def _plain(text: str) -> str:
    return " ".join(SIGNS.sub("", text).casefold().split())
