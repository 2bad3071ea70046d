"""A label of several parts and a body of as many → one statement for each: "Fresh / waste: 100 / 90 l"."""

from __future__ import annotations

import itertools
import re

from specscan.finding.kit import Kit
from specscan.finding.language.mentions import NAMING, Mention
from specscan.finding.language.whole_words import any_word

SLASH = re.compile(r"\s*/\s*(?!(?:h|hr|hour|heure|std|[kK]m|day)\b)", re.IGNORECASE)
COMMA = re.compile(r"\s*,\s+")
PARTING = re.compile(r"\s*-?\s*[/x×]\s*")  # between two parts of a label: "Wand-/Dach-/Bodenstärke"
FIGURE_PART = re.compile(
    r"(?:(?:R|RSI)[ -]?)?(?=.*\d)[\s\d.,'’½¼¾-]*(?:\w{0,8}\.?|BTU/\w+)(?:\s*\([\s\d.,'’]+[^\s\d()]{1,6}\))?",
    re.IGNORECASE,
)
R_VALUE = re.compile(r"R(?:SI)?[ -]?\d")
INNER = re.compile(r"([^:\d]+/[^:\d]+?)\s?:\s+(?=\S?\d)")  # "Tanks: fresh / gray: 36 / 29 gal"
OTHER_JOINTS = ("-", "–", "—", "·", "|", "•", "+")
MOST = 4
UNIT_FIRST = re.compile(r"\(([^\W\d_]{1,3}) ?/ ?[^\W\d_]{4,}\)")
UNIT_BEHIND = re.compile(r"(.*\w)(?: ?[:,])? ([^\W\d_]{1,3}) ?/ ?([^\W\d_]{4,})")
ORDER_BEHIND = re.compile(r"\s*\(([^()\d]+)\)\W*$")  # "5,41 x 2,05 x 2,64 m (L x l x h)"
BETWEEN = re.compile(r"\s*[/x×]\s*")
Part = tuple[str, str, int]  # label, body, and where the body begins


