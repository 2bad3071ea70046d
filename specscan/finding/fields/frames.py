"""One statement → the values it gives for the things it speaks of."""

from __future__ import annotations

from specscan.finding.fields.answers import answer_fields
from specscan.finding.fields.battery import bank_values
from specscan.finding.fields.grouper import Grouper
from specscan.finding.fields.measured import MeasureReader
from specscan.finding.fields.named import claims, named_equipment
from specscan.finding.fields.preference import without_weaker
from specscan.finding.fields.worded import WordReader
from specscan.finding.fields.words_together import together_fields
from specscan.finding.language.lexicon import Lexicon
from specscan.finding.things.context import Context
from specscan.finding.things.found import Found, How
from specscan.finding.things.groups import Sentence
from specscan.finding.things.items import Item
from specscan.finding.things.statement import Statement
from specscan.rulebook.book import Rulebook


class FrameReader:
    """Reads statements of documents of one language."""

    def __init__(self, book: Rulebook, lexicon: Lexicon):
        self.book = book
        self.lexicon = lexicon
        self.grouper = Grouper(book, lexicon)
        self.measures = MeasureReader(book, self.grouper)
        self.words = WordReader(book, self.grouper)
        self.special = [(n, s) for n, s in book.fields.items() if s.text == "name" or s.number == "grade"]

    def sentence_of(self, statement: Statement) -> Sentence:
        """Give the groups of a statement, taken as a line of a table or list; without a label none rests on context."""
        context = statement.context
        if statement.plain is None or (statement.split and statement.plain[0] is not context):
            statement.plain = (context, self.grouper.form(statement.parsed, statement.split, context))
        return statement.plain[1]

    def _running(self, statement: Statement) -> Sentence:
        """Give the groups of a statement, taken as running text, a heading or a note.

        Without a label they are those of a line, unless it warns of something: then they need not be formed again.
        """
        noted = statement.how is How.NOTE
        plain = self.sentence_of(statement)
        if statement.split or statement.parsed.cues("caution"):
            return self.grouper.form(
                statement.parsed, statement.split, statement.context, running=not noted, noted=noted
            )
        return Sentence(statement.parsed, statement.split, plain.groups, plain.ignored, not noted, noted)

    def read(self, statement: Statement) -> list[Found]:
        """Give the values that a statement holds, candidates set aside included."""
        if statement.how in (How.PROSE, How.HEADING, How.NOTE):
            sentence = self._running(statement)
            if statement.how is How.PROSE:
                sentence.asked = list(statement.context.things)
                statement.context = Context()
        else:
            sentence = self.sentence_of(statement)
        if not statement.parsed.items:
            return []
        if any(item.has("word", "covers") and not _is_heated(item, statement) for item in statement.parsed.items):
            statement.context = Context()  # a line about window covers does not go on about what the heading names
        self.words.start_things(statement, sentence)
        found = self.measures.read(statement, sentence)
        found += self.words.read(statement, sentence)
        found += named_equipment(self.book, statement, sentence)
        found += answer_fields(self.book, statement, sentence, head_last=self.lexicon.words.head == "last")
        found += together_fields(self.book, statement, sentence)
        found += claims(self.book, statement, sentence, self.lexicon)
        found += bank_values(self.book, statement.parsed, found)
        return without_weaker(self.book, found, statement)


def _is_heated(cover: Item, statement: Statement) -> bool:
    """Tell whether a word for covers is part of one for what warms a tank: "with 12 V heating mat"."""
    return any(
        i is not cover and i.has("value", "tank_heating") and i.start <= cover.start and cover.end <= i.end
        for i in statement.parsed.items
    )
