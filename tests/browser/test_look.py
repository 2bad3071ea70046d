"""What page and sheet look like: they load, show pictures, fit the screen, can be read and heard, and print."""

import io

import pypdfium2
import pytest
from PIL import Image

from tests.reports.made_page import HOSTILE

PHONE = {"viewport": {"width": 360, "height": 740}}
LEAST_CONTRAST = 4.5  # WCAG 2.2, success criterion 1.4.3, level AA, text of normal size
CONTRASTS = """() => {
  const canvas = document.createElement("canvas").getContext("2d", { willReadFrequently: true });
  const rgba = (color) => {
    canvas.clearRect(0, 0, 1, 1); canvas.fillStyle = color; canvas.fillRect(0, 0, 1, 1);
    return canvas.getImageData(0, 0, 1, 1).data;
  };
  const light = (color) => {
    const linear = (v) => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
    const [r, g, b] = [...color].slice(0, 3).map((v) => linear(v / 255));
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const seen = new Map();
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const element = node.parentElement;
    if (!node.data.trim() || !element.checkVisibility()) continue;
    const front = getComputedStyle(element).color;
    let ground = element;
    while (ground && rgba(getComputedStyle(ground).backgroundColor)[3] === 0) ground = ground.parentElement;
    const back = ground ? getComputedStyle(ground).backgroundColor : "white";
    const [one, two] = [light(rgba(front)), light(rgba(back))].sort((a, b) => b - a);
    seen.set(`${front} on ${back}: ${node.data.trim().slice(0, 40)}`, (one + 0.05) / (two + 0.05));
  }
  return [...seen];
}"""  # the formula of WCAG 2.2, definition of contrast ratio


def own(requests):
    """Give the requests that are for more than the file itself and pictures inside it."""
    return [url for url in requests[1:] if not url.startswith("data:")]


def test_the_page_loads_without_errors_or_requests(opened, demo_page, demo_sheet):
    for path in (demo_page, demo_sheet):
        one = opened(path)
        if path == demo_page:
            one.page.get_by_role("button", name="Points", exact=True).click()
            one.page.get_by_label("Units").select_option("us")
        assert one.complaints == []
        assert own(one.requests) == []


def test_hostile_words_are_shown_as_words(opened, made_page):
    one = opened(made_page)
    one.page.get_by_role("button", name="Open all parts").click()
    one.page.wait_for_timeout(200)
    assert one.page.evaluate("window.harmed") is None
    assert HOSTILE in one.page.locator("#van-1-season_claim q").inner_text()
    assert one.complaints == [] and own(one.requests) == []


def test_the_content_policy_stops_what_would_slip_through(opened, made_page):
    """Even a script that stood in the page would not run, and nothing can be fetched."""
    one = opened(made_page)
    one.page.evaluate(
        "() => { const s = document.createElement('script'); s.textContent = 'window.harmed = 3';"
        " document.body.append(s); const i = new Image(); i.src = 'https://example.org/x.png';"
        " document.body.append(i); }"
    )
    one.page.wait_for_timeout(200)
    assert one.page.evaluate("window.harmed") is None
    assert len(one.complaints) == 2 and all("Content Security Policy" in text for text in one.complaints)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_pictures_show_the_page_with_the_words_marked(opened, made_page, scheme):
    """White paper, dark print and the yellow mark are all to be seen."""
    page = opened(made_page, color_scheme=scheme).page
    page.get_by_role("button", name="Open all parts").click()
    shot = page.locator("#van-1-fresh_tank_l .cutting").screenshot()
    colors = list(Image.open(io.BytesIO(shot)).convert("RGB").getcolors(1 << 24))
    assert sum(n for n, (r, g, b) in colors if min(r, g, b) > 240) > 1000
    assert sum(n for n, (r, g, b) in colors if r > 220 and g > 200 and b < 200) > 500
    assert sum(n for n, (r, g, b) in colors if max(r, g, b) < 110) > 50


