"""Web pages whose parts are opened by a click: accordions and tabs."""

import pytest

from specscan.reading.read import read_document

ROWS = "<ul><li><span>Fresh tank</span> <span>{} L</span></li><li><span>Waste tank</span> <span>50 L</span></li></ul>"
EXTRAS = "<ul><li>Heated floor</li><li>Awning</li></ul>"
ALONE = (
    "<div><button aria-expanded=true aria-controls=a>Tanks</button><div id=a>{rows}</div></div>"
    "<div><button aria-expanded=false aria-controls=b>Options</button><div id=b hidden>{extras}</div></div>"
)
IN_HEADINGS = (
    "<h3><button aria-expanded=true>Tanks<svg></svg></button></h3><div>{rows}</div>"
    "<h3><button aria-expanded=false>Options</button></h3><div>{extras}</div>"
)
WRAPPED = (
    "<div class=i><div class=h><a href='#' aria-expanded=true>Tanks</a></div><div>{rows}</div></div>"
    "<div class=i><div class=h><a href='#' aria-expanded=false>Options</a></div><div>{extras}</div></div>"
)
TABS = (
    "<div role=tablist><button role=tab aria-controls=t{n}>Tanks</button>"
    "<button role=tab aria-controls=u{n}>Options</button></div>"
    "<div role=tabpanel id=t{n}>{rows}</div><div role=tabpanel id=u{n}>{extras}</div>"
)


def page(body):
    vans = "".join(
        f"<section><h2>Drift {van}</h2>{body.format(rows=ROWS.format(water), extras=EXTRAS, n=van)}</section>"
        for van, water in (("S5", 70), ("S6", 95))
    )
    return f"<html><body><h1>Marrowfen Drift 2026</h1>{vans}<p>Ask us.</p></body></html>".encode()


@pytest.mark.parametrize("body", [ALONE, IN_HEADINGS, WRAPPED, TABS], ids=["alone", "in headings", "wrapped", "tabs"])
def test_what_opens_a_part_is_its_heading(examiner, body):
    document = read_document(page(body), "page.html", "html", examiner.hints)
    sections = {(p.row.text if p.row else p.text, p.text): p.sections for p in document.passages}
    assert sections["Fresh tank", "70 L"][-2:] == ("Drift S5", "Tanks")
    assert sections["Fresh tank", "95 L"][-2:] == ("Drift S6", "Tanks")
    assert [p.sections[-2:] for p in document.passages if p.text == "Heated floor"] == [
        ("Drift S5", "Options"),
        ("Drift S6", "Options"),
    ]


def test_below_an_accordion_its_last_heading_no_longer_holds(examiner):
    document = read_document(page(ALONE), "page.html", "html", examiner.hints)
    assert next(p.sections for p in document.passages if p.text == "Ask us.")[-1] != "Options"


def test_buttons_that_open_a_menu_or_nothing_are_not_read(examiner):
    body = (
        "<header><button aria-expanded=false aria-controls=m>Menu</button><nav id=m>Our vans</nav></header>"
        "<h1>Marrowfen Drift 21</h1><p>Fresh tank: 80 L</p><button>Buy now</button><button aria-expanded=false>More"
        "</button>"
    )
    document = read_document(f"<body>{body}</body>".encode(), "page.html", "html", examiner.hints)
    assert [p.text for p in document.passages] == ["Marrowfen Drift 21", "Fresh tank: 80 L"]


def test_a_list_of_links_with_remarks_is_no_table(examiner):
    items = "".join(
        f"<li><span>{name}</span> <span>{say}</span></li>" for name, say in (("Visit", "us"), ("Ring", "me"))
    )
    document = read_document(
        f"<body><h1>Drift 21</h1><ul>{items}</ul></body>".encode(), "p.html", "html", examiner.hints
    )
    assert [p.text for p in document.passages if p.row is None] == ["Drift 21", "Visit us", "Ring me"]
