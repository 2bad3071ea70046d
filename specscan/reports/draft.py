"""A text that says things about vans, held against the dataset: each statement with its verdict and pages.

The text is read by the very rules by which brochures are read, with the vans of the dataset as those it may speak of.
"""

from __future__ import annotations

import hashlib
import re
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from dataclasses import field as made
from pathlib import Path
from typing import Any

from specscan.dataset.reader import Reader
from specscan.finding.finder import Finder
from specscan.finding.naming.known_vans import NOBODY
from specscan.finding.naming.van_mentions import VanMentions
from specscan.judging.kinds import column_kinds
from specscan.reading.tables.compose import Hints
from specscan.reading.text.plain import read_text
from specscan.records.errors import NotFoundError, SpecscanError
from specscan.records.facts import Fact
from specscan.records.text import Document, Kind, Passage
from specscan.reports.citations import cite
from specscan.reports.draft_talk import load_talk, read_loose
from specscan.reports.draft_verdict import Verdict, judge_claim
from specscan.reports.explain import sources_of
from specscan.reports.page_rules import load_report_rules
from specscan.reports.page_words import Wording
from specscan.rulebook.book import Rulebook, load_rulebook
from specscan.settling.preferences import load_preferences

LIMIT_BYTES = 2_000_000
SENTENCE_END = re.compile(r"(?<=[.!?])\s+(?=[^\Wa-z]|[\"“‘(])")
FIGURE = re.compile(r"\d")


@dataclass(slots=True)
class Claim:
    """One statement of a draft: its words, of which van and field it speaks, the verdict, why, and the evidence.

    ``label`` is what the field means; each of ``sources`` has a ``citation``.

    ``carried`` says that the sentence names no van and is taken to be about the one named before it; ``taken`` how
    loose words of the sentence were understood.
    """

    words: str
    van_id: str
    van: str
    field: str
    label: str
    says: str
    verdict: Verdict
    because: str
    carried: bool = False
    taken: list[str] = made(default_factory=list)
    sources: list[dict[str, Any]] = made(default_factory=list)

    def as_dict(self) -> dict[str, Any]:
        """Give it as plain data for JSON."""
        return asdict(self)


def check_draft(path: Path, db: Path, rules: Path) -> list[Claim]:
    """Give the statements of a text file (plain text or Markdown) about vans of the dataset, in the text's order.

    ``rules`` is the folder of rules.

    A sentence in which nothing was found, though it names a van or holds a figure, is given as ``not_checked``, so that
    silence is not taken for consent.

    Raises:
        NotFoundError: there is no such file.
        SpecscanError: it is too large, empty or no text.
        DatasetError: the dataset cannot be opened.
        RuleError: the rules are wrong.
    """
    book = load_rulebook(rules)
    report_rules = load_report_rules(rules)
    document = _read(path)
    with Reader(db) as reader:
        fields = {row["field"]: row for row in reader.rows("SELECT * FROM fields")}
        return _Checker(reader, book, Wording(fields, report_rules, rules)).claims(document)


def _read(path: Path) -> Document:
    if not path.is_file():
        raise NotFoundError(f"{path}: no such text")
    data = path.read_bytes()
    if len(data) > LIMIT_BYTES:
        raise SpecscanError(f"{path}: the text is larger than 2 MB")
    try:
        return read_text(data, path.name, hashlib.sha256(data).hexdigest(), Hints())
    except SpecscanError as error:
        raise type(error)(f"{path}: {error}") from error


def tell_loose(claim: Claim, loose: Mapping[str, str]) -> None:
    """Put the words of the draft back in place of what they were taken for, and say so."""
    for taken, words in loose.items():
        if taken in claim.words:
            claim.words = claim.words.replace(taken, words)
            claim.taken.append(f"“{words}” taken for “{taken}”")


