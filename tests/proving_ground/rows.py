"""Rows of a specification: a label, and what stands under each van."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field, replace

from tests.proving_ground.figures import Figure
from tests.proving_ground.pages import Piece, Said
from tests.proving_ground.speaker import (
    CHOICES,
    FLAGS,
    NOTHING,
    POWERS,
    QUANTITIES,
    Speaker,
    base_kind,
    plain_number,
)
from tests.proving_ground.vans import Battery, Family, Van, draw_battery
from tests.proving_ground.words import capital

SILENT = Piece("")
DIMS = ("length_mm", "width_mm", "height_mm")
COMPOSITES = {
    "dims": DIMS,
    "dims_other": (),
    "waters": ("fresh_tank_l", "gray_tank_l"),
    "waters_other": ("gray_tank_l", "fresh_tank_l"),
    "waters_three": ("fresh_tank_l", "gray_tank_l", "black_tank_l"),
    "out_in": ("heater_output_w", "heater_input_w"),
    "belts_berths": ("sleeps",),
    "fresh_travel": ("fresh_tank_l",),
}
BY_LETTER = {"l": "length_mm", "w": "width_mm", "h": "height_mm"}
UPGRADED = {"battery": "upgrade_battery", "solar_w": "upgrade_solar", "inverter_w": "upgrade_inverter"}


@dataclass(slots=True)
class Row:
    """A row: its kind, its label, one piece per van (empty text: nothing said), and habits it shows."""

    kind: str
    label: str
    cells: list[Piece]
    traits: tuple[str, ...] = ()
    silent: list[bool] = field(default_factory=list)


class Rows:
    """Makes the rows of one document's specification; ``stated`` are the kinds already said somewhere."""

    def __init__(self, speaker: Speaker, family: Family):
        self.speaker = speaker
        self.family = family
        self.rng = speaker.rng
        self.unit_place = self.rng.choice(("cell", "cell", "cell", "({u})", "({u})", ", {u}", "[{u}]", "in"))
        self.options_in_cells = self.rng.random() < 0.4
        self.silence = self.speaker.words.texts("does_not_apply")
        self.silent_mark = ""

    def row(self, kind: str) -> Row | None:
        """Give a row of a kind for all vans of the family; none where this house cannot say it in a table."""
        if kind in COMPOSITES:
            return self._composite(kind)
        if kind.endswith("_place_heat"):
            return self._place_and_heat(kind)
        if not self.speaker.words.phrases("labels", base_kind(kind)):
            return None
        label = self.speaker.label(kind)
        cells = [self._cell(kind, van) for van in self.family.vans]
        if all(cell is None for cell in cells):
            return None
        more = tuple(Said(name, value) for name, value in label.beyond)
        pieces = [Piece(cell.text, (*cell.says, *more)) if cell and cell.says else cell or SILENT for cell in cells]
        row = Row(kind, label.text, pieces)
        return self._with_unit(self._with_options(row))

    # -- cells ------------------------------------------------------------------------------------------------------

    def _cell(self, kind: str, van: Van) -> Piece | None:
        if kind in FLAGS:
            return self._flag(kind, van)
        if kind in CHOICES or base_kind(kind) in ("tank_location", "tank_heat"):
            return self._choice(kind, van)
        if kind == "toilet":
            return self._toilet(van)
        if kind == "sleeps":
            return self._sleeps(van)
        if kind == "en_grade":
            way = self.speaker.pick("en cell", self.speaker.words.texts("cells", "en_grade"))
            grade = van.has[kind]
            return Piece(way.format(n=grade, r="I" * grade), (Said(kind, str(grade)),))
        if kind == "season_claim":
            words = self.speaker.pick("season", self.speaker.words.texts("cells", kind, "words"))
            return Piece(capital(words) if self.speaker.chance("season capital", 0.5) else words, (Said(kind, words),))
        if kind in NOTHING and not van.has[kind]:
            return Piece(self.speaker.pick("none", self.speaker.words.texts("cells", "none")), (Said(kind, "0"),))
        if kind == "fuel_tank_l" and not van.has[kind]:
            return None
        if kind in ("heater_rating_w", "heater_output_w", "heater_input_w"):
            if kind != f"heater_{van.has['heater'].basis}_w":
                return None
        if kind == "heater_consumption_l_h" and not self._burns(van):
            return None
        slots, says = self.speaker.content(kind, van)
        text = slots["v"]
        if kind == "shore_power_a":
            text = self._with_voltage(text)
        if QUANTITIES.get(kind) == "volume" and self.speaker.chance(("hedge", kind), 0.08):
            text = self.speaker.pick("hedge", self.speaker.words.texts("cells", "hedges")).format(v=text)
            says = [replace(said, traits=("hedged figure",)) for said in says]
        return Piece(capital(text) if kind in ("heater", "insulation") else text, tuple(says))

    def _burns(self, van: Van) -> bool:
        heater = van.has["heater"]
        return "electric" not in heater.fuel and "propane" not in heater.fuel

    def _with_voltage(self, text: str) -> str:
        if not self.speaker.chance("voltage beside", 0.25):
            return text
        volts = {"us": "120 V", "qc": "120 V", "au": "240 V"}.get(self.family.region, "230 V")
        return self.speaker.pick("voltage form", ("{v} / {a}", "{a}, {v}")).format(v=volts, a=text)

    def _flag(self, kind: str, van: Van) -> Piece:
        words = self.speaker.words
        mark = van.has.get(f"{kind} mark")
        if mark == "optional":
            return Piece(self.speaker.pick("optional", words.texts("cells", "optional")), (Said(kind, "yes", mark),))
        if mark == "not_available":
            text = self.speaker.pick("not available", words.texts("cells", "not_available"))
            return Piece(text, (Said(kind, "yes", mark),))
        held = van.has[kind] == "yes"
        text = self.speaker.pick(("flag", held), self._plain(words.texts("cells", "affirmed" if held else "denied")))
        return Piece(text, (Said(kind, "yes" if held else "no"),))

    def _plain(self, texts: list[str]) -> list[str]:
        return [text for text in texts if self.speaker.house.glyphs or text != "✓"]

    def _choice(self, kind: str, van: Van) -> Piece | None:
        value = van.has[kind]
        base = base_kind(kind)
        options = self.speaker.words.phrases("cells", base, value)
        if not options:
            return None
        texts = [phrase.text for phrase in options]
        if base == "tank_heat" and value in ("none", "unspecified") and self._asks_for_frost(kind):
            # "Frost protection: yes" could be insulation; such a label gets a cell that speaks of heat.
            texts = [text for text in texts if any(word in text for word in self.speaker.words.texts("heating"))]
        text = self.speaker.pick(("cell", base, value, len(texts)), texts)
        slots, says = self.speaker.content(kind, van)
        return Piece(text.format(**slots), tuple(says))

    def _asks_for_frost(self, kind: str) -> bool:
        label = self.speaker.label(kind).text.casefold()
        return any(word in label for word in self.speaker.words.texts("frost"))

    def _toilet(self, van: Van) -> Piece:
        value = van.has["toilet"]
        word = self.speaker.pick(("cell", "toilet", value), self.speaker.words.texts("cells", "toilet", value))
        if value == "cassette" and van.has.get("cassette in cell"):
            fig = self.speaker.figure("cassette_l", van.has["cassette_l"])
            text = self.speaker.pick("toilet litres", self.speaker.words.texts("cells", "toilet_litres"))
            says = (Said("toilet", value), Said("cassette_l", plain_number(fig.value), habit=fig.habit))
            return Piece(text.format(word=word, v=fig.text), says)
        return Piece(word, (Said("toilet", value),))

    def _sleeps(self, van: Van) -> Piece:
        number = van.has["sleeps"]
        way = self.speaker.pick("sleeps cell", self.speaker.words.texts("cells", "sleeps")) if number > 2 else "{n}"
        text = way.format(n=number, m=2, k=number - 2)
        return Piece(text, (Said("sleeps", str(number), habit="" if way == "{n}" else "range or sum of berths"),))

    # -- composite labels -------------------------------------------------------------------------------------------

    def _composite(self, kind: str) -> Row | None:
        if not self.speaker.words.phrases("labels", kind):
            return None
        phrase = self.speaker.label(kind)
        label = phrase.text
        fields = COMPOSITES[kind] or tuple(BY_LETTER[letter] for letter in dict(phrase.beyond)["order"])
        cells = [self._several(kind, fields, van) for van in self.family.vans]
        units = {cell[1] for cell in cells}
        if len(units) > 1:
            return None
        unit = units.pop()
        pieces = [cell[0] for cell in cells]
        if not all(piece.text for piece in pieces):
            return None
        if unit and self.speaker.chance("unit in composite label", 0.5):
            pieces = [Piece(piece.text.removesuffix(f" {unit}"), piece.says) for piece in pieces]
            label = f"{label} ({unit})"
        return Row(kind, label, pieces, ("several fields in one label",))

    def _place_and_heat(self, kind: str) -> Row:
        tank = kind.split("_", 1)[0]
        label = self.speaker.label(kind).text
        join = self.speaker.pick("composite join", (" / ", "/"))
        cells = []
        for van in self.family.vans:
            place, heat = (self._choice(f"{tank}_tank_{part}", van) for part in ("location", "heat"))
            if place is None or heat is None:
                cells.append(SILENT)
            else:
                cells.append(Piece(f"{place.text}{join}{heat.text}", (*place.says, *heat.says)))
        return Row(kind, label, cells, ("several fields in one label",))

    def _several(self, kind: str, fields: Sequence[str], van: Van) -> tuple[Piece, str]:
        if kind == "belts_berths":
            join = self.speaker.pick("composite join", (" / ", "/"))
            return Piece(f"4{join}{van.has['sleeps']}", (Said("sleeps", str(van.has["sleeps"])),)), ""
        if kind == "fresh_travel":
            full = self.speaker.figure("fresh_tank_l", van.has["fresh_tank_l"])
            if not full.bare:
                return SILENT, ""
            join = self.speaker.pick("composite join", (" / ", "/"))
            said = Said("fresh_tank_l", plain_number(full.value), habit=full.habit, traits=("travelling / full",))
            return Piece(f"{10 if full.value > 50 else 5}{join}{full.bare} {full.unit}", (said,)), full.unit
        values = {name: self._value(name, van) for name in fields}
        figures = [self.speaker.house.figure(QUANTITIES[name], value) for name, value in values.items()]
        says = tuple(
            Said(name, plain_number(fig.value), habit=fig.habit) for name, fig in zip(values, figures, strict=True)
        )
        join = self.speaker.pick("composite join", (" / ", "/", " / ")) if "dims" not in kind else self._dims_join(kind)
        if all(fig.bare for fig in figures):
            unit = figures[0].unit
            return Piece(join.join(fig.bare for fig in figures) + f" {unit}", says), unit
        return Piece(join.join(fig.text for fig in figures), says), ""

    def _dims_join(self, kind: str) -> str:
        label = self.speaker.label(kind).text
        return " × " if "×" in label else " / "

    def _value(self, name: str, van: Van) -> float:
        if name == "heater_output_w":
            return float(van.has["heater"].watts)
        if name == "heater_input_w":
            return float(van.has["heater"].watts) * 1.25
        return float(van.has[name])

    # -- units in labels, options in cells --------------------------------------------------------------------------

    def _with_unit(self, row: Row) -> Row:
        if self.unit_place == "cell" or row.kind not in QUANTITIES or row.kind == "rated_min_temp_c":
            return row
        figures = [self._own_figure(row, place) for place in range(len(row.cells))]
        shown = [fig for fig in figures if fig is not None]
        if not shown or any(not fig.bare for fig in shown) or len({fig.unit for fig in shown}) > 1:
            return row
        if any(fig is None and self._has_figure(cell) for cell, fig in zip(row.cells, figures, strict=True)):
            return row
        unit = shown[0].unit
        within = {"fr": "en {u}", "de": "in {u}"}.get(self.speaker.words.language, "in {u}")
        place = f" {within}" if self.unit_place == "in" else self.unit_place
        place = place if place.startswith((",", " ")) else f" {place}"
        cells = [Piece(fig.bare, cell.says) if fig else cell for cell, fig in zip(row.cells, figures, strict=True)]
        return replace(row, label=row.label + place.format(u=unit), cells=cells, traits=(*row.traits, "unit in label"))

    def _has_figure(self, cell: Piece) -> bool:
        return bool(cell.says) and cell.says[0].value != "0"

    def _own_figure(self, row: Row, place: int) -> Figure | None:
        cell = row.cells[place]
        if len(cell.says) != 1 or cell.says[0].value == "0":
            return None
        van = self.family.vans[place]
        value = van.has["heater"].watts if row.kind in POWERS else van.has[row.kind]
        fig = self.speaker.figure(row.kind, value)
        return fig if fig.text == cell.text else None

    def _with_options(self, row: Row) -> Row:
        """Let single cells carry an option beside the standard, or be an option themselves."""
        if not self.options_in_cells or row.kind not in UPGRADED or self.rng.random() < 0.4:
            return row
        cells = list(row.cells)
        words = self.speaker.words
        for place, van in enumerate(self.family.vans):
            if self.rng.random() < 0.5 or not cells[place].says:
                continue
            if self.rng.random() < 0.4 and cells[place].says[0].value != "0":
                way = self.speaker.pick("optional cell", words.texts("optional_cell"))
                says = tuple(replace(said, availability="optional") for said in cells[place].says)
                cells[place] = Piece(way.format(v=cells[place].text), says)
                van.has[f"{row.kind} optional"] = True
                continue
            other = self._upgrade(row.kind, van)
            if other is None:
                continue
            way = self.speaker.pick("standard and optional", words.texts("standard_and_optional"))
            says = tuple(replace(said, availability="optional") for said in other.says)
            cells[place] = Piece(way.format(a=cells[place].text, b=other.text), (*cells[place].says, *says))
            van.has[f"{row.kind} optional"] = True
        return replace(row, cells=cells, traits=(*row.traits, "option inside a cell"))

    def _upgrade(self, kind: str, van: Van) -> Piece | None:
        return upgrade(self.speaker, UPGRADED[kind], van)


