"""A zip of brochures is read like a folder, and nothing in it gets out or runs away."""

import gc
import io
import stat
import struct
import warnings
import zipfile

import pytest

from specscan import api
from specscan.reading.archive import ArchiveLimits, list_archive, read_content
from specscan.records.errors import DocumentError
from specscan.scanning.files import gather, rows_for
from tests.hostile.files import zipped
from tests.scanning.made import pdf, text

LIMITS = ArchiveLimits(files=50, unpacked_mb=5, file_mb=4, ratio=200)


@pytest.fixture
def listed(tmp_path):
    """Give a function that writes an archive and lists it."""

    def read(data):
        path = tmp_path / "brochures.zip"
        path.write_bytes(data)
        return list_archive(path, LIMITS)

    return read


def test_a_zip_is_looked_through_like_a_folder(tmp_path, book):
    manifest = "file,maker,model,year\nscrap.txt,Quillby,Rill,2022\n"
    good = [("tarn/drift.pdf", pdf(model="Drift 23")), ("scrap.txt", text()), ("manifest.csv", manifest)]
    clutter = [("__MACOSX/._scrap.txt", b"\0\5"), (".hidden.txt", "x"), ("photo.jpg", b"x"), ("readme.txt", "x")]
    bad = [("../out.txt", text()), ("inner.zip", zipped([("a.txt", text())]))]
    archive = tmp_path / "set.zip"
    archive.write_bytes(zipped(good + clutter + bad))
    for found in (gather([tmp_path], book, LIMITS), gather([archive], book, LIMITS)):
        inside = {path.removeprefix(f"{archive}/"): kind for path, kind in found.files.items()}
        assert inside == {
            "tarn/drift.pdf": "pdf", "scrap.txt": "text", "%2E%2E/out.txt": "text", "inner.zip": None,
        }  # fmt: skip
        refused = {path.removeprefix(f"{archive}/"): why for path, why in found.refused.items()}
        assert refused == {
            "%2E%2E/out.txt": "its name leads out of the archive",
            "inner.zip": "an archive inside an archive is not read: unpack it",
        }
        assert [row.model for row in rows_for(f"{archive}/scrap.txt", found.manifests)] == ["Rill"]
        assert found.aside == 1
    assert read_content(f"{archive}/tarn/drift.pdf", 1) == good[0][1]
    assert [path.name for path in tmp_path.iterdir()] == ["set.zip"]


def test_what_a_zip_holds_is_stored(scanned):
    found = api.query("SELECT model FROM vans WHERE model LIKE '%Drift 206%'", scanned["db"])
    assert len(found) == 1 and scanned["documents"]["zz_inside.zip/sub/inside.txt"] == ["read", ""]


@pytest.mark.parametrize(
    "name", ["../a.txt", "/etc/a.txt", "a/../../b.txt", "C:/a.txt", "a\\..\\b.txt", "./a.txt", "a//b.txt"]
)
def test_names_that_lead_out_are_refused(listed, name):
    data = zipped([("X" * len(name), "x"), ("good.txt", "x")]).replace(b"X" * len(name), name.encode())
    found = listed(data)
    assert found.names == ["good.txt"]
    assert list(found.refused) == [name]


def test_links_and_doubled_names_are_refused(listed):
    buffer = io.BytesIO(zipped([("twice.txt", "a"), ("twice.txt", "b"), ("good.txt", "x")]))
    with zipfile.ZipFile(buffer, "a") as archive:
        link = zipfile.ZipInfo("link.txt")
        link.external_attr = (stat.S_IFLNK | 0o777) << 16
        archive.writestr(link, "/etc/passwd")
    found = listed(buffer.getvalue())
    assert found.names == ["good.txt"]
    assert found.refused == {"twice.txt": "its name stands twice in the archive", "link.txt": "it is a link"}


def test_bombs_are_refused_before_they_are_unpacked(listed):
    with pytest.raises(DocumentError, match="more than 50 files"):
        listed(zipped([(f"{number}.txt", "x") for number in range(51)]))
    with pytest.raises(DocumentError, match="more than 5 MB"):
        listed(zipped([(f"{number}.txt", b"\0" * 1_000_000) for number in range(6)]))
    assert listed(zipped([("a.txt", b"\0" * 3_000_000)])).refused == {"a.txt": "it is packed more than 200 times"}
    assert listed(zipped([("a.txt", b"\0" * 4_500_000)])).refused == {"a.txt": "the file is larger than 4 MB"}
    assert "only deflated" in listed(zipped([("a.txt", "x")], zipfile.ZIP_LZMA)).refused["a.txt"]


def test_entries_over_each_other_are_refused(listed):
    data = bytearray(zipped([("one.txt", "x" * 500), ("two.txt", "y" * 500)], zipfile.ZIP_STORED))
    second = data.rindex(b"PK\x01\x02")
    data[second + 42 : second + 46] = struct.pack("<I", 40)  # offset of its local header (APPNOTE 4.3.12)
    with pytest.raises(DocumentError, match="lie over each other"):
        listed(bytes(data))


def test_a_file_larger_than_its_archive_says_is_not_unpacked_further(listed, tmp_path):
    data = zipped([("a.txt", b"\0" * 2_000_000)])
    lie = data.replace(struct.pack("<I", 2_000_000), struct.pack("<I", 10))
    assert listed(lie).names == ["a.txt"]
    with pytest.raises(DocumentError, match="cannot be unpacked"):  # what is read stops at 10 bytes; their sum is wrong
        read_content(f"{tmp_path}/brochures.zip/a.txt", 4)


def test_damaged_archives_are_named(listed):
    data = zipped([("a.txt", text() * 20)])
    for broken in (data[:-30], data[: len(data) // 2], b"", b"PK", data.replace(b"PK\x01\x02", b"PK\x09\x09")):
        with pytest.raises(DocumentError, match="the archive cannot be read"):
            listed(broken)


def test_archives_that_were_read_are_closed_before_many_are_open(tmp_path):
    with warnings.catch_warnings(record=True) as told:
        warnings.simplefilter("always", ResourceWarning)
        for number in range(6):
            archive = tmp_path / f"{number}.zip"
            archive.write_bytes(zipped([("a.txt", text(fresh=number))]))
            assert f"{number} L".encode() in read_content(f"{archive}/a.txt", 1)
        gc.collect()  # files that nobody closed are told of when they are collected
    assert [str(one.message) for one in told] == []
