"""The shoe on the pad in its contact states."""

from dataclasses import replace

import numpy as np
import pytest

from fitcalc.documents.fields import SideMark
from fitcalc.documents.setup import PedalRework, Setup
from fitcalc.geometry.degrees import length
from fitcalc.geometry.side import across
from fitcalc.posture.cases import spread
from fitcalc.posture.foot import collar_height, heel_down, heel_to_ball, planted_slide, sole_flat
from fitcalc.posture.pads import Pad, pad_at
from fitcalc.posture.sit import foot_pressed, sit
from tests.posture.cars import car, links, of_stature


def upright_pad(x, z):
    centre = np.array([[x, 100.0, z]])
    ahead = np.array([[1.0, 0, 0]])
    up = np.array([[0, 0, 1.0]])
    return Pad(centre, centre, -up, up, ahead, np.zeros(1))


def test_heel_on_the_floor_with_the_ball_on_the_pad():
    foot = heel_down(upright_pad(250, 150), links(), car())
    assert foot.heel[0, 2] == pytest.approx(0)
    assert foot.heel[0, 0] > 250
    assert np.allclose(foot.ball, [[250, 100, 150]])
    assert length(foot.ball - foot.heel)[0] == pytest.approx(heel_to_ball(links())[0])
    assert foot.lift[0] == 0


def test_pad_too_high_says_by_how_much():
    span = heel_to_ball(links())[0]
    foot = heel_down(upright_pad(250, span + 30), links(), car())
    assert foot.lift[0] == pytest.approx(30)


def test_sole_flat_clears_the_floor_only_when_the_pad_is_high():
    span = heel_to_ball(links())[0]
    assert sole_flat(upright_pad(250, span + 5), links(), car())[1][0]
    assert not sole_flat(upright_pad(250, span - 5), links(), car())[1][0]


def test_sole_flat_on_a_pad_that_leans_rearward_keeps_the_back_of_the_shoe_off_the_floor():
    """Leaning 20 deg rearward the collar lies lower than the heel, by its height times sin 20."""
    body, c, s = links(), np.cos(np.radians(20)), np.sin(np.radians(20))
    heel_clears = heel_to_ball(body)[0] * c
    collar_clears = heel_clears + collar_height(body)[0] * s
    leaning = {
        z: replace(upright_pad(250, z), up=np.array([[s, 0, c]]))
        for z in (collar_clears - 2, collar_clears + 2)
    }
    assert collar_clears - 2 > heel_clears
    assert [bool(sole_flat(pad, body, car())[1][0]) for pad in leaning.values()] == [False, True]


def test_no_shoe_stands_in_the_floor_whatever_the_height_of_the_pedals():
    """A pedal box lifted mm by mm, pads leaning 12 to 24 deg rearward: at rest and pressed the whole shoe stays above."""
    rise = np.linspace(-40.0, 80.0, 121)
    chassis = car("student")
    values = {
        f"pedals.{name}.pivot.z": getattr(chassis.pedals, name).pivot.z + rise
        for name in ("brake", "throttle")
    }
    lean = {f"pedals.{name}.rest_angle": np.full(121, 24.0) for name in ("brake", "throttle")}
    sitting = sit(spread(chassis, values | lean), links(), Setup())
    for worked in sitting.pedals.values():
        for foot in (worked.rest.foot, worked.full.foot):
            back = foot.heel + across(foot.sole) * collar_height(links())[:, None]
            assert min(foot.heel[:, 2].min(), back[:, 2].min()) > -1e-6


def test_ankle_is_on_the_drivers_side_of_the_sole():
    flat, _ = sole_flat(upright_pad(250, 260), links(), car())
    assert flat.ankle[0, 0] > 250


def test_planted_heel_lets_the_ball_slide_down_the_pad():
    rest = heel_down(upright_pad(250, 170), links(), car())
    away = upright_pad(220, 170)
    slide = planted_slide(rest, away, links())
    pressed = heel_down(away, links(), car(), slide)
    assert np.allclose(pressed.heel, rest.heel)
    assert pressed.ball[0, 0] == pytest.approx(220)
    assert pressed.slide[0] == pytest.approx(slide[0])
    assert slide[0] < 0


