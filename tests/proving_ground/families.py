"""Layout families: how a whole brochure is built around one way of printing a specification."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from tests.proving_ground.absences import absences
from tests.proving_ground.grids import (
    MatrixWay,
    half_way,
    marks_matrix,
    matrix,
    models_as_rows,
    price_matrix,
    two_units,
)
from tests.proving_ground.lists import bullet_list, packages, pairs, price_list
from tests.proving_ground.notes import Notes
from tests.proving_ground.pages import Beside, Block, Heading, Page, Pairs, Para
from tests.proving_ground.prose import clauses, for_all, options_sentence, paragraph, prose_kinds
from tests.proving_ground.rows import Row
from tests.proving_ground.splits import facing_pages, two_tables
from tests.proving_ground.studio import Studio
from tests.proving_ground.talk import letter, questions, sisters

Groups = Sequence[tuple[str, list[Row]]]
Family = Callable[[Studio, bool], list[Page]]


def _cover(studio: Studio, vans: bool = True) -> list[Block]:
    """Give what opens a brochure: title, stories, and now and then what every van has."""
    blocks: list[Block] = [studio.title(vans)]
    if (named := studio.names.sentence()) is not None:
        blocks.append(named)
    if studio.rng.random() < 0.7:
        blocks.append(studio.heading("story", 2))
        blocks.append(Para(text=" ".join(studio.chatter.story() for _ in range(2))))
    if len(studio.family.vans) > 1 and studio.rng.random() < 0.4:
        said = for_all(studio, ["season_claim", "shore_power_a", "engine_fuel", "width_mm"], 2)
        if said is not None:
            blocks.append(said)
    return blocks


def _closing(studio: Studio) -> list[Block]:
    blocks: list[Block] = []
    if studio.rng.random() < 0.4:
        blocks.append(Para(text=studio.chatter.sentence()))
    return [*blocks, studio.small_print()]


def _paged(studio: Studio, pages: Sequence[list[Block]]) -> list[Page]:
    """Give pages with running heads and feet, as the house prints them, and now and then a saying in large type."""
    if len(pages) > 1 and studio.rng.random() < 0.15:
        pages[1].insert(0, Heading(text=studio.rng.choice(studio.words.texts("slogans"))))
    return studio.names.edges(pages)


def _extras(studio: Studio, web: bool) -> list[Block]:
    """Give a further part: marks, prices, packages or bullets with options; often none."""
    roll = studio.rng.random()
    count = studio.rng.randint(4, 9)
    several = len(studio.family.vans) > 1
    if roll < 0.3 and several:
        return [studio.heading("equipment"), *_marks(studio, web, count)]
    if roll < 0.5:
        return [studio.heading("prices"), price_list(studio, studio.equipment.items(count, "O", all_vans=True))]
    if roll < 0.65:
        return _packages(studio)
    if roll < 0.85:
        items = studio.equipment.items(count, "SO", all_vans=not several)
        return [*bullet_list(studio, items, web, 1, headed=True)]
    return []


def _marks(studio: Studio, web: bool, count: int) -> list[Block]:
    way = MatrixWay(ruled=studio.rng.random() < 0.5, zebra=studio.rng.random() < 0.5)
    return marks_matrix(studio, studio.equipment.items(count), web, way)


def _packages(studio: Studio) -> list[Block]:
    drawn = []
    vans = len(studio.family.vans)
    for _ in range(studio.rng.choice((2, 2, 4))):
        marks = ["O"] * vans
        if vans > 1 and studio.rng.random() < 0.6:
            marks[studio.rng.randrange(vans)] = studio.rng.choice("SN")
        items = studio.equipment.package(studio.rng.randint(2, 5), tuple(marks))
        if items:
            drawn.append(items)
    return [studio.heading("packages"), packages(studio, drawn)] if drawn else []


def _with_notes(studio: Studio, groups: Groups, spans: bool, share: float) -> Notes:
    notes = Notes(studio)
    if studio.rng.random() < share:
        notes.basis(groups)
    if spans and studio.rng.random() < share:
        notes.override(groups)
    if studio.rng.random() < share * 0.7:
        notes.added({row.kind for _, rows in groups for row in rows})
    return notes


def _matrix_family(way: MatrixWay, notes_share: float = 0.15) -> Family:
    def build(studio: Studio, web: bool) -> list[Page]:
        rng = studio.rng
        studio.look.landscape = len(studio.family.vans) > 3 and rng.random() < 0.6
        own = MatrixWay(
            way.layout, way.ruled, way.zebra or (not way.ruled and rng.random() < 0.5), way.heads,
            rng.choice(("row", "row", "none", "column")), way.spans or rng.random() < 0.2, way.split,
            way.per_page if way.split else rng.choice((26, 32)) if not studio.look.landscape else 18,
        )  # fmt: skip
        cover = _cover(studio)
        groups = studio.plan(rng.choice((0.55, 0.7, 0.85)))
        notes = _with_notes(studio, groups, own.spans, notes_share)
        tables = matrix(studio, groups, own)
        note = notes.block()
        if note is not None:
            tables[-1].append(note)
        extras = _extras(studio, web)
        pages = [[*cover], *([studio.heading("specs"), *blocks] for blocks in tables)]
        if extras:
            pages.append(extras)
        pages[-1] += _closing(studio)
        if len(tables) == 1 and rng.random() < 0.3:
            pages = [[*pages[0], *pages[1]], *pages[2:]]
        return _paged(studio, pages)

    return build


def _half_way(studio: Studio, web: bool) -> list[Page]:
    """Give one table whose heads change half way down: the first vans above, the others below."""
    cover = _cover(studio)
    groups = studio.plan(studio.rng.choice((0.3, 0.45)))
    grid = half_way(studio, groups)
    pages: list[list[Block]] = [cover, [studio.heading("specs"), *grid]]
    extras = _extras(studio, web)
    if extras:
        pages.append(extras)
    pages[-1] += _closing(studio)
    return _paged(studio, pages)


def _two_units(studio: Studio, web: bool) -> list[Page]:
    """Give the sheet of one van with its figures in two systems of units, each in a column of its own."""
    cover = _cover(studio)
    studio.rows.unit_place = "cell"
    studio.rows.options_in_cells = False
    groups = studio.plan(studio.rng.choice((0.6, 0.75)))
    pages: list[list[Block]] = [[*cover, studio.heading("specs"), two_units(studio, groups)]]
    extras = _extras(studio, web)
    if extras:
        pages.append(extras)
    pages[-1] += _closing(studio)
    return _paged(studio, pages)


def _models_as_rows(studio: Studio, web: bool) -> list[Page]:
    studio.look.landscape = True
    cover = _cover(studio)
    groups = studio.plan(studio.rng.choice((0.4, 0.55)))
    notes = _with_notes(studio, groups, False, 0.3)
    tables = models_as_rows(studio, groups, studio.rng.random() < 0.5)
    note = notes.block()
    pages: list[list[Block]] = [cover]
    for start in range(0, len(tables), 2):
        pages.append([studio.heading("specs"), *tables[start : start + 2]])
    pages[-1] += [note] if note else []
    extras = _extras(studio, web)
    if extras:
        pages.append(extras)
    pages[-1] += _closing(studio)
    return _paged(studio, pages)


def _list_family(style: str, layout: str) -> Family:
    def build(studio: Studio, web: bool) -> list[Page]:
        rng = studio.rng
        cover = _cover(studio)
        groups = studio.plan(rng.choice((0.5, 0.65)))
        notes = _with_notes(studio, groups, False, 0.2)
        block = pairs(studio, groups, 0, style, layout)
        note = notes.block()
        chunks = _cut(block, 34)
        pages: list[list[Block]] = [cover] if rng.random() < 0.5 else []
        for number, chunk in enumerate(chunks):
            pages.append([*([] if pages or number else cover), studio.heading("specs"), chunk])
        pages[-1] += [note] if note else []
        extras = _extras(studio, web)
        if extras:
            pages.append(extras)
        pages[-1] += _closing(studio)
        return _paged(studio, pages)

    return build


def _cut(block: Pairs, most: int) -> list[Pairs]:
    """Give a list in parts of at most so many lines, each with the statements of its own lines."""
    if len(block.rows) <= most:
        return [block]
    half = -(-len(block.rows) // 2)
    parts = []
    for rows in (block.rows[:half], block.rows[half:]):
        values = [value for _, value in rows]
        claims = [claim for claim in block.claims if claim.words in values]
        parts.append(Pairs(layout=block.layout, traits=block.traits, claims=claims, rows=rows, style=block.style))
    return parts


def _side_by_side(studio: Studio, web: bool) -> list[Page]:
    cover = _cover(studio)
    groups = studio.plan(studio.rng.choice((0.5, 0.7)))
    style = studio.rng.choice(("tabs", "colon", "ruled", "leaders"))
    half = max(1, len(groups) // 2)
    left: list[Block] = [pairs(studio, groups[:half], 0, style, "side_by_side")]
    if studio.rng.random() < 0.6:
        right: list[Block] = [pairs(studio, groups[half:], 0, style, "side_by_side")]
    else:
        items = studio.equipment.items(studio.rng.randint(4, 8), "SO", all_vans=True)
        right = [Para(text=studio.chatter.story()), *bullet_list(studio, items, web, 1, headed=True)]
        for block in right:
            if block.layout == "bullets":
                block.layout = "side_by_side"
        left.append(pairs(studio, groups[half:], 0, style, "side_by_side"))
    beside = Beside(left=left, right=right, narrow=0.5)
    pages: list[list[Block]] = [cover, [studio.heading("specs"), beside, *_closing(studio)]]
    return _paged(studio, pages)


def _mirrored(studio: Studio, web: bool) -> list[Page]:
    cover = _cover(studio)
    groups = studio.plan(studio.rng.choice((0.35, 0.5)))
    style = studio.rng.choice(("colon", "tabs", "colon"))
    sides: list[list[Block]] = []
    for place, van in enumerate(studio.family.vans[:2]):
        head = Heading(text=van.model, level=2, layout="mirrored_columns")
        studio.name_van(head, place)
        sides.append([head, pairs(studio, groups, place, style, "mirrored_columns")])
    beside = Beside(left=sides[0], right=sides[1])
    extras = _extras(studio, web)
    pages: list[list[Block]] = [cover, [studio.heading("specs"), beside]]
    if extras:
        pages.append(extras)
    pages[-1] += _closing(studio)
    return _paged(studio, pages)


def _bullets(studio: Studio, web: bool) -> list[Page]:
    rng = studio.rng
    cover = _cover(studio)
    several = len(studio.family.vans) > 1
    headed = several or rng.random() < 0.5
    kinds = prose_kinds()
    groups: list[tuple[str, list[Row]]] = []
    if rng.random() < 0.4:
        groups = studio.plan(0.3)
    plain = studio.equipment.items(rng.randint(5, 10), "S", _bullet_kinds(studio, kinds), all_vans=True)
    marked = studio.equipment.items(rng.randint(6, 12), "SO" if several else "SON", all_vans=not several)
    columns = rng.choice((1, 2, 2, 3)) if not studio.look.landscape else 3
    blocks = bullet_list(studio, [*plain, *marked], web, columns, headed)
    pages: list[list[Block]] = [[*cover, studio.heading("equipment"), *blocks]]
    if groups:
        pages.append([studio.heading("specs"), *matrix(studio, groups, MatrixWay())[0]])
    pages[-1] += _closing(studio)
    return _paged(studio, pages)


def _bullet_kinds(studio: Studio, kinds: Sequence[str]) -> list[str]:
    """Give kinds that are alike on all vans and make sense in a bullet."""
    vans = studio.family.vans
    skip = ("season_claim", "insulated_surfaces", "insulation_r_si", "heater_consumption_l_h", "heater_power_draw_w")
    found = []
    for kind in kinds:
        if kind in skip or any(van.has.get(kind) != vans[0].has.get(kind) for van in vans):
            continue
        value = vans[0].has.get(kind)
        if value in ("no", 0) and kind not in ("black_tank_l",) or kind in ("black_tank_l",) and studio.region != "us":
            continue
        if kind.startswith("black_tank_") and kind != "black_tank_l" and not studio.family.black_water:
            continue
        found.append(kind)
    studio.rng.shuffle(found)
    return found


def _prose(studio: Studio, web: bool) -> list[Page]:
    rng = studio.rng
    blocks = _cover(studio)
    kinds = prose_kinds()
    for place in range(len(studio.family.vans)):
        pieces = clauses(studio, place, kinds, rng.choice((0.35, 0.5)))
        size = rng.choice((4, 6, 8))
        for start in range(0, len(pieces), size):
            blocks.append(paragraph(studio, place, pieces[start : start + size]))
    if len(studio.family.vans) == 1 and rng.random() < 0.6:
        items = studio.equipment.items(rng.randint(2, 4), "O")
        if items:
            blocks.append(options_sentence(studio, items))
    if rng.random() < 0.35:
        return _paged(studio, [_two_columns(blocks), _closing(studio)])
    half = len(blocks) // 2 + 1
    pages = [blocks[:half], [*blocks[half:], *_closing(studio)]] if len(blocks) > 9 else [[*blocks, *_closing(studio)]]
    return _paged(studio, pages)


def _two_columns(blocks: Sequence[Block]) -> list[Block]:
    """Give the paragraphs in two columns under the title."""
    paragraphs = list(blocks[1:])
    half = -(-len(paragraphs) // 2)
    return [blocks[0], Beside(left=paragraphs[:half], right=paragraphs[half:])]


def _prices(studio: Studio, web: bool) -> list[Page]:
    rng = studio.rng
    cover = _cover(studio)
    groups = studio.plan(rng.choice((0.35, 0.5)))
    base = [studio.heading("base_equipment"), *_base(studio, groups)]
    items = studio.equipment.items(rng.randint(7, 13), "O" if rng.random() < 0.6 else "SON")
    if all(set(item.marks) == {"O"} for item in items):
        options: Block = price_list(studio, items)
    else:
        options = price_matrix(studio, items)
    pages: list[list[Block]] = [[*cover, *base], [studio.heading("prices"), options, *_closing(studio)]]
    return _paged(studio, pages)


def _base(studio: Studio, groups: Groups) -> list[Block]:
    if len(studio.family.vans) == 1:
        style = studio.rng.choice(("colon", "tabs", "ruled"))
        return [pairs(studio, groups, 0, style, f"list_{style}")]
    return [block for blocks in matrix(studio, groups, MatrixWay(per_page=60)) for block in blocks]


def _package_family(studio: Studio, web: bool) -> list[Page]:
    cover = _cover(studio)
    groups = studio.plan(studio.rng.choice((0.35, 0.5)))
    base = [studio.heading("base_equipment"), *_base(studio, groups)]
    pages: list[list[Block]] = [[*cover, *base], [*_packages(studio), *_closing(studio)]]
    return _paged(studio, pages)


def _marks_family(studio: Studio, web: bool) -> list[Page]:
    rng = studio.rng
    cover = _cover(studio)
    groups = studio.plan(rng.choice((0.3, 0.45)))
    tables = matrix(studio, groups, MatrixWay(per_page=34, ruled=rng.random() < 0.5))
    marked = _marks(studio, web, rng.randint(9, 16))
    pages: list[list[Block]] = [cover, *([studio.heading("specs"), *blocks] for blocks in tables)]
    pages.append([studio.heading("equipment"), *marked, *_closing(studio)])
    return _paged(studio, pages)


# Family: how it is built, how many vans it can show (least, most), and which renderers it is for.
PDF = ("reportlab", "reportlab", "chromium")
ALL = (*PDF, "html", "text", "markdown")
FAMILIES: dict[str, tuple[Family, tuple[int, int], tuple[str, ...]]] = {
    "matrix_ruled": (_matrix_family(MatrixWay("matrix_ruled")), (2, 5), ALL),
    "matrix_borderless": (_matrix_family(MatrixWay("matrix_borderless", ruled=False)), (2, 5), (*PDF, "html", "text")),
    "matrix_stacked_heads": (
        _matrix_family(MatrixWay("matrix_stacked_heads", heads="stacked")),
        (2, 4),
        (*PDF, "html"),
    ),
    "matrix_chassis_heads": (
        _matrix_family(MatrixWay("matrix_chassis_heads", heads="chassis above")),
        (2, 4),
        (*PDF, "html"),
    ),
    "matrix_rotated_heads": (_matrix_family(MatrixWay("matrix_rotated_heads", heads="rotated")), (2, 5), PDF),
    "matrix_spans": (_matrix_family(MatrixWay("matrix_spans", spans=True), 0.5), (2, 5), (*PDF, "html")),
    "matrix_continued_heads": (
        _matrix_family(MatrixWay("matrix_continued_heads", split="heads", per_page=22)),
        (2, 4),
        PDF,
    ),
    "matrix_continued_bare": (
        _matrix_family(MatrixWay("matrix_continued_bare", split="bare", per_page=22)),
        (2, 4),
        PDF,
    ),
    "matrix_heads_half_way": (_half_way, (4, 4), (*PDF, "html")),
    "two_units": (_two_units, (1, 1), (*PDF, "html")),
    "models_as_rows": (_models_as_rows, (2, 5), (*PDF, "html", "markdown")),
    "list_leaders": (_list_family("leaders", "list_leaders"), (1, 1), (*PDF, "text")),
    "list_colon": (_list_family("colon", "list_colon"), (1, 1), ALL),
    "list_tabs": (_list_family("tabs", "list_tabs"), (1, 1), (*PDF, "text")),
    "list_ruled": (_list_family("ruled", "list_ruled"), (1, 1), ALL),
    "side_by_side": (_side_by_side, (1, 1), PDF),
    "mirrored_columns": (_mirrored, (2, 2), PDF),
    "bullets": (_bullets, (1, 3), ALL),
    "prose": (_prose, (1, 3), ALL),
    "questions": (questions, (1, 1), ALL),
    "letter": (letter, (1, 1), ALL),
    "sisters": (sisters, (2, 3), ALL),
    "option_prices": (_prices, (1, 4), ALL),
    "packages": (_package_family, (1, 3), (*PDF, "html")),
    "marks_matrix": (_marks_family, (2, 5), (*PDF, "html", "text")),
    "absences": (absences, (1, 1), ALL),
    "two_tables": (two_tables, (2, 4), ALL),
    "facing_pages": (facing_pages, (2, 5), PDF),
    "footnotes": (_matrix_family(MatrixWay("matrix_spans", spans=True), 1.0), (2, 4), (*PDF, "html")),
}
