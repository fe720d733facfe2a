"""The shoe on the pad: heel on the floor, heel planted while the pad moves away, or sole flat on the pad."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache

import numpy as np

from fitcalc.body.links import Links
from fitcalc.documents.car import Car
from fitcalc.documents.car_pedals import Pedal
from fitcalc.geometry.degrees import length, sind, unit
from fitcalc.geometry.lines import (
    behind_on_profile,
    extended,
    height_at,
    profile_points,
    without_straight_points,
)
from fitcalc.geometry.side import across, at_y, dot, row_of, scaled
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.pads import Pad
from fitcalc.units import Bools, Mm, Points

STEEPEST_SOLE = 73.4
"""Sole of a resting foot from the floor, deg: the shoe plane of a driver who sits as low as the heels, and within a degree
that of every seat up to 150 mm above them (SAE J4004, second-hand)."""
LOWEST_BALL = 0.25
"""Where the ball may lie below the middle of the pad, as part of the pad's height: half-way to its edge, design inference."""

COLLAR_ABOVE_ANKLE = 15.0
"""Top of the shoe above the ankle joint, mm: design inference, no source."""


@dataclass(frozen=True, eq=False)
class Foot:
    """A rigid shoe at one moment.

    Attributes:
        heel: rear lower corner of the sole.
        ball: under the ball of the foot, on the sole.
        toe: front end of the sole.
        ankle: ankle joint.
        sole: direction heel to toe along the sole.
        grounded: the heel is on the floor or heel rest.
        lift: how far the heel would have to leave the floor for the ball to reach the pad; 0 when it reaches.
        slide: ball from the pad's centre along the face, positive upward.
    """

    heel: Points
    ball: Points
    toe: Points
    ankle: Points
    sole: Points
    grounded: Bools
    lift: Mm
    slide: Mm


def heel_to_ball(links: Links) -> Mm:
    """Along the sole, from the back of the shoe to under the ball of the foot."""
    return links.heel_to_ball + links.shoe_heel_margin


def collar_height(links: Links) -> Mm:
    """Top of the shoe above the underside of its heel."""
    return links.ankle_height + links.sole_heel + COLLAR_ABOVE_ANKLE


def floor_line(car: Car) -> Points:
    """The floor in side view, carried on level beyond what was measured."""
    return _floor(car.footwell.floor)


@lru_cache(maxsize=16)
def _floor(profile: tuple[tuple[float, float], ...]) -> Points:
    return without_straight_points(extended(profile_points(profile)))


def heel_down(pad: Pad, links: Links, car: Car, slide: Mm | float = 0.0) -> Foot:
    """Heel on the floor, ball on the pad: throttle and light braking.

    Where the ball cannot reach the pad the foot points at it from the nearest floor; `lift` says what is missing.

    Args:
        pad: what the ball rests on.
        links: the body.
        car: whose floor and heel rest hold the heel.
        slide: where on the face the ball rests, from its middle, positive upward.
    """
    span = heel_to_ball(links)
    aim = pad.centre + scaled(pad.up, slide)
    heel, found = _heel_for(aim, span, car)
    gap = length(at_y(aim, heel[:, 1]) - heel)
    lift = np.where(found, 0.0, np.maximum(gap - span, 0.0))
    ball = heel + scaled(unit(aim - heel), span)
    return _shoe(heel, ball, links, np.ones(len(heel), dtype=bool), lift, pad)


def resting_slide(pad: Pad, pedal: Pedal, links: Links, car: Car) -> Mm:
    """Where the ball rests on a pad, heel down: from the middle of the face, upward; 0 or below.

    On a pad so high that the sole would stand steeper than `STEEPEST_SOLE` the ball lies lower.
    """
    span = heel_to_ball(links)
    heel, _ = _heel_for(pad.centre, span, car)
    too_high = pad.centre[:, 2] - heel[:, 2] - span * sind(column(STEEPEST_SOLE))
    lower = np.maximum(too_high, 0.0) / pad.up[:, 2]
    return -np.minimum(lower, LOWEST_BALL * column(pedal.pad_height))


def planted_slide(rest: Foot, pad: Pad, links: Links) -> Mm:
    """Where the ball meets a pad that has moved away while the heel stays: from the middle of the face, upward.

    Out of the shoe's reach it is the place on the face's line nearest to the heel. A foot whose heel is not on the
    floor keeps its ball on the middle.
    """
    span = heel_to_ball(links)
    from_heel = pad.centre - rest.heel
    middle = -dot(from_heel, pad.up)
    offset = from_heel + scaled(pad.up, middle)
    half = np.sqrt(np.maximum(span * span - dot(offset, offset), 0.0))
    slide = np.where(np.abs(middle + half) < np.abs(middle - half), middle + half, middle - half)
    return np.where(rest.grounded, slide, 0.0)


def sole_flat(pad: Pad, links: Links, car: Car, slide: Mm | float = 0.0) -> tuple[Foot, Bools]:
    """Sole flat on the pad: clutch and hard braking.

    Args:
        pad: what the sole lies on.
        links: the body.
        car: whose floor the heel must clear.
        slide: where on the face the ball lies, from its middle, positive upward.

    Returns:
        The foot, and whether the back of the shoe clears the floor, from the heel up to its collar: on a pad that
        leans rearward the collar comes down first.
    """
    ball = pad.centre + scaled(pad.up, slide)
    heel = ball - scaled(pad.up, heel_to_ball(links))
    back = row_of((heel, heel + scaled(across(pad.up), collar_height(links))))
    above = back[..., 2] - height_at(back[..., 0], floor_line(car))
    clear = above.min(axis=1) >= 0.0
    nobody = np.zeros(len(heel), dtype=bool)
    return _shoe(heel, ball, links, nobody, np.zeros(len(heel)), pad), clear


def chosen(condition: Bools, yes: Foot, otherwise: Callable[[], Foot]) -> Foot:
    """One foot per case, by a condition; the other foot is worked out only where a case asks for it."""
    if np.all(condition):
        return yes
    no = otherwise()
    return Foot(
        **{
            name: np.where(
                condition.reshape((-1,) + (1,) * (getattr(yes, name).ndim - 1)),
                getattr(yes, name),
                getattr(no, name),
            )
            for name in Foot.__dataclass_fields__
        }
    )


def _heel_for(aim: Points, span: Mm, car: Car) -> tuple[Points, Bools]:
    """The heel on the floor with the ball at `aim`, and whether the ball gets there."""
    heel, found = behind_on_profile(aim, span, floor_line(car))
    return _held_by_rest(heel, found, car)


def _held_by_rest(heel: Points, found: Bools, car: Car) -> tuple[Points, Bools]:
    if car.footwell.heel_rest is None:
        return heel, found
    rest = at_y(xyz(car.footwell.heel_rest) + np.zeros_like(heel), heel[:, 1])
    ahead = heel[:, 0] < rest[:, 0]
    return np.where(ahead[:, None], rest, heel), found & ~ahead


def _shoe(heel: Points, ball: Points, links: Links, grounded: Bools, lift: Mm, pad: Pad) -> Foot:
    sole = unit(ball - heel)
    upward = across(sole)
    ankle = (
        heel
        + scaled(sole, links.heel_to_ankle + links.shoe_heel_margin)
        + scaled(upward, links.ankle_height + links.sole_heel)
    )
    slide = dot(ball - pad.centre, pad.up)
    return Foot(heel, ball, heel + scaled(sole, links.shoe_length), ankle, sole, grounded, lift, slide)
