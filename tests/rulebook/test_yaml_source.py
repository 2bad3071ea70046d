"""Rule files are refused with file and line, and never half taken."""

import shutil
from pathlib import Path

import pytest

from specscan.records.errors import RuleError
from specscan.rulebook.book import load_rulebook

RULES = Path(__file__).parent.parent.parent / "rules"


def test_duplicate_key_is_named_with_its_line(tmp_path):
    shutil.copytree(RULES, tmp_path / "rules")
    path = tmp_path / "rules" / "words" / "general.yaml"
    lines = path.read_text(encoding="utf-8").splitlines()
    key = next(line for line in lines if line and line[0].isalpha())
    path.write_text("\n".join([*lines, key]) + "\n", encoding="utf-8")
    with pytest.raises(RuleError, match=rf"general\.yaml:{len(lines) + 1}"):
        load_rulebook(tmp_path / "rules")


@pytest.mark.parametrize("term", ["[wall insulation", "(rear|front drive", "tank) heat"])
def test_a_term_with_an_unmatched_bracket_is_named_with_file_and_line(tmp_path, term):
    shutil.copytree(RULES, tmp_path / "rules")
    path = tmp_path / "rules" / "fields" / "lookalikes.yaml"
    text = path.read_text(encoding="utf-8").rstrip("\n")
    path.write_text(f'{text}\n  spare_part: {{en: ["{term}"]}}\n', encoding="utf-8")
    with pytest.raises(RuleError, match=rf"lookalikes\.yaml:{len(text.splitlines()) + 1}.*bracket"):
        load_rulebook(tmp_path / "rules")
