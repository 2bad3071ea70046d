"""The terms of the rule files: text → mentions of declared concepts."""

from __future__ import annotations

import functools
import itertools
import re
from collections import defaultdict
from collections.abc import Sequence
from dataclasses import dataclass, field
from typing import NamedTuple

from specscan.finding.language.fold import TOKEN_OF, Folder, Token, expand
from specscan.finding.language.mentions import NAMING, Concept, Mention, Overlaps, made_mention
from specscan.finding.language.term_matcher import TermMatcher
from specscan.finding.language.term_words import TermWords
from specscan.finding.language.unit_tails import without_unit
from specscan.finding.language.whole_words import any_word
from specscan.records.text import Passage
from specscan.rulebook.book import Rulebook
from specscan.rulebook.models import Terms, WordFile

# Marks before a term that means something else elsewhere: "us:gas" is gasoline, "uk:gas" is propane.
REGIONS = {True: "us:", False: "uk:"}
REGION = re.compile(r"^(?:us|uk):")
LABELS = ("thing", "short", "aspect", "alone")  # kinds of what a label names
WIRED, STANDARD = Concept("cue", "in_series"), Concept("cue", "standard")
COLON = ": "  # between a label and what it is beside
SHORT = 3  # letters of a word that can be a unit or an abbreviation beside "L" for length
# Brochures repeat their labels: analyses of short texts are kept, so many of each language, and shared by all who ask.
KEPT_ANALYSES = 4_000
KEPT_ANSWERS = 20_000
KEPT_LETTERS = 240
# A paragraph is asked about three or four times, by all that read its document: the last ones are kept too.
KEPT_PARAGRAPHS = 400
PARAGRAPH_LETTERS = 1_200
ENDS_IN_WORD = re.compile(r"(?:[^\W\d_]{2}|\d)\Z")  # what stands behind such a text changes nothing in how it is folded


class Stops(NamedTuple):
    """What tells the point of an abbreviation from the end of a sentence.

    ``short`` are the abbreviations, ``opening`` the words ("The") that begin a sentence behind one all the same.
    """

    short: frozenset[str]
    opening: re.Pattern[str]


@dataclass(slots=True)
class Analysis:
    """The folded words of a text and the mentions in it, in order."""

    text: str
    tokens: list[Token]
    mentions: list[Mention] = field(default_factory=list)


