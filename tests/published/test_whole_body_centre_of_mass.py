"""Centre of mass of a standing and a seated figure.

Sources:
    Standing: three men of Santschi, DuBois & Omoto, AMRL-TDR-63-36 (1963), depth of the centre below the top
    of the head, as reprinted in a textbook's table A.2.1 (seen there; the report itself was not): height 72.2
    in, 173.5 lb: 32.2 in; 67.4 in, 147.3 lb: 29.8 in; 73.3 in, 203 lb: 31.8 in.
    Seated: Reed, Whole-body center of mass location in seated posture, UMTRI (abstract seen): about 220 mm
    ahead of the back of the buttocks for men of median mass, about 77 kg.
"""

import numpy as np
import pytest

from fitcalc.body.estimate import estimate
from fitcalc.body.links import links_for
from fitcalc.body.mass import centre_of_mass
from fitcalc.documents.driver import Driver
from fitcalc.units import MM_PER_INCH

pytestmark = pytest.mark.published


def at(x, z):
    return np.array([[float(x), 0.0, float(z)]])


def both(**places):
    return {f"{name}_{side}": place for name, place in places.items() for side in ("left", "right")}


def one(value):
    return float(value[0])


def standing(who):
    links, body = links_for(who), estimate(who).means()
    knee = one(links.ankle_height + links.shank)
    shoulder = one(body["acromialheight"] - 0.104 * body["acromionradialelength"])
    elbow = shoulder - one(links.upper_arm)
    heel = one(links.heel_to_ankle)
    return both(
        hip=at(0, knee + one(links.thigh)),
        knee=at(0, knee),
        ankle=at(0, one(links.ankle_height)),
        heel=at(heel, 30),
        toe=at(heel - one(links.foot_length), 30),
        shoulder=at(0, shoulder),
        elbow=at(0, elbow),
        grip=at(0, elbow - one(links.forearm)),
    ) | {"head_top": at(0, one(body["stature"])), "cervicale": at(0, one(body["cervicaleheight"]))}


def seated(who):
    """Upright on a hard seat, thighs level, shanks hanging, forearms forward; x = 0 at the back."""
    links = links_for(who)
    hip_x, hip_z = -one(links.hip_ahead_of_back), one(links.hip_above_cushion)
    elbow_z = hip_z + one(links.trunk - links.upper_arm)
    knee_x, ankle_z = hip_x - one(links.thigh), hip_z - one(links.shank)
    heel_x, sole_z = knee_x + one(links.heel_to_ankle), ankle_z - one(links.ankle_height) / 2
    neck_z = hip_z + one(links.cervicale)
    return both(
        hip=at(hip_x, hip_z),
        knee=at(knee_x, hip_z),
        ankle=at(knee_x, ankle_z),
        heel=at(heel_x, sole_z),
        toe=at(heel_x - one(links.foot_length), sole_z),
        shoulder=at(hip_x, hip_z + one(links.trunk)),
        elbow=at(hip_x, elbow_z),
        grip=at(hip_x - one(links.forearm), elbow_z),
    ) | {"cervicale": at(hip_x, neck_z), "head_top": at(hip_x - 90, neck_z + 210)}


@pytest.mark.parametrize(
    ("height", "pounds", "below"), [(72.2, 173.5, 32.2), (67.4, 147.3, 29.8), (73.3, 203.0, 31.8)]
)
def test_standing_men(height, pounds, below):
    who = Driver(
        name="x", sex="male", mass=pounds * 0.45359237, measurements={"stature": height * MM_PER_INCH}
    )
    centre = one(centre_of_mass(standing(who), "male")[:, 2])
    # One person's build against the mean of his size: two of these men differ by 1.2 % of stature, 21 mm.
    assert centre == pytest.approx((height - below) * MM_PER_INCH, abs=15)


def test_seated_man_of_median_mass():
    who = Driver(name="x", sex="male", mass=77.0, measurements={"stature": 1756.0})
    ahead = -one(centre_of_mass(seated(who), "male")[:, 0])
    # "About 220"; their arms lay on the lap and they sat relaxed: forearms held forward account for 10 mm.
    assert ahead == pytest.approx(220, abs=25)
