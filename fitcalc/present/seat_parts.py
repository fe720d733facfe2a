"""What the moved seat and wheel ask for: brackets, spacers, the pattern of mounts."""

import math
from collections import Counter
from collections.abc import Iterator

import numpy as np

from fitcalc.fit.result import Result
from fitcalc.making.bolts import bolt
from fitcalc.making.seat_work import BOLT, BRACKET_WIDTH, GRADE, Mounts, seat_mounts
from fitcalc.present.bench_parts import (
    Callout,
    Hole,
    Part,
    Scribe,
    bench_number,
    edge_view,
    rectangle,
    round_ended,
    set_length,
    size,
)
from fitcalc.present.picture import XY
from fitcalc.present.tolerances import tape_doubt

STEEL = "S235JR (EN 10025-2)"
THINNEST = 3.0
"""Least thickness of a steel bracket or plate, mm: common practice, no source."""
SPACER = 25.0
"""Outside diameter of a spacer under a mount, mm: common practice, no source."""
LEAST = 0.05
CROSS = 12.0


def seat_parts(result: Result) -> Iterator[Part]:
    """Brackets, spacers and the drilling pattern, where the old holes do not take the moved seat."""
    mounts = seat_mounts(result.car, result.setup)
    if mounts.bracketed[0]:
        yield from _pattern(mounts, result)
        yield from _brackets(mounts, result)
        yield from _spacers(mounts)
    yield from _wheel_spacer(result)


def _pattern(mounts: Mounts, result: Result) -> Iterator[Part]:
    """Where the seat's holes come in plan, x forward to the right, from the rearmost left mount as found."""
    after, holes = mounts.after[0], mounts.holes[0]
    if np.max(np.abs(after[:, :2] - holes[:, :2])) <= LEAST:
        return
    origin = np.array([holes[:, 0].max(), holes[:, 1].min()])
    new = [_plan(point, origin) for point in after]
    old = [_plan(point, origin) for point in holes]
    doubt = tape_doubt(*(mount.tolerance for mount in result.car.seat.mounts))
    (left, low), (right, high) = np.min(new, axis=0).tolist(), np.max(new, axis=0).tolist()
    diameter = bolt(BOLT).hole
    yield Part(
        id="seat.pattern",
        title="Seat mounts: drilling pattern in plan",
        quantity=1,
        material="floor or rail, as found",
        stock="template only",
        sizes=(
            size("fore_aft", "between front and rear holes", right - left, "medium", doubt),
            size("across", "between left and right holes", high - low, "medium", doubt),
            size("forward", "from the old hole, forward", new[0][0] - old[0][0], "medium", doubt),
            size("hole", f"hole for {BOLT}, diameter", diameter, "medium"),
        ),
        holes=tuple(Hole(at, diameter) for at in new),
        scribed=(*_joined(new), *(line for at in old for line in _crossed(at))),
        callouts=(
            Callout("fore_aft", (left, low), (right, low), 1),
            Callout("across", (right, low), (right, high), 1),
            *_forward(old, new),
        ),
        notes=(
            "Seen from above, front of the car to the right; the crosses are the holes as found.",
            "Either drill the floor to this pattern, with plates under it, or make the brackets.",
            f"Seat bolts {BOLT} {GRADE} at least; look up your rules on plates and bolts.",
        ),
    )


def _joined(holes: list[XY]) -> tuple[Scribe, ...]:
    """Lines from hole to hole round the pattern, by which the sheets of a large template are laid together."""
    x, y = (sum(axis) / len(holes) for axis in zip(*holes, strict=True))
    around = sorted(set(holes), key=lambda at: math.atan2(at[1] - y, at[0] - x))
    pairs = zip(around, (*around[1:], around[0]), strict=True)
    return tuple(Scribe(pair) for pair in pairs if pair[0] != pair[1])


def _forward(old: list[XY], new: list[XY]) -> tuple[Callout, ...]:
    """How far the first hole comes forward, above the pattern; nothing where it stays."""
    (was, level), (now, _) = old[0], new[0]
    return (Callout("forward", (was, level), (now, level), -1),) if abs(now - was) > LEAST else ()


def _plan(point: np.ndarray, origin: np.ndarray) -> XY:
    return set_length(origin[0] - point[0]), set_length(point[1] - origin[1])


