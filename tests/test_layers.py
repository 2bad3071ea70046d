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
# Rooms with rooms of their own, the lowest first; what stands in the room itself is above them all.
INNER = {
    "reading": ["letters", "ocr", "tables", "layout", "text", "web"],
    "finding": ["language", "things", "naming", "marks", "fields"],
}
MODULES = sorted(PACKAGE.glob("*/**/*.py"))


def rooms_imported(path: Path) -> set[str]:
    found = set()
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        names = [node.module or ""] if isinstance(node, ast.ImportFrom) else []
        names += [alias.name for alias in node.names] if isinstance(node, ast.Import) else []
        found |= {name.split(".")[1] for name in names if name.startswith("specscan.")}
    return found


def name_of(path: Path) -> str:
    """Give the dotted name of a module."""
    return ".".join(path.relative_to(PACKAGE.parent).with_suffix("").parts)


def depth(module: str) -> int:
    """Give how far up in its room a module stands: 0 for the lowest inner room, most for the room itself."""
    _, room, *rest = module.split(".")
    inner = INNER.get(room, [])
    return inner.index(rest[0]) if len(rest) > 1 else len(inner)


@pytest.mark.parametrize("path", MODULES, ids=name_of)
def test_imports_only_the_same_or_lower_rooms(path):
    room = ORDER.index(path.relative_to(PACKAGE).parts[0])
    assert all(ORDER.index(name) <= room for name in rooms_imported(path))


@pytest.mark.parametrize("path", [p for p in MODULES if p.relative_to(PACKAGE).parts[0] in INNER], ids=name_of)
def test_imports_only_the_same_or_lower_inner_rooms(path):
    own = name_of(path)
    same = f"specscan.{own.split('.')[1]}."
    assert all(depth(name) <= depth(own) for name in modules_imported(path) if name.startswith(same))


def modules_imported(path: Path) -> set[str]:
    tree = ast.walk(ast.parse(path.read_text(encoding="utf-8")))
    return {n.module for n in tree if isinstance(n, ast.ImportFrom) and n.module and n.module.startswith("specscan.")}


def test_no_module_imports_itself_by_way_of_others():
    imports = {name_of(p): modules_imported(p) for p in MODULES}
    left = dict(imports)
    while ends := [name for name, wanted in left.items() if not wanted & set(left)]:
        for name in ends:
            del left[name]
    assert sorted(left) == []
