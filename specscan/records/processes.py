"""How a process that touches strangers' files is started."""

from __future__ import annotations

import os
import sys
from pathlib import Path

PACKAGE = Path(__file__).resolve().parent.parent


def child_command(module: str, *arguments: str) -> tuple[list[str], dict[str, str]]:
    """Give the command and the environment for running a module of ours in a process of its own.

    The folder that the user stands in is kept off the child's module path (``python -P``): it may well be the folder
    of downloads, and a file ``json.py`` in it must not be run. This very package is put on the path instead.
    """
    path = [str(PACKAGE.parent), *(part for part in os.environ.get("PYTHONPATH", "").split(os.pathsep) if part)]
    environment = {**os.environ, "PYTHONPATH": os.pathsep.join(str(Path(part).absolute()) for part in path)}
    return [sys.executable, "-P", "-m", module, *arguments], environment