def _crossed(at: XY) -> tuple[Scribe, Scribe]:
    x, y = at
    return Scribe(((x - CROSS, y), (x + CROSS, y)), "as found"), Scribe(((x, y - CROSS), (x, y + CROSS)))


def _brackets(mounts: Mounts, result: Result) -> Iterator[Part]:
    offset = mounts.offset[0]
    reaches = Counter(set_length(math.hypot(x, y)) for x, y, _ in offset)
    needed = [figure.value for figure in result.figures if figure.id == "seat.bracket_thickness"]
    least = max((float(value[0]) for value in needed if value is not None), default=0.0)
    for reach, count in reaches.items():
        if reach > LEAST:
            yield _bracket(reach, count, max(math.ceil(least), THINNEST))


def _bracket(reach: float, count: int, thickness: float) -> Part:
    edge, half = BRACKET_WIDTH / 2, BRACKET_WIDTH / 2
    length, diameter = set_length(reach + 2 * edge), bolt(BOLT).hole
    close = reach < 2.5 * diameter
    tight = (
        (f"The holes lie {reach:g} mm apart: too near for two bolts; use a longer plate.",) if close else ()
    )
    return Part(
        id=f"seat.bracket_{reach:g}",
        title="Seat bracket plate",
        quantity=count,
        material=STEEL,
        stock=f"flat {BRACKET_WIDTH:g} x {thickness:g}",
        sizes=(
            size("length", "length to cut", length, "coarse"),
            size("width", "width", BRACKET_WIDTH, "coarse"),
            size("thickness", "thickness, least", thickness, "medium"),
            size("pitch", "old hole to new mount", reach, "medium"),
            size("edge", "end to hole", edge, "medium"),
            size("hole", f"hole for {BOLT}, diameter", diameter, "medium"),
        ),
        outlines=(rectangle(0.0, 0.0, length, BRACKET_WIDTH),),
        holes=(Hole((edge, half), diameter), Hole((set_length(edge + reach), half), diameter)),
        callouts=(
            Callout("edge", (0.0, 0.0), (edge, 0.0)),
            Callout("pitch", (edge, 0.0), (set_length(edge + reach), 0.0)),
            Callout("length", (0.0, 0.0), (length, 0.0), 2),
            Callout("width", (length, 0.0), (length, BRACKET_WIDTH)),
        ),
        section=edge_view(thickness, BRACKET_WIDTH),
        section_text=bench_number(thickness),
        notes=(*tight, "Thickness from bending at the seat's design load, rounded up to a whole mm."),
    )


def _spacers(mounts: Mounts) -> Iterator[Part]:
    heights = Counter(set_length(z) for z in mounts.offset[0][:, 2])
    for height, count in heights.items():
        if height > LEAST:
            yield _spacer(height, count)


def _spacer(height: float, count: int) -> Part:
    diameter = bolt(BOLT).hole
    middle = SPACER / 2
    return Part(
        id=f"seat.spacer_{height:g}",
        title="Spacer under a seat mount",
        quantity=count,
        material=STEEL,
        stock=f"round bar {SPACER:g}",
        sizes=(
            size("height", "height", height, "medium"),
            size("outside", "outside diameter", SPACER, "coarse"),
            size("hole", f"hole for {BOLT}, diameter", diameter, "medium"),
        ),
        outlines=(round_ended(SPACER, SPACER, middle),),
        holes=(Hole((0.0, 0.0), diameter),),
        callouts=(Callout("outside", (-middle, -middle), (middle, -middle)),),
        section=edge_view(height, SPACER),
        section_text=bench_number(height),
        notes=("Ends square; the bolt grows by the same height.",),
    )


def _wheel_spacer(result: Result) -> Iterator[Part]:
    height = float(np.ravel(result.setup.wheel_spacer)[0])
    wheel = result.car.steering_wheel
    if height <= LEAST or wheel is None:
        return
    doubt = tape_doubt(wheel.centre.tolerance, result.driver.tape)
    yield Part(
        id="wheel.spacer",
        title="Steering wheel: boss spacer",
        quantity=1,
        material="as the boss",
        stock="outline and bolt circle traced from the boss",
        sizes=(size("thickness", "thickness", height, "medium", doubt),),
        notes=(
            "Bolts longer by the same amount, same class; the maker of the boss decides whether a spacer is allowed.",
        ),
    )
