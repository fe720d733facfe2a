"""Lines and outlines of very many points: the same answers as piece by piece, and only the hull counts."""

from itertools import pairwise

import numpy as np
import pytest
from shapely import MultiPoint

from fitcalc.geometry.hull import hull
from fitcalc.geometry.lines import behind_on_profile, from_segment, profile_points
from fitcalc.geometry.outlines import outlined
from fitcalc.geometry.surface import room_of_points, surface_room

RANDOM = np.random.default_rng(3)
XS = np.linspace(0.0, 1000.0, 400)
LINE = np.column_stack([XS, np.zeros_like(XS), 5.0 * RANDOM.random(400)])
POINTS = np.column_stack(
    [RANDOM.uniform(-50, 1050, 30), RANDOM.uniform(-9, 9, 30), RANDOM.uniform(-40, 60, 30)]
)
EXACT = {"rel": 1e-12, "abs": 1e-9}


def by_piece(points):
    """Distance from each point to the line, one piece after another."""
    flat = points * [1.0, 0.0, 1.0]
    return np.min([from_segment(flat, a[None], b[None]) for a, b in pairwise(LINE)], axis=0)


@pytest.mark.parametrize("cases", [1, 30])
def test_where_a_circle_meets_nothing_the_point_is_that_of_the_nearest_piece(cases):
    near, found = behind_on_profile(POINTS[:cases], np.zeros(cases), LINE)
    away = np.hypot(*(near - POINTS[:cases])[:, ::2].T)
    assert not found.any()
    assert away == pytest.approx(by_piece(POINTS)[:cases], **EXACT)
    assert list(near[:, 1]) == list(POINTS[:cases, 1])


@pytest.mark.parametrize("times", [1, 2_000])
def test_many_cases_take_the_line_in_runs_with_the_same_answers(times):
    centre, radius = np.tile(POINTS, (times, 1)), np.full(30 * times, 70.0)
    place, found = behind_on_profile(centre, radius, LINE)
    first, here = behind_on_profile(POINTS[:1], radius[:1], LINE)
    assert np.array_equal(place[:30], place[-30:])
    assert (place[0] == pytest.approx(first[0], **EXACT), found[0]) == (True, here[0])
    assert np.hypot(*(place - centre)[found][:, ::2].T) == pytest.approx(70.0)


def test_one_centre_may_have_many_radii():
    place, found = behind_on_profile(POINTS[:1], np.array([60.0, 70.0]), LINE)
    assert np.hypot(*(place - POINTS[:1])[found][:, ::2].T) == pytest.approx(np.array([60.0, 70.0])[found])


def test_room_to_a_surface_is_signed_distance_to_its_nearest_piece():
    room = room_of_points(POINTS, LINE, -1.0)
    above = POINTS[:, 2] > np.interp(POINTS[:, 0], LINE[:, 0], LINE[:, 2])
    over = (POINTS[:, 0] >= 0.0) & (POINTS[:, 0] <= 1000.0)
    assert room == pytest.approx(np.where(above | ~over, 1.0, -1.0) * by_piece(POINTS), **EXACT)


@pytest.mark.parametrize("together", [POINTS[:4], POINTS[:4].repeat(3, axis=0)])
def test_room_of_an_outline_to_points_that_stand_out(together):
    single = [surface_room(outlined(together[None, [at]]), LINE, -1.0)[0] for at in range(len(together))]
    assert surface_room(outlined(together[None]), LINE, -1.0)[0] <= min(single) + 1e-9


@pytest.mark.parametrize("count", [13, 500])
def test_a_hull_has_the_corners_that_another_library_finds(count):
    """Independent: shapely's convex hull."""
    corners = tuple(map(tuple, RANDOM.normal(0.0, 100.0, (count, 2)).tolist()))
    assert set(hull(corners)) == set(MultiPoint(corners).convex_hull.exterior.coords)


@pytest.mark.parametrize(
    ("corners", "left"),
    [
        (((1.0, 2.0),) * 20, {(1.0, 2.0)}),
        (tuple((float(at), 2.0 * at) for at in range(20)), {(0.0, 0.0), (19.0, 38.0)}),
        (((0.0, 0.0), (1.0, 1.0)) * 10, {(0.0, 0.0), (1.0, 1.0)}),
    ],
)
def test_the_hull_of_a_line_or_a_spot_is_its_ends(corners, left):
    assert set(hull(corners)) == left


def test_few_corners_and_such_as_differ_by_case_are_left_alone():
    few = ((0.0, 0.0), (1.0, 0.0), (0.5, 0.1), (0.0, 1.0))
    assert hull(few) is few
    several = tuple((np.array([1.0, 2.0]), float(at)) for at in range(20))
    assert hull(several) is several


def test_a_profile_is_made_once_and_can_not_be_changed():
    profile = ((0.0, 0.0), (1.0, 2.0))
    assert profile_points(profile) is profile_points(profile)
    with pytest.raises(ValueError, match="read-only"):
        profile_points(profile)[0, 0] = 3.0
