"""Which measurement is worth taking again: how much of the spread each of them brings in.

The share of an outcome's variance that goes with one measurement is its squared correlation with it; what goes with
none, as the scatter of bodies that measure alike, no tape can mend.
"""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.fit.tolerances import measurements
from fitcalc.units import Floats


@dataclass(frozen=True, eq=False)
class Influence:
    """One measurement.

    Attributes:
        path: in the car file, or field of the driver's measurements.
        title: in words.
        share: of the variance, 0 to 1, averaged over what is undecided.
        most: largest share in any one outcome, and which.
    """

    path: str
    title: str
    share: float
    most: tuple[float, str]


def influences(
    car: Car, driver: Driver, errors: Mapping[str, Floats], outcomes: Mapping[str, Floats]
) -> tuple[Influence, ...]:
    """The measurements by what they bring in, the most telling first.

    Args:
        car: the car measured.
        driver: the driver measured.
        errors: what was drawn for each measurement, `(k, n)`.
        outcomes: lengths to cut and margins of undecided checks, `(n,)`.
    """
    spreading = {id: values for id, values in outcomes.items() if np.ptp(values) > 0.0}
    if not spreading:
        return ()
    known = measurements(car, driver)
    table = _standard(np.stack(list(spreading.values())))
    shares = {path: _shares(errors[path], table) for path in known if path in errors}
    ids = list(spreading)
    found = [
        Influence(path, known[path], float(share.mean()), (float(share.max()), ids[int(share.argmax())]))
        for path, share in shares.items()
    ]
    return tuple(sorted(found, key=lambda each: (-each.share, each.path)))


def _shares(errors: Floats, outcomes: Floats) -> Floats:
    """Share of each outcome's variance that goes with one measurement's errors, independent of each other, `(m,)`."""
    moving = errors[np.ptp(errors, axis=1) > 0.0]
    correlation = _standard(moving) @ outcomes.T / outcomes.shape[1]
    return np.minimum(np.sum(correlation**2, axis=0), 1.0)


def _standard(rows: Floats) -> Floats:
    """Each row less its mean, over its standard deviation."""
    off = rows - rows.mean(axis=1, keepdims=True)
    return off / np.std(rows, axis=1, keepdims=True)