class LabelParts:
    """Parts labels and bodies, for one language."""

    def __init__(self, kit: Kit):
        self.kit = kit
        words = any_word(kit.lexicon.words.cues.get("besides", []))
        joints = any_word({*kit.lexicon.words.cues.get("number_joint", []), "&"})
        self.addition = re.compile(rf"\s*\(({joints}) ([^()]{{2,24}})\)", re.IGNORECASE)
        self.cases = re.compile(rf"(?<!\w)({words})\.?\s*/\s*({words})(?!\w)", re.IGNORECASE)

        cues = kit.lexicon.words.cues
        base, top = (any_word(cues[name]) for name in ("base_case", "top_case"))
        self.case_of_offer = re.compile(rf"(?<!\w)({base})\.?\s*/\s*({top})(?!\w)\.?", re.IGNORECASE)

    def zipped(self, label: str, body: str) -> list[Part] | None:
        """Part "place / heat: cabin / none" into one statement for each aspect, thing, surface or case of the label.

        Returns ``None`` where label and body have not as many parts.
        """
        inner = INNER.match(body)
        if inner is not None:
            found = self.zipped(inner[1], body[inner.end() :])
            return found and [(f"{label}: {name}", part, start + inner.end()) for name, part, start in found]
        parts = self.amounts(body)
        if not 2 <= len(parts) <= MOST or len(SLASH.split(label)) < len(parts):
            return self._listed_aspects(label, body)
        analysis = self.kit.lexicon.analyse(label)
        starts = starts_of(body, parts)
        aspects = _outer(_spans([m for m in analysis.mentions if m.concept.kind == "aspect"]))
        aspects = _side_by_side(label, aspects, len(parts))
        if len(aspects) == len(parts):
            return _shared(label, aspects, parts, starts)
        if all(FIGURE_PART.fullmatch(part) for part in parts):
            return (
                self._by_value(label, analysis.mentions, parts, starts)
                or self._by_case(label, parts, starts)
                or self._by_place(label, analysis.mentions, parts, starts)
            )  # else figures find things by their order
        named = [m for m in analysis.mentions if m.concept.kind in ("thing", "short")]
        unit = UNIT_FIRST.search(label)  # the L of "Fresh (L / place)" is no length
        named = [m for m in named if not unit or m.start != unit.start(1)]
        things = _spans([m for m in named if not self.kit.units.is_sign(label, m.start, m.end)])
        run = _side_by_side(label, things, len(parts))
        if len(run) != len(parts):  # "Insulated shades, cab / rear: standard / option"
            places = _spans([m for m in analysis.mentions if m.concept.kind == "word"])
            run = _side_by_side(label, places, len(parts))
        return _shared(label, run, parts, starts) if len(run) == len(parts) else None  # "Tanks (l) fresh / gray"

    def offered(self, label: str, body: str) -> list[Part]:
        """Part "Solar (W), std. / max.: 100 / 200" into what is standard and what options make of it, else nothing."""
        parts, match = self.amounts(body), self.case_of_offer.search(label)
        if match is None or len(parts) != len(match.groups()):
            return []
        before, behind = label[: match.start()], label[match.end() :]
        starts = starts_of(body, parts)
        cases = zip(match.groups(), parts, starts, strict=True)
        return [(f"{before}{case}{behind}", part, start) for case, part, start in cases]

    def amounts(self, body: str) -> list[str]:
        """Give the parts of a body between slashes, an amount in two units as one: "36 gal / 136 L / 8 gal / 30 L"."""
        parts = SLASH.split(body)
        if any(part.count("(") != part.count(")") for part in parts):
            return [body]  # a slash in brackets parts what they tell: "Hybrid (petrol/electric), 150 kW"
        if len(parts) < 4 or len(parts) % 2:
            return parts
        starts = starts_of(body, parts)
        pairs = [body[starts[n] : starts[n + 1] + len(parts[n + 1])] for n in range(0, len(parts), 2)]
        both = [self.kit.quantities.find(pair) for pair in pairs]
        return pairs if all(len(found) == 1 and found[0].joined for found in both) else parts

    def _listed_aspects(self, label: str, body: str) -> list[Part] | None:
        """Part "Fresh tank: place, heat: cabin, none" into one statement for each aspect that the label lists."""
        parts = COMMA.split(body)
        if not 2 <= len(parts) <= MOST or not COMMA.search(label):
            return None
        mentions = self.kit.lexicon.analyse(label).mentions
        aspects = _outer(_spans([m for m in mentions if m.concept.kind == "aspect"]))
        between = [label[a[1] : b[0]] for a, b in itertools.pairwise(aspects)]
        if len(aspects) != len(parts) or not all(COMMA.fullmatch(gap) for gap in between):
            return None
        return _shared(label, aspects, parts, starts_of(body, parts))

    def told_behind(self, label: str, body: str) -> tuple[str, str]:
        """Give a label with what a bracket behind several figures says of their order, and the body without it."""
        match = ORDER_BEHIND.search(body)
        names = BETWEEN.split(match[1].strip()) if match is not None else []
        if match is None or not 2 <= len(names) <= MOST or len(BETWEEN.split(body[: match.start()])) != len(names):
            return label, body
        named = [self.kit.lexicon.analyse(name).mentions for name in names]
        if not all(any(m.concept.kind in NAMING for m in found) for found in named):
            return label, body
        return f"{label} ({match[1]})", body[: match.start()]

    def slashed(self, label: str, body: str) -> tuple[str, str]:
        """Give a label and a body that other signs part with slashes: "Fresh - gray - black: 22 - 20 - 10".

        A unit that asks for the first part comes in brackets: "Fresh water: L / place" is no length.
        """
        unit = UNIT_BEHIND.fullmatch(label)
        spelt = self.kit.units.named
        if unit is not None and "/" in body and spelt(unit[2]) and not spelt(unit[3]):
            return f"{unit[1]} ({unit[2]} / {unit[3]})", body
        if "/" in body or "/" in label:
            return label, body
        for sign in OTHER_JOINTS:
            joint, count = f" {sign} ", body.count(f" {sign} ")
            if not count or count != label.count(joint):
                continue
            pieces = label.split(joint)
            named = [self.kit.lexicon.analyse(piece).mentions for piece in pieces]
            if count < MOST and all(any(m.concept.kind in NAMING for m in found) for found in named):
                return label.replace(joint, " / "), body.replace(joint, " / ")
        return label, body

    def with_additions(self, label: str) -> str:
        """Give a label whose brackets add a thing without them: "Gray (and black) tanks"."""
        return self.addition.sub(r" \1 \2", label)

    def _by_value(self, label: str, mentions: list[Mention], parts: list[str], starts: list[int]) -> list[Part] | None:
        """Part "Insulation floor / roof / wall: 30 / 40 / 25 mm" into one statement for each surface of the label."""
        values = [m for m in mentions if m.concept.kind == "value"]
        for name in {m.concept.name for m in values}:
            spans = _spans([m for m in values if m.concept.name == name])
            between = [label[a[1] : b[0]] for a, b in itertools.pairwise(spans)]
            if len(spans) == len(parts) and all(PARTING.fullmatch(gap) for gap in between):
                return _shared(label, spans, parts, starts, self._hanging(label, spans))
        return None

    def _hanging(self, label: str, spans: list[tuple[int, int]]) -> str:
        """Give what parts that end in a hyphen share with the compound behind them: "Wand-/Dach-/Bodenstärke"."""
        if not any(label[end : end + 1] == "-" for _, end in spans):
            return ""
        last = [token.norm for token in self.kit.lexicon.analyse(label).tokens if token.start == spans[-1][0]]
        return "".join(f" {norm}" for norm in last[1:])

    def _by_case(self, label: str, parts: list[str], starts: list[int]) -> list[Part] | None:
        """Part "Width without / with mirrors: 2050 / 2508 mm" into one statement for each case."""
        match = self.cases.search(label)
        if match is None or len(parts) != 2:
            return None
        return _shared(label, [match.span(1), match.span(2)], parts, starts)

    def _by_place(self, label: str, mentions: list[Mention], parts: list[str], starts: list[int]) -> list[Part] | None:
        """Give each known part of a label the figure in its place, where others are not known: "Tare/ATM/GVM"."""
        pieces = SLASH.split(label)
        if len(pieces) != len(parts) or any(sign in label for sign in "()[]"):
            return None
        bounds = starts_of(label, pieces)
        owners = [
            {m.concept.name for m in mentions if m.concept.kind in NAMING and start <= m.start < start + len(piece)}
            for start, piece in zip(bounds, pieces, strict=True)
        ]
        named = set().union(*owners)
        if len(named) == len(parts) or not named:
            return None  # each part has its thing
        if len(parts) == 2 and not owners[1] and R_VALUE.match(parts[1]):
            of = self._without_aspects(pieces[0])  # "Wall thickness / value: 1.5 in / R-9"
            return [(pieces[0], parts[0], starts[0]), (f"{of} {pieces[1]}".strip(), parts[1], starts[1])]
        told = [n for n, names in enumerate(owners) if len(names) == 1]
        if not all(self._only_names(pieces[n]) for n in told):
            return None  # "Fresh water driving / full" is about one
        if len(told) == len(parts) - len([o for o in owners if not o]) and all(len(pieces[n]) > 1 for n in told):
            return [(pieces[n].strip(), parts[n], starts[n]) for n in told]
        return None

    def _without_aspects(self, piece: str) -> str:
        """Give what a part of a label is about, without what it asks for: "Wall" of "Wall thickness"."""
        for mention in reversed(self.kit.lexicon.analyse(piece).mentions):
            if mention.concept.kind == "aspect":
                piece = piece[: mention.start] + piece[mention.end :]
        return piece.strip()

    def _only_names(self, piece: str) -> bool:
        """Tell whether all words of a part belong to names of things."""
        analysis = self.kit.lexicon.analyse(piece)
        places = {n for m in analysis.mentions if m.concept.kind in NAMING for n in range(m.first, m.last)}
        return all(n in places for n, token in enumerate(analysis.tokens) if token.norm.isalnum())


