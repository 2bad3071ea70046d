"""What a scan makes of a drawn brochure, against what the brochure states."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path
from typing import Any

from specscan.records.documents import ReadDocument
from specscan.records.names import plain
from specscan.reports.evaluate import IDENTITY, is_right, shown_value
from specscan.reports.evaluate import Label as GoldLabel
from specscan.rulebook.book import Rulebook, load_rulebook
from specscan.scanning.examine import Examiner
from specscan.scanning.files import kind_of
from specscan.settling.preferences import Preferences, load_preferences
from specscan.settling.settle import settle
from tests.proving_ground.maker import PAGED, Brochure
from tests.proving_ground.truth import Label

ABSENT = ("no", "none", "0")  # values that say that something is not there
RULES = Path(__file__).parent.parent.parent / "rules"


@dataclass(frozen=True, slots=True)
class Outcome:
    """One label or one stated value, with how it came out.

    ``kind``: ``right``, ``missing`` (printed, not found), ``extra`` (stated, not printed), ``wrong van`` (found, but of
    another van of the document; counts as missing and as extra). ``keys`` are the rows of the report it counts for;
    ``vans_right`` says whether the document's vans were all found and none invented.
    """

    kind: str
    doc: str
    van: str
    field: str
    expected: str
    found: str
    words: str
    keys: tuple[tuple[str, str], ...]
    page_right: bool = True
    availability: tuple[str, str] = ("", "")
    note: str = ""
    vans_right: bool = True

    @property
    def availability_counted(self) -> bool:
        """Tell whether availability is a figure of this field (contract: not of identity fields)."""
        return self.kind == "right" and self.field not in IDENTITY

    @property
    def availability_right(self) -> bool:
        """Tell whether the availability is the label's; standard and unstated count as the same."""
        return _merged(self.availability[0]) == _merged(self.availability[1])


@dataclass(slots=True)
class Scanner:
    """The program, as the benchmark calls it: one set of rules, documents one by one."""

    book: Rulebook = field(default_factory=lambda: load_rulebook(RULES))
    examiner: Examiner = field(init=False)
    preferences: Preferences = field(init=False)

    def __post_init__(self) -> None:
        self.examiner = Examiner(self.book)
        self.preferences = load_preferences(self.book)

    def scan(self, brochure: Brochure) -> list[dict[str, Any]]:
        """Give the facts that carry settled values, as ``evaluate`` reads them from the dataset."""
        return self.stated(self.examined(brochure))

    def examined(self, brochure: Brochure) -> ReadDocument:
        """Give what is found in a brochure."""
        return self.examiner.examine(brochure.name, brochure.data, kind_of(Path(brochure.name), self.book))

    def stated(self, document: ReadDocument) -> list[dict[str, Any]]:
        """Give the facts of a document that carry settled values."""
        settlement = settle([document], self.book, self.preferences)
        carried = {fact_id for row in settlement.settled for fact_id in row.fact_ids}
        result = []
        for placed in settlement.facts:
            if placed.fact_id not in carried:
                continue
            fact = placed.fact
            result.append(
                {
                    "van": fact.model, "field": fact.field, "value_num": fact.num, "value_text": fact.text,
                    "value_flag": fact.flag, "availability": fact.availability, "page": str(fact.page or ""),
                    "printed": fact.printed, "found_by": fact.found_by, "type": self.book.fields[fact.field].type,
                    "confidence": fact.confidence, "how": fact.how, "grounds": fact.grounds,
                }
            )  # fmt: skip
        return result


