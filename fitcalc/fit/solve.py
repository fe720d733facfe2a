"""The least-effort rework that passes, the next best of another kind, and what stands in the way where there is none.

Seat and box places are bounded from below by what the trunk and the knees alone ask, and worked through best first;
at each place anchors, spacer and bars are chosen on their own, for they share no check but the shoes' gaps.
Holes and steps are met exactly; the same task has the same answer every time.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from fitcalc.checks.catalogue import MEASURES, Measure
from fitcalc.checks.head import head_figures
from fitcalc.checks.posture_figures import leg_figures, posture_figures
from fitcalc.checks.seat import seat_figures
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.effort import Effort
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import setup_at, setup_of
from fitcalc.fit.conflict import Conflict, conflict_of
from fitcalc.fit.placing import PLACEMENT, coarse_places, near_places, pitch, with_least_bars
from fitcalc.fit.problem import Problem, Values, picked, problem_of
from fitcalc.fit.progress import Progress, unheeded
from fitcalc.fit.tuning import NARROWER, Tried, judged, together, tuned
from fitcalc.fit.variables import AS_GIVEN, HAIR
from fitcalc.units import Floats

BOUND = (head_figures, seat_figures, posture_figures, leg_figures)
"""Measures that no anchor, spacer or bar (beyond what the knee asks) can help."""
BATCH = 48
"""Places worked out in full at a time."""
TUNED = 8
"""Of each batch, so many are tuned."""
BATCHES = 3
"""So many batches without a better rework end the search where nothing passes."""
ZOOMS = 3
OTHERS = 3
"""How many next best reworks are kept."""


@dataclass(frozen=True, eq=False)
class Rework:
    """One rework found.

    Attributes:
        effort: minutes at the bench.
        lacking: what must hold and does not, mm and deg together; 0 = passes.
        changes: paths of what it changes.
    """

    setup: Setup
    effort: float
    lacking: float
    changes: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class Solution:
    """What the solver found.

    Attributes:
        best: the least effort that passes, or the least lacking where none does.
        others: next best, each changing other things than those before.
        settled: checks that nothing allowed moves; they are no part of `lacking`.
        conflict: what stands in the way; None where the best passes.
        complete: False where the search was stopped before its end.
    """

    best: Rework
    others: tuple[Rework, ...]
    settled: frozenset[str]
    conflict: Conflict | None
    complete: bool

    @property
    def passes(self) -> bool:
        """Whether everything that can be moved holds."""
        return self.best.lacking <= HAIR


def solve(
    car: Car,
    driver: Driver,
    rules: str | None = None,
    effort: Effort = AS_GIVEN,
    measures: Sequence[Measure] = MEASURES,
    progress: Progress = unheeded,
) -> Solution:
    """Find the least rework of one car for one driver.

    Args:
        car: as found; says how far everything may go.
        driver: whose knees must come out as recommended.
        rules: id of the limit set; the car's own when None.
        effort: the user's own spans, steps and minutes.
        measures: which checks must hold; all of them.
        progress: told the part done; answers whether to go on.
    """
    return solved(problem_of(car, driver, rules, effort, measures), progress)


def solved(problem: Problem, progress: Progress = unheeded) -> Solution:
    """The solution of one task."""
    tried, complete = searched(problem, progress)
    best = rework_of(tried, 0)
    conflict = None if best.lacking <= HAIR else conflict_of(problem, tried.values, best.setup)
    return Solution(best, _others(tried), problem.settled, conflict, complete)


def searched(problem: Problem, progress: Progress = unheeded) -> tuple[Tried, bool]:
    """Every rework that was judged in full, from best to worst, and whether the search came to its end."""
    start = judged(problem, {"seat_travel": np.zeros(1)})
    tried, widths = start, {path: pitch(problem, path) for path in PLACEMENT}
    for zoom in range(ZOOMS + 1):
        places = coarse_places(problem) if zoom == 0 else near_places(problem, _placement(tried), widths)
        tried = _worked(problem, _untried(places, tried if zoom else None), tried)
        widths = widths if zoom == 0 else {path: width / NARROWER for path, width in widths.items()}
        if not progress((zoom + 1) / (ZOOMS + 2)):
            return tried, False
    best = tried.at(np.arange(min(TUNED, len(tried.cost))))
    tried = together([tried, tuned(problem, best, range(1, 1 + ZOOMS))])
    progress(1.0)
    return tried.at(tried.order()), True


def _placement(tried: Tried) -> dict[str, float]:
    """Where seat and box stand in the best rework."""
    return {path: float(tried.values[path][0]) if path in tried.values else 0.0 for path in PLACEMENT}


def _untried(places: Values, tried: Tried | None) -> dict[str, Floats]:
    """Those placements at which nothing was judged yet."""
    if tried is None or not places:
        return dict(places)
    zero = np.zeros(len(tried.cost))
    known = set(zip(*(tried.values.get(path, zero).tolist() for path in places), strict=True))
    new = [row not in known for row in zip(*(value.tolist() for value in places.values()), strict=True)]
    return picked(places, np.flatnonzero(new))


def rework_of(tried: Tried, case: int) -> Rework:
    """One of the reworks."""
    one = tried.at(np.array([case]))
    changes = tuple(path for path, value in one.values.items() if abs(value[0]) > HAIR)
    return Rework(setup_at(setup_of(one.values), 0), float(one.cost[0]), float(one.lacking[0]), changes)


def _worked(problem: Problem, places: Values, tried: Tried) -> Tried:
    """What was tried with the best of more placements, best first; in batches from the least bound up."""
    if not places or len(next(iter(places.values()))) == 0:
        places = {"seat_travel": np.zeros(1)}
    places = with_least_bars(problem, places)
    bound = Tried(places, problem.lacking(places, BOUND), problem.cost(places))
    order, done, idle = bound.order(), [tried], 0
    best = (float(tried.lacking[0]), float(tried.cost[0]))
    for start in range(0, len(order), BATCH):
        batch = bound.at(order[start : start + BATCH])
        if (batch.lacking[0], batch.cost[0]) >= best or idle >= BATCHES:
            break
        found = _judged_batch(problem, batch.values)
        top = found.order()[0]
        reached = float(found.lacking[top]), float(found.cost[top])
        idle = 0 if reached < best else idle + 1
        best = min(best, reached)
        done.append(found)
    every = together(done)
    return every.at(every.order())


def _judged_batch(problem: Problem, values: Values) -> Tried:
    """These reworks judged, and the most hopeful of those that fail tuned, where that may still beat what passes."""
    plain = judged(problem, values)
    dearest = np.min(plain.cost[plain.lacking <= 0.0], initial=np.inf)
    hopeful = [case for case in plain.order() if plain.lacking[case] > 0.0 and plain.cost[case] < dearest]
    if not hopeful:
        return plain
    return together([plain, tuned(problem, plain.at(np.array(hopeful[:TUNED])), range(1))])


def _others(tried: Tried) -> tuple[Rework, ...]:
    """The next best reworks of which each changes other things."""
    moved = np.stack([np.abs(value) > HAIR for value in tried.values.values()], axis=1)
    seen, found = {tuple(moved[0])}, list[Rework]()
    for case in range(1, len(moved)):
        if len(found) < OTHERS and tuple(moved[case]) not in seen:
            seen.add(tuple(moved[case]))
            found.append(rework_of(tried, case))
    return tuple(found)
