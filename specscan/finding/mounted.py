"""Names of base vehicles that running text only says a van stands on: "all on the Kelmar Cargo with the 2.2 diesel"."""

from __future__ import annotations

import re

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.name_forms import BASE_NAME
from specscan.finding.things.items import Item, Parsed
from specscan.records.years import MODEL_YEAR

OF_VANS = ("all_vans", "two_vans", "refers_back")
NEAR = 44  # letters behind the name
OF_BASE = ("engine", "drive", "wheelbase", "engine_fuel")  # what tells that a name is a base vehicle's
LETTERS = re.compile(r"[^\W\d_]{2}")


class MountedNames:
    """Finds them in sentences of one language."""

    def __init__(self, lexicon: Lexicon):
        words = lexicon.words
        articles = any_word(words.drop)
        self.begins = {phrase.casefold() for phrase in words.begins_as}
        self.no_base = {word.casefold() for word in words.no_base}
        self.stands = {phrase.casefold() for phrase in words.stands_on}
        leading = any_word([*words.begins_as, *words.stands_on, *words.mounted_on])
        self.leads = re.compile(
            rf"(?<!\w)((?i:{leading}))\s+(?:(?:{articles})\s+)?"
            rf"(?:(?:[^\W\d_A-ZÀ-Þ][\w-]*|{MODEL_YEAR})\s+){{0,2}}({BASE_NAME.pattern})"
        )
        self.joined = re.compile(rf"(?:\s+[^\W\d_A-ZÀ-Þ]\w*)?(?:,|\s+(?:{any_word(words.joined_to_base)})(?!\w))\s*")

    def find(self, parsed: Parsed) -> tuple[int, int] | None:
        """Give where the name of a base vehicle begins and ends, if a text has one.

        What it is is told by its engine, its driven wheels or its wheelbase right behind it, by words such as "begins
        as a", or by a verb such as "stands on" in a sentence about a van. The name of a van of the document is none.
        """
        for match in self.leads.finditer(parsed.text):
            start, end = match.span(2)
            printed = match.group(2)
            if len(printed.split()) < 2 or not LETTERS.search(printed):
                continue
            if any(item.vans and start < item.end and item.start < end for item in parsed.items):
                continue
            if not self.no_base.isdisjoint(printed.casefold().split()):
                continue  # "It rides on Marrow Tires"
            lead = match.group(1).casefold()
            of_van = lead in self.stands and self._tells_of_van(parsed, match.start())
            if lead in self.begins or of_van or self._tells_base(parsed, end):
                return start, end
        return None

    @staticmethod
    def _tells_of_van(parsed: Parsed, place: int) -> bool:
        """Tell whether what stands before a verb in its sentence is of a van: its name, its length, "it", "all"."""
        number = max((sentence for start, _, _, sentence, _ in parsed.bounds if start <= place), default=0)
        before = [item for item in parsed.items if item.sentence == number and item.start < place]
        return any(i.vans or i.quantity is not None or i.has("cue", *OF_VANS) for i in before)

    def _tells_base(self, parsed: Parsed, end: int) -> bool:
        """Tell whether engine, driven wheels, wheelbase or a fuel follow right behind a name."""
        joined = self.joined.match(parsed.text, end)
        if joined is None:
            return False
        near = [item for item in parsed.items if joined.end() <= item.start < end + NEAR]
        told = next((n for n, item in enumerate(near) if _is_told(item)), None)
        if told is None or near[told].has("thing", *OF_BASE) or near[told].has("alone", *OF_BASE):
            return told is not None
        beside = [item for item in near[told:] if item.chunk == near[told].chunk and item.has("thing")]
        return near[told].has("value", "engine_fuels") and not beside  # not "with the diesel heater"


def _is_told(item: Item) -> bool:
    return item.has("thing") or item.has("alone") or item.has("value", "engine_fuels")
