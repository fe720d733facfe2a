"""Which checks a view shows, and by what words."""

from collections.abc import Collection, Iterable

from fitcalc.checks.check import Check
from fitcalc.fit.result import Result
from fitcalc.present.picture import View
from fitcalc.present.wording import MARKS, length, number

ABOVE = frozenset(
    {
        "wheel.side", "reach.elbow_room", "reach.gear", "seat.hip_room", "cockpit.opening_width",
        "cockpit.section_width", "harness.shoulder.inner_gap",
    }
)  # fmt: skip
"""Quantities measured across the car and drawn in plan; so is every plan angle and spacing."""
FACING = frozenset(
    {"cleat.play", "cleat.width_on_pad", "cleat.pads", "cleat.shoes", "cleat.wall", "pedal.rest_room"}
)
"""Quantities drawn looking forward at the pads."""
KEY = {
    "side": (
        "posture.knee_released", "posture.hip", "posture.elbow", "posture.recline", "harness.shoulder.side_angle",
        "head.hoop_line", "head.restraint_gap",
    ),
    "plan": ("harness.shoulder.plan_angle", "harness.shoulder.inner_gap", "reach.elbow_room"),
    "pads": ("cleat.play", "cleat.pads", "cleat.shoes"),
}  # fmt: skip
"""What is drawn of a view when nobody asks for anything in particular."""
WORST = 4
"""How many broken limits are drawn besides."""
FAR_SIDE = ("right", "brake", "throttle")
"""Parts of an id of what lies behind in the side view."""
ALL_OF = frozenset({"pads", "plan"})
"""Views in which both sides are drawn."""
WORDS = {
    "posture.knee_pressed": "pressed", "posture.ankle": "ankle", "posture.heel_lift": "heel lift",
    "posture.leg_reach": "leg left", "head.hoop_line": "helmet", "head.brace_line": "helmet",
    "head.restraint_gap": "restraint", "head.main_top": "helmet", "wheel.thigh": "wheel to thigh",
    "wheel.knuckles_thigh": "knuckles to thigh", "wheel.dash": "knuckles to dash", "wheel.side": "knuckles to side",
    "knee.roof": "knee to dash", "knee.column": "knee to column", "knee.wheel": "knee to wheel",
    "knee.hoop": "knee to hoop", "leg.roof": "shin to dash", "feet.axle_line": "soles behind axle line",
    "feet.bulkhead": "shoes to bulkhead", "pedal.bulkhead": "pedal to bulkhead", "pedal.rest_room": "foot rest",
    "cleat.play": "play", "cleat.shoes": "shoes", "cleat.roof": "shoe to roof",
    "cleat.bulkhead": "shoe to bulkhead", "cleat.floor": "sole to floor", "cleat.wall": "shoe to wall",
    "height.heel_toe_step": "heel-toe step", "height.heel_toe_height": "heel-toe height",
    "height.pad": "pad above ball", "sight.ground": "ground seen from", "reach.elbow_room": "elbow",
    "sight.ground_over_wheel": "ground seen from", "seat.behind": "seat to tank", "seat.hip_room": "hips",
    "harness.shoulder.inner_gap": "strap gap", "harness.slot.turn": "slot bend", "harness.slot.end_gap": "slot end",
    "harness.slot.edge_radius": "slot edge", "harness.lap.side_angle": "lap", "harness.crotch.side_angle": "crotch",
    "leg.obstacle": "leg to", "cleat.obstacle": "shoe to",
    "reach.control": "reach,", "reach.gear": "reach, gear",
}  # fmt: skip
"""Quantities in a word or two; others go by their label."""
OF_THINGS = ("leg.obstacle", "cleat.obstacle", "reach.control", "reach.gear")
"""Quantities whose id ends in the name of the thing that they are about."""
BARE = (
    "posture.knee_released",
    "posture.hip",
    "posture.elbow",
    "posture.recline",
    "posture.shoulder",
    "cleat.pads",
)
"""Quantities whose arc or dimension says what they are."""


def view_of(check: Check) -> View:
    """The view in which a check is best seen."""
    return view_on(check.figure.quantity)


def view_on(quantity: str) -> View:
    """The view in which a quantity is best seen."""
    if quantity in FACING:
        return "pads"
    across = quantity in ABOVE or quantity.endswith(("plan_angle", "spacing"))
    return "plan" if across else "side"


def chosen(result: Result, view: View, emphasis: Collection[str] | None) -> list[Check]:
    """The checks to draw: those asked for, or else the key ones and the worst that are broken."""
    drawn = [check for check in result.worst_first() if is_drawn(check) and view_of(check) == view]
    if emphasis is not None:
        return _once([check for check in drawn if check.id in emphasis])
    every = _once(drawn)
    key = [check for name in KEY[view] for check in every if check.figure.quantity == name]
    near = key if view in ALL_OF else _nearer(key)
    broken = [check for check in every if check.status in ("fail", "advise") and check not in key]
    return [*near, *(broken if view in ALL_OF else _nearer(broken))[:WORST]]


def is_drawn(check: Check) -> bool:
    """Whether a check has a place on the drawing: it was measured, as a length or an angle, between known points."""
    figure = check.figure
    is_placed = bool(figure.evidence) or figure.quantity == "cleat.play"
    return figure.value is not None and is_placed and figure.unit in ("mm", "deg")


def short_text(check: Check, inches: bool = False) -> str:
    """The value with a word or two where the drawing alone doesn't say what it is; lengths go without their unit."""
    quantity = check.figure.quantity
    if quantity in BARE or quantity.endswith(("shoulder.side_angle", "plan_angle")):
        return value_text(check, inches)
    thing = check.figure.id.split(".")[-1].replace("_", " ") if quantity in OF_THINGS else ""
    words = WORDS.get(quantity, check.figure.label)
    return " ".join(filter(None, (words, thing, value_text(check, inches))))


def value_text(check: Check, inches: bool = False) -> str:
    """The value, and a mark unless it passes."""
    value, unit = check.figure.value, check.figure.unit
    if value is None:
        return MARKS["not assessed"]
    mark = "" if check.status == "pass" else f" {MARKS[check.status]}"
    shown = length(float(value[0]), inches) if unit == "mm" else number(float(value[0]), unit)
    return f"{shown}{'°' if unit == 'deg' else ''}{mark}"


def _once(checks: Iterable[Check]) -> list[Check]:
    """One check for each thing measured: the first, when they come worst first."""
    once: dict[str, Check] = {}
    for check in checks:
        once.setdefault(check.figure.id, check)
    return list(once.values())


def _nearer(checks: Iterable[Check]) -> list[Check]:
    """Of what both sides of the body have, the one in front."""
    once: dict[str, Check] = {}
    for check in sorted(checks, key=lambda check: any(part in check.figure.id for part in FAR_SIDE)):
        once.setdefault(check.figure.quantity, check)
    return list(once.values())
