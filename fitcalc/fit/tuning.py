"""Anchors, wheel spacer and pedal bars, chosen with seat and pedal box in their places.

Each is tried at several values while the others stay; as they share hardly a check, the best of each are then taken
together, and again about what was chosen with a smaller gap.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.fit.cases import joined
from fitcalc.fit.placing import PLACEMENT, spaced
from fitcalc.fit.problem import Problem, Values, picked, size
from fitcalc.fit.variables import Variable
from fitcalc.units import Floats

PLACES = 9
"""Values of a variable tried at a time."""
NARROWER = 4.0
"""The gap tried in shrinks by this each time."""


@dataclass(frozen=True, eq=False)
class Tried:
    """Reworks that were judged in full: what each lacks and the minutes it takes, `(n,)`."""

    values: dict[str, Floats]
    lacking: Floats
    cost: Floats

    def order(self) -> np.ndarray:
        """From best to worst: least lacking, then least effort, then in the order they were tried."""
        return np.lexsort((np.round(self.cost, 6), self.lacking))

    def at(self, cases: np.ndarray) -> "Tried":
        """Some of them."""
        return Tried(picked(self.values, cases), self.lacking[cases], self.cost[cases])


def judged(problem: Problem, values: Values) -> Tried:
    """These reworks, judged."""
    whole = {path: np.broadcast_to(value, (size(values),)) for path, value in values.items()}
    return Tried(whole, problem.lacking(whole), problem.cost(whole))


def together(parts: list[Tried]) -> Tried:
    """Lists of reworks one after another."""
    values = joined([part.values for part in parts])
    return Tried(
        values,
        np.concatenate([part.lacking for part in parts]),
        np.concatenate([part.cost for part in parts]),
    )


def better(first: Tried, second: Tried) -> Tried:
    """Case by case the better of two."""
    take = (second.lacking < first.lacking) | ((second.lacking == first.lacking) & (second.cost < first.cost))
    paths = first.values.keys() | second.values.keys()
    zero = np.zeros(len(take))
    values = {
        path: np.where(take, second.values.get(path, zero), first.values.get(path, zero))
        for path in sorted(paths)
    }
    return Tried(
        values, np.where(take, second.lacking, first.lacking), np.where(take, second.cost, first.cost)
    )


def tuned(problem: Problem, start: Tried, levels: range) -> Tried:
    """The same placements with what else may change tried over its whole span (level 0) and ever closer by."""
    free = [each for each in problem.variables if each.path not in PLACEMENT]
    for level in levels:
        if free and np.any(start.lacking > 0.0):
            start = _tuned_once(problem, start, free, level)
    return start


def _tuned_once(problem: Problem, start: Tried, free: list[Variable], level: int) -> Tried:
    count = len(start.lacking)
    offers = {each.path: _offers(each, start, level) for each in free}
    tries = judged(problem, joined(_alone(start, path, values) for path, values in offers.items()))
    both, done = dict(start.values), 0
    for each in free:
        shape = offers[each.path].shape
        rows = slice(done, done + count * shape[1])
        lacking, cost = tries.lacking[rows].reshape(shape), tries.cost[rows].reshape(shape)
        best = np.lexsort((np.round(cost, 6), lacking), axis=1)[:, 0]
        both[each.path] = offers[each.path][np.arange(count), best]
        done = rows.stop
    every = better(start, judged(problem, both))
    return better(every, _best_alone(tries, count, [value.shape[1] for value in offers.values()]))


def _offers(each: Variable, start: Tried, level: int) -> Floats:
    """Values to try of one variable, `(k, m)`, the present one first."""
    now = start.values.get(each.path, np.zeros(len(start.lacking)))[:, None]
    if level == 0:
        places = np.broadcast_to(spaced(each.places(), PLACES), (len(now), min(PLACES, len(each.places()))))
    else:
        gap = max((each.high - each.low) / 2 / NARROWER**level, (PLACES // 2) * each.step)
        steps = np.round((now + np.linspace(-gap, gap, PLACES)) / each.step)
        every = each.places()
        places = np.clip(steps * each.step, every[0], every[-1])
    return np.concatenate([now, 0.0 * now, places], axis=1)


def _alone(start: Tried, path: str, offers: Floats) -> dict[str, Floats]:
    """Every case with each of the values of one variable."""
    repeated = {other: np.repeat(value, offers.shape[1]) for other, value in start.values.items()}
    return repeated | {path: offers.ravel()}


def _best_alone(tries: Tried, count: int, widths: list[int]) -> Tried:
    """Of all the changes of one variable, the best for each case."""
    owner = np.concatenate([np.repeat(np.arange(count), width) for width in widths])
    order = np.lexsort((np.round(tries.cost, 6), tries.lacking, owner))
    first = np.searchsorted(owner[order], np.arange(count))
    return tries.at(order[first])
