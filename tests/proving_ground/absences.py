"""Documents that say what a van does without, in rows, lists and sentences, between words that only sound like it."""

from __future__ import annotations

from dataclasses import replace

from tests.proving_ground.lists import pairs
from tests.proving_ground.pages import Block, Bullets, Heading, Page, Pairs, Para, Piece, Said
from tests.proving_ground.studio import Studio, sentence
from tests.proving_ground.words import Phrase, capital

LAYOUT = "absences"


def absences(studio: Studio, web: bool) -> list[Page]:
    """Give a document on one van: a short specification, and what it does without in each of three forms."""
    rng = studio.rng
    kinds = _kinds(studio)
    left_out = {kind.partition("=")[0] for kind in kinds} | {"toilet", "cassette_l", "propane", "heater_power"}
    groups = studio.plan(0.3, [*left_out, "black_tank_l", "gray_place_heat"])
    style = rng.choice(("colon", "tabs", "ruled"))
    blocks: list[Block] = [studio.title(), studio.heading("specs"), pairs(studio, groups, 0, style, f"list_{style}")]
    forms = {"rows": Pairs(layout=LAYOUT, style=style), "lines": Bullets(layout=LAYOUT, columns=1)}
    said: list[str] = []
    prose = Para(layout=LAYOUT)
    for kind in kinds:
        form = rng.choice(("rows", "lines", "sentences"))
        phrase: Phrase = rng.choice(studio.words.phrases("absences", kind, form))
        text = phrase.text.replace("{T}", studio.speaker.tank(kind))
        says = _says(studio, kind, phrase, form)
        if form == "rows":
            label, _, value = text.partition("|")
            forms["rows"].rows.append((capital(label), value))
            forms["rows"].state(0, Piece(value, says))
        elif form == "lines":
            forms["lines"].items.append(("•", capital(text)))
            forms["lines"].state(0, Piece(text, says))
        else:
            said.append(sentence(text))
            prose.state(0, Piece(text, says))
    traps = rng.sample(studio.words.texts("no_absence"), 4)
    forms["lines"].items += [("•", trap) for trap in traps[:2]]
    rng.shuffle(forms["lines"].items)
    said += [sentence(trap) for trap in traps[2:]]
    rng.shuffle(said)
    prose.text = " ".join(said)
    headings = studio.words.texts("absence_headings")
    if forms["rows"].rows:
        blocks.append(forms["rows"])
    blocks += [Heading(text=rng.choice(headings), level=1), forms["lines"], prose, studio.small_print()]
    half = 3 if rng.random() < 0.5 else len(blocks)
    return [Page(part) for part in (blocks[:half], blocks[half:]) if part]


def _kinds(studio: Studio) -> list[str]:
    """Give what this van can be said to do without, in random order."""
    has = studio.family.vans[0].has
    kinds = [kind for kind in studio.words.book["absences"] if studio.rng.random() < 0.7]
    if "propane" in has["heater"].fuel:
        kinds = [kind for kind in kinds if not kind.startswith("propane")]
    if studio.family.black_water:
        kinds = [kind for kind in kinds if not kind.startswith("black")]
    if any(kind.startswith("black") for kind in kinds):
        kinds = [kind for kind in kinds if kind != "toilet=none"]
    studio.rng.shuffle(kinds)
    return kinds or ["heated_floor=no"]


def _says(studio: Studio, kind: str, phrase: Phrase, form: str) -> tuple[Said, ...]:
    name, _, value = kind.partition("=")
    said = Said(name, value, traits=(f"absence in {form}",))
    return (said, *(replace(said, field=other, value=more) for other, more in phrase.beyond))
