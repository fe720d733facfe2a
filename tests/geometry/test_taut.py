"""The taut path, against scipy's minimisation of length (independent) and against geometry done by hand."""

import numpy as np
import pytest
from scipy.optimize import minimize

from fitcalc.geometry.taut import Roller, half_turn, run_over, shared_drift, taut, through_segment

STEP = np.radians(5.0)
"""Most between rays."""


def at(*values):
    return np.array(values, dtype=float)


def circle(x, z, radius):
    return Roller(np.array([[x, z]], dtype=float), at(radius))


def rays(centre, radius, first, last):
    """Rays out of a roller, from one normal to another: the strap crosses each at its radius or beyond.

    Held off by a trifle, the chords between the rays are as long as the arc that they stand for.
    """
    count = max(int(np.ceil((first - last) / STEP)), 1) + 1
    normals = np.linspace(first, last, count)
    half = (first - last) / (count - 1) / 2
    held_off = radius * half / np.sin(half)
    return [(np.array(centre), held_off, np.array([np.cos(a), np.sin(a)])) for a in normals]


def shortest_by_scipy(fan, start, end):
    """Least length of a line in space from `start` through every ray to `end`, no closer than each roller's radius."""
    centre, low, way = (np.array([ray[i] for ray in fan]) for i in range(3))
    count = len(fan)

    def length(unknown):
        reach, y = unknown[:count], unknown[count:]
        middle = np.column_stack([centre + reach[:, None] * way, y])
        nodes = np.vstack([start, middle, end])
        step = np.diff(nodes, axis=0)
        size = np.sqrt(np.sum(step * step, axis=1) + 1e-12)
        pull = step / size[:, None]
        force = pull[:-1] - pull[1:]
        return size.sum(), np.concatenate([np.sum(force[:, :2] * way, axis=1), force[:, 2]])

    guess = np.concatenate([low, np.linspace(start[2], end[2], count)])
    limits = [(value, None) for value in low] + [(None, None)] * count
    return minimize(length, guess, jac=True, method="SLSQP", bounds=limits, options={"maxiter": 300, "ftol": 1e-9}).fun


def random_cases(count, seed):
    random = np.random.default_rng(seed)
    for _ in range(count):
        radius, recline = random.uniform(40, 120), random.uniform(10, 60)
        anchor = np.array([random.uniform(200, 500), random.uniform(-250, 150)])
        guide = np.array([random.uniform(radius + 60, anchor[0] - 20), random.uniform(-80, 130)])
        yield radius, recline, anchor, guide, random.uniform(8, 25), random.uniform(-90, 90)


def by_scipy(radius, recline, anchor, guide, tube, drift):
    chest = np.radians(180.0 - recline)
    start = np.array([radius * np.cos(chest), radius * np.sin(chest), 0.0])
    over = rays((0.0, 0.0), radius, chest, np.arctan2(anchor[1], anchor[0]) + STEP)
    if guide is not None:
        back = np.arctan2(*(anchor - guide)[::-1])
        over = [ray for ray in over if ray[2] @ guide < ray[2] @ ray[2] * np.hypot(*guide) * np.cos(STEP)]
        over += rays(guide, tube, np.radians(150.0), back + STEP)
    return shortest_by_scipy(over, start, np.array([*anchor, drift]))


@pytest.mark.parametrize("chunk", range(5))
def test_shortest_over_the_shoulder_agrees_with_minimisation(chunk):
    for radius, recline, anchor, _, _, drift in random_cases(60, chunk):
        path = taut(at(90.0 - recline), circle(0, 0, radius), anchor[None])
        assert np.hypot(path.length, drift)[0] == pytest.approx(by_scipy(radius, recline, anchor, None, 0, drift), abs=0.1)
