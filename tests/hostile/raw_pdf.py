"""PDFs written by hand, object by object, so that a test can put into one what no library would write (ISO 32000-1)."""

import zlib

FONT = b"<</Type/Font/Subtype/Type1/BaseFont/Helvetica>>"


def obj(number, body):
    """Give an indirect object (ISO 32000-1, 7.3.10)."""
    return b"%d 0 obj\n%s\nendobj\n" % (number, body)


def stream(data, extra=b"", length=None, packed=False):
    """Give a stream object's body (7.3.8); ``length`` overrides what it says of its size, ``packed`` deflates it."""
    if packed:
        data, extra = zlib.compress(data, 9), extra + b"/Filter/FlateDecode"
    said = len(data) if length is None else length
    return b"<<%s/Length %d>>\nstream\n%s\nendstream" % (extra, said, data)


def file_of(bodies, root=1, trailer=b""):
    """Give a whole file of objects (number → body) with its cross-reference table (7.5.4)."""
    out, places = b"%PDF-1.7\n%\xe2\xe3\xcf\xd3\n", {}
    for number, body in bodies.items():
        places[number] = len(out)
        out += obj(number, body)
    size, start = max(bodies) + 1, len(out)
    lines = [
        b"%010d 00000 n \n" % places[number] if number in places else b"0000000000 65535 f \n" for number in range(size)
    ]
    out += b"xref\n0 %d\n%s" % (size, b"".join(lines))
    return out + b"trailer\n<</Size %d/Root %d 0 R%s>>\nstartxref\n%d\n%%%%EOF\n" % (size, root, trailer, start)


def shown(lines):
    """Give a content stream that prints lines of text."""
    text = b"BT /F1 18 Tf 72 760 Td 18 TL "
    for number, line in enumerate(lines):
        safe = line.replace("\\", r"\\").replace("(", r"\(").replace(")", r"\)").encode("cp1252", "replace")
        text += b"(%s) Tj T* " % safe + (b"/F1 10 Tf " if number == 0 else b"")
    return text + b"ET"


def bodies_of(lines, page=b"", catalog=b"", media=b"[0 0 595 842]"):
    """Give the objects of a one-page brochure: 1 catalog, 2 pages, 3 page, 4 content, 5 font."""
    return {
        1: b"<</Type/Catalog/Pages 2 0 R%s>>" % catalog,
        2: b"<</Type/Pages/Kids[3 0 R]/Count 1>>",
        3: b"<</Type/Page/Parent 2 0 R/MediaBox%s/Contents 4 0 R/Resources<</Font<</F1 5 0 R>>>>%s>>" % (media, page),
        4: stream(shown(lines)),
        5: FONT,
    }


def with_object_stream(bodies):
    """Give a file whose objects without streams lie packed in an object stream (7.5.7)."""
    inside = {number: body for number, body in bodies.items() if b"stream" not in body}
    head, packed = b"", b""
    for number, body in inside.items():
        head += b"%d %d " % (number, len(packed))
        packed += body + b" "
    holder = max(bodies) + 1
    outside = {number: body for number, body in bodies.items() if number not in inside}
    extra = b"/Type/ObjStm/N %d/First %d" % (len(inside), len(head))
    outside[holder] = stream(head + packed, extra, packed=True)
    out, places = b"%PDF-1.7\n", {}
    for number, body in outside.items():
        places[number] = len(out)
        out += obj(number, body)
    table, start = holder + 1, len(out)
    order = list(inside)
    rows = b""
    for number in range(table + 1):
        if number in inside:
            row = (2, holder, order.index(number))
        elif number == table:
            row = (1, start, 0)
        else:
            row = (1, places[number], 0) if number in places else (0, 0, 0)
        rows += row[0].to_bytes(1, "big") + row[1].to_bytes(4, "big") + row[2].to_bytes(2, "big")
    extra = b"/Type/XRef/Size %d/W[1 4 2]/Root 1 0 R" % (table + 1)
    out += obj(table, stream(rows, extra, packed=True))
    return out + b"startxref\n%d\n%%%%EOF\n" % start
