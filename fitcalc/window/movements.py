"""What moves on a car, and through which range."""

from dataclasses import dataclass

from fitcalc.documents.car import Car

STEERING = "steering"


@dataclass(frozen=True)
class Movement:
    """Something that moves through a range.

    Attributes:
        name: of the pedal, or `STEERING`.
        low, high: ends of the range, as parts of pedal travel or of the turning range used.
    """

    name: str
    low: float
    high: float


def movements_of(car: Car) -> tuple[Movement, ...]:
    """Everything that moves on this car."""
    wheel = (Movement(STEERING, -1.0, 1.0),) if car.steering_wheel is not None else ()
    return (*(Movement(name, 0.0, 1.0) for name in car.fitted_pedals()), *wheel)
