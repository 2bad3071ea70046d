"""Pieces of equipment for lists, packages and rows of marks: noun phrases, and on which van each is what."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from random import Random

from tests.proving_ground.ledger import Ledger
from tests.proving_ground.pages import Piece
from tests.proving_ground.rows import upgrade
from tests.proving_ground.speaker import Speaker
from tests.proving_ground.vans import Family, Heater, Van
from tests.proving_ground.words import capital

AVAILABILITY = {"S": "standard", "O": "optional", "N": "not_available"}
FIXED = (
    "fresh_tank_heat=electric_pad fresh_tank_heat=warm_air fresh_tank_heat=unspecified fresh_tank_insulated=yes "
    "gray_tank_heat=electric_pad gray_tank_heat=warm_air gray_tank_heat=hydronic gray_tank_heat=unspecified "
    "gray_tank_heat=heated_compartment gray_tank_insulated=yes water_lines_insulated=yes water_lines_heated=yes "
    "dump_valve_protection=heated_compartment dump_valve_protection=heated dump_valve_protection=insulated "
    "winterizing_bypass=yes heated_floor=yes thermal_break=yes window_glazing=double cab_shades_insulated=yes "
    "rear_shades_insulated=yes toilet=cassette toilet=dry drive=all"
).split()
BLACK = (
    "black_tank_heat=electric_pad black_tank_heat=warm_air black_tank_insulated=yes waste_heat=electric_pad "
    "waste_insulated=yes"
).split()
UPGRADES = "upgrade_battery upgrade_solar upgrade_inverter upgrade_sleeps upgrade_heater".split()
PLAIN = "battery solar_w inverter_w shore_power_a heater".split()


@dataclass(frozen=True, slots=True)
class Item:
    """A piece of equipment: its words and statements, and a mark (S, O, N or nothing) for each van."""

    kind: str
    piece: Piece
    marks: tuple[str, ...]


class Equipment:
    """Draws equipment that goes with what the ledger already holds."""

    def __init__(self, speaker: Speaker, family: Family, ledger: Ledger):
        self.speaker = speaker
        self.family = family
        self.ledger = ledger
        self.rng: Random = speaker.rng

    def kinds(self) -> list[str]:
        """Give the kinds this family can have, in random order."""
        found = [*FIXED, *UPGRADES, *PLAIN, *(BLACK if self.family.black_water else [])]
        self.rng.shuffle(found)
        return found

    def items(self, count: int, marks: str = "SON", kinds: Iterable[str] = (), all_vans: bool = False) -> list[Item]:
        """Give up to ``count`` items with marks out of ``marks``; the same mark on all vans where asked for."""
        found: list[Item] = []
        for kind in kinds or self.kinds():
            if len(found) == count:
                break
            item = self._item(kind, marks, all_vans)
            if item is not None:
                found.append(item)
        return found

    def fixed(self, kind: str, marks: tuple[str, ...]) -> Item | None:
        """Give an item with exactly these marks; none where it would leave doubt."""
        piece = self._piece(kind)
        if piece is None or not piece.says:
            return None
        if "S" in marks and any(word in piece.text for word in self.speaker.words.texts("instead")):
            return None
        marked = [(place, AVAILABILITY[mark]) for place, mark in enumerate(marks) if mark]
        if not all(self.ledger.fits(place, piece.says, availability) for place, availability in marked):
            return None
        for place, availability in marked:
            self.ledger.add(place, piece.says, availability)
        return Item(kind, Piece(capital(piece.text), piece.says), marks)

    def package(self, count: int, marks: tuple[str, ...]) -> list[Item]:
        """Give up to ``count`` items with the same marks, no two of them about one field."""
        found: list[Item] = []
        fields: set[str] = set()
        for kind in self.kinds():
            if len(found) == count:
                break
            piece = self._piece(kind)
            if piece is None or fields & {said.field for said in piece.says}:
                continue
            item = self.fixed(kind, marks)
            if item is not None:
                found.append(item)
                fields |= {said.field for said in item.piece.says}
        return found

    def _item(self, kind: str, marks: str, all_vans: bool) -> Item | None:
        count = len(self.family.vans)
        for _ in range(4):
            drawn = [self.rng.choice(marks)] * count if all_vans or self.rng.random() < 0.25 else None
            drawn = drawn or self.rng.choices(marks, k=count)
            if set(drawn) != {"N"} or marks == "N":
                item = self.fixed(kind, tuple(drawn))
                if item is not None:
                    return item
        return None

    def _piece(self, kind: str) -> Piece | None:
        van = self.family.vans[0]
        if kind == "upgrade_heater":
            return self._other_heater(van)
        if kind in UPGRADES:
            larger = upgrade(self.speaker, kind, van)
            if larger is None:
                return None
            phrase = self.speaker.pick(kind, self.speaker.words.phrases("features", kind))
            return Piece(phrase.text.format(v=larger.text, w=self.speaker.before_noun(larger.text)), larger.says)
        return self.speaker.say("features", kind, van)

    def _other_heater(self, van: Van) -> Piece | None:
        now: Heater = van.has["heater"]
        kinds = [("forced_air", "diesel"), ("hydronic", "diesel"), ("combined", "propane"), ("forced_air", "propane")]
        if self.family.region == "us":
            kinds.append(("forced_air", "gasoline"))
        kind, fuel = self.rng.choice(kinds)
        if kind == now.kind or fuel in now.fuel.split("+"):
            return None
        watts = self.rng.choice([watts for watts in (2000, 4000, 6000) if abs(watts - now.watts) > 800])
        piece, _ = self.speaker.heater(Heater(kind, fuel, watts, now.basis), with_power=True)
        phrase = self.speaker.pick("upgrade_heater", self.speaker.words.phrases("features", "upgrade_heater"))
        return Piece(phrase.text.format(v=piece.text), piece.says)
