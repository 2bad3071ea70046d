"""The line near the title that names every van of a range: "Drift 19 | Drift 21 RB | Drift 24"."""

from __future__ import annotations

import re
from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass, replace

from specscan.finding.language.whole_words import count, holds, is_of_word, lowered, may_hold
from specscan.finding.naming.full_names import is_series_word
from specscan.finding.naming.place import begins_with, of_range, without_start
from specscan.records.text import Kind, Passage
from specscan.records.years import MODEL_YEAR

FIRST_PASSAGES = 14
LONE_PASSAGES = 6
LONE_LETTERS = 80
LONE_USES = 2  # of each name of words in the rest of the text
MOST_LONE = 6  # vans that one line names
LONGEST = 170  # letters of such a line, with what stands before it
PARTS = re.compile(r"\s*[,;|·•/]\s+|\s+[|·•/–—-]\s+|\s*:\s+|\s{2,}|\s+(?:and|et|und|&)\s+")
CODE = re.compile(r"[A-ZÀ-Þ\d][\w’'.-]*(?: [A-ZÀ-Þ\d][\w’'.-]*){0,2}")
ANY_CODE = re.compile(CODE.pattern, re.IGNORECASE)  # behind a name, which may be shouted
OPENING_KINDS = (Kind.HEADING, Kind.PROSE, Kind.LINE)
LONE_CODE = re.compile(r"\d{1,4}(?: ?[A-Z]{1,3})?|[A-Z]{1,3}[ -]?\d{2,4}(?:[ -]?[A-Z]{1,2})?")
LISTED_CODE = re.compile(rf"(?=.*\d\d)(?:{LONE_CODE.pattern})")
SHORT_CODE = 2  # letters and figures
BARE = re.compile(r"\d|[A-Z]{1,3}[ -]?\d")
SENTENCE_END = re.compile(r"(?<=\w)\.\s+(?=[A-ZÀ-Þ])")
TWO_NAMES = re.compile(r"\d\S* [A-ZÀ-Þ][a-zà-ÿ]{2,} \S*\d")
YEAR = re.compile(MODEL_YEAR)


@dataclass(frozen=True, slots=True)
class Roster:
    """The range that a line names, and the codes of its vans in that line's order."""

    series: str
    codes: tuple[str, ...]
    passage: Passage

    @property
    def models(self) -> list[str]:
        """Give the full names of the vans."""
        return [of_range(self.series, code) for code in self.codes]


def read_roster(own: Sequence[Passage], title: str, fillers: Collection[str]) -> Roster | None:
    """Give the vans that a short line on the first page lists by the name of their range and a code.

    All parts of the line behind the first van must name one. Several that share a name need no title, but that name
    must stand elsewhere too, or else all codes; a single van counts where the title is the name of the range and the
    code has a figure.
    """
    for passage in [p for p in own if p.page in (0, 1) and p.kind is not Kind.CELL][:FIRST_PASSAGES]:
        if len(passage.text) > LONGEST:
            continue
        texts = dict.fromkeys((passage.text, SENTENCE_END.split(passage.text)[0]))
        parted = [_before_year(_parts(text.strip(" .*"), title), fillers) for text in texts]
        for text, parts in zip(texts, parted, strict=True):
            series = _shared_name(parts)
            if not series or (len(series) == 1 and _is_spoken_of(title, series, own)):
                series = title
            if not series or re.search(r"\d", series):
                continue
            codes = _codes(parts, series, fillers)
            used = all(re.search(r"\d\d", code) and _stands_elsewhere(code, passage, own) for code in codes)
            several = len(codes) > 1 and (series == title or used or _stands_elsewhere(series, passage, own))
            one = len(codes) == 1 and series == title and any(c.isdigit() for c in codes[0])
            if several or (one and text == passage.text):
                return Roster(series, tuple(codes), passage)
        bare = _bare_codes(parted[0], title, passage, own, fillers)
        if bare:
            return Roster(title, tuple(bare), passage)
    return None


def _is_spoken_of(title: str, letter: str, own: Sequence[Passage]) -> bool:
    """Tell whether running text names a range of which a letter is no short form: "the Drift comes as S 541, S 599"."""
    prose = (p.text for p in own if p.kind is Kind.PROSE and p.text.strip(" .") != title)
    return len(title) > 1 and not title.startswith(letter) and any(holds(text, title) for text in prose)


