"""What a drag in the sketch means for the documents: how far something moves along what holds it."""

from dataclasses import dataclass

import numpy as np

from fitcalc.geometry.degrees import atan2d
from fitcalc.posture.seat import recline_pivot, travel
from fitcalc.present.picture import AXES, XY, Handle, View, seen
from fitcalc.window.rework.spans import Control, control_at
from fitcalc.window.work import Work, at_ref, with_ref

AXIS_NAMES = "xyz"
WHOLE = 1.0
"""A dragged point snaps to whole millimetres."""


@dataclass(frozen=True)
class Grip:
    """A grip as it was taken.

    Attributes:
        control: what it changes of the rework; None where it moves a point of the car.
        name, unit: of what it changes.
    """

    handle: Handle
    control: Control | None
    name: str
    unit: str


def gripped(work: Work, handle: Handle) -> Grip:
    """What taking a grip means."""
    if handle.ref.startswith("setup."):
        control = control_at(work.car.document, handle.ref)
        return Grip(handle, control, control.title, control.unit)
    whole, _, last = handle.ref.rpartition(".")
    name = f"{whole.rpartition('.')[2]} {int(last) + 1}" if last.isdecimal() else last.replace("_", " ")
    return Grip(handle, None, name, "mm")


def dragged(work: Work, grip: Grip, place: XY, view: View) -> Work:
    """The work with a grip taken from where it stood to a place in the view, as far as the car allows.

    Raises:
        InputError: the car would not be valid.
    """
    handle = grip.handle
    if grip.control is not None:
        return with_ref(work, handle.ref, snapped(grip.control, _changed(work, handle, place)))
    axes = (AXIS_NAMES[axis] for axis in AXES[view])
    moved = {axis: round(value / WHOLE) * WHOLE for axis, value in zip(axes, place, strict=True)}
    before = at_ref(work, handle.ref)
    after = tuple(moved.values()) if isinstance(before, tuple) else dict(before) | moved
    return with_ref(work, handle.ref, after)


def _changed(work: Work, handle: Handle, place: XY) -> float:
    value = float(at_ref(work, handle.ref))
    if handle.along is not None:
        return value + float(np.dot(np.subtract(place, handle.at), handle.along))
    return value + _turn(work, handle.at, place)


def _turn(work: Work, start: XY, place: XY) -> float:
    """Turn about the seat's front mounts in side view, deg; positive = further back."""
    car = work.car.document
    pivot = seen(recline_pivot(car) + travel(car, work.setup), "side")
    before, after = (np.subtract(point, pivot)[:, None] for point in (start, place))
    return float((atan2d(after[0], after[1]) - atan2d(before[0], before[1]))[0])


def snapped(control: Control, value: float) -> float:
    """The nearest value that can be set."""
    steps = round(value / control.step) * control.step
    lowest, highest = (np.trunc(bound / control.step) * control.step for bound in (control.low, control.high))
    return float(min(max(steps, lowest), highest))
