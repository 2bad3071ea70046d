"""Several documents on the same vans: each tells another share of what is true of them, and some contradict another."""

from __future__ import annotations

import copy
from dataclasses import dataclass
from random import Random

from tests.proving_ground.maker import REGIONS, TRIES, Brochure, draw_once
from tests.proving_ground.truth import Label, UnfairError, same
from tests.proving_ground.vans import Family, draw_family

# A web page, a data sheet and a text of a dealer, by the number of vans: layout and renderer.
ONE_VAN = (("list_ruled", "html"), ("list_tabs", "reportlab"), ("letter", "text"))
SEVERAL = (("matrix_ruled", "html"), ("matrix_borderless", "reportlab"), ("prose", "text"))
CHANGED = ("fuel_tank_l", "fresh_tank_l", "gray_tank_l", "gvwr_kg", "water_heater_l", "interior_height_mm")
BY = 1.2  # times the true figure: what a document states that contradicts another
AS_DELIVERED = ("standard", "unstated")


@dataclass(slots=True)
class Dossier:
    """Documents on one family of vans, and by van and field what they state together.

    ``agreed``: the value that all documents give that give one; ``disputed``: fields of which tables give different
    numbers.
    """

    family: Family
    brochures: list[Brochure]
    vans: list[str]
    agreed: dict[tuple[str, str], str]
    disputed: set[tuple[str, str]]


def draw_dossier(seed: int, number: int, maker: Family | None = None) -> Dossier:
    """Give dossier ``number`` of a seed; with ``maker`` its vans are other ones of that family's maker."""
    rng = Random(f"dossier/{seed}/{number}")
    region = maker.region if maker is not None else rng.choice(REGIONS)
    family = draw_family(rng, region, rng.choice((1, 2, 2, 3)))
    if maker is not None:
        family.maker, family.form, family.town = maker.maker, maker.form, maker.town
    other = copy.deepcopy(family)
    for name in rng.sample(CHANGED, 2):
        for van in other.vans:
            van.has[name] = round(van.has[name] * BY)
    forms = ONE_VAN if len(family.vans) == 1 else SEVERAL
    told = (family, other if rng.random() < 0.6 else family, family)
    made = [
        _drawn(rng, f"{number:03d}{place}", layout, region, renderer, vans)
        for place, ((layout, renderer), vans) in enumerate(zip(forms, told, strict=True))
    ]
    agreed, disputed = _together([brochure.labels for brochure in made])
    return Dossier(family, made, [van.model for van in family.vans], agreed, disputed)


def _drawn(rng: Random, number: str, layout: str, region: str, renderer: str, family: Family) -> Brochure:
    for _ in range(TRIES):
        try:
            return draw_once(rng, int(number), layout, region, (renderer,), False, copy.deepcopy(family))
        except UnfairError as error:
            reason = error
    raise reason


def _together(told: list[list[Label]]) -> tuple[dict[tuple[str, str], str], set[tuple[str, str]]]:
    """Give what all documents agree on, and what the first two, tables and lists, contradict each other in."""
    values: dict[tuple[str, str], list[tuple[int, str]]] = {}
    for number, labels in enumerate(told):
        for label in labels:
            if label.availability in AS_DELIVERED:
                values.setdefault((label.van, label.field), []).append((number, label.value))
    agreed, disputed = {}, set()
    for key, pairs in values.items():
        first = pairs[0][1]
        if all(same(key[1], first, value) for _, value in pairs):
            agreed[key] = first
        elif key[1] in CHANGED and {0, 1} <= {number for number, _ in pairs}:
            disputed.add(key)
    return agreed, disputed
