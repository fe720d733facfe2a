"""Random tasks: the sample cars with every measured place moved, and drivers of many sizes."""

from dataclasses import replace

import numpy as np

from fitcalc.documents.driver import Driver, Measurements
from fitcalc.documents.samples import sample_cars, sample_path
from fitcalc.documents.store import load_car
from fitcalc.fit.cases import crossed
from fitcalc.fit.problem import problem_of
from fitcalc.fit.tolerances import toleranced

CARS = tuple(load_car(sample_path(name)) for name in sample_cars())
MOVED = 12.0
COARSE = {"stand_off": 20.0, "longer_arm": 20.0, "seat_raise": 15.0, "recline": 4.0, "seat_travel": 20.0}


def random_car(random):
    car = CARS[random.integers(len(CARS))]
    for path, mark in toleranced(car).items():
        if not path.startswith(("seat.mounts", "harness")):
            near = {axis: getattr(mark, axis) + random.uniform(-MOVED, MOVED) for axis in ("x", "z")}
            car = _put(car, path.split("."), mark.model_copy(update=near))
    return car


def _put(node, path, value):
    if not path:
        return value
    if isinstance(node, tuple):
        at = int(path[0])
        return (*node[:at], _put(node[at], path[1:], value), *node[at + 1 :])
    return node.model_copy(update={path[0]: _put(getattr(node, path[0]), path[1:], value)})


def random_driver(random):
    sex = ("female", "male")[random.integers(2)]
    middle = {"female": 1630.0, "male": 1760.0}[sex]
    return Driver(
        name="random", sex=sex, measurements=Measurements(stature=float(random.normal(middle, 70.0)))
    )


def random_task(seed):
    random = np.random.default_rng(seed)
    return random_car(random), random_driver(random)


def coarse_problem(seed, **more):
    """A task whose whole grid can be tried: few steps of each variable, all checks."""
    problem = problem_of(*random_task(seed), **more)
    kept = [each for each in problem.variables if each.path.partition(".")[2] != "longer_arm"]
    kept = [each for each in kept if each.path not in ("wheel_spacer", "shoulder_anchor_raise", "recline")]
    return replace(problem, variables=tuple(_coarser(each) for each in kept))


def _coarser(each):
    kind = each.path.rpartition(".")[2]
    return replace(each, step=max(each.step, COARSE.get(kind, 40.0)))


def whole_grid(problem):
    return crossed({each.path: each.places() for each in problem.variables})


def score(problem, x):
    """What an optimiser makes small: lacking first, then minutes, for columns of x, `(k, n)`."""
    values = {each.path: row for each, row in zip(problem.variables, x, strict=True)}
    return 1e4 * problem.lacking(values) + problem.cost(values)


def value_of(setup, path):
    for step in path.split("."):
        setup = getattr(setup, step)
    return float(setup)
