"""What several tests share: the built-in rules, loaded once."""

from pathlib import Path

import pytest

from specscan.api import Scanner

ROOT = Path(__file__).parent.parent


@pytest.fixture(scope="session")
def scanner() -> Scanner:
    return Scanner(ROOT / "rules")


@pytest.fixture
def facts_of(scanner, tmp_path):
    """Give a function that writes a document, reads it, and returns its counting facts as (field, value) pairs."""

    def read(text: str, name: str = "brochure.txt"):
        path = tmp_path / name
        path.write_text(text, encoding="utf-8")
        return [fact for fact in scanner.read(path).facts if not fact.rejected]

    return read
