"""Why a criterion has its points, in plain words."""

from __future__ import annotations

from specscan.judging.rulesets import Criterion
from specscan.physics.derived import DERIVED


def reason_of(criterion: Criterion, ends: int, unclear: int) -> str:
    """Give the reason of a verdict.

    ``ends`` are the steps at which the scale can still end, ``unclear`` the columns for want of which it is not
    settled (two bits each: not known, known only in part). A settled criterion has the words of its step; else they
    say what is not known and what it could be, best first.
    """
    steps = [step for step in range(len(criterion.reasons)) if ends >> step & 1]
    if len(steps) == 1:
        return criterion.reasons[steps[0]]
    unknown = [name for place, name in enumerate(criterion.columns) if unclear >> (2 * place) & 1]
    in_part = [name for place, name in enumerate(criterion.columns) if unclear >> (2 * place + 1) & 1]
    told = []
    if unknown:
        told.append("Not known: " + "; ".join(_named(name) for name in unknown) + ".")
    if in_part:
        told.append("Known only in part: " + "; ".join(in_part) + ".")
    could = sorted(steps, key=lambda step: (-criterion.points[step], step))
    told.append(
        "It could be: " + "; ".join(f"{_points(criterion.points[s])}: {_bare(criterion.reasons[s])}" for s in could)
    )
    return " ".join(told) + "."


def total_reason(unsettled: list[str], low: float, high: float, most: float) -> str:
    """Give the sum in words, and which criteria are not settled."""
    if not unsettled:
        return f"{_number(low)} of {_number(most)} points; every criterion is settled."
    return f"{_number(low)} to {_number(high)} of {_number(most)} points; not settled: {', '.join(unsettled)}."


def _named(name: str) -> str:
    return f"{name} (it needs {DERIVED[name].needs})" if name in DERIVED else name


def _bare(text: str) -> str:
    return text.rstrip().rstrip(".")


def _points(value: float) -> str:
    return f"{_number(value)} point" + ("" if value == 1 else "s")


def _number(value: float) -> str:
    return f"{value:.2f}".rstrip("0").rstrip(".")
