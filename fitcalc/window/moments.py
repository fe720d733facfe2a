"""The driver at one moment of a movement: a pedal part way down, or the wheel turned."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace

import numpy as np

from fitcalc.checks.cleats import closest_shoe
from fitcalc.checks.shoe_sweep import (
    TOE_OUT,
    Least,
    ShoeSweep,
    half_width_turned,
    least_to_bulkhead,
    least_to_surface,
    least_to_thing,
    shoe_outline,
)
from fitcalc.checks.surroundings import floor, obstacles, roof
from fitcalc.checks.wheel import fist_figures, legs_of
from fitcalc.documents.car import Car
from fitcalc.fit.result import Result
from fitcalc.posture.cases import column
from fitcalc.posture.limbs import Arm, leg_to
from fitcalc.posture.pads import pad_at, pad_edges
from fitcalc.posture.sit import OnPedal, Sitting, foot_pressed, hands_at
from fitcalc.posture.wheel import grips
from fitcalc.units import Floats
from fitcalc.window.movements import STEERING
from fitcalc.window.previews import checks_seated

TURNS = np.linspace(-1.0, 1.0, 49)
"""Parts of the turning range at which the worst one is looked for."""


@dataclass(frozen=True)
class Nearest:
    """What comes closest: the figure's id, the room in mm or the angle in deg, and the part of the range."""

    id: str
    room: float
    at: float


def at_moment(result: Result, name: str, part: float) -> Result:
    """The result with one pedal pressed or the wheel turned: the posture is new, its joint angles with it."""
    sitting = _turned(result, part) if name == STEERING else _pressed(result, name, part)
    return replace(result, sitting=sitting, checks=tuple(checks_seated(result, sitting)))


def nearest_now(result: Result, name: str, part: float = 0.0) -> Nearest | None:
    """What the shoe on a pedal in the posture of this result, or a fist on the wheel turned so far, is closest to."""
    if name == STEERING:
        return _nearest_fist(result, part)
    worked, links = result.sitting.pedals[name], result.links
    pedal = result.car.fitted_pedals()[name]
    half, pad_half = half_width_turned(links, TOE_OUT), column(pedal.pad_width) / 2
    y, pad_y = worked.rest.foot.heel[:, 1], worked.rest_pad.centre[:, 1]
    still = ShoeSweep(
        shoes=np.repeat(shoe_outline(worked.rest.foot, links)[:, None], 2, axis=1),
        pads=np.repeat(np.stack(pad_edges(worked.rest_pad, pedal), axis=1)[:, None], 2, axis=1),
        low=y - half,
        high=y + half,
        pad_low=pad_y - pad_half,
        pad_high=pad_y + pad_half,
    )
    return _least(dict(_rooms(result.car, still)))


def worst(result: Result, name: str) -> tuple[Nearest, ...]:
    """The worst moments of a movement: where shoe or fist passes closest; of the wheel also where an arm is straightest."""
    if name == STEERING:
        return tuple(each for each in (_closest_fist(result), _straightest_arm(result)) if each is not None)
    near = _least({id.split(".")[-1]: least for id, least in closest_shoe(result.case, name).items()})
    return () if near is None else (near,)


def _closest_fist(result: Result) -> Nearest | None:
    found = (_nearest_fist(result, float(part)) for part in TURNS)
    return min((each for each in found if each is not None), key=lambda each: each.room, default=None)


def _nearest_fist(result: Result, part: float) -> Nearest | None:
    """What the fists come closest to with the wheel turned so far: a sweep that stands still."""
    wheel = result.car.steering_wheel
    if wheel is None:
        return None
    places = np.stack(grips(wheel, result.setup, column(part * wheel.lock)), axis=1)
    near = [
        Nearest(each.label, float(each.value[0]), part)
        for each in fist_figures(result.case, places, legs_of(result.case))
        if each.value is not None
    ]
    return min(near, key=lambda each: each.room, default=None)


def _straightest_arm(result: Result) -> Nearest | None:
    arms = _hands(result, TURNS)
    if arms is None:
        return None
    straightest = np.maximum(*(arm.elbow_angle + arm.shortfall for arm in arms))
    at = int(np.argmax(straightest))
    return Nearest("elbow", float(max(arm.elbow_angle[at] for arm in arms)), float(TURNS[at]))


def _hands(result: Result, part: Floats | float) -> tuple[Arm, Arm] | None:
    """Both arms with the wheel turned by a part of its range."""
    wheel = result.car.steering_wheel
    turn = column(part) * (float(wheel.lock) if wheel else 0.0)
    return hands_at(result.car, result.links, result.setup, result.sitting.trunk, turn)


def _pressed(result: Result, name: str, part: float) -> Sitting:
    car, setup, links, sitting = result.car, result.setup, result.links, result.sitting
    pedal, worked = car.fitted_pedals()[name], sitting.pedals[name]
    pad = pad_at(pedal, getattr(setup, name), column(setup.box_travel), part)
    foot = worked.rest.foot if part == 0.0 else foot_pressed(name, worked.rest.foot, pad, pedal, links, car)
    moved = OnPedal(pad, worked.full_pad, leg_to(worked.rest.hip, foot, sitting.trunk, links), worked.full)
    others = {other: at for other, at in sitting.pedals.items() if other != name}
    is_left = worked.rest.hip is sitting.hips[0]
    # the drawing shows the left leg on the first of its pedals and the right leg on the last
    return replace(sitting, pedals={name: moved} | others if is_left else others | {name: moved})


def _turned(result: Result, part: float) -> Sitting:
    return replace(result.sitting, hands=_hands(result, part))


def _rooms(car: Car, still: ShoeSweep) -> Iterator[tuple[str, Least]]:
    for surface in (roof(car), floor(car)):
        if surface is not None:
            yield surface.key, least_to_surface(still, surface)
    if car.footwell.bulkhead is not None:
        yield "bulkhead", least_to_bulkhead(still, column(car.footwell.bulkhead))
    for thing in obstacles(car):
        yield thing.key, least_to_thing(still, thing)


def _least(found: Mapping[str, Least]) -> Nearest | None:
    """The closest but the floor, on which the shoe stands."""
    near = [
        Nearest(key, float(each.room[0]), float(each.travel[0]))
        for key, each in found.items()
        if key != "floor"
    ]
    return min(near, key=lambda each: each.room, default=None)
