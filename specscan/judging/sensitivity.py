"""How the order of vans moves when the weights of a rule set move: a seeded sweep.

Each draw multiplies every criterion's weight by a factor of its own, drawn evenly on a logarithmic scale between one
over ``spread`` and ``spread``, and scales the weights to their old sum. Points are linear in the weights, so that the
bands of a draw are sums of the scored bands times the factors.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Ints = npt.NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Sweep:
    """What a sweep found, for ``n`` vans in ``draws`` draws.

    ``ranks`` (draws × vans): place by the middle of the band, 1 the highest, equal ones sharing the better place;
    ``best`` and ``worst`` (draws × vans): the places that the bands leave open, as a van is only below those whose
    whole band lies above its own. ``above`` (vans × vans): in what share of the draws the first one's whole band lies
    above the second's. ``low`` and ``high`` (draws × vans) are the bands.
    """

    ranks: Ints
    best: Ints
    worst: Ints
    above: Floats
    low: Floats
    high: Floats


def sweep(low: Floats, high: Floats, weights: Floats, *, draws: int, spread: float, seed: int) -> Sweep:
    """Give how the vans rank under changed weights.

    Args:
        low, high: points of each van and criterion (vans × criteria), certain and possible, under the stated weights.
        weights: the stated weights of the criteria (points).
        draws: how many sets of weights to draw, at least 1.
        spread: the largest factor, above 1; 2 lets a weight be halved or doubled.
        seed: of the random numbers; the same seed gives the same sweep.

    Raises:
        ValueError: ``draws`` or ``spread`` is out of bounds.
    """
    if draws < 1 or not 1 < spread < 1000:
        raise ValueError("draws is at least 1, and spread above 1")
    random = np.random.default_rng(seed)
    factors = np.exp(random.uniform(-np.log(spread), np.log(spread), (draws, len(weights))))
    factors *= weights.sum() / (factors @ weights)[:, np.newaxis]
    return ranked(factors @ low.T, factors @ high.T)


def ranked(low: Floats, high: Floats) -> Sweep:
    """Give the ranks that bands (draws × vans) leave open."""
    wholly = np.round(low, 1)[:, :, np.newaxis] > np.round(high, 1)[:, np.newaxis, :]
    middle = np.round((low + high) / 2, 9)
    ranks = 1 + (middle[:, np.newaxis, :] > middle[:, :, np.newaxis]).sum(axis=2)
    best = 1 + wholly.sum(axis=1)
    worst = low.shape[1] - wholly.sum(axis=2)
    return Sweep(ranks, best, worst, wholly.mean(axis=0), low, high)