def upgrade(speaker: Speaker, kind: str, van: Van) -> Piece | None:
    """Give something larger than what the van has: its words and statements; none where there is nothing larger."""
    has = van.has
    if kind == "upgrade_battery":
        return _larger_battery(speaker, has["battery"])
    if kind in ("upgrade_solar", "upgrade_inverter"):
        name = "solar_w" if kind == "upgrade_solar" else "inverter_w"
        steps = (200, 400, 600, 800) if name == "solar_w" else (1000, 2000, 3000, 3600)
        larger = [step for step in steps if step > 1.2 * has[name]]
        if not larger or not has[name] and name == "inverter_w" and not larger:
            return None
        fig = speaker.figure(name, speaker.rng.choice(larger))
        return Piece(fig.text, (Said(name, plain_number(fig.value), habit=fig.habit),))
    number = has["sleeps"] + speaker.rng.choice((1, 2))
    return Piece(speaker.count(number), (Said("sleeps", str(number)),)) if number <= 5 else None


def _larger_battery(speaker: Speaker, now: Battery) -> Piece | None:
    for _ in range(20):
        other = draw_battery(speaker.rng)
        if other.watt_hours or now.watt_hours or other.ah < 1.3 * now.ah or other.series:
            continue
        if other.chemistry != "lithium" and now.chemistry == "lithium":
            continue
        return speaker.battery(other)
    return None
