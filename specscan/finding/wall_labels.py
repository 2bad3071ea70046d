"""Labels that name the walls and mean their insulation: "Walls (mm): 40", "In the walls: 1 in, R-3.5"."""

from __future__ import annotations

import re

from specscan.finding.kit import Kit
from specscan.finding.language.lexicon import owns
from specscan.finding.language.whole_words import any_word

UNIT = r"\s*[\[(,]?\s*[^\s()\[\],]{1,6}[\])]?"


class WallLabels:
    """Gives such labels their whole wording, for one language."""

    def __init__(self, kit: Kit):
        self.kit = kit
        walls = any_word(kit.lexicon.words.walls_alone)
        self.walls = re.compile(rf"\s*(?:{walls})(?P<unit>{UNIT})?\s*", re.IGNORECASE)

    def of(self, label: str, body: str) -> str:
        """Give a label as that of the wall insulation, where it names the walls alone and what it asks for is of that.

        Its unit is a thickness or a resistance, or its value is a resistance or a material: "Walls: white" is none.
        """
        match = self.walls.fullmatch(label)
        if match is None:
            return label
        unit = self.kit.units.in_head(label, self.kit.lexicon.words.cues.get("in_unit")) if match["unit"] else None
        if match["unit"] and (unit is None or unit.dimension not in ("length", "insulance")):
            return label
        if unit is None and not self._insulates(body):
            return label
        return f"{self.kit.lexicon.words.wall_insulation}{match['unit'] or ''}"

    def _insulates(self, body: str) -> bool:
        """Tell whether a value is a thermal resistance, or a material for insulation with its thickness."""
        kinds = {quantity.dimension for quantity in self.kit.quantities.find(body)}
        book = self.kit.lexicon.book
        mentions = self.kit.lexicon.analyse(body).mentions
        material = any(m.concept.kind == "value" and owns(book, "insulation", m.concept) for m in mentions)
        return "insulance" in kinds or material and "length" in kinds
