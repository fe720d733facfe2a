"""How sure the fit is: intervals of lengths and figures, the odds of every check, and what to measure again.

Tape tolerances and body estimates are drawn and go through the same figures as everything else. The figures of swept
outlines, straps and bolts, and the lengths to cut, take far longer than the rest and are worked out for the first `FEW`
draws only; every interval and every probability says from how many draws it comes.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass

import numpy as np

from fitcalc.body.comfort import windows_for
from fitcalc.checks.bar_figures import bar_figures
from fitcalc.checks.case import Case
from fitcalc.checks.catalogue import MEASURES, SWEPT
from fitcalc.checks.check import Check, Figure
from fitcalc.checks.harness import harness_figures
from fitcalc.checks.judge import is_reclined, judge
from fitcalc.checks.limits import load_limit_set, workshop_limits
from fitcalc.checks.pedal_figures import pedal_figures
from fitcalc.checks.posture_limits import with_posture
from fitcalc.checks.seat import seat_figures
from fitcalc.checks.template import template_figures
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import Setup
from fitcalc.fit.chunks import WORKERS
from fitcalc.fit.extension import leg_excess
from fitcalc.fit.influence import Influence, influences
from fitcalc.fit.progress import Progress, unheeded
from fitcalc.fit.propagation import spread_of
from fitcalc.fit.sweep import NOT_THERE, SMOOTH, required_room
from fitcalc.fit.tolerances import Drawn, drawn
from fitcalc.posture.cases import spread
from fitcalc.posture.sit import on_pedal, sit
from fitcalc.units import Bools, Floats, Mm

SLOW = (*SWEPT, *SMOOTH, harness_figures, bar_figures, pedal_figures, seat_figures, template_figures)
FEW = 2_000
"""Draws that every measure is worked out for; a probability is then known within about 2 %."""
CHUNK = 8_000
"""Draws worked out at a time: what bounds the memory."""
LONGEST = 200.0
"""Longest stand-off that a setup may have, mm."""
HALVINGS = 12
"""200 mm shrink to 0.05 mm."""


@dataclass(frozen=True)
class Sampling:
    """How much is drawn.

    Attributes:
        draws: for figures in closed form.
        few: of them, those that every measure is worked out for.
        seed: same seed, same answer.
    """

    draws: int = 100_000
    few: int = FEW
    seed: int = 1


@dataclass(frozen=True, eq=False)
class Interval:
    """One figure with its 90 % interval, from so many draws."""

    id: str
    label: str
    unit: str
    mean: float
    u: float
    low: float
    high: float
    draws: int


@dataclass(frozen=True, eq=False)
class Odds:
    """How likely one check passes, 0 to 1, from so many draws."""

    id: str
    label: str
    passes: float
    draws: int


@dataclass(frozen=True, eq=False)
class Certainty:
    """How sure one rework is.

    Attributes:
        lengths: the stand-off that each pedal really needs.
        figures: every figure that the draws move.
        odds: every check that must hold and is not the same in all draws, least likely first.
        all_hold: probability that all of those hold together.
        again: what to measure again, the most telling first.
        rooms: by check, its margins in the draws that every measure was worked out for.
        complete: False where it was stopped before its end.
    """

    lengths: tuple[Interval, ...]
    figures: tuple[Interval, ...]
    odds: tuple[Odds, ...]
    all_hold: float
    again: tuple[Influence, ...]
    rooms: Mapping[str, Floats]
    complete: bool


@dataclass(frozen=True, eq=False)
class _Part:
    """One chunk of draws: figures, margins and lengths by id."""

    values: dict[str, Floats]
    rooms: dict[str, Floats]
    lengths: dict[str, Mm]
    words: dict[str, tuple[str, str]]
    errors: dict[str, Floats]


def certainty(
    car: Car,
    driver: Driver,
    setup: Setup,
    rules: str | None = None,
    sampling: Sampling = Sampling(),
    progress: Progress = unheeded,
) -> Certainty:
    """Draw cars and bodies behind the numbers and see what comes of one rework.

    Args:
        car: as measured, with the tolerance of every point.
        driver: as measured.
        setup: the rework.
        rules: id of the limit set; the car's own when None.
        sampling: how many draws.
        progress: told the part done; answers whether to go on.
    """
    few = min(sampling.few, sampling.draws)
    counts = [few, *_chunks(sampling.draws - few)]
    work = _worker(car, driver, setup, rules, sampling.seed)
    parts, complete = _gathered(work, counts, progress)
    first = parts[0]
    telling = {name: room for name, room in first.rooms.items() if 0.0 < np.mean(room < 0.0) < 1.0}
    return Certainty(
        lengths=tuple(_intervals(parts, "lengths")),
        figures=tuple(_intervals(parts, "values")),
        odds=tuple(sorted(_odds(parts), key=lambda each: each.passes)),
        all_hold=float(np.mean(_all_hold(first))),
        again=influences(car, driver, first.errors, first.lengths | telling),
        rooms=first.rooms,
        complete=complete,
    )


def _chunks(draws: int) -> list[int]:
    return [min(CHUNK, draws - start) for start in range(0, draws, CHUNK)]


def chunk_seed(seed: int, at: int) -> int:
    """Seed of one chunk of draws, counted from 0; whoever draws the first `FEW` by it draws the same ones."""
    return int(np.random.SeedSequence([seed, at]).generate_state(1)[0])


def _worker(
    car: Car, driver: Driver, setup: Setup, rules: str | None, seed: int
) -> Callable[[int, int], _Part]:
    sets = load_limit_set(rules or car.rules), with_posture(workshop_limits(), driver)

    def work(at: int, count: int) -> _Part:
        cases = drawn(car, driver, count, chunk_seed(seed, at))
        measures = MEASURES if at == 0 else [each for each in MEASURES if each not in SLOW]
        case = Case(cases.car, driver, cases.links, setup, sit(cases.car, cases.links, setup))
        figures = [figure for measure in measures for figure in measure(case)]
        checks = judge(figures, *sets, is_reclined(case))
        return _part(case, figures, checks, cases if at == 0 else None)

    return work


def _gathered(
    work: Callable[[int, int], _Part], counts: Sequence[int], progress: Progress
) -> tuple[list[_Part], bool]:
    """All chunks, two at a time; the first always."""
    parts = [work(0, counts[0])]
    with ThreadPoolExecutor(WORKERS) as pool:
        for start in range(1, len(counts), WORKERS):
            if not progress(start / len(counts)):
                return parts, False
            chunk = range(start, min(start + WORKERS, len(counts)))
            parts += pool.map(work, chunk, [counts[at] for at in chunk])
    progress(1.0)
    return parts, True


def _part(case: Case, figures: Sequence[Figure], checks: Sequence[Check], cases: Drawn | None) -> _Part:
    rooms = {check.id: _full(case, room) for check in checks if (room := required_room(check)) is not None}
    values = {figure.id: figure.value for figure in figures if figure.value is not None}
    words = {figure.id: (figure.label, figure.unit) for figure in figures}
    words |= {check.id: (check.label, check.figure.unit) for check in checks}
    pedals = () if cases is None else case.sitting.pedals
    lengths = {f"{name}.stand_off": _needed(case, name) for name in pedals}
    words |= {path: (f"{path.partition('.')[0]}: stand-off needed", "mm") for path in lengths}
    return _Part(values, rooms, lengths, words, {} if cases is None else cases.errors)


def _full(case: Case, room: Floats) -> Floats:
    return np.broadcast_to(room, (case.count,))


def _needed(case: Case, name: str) -> Mm:
    """The stand-off at which the knee is just bent enough, by halving; 0 where it is without, at most `LONGEST`."""
    targets = windows_for(case.driver)

    def bent_enough(stand_off: Mm) -> Bools:
        setup = spread(case.setup, {f"{name}.stand_off": stand_off})
        at = on_pedal(name, case.car, setup, case.sitting.trunk, case.sitting.hips, case.links)
        return leg_excess(at, targets) <= 0.0

    low, high = np.zeros(case.count), np.full(case.count, LONGEST)
    without = bent_enough(low)
    for _ in range(HALVINGS):
        middle = (low + high) / 2
        enough = bent_enough(middle)
        low, high = np.where(enough, low, middle), np.where(enough, middle, high)
    return np.where(without, 0.0, high)


def _joined(parts: Sequence[_Part], kind: str, id: str) -> Floats:
    return np.concatenate([np.ravel(getattr(part, kind)[id]) for part in parts if id in getattr(part, kind)])


def _intervals(parts: Sequence[_Part], kind: str) -> Iterator[Interval]:
    for id in getattr(parts[0], kind):
        draws = _joined(parts, kind, id)
        if np.ptp(draws) > 0.0:
            found = spread_of(draws)
            label, unit = parts[0].words[id]
            yield Interval(id, label, unit, found.mean, found.u, found.low, found.high, len(draws))


def _odds(parts: Sequence[_Part]) -> Iterator[Odds]:
    for id in parts[0].rooms:
        rooms = _joined(parts, "rooms", id)
        if np.ptp(rooms) > 0.0:
            yield Odds(id, parts[0].words[id][0], float(np.mean(rooms >= 0.0)), len(rooms))


def _all_hold(part: _Part) -> Bools:
    """Where every check that the draws move holds, `(n,)`."""
    moved = [room >= 0.0 for room in part.rooms.values() if np.ptp(room) > 0.0 and room.max() < NOT_THERE]
    return np.all(moved, axis=0) if moved else np.ones(1, dtype=bool)
