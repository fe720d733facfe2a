"""Leg links of the SAE manikin.

Source: SAE J826 leg segments, thigh / lower leg 408 / 391-402 mm (10th), 432 / 417.5 mm (50th), 456 / 459 mm
(95th percentile men), from memory; the 401 / 414 mm to which FMVSS head-restraint positioning sets the
machine's thigh and lower leg in place of the 50th percentile (seen in text). Leg lengths are percentiles of
their own, so stature percentiles stand in.
"""

import numpy as np
import pytest
from scipy.stats import norm

from fitcalc.body.links import links_for
from fitcalc.body.survey import summary
from fitcalc.documents.driver import Driver

pytestmark = pytest.mark.published


def man(percentile):
    row = summary("male")["stature"]
    stature = norm.ppf(percentile, float(row["mean"]), float(row["sd"]))
    return links_for(Driver(name="x", sex="male", measurements={"stature": float(stature)}))


@pytest.mark.parametrize(
    ("percentile", "thigh", "shank"), [(0.10, 408, 396.5), (0.50, 432, 417.5), (0.95, 456, 459)]
)
def test_leg_links(percentile, thigh, shank):
    links = man(percentile)
    assert links.thigh == pytest.approx(np.array([thigh]), abs=12)  # spread of the thigh's relation
    assert links.shank == pytest.approx(np.array([shank]), abs=12)


@pytest.mark.parametrize(("percentile", "leg"), [(0.10, 804.5), (0.50, 849.5), (0.95, 915)])
def test_whole_leg(percentile, leg):
    links = man(percentile)
    assert links.thigh + links.shank == pytest.approx(np.array([leg]), abs=15)


def test_regulatory_setting_lies_below_the_mean_man_by_its_own_margin():
    links = man(0.5)
    assert links.thigh[0] - 401 == pytest.approx(432 - 401, abs=12)
    assert links.shank[0] - 414 == pytest.approx(417.5 - 414, abs=12)
