"""Documents that talk: questions with their answers, a letter, sister models in one sentence."""

from __future__ import annotations

from collections.abc import Sequence

from tests.proving_ground.pages import Block, Heading, Page, Para, Piece
from tests.proving_ground.prose import clauses, joined, prose_kinds, sayable
from tests.proving_ground.speaker import QUANTITIES
from tests.proving_ground.studio import GROUPS, Studio, sentence

MOST_AT_ONCE = 3


def questions(studio: Studio, web: bool) -> list[Page]:
    """Give a page on which a maker answers what people ask about one van, topic by topic."""
    rng, words = studio.rng, studio.words
    van = studio.family.vans[0].model
    way = rng.choice(("heading", "heading", "letters", "line"))
    blocks: list[Block] = [studio.title()]
    said = clauses(studio, 0, prose_kinds(), rng.choice((0.4, 0.55)))
    for group in GROUPS:
        about = [piece for piece in said if _group_of(piece) == group]
        asked = words.texts("questions", group)
        for start in range(0, len(about), MOST_AT_ONCE):
            question = asked[(start // MOST_AT_ONCE) % len(asked)].format(van=van)
            if way == "heading":
                blocks.append(Heading(text=question, level=2, layout="questions"))
            else:
                blocks.append(
                    Para(text=f"{words.texts('question_letters')[0]} {question}" if way == "letters" else question)
                )
            answer = _answer(studio, about[start : start + MOST_AT_ONCE])
            if way == "letters":
                answer.text = f"{words.texts('question_letters')[1]} {answer.text}"
            blocks.append(answer)
    blocks.append(Para(text=studio.chatter.sentence()))
    blocks.append(studio.small_print())
    return _pages(studio, blocks)


def _group_of(piece: Piece) -> str:
    """Give the topic to which a clause's first statement belongs."""
    name = piece.says[0].field
    for group, kinds in GROUPS.items():
        if name in kinds.split():
            return group
    ends = {"heater": "heat", "battery": "energy", "propane": "energy", "insulation": "shell", "length": "vehicle"}
    ends |= {"width": "vehicle", "height": "vehicle", "fresh": "water", "gray": "water", "black": "water"}
    return ends[name.split("_")[0]]


def _answer(studio: Studio, pieces: Sequence[Piece]) -> Para:
    """Give an answer: one or two sentences about the van that the question names."""
    words = studio.words
    block = Para(layout="questions")
    cut = studio.rng.randint(1, len(pieces))
    texts = []
    for part in (pieces[:cut], pieces[cut:]):
        if part:
            texts.append(
                sentence(f"{words.texts('pronouns')[0]} {joined([one.text for one in part], words.book['and'])}")
            )
    if studio.rng.random() < 0.25:
        texts.append(studio.chatter.sentence())
    block.text = " ".join(texts)
    for piece in pieces:
        block.state(0, piece)
    return block


def letter(studio: Studio, web: bool) -> list[Page]:
    """Give a letter in which a maker tells somebody about one van."""
    rng, words, family = studio.rng, studio.words, studio.family
    van = family.vans[0].model
    blocks: list[Block] = [studio.title()]
    blocks.append(Para(text=rng.choice(words.texts("greetings"))))
    blocks.append(Para(text=rng.choice(words.texts("thanks")).format(van=van)))
    said = clauses(studio, 0, prose_kinds(), rng.choice((0.35, 0.5)))
    size = rng.choice((3, 4, 5))
    for start in range(0, len(said), size):
        block = _told(studio, said[start : start + size], van)
        blocks.append(block)
    blocks.append(Para(text=rng.choice(words.texts("farewells")).format(maker=family.maker)))
    blocks.append(studio.small_print())
    return _pages(studio, blocks)


def _told(studio: Studio, pieces: Sequence[Piece], van: str) -> Para:
    """Give a paragraph of a letter: the van is named once, or not at all."""
    words = studio.words
    block = Para(layout="letter")
    who = studio.aloud.pick("subject", words.texts("subjects")).format(van=van)
    named = studio.rng.random() < 0.5
    subjects = [who if named else words.texts("pronouns")[0], words.texts("pronouns")[0]]
    half = -(-len(pieces) // 2)
    texts = [
        sentence(f"{subject} {joined([one.text for one in part], words.book['and'])}")
        for subject, part in zip(subjects, (pieces[:half], pieces[half:]), strict=True)
        if part
    ]
    block.text = " ".join(texts)
    for piece in pieces:
        block.state(0, piece)
    if named:
        studio.name_van(block, 0)
    return block


def sisters(studio: Studio, web: bool) -> list[Page]:
    """Give running text that sets sister models against each other: the 19 carries 20 gallons, the 21 carries 30."""
    rng, vans = studio.rng, studio.family.vans
    title = studio.title(vans_below=True)
    named = studio.names.sentence()
    blocks: list[Block] = [title, *([named] if named else [])]
    texts: list[str] = []
    block = Para(layout="sisters")
    for kind in prose_kinds():
        if rng.random() > 0.55 or not all(sayable(studio, kind, place) for place in range(len(vans))):
            continue
        told = _set_against(studio, kind)
        if told is None:
            continue
        texts.append(told[0])
        for place, piece in enumerate(told[1]):
            block.state(place, piece)
        if len(texts) == MOST_AT_ONCE:
            blocks.append(_closed(block, texts))
            block, texts = Para(layout="sisters"), []
            if rng.random() < 0.4:
                blocks.append(Para(text=f"{studio.chatter.story()} {studio.chatter.sentence()}"))
    if texts:
        blocks.append(_closed(block, texts))
    blocks.append(studio.small_print())
    return _pages(studio, blocks)


def _closed(block: Para, texts: Sequence[str]) -> Para:
    block.text = " ".join(texts)
    return block


def _set_against(studio: Studio, kind: str) -> tuple[str, list[Piece]] | None:
    """Give a sentence with a clause for each van, and the clauses; none where a clause would leave doubt."""
    vans, words = studio.family.vans, studio.words
    pieces = []
    for place, van in enumerate(vans):
        piece = studio.aloud.say("clauses", kind, van)
        if piece is None or not studio.ledger.fits(place, piece.says, "standard"):
            return None
        if not kind.endswith("_neither") and any(said.value == "no" for said in piece.says):
            return None
        pieces.append(piece)
    if len({piece.text for piece in pieces}) == 1:
        return None
    for place, piece in enumerate(pieces):
        studio.ledger.add(place, piece.says, "standard")
    pieces = _shorter(studio, kind, pieces)
    subject = studio.aloud.pick("subject", words.texts("subjects"))
    parts = []
    for place, (van, piece) in enumerate(zip(vans, pieces, strict=True)):
        who = subject.format(van=van.code)
        parts.append(f"{who if place == 0 else who[0].lower() + who[1:]} {piece.text}")
    way = studio.aloud.pick("sisters", ("commas", "and", "semicolons"))
    if way == "and":
        return sentence(joined(parts, words.book["and"])), pieces
    return sentence((", " if way == "commas" else "; ").join(parts)), pieces


def _shorter(studio: Studio, kind: str, pieces: Sequence[Piece]) -> list[Piece]:
    """Leave out after the first van what the clauses share: nothing, the unit, or all but the figure."""
    way = studio.aloud.pick("sisters shorter", ("whole", "whole", "unit once", "figure alone"))
    if kind not in QUANTITIES or way == "whole":
        return list(pieces)
    starts = [piece.text.rpartition(" ") for piece in pieces]
    if way == "unit once":
        if len({unit for _, _, unit in starts}) > 1 or not all(rest[-1:].isdigit() for rest, _, _ in starts):
            return list(pieces)
        return [
            pieces[0],
            *(Piece(rest, piece.says) for piece, (rest, _, _) in zip(pieces[1:], starts[1:], strict=True)),
        ]
    figures = [studio.aloud.content(kind, van)[0].get("v", "") for van in studio.family.vans]
    frames = {piece.text.replace(figure, "{}") for piece, figure in zip(pieces, figures, strict=True) if figure}
    if len(frames) > 1 or not all(figure in piece.text for piece, figure in zip(pieces, figures, strict=True)):
        return list(pieces)
    return [pieces[0], *(Piece(figure, piece.says) for piece, figure in zip(pieces[1:], figures[1:], strict=True))]


def _pages(studio: Studio, blocks: list[Block]) -> list[Page]:
    """Give one page, or two where it would not hold all."""
    if len(blocks) < 16:
        return studio.names.edges([blocks])
    half = len(blocks) // 2
    return studio.names.edges([blocks[:half], blocks[half:]])
