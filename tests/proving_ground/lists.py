"""Lists: labels with values, bullets, prices, packages, notes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

from tests.proving_ground.equipment import AVAILABILITY, Item
from tests.proving_ground.grids import legend, mark_set, state_item
from tests.proving_ground.pages import Block, Bullets, Card, Cards, Pairs, Para, Piece, Said
from tests.proving_ground.rows import Row
from tests.proving_ground.studio import Studio
from tests.proving_ground.words import capital


def pairs(studio: Studio, groups: Sequence[tuple[str, list[Row]]], place: int, style: str, layout: str) -> Pairs:
    """Give the list of one van's labels and values; what is not said of it has no line."""
    block = Pairs(layout=layout, style=style)
    for name, rows in groups:
        lines = [(row.label, row.cells[place].text) for row in rows if row.cells[place].text]
        if not lines:
            continue
        block.rows += [("", studio.group(name)), *lines]
        for row in rows:
            block.state(place, row.cells[place], row.traits)
    return block


def bullet_list(studio: Studio, items: Sequence[Item], web: bool, columns: int, headed: bool) -> list[Block]:
    """Give bullets: under headings for each availability, or with a mark each and a legend."""
    rest = studio.chatter.features(studio.rng.randint(2, 5))
    if headed:
        return _under_headings(studio, items, rest, columns)
    marks = mark_set(studio, web)
    if len(marks[0]) > 1:
        marks = ("●", "❍", "–")
    block = Bullets(layout="bullets", traits=(f"marks {' '.join(marks)}",), columns=columns)
    symbol = dict(zip("SON", marks, strict=True))
    lines = [(symbol[studio.rng.choice("SSO")], text) for text in rest]
    for item in items:
        lines.append((symbol[item.marks[0]], item.piece.text))
        state_item(block, item)
    studio.rng.shuffle(lines)
    block.items = lines
    return [Para(text=legend(studio, marks)), block]


def _under_headings(studio: Studio, items: Sequence[Item], rest: Sequence[str], columns: int) -> list[Block]:
    names = {"S": "standard", "O": "optional", "N": "not_available"}
    sign = studio.speaker.pick("bullet", ("•", "•", "–", "-", "*"))
    block = Bullets(layout="bullets", traits=("under headings",), columns=columns)
    slipped = _options_in_line(studio, items)
    for number, (mark, name) in enumerate(names.items()):
        own = [item for item in items if mark in item.marks and item not in slipped]
        texts = [_scoped(studio, item, mark) for item in own] + (list(rest[number::3]) if own or mark == "S" else [])
        if mark == "S":
            way = studio.speaker.pick("if equipped", studio.words.texts("if_equipped"))
            texts += [way.format(f=item.piece.text) for item in slipped]
            for item in slipped:
                says = tuple(replace(said, availability="optional") for said in item.piece.says)
                block.state(0, Piece(item.piece.text, says), ("option said in the line",))
        if not texts:
            continue
        studio.rng.shuffle(texts)
        block.items += [("", studio.speaker.pick(("heading", name), studio.words.texts("headings", name)))]
        block.items += [(sign, text) for text in texts]
        for item in own:
            named = ("van named in the line",) if set(item.marks) != {mark} else ()
            for place, other in enumerate(item.marks):
                if other == mark:
                    says = tuple(replace(said, availability=AVAILABILITY[mark]) for said in item.piece.says)
                    block.state(place, Piece(item.piece.text, says), named)
    if len(studio.family.vans) == 1 and studio.rng.random() < 0.4:
        _not_fitted(studio, block, sign)
    return [block]


def _options_in_line(studio: Studio, items: Sequence[Item]) -> list[Item]:
    """Give options that stand among the standard equipment and say themselves that they are options."""
    if len(studio.family.vans) > 1 or not studio.speaker.chance("options in line", 0.3):
        return []
    return [item for item in items if item.marks == ("O",)][:2]


def _not_fitted(studio: Studio, block: Bullets, sign: str) -> None:
    """Add a list of what this van does without."""
    kinds = list(studio.words.book["absent"])
    studio.rng.shuffle(kinds)
    made: list[tuple[str, str]] = []
    for kind in kinds:
        name, _, value = kind.partition("=")
        said = Said(name, value, traits=("under a heading of absence",))
        if len(made) == 3 or not studio.ledger.fits(0, (said,), "standard"):
            continue
        words = studio.speaker.pick(("absent", kind), studio.words.texts("absent", kind))
        text = capital(words.format(T=studio.speaker.tank(kind)))
        studio.ledger.add(0, (said,))
        block.state(0, Piece(text, (said,)))
        made.append((sign, text))
    if made:
        head = studio.speaker.pick(("heading", "absent"), studio.words.texts("headings", "absent"))
        block.items += [("", head), *made]


def _scoped(studio: Studio, item: Item, mark: str) -> str:
    """Give an item's words, with the vans named for which alone it stands under this heading."""
    if set(item.marks) == {mark}:
        return item.piece.text
    vans = [studio.family.vans[place].code for place, other in enumerate(item.marks) if other == mark]
    way = studio.speaker.pick("only on", studio.words.texts("only_on"))
    return str(way.format(f=item.piece.text, van=", ".join(vans)))


def price_list(studio: Studio, items: Sequence[Item]) -> Pairs:
    """Give options with their prices, for all vans alike."""
    style = studio.rng.choice(("leaders", "tabs", "ruled", "colon"))
    block = Pairs(layout="option_prices", style=style)
    lines = [(item.piece.text, studio.chatter.price()) for item in items]
    lines += [(text, studio.chatter.price()) for text in studio.chatter.features(studio.rng.randint(2, 4))]
    studio.rng.shuffle(lines)
    block.rows = lines
    for item in items:
        state_item(block, item)
    return block


def packages(studio: Studio, drawn: Sequence[Sequence[Item]]) -> Cards:
    """Give packages: each with the price for each van, that it is included there, or not available."""
    block = Cards(layout="packages")
    words = studio.words.book["price_words"]
    titles = studio.rng.sample(studio.words.texts("package_names"), len(drawn))
    for title, items in zip(titles, drawn, strict=True):
        marks = items[0].marks
        price = studio.chatter.price()
        shown = {"S": words["included"], "O": price, "N": words["not_available"]}
        if set(marks) == {"O"}:
            line = price if len(marks) == 1 else f"{words['both']}: {price}"
        else:
            parts = [f"{studio.family.vans[place].code}: {shown[mark]}" for place, mark in enumerate(marks)]
            line = " · ".join(parts)
            block.traits = ("package differs by van",)
        texts = [item.piece.text for item in items] + studio.chatter.features(1)
        block.cards.append(Card(title, line, tuple(texts)))
        for item in items:
            state_item(block, item)
    return block
