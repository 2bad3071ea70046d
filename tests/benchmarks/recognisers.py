"""Recognisers of text side by side: which words and numbers of a page each reads, and how many wrongly."""

from __future__ import annotations

import os
import re
import shutil
import subprocess
import time
from collections import Counter, defaultdict
from collections.abc import Iterable
from dataclasses import dataclass
from io import BytesIO

import numpy as np
import pypdfium2 as pdfium
from PIL import Image

from specscan.reading.letters.sheet import Sheet
from specscan.reading.ocr.reader import OcrReader
from tests.reading.scans import render

LANGUAGES = "eng+fra+deu"


@dataclass(frozen=True, slots=True)
class Counts:
    """What a recogniser made of one page: words and numbers printed, read rightly, and numbers that are not printed."""

    recogniser: str
    damage: str
    dpi: int
    words: int
    words_right: int
    numbers: int
    numbers_right: int
    numbers_wrong: int
    seconds: float


def compare(scan: bytes, printed: bytes, damage: str, dpi: int, reader: OcrReader) -> list[Counts]:
    """Give the counts of each recogniser at hand on the first page of a scan, against the text that was printed."""
    with_text = pdfium.PdfDocument(printed)
    truth = _tokens(with_text[0].get_textpage().get_text_range())
    pictured = pdfium.PdfDocument(scan)
    began = time.process_time()
    read = reader.read(pictured, Sheet(1, *pictured[0].get_size())).sheet
    took = time.process_time() - began
    texts = {"built in": (read.letters.text, took)}
    if shutil.which("tesseract"):
        picture = render(pictured, 1, max(dpi, 300))
        before = os.times()
        texts["tesseract"] = (_tesseract(picture), 0.0)
        after = os.times()
        used = after.children_user + after.children_system - before.children_user - before.children_system
        texts["tesseract"] = (texts["tesseract"][0], used)
    return [_counts(name, damage, dpi, truth, _tokens(text), used) for name, (text, used) in texts.items()]


def _tesseract(picture: np.ndarray) -> str:
    buffer = BytesIO()
    Image.fromarray(picture).save(buffer, "PNG")
    call = ["tesseract", "-", "-", "-l", LANGUAGES, "--psm", "3", "--dpi", "300"]
    done = subprocess.run(
        call, input=buffer.getvalue(), capture_output=True, check=True, env={**os.environ, "OMP_THREAD_LIMIT": "1"}
    )
    return done.stdout.decode("utf-8", "replace")


def _tokens(text: str) -> Counter[str]:
    """Give words and numbers; a mark before the last digits of a number is part of it, spaces are not."""
    return Counter(re.findall(r"[^\W\d_]{2,}|\d+(?:[.,]\d+)*", text.replace("\u00ad", "")))


def _counts(name: str, damage: str, dpi: int, truth: Counter[str], read: Counter[str], used: float) -> Counts:
    figures = Counter({one: count for one, count in truth.items() if one[0].isdigit()})
    words = truth - figures
    numbers = Counter({one: count for one, count in read.items() if one[0].isdigit()})
    return Counts(
        name, damage, dpi, words.total(), (words & read).total(), figures.total(), (figures & numbers).total(),
        (numbers - figures).total(), used,
    )  # fmt: skip


def table(counts: Iterable[Counts]) -> list[str]:
    """Give shares of words and numbers read, of numbers that are wrong, and seconds a page."""
    groups: dict[tuple[str, str], list[Counts]] = defaultdict(list)
    for one in counts:
        for name in ("all", one.damage, f"{one.dpi} dpi"):
            groups[name, one.recogniser].append(one)
    told = ["                        recogniser   pages  words numbers wrong numbers  s a page"]
    for (name, recogniser), own in sorted(groups.items(), key=lambda pair: (pair[0][0] != "all", pair[0])):
        words, numbers = sum(one.words for one in own), sum(one.numbers for one in own)
        wrong = sum(one.numbers_wrong for one in own)
        said = wrong + sum(one.numbers_right for one in own)
        told.append(
            f"{name:24}{recogniser:12}{len(own):6}{sum(one.words_right for one in own) / max(1, words):7.3f}"
            f"{sum(one.numbers_right for one in own) / max(1, numbers):8.3f}{wrong / max(1, said):14.3f}"
            f"{sum(one.seconds for one in own) / len(own):10.2f}"
        )
    return told
