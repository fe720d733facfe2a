"""A circle laid into a seat: by hand, and by the distances that shapely measures (independent)."""

import numpy as np
import pytest
import shapely
from hypothesis import given
from hypothesis import strategies as st

from fitcalc.geometry.cradle import leaning_on, resting_in
from fitcalc.geometry.side import point

RADIUS = np.array([100.0])
NEAR = 1e-5


def line(*pairs):
    xz = np.array(pairs, dtype=float)
    return point(xz[:, 0], np.zeros(len(xz)), xz[:, 1])[None]


def test_circle_in_a_square_corner():
    hip = resting_in(line((-400, 0), (0, 0)), line((0, 0), (0, 500)), RADIUS, RADIUS)
    assert hip[0] == pytest.approx([-100.0, 0.0, 100.0], abs=NEAR)


def test_padding_lifts_and_pushes_the_circle():
    hip = resting_in(line((-400, 0), (0, 0)), line((0, 0), (0, 500)), RADIUS + 20, RADIUS + 15)
    assert hip[0] == pytest.approx([-115.0, 0.0, 120.0], abs=NEAR)


@given(st.floats(5, 25), st.floats(5, 25), st.floats(10, 40), st.floats(10, 40))
def test_circle_touches_a_hollow_seat_and_crosses_nothing(front, rear, low, high):
    """A cushion that rises more toward its front and a back that leans less toward its top, as hollow seats have."""
    slope, lean = sorted((front, rear)), sorted((low, high))
    cushion = [
        (-400.0, 200 * sum(np.tan(np.radians(slope)))),
        (-200.0, 200 * np.tan(np.radians(slope[0]))),
        (0.0, 0.0),
    ]
    x = np.cumsum(200 * np.tan(np.radians(lean[::-1])))
    back = [(0.0, 0.0), (x[0], 200.0), (x[1], 400.0)]
    hip = resting_in(line(*cushion), line(*back), RADIUS, RADIUS)[0]
    gaps = [shapely.LineString(part).distance(shapely.Point(hip[0], hip[2])) for part in (cushion, back)]
    assert gaps == pytest.approx([100.0, 100.0], abs=NEAR)


def test_circle_that_rests_on_an_edge_is_held_off_the_straight_lines():
    """A gutter before the back: padded by 60 and 30, the circle bridges it and lies on the junction's edge alone.

    No place touches a piece of both, so it is held off the lines from junction to front and to top.
    """
    cushion, back = [(-284.0, 23.0), (-18.0, -55.0), (0.0, 0.0)], [(0.0, 0.0), (462.0, 613.0)]
    hip = resting_in(line(*cushion), line(*back), RADIUS + 60, RADIUS + 30)[0]
    place = shapely.Point(hip[0], hip[2])
    chords = (shapely.LineString([cushion[0], cushion[-1]]), shapely.LineString(back))
    assert [chord.distance(place) for chord in chords] == pytest.approx([160.0, 130.0], abs=NEAR)
    assert shapely.LineString(cushion).distance(place) > 160.0


@pytest.mark.parametrize("lean", [0.0, 20.0, 45.0])
def test_torso_lies_along_a_straight_back(lean):
    back = line((0, 0), (700 * np.tan(np.radians(lean)), 700))
    hip = resting_in(line((-400, 0), (0, 0)), back, RADIUS, RADIUS)
    assert leaning_on(hip, 490.0, back, RADIUS) == pytest.approx(lean, abs=NEAR)


def test_a_seat_elsewhere_holds_the_circle_in_the_same_way():
    """Seat and back moved together; the back's upper piece leans away, so that the lower one is not met."""
    away = np.array([300.0, 0.0, 80.0])
    cushion, back = line((-400, 0), (0, 0)), line((0, 0), (0, 200), (400, 500))
    here = resting_in(cushion, back, RADIUS, RADIUS)
    there = resting_in(cushion + away, back + away, RADIUS, RADIUS)
    assert there == pytest.approx(here + away, abs=NEAR)
    leans = leaning_on(here, 490.0, back, RADIUS), leaning_on(there, 490.0, back + away, RADIUS)
    assert leans[0] == pytest.approx(leans[1], abs=NEAR)
    assert leans[0] > 5.0


@given(st.floats(0, 80), st.floats(250, 500))
def test_shoulder_circle_touches_the_back_first_where_shapely_says(bulge, height):
    """A back with a corner that stands toward the driver; leaning further by 0.01 deg would cross it."""
    pairs = [(0.0, 0.0), (0.4 * height - bulge, height), (400.0, 900.0)]
    hip = point(np.array([-120.0]), np.array([0.0]), np.array([100.0]))
    lean = leaning_on(hip, 490.0, line(*pairs), RADIUS)
    gaps = []
    for angle in (lean, lean + 0.01, lean - 0.01):
        turned = np.radians(angle[0])
        shoulder = shapely.Point(hip[0, 0] + 490 * np.sin(turned), hip[0, 2] + 490 * np.cos(turned))
        gaps.append(shapely.LineString(pairs).distance(shoulder))
    assert gaps[0] == pytest.approx(100.0, abs=NEAR)
    assert gaps[1] < gaps[0] < gaps[2]


def test_shoulder_circle_meets_a_corner_by_hand():
    """A corner 490 mm from the hip at 30 deg, all else behind it: an isosceles triangle, 2 asin(50 / 490) short of 30."""
    edge = (490 * np.sin(np.radians(30)), 490 * np.cos(np.radians(30)))
    lean = leaning_on(np.zeros((1, 3)), 490.0, line((800, 0), edge, (800, 1000)), RADIUS)
    assert lean == pytest.approx(30 - 2 * np.degrees(np.arcsin(50 / 490)), abs=NEAR)
