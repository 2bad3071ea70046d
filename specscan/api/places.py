"""Where the rules and the demo corpus are that travel with the program, and copies of them."""

from __future__ import annotations

import shutil
from pathlib import Path

from specscan.records.errors import SpecscanError

PACKAGE = Path(__file__).parent.parent


def _shipped(name: str) -> Path:
    """Give a folder that travels with the program: inside an installed wheel, else beside the package in a checkout."""
    inside = PACKAGE / "_shipped" / name
    return inside if inside.is_dir() else PACKAGE.parent / name


def rules_folder() -> Path:
    """Give the folder of the built-in rules."""
    return _shipped("rules")


def rules_of(db: str | Path, rules: str | Path | None) -> Path:
    """Give the folder of rules that is named, else that of the dataset's last scan, else the built-in one.

    Raises:
        DatasetError: the dataset cannot be opened.
    """
    if rules is not None:
        return Path(rules)
    from specscan.dataset.reader import Reader

    with Reader(Path(db)) as reader:
        folder = reader.rules()
    return folder if folder is not None and folder.is_dir() else rules_folder()


def demo_folder() -> Path:
    """Give the folder of the demo corpus."""
    return _shipped("corpus_demo")


def copy_demo(folder: str | Path) -> Path:
    """Write the demo corpus to a new folder, for trying things out; give the folder."""
    return _copied(demo_folder(), Path(folder))


def copy_rules(folder: str | Path) -> Path:
    """Write the built-in rules to a new folder, for changing them (``scan --rules FOLDER``); give the folder."""
    return _copied(rules_folder(), Path(folder))


def _copied(source: Path, target: Path) -> Path:
    if target.exists() and (not target.is_dir() or any(target.iterdir())):
        raise SpecscanError(f"{target}: is there already and not an empty folder")
    try:
        shutil.copytree(source, target, dirs_exist_ok=True)
    except OSError as error:
        raise SpecscanError(f"{target}: cannot be written ({error})") from error
    return target
