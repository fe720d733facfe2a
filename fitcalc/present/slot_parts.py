"""The slots to cut in the seat's shell, as parts to make."""

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.slot_figures import SlottedStrap, slotted_straps
from fitcalc.checks.slots import in_seat_frame
from fitcalc.checks.straps import slot_centre
from fitcalc.documents.car_cockpit import Harness
from fitcalc.fit.result import Result
from fitcalc.geometry.side import dot
from fitcalc.present.bench_parts import (
    NOTHING,
    Callout,
    Ends,
    Part,
    Scribe,
    Size,
    round_ended,
    rounded_out,
    set_length,
    size,
)
from fitcalc.present.picture import XY
from fitcalc.present.tolerances import tape_doubt, tolerance
from fitcalc.units import Floats

JUDGED = ("slot_turn", "slot_end_gap")
LARGEST_CORNER = 10.0
"""Largest corner radius, mm: more would touch the edges of the strap. Smaller slots get round ends (design inference)."""
SLOPE = 1.0
"""Tolerance of a slope, deg: ISO 2768-1 Table 3, coarse, shorter leg 10 to 50 mm (from memory)."""
CROSS = 6.0
"""How far the centre lines run beyond the slot, mm."""
PLACES = {
    "x": ("middle, behind the junction", "middle, ahead of the junction"),
    "y": ("middle, to the right of the seat's middle", "middle, to the left of the seat's middle"),
    "z": ("middle, above the junction", "middle, below the junction"),
}
"""What a place is called, and what the same is called the other way; the junction is that of back and cushion."""
WHERE = {
    "shoulder": ("the back", "up the back from the junction"),
    "crotch": ("the cushion", "along the cushion from its front edge"),
    "lap": ("the side of the shell", ""),
}


def slot_parts(result: Result, drawn: Mapping[str, Ends] = NOTHING) -> Iterator[Part]:
    """Each slot that the shell lacks, or has in the wrong place, for the first case; a like pair once.

    Args:
        result: after the rework.
        drawn: 90 % intervals of figures, as from `certainty`, by id.
    """
    harness = result.car.harness
    if harness is None:
        return
    case = Case(result.car, result.driver, result.links, result.setup, result.sitting)
    wanted = [strap for strap in slotted_straps(harness, case) if _is_wanted(strap, result)]
    parts = [_slot(strap, harness, case, drawn) for strap in wanted]
    yield from map(_toward_its_side, _paired(parts))


def _is_wanted(strap: SlottedStrap, result: Result) -> bool:
    if not strap.cut.needed[0]:
        return False
    if strap.slot is None:
        return True
    judged = {f"harness.{strap.name}.{key}" for key in JUDGED}
    return any(check.figure.id in judged and check.status in ("fail", "advise") for check in result.checks)


def _slot(strap: SlottedStrap, harness: Harness, case: Case, drawn: Mapping[str, Ends]) -> Part:
    kind, _, side = strap.name.partition("_")
    plain = _sizes(strap, kind, case, _doubt(strap.name, harness, case))
    sizes = tuple(_with_drawn(each, strap.name, drawn) for each in plain)
    long, high, radius = (
        next(each.value for each in sizes if each.key == key) for key in ("length", "height", "radius")
    )
    place, _ = WHERE[kind]
    return Part(
        id=f"seat.slot_{strap.name}",
        title=f"Slot for the {side} {kind} strap".replace("  ", " "),
        quantity=1,
        material="in the seat's shell",
        stock=f"{place}, {case.car.seat.shell_thickness:g} mm thick",
        sizes=sizes,
        outlines=(round_ended(long, high, radius),),
        scribed=(*_cross(long, high), *_level(strap, kind, long, case), *_old(strap, case)),
        callouts=(
            Callout("length", (-long / 2, -high / 2), (long / 2, -high / 2)),
            Callout("height", (long / 2, -high / 2), (long / 2, high / 2)),
        ),
        notes=_notes(strap, kind),
    )


