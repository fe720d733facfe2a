"""A driver too tall for the hoops: how much lower, or how much further reclined."""

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.head import below
from fitcalc.documents.car_cockpit import Hoops
from fitcalc.geometry.degrees import unit
from fitcalc.posture.cases import xyz
from fitcalc.posture.trunk import trunk_on
from fitcalc.units import Deg, Mm

FURTHEST = 65.0
"""No torso is reclined further than this, deg: design inference, no source."""
HALVINGS = 30
"""Bisection from 65 deg down to less than a millionth of one."""


def lower_by(case: Case, hoops: Hoops, wanted: Mm) -> Mm:
    """How far the driver must sit lower for this much room under the line over the hoops; 0 where it is there."""
    front, main = xyz(hoops.front_top), xyz(hoops.main_top)
    level = np.abs(unit(main - front)[:, 0])
    return np.maximum(wanted - below(case.sitting.trunk, front, main), 0.0) / np.maximum(level, 1e-6)


def recline_by(case: Case, hoops: Hoops, wanted: Mm) -> tuple[Deg, Mm]:
    """How much further back the torso must lean about the hips for this much room under the line over the hoops.

    Returns:
        The lean, 0 where the room is there, and what is still lacking where leaning does not give it.
    """
    trunk = case.sitting.trunk
    least, most = trunk.recline, np.maximum(trunk.recline, FURTHEST)
    for _ in range(HALVINGS):
        middle = (least + most) / 2
        short = _room(case, hoops, middle) < wanted
        least, most = np.where(short, middle, least), np.where(short, most, middle)
    has_it = _room(case, hoops, trunk.recline) >= wanted
    lean = np.where(has_it, 0.0, most - trunk.recline)
    return lean, np.maximum(wanted - _room(case, hoops, trunk.recline + lean), 0.0)


def _room(case: Case, hoops: Hoops, recline: Deg) -> Mm:
    trunk = trunk_on(case.sitting.trunk.hip, recline, case.links)
    return below(trunk, xyz(hoops.front_top), xyz(hoops.main_top))
