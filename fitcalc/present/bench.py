"""The whole job for the bench: what to move, and what to make."""

from collections.abc import Iterator

import numpy as np

from fitcalc.fit.certainty import Certainty
from fitcalc.fit.result import Result
from fitcalc.making.seat_work import seat_mounts
from fitcalc.present.bar_parts import bar_parts
from fitcalc.present.bench_parts import Bench, Step, set_length
from fitcalc.present.seat_parts import seat_parts
from fitcalc.present.slot_parts import slot_parts
from fitcalc.present.wording import seat_move

LEAST = 0.05


def bench(result: Result, sure: Certainty | None = None) -> Bench:
    """Steps and parts of the first case of a result; both empty where the car stays as found.

    Args:
        result: after the rework.
        sure: of the same rework, for the intervals of bars and slots; tape tolerances alone without it.
    """
    told = () if sure is None else (*sure.lengths, *sure.figures)
    ends = {each.id: (each.low, each.high) for each in told}
    parts = (*seat_parts(result), *bar_parts(result, ends), *slot_parts(result, ends))
    return Bench(tuple(_steps(result)), parts)


def _steps(result: Result) -> Iterator[Step]:
    setup = result.setup
    yield from _seat_steps(result)
    yield from _insert_steps(result)
    box = _number(setup.box_travel)
    if abs(box) > LEAST:
        yield Step("Pedal box", f"slide the whole box {_way(box, 'rearward', 'forward')}")
    anchors = _number(setup.shoulder_anchor_raise)
    if abs(anchors) > LEAST:
        yield Step("Shoulder anchors", f"set both {_way(anchors, 'higher', 'lower')}")


def _insert_steps(result: Result) -> Iterator[Step]:
    for path, where in (("cushion_insert", "on the cushion"), ("back_insert", "behind the back")):
        thick = _number(getattr(result.setup, path))
        if thick > LEAST:
            yield Step("Seat insert", f"{set_length(thick):g} mm thick as sat in, {where}, for this driver")


def _seat_steps(result: Result) -> Iterator[Step]:
    rails, setup = result.car.rails, result.setup
    travel, rise, lean = (_number(value) for value in (setup.seat_travel, setup.seat_raise, setup.recline))
    if abs(travel) > LEAST:
        holes = round(travel / rails.hole_pitch) if rails.kind == "drilled" else 0
        plural = "hole" if abs(holes) == 1 else "holes"
        yield Step("Seat", seat_move(travel) + (f": {abs(holes)} {plural}" if holes else ""))
    if abs(rise) > LEAST:
        yield Step("Seat", f"set its mounts {_way(rise, 'higher', 'lower')}")
    yield from _sunk_mounts(result)
    if abs(lean) > LEAST:
        way = "further back" if lean > 0 else "more upright"
        yield Step("Seat", f"turn it {abs(set_length(lean)):g} deg {way} about its front mounts")


def _sunk_mounts(result: Result) -> Iterator[Step]:
    """Mounts that come below their holes, which no spacer mends."""
    drops = seat_mounts(result.car, result.setup).offset[0][:, 2]
    low = drops[drops < -LEAST]
    if len(low):
        text = f"{len(low)} come up to {-set_length(low.min()):g} mm below their holes: a dropped bracket, or a recess"
        yield Step("Seat mounts", text)


def _way(value: float, positive: str, negative: str) -> str:
    return f"{abs(set_length(value)):g} mm {positive if value > 0 else negative}"


def _number(value: object) -> float:
    return float(np.ravel(np.asarray(value, dtype=float))[0])
