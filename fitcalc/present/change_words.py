"""What may be changed, in words: a change as it is told at the bench, and an axis or a column that shows it."""

from fitcalc.documents.car import Car
from fitcalc.fit.variables import HAIR
from fitcalc.present.wording import seat_move

WORKS = {
    "bolt_on": "bolt-on",
    "drilling": "drilling",
    "welding": "welding",
    "new_bracket": "new bracket",
}
"""Kinds of work as they are told."""
TITLES = {
    "seat_travel": ("seat along its rail", "positive forward"),
    "seat_raise": ("seat height", "positive up"),
    "recline": ("recline of the seat", "positive further back"),
    "box_travel": ("pedal box", "positive rearward, toward the driver"),
    "wheel_spacer": ("spacer behind the steering wheel", "toward the driver"),
    "shoulder_anchor_raise": ("shoulder anchors", "positive up"),
    "cushion_insert": ("insert under the driver", "thickness sat on"),
    "back_insert": ("insert behind the back", "thickness leant on"),
    "stand_off": ("pad stood off", "toward the driver"),
    "longer_arm": ("arm lengthened", "along the arm"),
}
"""By path, or what follows the pedal's name: what it is, and its sign."""

ADDED = {
    "wheel_spacer": "put a {size} spacer behind the steering wheel",
    "cushion_insert": "lay a {size} insert on the cushion",
    "back_insert": "put a {size} insert behind the back",
}
"""Orders for what is only ever added."""


def title_of(path: str) -> str:
    """What a path is, as in `brake pad stood off`."""
    pedal, _, kind = path.rpartition(".")
    return f"{pedal} {TITLES[kind][0]}".strip()


def sense_of(path: str) -> str:
    """Which way is positive."""
    return TITLES[path.rpartition(".")[2]][1]


def unit_of(path: str) -> str:
    """Mm or deg."""
    return "deg" if path == "recline" else "mm"


def told(path: str, value: float, car: Car) -> str:
    """One change as an order at the bench."""
    size, more = f"{abs(value):g} {unit_of(path)}", value > 0
    pedal, _, kind = path.rpartition(".")
    if kind in ADDED:
        return ADDED[kind].format(size=size)
    match kind:
        case "seat_travel":
            return seat_move(value) + _holes(value, car)
        case "seat_raise":
            return f"set the seat {size} {'higher' if more else 'lower'}"
        case "recline":
            return f"turn the seat {size} {'further back' if more else 'more upright'} about its front mounts"
        case "box_travel":
            return f"slide the pedal box {size} {'rearward' if more else 'forward'}"
        case "shoulder_anchor_raise":
            return f"set both shoulder anchors {size} {'higher' if more else 'lower'}"
        case "stand_off":
            return f"stand the {pedal} pad off {size} toward the driver"
    return f"lengthen the {pedal} arm by {size}"


def _holes(travel: float, car: Car) -> str:
    if car.rails.kind != "drilled" or abs(travel) < HAIR:
        return ""
    holes = travel / car.rails.hole_pitch
    if abs(holes - round(holes)) > HAIR:
        return ", between two holes of the rail"
    return f": {abs(round(holes))} {'hole' if abs(round(holes)) == 1 else 'holes'}"
