"""One statement, wherever it stands, → what it says; brochures repeat their statements, so what was read is kept."""

from __future__ import annotations

import functools
from collections.abc import Sequence

from specscan.finding.drafts import Draft
from specscan.finding.fields.answers import is_plain
from specscan.finding.kit import Kit
from specscan.finding.language.lexicon import KEPT_LETTERS
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.sayings import Said
from specscan.finding.special import special_values
from specscan.finding.things.context import Context
from specscan.finding.things.found import Found, How, Value
from specscan.finding.things.items import Parsed
from specscan.finding.things.statement import Statement
from specscan.finding.wording import ReadStatement, Wording
from specscan.rulebook.book import Rulebook

KEPT_STATEMENTS = 8_000  # of one language and kind of gallon: the bound on what a long scan keeps in memory


class _Anywhere:
    """What a wording says in every context, once it is known to say the same in all."""

    __slots__ = ("read",)

    def __init__(self, wording: Wording):
        self.read: ReadStatement | None = None


class StatementReader:
    """Reads statements of documents of one kit."""

    def __init__(self, book: Rulebook, kit: Kit):
        self.book, self.kit = book, kit
        self._kept = functools.lru_cache(maxsize=KEPT_STATEMENTS)(self._read)
        self._anywhere = functools.lru_cache(maxsize=KEPT_STATEMENTS)(_Anywhere)

    def read(
        self, draft: Draft, context: Sequence[str], sections: Sequence[str], note: str | None, vans: VanMentions
    ) -> ReadStatement:
        """Give what a statement says; ``context`` and ``sections`` are of headings, ``note`` is of a footnote."""
        wording = Wording(
            draft.label, draft.body, draft.how, draft.hint, self.kit.named(draft.label, draft.body, vans),
            (), tuple(sections) if draft.leads else (),
            None if note is None else (note, self.kit.named("", note, vans)), draft.not_fitted, draft.leads,
            draft.headed,
        )  # fmt: skip
        if len(draft.label) + len(draft.body) > KEPT_LETTERS:
            return self._read(wording._replace(context=tuple(context)))[0]
        anywhere = self._anywhere(wording)
        if anywhere.read is None:
            read, asked = self._kept(wording._replace(context=tuple(context)) if context else wording)
            if asked:
                return read
            anywhere.read = read
        return anywhere.read

    def sayings(self, read: ReadStatement, *, denials: bool) -> list[Said]:
        """Give what a statement says that no field holds; denials of it too where asked for."""
        if denials not in read.said:
            read.said[denials] = self.kit.sayings.find(read.parsed, denials=denials)
        return read.said[denials]

    def _read(self, wording: Wording) -> tuple[ReadStatement, bool]:
        """Give what a statement says, and whether that rests on its context."""
        context = Context(wording.context)
        parsed, split = self.kit.parse_named(wording.label, wording.body, wording.hint, wording.named)
        note = self.kit.parse_named("", wording.note[0], None, wording.note[1])[0] if wording.note is not None else None
        statement = Statement(parsed, split, wording.how, context, note)
        lines = self.kit.frames.sentence_of(statement).label_groups()
        things = [thing for group in lines for thing in group.things]
        found = self.kit.frames.read(statement)
        if wording.not_fitted and wording.how is not How.PROSE:
            found += self._not_fitted(parsed, split, found)
        found += special_values(self.book, self.kit, statement, wording)
        return ReadStatement(parsed, split, found, things), context.asked

    def _not_fitted(self, parsed: Parsed, split: int, found: list[Found]) -> list[Found]:
        """Give the things named under "not fitted" that are stated by their mere name."""
        made = []
        for group in self.kit.frames.grouper.form(parsed, split, Context()).groups:
            for thing, item in ((t, i) for i in group.items for t in i.names("thing")):
                others = any(i.chunk == item.chunk and i is not item and i.has("thing") for i in parsed.items)
                if others or not is_plain(self.book, parsed, len(parsed.text), [thing]):
                    continue  # "Gray tank insulation" under "not fitted" says nothing of the tank
                for name in self.book.fields_of(thing):
                    if self.book.fields[name].tells_absence and not any(f.field == name for f in found):
                        made.append(
                            Found(
                                name, Value(), item.start, item.end, f"{name}:not fitted", item, sentence=item.sentence
                            )
                        )
        return made
