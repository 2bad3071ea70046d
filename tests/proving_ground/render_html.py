"""Brochures as saved web pages, and the same printed to PDF by headless Chromium."""

from __future__ import annotations

import html
import re
import shutil
import subprocess
import tempfile
from collections.abc import Sequence
from pathlib import Path

from tests.proving_ground.pages import (
    Aside,
    Beside,
    Block,
    Bullets,
    Cards,
    Cell,
    Draft,
    Grid,
    Heading,
    Look,
    Pairs,
    Para,
    Title,
)
from tests.proving_ground.studio import Studio
from tests.proving_ground.vans import draw_family

CHROMIUM = ("chromium", "chromium-browser", "google-chrome")
FLAGS = (
    "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
    "--disable-background-networking", "--disable-component-update", "--disable-sync", "--no-pdf-header-footer",
)  # fmt: skip
SECONDS = 60
DATES = re.compile(rb"/(CreationDate|ModDate) \(D:\d{14}")
STYLE = """
body { font-family: %(font)s; font-size: %(size)spt; margin: 0; color: #111; }
.sheet { page-break-after: always; position: relative; overflow: hidden; zoom: %(zoom)s; }
.sheet:last-child { page-break-after: auto; }
h1 { font-size: 20pt; color: %(accent)s; margin: 0 0 4pt; }
h2, tr.group { letter-spacing: %(spaced)s; } h2 { font-size: 14pt; color: %(accent)s; margin: 8pt 0 5pt; }
h3 { font-size: 11pt; margin: 6pt 0 3pt; } p { margin: 0 0 6pt; } .small { font-size: 7pt; }
table { border-collapse: collapse; width: 100%%; margin-bottom: 6pt; }
td, th { padding: 2pt 4pt; text-align: left; vertical-align: top; }
table.ruled td, table.ruled th { border: 0.5pt solid #777; } table.zebra tr:nth-child(even) td { background: #eef0f2; }
th.turned span { writing-mode: vertical-rl; transform: rotate(180deg); white-space: nowrap; }
.line { display: flex; } .line .dots { flex: 1; border-bottom: 1pt dotted #555; margin: 0 3pt 3pt; }
.columns { column-gap: 18pt; } .beside { display: flex; gap: 18pt; } .beside > div { flex: 1; }
.cards { display: flex; flex-wrap: wrap; gap: 10pt; } .card { width: 44%%; border: 0.5pt solid #777; padding: 6pt; }
.running { font-size: 7.5pt; margin-bottom: 8pt; } .foot { font-size: 7.5pt; text-align: center; margin-top: 8pt; }
ul.plain { list-style: none; padding-left: 0; margin: 0; } .hidden { display: none; }
@page { size: %(paper)s; margin: 14mm; }
"""


def page(draft: Draft) -> bytes:
    """Give a draft as a saved web page: one long page without running heads."""
    body = "".join(_block(block, draft.look) for one in draft.pages for block in one.blocks)
    return _document(draft, body, 1.0).encode()


def printed(draft: Draft) -> bytes:
    """Give a draft as PDF printed by Chromium, one sheet for each page, smaller where a page would overflow.

    Raises:
        FileNotFoundError: Chromium is not installed.
        RuntimeError: it fails, or the pages do not fit at any size.
    """
    for zoom in (1.0, 0.85, 0.7, 0.55):
        data = _chromium(_document(draft, "".join(_sheet(draft, number) for number in range(len(draft.pages))), zoom))
        if _page_count(data) == len(draft.pages):
            return DATES.sub(rb"/\1 (D:20260101000000", data)
    raise RuntimeError("the pages do not fit on as many sheets")


