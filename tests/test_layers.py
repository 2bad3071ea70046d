"""Data flows one way: no lower room imports an upper one."""

import ast
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parent.parent / "specscan"
ORDER = [
    "records",
    "rulebook",
    "reading",
    "finding",
    "settling",
    "observing",
    "physics",
    "judging",
    "dataset",
    "reports",
    "scanning",
    "api",
    "cli",
]


def rooms_imported(path: Path) -> set[str]:
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = [node.module or ""] if isinstance(node, ast.ImportFrom) else []
        names += [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
        found |= {name.split(".")[1] for name in names if name.startswith("specscan.")}
    return found


@pytest.mark.parametrize("path", sorted(PACKAGE.glob("*/*.py")), ids=lambda p: f"{p.parent.name}/{p.name}")
def test_imports_only_the_same_or_lower_rooms(path):
    room = ORDER.index(path.parent.name)
    assert all(ORDER.index(name) <= room for name in rooms_imported(path))


def modules_imported(path: Path) -> set[str]:
    tree = ast.walk(ast.parse(path.read_text(encoding="utf-8")))
    return {n.module for n in tree if isinstance(n, ast.ImportFrom) and n.module and n.module.startswith("specscan.")}


def test_no_module_imports_itself_by_way_of_others():
    imports = {f"specscan.{p.parent.name}.{p.stem}": modules_imported(p) for p in PACKAGE.glob("*/*.py")}
    left = dict(imports)
    while ends := [name for name, wanted in left.items() if not wanted & set(left)]:
        for name in ends:
            del left[name]
    assert sorted(left) == []
