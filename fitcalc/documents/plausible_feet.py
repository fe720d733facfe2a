"""What must agree between pedals and footwell; spans are wide (design inference)."""

from bisect import bisect_left
from itertools import combinations
from math import cos, radians, sin
from operator import itemgetter
from typing import Any

from fitcalc.documents.fields import clash

PAD_OVER_FLOOR = (10.0, 450.0)
ROOF_OVER_FLOOR = 100.0
HEEL_BEHIND_PAD = (-50.0, 450.0)
PADS_APART = 25.0
ROW_DEPTH = 150.0


def require_feet_agree(car: Any) -> None:
    """Nothing, when pads, floor, roof, bulkhead and heel rest lie where the others say they can.

    Raises:
        PydanticCustomError: two of them disagree.
    """
    for name, pedal in car.fitted_pedals().items():
        _require_pad(name, pedal, car.footwell)
    _require_row(car.fitted_pedals())
    _require_roof(car.footwell)
    _require_heel(car.footwell.heel_rest, pad_centre(car.pedals.brake)[0])


def pad_centre(pedal: Any) -> tuple[float, float]:
    """Where the pad's centre is on the arm's line, at rest: x, z."""
    turn, upward = radians(pedal.rest_angle), 1 if pedal.hinge == "floor" else -1
    return pedal.pivot.x + pedal.arm * sin(turn), pedal.pivot.z + upward * pedal.arm * cos(turn)


def height_at(line: tuple[tuple[float, float], ...], x: float) -> float:
    """Height z of a line that runs from front to rear; level beyond its ends."""
    after = bisect_left(line, x, lo=1, key=itemgetter(0))
    if after == len(line):
        return line[-1][1]
    (x0, z0), (x1, z1) = line[after - 1 : after + 1]
    return z0 + (z1 - z0) * max(x - x0, 0) / (x1 - x0)


def _require_pad(name: str, pedal: Any, footwell: Any) -> None:
    x, z = pad_centre(pedal)
    over = z - height_at(footwell.floor, x)
    if not PAD_OVER_FLOOR[0] <= over <= PAD_OVER_FLOOR[1]:
        side = f"{abs(over):.0f} mm {'above' if over > 0 else 'below'} the floor"
        allowed = f"puts the pad's centre {side}, and it must come to 10 to 450 mm above"
        hint = "measure it, arm and rest_angle again, and check hinge"
        raise clash(f"pedals.{name}.pivot.z", pedal.pivot.z, allowed, hint)
    if footwell.bulkhead is not None and footwell.bulkhead >= x:
        allowed = f"must be less than {x:.0f}, the x of the {name} pad"
        raise clash("footwell.bulkhead", footwell.bulkhead, allowed, "x points rearward")


def _require_heel(heel: Any, pad: float) -> None:
    low, high = pad + HEEL_BEHIND_PAD[0], pad + HEEL_BEHIND_PAD[1]
    if heel is not None and not low <= heel.x <= high:
        allowed = f"must be a number from {low:.0f} to {high:.0f} mm, because the brake pad is at x {pad:.0f}"
        raise clash("footwell.heel_rest.x", heel.x, allowed, "x points rearward")


def _require_row(pedals: dict[str, Any]) -> None:
    for left, right in combinations(pedals, 2):
        y, beside = pedals[left].pad_y, pedals[right].pad_y
        if abs(y - beside) < PADS_APART:
            allowed = f"must be {PADS_APART:g} mm or more from pedals.{right}.pad_y, which is {beside:g}"
            raise clash(
                f"pedals.{left}.pad_y", y, allowed, "give both in mm, left of the centre plane negative"
            )
        here, there = pad_centre(pedals[left])[0], pad_centre(pedals[right])[0]
        if abs(here - there) > ROW_DEPTH:
            allowed = f"puts the {left} pad at x {here:.0f}, and the {right} pad is at x {there:.0f}"
            hint = f"pads lie within {ROW_DEPTH:g} mm of each other; measure both pedals again"
            raise clash(f"pedals.{left}.pivot.x", pedals[left].pivot.x, allowed, hint)


def _require_roof(footwell: Any) -> None:
    for index, (x, z) in enumerate(footwell.roof or ()):
        least = height_at(footwell.floor, x) + ROOF_OVER_FLOOR
        if z < least:
            allowed = f"must be {least:.0f} or more, 100 mm above the floor there"
            raise clash(f"footwell.roof.{index}.1", z, allowed, "z points up")
