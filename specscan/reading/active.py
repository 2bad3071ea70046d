"""What in a PDF would act if a viewer let it: it is never run or opened here, only named."""

from __future__ import annotations

import ctypes
import re
import zlib

import numpy as np
import pypdfium2 as pdfium
import pypdfium2.raw as raw

# Names as in ISO 32000-1: 12.6.4 (actions), 7.11.4 (embedded files), 13 (multimedia).
KINDS = {
    b"/JavaScript": "JavaScript",
    b"/EmbeddedFile": "embedded files",
    b"/Launch": "launch actions",
    b"/SubmitForm": "actions that send data",
    b"/ImportData": "actions that load data",
    b"/RichMedia": "multimedia",
}
SLASH, HASH = ord("/"), ord("#")
MOST_BEFORE = 21  # characters from the slash of a name to the first that is written in hexadecimal
STARTS = np.unique([name[1] << 8 | name[2] for name in KINDS])  # the first two letters of their names
OF_NAME = np.isin(np.arange(256), [*b"_#", *(code for code in range(128) if chr(code).isalnum())])
ESCAPED = re.compile(rb"/[\w]{0,20}#[0-9A-Fa-f]{2}[\w#]{0,60}")  # a name with characters as hexadecimal (7.3.5)
CODE = re.compile(rb"#([0-9A-Fa-f]{2})")
STREAM = re.compile(rb"stream\r?\n")
LIMIT_PACKED = 5_000_000  # bytes unpacked of one object stream
LIMIT_ALL_PACKED = 60_000_000
LIMIT_PAGES = 400
WINDOW = 2_000  # bytes between the name ObjStm and its data


def named_active(data: bytes, document: pdfium.PdfDocument | None = None) -> str:
    """Give a sentence that names what in a PDF could act, empty where there is nothing.

    ``document`` is the file as pdfium has opened it, if it could: that sees into encrypted files too.
    """
    found = _named_in(data)
    for part in _unpacked(data):
        found |= _named_in(part)
    if document is not None:
        found |= _seen_by_pdfium(document, encrypted=b"/Encrypt" in data)
    if not found:
        return ""
    return f"holds {', '.join(kind for kind in KINDS.values() if kind in found)}: not run, not opened"


def _named_in(data: bytes) -> set[str]:
    found: set[str] = set()
    codes = np.frombuffer(data, np.uint8)
    # A name begins with a slash, and the letters behind it tell nearly all that are none of these.
    slashes = np.flatnonzero(codes[:-2] == SLASH)
    starts = codes[slashes + 1].astype(np.int64) << 8 | codes[slashes + 2]
    for place in slashes[np.isin(starts, STARTS)].tolist():
        for name, kind in KINDS.items():
            if data.startswith(name, place):
                found.add(kind)
    hashes = np.flatnonzero(codes == HASH)
    if len(hashes):
        # Pictures hold thousands of both signs by chance: only names that begin close before one are looked at.
        slashes = slashes[OF_NAME[codes[slashes + 1]]]
        behind = np.append(hashes, len(codes) + MOST_BEFORE + 1)[np.searchsorted(hashes, slashes)]
        near = slashes[behind - slashes <= MOST_BEFORE].tolist()
        for match in filter(None, (ESCAPED.match(data, place) for place in near)):
            plain = CODE.sub(lambda code: bytes([int(code.group(1), 16)]), match.group())
            found |= {kind for name, kind in KINDS.items() if plain.startswith(name)}
    return found


def _unpacked(data: bytes) -> list[bytes]:
    """Give the object streams of a file (7.5.7), unpacked as far as the limits go."""
    parts: list[bytes] = []
    total, place = 0, 0
    while total < LIMIT_ALL_PACKED and (place := data.find(b"/ObjStm", place)) >= 0:
        place += 1
        begin = STREAM.search(data, place, place + WINDOW)
        if begin is None:
            continue
        try:
            parts.append(zlib.decompressobj().decompress(data[begin.end() : begin.end() + LIMIT_PACKED], LIMIT_PACKED))
        except zlib.error:
            continue
        total += len(parts[-1])
    return parts


def _seen_by_pdfium(document: pdfium.PdfDocument, *, encrypted: bool) -> set[str]:
    found = set()
    if raw.FPDFDoc_GetJavaScriptActionCount(document.raw) > 0:
        found.add(KINDS[b"/JavaScript"])
    if raw.FPDFDoc_GetAttachmentCount(document.raw) > 0:
        found.add(KINDS[b"/EmbeddedFile"])
    if encrypted and any(_launches(document, number) for number in range(min(len(document), LIMIT_PAGES))):
        found.add(KINDS[b"/Launch"])
    return found


def _launches(document: pdfium.PdfDocument, number: int) -> bool:
    page = raw.FPDF_LoadPage(document.raw, number)
    if not page:
        return False
    place, link = ctypes.c_int(0), raw.FPDF_LINK()
    try:
        while raw.FPDFLink_Enumerate(page, place, link):
            action = raw.FPDFLink_GetAction(link)
            if action and raw.FPDFAction_GetType(action) == raw.PDFACTION_LAUNCH:
                return True
        return False
    finally:
        raw.FPDF_ClosePage(page)
