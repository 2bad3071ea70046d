"""How much the order of the vans owes to the choice of weights, told as tables."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import Any

import numpy as np
import pandas as pd

from specscan.dataset.reader import Reader
from specscan.judging.sensitivity import Sweep, ranked, sweep
from specscan.records.errors import SpecscanError

MOST_DRAWS = 20_000


@dataclass(frozen=True)
class Sensitivity:
    """The sweep of one rule set.

    ``vans``: a row a van, in order of the middle of its band under the stated weights: ``rank`` there, ``rank_low`` and
    ``rank_high`` that hold in nine of ten draws, ``rank_most`` the most frequent and ``share_most`` how often, ``best``
    and ``worst`` the places that bands leave open in any draw. ``shares``: van × rank, share of the draws. ``orders``:
    pairs of vans of which one's whole band lies above the other's under the stated weights, with the share of draws in
    which it still does.
    """

    ruleset: str
    title: str
    equipment: str
    draws: int
    spread: float
    seed: int
    vans: pd.DataFrame
    shares: pd.DataFrame
    orders: pd.DataFrame

    def as_dict(self) -> dict[str, Any]:
        """Give it as plain data for JSON."""
        return {
            "ruleset": self.ruleset, "equipment": self.equipment, "draws": self.draws, "spread": self.spread,
            "seed": self.seed, "vans": self.vans.to_dict("records"),
            "shares": {van: {str(rank): share for rank, share in row.items() if share} for van, row in
                       self.shares.to_dict("index").items()},
            "orders": self.orders.to_dict("records"),
        }  # fmt: skip


def sensitivity(
    db: Path, ruleset: str = "", equipment: str = "standard", draws: int = 1000, spread: float = 2.0, seed: int = 1
) -> Sensitivity:
    """Give how the order of the vans moves when the weights of a rule set move.

    See ``specscan.judging.sensitivity.sweep`` for ``draws``, ``spread`` and ``seed``.

    Raises:
        NotFoundError: no such rule set.
        SpecscanError: draws or spread out of bounds.
        DatasetError: the dataset cannot be opened.
    """
    if not 1 <= draws <= MOST_DRAWS or not 1 < spread < 1000:
        raise SpecscanError(f"draws go from 1 to {MOST_DRAWS}, and spread is above 1")
    with Reader(db) as reader:
        ruleset = reader.ruleset(ruleset)
        titles = {van["van_id"]: van["title"] for van in reader.vans()}
        title = reader.rows("SELECT any_value(title) AS title FROM rulesets WHERE ruleset = ?", [ruleset])[0]["title"]
        rows = reader.rows(
            "SELECT van_id, criterion, points_low, points_high, points_max FROM scores "
            "WHERE ruleset = ? AND equipment = ? AND criterion <> 'total'",
            [ruleset, equipment],
        )
    if not rows:
        raise SpecscanError("there are no vans in this dataset")
    frame = pd.DataFrame(rows)
    low, high = (frame.pivot(index="van_id", columns="criterion", values=f"points_{end}") for end in ("low", "high"))
    weights = frame.groupby("criterion")["points_max"].max().loc[low.columns].to_numpy(float)
    stated = ranked(low.sum(axis=1).to_numpy(float)[np.newaxis], high.sum(axis=1).to_numpy(float)[np.newaxis])
    found = sweep(low.to_numpy(float), high.to_numpy(float), weights, draws=draws, spread=spread, seed=seed)
    names = [titles[van] for van in low.index]
    order = np.argsort(stated.ranks[0], kind="stable")
    return Sensitivity(
        ruleset, title or ruleset, equipment, draws, spread, seed, _vans(stated, found, names).iloc[order],
        _shares(found, names).iloc[order], _orders(stated, found, names),
    )  # fmt: skip


def _vans(stated: Sweep, found: Sweep, names: list[str]) -> pd.DataFrame:
    tenth = np.quantile(found.ranks, [0.05, 0.95], axis=0, method="nearest")
    counts = [np.bincount(column) for column in found.ranks.T]
    return pd.DataFrame(
        {
            "van": names, "points_low": stated.low[0], "points_high": stated.high[0], "rank": stated.ranks[0],
            "rank_low": tenth[0].astype(int), "rank_high": tenth[1].astype(int),
            "rank_most": [int(count.argmax()) for count in counts],
            "share_most": [float(count.max() / count.sum()) for count in counts],
            "best": found.best.min(axis=0), "worst": found.worst.max(axis=0),
        }
    )  # fmt: skip


def _shares(found: Sweep, names: list[str]) -> pd.DataFrame:
    ranks = range(1, len(names) + 1)
    return pd.DataFrame({rank: (found.ranks == rank).mean(axis=0) for rank in ranks}, index=pd.Index(names, name="van"))


def _orders(stated: Sweep, found: Sweep, names: list[str]) -> pd.DataFrame:
    pairs = np.argwhere(stated.above > 0)
    return pd.DataFrame(
        {
            "above": [names[one] for one, _ in pairs], "below": [names[two] for _, two in pairs],
            "share": [float(found.above[one, two]) for one, two in pairs],
        }
    ).sort_values(["share", "above", "below"], ignore_index=True)  # fmt: skip
