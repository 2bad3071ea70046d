"""A document of passages → its vans and the facts about them."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import replace

from specscan.finding.document_reader import DocumentReader
from specscan.finding.doubts import set_aside_doubtful
from specscan.finding.kit import Kit, Kits
from specscan.finding.language.whole_words import holds
from specscan.finding.marks.inapplicable import read_inapplicable
from specscan.finding.marks.legend import read_legend
from specscan.finding.marks.signs import read_named_signs
from specscan.finding.mingled import MINGLED, set_aside_mingled
from specscan.finding.naming.cast import Cast, Player
from specscan.finding.naming.chapters import inherited
from specscan.finding.naming.figure_headings import with_figure_headings
from specscan.finding.naming.identity import identity_facts, van_name
from specscan.finding.naming.known_vans import known_cast
from specscan.finding.naming.labelled_sheets import with_labelled_sheets
from specscan.finding.naming.model_rows import with_model_rows
from specscan.finding.naming.name_doubts import pieced_names
from specscan.finding.naming.nicknames import without_nicknames
from specscan.finding.naming.range_columns import with_range_columns
from specscan.finding.naming.sheet_heads import with_sheet_heads
from specscan.finding.naming.swapped_columns import with_vans_first
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.offered import set_aside_had
from specscan.finding.second_labels import without_second_labels
from specscan.finding.statement_reader import StatementReader
from specscan.finding.statements import StatementMaker
from specscan.records.facts import DocumentFacts, Fact, Saying, VanName
from specscan.records.text import Document, Kind, Passage
from specscan.rulebook.book import Rulebook

TOLD_OF = 3  # passages that speak of a van without a figure in its name


class Finder:
    """Finds facts in documents, by the declared rules only."""

    def __init__(self, book: Rulebook):
        self.book = book
        self.kits = Kits(book)
        self.likening = frozenset(phrase for words in book.words.values() for phrase in words.is_a)
        self.readers: dict[int, StatementReader] = {}  # by identity of the kit, which is kept as long

    def find(self, document: Document, named: VanName | None = None) -> DocumentFacts:
        """Give the vans that a document speaks of and the facts about them, rejected candidates included.

        ``named`` is the van that the user says the document is about: it counts where the document names none.
        """
        kit = self.kits.for_document(document)
        words = kit.lexicon.words
        rows, quotes = kit.casts.bases_in_heads.apart(document.passages)
        rows = without_second_labels(rows, kit.lexicon, lambda: self.kits.others(kit.language))
        rows = without_nicknames(kit.casts.plain_heads.without_signs(rows))
        rows = with_figure_headings(rows, document.titles, kit.lexicon.knows_label)
        rows = with_vans_first(
            rows,
            document.titles,
            words.model_labels,
            (*words.maker_labels, *words.number_labels, *words.stock_labels),
            kit.lexicon.knows_label,
            kit.casts.told.can_head_chapter,
        )
        rows = with_range_columns(
            rows, kit.lexicon.words.model_labels, kit.casts.can_be_name, kit.casts.range_names.of_label
        )
        rows, labelled = with_labelled_sheets(
            with_sheet_heads(rows, kit.casts.can_be_name),
            kit.lexicon.words.model_labels,
            kit.casts.told.can_head_chapter,
        )
        rows, heads = with_model_rows(
            rows,
            kit.lexicon.words.model_labels,
            kit.casts.can_be_name,
            kit.casts.range_names.of_label,
            [title.text for title in document.titles if title.page in (0, 1)],
            words.range_words,
        )
        rows = kit.casts.chapters.ranges.with_full_heads(rows, kit.casts.can_be_name)
        printed, rows = rows, kit.casts.with_ranges(rows, document.titles)
        heads |= {
            now.column.text
            for old, now in zip(printed, rows, strict=True)
            if old.column is not None and now.column is not None and old.column.text in heads
        }
        document = replace(document, passages=rows)
        cast = kit.casts.read(document, heads, labelled)
        if named is not None and not cast.players:
            cast.players.append(Player(named.model, None, {named.model}))
        facts, passages, _, sayings = self._facts(document, kit, cast)
        if not cast.players or (named is None and not self._has_van(cast, facts, document)):
            return DocumentFacts((), (), kit.language, "no van is named or described")
        if quotes:
            facts = [replace(one, printed=quotes.get((one.passage, one.printed), one.printed)) for one in facts]
        facts = set_aside_mingled(facts, self.book.general.mingling)
        names = [van_name(cast, player) for player in cast.players]
        pieced = pieced_names(cast, document)
        identity = [fact for player in cast.players for fact in identity_facts(cast, player, player.model in pieced)]
        identity = set_aside_doubtful(identity, passages)
        return DocumentFacts(
            tuple(names), tuple([*identity, *facts]), kit.language, _left_out(facts), sayings=tuple(sayings)
        )

    def find_about(
        self, document: Document, names: Mapping[str, Collection[str]]
    ) -> tuple[list[Fact], VanMentions, frozenset[str]]:
        """Give what a text states about vans that are known beforehand, and the places at which texts name them.

        ``names`` gives for the id of each van the texts that name it; ``Fact.model`` is then such an id. A statement
        that names no van comes once for each member of the cast, which is given too.
        """
        kit, cast = self.kits.for_document(document), known_cast(names)
        facts, _, vans, _ = self._facts(document, kit, cast)
        return facts, vans, cast.models

    def _facts(
        self, document: Document, kit: Kit, cast: Cast
    ) -> tuple[list[Fact], list[Passage], VanMentions, list[Saying]]:
        cues = kit.lexicon.words.cues
        verbs = [
            *cues.get("carries", []),
            *cues.get("verbs", []),
            *kit.lexicon.words.predicates,
            *kit.lexicon.words.minus,
        ]
        words = kit.lexicon.words
        vans = VanMentions(
            cast,
            verbs,
            self.book.cue_words("before_number"),
            self.book.cue_words("only"),
            self.likening,
            ({*words.vans, *words.model_words}, words.lengths_of_vans),
        )
        passages = [p for p in document.passages if p.number not in cast.names.other]
        corners = [title.text for title in document.titles if title.origin == "corner"]
        legend = read_legend(passages, kit.lexicon, vans, self.book.general, corners)
        read_named_signs(legend, passages, kit.lexicon, self.book.general)
        read_inapplicable(legend, passages, kit.lexicon)
        maker = StatementMaker(kit, vans, legend, passages)
        if id(kit) not in self.readers:
            self.readers[id(kit)] = StatementReader(self.book, kit)
        reader = DocumentReader(self.book, kit, self.readers[id(kit)], cast, vans, maker, passages)
        facts = set_aside_doubtful(reader.facts(), passages)
        bases = {player.model: player.base for player in cast.players if player.base}
        facts += inherited(facts, bases, {player.model: player.chapter for player in cast.players})
        sections = maker.sections
        if not bases and (bases := sections.built_on.bases(passages, sections.about)):
            told = sections.built_on.told_of(passages, cast.models, sections.about)
            facts += inherited(facts, bases, told, anywhere=True)
        return set_aside_had(facts), passages, vans, reader.sayings

    def _has_van(self, cast: Cast, facts: list[Fact], document: Document) -> bool:
        """Tell whether the document describes a van: enough of its measures, or a model with various figures."""
        evidence = self.book.general.van_evidence
        counted = [f for f in facts if not f.rejected and f.how != "heading"]
        listed = {f.field for f in counted if f.how != "prose"}
        core = listed.intersection(evidence.core)
        fields = {f.field for f in counted}
        told = fields.intersection(evidence.core)  # a table may have the vans' batteries, the text their lengths
        if len(core) >= evidence.core_from or (cast.heads and told and len(listed) >= evidence.fields_from):
            return True
        if core and len(listed) >= evidence.listed_from:
            return True
        several = cast.rostered or any(player.chapter or player.listed for player in cast.players)
        several = several or len(cast.players) > 1 and all(map(_is_headed, cast.players))
        if several and len(fields) >= evidence.fields_from:
            return True
        title = cast.players[0].model.casefold()
        series = cast.names.series.casefold()
        called = series if len(cast.players) == 1 and series and title.startswith(f"{series} ") else title
        named = [p for p in document.passages for _ in range(p.text.casefold().count(called))]  # "the Drift", a Drift 6
        if len(cast.players) > 1 and not named:  # "The Solo" of the Drift Solo
            each = ([p for p in document.passages if _is_named(player, p.text)] for player in cast.players)
            named = min(each, key=len)
        heard = fields if len(named) >= 2 else listed
        groups = {self.book.fields[name].group for name in heard}
        groups_told = {self.book.fields[name].group for name in fields}
        enough = evidence.groups_from if len(cast.heads) > 1 else evidence.groups_of_all
        if (cast.heads or len(named) >= 2) and len(groups) >= enough:
            if len(heard) >= evidence.listed_from:
                return True  # water, heating, energy and walls: nothing else has them all
        if len(told) >= evidence.core_from and len(named) >= 2 and len(groups) >= evidence.groups_from:
            return True  # a letter that gives the lengths and weights of a van that it calls by its name
        if len(told) >= evidence.measured_from and named and len(groups_told) >= evidence.groups_of_all:
            return True  # or that calls it so once, and then gives nearly all there is to measure
        if not re.search(r"\d", title) or not named:
            various = len(told) > 1 and len(fields) >= 2 * evidence.fields_from
            return len(named) >= TOLD_OF and (len(told) >= evidence.core_from or various)
        if core and len(listed) >= evidence.fields_from and any(p.kind is Kind.HEADING for p in named):
            return True
        alone = len(named) >= 2 or len(listed) >= 2 * evidence.fields_from
        return alone and len(groups) >= evidence.groups_from


def _left_out(facts: Sequence[Fact]) -> str:
    """Give a sentence on what is left out of tables whose vans are not told apart, an empty text if nothing is."""
    mingled = [fact for fact in facts if fact.rejected == MINGLED]
    vans = ", ".join(sorted({fact.model for fact in mingled}))
    return f"{vans}: {MINGLED}; {len(mingled)} statements are left out" if mingled else ""


def _is_headed(player: Player) -> bool:
    """Tell whether a heading names a van."""
    passage = player.place.passage if player.place is not None else None
    return passage is not None and passage.kind is Kind.HEADING


def _is_named(player: Player, text: str) -> bool:
    """Tell whether a text calls a van by its name or by what else it is called."""
    return any(holds(text, name) for name in (player.model, *player.aliases))