def _sizes(strap: SlottedStrap, kind: str, case: Case, doubt: float) -> tuple[Size, ...]:
    cut = strap.cut
    high = set_length(cut.height[0])
    sloped = (_slope(strap, case),) if kind == "lap" else ()
    return (
        size("length", "length of the slot", cut.length[0], "coarse"),
        size("height", "height of the slot", high, "coarse"),
        size("radius", "corner radius", _corner(high), "medium"),
        *_places(strap, kind, doubt),
        *sloped,
    )


def _places(strap: SlottedStrap, kind: str, doubt: float) -> Iterator[Size]:
    """Where its middle lies: marked out from afar, so to the tolerance of the whole distance."""
    x, y, z = strap.cut.in_seat[0].tolist()
    told = [("x", PLACES["x"][0], x), ("y", PLACES["y"][0], y), ("z", PLACES["z"][0], z)]
    if kind != "lap":
        told.append(("along", f"middle, {WHERE[kind][1]}", float(strap.cut.along[0])))
    far = tolerance(math.hypot(x, y, z), "coarse")
    for key, name, value in told:
        yield replace(size(key, name, value, "coarse", doubt), tolerance=far)


def _with_drawn(plain: Size, strap: str, drawn: Mapping[str, Ends]) -> Size:
    """The size with the interval of the drawn cars and bodies where there is one, which the tape's would belie."""
    ends = drawn.get(f"harness.{strap}.slot_{plain.key}")
    if ends is not None:
        return replace(plain, interval=rounded_out(*ends), basis="90 %")
    return replace(plain, interval=None, basis="") if drawn and plain.basis == "tape" else plain


def _corner(high: float) -> float:
    """Corner radius, rounded down to 0.1 mm so that two of them fit the height."""
    return min(math.floor(5.0 * high) / 10.0, LARGEST_CORNER)


def _cross(long: float, high: float) -> tuple[Scribe, ...]:
    x, y = long / 2 + CROSS, high / 2 + CROSS
    return (Scribe(((-x, 0.0), (x, 0.0))), Scribe(((0.0, -y), (0.0, y))))


def _slope(strap: SlottedStrap, case: Case) -> Size:
    """How far the slot's length is off level, in the seat as it stood when it was measured."""
    ahead, up = _forward(strap.cut.slot_line, case)
    angle = math.degrees(math.atan2(up, ahead))
    end = "high" if angle > 0 else "low"
    return Size("slope", f"slope of its length, front end {end}", set_length(abs(angle)), "deg", SLOPE)


def _level(strap: SlottedStrap, kind: str, long: float, case: Case) -> tuple[Scribe, ...]:
    """The seat's level line through a slot in the side, from its front end, on the drawing's own axes."""
    if kind != "lap":
        return ()
    along, up = (-_in_seat(axis, case)[0] for axis in (strap.cut.slot_line, strap.cut.upward))
    reach = long / 2 + CROSS
    front = (set_length(reach * along), set_length(reach * up))
    return (Scribe((front, (-front[0] + 0.0, -front[1] + 0.0)), "level, front"),)


def _forward(direction: Floats, case: Case) -> tuple[float, float]:
    """How far a line runs forward and up, taken toward the front."""
    x, _, z = _in_seat(direction, case)
    return (-x, z) if x <= 0.0 else (x, -z)


def _in_seat(direction: Floats, case: Case) -> tuple[float, float, float]:
    """A direction in the seat's own frame."""
    origin = np.zeros_like(direction)
    ends = in_seat_frame(direction, case) - in_seat_frame(origin, case)
    x, y, z = ends[0].tolist()
    return x, y, z


