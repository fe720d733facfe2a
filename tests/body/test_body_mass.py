"""Mass and centre of mass, limb by limb."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.body.mass import centre_of_mass, segments

PAIRS = ("hip", "knee", "ankle", "heel", "toe", "shoulder", "elbow", "grip")


def joints(random, count=1):
    names = ["cervicale", "head_top", *(f"{name}_{side}" for name in PAIRS for side in ("left", "right"))]
    return {name: random.uniform(-1000, 1000, (count, 3)) for name in names}


@pytest.mark.parametrize("sex", [None, "female", "male"])
def test_shares_add_up_to_the_body(sex):
    shares = segments(joints(np.random.default_rng(0)), sex).shares
    assert sum(shares) == pytest.approx(1.0)
    assert len(shares) == 14


def test_every_limb_goes_by_its_own_name():
    names = segments(joints(np.random.default_rng(0)), "male").names
    assert names[:2] == ("head_neck", "trunk")
    assert len(set(names)) == 14
    assert {name.rpartition("_")[2] for name in names[2:]} == {"left", "right"}


@given(seed=st.integers(0, 1000), sex=st.sampled_from([None, "female", "male"]))
def test_moving_and_scaling_the_body_moves_and_scales_its_centre(seed, sex):
    places = joints(np.random.default_rng(seed), 3)
    moved = {name: 2.0 * value + [10.0, -20.0, 30.0] for name, value in places.items()}
    assert centre_of_mass(moved, sex) == pytest.approx(
        2.0 * centre_of_mass(places, sex) + [10.0, -20.0, 30.0]
    )


def test_mirrored_limbs_leave_the_centre_on_the_middle_plane():
    places = joints(np.random.default_rng(4))
    for name in PAIRS:
        places[f"{name}_right"] = places[f"{name}_left"] * [1, -1, 1]
    for name in ("cervicale", "head_top"):
        places[name] = places[name] * [1, 0, 1]
    assert centre_of_mass(places, "male")[0, 1] == pytest.approx(0.0, abs=1e-9)


def test_lifting_a_knee_lifts_the_centre_by_its_share():
    places = joints(np.random.default_rng(5))
    lifted = places | {"knee_left": places["knee_left"] + [0, 0, 100]}
    rise = (centre_of_mass(lifted, "male") - centre_of_mass(places, "male"))[0, 2]
    assert rise == pytest.approx(100 * (0.1416 * 0.4095 + 0.0433 * (1 - 0.4395)), rel=1e-9)


@pytest.mark.parametrize(
    ("sex", "hand", "forearm", "wrist"),
    [
        ("male", 0.0061, 0.0162 * 0.4574, 268.9 / (268.9 + 0.7900 * 86.2)),
        ("female", 0.0056, 0.0138 * 0.4559, 264.3 / (264.3 + 0.7474 * 78.0)),
    ],
)
def test_lifting_a_grip_lifts_the_centre_by_the_hand_and_its_part_of_the_forearm(sex, hand, forearm, wrist):
    """De Leva's shares by hand: the wrist lies between elbow and grip as his forearm and hand are long."""
    places = joints(np.random.default_rng(6))
    lifted = places | {"grip_left": places["grip_left"] + [0, 0, 100]}
    rise = (centre_of_mass(lifted, sex) - centre_of_mass(places, sex))[0, 2]
    assert rise == pytest.approx(100 * (hand + forearm * wrist), rel=2e-4)  # his women sum to 99.99 %
