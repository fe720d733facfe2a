"""What the rework moves: dimensions from as found to after, and the grips to drag it by."""

from collections.abc import Iterator

import numpy as np

from fitcalc.documents.setup import PedalRework
from fitcalc.fit.result import Result
from fitcalc.geometry.degrees import cosd, sind
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.pads import pad_edges
from fitcalc.posture.wheel import toward_driver, wheel_centre
from fitcalc.present.picture import XY, Dimension, Handle, Primitive, View, seen
from fitcalc.present.wording import length
from fitcalc.units import Points

LEAST = 0.5
"""A move of less than this, mm, is not drawn."""


def rework_dimensions(result: Result, found: Result) -> Iterator[Primitive]:
    """Seat and pads in side view, from where they were found to where the rework puts them."""
    travel = float(result.setup.seat_travel)
    if abs(travel) > LEAST:
        start, end = (_junction(each) for each in (found, result))
        word = "forward" if travel > 0 else "rearward"
        aside = -(start[1] + 110.0) if end[0] > start[0] else start[1] + 110.0
        yield Dimension(
            "rework.seat",
            "rework",
            "setup.seat_travel",
            start,
            end,
            f"seat {length(abs(travel))} {word}",
            aside,
            f"seat {length(abs(travel), inches=True)} {word}",
        )
    for name, at in result.sitting.pedals.items():
        yield from _pad_dimension(
            name,
            result,
            seen(found.sitting.pedals[name].rest_pad.centre, "side"),
            seen(at.rest_pad.centre, "side"),
        )


def _pad_dimension(name: str, result: Result, start: XY, end: XY) -> Iterator[Primitive]:
    rework = getattr(result.setup, name)
    if float(rework.stand_off) > LEAST or float(rework.longer_arm) > LEAST:
        mm, inches = (_bar_text(name, rework, in_inches) for in_inches in (False, True))
        yield Dimension(f"rework.{name}", "rework", f"setup.{name}.stand_off", start, end, mm, inches=inches)


def _bar_text(name: str, rework: PedalRework, inches: bool) -> str:
    text = f"{name} +{length(float(rework.stand_off), inches)}"
    longer = float(rework.longer_arm)
    return f"{text}, arm +{length(longer, inches)}" if longer > LEAST else text


def handles(result: Result, view: View) -> Iterator[Primitive]:
    """Grips on what a person could move; each names the field that a drag changes."""
    if view == "side":
        yield from _setup_handles(result)
        yield from _car_handles(result)
        yield from _footwell_handles(result)
    elif view == "plan" and result.car.harness is not None:
        for name in ("shoulder_left", "shoulder_right", "lap_left", "lap_right"):
            anchor = xyz(getattr(result.car.harness, name))
            yield Handle(f"handle.{name}", "handle", f"car.harness.{name}", seen(anchor, "plan"))


def _setup_handles(result: Result) -> Iterator[Primitive]:
    car, setup = result.car, result.setup
    slope = column(car.rails.angle)
    along = (-float(cosd(slope)[0]), float(sind(slope)[0]))
    yield Handle("handle.seat", "handle", "setup.seat_travel", _junction(result), along)
    yield Handle(
        "handle.recline", "handle", "setup.recline", seen(_carried(_profile_top(result), result), "side")
    )
    for name, at in result.sitting.pedals.items():
        low, high = pad_edges(at.rest_pad, getattr(car.pedals, name))
        place = {"clutch": high, "throttle": low}.get(name, at.rest_pad.centre)
        yield Handle(
            f"handle.{name}",
            "handle",
            f"setup.{name}.stand_off",
            seen(place, "side"),
            seen(at.rest_pad.normal, "side"),
        )
    if car.steering_wheel is not None:
        centre, axis = wheel_centre(car.steering_wheel, setup), toward_driver(car.steering_wheel)
        yield Handle("handle.wheel", "handle", "setup.wheel_spacer", seen(centre, "side"), seen(axis, "side"))


def _car_handles(result: Result) -> Iterator[Primitive]:
    hoops, harness = result.car.hoops, result.car.harness
    if hoops is not None:
        for name in ("main_top", "front_top"):
            yield Handle(
                f"handle.{name}", "handle", f"car.hoops.{name}", seen(xyz(getattr(hoops, name)), "side")
            )
    for name in ("shoulder_left", "lap_left") if harness is not None else ():
        yield Handle(
            f"handle.{name}", "handle", f"car.harness.{name}", seen(xyz(getattr(harness, name)), "side")
        )


def _footwell_handles(result: Result) -> Iterator[Primitive]:
    """Grips on the corners of the footwell's roof and floor."""
    for name in ("roof", "floor"):
        for at, (x, z) in enumerate(getattr(result.car.footwell, name) or ()):
            ref = f"car.footwell.{name}.{at}"
            yield Handle(f"handle.{name}.{at}", "handle", ref, (float(x), float(z)))


def _profile_top(result: Result) -> Points:
    x, z = result.car.seat.profile[-1]
    return np.array([[x, 0.0, z]], dtype=float)


def _junction(result: Result) -> XY:
    return seen(_carried(np.zeros((1, 3)), result), "side")


def _carried(in_seat: Points, result: Result) -> Points:
    """A point given from the junction, where the rework carries it."""
    return result.case.seat_move.carried(xyz(result.car.seat.junction) + in_seat)
