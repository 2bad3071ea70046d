"""Whose fact is it: the vans that several documents name, by maker, model and model year."""

from __future__ import annotations

import re
import unicodedata
from collections import defaultdict
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from specscan.records.documents import DocumentRecord, ReadDocument, Van
from specscan.records.facts import VanName
from specscan.records.names import plain

Named = tuple[str, str]  # document's id and the model as that document names it


@dataclass(slots=True)
class _Group:
    """Names of several documents that mean one van."""

    maker: str
    model: str
    year: int | None
    members: list[Named] = field(default_factory=list)


@dataclass(frozen=True, slots=True)
class Fleet:
    """All vans of a dataset, by id and in order of name, and which documents name them.

    ``named`` maps (document's id, model as that document names it) to the van, ``records`` and ``documents_of`` are by
    the ids of documents and vans.
    """

    vans: dict[str, Van]
    named: dict[Named, str]
    records: dict[str, DocumentRecord]
    documents_of: dict[str, list[str]]


def fleet_of(documents: Sequence[ReadDocument], legal_forms: Sequence[str]) -> Fleet:
    """Give the vans that documents name; of what is found in them only the names of vans are asked for."""
    vans, named = assign_vans(documents, legal_forms)
    documents_of: dict[str, list[str]] = {van.van_id: [] for van in vans}
    for doc_id, van_id in sorted({(doc_id, van_id) for (doc_id, _), van_id in named.items()}):
        documents_of[van_id].append(doc_id)
    records = {document.record.doc_id: document.record for document in documents}
    return Fleet({van.van_id: van for van in vans}, named, records, documents_of)


def assign_vans(documents: Sequence[ReadDocument], legal_forms: Sequence[str]) -> tuple[list[Van], dict[Named, str]]:
    """Give all vans, and for each (document, model as named there) the id of its van.

    Documents meet in one van where maker and model are the same and the model year is the same. A document
    that prints no year, or no maker, joins the one van that fits; where several fit, it stays apart. A name without a
    maker that begins with that of a van called by the rest is taken apart: "Marrowfen Drift 21".
    """
    by_model: dict[str, list[_Group]] = defaultdict(list)
    names = [
        (document.record.doc_id, document.record.name, name) for document in documents for name in document.found.vans
    ]
    # The fullest names first, so that incomplete ones find them; then by name, so that order of reading is no matter.
    names.sort(key=lambda row: (not row[2].maker, row[2].year is None, row[1], row[0], row[2].model))
    for doc_id, _, name in names:
        printed, name = name, _with_maker(name, by_model, legal_forms)
        groups = by_model[_model_key(name, legal_forms)]
        fitting = [g for g in groups if _fits(g, name, legal_forms)]
        exact = [g for g in fitting if g.year == name.year]
        if len(exact) == 1 or (not exact and len(fitting) == 1):
            group = (exact or fitting)[0]
            group.maker = max(group.maker, name.maker, key=len) if name.maker else group.maker
        else:
            group = _Group(name.maker, name.model, name.year)
            groups.append(group)
        group.members.append((doc_id, printed.model))
    vans: list[Van] = []
    mapping: dict[Named, str] = {}
    taken: set[str] = set()
    for group in sorted(
        (g for groups in by_model.values() for g in groups), key=lambda g: (g.maker, g.model, g.year or 0)
    ):
        van_id = _slug(group, taken)
        vans.append(Van(van_id, group.maker, group.model, group.year))
        mapping.update(dict.fromkeys(group.members, van_id))
    return vans, mapping


def _with_maker(name: VanName, by_model: Mapping[str, Sequence[_Group]], legal_forms: Sequence[str]) -> VanName:
    """Give a name without a maker that begins with the maker of a known van of the rest: "Marrowfen Drift 21".

    Where one document says nothing else of who makes it, another may tell the two apart.
    """
    words = name.model.split()
    for cut in range(1, len(words)) if not name.maker else ():
        rest = VanName(" ".join(words[:cut]), " ".join(words[cut:]), name.year)
        maker = maker_words(rest.maker, legal_forms)
        known = by_model.get(_model_key(rest, legal_forms), ())
        if any(maker_words(group.maker, legal_forms)[: len(maker)] == maker for group in known):
            return rest
    return name


def _fits(group: _Group, name: VanName, legal_forms: Sequence[str]) -> bool:
    if group.year is not None and name.year is not None and group.year != name.year:
        return False
    one, two = maker_words(group.maker, legal_forms), maker_words(name.maker, legal_forms)
    return not one or not two or one[: len(two)] == two or two[: len(one)] == one


def maker_words(maker: str, legal_forms: Sequence[str]) -> list[str]:
    """Give the words of a maker's name, case-folded, without its legal form."""
    for form in sorted(legal_forms, key=len, reverse=True):
        maker = re.sub(rf",?\s+{re.escape(form)}$", "", maker, flags=re.IGNORECASE)
    return [word for word in (plain(part) for part in maker.split()) if word]


def _model_key(name: VanName, legal_forms: Sequence[str]) -> str:
    words = name.model.split()
    maker = maker_words(name.maker, legal_forms)
    while maker and len(words) > 1 and plain(words[0]) == maker[0]:
        words, maker = words[1:], maker[1:]
    return plain(" ".join(words))


def _slug(group: _Group, taken: set[str]) -> str:
    text = " ".join(part for part in (group.maker, group.model, str(group.year or "")) if part)
    folded = unicodedata.normalize("NFKD", text).encode("ascii", "ignore").decode().casefold()
    base = re.sub(r"[^a-z0-9]+", "-", folded).strip("-") or "van"
    slug, number = base, 2
    while slug in taken:
        slug, number = f"{base}-{number}", number + 1
    taken.add(slug)
    return slug
