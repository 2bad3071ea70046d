"""Five hundred broken and hostile files, made anew for every run by seeded chance."""

import io
import random
import re
import warnings
import zipfile
import zlib

from tests.hostile import raw_pdf
from tests.scanning import made

SEED = 20260114
GOOD = 20
ALL = 500
Made = dict[str, bytes]


def lines_of(number):
    """Give the lines of a good brochure."""
    return made.text(model=f"Drift {number}", fresh=100 + number).splitlines()


def html_of(number):
    """Give a good brochure as a web page."""
    rows = "".join(
        "<tr><td>{}</td><td>{}</td></tr>".format(*line.split(": ")) for line in lines_of(number) if ": " in line
    )
    return f"<html><body><h1>Marrowfen Drift {number}</h1><p>Model year 2026</p><table>{rows}</table></body></html>"


def good_files() -> Made:
    """Give brochures that can be read; their vans are Drift 100 to 119."""
    found = {}
    for number in range(100, 100 + GOOD):
        lines = lines_of(number)
        kind = number % 4
        if kind == 0:
            found[f"good{number}.pdf"] = raw_pdf.file_of(raw_pdf.bodies_of(lines))
        elif kind == 1:
            found[f"good{number}.pdf"] = raw_pdf.with_object_stream(raw_pdf.bodies_of(lines))
        elif kind == 2:
            found[f"good{number}.txt"] = "\n".join(lines).encode()
        else:
            found[f"good{number}.html"] = html_of(number).encode()
    return found


def bases() -> Made:
    """Give one file of each form, to be broken."""
    return {
        "plain.pdf": raw_pdf.file_of(raw_pdf.bodies_of(lines_of(1))),
        "packed.pdf": raw_pdf.with_object_stream(raw_pdf.bodies_of(lines_of(2))),
        "drawn.pdf": made.pdf(model="Drift 3"),
        "locked.pdf": made.pdf(model="Drift 4", password="swordfish"),
        "page.html": html_of(5).encode(),
        "plain.txt": "\n".join(lines_of(6)).encode(),
    }


def zipped(files, way=zipfile.ZIP_DEFLATED):
    """Give an archive of files (name, content); a name may stand twice."""
    buffer = io.BytesIO()
    with zipfile.ZipFile(buffer, "w", way) as archive, warnings.catch_warnings():
        warnings.simplefilter("ignore")
        for name, data in files:
            archive.writestr(name, data)
    return buffer.getvalue()


def _objects(data):
    return re.findall(rb"\d+ 0 obj.*?endobj\n", data, re.DOTALL)


