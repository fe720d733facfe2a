"""Pedals that the tests of this folder share."""

import numpy as np

from fitcalc.making.pedal_motion import Pedal
from fitcalc.making.rod import Rod


def floor_pedal(arm=250.0, stand_off=0.0, rest=15.0, travel=20.0) -> Pedal:
    """Own reference case, turned into the house frame.

    Made with x forward: arm at 105 deg from +x, far end of the rod at (250, 45). With x rearward the arm's
    angle from the vertical is 105 - 90 = +15 and the far end is at (-250, 45).
    """
    return Pedal(
        np.zeros((1, 2)), np.array([False]), *(np.r_[value] for value in (arm, stand_off, rest, travel))
    )


def floor_rod() -> Rod:
    return Rod(np.r_[50.0], np.r_[0.0], np.array([[-250.0, 45.0]]))


def hanging_pedal() -> Pedal:
    return Pedal(
        np.array([[100.0, 400.0]]), np.array([True]), np.r_[260.0], np.r_[12.0], np.r_[-8.0], np.r_[22.0]
    )


def hanging_rod() -> Rod:
    return Rod(np.r_[55.0], np.r_[4.0], np.array([[-120.0, 345.0]]))


PAIRS = [
    (floor_pedal(), floor_rod()),
    (floor_pedal(stand_off=40.0), floor_rod()),
    (hanging_pedal(), hanging_rod()),
]
