"""Measurements that do not fit each other, and bodies outside the survey."""

from collections.abc import Mapping

import numpy as np

from fitcalc.body.dimensions import LOG_MASS, MASS, prior, titles
from fitcalc.body.mixture import Z90
from fitcalc.body.posterior import column, posterior
from fitcalc.body.survey import Sex

FAR = 3.0
"""Standard deviations beyond which a value is called improbable: one in 370 by chance; design inference."""


def improbable(given: Mapping[str, float], sex: Sex | None, tape: float) -> tuple[str, ...]:
    """One sentence per measurement that the others contradict, the worst first.

    The worst is set aside before the rest are judged, so that one slip does not accuse the good ones.
    """
    left, flags = dict(given), []
    while len(left) > 1:
        score, name, low, high = max(_judge(name, left, sex, tape) for name in left)
        if score <= FAR:
            break
        flags.append(_sentence(name, left.pop(name), low, high))
    return tuple(flags)


def _judge(
    name: str, given: Mapping[str, float], sex: Sex | None, tape: float
) -> tuple[float, str, float, float]:
    """How many standard deviations a measurement lies off the others, its name, and their 90 % interval."""
    others = {each: np.array([value]) for each, value in given.items() if each != name}
    mixture, at = posterior(others, sex, tape).mixture(), column(name)
    mean, spread = mixture.mean()[0, at], mixture.spread()[0, at]
    value, expected = given[name], np.array([mean - Z90 * spread, mean + Z90 * spread])
    if name == MASS:
        value, expected = np.log(value), np.exp(expected)
    return float(abs(value - mean) / spread), name, float(expected[0]), float(expected[1])


def _sentence(name: str, value: float, low: float, high: float) -> str:
    middle, reach = (low + high) / 2, (high - low) / 2
    return (
        f"{titles()[name]} {value:.0f} is far from what the other measurements suggest, "
        f"expected {middle:.0f} +/- {reach:.0f}: measure again?"
    )


def outside_survey(given: Mapping[str, float], sex: Sex | None) -> str:
    """Why an estimate is extrapolated, or an empty text when every measurement lies inside the survey."""
    spans = {name: _span(name, sex) for name in given}
    beyond = [name for name, value in given.items() if not spans[name][0] <= value <= spans[name][1]]
    parts = (
        f"{titles()[name]} {given[name]:.0f} (survey {spans[name][0]:.0f} to {spans[name][1]:.0f})"
        for name in beyond
    )
    listed = ", ".join(parts)
    return listed and f"outside the survey of adults aged 17 to 58: {listed}; the estimate is extrapolated"


def _span(name: str, sex: Sex | None) -> tuple[float, float]:
    """What the survey covers of one dimension: three standard deviations about the sexes that may be."""
    sexes: tuple[Sex, ...] = (sex,) if sex else ("female", "male")
    models = [prior(each) for each in sexes]
    at = models[0].names.index(LOG_MASS if name == MASS else name)
    reach = [FAR * np.sqrt(model.covariance[at, at]) for model in models]
    low = min(model.mean[at] - far for model, far in zip(models, reach, strict=True))
    high = max(model.mean[at] + far for model, far in zip(models, reach, strict=True))
    return (float(np.exp(low)), float(np.exp(high))) if name == MASS else (float(low), float(high))
