"""The bars that extend the pedals, as parts to make."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

import numpy as np

from fitcalc.documents.car_pedals import Bar
from fitcalc.fit.result import Result
from fitcalc.making.bolts import bolt
from fitcalc.making.joints import Welded
from fitcalc.making.materials import material
from fitcalc.making.pedal_bars import BOLTS, GRADE, cut_length, joint_of, lap
from fitcalc.making.stock import bar_section, stock_name
from fitcalc.posture.cases import column
from fitcalc.present.bench_parts import (
    NOTHING,
    Callout,
    Ends,
    Hole,
    Part,
    Size,
    bench_number,
    rectangle,
    rounded_out,
    set_length,
    size,
)
from fitcalc.present.picture import XY
from fitcalc.present.tolerances import tape_doubt

WAYS = {
    "stand_off": ("stand-off bar", "brings the pad toward the driver, square to the pad's face"),
    "longer_arm": ("arm extension bar", "carries the pad on along the arm"),
}
ROUND_STEPS = 32
LEAST = 0.05


def bar_parts(result: Result, needed: Mapping[str, Ends] = NOTHING) -> Iterator[Part]:
    """Each bar of the first case, pedal by pedal.

    Args:
        result: after the rework.
        needed: 90 % interval of the extension that is really needed, as from `certainty`, by `brake.stand_off`.
    """
    for name in result.work:
        for way in WAYS:
            extension = float(np.ravel(getattr(getattr(result.setup, name), way))[0])
            if extension > 0.0:
                yield _bar(name, way, extension, result, needed.get(f"{name}.{way}"))


def _bar(name: str, way: str, extension: float, result: Result, needed: Ends | None) -> Part:
    bar = result.car.fitted_pedals()[name].bar
    word, does = WAYS[way]
    sizes = _sizes(_cut(extension, bar, needed, _doubt(name, result)), bar)
    length, depth = sizes[0].value, sizes[1].value
    holes = _holes(bar, depth)
    return Part(
        id=f"{name}.{way}",
        title=f"{name.capitalize()} pedal: {word}",
        quantity=1,
        material=f"{bar.material} ({material(bar.material).standard})",
        stock=stock_name(bar.shape, bar.depth, bar.thickness),
        sizes=sizes,
        outlines=(rectangle(0.0, 0.0, length, depth),),
        holes=holes,
        callouts=_callouts(length, depth, holes),
        section=_section(bar),
        bore=_bore(bar),
        section_text=_section_text(bar),
        notes=(
            f"This bar {does} by {set_length(extension):g} mm.",
            *_most_note(name, way, extension, result),
            *_joint_notes(name, way, bar, result),
        ),
    )


def _cut(extension: float, bar: Bar, needed: Ends | None, doubt: float) -> Size:
    """Length to cut; its interval from the drawn cars and bodies, or else from the tape alone."""
    over = float(cut_length(column(extension), bar)[0]) - extension
    plain = size("length", "length to cut", over + extension, "coarse", doubt)
    if needed is None:
        return plain
    return replace(plain, interval=rounded_out(over + needed[0], over + needed[1]), basis="90 %")


def _sizes(length: Size, bar: Bar) -> tuple[Size, ...]:
    plain = (
        length,
        size("depth", "depth, along the push", bar.depth, "coarse"),
        size("thickness", "thickness or wall", bar.thickness, "medium"),
    )
    if bar.joint == "welded":
        return plain
    return (
        *plain,
        size("edge", "root end to first hole", bar.edge, "medium"),
        size("pitch", "between the holes", bar.bolt_pitch, "medium"),
        size("middle", "edge to the line of holes", bar.depth / 2, "medium"),
        size("hole", f"hole for {bar.bolt}, diameter", bolt(bar.bolt).hole, "medium"),
    )


def _holes(bar: Bar, depth: float) -> tuple[Hole, ...]:
    if bar.joint == "welded":
        return ()
    along = (bar.edge + place * bar.bolt_pitch for place in range(BOLTS))
    return tuple(Hole((set_length(x), set_length(depth / 2)), bolt(bar.bolt).hole) for x in along)


def _callouts(length: float, depth: float, holes: tuple[Hole, ...]) -> tuple[Callout, ...]:
    whole = (
        Callout("length", (0.0, 0.0), (length, 0.0), 2 if holes else 1),
        Callout("depth", (length, 0.0), (length, depth)),
    )
    if not holes:
        return whole
    first, second = (hole.at[0] for hole in holes)
    middle = holes[0].at[1]
    return (
        *whole,
        Callout("edge", (0.0, 0.0), (first, 0.0)),
        Callout("pitch", (first, 0.0), (second, 0.0)),
        Callout("middle", (0.0, 0.0), (0.0, middle), -1),
    )


def _most_note(name: str, way: str, extension: float, result: Result) -> Iterator[str]:
    most = float(getattr(result.car.fitted_pedals()[name], f"max_{way}"))
    if extension >= most - LEAST:
        yield f"{most:g} mm is the most that the car file allows here: look at the findings, and whether more is needed."


def _joint_notes(name: str, way: str, bar: Bar, result: Result) -> Iterator[str]:
    both = all(float(np.ravel(getattr(getattr(result.setup, name), each))[0]) > 0.0 for each in WAYS)
    on_other = both and way == "stand_off"
    yield f"The drawn left end is the root: it meets {'the end of the arm extension bar' if on_other else 'the old arm'}."
    joint = joint_of(bar)
    if isinstance(joint, Welded):
        leg = bench_number(float(joint.leg[0]))
        yield f"Fillet weld all round the root, legs {leg} mm; check the whole pedal afterwards."
        yield material(bar.material).weld_advice
    else:
        yield f"{BOLTS} x {bar.bolt} {GRADE} through bolts with locking nuts at the root; deburr both faces of each hole."
        yield (
            f"Both bolts must land in metal, {float(lap(bar)[0]):g} mm along this bar: "
            "where the arm is narrower, give it a plate."
        )
    tilt = set_length(result.car.fitted_pedals()[name].pad_tilt)
    if tilt and (way == "stand_off" or not both):
        yield f"Fix the pad to the other end as found: its top leans {abs(tilt):g} deg further {_lean(tilt)} than the old arm."


def _lean(tilt: float) -> str:
    return "rearward" if tilt > 0 else "forward"


def _doubt(name: str, result: Result) -> float:
    car, pivot = result.car, result.car.fitted_pedals()[name].pivot
    return tape_doubt(car.seat.junction.tolerance, pivot.tolerance, result.driver.tape)


def _section_text(bar: Bar) -> str:
    """Thickness of a flat bar; the size of a tube or an angle."""
    whole = stock_name(bar.shape, bar.depth, bar.thickness)
    return bench_number(bar.thickness) if bar.shape == "flat" else whole.removeprefix(f"{bar.shape} ")


def _section(bar: Bar) -> tuple[XY, ...]:
    """Outline of the cross-section: depth up, width to the right, from its lower left corner."""
    if bar.shape == "round tube":
        return _ring(bar.depth / 2, bar.depth / 2)
    fibres = bar_section(bar.shape, column(bar.depth), column(bar.thickness)).fibres[0]
    low = fibres.min(axis=0)
    return tuple((float(wide - low[1]), float(deep - low[0])) for deep, wide in fibres)


def _bore(bar: Bar) -> tuple[XY, ...]:
    """Inside of a tube; nothing for other sections."""
    if bar.shape == "round tube":
        return _ring(bar.depth / 2, bar.depth / 2 - bar.thickness)
    if bar.shape == "square tube":
        low, high = bar.thickness, bar.depth - bar.thickness
        return ((low, low), (high, low), (high, high), (low, high))
    return ()


def _ring(middle: float, radius: float) -> tuple[XY, ...]:
    turns = 2 * np.pi * np.arange(ROUND_STEPS) / ROUND_STEPS
    return tuple((middle + radius * float(np.cos(t)), middle + radius * float(np.sin(t))) for t in turns)
