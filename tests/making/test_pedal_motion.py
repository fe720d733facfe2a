"""Pad path: own reference cases (plane geometry), and a rigid rotation by complex numbers (independent)."""

import numpy as np
import pytest
from pedal_cases import PAIRS, floor_pedal, hanging_pedal

from fitcalc.making.pedal_motion import (
    contact_radius,
    pad_arc,
    pad_chord,
    pad_contact,
    sweep,
)
from fitcalc.making.rod import Rod, rod_joint


def pad_shift(pedal):
    ends = pad_contact(pedal, sweep(pedal, 2))
    return ends[:, 1] - ends[:, 0]


def turned(point, pivot, angle):
    """Side-view point turned about the pivot in the complex plane x + iz, counter-clockwise positive."""
    spoke = complex(*(point - pivot)) * np.exp(1j * np.radians(angle))
    return pivot + np.r_[spoke.real, spoke.imag]


def test_positive_angle_leans_a_floor_pedal_rearward():
    pad = pad_contact(floor_pedal(), np.array([[15.0]]))[0, 0]
    assert np.all(pad > 0)


def test_positive_angle_leans_a_hanging_pedal_rearward():
    pedal = hanging_pedal()
    pad = pad_contact(pedal, np.array([[15.0]]))[0, 0]
    assert pad[0] > pedal.pivot[0, 0]
    assert pad[1] < pedal.pivot[0, 1]


@pytest.mark.parametrize(("pedal", "rod"), PAIRS)
def test_pressing_moves_the_pad_forward(pedal, rod):
    assert pad_shift(pedal)[0, 0] < 0


def test_stand_off_brings_the_pad_nearer_the_driver():
    upright = [
        pad_contact(floor_pedal(stand_off=off, rest=0.0), np.array([[0.0]]))[0, 0, 0] for off in (0.0, 40.0)
    ]
    assert upright == pytest.approx([0.0, 40.0])


@pytest.mark.parametrize("pedal", [floor_pedal(stand_off=40.0), hanging_pedal()])
def test_pad_path_is_a_rigid_rotation(pedal):
    sense = -1.0 if pedal.hanging[0] else 1.0
    angles = sweep(pedal, 7)[0]
    path = pad_contact(pedal, angles[None])[0]
    expected = [turned(path[0], pedal.pivot[0], sense * (angles[0] - angle)) for angle in angles]
    assert path == pytest.approx(np.array(expected), abs=1e-9)


def test_arc_and_chord_of_reference_case():
    pedal = floor_pedal()
    assert pad_arc(pedal) == pytest.approx(87.266463, rel=1e-6)
    assert pad_chord(pedal) == pytest.approx(86.824089, rel=1e-6)


def test_stand_off_reference_case():
    pedal = floor_pedal(stand_off=40.0)
    assert contact_radius(pedal) == pytest.approx(253.17978, rel=1e-6)
    assert pad_arc(pedal) == pytest.approx(88.376415, rel=1e-6)


@pytest.mark.parametrize(
    ("stand_off", "forward", "up"), [(0.0, 86.493697, 7.567218), (40.0, 85.282942, 21.406209)]
)
def test_stand_off_makes_the_pad_climb(stand_off, forward, up):
    assert pad_shift(floor_pedal(stand_off=stand_off)) == pytest.approx(np.array([[-forward, up]]), rel=1e-6)


@pytest.mark.parametrize(("pedal", "along", "quarter"), [(floor_pedal(), 1, 1), (hanging_pedal(), -1, 1)])
def test_phase_leads_the_rod_joint_rearward_of_the_arm(pedal, along, quarter):
    """Arm plumb, 50 mm to the joint: at phase 0 on the arm, at 90 deg level behind the pivot, at -90 before it."""
    joints = [
        rod_joint(pedal, Rod(np.r_[50.0], np.r_[phase], np.zeros((1, 2))), np.zeros((1, 1)))[0, 0]
        - pedal.pivot[0]
        for phase in (0.0, 90.0, -90.0)
    ]
    assert np.ravel(joints) == pytest.approx([0, along * 50, 50 * quarter, 0, -50 * quarter, 0], abs=1e-9)
