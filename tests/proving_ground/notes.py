"""Footnotes that give a basis, change a value for one van, or add a value."""

from __future__ import annotations

from collections.abc import Sequence

from tests.proving_ground.pages import Claim, Para, Piece, Said
from tests.proving_ground.rows import Row
from tests.proving_ground.speaker import QUANTITIES, plain_number
from tests.proving_ground.studio import Studio

SIGNS = (("¹", "²", "³"), ("*", "**", "***"), ("¹)", "²)", "³)"), ("†", "‡", "§"), ("¹", "²", "³"))


class Notes:
    """The footnotes of one table or list."""

    def __init__(self, studio: Studio):
        self.studio = studio
        self.signs = list(studio.speaker.pick("note signs", SIGNS))
        self.lines: list[str] = []
        self.claims: list[Claim] = []

    def basis(self, groups: Sequence[tuple[str, list[Row]]]) -> None:
        """Move the basis of a heater's rating from its row into a note."""
        for _, rows in groups:
            for row in rows:
                if row.kind != "heater_rating_w" or not self.signs:
                    continue
                basis = self.studio.rng.choice(("input", "output"))
                sign = self.signs.pop(0)
                words = self.studio.words.texts("basis_notes", basis)
                self.lines.append(f"{sign} {self.studio.rng.choice(words)}")
                for place, cell in enumerate(row.cells):
                    if cell.says:
                        says = tuple(
                            Said(
                                f"heater_{basis}_w",
                                said.value,
                                said.availability,
                                said.habit,
                                ("note gives the basis",),
                            )
                            for said in cell.says
                        )
                        row.cells[place] = Piece(cell.text, says)
                row.label += sign

    def override(self, groups: Sequence[tuple[str, list[Row]]]) -> None:
        """Let a note change one van's value of a line that is printed once for all of them."""
        studio = self.studio
        rows = [row for _, found in groups for row in found]
        fitting = [row for row in rows if row.kind in ("height_mm", "fuel_tank_l", "gvwr_kg") and self._alike(row)]
        if not fitting or not self.signs or len(studio.family.vans) < 2:
            return
        row = studio.rng.choice(fitting)
        place = studio.rng.randrange(len(studio.family.vans))
        van = studio.family.vans[place]
        fig = studio.house.figure(QUANTITIES[row.kind], float(van.has[row.kind]) * 1.12)
        sign = self.signs.pop(0)
        way = studio.rng.choice(studio.words.texts("override_notes", row.kind))
        self.lines.append(f"{sign} {way.format(van=studio.head_of(place), v=fig.text)}")
        said = Said(row.kind, plain_number(fig.value), habit=fig.habit, traits=("note changes one van's value",))
        self.claims.append(Claim(place, said, fig.text))
        text = row.cells[place].text + sign
        row.cells = [Piece(text, () if at == place else cell.says) for at, cell in enumerate(row.cells)]
        row.traits = (*row.traits, "note changes another van's value")

    def _alike(self, row: Row) -> bool:
        return bool(row.cells[0].says) and len({cell.text for cell in row.cells}) == 1

    def added(self, stated: set[str]) -> None:
        """Add a value that no row prints."""
        studio = self.studio
        kinds = [kind for kind in ("fuel_tank_l", "width_mm", "shore_power_a") if kind not in stated]
        kinds = [kind for kind in kinds if studio.words.phrases("added_notes", kind)]
        vans = studio.family.vans
        kinds = [kind for kind in kinds if len({van.has[kind] for van in vans}) == 1 and vans[0].has[kind]]
        if not kinds:
            return
        kind = studio.rng.choice(kinds)
        fig = studio.speaker.figure(kind, vans[0].has[kind])
        said = Said(kind, plain_number(fig.value), habit=fig.habit, traits=("note adds a value",))
        if not all(studio.ledger.fits(place, (said,), "standard") for place in range(len(vans))):
            return
        self.lines.append(studio.rng.choice(studio.words.texts("added_notes", kind)).format(v=fig.text))
        for place in range(len(vans)):
            self.claims.append(Claim(place, said, fig.text))
            studio.ledger.add(place, (said,))

    def block(self) -> Para | None:
        """Give the notes as small print."""
        if not self.lines:
            return None
        return Para(layout="footnotes", text=" ".join(self.lines), small=True, claims=list(self.claims))