def read_lone(
    own: Sequence[Passage],
    title: str,
    can_be_name: Callable[[str], bool],
    clean: Callable[[str], str],
    names_nothing: Callable[[str], bool],
) -> list[tuple[str, Passage]]:
    """Give the vans that a short line near the title lists by names of their own: "Alcove | Larder", "540, 600".

    The text uses each of them again, unless they are codes below a line that says nothing but words of titles; where
    headings set a code behind each, they are ranges. ``title`` is the document's title where it is none of them;
    ``clean`` takes maker, year and the words of titles from the beginning of the line; ``names_nothing`` tells that a
    line holds nothing else.
    """
    above = ""
    for passage in [p for p in own if p.page in (0, 1) and p.kind is not Kind.CELL][:LONE_PASSAGES]:
        titled, above = bool(above) and names_nothing(above), passage.text  # "2026 models" stands right above
        parts = _parts(passage.text.strip(" .*"), "")
        parts = [clean(parts[0]), *parts[1:]] if len(parts) > 1 else parts
        if not 2 <= len(parts) <= MOST_LONE or len(set(parts)) < len(parts) or len(passage.text) > LONE_LETTERS:
            continue
        if names_nothing(passage.text):
            continue  # "Camper vans | Model year 2027"
        named = all(CODE.fullmatch(part) and not YEAR.search(part) and can_be_name(part) for part in parts)
        others = [one.text for one in own if one is not passage]
        if title and title.casefold() not in (part.casefold() for part in parts):
            if named:
                return []
            continue  # "Come in and shut the door"
        if named and all(_heads_code(part, own) for part in parts):
            return []
        coded = titled and all(LISTED_CODE.fullmatch(part) for part in parts)
        if named and (coded or all(sum(count(text, part) for text in others) >= _uses(part) for part in parts)):
            return [(part, passage) for part in parts]
    return []


def _heads_code(name: str, own: Sequence[Passage]) -> bool:
    pattern = re.compile(rf"(?<!\w){re.escape(name)} \d[\w.-]*(?: [A-ZÀ-Þ\d]\w*)?")
    headings = (one.text.strip(" .:*") for one in own if one.kind is Kind.HEADING)
    return any(match.end() == len(text) for text in headings for match in pattern.finditer(text))


def _uses(name: str) -> int:
    return 1 if re.search(r"\d", name) else LONE_USES


def read_coded(
    own: Sequence[Passage], can_be_name: Callable[[str], bool], clean: Callable[[str], str]
) -> list[tuple[str, Passage]]:
    """Give the van of a document in which a code stands alone on one of the first lines: "590", "Q54", "KS 640 E".

    Beside it may stand what ``clean`` takes away, as the model year. A number of one or two figures, which can be a
    page's, must be used again behind a word.
    """
    for passage in own[:LONE_PASSAGES]:
        text = clean(passage.text).strip(" .")
        if passage.page not in (0, 1) or passage.table is not None or passage.kind not in OPENING_KINDS:
            return []
        if not LONE_CODE.fullmatch(text) or YEAR.search(text) or not can_be_name(text):
            continue
        used = sum(bool(re.search(rf"[^\W\d_] {re.escape(text)}(?![\w.,]*\d)", one.text)) for one in own)
        if len(re.sub(r"\W", "", text)) > SHORT_CODE or used:
            return [(text, passage)]
    return []


def _bare_codes(
    parts: Sequence[str], title: str, passage: Passage, own: Sequence[Passage], fillers: Collection[str]
) -> list[str]:
    """Give the codes of a line that lists nothing else, "540 | 600 Q", under the name of their range."""
    parts = [without_start(parts[0], title), *parts[1:]] if parts else parts
    coded = all(BARE.match(part) and CODE.fullmatch(part) and _is_code(part, fillers) for part in parts)
    if not title or not coded or len(set(parts)) < max(2, len(parts)) or re.fullmatch(r"[\d\s.]+", title):
        return []
    return list(parts) if all(_stands_elsewhere(part, passage, own) for part in parts) else []


def _parts(text: str, title: str) -> list[str]:
    """Part a line at its separators; where it has none, before the name of the range that it repeats.

    Scans lose the dots between names: "Drift 19 Drift 21 RB".
    """
    parts = [part.strip() for part in PARTS.split(text) if part.strip()]
    word = text.split()[0] if text else ""
    if len(parts) > 1 or not word.isalpha() or not word[0].isupper():
        return parts
    repeated = [text.strip()]
    if text.count(word) > 1:  # of most lines that is known without a pattern of its own
        repeated = [part.strip() for part in re.split(rf"\s+(?={re.escape(word)}\s)", text)]
    known = word in title.split() or all(re.search(r"\d", part) for part in repeated)
    return repeated if known else parts


