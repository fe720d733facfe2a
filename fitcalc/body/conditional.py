"""The conditional multivariate normal: what some measurements say about all others.

Source: plane statistics (Schur complement of a joint normal); measurement errors are independent normals.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.units import Floats


@dataclass(frozen=True, eq=False)
class Normal:
    """A joint normal: names of its d variables, mean (d,), covariance (d, d)."""

    names: tuple[str, ...]
    mean: Floats
    covariance: Floats


@dataclass(frozen=True, eq=False)
class Conditional:
    """A joint normal after g measurements, for n cases that had the same variables measured.

    Attributes:
        mean: (n, d).
        covariance: (d, d), the same for every case.
        gain: (d, g), mm of each variable per mm that a measurement lies off its prior mean.
        log_likelihood: (n,), of the measurements under the prior.
    """

    mean: Floats
    covariance: Floats
    gain: Floats
    log_likelihood: Floats


def condition(prior: Normal, given: tuple[str, ...], values: Floats, error: Floats) -> Conditional:
    """What the measurements leave of a joint normal.

    Args:
        prior: before measuring.
        given: names of the g measured variables.
        values: (n, g).
        error: (g,), standard deviation of each measurement.
    """
    at = [prior.names.index(name) for name in given]
    spread = prior.covariance[np.ix_(at, at)] + np.diag(error**2)
    gain: Floats = np.asarray(np.linalg.solve(spread, prior.covariance[at]).T, dtype=float)
    off = values - prior.mean[at]
    covariance = prior.covariance - gain @ prior.covariance[at]
    return Conditional(
        mean=prior.mean + off @ gain.T,
        covariance=(covariance + covariance.T) / 2,
        gain=gain,
        log_likelihood=_log_density(off, spread),
    )


def _log_density(off: Floats, spread: Floats) -> Floats:
    """Logarithm of a zero-mean normal density at each row of `off`, (n,)."""
    root = np.linalg.cholesky(spread)
    standard = np.linalg.solve(root, off.T)
    size = np.log(np.diag(root)).sum() + len(root) * np.log(2 * np.pi) / 2
    return -0.5 * (standard**2).sum(axis=0) - size


def deviations(
    prior: Normal, given: tuple[str, ...], after: Conditional, draws: Floats, errors: Floats
) -> Floats:
    """Draws of a conditional normal about its mean, (n, d).

    A draw of the prior is corrected for what it would have measured.

    Args:
        prior: before measuring.
        given: names of the g measured variables.
        after: the same measurements' conditional.
        draws: (n, d), standard normal.
        errors: (n, g), errors of the measurements.
    """
    off = draws @ np.linalg.cholesky(prior.covariance).T
    at = [prior.names.index(name) for name in given]
    return off - (off[:, at] + errors) @ after.gain.T
