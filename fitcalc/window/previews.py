"""Results for a drag: the driver is seated anew at once, and what takes longer waits until the hand rests."""

from collections.abc import Iterable, Iterator
from dataclasses import replace

from fitcalc.body.links import Links, links_for
from fitcalc.checks.check import Check, Figure
from fitcalc.checks.limits import LimitSet
from fitcalc.documents.car import Car
from fitcalc.documents.fields import Document
from fitcalc.documents.setup import Setup
from fitcalc.fit.result import Result
from fitcalc.posture.cases import column
from fitcalc.posture.limbs import Leg, leg_to
from fitcalc.posture.sit import OnPedal, Sitting, hands_at, on_pedal, sit, trunk_and_hips
from fitcalc.posture.trunk import Trunk
from fitcalc.units import Deg, Points
from fitcalc.window.results import AS_FOUND, Choice, Results
from fitcalc.window.work import Work

SEAT = ("seat", "rails")
SEAT_MOVES = ("seat_travel", "seat_raise", "recline", "cushion_insert", "back_insert")
"""Parts of the car, and values of the rework, that trunk and hips depend on."""
UNDERFOOT = ("floor", "heel_rest")
"""Parts of the footwell that feet depend on."""
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
    found = last.found if same_start else _posed(work, AS_FOUND, last.found)
    after = found if work.setup == AS_FOUND else _posed(work, work.setup, last.after)
    return Results(work, last.choice, found, after, None, last.other, is_checked=False)


def seated(car: Car, links: Links, setup: Setup, last: Result) -> Sitting:
    """The driver seated; what the change does not reach is the very same as in the last result."""
    before = last.sitting
    if links is not last.links:
        return sit(car, links, setup)
    if _same_seat(car, setup, last):
        trunk, hips = before.trunk, before.hips
    else:
        trunk, hips = trunk_and_hips(car, links, setup)
    pedals = {}
    for name, pedal in car.fitted_pedals().items():
        if _same_footing(name, car, setup, last):
            hip = hips[0] if pedal.foot == "left" else hips[1]
            pedals[name] = _from_hip(hip, trunk, links, before.pedals[name])
        else:
            pedals[name] = on_pedal(name, car, setup, trunk, hips, links)
    same_hands = trunk is before.trunk and _same_wheel(car, setup, last)
    hands = before.hands if same_hands else hands_at(car, links, setup, trunk, column(0.0))
    if same_hands and pedals == before.pedals:
        return before
    return Sitting(trunk, hips, pedals, hands)


def _from_hip(hip: Points, trunk: Trunk, links: Links, before: OnPedal) -> OnPedal:
    """A pedal with pads and feet where they were, and the leg from where the hip is now."""
    if hip is before.rest.hip:
        return before
    legs = (leg_to(hip, leg.foot, trunk, links) for leg in (before.rest, before.full))
    return OnPedal(before.rest_pad, before.full_pad, *legs)


def _same_seat(car: Car, setup: Setup, last: Result) -> bool:
    return _same_parts(SEAT, car, last.car) and _same_values(SEAT_MOVES, setup, last.setup)


def _same_footing(name: str, car: Car, setup: Setup, last: Result) -> bool:
    same_pad = _same_parts((name,), car.pedals, last.car.pedals)
    same_floor = _same_parts(UNDERFOOT, car.footwell, last.car.footwell)
    return same_pad and same_floor and _same_values((name, "box_travel"), setup, last.setup)


def _same_wheel(car: Car, setup: Setup, last: Result) -> bool:
    return car.steering_wheel is last.car.steering_wheel and setup.wheel_spacer == last.setup.wheel_spacer


def _same_parts(names: Iterable[str], one: Document, other: Document) -> bool:
    return all(getattr(one, name) is getattr(other, name) for name in names)


def _same_values(names: Iterable[str], one: Setup, other: Setup) -> bool:
    return all(getattr(one, name) == getattr(other, name) for name in names)


def _posed(work: Work, setup: Setup, last: Result) -> Result:
    car, driver = work.car.document, work.driver
    links = last.links if driver is last.driver else links_for(driver)
    sitting = seated(car, links, setup, last)
    return Result(car, driver, links, setup, last.rules, sitting, {}, (), tuple(checks_seated(last, sitting)))


def checks_seated(last: Result, sitting: Sitting) -> Iterator[Check]:
    """The checks that the sketch shows something of while nothing but the posture is known."""
    angles = dict(_angles(sitting))
    for check in last.checks:
        figure = check.figure
        if figure.id in angles:
            value, evidence = angles[figure.id]
            yield replace(check, figure=replace(figure, value=value, evidence=evidence))
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
    moved: Points = getattr(after.trunk, joint) - getattr(before.trunk, joint)
    return replace(figure, value=None, evidence=tuple(point + moved for point in figure.evidence))
