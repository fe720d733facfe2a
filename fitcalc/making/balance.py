"""Axle loads and centre of mass, and how a moved or added mass shifts them.

House frame: x rearward of the front axle, z up. Reference formulas with x forward change sign in x.
"""

from fitcalc.units import Floats, Kg, Mm, Points


def centre_behind_front(rear: Kg, total: Kg, wheelbase: Mm) -> Mm:
    """Centre of mass behind the front axle, from the weighed rear axle."""
    return wheelbase * rear / total


def front_share(centre: Mm, wheelbase: Mm) -> Floats:
    """Share of the car's weight on the front axle, 0 to 1; `centre` is behind the front axle."""
    return 1.0 - centre / wheelbase


def front_load_change(mass: Kg, rearward: Mm, wheelbase: Mm) -> Kg:
    """Change of front axle load when a mass in the car moves rearward (positive)."""
    return -mass * rearward / wheelbase


def with_added(total: Kg, centre: Points, mass: Kg, at: Points) -> tuple[Kg, Points]:
    """Mass and centre of mass after adding a mass at a point (taking one away when negative)."""
    whole = total + mass
    return whole, centre + (mass / whole)[:, None] * (at - centre)
