"""Axle loads and centre of mass, and how a moved or added mass shifts them.

House frame: x rearward of the front axle, z up. Reference formulas with x forward change sign in x.
"""

import numpy as np

from fitcalc.geometry.degrees import tand
from fitcalc.units import GRAVITY, Deg, Floats, Kg, Mm, Points


def centre_behind_front(rear: Kg, total: Kg, wheelbase: Mm) -> Mm:
    """Centre of mass behind the front axle, from the weighed rear axle."""
    return wheelbase * rear / total


def front_share(centre: Mm, wheelbase: Mm) -> Floats:
    """Share of the car's weight on the front axle, 0 to 1; `centre` is behind the front axle."""
    return 1.0 - centre / wheelbase


def front_load_change(mass: Kg, rearward: Mm, wheelbase: Mm) -> Kg:
    """Change of front axle load when a mass in the car moves rearward (positive)."""
    return -mass * rearward / wheelbase


def centre_shift(mass: Kg, move: Points, total: Kg) -> Points:
    """Shift of the car's centre of mass when a mass in it moves by `(n, 3)`."""
    return (mass / total)[:, None] * move


def with_added(total: Kg, centre: Points, mass: Kg, at: Points) -> tuple[Kg, Points]:
    """Mass and centre of mass after adding a mass at a point (taking one away when negative)."""
    whole = total + mass
    return whole, centre + (mass / whole)[:, None] * (at - centre)


def load_transfer(mass: Kg, acceleration: Floats, height: Mm, wheelbase: Mm) -> Kg:
    """Load that forward acceleration (m/s2, braking negative) moves to the rear axle, as kg on the scales."""
    return mass * acceleration / GRAVITY * height / wheelbase


def centre_height(front_lifted: Floats, centre: Mm, wheelbase: Mm, wheel_radius: Mm, tilt: Deg) -> Mm:
    """Height of the centre of mass above ground, from weighing the front axle with the rear one lifted.

    Args:
        front_lifted: front axle's share of the weight while lifted, 0 to 1.
        centre: centre of mass behind the front axle, from weighing level.
        wheelbase: level.
        wheel_radius: of all wheels; suspension locked, no fluids moving.
        tilt: of the car while lifted, greater than 0.
    """
    forward = wheelbase * front_lifted - (wheelbase - centre)
    return wheel_radius + forward / tand(tilt)


def tilt_of_lift(lift: Mm, wheelbase: Mm) -> Deg:
    """Tilt of the car with one axle lifted by this much."""
    return np.degrees(np.arcsin(np.clip(lift / wheelbase, -1.0, 1.0)))
