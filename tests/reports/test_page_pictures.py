"""Pictures cut from pages, and what becomes of files that cannot be drawn."""

import base64
import hashlib
import io
import sys

import pytest
from PIL import Image

from specscan.reports import page_pictures
from specscan.reports.page_pictures import LEFT_OUT, Spot, cut_pictures
from specscan.reports.page_rules import load_report_rules
from tests.conftest import ROOT
from tests.reading.drawn import Page

RULES = load_report_rules(ROOT / "rules").page.pictures


def spot(path, name="a", *, page=1, box=(70, 100, 140, 112), weight=0, digest=None):
    sha256 = digest or hashlib.sha256(path.read_bytes()).hexdigest()
    return Spot(name, path.stem, str(path), sha256, page, *box, weight)


@pytest.fixture
def drawn(tmp_path):
    """Give a page with a black box at 70 to 140, 100 to 112 points, and white elsewhere."""
    page = Page()
    page.box(70, 100, 140, 112, (0, 0, 0))
    path = tmp_path / "drawn.pdf"
    path.write_bytes(page.data())
    return path


def test_the_mark_lies_on_the_words(drawn):
    cut = cut_pictures([spot(drawn)], RULES).cuts["a"]
    picture = Image.open(io.BytesIO(base64.b64decode(cut.strip.data))).convert("L")
    scale = picture.width / cut.strip.width
    inside = [cut.x + 4, cut.y + 4, cut.x + cut.width - 4, cut.y + cut.height - 4]
    assert max(picture.crop([round(one * scale) for one in inside]).tobytes()) < 60
    above = [cut.x, 0, cut.x + cut.width, cut.y - 2]
    assert min(picture.crop([round(one * scale) for one in above]).tobytes()) > 200


def test_statements_of_one_line_share_a_picture(drawn):
    spots = [spot(drawn, "a"), spot(drawn, "b", box=(300, 100.4, 340, 112.3)), spot(drawn, "c", box=(70, 300, 90, 312))]
    found = cut_pictures(spots, RULES)
    assert found.cuts["a"].strip == found.cuts["b"].strip != found.cuts["c"].strip
    assert len(found.strips) == 2


def test_where_room_is_short_the_least_important_pictures_are_left_out(drawn):
    spots = [spot(drawn, "light", box=(70, 300, 90, 312)), spot(drawn, "heavy", weight=1), spot(drawn, "beside")]
    every = cut_pictures(spots, RULES)
    found = every.within(every.size - 1)
    assert set(found.cuts) == {"heavy", "beside"}
    assert found.why_not == {"light": LEFT_OUT}
    assert every.within(every.size).cuts == every.cuts


def test_a_file_that_is_no_pdf_costs_only_its_own_pictures(drawn, tmp_path):
    bad = tmp_path / "bad.pdf"
    bad.write_bytes(b"%PDF-1.7 and then nothing")
    found = cut_pictures([spot(bad, "bad"), spot(drawn, "good"), spot(drawn, "beyond", page=9)], RULES)
    assert list(found.cuts) == ["good"]
    assert "cannot be drawn" in found.why_not["bad"]
    assert found.why_not["beyond"] == "the file has no such page"


@pytest.mark.parametrize(
    "answer",
    ["no JSON", '{"width": 100, "strips": [{"top": 0, "height": 9, "data": "PHN2Zz4="}]}', '{"strips": 3}', "[]"],
)
def test_a_drawing_process_that_lies_gives_no_picture(drawn, monkeypatch, tmp_path, answer):
    """The second answer is base64 of a piece of SVG: what is no WebP does not reach the page."""
    liar = tmp_path / "liar.py"
    liar.write_text(f"import sys\nfor line in sys.stdin:\n    print({answer!r}, flush=True)\n")
    started = page_pictures.subprocess.Popen
    monkeypatch.setattr(
        page_pictures.subprocess, "Popen", lambda args, **more: started([sys.executable, str(liar)], **more)
    )
    found = cut_pictures([spot(drawn)], RULES)
    assert not found.cuts and found.why_not["a"]


def test_a_drawing_process_that_hangs_is_ended(drawn, monkeypatch, tmp_path):
    sleeper = tmp_path / "sleeper.py"
    sleeper.write_text("import time\ntime.sleep(600)\n")
    started, processes = page_pictures.subprocess.Popen, []

    def start(args, **more):
        processes.append(started([sys.executable, str(sleeper)], **more))
        return processes[-1]

    monkeypatch.setattr(page_pictures.subprocess, "Popen", start)
    found = cut_pictures([spot(drawn), spot(drawn, "b", page=2)], RULES.model_copy(update={"seconds_per_page": 0.5}))
    assert found.why_not == dict.fromkeys("ab", "drawing its pages failed or took too long")
    assert [process.returncode is not None for process in processes] == [True]
