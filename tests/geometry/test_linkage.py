"""Two links: against a general-purpose kinematics library (ikpy, Apache 2.0) and by hand."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from ikpy.chain import Chain
from ikpy.link import OriginLink, URDFLink

from fitcalc.geometry.degrees import included, length
from fitcalc.geometry.linkage import two_link

UP = np.array([[0.0, 0.0, 1.0]])


def chain_of(first, second):
    """Two links in the x-z plane, turning about y; ikpy works in metres well, so lengths come in m."""
    turn = [0, 1, 0]
    links = [
        OriginLink(),
        URDFLink("hip", [0, 0, 0], [0, 0, 0], turn, use_symbolic_matrix=False),
        URDFLink("knee", [first, 0, 0], [0, 0, 0], turn, use_symbolic_matrix=False),
        URDFLink("ankle", [second, 0, 0], [0, 0, 0], joint_type="fixed", use_symbolic_matrix=False),
    ]
    return Chain(links, active_links_mask=[False, True, True, False])


def random_cases(count, seed):
    """Targets ahead of and below the hip, as a foot is: x forward is negative."""
    rng = np.random.default_rng(seed)
    first, second = rng.uniform(300, 550, (2, count))
    reach = rng.uniform(0.35, 0.995, count) * (first + second)
    down = np.radians(rng.uniform(-30, 40, count))
    target = np.stack([-reach * np.cos(down), np.zeros(count), -reach * np.sin(down)], axis=-1)
    return first, second, target


def test_agrees_with_ikpy_on_a_thousand_cases():
    first, second, target = random_cases(1000, seed=7)
    ours = two_link(np.zeros((1000, 3)), target, first, second, UP)
    thigh_turn = np.arctan2(-ours.middle[:, 2], ours.middle[:, 0])
    lower = target - ours.middle
    knee_turn = np.arctan2(-lower[:, 2], lower[:, 0]) - thigh_turn
    for i in range(1000):
        chain = chain_of(first[i] / 1000, second[i] / 1000)
        reached = chain.forward_kinematics([0, thigh_turn[i], knee_turn[i], 0])[:3, 3] * 1000
        assert np.allclose(reached, target[i], atol=0.01)
        assert 180 - abs(np.degrees((knee_turn[i] + np.pi) % (2 * np.pi) - np.pi)) == pytest.approx(
            ours.angle[i], abs=0.01
        )


def test_ikpy_finds_the_same_knee():
    first, second, target = random_cases(60, seed=11)
    ours = two_link(np.zeros((60, 3)), target, first, second, UP)
    for i in range(60):
        chain = chain_of(first[i] / 1000, second[i] / 1000)
        start = [0, np.arctan2(-ours.middle[i, 2], ours.middle[i, 0]) + 0.1, -0.5, 0]
        found = chain.inverse_kinematics(target[i] / 1000, initial_position=start)
        knee = 180 - abs(np.degrees((found[2] + np.pi) % (2 * np.pi) - np.pi))
        # ikpy searches numerically and stops near 1e-5 m; near a straight leg that is up to 0.3 deg of knee
        assert knee == pytest.approx(ours.angle[i], abs=0.3)


@pytest.mark.parametrize(
    ("thigh", "shank", "angle", "printed"),
    [
        (432.0, 417.5, 110, 695.9),
        (432.0, 417.5, 130, 769.9),
        (432.0, 417.5, 160, 836.6),
        (456.0, 459.0, 110, 749.5),
        (456.0, 459.0, 160, 901.1),
    ],
)
def test_hip_to_ankle_for_sae_j826_leg_lengths(thigh, shank, angle, printed):
    """Own arithmetic (law of cosines) on the SAE J826 50th and 95th percentile leg lengths (from memory)."""
    """The printed length is rounded to 0.05 mm, which is up to 0.02 deg of knee."""
    chain = two_link(np.zeros((1, 3)), np.array([[-printed, 0, 0]]), np.array([thigh]), np.array([shank]), UP)
    assert chain.angle[0] == pytest.approx(angle, abs=0.02)


def test_knee_bends_up():
    chain = two_link(np.zeros((1, 3)), np.array([[-700.0, 0, 0]]), np.array([430.0]), np.array([430.0]), UP)
    assert chain.middle[0, 2] > 200


@pytest.mark.parametrize("beyond", [0.5, 40.0])
def test_out_of_reach_says_how_far(beyond):
    target = np.array([[-860.0 - beyond, 0, 0]])
    chain = two_link(np.zeros((1, 3)), target, np.array([430.0]), np.array([430.0]), UP)
    assert chain.shortfall[0] == pytest.approx(beyond)
    assert chain.angle[0] == pytest.approx(180.0)
    assert np.allclose(chain.end, [[-860.0, 0, 0]])


def test_too_near_says_how_far():
    chain = two_link(np.zeros((1, 3)), np.array([[-20.0, 0, 0]]), np.array([430.0]), np.array([380.0]), UP)
    assert chain.shortfall[0] == pytest.approx(30.0)


def test_no_distance_at_all_is_finite():
    chain = two_link(np.zeros((1, 3)), np.zeros((1, 3)), np.array([400.0]), np.array([400.0]), UP)
    assert np.all(np.isfinite(chain.middle))


@given(st.floats(100, 600), st.floats(100, 600), st.floats(0.01, 1.3), st.floats(0, 360), st.floats(-60, 60))
def test_links_keep_their_length(first, second, share, heading, lift):
    reach = share * (first + second)
    level, high = np.radians(heading), np.radians(lift)
    target = reach * np.array([[np.cos(level) * np.cos(high), np.sin(level) * np.cos(high), np.sin(high)]])
    chain = two_link(np.zeros((1, 3)), target, np.array([first]), np.array([second]), UP)
    assert length(chain.middle)[0] == pytest.approx(first, rel=1e-9)
    assert length(chain.end - chain.middle)[0] == pytest.approx(second, rel=1e-6)
    assert included(np.zeros((1, 3)), chain.middle, chain.end)[0] == pytest.approx(chain.angle[0], abs=1e-4)