def dress(draft: Draft, studio: Studio) -> None:
    """Add what a saved page carries besides its matter: menu, cookie line, hidden draft, script, comments."""
    words, chatter = studio.words, studio.chatter
    last = studio.house.figure("volume", studio.rng.randint(170, 200)).text
    label = studio.speaker.label("fresh_tank_l").text
    aside = Aside(
        nav=[str(text) for text in words.book["nav"]], hidden=f"{label}: {last}",
        script=f'var spec = {{"fresh_water": "{last}", "gray_water": "{last}"}};', cookie=str(words.book["cookie"]),
    )  # fmt: skip
    draft.pages[0].blocks.insert(0, aside)
    end = draft.pages[-1].blocks
    if studio.rng.random() < 0.5:
        other = draw_family(studio.rng, studio.region, 1).vans[0]
        said = {
            "mass": studio.house.figure("mass", other.has["gvwr_kg"]).text,
            "water": studio.house.figure("volume", other.has["fresh_tank_l"]).text,
        }
        card = studio.rng.choice(words.texts("also_card")).format(model=other.model, beds=other.has["sleeps"], **said)
        end += [studio.heading("also", 2), Para(text=card)]
    if studio.rng.random() < 0.5:
        end += [studio.heading("comments", 2), Para(text=chatter.comment()), Para(text=chatter.comment())]


def _page_count(data: bytes) -> int:
    return len(re.findall(rb"/Type\s*/Page\b(?!s)", data))


def _chromium(text: str) -> bytes:
    program = next((found for name in CHROMIUM if (found := shutil.which(name))), None)
    if program is None:
        raise FileNotFoundError("Chromium is not installed")
    with tempfile.TemporaryDirectory() as folder:
        source, target = Path(folder, "page.html"), Path(folder, "page.pdf")
        source.write_text(text, encoding="utf-8")
        call = [program, *FLAGS, f"--user-data-dir={folder}/profile", f"--print-to-pdf={target}", source.as_uri()]
        done = subprocess.run(call, capture_output=True, timeout=SECONDS, check=False)
        if not target.is_file():
            raise RuntimeError(f"Chromium gave no PDF: {done.stderr[-300:].decode(errors='replace')}")
        return target.read_bytes()


def _document(draft: Draft, body: str, zoom: float) -> str:
    look = draft.look
    paper = ("letter" if look.letter else "A4") + (" landscape" if look.landscape else "")
    font = "Liberation Sans, DejaVu Sans, sans-serif" if look.font == "Helvetica" else "DejaVu Serif, serif"
    style = STYLE % {
        "spaced": "0.18em" if look.spaced else "normal", "font": font, "size": look.size, "accent": look.accent,
        "zoom": zoom, "paper": paper,
    }  # fmt: skip
    head = f'<meta charset="utf-8"><title>{html.escape(draft.title)}</title><style>{style}</style>'
    return f'<!DOCTYPE html>\n<html lang="{draft.language}">\n<head>{head}</head>\n<body>\n{body}\n</body>\n</html>\n'


def _sheet(draft: Draft, number: int) -> str:
    one = draft.pages[number]
    head = f'<div class="running">{html.escape(one.running_head)}</div>' if one.running_head else ""
    foot = f'<div class="foot">{html.escape(one.foot)}</div>' if one.foot else ""
    return f'<div class="sheet">{head}{"".join(_block(block, draft.look) for block in one.blocks)}{foot}</div>\n'


def _block(block: Block, look: Look) -> str:
    if isinstance(block, Title):
        lines = "".join(f"<p>{html.escape(line)}</p>" for line in block.lines[1:])
        return f"<h1>{html.escape(block.lines[0])}</h1>{lines}\n"
    if isinstance(block, Heading):
        level = block.level + 1
        return f"<h{level}>{html.escape(block.text)}</h{level}>\n"
    if isinstance(block, Para):
        return f"<p{' class=small' if block.small else ''}>{html.escape(block.text)}</p>\n"
    if isinstance(block, Grid):
        return _grid(block, look)
    if isinstance(block, Pairs):
        return _pairs(block)
    if isinstance(block, Bullets):
        return _bullets(block)
    if isinstance(block, Cards):
        return f'<div class="cards">{"".join(_card(card) for card in block.cards)}</div>\n'
    if isinstance(block, Beside):
        sides = [f"<div>{''.join(_block(one, look) for one in side)}</div>" for side in (block.left, block.right)]
        return f'<div class="beside">{"".join(sides)}</div>\n'
    if isinstance(block, Aside):
        return _aside(block)
    return ""


def _fitting(grid: Grid, look: Look) -> float:
    """Give a type size at which the longest words of all columns fit beside each other on the sheet."""
    room = (690 if look.landscape else 510) - 9.0 * grid.columns
    longest = [1] * grid.columns
    for row in (*grid.heads, *grid.rows):
        place = 0
        for cell in row:
            if cell.span == 1:
                longest[place] = max(longest[place], *(len(word) for word in [*cell.text.split(" "), ""]))
            place += cell.span
    return max(4.0, min(look.size, room / (0.6 * sum(longest))))


