"""The steering wheel after the rework: centre, rim, and where the hands hold it."""

import numpy as np

from fitcalc.documents.car_cockpit import SteeringWheel
from fitcalc.documents.setup import Setup
from fitcalc.geometry.degrees import cosd, sind
from fitcalc.geometry.side import across, leaning, scaled
from fitcalc.posture.cases import column, xyz
from fitcalc.units import Deg, Points

ACROSS_CAR = np.array([[0.0, 1.0, 0.0]])
STRAIGHT_UP = np.array([[0.0, 0.0, 1.0]])
REARWARD = np.array([[1.0, 0.0, 0.0]])
TOP, BOTTOM = np.array([0.0]), np.array([180.0])


def rim_up(wheel: SteeringWheel) -> Points:
    """Direction in the rim's plane, upward; the plane leans forward by its tilt."""
    return leaning(-column(wheel.tilt))


def toward_driver(wheel: SteeringWheel) -> Points:
    """Direction of the wheel's axis, toward the driver."""
    return across(rim_up(wheel))


def wheel_centre(wheel: SteeringWheel, setup: Setup) -> Points:
    """Centre of the rim's plane with the spacer in."""
    return xyz(wheel.centre) + scaled(toward_driver(wheel), column(setup.wheel_spacer))


def rim_point(wheel: SteeringWheel, setup: Setup, clock: Deg) -> Points:
    """A point on the middle of the rim; `clock` is 0 at the top, positive clockwise as the driver sees it."""
    radius = (column(wheel.rim_diameter) - column(wheel.rim_thickness)) / 2
    side = scaled(ACROSS_CAR, radius * sind(clock))
    return wheel_centre(wheel, setup) + side + scaled(rim_up(wheel), radius * cosd(clock))


def rim_ends(wheel: SteeringWheel, setup: Setup) -> tuple[Points, Points]:
    """Middle of the rim at its lower and at its upper end."""
    return rim_point(wheel, setup, BOTTOM), rim_point(wheel, setup, TOP)


def lowest_rim(wheel: SteeringWheel, setup: Setup) -> Points:
    """Lowest point of the rim: straight below the middle of its round section."""
    return rim_point(wheel, setup, BOTTOM) - scaled(STRAIGHT_UP, column(wheel.rim_thickness) / 2)


def highest_rim(wheel: SteeringWheel, setup: Setup) -> Points:
    """Highest point of the rim: straight above the middle of its round section."""
    return rim_point(wheel, setup, TOP) + scaled(STRAIGHT_UP, column(wheel.rim_thickness) / 2)


def foremost_rim(wheel: SteeringWheel, setup: Setup) -> Points:
    """Foremost point of the rim: level ahead of the middle of its round section at the end that leans forward."""
    low, high = rim_ends(wheel, setup)
    end = np.where(high[:, :1] <= low[:, :1], high, low)
    return end - scaled(REARWARD, column(wheel.rim_thickness) / 2)


def grips(wheel: SteeringWheel, setup: Setup, turn: Deg) -> tuple[Points, Points]:
    """Left and right hand at 9 and 3 o'clock, the wheel turned by `turn` (positive = clockwise)."""
    return rim_point(wheel, setup, turn - 90.0), rim_point(wheel, setup, turn + 90.0)
