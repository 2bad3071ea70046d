"""Units as printed: which quantity, by what factor. The factors are made by pint, once."""

from __future__ import annotations

import functools
import re
from dataclasses import dataclass, replace

from specscan.rulebook.models import UnitFile, UnitSpec
from specscan.rulebook.unit_registry import unit_registry

CONDITION = re.compile(r"\s+(?:at|@|bei|à)\s+\d.*$")  # "amp-hours at 12.8 V"
R_UNIT = "hour * foot ** 2 * delta_degF / Btu_it"
SPACES = re.compile(r"\s+")


@dataclass(frozen=True, slots=True)
class Unit:
    """A unit found in a text: ``value × factor + offset`` is the amount in the canonical unit."""

    printed: str
    dimension: str
    factor: float
    offset: float
    imperial_factor: float
    end: int = 0
    whole: bool = False  # nobody prints three decimals before it

    def convert(self, value: float, *, imperial: bool = False) -> float:
        """Give the amount in the canonical unit."""
        return value * (self.imperial_factor if imperial else self.factor) + self.offset


class Units:
    """The units of ``rules/words/units.yaml`` as one pattern and a table of factors."""

    def __init__(self, file: UnitFile):
        self.file = file
        self.table: dict[str, Unit] = {}
        self.american: dict[str, Unit] = {}  # what a spelling means in English of the United States, where it differs
        close = set(file.only_behind_a_figure)
        exact: list[str] = []
        loose: list[str] = []
        for spec in file.units:
            for spelling in spec.spellings:
                unit = self._unit(spelling, spec)
                self.table[spelling] = unit
                if spec.american:
                    self.american[spelling] = self._unit(spelling, spec.model_copy(update={"pint": spec.american}))
                (exact if len(spelling) <= 1 or spelling in close else loose).append(spelling)
        for spelling, unit in list(self.table.items()):
            if spelling not in exact:
                self.table.setdefault(spelling.casefold(), unit)
        self.pattern = re.compile(
            r"[\s\u00a0\u2009\u202f-]{0,2}(?:"
            + "|".join(
                f"(?i:{_pattern(s)})" if s not in exact else _pattern(s)
                for s in sorted([*exact, *loose], key=len, reverse=True)
            )
            + ")"
        )
        self.tight = re.compile(r"(?:w|v|a|ah|l)(?![\w])")
        self.r_value = conversion(R_UNIT, "meter ** 2 * kelvin / watt")[0]

    def _unit(self, spelling: str, spec: UnitSpec) -> Unit:
        target = self.file.dimensions.get(spec.dimension)
        if spec.pint is None or target is None or target.pint is None:
            return Unit(spelling, spec.dimension, 1.0, 0.0, 1.0)
        factor, offset = conversion(spec.pint, target.pint)
        imperial = conversion(spec.imperial, target.pint)[0] if spec.imperial else factor
        return Unit(spelling, spec.dimension, factor, offset, imperial, whole=spec.whole)

    def at(self, text: str, place: int) -> Unit | None:
        """Give the unit that stands right behind a figure that ends at ``place``, or ``None``."""
        match = self.pattern.match(text, place)
        if match is None:
            match = self.tight.match(text, place)
            if match is None:
                return None
            spelling = {"w": "W", "v": "V", "a": "A", "ah": "Ah", "l": "l"}[match.group()]
        else:
            spelling = match.group().strip(" \u00a0\u2009\u202f-")
        unit = self.named(spelling)
        if unit is None:
            return None
        return replace(unit, end=match.end())

    def degrees(self, text: str, place: int) -> Unit | None:
        """Give the unit that a lone letter for degrees means right behind a figure, or ``None``."""
        match = re.match(r"\s?([A-Z])(?!\w)", text[place:])
        unit = self.table.get(self.file.degree_letters.get(match.group(1), "")) if match else None
        if match is None or unit is None:
            return None
        return replace(unit, end=place + match.end())

    def named(self, spelling: str) -> Unit | None:
        """Give the unit of that spelling, or ``None``."""
        plain = SPACES.sub(" ", spelling.replace("\u00a0", " "))
        return self.table.get(plain) or self.table.get(plain.casefold())

    def is_word(self, unit: Unit, head: Unit) -> bool:
        """Tell whether a spelling is only a word where a head gives another unit: "16,000 in, 12,800 out" of Btu/h."""
        return unit.printed in self.file.also_words and unit.dimension != head.dimension

    def r_unit(self, *, north_american: bool) -> Unit:
        """Give the unit of a bare R-value: h·ft²·°F/BTU in North America, m²·K/W elsewhere."""
        factor = self.r_value if north_american else 1.0
        return Unit("R", "insulance", factor, 0.0, factor)

    def is_sign(self, text: str, start: int, end: int) -> bool:
        """Tell whether the characters are a unit in brackets, as the L of "Fresh / gray (L)"."""
        return (
            text[start - 1 : start] in ("(", "[")
            and text[end : end + 1] in (")", "]")
            and bool(self.named(text[start:end]))
        )

    def in_head(self, text: str, openers: list[str] | None = None) -> Unit | None:
        """Give the unit that a label or table head names in brackets, behind a comma or a word such as "in".

        ``openers`` are those words. Gives ``None`` where the label names no unit.
        """
        for word in openers or []:
            for match in _behind(word).finditer(text) if word in text else ():
                unit = self.named(match.group(1).rstrip(".:*"))
                if unit is not None:
                    return unit
        parts = [CONDITION.sub("", part).strip() for part in text.split(",")]
        for inner in [
            *parts,
            *re.findall(r"[(\[]([^)\]]{1,18})[)\]]", text),
            *re.findall(r",\s*([^,()]{1,12})$", text),
        ]:
            unit = self.named(inner.strip()) if inner != text else None
            if unit is not None:
                return unit
        for inner in re.findall(r"[(\[]([^\s,)\]]{1,10}), [^\W\d_]{3,}[)\]]", text):  # "(Ah, lithium)"
            unit = self.named(inner)
            if unit is not None:
                return unit
        for inner in re.findall(r"[(\[]([^\s)\]]{3,10}) [^\W\d_]{3,}[)\]]", text):  # "(Btu/hr input)", "(gal usable)"
            unit = self.named(inner)
            if unit is not None:
                return unit
        for inner, other in re.findall(r"[(\[]([^\s/)\]]{1,10}) ?/ ?([^\W\d_]{3,})[)\]]", text):  # "(gal / place)"
            unit = self.named(inner) if self.named(other) is None else None
            if unit is not None:
                return unit
        last = self.named(text.split()[-1]) if " " in text else None
        if last is not None and last.dimension == "insulance":  # "Wall RSI" is no R-value of North America
            return last
        listed = re.search(r",\s*([^\s,()]{1,10})\s+[^\W\d_]{3,}\s*/", text)  # "Tanks, gal fresh / gray"
        return self.named(listed.group(1)) if listed else None


