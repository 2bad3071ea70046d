"""The vans of a document, and the names by which it calls each, several or all of them."""

from __future__ import annotations

import functools
import re
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field

from specscan.finding.language.whole_words import any_word, holds
from specscan.finding.naming.listing import Listed
from specscan.finding.naming.place import Names, Place, begins_with, without_start
from specscan.rulebook.models import WordFile

LETTERED = re.compile(r"([A-Z]{1,3})-?\d")  # a code that begins with letters
SHORTEST_NOUN = 3  # letters, from which on a name may be declined
KEPT_PATTERNS = 16  # lists of words, one a language


@dataclass(slots=True)
class Player:
    """A van of a document: its full model name, where it is printed, and the texts that name it."""

    model: str
    place: Place | None
    aliases: set[str] = field(default_factory=set)
    listed: Listed | None = None  # where it has a maker of its own: that, its year and the passages on it
    chapter: frozenset[int] = frozenset()  # numbers of the passages under a heading of its own
    base: str = ""  # the van all of whose chapter holds for this one too


@dataclass(slots=True)
class Cast:
    """All vans of a document; ``heads`` maps the texts of table heads to vans."""

    names: Names
    players: list[Player]
    heads: dict[str, frozenset[str]] = field(default_factory=dict)
    families: dict[str, frozenset[str]] = field(default_factory=dict)
    rostered: bool = False  # a line near the title lists them all

    def listed_at(self, passage: int) -> frozenset[str] | None:
        """Give the van of a listing of which a passage speaks, ``None`` outside of listings."""
        for player in self.players:
            if player.listed is not None and player.listed.start <= passage < player.listed.end:
                return frozenset({player.model})
        return None

    @property
    def models(self) -> frozenset[str]:
        return frozenset(player.model for player in self.players)


def add_aliases(cast: Cast, words: WordFile, texts: Sequence[str] = ()) -> None:
    """Note the shorter names of each van, and the names of several: "21" and "Polar" for "Drift 21 Polar".

    ``texts`` are those of the document: a last word that tells a van from all others names it where they say so.
    """
    definite = _articles(tuple(words.cues.get("definite", [])))
    series = cast.names.series
    for player in cast.players:
        player.aliases.add(player.model)
        parts = player.model.split()
        if begins_with(player.model, series) and (rest := without_start(player.model, series)):
            player.aliases.add(rest)
        elif len(parts) > 1 and parts[0].isalpha() and re.search(r"\d", " ".join(parts[1:])):
            player.aliases.add(" ".join(parts[1:]))
        if rest := without_start(player.model, cast.names.title):
            player.aliases.add(rest)
        player.aliases |= _variant_names(player, cast) | _short_forms(player, cast)
        player.aliases |= _called_by_end(player, cast, definite, texts)
        player.aliases |= _declined(player.model, words.cases_of_names)
    families: dict[str, set[str]] = {}
    for player in cast.players:
        families.setdefault(player.model.split()[0], set()).add(player.model)
    for name in families:
        if _bear_all(name, cast):
            families[name] = set(cast.models)
    if len(families) > 1:
        cast.families = {name: frozenset(models) for name, models in families.items() if name.isalpha()}
        shared = {name: models for name, models in cast.families.items() if len(models) > 1}
        cast.families |= {f"{name}{end}": models for name, models in shared.items() for end in words.plurals_of_names}
    _add_prefix_families(cast, words, texts)
    _add_variant_families(cast, words)
    _add_everyone(cast, words)
    _add_houses(cast)
    for player in cast.players:
        if len(cast.players) > 1:  # "the Snow models" are both the Drift Snow and the Drift XL Snow
            player.aliases = {a for a in player.aliases if a == player.model or not _ends_all(a, cast)}
    seen = Counter(alias.casefold() for player in cast.players for alias in player.aliases)
    for player in cast.players:
        player.aliases = {a for a in player.aliases if seen[a.casefold()] == 1 or a == player.model}


def _bear_all(name: str, cast: Cast) -> bool:
    """Tell whether a name is in those of all vans: "all Drifts" are the Drift 19, the Drift 21 and the Grand Drift."""
    return all(holds(player.model, name) for player in cast.players)


def _ends_all(name: str, cast: Cast) -> bool:
    return all(player.model.endswith(f" {name}") for player in cast.players)


def _declined(model: str, endings: Sequence[str]) -> set[str]:
    """Give the cases of a name that ends in a noun: "im Milanen"."""
    last = model.split()[-1]
    noun = len(last) > SHORTEST_NOUN and last.isalpha() and last[1:].islower()
    return {f"{model}{ending}" for ending in endings} if noun else set()


def _short_forms(player: Player, cast: Cast) -> set[str]:
    """Give the beginnings of a name that no sister shares: "Drift L" of the Drift L Polar beside a Drift M."""
    words = player.model.split()
    first = len(cast.names.series.split())
    if not cast.names.series or not begins_with(player.model, cast.names.series):
        first = next((n for n, word in enumerate(words) if any(map(str.isdigit, word))), 0)
    if not first:
        return set()
    others = [sister.model for sister in cast.players if sister is not player]
    found = set()
    for end in range(first + 1, len(words)):
        start = " ".join(words[:end])
        if not any(begins_with(other, start) for other in others):
            found |= {start, " ".join(words[first:end])}
    return {form for form in found if len(form) > 1}


