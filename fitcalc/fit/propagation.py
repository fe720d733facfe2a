"""Uncertainty carried through a model: first order, and by drawing.

Source: JCGM 100:2008 (GUM) 5.1.2, 5.2.2, G.4; JCGM 101:2008 (Supplement 1) 7.5-7.7.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from fitcalc.units import Floats

Model = Callable[[Floats], Floats]
"""From inputs, one row per input `(k, n)`, to the figure, `(n,)`."""
NEAR = 1e-3
"""Step of the differences, in standard uncertainties."""


@dataclass(frozen=True, eq=False)
class Budget:
    """A first-order uncertainty budget.

    Attributes:
        value: the figure at the expected inputs.
        slopes: of the figure by each input, `(k,)`.
        parts: slope times standard uncertainty of each input, signed, `(k,)`.
        u: combined standard uncertainty.
    """

    value: float
    slopes: Floats
    parts: Floats
    u: float

    @property
    def shares(self) -> Floats:
        """Share of the variance that each input alone would leave, `(k,)`."""
        whole = float(np.sum(self.parts**2))
        return self.parts**2 / whole if whole > 0.0 else np.zeros_like(self.parts)


def first_order(model: Model, expected: Floats, u: Floats, correlation: Floats | None = None) -> Budget:
    """The law of propagation of uncertainty.

    Args:
        model: from inputs `(k, n)` to the figure.
        expected: `(k,)`.
        u: standard uncertainty of each input, `(k,)`.
        correlation: of the inputs, `(k, k)`; none where they are independent.

    Source: JCGM 100:2008 5.1.2 and 5.2.2; slopes by central differences (5.1.3, note 2).
    """
    steps = np.diag(NEAR * u)
    cases = expected[:, None] + np.concatenate([0.0 * u[:, None], steps, -steps], axis=1)
    values = model(cases)
    up, down = values[1 : 1 + len(u)], values[1 + len(u) :]
    parts = (up - down) / (2.0 * NEAR)
    slopes = np.divide(parts, u, out=np.zeros_like(parts), where=u > 0.0)
    joint = np.eye(len(u)) if correlation is None else correlation
    variance = max(float(parts @ joint @ parts), 0.0)
    return Budget(float(values[0]), slopes, parts, variance**0.5)


def effective_freedom(parts: Sequence[float], freedom: Sequence[float]) -> float:
    """Effective degrees of freedom of a combined uncertainty of independent inputs.

    Source: Welch-Satterthwaite formula, JCGM 100:2008 G.4.1.
    """
    fourth = np.asarray(parts, dtype=float) ** 4 / np.asarray(freedom, dtype=float)
    return float(np.sum(np.asarray(parts, dtype=float) ** 2) ** 2 / np.sum(fourth))


@dataclass(frozen=True, eq=False)
class Spread:
    """What draws of a figure say.

    Attributes:
        mean, u: average and standard deviation.
        low, high: ends of the interval with equal tails.
    """

    mean: float
    u: float
    low: float
    high: float


def spread_of(draws: Floats, coverage: float = 0.90) -> Spread:
    """Average, standard deviation and interval of drawn figures.

    Source: JCGM 101:2008 7.6 and 7.7.
    """
    tail = (1.0 - coverage) / 2.0
    low, high = np.quantile(draws, [tail, 1.0 - tail])
    return Spread(float(np.mean(draws)), float(np.std(draws, ddof=1)), float(low), float(high))


def shortest(draws: Floats, coverage: float = 0.90) -> tuple[float, float]:
    """The shortest interval that holds the coverage.

    Source: JCGM 101:2008 5.3.4 and 7.7.4.
    """
    ordered = np.sort(draws)
    held = max(1, round(coverage * len(ordered)))
    start = int(np.argmin(ordered[held - 1 :] - ordered[: len(ordered) - held + 1]))
    return float(ordered[start]), float(ordered[start + held - 1])


def within(random: np.random.Generator, half_width: float | Floats, count: int) -> Floats:
    """Draws of an error known only to lie within plus or minus a half width, `(count,)`.

    Source: JCGM 101:2008 6.4.2, rectangular; its standard deviation is half width / sqrt(3) (JCGM 100:2008 4.3.7).
    """
    return half_width * random.uniform(-1.0, 1.0, count)


def with_freedom(random: np.random.Generator, u: float, freedom: float, count: int) -> Floats:
    """Draws of an error of standard uncertainty u that follows Student's t with more than 2 degrees of freedom."""
    return u * random.standard_t(freedom, count) / np.sqrt(freedom / (freedom - 2.0))
