"""The car from above: walls, opening, seat, pedals, wheel, hoops."""

from collections.abc import Iterator

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.documents.car import Car
from fitcalc.documents.car_pedals import Pedal
from fitcalc.documents.setup import Setup
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.pads import Pad, pad_edges
from fitcalc.posture.sit import Sitting
from fitcalc.posture.wheel import rim_point, wheel_centre
from fitcalc.present.car_drawing import FACE, crossed, pairs
from fitcalc.present.picture import XY, Area, Circle, Line, Primitive, Style, Text, seen
from fitcalc.present.seat_and_pedals import seat_places

CLOCK = np.linspace(0.0, 360.0, 40)
SIDES = (("left", -1.0), ("right", 1.0))


def rectangle(x: tuple[float, float], y: tuple[float, float]) -> tuple[XY, ...]:
    """Corners of a rectangle from its spans."""
    return ((x[0], y[0]), (x[0], y[1]), (x[1], y[1]), (x[1], y[0]))


def surroundings_above(car: Car) -> Iterator[Primitive]:
    """Walls, opening, obstacles and hoops."""
    yield from _walls(car)
    yield from _opening(car)
    for at, obstacle in enumerate(car.footwell.obstacles):
        x = _obstacle_span(car, at)
        y = (float(obstacle.y_low), float(obstacle.y_high))
        ref = f"car.footwell.obstacles.{at}"
        yield Area(f"obstacle{at}", "hidden", ref, rectangle(x, y))
        yield Text(f"obstacle{at}.name", "note", ref, (sum(x) / 2, y[1]), obstacle.name)


def _obstacle_span(car: Car, at: int) -> tuple[float, float]:
    obstacle = car.footwell.obstacles[at]
    if obstacle.centre is not None and obstacle.radius is not None:
        return float(obstacle.centre.x - obstacle.radius), float(obstacle.centre.x + obstacle.radius)
    corners = [x for x, _ in pairs(obstacle.outline or ())]
    return min(corners), max(corners)


def _walls(car: Car) -> Iterator[Primitive]:
    well = car.footwell
    walls = pairs(well.half_widths or ())
    for name, sign in SIDES if walls else ():
        wall = tuple((x, sign * half) for x, half in walls)
        yield Line(f"wall.{name}", "outline", "car.footwell.half_widths", wall)
    if well.bulkhead is not None and walls:
        x, half = float(well.bulkhead), walls[0][1]
        yield Line("bulkhead", "outline", "car.footwell.bulkhead", ((x, -half), (x, half)))


def _opening(car: Car) -> Iterator[Primitive]:
    pit = car.cockpit
    if pit is None:
        return
    x = (float(pit.opening_front), float(pit.opening_rear))
    half, body = float(pit.opening_width) / 2, float(pit.side_half_width)
    yield Area("opening", "thin outline", "car.cockpit.opening_width", rectangle(x, (-half, half)))
    for name, sign in SIDES:
        yield Line(
            f"side.{name}",
            "outline",
            "car.cockpit.side_half_width",
            ((x[0], sign * body), (x[1], sign * body)),
        )
    for name in ("main_top", "front_top") if car.hoops else ():
        mark = getattr(car.hoops, name)
        yield Line(
            f"hoop.{name}", "assumed", f"car.hoops.{name}", ((float(mark.x), -body), (float(mark.x), body))
        )


def middle_line(ends: tuple[float, float]) -> Iterator[Primitive]:
    """The car's centre plane."""
    yield Line("middle", "centre", "", ((ends[0], 0.0), (ends[1], 0.0)))


def seat_above(case: Case, prefix: str = "seat", style: Style = "seat") -> Iterator[Primitive]:
    """The shell's outside and its mounts."""
    line, mounts = seat_places(case)
    xs = line[:, 0]
    half = float(case.car.seat.half_width)
    outline = rectangle((float(xs.min()), float(xs.max())), (-half, half))
    yield Area(f"{prefix}.shell", style, "car.seat.half_width", outline)
    for at, (x, y, _) in enumerate(mounts.tolist()):
        yield Circle(f"{prefix}.mount{at}", style, f"car.seat.mounts.{at}", (x, y), 7.0)


def pedals_above(
    car: Car, sitting: Sitting, prefix: str = "pedal", found: bool = False
) -> Iterator[Primitive]:
    """Arms and pads at rest, and the pads at the stop."""
    for name, pedal in car.fitted_pedals().items():
        at = sitting.pedals[name]
        arm = (seen(at.rest_pad.pivot, "plan"), seen(at.rest_pad.centre, "plan"))
        ref = f"car.pedals.{name}"
        if not found:
            yield Area(f"full.{name}.pad", "extreme", ref, pad_above(at.full_pad, pedal))
        yield Line(f"{prefix}.{name}.arm", "as found" if found else "outline", f"{ref}.arm", arm)
        yield Area(
            f"{prefix}.{name}.pad",
            "as found" if found else "pad",
            f"{ref}.pad_width",
            pad_above(at.rest_pad, pedal),
        )


def pad_above(pad: Pad, pedal: Pedal) -> tuple[XY, ...]:
    """A pad's outline from above."""
    low, high = (float(edge[0, 0]) for edge in pad_edges(pad, pedal))
    y, half = float(pad.centre[0, 1]), float(pedal.pad_width) / 2
    return rectangle((low, high), (y - half, y + half))


def wheel_above(
    car: Car, setup: Setup, prefix: str = "wheel", style: Style = "outline"
) -> Iterator[Primitive]:
    """The rim and the column."""
    wheel = car.steering_wheel
    if wheel is None:
        return
    rim = rim_point(wheel, setup, CLOCK)
    if wheel.column_foot is not None and style == "outline":
        ends = (seen(xyz(wheel.column_foot), "plan"), seen(wheel_centre(wheel, setup), "plan"))
        yield Line(f"{prefix}.column", "centre", "car.steering_wheel.column_foot", ends)
    yield Line(f"{prefix}.rim", style, "car.steering_wheel", tuple((float(x), float(y)) for x, y, _ in rim))


def in_front_above(car: Car) -> Iterator[Primitive]:
    """Head restraint, gear knob and controls."""
    rest = car.head_restraint
    if rest is not None:
        half = float(rest.width) / 2
        box = rectangle((float(rest.x), float(rest.x) + FACE), (-half, half))
        yield Area("head_restraint", "solid", "car.head_restraint", box)
    for at, knob in enumerate(car.gear_lever.knobs if car.gear_lever else ()):
        yield Circle(f"knob{at}", "thin outline", f"car.gear_lever.knobs.{at}", seen(xyz(knob), "plan"), 14.0)
    for at, control in enumerate(car.controls):
        place = seen(xyz(control.at), "plan")
        yield from crossed(f"control{at}", f"car.controls.{at}", place)
        yield Text(f"control{at}.name", "note", f"car.controls.{at}", place, control.name)


def behind_above(case: Case) -> float:
    """Rearmost x of what the plan shows."""
    car = case.car
    seat = float(seat_places(case)[0][:, 0].max())
    harness = (
        [float(column(anchor.x)[0]) for anchor in (car.harness.shoulder_left, car.harness.shoulder_right)]
        if car.harness
        else []
    )
    hoop = [float(car.hoops.main_top.x)] if car.hoops else []
    return max(seat, *harness, *hoop) if harness or hoop else seat
