"""How a text opens: with a label, with the name of vans, or with neither; and the parts of a paragraph that do.

"Fresh: 27 gal. Gray: 22 gal." holds two labels with their values; "19: LP furnace. One 20-lb cylinder. 24: diesel
boiler." speaks of one van up to the name of the next.
"""

from __future__ import annotations

import re
from dataclasses import dataclass, replace

from specscan.finding.absent_lists import AbsentLists
from specscan.finding.instead import Instead
from specscan.finding.labels_by_van import van_label
from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word, holds
from specscan.finding.marks.legend import AVAILABILITIES, longest_cue
from specscan.finding.marks.prices import has_price
from specscan.finding.marks.signs import availability_alone
from specscan.finding.naming.van_mentions import VanMentions
from specscan.finding.things.found import Availability

LABEL_WORDS = 8  # of a label
LONGEST_LABEL = 60  # letters of a label that ends in a full stop
SHORT_NAMES = 80  # letters of a line that can say no more than the names of vans
SENTENCE_END = re.compile(r"[.!](?=\s+[^\W_])")  # a question goes on in its answer
HEAD = re.compile(r"\s*([^:!?]{1,70}?)\s*:\s+(?=\S)")
FIGURES_BEHIND = re.compile(r"([^\d:!?]{3,60}?)\s+(\d[\d.,'’\s]*(?:\s*[/x×]\s*\d[\d.,'’\s]*)+[^\W\d]{0,6}\.?)")
NO_LABEL = re.compile(r"[\d:!?;]")
OFFER_WORDS = 4  # of a sentence that says how all that follows is to be had
DOTTED = re.compile(r"\s+[·•]\s+")
LEAST_DOTTED = 2  # dots between the items of a list
SLASHES = re.compile(r"\s*[/x×]\s*")


@dataclass(frozen=True, slots=True)
class Part:
    """Characters ``start`` to ``end`` of a paragraph; ``head`` is the label before them, ``vans`` of whom they are."""

    start: int
    end: int
    head: str = ""
    vans: frozenset[str] | None = None
    said: Availability | None = None  # before the colon: "OPTION, Drift 21: 400 W"


