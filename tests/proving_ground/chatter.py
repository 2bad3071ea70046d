"""What brochures print besides facts: lookalikes that are not the field, stories, cautions, prices, small print."""

from __future__ import annotations

import re
from random import Random

from tests.proving_ground.figures import House
from tests.proving_ground.vans import Family
from tests.proving_ground.words import Words, capital

SLOT = re.compile(r"\{(\w+)(?::(\d+)-(\d+))?\}")
LEGAL_NAME = re.compile(r"^\{maker\} \{form\}(?:,| \|) ")
BTU = 0.29307107


class Chatter:
    """Words of one document that state nothing of the vocabulary."""

    def __init__(self, words: Words, house: House, rng: Random, family: Family):
        self.words = words
        self.house = house
        self.rng = rng
        self.family = family
        self.told: set[str] = set()

    def rows(self, count: int) -> list[tuple[str, list[str]]]:
        """Give lookalike rows: a label, and a value for each van."""
        found = [row for row in self.words.rows("noise_rows") if row[0] not in self.told]
        chosen = self.rng.sample(found, min(count, len(found)))
        self.told.update(label for label, _ in chosen)
        vans = len(self.family.vans)
        result = []
        for label, value in chosen:
            own = [self.filled(value) for _ in range(vans)] if self.rng.random() < 0.5 else [self.filled(value)] * vans
            result.append((label, own))
        return result

    def features(self, count: int) -> list[str]:
        """Give equipment that no field asks for."""
        found = [text for text in self.words.texts("noise_features") if text not in self.told]
        chosen = self.rng.sample(found, min(count, len(found)))
        self.told.update(chosen)
        return [capital(self.filled(text)) for text in chosen]

    def sentence(self) -> str:
        """Give a sentence with a figure that is no fact about the van."""
        return self.filled(self._new(self.words.texts("noise_sentences")))

    def story(self) -> str:
        """Give a sentence of the kind that opens a brochure."""
        return self._new(self.words.texts("story"))

    def caution(self) -> str:
        """Give a caution, as real brochures print them."""
        return self._new(self.words.texts("cautions"))

    def comment(self) -> str:
        """Give a reader's comment, which is about another van or its owner's work."""
        return self.filled(self._new(self.words.texts("reader_comments")))

    def footer(self, with_maker: bool = True) -> str:
        """Give the imprint, with or without the maker's legal name."""
        family = self.family
        way = self.rng.choice(self.words.texts("footers", self.words.region))
        if not with_maker:
            way = LEGAL_NAME.sub("", way)
        return way.format(maker=family.maker, form=family.form, n=self.rng.randint(2, 90), town=family.town)

    def price(self) -> str:
        """Give a price in the region's money."""
        amount = self.house.number(self.rng.randint(3, 120) * 50)
        return str(self.words.book["prices"][self.words.region]).replace("{p}", amount)

    def _new(self, options: list[str]) -> str:
        fresh = [text for text in options if text not in self.told] or options
        text = self.rng.choice(fresh)
        self.told.add(text)
        return text

    def filled(self, text: str) -> str:
        """Give a lookalike's words with figures in its slots."""
        return SLOT.sub(lambda match: self._slot(match[1], match[2], match[3]), text)

    def _slot(self, name: str, low: str | None, high: str | None) -> str:
        house, rng = self.house, self.rng
        number = rng.randint(int(low), int(high)) if low and high else 0
        american = self.words.region in ("us", "qc")
        if name == "lb":
            return f"{house.number(round(number / 10) * 10)} lb"
        if name == "kg":
            return f"{house.number(round(number / 5) * 5)} kg"
        if name == "l":
            unit = {"us": "liters", "uk": "litres", "au": "L", "de": "l"}.get(self.words.region, "l")
            return f"{number} {unit}"
        if name == "vol":
            return house.figure("volume", number).text
        if name == "btu":
            return f"{house.number(round(number / 500) * 500)} BTU"
        if name == "a":
            return f"{round(number / 10) * 10} A"
        if name == "temp":
            return house.figure("temp", rng.choice((-24, -18, -14, -9))).text
        lengths = {
            "inner": rng.randint(1690, 1800),
            "mirrors": rng.randint(2380, 2500),
            "awning": rng.randint(2600, 3500),
        }
        if name in lengths:
            return house.figure("long", lengths[name]).text
        if name == "bed":
            return '54" x 75"' if american and self.words.region == "us" else "195 x 135 cm"
        masses = {"kgorlb": "150 kg", "kgorlb2": "2268 kg", "kgorlb3": "6350 kg"}
        if name in masses:
            return "330 lb" if american and name == "kgorlb" else masses[name]
        raise KeyError(f"no slot {name}")
