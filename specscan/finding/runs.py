"""Sister vans each described under headings no larger than the one that names them: "Tarn 19", "Water", "Heating"."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass, field

from specscan.finding.language.lexicon import Lexicon
from specscan.finding.naming.van_mentions import VanMentions
from specscan.records.text import Kind, Passage

MIN_RUNS = 2


@dataclass(slots=True)
class Run:
    """A heading that names vans, and what follows it in its column under headings of the same rank.

    ``rest``: what stands behind the name in the heading, the name of the first group.
    """

    vans: frozenset[str]
    opening: Passage
    rest: str
    passages: list[Passage] = field(default_factory=list)

    def headings(self) -> set[str]:
        """Give the texts of the headings of the same rank."""
        return {p.text for p in self.passages if p.kind is Kind.HEADING and p.sections == self.opening.sections}


def vans_by_run(passages: Sequence[Passage], vans: VanMentions, lexicon: Lexicon) -> dict[int, frozenset[str]]:
    """Give for the numbers of passages the vans whose name leads them; none where headings name no sisters.

    A name leads where a heading of the same rank follows it at once, so that nothing stands under the name itself.
    A run ends with the column, at a heading of higher rank, and before headings that no sister's run has.
    """
    runs = [] if vans.single else _runs(passages, vans)
    rests = Counter(run.rest for run in runs)
    runs = [run for run in runs if not run.rest or rests[run.rest] > 1 or _is_group(run.rest, lexicon)]
    if len({run.vans for run in runs}) < MIN_RUNS:
        return {}
    shared = Counter(text for run in runs for text in run.headings())
    found: dict[int, frozenset[str]] = {}
    for run in runs:
        last = max((n for n, p in enumerate(run.passages) if shared[p.text] > 1 and p.kind is Kind.HEADING), default=-1)
        for number, passage in enumerate(run.passages):
            elsewhere = last >= 0 or passage.page != run.opening.page
            ranked = passage.kind is Kind.HEADING and passage.sections == run.opening.sections
            if number > last and ranked and elsewhere:
                break
            found[passage.number] = run.vans
    return found


def _is_group(text: str, lexicon: Lexicon) -> bool:
    return any(m.concept.kind == "section" for m in lexicon.analyse(text).mentions)


def _runs(passages: Sequence[Passage], vans: VanMentions) -> list[Run]:
    runs: list[Run] = []
    current: Run | None = None
    for passage, following in zip(passages, [*passages[1:], None], strict=True):
        if current is not None and _leaves(passage, current):
            current = None
        named, rest = _leading(passage, following, vans) if passage.kind is Kind.HEADING else (None, "")
        if named and named != vans.everyone:
            current = Run(named, passage, rest)
            runs.append(current)
        elif passage.kind is Kind.HEADING and vans.whole(passage.text) is not None:
            current = None  # the last of the names that a cover sets one below the other
        elif current is not None:
            current.passages.append(passage)
    return runs


def _leading(passage: Passage, following: Passage | None, vans: VanMentions) -> tuple[frozenset[str] | None, str]:
    """Give the vans that a heading names, and what stands behind their name in it; none where they do not lead."""
    named = vans.whole(passage.text)
    if named is None:
        found = vans.find(passage.text)
        if len(found) != 1 or found[0][0] != 0:
            return None, ""
        rest = passage.text[found[0][1] :].strip(" –—:|·")
        return found[0][2], rest
    beside = following is not None and following.kind is Kind.HEADING and following.sections == passage.sections
    return (named, "") if beside else (None, "")


def _leaves(passage: Passage, run: Run) -> bool:
    """Tell whether a passage stands in another column of the page, or under a heading of higher rank.

    So does text below a table within which the name stands, over a group of rows.
    """
    last = run.passages[-1] if run.passages else run.opening
    rank = run.opening.sections
    if passage.kind is not Kind.HEADING and passage.sections == rank:
        return True
    beside = passage.page > 0 and passage.page == last.page and passage.block != last.block
    return beside or passage.sections[: len(rank)] != rank
