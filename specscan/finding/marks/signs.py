"""Signs of a legend in running text: those that it names instead of printing, and those that stand beside a value."""

from __future__ import annotations

import functools
import re
from collections.abc import Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.mentions import Mention
from specscan.finding.language.whole_words import any_word, holds
from specscan.finding.marks.legend import AVAILABILITIES, Legend, Meaning, longest_cue
from specscan.finding.things.found import Availability
from specscan.records.text import Passage
from specscan.rulebook.book import General
from specscan.rulebook.models import WordFile

CODE = re.compile(r"(?<![\w.])([^\W\d_]{1,5}\.?)(?=\s*:\s)|(?<=\()\s*([^\W\d_]{1,5}\.?)\s*(?=\))")
SYMBOL = re.compile(r"(?<![^\s(])([^\w\s.,;:()/&+×~≈<>=%°*-])(?![^\s)])")
DASHES = "–—−-"
PACKAGE = re.compile(r"([^:.!?(]{3,48}?)\s*(?:\([^():]{1,40}\))?\s*(?:,[^:(]{1,24})?\s*:\s+(?=\S)")
BRACKET = re.compile(r"\(([^()]*)\)")
SHORT_NOTE = 80  # letters
PACKAGE_WORDS = 5
PACKAGE_NAME = 3  # words
KEPT_CELLS = 8_000
PLAIN = ("standard", "optional", "not_available")  # availabilities, each with the cue that says nothing else


def read_named_signs(legend: Legend, passages: list[Passage], lexicon: Lexicon, general: General) -> None:
    """Read what is said of signs that are named and not printed: "A dash means that the van does not have the item"."""
    words = lexicon.words
    if not words.sign_names or not words.sign_means:
        return
    pattern = _named_sign(tuple(sorted(words.sign_names)), tuple(words.sign_means), tuple(words.sign_shown))
    means = [word.split()[0] for word in words.sign_means] + [word.split()[-1] for word in words.sign_shown]
    for passage in passages:
        if not any(word in passage.text for word in means):
            continue
        for match in pattern.finditer(passage.text):
            sign = words.sign_names[(match.group(1) or match.group(3)).casefold()]
            if sign in legend.signs or legend.absence(sign):
                continue
            said = match.group(2) or match.group(4)
            analysis = lexicon.analyse(said)
            if lexicon.cues(analysis, "unknown"):
                continue  # "that the van does not have it or that we have not measured it"
            cues = lexicon.cues(analysis, *PLAIN)
            if sign in legend.checks:
                _read_boxes(legend, cues, general)
            elif cues:
                legend.signs[sign] = Meaning(AVAILABILITIES[longest_cue(cues)])
            elif any(holds(said.casefold(), word) for word in words.sign_absent):
                legend.absent[sign] = _shortest(words, "none")


def _read_boxes(legend: Legend, cues: Sequence[Mention], general: General) -> None:
    """Take boxes left open for options, where those that are ticked are said to be standard."""
    if cues and longest_cue(cues) == "standard":
        for box in general.open_boxes:
            legend.signs.setdefault(box, Meaning(Availability.OPTIONAL))


@functools.lru_cache(maxsize=8)
def _named_sign(names: tuple[str, ...], means: tuple[str, ...], shown: tuple[str, ...]) -> re.Pattern[str]:
    """Give a pattern for "a dash means that …", and for "where there is a dash, …" if there are words for that."""
    sign = any_word(names)
    pattern = rf"(?<!\w)(?:({sign})\s+(?:{any_word(means)})\s+([^.;]{{2,80}})"
    where = rf"|(?:{any_word(shown)})\s+({sign}),\s+([^.;]{{2,80}})" if shown else "|(?!)()()"
    return re.compile(f"{pattern}{where})", re.IGNORECASE)


def spelled(text: str, legend: Legend, lexicon: Lexicon) -> str:
    """Give a value with the signs of the legend in it as words: "3500 (SA: 4250)", "110 W □"; else an empty text.

    A code counts where a colon or brackets part it from the value; a dash beside a value is no sign.
    """
    if not legend.signs:
        return ""
    changed = CODE.sub(lambda match: _word(match, legend, lexicon), text)
    changed = SYMBOL.sub(lambda match: _word(match, legend, lexicon), changed)
    return changed if changed != text else ""


