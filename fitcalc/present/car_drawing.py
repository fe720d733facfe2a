"""The car in side view: footwell, seat, pedals, wheel, hoops, and what else was measured."""

from collections.abc import Iterator

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.documents.car_pedals import Pedal
from fitcalc.documents.setup import Setup
from fitcalc.geometry.degrees import cosd, sind
from fitcalc.geometry.lines import profile_points
from fitcalc.posture.cases import column, xyz
from fitcalc.posture.pads import Pad, pad_edges
from fitcalc.posture.seat import carried
from fitcalc.posture.sit import Sitting
from fitcalc.posture.wheel import highest_rim, lowest_rim, wheel_centre
from fitcalc.present.outlines import as_points, toward, wrapped
from fitcalc.present.picture import XY, Area, Circle, Line, Primitive, Style, Text, View, seen
from fitcalc.units import Points

PAD_THICK, SOIL, FACE = 8.0, 26.0, 40.0
"""Depth that a pad, the ground and a head restraint are drawn with, mm: drawing only, not measured."""
RIM_SLACK = 30.0
"""A rail is drawn this much longer than its holes and travel, mm."""
CROSS = 26.0


def surroundings(car: Car) -> Iterator[Primitive]:
    """Everything that stays where it is and lies behind the driver on the drawing."""
    yield from _ground(car)
    yield from _footwell(car)
    yield from _obstacles(car)
    yield from _body_side(car)
    yield from _behind(car)
    yield from _hoops(car)


def seat_beside(car: Car, setup: Setup, prefix: str = "seat", style: Style = "seat") -> Iterator[Primitive]:
    """The shell where the rework puts it, and its mounts."""
    line, mounts = seat_places(car, setup)
    yield Line(f"{prefix}.shell", style, "car.seat.profile", as_points(line[:, [0, 2]]))
    for at, (x, _, z) in enumerate(mounts.tolist()):
        yield Circle(f"{prefix}.mount{at}", style, f"car.seat.mounts.{at}", (x, z), 7.0)


def seat_places(car: Car, setup: Setup) -> tuple[Points, Points]:
    """The surface sat against and the mounts where the rework puts them, `(k, 3)` each."""
    found = profile_points(car.seat.profile) + xyz(car.seat.junction)
    every = carried(np.concatenate([found, *(xyz(mount) for mount in car.seat.mounts)]), car, setup)
    return every[: len(found)], every[len(found) :]


def rails(car: Car) -> Iterator[Primitive]:
    """The line that the seat moves along, with its holes where it is drilled."""
    ends = sorted((float(mount.x), float(mount.z)) for mount in car.seat.mounts)
    along = (float(cosd(column(-car.rails.angle))[0]), float(sind(column(-car.rails.angle))[0]))
    ahead, behind = float(car.rails.forward_travel) + RIM_SLACK, float(car.rails.rearward_travel) + RIM_SLACK
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
            yield Circle(f"rails.{name}{hole}", "thin outline", "car.rails.hole_pitch", _moved(mount, along, hole * pitch), 3.5)


def pedals_beside(car: Car, sitting: Sitting) -> Iterator[Primitive]:
    """Each pedal at rest, and its pad at the stop."""
    for name, pedal in car.fitted_pedals().items():
        at = sitting.pedals[name]
        yield from _pad_beside(f"full.{name}", "extreme", name, pedal, at.full_pad)
        yield from _arm(f"full.{name}", "extreme", name, at.full_pad, pedal)
        yield from _arm(f"pedal.{name}", "outline", name, at.rest_pad, pedal)
        yield from _pad_beside(f"pedal.{name}", "pad", name, pedal, at.rest_pad)
        yield Circle(f"pedal.{name}.pivot", "outline", f"car.pedals.{name}.pivot", seen(at.rest_pad.pivot, "side"), 9.0)


