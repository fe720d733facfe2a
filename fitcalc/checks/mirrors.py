"""Where the mirrors stand to the eye, and which way their glass must face."""

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured
from fitcalc.checks.surroundings import slugs
from fitcalc.documents.car_cockpit import Mirror
from fitcalc.geometry.degrees import atan2d, included
from fitcalc.posture.cases import xyz
from fitcalc.units import Deg, Points

AHEAD = np.array([[-1.0, 0.0, 0.0]])


def mirror_figures(case: Case) -> list[Figure]:
    """Every mirror of the car; without one nothing is asked, for no limit on mirrors was found."""
    keys = slugs(mirror.name for mirror in case.car.mirrors)
    return [
        figure
        for mirror, key in zip(case.car.mirrors, keys, strict=True)
        for figure in _mirror(case, mirror, key)
    ]


def glass_turn(eye: Points, mirror: Points) -> Deg:
    """How far a glass turns from facing straight rearward to show the eye what is straight behind the mirror.

    Positive when turned toward the middle of the car. Source: law of reflection; the glass halves the angle.
    """
    to_eye = eye - mirror
    inward = -np.sign(mirror[:, 1]) * to_eye[:, 1]
    return atan2d(inward, to_eye[:, 0]) / 2.0


def _mirror(case: Case, mirror: Mirror, key: str) -> list[Figure]:
    eye, at = case.sitting.trunk.eye, xyz(mirror.at)
    off = included(eye + AHEAD, eye, at)
    return [
        measured(case, f"mirror.{key}.turn", off, (eye, at), "mirror.turn", mirror.name),
        measured(case, f"mirror.{key}.glass", glass_turn(eye, at), (at, eye), "mirror.glass", mirror.name),
    ]
