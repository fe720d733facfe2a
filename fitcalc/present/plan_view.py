"""The plan view, seen from above: nose to the left, x to the right, the driver's right (y) up the page."""

from collections.abc import Collection, Iterator

from fitcalc.fit.result import Result
from fitcalc.present.annotations import annotations
from fitcalc.present.body_drawing import FOUND, OTHER, arms_and_helmet, silhouette, trunk_and_legs
from fitcalc.present.car_drawing import axle
from fitcalc.present.car_plan import (
    behind_above,
    in_front_above,
    middle_line,
    pedals_above,
    seat_above,
    surroundings_above,
    wheel_above,
)
from fitcalc.present.harness_drawing import harness_drawing
from fitcalc.present.picture import Picture, Primitive
from fitcalc.present.rework_marks import handles
from fitcalc.present.titles import legend, title


def plan_view(
    result: Result,
    found: Result | None = None,
    other: Result | None = None,
    emphasis: Collection[str] | None = None,
) -> Picture:
    """Car and driver from above, the first case of a result; the arguments are those of `side_view`."""
    primitives = tuple(_drawn(result, found, other, emphasis))
    return Picture("plan", title(result), ("x", "y"), primitives, ("check.",), legend(result, found, other))


def _drawn(
    result: Result, found: Result | None, other: Result | None, emphasis: Collection[str] | None
) -> Iterator[Primitive]:
    car, setup = result.car, result.setup
    yield from surroundings_above(car)
    yield from axle(car, "plan")
    yield from middle_line((car.footwell.floor[0][0], behind_above(result.case) + 60.0))
    yield from seat_above(result.case)
    yield from pedals_above(car, result.sitting)
    if found is not None:
        yield from silhouette(found, "plan", FOUND)
        yield from seat_above(found.case, "found seat", "as found")
        yield from pedals_above(car, found.sitting, "found", found=True)
    yield from trunk_and_legs(result.sitting, result.links, "plan")
    yield from harness_drawing(result, "plan")
    yield from wheel_above(car, setup)
    yield from arms_and_helmet(result.sitting, result.links, "plan")
    yield from in_front_above(car)
    if other is not None:
        yield from silhouette(other, "plan", OTHER)
    yield from annotations(result, "plan", emphasis)
    yield from handles(result, "plan")
