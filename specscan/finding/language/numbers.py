"""Figures as printed → numbers: separators by language, fractions, figures in words."""

from __future__ import annotations

import re
from dataclasses import dataclass

from specscan.rulebook.models import WordFile

FRACTIONS = {"½": 0.5, "¼": 0.25, "¾": 0.75, "⅓": 1 / 3, "⅔": 2 / 3, "⅛": 0.125, "⅜": 0.375, "⅝": 0.625, "⅞": 0.875}
SPACES = "\u0020\u00a0\u2009\u202f\u2007\u2008"
MINUS = "-−–‐‑—"
SPACED = rf"(?<![^\W\d_])\d{{1,3}}(?:[{SPACES}]\d{{3}})+(?!\d)"  # not the 4 of "LiFePO4 150 Ah"
PLAIN = r"\d+(?:[.,'’]\d+)*"
NOUGHTLESS = r"(?<![^\s(/~±+<>≤≥–-])\.\d{1,3}(?!\d|[.,]\d)"  # ".18 gal/h", but not the last of a row of dots
MIXED = rf"(?:{SPACED}(?:[.,]\d+)?|{NOUGHTLESS}|{PLAIN})(?:[ -]?[½¼¾⅓⅔⅛⅜⅝⅞]|[ -]\d/\d{{1,2}}(?!\d))?"
# A bare fraction counts only before inches: elsewhere "4/2" is two figures.
INCH = r"(?=\s*(?:in\b|\"|″|-?inch|po\b|Zoll))"
FIGURE = re.compile(rf"(?<![\d/.,])\d/\d{{1,2}}{INCH}|{MIXED}|[½¼¾⅓⅔⅛⅜⅝⅞]")


THOUSANDS = re.compile(rf"({PLAIN})\s?[kK](?=\s?B(?:TU|tu))")


@dataclass(frozen=True, slots=True)
class Figure:
    """A number and the characters that print it."""

    value: float
    start: int
    end: int
    worded: bool = False