def _word(match: re.Match[str], legend: Legend, lexicon: Lexicon) -> str:
    sign = next(group for group in match.groups() if group)
    meaning = None if sign in DASHES else legend.signs.get(sign)
    if meaning is None or meaning.by_van or meaning.default is None:
        return match.group()
    name = next(name for name in PLAIN if AVAILABILITIES[name] is meaning.default)
    return _shortest(lexicon.words, name)


def _shortest(words: WordFile, cue: str) -> str:
    return min(words.cues[cue], key=lambda word: (len(word), word))


@functools.lru_cache(maxsize=KEPT_CELLS)
def availability_alone(lexicon: Lexicon, text: str) -> Availability | None:
    """Give the availability if a text says nothing else: "Standard", "en option", "nicht lieferbar"."""
    if text.strip().casefold() in lexicon.words.option_cells:
        return Availability.OPTIONAL  # "add": too common a word to say so among others
    analysis = lexicon.analyse(text)
    words = [t for t in analysis.tokens if t.norm.isalnum()]
    cues = [m for m in analysis.mentions if m.concept.kind == "cue" and m.concept.name in AVAILABILITIES]
    covered = {i for m in cues for i in range(m.first, m.last)}
    if not cues or len(covered) < len(words):
        return None
    if "/" in text and len({availability_alone(lexicon, part) for part in text.split("/")}) > 1:
        return None  # "standard / option": each of two things has its own
    return AVAILABILITIES[longest_cue(cues)]


@functools.lru_cache(maxsize=KEPT_CELLS)
def package_alone(lexicon: Lexicon, text: str) -> bool:
    """Tell whether a text is no more than the name of a package: "Paket W", "Winter Pack", "Pack Hiver"."""
    analysis = lexicon.analyse(text)
    words = [n for n, token in enumerate(analysis.tokens) if token.norm.isalnum()]
    cues = lexicon.cues(analysis, "package")
    named = all(word[0].isupper() or word[0].isdigit() for word in text.split())
    if not named or not 1 < len(words) <= PACKAGE_NAME or lexicon.names_thing(text):
        return False
    return any(cue.first == words[0] or cue.last == words[-1] + 1 for cue in cues)


def option_in_bracket(lexicon: Lexicon, text: str) -> Availability | None:
    """Tell whether the only bracket of a short note makes an option of what it tells: "With rack (option) 3.0 m"."""
    said = BRACKET.findall(text)
    if len(said) != 1 or len(text) > SHORT_NOTE:
        return None
    told = availability_alone(lexicon, said[0])
    return told if told is Availability.OPTIONAL else None


@functools.lru_cache(maxsize=KEPT_CELLS)
def says_no_alone(lexicon: Lexicon, text: str) -> bool:
    """Tell whether a text says nothing but no: "no", "none", "not fitted"."""
    analysis = lexicon.analyse(text)
    words = [n for n, token in enumerate(analysis.tokens) if token.norm.isalnum()]
    covered = {n for cue in lexicon.cues(analysis, "no", "none", "not_fitted") for n in range(cue.first, cue.last)}
    return bool(words) and covered.issuperset(words)


def sign_behind_bullet(legend: Legend, text: str) -> tuple[Meaning | None, int]:
    """Give what the sign with which an item of a list begins says, and where its words begin: "- ● heated floor"."""
    sign, _, rest = text.partition(" ")
    told = legend.meaning(sign) if rest and len(sign) == 1 else None
    return told, len(text) - len(rest) if told is not None else 0


def package_head(text: str, lexicon: Lexicon) -> str:
    """Give what stands before the colon where a line names a package: "Sun Pack (600): second panel, 260 W in total".

    Packages are ordered, unless the line or its heading says otherwise. A kit that is known as a part of a van is none.
    """
    match = PACKAGE.match(text)
    if match is None or not match.group(1)[0].isupper() or lexicon.names_thing(match.group(1)):
        return ""
    analysis = lexicon.analyse(match.group(1))
    words = [n for n, token in enumerate(analysis.tokens) if token.norm.isalnum()]
    cues = lexicon.cues(analysis, "package")
    if not words or len(words) > PACKAGE_WORDS or lexicon.cues(analysis, *AVAILABILITIES):
        return ""
    return match.group() if any(m.first == words[0] or m.last == words[-1] + 1 for m in cues) else ""
