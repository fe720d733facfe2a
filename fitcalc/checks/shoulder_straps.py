"""A shoulder strap: up the chest, over the shoulder, through its slot, round the guide, to its anchor.

Shoulder and guide lie across the car, so side view gives the shortest path and the strap's drift sideways
is shared out over its length.
"""

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.straps import SIDES, Strap, shoulder_anchor, slot_ends, wide
from fitcalc.documents.car_cockpit import Harness
from fitcalc.documents.car_seat import Slot
from fitcalc.geometry.degrees import cosd, included, sind
from fitcalc.geometry.side import at_y, point
from fitcalc.geometry.taut import Roller, Taut, shared_drift, taut
from fitcalc.posture.cases import column
from fitcalc.units import Deg, Floats, Mm, Points

ARC_POINTS = 9
ACROSS = np.array([[0.0, 1.0, 0.0]])


def shoulder_roller(case: Case) -> Roller:
    """The shoulder in side view: a cylinder about the joint that carries the strap's underside."""
    return Roller(flat(wide(case.sitting.trunk.shoulder, case)), case.full(case.links.strap_above_shoulder))


def guide_roller(harness: Harness, case: Case) -> Roller | None:
    """The guide tube in side view."""
    guide = harness.guide
    if guide is None:
        return None
    centre = np.stack([case.full(column(guide.x)), case.full(column(guide.z))], axis=-1)
    return Roller(centre, case.full(column(guide.diameter) / 2))


def straight_shoulder(harness: Harness, side: str, case: Case) -> Strap:
    """The strap that the rules speak of: it meets nothing between the shoulder and its guide or anchor."""
    anchor, start, heading = _ends(harness, side, case)
    path = taut(heading, shoulder_roller(case), flat(anchor), guide_roller(harness, case))
    laid = _laid(path, start, anchor[:, 1])
    first = np.where(path.guided[:, None], laid[:, 1], anchor)
    line = np.concatenate([_on_shoulder(path, heading, start, laid[:, 0], case), laid], axis=1)
    whole = np.hypot(path.length, anchor[:, 1] - start)
    return Strap(line, laid[:, 0], anchor, first, anchor, whole, np.zeros(case.count), path.wrap)


def slotted_shoulder(harness: Harness, side: str, slot: Slot, case: Case) -> Strap:
    """The strap as its slot leads it: the slot is level and lies across the car."""
    anchor, start, heading = _ends(harness, side, case)
    low, high = slot_ends(slot, column(harness.shoulder_width), ACROSS, case)
    path = taut(heading, shoulder_roller(case), flat(low))
    rest = taut(
        path.heading, Roller(flat(low), np.zeros(case.count)), flat(anchor), guide_roller(harness, case)
    )
    free = shared_drift(start, anchor[:, 1], path.length, path.length + rest.length)
    gate = at_y(low, np.clip(free, low[:, 1], high[:, 1]))
    leaves = _laid(path, start, gate[:, 1])[:, 0]
    beyond = _laid(rest, gate[:, 1], anchor[:, 1])
    first = np.where(rest.guided[:, None], beyond[:, 1], anchor)
    line = np.concatenate([_on_shoulder(path, heading, start, leaves, case), leaves[:, None], beyond], axis=1)
    whole = np.hypot(path.length, gate[:, 1] - start) + np.hypot(rest.length, anchor[:, 1] - gate[:, 1])
    return Strap(line, leaves, gate, first, anchor, whole, 180.0 - included(leaves, gate, first), path.wrap)


def flat(points: Points) -> Points:
    """Points in side view, `(n, 2)`."""
    return points[:, [0, 2]]


def _ends(harness: Harness, side: str, case: Case) -> tuple[Points, Mm, Deg]:
    """Anchor, y on the chest, and the strap's heading up the chest."""
    trunk = case.sitting.trunk
    start = case.full(trunk.shoulder[:, 1] + SIDES[side] * case.links.strap_half_spacing)
    return shoulder_anchor(harness, side, case), start, 90.0 - case.full(trunk.recline)


def _laid(path: Taut, start: Floats, end: Floats) -> Points:
    """`leaves`, `meets`, `parts` and `end` of a path as points of the car, `(n, 4, 3)`."""
    side_view = np.stack([path.leaves, path.meets, path.parts, path.end], axis=1)
    y = shared_drift(start[:, None], end[:, None], path.so_far, path.length[:, None])
    return point(side_view[..., 0], y, side_view[..., 1])


def _on_shoulder(path: Taut, heading: Deg, start: Floats, leaves: Points, case: Case) -> Points:
    """The strap's line on the shoulder, from the chest to just before it leaves, `(n, k, 3)`."""
    roller, share = shoulder_roller(case), np.linspace(0.0, 1.0, ARC_POINTS, endpoint=False)
    normal = heading[:, None] + 90.0 - share * path.wrap[:, None]
    x = roller.centre[:, :1] + roller.radius[:, None] * cosd(normal)
    z = roller.centre[:, 1:] + roller.radius[:, None] * sind(normal)
    return point(x, start[:, None] + share * (leaves[:, 1] - start)[:, None], z)
