"""Passages → statements: what is the label, what the value, for which vans, from which heading."""

from __future__ import annotations

import itertools
import re
from dataclasses import replace

from specscan.finding.amounts import is_figure, rows_of_vans
from specscan.finding.covers_headings import CoversHeadings
from specscan.finding.drafts import Draft, SectionSense
from specscan.finding.fitting import FittingRows
from specscan.finding.general_units import GeneralUnits
from specscan.finding.kit import Kit
from specscan.finding.labelled_statements import LabelledStatements
from specscan.finding.lone_cells import shared_cells
from specscan.finding.marked_cells import ALONE
from specscan.finding.marks.glued import said_of_label
from specscan.finding.marks.legend import AVAILABILITIES, Legend
from specscan.finding.marks.prices import has_price, lists_prices
from specscan.finding.marks.scope import Scope
from specscan.finding.marks.signs import (
    availability_alone,
    option_in_bracket,
    package_head,
    says_no_alone,
    sign_behind_bullet,
)
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.openings import Part
from specscan.finding.price_lines import PriceLines
from specscan.finding.priced_paragraphs import PricedParagraphs
from specscan.finding.questions import Questions
from specscan.finding.row_offers import offers_by_row
from specscan.finding.sections import Sections
from specscan.finding.stacked_pairs import stacked_labels
from specscan.finding.strangers import is_card_of_another
from specscan.finding.table_rows import is_unit_head, unclear_rows, unit_cells
from specscan.finding.things.found import Availability, How
from specscan.records.text import Kind, Passage

PROSE_WORDS = 16
LABELLED = (How.CELL, How.PAIR, How.MARKED, How.LIST)
NOTE_BEFORE = re.compile(r"([a-z])\s+(?=\d)")  # the sign of a note, set before a figure


