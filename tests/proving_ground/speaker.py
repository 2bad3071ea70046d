"""Says what is true of a van in one house's words: as a cell, as a noun phrase for lists, as a clause for prose."""

from __future__ import annotations

from collections.abc import Hashable, Sequence
from dataclasses import replace
from random import Random
from typing import Any

from tests.proving_ground.figures import Figure, House
from tests.proving_ground.pages import Piece, Said
from tests.proving_ground.vans import TANKS, Battery, Heater, Propane, Van
from tests.proving_ground.words import Phrase, Words, capital

QUANTITIES = {
    "length_mm": "long", "width_mm": "long", "height_mm": "long", "interior_height_mm": "short",
    "wheelbase_mm": "short", "gvwr_kg": "mass", "fuel_tank_l": "volume", "fresh_tank_l": "volume",
    "gray_tank_l": "volume", "black_tank_l": "volume", "cassette_l": "volume", "water_heater_l": "volume",
    "heater_rating_w": "power", "heater_output_w": "power", "heater_input_w": "power",
    "heater_consumption_l_h": "burn", "heater_power_draw_w": "draw", "solar_w": "watt", "inverter_w": "watt",
    "shore_power_a": "amp", "insulation_r_si": "r", "rated_min_temp_c": "temp",
}  # fmt: skip
POWERS = ("heater_rating_w", "heater_output_w", "heater_input_w")
FLAGS = (
    "water_lines_insulated", "water_lines_heated", "winterizing_bypass", "heated_floor", "thermal_break",
    "cab_shades_insulated", "rear_shades_insulated", *(f"{tank}_tank_insulated" for tank in TANKS),
)  # fmt: skip
CHOICES = ("drive", "engine_fuel", "window_glazing", "water_lines_location", "dump_valve_protection")
NOTHING = ("solar_w", "inverter_w", "black_tank_l")
COUNTS = {2: "two", 3: "three", 4: "four", 5: "five"}
ATTRIBUTIVE = {
    "gallons": "gallon", "litres": "litre", "watts": "watt", "amps": "amp", "inches": "inch", "pounds": "pound",
}  # fmt: skip
ROMAN = {1: "I", 2: "II", 3: "III"}


def plain_number(value: float) -> str:
    """Give a number as a gold file writes it."""
    return f"{value:g}"


def base_kind(kind: str) -> str:
    """Give a kind with its tank left out: ``gray_tank_heat`` is ``tank_heat``."""
    for tank in TANKS:
        for part in ("location", "heat", "insulated", "neither"):
            if kind == f"{tank}_tank_{part}":
                return f"tank_{part}"
        if kind == f"{tank}_place_heat":
            return "place_heat"
    return kind


