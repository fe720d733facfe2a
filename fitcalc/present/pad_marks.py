"""Checks across the pads: gaps and play, level, as the driver's feet see them."""

from collections.abc import Iterator

from fitcalc.checks.check import Check
from fitcalc.fit.result import Result
from fitcalc.posture.pads import pad_edges
from fitcalc.present.annotations import STYLES
from fitcalc.present.chosen import short_text
from fitcalc.present.picture import XY, Dimension, Primitive, Text, seen

STAND_OFF = 28.0
"""How far below the pads the dimensions between them stand, mm."""


def pad_annotation(check: Check, result: Result) -> Iterator[Primitive]:
    """One check between the points that it was measured at, or words at its place."""
    key, style, words = f"check.{check.id}", STYLES[check.status], short_text(check)
    ends, inches = _ends(check, result), short_text(check, inches=True)
    if len(ends) == 2:
        yield Dimension(key, style, check.id, ends[0], ends[1], words, inches=inches)
    else:
        yield Text(key, style, check.id, ends[0], words, inches)


def _ends(check: Check, result: Result) -> tuple[XY, ...]:
    """The two ends of a figure across the pads, level; or the one point it belongs to."""
    quantity, value = (
        check.figure.quantity,
        float(check.figure.value[0]) if check.figure.value is not None else 0.0,
    )
    names = check.figure.id.split(".")[1].split("_")
    if quantity == "cleat.play":
        return (_below(names[0], result),)
    points = [seen(point, "pads") for point in check.figure.evidence]
    if quantity == "cleat.pads" and value > 0.0:
        low = min(_below(name, result)[1] for name in names) - STAND_OFF
        left = float(points[0][0]) + float(result.car.fitted_pedals()[names[0]].pad_width) / 2
        return (left, low), (left + value, low)
    if quantity == "cleat.shoes":
        (y1, z1), (y2, z2) = points[:2]
        return (((y1 + y2) / 2, (z1 + z2) / 2),)
    if quantity == "pedal.rest_room":
        half = float(next(iter(result.car.fitted_pedals().values())).pad_width) / 2
        return ((points[0][0] - half, points[0][1]),)
    if quantity == "cleat.wall":
        (y, z), sign = points[0], 1.0 if points[0][0] > 0.0 else -1.0
        return (y, z), (y + sign * value, z)
    return (points[0],)


def _below(name: str, result: Result) -> XY:
    """The middle of a pad's lower edge."""
    low, _ = pad_edges(result.sitting.pedals[name].rest_pad, result.car.fitted_pedals()[name])
    return seen(low, "pads")
