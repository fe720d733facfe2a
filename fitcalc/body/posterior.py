"""What a set of measurements says about a body: one conditional normal per sex, weighed by likelihood."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from fitcalc.body.conditional import Conditional, Normal, condition, deviations
from fitcalc.body.dimensions import LOG_MASS, MASS, prior, reported, titles, tolerance
from fitcalc.body.mixture import Mixture
from fitcalc.body.survey import Sex
from fitcalc.units import Floats

LEAST_LOG_WEIGHT = -500.0


@dataclass(frozen=True, eq=False)
class Component:
    """One sex's model before and after the measurements; means hold the measured values as measured."""

    prior: Normal
    after: Conditional
    mean: Floats


@dataclass(frozen=True, eq=False)
class Posterior:
    """n bodies that had the same g variables measured.

    Attributes:
        given: names of the measured variables of the model.
        error: (g,), standard deviation of each measurement.
        weights: (n, s), how likely each component is; equal before measuring.
        components: one per sex that may be.
    """

    given: tuple[str, ...]
    error: Floats
    weights: Floats
    components: tuple[Component, ...]

    def mixture(self) -> Mixture:
        """The reported dimensions, mass still as its logarithm."""
        lead = reported(self.components[0].prior.names)
        means = np.stack([each.mean @ lead.T for each in self.components], axis=1)
        variances = [np.einsum("rd,de,re->r", lead, each.after.covariance, lead) for each in self.components]
        return Mixture(self.weights, means, np.sqrt(np.maximum(variances, 0.0)))

    def draw(self, random: "np.random.Generator", count: int) -> Floats:
        """Bodies drawn for the first case, reported dimensions, (count, d), mass still as its logarithm."""
        names = self.components[0].prior.names
        draws = random.standard_normal((count, len(names)))
        errors = random.standard_normal((count, len(self.given))) * self.error
        lot = random.random(count)
        body = np.zeros((count, len(names)))
        ends = np.cumsum(self.weights[0])
        ends[-1] = 1.0
        start = 0.0
        for component, end in zip(self.components, ends, strict=True):
            mine = (lot >= start) & (lot < end)
            off = deviations(component.prior, self.given, component.after, draws[mine], errors[mine])
            body[mine] = component.mean[0] + off
            start = end
        return body @ reported(names).T


def posterior(values: Mapping[str, Floats], sex: Sex | None, tape: float) -> Posterior:
    """What measurements say.

    Args:
        values: reported dimension -> (n,), at least one; mm, mass in kg.
        sex: which survey; none mixes both.
        tape: what the tape can promise, plus or minus; taken as evenly spread, so sd = tape / sqrt(3).
    """
    given = tuple(LOG_MASS if name == MASS else name for name in values)
    table = np.stack([np.log(value) if name == MASS else value for name, value in values.items()], axis=1)
    error = np.array([tolerance(name, tape) for name in values]) / np.sqrt(3)
    sexes: tuple[Sex, ...] = (sex,) if sex else ("female", "male")
    components = tuple(_component(each, given, table, error) for each in sexes)
    return Posterior(given, error, _weights(components), components)


def _component(sex: Sex, given: tuple[str, ...], table: Floats, error: Floats) -> Component:
    before = prior(sex)
    after = condition(before, given, table, error)
    mean = after.mean.copy()
    mean[:, [before.names.index(name) for name in given]] = table
    return Component(before, after, mean)


def _weights(components: tuple[Component, ...]) -> Floats:
    """Likelihood of the measurements under each component, as shares, (n, s)."""
    logs = np.stack([each.after.log_likelihood for each in components], axis=1)
    likelihood = np.exp(np.maximum(logs - logs.max(axis=1, keepdims=True), LEAST_LOG_WEIGHT))
    return likelihood / likelihood.sum(axis=1, keepdims=True)


def column(dimension: str) -> int:
    """Where a reported dimension stands."""
    return list(titles()).index(dimension)
