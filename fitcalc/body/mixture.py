"""A mixture of normals, variable by variable: mean, spread and the 90 % interval."""

from dataclasses import dataclass

import numpy as np

from fitcalc.units import Floats

Z90 = 1.6448536269514722
"""Standard normal quantile at 95 %: 90 % lie within plus or minus this."""
TINY = 1e-9
CLOSE = 1e-3
"""Step at which the search for a quantile stops, mm; the step after it is far smaller."""
STEPS = 60


@dataclass(frozen=True, eq=False)
class Mixture:
    """n cases of s components over d variables.

    Attributes:
        weights: (n, s), summing to 1.
        means: (n, s, d).
        spreads: (s, d), standard deviations.
    """

    weights: Floats
    means: Floats
    spreads: Floats

    def mean(self) -> Floats:
        """Mean of the mixture, (n, d)."""
        return np.einsum("ns,nsd->nd", self.weights, self.means)

    def spread(self) -> Floats:
        """Standard deviation of the mixture, (n, d)."""
        off = self.means - self.mean()[:, None, :]
        return np.sqrt(np.einsum("ns,nsd->nd", self.weights, off**2 + self.spreads**2))

    def interval(self) -> tuple[Floats, Floats]:
        """The 5 % and 95 % quantiles of the mixture, (n, d) each."""
        return self._quantile(0.05, -Z90), self._quantile(0.95, Z90)

    def _quantile(self, probability: float, z: float) -> Floats:
        """Newton steps, kept between the components' own quantiles, between which the mixture's must lie."""
        own = self.means + z * self.spreads
        low, high = own.min(axis=1), own.max(axis=1)
        at = (low + high) / 2
        for _ in range(STEPS):
            share, density = self._at(at)
            low, high = np.where(share < probability, at, low), np.where(share < probability, high, at)
            step = _inside(at - (share - probability) / density, low, high)
            moved = np.abs(step - at).max()
            at = step
            if moved < CLOSE:
                break
        return at

    def _at(self, value: Floats) -> tuple[Floats, Floats]:
        """Share below and density at one value per case and variable, (n, d) each."""
        spreads = np.maximum(self.spreads, TINY)
        z = np.clip((value[:, None, :] - self.means) / spreads, -8.0, 8.0)
        bell = np.exp(-0.5 * z**2)
        share = np.einsum("ns,nsd->nd", self.weights, _normal_share(z, bell))
        return share, np.einsum("ns,nsd->nd", self.weights, bell / spreads) / np.sqrt(2 * np.pi)


def _inside(newton: Floats, low: Floats, high: Floats) -> Floats:
    """A Newton step cut to its bracket; the bracket's middle where the step would leave it far behind."""
    slack = (high - low) / 100 + CLOSE
    near = (newton > low - slack) & (newton < high + slack)
    return np.where(near, np.clip(newton, low, high), (low + high) / 2)


def _normal_share(z: Floats, bell: Floats) -> Floats:
    """Share of a standard normal below z, given exp(-z^2/2); within 1e-7.

    Source: Abramowitz & Stegun, Handbook of Mathematical Functions (1964), 26.2.17; from memory.
    """
    t = 1 / (1 + 0.2316419 * np.abs(z))
    series = t * (0.319381530 + t * (-0.356563782 + t * (1.781477937 + t * (-1.821255978 + t * 1.330274429))))
    tail = bell / np.sqrt(2 * np.pi) * series
    return np.where(z < 0, tail, 1 - tail)
