"""Reading a dataset for reports: rows as dictionaries, vans by the names that people use."""

from __future__ import annotations

import json
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from specscan.dataset.query import open_walled
from specscan.dataset.schema import SCORED_BY
from specscan.dataset.store import finished_tables
from specscan.records.defaults import FIRST_RULESET
from specscan.records.errors import DatasetError, NotFoundError
from specscan.records.names import plain


class Reader:
    """A dataset open for reading."""

    def __init__(self, path: Path):
        """Open the dataset.

        Raises:
            DatasetError: it is missing, locked, no DuckDB file, or has no scan in it.
        """
        self.path = path
        self.connection = open_walled(path)
        try:
            finished_tables(self.connection, path)
        except DatasetError:
            self.connection.close()
            raise

    def __enter__(self) -> Reader:
        return self

    def __exit__(self, *_: object) -> None:
        self.connection.close()

    def rows(self, sql: str, parameters: Sequence[Any] = ()) -> list[dict[str, Any]]:
        """Give the rows of a query of ours as dictionaries."""
        cursor = self.connection.execute(sql, list(parameters))
        names = [column[0] for column in cursor.description or []]
        return [dict(zip(names, row, strict=True)) for row in cursor.fetchall()]

    def rules(self) -> Path | None:
        """Give the folder of the rules by which the last scan was made, if it is known."""
        found = self.rows("SELECT value FROM kept.about WHERE key = ?", [SCORED_BY])
        folder = json.loads(found[0]["value"]).get("rules") if found else None
        return Path(folder) if folder else None

    def vans(self) -> list[dict[str, Any]]:
        """Give id, maker, model, model year and title of every van, in order of name."""
        rows = self.rows("SELECT van_id, maker, model, model_year FROM vans ORDER BY maker, model, model_year")
        for row in rows:
            row["title"] = " ".join(str(row[k]) for k in ("maker", "model", "model_year") if row[k] is not None)
        return rows

    def van(self, name: str) -> dict[str, Any]:
        """Give the van that a name means: its id, its title, its model, or a part of the title that only it has.

        Raises:
            NotFoundError: no van, or several, are called so; with the names there are.
        """
        vans = self.vans()
        wanted = plain(name)
        for same in (
            lambda van: name == van["van_id"],
            lambda van: wanted in (plain(van["title"]), plain(f"{van['maker'] or ''}{van['model'] or ''}")),
            lambda van: wanted == plain(van["model"] or ""),
            lambda van: bool(wanted) and wanted in plain(van["title"]),
        ):
            found = [van for van in vans if same(van)]
            if len(found) == 1:
                return found[0]
            if found:
                listed = "; ".join(f"{van['title']} ({van['van_id']})" for van in found)
                raise NotFoundError(f"several vans are called {name!r}: {listed}")
        listed = "; ".join(van["title"] for van in vans) or "none"
        raise NotFoundError(f"no van is called {name!r}; the dataset has: {listed}")

    def ruleset(self, name: str = "") -> str:
        """Give the name of a rule set that the dataset was scored with; without a name the one to judge by first.

        Raises:
            NotFoundError: it was not, with the names there are; or there are no vans.
        """
        names = [row["ruleset"] for row in self.rows("SELECT DISTINCT ruleset FROM scores ORDER BY ruleset")]
        if not names:
            raise NotFoundError("the dataset has no van that was scored")
        if not name:
            return FIRST_RULESET if FIRST_RULESET in names else names[0]
        if name not in names:
            raise NotFoundError(f"no rule set is called {name!r}; the dataset was scored with: {', '.join(names)}")
        return name
