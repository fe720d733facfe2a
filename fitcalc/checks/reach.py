"""Gear knob, switches and pulls within reach of a strapped-in driver, and room for the elbows."""

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, nearest_of, unmeasured
from fitcalc.checks.surroundings import slugs
from fitcalc.documents.car_cockpit import Control, SteeringWheel
from fitcalc.geometry.degrees import length
from fitcalc.geometry.side import row_of
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.sit import hands_at
from fitcalc.units import Mm, Points

ELBOW_RADIUS = 45.0
"""Outside of the elbow in its sleeve from the elbow joint, mm: design inference, no source."""
SIDES = ("left", "right")
TURNS = (-1.0, -0.5, 0.0, 0.5, 1.0)


def reach_figures(case: Case) -> list[Figure]:
    """What the hands must get to, and where the elbows go."""
    return [*_gears(case), *_controls(case), *_elbows(case)]


def arm_left(case: Case, shoulder: Points, target: Points) -> Mm:
    """Straight arm, shoulder joint to fist, less the distance to a target."""
    return case.links.upper_arm + case.links.forearm - length(target - shoulder)


def _gears(case: Case) -> list[Figure]:
    lever, trunk = case.car.gear_lever, case.sitting.trunk
    if lever is None:
        return [unmeasured("reach.gear.1", "gear_lever", "reach.gear", "1")]
    shoulders = (trunk.shoulder_left, trunk.shoulder_right)
    figures = []
    for at, knob in enumerate(lever.knobs, start=1):
        left = np.maximum(*(arm_left(case, shoulder, xyz(knob)) for shoulder in shoulders))
        figures.append(measured(case, f"reach.gear.{at}", left, (xyz(knob),), "reach.gear", f"position {at}"))
    return figures


def _controls(case: Case) -> list[Figure]:
    controls = case.car.controls
    keys = slugs(control.name for control in controls)
    return [_control(case, control, key) for control, key in zip(controls, keys, strict=True)]


def _control(case: Case, control: Control, key: str) -> Figure:
    shoulder = getattr(case.sitting.trunk, f"shoulder_{control.hand}")
    left = arm_left(case, shoulder, xyz(control.at))
    points = (shoulder, xyz(control.at))
    return measured(case, f"reach.control.{key}", left, points, "reach.control", control.name)


def _elbows(case: Case) -> list[Figure]:
    wheel, cockpit = case.car.steering_wheel, case.car.cockpit
    if wheel is None or cockpit is None:
        missing = "cockpit" if cockpit is None else "steering_wheel"
        return [unmeasured(f"reach.elbow_{side}", missing, "reach.elbow_room", side) for side in SIDES]
    half = column(cockpit.side_half_width)[:, None]
    figures = []
    for side, elbows in zip(SIDES, _elbow_places(case, wheel), strict=True):
        room = half - np.abs(elbows[..., 1]) - ELBOW_RADIUS
        points = (nearest_of(elbows, room),)
        figures.append(
            measured(case, f"reach.elbow_{side}", room.min(axis=1), points, "reach.elbow_room", side)
        )
    return figures


def _elbow_places(case: Case, wheel: SteeringWheel) -> tuple[Points, Points]:
    """Left and right elbow through the turning range used, `(n, 5, 3)`."""
    lock, trunk = column(wheel.lock), case.sitting.trunk
    turned = [hands_at(case.car, case.links, case.setup, trunk, turn * lock) for turn in TURNS]
    left, right = zip(*((arms[0].elbow, arms[1].elbow) for arms in turned if arms is not None), strict=True)
    return row_of(left), row_of(right)
