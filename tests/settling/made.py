"""Documents and facts made by hand for the tests of settling."""

from specscan.records.documents import DocumentRecord, ReadDocument
from specscan.records.facts import DocumentFacts, Fact, VanName

MODEL = "Drift 21"
ONE_VAN = (VanName("Marrowfen", MODEL, 2026),)


def fact(field, value, **more):
    """Give a fact as a table states it; a number, a word or a flag."""
    told = {"model": MODEL, "availability": "standard", "how": "table_cell", "confidence": 0.97, "page": 1}
    kind = "flag" if isinstance(value, bool) else "num" if isinstance(value, int | float) else "text"
    return Fact(field=field, **{kind: value}, **{**told, "printed": str(value), **more})


def document(*facts, doc_id="aaa", name="a.pdf", vans=ONE_VAN, **more):
    """Give a document of one van by default."""
    record = DocumentRecord(doc_id, f"/brochures/{name}", doc_id * 4, "pdf", "en", 4, **more)
    numbered = tuple(facts)
    return ReadDocument(record, DocumentFacts(tuple(vans), numbered, "en"))
