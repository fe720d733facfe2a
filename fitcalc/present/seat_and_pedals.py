"""What the rework moves, in side view: seat on its rails, pedals, steering wheel."""

from collections.abc import Iterator

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.documents.car import Car
from fitcalc.documents.car_cockpit import SteeringWheel
from fitcalc.documents.car_pedals import Pedal
from fitcalc.documents.setup import Setup
from fitcalc.geometry.degrees import cosd, sind
from fitcalc.geometry.lines import profile_points
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.pads import Pad, pad_edges
from fitcalc.posture.sit import Sitting
from fitcalc.posture.wheel import rim_ends, wheel_centre
from fitcalc.present.outlines import as_points, wrapped
from fitcalc.present.picture import XY, Area, Circle, Line, Primitive, Style, seen
from fitcalc.present.same import once
from fitcalc.units import Floats, Points

PAD_THICK = 8.0
"""Depth that a pad is drawn with, mm: drawing only, not measured."""
RAIL_SPARE = 30.0
"""A rail is drawn this much longer than its travel, mm."""


def seat_beside(case: Case, prefix: str = "seat", style: Style = "seat") -> Iterator[Primitive]:
    """The shell where the rework puts it, and its mounts."""
    line, mounts = seat_places(case)
    yield Line(f"{prefix}.shell", style, "car.seat.profile", as_points(line[:, [0, 2]]))
    for at, (x, _, z) in enumerate(mounts.tolist()):
        yield Circle(f"{prefix}.mount{at}", style, f"car.seat.mounts.{at}", (x, z), 7.0)


def inserts_beside(case: Case) -> Iterator[Primitive]:
    """The driver's inserts on cushion and back, each square off its line upon the seat's own padding."""
    profile = case.car.seat.profile
    for part, end, side in (("cushion", profile[0], 1.0), ("back", profile[-1], -1.0)):
        thick = float(getattr(case.setup, f"{part}_insert"))
        if thick > 0.0:
            lower = float(getattr(case.car.seat, f"{part}_padding"))
            outline = _insert(case, end, side * lower, side * (lower + thick))
            yield Area(f"seat.{part}_insert", "seat", f"setup.{part}_insert", as_points(outline))


def _insert(case: Case, end: XY, lower: float, upper: float) -> Floats:
    """Corners of an insert from the junction to an end of the profile, so far to the right of its line."""
    line = profile_points(((0.0, 0.0), end)) + xyz(case.car.seat.junction)
    start, stop = case.seat_move.carried(line)[:, [0, 2]]
    along = (stop - start) / np.hypot(*(stop - start))
    off = np.array([along[1], -along[0]])
    return np.array([start + lower * off, stop + lower * off, stop + upper * off, start + upper * off])


def seat_places(case: Case) -> tuple[Points, Points]:
    """The surface sat against and the mounts where the rework puts them, `(k, 3)` each."""
    seat = case.car.seat
    found = profile_points(seat.profile) + xyz(seat.junction)
    every = case.seat_move.carried(np.concatenate([found, *(xyz(mount) for mount in seat.mounts)]))
    return every[: len(found)], every[len(found) :]


def rails(car: Car) -> Iterator[Primitive]:
    """The line that the seat moves along, with its holes where it is drilled."""
    ends = sorted((float(mount.x), float(mount.z)) for mount in car.seat.mounts)
    along = (float(cosd(column(-car.rails.angle))[0]), float(sind(column(-car.rails.angle))[0]))
    ahead, behind = (
        float(car.rails.forward_travel) + RAIL_SPARE,
        float(car.rails.rearward_travel) + RAIL_SPARE,
    )
    start, end = _moved(ends[0], along, -ahead), _moved(ends[-1], along, behind)
    if car.rails.kind == "fixed":
        return
    yield Line("rails", "thin outline", "car.rails", (start, end))
    if car.rails.kind == "drilled":
        yield from _holes(car, ends, along)


