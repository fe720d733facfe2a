"""NIST Technical Note 1900 (Possolo 2015), Example E13: thermal expansion coefficient.

Values second-hand, from an open test suite. The inputs follow Student's t with 3 degrees of freedom, and the stated
uncertainties are taken as their standard deviations: scaling by sqrt(3) would give 3.04e-6, not the printed 1.76e-6.
"""

import numpy as np
import pytest

from fitcalc.fit.propagation import spread_of

pytestmark = pytest.mark.published

EXPECTED = np.array([1.4999, 288.15, 1.5021, 373.10])
UNCERTAIN = np.array([0.0001, 0.02, 0.0002, 0.05])
DRAWS = 1_000_000


def expansion(inputs):
    cold, cold_at, warm, warm_at = inputs
    return (warm - cold) / (cold * (warm_at - cold_at))


def test_drawn_uncertainty():
    """A million draws give the mean within 7e-9, four standard errors.

    t with 3 degrees has no fourth moment, so that the drawn deviation settles slowly: 3 %.
    """
    random = np.random.default_rng(7)
    draws = np.stack([u * random.standard_t(3.0, DRAWS) / np.sqrt(3.0) for u in UNCERTAIN])
    found = spread_of(expansion(EXPECTED[:, None] + draws))
    assert found.mean == pytest.approx(1.7266e-5, abs=7e-9)
    assert found.u == pytest.approx(1.76e-6, rel=0.03)
