"""Pads at rest and pressed, by hand."""

import numpy as np
import pytest

from fitcalc.documents.car_pedals import Pedal
from fitcalc.documents.fields import Point
from fitcalc.documents.setup import PedalRework
from fitcalc.making.pedal_motion import pad_chord
from fitcalc.making.pedal_work import motion
from fitcalc.posture.pads import pad_at, pad_edges, travel_angle

ORIGIN = Point(x=200.0, y=0.0, z=400.0)
NO_BOX = np.zeros(1)
AS_FOUND = PedalRework()


def pedal(**changes):
    plain = {
        "foot": "right",
        "hinge": "hanging",
        "pivot": ORIGIN,
        "arm": 250.0,
        "rest_angle": 0.0,
        "travel_angle": 30.0,
        "pad_y": 50.0,
        "pad_width": 60.0,
        "pad_height": 60.0,
    }
    return Pedal(**(plain | changes))


def place(of, rework=AS_FOUND, travel=0.0):
    return pad_at(of, rework, NO_BOX, travel).centre[0]


def test_hanging_pad_hangs_below_its_pivot():
    assert np.allclose(place(pedal()), [200, 50, 150])


def test_floor_pad_stands_above_its_pivot():
    assert np.allclose(place(pedal(hinge="floor", pivot=Point(x=200.0, y=0.0, z=20.0))), [200, 50, 270])


@pytest.mark.parametrize("hinge", ["hanging", "floor"])
def test_positive_rest_angle_puts_the_pad_nearer_the_driver(hinge):
    assert place(pedal(hinge=hinge, rest_angle=30.0))[0] == pytest.approx(200 + 125)


@pytest.mark.parametrize("hinge", ["hanging", "floor"])
def test_pressing_sends_the_pad_forward(hinge):
    assert place(pedal(hinge=hinge), travel=1.0)[0] == pytest.approx(200 - 125)


@pytest.mark.parametrize("hinge", ["hanging", "floor"])
def test_stand_off_comes_toward_the_driver(hinge):
    moved = place(pedal(hinge=hinge), PedalRework(stand_off=40.0)) - place(pedal(hinge=hinge))
    assert np.allclose(moved, [40, 0, 0])


@pytest.mark.parametrize(("hinge", "up"), [("hanging", -1), ("floor", 1)])
def test_longer_arm_goes_on_along_the_arm(hinge, up):
    moved = place(pedal(hinge=hinge), PedalRework(longer_arm=20.0)) - place(pedal(hinge=hinge))
    assert np.allclose(moved, [0, 0, 20 * up])


@pytest.mark.parametrize("hinge", ["hanging", "floor"])
def test_positive_tilt_leans_the_top_of_the_pad_rearward(hinge):
    tilted = pedal(hinge=hinge, pad_tilt=10.0)
    bottom, top = pad_edges(pad_at(tilted, PedalRework(), NO_BOX, 0.0), tilted)
    assert top[0, 0] > bottom[0, 0]
    assert top[0, 2] > bottom[0, 2]


def test_straight_travel_and_angle_agree():
    by_angle = pedal(travel_angle=20.0)
    chord = float(pad_chord(motion(by_angle, PedalRework()))[0])
    assert chord == pytest.approx(2 * 250 * np.sin(np.radians(10)))
    by_tape = pedal(travel_angle=None, pad_travel=chord)
    assert travel_angle(by_tape)[0] == pytest.approx(20.0)


def test_box_carries_the_pad_along():
    assert pad_at(pedal(), PedalRework(), np.array([30.0]), 0.0).centre[0, 0] == pytest.approx(230)
