"""What may be changed on this car, how far, and in what steps: read from the car, not worked out."""

from dataclasses import dataclass

from fitcalc.documents.car import Car
from fitcalc.fit.variables import variables_for

SLIDING = 1.0
"""Step of what slides freely, mm: what a tape can set."""
TURNING = 0.5
"""Step of what turns, deg."""
ANCHORS = "shoulder_anchor_raise"
Span = tuple[float, float]


@dataclass(frozen=True)
class Control:
    """One thing that a rework changes.

    Attributes:
        group: controls of one group stand together.
        low, high: how far the car allows it.
        step: hole pitch of what is drilled.
    """

    group: str
    ref: str
    title: str
    unit: str
    low: float
    high: float
    step: float

    @property
    def is_fixed(self) -> bool:
        """Whether the car allows no change."""
        return self.low == self.high


def controls_of(car: Car) -> tuple[Control, ...]:
    """Everything that a rework may change on this car, the seat first."""
    rails, box, wheel = car.rails, car.pedals, car.steering_wheel
    pitch = rails.hole_pitch if rails.kind == "drilled" else SLIDING
    seat = (
        Control(
            "seat",
            "setup.seat_travel",
            "seat forward",
            "mm",
            -rails.rearward_travel,
            rails.forward_travel,
            pitch,
        ),
        Control(
            "seat",
            "setup.recline",
            "seat recline",
            "deg",
            -rails.upright_travel,
            rails.recline_travel,
            TURNING,
        ),
        Control(
            "seat", "setup.seat_raise", "seat raise", "mm", -rails.lower_travel, rails.raise_travel, SLIDING
        ),
        *_inserts(car),
    )
    spacer = wheel.spacer_max if wheel else 0.0
    slots = box.box_pitch or SLIDING
    rest = (
        Control("rest", "setup.box_travel", "box rearward", "mm", -box.box_forward, box.box_rearward, slots),
        Control("rest", "setup.wheel_spacer", "wheel spacer", "mm", 0.0, spacer, SLIDING),
    )
    return (*seat, *rest, *_anchors(car), *_pedals(car))


def control_at(car: Car, ref: str) -> Control:
    """What changes the value at a ref; KeyError where nothing does."""
    return {each.ref: each for each in controls_of(car)}[ref]


def _inserts(car: Car) -> tuple[Control, ...]:
    most = {"cushion": car.seat.cushion_insert_max, "back": car.seat.back_insert_max}
    return tuple(
        Control("seat", f"setup.{part}_insert", f"{part} insert", "mm", 0.0, thickest, SLIDING)
        for part, thickest in most.items()
        if thickest > 0.0
    )


def _anchors(car: Car) -> tuple[Control, ...]:
    spans = (each for each in variables_for(car) if each.path == ANCHORS)
    return tuple(
        Control("rest", f"setup.{ANCHORS}", "anchors up", "mm", each.low, each.high, SLIDING)
        for each in spans
    )


def _pedals(car: Car) -> tuple[Control, ...]:
    return tuple(
        Control(field, f"setup.{name}.{field}", f"{name} {title}", "mm", 0.0, most, SLIDING)
        for field, title in (("stand_off", "stand-off"), ("longer_arm", "longer arm"))
        for name, pedal in car.fitted_pedals().items()
        for most in (getattr(pedal, f"max_{field}"),)
    )