def _holes(car: Car, ends: list[XY], along: XY) -> Iterator[Primitive]:
    pitch = float(car.rails.hole_pitch)
    first = -int(float(car.rails.forward_travel) // pitch)
    last = int(float(car.rails.rearward_travel) // pitch)
    for name, mount in (("front", ends[0]), ("rear", ends[-1])):
        for hole in range(first, last + 1):
            yield Circle(
                f"rails.{name}{hole}",
                "thin outline",
                "car.rails.hole_pitch",
                _moved(mount, along, hole * pitch),
                3.5,
            )


def pedals_beside(car: Car, sitting: Sitting) -> Iterator[Primitive]:
    """Each pedal at rest, and its pad at the stop."""
    for name, pedal in car.fitted_pedals().items():
        at = sitting.pedals[name]
        yield from _pedal_beside(name, pedal, at.rest_pad, at.full_pad)


@once
def _pedal_beside(name: str, pedal: Pedal, rest: Pad, full: Pad) -> Iterator[Primitive]:
    yield from _pad_beside(f"full.{name}", "extreme", name, pedal, full)
    yield from _arm(f"full.{name}", "extreme", name, full, pedal)
    yield from _arm(f"pedal.{name}", "outline", name, rest, pedal)
    yield from _pad_beside(f"pedal.{name}", "pad", name, pedal, rest)
    yield Circle(f"pedal.{name}.pivot", "outline", f"car.pedals.{name}.pivot", seen(rest.pivot, "side"), 9.0)


def pedals_found(car: Car, sitting: Sitting) -> Iterator[Primitive]:
    """Each pedal at rest, as found."""
    for name, pedal in car.fitted_pedals().items():
        yield from _arm(f"found.{name}", "as found", name, sitting.pedals[name].rest_pad, pedal)
        yield from _pad_beside(f"found.{name}", "as found", name, pedal, sitting.pedals[name].rest_pad)


def _arm(key: str, style: Style, name: str, pad: Pad, pedal: Pedal) -> Iterator[Primitive]:
    """Pivot to the end of the arm as found, then to the pad: what is added shows as a bar of its own."""
    pivot, end, centre = (
        seen(point, "side")
        for point in (pad.pivot, pad.pivot + column(pedal.arm)[:, None] * pad.arm, pad.centre)
    )
    yield Line(f"{key}.arm", style, f"car.pedals.{name}.arm", (pivot, end, centre))


def _pad_beside(key: str, style: Style, name: str, pedal: Pedal, pad: Pad) -> Iterator[Primitive]:
    low, high = (seen(edge, "side") for edge in pad_edges(pad, pedal))
    normal = seen(pad.normal, "side")
    back = [_moved(edge, normal, -PAD_THICK) for edge in (high, low)]
    yield Area(f"{key}.pad", style, f"car.pedals.{name}.pad_height", (low, high, *back))
    if pedal.cleat_height and style == "pad":
        cleat = [_moved(edge, normal, float(pedal.cleat_height)) for edge in (high, low)]
        yield Line(f"{key}.cleat", "thin outline", f"car.pedals.{name}.cleat_height", (high, *cleat, low))


def wheel_beside(
    car: Car, setup: Setup, prefix: str = "wheel", style: Style = "outline"
) -> tuple[Primitive, ...]:
    """The rim edge on, and the column."""
    return _wheel_beside(car.steering_wheel, setup, prefix, style) if car.steering_wheel else ()


@once
def _wheel_beside(wheel: SteeringWheel, setup: Setup, prefix: str, style: Style) -> Iterator[Primitive]:
    half = float(wheel.rim_thickness) / 2
    centre = seen(wheel_centre(wheel, setup), "side")
    ends = [(seen(end, "side"), half) for end in rim_ends(wheel, setup)]
    if wheel.column_foot is not None:
        foot = seen(xyz(wheel.column_foot), "side")
        yield Line(
            f"{prefix}.column",
            "centre" if style == "outline" else style,
            "car.steering_wheel.column_foot",
            (foot, centre),
        )
    yield Area(f"{prefix}.rim", "solid" if style == "outline" else style, "car.steering_wheel", wrapped(ends))


def _moved(start: XY, along: XY, distance: float) -> XY:
    return start[0] + along[0] * distance, start[1] + along[1] * distance
