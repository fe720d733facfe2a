"""Segments of a lower limb from the joints of one side view, and the limb's common centre.

Source: Duarte & Watanabe, Notes on Scientific Computing for Biomechanics and Motor Control, notebook "Body
segment parameters" (seen), with Dempster's fractions after Winter (2009). Lengths there in m, here in mm.
The same notebook's moments of inertia (limb 1.257 and 3.317 kg m2) are not used: no figure here needs them.
"""

import dempster
import numpy as np
import pytest

from fitcalc.making.balance import with_added

pytestmark = pytest.mark.published
HALF_DIGIT = 0.5
"""Printed to the millimetre."""
JOINTS = {
    "toe": (1011.0, 13.0),
    "ankle": (849.0, 110.0),
    "knee": (864.0, 549.0),
    "hip": (721.0, 928.0),
}
SEGMENTS = {"foot": ("ankle", "toe"), "shank": ("knee", "ankle"), "thigh": ("hip", "knee")}
PRINTED = {"foot": (930.0, 62.0), "shank": (858.0, 359.0), "thigh": (783.0, 764.0)}


def centre(segment):
    first, last = (np.array([JOINTS[end]]) for end in SEGMENTS[segment])
    return first + dempster.centre(segment) / 100.0 * (last - first)


@pytest.mark.parametrize("segment", SEGMENTS)
def test_centre_of_each_segment(segment):
    # The notebook prints 61.5 as 62: half a digit and no more, but for rounding.
    assert centre(segment)[0] == pytest.approx(PRINTED[segment], abs=HALF_DIGIT + 1e-9)


def test_centre_of_the_limb():
    mass, place = np.zeros(1) + 1e-12, np.zeros((1, 2))
    for segment in SEGMENTS:
        share = np.array([dempster.mass(segment)])
        mass, place = with_added(mass, place, share, centre(segment))
    assert place[0] == pytest.approx((818.0, 584.0), abs=HALF_DIGIT)
