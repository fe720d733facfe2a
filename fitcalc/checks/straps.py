"""What the straps have in common: a strap pulled tight, its slot, its anchors."""

from dataclasses import dataclass

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.documents.car_cockpit import Harness
from fitcalc.documents.car_seat import Slot
from fitcalc.geometry.side import LEFT, RIGHT, across, leaning, point, scaled
from fitcalc.posture.cases import column, xyz
from fitcalc.units import Deg, Mm, Points

SIDES = {"left": LEFT, "right": RIGHT}


@dataclass(frozen=True, eq=False)
class Strap:
    """One strap, pulled tight.

    Attributes:
        line: `(n, k, 3)`, from its contact on the front of the body to its anchor.
        leaves: where it leaves the body.
        gate: where it passes its slot; where there is no slot, its anchor.
        first: the first guide it is bent over, or its anchor.
        length: along the strap, from its contact on the front of the body to its anchor.
        turn: how much its slot bends it, 0 to 180; 0 where there is no slot.
        wrap: how much the body bends it.
    """

    line: Points
    leaves: Points
    gate: Points
    first: Points
    anchor: Points
    length: Mm
    turn: Deg
    wrap: Deg


def wide(points: Points, case: Case) -> Points:
    """Points repeated for every case, `(n, 3)`."""
    return case.wide(points)


def slot_for(strap: str, case: Case) -> Slot | None:
    """The slot already cut for a strap, as in `shoulder_left`."""
    return next((slot for slot in case.car.seat.slots if slot.strap == strap), None)


def slot_centre(slot: Slot, case: Case) -> Points:
    """The middle of a slot in the car, where the rework carries the seat."""
    in_seat = point(column(slot.x), column(slot.y), column(slot.z))
    return wide(case.seat_move.carried(xyz(case.car.seat.junction) + in_seat), case)


def slot_ends(slot: Slot, width: Mm, along: Points, case: Case) -> tuple[Points, Points]:
    """How far the middle of a strap may go along its slot; a short one leaves its own middle."""
    middle = slot_centre(slot, case)
    play = np.maximum(column(slot.length) - width, 0.0) / 2
    return wide(middle - scaled(along, play), case), wide(middle + scaled(along, play), case)


def on_pelvis(case: Case, ahead: Mm, above: Mm) -> Points:
    """A point of the pelvis given for an upright trunk, leant back with it; on the middle plane."""
    trunk = case.sitting.trunk
    up = leaning(trunk.recline)
    return wide(trunk.hip + scaled(up, above) - scaled(across(up), ahead), case)


def shoulder_anchor(harness: Harness, side: str, case: Case) -> Points:
    """The anchor of a shoulder strap, raised by the rework."""
    anchor = xyz(getattr(harness, f"shoulder_{side}"))
    return wide(anchor + point(0.0, 0.0, column(case.setup.shoulder_anchor_raise)), case)


def lap_anchor(harness: Harness, side: str, case: Case) -> Points:
    """The anchor of a lap strap."""
    return wide(xyz(getattr(harness, f"lap_{side}")), case)


def crotch_anchors(harness: Harness, case: Case) -> Points:
    """The crotch straps' anchors from left to right, `(n, k, 3)`; at least one."""
    anchors = np.stack([wide(xyz(anchor), case) for anchor in harness.crotch], axis=1)
    order = np.argsort(anchors[..., 1], axis=1)
    return np.take_along_axis(anchors, order[..., None], axis=1)
