"""Where the straight straps cross the shell: the slot to cut, for one driver or for several."""

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.straps import Strap, wide
from fitcalc.geometry.crossing import Crossing, crossing
from fitcalc.geometry.degrees import length, tand, unit
from fitcalc.geometry.lines import profile_length
from fitcalc.geometry.side import LEFT, RIGHT, across, at_y, dot
from fitcalc.posture.cases import column, xyz
from fitcalc.units import Bools, Deg, Floats, Mm, Points

ACROSS = np.array([[0.0, 1.0, 0.0]])
WEBBING = 3.0
"""Thickness of webbing with its folds, mm: common practice, no source."""
ROOM = 5.0
"""Room at each end and on each side of the strap in a new slot, mm: design inference."""
STEEP = 0.2
"""Least sine of the angle between strap and shell that a slot is worked out for: design inference."""
LAP_SIDES = {"lap_left": LEFT, "lap_right": RIGHT}


@dataclass(frozen=True, eq=False)
class SlotCut:
    """A slot that leaves a strap straight.

    Attributes:
        strap: which strap, as in `shoulder_left`.
        at: its middle in the car, on the surface sat against.
        in_seat: its middle in the seat's own frame.
        along: length on the shell in side view: from the junction up the back, from the front edge along
            the cushion, or in the side wall from the middle of the pelvis toward the anchor.
        upward: direction on the shell in which `along` grows.
        slot_line: direction of the slot.
        length: along the slot.
        height: square to the slot, on the shell.
        miss: how far the strap ends short of the shell, so that no slot is needed; else 0.
        over: how far the slot would reach beyond the shell's outer edge: the rim of the back, the front edge of
            the cushion; 0 in the side wall, whose height no profile gives.
    """

    strap: str
    at: Points
    in_seat: Points
    along: Mm
    upward: Points
    slot_line: Points
    length: Mm
    height: Mm
    miss: Mm
    over: Mm

    @property
    def passes_over(self) -> Bools:
        """Whether the strap itself passes over the shell's outer edge."""
        return self.over > self.height / 2

    @property
    def needed(self) -> Bools:
        """Whether the strap meets the shell at all."""
        return ~((self.miss > 0.0) | self.passes_over)


@dataclass(frozen=True, eq=False)
class SlotRange:
    """Where a slot bends a strap no more than allowed, as `SlotCut.along`, and its ends across the car."""

    low: Mm
    high: Mm
    left: Mm
    right: Mm


@dataclass(frozen=True, eq=False)
class SharedSlot:
    """One slot for several drivers.

    Attributes:
        low, high: positions that suit all; where there are none, both are the middle between the two that
            differ most.
        left, right: ends of the slot across the car.
        shortfall: how far the nearest positions of the two that differ most lie apart; 0 where one slot
            suits all.
    """

    low: Mm
    high: Mm
    left: Mm
    right: Mm
    shortfall: Mm


def in_seat_frame(points: Points, case: Case) -> Points:
    """Points of the car in the seat's own frame, whatever the rework does to the seat."""
    return wide(case.seat_move.undone(points) - xyz(case.car.seat.junction), case)


def back(case: Case) -> Points:
    """The back of the seat from the junction up, `(n, k, 3)`."""
    return _whole_shell(case)[:, case.car.seat.profile.index((0.0, 0.0)) :]


def cushion(case: Case) -> Points:
    """The cushion from its front edge to the junction, `(n, k, 3)`."""
    return _whole_shell(case)[:, : case.car.seat.profile.index((0.0, 0.0)) + 1]


def shoulder_cut(name: str, strap: Strap, width: Mm, case: Case) -> SlotCut:
    """The slot in the back that leaves a shoulder strap straight."""
    shell = back(case)
    spot = crossing(strap.leaves, strap.first, shell)
    return _level_cut(name, strap, width, spot, spot.along - profile_length(shell), case)


def crotch_cut(name: str, strap: Strap, width: Mm, case: Case) -> SlotCut:
    """The slot in the cushion that leaves a crotch strap straight."""
    spot = crossing(strap.leaves, strap.first, cushion(case))
    return _level_cut(name, strap, width, spot, -spot.along, case)


