"""Seat travel, recline and the hip point, by hand."""

import numpy as np
import pytest

from fitcalc.documents.fields import Point
from fitcalc.documents.setup import Setup
from fitcalc.posture.cases import spread, xyz
from fitcalc.posture.seat import back_angle, carried, cushion_angle, hip_point, shell, travel
from tests.posture.cars import car, links

FOUND = Setup()


def test_forward_travel_lessens_x():
    assert np.allclose(travel(car(), Setup(seat_travel=40.0)), [[-40.0, 0, 0]])


def test_sloping_rail_raises_the_seat_as_it_moves_forward():
    sloping = spread(car(), {"rails.angle": np.array([30.0])})
    assert np.allclose(travel(sloping, Setup(seat_travel=100.0)), [[-86.6025, 0, 50.0]], atol=1e-3)


def test_recline_turns_the_top_rearward_about_the_front_mounts():
    pivot = xyz(car().seat.mounts[0]) * [1, 0, 1]
    above = pivot + [[0, 0, 100.0]]
    moved = carried(above, car(), Setup(recline=90.0 / 3))
    assert np.allclose(moved - pivot, [[50.0, 0, 86.6025]], atol=1e-3)


def test_what_is_fixed_to_the_seat_goes_with_all_its_moves():
    """Lain back 30 deg about the front mounts, 100 above them comes 50 behind and 86.6 up; then 40 forward, 15 up."""
    level = spread(car(), {"rails.angle": np.array([0.0])})
    pivot = xyz(car().seat.mounts[0]) * [1, 0, 1]
    moved = carried(
        pivot + [[0, 70.0, 100.0]], level, Setup(seat_travel=40.0, seat_raise=15.0, recline=90.0 / 3)
    )
    assert np.allclose(moved - pivot, [[50.0 - 40.0, 70.0, 86.6025 + 15.0]], atol=1e-3)


def test_recline_adds_to_both_angles():
    more = Setup(recline=5.0)
    assert back_angle(car(), more)[0] == pytest.approx(back_angle(car(), FOUND)[0] + 5)
    assert cushion_angle(car(), more)[0] == pytest.approx(cushion_angle(car(), FOUND)[0] + 5)


def test_back_angle_is_that_of_junction_to_top():
    assert back_angle(car(), FOUND)[0] == pytest.approx(np.degrees(np.arctan2(440, 524)))


@pytest.mark.parametrize(
    "setup",
    [
        FOUND,
        Setup(seat_travel=60.0, recline=6.0, seat_raise=10.0),
        Setup(recline=6.0, cushion_insert=15.0, back_insert=25.0),
    ],
)
def test_hip_stands_off_both_surfaces(setup):
    """Distance of the hip from the lines of cushion and back is the body's own plus padding and insert, wherever the seat is."""
    body, padded = links(), car().seat
    under, behind = padded.cushion_padding + setup.cushion_insert, padded.back_padding + setup.back_insert
    hip = hip_point(car(), body, setup)[0]
    line = shell(car(), setup)[0]
    front, junction, top = line[0], line[3], line[-1]
    assert distance(hip, junction, front) == pytest.approx(body.hip_above_cushion[0] + under)
    assert distance(hip, junction, top) == pytest.approx(body.hip_ahead_of_back[0] + behind)


def test_measured_hip_point_overrides_and_moves_with_the_seat():
    measured = spread(car(), {"seat.h_point": Point(x=1200.0, y=0.0, z=150.0)})
    assert np.allclose(hip_point(measured, links(), Setup(seat_travel=20.0)), [[1180.0, 0, 150.0]])


def test_measured_hip_point_moves_by_the_insert():
    """An insert of 30 mm behind a back that leans 40.02 deg: along the level cushion 30 / cos(40.02) = 39.2 mm ahead."""
    level = {"seat.profile": ((-400.0, 0.0), (0.0, 0.0), (440.0, 524.0))}
    measured = spread(car(), level | {"seat.h_point": Point(x=1200.0, y=0.0, z=150.0)})
    assert np.allclose(
        hip_point(measured, links(), Setup(back_insert=30.0)), [[1160.826, 0, 150.0]], atol=2e-3
    )
    assert hip_point(measured, links(), Setup(cushion_insert=20.0))[0, 2] == pytest.approx(170.0)


def test_many_seat_positions_in_one_call():
    setup = spread(FOUND, {"seat_travel": np.array([0.0, 20.0, 40.0])})
    hips = hip_point(car(), links(), setup)
    assert hips.shape == (3, 3)
    assert np.allclose(np.diff(hips[:, 0]), -20.0)


def distance(point, start, end):
    along, to = (end - start)[[0, 2]], (point - start)[[0, 2]]
    return abs(along[0] * to[1] - along[1] * to[0]) / np.hypot(*along)


def test_one_mount_may_vary_while_the_others_stand():
    varied = spread(car(), {"seat.mounts.0.x": np.array([925.0, 930.0, 935.0])})
    assert carried(np.zeros((1, 3)), varied, Setup(recline=3.0)).shape == (3, 3)
