"""Many reworks of one car and driver: each figure worked out once for every distinct combination of what it reads.

On a grid of seat places and pedal bars the straps need working out once per seat place, and the shoe's clearances once
per bar; the figures are those of `evaluate`, to the last digit.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from types import MappingProxyType

import numpy as np

from fitcalc.body.links import Links
from fitcalc.checks.balance_figures import balance_figures
from fitcalc.checks.bar_figures import bar_figures
from fitcalc.checks.case import Case
from fitcalc.checks.catalogue import MEASURES, SWEPT, Measure
from fitcalc.checks.check import ROUNDING, Check
from fitcalc.checks.cleats import cleat_figures
from fitcalc.checks.feet import feet_figures
from fitcalc.checks.harness import harness_figures
from fitcalc.checks.head import head_figures
from fitcalc.checks.judge import is_reclined, judge
from fitcalc.checks.knees import knee_figures
from fitcalc.checks.limits import LimitSet, load_limit_set, workshop_limits
from fitcalc.checks.mirrors import mirror_figures
from fitcalc.checks.opening import opening_figures
from fitcalc.checks.pad_heights import pad_height_figures
from fitcalc.checks.pedal_figures import pedal_figures
from fitcalc.checks.posture_figures import leg_figures, posture_figures
from fitcalc.checks.posture_limits import MUST_HOLD, with_posture
from fitcalc.checks.reach import reach_figures
from fitcalc.checks.seat import seat_figures
from fitcalc.checks.seat_mount_figures import seat_mount_figures
from fitcalc.checks.sight import sight_figures
from fitcalc.checks.template import template_figures
from fitcalc.checks.wheel import wheel_figures
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import Setup
from fitcalc.fit.cases import PATHS, Anything, moving, setup_of, taken
from fitcalc.fit.variables import PEDAL_WAYS, value_at
from fitcalc.posture.cases import column
from fitcalc.posture.limbs import Arm
from fitcalc.posture.sit import OnPedal, Sitting, feet_on_pedal, hands_at, trunk_and_hips, with_leg
from fitcalc.posture.trunk import Trunk
from fitcalc.units import Floats, Points

INSERTS = ("cushion_insert", "back_insert")
SEAT = ("seat_travel", "seat_raise", "recline", *INSERTS)
BARS = tuple(path for path in PATHS if "." in path)
FEET = ("box_travel", *BARS)
BODY = (*SEAT, *FEET, "wheel_spacer")
READS: Mapping[Measure, tuple[str, ...]] = MappingProxyType(
    {
        posture_figures: (*SEAT, "wheel_spacer"),
        leg_figures: (*SEAT, *FEET),
        wheel_figures: BODY,
        knee_figures: BODY,
        balance_figures: BODY,
        seat_mount_figures: BODY,
        bar_figures: (*SEAT, *FEET),
        head_figures: SEAT,
        seat_figures: SEAT,
        sight_figures: (*SEAT, "wheel_spacer"),
        mirror_figures: SEAT,
        harness_figures: (*SEAT, "shoulder_anchor_raise"),
        reach_figures: (*SEAT, "wheel_spacer"),
        cleat_figures: FEET,
        feet_figures: FEET,
        pad_height_figures: FEET,
        pedal_figures: FEET,
        opening_figures: BARS,
        template_figures: ("seat_raise", "recline", *INSERTS, *BARS),
    }
)
"""The numbers of a setup that a measure reads; one that is not listed may read all."""
PEDAL_BY_PEDAL: tuple[Measure, ...] = (leg_figures, bar_figures, pedal_figures)
"""Measures that look at each pedal and the leg on it by itself."""
SMOOTH: tuple[Measure, ...] = (balance_figures, seat_mount_figures)
"""Measures in closed form whose figures change so evenly that a coarse mesh holds them."""
CLOSED = tuple(each for each in MEASURES if each not in (*SWEPT, *SMOOTH))
NO_GUARDS: Mapping[str, float] = MappingProxyType({})
NOT_THERE = 1e6
"""Margin where the part in question is not there: more than any that is measured."""


@dataclass(frozen=True, eq=False)
class Swept:
    """Checks of n reworks.

    Attributes:
        count: n.
        groups: checks on the distinct combinations of what they read, with each rework's place among them, `(n,)`.
    """

    count: int
    groups: tuple[tuple[np.ndarray, tuple[Check, ...]], ...]

    def each(self) -> Iterator[tuple[np.ndarray, Check]]:
        """Every check with the place of each rework in it."""
        return ((at, check) for at, checks in self.groups for check in checks)

    def lacking(
        self, settled: frozenset[str] = frozenset(), guards: Mapping[str, float] = NO_GUARDS
    ) -> Floats:
        """What all that must hold lacks together, mm and deg alike, `(n,)`; without the settled checks.

        A check with a guard must hold with that much to spare.
        """
        total = np.zeros(self.count)
        for at, checks in self.groups:
            short = [
                shortfall(check, guards.get(check.id, 0.0)) for check in checks if check.id not in settled
            ]
            parts = [part for part in short if part is not None and np.any(part > 0.0)]
            if parts:
                total += np.broadcast_to(sum(parts[1:], parts[0]), (int(at.max()) + 1,))[at]
        return total


def shortfall(check: Check, guard: float = 0.0) -> Floats | None:
    """What a check lacks of its bound and the guard, mm or deg; None where nothing must hold."""
    room = required_room(check)
    return None if room is None else np.where(room < guard - ROUNDING, guard - room, 0.0)


def required_room(check: Check) -> Floats | None:
    """Margin that must not be negative: to the bounds that must hold, for the knee to the recommended ones."""
    quantity, absent = check.figure.quantity.removeprefix("posture."), check.figure.absent
    wished = quantity in MUST_HOLD and check.comfort_margin is not None
    room = check.comfort_margin if wished else check.margin
    return room if room is None or absent is None else np.where(absent, NOT_THERE, room)


def sweep(
    car: Car,
    driver: Driver,
    setup: Setup,
    links: Links,
    rules: str | None = None,
    measures: Sequence[Measure] = MEASURES,
) -> Swept:
    """Judge many reworks.

    Args:
        car: as found, one.
        driver: one.
        setup: numbers may be arrays over cases.
        links: the driver's body, one.
        rules: id of the limit set; the car's own when None.
        measures: which figures.
    """
    sets = load_limit_set(rules or car.rules), with_posture(workshop_limits(), driver)
    groups: dict[tuple[tuple[str, ...], tuple[str, ...]], list[Measure]] = {}
    for measure in measures:
        for pedals in _parted(setup, tuple(car.fitted_pedals()), measure):
            paths = moving(setup, _read(measure, pedals))
            groups.setdefault((paths, pedals), []).append(measure)
    return Swept(
        count=_count(setup),
        groups=tuple(
            _group(Case(car, driver, links, setup, None), *read, several, sets)  # type: ignore[arg-type]
            for read, several in groups.items()
        ),
    )


def _parted(setup: Setup, pedals: tuple[str, ...], measure: Measure) -> list[tuple[str, ...]]:
    """The pedals that a measure looks at together: where it can, those whose bars move apart from those whose don't."""
    if measure not in PEDAL_BY_PEDAL:
        return [pedals]
    moved = tuple(name for name in pedals if moving(setup, _bars(name)))
    still = tuple(name for name in pedals if name not in moved)
    return [part for part in (moved, still) if part]


