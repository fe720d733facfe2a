"""The taut path against scipy's minimisation of length (independent), and against geometry done by hand.

The minimisation knows no tangents: a line in space crosses rays out of each roller, no nearer than the radius.
"""

import numpy as np
import pytest
from scipy.optimize import minimize, minimize_scalar

from fitcalc.geometry.taut import Roller, run_over, shared_drift, taut, through_segment

STEP = np.radians(5.0)
"""Most between rays; what the corners between them add stays below 0.05 mm on these sizes."""
SLOW = {"maxiter": 800, "ftol": 1e-9}


def at(*values):
    return np.array(values, dtype=float)


def circle(x, z, radius):
    return Roller(at([x, z]), at(radius))


def angle(vector):
    return np.arctan2(vector[1], vector[0])


def rays(centre, radius, first, last):
    """Rays out of a roller, from one normal to another, each with the least reach that the strap has along it.

    Held off by a trifle, the chords between the rays are as long as the arc that they stand for.
    """
    count = max(int(np.ceil((first - last) / STEP)), 1) + 1
    half = (first - last) / (count - 1) / 2
    normals = np.linspace(first, last, count)
    return [(centre, radius * half / np.sin(half), at(np.cos(a), np.sin(a))) for a in normals]


def shortest_by_scipy(fan, start, end):
    """Least length of a line in space from `start` across every ray to `end`."""
    centre, low, way = (np.array([ray[i] for ray in fan]) for i in range(3))
    count = len(fan)

    def length(unknown):
        middle = np.column_stack([centre + unknown[:count, None] * way, unknown[count:]])
        step = np.diff(np.vstack([start, middle, end]), axis=0)
        size = np.sqrt(np.sum(step * step, axis=1) + 1e-12)
        pull = step / size[:, None]
        force = pull[:-1] - pull[1:]
        return size.sum(), np.concatenate([np.sum(force[:, :2] * way, axis=1), force[:, 2]])

    guess = np.concatenate([low, np.linspace(start[2], end[2], count)])
    limits = [(value, None) for value in low] + [(None, None)] * count
    return minimize(length, guess, jac=True, method="L-BFGS-B", bounds=limits, options=SLOW).fun


def cases(count, seed):
    random = np.random.default_rng(seed)
    for _ in range(count):
        radius, recline = random.uniform(40, 120), random.uniform(10, 60)
        anchor = at(random.uniform(220, 500), random.uniform(-250, 150))
        guide = at(random.uniform(radius + 60, anchor[0] - 30), random.uniform(-80, 130))
        yield radius, recline, anchor, guide, random.uniform(8, 25), random.uniform(-90, 90)


def from_chest(radius, recline):
    normal = np.radians(180.0 - recline)
    return normal, at(radius * np.cos(normal), radius * np.sin(normal), 0.0)


@pytest.mark.parametrize("seed", range(4))
def test_shortest_over_the_shoulder_agrees_with_minimisation(seed):
    for radius, recline, anchor, _, _, drift in cases(63, seed):
        normal, start = from_chest(radius, recline)
        path = taut(at(90.0 - recline), circle(0, 0, radius), anchor[None])
        found = shortest_by_scipy(
            rays(at(0, 0), radius, normal, angle(anchor) + STEP), start, at(*anchor, drift)
        )
        assert np.hypot(path.length, drift)[0] == pytest.approx(found, abs=0.1)


@pytest.mark.parametrize("seed", range(4, 8))
def test_shortest_over_shoulder_and_guide_agrees_with_minimisation(seed):
    for radius, recline, anchor, guide, tube, drift in cases(63, seed):
        normal, start = from_chest(radius, recline)
        path = taut(at(90.0 - recline), circle(0, 0, radius), anchor[None], circle(*guide, tube))
        fan = rays(at(0, 0), radius, normal, max(angle(guide), angle(anchor)) + np.radians(40))
        if angle(anchor - guide) + STEP < angle(guide) + np.pi / 2:
            fan += rays(guide, tube, angle(guide) + np.pi / 2, angle(anchor - guide) + STEP)
        found = shortest_by_scipy(fan, start, at(*anchor, drift))
        assert np.hypot(path.length, drift)[0] == pytest.approx(found, abs=0.1)