class Speaker:
    """One house's words for one document: each choice of words is made once, as houses do."""

    def __init__(self, words: Words, house: House, rng: Random):
        self.words = words
        self.house = house
        self.rng = rng
        self.chosen: dict[Hashable, Any] = {}

    def pick(self, key: Hashable, options: Sequence[Any]) -> Any:
        """Give one of the options, the same one each time this key is asked."""
        if key not in self.chosen:
            self.chosen[key] = self.rng.choice(list(options))
        return self.chosen[key]

    def chance(self, key: Hashable, share: float) -> bool:
        """Give yes with a probability, the same answer each time this key is asked."""
        if key not in self.chosen:
            self.chosen[key] = self.rng.random() < share
        return bool(self.chosen[key])

    # -- words ------------------------------------------------------------------------------------------------------

    def tank(self, kind: str) -> str:
        """Give this house's noun for the tank that a kind is about; empty for other kinds."""
        tank = kind.split("_", 1)[0]
        if tank not in TANKS:
            return ""
        return str(self.pick(("tank", tank), self.words.texts("tanks", tank)))

    def label(self, kind: str) -> Phrase:
        """Give the label of a row, and what the label itself states."""
        phrase: Phrase = self.pick(("label", kind), self._fair(self.words.phrases("labels", base_kind(kind))))
        return Phrase(capital(phrase.text.replace("{T}", self.tank(kind))), phrase.beyond)

    def _fair(self, phrases: list[Phrase]) -> list[Phrase]:
        """Leave out words that belong to forced-air heaters, where the family has another one."""
        if self.chosen.get("all forced air", True):
            return phrases
        barred = self.words.texts("furnace")
        return [phrase for phrase in phrases if not any(word in phrase.text for word in barred)] or phrases

    def say(self, part: str, kind: str, van: Van) -> Piece | None:
        """Give a noun phrase (part ``features``) or a verb phrase (``clauses``); none where nobody says it so."""
        kind, _, forced = kind.partition("=")
        slots, says = self.content(kind, van, forced)
        value = forced or (says[0].value if says else "")
        name = self._named(part, kind, value)
        if name is None:
            return None
        phrase: Phrase = self.pick((part, kind, name), self.words.phrases(part, name))
        slots.setdefault("w", self.before_noun(slots.get("v", "")))
        return self._filled(phrase, slots, says)

    def _named(self, part: str, kind: str, value: str) -> str | None:
        if kind == "propane":
            kind = {"0": "propane=0"}.get(value, "")
            kind = kind or self.chosen.get("propane field", "propane_mass_kg")
        base = base_kind(kind)
        for name in (f"{base}={value}", base):
            if self.words.phrases(part, name):
                zero = value == "0" and name == base and base in NOTHING
                return None if zero else name
        return None

    def _filled(self, phrase: Phrase, slots: dict[str, str], says: Sequence[Said]) -> Piece:
        text = phrase.text.format(**slots)
        more = [Said(name, slots.get("=" + value, value)) for name, value in phrase.beyond]
        if any(name == "cassette_l" for name, _ in phrase.beyond):
            more = [Said(said.field, slots["=v"], habit=slots["habit"]) for said in more]
        return Piece(text, (*says, *more))

    # -- what a kind states -----------------------------------------------------------------------------------------

    def content(self, kind: str, van: Van, forced: str = "") -> tuple[dict[str, str], list[Said]]:
        """Give the slots and the statements of a kind for a van; ``forced`` is a value instead of the van's own."""
        has = van.has
        slots = {"T": self.tank(kind), "d": self._displacement(has["d"]), "hp": str(has["hp"]), "kw": str(has["kw"])}
        if kind in POWERS:
            return self._figured(slots, kind, has["heater"].watts)
        if kind in ("solar_w", "inverter_w") and not forced:
            text, said = self._watts(kind, has[kind])
            return {**slots, "v": text, "w": self.before_noun(text)}, [said]
        if kind in QUANTITIES:
            value = float(forced) if forced else has[kind]
            if kind in NOTHING and not value:
                return slots, [Said(kind, "0")]
            return self._figured(slots, kind, value)
        if kind in ("heater", "battery", "propane", "insulation"):
            piece, bare = getattr(self, f"_{kind}")(has[kind] if kind != "insulation" else has["insulation"])
            return {**slots, "v": piece.text, "a": bare}, list(piece.says)
        if kind == "sleeps":
            return {**slots, "v": self.count(has["sleeps"])}, [Said("sleeps", str(has["sleeps"]))]
        if kind == "en_grade":
            return {**slots, "v": self._grade(has["en_grade"])}, [Said(kind, str(has["en_grade"]))]
        if kind == "insulated_surfaces":
            text, said = self._surfaces(has[kind])
            return {**slots, "v": text}, [said]
        if kind == "season_claim":
            words = self.pick("season", self.words.texts("cells", "season_claim", "words"))
            return {**slots, "v": words}, [Said(kind, words)]
        if kind == "chassis":
            return {**slots, "v": has[kind]}, [Said(kind, has[kind])]
        if kind == "toilet":
            fig = self.house.figure("volume", has["cassette_l"])
            slots |= {"v": fig.text, "w": self.before_noun(fig.text), "=v": plain_number(fig.value), "habit": fig.habit}
            return slots, [Said(kind, forced or has[kind])]
        if kind.endswith("_neither"):
            tank = kind.split("_")[0]
            return slots, [Said(f"{tank}_tank_heat", "none"), Said(f"{tank}_tank_insulated", "no")]
        if kind == "shore_not":
            other = self.house.figure("amp", has["shore_power_a"] + 20).text
            more, says = self._figured(slots, "shore_power_a", has["shore_power_a"])
            return {**more, "other": other}, [replace(said, traits=("what it is not",)) for said in says]
        if kind.startswith("waste_"):
            field = kind.removeprefix("waste_")
            return slots, [Said(f"{tank}_tank_{field}", forced) for tank in ("gray", "black")]
        value = forced or has[kind]
        says = [Said(kind, value)]
        if value == "heated_compartment" and base_kind(kind) == "tank_heat":
            says.append(Said(kind.replace("_heat", "_location"), "enclosed"))
        return slots, says

    def _figured(self, slots: dict[str, str], kind: str, value: float) -> tuple[dict[str, str], list[Said]]:
        fig = self.house.figure(QUANTITIES[kind], value)
        return {**slots, "v": fig.text, "w": self.before_noun(fig.text)}, [
            Said(kind, plain_number(fig.value), habit=fig.habit)
        ]

    def before_noun(self, text: str) -> str:
        """Give a figure as English sets it before a noun: 30 gallons of water, a 30-gallon tank."""
        number, _, unit = text.rpartition(" ")
        singular = ATTRIBUTIVE.get(unit)
        return f"{number}-{singular}" if singular and self.words.language == "en" else text

    def _displacement(self, litres: float) -> str:
        return self.house.number(litres, 1)

    def count(self, number: int) -> str:
        """Give a small number in figures or in words, as the house does."""
        if self.chance("count words", 0.35) and number in COUNTS:
            return self.words.book["or_words"][COUNTS[number]]  # type: ignore[no-any-return]
        return str(number)

    def _grade(self, grade: int) -> str:
        return ROMAN[grade] if self.chance("roman", 0.3) else str(grade)

    def _surfaces(self, surfaces: Sequence[str]) -> tuple[str, Said]:
        order = list(surfaces)
        if self.chance("surfaces turned", 0.4):
            order[:2] = order[1::-1]
        words = [self.pick(("surface", one), self.words.texts("cells", "insulated_surfaces", one)) for one in order]
        join = self.pick("surfaces join", (", ", ", ", " / ", " + "))
        return capital(join.join(words)), Said("insulated_surfaces", "+".join(sorted(surfaces)))

    def _watts(self, kind: str, watts: int) -> tuple[str, Said]:
        if not watts:
            return "", Said(kind, "0")
        panels = 3 if watts == 600 else 2 if watts >= 200 else 1
        way = self.pick("panels", ("total", "total", "{n} x {w}", "{n} × {w}", "({n}) {w}"))
        if kind == "solar_w" and panels > 1 and way != "total":
            if way.startswith("(") and self.words.region != "us":
                way = "{n} x {w}"
            each = self.house.figure("watt", watts / panels)
            return way.format(n=panels, w=each.text), Said(kind, str(watts), habit=f"n × {each.habit}")
        fig = self.house.figure("watt", watts)
        return fig.text, Said(kind, plain_number(fig.value), habit=fig.habit)

    # -- composite kinds: the words, and the words with an article --------------------------------------------------

    def _heater(self, heater: Heater) -> tuple[Piece, str]:
        piece, article = self.heater(heater, bool(self.chosen.get("heater with power")))
        return piece, f"{article} {piece.text}".strip()

    def heater(self, heater: Heater, with_power: bool) -> tuple[Piece, str]:
        """Give a heater in this house's words, with its power where asked for, and the article that goes before."""
        key = f"{heater.kind} {heater.fuel}"
        article, _, noun = self.pick(("heater", key), self.words.texts("cells", "heater", key)).rpartition("|")
        says = (Said("heater_type", heater.kind), Said("heater_fuel", heater.fuel))
        if not with_power:
            return Piece(noun, says), article
        power = self.power(heater.watts, heater.basis)
        return Piece(f"{noun}, {power.text}", (*says, *power.says)), article

    def power(self, watts: float, basis: str) -> Piece:
        """Give a heater's power with the words of its basis."""
        fig = self.house.figure("power", watts)
        text = fig.text
        traits: tuple[str, ...] = ()
        if self.chance("power range", 0.12) and fig.bare and watts > 2500:
            low = self.house.figure("power", watts / 2)
            way = self.pick("range", self.words.texts("cells", "power_range"))
            text, traits = way.format(a=low.bare, v=fig.text), ("range of power",)
        if basis != "rating":
            text = self.pick(("basis", basis), self.words.texts("cells", f"basis_{basis}")).format(v=text)
        return Piece(text, (Said(f"heater_{basis}_w", plain_number(fig.value), habit=fig.habit, traits=traits),))

    def _battery(self, battery: Battery) -> tuple[Piece, str]:
        piece = self.battery(battery)
        return piece, piece.text

    def battery(self, battery: Battery) -> Piece:
        """Give a battery bank in this house's words."""
        chem = self.pick(("chem", battery.chemistry), self.words.texts("cells", "battery_chemistry", battery.chemistry))
        says = [Said("battery_chemistry", battery.chemistry)]
        if battery.watt_hours:
            fig = self.house.figure("energy", battery.watt_hours)
            bank = fig.text
            says.append(Said("battery_wh", plain_number(fig.value), habit=fig.habit))
        else:
            bank, habit = self._bank(battery)
            says.append(Said("battery_ah", str(battery.ah), habit=habit))
        text = self.pick("battery cell", self.words.texts("cells", "battery_cell")).format(bank=bank, chem=chem)
        if battery.series:
            says.append(Said("battery_wh", plain_number(battery.ah * 12), habit="from Ah and V"))
        elif battery.volts and battery.ah:
            volts = self.house.exact(battery.volts, 1)
            text += f", {volts}{self.house.way.gap}V"
            says.append(Said("battery_wh", plain_number(round(battery.ah * battery.volts, 1)), habit="from Ah and V"))
        if battery.heated:
            text += ", " + self.pick("battery heated", self.words.texts("cells", "battery_heated_words"))
            says.append(Said("battery_heated", "yes"))
        return Piece(text, tuple(says))

    def _bank(self, battery: Battery) -> tuple[str, str]:
        each = self.house.figure("hour", battery.each)
        if battery.series:
            return self.pick("in series", self.words.texts("cells", "in_series")).format(ah=each.text), "6 V in series"
        if battery.count == 1:
            return each.text, each.habit
        forms = ["{n} x {a}", "{n} × {a}", "{t}", "{N} {a}"]
        if self.words.language == "en":
            forms += ["({n}) {a}", "twin {a}"] if battery.count == 2 else ["({n}) {a}"]
        form = self.pick(("bank", battery.count), forms)
        total = self.house.figure("hour", battery.ah)
        counted = self.words.book["or_words"][COUNTS[battery.count]]
        text = form.format(n=battery.count, a=each.text, t=total.text, N=counted)
        return text, total.habit if form == "{t}" else f"n × {each.habit}"

    def _propane(self, propane: Propane) -> tuple[Piece, str]:
        if propane.form == "none":
            text = self.pick("no propane", self.words.texts("cells", "no_propane"))
            return Piece(text, (Said("propane_tank_l", "0"),)), text
        if propane.form == "tank":
            self.chosen["propane field"] = "propane_tank_l"
            fig = self.house.figure("volume", propane.amount)
            text = fig.text
            if propane.basis:
                text = self.pick(("propane basis", propane.basis), self.words.texts("cells", propane.basis)).format(
                    v=text
                )
            return Piece(text, (Said("propane_tank_l", plain_number(fig.value), habit=fig.habit),)), text
        self.chosen["propane field"] = "propane_mass_kg"
        one, kilos, habit = self._cylinder(propane.amount)
        form = "locker" if propane.form == "locker" else "cylinders" if propane.count > 1 else "cylinder"
        way = self.pick(("propane", form), self.words.texts("cells", form))
        counted = self.words.book["or_words"][COUNTS[propane.count]] if propane.count > 1 else ""
        text = way.format(n=propane.count, one=one, N=counted)
        says = Said("propane_mass_kg", plain_number(round(kilos * propane.count, 2)), habit=f"n × {habit}")
        return Piece(text, (says,)), text

    def _cylinder(self, kilos: float) -> tuple[str, float, str]:
        if self.words.region in ("us", "qc"):
            unit = self.pick("cylinder unit", ("lb", "lb", "-lb", "lbs") if self.words.region == "us" else ("lb",))
            text = "20-lb" if unit == "-lb" else f"20 {unit}"
            return text, 20 * 0.45359237, unit
        gap = self.house.way.gap
        return f"{kilos:.0f}{gap}kg", kilos, "kg"

    def _insulation(self, insulation: tuple[tuple[str, ...], int]) -> tuple[Piece, str]:
        materials, thickness = insulation
        fig = self.house.figure("thickness", thickness)
        words = [
            self.pick(("material", one), self.words.texts("cells", "insulation_material", one)) for one in materials
        ]
        material = f" {self.words.book['and']} ".join(words)
        text = self.pick("insulation cell", self.words.texts("cells", "insulation_cell")).format(
            material=material, thick=fig.text
        )
        says = (
            Said("insulation_material", "+".join(sorted(materials))),
            Said("insulation_thickness_mm", plain_number(fig.value), habit=fig.habit),
        )
        return Piece(text, says), text

    def figure(self, kind: str, value: float) -> Figure:
        """Give the figure of a number kind."""
        return self.house.figure(QUANTITIES[kind], value)