def _spans(mentions: list[Mention]) -> list[tuple[int, int]]:
    return list(dict.fromkeys((m.start, m.end) for m in mentions))


def _outer(spans: list[tuple[int, int]]) -> list[tuple[int, int]]:
    """Leave out spans that lie within longer ones: "Heat" of "Heat output"."""
    return [(a, b) for a, b in spans if not any(x <= a and b <= y and y - x > b - a for x, y in spans)]


def _side_by_side(label: str, spans: list[tuple[int, int]], count: int) -> list[tuple[int, int]]:
    """Give the ``count`` spans with nothing but slashes between them; all, where there are no such."""
    for first in range(len(spans) - count + 1):
        run = spans[first : first + count]
        if all(SLASH.fullmatch(label[a[1] : b[0]]) for a, b in itertools.pairwise(run)):
            return run
    return spans


def _shared(
    label: str, spans: list[tuple[int, int]], parts: list[str], starts: list[int], hanging: str = ""
) -> list[Part]:
    """Give a statement for each span of a label, with what stands before the first and behind the last of them."""
    rest, tail = label[: spans[0][0]].rstrip(" :(/-"), label[spans[-1][1] :].rstrip(" :/-")
    if tail.count(")") > tail.count("("):
        tail = tail.replace(")", "", 1)
    return [
        (f"{rest} {label[a:b]}{hanging if b < spans[-1][1] else ''}{tail}".strip(), part, start)
        for (a, b), part, start in zip(spans, parts, starts, strict=True)
    ]


def starts_of(text: str, parts: list[str]) -> list[int]:
    """Give where each of some parts of a text, which stand in it one after the other, begins."""
    found = []
    place = 0
    for part in parts:
        found.append(text.index(part, place))
        place = found[-1] + len(part)
    return found
