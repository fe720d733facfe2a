"""Figures named by what is measured: label and unit come from the quantity."""

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure, not_measured
from fitcalc.checks.quantities import quantities
from fitcalc.units import Floats, Points


def measured(
    case: Case, id: str, value: Floats, evidence: tuple[Points, ...] = (), quantity: str = "", of: str = ""
) -> Figure:
    """A figure of the case.

    Args:
        case: whose figure it is.
        id: dotted and stable.
        value: broadcasts to `(n,)`.
        evidence: points that it was measured between; each broadcasts to `(n, 3)`.
        quantity: key of what is measured, where it is not the id.
        of: which one of several, in words, put before the label.
    """
    row = quantities()[quantity or id]
    points = tuple(map(case.wide, evidence))
    return Figure(id, row.id, _label(row.label, of), row.unit, case.full(value), points)


def unmeasured(id: str, missing: str, quantity: str = "", of: str = "") -> Figure:
    """The figure that could not be measured for want of a field, given by its path in the car file."""
    row = quantities()[quantity or id]
    return not_measured(id, row.id, _label(row.label, of), row.unit, missing)


def nearest_of(places: Points, gaps: Floats) -> Points:
    """Of several places `(n or 1, q, 3)` the one with the least gap `(n, q)`, for each case, `(n, 3)`."""
    every = np.broadcast_to(places, (len(gaps), *places.shape[1:]))
    return every[np.arange(len(gaps)), gaps.argmin(axis=1)]


def _label(label: str, of: str) -> str:
    return f"{of}: {label}" if of else label
