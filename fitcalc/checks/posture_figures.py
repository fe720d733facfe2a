"""Joint angles of the seated driver, and what heel and leg lack."""

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, unmeasured
from fitcalc.geometry.degrees import length
from fitcalc.posture.foot import heel_down
from fitcalc.posture.limbs import Leg
from fitcalc.units import Points

ARMS = ("elbow", "shoulder")


def posture_figures(case: Case) -> list[Figure]:
    """Recline and arms."""
    trunk = case.sitting.trunk
    return [measured(case, "posture.recline", trunk.recline, (trunk.hip, trunk.shoulder)), *_arms(case)]


def leg_figures(case: Case) -> list[Figure]:
    """Each leg on its pedal."""
    return [figure for name in case.sitting.pedals for figure in _leg(case, name)]


def _arms(case: Case) -> list[Figure]:
    sides = ("left", "right")
    if case.sitting.hands is None:
        return [
            unmeasured(f"posture.{joint}_{side}", "steering_wheel", f"posture.{joint}", side)
            for side in sides
            for joint in ARMS
        ]
    return [
        measured(
            case,
            f"posture.{joint}_{side}",
            getattr(arm, f"{joint}_angle"),
            (arm.shoulder, arm.elbow, arm.grip),
            f"posture.{joint}",
            side,
        )
        for side, arm in zip(sides, case.sitting.hands, strict=True)
        for joint in ARMS
    ]


def _leg(case: Case, name: str) -> list[Figure]:
    worked = case.sitting.pedals[name]
    rest, full = worked.rest, worked.full
    down = heel_down(worked.rest_pad, case.links, case.car)
    left = case.links.thigh + case.links.shank - length(full.ankle - full.hip)
    rows = [
        ("knee_released", rest.knee_angle, _knee(rest)),
        ("knee_pressed", full.knee_angle, _knee(full)),
        ("ankle", rest.ankle_angle, (rest.knee, rest.ankle, rest.foot.toe)),
        ("hip", rest.hip_angle, (case.sitting.trunk.shoulder, rest.hip, rest.knee)),
        ("heel_lift", down.lift, (down.heel, worked.rest_pad.centre)),
        ("leg_reach", left, (full.hip, full.ankle)),
    ]
    return [
        measured(case, f"posture.{joint}.{name}", value, points, f"posture.{joint}", name)
        for joint, value, points in rows
    ]


def _knee(leg: Leg) -> tuple[Points, Points, Points]:
    return leg.hip, leg.knee, leg.ankle