class FigureReader:
    """Reads figures of one language."""

    def __init__(self, words: WordFile):
        self.decimal = words.decimal
        self.numbers = {word.casefold(): value for word, value in words.numbers.items()}
        self.joints = {word.casefold() for word in words.cues.get("number_joint", [])}
        names = "|".join(map(re.escape, sorted([*self.numbers, *self.joints], key=len, reverse=True)))
        self.worded = re.compile(rf"(?<![\w-])(?:{names})+(?:[- ](?:{names})+)*(?!\w)", re.IGNORECASE)
        self.word = re.compile(names, re.IGNORECASE)
        self.fractions = {phrase.casefold(): part for phrase, part in words.fractions.items()}
        phrases = "|".join(map(re.escape, sorted(self.fractions, key=len, reverse=True)))
        self.fraction = re.compile(rf"[ -]?({phrases or '(?!)'})(?!\w)", re.IGNORECASE)

    def value(self, printed: str) -> float | None:
        """Give the number that a printed figure means, or ``None`` if it cannot be told."""
        whole, part = _without_fraction(printed.strip())
        if not whole:
            return part
        number = self._whole(re.sub(rf"(?<=\d)[{SPACES}'’](?=\d)", "", whole))
        return None if number is None else number + (part or 0.0)

    def _whole(self, text: str) -> float | None:
        marks = [letter for letter in text if letter in ".,"]
        if not marks:
            return float(text)
        if len(set(marks)) == 2:
            last = max(text.rfind("."), text.rfind(","))
            if marks.count(text[last]) > 1:
                return None
            return float(text[:last].replace(".", "").replace(",", "") + "." + text[last + 1 :])
        mark = marks[0]
        groups = text.split(mark)
        grouped = all(len(group) == 3 for group in groups[1:]) and 1 <= len(groups[0]) <= 3 and groups[0] != "0"
        if len(groups) > 2:
            return float("".join(groups)) if grouped else None
        # One mark before three digits parts thousands, unless it is the language's decimal mark.
        if grouped and mark != self.decimal:
            return float("".join(groups))
        return float(f"{groups[0]}.{groups[1]}")

    def find(self, text: str) -> list[Figure]:
        """Give the figures of a text, those in words included, in order."""
        found = []
        for match in FIGURE.finditer(text):
            value = self.value(match.group())
            if value is not None:
                found.append(Figure(value, match.start(), match.end()))
        for match in THOUSANDS.finditer(text) if "BTU" in text.upper() else ():
            value = self.value(match.group(1))
            if value is not None:
                found = [f for f in found if not match.start() <= f.start < match.end()]
                found.append(Figure(value * 1000, match.start(), match.end()))
        for match in self.worded.finditer(text):
            found.extend(self._from_words(match))
        return self._with_fractions(text, sorted(found, key=lambda figure: figure.start))

    def _with_fractions(self, text: str, found: list[Figure]) -> list[Figure]:
        """Add the fractions in words to the figures before them: "two and a half"."""
        result: list[Figure] = []
        for figure in found:
            if result and figure.start < result[-1].end:
                continue  # the "half" of one that is complete
            match = self.fraction.match(text, figure.end) if figure.value.is_integer() else None
            if match is not None:
                part = self.fractions[match.group(1).casefold()]
                figure = Figure(figure.value + part, figure.start, match.end(), figure.worded)
            result.append(figure)
        return result

    def _from_words(self, match: re.Match[str]) -> list[Figure]:
        """Read a run of number words: "fünfundachtzig" is one number, "two twenty-pound" are two."""
        figures: list[Figure] = []
        state: tuple[float, float] | None = None
        start = end = 0
        for part in self.word.finditer(match.group()):
            name = part.group().casefold()
            if name not in self.numbers:
                continue
            between = match.group()[end : part.start()].casefold()
            joined = _joined(state, self.numbers[name], between, self.joints) if state is not None else None
            if joined is None:
                if state is not None:
                    figures.append(Figure(sum(state), match.start() + start, match.start() + end, True))
                start, joined = part.start(), (0.0, self.numbers[name])
            state, end = joined, part.end()
        if state is not None:
            figures.append(Figure(sum(state), match.start() + start, match.start() + end, True))
        return figures


def _joined(state: tuple[float, float], more: float, between: str, joints: set[str]) -> tuple[float, float] | None:
    """Give what a number in words, thousands and the rest, becomes by a further word; ``None`` where none goes on.

    ``between`` is what stands between the words: nothing in German compounds, a hyphen in "soixante-quinze".
    """
    thousands, rest = state
    tens = rest % 100
    if more == 1000:
        return (rest * 1000, 0.0) if not thousands and 1 <= rest < 1000 else None
    if more == 100:
        return (thousands, rest * 100) if 1 <= rest <= 9 else None
    if not rest and thousands or tens == 0 and rest >= 100:
        return (thousands, rest + more) if more < 100 else None
    if 20 <= tens <= 90 and tens % 10 == 0 and 1 <= more <= 9:
        return thousands, rest + more
    if tens in (60, 80) and 10 <= more <= 19 and between == "-":
        return thousands, rest + more  # soixante-quinze
    if 1 <= tens <= 9 and 20 <= more <= 90 and between in joints:
        return thousands, rest + more  # fünfundachtzig
    return None


def _without_fraction(printed: str) -> tuple[str, float | None]:
    """Give a printed figure in two: what stands before a fraction, and the fraction."""
    if printed[-1:] in FRACTIONS:
        return printed[:-1].strip(" -"), FRACTIONS[printed[-1]]
    match = re.search(r"(?:^|[ -])(\d)/(\d{1,2})$", printed)
    if match and int(match.group(2)) > 0:
        return printed[: match.start()].strip(" -"), int(match.group(1)) / int(match.group(2))
    return printed, None
