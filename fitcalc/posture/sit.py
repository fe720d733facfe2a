"""The driver in the car: from links, seat, pads and wheel to every joint."""

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from fitcalc.body.links import Links
from fitcalc.documents.car import Car
from fitcalc.documents.car_pedals import Pedal
from fitcalc.documents.setup import Setup
from fitcalc.geometry.side import LEFT, RIGHT, at_y
from fitcalc.posture.cases import column
from fitcalc.posture.foot import Foot, chosen, heel_down, planted_slide, resting_slide, sole_flat
from fitcalc.posture.limbs import Arm, Leg, arm_to, leg_to
from fitcalc.posture.pads import Pad, pad_at
from fitcalc.posture.seat import back_angle, hip_point
from fitcalc.posture.trunk import Trunk, trunk_on
from fitcalc.posture.wheel import grips
from fitcalc.units import Deg, Points


@dataclass(frozen=True, eq=False)
class FeetOnPedal:
    """One pedal with its foot, at rest and at the stop."""

    rest_pad: Pad
    full_pad: Pad
    rest: Foot
    full: Foot


@dataclass(frozen=True, eq=False)
class OnPedal:
    """One pedal with its foot and leg, at rest and at the stop."""

    rest_pad: Pad
    full_pad: Pad
    rest: Leg
    full: Leg


@dataclass(frozen=True, eq=False)
class Sitting:
    """The driver seated. `hands` is None where no wheel was measured.

    Attributes:
        hips: left and right hip joint.
        pedals: by name, in the order clutch, brake, throttle.
        hands: left and right arm, wheel straight ahead.
    """

    trunk: Trunk
    hips: tuple[Points, Points]
    pedals: Mapping[str, OnPedal]
    hands: tuple[Arm, Arm] | None


def sit(car: Car, links: Links, setup: Setup) -> Sitting:
    """Seat the driver: hips from the seat, trunk along its back, feet on the pads, hands on the wheel."""
    trunk, hips = trunk_and_hips(car, links, setup)
    pedals = {name: on_pedal(name, car, setup, trunk, hips, links) for name in car.fitted_pedals()}
    return Sitting(trunk, hips, pedals, hands_at(car, links, setup, trunk, column(0.0)))


def trunk_and_hips(car: Car, links: Links, setup: Setup) -> tuple[Trunk, tuple[Points, Points]]:
    """What depends on the seat alone: trunk and head, left and right hip joint."""
    trunk = trunk_on(hip_point(car, links, setup), back_angle(car, setup), links)
    middle = trunk.hip[:, 1]
    left, right = (at_y(trunk.hip, middle + side * links.hip_half_spacing) for side in (LEFT, RIGHT))
    return trunk, (left, right)


def on_pedal(
    name: str, car: Car, setup: Setup, trunk: Trunk, hips: tuple[Points, Points], links: Links
) -> OnPedal:
    """One pedal with the leg that works it."""
    hip = hips[0] if car.fitted_pedals()[name].foot == "left" else hips[1]
    return with_leg(feet_on_pedal(name, car, setup, links), hip, trunk, links)


def feet_on_pedal(name: str, car: Car, setup: Setup, links: Links) -> FeetOnPedal:
    """One pedal with the foot that works it, wherever the seat is."""
    pedal = car.fitted_pedals()[name]
    rest_pad, full_pad = (
        pad_at(pedal, getattr(setup, name), column(setup.box_travel), at) for at in (0.0, 1.0)
    )
    return feet_on_pads(name, rest_pad, full_pad, car, links)


def feet_on_pads(name: str, rest_pad: Pad, full_pad: Pad, car: Car, links: Links) -> FeetOnPedal:
    """The foot on a pedal whose pads are known, at rest and at the stop."""
    pedal = car.fitted_pedals()[name]
    rest = foot_at_rest(name, rest_pad, pedal, links, car)
    return FeetOnPedal(rest_pad, full_pad, rest, foot_pressed(name, rest, full_pad, pedal, links, car))


def with_leg(feet: FeetOnPedal, hip: Points, trunk: Trunk, links: Links) -> OnPedal:
    """The same with the leg from a hip joint."""
    rest, full = (leg_to(hip, foot, trunk, links) for foot in (feet.rest, feet.full))
    return OnPedal(feet.rest_pad, feet.full_pad, rest, full)


def foot_at_rest(name: str, pad: Pad, pedal: Pedal, links: Links, car: Car) -> Foot:
    """The foot on a released pedal: heel down where the ball then reaches; the clutch is met with the sole flat."""
    if name == "clutch":
        flat, clear = sole_flat(pad, links, car)
        return chosen(clear, flat, lambda: heel_down(pad, links, car))
    return _flat_where_out_of_reach(
        heel_down(pad, links, car, resting_slide(pad, pedal, links, car)), pad, links, car
    )


def _flat_where_out_of_reach(down: Foot, pad: Pad, links: Links, car: Car) -> Foot:
    """The sole flat where the ball does not reach the pad with the heel down, and the shoe's back clears the floor."""
    if not np.any(down.lift > 0.0):
        return down
    flat, clear = sole_flat(pad, links, car)
    return chosen((down.lift > 0.0) & clear, flat, lambda: down)


def foot_pressed(name: str, rest: Foot, pad: Pad, pedal: Pedal, links: Links, car: Car) -> Foot:
    """The foot at part or full travel.

    The throttle is worked about a planted heel until the ball comes to the edge of the pad, then the heel slides after
    it. On the other pedals the ball stays where it rested on the pad, or lower where the sole would stand too steep: they
    are pushed with the sole flat where the shoe's back then clears the floor; where it does not, the heel slides along it.
    """
    if name == "throttle":
        return _throttle_pressed(rest, pad, pedal, links, car)
    slide = np.minimum(np.where(rest.lift > 0.0, 0.0, rest.slide), resting_slide(pad, pedal, links, car))
    flat, clear = sole_flat(pad, links, car, slide)
    return chosen(clear, flat, lambda: heel_down(pad, links, car, slide))


def _throttle_pressed(rest: Foot, pad: Pad, pedal: Pedal, links: Links, car: Car) -> Foot:
    edge = column(pedal.pad_height) / 2
    turned = heel_down(pad, links, car, np.clip(planted_slide(rest, pad, links), -edge, edge))
    return _flat_where_out_of_reach(turned, pad, links, car)


def hands_at(car: Car, links: Links, setup: Setup, trunk: Trunk, turn: Deg) -> tuple[Arm, Arm] | None:
    """Both arms with the wheel turned by `turn` (positive = clockwise as the driver sees it)."""
    if car.steering_wheel is None:
        return None
    left, right = grips(car.steering_wheel, setup, turn)
    return arm_to(trunk.shoulder_left, left, trunk, links), arm_to(trunk.shoulder_right, right, trunk, links)
