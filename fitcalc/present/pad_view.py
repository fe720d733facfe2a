"""The pads, looking forward: y to the right, z up; each pad with its cleats and the sole of the shoe on it."""

from collections.abc import Collection, Iterator

import numpy as np

from fitcalc.body.links import Links
from fitcalc.documents.car import Car
from fitcalc.documents.car_pedals import Pedal
from fitcalc.fit.result import Result
from fitcalc.posture.limbs import Leg
from fitcalc.posture.pads import Pad, pad_edges
from fitcalc.present.body_parts import sole_seen
from fitcalc.present.car_drawing import height_of, pairs
from fitcalc.present.car_plan import rectangle
from fitcalc.present.chosen import chosen
from fitcalc.present.pad_marks import pad_annotation
from fitcalc.present.picture import (
    XY,
    Area,
    Circle,
    Legend,
    Line,
    Picture,
    Primitive,
    Style,
    Text,
    seen,
)
from fitcalc.present.titles import title

PIVOT = 8.0
"""Radius that a pivot is drawn with, mm."""
BEHIND = 120.0
"""Obstacles whose front lies further than this behind the pads, mm, are between them and the eye: left out."""


def pad_view(
    result: Result,
    found: Result | None = None,
    other: Result | None = None,
    emphasis: Collection[str] | None = None,
) -> Picture:
    """Pads and shoes as the driver's feet see them, the first case of a result; arguments as those of `side_view`."""
    primitives = tuple(_drawn(result, found, other, emphasis))
    return Picture(
        "pads",
        f"{title(result)}, looking forward",
        ("y", "z"),
        primitives,
        ("check.",),
        _legend(found, other),
    )


def _legend(found: Result | None, other: Result | None) -> tuple[Legend, ...]:
    grey = [Legend("as found", "pad as found")] if found else []
    second = [Legend("other driver", other.driver.name)] if other else []
    return (Legend("shoe", "sole, pedal at rest"), *grey, *second, Legend("extreme", "pedal at its stop"))


def _drawn(
    result: Result, found: Result | None, other: Result | None, emphasis: Collection[str] | None
) -> Iterator[Primitive]:
    car, sitting = result.car, result.sitting
    x = float(np.mean([at.rest_pad.centre[0, 0] for at in sitting.pedals.values()]))
    yield from _box(car, x)
    yield from _obstacles(car, x)
    for name, pedal in car.fitted_pedals().items():
        at = sitting.pedals[name]
        yield Area(f"full.{name}.pad", "extreme", f"car.pedals.{name}", _face(at.full_pad, pedal))
        if found is not None:
            yield Area(
                f"found.{name}.pad",
                "as found",
                f"car.pedals.{name}",
                _face(found.sitting.pedals[name].rest_pad, pedal),
            )
        yield from _pad(name, pedal, at.rest_pad)
    for name, at in sitting.pedals.items():
        yield from _shoe(name, "shoe", at.rest, result.links)
        y, z = seen(at.rest_pad.pivot, "pads")
        yield Text(f"name.{name}", "note", f"car.pedals.{name}", (y, z + PIVOT), name)
    for name, at in other.sitting.pedals.items() if other is not None else ():
        yield from _shoe(f"other.{name}", "other driver", at.rest, other.links if other else result.links)
    for check in chosen(result, "pads", emphasis):
        yield from pad_annotation(check, result)


def _box(car: Car, x: float) -> Iterator[Primitive]:
    """Floor, walls and roof where the pads are."""
    well = car.footwell
    floor = height_of(pairs(well.floor), x)
    half = height_of(pairs(well.half_widths), x) if well.half_widths else 300.0
    top = height_of(pairs(well.roof), x) if well.roof else floor + 450.0
    yield Line("floor", "outline", "car.footwell.floor", ((-half, floor), (half, floor)))
    for sign in (-1.0, 1.0) if well.half_widths else ():
        yield Line(
            f"wall{sign:+.0f}",
            "outline",
            "car.footwell.half_widths",
            ((sign * half, floor), (sign * half, top)),
        )
    if well.roof:
        yield Line("roof", "outline", "car.footwell.roof", ((-half, top), (half, top)))
    yield Line("middle", "centre", "", ((0.0, floor - 30.0), (0.0, top + 30.0)))


def _obstacles(car: Car, x: float) -> Iterator[Primitive]:
    for at, obstacle in enumerate(car.footwell.obstacles):
        corners = pairs(obstacle.outline or ())
        if obstacle.centre is not None and obstacle.radius is not None:
            (cx, cz), r = (float(obstacle.centre.x), float(obstacle.centre.z)), float(obstacle.radius)
            corners = ((cx - r, cz - r), (cx + r, cz + r))
        xs, zs = zip(*corners, strict=True)
        if min(xs) < x + BEHIND:
            ref = f"car.footwell.obstacles.{at}"
            box = rectangle((float(obstacle.y_low), float(obstacle.y_high)), (min(zs), max(zs)))
            yield Area(f"obstacle{at}", "hidden", ref, box)
            yield Text(
                f"obstacle{at}.name", "note", ref, (float(obstacle.y_high) - 60.0, max(zs)), obstacle.name
            )


def _face(pad: Pad, pedal: Pedal) -> tuple[XY, ...]:
    low, high = (float(edge[0, 2]) for edge in pad_edges(pad, pedal))
    y, half = float(pad.centre[0, 1]), float(pedal.pad_width) / 2
    return rectangle((y - half, y + half), (low, high))


def _pad(name: str, pedal: Pedal, pad: Pad) -> Iterator[Primitive]:
    """Arm, face and the two side cleats."""
    ref = f"car.pedals.{name}"
    yield Line(
        f"pedal.{name}.arm", "outline", f"{ref}.arm", (seen(pad.pivot, "pads"), seen(pad.centre, "pads"))
    )
    yield Circle(f"pedal.{name}.pivot", "outline", f"{ref}.pivot", seen(pad.pivot, "pads"), PIVOT)
    yield Area(f"pedal.{name}.pad", "solid", f"{ref}.pad_width", _face(pad, pedal))
    if pedal.cleat_spacing is None:
        return
    low, high = (float(edge[0, 2]) for edge in pad_edges(pad, pedal))
    y, inner, outer = float(pad.centre[0, 1]), float(pedal.cleat_spacing) / 2, float(pedal.pad_width) / 2
    for side, sign in (("left", -1.0), ("right", 1.0)):
        strip = rectangle((y + sign * inner, y + sign * outer), (low, high))
        yield Area(f"pedal.{name}.cleat.{side}", "pad", f"{ref}.cleat_spacing", strip)


def _shoe(name: str, style: Style, leg: Leg, links: Links) -> Iterator[Primitive]:
    outline = sole_seen(leg, links, "pads")
    yield Line(f"shoe.{name}", style, "driver.shoe", (*outline, outline[0]))
