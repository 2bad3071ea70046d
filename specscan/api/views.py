"""What a dataset says of vans: why they score as they do, what is missing, winter, comparisons."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from specscan.api.places import rules_of
from specscan.records.defaults import DEFAULT_RULESET, UNSURE_BELOW

if TYPE_CHECKING:
    import pandas as pd

    from specscan.reports.changes import Comparison
    from specscan.reports.draft import Claim
    from specscan.reports.explain import Explanation
    from specscan.reports.sensitivity import Sensitivity
    from specscan.reports.table import ComparisonTable
    from specscan.reports.winter import Outlook


def explain(van: str, db: str | Path, *, ruleset: str = DEFAULT_RULESET, equipment: str = "standard") -> Explanation:
    """Give why a van scores as it does; see ``specscan.reports.explain.explain``."""
    from specscan.reports.explain import explain as account

    return account(Path(db), van, ruleset, equipment)


def gaps(db: str | Path, *, ruleset: str = DEFAULT_RULESET, van: str = "", at_least: float = 0.0) -> pd.DataFrame:
    """Give what is missing, most points at stake first, with the question to ask; see ``specscan.reports.gaps``."""
    import pandas as pd

    from specscan.reports.gaps import list_gaps

    columns = ["van", "van_id", "field", "reason", "points_at_stake", "question", "narrows", "narrows_what"]
    return pd.DataFrame(list_gaps(Path(db), ruleset, van, at_least), columns=columns)


def claims(db: str | Path, *, vans: Sequence[str] = (), verdicts: Sequence[str] = ()) -> pd.DataFrame:
    """Give what brochures claim, with verdict, parts and evidence; see ``specscan.reports.claims.list_claims``."""
    import pandas as pd

    from specscan.reports.claims import list_claims

    columns = ["van", "document", "page", "printed", "said", "title", "verdict", "because", "note", "parts"]
    frame = pd.DataFrame(list_claims(Path(db), vans, verdicts))
    return frame if len(frame) else pd.DataFrame(columns=columns)


def doubts(db: str | Path, *, vans: Sequence[str] = (), below: float = UNSURE_BELOW) -> pd.DataFrame:
    """Give what a person should check first; see ``specscan.reports.doubts.list_doubts``."""
    import pandas as pd

    from specscan.reports.doubts import COLUMNS, list_doubts

    return pd.DataFrame(list_doubts(Path(db), vans, below), columns=COLUMNS)


def winter(
    db: str | Path,
    *,
    vans: Sequence[str] = (),
    conditions: str = "",
    changes: Mapping[str, Any] | None = None,
    equipment: str = "standard",
    rules: str | Path | None = None,
) -> Outlook:
    """Give the winter behaviour of the named vans (all by default) as frames.

    ``conditions`` is a name in ``rules/conditions.yaml`` or a file of that form (by default those of the last scan),
    ``changes`` single figures by their names there: ``winter(db, changes={"outside_c": -12, "nights": 2})``. See
    ``specscan.reports.winter.winter`` for errors and ``Outlook`` for the frames.
    """
    from specscan.reports.winter import winter as reckon

    folder = rules_of(db, rules)
    return reckon(Path(db), folder, vans, conditions, changes, equipment)


def plot_winter(outlook: Outlook, out: str | Path) -> Path:
    """Draw days over outside temperature, and inside temperature after the heating stops, to a PNG or SVG file.

    Raises:
        SpecscanError: too many vans for one picture, no such kind of file, or the ``plot`` extra is not installed.
    """
    from specscan.reports.winter_plot import draw

    return draw(outlook, Path(out))


def check_draft(text: str | Path, db: str | Path, rules: str | Path | None = None) -> list[Claim]:
    """Give each statement of a draft about vans of the dataset as borne out, contradicted or without evidence.

    See ``specscan.reports.draft.check_draft`` for errors.
    """
    from specscan.reports.draft import check_draft as check

    return check(Path(text), Path(db), rules_of(db, rules))


def table(
    db: str | Path,
    vans: Sequence[str] = (),
    fields: Sequence[str] = (),
    *,
    ruleset: str = DEFAULT_RULESET,
    equipment: str = "standard",
    units: str = "metric",
    rules: str | Path | None = None,
) -> ComparisonTable:
    """Give a comparison table with a citation for every value; see ``specscan.reports.table.make_table``."""
    from specscan.reports.table import make_table

    folder = rules_of(db, rules)
    return make_table(Path(db), folder, vans, fields, ruleset, equipment, units)


def changes(
    db: str | Path, vans: Sequence[str] = (), *, since: str | Path | None = None, derived: bool = False
) -> Comparison:
    """Give what changed since an older dataset, between two vans, or between all model years of the same van.

    See ``specscan.reports.changes`` for errors.
    """
    from specscan.reports.changes import compare_runs, compare_vans

    if since is not None:
        return compare_runs(Path(since), Path(db), vans, derived)
    return compare_vans(Path(db), vans, derived)


def sensitivity(
    db: str | Path,
    *,
    ruleset: str = DEFAULT_RULESET,
    equipment: str = "standard",
    draws: int = 1000,
    spread: float = 2.0,
    seed: int = 1,
) -> Sensitivity:
    """Give how often each van ranks where when the weights move; see ``specscan.reports.sensitivity``."""
    from specscan.reports.sensitivity import sensitivity as run

    return run(Path(db), ruleset, equipment, draws, spread, seed)
