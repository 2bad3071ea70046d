"""Documents as the dataset knows them, and the vans that they speak of."""

from __future__ import annotations

from dataclasses import dataclass, field

from specscan.records.facts import DocumentFacts, Fact, Settled


@dataclass(frozen=True, slots=True)
class DocumentRecord:
    """A file and what became of it.

    ``status`` is one of ``read``, ``partly_read``, ``unreadable``, ``no_van_found``; ``dated`` the date
    on which the file says it was made (ISO, empty where it does not say); ``unread`` the numbers of the
    pages that gave no usable text.
    """

    doc_id: str
    path: str
    sha256: str
    kind: str
    language: str = ""
    pages: int | None = None
    status: str = "read"
    message: str = ""
    dated: str = ""
    unread: tuple[int, ...] = ()

    @property
    def name(self) -> str:
        """Give the file's name without its folders."""
        return self.path.rsplit("/", 1)[-1]


@dataclass(frozen=True, slots=True)
class ReadDocument:
    """A document with the statements found in it."""

    record: DocumentRecord
    found: DocumentFacts
    took: tuple[float, float] = (0.0, 0.0)  # processor seconds of reading and of finding


@dataclass(frozen=True, slots=True)
class Van:
    """A van: one maker, model and model year (``None`` where no document prints it)."""

    van_id: str
    maker: str
    model: str
    model_year: int | None

    @property
    def title(self) -> str:
        """Give the van's name as a person says it."""
        return " ".join(part for part in (self.maker, self.model, str(self.model_year or "")) if part)


@dataclass(frozen=True, slots=True)
class PlacedFact:
    """A fact with its identity, its document and the van of the dataset that it is about."""

    fact_id: str
    van_id: str
    doc_id: str
    fact: Fact


@dataclass(frozen=True, slots=True)
class Settlement:
    """What settling gives: the vans, every fact placed on one of them, and one row per van, field and equipment.

    ``named`` maps (document, model as that document names it) to the van. ``corrections`` are what people read again
    in place of misread facts; they are no rows of ``facts``.
    """

    vans: tuple[Van, ...]
    facts: tuple[PlacedFact, ...]
    settled: tuple[Settled, ...]
    named: dict[tuple[str, str], str] = field(default_factory=dict)
    corrections: tuple[PlacedFact, ...] = ()