def score(brochure: Brochure, stated: Iterable[Mapping[str, Any]]) -> list[Outcome]:
    """Give one outcome for each label and for each stated value that no label bears out."""
    free = list(stated)
    vans = sorted({row["van"] for row in free})
    outcomes: list[Outcome] = []
    missing: list[Label] = []
    for label in brochure.labels:
        called = vans[0] if len(vans) == 1 and len(brochure.vans) == 1 else label.van
        fitting = [row for row in free if plain(row["van"]) == plain(called) and is_label(row, label)]
        fitting.sort(
            key=lambda row: (
                _merged(row["availability"]) != _merged(label.availability),
                row["page"] not in label.pages,
            )
        )
        if not fitting:
            missing.append(label)
            continue
        row = fitting[0]
        free.remove(row)
        outcomes.append(
            Outcome(
                "right", brochure.name, label.van, label.field, label.value, shown_value(row), label.words[0],
                _keys(brochure, label), row["page"] in label.pages, (label.availability, row["availability"]),
                f"page {row['page']} for {'/'.join(label.pages)}",
            )
        )  # fmt: skip
    for label in missing:
        astray = [row for row in free if is_label(row, label)]
        kind = "wrong van" if astray and len(brochure.vans) > 1 else "missing"
        keys = _keys(brochure, label)
        outcomes.append(
            Outcome(kind, brochure.name, label.van, label.field, label.value, "", label.words[0], keys,
                    availability=(label.availability, ""), note=f"page {'/'.join(label.pages)}")
        )  # fmt: skip
    for row in free:
        outcomes.append(
            Outcome("extra", brochure.name, row["van"], row["field"], "", shown_value(row), row["printed"],
                    _keys_of_extra(brochure, row), availability=("", row["availability"]),
                    note=f"page {row['page']}, {row['how']}, {row['found_by']}")
        )  # fmt: skip
    right = {plain(van) for van in vans} == {plain(van) for van in brochure.vans}
    return [replace(outcome, vans_right=right) for outcome in outcomes]


def is_label(row: Mapping[str, Any], label: Label) -> bool:
    """Tell whether a stated row is what a label says."""
    gold = GoldLabel("", label.van, label.field, label.value, label.availability, "")
    return row["field"] == label.field and is_right(row, gold)


def _merged(availability: str) -> str:
    return "standard" if availability == "unstated" else availability


def _common(brochure: Brochure, name: str) -> list[tuple[str, str]]:
    medium, naming = brochure.renderer, brochure.naming
    named = []
    if naming is not None:
        named = [("naming", naming.way), ("place of names", naming.place)]
        named += [("maker", naming.maker)] if name == "maker" else []
        named += [("year", naming.year)] if name == "model_year" else []
    return [
        *named,
        ("all", "all"), ("family", brochure.layout), ("language", brochure.region), ("medium", medium), ("field", name),
        ("vans", "one van" if len(brochure.vans) == 1 else "several vans"),
    ]  # fmt: skip


def _keys(brochure: Brochure, label: Label) -> tuple[tuple[str, str], ...]:
    keys = _common(brochure, label.field)
    keys.append(("layout", label.layout))
    keys += [("absence", label.value)] if label.value in ABSENT else []
    keys.append(("availability", _merged(label.availability)))
    keys += [("habit", trait) for trait in dict.fromkeys(label.traits)]
    if label.habit:
        keys.append(("unit habit", f"{_quantity(label.field)}: {label.habit}"))
    return tuple(keys)


def _quantity(name: str) -> str:
    ends = {
        "_l_h": "burn",
        "_l": "volume",
        "_mm": "length",
        "_kg": "mass",
        "_ah": "charge",
        "_wh": "energy",
        "_c": "temperature",
    }
    if name in ("heater_rating_w", "heater_output_w", "heater_input_w"):
        return "heat"
    return next((word for end, word in ends.items() if name.endswith(end)), name.rsplit("_", 1)[-1])


def _keys_of_extra(brochure: Brochure, row: Mapping[str, Any]) -> tuple[tuple[str, str], ...]:
    """Give the rows of the report that an extra counts for: the layout of the block that prints its words."""
    keys = _common(brochure, row["field"])
    keys += [("absence", shown_value(row))] if shown_value(row) in ABSENT else []
    words = _squeezed(row["printed"])
    paged = brochure.renderer in PAGED
    for number, page in enumerate(brochure.draft.pages, start=1):
        if paged and row["page"] not in ("", str(number)):
            continue
        for block in page.all_blocks():
            if words and words in _squeezed(" ".join(block.texts())):
                return (*keys, ("layout", block.layout), *(("habit", trait) for trait in block.traits))
    return (*keys, ("layout", brochure.layout))


def _squeezed(text: str) -> str:
    return re.sub(r"\W+", "", text.casefold())