def _old(strap: SlottedStrap, case: Case) -> tuple[Scribe, ...]:
    """The slot that is there, as its middle line, seen with the new one."""
    if strap.slot is None:
        return ()
    aside = slot_centre(strap.slot, case) - strap.cut.at
    x, y = _first(dot(aside, strap.cut.slot_line)), _first(dot(aside, strap.cut.upward))
    half = float(strap.slot.length) / 2
    ends: tuple[XY, XY] = ((x - half, y), (x + half, y))
    return (Scribe(ends, "old slot"),)


def _notes(strap: SlottedStrap, kind: str) -> tuple[str, ...]:
    turn = _first(strap.tight.turn)
    now = (
        f"The slot that is there bends the strap by {turn:.1f} deg."
        if strap.slot
        else "There is no slot yet."
    )
    steep = strap.cut.height[0] > strap.cut.length[0]
    along = (
        "The strap runs nearly along the shell here: lead it past the shell if you can, a slot this high weakens it.",
    )
    out = (
        f"It breaks out of the shell's edge by {strap.cut.over[0]:.0f} mm: lead the strap over the edge instead.",
    )
    up = {"shoulder": "up the back", "crotch": "rearward along the cushion", "lap": "toward the anchor"}[kind]
    return (
        now,
        *(along if steep else ()),
        *(out if strap.cut.over[0] > 0.0 else ()),
        f"Drawn on the surface sat against; up on the drawing is {up}. The junction is that of back and cushion.",
        "Mark it with the driver seated in full kit and the straight strap held across, before anything is cut.",
        "Round and bush the edge on both faces; a shell that carries load is cut only by somebody qualified.",
    )


def _doubt(name: str, harness: Harness, case: Case) -> float:
    kind, _, side = name.partition("_")
    anchors = harness.crotch if kind == "crotch" else (getattr(harness, f"{kind}_{side}"),)
    anchor = max((each.tolerance for each in anchors), default=0.0)
    return tape_doubt(case.car.seat.junction.tolerance, anchor, case.driver.tape)


def _paired(parts: list[Part]) -> Iterator[Part]:
    """Left and right of a like pair as one part made twice."""
    used: set[str] = set()
    for part in parts:
        twin = next((each for each in parts if each is not part and _alike(part, each)), None)
        if part.id in used:
            continue
        if twin is None:
            yield part
            continue
        used.add(twin.id)
        yield _pair(part)


def _pair(part: Part) -> Part:
    aside = part.size("y")
    own = replace(
        aside,
        name="middle, to each side of the seat's middle",
        value=abs(aside.value),
        interval=_mirrored(aside),
    )
    sizes = tuple(own if each.key == "y" else each for each in part.sizes)
    title = part.title.replace("the left ", "each ").replace("the right ", "each ")
    notes = (*part.notes, "Drawn for the left side; the right one is its mirror image.")
    return replace(part, id=part.id.rpartition("_")[0], title=title, quantity=2, sizes=sizes, notes=notes)


def _mirrored(aside: Size) -> tuple[float, float] | None:
    if aside.interval is None or aside.value > 0.0:
        return aside.interval
    low, high = aside.interval
    return -high, -low


def _toward_its_side(part: Part) -> Part:
    """The part with every place told toward the side that it lies on, so that no distance is negative."""
    return replace(part, sizes=tuple(_turned(each) if each.key in PLACES else each for each in part.sizes))


def _turned(place: Size) -> Size:
    if place.value >= 0.0:
        return place
    ends = None if place.interval is None else (-place.interval[1], -place.interval[0])
    return replace(place, name=PLACES[place.key][1], value=-place.value, interval=ends)


def _alike(one: Part, other: Part) -> bool:
    if one.id.rpartition("_")[0] != other.id.rpartition("_")[0]:
        return False
    values = [{each.key: abs(each.value) for each in part.sizes} for part in (one, other)]
    opposed = one.size("y").value == -other.size("y").value
    return opposed and values[0] == values[1]


def _first(value: Floats) -> float:
    return float(np.ravel(value)[0])
