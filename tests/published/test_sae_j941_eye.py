"""Eye position against recline.

Source: SAE J941 (1997) eyellipse centre aft of and above the 95th percentile H-point, back angle b 5 to 40
deg: x = -259.915 + 10.2816 b - 0.032032 b^2, z = 653.718 + 0.398747 b - 0.059301 b^2 (second-hand); moved to
the mean H-point by the 81 mm between the J1517 median and 95th percentile curves at 250 mm seat height. The
head carriage in use was derived from these centres, so this checks the chain hip - cervicale - eye on the
mean of both sexes, not the rows themselves.
"""

import numpy as np
import pytest

from fitcalc.body.links import eye_from_cervicale, links_for
from fitcalc.body.survey import mean_of
from fitcalc.documents.driver import Driver

pytestmark = pytest.mark.published


def cervicale():
    people = [
        Driver(name="x", sex=sex, measurements={"stature": mean_of(sex, "stature")})
        for sex in ("female", "male")
    ]
    return np.mean([links_for(who).cervicale[0] for who in people])


@pytest.mark.parametrize("recline", range(5, 41, 5))
def test_eye_of_the_mean_body(recline):
    b = float(recline)
    printed_x = -259.915 + 10.2816 * b - 0.032032 * b**2 + 81.0
    printed_z = 653.718 + 0.398747 * b - 0.059301 * b**2
    forward, up = eye_from_cervicale(np.array([b]))
    link = cervicale()
    # The rows are rounded to 1 mm and the link to the mean of both sexes is 561.7 against 562.
    assert link * np.sin(np.radians(b)) - forward[0] == pytest.approx(printed_x, abs=2)
    assert link * np.cos(np.radians(b)) + up[0] == pytest.approx(printed_z, abs=2)
