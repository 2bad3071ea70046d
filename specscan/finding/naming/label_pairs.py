"""Labels and what they say, several on a line: "Range: Drift   Layout: 599 C   Model year: 2027   Ref.: 27/1"."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence

from specscan.finding.language.whole_words import any_word
from specscan.finding.naming.chapters import NAME
from specscan.finding.naming.place import Place, of_range
from specscan.records.text import Passage
from specscan.rulebook.models import WordFile

EDGES = " .,;|·•–-"
LONGEST = 200


class LabelPairs:
    """Reads such lines in documents of one language."""

    def __init__(self, words: WordFile, is_label: Callable[[str], bool]):
        """``is_label`` tells that a text is the label of a specification and no name."""
        self.is_label = is_label
        self.ranges = {word.casefold() for word in words.range_words}
        self.models = {label.casefold() for label in words.model_labels} - self.ranges
        others = (*words.maker_labels, *words.model_year, *words.number_labels, *words.stock_labels)
        labels = any_word({*self.ranges, *self.models, *(label.casefold() for label in others)})
        self.pair = re.compile(rf"(?:^|(?<=[\s|·•,;/]))({labels})\.?\s*:\s*", re.IGNORECASE)

    def read(self, text: str) -> list[tuple[str, str]]:
        """Give the labels of a line, in small letters, each with what stands behind it up to the next."""
        found = list(self.pair.finditer(text)) if ":" in text and len(text) <= LONGEST else []
        ends = [match.start() for match in found[1:]] + [len(text)]
        return [
            (match.group(1).casefold(), text[match.end() : end].strip(EDGES))
            for match, end in zip(found, ends, strict=False)
        ]

    def model_of_range(self, own: Sequence[Passage]) -> tuple[str, Place] | None:
        """Give the van of which one label says the range and another the model: "Range: Drift", "Layout: 599 C".

        Each must be said once and be a name.
        """
        ranges: dict[str, Passage] = {}
        models: dict[str, Passage] = {}
        for passage in own:
            row = passage.row.text if passage.row is not None else ""
            alone = passage.column is None or not passage.column.text
            between = "" if row.endswith(":") or ":" in row else ":"
            text = f"{row}{between} {passage.text}" if row and alone else passage.text
            for label, told in self.read(text):
                if NAME.fullmatch(told) and not self.is_label(told):
                    if label in self.ranges and not re.search(r"\d", told):
                        ranges.setdefault(told, passage)
                    elif label in self.models:
                        models.setdefault(told, passage)
        if len(ranges) != 1 or len(models) != 1:
            return None
        (series, _), (model, passage) = *ranges.items(), *models.items()
        return of_range(series, model), Place(passage, passage.page, model)