def _grid(grid: Grid, look: Look) -> str:
    size = _fitting(grid, look)
    names = " ".join(name for name, on in (("ruled", grid.ruled), ("zebra", grid.zebra)) if on)
    rows = [f"<tr>{_cells(row, 'th', grid)}</tr>" for row in grid.heads]
    for at, row in enumerate(grid.rows):
        kind = " class=group" if row[0].span == grid.columns else ""
        rows.append(f"<tr{kind}>{_first(grid, at)}{_cells(row[1:] if _grouped(grid) else row, 'td', grid)}</tr>")
    return f'<table class="{names}" style="font-size:{size:.1f}pt">{"".join(rows)}</table>\n'


def _grouped(grid: Grid) -> bool:
    return "group columns" in grid.traits


def _first(grid: Grid, at: int) -> str:
    """Give the cell that names a group, over all the rows of its group; nothing on the further rows."""
    if not _grouped(grid) or not grid.rows[at][0].text:
        return ""
    below = next((n for n, row in enumerate(grid.rows[at + 1 :], 1) if row[0].text), len(grid.rows) - at)
    return f'<td rowspan="{below}">{html.escape(grid.rows[at][0].text)}</td>'


def _cells(row: Sequence[Cell], tag: str, grid: Grid) -> str:
    made = []
    for place, cell in enumerate(row):
        span = f' colspan="{cell.span}"' if cell.span > 1 else ""
        span += ' style="text-align:center"' if 1 < cell.span < grid.columns else ""
        text = html.escape(cell.text)
        if tag == "th" and grid.rotated and place:
            made.append(f'<th class="turned"{span}><span>{text}</span></th>')
            continue
        kind = "th" if cell.span == grid.columns else tag
        made.append(f"<{kind}{span}>{text}</{kind}>")
    return "".join(made)


def _pairs(block: Pairs) -> str:
    made = []
    for label, value in block.rows:
        name, words = html.escape(label), html.escape(value)
        if not label:
            made.append(f"</dl><h3>{words}</h3><dl>" if block.style == "tabs" else f"<h3>{words}</h3>")
        elif block.style == "leaders":
            made.append(f'<div class="line"><span>{name}</span><span class="dots"></span><span>{words}</span></div>')
        elif block.style == "ruled":
            made.append(f'<table class="ruled"><tr><td style="width:48%">{name}</td><td>{words}</td></tr></table>')
        elif block.style == "tabs":
            made.append(f'<div style="display:flex"><dt style="width:48%">{name}</dt><dd>{words}</dd></div>')
        else:
            made.append(f"<p><b>{name}:</b> {words}</p>")
    text = "".join(made)
    if block.style == "ruled":
        text = text.replace('</table><table class="ruled">', "")
    return f"<dl>{text}</dl>\n".replace("<dl></dl>", "") if block.style == "tabs" else f"<div>{text}</div>\n"


def _bullets(block: Bullets) -> str:
    made = []
    for sign, text in block.items:
        words = html.escape(text)
        made.append(f"<li>{html.escape(sign)} {words}</li>" if sign else f"</ul><h3>{words}</h3><ul class=plain>")
    columns = f' class="columns" style="column-count:{block.columns}"' if block.columns > 1 else ""
    return f"<div{columns}><ul class=plain>{''.join(made)}</ul></div>\n".replace("<ul class=plain></ul>", "")


def _card(card: object) -> str:
    items = "".join(f"<li>{html.escape(text)}</li>" for text in card.items)  # type: ignore[attr-defined]
    title, price = html.escape(card.title), html.escape(card.price)  # type: ignore[attr-defined]
    return f'<div class="card"><h3>{title}</h3><p>{price}</p><ul>{items}</ul></div>'


def _aside(block: Aside) -> str:
    links = "".join(f'<a href="#">{html.escape(text)}</a> ' for text in block.nav)
    return (
        f"<nav>{links}</nav>\n<script>{block.script}</script>\n"
        f'<div class="hidden">{html.escape(block.hidden)}</div>\n'
        f'<div class="cookie-banner" role="dialog">{html.escape(block.cookie)}</div>\n'
    )
