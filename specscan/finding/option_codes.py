"""Codes in cells that point to a list of options: "O-314" in a cell, "O-314  Tank heating pads  $590" in the list."""

from __future__ import annotations

import re
from collections import Counter

from specscan.finding.marks.prices import has_price
from specscan.finding.naming.van_mentions import VanMentions
from specscan.records.text import Kind, Passage

CODE = r"(?:[A-Z]{1,4}[-./]?\d{2,5}[A-Z]{0,2}|\d{2,4}[A-Z]{1,2})"
LEADING = re.compile(rf"[(\[]?({CODE})[)\]]?\s*[:–—-]?\s+(?=\S*[^\W_])(?=.*[^\W\d_]{{3}})")
POINTING = re.compile(rf"(?:[^\W\d_]{{2,9}}\.?:?\s+)?[(\[]?({CODE})[)\]]?")  # "O-314", "option O-314", "see O-314"
BESIDE = re.compile(rf"\s*[(\[]({CODE})[)\]]\s*$")  # "200 W (O-402)"


class OptionCodes:
    """The codes of one document, the options that they stand for, and the vans whose cells point to them."""

    def __init__(self, passages: list[Passage], vans: VanMentions):
        self.texts: dict[str, str] = {}
        self.lines: dict[int, tuple[str, int]] = {}  # by passage: code, and where it ends
        self.vans: dict[str, frozenset[str]] = {}
        pointed = self._pointed(passages)
        told: Counter[str] = Counter()
        for passage in passages if pointed else ():
            code, text, end = _defined(passage)
            if code in pointed and pointed[code] != {passage.number}:
                told[code] += 1
                self.texts[code] = text
                self.lines[passage.number] = (code, end)
        self.texts = {code: text for code, text in self.texts.items() if told[code] == 1}
        self.lines = {number: line for number, line in self.lines.items() if line[0] in self.texts}
        if not vans.single:
            self._read_vans(passages, vans)

    @staticmethod
    def _pointed(passages: list[Passage]) -> dict[str, set[int]]:
        """Give the codes that answer a label, with the passages in which they do."""
        found: dict[str, set[int]] = {}
        for passage in passages:
            body = passage.text if passage.kind is Kind.CELL else passage.text.rpartition(":")[2].strip()
            match = POINTING.fullmatch(body) or BESIDE.search(body)
            if match is not None and (passage.kind is Kind.CELL or ":" in passage.text):
                found.setdefault(match.group(1), set()).add(passage.number)
        return found

    def _read_vans(self, passages: list[Passage], vans: VanMentions) -> None:
        """Note the vans whose cells point to a code."""
        for passage in passages:
            match = POINTING.fullmatch(passage.text) or BESIDE.search(passage.text)
            if passage.kind is not Kind.CELL or match is None or match.group(1) not in self.texts:
                continue
            heads = [head.text for head in (passage.column, passage.row) if head is not None]
            named = next((models for head in heads if (models := vans.whole(head.strip(" :")))), None)
            if named:
                self.vans[match.group(1)] = self.vans.get(match.group(1), frozenset()) | named

    def meaning(self, body: str) -> tuple[str, str]:
        """Give what a cell says without a code, and the words of the option that its code stands for, else nothing."""
        if not self.texts:
            return body, ""
        match = POINTING.fullmatch(body.strip())
        if match is not None and match.group(1) in self.texts:
            return "", self.texts[match.group(1)]
        match = BESIDE.search(body)
        if match is not None and match.group(1) in self.texts:
            return body[: match.start()], self.texts[match.group(1)]
        return body, ""

    def without_code(self, passage: Passage, text: str) -> str:
        """Give the text of a line of the list with its code blanked out, so that places stay."""
        code, end = self.lines.get(passage.number, ("", 0))
        return " " * end + text[end:] if code else text

    def vans_of(self, passage: Passage) -> frozenset[str] | None:
        """Give the vans for which the option of a line may be ordered, ``None`` where no cells tell."""
        code, _ = self.lines.get(passage.number, ("", 0))
        return self.vans.get(code)


def _defined(passage: Passage) -> tuple[str, str, int]:
    """Give the code that a line of a list of options begins with, what it stands for, and where the code ends."""
    if passage.kind is Kind.CELL:
        if passage.row is None:
            return "", "", 0
        if passage.row.codes:
            return passage.row.codes[0], passage.row.text, 0
        match = LEADING.match(passage.row.text)
        if match is None or not has_price(passage.text):
            return "", "", 0
        return match.group(1), passage.row.text[match.end() :], match.end()
    match = LEADING.match(passage.text)
    return (match.group(1), passage.text[match.end() :], match.end()) if match is not None else ("", "", 0)
