"""What the headings above a passage say: of which thing, which vans, and whether it is standard."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Mapping, Sequence

from specscan.finding.built_on import BuiltOn
from specscan.finding.drafts import SectionSense
from specscan.finding.kit import Kit
from specscan.finding.language.lexicon import Analysis
from specscan.finding.language.mentions import Mention
from specscan.finding.marks.legend import Legend
from specscan.finding.marks.prices import has_price
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.price_lines import PriceLines
from specscan.finding.runs import vans_by_run
from specscan.finding.things.found import Availability
from specscan.records.text import Kind, Passage

NUMBERING = re.compile(r"^\s*\d{1,2}(?:\.\d{1,2}){0,3}\.?\s+(?=[^\W\d_])")  # "3.2 Batteries"
LIST_JOINT = re.compile(r"[,;/|·•–]")  # between the entries of a list
LONGEST_LEAD = 70  # letters of a heading, or of a line above a list, that says whether all below it is standard
MOST = 0.9  # share of the passages of a document over which its title stands


class Sections:
    """The headings of one document."""

    def __init__(self, kit: Kit, vans: VanMentions, prices: PriceLines, legend: Legend, passages: Sequence[Passage]):
        self.kit = kit
        self.vans = vans
        self.prices = prices
        self.built_on = BuiltOn(vans, kit.lexicon.words.all_of)
        self.governed = Counter(heading for passage in passages for heading in {"", *passage.sections})
        self.legends = {passage.text for passage in passages if passage.number in legend.passages}
        self.led = vans_by_run(passages, vans, kit.lexicon)
        self.leads = _leads(passages)
        self.of_columns = {word.casefold() for word in kit.lexicon.words.column_words}
        self.senses: dict[tuple[object, ...], SectionSense] = {}

    def sense(self, passage: Passage) -> SectionSense:
        """Give what the headings above a passage say, the nearest first."""
        lead, offer = self.leads.get(passage.number), self.prices.packs.get(passage.number)
        prose = passage.kind is Kind.PROSE  # of which prices below a list say nothing
        key = (passage.page, self.led.get(passage.number), lead, offer[0] if offer else None, prose, passage.sections)
        sense = self.senses.get(key)
        if sense is None:
            sense = self.senses[key] = self._sense(passage)
        return sense

    def about(self, passage: Passage) -> frozenset[str] | None:
        """Give the vans that the headings above a passage name, but those of a line of prices."""
        sense = self.sense(passage)
        return None if sense.by_van else sense.vans

    def _sense(self, passage: Passage) -> SectionSense:
        sense = SectionSense()
        if lead := self.leads.get(passage.number):
            self._add_said(sense, lead, self.kit.lexicon.analyse(lead), innermost=True)
        headings = [one for one in reversed(passage.sections) if (passage.page, one) not in self.prices.headings]
        for depth, heading in enumerate(headings):
            titled = self._heads_all(heading) and heading not in headings[depth + 1 :]  # a title that comes again below
            self._add_heading(sense, heading, innermost=depth == 0, titled=titled)
        if sense.vans is None and not sense.shared:
            sense.vans = self.led.get(passage.number)
        prices = self.prices.above(passage)
        if prices:
            sense.by_van = prices
            sense.vans = frozenset(prices) if sense.vans is None else sense.vans
        return sense

    def _add_heading(self, sense: SectionSense, heading: str, *, innermost: bool, titled: bool) -> None:
        """Add what one heading says; one that is ``titled`` is the document's and names no van for what is below."""
        if heading in self.legends:
            return
        analysis = self.kit.lexicon.analyse(NUMBERING.sub("", heading))
        cues = self._add_said(sense, heading, analysis, innermost=innermost)
        labels = heading.strip(" :").casefold() in self.of_columns  # "Line" over labels is none of the water lines
        for mention in () if labels else analysis.mentions:
            if (
                mention.concept.kind == "section"
                and mention.concept.name not in sense.things
                and len(analysis.tokens) <= 6
            ):
                sense.things.append(mention.concept.name)
            elif (
                innermost
                and mention.concept.kind in ("thing", "short")
                and (self._is_all(mention, analysis) or heading.rstrip().endswith("?"))
            ):
                sense.things.append(mention.concept.name)
        if (
            sense.vans is None
            and not sense.shared
            and not self.vans.single
            and (len(heading) <= 60 or self.vans.is_name(heading))
        ):
            about = self.built_on.of(heading)
            named = frozenset(about[:1]) if about else self.vans.whole(heading) or self.vans.in_list(heading)
            if not named and "all_vans" in cues:
                named = self.vans.everyone
            if named == self.vans.everyone:
                sense.shared = True  # what outer headings name is not meant alone
            elif named and not titled:
                sense.vans = named

    def _prices_van(self, heading: str) -> bool:
        """Tell whether a heading gives the price of a van: it is its name, begins with "MSRP" or "from", or is high."""
        first = heading.casefold().strip(" *:")
        words = (*self.kit.lexicon.words.price_from, *self.kit.lexicon.words.price_of_van)
        if self.vans.is_name(heading) or self.prices.priced.tells_van(heading):
            return True
        return any(re.match(rf"{re.escape(word)}(?!\w)", first) for word in words)

    def _heads_all(self, heading: str) -> bool:
        """Tell whether a heading stands over nearly the whole document, as its title does."""
        return self.governed[heading] >= MOST * max(1, self.governed[""])

    @staticmethod
    def _is_all(mention: Mention, analysis: Analysis) -> bool:
        """Tell whether a heading says nothing but the name of a thing, as "Leisure batteries" over "two of 95 Ah"."""
        return mention.last - mention.first >= len([t for t in analysis.tokens if t.norm.isalnum()])

    @staticmethod
    def _names_figures(cues: Mapping[str, Mention]) -> bool:
        """Tell whether a heading names the specifications beside the options: no "optional specification"."""
        return "figures" in cues and cues["optional"].last != cues["figures"].first

    @staticmethod
    def _names_base(cues: Mapping[str, Mention]) -> bool:
        """Tell whether a heading names what all have beside the options: "Base equipment and option packages"."""
        base, joint, option = (cues.get(cue) for cue in ("base_case", "coordination", "optional"))
        if base is None or joint is None or option is None:
            return False
        return base.last <= joint.first and joint.last == option.first and joint.first - base.last <= 1

    @staticmethod
    def _lists_answers(heading: str, cues: Mapping[str, Mention]) -> bool:
        """Tell whether a heading lists what the marks below it can say: "Standard, option, not on this van"."""
        standard = cues.get("standard")
        absent = cues.get("not_available") or cues.get("not_fitted")
        if standard is None or absent is None:
            return False
        first, second = sorted((standard, absent), key=lambda mention: mention.start)
        return LIST_JOINT.search(heading, first.end, second.start) is not None

    def _add_said(
        self, sense: SectionSense, text: str, analysis: Analysis, *, innermost: bool
    ) -> Mapping[str, Mention]:
        """Add what a heading, or the line above a list, says of what is below it; give its words that may say so."""
        cues = {m.concept.name: m for m in analysis.mentions if m.concept.kind == "cue"}
        if len(text) <= LONGEST_LEAD:
            self._add_availability(sense, text, cues, innermost=innermost, words=len(analysis.tokens))
        return cues

    def _add_availability(
        self, sense: SectionSense, heading: str, cues: Mapping[str, Mention], *, innermost: bool, words: int
    ) -> None:
        if sense.availability is not None or sense.not_fitted or sense.by_owner:
            return
        if "by_owner" in cues:
            sense.by_owner = True
        elif self._lists_answers(heading, cues):
            return
        elif "not_available" not in cues and ("not_fitted" in cues or innermost and self.kit.absent.are_below(heading)):
            sense.not_fitted = True
        elif "not_available" in cues:
            if not innermost:
                return  # "What we do not build", set larger than the titles of all that follows it
            sense.availability = Availability.NOT_AVAILABLE
        elif "optional" in cues and ("standard" in cues or self._names_figures(cues) or self._names_base(cues)):
            return
        elif "in_price" in cues and "optional" not in cues:
            sense.availability = Availability.STANDARD  # "What the price of $118,400 includes"
        elif "optional" in cues or "if_equipped" in cues or (has_price(heading) and not self._prices_van(heading)):
            sense.availability = Availability.OPTIONAL
        elif "standard" in cues:
            sense.availability = Availability.STANDARD
        elif "package" in cues and innermost and words <= 5:
            sense.availability = Availability.OPTIONAL
        if sense.availability in (Availability.OPTIONAL, Availability.NOT_AVAILABLE):
            sense.option = heading


def _leads(passages: Sequence[Passage]) -> dict[int, str]:
    """Give for the items of lists the short line that opens their list: "Options, at extra cost:"."""
    found: dict[int, str] = {}
    lead = ""
    for passage in passages:
        text = passage.text.strip()
        if passage.kind is Kind.BULLET and lead:
            found[passage.number] = lead
        elif passage.kind is not Kind.BULLET:
            opens = passage.kind in (Kind.PROSE, Kind.LINE) and text.endswith(":") and len(text) <= LONGEST_LEAD
            lead = text if opens else ""
    return found
