"""Names behind labels of their own: "Manufacturer: Marrowfen", "Model | Drift 21", "the builder is Marrowfen"."""

from __future__ import annotations

import re
from collections.abc import Sequence

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.place import Place
from specscan.records.text import Passage

REPLY = re.compile(r"^(?:\s*(?:re|fw|fwd|aw|wg|tr|sv)\s*:)+", re.IGNORECASE)  # marks of an answered letter
SHORT_HEADING = 40
MOST_WORDS = 6  # of a name behind its label
JOINTS = {"&", "+"}
# where another statement begins, whose dot is none of an abbreviation: "Marrowfen. Base vehicle: …", "St. Marrow"
NEXT = re.compile(r"(?<=\w{4})[.;!]\s+(?=[A-ZÀ-Þ])|\s+[|·•]\s+")

Told = tuple[str, Place]


class NameLabels:
    """Reads such labels in documents of one language."""

    def __init__(self, lexicon: Lexicon):
        self.lexicon = lexicon
        self.makers = lexicon.words.maker_labels
        verbs = any_word(lexicon.words.cues.get("is_named", []))
        words = any_word({label.casefold() for label in self.makers})
        name = r"((?-i:[A-ZÀ-Þ][\w’'-]+(?: [A-ZÀ-Þ][\w’'-]+)?))"
        self.sure = re.compile(rf"(?:{any_word(lexicon.words.sure_maker_labels)})\s*:", re.IGNORECASE)
        self.spoken = re.compile(rf"(?<!\w)(?:{words})\s+(?:{verbs})\s+{name}", re.IGNORECASE)

    def maker(self, own: Sequence[Passage]) -> Told | None:
        """Give the company behind the first label for makers; none where that tells a measure: "Converter: 60 A"."""
        told = self.read(own, self.makers) or self._among_others(own)
        return (before_address(told[0]), told[1]) if told is not None and not _is_measure(told[0]) else None

    def read(self, own: Sequence[Passage], labels: Sequence[str]) -> Told | None:
        """Give what stands with the first of some labels, and where."""
        wanted = {label.casefold() for label in labels}
        for passage in own:
            if passage.row is not None and passage.row.text.strip(" :").casefold() in wanted:
                if _is_row_of_several(passage, own) or self._is_of_base(passage):
                    continue  # the head of a table; who made the base vehicle
                return passage.text.strip(" ."), Place(passage, passage.page, passage.text)
            if labels is self.makers and (spoken := self.spoken.search(passage.text)) is not None:
                return spoken.group(1), Place(passage, passage.page, spoken.group(1))
            head, mark, rest = passage.text.partition(":")
            if mark and head.strip().casefold() in wanted and 0 < len(rest.split()) <= MOST_WORDS:
                told = first_statement(REPLY.sub("", rest))
                return told, Place(passage, passage.page, told)
        return None

    def _among_others(self, own: Sequence[Passage]) -> Told | None:
        """Give the company behind a label for nothing but companies in a line of several statements, as at the foot.

        "Manufacturer: Marrowfen. Prices include tax.", not "Base vehicle: Kelmar Drover. Manufacturer: Kelmar".
        """
        for passage in own:
            if passage.row is not None or ":" not in passage.text:
                continue
            for start in (0, *(match.end() for match in NEXT.finditer(passage.text))):
                label = self.sure.match(passage.text, start)
                if label is None or self.names_base(passage.text[:start]):
                    continue
                name = first_statement(passage.text[label.end() :])
                words = [word for word in name.split() if word not in JOINTS]
                if 0 < len(words) <= MOST_WORDS and all(word[0].isupper() for word in words):
                    return name, Place(passage, passage.page, name)
        return None

    def _is_of_base(self, passage: Passage) -> bool:
        """Tell whether a row stands under a heading for the base vehicle: "Make" under "Chassis"."""
        if not passage.sections or len(passage.sections[-1]) > SHORT_HEADING:
            return False
        return self.names_base(passage.sections[-1])

    def names_base(self, text: str) -> bool:
        """Tell whether a text names a base vehicle."""
        mentions = self.lexicon.analyse(text).mentions
        return any(m.concept.kind in ("thing", "short") and m.concept.name == "chassis" for m in mentions)


def first_statement(text: str) -> str:
    """Give what stands before another statement in a line: "Marrowfen" of "Marrowfen. Model year 2027"."""
    return NEXT.split(text, maxsplit=1)[0].strip(" .")


def before_address(name: str) -> str:
    """Give the company without where it works: "Marrowfen" of "Marrowfen, Unit 3"; "Marrow, Fen & Co" stays."""
    company, _, rest = name.partition(",")
    return company if rest and re.search(r"\d", rest) else name


def _is_row_of_several(passage: Passage, own: Sequence[Passage]) -> bool:
    place = (passage.table, passage.row_index)
    return any((p.table, p.row_index) == place and p.text != passage.text for p in own if p.table is not None)


def _is_measure(name: str) -> bool:
    """Tell whether what stands beside "Converter" is no company: "60 A"."""
    return not any(len(word) > 1 and word[0].isupper() and word.isalpha() for word in re.split(r"[^\w'’]+", name))