def broken_files(count: int) -> Made:
    """Give ``count`` files broken by chance: cut, flipped, reordered, with wrong lengths, holes, doubled parts."""
    sources = bases()
    found: Made = {}
    for name, data in sources.items():
        stem, ending = name.split(".")
        for tenth in range(1, 10):
            found[f"{stem}-cut{tenth}.{ending}"] = data[: len(data) * tenth // 10]
    breakers = (_flipped, _reordered, _wrong_lengths, _hole, _doubled, _joined, _rubbish, _swapped_words)
    names = list(sources)
    while len(found) < count:
        number = len(found)
        name = names[number % len(names)]
        stem, ending = name.split(".")
        breaker = breakers[number // len(names) % len(breakers)]
        found[f"{stem}-{breaker.__name__.strip('_')}{number}.{ending}"] = breaker(
            sources[name], random.Random(f"{SEED} {number}"), sources
        )
    return found


def _flipped(data, chance, _):
    changed = bytearray(data)
    for _ in range(chance.choice((1, 3, 10, 50, 300))):
        changed[chance.randrange(len(changed))] ^= 1 << chance.randrange(8)
    return bytes(changed)


def _reordered(data, chance, _):
    parts = _objects(data) or data.splitlines(keepends=True)
    chance.shuffle(parts)
    return data[:15] + b"".join(parts) + data[-200:]


def _wrong_lengths(data, chance, _):
    wrong = lambda match: b"/Length %d" % chance.choice((0, 1, 7, 10**6, 2**31, 2**63))  # noqa: E731
    return re.sub(rb"/Length \d+", wrong, data) if b"/Length" in data else data.replace(b"<td>", b"<td colspan=99999>")


def _hole(data, chance, _):
    start = chance.randrange(len(data))
    size = chance.randrange(1, 400)
    return (
        data[:start]
        + chance.choice((b"", b"\0" * size, b"\xff" * size, b"(" * size, b"<<" * size))
        + data[start + size :]
    )


def _doubled(data, chance, _):
    start = chance.randrange(len(data))
    return data[:start] + data[start : start + 300] * chance.choice((2, 40)) + data[start:]


def _joined(data, chance, sources):
    other = sources[chance.choice(list(sources))]
    return data[: chance.randrange(len(data))] + other[chance.randrange(len(other)) :]


def _rubbish(data, chance, _):
    head = data[:15] if chance.random() < 0.5 else b""
    return head + chance.randbytes(chance.choice((3, 300, 30_000)))


def _swapped_words(data, chance, _):
    words = [
        b"/Page",
        b"/Pages",
        b"/Font",
        b"/Kids",
        b"obj",
        b"endobj",
        b"stream",
        b"endstream",
        b"xref",
        b"Tj",
        b"0 R",
    ]
    words += [b"<table>", b"</tr>", b"<td>", b"100", b": ", b"\n"]
    there = [word for word in words if word in data]
    first, second = chance.choice(there), chance.choice(words)
    return data.replace(first, second)


def bombs() -> Made:
    """Give files that ask for too much: time, memory, depth, pages."""
    return {**_pdf_bombs(), **_page_bombs(), **_text_bombs()}


def _pdf_bombs() -> Made:
    lines = lines_of(7)
    plain = raw_pdf.bodies_of(lines)
    whole = raw_pdf.file_of(plain)
    many = b"".join(b"%d 0 obj\n%d\nendobj\n" % (number, number) for number in range(10, 200_010))
    kids = b"/Kids[%s]/Count 100000" % (b"3 0 R " * 100_000)
    deep = b"/X" + b"<</X" * 60_000 + b" 1" + b">>" * 60_000 + b">>"
    gigantic = raw_pdf.bodies_of(lines, media=b"[0 0 99999999 99999999]", page=b"/UserUnit 75000")
    white = {
        **raw_pdf.bodies_of(lines, media=b"[0 0 200000 200000]"),
        4: raw_pdf.stream(b"1 g " + raw_pdf.shown(lines)),
    }
    forms = b"/Resources<</XObject<</X 6 0 R>>>>"
    form = raw_pdf.stream(b"/X Do", b"/Type/XObject/Subtype/Form/BBox[0 0 9 9]" + forms)
    in_itself = {
        **plain,
        3: plain[3].replace(b"/Resources<<", b"/Resources<</XObject<</X 6 0 R>>"),
        4: raw_pdf.stream(b"/X Do " + raw_pdf.shown(lines)),
        6: form,
    }
    saves = raw_pdf.stream(b"q " * 500_000 + raw_pdf.shown(lines), packed=True)
    return {
        "huge_stream.pdf": raw_pdf.file_of({**plain, 4: _zeros(200)}),
        "huge_text.pdf": raw_pdf.file_of({**plain, 4: raw_pdf.stream(b"BT /F1 9 Tf " + b"(a b) Tj " * 40_000)}),
        "twice_packed.pdf": raw_pdf.file_of({**plain, 4: _twice_packed(200)}),
        "deep_arrays.pdf": raw_pdf.file_of({**plain, 6: b"[" * 200_000 + b"]" * 200_000}),
        "deep_page.pdf": raw_pdf.file_of({**plain, 3: plain[3][:-2] + deep}),
        "many_objects.pdf": whole[:15] + many + whole[15:],
        "many_pages.pdf": raw_pdf.file_of({**plain, 2: b"<</Type/Pages%s>>" % kids}),
        "circle_of_pages.pdf": raw_pdf.file_of({**plain, 2: b"<</Type/Pages/Kids[2 0 R 3 0 R]/Count 9999999>>"}),
        "gigantic_page.pdf": raw_pdf.file_of(gigantic),
        "gigantic_white.pdf": raw_pdf.file_of(white),
        "form_in_itself.pdf": raw_pdf.file_of(in_itself),
        "previous_is_itself.pdf": whole.replace(b"/Root", b"/Prev %d/Root" % whole.rindex(b"xref\n0")),
        "saves.pdf": raw_pdf.file_of({**plain, 4: saves}),
    }


def _page_bombs() -> Made:
    entity = b'<!DOCTYPE x [<!ENTITY a "' + b"A" * 1_000 + b'"><!ENTITY b SYSTEM "file:///etc/hostname">]>'
    return {
        "deep.html": b"<p>Gray water tank: 70 L</p>"
        + b"<div>" * 50_000
        + b"Fresh water tank: 100 L"
        + b"</div>" * 50_000,
        "deep_bold.html": b"<body>" + b"<b>" * 20_000 + b"Fresh water tank: 100 L",
        "wide_cells.html": b"<table><tr>" + b"<td colspan=99999 rowspan=99999>x" * 3_000 + b"</table>",
        "styles.html": b"<style>" + b"@media print {" * 30_000 + b"</style><p>Fresh water tank: 100 L</p>",
        "comments.html": b"<style>" + b"/*" * 100_000 + b"a" * 200_000 + b"</style><p>Fresh water tank: 100 L</p>",
        "entities.html": entity + b"<p>" + b"&a;" * 1_000 + b"&b;</p>",
        "charset.html": b"<meta charset=no-such-code><p>Fresh water tank: 100 L</p>",
    }


def _text_bombs() -> Made:
    return {
        "long_line.txt": b"word, " * 1_700_000,
        "no_break.txt": b"a" * 10_000_000,
        "pipes.txt": b"|" * 100_000 + b"\n" + b"|" * 100_000 + b"\n|a|b|\n",
        "stars.txt": b"**a" * 30_000 + b"\n",
        "nulls.txt": b"\0" * 1_000_000,
        "wide.txt": "Fresh water tank: 100 L\n".encode("utf-32"),
        "unmarked.txt": "\n".join(lines_of(7)).encode("utf-16-le"),
    }


def _zeros(megabytes):
    packer = zlib.compressobj(9)
    data = b"".join(packer.compress(b" " * 1_000_000) for _ in range(megabytes)) + packer.flush()
    return raw_pdf.stream(data, b"/Filter/FlateDecode")


def _twice_packed(megabytes):
    packer = zlib.compressobj(9)
    once = b"".join(packer.compress(b" " * 1_000_000) for _ in range(megabytes)) + packer.flush()
    return raw_pdf.stream(zlib.compress(once, 9), b"/Filter[/FlateDecode/FlateDecode]")
