"""Where anchors may be: set there, the figure meets its bound; and hand-worked places."""

import numpy as np
import pytest
from cockpits import car, seated, value, with_links, with_trunk

from fitcalc.checks.check import Check
from fitcalc.checks.harness import harness_figures
from fitcalc.checks.strap_windows import Window, shared_window, windows
from tests.checks.cockpits import by_id

MM = np.array([1.0])


def window_on(case, id, low, high):
    figure = by_id(harness_figures(case))[id]
    bounds = tuple(None if bound is None else np.array([float(bound)]) for bound in (low, high))
    check = Check(id, figure, *bounds, None, None, "ours", "row", None, "", "")
    return next(iter(windows([check], case.car.harness, case))).must


def moved(path, axis, place, **values):
    data = {f"{path}.{axis}": place, **values}
    return harness_figures(seated(data))


@pytest.mark.parametrize(
    ("id", "path", "low", "high"),
    [
        ("harness.shoulder_left.side_angle", "harness.shoulder_left", 0, 20),
        ("harness.shoulder_left.rim_angle", "harness.shoulder_left", 0, 45),
        ("harness.shoulder_left.spine_load", "harness.shoulder_left", -400, 100),
        ("harness.lap_left.side_angle", "harness.lap_left", 50, 70),
    ],
)
def test_an_anchor_at_the_windows_ends_meets_the_bounds(id, path, low, high):
    for window in window_on(seated(), id, low, high):
        ends = [float(window.low[0]), float(window.high[0])]
        found = [value(moved(path, window.axis, end), id) for end in ends]
        assert sorted(found) == pytest.approx([low, high], abs=1e-3)


@pytest.mark.parametrize(("low", "high"), [(0, 20), (-10, None), (None, 5)])
def test_crotch_anchors_by_hand(low, high):
    """Groin at 1200, 105, anchors 100 lower: 0 deg at 1200, 20 deg at 1236.397, -10 deg at 1182.367, 5 at 1208.749."""
    case = with_links(seated(), groin_ahead_of_hip=0.0, groin_above_hip=-45.0)
    case = with_trunk(case, hip=(1200, 0, 150), recline=0.0)
    (window,) = window_on(case, "harness.crotch.side_angle", low, high)
    by_hand = {0: 1200.0, 20: 1236.397, -10: 1182.367, 5: 1208.749}
    z = 105 - car().harness.crotch[0].z
    for end, bound in ((window.low, low), (window.high, high)):
        wanted = None if bound is None else 1200 + (by_hand[bound] - 1200) * z / 100
        assert end is None if wanted is None else end[0] == pytest.approx(wanted, abs=1e-3)


def test_lap_anchor_straight_below_has_no_height_that_changes_its_angle():
    """Contact and anchor at 1200: the strap hangs straight down whatever its height."""
    case = with_links(seated({"harness.lap_left.x": 1200.0}), lap_ahead_of_hip=0.0, lap_above_hip=50.0)
    case = with_trunk(case, hip=(1200, 0, 150), recline=0.0)
    assert [window.axis for window in window_on(case, "harness.lap_left.side_angle", 45, 80)] == ["x"]


@pytest.mark.parametrize(("present", "move"), [(480, 20), (500, 0), (510, 0), (530, -10)])
def test_the_shortest_move_into_a_window(present, move):
    assert Window("z", "anchor", 500 * MM, 520 * MM, present * MM).move[0] == move


def test_limits_that_contradict_leave_no_place():
    one = Window("z", "anchor", 500 * MM, 520 * MM, 510 * MM)
    other = Window("z", "anchor", 530 * MM, None, 510 * MM)
    both = shared_window([one, other])
    assert both.is_empty[0]
    assert both.move[0] == 15


def test_the_window_of_all_is_the_narrowest():
    open_above = Window("z", "anchor", 505 * MM, None, 510 * MM)
    shared = shared_window([Window("z", "anchor", 500 * MM, 520 * MM, 510 * MM), open_above])
    assert (shared.low[0], shared.high[0]) == (505, 520)
    assert shared_window([]) is None


@pytest.mark.parametrize(
    ("points", "ys", "id"),
    [(5, (0.0,), "harness.crotch.chest_line_angle"), (7, (-50.0, 0.0, 50.0), "harness.crotch.side_angle")],
)
def test_window_of_one_and_of_three_crotch_anchors(points, ys, id):
    """Moved to either end of their window the anchors meet its bound; three stand askew, the outer two decide."""
    askew = {-50.0: -20.0, 0.0: 35.0, 50.0: 0.0}
    anchors = tuple({"x": 1100.0 + askew[y], "y": y, "z": 5.0} for y in ys)
    (window,) = window_on(seated({"harness.points": points, "harness.crotch": anchors}), id, -5, 15)
    for end in (window.low, window.high):
        shift = float(end[0] - window.present[0])
        moved = tuple({**each, "x": each["x"] + shift} for each in anchors)
        found = value(harness_figures(seated({"harness.points": points, "harness.crotch": moved})), id)
        assert min(abs(found + 5), abs(found - 15)) == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize(("low", "high"), [(0, 20), (None, 10)])
def test_a_single_crotch_anchor_at_the_windows_ends_meets_the_bounds(low, high):
    def five_points(x):
        return seated({"harness.points": 5, "harness.crotch": ({"x": x, "y": 0.0, "z": 10.0},)})

    id = "harness.crotch.chest_line_angle"
    (window,) = window_on(five_points(1000.0), id, low, high)
    ends = [end for end in (window.low, window.high) if end is not None]
    found = [value(harness_figures(five_points(float(end[0]))), id) for end in ends]
    assert sorted(found) == pytest.approx([bound for bound in (low, high) if bound is not None], abs=1e-3)


@pytest.mark.parametrize(("beyond", "furthest"), [((-400, 1500), (-400, 1000)), ((-1500, 100), (-1000, 100))])
def test_a_spine_load_beyond_the_strap_s_own_pull_is_met_straight_along_the_spine(beyond, furthest):
    """1500 N per kN can never be: as far as 1000 goes, straight along the spine, up or down."""
    windows = [
        window_on(seated(), "harness.shoulder_left.spine_load", *ends)[0] for ends in (beyond, furthest)
    ]
    assert windows[0].low == pytest.approx(windows[1].low)
    assert windows[0].high == pytest.approx(windows[1].high)
