"""Running text: what a van has, in sentences of one to three clauses, between stories and lookalikes."""

from __future__ import annotations

from collections.abc import Sequence

from tests.proving_ground.equipment import Item
from tests.proving_ground.pages import Para, Piece
from tests.proving_ground.speaker import FLAGS
from tests.proving_ground.studio import GROUPS, Studio, sentence

NEVER_DENIED = ("winterizing_bypass", "thermal_break", "cab_shades_insulated", "rear_shades_insulated")


def clauses(studio: Studio, place: int, kinds: Sequence[str], share: float) -> list[Piece]:
    """Give clauses about a van for a share of the kinds, leaving out what would leave doubt."""
    found = []
    van = studio.family.vans[place]
    for kind in kinds:
        if studio.rng.random() > share or not sayable(studio, kind, place):
            continue
        piece = studio.aloud.say("clauses", kind, van)
        if piece is None or not studio.ledger.fits(place, piece.says, "standard"):
            continue
        if not kind.endswith("_neither") and any(said.value == "no" and said.field in FLAGS for said in piece.says):
            continue
        studio.ledger.add(place, piece.says, "standard")
        found.append(piece)
    return found


def sayable(studio: Studio, kind: str, place: int) -> bool:
    """Tell whether a kind makes sense for this van in a sentence."""
    has = studio.family.vans[place].has
    heater = has["heater"]
    if kind in ("heater_rating_w", "heater_output_w", "heater_input_w"):
        return kind == f"heater_{heater.basis}_w"
    if kind == "heater_consumption_l_h":
        return "electric" not in heater.fuel and "propane" not in heater.fuel
    if kind == "fuel_tank_l":
        return bool(has[kind])
    if kind == "cassette_l":
        return bool(has["toilet"] == "cassette")
    if kind.startswith("black_tank_") and kind != "black_tank_l":
        return bool(has["black_tank_l"])
    if kind.endswith("_neither") or kind == "shore_not":
        return studio.aloud.chance(kind, 0.15)
    return kind != "black_tank_l" or bool(has[kind]) or studio.region == "us"


def prose_kinds() -> list[str]:
    """Give all kinds that sentences can be about, group by group."""
    special = {
        "fresh_tank_heat": ["fresh_tank_neither", "fresh_tank_heat"],
        "gray_tank_heat": ["gray_tank_neither", "gray_tank_heat"],
        "shore_power_a": ["shore_not", "shore_power_a"],
        "dims": ["length_mm", "width_mm", "height_mm"],
        "waters": ["fresh_tank_l", "gray_tank_l"],
        "power": ["heater_rating_w", "heater_output_w", "heater_input_w"],
    }
    found: list[str] = []
    for kinds in GROUPS.values():
        for kind in kinds.split():
            found += special.get(kind, [kind])
    return found


def paragraph(studio: Studio, place: int, pieces: Sequence[Piece], noise: float = 0.3) -> Para:
    """Give a paragraph that makes these statements about a van."""
    rng, words = studio.rng, studio.words
    van = studio.family.vans[place]
    called = van.code if len(studio.family.vans) > 1 and studio.aloud.chance("short names", 0.4) else van.model
    subject = studio.aloud.pick("subject", words.texts("subjects")).format(van=called)
    block = Para(layout="prose")
    sentences: list[str] = []
    rest = list(pieces)
    while rest:
        now = [rest.pop(0) for _ in range(min(len(rest), rng.choice((1, 2, 2, 3))))]
        who = subject if not sentences or rng.random() < 0.5 else words.texts("pronouns")[0]
        sentences.append(sentence(f"{who} {joined([piece.text for piece in now], words.book['and'])}"))
    for piece in pieces:
        block.state(place, piece)
    if called == van.model:
        studio.name_van(block, place)
    if rng.random() < noise:
        sentences.append(studio.chatter.sentence())
    if rng.random() < 0.5:
        sentences.insert(0, studio.chatter.story())
    block.text = " ".join(sentences)
    return block


def joined(texts: Sequence[str], word: str) -> str:
    """Give clauses joined as in a sentence: a, b and c."""
    if len(texts) < 2:
        return "".join(texts)
    return ", ".join(texts[:-1]) + f" {word} " + texts[-1]


def for_all(studio: Studio, kinds: Sequence[str], most: int) -> Para | None:
    """Give a sentence that holds for every van of the family, about kinds in which they are all alike."""
    vans = studio.family.vans
    pieces: list[Piece] = []
    for kind in kinds:
        if len(pieces) == most or any(van.has.get(kind) != vans[0].has.get(kind) for van in vans):
            continue
        if not all(sayable(studio, kind, place) for place in range(len(vans))):
            continue
        piece = studio.aloud.say("clauses", kind, vans[0])
        if piece is None or any(said.value == "no" for said in piece.says):
            continue
        if not all(studio.ledger.fits(place, piece.says, "standard") for place in range(len(vans))):
            continue
        for place in range(len(vans)):
            studio.ledger.add(place, piece.says, "standard")
        pieces.append(piece)
    if not pieces:
        return None
    subject = studio.aloud.pick("all", studio.names.everyone())
    texts = [piece.text for piece in pieces]
    block = Para(
        layout="prose",
        traits=("said of every van",),
        text=sentence(f"{subject} {joined(texts, studio.words.book['and'])}"),
    )
    for place in range(len(vans)):
        for piece in pieces:
            block.state(place, piece)
    return block


def options_sentence(studio: Studio, items: Sequence[Item]) -> Para:
    """Give a sentence that lists options of a document's only van."""
    texts = [item.piece.text if studio.words.language == "de" else _low(item.piece.text) for item in items]
    text = studio.rng.choice(studio.words.texts("option_sentence")).format(list="; ".join(texts))
    block = Para(layout="prose", traits=("options in a sentence",), text=text)
    for item in items:
        says = tuple(said.__class__(said.field, said.value, "optional", said.habit) for said in item.piece.says)
        block.state(0, Piece(item.piece.text, says))
    return block


def _low(text: str) -> str:
    keep = len(text) > 1 and (text[1].isupper() or text[1].isdigit() or not text[0].isalpha())
    return text if keep else text[0].lower() + text[1:]
