"""Gaps between outlines, against shapely (independent) and cases worked by hand."""

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from fitcalc.geometry.nearest import nearest_points
from fitcalc.geometry.outlines import apart, backed, clearance, outlined, path_distance
from fitcalc.geometry.side import point
from fitcalc.geometry.surface import surface_room

NEAR = 1e-9
"""mm; rounding of coordinates of a few metres."""
numbers = st.integers(-300, 300).map(float)
corner = st.tuples(numbers, numbers)


def outline(*pairs):
    xz = np.array(pairs, dtype=float)
    return point(xz[:, 0], np.zeros(len(xz)), xz[:, 1])[None]


def hull(pairs):
    shape = shapely.MultiPoint(pairs).convex_hull
    return outline(*shape.exterior.coords[:-1]) if shape.geom_type == "Polygon" else None


shapes = st.lists(corner, min_size=5, max_size=9).map(hull).filter(lambda shape: shape is not None)


def polygon(shape):
    return shapely.MultiPoint(shape[0][:, [0, 2]]).convex_hull


def test_square_to_triangle_is_the_3_4_5_diagonal():
    """Nearest corners (1, 1) and (4, 5)."""
    square, triangle = outline((0, 0), (1, 0), (1, 1), (0, 1)), outline((4, 5), (8, 5), (8, 9))
    assert clearance(square, triangle) == pytest.approx(5.0, abs=NEAR)


def test_overlap_is_the_least_way_out():
    """A 100 mm square, another 10 mm into its right side and 40 mm into its top: out by 10 mm."""
    a, b = (
        outline((0, 0), (100, 0), (100, 100), (0, 100)),
        outline((90, 60), (200, 60), (200, 200), (90, 200)),
    )
    assert clearance(a, b) == pytest.approx(-10.0, abs=NEAR)


def test_point_beyond_the_end_of_a_line_is_not_on_it():
    assert clearance(outline((0, 0), (30, 40)), outline((60, 80))) == pytest.approx(50.0, abs=NEAR)


def test_four_corners_count_in_any_order():
    crossed, square = outline((0, 0), (10, 10), (10, 0), (0, 10)), outline((0, 0), (10, 0), (10, 10), (0, 10))
    probe = outline((14, 5))
    assert clearance(crossed, probe) == clearance(square, probe) == pytest.approx(4.0, abs=NEAR)


@given(shapes, shapes)
@settings(max_examples=150, deadline=None)
def test_gap_agrees_with_shapely(a, b):
    """Independent: shapely's distance, and its overlap test."""
    ours, theirs = clearance(a, b)[0], polygon(a).distance(polygon(b))
    assert max(ours, 0.0) == pytest.approx(theirs, abs=1e-7)
    assert (ours < -1e-7) <= polygon(a).intersects(polygon(b))


@given(shapes, shapes)
@settings(max_examples=100, deadline=None)
def test_moving_out_by_the_depth_parts_two_outlines(a, b):
    depth = np.minimum(clearance(a, b), 0.0)[0]
    turns = np.radians(np.arange(0, 360, 1.0))
    away = (-depth) * 1.001 * point(np.cos(turns), 0 * turns, np.sin(turns))
    assert np.max(clearance(a + away[:, None], b)) >= 0.003 * depth - 1e-6


@given(shapes, shapes, st.floats(1.0, 2.0))
@settings(max_examples=100, deadline=None)
def test_inflating_an_outline_never_adds_room(a, b, size):
    centre = b.mean(axis=1, keepdims=True)
    assert clearance(a, centre + size * (b - centre))[0] <= clearance(a, b)[0] + 1e-6


@given(shapes, shapes)
@settings(max_examples=100, deadline=None)
def test_nearest_points_lie_the_gap_apart(a, b):
    first, last = nearest_points(a, b)
    gap = clearance(a, b)[0]
    if gap > 0:
        assert np.linalg.norm(last - first) == pytest.approx(gap, abs=1e-6)


