"""Cells that are only a mark, a price or "option": the label makes the statement."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace

from specscan.finding.amounts import is_amount, rows_of_vans
from specscan.finding.drafts import Draft
from specscan.finding.kit import Kit
from specscan.finding.marks.legend import AVAILABILITIES, Legend, Meaning
from specscan.finding.marks.prices import LONGEST_OFFER, has_price, is_price
from specscan.finding.marks.scope import Scope
from specscan.finding.marks.signs import availability_alone, package_alone, says_no_alone
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.things.found import Availability, How
from specscan.records.text import Kind, Passage

LEAST_DIGITS = 2  # of a figure behind a sign
ALONE = 40  # letters of a cell that can say no more than whether a thing is there
OFFERING = 0.9  # of the cells of a table that only says which things are standard, and which an option
OFFERED = re.compile(r"([^()]{3,40})\(([^()]{2,60})\)")
PART = re.compile(r"\S.*?(?:(?<=[\w)])[.;](?=\s+[\dA-ZÀ-Þ])|$)")  # of a cell
SIGN_AND_FIGURE = re.compile(r"(\S+)\s*\(([^()]{2,40})\)")
PRICE_SIGNS = re.compile(r"[$€£+*]|\b(?:EUR|CHF|USD|CAD|AUD|GBP)\b|\d[\d.,'’\u00a0\u202f ]*(?:,[-–])?")


class MarkedCells:
    """Reads such cells of one document. ``rows`` are the rows, by table, in which vans have marks."""

    def __init__(self, kit: Kit, vans: VanMentions, legend: Legend, passages: list[Passage]):
        self.lexicon, self.units, self.quantities, self.legend = kit.lexicon, kit.units, kit.quantities, legend
        self.priced_rows = rows_of_vans(passages, vans.whole) & {
            (p.table, p.row_index) for p in passages if p.kind is Kind.CELL and has_price(p.text)
        }
        self.inapplicable = set(kit.lexicon.book.general.inapplicable)
        self.offering = self._offering(passages)
        marked = [p for p in passages if p.kind is Kind.CELL and self._is_marked(p)]
        self.rows = rows_of_vans(marked, vans.whole)
        self.marked_tables = {table for table, count in Counter(p.table for p in marked).items() if count > 1}

    def draft(
        self, passage: Passage, label: str, body: str, at: int, label_from: str, scope: Scope, notes: tuple[str, ...]
    ) -> list[Draft] | None:
        """Give the statement that the label makes where the cell is only a mark, a price or "option", else ``None``."""
        if apart := self._told_apart(passage, body):
            return [
                Draft(passage, label, text, How.CELL, Scope(scope.vans, said), at + start, label_from, None, notes)
                for start, text, said in apart
            ]
        plain = body.strip()
        first, _, rest = plain.partition(" ")
        meaning = self.meaning(passage, plain)
        told = self._figure_behind(label, first, rest) if meaning is None else None
        if told is not None:
            own = Scope(scope.vans, told.default, dict(told.by_van))
            draft = Draft(passage, label, rest, How.CELL, own, at + len(first) + 1, label_from, None, notes)
            return [replace(draft, shown=body)]
        if meaning is None and (not rest or has_price(rest) or rest.strip("()").isdigit()):
            meaning = self.legend.meaning(first)
        spelled = meaning is not None and not meaning.by_van and meaning.default is self._said(plain)  # "Opt."
        if meaning is not None and not spelled:
            own = Scope(scope.vans, meaning.default, dict(meaning.by_van))
            return [Draft(passage, "", label, How.MARKED, own, at, label_from, None, notes)]
        own_figure = self._with_figure(passage, label, plain)
        if own_figure is not None:
            meaning, thing, figure = own_figure
            own = Scope(scope.vans, meaning.default, dict(meaning.by_van))
            draft = Draft(passage, thing, figure, How.CELL, own, at, label_from, None, notes)
            return [replace(draft, shown=body, label_shown=label)]
        if package_alone(self.lexicon, plain):
            own = Scope(scope.vans, Availability.OPTIONAL)
            return [Draft(passage, "", label, How.MARKED, own, at, label_from, None, notes)]
        priced = len(plain) <= LONGEST_OFFER and is_price(plain)
        if priced or is_amount(plain) and self._costs(passage, label, scope):
            own = Scope(scope.vans, Availability.OPTIONAL)
            return [Draft(passage, "", label, How.MARKED, own, at, label_from, None, notes)]
        worded = PRICE_SIGNS.sub("", plain).strip(" ,:;()–-") if has_price(plain) else plain  # "Mehrpreis 990 €"
        said = self._said(worded) if len(plain) <= ALONE else None
        if said is not None:
            own = Scope(scope.vans, said)
            marked = Draft(passage, "", label, How.MARKED, own, at, label_from, None, notes)
            answered = Draft(passage, label, body, How.CELL, own, at, label_from, None, notes)
            return [marked, answered] if worded == plain else [marked]
        how = OFFERED.fullmatch(plain)
        if how is not None and self._is_offer(how.group(1).strip()) and not self._offers(how.group(2)):
            own = Scope(scope.vans, Availability.OPTIONAL)  # "Option (12 V pad)", "Winter Pack (warm air)"
            return [Draft(passage, label, body, How.CELL, own, at, label_from, None, notes)]
        if scope.availability is Availability.OPTIONAL and says_no_alone(self.lexicon, plain):
            own = Scope(scope.vans, Availability.NOT_AVAILABLE)  # among options "no" says that this is not to be had
            return [Draft(passage, "", label, How.MARKED, own, at, label_from, None, notes)]
        return None

    def _told_apart(self, passage: Passage, body: str) -> list[tuple[int, str, Availability | None]]:
        """Give the parts of a cell of which one at least ends in what it is: "400 W: Std. 520 W: No".

        Each comes with where it stands and what it is, if it says so; "no" denies one beside others.
        """
        if ":" not in body:
            return []  # nearly all cells
        parts: list[tuple[int, str, Availability | None]] = []
        for match in PART.finditer(body):
            text, _, word = match.group().rstrip(" .;").rpartition(":")
            said = self._word(passage, word) if text else None
            parts.append((match.start(), text if said else match.group().strip(" .;"), said))
        offered = any(said in (Availability.STANDARD, Availability.OPTIONAL) for _, _, said in parts)
        return parts if len(parts) > 1 and offered else []

    def _word(self, passage: Passage, word: str) -> Availability | None:
        """Give what a word or sign behind a colon says: "Std", "Opt", "No", or that of a legend."""
        meaning = self.meaning(passage, word.strip())
        if meaning is not None and not meaning.by_van:
            return meaning.default
        return self._said(word.strip()) or (Availability.NOT_AVAILABLE if says_no_alone(self.lexicon, word) else None)

    def _is_marked(self, passage: Passage) -> bool:
        """Tell whether a cell says by a sign or in words, and a figure at most, whether a thing is there."""
        signed = SIGN_AND_FIGURE.fullmatch(passage.text)
        told = any(self.meaning(passage, sign) for sign in (passage.text, signed.group(1) if signed else ""))
        return told or (len(passage.text) <= ALONE and self._said(passage.text) is not None)

    def _figure_behind(self, label: str, sign: str, rest: str) -> Meaning | None:
        """Give what a sign says of the figure behind it where the label has its unit: "Solar (W): ○ 180".

        A single digit is the sign of a note.
        """
        if len(rest) < LEAST_DIGITS or not rest.isdecimal() or self.units.in_head(label) is None:
            return None
        return self.legend.meaning(sign)

    def _with_figure(self, passage: Passage, label: str, plain: str) -> tuple[Meaning, str, str] | None:
        """Give what a sign says, the label and the figure where a van has another than the label prints: "S (400 Ah)".

        The figure takes the place of those of its kind in the label: "Lithium battery, 200 Ah in all".
        """
        match = SIGN_AND_FIGURE.fullmatch(plain)
        meaning = self.meaning(passage, match.group(1)) if match else None
        if match is None or meaning is None:
            return None
        kinds = {q.dimension for q in self.quantities.find(match.group(2)) if not q.bare}
        printed = [q for q in self.quantities.find(label) if not q.bare and q.dimension in kinds]
        if not printed:
            return None
        for quantity in reversed(printed):
            label = f"{label[: quantity.start].rstrip()} {label[quantity.end :].lstrip()}"
        return meaning, label.strip(" ,;:"), match.group(2)

    def _said(self, text: str) -> Availability | None:
        return availability_alone(self.lexicon, text)

    def _is_offer(self, text: str) -> bool:
        return self._said(text) is Availability.OPTIONAL or package_alone(self.lexicon, text)

    def _offers(self, bracket: str) -> bool:
        """Tell whether the bracket behind an offer tells of another: "Option (standard on the long one)"."""
        return bool(self.lexicon.cues(self.lexicon.analyse(bracket), *AVAILABILITIES))

    def meaning(self, passage: Passage, sign: str) -> Meaning | None:
        """Give what a sign says by the legend; without one "n/a" beside the prices for other vans denies the thing.

        So it does in a table that says of each thing on which van it is standard, and on which an option.
        """
        meaning = self.legend.meaning(sign)
        if meaning is None and sign.strip().casefold() in self.inapplicable:
            if passage.table in self.offering or (passage.table, passage.row_index) in self.priced_rows:
                return Meaning(Availability.NOT_AVAILABLE)
        return meaning

    def _offering(self, passages: list[Passage]) -> set[int | None]:
        """Give the tables whose cells say no more than whether a thing is standard, an option, or neither."""
        texts: dict[int | None, list[str]] = {}
        for passage in passages:
            if passage.kind is Kind.CELL and passage.text.strip():
                texts.setdefault(passage.table, []).append(passage.text.strip())
        return {table for table, held in texts.items() if self._is_offering(held)}

    def _is_offering(self, texts: list[str]) -> bool:
        if not any(text.casefold() in self.inapplicable for text in texts):
            return False
        said = {text: self._said(text) for text in set(texts) if len(text) <= ALONE}
        plain = [text for text in texts if said.get(text) or text.casefold() in self.inapplicable]
        return Availability.OPTIONAL in said.values() and len(plain) >= OFFERING * len(texts)

    def _costs(self, passage: Passage, label: str, scope: Scope) -> bool:
        """Tell whether a bare figure is the price of the option that its label names.

        Its table has signs, the label names no unit, and the legend says so or the row stands among options.
        """
        if passage.kind is not Kind.CELL or self.units.in_head(label):
            return False
        told = self.legend.amounts or scope.availability is Availability.OPTIONAL
        return told and passage.table in self.marked_tables
