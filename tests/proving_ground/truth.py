"""What a brochure states, exactly: labels as a gold file has them, with the habits that the report counts."""

from __future__ import annotations

import csv
import dataclasses
from collections.abc import Iterable
from pathlib import Path

from tests.proving_ground.pages import Draft
from tests.proving_ground.vans import Family

NUMBER_ENDS = ("_l", "_mm", "_kg", "_w", "_ah", "_wh", "_a", "_c", "_si", "_l_h")
INTEGERS = ("model_year", "sleeps", "en_grade")
NEAR = 0.03


@dataclasses.dataclass(slots=True)
class Label:
    """One value of one van: its fair pages, and the words, layouts and habits of its first printing."""

    van: str
    field: str
    value: str
    availability: str
    pages: list[str] = dataclasses.field(default_factory=list)
    words: list[str] = dataclasses.field(default_factory=list)
    layout: str = ""
    habit: str = ""
    traits: tuple[str, ...] = ()


class UnfairError(AssertionError):
    """A drawn document states what a careful human could read in two ways."""


def labels_of(draft: Draft, family: Family, paged: bool) -> list[Label]:
    """Give the labels of a brochure, in the order of the vans.

    Repeats of a value are one label with several pages. An option that only repeats the standard is none (contract).

    Raises:
        UnfairError: a value is stated as standard and as not available, or a number twice with a small difference.
    """
    found: dict[tuple[int, str], list[Label]] = {}
    for number, page in enumerate(draft.pages, start=1):
        place = str(number) if paged else ""
        for block in page.all_blocks():
            for claim in block.claims:
                said = claim.said
                model = family.vans[claim.van].model
                new = Label(
                    model, said.field, said.value, said.availability, [place], [claim.words], block.layout, said.habit,
                    (*block.traits, *said.traits),
                )  # fmt: skip
                _add(found.setdefault((claim.van, said.field), []), new)
    if paged:
        _add_running_heads(found, draft, family)
    result = []
    for (_, name), labels in sorted(found.items(), key=lambda item: item[0]):
        result += _fair(name, labels)
    return result


def check_names(draft: Draft, family: Family, paged: bool) -> None:
    """Refuse a draft from which a reader cannot know the whole names of its vans.

    Raises:
        UnfairError: the range or the code of a van stands on no page.
    """
    texts = [text for page in draft.pages for block in page.all_blocks() for text in block.texts()]
    texts += [page.running_head for page in draft.pages if paged]
    for words in (family.series, *(van.code for van in family.vans)):
        if not any(words in text for text in texts):
            raise UnfairError(f"no page names {words}")


def _add_running_heads(found: dict[tuple[int, str], list[Label]], draft: Draft, family: Family) -> None:
    """Let maker and year be found on the pages whose running heads print them, too."""
    printed = {"maker": family.maker, "model_year": str(family.year)}
    for number, page in enumerate(draft.pages, start=1):
        for (_, name), labels in found.items():
            if name in printed and printed[name] in page.running_head:
                for label in labels:
                    label.pages += [str(number)] if str(number) not in label.pages else []


def _add(labels: list[Label], new: Label) -> None:
    for old in labels:
        if _kind(old) == _kind(new) and same(new.field, old.value, new.value):
            old.pages += [page for page in new.pages if page not in old.pages]
            old.words += new.words
            return
    labels.append(new)


def _kind(label: Label) -> str:
    return "standard" if label.availability == "unstated" else label.availability


def _fair(name: str, labels: list[Label]) -> list[Label]:
    standard = [label for label in labels if _kind(label) == "standard"]
    kept = []
    for label in labels:
        others = [other for other in labels if other is not label]
        if any(near(name, label.value, other.value) and not same(name, label.value, other.value) for other in others):
            raise UnfairError(f"{label.van}: {name} {label.value} stands beside a value too near to it")
        if _kind(label) == "optional" and any(same(name, label.value, other.value) for other in standard):
            continue
        if _kind(label) == "not_available" and any(same(name, label.value, other.value) for other in others):
            raise UnfairError(f"{label.van}: {name} {label.value} is offered and not offered")
        kept.append(label)
    return kept


def is_number(name: str) -> bool:
    """Tell whether a field holds a number."""
    return name.endswith(NUMBER_ENDS) or name in INTEGERS


def same(name: str, one: str, two: str) -> bool:
    """Tell whether two values of a field are the same (numbers within 2 %, as the contract says)."""
    if is_number(name):
        return abs(float(one) - float(two)) <= 0.02 * abs(float(two)) + 1e-9
    return one.casefold() == two.casefold()


def near(name: str, one: str, two: str) -> bool:
    """Tell whether two numbers lie so close that one could be the other, rounded."""
    return is_number(name) and abs(float(one) - float(two)) <= NEAR * abs(float(two)) + 1e-9


def write_gold(path: Path, labels: Iterable[tuple[str, Label]]) -> None:
    """Write (document, label) pairs as a gold file."""
    with open(path, "w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file)
        writer.writerow(("doc", "van", "field", "value", "availability", "page"))
        for doc, label in labels:
            writer.writerow((doc, label.van, label.field, label.value, label.availability, label.pages[0]))
