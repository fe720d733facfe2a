"""Every test of the body runs with floating-point errors raised."""

import numpy as np
import pytest


@pytest.fixture(autouse=True)
def _floating_point_errors_raise():
    with np.errstate(all="raise"):
        yield
