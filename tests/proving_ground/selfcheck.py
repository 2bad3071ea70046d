"""Checks a brochure's truth against its pages as an independent reader gives them.

That reader is pdftotext where it is installed, else pdfplumber.
"""

from __future__ import annotations

import html
import io
import re
import shutil
import subprocess
import unicodedata

from tests.proving_ground.maker import PAGED, Brochure

WORD = re.compile(r"[\w.,'′\"″/½°%+-]*\w[\w.,'′\"″/½°%+-]*")
TAG = re.compile(r"<(script|style|nav)\b.*?</\1>|<[^>]+>", re.S)
INNER = re.compile(r"(?<=[^\W\d])-(?=[^\W\d])")
SPACES = dict.fromkeys(map(ord, "\u00a0\u2009\u202f"), " ")


def faults(brochure: Brochure) -> list[str]:
    """Give every label whose words do not stand on a page that it names, and every page too many or too few."""
    pages = page_texts(brochure)
    wanted = len(brochure.draft.pages) if brochure.renderer in PAGED else 1
    if len(pages) != wanted:
        return [f"{brochure.name}: {len(pages)} pages instead of {wanted}"]
    found = []
    for label in brochure.labels:
        for page in label.pages:
            text = pages[int(page) - 1 if page else 0]
            if not any(_stands(words, text) for words in label.words):
                found.append(f"{brochure.name} p{page}: {label.van} {label.field} {label.value}: {label.words}")
    return found


def page_texts(brochure: Brochure) -> list[str]:
    """Give the text of each page by a reader that is no part of the program."""
    if brochure.renderer == "html":
        return [html.unescape(TAG.sub(" ", brochure.data.decode()))]
    if brochure.renderer not in PAGED:
        return [brochure.data.decode()]
    if shutil.which("pdftotext"):
        call = ["pdftotext", "-enc", "UTF-8", "-", "-"]
        done = subprocess.run(call, input=brochure.data, capture_output=True, check=True)
        return done.stdout.decode("utf-8", "replace").split("\f")[:-1]
    import pdfplumber

    with pdfplumber.open(io.BytesIO(brochure.data)) as pdf:
        return [page.extract_text() or "" for page in pdf.pages]


def _stands(words: str, text: str) -> bool:
    """Tell whether words stand on a page: in one piece (spaces aside), or, where a cell wraps, each of them."""
    words, text = _plain(words), _plain(text)
    if "".join(words.split()) in "".join(text.split()):
        return True
    return _parts(words) <= _parts(text)


def _plain(text: str) -> str:
    """Give a text with plain spaces and quotes, and without hyphens inside words: readers join words broken there."""
    text = unicodedata.normalize("NFC", text.translate(SPACES)).replace("’", "'").replace("\u00ad", "")
    return INNER.sub("", text.casefold())


def _parts(text: str) -> set[str]:
    return {word.strip(".,'\"-+/") for word in WORD.findall(text)} - {""}
