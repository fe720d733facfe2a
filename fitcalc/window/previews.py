"""Results for a drag: the driver is seated anew at once, and what takes longer waits until the hand rests."""

from collections.abc import Iterator
from dataclasses import replace

from fitcalc.body.links import Links, links_for
from fitcalc.checks.check import Check, Figure
from fitcalc.checks.limits import LimitSet
from fitcalc.documents.setup import Setup
from fitcalc.fit.result import Result
from fitcalc.fit.seating import seated
from fitcalc.posture.limbs import Leg
from fitcalc.posture.sit import Sitting, sit
from fitcalc.units import Deg, Points
from fitcalc.window.results import AS_FOUND, Choice, Results, links_now
from fitcalc.window.work import Work

CARRIED = ("side_angle", "slot_turn")
"""Strap figures whose evidence the straps are drawn through."""


def first_results(work: Work) -> Results:
    """Results for the first paint: the driver is seated, nothing is checked yet, and no limit is read."""
    car, driver = work.car.document, work.driver
    links, rules = links_for(driver), LimitSet(car.rules, "", (), (), (), ())
    found = Result(car, driver, links, AS_FOUND, rules, sit(car, links, AS_FOUND), {}, (), ())
    return Results(work, Choice(), found, found, None, None, is_checked=False)


def posed(work: Work, last: Results) -> Results:
    """Results in which only the posture is new.

    Joint angles are read from it; every other figure has no value, and of the straps' figures the evidence goes along
    with the body, so that the straps are still drawn.
    """
    same_start = work.car.document is last.found.car and work.driver is last.found.driver
    links = links_now(work, last)
    found = last.found if same_start else _posed(work, AS_FOUND, links, last.found)
    after = found if work.setup == AS_FOUND else _posed(work, work.setup, links, last.after, found)
    return Results(work, last.choice, found, after, None, last.other, is_checked=False)


def _posed(work: Work, setup: Setup, links: Links, last: Result, *known: Result) -> Result:
    car, driver = work.car.document, work.driver
    sitting = seated(car, links, setup, last, *known)
    return Result(car, driver, links, setup, last.rules, sitting, {}, (), tuple(checks_seated(last, sitting)))


def checks_seated(last: Result, sitting: Sitting) -> Iterator[Check]:
    """The checks that the sketch shows something of while nothing but the posture is known."""
    angles = dict(_angles(sitting))
    for check in last.checks:
        figure = check.figure
        if figure.id in angles:
            value, evidence = angles[figure.id]
            is_same = value is figure.value
            yield check if is_same else replace(check, figure=replace(figure, value=value, evidence=evidence))
        elif figure.id.startswith("harness.") and figure.id.endswith(CARRIED):
            yield replace(check, figure=_carried(figure, last.sitting, sitting))
        elif figure.id == "head.hoop_line":
            yield replace(check, figure=replace(figure, value=None, evidence=()))


def _angles(sitting: Sitting) -> Iterator[tuple[str, tuple[Deg, tuple[Points, ...]]]]:
    trunk = sitting.trunk
    yield "posture.recline", (trunk.recline, (trunk.hip, trunk.shoulder))
    for side, arm in zip(("left", "right"), sitting.hands or (), strict=False):
        yield f"posture.elbow_{side}", (arm.elbow_angle, (arm.shoulder, arm.elbow, arm.grip))
        yield f"posture.shoulder_{side}", (arm.shoulder_angle, (arm.shoulder, arm.elbow, arm.grip))
    for name, at in sitting.pedals.items():
        yield f"posture.knee_released.{name}", (at.rest.knee_angle, _knee(at.rest))
        yield f"posture.hip.{name}", (at.rest.hip_angle, (trunk.shoulder, at.rest.hip, at.rest.knee))


def _knee(leg: Leg) -> tuple[Points, ...]:
    return leg.hip, leg.knee, leg.ankle


def _carried(figure: Figure, before: Sitting, after: Sitting) -> Figure:
    """A strap's figure that waits to be measured, its evidence moved as far as the joint that the strap lies on."""
    joint = "shoulder" if "shoulder" in figure.id else "hip"
    if after.trunk is before.trunk:
        return replace(figure, value=None)
    moved: Points = getattr(after.trunk, joint) - getattr(before.trunk, joint)
    return replace(figure, value=None, evidence=tuple(point + moved for point in figure.evidence))
