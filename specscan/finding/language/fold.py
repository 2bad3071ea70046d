"""Text → folded words: letter case, accents, spelling variants, endings and compounds do not count."""

from __future__ import annotations

import functools
import re
import unicodedata
from typing import NamedTuple

from specscan.rulebook.models import WordFile
from specscan.rulebook.patterns import checked_pattern

TOKEN = re.compile(r"[^\W\d_]+|\d+|[^\w\s]|_")
GLUE = {"-", "'", "’", "‘", "\u2010", "\u2011", "“", "”", '"', "„", "«", "»", "®", "™", "*", "†"}
SHORT_FORM = re.compile(r"/[^\W\d_](?!\w)")
SIZE = re.compile(r"\s*(?:\d|[x×/]|$)")  # behind a letter that stands for length or width
KEPT_WORDS = 20_000  # of each language: as many as several thousand brochures use
LINKS = ("s", "n", "en", "es", "e", "er", "")
HANGING = re.compile(
    r"[-\u2010\u2011]\s*(?:/|,|[^\W\d_]{1,6}\.?\s|&)\s*([^\W\d_]{5,})"
)  # "Ab-/Frischwasser", "Frisch- und Abwasser"


class Token(NamedTuple):
    """A folded word and the characters of the text that it stands for."""

    norm: str
    start: int
    end: int


TOKEN_OF = functools.partial(tuple.__new__, Token)  # without the call in Python: there are a million of them


class Folder:
    """Folds text of one language as its word file says."""

    def __init__(self, words: WordFile):
        self.words = words
        self.drop = {_bare(word) for word in words.drop}
        self.abbreviations = {word.casefold() for word in words.abbreviations}
        self.spelling = {_bare(a): _bare(b) for a, b in words.spelling.items()}
        self.endings = [(checked_pattern(f"{e.pattern}$"), e.to, e.least) for e in words.endings]
        self.parts = {_bare(part) for part in words.compounds}
        self.read_word = functools.lru_cache(maxsize=KEPT_WORDS)(self._read_word)

    def tokens(self, text: str) -> list[Token]:
        """Give the folded words of a text; articles and hyphens inside words are left out."""
        found: list[Token] = []
        add, start = found.append, 0
        for piece in text.split(" "):
            end = start + len(piece)
            # nothing around a word of letters alone changes how it is folded, but for one that can be an article
            dropped, parts = self.read_word(piece) if piece.isalpha() else (True, ())
            if not dropped:
                for part in parts:
                    add(TOKEN_OF((part, start, end)))
            elif piece:
                self._add_tokens(text, start, end, found)
            start = end + 1
        return found

    def _add_tokens(self, text: str, begin: int, close: int, found: list[Token]) -> None:
        """Add the folded words of a stretch of a text, between two spaces of which no word goes on."""
        add, read_word, parts_known = found.append, self.read_word, self.parts
        for match in TOKEN.finditer(text, begin, close):
            raw = match.group()
            start, end = match.span()
            if not raw[0].isalnum():
                if self._is_barrier(raw, text, start, end) and not self._abbreviates(raw, text, start):
                    add(TOKEN_OF(("and" if raw == "&" else raw, start, end)))
                continue
            dropped, parts = read_word(raw)
            if dropped and not self._is_letter_code(raw, text, end):
                continue
            if dropped and raw == "L":  # where "l" is also an article, "L" is length and "l" is width
                add(TOKEN_OF((raw, start, end)))
                continue
            if parts_known and text[end : end + 1] in GLUE:
                parts = (*parts, *self._tail(text, end))
            for part in parts:
                add(TOKEN_OF((part, start, end)))

    def words_in(self, text: str) -> set[str]:
        """Give all folded words that can be among those of a text, and some that are not: articles, other signs."""
        found: set[str] = set()
        for raw in TOKEN.findall(text):
            found.update(self.read_word(raw)[1])
            if len(raw) == 1:
                found.add("and" if raw == "&" else raw)
        return found

    def _tail(self, text: str, end: int) -> tuple[str, ...]:
        """Give what a word that ends in a hyphen shares with the compound behind it: "Ab-/Frischwasser"."""
        hanging = HANGING.match(text, end)
        return self.read_word(hanging.group(1))[1][1:] if hanging else ()

    def norms(self, text: str) -> list[str]:
        """Give only the folded words."""
        return [token.norm for token in self.tokens(text)]

    def _is_letter_code(self, raw: str, text: str, end: int) -> bool:
        """Tell whether a word that looks like an article is a code, as the D in "17 D" and the a in "a/c"."""
        if raw == "l" and SIZE.match(text[end:]):
            return True
        if raw == "a" and SHORT_FORM.match(text, end):
            return True
        return len(raw) == 1 and raw.isupper() and text[end : end + 1] not in ("'", "’")

    def _abbreviates(self, raw: str, text: str, place: int) -> bool:
        """Tell whether a full stop belongs to an abbreviation, as in "Zul. Gesamtmasse"."""
        if raw != ".":
            return False
        start = place
        while start and text[start - 1].isalpha():
            start -= 1
        return text[start:place].casefold() in self.abbreviations

    @staticmethod
    def _is_barrier(raw: str, text: str, start: int, end: int) -> bool:
        if raw in GLUE:
            spaced = text[start - 1 : start].isspace() or start == 0
            return raw == "-" and spaced and text[end : end + 1].isspace()
        if raw == ".":
            rest = text[end:].lstrip()
            return not rest or (text[end : end + 1].isspace() and not rest[0].islower() and not rest[0].isdigit())
        return True

    def _read_word(self, raw: str) -> tuple[bool, tuple[str, ...]]:
        """Tell whether a word as printed is one that does not count, and give its folded parts."""
        bare = _bare(raw)
        dropped = bare in self.drop
        bare = self.spelling.get(bare, bare)
        parts = self._split(bare) if len(bare) > 6 else None
        return dropped, tuple(self._without_ending(self.spelling.get(part, part)) for part in (parts or (bare,)))

    def _without_ending(self, word: str) -> str:
        for pattern, to, least in self.endings:
            if len(word) >= least and pattern.search(word):
                return pattern.sub(to, word)
        return word

    def _split(self, word: str) -> tuple[str, ...] | None:
        """Cut a compound into known parts, fewest first; ``None`` where it has others."""
        best: list[tuple[str, ...] | None] = [None] * (len(word) + 1)
        best[0] = ()
        for end in range(2, len(word) + 1):
            for start in range(0, end - 1):
                head = best[start]
                if head is None:
                    continue
                part = self._part(word[start:end], last=end == len(word))
                if part is None:
                    continue
                current = best[end]
                if current is None or len(head) + 1 < len(current):
                    best[end] = (*head, part)
        return best[len(word)]

    def _part(self, piece: str, *, last: bool) -> str | None:
        if piece in self.parts:
            return piece
        for link in LINKS:
            if link and piece.endswith(link) and piece[: -len(link)] in self.parts:
                return piece[: -len(link)]
        if last and self._without_ending(piece) in self.parts:
            return self._without_ending(piece)
        return None