def lap_cut(name: str, strap: Strap, width: Mm, case: Case) -> SlotCut:
    """The slot in the side of the shell that leaves a lap strap straight."""
    run, side = strap.anchor - strap.leaves, LAP_SIDES[name]
    wall = column(case.car.seat.junction.y) + side * column(case.car.seat.half_width)
    outward = side * run[:, 1]
    gap = side * (wall - strap.leaves[:, 1])
    share = np.divide(gap, outward, out=np.zeros(case.count), where=outward > 0)
    at = at_y(strap.leaves + np.clip(share, 0.0, 1.0)[:, None] * run, wall)
    upward = unit(at_y(run, np.zeros(case.count)))
    miss = np.maximum(gap - np.maximum(outward, 0.0), 0.0)
    along = dot(at - strap.line[:, 0], upward)
    spot = Crossing(wide(at, case), along, upward, miss)
    return _cut(name, spot, run, across(upward), width, case)


def allowed_range(cut: SlotCut, strap: Strap, most: Deg, width: Mm) -> SlotRange:
    """Where on the shell a slot bends the straight strap by no more than `most`.

    Source: plane triangle of the strap's two runs and the slot; the shoulder's roundness is left out.
    """
    before, after = length(cut.at - strap.leaves), length(strap.first - cut.at)
    both, tangent = before + after, tand(most)
    root = np.sqrt(both * both + 4.0 * tangent * tangent * before * after)
    aside = np.divide(root - both, 2.0 * tangent, out=np.zeros_like(both), where=tangent > 0)
    reach = aside / _steepness(cut, strap.first - strap.leaves)
    half = width / 2 + ROOM
    y = cut.at[:, 1]
    return SlotRange(cut.along - reach, cut.along + reach, y - half, y + half)


def shared_slot(ranges: Sequence[SlotRange]) -> SharedSlot:
    """One slot for all the drivers of one seat, or by how much there is none."""
    low = np.max(np.broadcast_arrays(*(each.low for each in ranges)), axis=0)
    high = np.min(np.broadcast_arrays(*(each.high for each in ranges)), axis=0)
    left = np.min(np.broadcast_arrays(*(each.left for each in ranges)), axis=0)
    right = np.max(np.broadcast_arrays(*(each.right for each in ranges)), axis=0)
    shortfall = np.maximum(low - high, 0.0)
    return SharedSlot(low - shortfall / 2, high + shortfall / 2, left, right, shortfall)


def _level_cut(name: str, strap: Strap, width: Mm, spot: Crossing, beyond: Mm, case: Case) -> SlotCut:
    """A slot across the car; `beyond` is how far its middle lies over the shell's outer edge, negative on the shell."""
    cut = _cut(name, spot, strap.first - strap.leaves, ACROSS, width, case)
    return replace(cut, over=np.maximum(beyond + cut.height / 2, 0.0))


def _cut(name: str, spot: Crossing, run: Points, slot_line: Points, width: Mm, case: Case) -> SlotCut:
    slot_line, thickness = wide(slot_line, case), column(case.car.seat.shell_thickness)
    heading = unit(run)
    normal = np.cross(spot.line, slot_line)
    steep = np.maximum(np.abs(dot(heading, normal)), STEEP)
    drift, lean = np.abs(dot(heading, slot_line)) / steep, np.abs(dot(heading, spot.line)) / steep
    return SlotCut(
        strap=name,
        at=spot.at,
        in_seat=in_seat_frame(spot.at, case),
        along=spot.along,
        upward=spot.line,
        slot_line=slot_line,
        length=case.full(width + thickness * drift + 2 * ROOM),
        height=case.full(WEBBING / steep + thickness * lean + 2 * ROOM),
        miss=spot.miss,
        over=np.zeros(case.count),
    )


def _steepness(cut: SlotCut, run: Points) -> Floats:
    normal = np.cross(cut.upward, cut.slot_line)
    return np.maximum(np.abs(dot(unit(run), normal)), STEEP)


def _whole_shell(case: Case) -> Points:
    return np.broadcast_to(case.shell, (case.count, *case.shell.shape[1:]))