def test_every_kind_of_picture_in_the_demo_page_can_be_decoded(opened, demo_page):
    page = opened(demo_page).page
    broken = page.evaluate(
        """async () => {
          const links = [...document.querySelectorAll("image")].map((one) => one.getAttribute("href"));
          const decoded = await Promise.all(links.map((link) => { const i = new Image(); i.src = link;
            return i.decode().then(() => i.naturalWidth > 100 && i.naturalHeight > 10, () => false); }));
          return [links.length, decoded.filter((good) => !good).length];
        }"""
    )
    assert broken[0] > 100 and broken[1] == 0


@pytest.mark.parametrize("size", [PHONE, {"viewport": {"width": 1280, "height": 900}}], ids=["phone", "desktop"])
def test_nothing_is_wider_than_the_screen_and_no_words_overlap(opened, demo_page, demo_sheet, size):
    for path in (demo_page, demo_sheet):
        page = opened(path, **size).page
        page.evaluate(
            "() => document.querySelectorAll('article:nth-of-type(3) details,"
            " main > :not([aria-labelledby=each]) details')"
            ".forEach((one) => { one.open = true; })"
        )
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
        cut = page.evaluate(
            """() => [...document.querySelectorAll("main *, header *")].filter((one) => {
                 if (!one.checkVisibility() || one.closest(".wide, .cutting, .unseen, svg, thead")) return false;
                 const box = one.getBoundingClientRect();
                 return box.right > innerWidth + 1 || box.left < -1;
               }).map((one) => one.outerHTML.slice(0, 120))"""
        )
        assert cut == []
        overlaps = page.evaluate(
            """() => [...document.querySelectorAll("tbody tr")].flatMap((row) => {
                 if (!row.checkVisibility()) return [];
                 const boxes = [...row.cells].map((cell) => cell.getBoundingClientRect());
                 return boxes.some((a, i) => boxes.some((b, j) => i < j && a.right > b.left + 1 && b.right > a.left + 1
                   && a.bottom > b.top + 1 && b.bottom > a.top + 1)) ? [row.textContent.trim().slice(0, 80)] : [];
               })"""
        )
        assert overlaps == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_words_stand_out_from_their_ground(opened, made_page, demo_sheet, scheme):
    for path in (made_page, demo_sheet):
        page = opened(path, color_scheme=scheme).page
        page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
        pairs = page.evaluate(CONTRASTS)
        assert len(pairs) > 50
        assert [text for text, ratio in pairs if ratio < LEAST_CONTRAST] == []


def tree_of(one):
    """Give the accessibility tree: role, name and properties of each node that is not ignored."""
    session = one.context.new_cdp_session(one.page)
    nodes = session.send("Accessibility.getFullAXTree")["nodes"]
    return [
        (
            node["role"]["value"],
            node.get("name", {}).get("value", ""),
            {p["name"]: p["value"].get("value") for p in node.get("properties", [])},
        )
        for node in nodes
        if not node.get("ignored")
    ]


@pytest.mark.parametrize("size", [PHONE, {"viewport": {"width": 1280, "height": 900}}], ids=["phone", "desktop"])
def test_the_page_is_sound_for_screen_readers(opened, made_page, demo_sheet, size):
    for path in (made_page, demo_sheet):
        one = opened(path, **size)
        one.page.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
        nodes = tree_of(one)
        unnamed = [
            role for role, name, _ in nodes
            if role in ("button", "combobox", "textbox", "searchbox", "spinbutton", "link", "image", "img", "heading",
                        "region", "article", "table", "form", "columnheader", "rowheader") and not name.strip()
        ]  # fmt: skip
        assert unnamed == []
        roles = [role for role, _, _ in nodes]
        assert roles.count("main") == 1
        assert {"table", "row", "rowheader", "cell"} <= set(roles)
        # in the order of the page, in which the tree does not list its nodes
        levels = one.page.evaluate(
            "[...document.querySelectorAll('h1, h2, h3, h4, h5, h6')].filter((one) => one.checkVisibility())"
            ".map((one) => Number(one.tagName[1]))"
        )
        assert levels[0] == 1
        assert all(after <= before + 1 for before, after in zip(levels, levels[1:], strict=False))
        assert one.page.evaluate("document.documentElement.lang") == "en"