def _called_by_end(player: Player, cast: Cast, definite: str, texts: Sequence[str]) -> set[str]:
    """Give the words of a van's name behind its code where no sister has them, and a text uses them alone.

    "The Polar" is the Drift 21 Polar beside a Drift 19, "the Deep Winter" a Drift 21 Deep Winter.
    """
    words = player.model.split()
    coded = max((n for n, word in enumerate(words) if any(map(str.isdigit, word))), default=len(words))
    others = [other.model for other in cast.players if other is not player]
    found = set()
    for end in (words[start:] for start in range(coded + 1, len(words)) if others):
        name = " ".join(end)
        own = all(word.isalpha() and word[0].isupper() for word in end) and _stands_alone(end[-1])
        if (
            own
            and not any(holds(other, name) for other in others)
            and any(_is_called(name, definite, t) for t in texts)
        ):
            found.add(name)
    return found


def _is_called(name: str, definite: str, text: str) -> bool:
    """Tell whether a text has a name behind an article, where it begins no longer name: not "the Polar Pack"."""
    return name in text and re.search(rf"{definite}{re.escape(name)}(?!\w| +[A-ZÀ-Þ\d])", text) is not None


@functools.lru_cache(maxsize=KEPT_PATTERNS)
def _articles(definite: tuple[str, ...]) -> str:
    """Give the text of a pattern of an article and the space behind it."""
    return rf"(?<!\w)(?i:{any_word(definite)})\s+"


def _variant_names(player: Player, cast: Cast) -> set[str]:
    """Give what a van's name has more than a sister's: "the Polar" is the Drift 21 Polar beside a Drift 21."""
    found = set()
    for sister in cast.players:
        if begins_with(player.model, sister.model):
            more = without_start(player.model, sister.model)
            shared = sum(more in other.model.split() for other in cast.players) > 1
            if more[:1].isupper() and _stands_alone(more) and not shared:
                found.add(more)
    return found


def _add_prefix_families(cast: Cast, words: WordFile, texts: Sequence[str]) -> None:
    """Let "S models" name the vans whose code begins with S; be it the letter of "S19" and "S21"."""
    _add_letter_families(cast, words, texts)
    prefixes: dict[str, set[str]] = {}
    for player in cast.players:
        parts = player.model.split()
        for end in range(1, len(parts)):
            for start in range(end):
                prefixes.setdefault(" ".join(parts[start:end]), set()).add(player.model)
    for prefix, models in prefixes.items():
        if 2 <= len(models) < len(cast.players) and not _bear_all(prefix, cast):
            for word in words.model_words:
                cast.families[f"{prefix} {word}"] = frozenset(models)
                cast.families[f"{prefix}-{word}"] = frozenset(models)
            if len(prefix) > 2 or " " in prefix:
                cast.families[prefix] = frozenset(models)


def _add_letter_families(cast: Cast, words: WordFile, texts: Sequence[str]) -> None:
    """Let "V coaches" and "the W series" name the vans whose code bears the letter; "Class B vans" are of no van."""
    lettered: dict[str, set[str]] = {}
    for player in cast.players:
        coded = [match.group(1) for part in player.model.split() if (match := LETTERED.match(part)) is not None]
        if len(coded) != 1:
            return
        lettered.setdefault(coded[0], set()).add(player.model)
    classes = any_word(words.vehicle_classes)
    for letter, models in lettered.items() if len(lettered) > 1 else ():
        classed = re.compile(rf"(?i:{classes})[ -]{letter}(?!\w)")
        if words.vehicle_classes and any(classed.search(text) for text in texts):
            continue
        for word in {*words.model_words, *words.vans, *words.range_words}:
            cast.families.setdefault(f"{letter} {word}", frozenset(models))
            cast.families.setdefault(f"{letter}-{word}", frozenset(models))


def _add_variant_families(cast: Cast, words: WordFile) -> None:
    """Let "W models" and "the Polar versions" name the vans in whose names the word stands behind the code."""
    holders: dict[str, set[str]] = {}
    for player in cast.players:
        for word in player.model.split()[1:]:
            if word.isalpha():
                holders.setdefault(word, set()).add(player.model)
    for name, models in holders.items():
        if 2 <= len(models) < len(cast.players):
            for word in words.model_words:
                for phrase in (f"{name} {word}", f"{name}-{word}", f"{word} {name}"):
                    cast.families.setdefault(phrase, frozenset(models))
            if _stands_alone(name):
                cast.families[name] = frozenset(models)
                cast.families.setdefault(f"{name}s", frozenset(models))  # "the two Coasts"


def _stands_alone(word: str) -> bool:
    """Tell whether a word of a name may name vans by itself: "AWD" and "XL" say more often what a van has."""
    return len(word) > 2 and not (len(word) == 3 and word.isupper())


def _add_houses(cast: Cast) -> None:
    """Let the name of a maker name its vans where several makers' are described: "the Marrowfen has no gas"."""
    for player in cast.players:
        if player.listed is not None and player.listed.maker:
            before = cast.families.get(player.listed.maker, frozenset())
            cast.families[player.listed.maker] = before | {player.model}


def _add_everyone(cast: Cast, words: WordFile) -> None:
    """Let "every Drift" name all vans of the range: where others bear another name, only those that bear it.

    "On every Marrowfen" names all vans of a document of one maker.
    """
    if len(cast.players) < 2:
        return
    own = not any(player.listed is not None and player.listed.maker for player in cast.players)
    if own and cast.names.maker and not cast.names.used:
        for word in words.every_words:
            cast.families[f"{word} {cast.names.maker}"] = cast.models
    if ends := {one for player in cast.players if (one := player.model.split()[-1]).isalpha() and _ends_all(one, cast)}:
        cast.families |= {f"{word} {end}": cast.models for word in words.every_words for end in ends}
    if cast.names.series:
        named = frozenset(player.model for player in cast.players if begins_with(player.model, cast.names.series))
        named = cast.models if _bear_all(cast.names.series, cast) else named
        for word in words.every_words:
            for name in (cast.names.series, f"{cast.names.series}s"):
                cast.families[f"{word} {name}"] = named or cast.models