def _bare(word: str) -> str:
    flat = unicodedata.normalize("NFKC", word).casefold()
    return "".join(c for c in unicodedata.normalize("NFD", flat) if not unicodedata.combining(c))


def expand(term: str) -> list[str]:
    """Give all texts that a term stands for: ``[word]`` may be missing, ``(this|that)`` is one of them.

    Raises:
        ValueError: brackets do not match.
    """
    texts, rest = _sequence(term, "")
    if rest:
        raise ValueError(f"unmatched bracket in {term!r}")
    return list(dict.fromkeys(" ".join(text.split()) for text in texts if text.strip()))


def _sequence(term: str, closing: str) -> tuple[list[str], str]:
    texts = [""]
    done: list[str] = []
    while term:
        letter = term[0]
        if closing and letter == closing:
            return [*done, *texts], term
        if letter == "|" and closing:
            done.extend(texts)
            texts = [""]
            term = term[1:]
        elif letter in "[(":
            close = "]" if letter == "[" else ")"
            inner, term = _sequence(term[1:], close)
            if not term:
                raise ValueError("a bracket is not closed")
            term = term[1:]
            if letter == "[":
                inner = ["", *inner]
            texts = [f"{left}{right}" for left in texts for right in inner]
        elif letter in "])":
            return [*done, *texts], term
        else:
            texts = [text + letter for text in texts]
            term = term[1:]
    if closing:
        raise ValueError("a bracket is not closed")
    return [*done, *texts], ""
