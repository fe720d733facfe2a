"""The conditional normal beside an independent library.

Independent: scipy.stats.multivariate_normal by the identity p(x | y) = p(x, y) / p(y), and sympy in exact
fractions.
"""

import numpy as np
import pytest
import sympy
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import multivariate_normal

from fitcalc.body.conditional import Normal, condition, deviations
from fitcalc.body.dimensions import LOG_MASS, prior

SEXES = ("female", "male")
SETS = (("stature",), ("stature", LOG_MASS), ("kneeheightsitting", "stature", "acromialheightsitting"))


def after(model, names, values, error):
    return condition(model, names, np.atleast_2d(values), np.asarray(error, dtype=float))


def joint_with_measurement(model, names, error):
    """Mean and covariance of every variable followed by what would be measured."""
    pick = np.eye(len(model.names))[[model.names.index(name) for name in names]]
    lift = np.vstack([np.eye(len(model.names)), pick])
    covariance = lift @ model.covariance @ lift.T
    covariance[len(model.names) :, len(model.names) :] += np.diag(np.square(error))
    return lift @ model.mean, covariance


@pytest.mark.parametrize("sex", SEXES)
@pytest.mark.parametrize("names", SETS)
def test_conditional_density_is_joint_over_marginal(sex, names):
    model = prior(sex)
    values = np.array([model.mean[model.names.index(name)] * 1.02 for name in names])
    error = np.full(len(names), 0.01)
    ours = after(model, names, values, error)
    mean, covariance = joint_with_measurement(model, names, error)
    body = model.mean + np.sqrt(np.diag(model.covariance)) * np.linspace(-0.1, 0.1, len(model.mean))
    body[[model.names.index(name) for name in names]] = values
    d = len(model.names)
    joint = multivariate_normal(mean, covariance).logpdf(np.r_[body, values])
    marginal = multivariate_normal(mean[d:], covariance[d:, d:]).logpdf(values)
    assert multivariate_normal(ours.mean[0], ours.covariance).logpdf(body) == pytest.approx(
        joint - marginal, rel=1e-9
    )


@pytest.mark.parametrize("sex", SEXES)
@pytest.mark.parametrize("names", SETS)
def test_likelihood_is_the_library_density(sex, names):
    model = prior(sex)
    at = [model.names.index(name) for name in names]
    values, error = model.mean[at] * 1.03, np.full(len(at), 2.0)
    spread = model.covariance[np.ix_(at, at)] + np.diag(error**2)
    library = multivariate_normal(model.mean[at], spread).logpdf(values)
    assert after(model, names, values, error).log_likelihood[0] == pytest.approx(library, rel=1e-12)


def test_equals_exact_fractions():
    rows = [[4, 2, 1], [2, 9, 3], [1, 3, 16]]
    model = Normal(("a", "b", "c"), np.array([1.0, 2.0, 3.0]), np.array(rows, dtype=float))
    ours = after(model, ("a", "c"), [2.0, 5.0], [1.0, 2.0])
    exact = sympy.Matrix(rows)
    seen = exact.extract([0, 2], [0, 2]) + sympy.diag(1, 4)
    gain = exact.extract([0, 1, 2], [0, 2]) * seen.inv()
    mean = sympy.Matrix([1, 2, 3]) + gain * sympy.Matrix([1, 2])
    assert ours.mean[0] == pytest.approx([float(value) for value in mean], rel=1e-13)
    left = exact - gain * exact.extract([0, 2], [0, 1, 2])
    assert ours.covariance == pytest.approx(np.array(left.tolist(), dtype=float), rel=1e-13)


def test_draws_scatter_as_the_conditional_says():
    model = prior("male")
    names, error = ("stature", "sittingheight"), np.array([3.0, 3.0])
    ours = after(model, names, model.mean[[0, 1]], error)
    random = np.random.default_rng(1)
    draws = random.standard_normal((40_000, len(model.names)))
    off = deviations(model, names, ours, draws, random.standard_normal((40_000, 2)) * error)
    expected = np.sqrt(np.diag(ours.covariance))
    assert off.std(axis=0) == pytest.approx(expected, rel=0.02)  # 5 standard errors of a spread over 40 000
    assert np.abs(off.mean(axis=0) / expected).max() < 0.025


subsets = st.lists(st.sampled_from(prior("male").names), min_size=1, max_size=8, unique=True)
errors = st.floats(0.05, 30)


@given(names=subsets, error=errors, sex=st.sampled_from(SEXES))
def test_covariance_stays_positive_definite(names, error, sex):
    model = prior(sex)
    scale = np.sqrt(np.diag(model.covariance))
    sizes = np.array([error * scale[model.names.index(name)] / 30 for name in names])
    left = after(model, tuple(names), np.zeros(len(names)), sizes).covariance
    assert np.linalg.eigvalsh(left / np.outer(scale, scale)).min() > 0


@given(names=subsets.filter(lambda names: len(names) > 1), sex=st.sampled_from(SEXES), error=errors)
def test_intervals_never_grow_with_a_further_measurement(names, sex, error):
    model = prior(sex)

    def spread(taken):
        covariance = after(model, tuple(taken), np.zeros(len(taken)), np.full(len(taken), error)).covariance
        return np.diag(covariance) / np.diag(model.covariance)

    assert np.all(spread(names) <= spread(names[:-1]) + 1e-9)


@given(names=subsets, seed=st.integers(0, 99))
def test_order_of_measurements_does_not_matter(names, seed):
    model = prior("female")
    values = {name: model.mean[model.names.index(name)] * 1.01 for name in names}
    mixed = list(np.random.default_rng(seed).permutation(names))
    first, second = (
        after(model, tuple(order), [values[name] for name in order], np.ones(len(order)))
        for order in (names, mixed)
    )
    assert first.mean == pytest.approx(second.mean, rel=1e-9)
    assert first.log_likelihood == pytest.approx(second.log_likelihood, rel=1e-9)


@given(names=subsets, unit=st.sampled_from([1 / 25.4, 0.001, 0.1]))
def test_unit_of_length_does_not_matter(names, unit):
    model = prior("male")
    small = Normal(model.names, model.mean * unit, model.covariance * unit**2)
    values = np.array([model.mean[model.names.index(name)] * 1.01 for name in names])
    error = np.full(len(names), 3.0)
    ours = after(model, tuple(names), values, error).mean
    theirs = after(small, tuple(names), values * unit, error * unit).mean
    assert theirs / unit == pytest.approx(ours, rel=1e-9)