class _Checker:
    def __init__(self, reader: Reader, book: Rulebook, wording: Wording):
        self.reader, self.book, self.wording = reader, book, wording
        self.preferences = load_preferences(book)
        self.kinds, self.talk = column_kinds(book), load_talk(book)
        self.vans = {van["van_id"]: van for van in reader.vans()}

    def claims(self, document: Document) -> list[Claim]:
        """Give all statements, those of a sentence in the order of their fields."""
        document, loose = read_loose(document, self.talk.loose)
        passages = {passage.number: passage for passage in document.passages}
        facts, mentions, cast = Finder(self.book).find_about(document, self._names())
        counted = {(fact.passage, fact.printed, fact.field) for fact in facts if not fact.rejected}
        groups: dict[tuple[Any, ...], list[Fact]] = defaultdict(list)
        for fact in facts:
            if fact.rejected and (fact.passage, fact.printed, fact.field) in counted:
                continue
            groups[(fact.passage, fact.printed, fact.field, fact.value, fact.availability, fact.rejected)].append(fact)
        found: dict[tuple[int, str], list[Claim]] = defaultdict(list)
        for (passage, words, *_), members in groups.items():
            claims = self._of_statement(members, passages[passage], mentions, cast)
            found[(passage, words)] += claims
        ordered = []
        for passage in document.passages:
            own = {words: claims for (number, words), claims in found.items() if number == passage.number}
            parts = SENTENCE_END.split(passage.text) if passage.kind is not Kind.HEADING else []
            for part in parts:
                inside = [words for words in own if words.strip(" .!?") in part]
                for words in inside:
                    ordered += own.pop(words)
                if not inside and (mentions.find(part) or FIGURE.search(part)):
                    ordered.append(self._unread(part, mentions))
            ordered += [claim for claims in own.values() for claim in claims]
        for claim in ordered:
            tell_loose(claim, loose)
        return ordered

    def _names(self) -> dict[str, set[str]]:
        names = {}
        for van_id, van in self.vans.items():
            maker, model, year = (van[key] for key in ("maker", "model", "model_year"))
            texts = {model, f"{maker} {model}"} if maker and model else {model or van["title"]}
            dated = {form for text in texts for form in (f"{text} {year}", f"{year} {text}")} if year else set()
            names[van_id] = texts | dated
        return names

    def _of_statement(
        self, members: list[Fact], passage: Passage, mentions: VanMentions, cast: frozenset[str]
    ) -> list[Claim]:
        first = members[0]
        says = self._said(first)
        vans = sorted({fact.model for fact in members} - {NOBODY})
        if len({fact.model for fact in members}) == len(cast):
            why = "no van of the dataset is named with it"
            return [
                Claim(first.printed, "", "", first.field, self.wording.label(first.field), says, "not_checked", why)
            ]
        if first.rejected:
            why = f"not read with certainty: {first.rejected}"
            return [self._claim(first, van, says, "not_checked", why) for van in vans]
        sentence = _sentence_of(first.printed, passage)
        heads = [head.text for head in (passage.row, passage.column) if head is not None]
        carried = not _names(vans, [sentence, *passage.sections, *heads], mentions)
        if carried and not self.talk.carries_on(sentence):
            why = "it names no van of the dataset, and may speak of another one than the van before it"
            return [
                Claim(first.printed, "", "", first.field, self.wording.label(first.field), says, "not_checked", why)
            ]
        return [self._judged(first, van, says, carried) for van in vans]

    def _judged(self, fact: Fact, van_id: str, says: str, carried: bool) -> Claim:
        rows = {
            row["equipment"]: row
            for row in self.reader.rows("SELECT * FROM settled WHERE van_id = ? AND field = ?", [van_id, fact.field])
        }
        if len(rows) < 2:
            return self._claim(fact, van_id, says, "without_evidence", "the dataset does not have this field")
        judged = judge_claim(
            fact, rows["standard"], rows["optioned"], self.kinds[fact.field], self.preferences, self.tell
        )
        claim = self._claim(fact, van_id, says, judged.verdict, judged.because)
        claim.carried = carried
        found = sources_of(self.reader, list(judged.row["fact_ids"] or [])) if judged.row is not None else []
        claim.sources = [{**one, "citation": cite(one, self.vans[van_id]["maker"])} for one in found]
        return claim

    def _claim(self, fact: Fact, van_id: str, says: str, verdict: Verdict, because: str) -> Claim:
        label = self.wording.label(fact.field)
        return Claim(fact.printed, van_id, self.vans[van_id]["title"], fact.field, label, says, verdict, because)

    def _unread(self, sentence: str, mentions: VanMentions) -> Claim:
        named = sorted({van for _, _, vans in mentions.find(sentence) for van in vans} - {NOBODY})
        titles = ", ".join(self.vans[van]["title"] for van in named)
        why = "nothing in it is of a field of the vocabulary, or it was not understood: check it by hand"
        return Claim(sentence.strip(), "+".join(named), titles, "", "", "", "not_checked", why)

    def _said(self, fact: Fact) -> str:
        row = {
            "field": fact.field, "value_num": fact.num, "value_low": fact.low, "value_high": fact.high,
            "value_flag": fact.flag, "value_text": fact.text, "unit": fact.unit,
        }  # fmt: skip
        option = ", as an option" if fact.availability == "optional" else ""
        return self.tell(row) + option

    def tell(self, row: Mapping[str, Any]) -> str:
        """Give the value of a row in words, in metric and US units; an empty text where it has none."""
        shown = self.wording.value(row)
        if shown is None:
            return ""
        return shown.metric if shown.metric == shown.us else f"{shown.metric} / {shown.us}"


def _sentence_of(words: str, passage: Passage) -> str:
    """Give the sentence of a passage in which words stand; the words where they stand in none."""
    parts = SENTENCE_END.split(passage.text)
    return next((part for part in parts if words.strip(" .!?") in part), words)


def _names(vans: Sequence[str], texts: Sequence[str], mentions: VanMentions) -> bool:
    return any(named & set(vans) for text in texts for _, _, named in mentions.find(text))
