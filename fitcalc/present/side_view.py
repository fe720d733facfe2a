"""The side view, seen from the car's left: nose to the left, x to the right, z up."""

from collections.abc import Collection, Iterator

from fitcalc.documents.car import Car
from fitcalc.fit.result import Result
from fitcalc.present.annotations import annotations
from fitcalc.present.body_drawing import (
    FOUND,
    OTHER,
    arms_and_helmet,
    extreme_leg,
    silhouette,
    trunk_and_legs,
)
from fitcalc.present.car_drawing import axle, in_front, surroundings
from fitcalc.present.harness_drawing import harness_drawing
from fitcalc.present.limit_areas import hoop_band, hoop_line, limit_areas
from fitcalc.present.picture import Picture, Primitive
from fitcalc.present.rework_marks import handles, rework_dimensions
from fitcalc.present.same import once
from fitcalc.present.seat_and_pedals import (
    inserts_beside,
    pedals_beside,
    pedals_found,
    rails,
    seat_beside,
    wheel_beside,
)
from fitcalc.present.titles import legend, title

RUNS_OUT = ("ground", "sight_edges", "hoop.brace", "behind", "limit.", "check.")
"""Keys of what may run out of the page."""


def side_view(
    result: Result,
    found: Result | None = None,
    other: Result | None = None,
    emphasis: Collection[str] | None = None,
) -> Picture:
    """Car and driver from the left, the first case of a result.

    Args:
        result: the car and driver after the rework, in full weight.
        found: the same as found, in thin grey, with what the rework moves.
        other: a second driver, laid over.
        emphasis: ids of the checks to annotate; None = the worst findings and the key angles.
    """
    primitives = tuple(_drawn(result, found, other, emphasis))
    return Picture(
        view="side",
        title=title(result),
        axes=("x", "z"),
        primitives=primitives,
        runs_out=RUNS_OUT,
        legend=legend(result, found, other),
    )


def _drawn(
    result: Result, found: Result | None, other: Result | None, emphasis: Collection[str] | None
) -> Iterator[Primitive]:
    car, setup = result.car, result.setup
    yield from limit_areas(result, "side", emphasis)
    yield from hoop_band(result)
    yield from _behind(car)
    if found is not None:
        yield from _as_found(found)
    for name in ("clutch", "brake"):
        if name in result.sitting.pedals:
            yield from extreme_leg(name, result.sitting.pedals[name].full, result.links, "side")
    yield from trunk_and_legs(result.sitting, result.links, "side")
    yield from harness_drawing(result, "side")
    yield from arms_and_helmet(result.sitting, result.links, "side")
    yield from seat_beside(result.case)
    yield from inserts_beside(result.case)
    yield from pedals_beside(car, result.sitting)
    yield from wheel_beside(car, setup)
    yield from _before(car)
    yield from hoop_line(result)
    if other is not None:
        yield from silhouette(other, "side", OTHER)
    if found is not None:
        yield from rework_dimensions(result, found)
    yield from annotations(result, "side", emphasis)
    yield from handles(result, "side")


@once
def _behind(car: Car) -> Iterator[Primitive]:
    """What of the car lies behind the driver, and moves with nothing."""
    yield from surroundings(car)
    yield from axle(car, "side")
    yield from rails(car)


@once
def _before(car: Car) -> Iterator[Primitive]:
    """What of the car lies before the driver."""
    yield from in_front(car)


@once
def _as_found(found: Result) -> Iterator[Primitive]:
    yield from silhouette(found, "side", FOUND)
    yield from seat_beside(found.case, "found seat", "as found")
    yield from pedals_found(found.car, found.sitting)
    yield from wheel_beside(found.car, found.setup, "found wheel", "as found")