class Lexicon:
    """All terms for documents of one language."""

    def __init__(self, book: Rulebook, language: str, *, north_american: bool = True, like: Lexicon | None = None):
        """``like`` is the lexicon of the same language for the other side of the ocean: most terms are folded there."""
        self.book = book
        self.language = language
        self.elsewhere = REGIONS[not north_american]  # the mark of terms that do not hold here
        self.words = book.words[language]
        self.folder: Folder = like.folder if like is not None else Folder(self.words)
        self.matcher: TermMatcher = like.matcher if like is not None else TermMatcher()
        self._folded: dict[str, list[tuple[str, ...]]] = like._folded if like is not None else {}  # by term
        # by the words of terms; in the order of the rules, so that what is found comes in the same order each time
        self.concepts: dict[tuple[str, ...], dict[Concept, None]] = defaultdict(dict)
        self.overlaps = Overlaps(book)
        self._declare()
        self.matcher.add(self.concepts)
        self.closing = frozenset(self.words.cues.get("closing", ()))
        self.first_words = {norms[0] for norms in self.concepts}
        self.known_words = {norm for norms in self.concepts for norm in norms}
        self.neighbours = {pair for norms in self.concepts for pair in itertools.pairwise(norms)}
        heads = (*LABELS, "word")
        self._in_labels = TermWords(
            norms for norms, some in self.concepts.items() if any(c.kind in heads for c in some)
        )
        self.stops = Stops(frozenset(self.words.abbreviations), _openers(self.words))
        self.measured_words = {tuple(self.folder.norms(one)) for words in self.words.measured.values() for one in words}
        self.plurals = tuple(self.words.plurals_of_names)
        self.ordinals = {self.folder.norms(word)[0]: number for word, number in self.words.ordinals.items()}
        self.ordinal_ends = {norm for word in self.words.ordinal_ends for norm in self.folder.norms(word)}
        self.starting = {spec.vocabulary for spec in book.fields.values() if spec.starts}
        self.next_statement = _next_statement(self.words)
        self._wired = _wired(self.words)
        self._kept = functools.lru_cache(maxsize=KEPT_ANALYSES)(self._analysed)
        self._kept_long = functools.lru_cache(maxsize=KEPT_PARAGRAPHS)(self._analysed)
        self._in_stretch = functools.lru_cache(maxsize=KEPT_ANSWERS)(self._matched)
        self._known_labels = functools.lru_cache(maxsize=KEPT_ANSWERS)(self._knows_label)
        self._known_whole = functools.lru_cache(maxsize=KEPT_ANSWERS)(self._knows_all)
        self._known_heads = functools.lru_cache(maxsize=KEPT_ANSWERS)(self._heads_list)

    def knows_words(self, text: str) -> bool:
        """Tell whether all words of a text occur in terms."""
        return self.known_words.issuperset(self.folder.norms(text))

    def knows_none(self, text: str) -> bool:
        """Tell whether no word of a text occurs in terms, as those of a name of its own do not."""
        return self.known_words.isdisjoint(self.folder.norms(text))

    def brings_in(self, concept: Concept) -> bool:
        """Tell whether a word brings in the thing it describes, as a foam brings in the insulation."""
        return concept.kind == "value" and concept.name in self.starting

    def analyse(self, text: str) -> Analysis:
        """Give the mentions in a text; of overlapping ones the longest that does not hide another's sense.

        The analysis may be shared with others who asked about the same text: it is to be read, not changed.
        """
        if len(text) <= KEPT_LETTERS:
            return self._kept(text)
        return self._kept_long(text) if len(text) <= PARAGRAPH_LETTERS else self._analysed(text)

    def _analysed(self, text: str) -> Analysis:
        tokens = self.folder.tokens(text)
        found = self._mentions([token.norm for token in tokens], tokens)
        found = [m for m in found if not self._is_other_series(m, found, text)]
        if any(m.concept.kind == "plural" for m in found):
            found = [one for m in found for one in self._in_number(m, text)]
        return Analysis(text, tokens, found)

    def _in_number(self, mention: Mention, text: str) -> list[Mention]:
        """Give what a mention means that counts in the plural alone, which folding hides: "waste tanks"."""
        if mention.concept.kind != "plural":
            return [mention]
        many = text[: mention.end].casefold().endswith(self.plurals)
        return [mention._replace(concept=Concept("thing", mention.concept.name))] if many else []

    def _is_other_series(self, mention: Mention, found: list[Mention], text: str) -> bool:
        """Tell whether a cue only folds as the one meant: "en série" tells of wires, "de série" what is standard."""
        if mention.concept not in (WIRED, STANDARD):
            return False
        other = STANDARD if mention.concept == WIRED else WIRED
        if not any(m.concept == other and m.first == mention.first and m.last == mention.last for m in found):
            return False
        wired = self._wired.search(text, 0, mention.end) is not None
        return wired == (mention.concept == STANDARD)

    def joined(self, label: str, joint: str, body: str) -> Analysis:
        """Analyse a label and a body with a sign between them; what is known of each is put together where it can be.

        ``joint`` holds one sign, with spaces around it; the whole is analysed anew where that sign is a word of a term.
        """
        text = f"{label}{joint}{body}"
        if not self._part_at(label, joint, body):
            return self.analyse(text)
        left, right = self.analyse(label), self.analyse(body)
        sign = len(label) + len(joint) - len(joint.lstrip())
        shift, place = len(label) + len(joint), len(left.tokens) + 1
        tokens = [*left.tokens, Token(joint.strip(), sign, sign + 1)]
        tokens += [TOKEN_OF((norm, start + shift, end + shift)) for norm, start, end in right.tokens]
        mentions = [*left.mentions]
        mentions += [
            made_mention((concept, start + shift, end + shift, first + place, last + place))
            for concept, start, end, first, last in right.mentions
        ]
        return Analysis(text, tokens, mentions)

    def _part_at(self, label: str, joint: str, body: str) -> bool:
        """Tell whether what is known of a label and of a body holds for both with a sign between them too."""
        short = len(label) + len(joint) + len(body) <= KEPT_LETTERS
        return short and joint.strip() not in self.known_words and ENDS_IN_WORD.search(label) is not None

    def _mentions(self, norms: list[str], tokens: list[Token]) -> list[Mention]:
        """Give the mentions in a text, stretch by stretch of words that stand side by side in terms.

        No term goes beyond a stretch, and these are short and come again and again.
        """
        if self.first_words.isdisjoint(norms):
            return []  # most running text: no term begins here
        found: list[Mention] = []
        opening, neighbours, size, place = self.first_words, self.neighbours, len(norms), 0
        while place < size:
            if norms[place] not in opening:
                place += 1
                continue
            begin = place
            place += 1
            while place < size and (norms[place - 1], norms[place]) in neighbours:
                place += 1
            for concept, first, last in self._in_stretch(tuple(norms[begin:place])):
                first, last = begin + first, begin + last
                if last == place and self._goes_on(concept, norms, last):
                    continue
                found.append(made_mention((concept, tokens[first].start, tokens[last - 1].end, first, last)))
        return found

    def _matched(self, norms: tuple[str, ...]) -> tuple[tuple[Concept, int, int], ...]:
        """Give concept, first and last (behind) word of the mentions in some words."""
        found = [
            made_mention((concept, 0, 0, first, last))
            for term, first, last in self.matcher.find(norms)
            for concept in self.concepts.get(term, ())  # none of a term that does not hold here
            if not self._goes_on(concept, norms, last)
        ]
        return tuple((m.concept, m.first, m.last) for m in self.overlaps.without_hidden(found))

    def _goes_on(self, concept: Concept, norms: Sequence[str], last: int) -> bool:
        """Tell whether an aspect ends with a word that must close its part, and goes on: "6 kW in place of another"."""
        closing = concept.kind == "aspect" and norms[last - 1] in self.closing
        return closing and last < len(norms) and norms[last].isalpha()

    def knows_label(self, text: str) -> bool:
        """Tell whether a text reads as a label: it is short and names a thing or an aspect."""
        return len(text) <= 80 and self._known_labels(text)

    def _knows_label(self, text: str) -> bool:
        if not self._in_labels.may_stand_among(self.folder.words_in(text)):
            return False  # most texts
        analysis = self.analyse(text)
        words = [token for token in analysis.tokens if token.norm[0].isalpha()]
        covered = {
            index
            for mention in analysis.mentions
            if mention.concept.kind in LABELS
            for index in range(mention.first, mention.last)
        }
        words = without_unit(self.book, words, text)
        kinds = {m.concept.kind for m in analysis.mentions if covered.intersection(range(m.first, m.last))}
        others = [t for n, t in enumerate(analysis.tokens) if n not in covered and t.norm[0].isalpha()]
        if kinds == {"short"} and self._measures_only(analysis.tokens, covered):
            return True
        if kinds == {"short"} and any(len(token.norm) > SHORT for token in others):
            return False  # "L Winter" is a size and a name, no length
        if kinds == {"short"} and any(token.norm[0].isdigit() for token in analysis.tokens):
            return False  # "90 L" is a volume, no length
        if covered:  # "Insulation floor / roof / wall"
            covered |= {n for m in analysis.mentions if m.concept.kind == "value" for n in range(m.first, m.last)}
        worded = [m for m in analysis.mentions if m.concept.kind == "word"]
        if len({m.concept.name for m in worded}) > 1:  # "Cab blinds, insulated"
            covered |= {index for m in worded for index in range(m.first, m.last)}
        return bool(words) and len(covered) >= 0.34 * len(words) and len(words) <= 9

    def _measures_only(self, tokens: list[Token], covered: set[int]) -> bool:
        """Tell whether a label has nothing but words such as "dimensions" beside letters: "Dimensions (L/W/H)"."""
        others = tuple(
            t.norm for n, t in enumerate(tokens) if n not in covered and t.norm[0].isalpha() and len(t.norm) > 1
        )
        return bool(others) and others in self.measured_words

    def knows_all(self, text: str) -> bool:
        """Tell whether all words of a text belong to terms."""
        return self._known_whole(text)

    def _knows_all(self, text: str) -> bool:
        analysis = self.analyse(text)
        words = [n for n, token in enumerate(analysis.tokens) if token.norm.isalpha()]
        return all(any(m.first <= n < m.last for m in analysis.mentions) for n in words)

    def things_told(self, passage: Passage) -> set[str]:
        """Give the things, and fields with names of their own, of which a passage and its row's label speak."""
        row, text = passage.row, passage.text
        if row is None:
            parts = [self.analyse(text)]
        elif self._part_at(row.text, COLON, text):
            parts = [self.analyse(row.text), self.analyse(text)]
        else:
            parts = [self.analyse(f"{row.text}{COLON}{text}")]
        return {m.concept.name for part in parts for m in part.mentions if m.concept.kind in ("thing", "alone")}

    def names_thing(self, text: str) -> bool:
        """Tell whether a short text names a thing, as "gray" or "water heater" do and "capacity" does not.

        What joins two chapters, "climate and heat", is the heading of rows, though a word of it may name a thing too.
        """
        if len(text) > 80:
            return False
        mentions = self.analyse(text).mentions
        chapters = [m for m in mentions if m.concept.kind == "section"]
        joined = len(chapters) > 1
        return any(
            m.concept.kind in NAMING and not (joined and any(c.first <= m.first < c.last for c in chapters))
            for m in mentions
        )

    def heads_list(self, text: str) -> bool:
        """Tell whether a text is the heading of a list of standard or optional equipment."""
        return len(text) <= 60 and self._known_heads(text)

    def _heads_list(self, text: str) -> bool:
        cues = {"standard", "optional", "not_available", "all_vans", "not_fitted", "by_owner"}
        return any(m.concept.kind == "cue" and m.concept.name in cues for m in self.analyse(text).mentions)

    def cues(self, analysis: Analysis, *names: str) -> list[Mention]:
        """Give the mentions of cues of these names."""
        return [m for m in analysis.mentions if m.concept.kind == "cue" and m.concept.name in names]

    def terms_of_cue(self, name: str) -> list[tuple[str, ...]]:
        """Give the terms of a cue as their folded words."""
        terms = (term for term in self.words.cues.get(name, []) if not term.startswith(self.elsewhere))
        return [norms for term in terms for norms in self._folded[term]]

    def _declare(self) -> None:
        book, language = self.book, self.language
        for name, thing in book.things.items():
            self._add(Concept("thing", name), thing.terms(language))
            self._add(Concept("plural", name), _in(thing.plural, language))
            self._add(Concept("short", name), _in(thing.short, language))
            self._add(Concept("beside", name), _in(thing.beside, language))
            self._add(Concept("section", name), _in(thing.sections, language))
        for name, terms in book.aspects.items():
            self._add(Concept("aspect", name), _in(terms, language))
        for name, values in book.vocabularies.items():
            for value, terms in values.items():
                self._add(Concept("value", name, value), _in(terms, language))
        for name, terms in book.word_groups.items():
            self._add(Concept("word", name), _in(terms, language))
        for name, spec in book.fields.items():
            for kind, terms in (
                ("term", spec.terms), ("denied", spec.denied), ("masked", spec.not_terms),
                ("distant", spec.not_near), ("alone", spec.alone),
            ):  # fmt: skip
                self._add(Concept(kind, name), _in(terms, language))
        for name, words in self.words.cues.items():
            self._add(Concept("cue", name), words)

    def _add(self, concept: Concept, terms: list[str]) -> None:
        for term in terms:
            if term.startswith(self.elsewhere):
                continue
            if term not in self._folded:
                folded = [tuple(self.folder.norms(text)) for text in expand(REGION.sub("", term).replace("?", ""))]
                self._folded[term] = [norms for norms in folded if norms]
            for norms in self._folded[term]:
                self.concepts[norms][concept] = None


