"""Commands that only look things up start at once: they load nothing that takes long to load."""

import json
import subprocess
import sys

import pytest

from tests.conftest import ROOT

SLOW = ("numpy", "pandas", "pydantic", "spacy", "yaml", "pypdfium2", "pdfplumber", "scipy", "matplotlib", "pint")
CODE = """
import json, sys
from specscan.cli.main import main
main(sys.argv[2:], standalone_mode=False)
print("\\n" + json.dumps([name for name in json.loads(sys.argv[1]) if name in sys.modules]))
"""


@pytest.mark.parametrize("words", [["query", "SELECT 1"], ["gaps"], ["explain", "Sallowby Trio Winter"]], ids=" ".join)
def test_a_command_that_looks_things_up_loads_nothing_slow(demo_db, words):
    done = subprocess.run(
        [sys.executable, "-c", CODE, json.dumps(SLOW), *words, "--db", str(demo_db)],
        cwd=ROOT, capture_output=True, text=True, check=True,
    )  # fmt: skip
    told, loaded = done.stdout.strip().rsplit("\n", 1)
    assert told and json.loads(loaded) == []
