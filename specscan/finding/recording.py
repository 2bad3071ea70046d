"""What was found in a statement → a fact with its words, its place and what makes it doubtful."""

from __future__ import annotations

from specscan.finding.drafts import Reading
from specscan.finding.kit import JOIN, Kit
from specscan.finding.language.mentions import NAMING
from specscan.finding.sayings import Said
from specscan.finding.statements import StatementMaker
from specscan.finding.things.found import Availability, Found, How, Value
from specscan.records.facts import Fact, Saying
from specscan.records.text import Box
from specscan.rulebook.book import Rulebook


class Recorder:
    """Makes the facts of one document."""

    def __init__(self, book: Rulebook, kit: Kit, maker: StatementMaker):
        self.book, self.kit, self.maker = book, kit, maker

    def fact(self, found: Found, van: str, said: Availability | None, reading: Reading) -> Fact:
        """Give what was found as a fact about a van, with its place, its words and what makes it doubtful."""
        draft = reading.draft
        availability = said
        if availability is None:
            stated = draft.how not in (How.PROSE, How.HEADING)
            availability = Availability.STANDARD if stated else Availability.UNSTATED
        value = found.value
        rejected, weak = found.rejected, found.weak
        if draft.by_owner:
            availability = Availability.UNSTATED
        if draft.not_fitted and draft.how is not How.PROSE:
            value, rejected = self._absent(found)
            weak = weak or (value.text is not None and value != found.value)  # no cassette, but another toilet perhaps
            availability = Availability.STANDARD
        page, box = self._place(found, reading)
        option = self.maker.sections.sense(draft.passage).option if availability is Availability.OPTIONAL else ""
        return Fact(
            field=found.field,
            model=van,
            num=value.num,
            low=value.low,
            high=value.high,
            text=value.text,
            flag=value.flag,
            unit=self.book.unit_of(found.field),
            printed=self._printed(found, reading),
            printed_unit=found.unit,
            basis=found.basis,
            availability=availability.value,  # type: ignore[arg-type]
            option=option,
            page=page,
            box=box,
            found_by=found.pattern,
            how=draft.how.value,
            weak=weak,
            passage=draft.passage.number,
            rejected=rejected,
            grounds=self._grounds(found, reading),
        )

    def saying(
        self, said: Said, found: Found, van: str, seen: Availability | None, reading: Reading, spoken: bool
    ) -> Saying:
        """Give words that no field holds as a saying about a van; ``spoken``: they stand in running text."""
        draft = reading.draft
        page, box = self._place(found, reading)
        form = How.PROSE if spoken and draft.how is not How.HEADING else draft.how
        default = Availability.UNSTATED if spoken or draft.by_owner else Availability.STANDARD
        return Saying(
            said.kind, van, reading.parsed.text[said.start : said.end], self._printed(found, reading), form.value,
            (seen or default).value,  # type: ignore[arg-type]
            said.denied or draft.not_fitted, said.figure, page, box, draft.passage.number,
        )  # fmt: skip

    def _absent(self, found: Found) -> tuple[Value, str]:
        """Turn equipment named under "not fitted" into its stated absence."""
        spec = self.book.fields[found.field]
        if spec.type == "flag":
            return Value(flag=False), found.rejected
        if spec.none:
            return (Value(text=spec.none) if spec.type == "choice" else Value(num=float(spec.none))), found.rejected
        return found.value, "named as not fitted"

    def _place(self, found: Found, reading: Reading) -> tuple[int, Box | None]:
        draft = reading.draft
        passage = draft.passage
        offset = len(draft.label) + len(JOIN) if draft.label else 0
        start, end = found.start - offset, found.end - offset
        if draft.how is How.MARKED or start < 0:
            head = passage.column if draft.label_from == "column" else passage.row
            if draft.how is How.MARKED or draft.label_from in ("row", "column"):
                return passage.page, head.box if head is not None and head.box is not None else passage.box()
            return passage.page, passage.box()
        if draft.shown:
            return passage.page, passage.box(draft.body_at, draft.body_at + len(draft.shown))
        return passage.page, passage.box(start + draft.body_at, end + draft.body_at)

    def _printed(self, found: Found, reading: Reading) -> str:
        """Give the words that say it: label and cell, list item, or the sentence."""
        draft, parsed = reading.draft, reading.parsed
        if draft.how is How.MARKED:
            said = draft.label_shown or draft.body
            own = draft.passage.text.startswith(said)  # a line with its label
            return draft.passage.text if own else f"{said}: {draft.passage.text}"
        if draft.label:
            return f"{draft.label_shown or draft.label}: {draft.shown or draft.body}"
        if draft.shown:
            return draft.shown
        starts = [b[0] for b in parsed.bounds if b[3] == found.sentence]
        ends = [b[0] for b in parsed.bounds if b[3] > found.sentence]
        start, end = (starts[0] if starts else 0), (ends[0] if ends else len(parsed.text))
        return parsed.text[start:end].strip(" .!?") or parsed.text

    def _grounds(self, found: Found, reading: Reading) -> tuple[str, ...]:
        """Give why a value may be misread, by the keys of ``rules/confidence.yaml``."""
        draft = reading.draft
        named = not reading.parsed.kinds.isdisjoint(NAMING)
        holds = {
            "running_text": draft.how in (How.PROSE, How.HEADING),
            "implied": found.weak,
            "in_label": found.from_label,
            "named_above": bool(found.things) and not named,
            "several_things": len(found.things) > 1,
            "basis_open": found.basis == "unstated",
            "picture": draft.passage.source == "ocr",
        }
        return tuple(ground for ground, told in holds.items() if told)