def _in(terms: Terms, language: str) -> list[str]:
    return [*terms.get(language, []), *terms.get("any", [])]


def owns(book: Rulebook, thing: str, concept: Concept) -> list[str]:
    """Give the fields of a thing that a value, term or aspect can fill."""
    found = []
    for name in book.fields_of(thing):
        spec = book.fields[name]
        if (concept.kind == "value" and spec.vocabulary == concept.name) or (
            concept.kind in ("term", "denied") and concept.name == name
        ):
            found.append(name)
    return found


def expanded(book: Rulebook, things: list[str]) -> list[str]:
    """Give things with those that a common name stands for in its place, as "both tanks" for two."""
    found: list[str] = []
    for thing in things:
        spec = book.things.get(thing)
        found.extend(spec.stands_for if spec and spec.stands_for else [thing])
    return list(dict.fromkeys(found))


def refers(book: Rulebook, things: list[str]) -> bool:
    """Tell whether words name nothing themselves but refer to things named elsewhere, as "neither tank" does."""
    specs = [book.things.get(thing) for thing in things]
    return bool(specs) and all(s is not None and s.aspect and not s.stands_for for s in specs)


def referred(book: Rulebook, things: list[str], named: list[str]) -> list[str]:
    """Give those of the things ``named`` elsewhere that words such as "neither tank" can refer to."""
    aspects = {book.things[thing].aspect for thing in things}
    fields = {thing: [book.fields[name] for name in book.fields_of(thing)] for thing in named}
    return [t for t in named if any(f.aspect in aspects for f in fields[t]) and any(f.none for f in fields[t])]


def _next_statement(words: WordFile) -> re.Pattern[str] | None:
    """Give the pattern of the comma or word before a verb with which another statement about a subject begins.

    So does "and neither heats nor insulates the gray tank": what is denied there is denied of nothing before it.
    """
    if not words.predicates:
        return None
    joints = any_word(word for word in words.cues.get("coordination", []) if word.isalpha())
    verb = rf"(?:,\s+(?:(?:{joints})\s+)?|\s+(?:{joints})\s+)(?:{any_word(words.predicates)})(?!\w)"
    denied = rf",?\s+(?:{joints})\s+(?:{any_word(words.cues.get('neither', []))})(?!\w)"
    return re.compile(rf"{verb}|{denied}")


def _wired(words: WordFile) -> re.Pattern[str]:
    """Give the pattern of what says at the end of a text that batteries are wired one behind the other."""
    return re.compile(rf"(?i)(?<!\w)(?:{any_word(words.cues.get('in_series', []))})\Z")


def _openers(words: WordFile) -> re.Pattern[str]:
    articles = any_word(word.capitalize() for word in words.cues.get("definite", []))
    return re.compile(rf"(?:{articles})\s")
