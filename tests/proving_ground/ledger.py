"""Keeps account of what a document already states, so that nothing drawn can be read in two ways."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable

from tests.proving_ground.pages import Said
from tests.proving_ground.truth import is_number

SETS = ("heater_fuel", "insulation_material", "insulated_surfaces")
APART = 0.08
MOST_OPTIONS = 2
# "Heated", no word how, beside a way of heating that is named: whether the one means the other, no reader can tell.
VAGUE = ("unspecified", "heated_compartment")


class Ledger:
    """What is stated of each van so far."""

    def __init__(self) -> None:
        self.stated: dict[tuple[int, str], list[Said]] = defaultdict(list)

    def fits(self, van: int, says: Iterable[Said], availability: str) -> bool:
        """Tell whether statements can be added with an availability and leave no doubt."""
        return all(self._fits(van, said, availability) for said in says)

    def add(self, van: int, says: Iterable[Said], availability: str | None = None) -> None:
        """Note statements; with their own availability unless another is given."""
        for said in says:
            noted = Said(said.field, said.value, availability or said.availability)
            self.stated[(van, said.field)].append(noted)

    def value(self, van: int, field: str) -> str | None:
        """Give the standard value stated of a van, if any."""
        values = [said.value for said in self.stated[(van, field)] if said.availability == "standard"]
        return values[0] if values else None

    def _fits(self, van: int, said: Said, availability: str) -> bool:
        before = self.stated[(van, said.field)]
        if availability == "standard" and any(other.availability == "standard" for other in before):
            return False
        if said.field in SETS and any(other.availability == availability for other in before):
            return False
        if sum(other.availability == availability for other in before) >= MOST_OPTIONS:
            return False
        return not any(_alike(said, other) or _means_perhaps(said, other) for other in before)


def _means_perhaps(one: Said, two: Said) -> bool:
    """Tell whether one of two values only says that a tank is heated, which the other may say more exactly."""
    heated = one.field.endswith("_heat") and "none" not in (one.value, two.value)
    return heated and (one.value in VAGUE or two.value in VAGUE)


def _alike(one: Said, two: Said) -> bool:
    if is_number(one.field):
        first, second = float(one.value), float(two.value)
        return abs(first - second) <= APART * max(abs(first), abs(second))
    return one.value.casefold() == two.value.casefold()