@pytest.mark.parametrize("turned_round", [False, True])
def test_each_of_two_nearest_points_keeps_its_own_side_of_the_car(turned_round):
    """A corner of the one over a side of the other: y = 7 and y = -3, whichever comes first."""
    peak, flat = outline((0, 50), (10, 60), (-10, 60)), outline((-40, 0), (40, 0), (40, -20), (-40, -20))
    peak[..., 1], flat[..., 1] = 7.0, -3.0
    pair = nearest_points(flat, peak)[::-1] if turned_round else nearest_points(peak, flat)
    assert np.concatenate(pair) == pytest.approx(np.array([[0.0, 7.0, 50.0], [0.0, -3.0, 0.0]]), abs=NEAR)


def test_gaps_below_a_millimetre_add_like_any_others():
    """0.3 in side view and 0.4 across: 0.5 straight."""
    ends = (np.array([0.0]), np.array([10.4])), (np.array([10.0]), np.array([20.0]))
    assert apart(np.array([0.3]), *ends) == pytest.approx(0.5)


def test_a_path_sees_what_lies_between_its_places():
    """A 10 mm square from x = 0 to x = 100; a point at (55, 13) is passed 3 mm away, 40 mm from either place."""
    square = outline((0, 0), (10, 0), (10, 10), (0, 10))
    places = np.stack([square, square + np.array([100.0, 0.0, 0.0])], axis=1)
    assert path_distance(places, outline((55, 13))) == pytest.approx(3.0, abs=NEAR)


@pytest.mark.parametrize(
    ("side", "low", "high", "expected"),
    [
        (30.0, (0.0, 140.0), (100.0, 200.0), 50.0),
        (30.0, (0.0, 50.0), (100.0, 200.0), 30.0),
        (-5.0, (0.0, 107.0), (100.0, 200.0), 7.0),
        (-5.0, (0.0, 98.0), (100.0, 200.0), -2.0),
        (-5.0, (0.0, 50.0), (100.0, 200.0), -5.0),
    ],
)
def test_gap_in_space_of_outlines_drawn_out_across_the_car(side, low, high, expected):
    assert apart(np.array([side]), low, high) == pytest.approx(expected, abs=NEAR)


def test_a_line_is_filled_up_behind():
    """A point 5 mm above a level roof is 5 mm inside what the roof is made of."""
    roof = backed(outline((0, 0), (100, 0)), np.array([0.0, 0.0, 500.0]))
    assert clearance(outline((50, 5)), roof[:, 0]) == pytest.approx(-5.0, abs=NEAR)


ROOF = point(np.array([-900.0, -100.0, 120.0, 900.0]), np.zeros(4), np.array([250.0, 40.0, 90.0, 260.0]))
SOLID_ROOF = shapely.Polygon([*ROOF[:, [0, 2]], (900.0, 4000.0), (-900.0, 4000.0)])


@given(shapes)
@settings(max_examples=150, deadline=None)
def test_room_under_a_roof_agrees_with_shapely(shape):
    """Independent: distance to a polygon of all that is above the roof, whose lip hangs down in the middle."""
    ours, ours_is_clear = (
        surface_room(outlined(shape), ROOF, 1.0)[0],
        not SOLID_ROOF.intersects(polygon(shape)),
    )
    assert max(ours, 0.0) == pytest.approx(polygon(shape).distance(SOLID_ROOF), abs=1e-6)
    assert ours_is_clear == (ours > 0)


@pytest.mark.parametrize(
    ("z", "solid", "expected"), [(30.0, 1.0, -30.0), (-30.0, 1.0, 30.0), (-30.0, -1.0, -30.0)]
)
def test_a_point_in_what_is_solid_is_negative_by_its_depth(z, solid, expected):
    level = outline((-500, 0), (500, 0))[0]
    assert surface_room(outlined(outline((10, z))), level, solid) == pytest.approx(expected, abs=NEAR)


def test_there_is_no_roof_beyond_its_end():
    """A point 30 mm behind the lip and 40 mm above it is 50 mm clear."""
    level = outline((-500, 0), (500, 0))[0]
    assert surface_room(outlined(outline((530, 40))), level, 1.0) == pytest.approx(50.0, abs=NEAR)
