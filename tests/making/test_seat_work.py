"""The moved seat on its mounts: where the old holes end, what a bracket must take, what holds."""

import numpy as np
import pytest

from fitcalc.documents.setup import Setup
from fitcalc.making.seat_levels import road_seat_level, seat_levels
from fitcalc.making.seat_work import (
    Carried,
    empty_seat,
    hold,
    leans_on_seat,
    point_safety,
    seat_mounts,
    with_driver,
)
from fitcalc.posture.cases import spread
from tests.checks.cockpits import car

REARWARD = (20.0, 0.0, 0.0)
LOAD = Carried(np.array([70.0]), np.array([[1100.0, 0.0, 255.0]]))


def mounts(setup, **values):
    return seat_mounts(car(values), setup)


@pytest.mark.parametrize(
    ("kind", "setup", "wanted"),
    [
        ("drilled", Setup(seat_travel=40.0), False),
        ("drilled", Setup(seat_travel=50.0), True),
        ("drilled", Setup(seat_travel=80.0), True),
        ("continuous", Setup(seat_travel=50.0), False),
        ("continuous", Setup(seat_travel=-60.0), True),
        ("fixed", Setup(seat_travel=20.0), True),
        ("fixed", Setup(), False),
        ("drilled", Setup(seat_raise=10.0), True),
        ("continuous", Setup(recline=2.0), True),
    ],
)
def test_bracket_is_needed_where_the_old_holes_end(kind, setup, wanted):
    assert bool(mounts(setup, **{"rails.kind": kind}).bracketed[0]) is wanted


@pytest.mark.parametrize(
    ("setup", "expected"),
    [
        (Setup(seat_travel=80.0), (-20.0, 0.0, 0.0)),
        (Setup(seat_travel=-50.0), (10.0, 0.0, 0.0)),
        (Setup(seat_travel=20.0, seat_raise=15.0), (0.0, 0.0, 15.0)),
        (Setup(seat_travel=20.0), (0.0, 0.0, 0.0)),
    ],
)
def test_bracket_bridges_from_the_nearest_hole(setup, expected):
    """Holes every 20 mm, 60 forward and 40 rearward; x is rearward."""
    offset = mounts(setup).offset
    assert offset[0] == pytest.approx(np.tile(expected, (4, 1)))
    assert mounts(setup).reach == pytest.approx(np.linalg.norm(expected))


def test_seat_between_symmetric_lines_has_its_centre_there():
    values = {"seat.profile": [[-400.0, 0.0], [0.0, 0.0], [0.0, 400.0]], "seat.mass": 6.0}
    seat = empty_seat(car(values), Setup())
    assert seat.centre[0] == pytest.approx((1257.0 - 100.0, 0.0, 30.0 + 100.0))
    assert seat.mass == 6.0


def test_driver_and_seat_balance_about_their_centre():
    seat = Carried(np.array([10.0]), np.array([[1200.0, 0.0, 100.0]]))
    both = with_driver(seat, np.array([70.0]), np.array([[1120.0, 0.0, 260.0]]))
    assert both.mass == 80.0
    assert both.centre[0] == pytest.approx((1130.0, 0.0, 240.0))


def test_rearward_load_by_hand():
    """70 kg at 20 g, 250 above mounts 350 apart: rear pressed, front pair pulled with 13729 x 250 / 350 N."""
    held = hold(mounts(Setup()), LOAD, REARWARD)
    force = 70.0 * 20.0 * 9.80665
    assert held.seat.tension[0, :2] == pytest.approx(np.full(2, force * 250.0 / 350.0 / 2.0))
    assert held.seat.shear[0] == pytest.approx(np.full(4, force / 4.0))
    pulled, sheared = force * 250.0 / 700.0, force / 4.0
    assert 1.0 / held.safety == pytest.approx(sheared / 14054.4 + pulled / (1.4 * 21081.6))


def test_raised_bracket_prys_on_the_bolts_and_needs_thickness():
    """Shear of a quarter of 13729 N on a bracket 20 mm high and 40 mm wide of 235 MPa: 6 F a / (b t2)."""
    flat, raised = (hold(mounts(setup), LOAD, REARWARD) for setup in (Setup(), Setup(seat_raise=20.0)))
    assert raised.safety < flat.safety
    assert flat.thickness == 0.0
    quarter = 70.0 * 20.0 * 9.80665 / 4.0
    assert raised.thickness == pytest.approx(np.sqrt(6.0 * quarter * 20.0 / (40.0 * 235.0)))


def test_cases_are_independent():
    travels = np.array([0.0, 50.0, 90.0])
    together = seat_mounts(car(), spread(Setup(), {"seat_travel": travels}))
    for at, each in enumerate(travels):
        alone = mounts(Setup(seat_travel=float(each)))
        assert together.offset[at] == pytest.approx(alone.offset[0])
        assert hold(together, LOAD, REARWARD).safety[at] == pytest.approx(
            hold(alone, LOAD, REARWARD).safety[0]
        )


def test_straps_hold_the_driver_forward_and_the_seat_rearward():
    aircraft = next(level for level in seat_levels() if level.id == "aircraft dynamic")
    assert [leans_on_seat(aircraft, way) for way in ("forward", "downward")] == [False, True]
    assert not leans_on_seat(road_seat_level(), "rearward")


def test_one_bolt_at_the_club_point_load():
    """15 kN across an M8 8.8 with the thread in shear: 0.6 x 800 x 36.6 / 1.25 N."""
    club = next(level for level in seat_levels() if level.id == "club seat point")
    assert point_safety(club) == pytest.approx(14054.4 / 15000.0)
