"""The straps as the rules look at them: angles, spacings, widths, lengths."""

from collections.abc import Mapping

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, unmeasured
from fitcalc.checks.pelvis_straps import groin, lap_contact
from fitcalc.checks.slot_figures import SlottedStrap, slot_figures, slotted_straps
from fitcalc.checks.slots import cushion
from fitcalc.checks.strap_forces import spine_load
from fitcalc.checks.straps import SIDES, crotch_anchors, lap_anchor, shoulder_anchor, wide
from fitcalc.documents.car_cockpit import Harness
from fitcalc.geometry.crossing import crossing
from fitcalc.geometry.degrees import atan2d, cosd, length
from fitcalc.geometry.side import at_y, point
from fitcalc.posture.cases import column, xyz
from fitcalc.units import Deg, Mm, Points

KILONEWTON = np.array([1000.0])
SHOULDER = "harness.shoulder"
LAP = "harness.lap"
CROTCH = "harness.crotch"


def harness_figures(case: Case) -> list[Figure]:
    """Every figure on the straps of a car; without a harness in the file, what that leaves unmeasured."""
    harness = case.car.harness
    if harness is None:
        return _nothing_measured()
    straps = {strap.name: strap for strap in slotted_straps(harness, case)}
    return [
        measured(case, "harness.points", column(harness.points), _anchors(harness, case)),
        *(figure for side in SIDES for figure in _shoulder(side, straps[f"shoulder_{side}"], case)),
        *_shoulder_pair(harness, straps, case),
        *(figure for side in SIDES for figure in _lap(harness, side, straps[f"lap_{side}"], case)),
        measured(case, f"{LAP}.width", *_width(harness.lap_width, lap_anchor(harness, "left", case))),
        *_crotch(harness, case),
        *slot_figures(straps.values(), case),
    ]


def strap_drop(start: Points, end: Points) -> Deg:
    """Side-view angle of a straight strap from level, positive = its end is lower.

    Source: plane geometry; sense as in docs/frame.md.
    """
    return atan2d(start[:, 2] - end[:, 2], end[:, 0] - start[:, 0])


def rim(case: Case) -> Points:
    """The upper rim of the seat's back, where the rework carries it, `(n, 3)`."""
    return wide(case.shell[:, -1], case)


def _shoulder(side: str, slotted: SlottedStrap, case: Case) -> list[Figure]:
    strap, tight, top = slotted.straight, slotted.tight, rim(case)
    own, drop, run = f"{SHOULDER}_{side}", strap_drop(strap.leaves, strap.first), strap.first - strap.leaves
    level = at_y(top, strap.first[:, 1])
    spine = spine_load(np.zeros(1), KILONEWTON, drop, case.sitting.trunk.recline)
    plan = atan2d(-SIDES[side] * run[:, 1], run[:, 0])
    gained = np.degrees(cosd(drop) / length(at_y(run, 0.0)))
    ends = (strap.leaves, strap.first)
    rows = {
        "side_angle": (drop, ends),
        "rim_angle": (strap_drop(level, strap.first), (level, strap.first)),
        "plan_angle": (plan, ends),
        "behind_seat": (strap.first[:, 0] - top[:, 0], (level, strap.first)),
        "sensitivity": (gained, ends),
        "spine_load": (spine, ends),
        "length": (tight.length, (tight.leaves, tight.anchor)),
    }
    return [measured(case, f"{own}.{name}", *row, f"{SHOULDER}.{name}", side) for name, row in rows.items()]


def _shoulder_pair(harness: Harness, straps: Mapping[str, SlottedStrap], case: Case) -> list[Figure]:
    left, right = (straps[f"shoulder_{side}"].straight.first for side in SIDES)
    spacing, width = right[:, 1] - left[:, 1], column(harness.shoulder_width)
    figures = [measured(case, f"{SHOULDER}.spacing", spacing, (left, right))]
    if case.driver.kit.restraint > 0:
        gap = measured(case, f"{SHOULDER}.inner_gap", spacing - width, (left, right))
        return [
            *figures,
            gap,
            measured(case, f"{SHOULDER}.width_restraint", *_width(harness.shoulder_width, left)),
        ]
    return [*figures, measured(case, f"{SHOULDER}.width", *_width(harness.shoulder_width, left))]


def _width(width: Mm | float, at: Points) -> tuple[Mm, tuple[Points, Points]]:
    """Width of a webbing, and its two edges where it is held."""
    wide = column(width)
    aside = point(0.0, wide / 2, 0.0)
    return wide, (at - aside, at + aside)


def _anchors(harness: Harness, case: Case) -> tuple[Points, ...]:
    """Every anchor of the harness."""
    pairs = [place(harness, side, case) for place in (shoulder_anchor, lap_anchor) for side in SIDES]
    return (*pairs, *(xyz(anchor) for anchor in harness.crotch))


def _lap(harness: Harness, side: str, slotted: SlottedStrap, case: Case) -> list[Figure]:
    own, anchor, contact = f"{LAP}_{side}", lap_anchor(harness, side, case), lap_contact(case)
    tight, under = slotted.tight, cushion(case)
    bottom, junction = crossing(contact, anchor, under).at, under[:, -1]
    level = at_y(contact, anchor[:, 1])
    rows = {
        "side_angle": (strap_drop(contact, anchor), (level, anchor)),
        "junction": (junction[:, 0] - bottom[:, 0], (junction, bottom)),
        "length": (tight.length, (tight.leaves, tight.anchor)),
    }
    return [measured(case, f"{own}.{name}", *row, f"{LAP}.{name}", side) for name, row in rows.items()]


def _crotch(harness: Harness, case: Case) -> list[Figure]:
    if not harness.crotch:
        return []
    anchors, start = crotch_anchors(harness, case), groin(case)
    left, right = anchors[:, 0], anchors[:, -1]
    middle = (left + right) / 2
    lean = atan2d(middle[:, 0] - start[:, 0], start[:, 2] - middle[:, 2])
    if len(harness.crotch) == 1:
        ahead = -lean - case.sitting.trunk.recline
        return [measured(case, f"{CROTCH}.chest_line_angle", ahead, (start, middle))]
    return [
        measured(case, f"{CROTCH}.side_angle", lean, (start, middle)),
        measured(case, f"{CROTCH}.spacing", right[:, 1] - left[:, 1], (left, right)),
    ]


def _nothing_measured() -> list[Figure]:
    shoulder, lap = ("side_angle", "rim_angle", "plan_angle", "spine_load"), ("side_angle", "junction")
    both = [(SHOULDER, name, side) for side in SIDES for name in shoulder]
    both += [(LAP, name, side) for side in SIDES for name in lap]
    pairs = [unmeasured(f"{own}_{side}.{name}", "harness", f"{own}.{name}", side) for own, name, side in both]
    return [
        *pairs,
        unmeasured(f"{SHOULDER}.spacing", "harness"),
        unmeasured(f"{CROTCH}.side_angle", "harness"),
    ]
