"""Which two changes are worth a map, at which values, and which pedals' own checks do not belong on it."""

import numpy as np

from fitcalc.documents.car import Car
from fitcalc.fit.variables import HAIR, Variable, stops, variables_for
from fitcalc.units import Floats

Pair = tuple[str, str]
POINTS = 200
"""Steps along an axis at most."""
STEPS = (0.02, 0.05, 0.1, 0.2, 0.5, 1.0, 2.0, 5.0)
"""Steps, mm or deg, so that whole mm and half degrees are points of the map."""
SEATS = ("seat_travel", "box_travel", "seat_raise", "recline")
BARS = (
    "brake.stand_off",
    "throttle.stand_off",
    "clutch.stand_off",
    "brake.longer_arm",
    "throttle.longer_arm",
)
SECOND = ("seat_raise", "recline")


def usual_pairs(car: Car) -> tuple[Pair, ...]:
    """Seat against a pedal's bar, and the seat's height against its recline, as far as this car lets them move."""
    movable = [each.path for each in variables_for(car)]
    seat = [path for path in SEATS if path in movable]
    bar = [path for path in (*BARS, "wheel_spacer", "shoulder_anchor_raise") if path in movable]
    second = [path for path in SECOND if path in movable]
    first = [(seat[0], bar[0])] if seat and bar else []
    return (*first, *([(second[0], second[1])] if len(second) == 2 else []))


def axis_values(variable: Variable) -> Floats:
    """Rising values over all that is allowed, both ends and 0 among them."""
    span = variable.high - variable.low
    step = next((each for each in STEPS if span / each <= POINTS + HAIR), span / POINTS)
    between = stops(variable.low, variable.high, step)
    return np.unique(np.round(np.concatenate([[variable.low], between, [variable.high]]), 9))


def pedals_apart(car: Car, pair: Pair) -> tuple[str, ...]:
    """Pedals whose bars are chosen by themselves: all but the pair's own, where the pair has a pedal's bar."""
    own = {path.partition(".")[0] for path in pair if "." in path}
    return tuple(name for name in car.fitted_pedals() if name not in own) if own else ()
