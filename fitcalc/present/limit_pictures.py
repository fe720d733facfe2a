"""A small drawing for every check: the car in thin lines, what the check is measured between in one accent."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from fitcalc.checks.check import Check, Figure
from fitcalc.documents.car import Car
from fitcalc.documents.driver import Driver
from fitcalc.documents.setup import Setup
from fitcalc.fit.evaluate import evaluate
from fitcalc.fit.result import Result
from fitcalc.fit.rework import fit
from fitcalc.posture.pads import pad_edges
from fitcalc.present.annotations import annotation, square_on
from fitcalc.present.chosen import view_on
from fitcalc.present.pad_marks import pad_annotation
from fitcalc.present.pad_view import pad_view
from fitcalc.present.picture import (
    XY,
    Arc,
    Area,
    Bounds,
    Circle,
    Dimension,
    Line,
    Primitive,
    Text,
    View,
    bounds_of,
    seen,
)
from fitcalc.present.plan_view import plan_view
from fitcalc.present.side_view import side_view
from fitcalc.present.wording import number

IN_PLAN = (
    "harness.points", "harness.slot.y", "harness.slot.length", "harness.shoulder.width",
    "harness.shoulder.width_restraint", "harness.lap.width",
    "seat.mount_count", "seat.hip_room", "mirror.glass",
)  # fmt: skip
"""Quantities best seen from above that the sketch leaves out or draws elsewhere."""
LEAST = (660.0, 440.0)
"""Least width and height of a drawing, mm of the car."""
AROUND = 0.35
"""Margin round what is measured, as a part of its size."""
DOT = 0.008
"""Radius of an evidence point, as a part of the drawing's width."""
LEFT_OUT = ("found", "limit.", "check.", "ground", "link", "name.", "scale")


@dataclass(frozen=True)
class LimitPicture:
    """One check drawn.

    Attributes:
        context: car and driver, to be drawn thin.
        accent: what is measured.
    """

    quantity: str
    title: str
    context: tuple[Primitive, ...]
    accent: tuple[Primitive, ...]
    frame: Bounds


def examples(car: Car, other: Car, driver: Driver, measured: Driver) -> tuple[Result, ...]:
    """Results that together have a figure for every quantity.

    Args:
        car: with a guide-less 6-point harness, hoops and all else.
        other: with a single circuit and pads without cleats.
        driver: without a head-and-neck restraint.
        measured: with one.
    """
    worn = measured.kit.model_copy(update={"collar": 30.0})
    plain = _changed(car, "seat", {"slots": ()})
    crotch = [anchor.model_dump() | {"y": 0.0} for anchor in car.harness.crotch] if car.harness else []
    single = _changed(plain, "harness", {"points": 5, "crotch": tuple(crotch[:1])})
    extra = {
        "mirrors": ({"name": "left", "at": {"x": 830.0, "y": -380.0, "z": 700.0}},),
        "masses": ({"name": "battery", "mass": 8.0, "at": _place(1900.0), "to": _place(450.0)},),
    }
    whole = Car.model_validate(single.model_dump() | extra)
    return (
        evaluate(car, measured, fit(car, measured).after.setup),
        evaluate(car, driver),
        evaluate(other, driver),
        evaluate(whole, measured.model_copy(update={"kit": worn}), Setup(seat_raise=20.0)),
    )


def limit_pictures(results: Sequence[Result], quantities: Iterable[str]) -> Mapping[str, LimitPicture]:
    """A drawing by quantity, each from the first result that has a place for it."""
    drawn = {quantity: _first(results, quantity) for quantity in quantities}
    return {quantity: picture for quantity, picture in drawn.items() if picture is not None}


def _changed(car: Car, section: str, values: Mapping[str, object]) -> Car:
    data = car.model_dump()
    data[section] = data[section] | values
    return Car.model_validate(data)


def _place(x: float) -> dict[str, float]:
    return {"x": x, "y": 0.0, "z": 220.0}


def _first(results: Sequence[Result], quantity: str) -> LimitPicture | None:
    for result in results:
        own = [each for each in result.figures if each.quantity == quantity and each.value is not None]
        placed = [each for each in own if each.evidence or quantity.startswith("cleat.")]
        if placed:
            return _picture(result, next((each for each in placed if "left" in each.id), placed[0]))
    return None