def test_crossing_of_a_slot_agrees_with_minimisation():
    random = np.random.default_rng(8)
    for start, end, low, high in random.uniform(-300, 300, (100, 4, 3)):

        def length(share, low=low, high=high, start=start, end=end):
            gate = low + share * (high - low)
            return np.linalg.norm(gate - start) + np.linalg.norm(end - gate)

        gate = through_segment(start[None], end[None], low[None], high[None])[0]
        ours = np.linalg.norm(gate - start) + np.linalg.norm(end - gate)
        best = minimize_scalar(length, bounds=(0, 1), method="bounded", options={"xatol": 1e-9}).fun
        assert ours == pytest.approx(best, abs=0.1)


def test_quarter_turn_by_hand():
    """Straight up, over a roller of 100 mm, 300 mm level: a quarter circle and the run."""
    path = taut(at(90.0), circle(0, 0, 100), at([300.0, 100.0]))
    assert path.length == pytest.approx(50 * np.pi + 300)
    assert path.wrap == pytest.approx(90)
    assert path.leaves == pytest.approx(at([0.0, 100.0]))


def test_half_turn_round_a_guide_by_hand():
    """Level over two rollers of one size, then straight down: two quarter circles."""
    path = taut(at(90.0), circle(0, 0, 20), at([220.0, -150.0]), circle(200, 0, 20))
    assert path.guided[0]
    assert path.length == pytest.approx(20 * np.pi + 200 + 150)


def test_guide_below_the_strap_is_left_alone():
    free = taut(at(60.0), circle(0, 0, 80), at([300.0, 60.0]))
    clear = taut(at(60.0), circle(0, 0, 80), at([300.0, 60.0]), circle(150, -50, 20))
    assert not clear.guided[0]
    assert clear.length == pytest.approx(free.length)
    assert clear.first == pytest.approx(free.end)


@pytest.mark.parametrize("rise", [0.5, -0.5])
def test_guide_is_touched_as_soon_as_it_stands_in_the_way(rise):
    """Level over a roller of 100 mm; 100 mm on a guide's top stands 0.5 mm above that line, or below it."""
    path = taut(at(90.0), circle(0, 0, 100), at([200.0, 100.0]), circle(100, 80 + rise, 20))
    assert path.guided[0] == (rise > 0)
    assert (path.length[0] > 50 * np.pi + 200 + 1e-6) == (rise > 0)


def test_guide_that_the_anchor_lies_in_bends_nothing():
    """An anchor 0.5 mm inside the guide's wall: no strap leaves that guide for it."""
    path = taut(at(90.0), circle(0, 0, 100), at([200.0, 100.0]), circle(200, 80.5, 20))
    assert not path.guided[0]
    assert path.length[0] == pytest.approx(50 * np.pi + 200)


def test_strap_that_rises_more_steeply_than_it_arrives_leaves_at_once():
    """Level from the top of a roller of 100 mm to an anchor 40 mm higher and 30 mm behind: 3-4-5."""
    path = taut(at(0.0), circle(0, 0, 100), at([30.0, 140.0]))
    assert path.length == pytest.approx(50)
    assert path.wrap == 0


def test_unequal_pulleys_by_hand():
    """Open belt over radii 90 and 30, 100 apart: the run is sqrt(100^2 - 60^2) = 80."""
    assert run_over(circle(0, 0, 90), circle(100, 0, 30)).span == pytest.approx(80)


def test_anchor_inside_the_shoulder_gives_a_shortfall():
    path = taut(at(60.0), circle(0, 0, 100), at([30.0, 40.0]))
    assert path.shortfall == pytest.approx(50)
    assert np.isfinite(path.length).all()


def test_drift_is_shared_out_by_length():
    assert shared_drift(at(10.0), at(30.0), at(25.0), at(100.0)) == pytest.approx(15)
    assert shared_drift(at(10.0), at(30.0), at(0.0), at(0.0)) == pytest.approx(10)


def test_slot_too_short_holds_the_strap_at_its_end():
    gate = through_segment(at([0, 100, 0]), at([200, 100, 0]), at([100, -20, 0]), at([100, 20, 0]))
    assert gate == pytest.approx(at([100, 20, 0]))


def test_many_cases_agree_with_each_alone():
    many = list(cases(20, 9))
    radius, recline, x, z = (at(*row) for row in zip(*((c[0], c[1], *c[2]) for c in many), strict=True))
    together = taut(90 - recline, Roller(np.zeros((20, 2)), radius), np.stack([x, z], axis=1)).length
    alone = [taut(at(90 - c[1]), circle(0, 0, c[0]), c[2][None]).length[0] for c in many]
    assert together == pytest.approx(at(*alone))
