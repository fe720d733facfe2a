"""The car in side view: ground, footwell, body side, hoops, and what else stays where it is."""

from collections.abc import Iterator

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.posture.cases import xyz
from fitcalc.present.outlines import wrapped
from fitcalc.present.picture import XY, Area, Circle, Line, Primitive, Text, View, seen

SOIL, FACE = 26.0, 40.0
"""Depth that the ground and a head restraint are drawn with, mm: drawing only, not measured."""
CROSS = 26.0


def surroundings(car: Car) -> Iterator[Primitive]:
    """Everything that stays where it is and lies behind the driver on the drawing."""
    yield from _ground(car)
    yield from _footwell(car)
    yield from _obstacles(car)
    yield from _body_side(car)
    yield from _behind(car)
    yield from _hoops(car)


def in_front(car: Car) -> Iterator[Primitive]:
    """What stands out over the driver: head restraint, gear knob, controls, names."""
    rest = car.head_restraint
    if rest is not None:
        x, low, high = float(rest.x), float(rest.z_low), float(rest.z_high)
        yield Area(
            "head_restraint",
            "solid",
            "car.head_restraint",
            ((x, low), (x, high), (x + FACE, high), (x + FACE, low)),
        )
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


def _ground(car: Car) -> Iterator[Primitive]:
    z = float(car.reference.ground)
    left, right = extent(car)
    yield Area(
        "ground",
        "ground",
        "car.reference.ground",
        ((left, z), (right, z), (right, z - SOIL), (left, z - SOIL)),
    )
    yield Line("ground.top", "outline", "car.reference.ground", ((left, z), (right, z)))


def extent(car: Car) -> tuple[float, float]:
    """Foremost and rearmost x that the side view of the car fills."""
    marks = [
        x
        for line in (car.footwell.floor, car.footwell.roof, car.sight_edges, car.behind_seat)
        for x, _ in line or ()
    ]
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
        floor = height_of(pairs(well.floor), x)
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
        yield Line(
            "side_top",
            "hidden",
            "car.cockpit.side_top",
            ((float(pit.opening_front), z), (float(pit.opening_rear), z)),
        )


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
        yield Area(
            f"hoop.{name}.leg",
            "assumed",
            f"car.hoops.{name}",
            wrapped([(top, radius), ((top[0], floor + radius), radius)]),
        )
    if hoops.brace_foot is not None:
        top, foot = (
            (float(hoops.main_top.x), float(hoops.main_top.z) - radius),
            seen(xyz(hoops.brace_foot), "side"),
        )
        yield Area("hoop.brace", "solid", "car.hoops.brace_foot", wrapped([(top, radius), (foot, radius)]))
    for name, mark in (("main_top", hoops.main_top), ("front_top", hoops.front_top)):
        yield Circle(
            f"hoop.{name}", "solid", f"car.hoops.{name}", (float(mark.x), float(mark.z) - radius), radius
        )


def height_of(line: tuple[XY, ...], x: float) -> float:
    """Height of a measured line that runs front to rear, at `x`; level beyond its ends."""
    xs, zs = zip(*line, strict=True)
    return float(np.interp(x, np.array(xs), np.array(zs)))


def pairs(profile: tuple[tuple[float, float], ...]) -> tuple[XY, ...]:
    """A measured line as points of the drawing; a number given per case counts with its first."""
    return tuple((float(np.ravel(x)[0]), float(np.ravel(z)[0])) for x, z in profile)