@functools.cache
def _behind(word: str) -> re.Pattern[str]:
    """Give a pattern of what may be a unit behind a word such as "in"; there are as many as the rules have words."""
    return re.compile(rf"(?<!\w){re.escape(word)}\s+(?=((?:[^\s,;()]+\s+){{0,2}}[^\s,;()]{{1,18}})\s*(?:$|[,;()]))")


def _pattern(spelling: str) -> str:
    escaped = re.escape(spelling).replace(r"\ ", r"[\s\u00a0\u2009\u202f]")
    # "sleeps 3 in all", "2 in Serie": the word is no unit there.
    word = (
        r"(?!\s+(?:all|total|the|one|each|every|both|either|our|your|its|this|that|these|a|an|series|parallel|Serie|Reihe|der|die|das|den|dem|einem|einer|beiden|allen|jedem)\b)"
        if spelling == "in"
        else ""
    )
    return escaped + (r"(?![\w])" if spelling[-1].isalnum() or spelling[-1] in "²³" else "") + word


@functools.cache
def conversion(source: str, target: str) -> tuple[float, float]:
    """Give factor and offset from one unit to another, as pint has them."""
    registry = unit_registry()
    zero = registry.Quantity(0.0, _parsed(source)).to(target).magnitude
    one = registry.Quantity(1.0, _parsed(source)).to(target).magnitude
    return one - zero, zero


def _parsed(source: str) -> object:
    return (
        unit_registry().parse_units(source)
        if "1000" not in source
        else unit_registry().parse_expression(source).to_base_units().units
    )
