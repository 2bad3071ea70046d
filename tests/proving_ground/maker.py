"""Draws one brochure: family of vans, layout, language, renderer; gives its bytes and what it states."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from random import Random

from tests.proving_ground import render_html, render_pdf, render_text
from tests.proving_ground.families import FAMILIES
from tests.proving_ground.naming import Naming
from tests.proving_ground.pages import Draft
from tests.proving_ground.studio import Studio
from tests.proving_ground.truth import Label, UnfairError, check_names, labels_of
from tests.proving_ground.vans import Family

REGIONS = ("us", "us", "us", "uk", "au", "fr", "fr", "qc", "de", "de")
SUFFIX = {"reportlab": ".pdf", "chromium": ".pdf", "html": ".html", "text": ".txt", "markdown": ".md"}
PAGED = ("reportlab", "chromium")
WITHOUT_HEADS = ("prose", "bullets", "sisters")  # nothing but their titles and text names vans
TRIES = 40


@dataclass(slots=True)
class Brochure:
    """A drawn brochure: its file and what it states."""

    name: str
    data: bytes
    layout: str
    region: str
    renderer: str
    labels: list[Label]
    draft: Draft
    vans: list[str] = field(default_factory=list)
    naming: Naming | None = None


def draw(
    seed: int,
    number: int,
    layout: str = "",
    region: str = "",
    renderers: tuple[str, ...] = (),
    any_names: bool = False,
) -> Brochure:
    """Give brochure ``number`` of a seed; ``layout``, ``region`` and ``renderers`` narrow what may be drawn.

    With ``any_names`` vans, makers and years are named in all ways and places, else as most brochures do it.

    A draft that would leave a careful human in doubt is thrown away and drawn again.

    Raises:
        KeyError: there is no such layout.
        ValueError: no renderer is left for the layout.
    """
    for attempt in range(TRIES):
        rng = Random(f"{seed}/{number}/{attempt}/{layout}/{region}")
        try:
            return draw_once(rng, number, layout, region, renderers, any_names)
        except UnfairError as error:
            reason = error
    raise reason


def draw_once(
    rng: Random, number: int, layout: str, region: str, renderers: tuple[str, ...], any_names: bool,
    family: Family | None = None,
) -> Brochure:  # fmt: skip
    """Give a brochure, of a given family of vans where one is given.

    Raises:
        UnfairError: the draft leaves a careful human in doubt.
    """
    layout = layout or rng.choice(sorted(FAMILIES))
    region = region or rng.choice(REGIONS)
    build, (least, most), possible = FAMILIES[layout]
    allowed = [one for one in possible if not renderers or one in renderers]
    if not allowed:
        raise ValueError(f"{layout} cannot be rendered by {', '.join(renderers)}")
    renderer = rng.choice(allowed)
    glyphs, paged = renderer != "reportlab", renderer in PAGED
    vans = len(family.vans) if family is not None else rng.randint(least, most)
    studio = Studio(rng, region, vans, glyphs, paged, layout not in WITHOUT_HEADS, not any_names, family)
    pages = build(studio, renderer != "reportlab")
    draft = Draft([page for page in pages if page.blocks], studio.look, studio.words.language)
    draft.title = studio.names.properties()
    check_names(draft, studio.family, paged)
    labels = labels_of(draft, studio.family, paged)
    name = f"{number:04d}_{_plain(studio.names.file_name())}{SUFFIX[renderer]}"
    if renderer == "html":
        render_html.dress(draft, studio)
    data = _rendered(draft, renderer)
    models = [van.model for van in studio.family.vans]
    return Brochure(name, data, layout, region, renderer, labels, draft, models, studio.naming)


def _rendered(draft: Draft, renderer: str) -> bytes:
    if renderer == "reportlab":
        return render_pdf.render(draft)
    if renderer in ("text", "markdown"):
        return render_text.render(draft, renderer == "markdown")
    if renderer == "html":
        return render_html.page(draft)
    return render_html.printed(draft)


def _plain(text: str) -> str:
    return re.sub(r"\W+", "_", text.casefold())
