"""The head of a document on two vans, below which tests set the lines that they are about."""

HEAD = """Marrowfen Vans

The Drift 19 and the Drift 21, model year 2026

| Item | Drift 19 | Drift 21 |
|---|---|---|
| Overall width | 2.05 m | 2.10 m |
| GVWR | 3500 kg | 4100 kg |
"""


def two_drifts(*rows: str) -> str:
    """Give it, with more rows in its table."""
    return HEAD + "".join(f"{row}\n" for row in rows) + "\n"