def test_throttle_foot_moves_without_a_jump():
    """The heel stays until the ball is at the pad's edge and then slides: no step between neighbouring places."""
    pedal, body = car().pedals.throttle, links("otto")
    rest = heel_down(pad_at(pedal, PedalRework(), np.zeros(1), 0.0), body, car())
    heels = []
    for travel in np.linspace(0, 1, 101):
        pad = pad_at(pedal, PedalRework(), np.zeros(1), travel)
        heels.append(foot_pressed("throttle", rest, pad, pedal, body, car()).heel[0, 0])
    assert np.abs(np.diff(heels)).max() < 2.0
    assert heels[10] == pytest.approx(heels[0])


def test_heel_rest_holds_the_heel_back():
    held = spread(car(), {"footwell.heel_rest": SideMark(x=500.0, z=0.0)})
    foot = heel_down(upright_pad(250, 150), links(), held)
    assert np.allclose(foot.heel, [[500, 100, 0]])
    assert foot.lift[0] > 0


@pytest.mark.parametrize("name", ["brake", "throttle"])
def test_released_pedals_are_met_with_the_heel_down(name):
    at = sit(car(), links(), Setup(seat_travel=60.0)).pedals[name]
    assert at.rest.foot.grounded[0]


def brake_at(stand_offs, stature=1660.0):
    """The brake of the hillclimb car with bars of these lengths, seat forward."""
    setup = spread(Setup(seat_travel=60.0), {"brake.stand_off": np.asarray(stand_offs)})
    return sit(car(), of_stature(stature), setup).pedals["brake"]


def test_a_pad_brought_nearer_bends_the_knee_ever_more():
    worked = brake_at(np.arange(0.0, 81.0))
    for leg in (worked.rest, worked.full):
        reached = leg.knee_angle[leg.shortfall == 0.0]
        assert np.all(np.diff(reached) < 0.0)


def test_no_resting_sole_stands_steeper_than_a_low_driver_s():
    """73.4 deg is the shoe plane at seat height 0 (SAE J4004); the ball sinks by 16.5 mm at most on a pad of 66 mm."""
    foot = brake_at(np.arange(0.0, 81.0), stature=1550.0).rest.foot
    pitch = np.degrees(np.arctan2(foot.sole[:, 2], -foot.sole[:, 0]))
    sunk = foot.slide < -0.01
    assert sunk.any()
    assert np.all(pitch < 73.5)
    assert pitch[sunk] == pytest.approx(73.4, abs=0.1)
    assert np.all(foot.slide >= -16.51)


@pytest.mark.parametrize(
    ("chassis", "name"),
    [(each, name) for each in ("hillclimb", "student", "upright") for name in car(each).fitted_pedals()],
)
def test_no_knee_jumps_as_a_pad_comes_nearer(chassis, name):
    """2 mm of bar turn a knee that is not near straight by less than 3 deg, whatever the foot does meanwhile."""
    setup = spread(Setup(), {f"{name}.stand_off": np.arange(0.0, 101.0, 2.0)})
    worked = sit(car(chassis), of_stature(1700.0), setup).pedals[name]
    for leg in (worked.rest, worked.full):
        knees = leg.knee_angle[leg.knee_angle < 160.0]
        assert np.all(np.diff(knees) < 0.0)
        assert np.all(np.diff(knees) > -3.0)


@pytest.mark.parametrize(("lift", "slide"), [(0.0, -10.0), (5.0, 0.0)])
def test_a_pressed_ball_stays_where_it_rested_unless_it_never_reached(lift, slide):
    pedal = car().pedals.brake
    away = upright_pad(150, 150)
    rest = replace(
        heel_down(upright_pad(250, 160), links(), car()), slide=np.array([-10.0]), lift=np.array([lift])
    )
    assert foot_pressed("brake", rest, away, pedal, links(), car()).slide[0] == pytest.approx(slide)