def unbroken(roster: Roster, headed: Sequence[str]) -> Roster:
    """Give a roster whose last van has its whole name, where the line breaks within it: "… | Drift 21" over "Dune".

    ``headed`` are the vans that heads of tables name: one that no other entry names must go on from the last.
    """
    last = roster.models[-1]
    listed = {model.casefold() for model in roster.models}
    longer = [name for name in headed if begins_with(name, last) and name.casefold() not in listed]
    if last.casefold() in {name.casefold() for name in headed} or len(longer) != 1:
        return roster
    return replace(roster, codes=(*roster.codes[:-1], without_start(longer[0], roster.series)))


def _shared_name(parts: Sequence[str]) -> str:
    """Give the words with which every part but the first begins, and which the first holds, before a code."""
    if len(parts) < 2:
        return ""
    words = [part.split() for part in parts[1:]]
    length = 0
    while all(len(one) > length + 1 and one[length] == words[0][length] for one in words):
        if re.search(r"\d", words[0][length]):
            break
        length += 1
    name = " ".join(words[0][:length])
    return name if name and name[0].isupper() and f"{name} " in parts[0] else ""


def _codes(parts: Sequence[str], series: str, fillers: Collection[str]) -> list[str]:
    if not any(may_hold(part, f"{series} ") for part in parts):
        return []
    codes: list[str] = []
    for part in parts:
        code = _code_behind(part, series)
        if code and _is_code(code, fillers):
            codes.append(code)
        elif codes:
            return []
    return codes if len(set(codes)) == len(codes) else []


def _before_year(parts: Sequence[str], fillers: Collection[str]) -> list[str]:
    """Give the parts of a line without a last one for the year alone: "Drift 19 and Drift 21 RB, model year 2026"."""
    last = parts[-1].casefold() if parts else ""
    rest = YEAR.sub(" ", last).strip(" .")
    dated = rest != last and (rest in fillers or all(word in fillers for word in rest.split()))
    return list(parts[:-1] if dated else parts)


def _code_behind(part: str, series: str) -> str:
    """Give the code with which a part ends behind the name of a range, in whatever case; of several the shortest."""
    low, name = lowered(part), f"{lowered(series)} "
    start = low.rfind(name)
    while start >= 0:
        code = part[start + len(name) :]
        if not (start and is_of_word(low[start - 1])) and ANY_CODE.fullmatch(code):
            return code
        start = low.rfind(name, 0, start + len(name) - 1)
    return ""


def _stands_elsewhere(series: str, passage: Passage, own: Sequence[Passage]) -> bool:
    word = lowered(series)
    return any(one is not passage and holds(lowered(one.text), word) for one in own)


def _is_code(text: str, fillers: Collection[str]) -> bool:
    words = text.split()
    if not all(word[0].isdigit() or word[0].isupper() for word in words):
        return False  # "21 adds": the pattern itself reads without regard to case, for the range's name may be shouted
    if TWO_NAMES.search(text) or SENTENCE_END.search(text):
        return False  # "22 Highcroft 22": the sign between two names is lost; "24 S. Dropped": the line goes on
    return not any(YEAR.fullmatch(word) or word.casefold() in fillers for word in words)


def match_heads(heads: Collection[str], models: Sequence[str], series: str) -> dict[str, frozenset[str]]:
    """Give for the heads of tables the van of the roster that each names; heads that name none are left out.

    The last words of one van alone name it: "Scholar" over a column of the Drift 21 Scholar.
    """
    found = {}
    for head in heads:
        plain = _spaced(head) + " "
        names = {model: (_spaced(model) + " ", _spaced(model[len(series) :]) + " ") for model in models}
        fits = [model for model in models if plain.endswith(names[model]) or plain.startswith(names[model])]
        ended = [model for model in models if f"{_spaced(model)} ".endswith(plain)]
        if fits:
            found[head] = frozenset({max(fits, key=len)})
        elif len(ended) == 1 < len(models) and is_series_word(head.split()[0]):
            found[head] = frozenset(ended)
    return found


def _spaced(text: str) -> str:
    """Give a name in a form in which "18N", "18 N" and "18-n" are alike, with a sign where its words begin."""
    return " " + " ".join(re.findall(r"\d+|[^\W\d_]+", text.casefold()))
