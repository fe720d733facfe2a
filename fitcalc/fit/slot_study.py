"""Slots to cut: where they belong with what tape and body leave open, and one slot for several drivers."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.limits import workshop_limits
from fitcalc.checks.slot_figures import SlottedStrap, slotted_straps
from fitcalc.checks.slots import ROOM, SharedSlot, SlotRange, allowed_range, shared_slot
from fitcalc.fit.propagation import Spread, spread_of
from fitcalc.fit.result import Result
from fitcalc.fit.tolerances import drawn
from fitcalc.geometry.degrees import length, unit
from fitcalc.geometry.side import across, dot, turned
from fitcalc.posture.cases import column
from fitcalc.posture.sit import sit
from fitcalc.units import Floats, Mm, Points

DRAWS = 2_000
"""A 5 % point is then known within about a fifteenth of the interval."""
SEED = 1
ORIGIN = np.zeros((1, 3))


@dataclass(frozen=True, eq=False)
class SlotSpread:
    """The 90 % intervals of one slot's place and size, mm; `along` as in `SlotCut`."""

    x: Spread
    y: Spread
    z: Spread
    along: Spread
    length: Spread
    height: Spread


@dataclass(frozen=True, eq=False)
class OneForAll:
    """One slot for all drivers, in the seat's frame.

    Attributes:
        shared: how far up the shell, see `SharedSlot`.
        centre: of the slot that suits all; where there is none, midway.
        length, height: of that slot.
        tall: height of a slot that leaves every driver's strap straight.
    """

    shared: SharedSlot
    centre: tuple[float, float, float]
    length: float
    height: float
    tall: float

    @property
    def exists(self) -> bool:
        """Whether one slot bends nobody's strap too much."""
        return bool(self.shared.shortfall[0] <= 0.0)


def slot_spreads(result: Result, draws: int = DRAWS, seed: int = SEED) -> dict[str, SlotSpread]:
    """Every strap's slot over cars and bodies that may stand behind the numbers."""
    cases = drawn(result.car, result.driver, draws, seed)
    sitting = sit(cases.car, cases.links, result.setup)
    case = Case(cases.car, result.driver, cases.links, result.setup, sitting)
    if cases.car.harness is None:
        return {}
    return {strap.name: _spread(strap) for strap in slotted_straps(cases.car.harness, case)}


def _spread(strap: SlottedStrap) -> SlotSpread:
    cut = strap.cut
    x, y, z = (spread_of(axis) for axis in cut.in_seat.T)
    return SlotSpread(x, y, z, spread_of(cut.along), spread_of(cut.length), spread_of(cut.height))


def most_turn(result: Result) -> float:
    """The most that a slot may bend its strap by the rules or as advised, deg."""
    rows = (*result.rules.on("harness.slot.turn"), *workshop_limits().on("harness.slot.turn"))
    return min(bound for row in rows for bound in (row.high, row.recommended_high) if bound is not None)


def least_radius(result: Result) -> float:
    """The least edge radius of a slot by the rules or as advised, mm."""
    rows = (*result.rules.on("harness.slot.edge_radius"), *workshop_limits().on("harness.slot.edge_radius"))
    return max(bound for row in rows for bound in (row.low, row.recommended_low) if bound is not None)


def one_for_all(results: Sequence[Result], name: str) -> OneForAll | None:
    """One slot for a strap of all the drivers; None where the strap of one of them passes no shell."""
    cases = [result.case for result in results]
    straps = [_named(case)[name] for case in cases if name in _named(case)]
    if len(straps) < len(cases) or not all(strap.cut.needed[0] for strap in straps):
        return None
    most = np.array([min(most_turn(result) for result in results)])
    ranges = [allowed_range(strap.cut, strap.straight, most, strap.width) for strap in straps]
    if name.startswith("lap"):
        return _in_wall(ranges, straps, cases)
    shared = shared_slot(ranges)
    side = (shared.left[0] + shared.right[0]) / 2 - float(column(cases[0].car.seat.junction.y)[0])
    x, z = _on_profile(name, (shared.low[0] + shared.high[0]) / 2, cases[0])
    return _slot(shared, (x, side, z), straps, [strap.cut.along for strap in straps])


def _named(case: Case) -> Mapping[str, SlottedStrap]:
    harness = case.car.harness
    return {} if harness is None else {strap.name: strap for strap in slotted_straps(harness, case)}


def _on_profile(name: str, along: float, case: Case) -> tuple[float, float]:
    """The place so far up the back, or so far back along the cushion, in the seat's frame."""
    seat = case.car.seat
    corner = seat.profile.index((0.0, 0.0))
    part = seat.profile[corner:] if name.startswith("shoulder") else seat.profile[: corner + 1]
    line = np.array(part)
    so_far = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(line, axis=0).T))])
    return float(np.interp(along, so_far, line[:, 0])), float(np.interp(along, so_far, line[:, 1]))


def _in_wall(ranges: Sequence[SlotRange], straps: Sequence[SlottedStrap], cases: Sequence[Case]) -> OneForAll:
    """Lap straps run differently through the side of the shell: along their mean direction, and square to it."""
    headings = [_in_seat(strap.cut.upward, case) for strap, case in zip(straps, cases, strict=True)]
    along: Points = unit(np.mean(headings, axis=0))
    aside = across(along)
    middles = [dot(strap.cut.in_seat, along) for strap in straps]
    tracks = [dot(strap.cut.in_seat, aside) for strap in straps]
    own = [
        _range(middle, (each.high - each.low) / 2, track, strap.width / 2 + ROOM)
        for middle, each, track, strap in zip(middles, ranges, tracks, straps, strict=True)
    ]
    shared = shared_slot(own)
    up, over = (shared.low + shared.high) / 2, (shared.left + shared.right) / 2
    at = up[:, None] * along + over[:, None] * aside
    y = float(np.mean([strap.cut.in_seat[0, 1] for strap in straps]))
    return _slot(shared, (float(at[0, 0]), y, float(at[0, 2])), straps, middles)


def _range(middle: Mm, reach: Mm, track: Mm, half: Mm) -> SlotRange:
    return SlotRange(middle - reach, middle + reach, track - half, track + half)


def _in_seat(direction: Points, case: Case) -> Points:
    return turned(direction, ORIGIN, -column(case.setup.recline))


def _slot(
    shared: SharedSlot,
    centre: tuple[float, float, float],
    straps: Sequence[SlottedStrap],
    middles: Sequence[Floats],
) -> OneForAll:
    ends = [(float(at[0]), float(strap.cut.height[0]) / 2) for at, strap in zip(middles, straps, strict=True)]
    return OneForAll(
        shared=shared,
        centre=(float(centre[0]), float(centre[1]), float(centre[2])),
        length=max(
            float(shared.right[0] - shared.left[0]), *(float(strap.cut.length[0]) for strap in straps)
        ),
        height=max(float(strap.cut.height[0]) for strap in straps),
        tall=max(at + half for at, half in ends) - min(at - half for at, half in ends),
    )


def guide_wrap(strap: SlottedStrap) -> float:
    """How much the guide bends the strap of the first case, deg; 0 without one."""
    tight = strap.tight
    if not strap.name.startswith("shoulder") or np.array_equal(tight.first[0], tight.anchor[0]):
        return 0.0
    before, after = unit(tight.line[0, -3] - tight.line[0, -4]), unit(tight.line[0, -1] - tight.line[0, -2])
    return float(np.degrees(2.0 * np.arctan2(length(before - after), length(before + after))))