def _picture(result: Result, figure: Figure) -> LimitPicture:
    view: View = "plan" if figure.quantity in IN_PLAN else view_on(figure.quantity)
    accent, places = tuple(_accent(result, figure, view)), _dots(result, figure, view)
    frame = _frame(bounds_of([*accent, Line("all", "dimension", "", tuple(places))]))
    size = DOT * (frame[2] - frame[0])
    dots = [Circle(f"dot{at}", "dimension", "", place, size) for at, place in enumerate(places)]
    context = tuple(each for each in _context(result, view) if _meets(bounds_of([each]), frame))
    return LimitPicture(figure.quantity, figure.label, context, (*accent, *dots), frame)


def _accent(result: Result, figure: Figure, view: View) -> Iterator[Primitive]:
    """The sketch's own annotation of the figure, with its value alone; or its points joined."""
    check = Check(figure.id, figure, None, None, None, None, "", "", None, "", "")
    value = "" if figure.value is None else number(float(figure.value[0]), figure.unit)
    words = f"{value}°" if figure.unit == "deg" else f"{value} {figure.unit}".removesuffix(" points")
    if figure.evidence and figure.unit in ("mm", "deg"):
        drawn = pad_annotation(check, result) if view == "pads" else annotation(check, view, result)
        parts = [
            replace(each, text=words) if isinstance(each, Arc | Dimension | Text) else each for each in drawn
        ]
        if any(not isinstance(each, Text) for each in parts):
            yield from parts
            yield from _both_legs(figure, view)
            return
    places = _dots(result, figure, view)
    yield from _joined(figure, places)
    middle = places[len(places) // 2]
    yield Text("value", "dimension", "", middle, words)


def _both_legs(figure: Figure, view: View) -> Iterator[Line]:
    """The two lines of an angle between three points."""
    if figure.unit == "deg" and len(figure.evidence) == 3:
        yield Line("both legs", "dimension", "", tuple(seen(point, view) for point in figure.evidence))


def _joined(figure: Figure, places: list[XY]) -> Iterator[Line]:
    """Two points or a chain of them joined; of a point and a line, the square from one to the other."""
    if figure.unit == "points" or len(places) < 2:
        return
    if figure.quantity.endswith(("_line", "clearance")) and len(places) == 3:
        point, start, end = places
        yield Line("datum", "dimension", "", (start, end))
        yield Line("between", "dimension", "", (point, square_on(point, start, end)))
    else:
        yield Line("between", "dimension", "", tuple(places))


def _dots(result: Result, figure: Figure, view: View) -> list[XY]:
    """Where the figure was measured; between cleats, the ends of the pad's lower edge."""
    points = figure.evidence[:2] if figure.quantity.startswith("sight.") else figure.evidence
    if points:
        return [seen(point, view) for point in points]
    name = figure.id.split(".")[1]
    pedal = result.car.fitted_pedals()[name]
    low, _ = pad_edges(result.sitting.pedals[name].rest_pad, pedal)
    y, z = seen(low, view)
    half = float(pedal.cleat_spacing or pedal.pad_width) / 2
    return [(y - half, z), (y + half, z)]


def _frame(bounds: Bounds) -> Bounds:
    """A frame round what is measured, at least so large and 3 to 2."""
    left, bottom, right, top = bounds
    wide = max((right - left) * (1 + 2 * AROUND), LEAST[0])
    high = max((top - bottom) * (1 + 2 * AROUND), LEAST[1])
    wide, high = max(wide, 1.5 * high), max(high, wide / 1.5)
    x, y = (left + right) / 2, (bottom + top) / 2
    return x - wide / 2, y - high / 2, x + wide / 2, y + high / 2


def _context(result: Result, view: View) -> Iterator[Primitive]:
    views = {"side": side_view, "plan": plan_view, "pads": pad_view}
    picture = views[view](result, emphasis=())
    for each in picture.primitives:
        if (
            isinstance(each, Line | Area | Circle)
            and not each.key.startswith(LEFT_OUT)
            and "area" not in each.style
        ):
            yield each


def _meets(one: Bounds, other: Bounds) -> bool:
    return one[0] <= other[2] and one[2] >= other[0] and one[1] <= other[3] and one[3] >= other[1]
