"""Every dimension of a driver from whatever was measured, with 90 % intervals.

A conditional normal per sex on the survey's published figures (`survey`); sex unknown mixes both by how
likely each makes the measurements. A measured dimension keeps its value and carries the tape tolerance.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from fitcalc.body.dimensions import MASS, measured, titles
from fitcalc.body.mixture import Mixture
from fitcalc.body.plausible import improbable, outside_survey
from fitcalc.body.posterior import column, posterior
from fitcalc.body.survey import Sex
from fitcalc.documents.driver import Driver
from fitcalc.units import Bools, Floats

TAPE = 5.0
"""Tape tolerance where no driver file states one, mm."""


@dataclass(frozen=True, eq=False)
class Estimate:
    """One driver's d dimensions, mm, mass in kg.

    Attributes:
        names: dimensions as the survey names them; `dimensions.titles` has plain words.
        mean: (d,), measured value or expected value; of mass the median.
        sd: (d,), standard deviation.
        low: (d,), 5 % quantile.
        high: (d,), 95 % quantile.
        measured: (d,), whether the driver file gives it.
        flags: one sentence per measurement that the others contradict.
        extrapolated: whether a measurement lies outside the survey.
        reason: which, in words; empty inside.
    """

    names: tuple[str, ...]
    mean: Floats
    sd: Floats
    low: Floats
    high: Floats
    measured: Bools
    flags: tuple[str, ...]
    extrapolated: bool
    reason: str

    @property
    def remarks(self) -> tuple[str, ...]:
        """What does not go together, and where the estimate leaves the survey, in sentences."""
        return (*self.flags, *((self.reason,) if self.extrapolated else ()))

    def means(self) -> dict[str, Floats]:
        """Dimension -> (1,): the body that `links.links_of` takes."""
        return {name: self.mean[at : at + 1] for at, name in enumerate(self.names)}


@dataclass(frozen=True, eq=False)
class Estimates:
    """n drivers who had the same things measured.

    Attributes:
        names: the d dimensions.
        mean: (n, d), mm, mass in kg.
        sd: (n, d).
        mixture: what the intervals come from; mass as its logarithm.
    """

    names: tuple[str, ...]
    mean: Floats
    sd: Floats
    mixture: Mixture

    def interval(self) -> tuple[Floats, Floats]:
        """The 5 % and 95 % quantiles, (n, d) each; worked out when asked for."""
        low, high = self.mixture.interval()
        return _in_kg(low), _in_kg(high)

    def means(self) -> dict[str, Floats]:
        """Dimension -> (n,): the bodies that `links.links_of` takes."""
        return dict(zip(self.names, self.mean.T, strict=True))


def estimate_many(values: Mapping[str, Floats], sex: Sex | None, tape: float = TAPE) -> Estimates:
    """All dimensions of n drivers in one call.

    Args:
        values: dimension -> (n,), the same set for all; mm, mass in kg.
        sex: which survey; none mixes both, driver by driver.
        tape: plus or minus, mm.
    """
    mixture = posterior(values, sex, tape).mixture()
    mean, sd = _in_kg(mixture.mean()), mixture.spread()
    sd[:, column(MASS)] *= mean[:, column(MASS)]
    return Estimates(tuple(titles()), mean, sd, mixture)


@lru_cache(maxsize=16)
def estimate(driver: Driver) -> Estimate:
    """All dimensions of one driver, with what to measure again and whether the survey covers this body."""
    given = measured(driver)
    many = estimate_many({name: np.array([value]) for name, value in given.items()}, driver.sex, driver.tape)
    low, high = many.interval()
    reason = outside_survey(given, driver.sex)
    return Estimate(
        names=many.names,
        mean=many.mean[0],
        sd=many.sd[0],
        low=low[0],
        high=high[0],
        measured=np.array([name in given for name in many.names]),
        flags=improbable(given, driver.sex, driver.tape),
        extrapolated=bool(reason),
        reason=reason,
    )


def sample(driver: Driver, count: int, seed: int) -> dict[str, Floats]:
    """Bodies that this driver may have, dimension -> (count,), scattered as estimate and tape leave them."""
    given = {name: np.array([value]) for name, value in measured(driver).items()}
    drawn = posterior(given, driver.sex, driver.tape).draw(np.random.default_rng(seed), count)
    return dict(zip(titles(), _in_kg(drawn).T, strict=True))


def _in_kg(table: Floats) -> Floats:
    """The table with mass as kg in place of its logarithm."""
    turned = table.copy()
    turned[:, column(MASS)] = np.exp(table[:, column(MASS)])
    return turned
