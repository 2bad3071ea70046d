"""Chance against the readers: whatever comes in, a result or an error of ours comes out.

Longer, and from new seeds: ``SPECSCAN_FUZZ=20000 python -m pytest tests/fuzz``.
"""

import math
import os
from pathlib import Path

from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st

from specscan.reading.archive import ArchiveLimits, list_archive, read_content
from specscan.reading.pdf import read_pdf
from specscan.reading.tables.compose import Hints
from specscan.reading.text.plain import read_text
from specscan.reading.web.page import read_html
from specscan.records.errors import DocumentError, RuleError
from specscan.rulebook.yaml_source import read_yaml
from specscan.settling.manifest import parse_manifest
from tests.hostile import files

ASKED = os.environ.get("SPECSCAN_FUZZ")
fuzzed = settings(
    max_examples=int(ASKED or 30), deadline=None, derandomize=not ASKED, database=None,
    suppress_health_check=[HealthCheck.function_scoped_fixture, HealthCheck.too_slow],
)  # fmt: skip

FIGURES = [
    "100",
    "1,000",
    "1.5",
    "-20",
    "−20",
    "½",
    "6' 8\"",
    "12 1/2",
    "2 x 100",
    "10 to 20",
    "9" * 400,
    "1e999",
    "٣",
    "²",
]
UNITS = ["L", "gal", "imp. gal", "lb", "°F", "°C", "BTU/h", "Ah", "V", "W", "mm", "ft", "R-7", "h", "%", ""]
SIGNS = [" ", "/", "-", "–", "x", "(", ")", "±", ",", ";", "\u00a0", "\u2009", "\x00", "\u202e", "\n", ": "]
LABELS = ["Fresh water tank", "Furnace", "Wohnraumhöhe", "Batterie", "Eaux usées", "optional", "not available"]
said = st.lists(st.one_of(*map(st.sampled_from, (FIGURES, UNITS, SIGNS, LABELS)), st.text(max_size=6)), max_size=25)
TAGS = [
    "table",
    "tr",
    "td",
    "th",
    "div",
    "span",
    "b",
    "li",
    "ul",
    "dl",
    "dt",
    "dd",
    "p",
    "h1",
    "style",
    "pre",
    "sup",
    "br",
]
marks = st.one_of(
    st.sampled_from(TAGS).map(lambda tag: f"<{tag}>"),
    st.sampled_from(TAGS).map(lambda tag: f"</{tag}>"),
    st.sampled_from(
        ["<td colspan=9>", "<td rowspan=0>", "<td colspan=-1>", "<div hidden>", "<!--", "-->", "&b;", "<![CDATA["]
    ),
    st.sampled_from(LABELS + FIGURES),
    st.text(max_size=8),
)


@fuzzed
@given(said)
@example(["9" * 400, "L", "100"])  # found by a long run: too large a figure before another one
def test_quantities_are_numbers_at_their_words(examiner, parts):
    text = "Marrowfen Drift 21\nModel year 2026\n\nFresh water tank: " + "".join(parts)
    result = examiner.examine("a.txt", text.encode("utf-8", "replace"), "text")
    for fact in result.found.facts:
        assert fact.num is None or math.isfinite(fact.num)
        assert fact.low is None or fact.high is None or fact.low <= fact.high


@fuzzed
@given(st.lists(st.lists(said.map("".join), max_size=6), max_size=8), st.sampled_from(["|", "\t", "   ", ";"]))
def test_tables_in_text_never_fail(rows, sign):
    text = "\n".join(sign.join(cell.replace("\n", " ") for cell in row) for row in rows)
    try:
        document = read_text(text.encode("utf-8", "replace"), "a.txt", "", Hints())
    except DocumentError:
        return
    assert all(isinstance(passage.text, str) for passage in document.passages)


@fuzzed
@given(st.lists(marks, max_size=60))
def test_web_pages_never_fail(parts):
    try:
        document = read_html("".join(parts).encode("utf-8", "replace"), "a.html", "", Hints())
    except DocumentError:
        return
    assert len(document.passages) < 5_000


@fuzzed
@given(st.one_of(st.binary(max_size=300), st.text(alphabet="ab:-[]{}&*!|>'\"# \n\t0.%", max_size=200).map(str.encode)))
def test_rule_files_are_read_or_refused_by_name(tmp_path, data):
    path = tmp_path / "rules.yaml"
    path.write_bytes(data)
    try:
        read_yaml(path)
    except RuleError as error:
        assert error.mistakes and all("rules.yaml" in mistake for mistake in error.mistakes)


@fuzzed
@given(st.one_of(st.binary(max_size=300), st.text(max_size=200).map(lambda text: text.encode("utf-8", "replace"))))
def test_manifests_are_read_or_refused_by_name(data):
    for head in (b"", b"file,maker,model,year\n"):
        try:
            parse_manifest(Path("manifest.csv"), head + data)
        except RuleError as error:
            assert error.mistakes and all("manifest.csv" in mistake for mistake in error.mistakes)


@st.composite
def broken(draw, source):
    data = bytearray(source)
    for _ in range(draw(st.integers(1, 6))):
        place = draw(st.integers(0, len(data) - 1))
        data[place : place + draw(st.integers(0, 30))] = draw(st.binary(max_size=12))
        data = data or bytearray(b"x")
    return bytes(data)


@fuzzed
@given(st.sampled_from(["plain.pdf", "packed.pdf"]).flatmap(lambda name: broken(files.bases()[name])))
def test_pdfs_are_read_or_refused(data):
    try:
        read_pdf(data, "a.pdf", "", Hints())
    except DocumentError as error:
        assert str(error)


@fuzzed
@given(broken(files.zipped([("a.txt", "x" * 2000), ("b/c.pdf", "y" * 50), ("../d.txt", "z")])))
def test_archives_are_read_or_refused(tmp_path, data):
    path = tmp_path / "a.zip"
    path.write_bytes(data)
    try:
        for name in list_archive(path, ArchiveLimits(10, 1, 1, 100)).names:
            read_content(f"{path}/{name}", 1)
    except DocumentError as error:
        assert str(error)
