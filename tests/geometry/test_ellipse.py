"""An ellipse under a line, against shapely (independent) and by hand."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity

from fitcalc.geometry.ellipse import below_line, reach, touching_point
from fitcalc.geometry.side import point

AT = point(np.array([1400.0]), np.array([0.0]), np.array([700.0]))
LINE_FRONT, LINE_REAR = np.array([[860.0, 0.0, 765.0]]), np.array([[1650.0, 0.0, 1060.0]])


def test_circle_under_the_hoop_line():
    """Hoop tops (0, 1050) and (900, 720), helmet centre (260, 800), radius 130: 145.21287 - 130 mm.

    In this case the nose points to +x, so the line runs rear to front; turned round, the sense is the car's.
    """
    front, rear = np.array([[-900.0, 0.0, 720.0]]), np.array([[0.0, 0.0, 1050.0]])
    centre, half = np.array([[-260.0, 0.0, 800.0]]), np.array([130.0])
    assert below_line(centre, half, half, front, rear) == pytest.approx(15.21287, abs=1e-5)


@given(st.floats(100, 200), st.floats(100, 200), st.floats(-80, 80))
@settings(max_examples=60, deadline=None)
def test_reach_agrees_with_a_fine_polygon(half_length, half_height, tilt):
    """Independent: a circle of 4 x 256 sides stretched by shapely; its sides cut 0.001 mm off."""
    ring = affinity.scale(shapely.Point(0, 0).buffer(1.0, quad_segs=256), half_length, half_height)
    way = np.array([np.cos(np.radians(tilt)), 0.0, np.sin(np.radians(tilt))])
    corners = np.array(ring.exterior.coords)
    expected = np.max(corners @ way[[0, 2]])
    assert reach(np.array([half_length]), np.array([half_height]), way[None])[0] == pytest.approx(
        expected, abs=2e-3
    )


def test_room_agrees_with_a_polygon_under_a_line():
    """Independent: shapely's distance from a stretched circle to the line."""
    ring = affinity.scale(shapely.Point(1400, 700).buffer(1.0, quad_segs=256), 165.0, 132.0)
    line = shapely.LineString([(860, 765), (1650, 1060)])
    room = below_line(AT, np.array([165.0]), np.array([132.0]), LINE_FRONT, LINE_REAR)
    assert room[0] == pytest.approx(ring.distance(line), abs=2e-3)


def test_an_ellipse_through_the_line_is_negative_by_its_overhang():
    """Level line at z = 100, ellipse centre at 90, half height 30: 20 mm above it."""
    room = below_line(
        np.array([[0.0, 0.0, 90.0]]),
        np.array([50.0]),
        np.array([30.0]),
        np.array([[-500.0, 0, 100.0]]),
        np.array([[500.0, 0, 100.0]]),
    )
    assert room == pytest.approx(-20.0, abs=1e-9)


@pytest.mark.parametrize(("way", "expected"), [((0, 0, 1), (1400, 830)), ((1, 0, 0), (1565, 700))])
def test_touching_point(way, expected):
    found = touching_point(AT, np.array([165.0]), np.array([130.0]), np.array([way], dtype=float))
    assert found[0, [0, 2]] == pytest.approx(expected, abs=1e-9)