class StatementMaker(LabelledStatements):
    """Makes the statements of one document."""

    def __init__(self, kit: Kit, vans: VanMentions, legend: Legend, passages: list[Passage]):
        super().__init__(kit, vans, legend, passages)
        self.prices = PriceLines(kit, vans, legend, passages)
        self.sections = Sections(kit, vans, self.prices, legend, passages)
        self.priced = PricedParagraphs(self.openings, self.prices.priced, kit.lexicon.words)
        self.covers = CoversHeadings(kit.lexicon)
        self.questions = Questions(kit.lexicon, self.openings, kit.quantities)
        self.general_units = GeneralUnits(kit, passages)
        self.fitting = FittingRows(
            passages, self.openings.vans_headed, kit.lexicon.words, lambda text: legend.meaning(text) is not None
        )
        self.first_under_heading = {
            below.number for above, below in itertools.pairwise(passages) if above.kind is Kind.HEADING
        }
        self.asked = {below.number: above.text for above, below in itertools.pairwise(passages) if _asks(above)}
        self.stacked = stacked_labels(passages, kit.lexicon)
        phrases = [phrase.casefold() for phrase in kit.lexicon.words.sign_inapplicable]
        said = (availability_alone, says_no_alone)  # "entfällt" says that it is not to be had
        self.inapplicable = {one for one in phrases if not any(says(kit.lexicon, one) for says in said)}
        self.note_signs = {(p.page, sign) for p in passages if p.kind is Kind.FOOTNOTE for sign in p.notes[:1]}
        self.ticked = {p.sections for p in passages if p.mark in kit.lexicon.book.general.checks}
        self.unit_cells = unit_cells(passages, kit.lexicon.book)
        self.unclear = set() if vans.single else unclear_rows(passages, self._heads)
        self.shared = shared_cells(passages, vans, kit.lexicon)
        self.offers = {} if vans.single else offers_by_row(passages, self._vans_of_head, legend, kit.lexicon)
        self.van_rows = set() if vans.single else rows_of_vans(passages, self._vans_of_head)

    def drafts(self, passage: Passage) -> list[Draft]:
        """Give the statements that a passage makes."""
        if passage.number in self.legend.passages or passage.number in self.prices.passages:
            return []
        if passage.kind is not Kind.CELL and self.kit.addresses.is_one(passage.text):
            return []
        if passage.kind is Kind.CELL and self._is_inapplicable(passage.text.strip()):
            return []
        sense = self.sections.sense(passage)
        vans = sense.vans if sense.vans is not None else self.vans.listed_at(passage.number)
        vans = vans if vans is not None else self.codes.vans_of(passage)
        scope = Scope(vans, sense.availability, dict(sense.by_van))
        if passage.kind is Kind.CELL:
            drafts = self._cell(passage, scope)
        elif passage.kind is Kind.HEADING:
            drafts = [Draft(passage, "", passage.text, How.HEADING, Scope(sense.vans))]
        else:
            drafts = self._running(passage, scope, sense)
        if sense.not_fitted:
            drafts = [part for draft in drafts for part in self.kit.absent.parted(draft)]
        for draft in drafts:
            glued = said_of_label(self.legend, draft.label, draft.notes) if draft.how in LABELLED else None
            if glued is not None and draft.scope.availability is None and not draft.scope.by_van:
                draft.scope = Scope(draft.scope.vans, glued.default, dict(glued.by_van))
            draft.not_fitted = draft.not_fitted or sense.not_fitted
            draft.leads = passage.number in self.first_under_heading
            draft.by_owner = sense.by_owner
        return drafts

    def _is_inapplicable(self, text: str) -> bool:
        """Tell whether a cell says that a thing has no meaning for a van: by a sign of the legend, or in words."""
        return text in self.legend.inapplicable or text.casefold() in self.inapplicable

    # tables

    def _heads(self, column: str) -> bool:
        """Tell whether a text can head a column: a figure with its unit is a value of a row taken for heads."""
        if not column or not column[0].isdigit():
            return bool(column)
        return not any(not q.bare and q.end - q.start >= len(column) for q in self.kit.quantities.find(column))

    def _cell(self, passage: Passage, scope: Scope) -> list[Draft]:
        assert passage.row is not None and passage.column is not None
        row = self.codes.without_code(passage, passage.row.text).strip(" :")
        column = passage.column.text.strip(" :")
        notes = (*passage.notes, *passage.row.notes, *passage.column.notes)
        fitting = self.fitting.of(passage)
        if fitting is not None:
            scope.vans, scope.by_van, column = fitting, {}, ""
            if self.fitting.repeats(passage):
                return []
            if passage.number in self.fitting.cells:
                return [Draft(passage, "", row, How.MARKED, scope, 0, "row", None, notes)]
        column_vans = self._vans_of_head(column) if column else None
        row_vans = self.vans.whole(row) if row and column_vans is None else None
        if is_unit_head(column, self.kit.lexicon.book):
            return []  # the unit of a row is no value
        if column_vans is None and has_price(passage.text) and (passage.table, passage.row_index) in self.marked.rows:
            return []  # what it costs where it may be ordered
        if (
            column_vans is None
            and column
            and is_figure(passage.text)
            and (passage.table, passage.row_index) in self.van_rows
        ):
            return []  # what it weighs or costs, beside what is said of each van
        if column_vans is not None:
            scope.vans, label, label_from = self.shared.get(passage.number, column_vans), row, "row"
        elif row_vans is not None:
            scope.vans, label, label_from = row_vans, column, "column"
        else:
            label, label_from = row, "row"
            offers = self.offers.get((passage.table, passage.row_index))
            if offers:
                scope.vans, scope.by_van = frozenset(offers), dict(offers)
            label = self._with_column(label, column, scope)
            if fitting is None and not self._heads(column) and (passage.table, passage.row_index) in self.unclear:
                return []  # several vans, several values, and no head says which is whose
        if not label:
            return self._running_text(passage, passage.text, scope, notes)
        label = label.rstrip(" .")  # "Cab shades, insul.": no sentence ends there
        hint = None
        if passage.table is not None and passage.row_index is not None:
            printed = self.unit_cells.get((passage.table, passage.row_index))
            printed = printed or ("" if label_from == "column" or column_vans else column)
            label = f"{label}, {printed}" if self.two_units.named(printed) else label
            hint = self.kit.units.named(printed.strip(" ()"))
        hint = hint or self.kit.units.named(label.strip(" ()"))  # "Gallons" under the heading "Fresh"
        if hint is None and (general := self.general_units.of(label, passage.text)) is not None:
            hint = general if self.kit.units.in_head(label) is None else None
        sign = NOTE_BEFORE.match(passage.text)
        if sign is not None and (passage.page, sign.group(1)) in self.note_signs:
            notes, start = (*notes, sign.group(1)), sign.end()
            return self._labelled(passage, label, passage.text[start:], start, label_from, scope, notes, hint)
        return self._labelled(passage, label, passage.text, 0, label_from, scope, notes, hint)

    def _vans_of_head(self, head: str) -> frozenset[str] | None:
        """Give the vans that a column's head names, also below a name of the base vehicle that stands in it too."""
        whole = self.vans.whole(head)
        if whole is not None:
            return whole
        mentions = self.vans.find(head)
        return mentions[0][2] if len(mentions) == 1 and mentions[0][1] == len(head) else None

    def _with_column(self, label: str, column: str, scope: Scope) -> str:
        """Give a row label with what the head of a column that names no van adds."""
        if not column:
            return label
        analysis = self.kit.lexicon.analyse(column)
        cues = [m for m in analysis.mentions if m.concept.kind == "cue" and m.concept.name in AVAILABILITIES]
        if cues and len(analysis.tokens) <= 4:
            longest = max(cues, key=lambda m: m.last - m.first)
            scope.availability = AVAILABILITIES[longest.concept.name]
            return label
        if not label:
            return column
        return f"{label}: {column}" if any(m.concept.kind == "aspect" for m in analysis.mentions) else label

    # running text

    def _running(self, passage: Passage, scope: Scope, sense: SectionSense) -> list[Draft]:
        general = self.kit.lexicon.book.general
        if _asks(passage):
            return []  # "Is there a colour that is not grey?"
        if (
            passage.mark in general.crosses
            and passage.sections in self.ticked
            and scope.availability is not Availability.OPTIONAL  # an option that was not ordered is one still
            and not self.legend.meaning(passage.mark)
        ):
            return []  # a box left open where others are ticked
        meaning = self.legend.meaning(passage.mark) if passage.mark else None
        if meaning is None and passage.several_marks:
            return []  # signs of several vans, and nobody tells which is whose
        unsaid = meaning is None and scope.availability is None
        if unsaid and passage.mark.startswith("[") and passage.mark not in general.crosses:
            return []  # "[-]" beside boxes that are ticked, and nobody tells what it says
        if meaning is not None and passage.kind is Kind.BULLET:
            scope.availability, scope.by_van = meaning.default, dict(meaning.by_van)
        if passage.kind is Kind.FOOTNOTE:
            lexicon = self.kit.lexicon
            if any(not cue.first for cue in lexicon.cues(lexicon.analyse(passage.text), "only_together")):
                return []  # "Only with the lithium battery" says on what another thing hangs
            noted = Scope(scope.vans, option_in_bracket(lexicon, passage.text))
            return [Draft(passage, "", passage.text, How.NOTE, noted, notes=passage.notes)]
        text = self.codes.without_code(passage, self.keys.without_keys(passage))
        begins = self.legend.goes_on.get(passage.number, 0)
        if passage.kind is Kind.BULLET and not begins and text == passage.text:
            told, begins = sign_behind_bullet(self.legend, text)
            if told is not None:
                scope.availability, scope.by_van = told.default, dict(told.by_van)
        if begins and text == passage.text:
            return self._running_text(passage, text[begins:], scope, passage.notes, begins)
        drafts: list[Draft] = []
        for part in self.priced.parts(text) if text == passage.text else ():
            if part.offered:
                own = Scope(scope.vans if part.vans is None else part.vans, Availability.OPTIONAL)
                drafts.append(Draft(passage, "", part.text, How.LIST, own, part.start, "", None, passage.notes))
            else:
                own = Scope(scope.vans, scope.availability, dict(scope.by_van))
                drafts += self._running_text(passage, part.text, own, passage.notes, part.start)
        return drafts or self._dotted(passage, text, scope) or self._running_text(passage, text, scope, passage.notes)

    def _dotted(self, passage: Passage, text: str, scope: Scope) -> list[Draft]:
        """Give the statements of a long line whose items dots part; its head says of what vans and how they have it."""
        parts = self.openings.dotted(text) if text == passage.text and self._is_prose(passage, text) else []
        if not parts:
            return []
        drafts: list[Draft] = []
        for part in parts:
            cues = self.kit.lexicon.cues(self.kit.lexicon.analyse(part.head), *AVAILABILITIES)
            said = AVAILABILITIES[cues[0].concept.name] if cues else scope.availability
            vans = self.vans.named_in(part.head) or scope.vans
            item = text[part.start : part.end].strip(" .")
            own = Scope(vans, said, {} if cues else dict(scope.by_van))
            drafts += self._running_text(passage, item, own, passage.notes, text.index(item, part.start))
        return drafts

    def _running_text(
        self, passage: Passage, text: str, scope: Scope, notes: tuple[str, ...], begins: int = 0
    ) -> list[Draft]:
        """Give the statements of a text that begins at a place of its passage."""
        if is_card_of_another(text, self.vans, self.kit.lexicon) or self.stacked.get(passage.number) == "":
            return []
        covered = self.covers.label(passage.sections, text)
        if covered is not None:
            shown, label, at = covered
            drafts = self._labelled(passage, label, text[at:], begins + at, "inline", scope, notes, how=How.PAIR)
            return [replace(draft, label_shown=shown) for draft in drafts]
        package = self._package(text, scope)
        if package is not None:
            return [Draft(passage, "", text, How.LIST, package, begins, "", None, notes)]
        answered = self._answered(passage, text, scope, notes, begins)
        if answered:
            return answered
        if passage.number in self.stacked and not begins:
            return self._labelled(passage, self.stacked[passage.number], text, 0, "inline", scope, notes, how=How.PAIR)
        offered = self.prices.behind(text) if passage.table is None else None
        if offered is not None:
            own = Scope(frozenset(offered[1]), None, offered[1], told_each=True)
            return [Draft(passage, "", offered[0], How.LIST, own, begins, "", None, notes, shown=text)]
        parts = self.openings.parts(text)
        if parts:
            return self._parts(passage, text, parts, scope, notes, begins)
        head, body, at = self.openings.label(text)
        head, body, at = (head, body, at) if head else self.openings.answer_behind(text)
        if head:
            named = self.openings.vans_headed(head)
            if named is None:
                return self._labelled(passage, head, body, begins + at, "inline", scope, notes, how=How.PAIR)
            scope.vans = named
            text, at = body, at
        else:
            at = 0
        at += begins
        how = How.LIST
        if self._is_prose(passage, text):
            how = How.PROSE
            scope = self._scope_of_prose(passage, text, scope)
        elif scope.availability in (None, Availability.OPTIONAL):
            scope = self.prices.offered(text, scope)
        return [Draft(passage, "", text, how, scope, at, "", None, notes, headed=bool(head))]

    def _package(self, text: str, scope: Scope) -> Scope | None:
        """Give what holds for the contents of a package, where a line names one before them."""
        if scope.availability not in (None, Availability.OPTIONAL):
            return None
        head = package_head(text, self.kit.lexicon)
        sold_for = frozenset(van for _, _, vans in self.vans.find(head) for van in vans)
        return Scope(sold_for or scope.vans, Availability.OPTIONAL) if head else None

    def _is_prose(self, passage: Passage, text: str) -> bool:
        words = len(text.split())
        return (
            passage.kind is not Kind.BULLET
            and not lists_prices(text)
            and (_sentences(text) >= 1 and words > 6 or words > PROSE_WORDS)
        )

    def _scope_of_prose(self, passage: Passage, text: str, scope: Scope) -> Scope:
        """Give what holds for running text: a long one below a heading "Options" tells of more than options."""
        innermost = self.kit.lexicon.analyse(passage.sections[-1]) if passage.sections else None
        optional = innermost is not None and self.kit.lexicon.cues(innermost, "if_equipped")
        long = _sentences(text) >= 2 or len(text.split()) > 24
        return Scope(scope.vans) if long and not optional else scope

    def _answered(self, passage: Passage, text: str, scope: Scope, notes: tuple[str, ...], begins: int) -> list[Draft]:
        """Give the statements of the text right below a question, where it answers as a value would."""
        question = self.asked.get(passage.number, "")
        if not question and passage.sections and passage.number in self.first_under_heading:
            question = passage.sections[-1].rstrip()
        if not question.endswith("?"):
            return []
        drafts: list[Draft] = []
        for answer in self.questions.answers(question, text):
            body = text[answer.start : answer.end]
            own, at = Scope(scope.vans), begins + answer.start
            if answer.label:
                body = body.rstrip(" .")
                drafts += self._labelled(passage, answer.label, body, at, "inline", own, notes, how=How.PAIR)
            else:
                how = How.PROSE if answer.spoken else How.LIST
                drafts.append(Draft(passage, "", body, how, own, at, "", None, notes, asked=answer.spoken))
        return drafts

    def _parts(
        self, passage: Passage, text: str, parts: list[Part], scope: Scope, notes: tuple[str, ...], begins: int
    ) -> list[Draft]:
        """Give the statements of a paragraph in which labels or names of vans open sentences."""
        listed = bool(parts[0].head or parts[0].vans) or not self._is_prose(passage, text)
        scope = scope if listed else self._scope_of_prose(passage, text, scope)
        drafts: list[Draft] = []
        for part in parts:
            vans = scope.vans if part.vans is None else part.vans
            own = Scope(vans, part.said or scope.availability, {} if part.said else dict(scope.by_van))
            body = text[part.start : part.end].strip()
            at = begins + part.start + text[part.start : part.end].index(body)
            if part.head:
                body = body.rstrip(".") if len(body) <= ALONE else body
                drafts += self._labelled(passage, part.head, body, at, "inline", own, notes, how=How.PAIR)
                continue
            how = How.LIST if passage.kind is Kind.BULLET else How.PROSE
            drafts.append(Draft(passage, "", body, how, own, at, "", None, notes, headed=part.vans is not None))
        return drafts


def _asks(passage: Passage) -> bool:
    """Tell whether a line is a question and nothing else: "Hot water?"."""
    asks = passage.kind is not Kind.HEADING and passage.table is None and passage.text.endswith("?")
    return asks and _sentences(passage.text) == 1


def _sentences(text: str) -> int:
    return len(re.findall(r"[.!?](?:\s|$)", text))