def _read(measure: Measure, pedals: tuple[str, ...]) -> tuple[str, ...]:
    """The numbers of a setup that a measure reads, looking at these pedals."""
    every = READS.get(measure, PATHS)
    if measure not in PEDAL_BY_PEDAL:
        return every
    own = {path for name in pedals for path in _bars(name)}
    return tuple(path for path in every if path not in BARS or path in own)


def _bars(pedal: str) -> tuple[str, ...]:
    return tuple(f"{pedal}.{way}" for way in PEDAL_WAYS)


def _count(setup: Setup) -> int:
    return max(len(value_at(setup, path)) for path in PATHS)


def _group(
    case: Case,
    paths: tuple[str, ...],
    pedals: tuple[str, ...],
    measures: Sequence[Measure],
    sets: tuple[LimitSet, LimitSet],
) -> tuple[np.ndarray, tuple[Check, ...]]:
    few, at = distinct(case.setup, paths)
    seated = Case(case.car, case.driver, case.links, few, sit_once(case.car, case.links, few, pedals))
    figures = [figure for measure in measures for figure in measure(seated)]
    return np.broadcast_to(at, (_count(case.setup),)), judge(figures, *sets, is_reclined(seated))


def sit_once(car: Car, links: Links, setup: Setup, names: Sequence[str]) -> Sitting:
    """As `posture.sit.sit` on some pedals, each part seated once for every distinct combination of what moves it.

    The hands are left out where not all pedals are looked at.
    """

    def trunk_hips(few: Setup) -> tuple[Trunk, tuple[Points, Points]]:
        return trunk_and_hips(car, links, few)

    def legs(name: str, few: Setup) -> OnPedal:
        trunk, hips = _once(few, SEAT, trunk_hips)
        feet = _once(few, ("box_travel", *_bars(name)), partial(feet_on_pedal, name, car, links=links))
        hip = hips[0] if car.fitted_pedals()[name].foot == "left" else hips[1]
        return with_leg(feet, hip, trunk, links)

    def hands(few: Setup) -> tuple[Arm, Arm] | None:
        return hands_at(car, links, few, trunk_hips(few)[0], column(0.0))

    pedals = {name: _once(setup, (*SEAT, "box_travel", *_bars(name)), partial(legs, name)) for name in names}
    whole = len(pedals) == len(car.fitted_pedals())
    arms = _once(setup, (*SEAT, "wheel_spacer"), hands) if whole else None
    return Sitting(*_once(setup, SEAT, trunk_hips), pedals, arms)


def _once(setup: Setup, paths: Sequence[str], work: Callable[[Setup], Anything]) -> Anything:
    """What follows from some numbers of a setup, worked out once for every distinct combination of them."""
    few, at = distinct(setup, paths)
    if _count(few) == _count(setup):
        return work(setup)
    return taken(work(few), np.broadcast_to(at, (_count(setup),)))


def distinct(setup: Setup, paths: Sequence[str]) -> tuple[Setup, np.ndarray]:
    """The distinct combinations of some numbers of a setup, all else as in its first case; and each case's place."""
    values = {path: value_at(setup, path) for path in PATHS}
    fixed = {path: value[:1] for path, value in values.items()}
    changing = moving(setup, paths)
    if not changing:
        return setup_of(fixed), np.zeros(1, dtype=int)
    code = np.zeros(1, dtype=np.int64)
    for path in changing:
        known, place = np.unique(values[path], return_inverse=True)
        code = _compact(code) * len(known) + place
    _, first, at = np.unique(code, return_index=True, return_inverse=True)
    return setup_of(fixed | {path: values[path][first] for path in changing}), at


def _compact(code: np.ndarray) -> np.ndarray:
    return np.unique(code, return_inverse=True)[1]
