"""The command prints what it finds, names what it cannot read, and says so by its exit status."""

import shutil

import pytest

from specscan.__main__ import main
from tests.conftest import ROOT


def test_folder_with_bad_files_keeps_the_rest(tmp_path, capsys):
    shutil.copy(ROOT / "corpus_demo" / "brackmere_sedgewren_19.pdf", tmp_path)
    (tmp_path / "nothing.pdf").write_bytes(b"")
    (tmp_path / "damaged.pdf").write_bytes(b"%PDF-1.7 torn")
    (tmp_path / "README.md").write_text("About these files")
    assert main([str(tmp_path)]) == 1
    printed = capsys.readouterr()
    assert "nothing.pdf" in printed.err and "0 bytes" in printed.err
    assert "damaged.pdf" in printed.err
    assert "README" not in printed.err
    assert any("\tfresh_tank_l\t" in line for line in printed.out.splitlines())


@pytest.mark.parametrize("arguments", [[], ["/no/such/folder"]])
def test_wrong_call_is_2(arguments, capsys):
    assert main(arguments) == 2
    assert capsys.readouterr().err