def test_a_picture_is_told_in_words(opened, made_page):
    one = opened(made_page)
    one.page.get_by_role("button", name="Open all parts").click()
    named = [name for role, name, _ in tree_of(one) if role in ("image", "img")]
    assert named == ["These words, marked on page 1"] * 3


def test_the_keyboard_reaches_every_control_in_order(opened, made_page):
    page = opened(made_page).page
    reached = []
    for _ in range(12):
        page.keyboard.press("Tab")
        reached.append(page.evaluate("document.activeElement.id || document.activeElement.textContent.trim()"))
    assert reached[0] == "Skip to the table of vans"
    wanted = ["ruleset", "equipment", "units", "Show only some vans", "Van", "Points",
              "Days of heat at the stated temperature"]  # fmt: skip
    assert [one for one in reached if one in wanted] == wanted


def test_no_figure_runs_into_the_next_column_in_print(opened, demo_page):
    page = opened(demo_page, viewport={"width": 688, "height": 970}).page  # A4 less the margins, 96 dots an inch
    page.emulate_media(media="print")
    over = page.eval_on_selector_all(
        "#table td, #table th", "cells => cells.filter(c => c.scrollWidth > c.clientWidth + 1).map(c => c.innerText)"
    )
    assert over == []


def test_figures_of_the_table_stay_in_their_column_at_every_width(opened, demo_page):
    for width in (1600, 1280, 1024, 768):
        page = opened(demo_page, viewport={"width": width, "height": 900}).page
        over = page.eval_on_selector_all(
            "#table td, #table th",
            "cells => cells.filter(c => c.scrollWidth > c.clientWidth + 1).map(c => c.innerText)",
        )
        assert over == [], width


def test_answers_of_a_sheet_stay_in_their_column(opened, demo_sheet):
    page = opened(demo_sheet, viewport={"width": 1280, "height": 900}).page
    over = page.eval_on_selector_all(
        ".ticks li", "all => all.filter(li => li.getBoundingClientRect().right > "
        "li.closest('td').getBoundingClientRect().right + 1).map(li => li.innerText)"
    )  # fmt: skip
    assert over == []


def test_the_head_of_the_table_stands_on_every_printed_page_of_it(opened, demo_page, tmp_path):
    page = opened(demo_page).page
    page.pdf(path=tmp_path / "print.pdf", format="A4")
    document = pypdfium2.PdfDocument(tmp_path / "print.pdf")
    pages = [" ".join(document[n].get_textpage().get_text_range().split()) for n in range(len(document))]
    last = next(n for n, text in enumerate(pages) if "The largest unknown is reckoned" in text)
    with_rows = [text for text in pages[: last + 1] if "no order with" in text]
    assert len(with_rows) >= 3
    assert all("Against the others" in text and "What ends the stay" in text for text in with_rows)


def test_the_print_has_the_table_the_open_parts_and_the_cautions(opened, made_page, tmp_path):
    page = opened(made_page).page
    page.evaluate("document.querySelector('article details:not([hidden])').open = true")
    page.pdf(path=tmp_path / "print.pdf", format="A4")
    document = pypdfium2.PdfDocument(tmp_path / "print.pdf")
    printed = "\n".join(document[n].get_textpage().get_text_range() for n in range(len(document)))
    text = " ".join(printed.split())  # words of a narrow column stand on lines of their own
    assert "No safety certificate" in text and "Tolland Coldbeck 17" in text
    assert "Why, and on what it rests" in text and "Judged by" not in text and "Open all parts" not in text


def test_each_van_of_a_sheet_begins_a_printed_page(opened, demo_sheet, tmp_path):
    page = opened(demo_sheet).page
    titles = page.locator("h1 bdi").all_inner_texts()
    page.pdf(path=tmp_path / "sheet.pdf", format="A4")
    document = pypdfium2.PdfDocument(tmp_path / "sheet.pdf")
    heads = [document[n].get_textpage().get_text_range()[:200] for n in range(len(document))]
    begun = [head for head in heads if "Walk-around sheet" in head]
    assert len(begun) == len(titles) > 20
    assert all(title in " ".join(head.split()) for title, head in zip(titles, begun, strict=True))
