"""A quick look that tells of most texts that none of some terms can stand in them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable


class TermWords:
    """The folded words of some terms."""

    def __init__(self, terms: Iterable[tuple[str, ...]]):
        self._others: dict[str, list[frozenset[str]]] = defaultdict(list)  # words of a term, by its first one
        for first, *others in terms:
            self._others[first].append(frozenset(others))

    def may_stand_among(self, words: set[str]) -> bool:
        """Tell whether all words of any term are among some folded words; whether together is not looked at."""
        others = self._others
        return any(rest <= words for word in words if word in others for rest in others[word])