class Openings:
    """Reads the openings of texts of one document."""

    def __init__(self, lexicon: Lexicon, vans: VanMentions, absent: AbsentLists, instead: Instead):
        self.lexicon, self.vans, self.absent, self.instead = lexicon, vans, absent, instead
        self.articles = {*lexicon.words.cues["one_more"], *lexicon.words.cues["definite"]}
        # "No gas on board: the hob is electric" is no label, but "No of berths" is
        self.denies = re.compile(rf"\s*(?:{any_word(lexicon.words.cues['denies_thing'])})\s+(?!of\s)", re.IGNORECASE)

    def parts(self, text: str) -> list[Part]:
        """Give the parts of a paragraph of several sentences, of which one at least opens with a label or with vans.

        Nothing is given where none does. A first sentence that says how things are to be had, and no more, holds for
        all of them: "Factory options. On the 590: 200 W of solar."
        """
        begin, said = self._offer_over_all(text)
        if said is None:
            return self._opened_parts(text)
        parts = self._opened_parts(text[begin:]) or [Part(0, len(text) - begin)]
        return [Part(p.start + begin, p.end + begin, p.head, p.vans, p.said or said) for p in parts]

    def _offer_over_all(self, text: str) -> tuple[int, Availability | None]:
        """Give where what follows the first sentence begins, and what that says of it: "Options.", "Standard."."""
        first, stop, behind = text.partition(". ")
        if not stop or not behind.strip() or _words(first) > OFFER_WORDS:
            return 0, None
        said = availability_alone(self.lexicon, first)
        return len(text) - len(behind.lstrip()), None if said is Availability.NOT_AVAILABLE else said

    def _opened_parts(self, text: str) -> list[Part]:
        named = self._vans_alone(text.partition(". ")[0])  # "Drift II. Length 5.41 m. Two berths."
        if ": " not in text and named is None and (self.vans.single or ". " not in text[:LONGEST_LABEL]):
            return []
        spans = self.sentences(text)
        if len(spans) < 2:
            return []
        if not self.vans.single and (over := self._labels_over_vans(text, spans)):
            return over
        parts: list[Part] = []
        vans: frozenset[str] | None = None
        headed = False
        label = ""  # that of the sentences behind it which vans head
        for start, end in spans:
            match = HEAD.match(text, start, end)
            head = match.group(1) if match is not None and _words(match.group(1)) <= LABEL_WORDS else ""
            if not head and (alone := self._vans_alone(text[start:end].strip(" ."))) is not None:
                vans, headed = alone, True
                continue
            named = self.vans_headed(head) if head else None
            if match is not None and named is not None:
                vans, headed = named, True
                parts.append(Part(match.end(), end, label, vans))
                continue
            offered = self._offered_head(head) if head and parts and parts[-1].head else None
            if match is not None and offered is not None:
                parts.append(Part(match.end(), end, parts[-1].head, *offered))
                continue
            behind = match.end() if match is not None else start
            if not head or not (self._is_label(head) or self.absent.opens(head, text[behind:end])):
                head = ""
            begin = behind if head else start
            headed = headed or bool(head)
            told = van_label(head, self.vans) if head else None
            label = told.rest if told is not None and told.ends else "" if head else label
            if vans is not None and not self._vans_told(text[start:end]) <= vans:
                vans = None  # "19: LP furnace. 24: diesel boiler. Floor heating comes with the 24 only."
            last = parts[-1] if parts else None
            if not head and last is not None and not last.head and last.vans == vans:
                parts[-1] = Part(last.start, end, "", vans)
            else:
                parts.append(Part(begin, end, head, vans))
        return parts if headed else []

    def _offered_head(self, head: str) -> tuple[frozenset[str], Availability] | None:
        """Give the vans of a head that says how they have something, and no more: "OPTION, Drift 21"."""
        told = van_label(head, self.vans)
        if told is None or not told.ends and not head.endswith(told.names):
            return None
        vans = self.vans.whole(told.names)
        analysis = self.lexicon.analyse(told.rest)
        cues = self.lexicon.cues(analysis, *AVAILABILITIES)
        whole = any(cue.last - cue.first >= len(analysis.tokens) for cue in cues)
        return (vans, AVAILABILITIES[longest_cue(cues)]) if vans and whole else None

    def _labels_over_vans(self, text: str, spans: list[tuple[int, int]]) -> list[Part]:
        """Give the sentences behind labels that end in a full stop, each with its own: "Fuel. 590: 71 L. 640: 93 L."

        Nothing is given unless the sentence right behind the first label has vans at its head. A single one that names
        the thing again needs no label: "Propane. Neither van carries propane."
        """
        heads = [HEAD.match(text, *span) for span in spans]
        owners = [self.vans_headed(head.group(1)) if head is not None else None for head in heads]
        label = self._label_alone(text[slice(*spans[0])].strip(" ."), owners)
        if not label:
            return []
        if len(spans) == 2 and holds(text[slice(*spans[1])].casefold(), label.casefold()):
            return [Part(*spans[1])]
        if owners[1] is None:
            return []
        parts: list[Part] = []
        for (start, end), head, vans, next_vans in zip(spans, heads, owners, [*owners[1:], None], strict=True):
            if next_vans is not None and vans is None and end - start <= LONGEST_LABEL:
                label = text[start:end].strip(" .")  # be it known or not: what follows is not of the label before it
            elif head is not None and vans is not None:
                parts.append(Part(head.end(), end, label, vans))
            elif head is None or not self._is_label(head.group(1)):
                parts.append(Part(start, end, label))
            elif self._vans_told(text[head.end() : end]):
                parts.append(Part(start, end))  # "Insulation: the 640 only; that of the 590 is bare"
            else:
                parts.append(Part(head.end(), end, f"{label}, {head.group(1)}"))
        return parts

    def _label_alone(self, label: str, owners: list[frozenset[str] | None]) -> str:
        """Give a first sentence where it is no more than a label, else an empty text.

        One that nobody knows must have two sentences with vans at their heads behind it: ``owners`` are those of all.
        """
        if len(label) > LONGEST_LABEL or _words(label) > LABEL_WORDS or NO_LABEL.search(label):
            return ""
        headed = len(owners) > 2 and None not in owners[1:3]
        return label if self._is_label(label) or headed and not self._has_predicate(label) else ""

    def dotted(self, text: str) -> list[Part]:
        """Give the items of a list that dots part, "Standard on every Drift: spray foam · double glazing · 30 A inlet".

        A head before the first says of which vans they are or whether they are standard, and asks for nothing; ``head``
        is then what stands there. Nothing is given where the first item says so of the others without such a head, as
        "Winter pack (for the 21) 1.180 €" does of what is in it.
        """
        if len(spans := list(DOTTED.finditer(text))) < LEAST_DOTTED:
            return []
        if again := self._head_again(text):
            halves = self.dotted(text[:again].rstrip()), self.dotted(text[again:])
            moved = [replace(part, start=part.start + again, end=part.end + again) for part in halves[1]]
            return [*halves[0], *moved] if all(halves) else []
        match = HEAD.match(text, 0, spans[0].start())
        head = match.group(1) if match is not None else ""
        says = self._says_whose(head) and not self._names_thing(head)
        if head and not says and (self._knows(head) or _words(head) > LABEL_WORDS):
            return []
        begin = match.end() if match is not None and says else 0
        starts = [begin, *(span.end() for span in spans)]
        ends = [*(span.start() for span in spans), len(text)]
        items = [text[a:b] for a, b in zip(starts, ends, strict=True)]
        told = [self._says_whose(item) or has_price(item) for item in items]
        headed = any(match is not None and self.vans_headed(match.group(1)) for match in map(HEAD.match, items))
        if not begin and (told[0] and not any(told[1:]) or not told[0] and headed):
            return []
        return [Part(a, b, head if begin else "") for a, b in zip(starts, ends, strict=True) if text[a:b].strip(" .")]

    def _head_again(self, text: str) -> int:
        """Give where the words before the vans of a list's head begin another head behind it.

        "Options, 19: awning · racks Options, 21: awning · step".
        """
        match = HEAD.match(text)
        vans = self.vans.find(match.group(1)) if match is not None else ()
        words = match.group(1)[: vans[0][0]].strip() if match is not None and vans else ""
        place = text.find(f"{words} ", match.end()) if match is not None and words else -1
        other = HEAD.match(text, place) if place > 0 else None
        return place if other is not None and self.vans.find(other.group(1)) else 0

    def _says_whose(self, head: str) -> bool:
        """Tell whether a head says of which vans a list is, or whether it is of what they have."""
        cues = self.lexicon.cues(self.lexicon.analyse(head), "all_vans", *AVAILABILITIES)
        return bool(cues or self.vans.find(head))

    def _names_thing(self, head: str) -> bool:
        return any(m.concept.kind in ("thing", "short", "alone") for m in self.lexicon.analyse(head).mentions)

    def sentences(self, text: str) -> list[tuple[int, int]]:
        """Give start and end of the sentences of a text."""
        spans: list[tuple[int, int]] = []
        start = 0
        for match in SENTENCE_END.finditer(text):
            rest = text[match.end() :].lstrip()
            told = text[start : match.end()]
            closes = match.group() != "." or self._closes(told) or (rest[:1].isalpha() and self._is_no(told))
            closes = closes or self._opens_with_vans(rest)  # "590: 20 gal. 640: 26 gal."
            if rest[:1].islower() or not closes:
                continue
            spans.append((start, match.end()))
            start = len(text) - len(rest)
        if text[start:].strip():
            spans.append((start, len(text)))
        return spans

    def label(self, text: str) -> tuple[str, str, int]:
        """Part "Label: value" where the label is known or names vans."""
        match = HEAD.match(text)
        if match is None or self.ends_sentence(match.group(1)):
            return self._label_of_figures(text)
        head = match.group(1)
        if _words(head) > LABEL_WORDS or _is_in_brackets(text, len(head)):
            return "", text, 0
        body = text[match.end() :]
        if self.absent.opens(head, body):
            return head, body, match.end()
        if self.denies.match(head):
            return "", text, 0
        if self.vans_headed(head) is not None:
            return head, body, match.end()
        if len(self.sentences(body)) > 1 or len(body.split()) > 24 or not (self._knows(head) or self._is_hedge(head)):
            return "", text, 0
        return head, body, match.end()

    def answer_behind(self, text: str) -> tuple[str, str, int]:
        """Part "Heated water lines No" where a list answers a known label in its last word."""
        head, _, last = text.rstrip().rpartition(" ")
        if not head or _words(head) > LABEL_WORDS or re.search(r"[.,;:!?]", head) or not self.lexicon.knows_label(head):
            return "", text, 0
        answers = self.lexicon.analyse(last)
        cues = [m.concept.name for m in self.lexicon.cues(answers, "yes", "no", "none")]
        alone = len(answers.tokens) == 1 and bool(cues) and not self.lexicon.cues(answers, "not_so")
        return (head, last, len(head) + 1) if alone else ("", text, 0)

    def _knows(self, head: str) -> bool:
        """Tell whether a head is a known label, be it without the names of vans: "Wheelbase, Drift 19 / Drift 21"."""
        if self.lexicon.knows_label(head):
            return True
        told = van_label(head, self.vans)
        return told is not None and self.lexicon.knows_label(told.rest)

    def _is_hedge(self, head: str) -> bool:
        """Tell whether a text says no more than that something is to come: "Available soon"."""
        analysis = self.lexicon.analyse(head)
        hedges = self.lexicon.cues(analysis, "hedge")
        return any(m.last - m.first == len(analysis.tokens) for m in hedges)

    def _label_of_figures(self, text: str) -> tuple[str, str, int]:
        """Part "Length/width/height 6358/2050/2590 mm": as many figures as the label has parts."""
        match = FIGURES_BEHIND.fullmatch(text)
        if match is None or self.ends_sentence(match.group(1)) or not self.lexicon.knows_label(match.group(1)):
            return "", text, 0
        parts, figures = len(SLASHES.split(match.group(1))), len(SLASHES.split(match.group(2)))
        return (match.group(1), match.group(2), match.start(2)) if parts == figures > 1 else ("", text, 0)

    def _is_label(self, head: str) -> bool:
        """Tell whether what stands before a colon amid text is a label, and no statement: "There is no black tank:".

        What begins with a number and goes on with an article states one: "Three people sleep in a Drift: two in bed".
        """
        first, *others = (word.casefold() for word in head.split() or [""])
        stated = first in self.lexicon.words.numbers and not self.articles.isdisjoint(others)
        return not stated and not self._has_predicate(head) and self.lexicon.knows_label(head)

    def _has_predicate(self, text: str) -> bool:
        words = {word.strip("’',").casefold() for word in text.split()}
        return not words.isdisjoint(self.lexicon.words.predicates)

    def vans_headed(self, head: str) -> frozenset[str] | None:
        """Give the vans that a head before a colon names, all of them for "Both" or "All models"."""
        named = self.vans.whole(self.instead.without(head))
        if named is not None or self.vans.single or len(head) > SHORT_NAMES:
            return named
        return self.vans.everyone if self._is_all_vans(head) else None

    def _vans_alone(self, sentence: str) -> frozenset[str] | None:
        """Give the vans whose names are all that a sentence holds."""
        return self.vans.whole(sentence) if not self.vans.single and len(sentence) <= SHORT_NAMES else None

    def _opens_with_vans(self, text: str) -> bool:
        """Tell whether a text begins with names of vans and a colon."""
        match = HEAD.match(text)
        return match is not None and not self.vans.single and self.vans_headed(match.group(1)) is not None

    def _is_all_vans(self, text: str) -> bool:
        """Tell whether a text says no more than that all vans are meant; "both" means two."""
        analysis = self.lexicon.analyse(text)
        cues = self.lexicon.cues(analysis, *self._all_cues())
        return any(m.last - m.first == len([t for t in analysis.tokens if t.norm.isalnum()]) for m in cues)

    def _all_cues(self) -> tuple[str, ...]:
        return ("all_vans", "two_vans") if len(self.vans.everyone) == 2 else ("all_vans",)

    def _vans_told(self, sentence: str) -> frozenset[str]:
        """Give the vans that a sentence names, all of them where it says so."""
        cues = self.lexicon.cues(self.lexicon.analyse(sentence), *self._all_cues())
        named = [vans for _, _, vans in self.vans.find(sentence)]
        return self.vans.everyone if cues else frozenset().union(*named)

    def _is_no(self, text: str) -> bool:
        """Tell whether a text says no more than no; "No. 5" is a number."""
        return len(text.split()) == 1 and bool(self.lexicon.cues(self.lexicon.analyse(text), "no"))

    def _closes(self, text: str) -> bool:
        """Tell whether the full stop at the end of a text ends a sentence."""
        return self.ends_sentence(text[text[:-1].rfind(" ") + 1 :])

    def ends_sentence(self, head: str) -> bool:
        """Tell whether a sentence ends within a text; the full stop of an abbreviation ends none, as in "U.S. gal"."""
        stops = [
            match.start()
            for match in re.finditer(r"\.(?=\s|$)", head)
            if not head[match.end() :].lstrip()[:1].islower()
        ]
        short = self.lexicon.folder.abbreviations
        return any(re.split(r"[^\w]", head[:stop])[-1].casefold() not in short for stop in stops)


def _is_in_brackets(text: str, place: int) -> bool:
    """Tell whether a place lies within brackets: "GVWR 3500 kg (of which payload: 590 kg)"."""
    return text.count("(", 0, place) > text.count(")", 0, place) and ")" in text[place:]


def _words(text: str) -> int:
    """Give the number of words of a text; a stroke between two is none."""
    return sum(any(map(str.isalnum, word)) for word in text.split())
