"""Vans that a text calls by letters, after one line that explains them."""

import pytest

EXPLAINED = """Hello,

All of it is for the 2026 model year. {names}

M: 8,550 lb GVWR, diesel. L: 11,030 lb GVWR, diesel.

M: fresh water 21 gal, gray water 18 gal, solar 200 W.

L: fresh water 32 gal, gray water 27 gal, solar 600 W.

Marrowfen Inc., Sleigh Street.
"""


def solar(read_file, tmp_path, names):
    path = tmp_path / "mail.txt"
    path.write_text(EXPLAINED.format(names=names), encoding="utf-8")
    return {(f.model, f.num) for f in read_file(path).found.facts if f.field == "solar_w" and not f.rejected}


@pytest.mark.parametrize(
    "names", ["M is the Drift M, L is the Drift L 4x4.", "M = Drift M, L = Drift L 4x4.", "M: Drift M; L: Drift L 4x4."]
)
def test_they_are_vans_and_called_by_their_short_names(read_file, tmp_path, names):
    assert solar(read_file, tmp_path, names) == {("Drift M", 200), ("Drift L 4x4", 600)}


def test_base_vehicles_behind_letters_explain_none(read_file, tmp_path):
    names = "M: Bruska Hauler 250; L: Bruska Hauler 350."
    assert not {model for model, _ in solar(read_file, tmp_path, names) if "Bruska" in model}
