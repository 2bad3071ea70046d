"""Everything that the lock file names may be used freely."""

import re
from importlib.metadata import PackageNotFoundError, metadata

from tests.conftest import ROOT

# Licences by their SPDX names or as packages word them; MPL-2.0 binds changes of its own files only.
PERMISSIVE = re.compile(
    r"MIT|BSD|Apache|ISC|PSF|Python Software Foundation|Zlib|CC0|HPND|Unlicense|MPL-2\.0|Mozilla Public License 2\.0"
)
BINDING = re.compile(r"(?<!L)A?GPL(?!-compatible)|GNU (?:Affero )?General Public", re.IGNORECASE)


def locked():
    return re.findall(r"^([\w.-]+)==", (ROOT / "requirements.lock").read_text(encoding="utf-8"), re.MULTILINE)


def licence_of(name):
    told = metadata(name)
    classes = [one.rsplit("::", 1)[-1] for one in told.get_all("Classifier", []) if one.startswith("License")]
    return "; ".join([told.get("License-Expression") or "", *classes, (told.get("License") or "")[:100]])


def test_every_locked_dependency_that_is_installed_is_permissive():
    found = {}
    for name in locked():
        try:
            found[name] = licence_of(name)
        except PackageNotFoundError:
            continue
    assert len(found) > 30
    assert {name: text for name, text in found.items() if BINDING.search(text) or not PERMISSIVE.search(text)} == {}


def test_the_lock_names_what_the_project_asks_for():
    text = (ROOT / "pyproject.toml").read_text(encoding="utf-8")
    asked = re.findall(r'^  "([\w.-]+)[><=]', text.split("dependencies = [")[1].split("]")[0], re.MULTILINE)
    plain = {name.casefold().replace("_", "-") for name in locked()}
    assert asked and {name.casefold() for name in asked} <= plain