def pedals_found(car: Car, sitting: Sitting) -> Iterator[Primitive]:
    """Each pedal at rest, as found."""
    for name, pedal in car.fitted_pedals().items():
        yield from _arm(f"found.{name}", "as found", name, sitting.pedals[name].rest_pad, pedal)
        yield from _pad_beside(f"found.{name}", "as found", name, pedal, sitting.pedals[name].rest_pad)


def _arm(key: str, style: Style, name: str, pad: Pad, pedal: Pedal) -> Iterator[Primitive]:
    """Pivot to the end of the arm as found, then to the pad: what is added shows as a bar of its own."""
    pivot, end, centre = (
        seen(point, "side") for point in (pad.pivot, pad.pivot + column(pedal.arm)[:, None] * pad.arm, pad.centre)
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


def wheel_beside(car: Car, setup: Setup, prefix: str = "wheel", style: Style = "outline") -> Iterator[Primitive]:
    """The rim edge on, and the column."""
    wheel = car.steering_wheel
    if wheel is None:
        return
    half = float(wheel.rim_thickness) / 2
    centre = seen(wheel_centre(wheel, setup), "side")
    low, high = (seen(edge, "side") for edge in (lowest_rim(wheel, setup), highest_rim(wheel, setup)))
    (dx, dz), _ = toward(low, high)
    ends = [(_moved(low, (dx, dz), half), half), (_moved(high, (dx, dz), -half), half)]
    if wheel.column_foot is not None:
        foot = seen(xyz(wheel.column_foot), "side")
        yield Line(f"{prefix}.column", "centre" if style == "outline" else style, "car.steering_wheel.column_foot", (foot, centre))
    yield Area(f"{prefix}.rim", "solid" if style == "outline" else style, "car.steering_wheel", wrapped(ends))


def in_front(car: Car) -> Iterator[Primitive]:
    """What stands out over the driver: head restraint, gear knob, controls, names."""
    rest = car.head_restraint
    if rest is not None:
        x, low, high = float(rest.x), float(rest.z_low), float(rest.z_high)
        yield Area("head_restraint", "solid", "car.head_restraint", ((x, low), (x, high), (x + FACE, high), (x + FACE, low)))
    for at, knob in enumerate(car.gear_lever.knobs if car.gear_lever else ()):
        yield Circle(f"knob{at}", "thin outline", f"car.gear_lever.knobs.{at}", seen(xyz(knob), "side"), 14.0)
    for at, control in enumerate(car.controls):
        yield from crossed(f"control{at}", f"car.controls.{at}", seen(xyz(control.at), "side"))


def crossed(key: str, ref: str, at: XY, size: float = CROSS / 2) -> Iterator[Primitive]:
    """A point, as two crossing centre lines."""
    x, y = at
    yield Line(f"{key}.level", "centre", ref, ((x - size, y), (x + size, y)))
    yield Line(f"{key}.plumb", "centre", ref, ((x, y - size), (x, y + size)))


def axle(car: Car, view: View) -> Iterator[Primitive]:
    """The front-axle line."""
    low, high = (float(car.reference.ground), 520.0) if view == "side" else (-330.0, 330.0)
    yield Line("axle", "centre", "car.reference", ((0.0, low), (0.0, high)))
    yield Text("axle.name", "note", "car.reference", (0.0, high), "front axle line")


def _moved(start: XY, along: XY, distance: float) -> XY:
    return start[0] + along[0] * distance, start[1] + along[1] * distance


def _ground(car: Car) -> Iterator[Primitive]:
    z = float(car.reference.ground)
    left, right = extent(car)
    yield Area("ground", "ground", "car.reference.ground", ((left, z), (right, z), (right, z - SOIL), (left, z - SOIL)))
    yield Line("ground.top", "outline", "car.reference.ground", ((left, z), (right, z)))


def extent(car: Car) -> tuple[float, float]:
    """Foremost and rearmost x that the side view of the car fills."""
    marks = [x for line in (car.footwell.floor, car.footwell.roof, car.sight_edges, car.behind_seat) for x, _ in line or ()]
    tops = [mark.x for mark in (car.hoops.main_top, car.hoops.brace_foot) if mark] if car.hoops else []
    every = [float(np.ravel(x)[0]) for x in (*marks, *tops)]
    return min(every) - 40.0, max(every) + 60.0


def _footwell(car: Car) -> Iterator[Primitive]:
    well = car.footwell
    yield Line("floor", "outline", "car.footwell.floor", pairs(well.floor))
    if well.roof is not None:
        yield Line("roof", "outline", "car.footwell.roof", pairs(well.roof))
    if well.bulkhead is not None:
        x, low = float(well.bulkhead), float(well.floor[0][1])
        high = float(well.roof[0][1]) if well.roof else low + 400.0
        yield Line("bulkhead", "outline", "car.footwell.bulkhead", ((x, low), (x, high)))
    if well.heel_rest is not None:
        x, z = float(well.heel_rest.x), float(well.heel_rest.z)
        floor = float(np.interp(x, *zip(*well.floor, strict=True)))
        yield Line("heel_rest", "outline", "car.footwell.heel_rest", ((x, floor), (x, max(z, floor + 15.0))))


def _obstacles(car: Car) -> Iterator[Primitive]:
    for at, obstacle in enumerate(car.footwell.obstacles):
        key, ref = f"obstacle{at}", f"car.footwell.obstacles.{at}"
        if obstacle.outline is not None:
            yield Area(key, "solid", ref, pairs(obstacle.outline))
            xs, zs = zip(*pairs(obstacle.outline), strict=True)
            top = ((min(xs) + max(xs)) / 2, max(zs))
        elif obstacle.centre is not None and obstacle.radius is not None:
            middle, radius = (float(obstacle.centre.x), float(obstacle.centre.z)), float(obstacle.radius)
            top = (middle[0], middle[1] + radius)
            yield Circle(key, "solid", ref, middle, radius)
        yield Text(f"{key}.name", "note", ref, top, obstacle.name)


def _body_side(car: Car) -> Iterator[Primitive]:
    if car.sight_edges is not None:
        yield Line("sight_edges", "thin outline", "car.sight_edges", pairs(car.sight_edges))
    pit = car.cockpit
    if pit is not None:
        z = float(pit.side_top)
        yield Line("side_top", "hidden", "car.cockpit.side_top", ((float(pit.opening_front), z), (float(pit.opening_rear), z)))


def _behind(car: Car) -> Iterator[Primitive]:
    if car.behind_seat is not None:
        yield Line("behind", "outline", "car.behind_seat", pairs(car.behind_seat))


def _hoops(car: Car) -> Iterator[Primitive]:
    hoops = car.hoops
    if hoops is None:
        return
    radius = float(hoops.tube) / 2
    floor = float(car.footwell.floor[-1][1])
    for name, mark in (("main_top", hoops.main_top), ("front_top", hoops.front_top)):
        top = (float(mark.x), float(mark.z) - radius)
        yield Area(f"hoop.{name}.leg", "assumed", f"car.hoops.{name}", wrapped([(top, radius), ((top[0], floor + radius), radius)]))
    if hoops.brace_foot is not None:
        top, foot = (float(hoops.main_top.x), float(hoops.main_top.z) - radius), seen(xyz(hoops.brace_foot), "side")
        yield Area("hoop.brace", "solid", "car.hoops.brace_foot", wrapped([(top, radius), (foot, radius)]))
    for name, mark in (("main_top", hoops.main_top), ("front_top", hoops.front_top)):
        yield Circle(f"hoop.{name}", "solid", f"car.hoops.{name}", (float(mark.x), float(mark.z) - radius), radius)


def pairs(profile: tuple[tuple[float, float], ...]) -> tuple[XY, ...]:
    """A measured line as points of the drawing; a number given per case counts with its first."""
    return tuple((float(np.ravel(x)[0]), float(np.ravel(z)[0])) for x, z in profile)
