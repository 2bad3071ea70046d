"""Maker, model and model year of a van as facts with their places."""

from __future__ import annotations

from specscan.finding.naming.cast import Cast, Player
from specscan.finding.naming.place import Place
from specscan.records.facts import Fact, VanName
from specscan.records.text import Box, Passage


def van_name(cast: Cast, player: Player) -> VanName:
    """Give a van's name: its own maker and year where several makers' vans are described, else the document's."""
    if player.listed is not None:
        return VanName(player.listed.maker, player.model, player.listed.year)
    return VanName(cast.names.maker, player.model, cast.names.year)


def identity_facts(cast: Cast, player: Player, pieced: bool = False) -> list[Fact]:
    """Give maker, model and model year of a van as facts with their places; ``pieced``: its name is put together."""
    names, name = cast.names, van_name(cast, player)
    listed = player.listed
    rows: list[tuple[str, object, Place | None]] = [
        ("maker", name.maker, listed.place if listed is not None else names.maker_place),
        ("model", name.model, player.place or names.title_place),
        ("model_year", name.year, listed.year_place if listed is not None else names.year_place),
    ]
    facts = []
    for field_name, value, place in rows:
        if value in ("", None):
            continue
        passage = place.passage if place is not None else None
        grounds = ["implied"] if field_name == "maker" and names.maker_weak else []
        grounds += ["pieced"] if field_name == "model" and pieced else []
        grounds += ["picture"] if passage is not None and passage.source == "ocr" else []
        facts.append(
            Fact(
                field=field_name,
                model=player.model,
                num=float(value) if isinstance(value, int) else None,
                text=value if isinstance(value, str) else None,
                printed=place.text if place is not None else str(value),
                availability="standard",
                page=place.page if place is not None else 0,
                box=_box(passage, str(value)) if passage is not None and passage.text else None,
                found_by=f"{field_name}:identity",
                how="identity",
                passage=passage.number if passage is not None else 0,
                grounds=tuple(grounds),
            )
        )
    return facts


def _box(passage: Passage, value: str) -> Box | None:
    """Give where a name stands in its passage; all of the passage where it is put together from parts of it."""
    at = passage.text.casefold().find(value.casefold())
    return passage.box(at, at + len(value)) if at >= 0 else passage.box()
