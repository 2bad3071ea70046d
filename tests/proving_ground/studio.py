"""All that is drawn once for a document: its family of vans, its house of words and figures, its look, its account."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from random import Random

from tests.proving_ground.chatter import Chatter
from tests.proving_ground.equipment import Equipment
from tests.proving_ground.figures import House
from tests.proving_ground.ledger import Ledger
from tests.proving_ground.nameplates import NamePlates
from tests.proving_ground.naming import draw_naming
from tests.proving_ground.pages import Block, Heading, Look, Para, Piece, Title
from tests.proving_ground.rows import DIMS, Row, Rows
from tests.proving_ground.speaker import Speaker
from tests.proving_ground.vans import Family, draw_family
from tests.proving_ground.words import Words, capital, words_of

GROUPS = {
    "vehicle": "chassis engine_fuel drive dims interior_height_mm wheelbase_mm gvwr_kg sleeps fuel_tank_l",
    "water": (
        "waters black_tank_l fresh_tank_location fresh_tank_heat fresh_tank_insulated gray_tank_location "
        "gray_tank_heat gray_tank_insulated black_tank_location black_tank_heat toilet cassette_l water_lines_location "
        "water_lines_insulated water_lines_heated dump_valve_protection winterizing_bypass water_heater_l"
    ),
    "heat": "heater power heater_consumption_l_h heater_power_draw_w heated_floor",
    "energy": "propane battery solar_w inverter_w shore_power_a",
    "shell": (
        "insulation insulation_r_si insulated_surfaces thermal_break window_glazing cab_shades_insulated "
        "rear_shades_insulated rated_min_temp_c en_grade season_claim"
    ),
}


class Studio:
    """One document in the making."""

    def __init__(
        self, rng: Random, region: str, vans: int, glyphs: bool, paged: bool, headed: bool, usual: bool,
        family: Family | None = None,
    ):  # fmt: skip
        """``family`` are vans of which another document tells already; else a family is drawn."""
        self.rng = rng
        self.region = region
        self.words: Words = words_of(region)
        self.family: Family = family or draw_family(rng, region, vans, usual)
        self.house = House(region, rng, glyphs)
        self.speaker = Speaker(self.words, self.house, rng)
        self.aloud = Speaker(self.words, self.house.aloud(), rng)
        self.ledger = Ledger()
        self.rows = Rows(self.speaker, self.family)
        self.equipment = Equipment(self.speaker, self.family, self.ledger)
        self.chatter = Chatter(self.words, self.house, rng, self.family)
        self.look = Look(
            font=rng.choice(("Helvetica", "Helvetica", "Times")),
            size=rng.choice((8.5, 9.0, 9.5, 10.0)),
            letter=region in ("us", "qc"),
            spaced=rng.random() < 0.2,
            accent=rng.choice(("#1f3d4d", "#5a2a27", "#2f4f2f", "#333333", "#4b3a66")),
        )
        forced = all(van.has["heater"].kind == "forced_air" for van in self.family.vans)
        self.speaker.chosen["all forced air"] = self.aloud.chosen["all forced air"] = forced
        self.speaker.chosen["heater with power"] = rng.random() < 0.35
        self.aloud.chosen["heater with power"] = False
        self.noisy = rng.random() < 0.75
        self.naming = draw_naming(rng, bool(self.family.series), self.family.way, vans, headed, paged, usual)
        self.names = NamePlates(self.naming, self.family, self.words, self.chatter, rng)

    # -- small words ------------------------------------------------------------------------------------------------

    def heading(self, name: str, level: int = 1) -> Heading:
        """Give a heading."""
        return Heading(text=self.speaker.pick(("heading", name), self.words.texts("headings", name)), level=level)

    def group(self, name: str) -> str:
        """Give the heading of a group of rows."""
        return str(self.speaker.pick(("group", name), self.words.texts("groups", name)))

    def title(self, vans_below: bool = False) -> Title:
        """Give the title, and the vans where asked for or where they are a document's only one."""
        return self.names.title(vans_below or len(self.family.vans) == 1)

    def name_van(self, block: Block, place: int, words: str = "") -> None:
        """Note that a block names a van, by its whole name unless other words are given."""
        self.names.name_van(block, place, words)

    def small_print(self, more: Sequence[str] = ()) -> Para:
        """Give the imprint with a caution, and the maker's name and the year where they stand there."""
        block = Para(layout="title", small=True)
        block.text = " ".join([*more, self.chatter.caution(), *self.names.imprint(block)])
        return block

    def head_of(self, place: int) -> str:
        """Give the head of a van's column: its whole name, or its code where the house prints only codes."""
        van = self.family.vans[place]
        return van.code if self.naming.heads_are_codes else van.model

    # -- planning ---------------------------------------------------------------------------------------------------

    def plan(self, share: float = 0.8, leave_out: Iterable[str] = ()) -> list[tuple[str, list[Row]]]:
        """Give the groups of rows of a specification with about that share of what could be printed."""
        left_out = set(leave_out)
        surfaces = self.rng.random() < share
        left_out |= set() if surfaces else {"insulated_surfaces"}
        groups = []
        for group, kinds in GROUPS.items():
            rows = []
            for kind in self._kinds(kinds.split()):
                if kind in left_out or kind != "insulated_surfaces" and self.rng.random() > share:
                    continue
                row = self.rows.row(kind)
                if row is not None and kind == "insulation" and surfaces:
                    _without_surfaces(row)
                if row is not None and self._fair(row):
                    rows.append(row)
                    for place, cell in enumerate(row.cells):
                        self.ledger.add(place, cell.says)
            if self.noisy:
                rows += [Row("", label, [Piece(text) for text in own]) for label, own in self.chatter.rows(1)]
                if self.rng.random() < 0.5:
                    self.rng.shuffle(rows)
            if rows:
                groups.append((group, rows))
        return self._without_doubt(groups)

    def _kinds(self, kinds: list[str]) -> list[str]:
        rng, family = self.rng, self.family
        heater = [van.has["heater"] for van in family.vans]
        basis = heater[0].basis
        replaced = {
            "dims": [rng.choice(("dims", "dims_other"))] if rng.random() < 0.3 else list(DIMS),
            "waters": self._waters(),
            "sleeps": ["belts_berths" if rng.random() < 0.15 else "sleeps"],
            "power": [] if self.speaker.chosen["heater with power"] else [f"heater_{basis}_w"],
        }
        if basis == "output" and rng.random() < 0.15 and all(one.kind != "heat_pump" for one in heater):
            replaced["power"] = ["out_in"]
        found: list[str] = []
        for kind in kinds:
            found += replaced.get(kind, [kind])
        for tank in ("fresh", "gray"):
            if rng.random() < 0.15 and f"{tank}_tank_heat" in found:
                at = found.index(f"{tank}_tank_heat")
                found[at] = f"{tank}_place_heat"
                found.remove(f"{tank}_tank_location")
        if not family.black_water:
            found = [k for k in found if not k.startswith("black_tank_") or k == "black_tank_l" and self.region == "us"]
        if any(van.has["toilet"] != "cassette" for van in family.vans):
            found = [kind for kind in found if kind != "cassette_l"]
        elif rng.random() < 0.5:
            found = [kind for kind in found if kind != "cassette_l"]
            for van in family.vans:
                van.has["cassette in cell"] = True
        return found

    def _waters(self) -> list[str]:
        roll = self.rng.random()
        if self.family.black_water and roll < 0.2:
            return ["waters_three"]
        if roll < 0.35:
            return [self.rng.choice(("waters", "waters_other"))]
        if roll < 0.42:
            return ["fresh_travel", "gray_tank_l"]
        return ["fresh_tank_l", "gray_tank_l"]

    def _fair(self, row: Row) -> bool:
        """Leave out rows that would say something a second time."""
        for place, cell in enumerate(row.cells):
            for said in cell.says:
                before = self.ledger.stated[(place, said.field)]
                if any(other.availability == said.availability for other in before):
                    return False
        return not (row.kind == "black_tank_l" and any(
            self.ledger.stated[(place, "black_tank_l")] for place in range(len(self.family.vans))
        ))  # fmt: skip

    def _without_doubt(self, groups: list[tuple[str, list[Row]]]) -> list[tuple[str, list[Row]]]:
        """Leave a wall's R-value out where nothing else says that the walls are insulated."""
        stated = any(
            said.field == "insulated_surfaces" for _, rows in groups for row in rows for cell in row.cells
            for said in cell.says
        )  # fmt: skip
        if not stated:
            groups = [(name, [row for row in rows if row.kind != "insulation_r_si"]) for name, rows in groups]
            for place in range(len(self.family.vans)):
                self.ledger.stated.pop((place, "insulation_r_si"), None)
        return [(name, rows) for name, rows in groups if rows]


def _without_surfaces(row: Row) -> None:
    """Let a row of surfaces outrank what another row's label says of walls."""
    row.cells = [
        Piece(cell.text, tuple(said for said in cell.says if said.field != "insulated_surfaces")) for cell in row.cells
    ]


def sentence(text: str) -> str:
    """Give words as a sentence."""
    text = capital(text.strip())
    return text if text.endswith((".", "!", "?")) else text + "."
