"""Nearest ground that the driver sees over the nose and over the wheel."""

import numpy as np

from fitcalc.checks.case import Case
from fitcalc.checks.check import Figure
from fitcalc.checks.measured import measured, nearest_of, unmeasured
from fitcalc.geometry.lines import profile_points
from fitcalc.geometry.side import point
from fitcalc.posture.cases import column
from fitcalc.posture.wheel import highest_rim
from fitcalc.units import Mm, Points

NEVER = 200_000.0
"""mm; stands for ground that is never seen, or no nearer than this."""


def sight_figures(case: Case) -> list[Figure]:
    """Nearest ground seen straight ahead."""
    return [_nose(case), _wheel(case)]


def ground_seen(eye: Points, edge: Points, ground: Mm) -> Mm:
    """Level distance from the eye to the nearest ground seen over an edge; 0 over an edge that is not ahead.

    Source: similar triangles.
    """
    height, ahead, drop = eye[..., 2] - ground, eye[..., 0] - edge[..., 0], eye[..., 2] - edge[..., 2]
    top = height * np.maximum(ahead, 0.0)
    sees = drop * NEVER > top
    far = np.full(top.shape, NEVER)
    return np.divide(top, np.broadcast_to(drop, top.shape), out=far, where=sees)


def _nose(case: Case) -> Figure:
    if case.car.sight_edges is None:
        return unmeasured("sight.ground", "sight_edges")
    return _over(case, "sight.ground", profile_points(case.car.sight_edges)[None])


def _wheel(case: Case) -> Figure:
    if case.car.steering_wheel is None:
        return unmeasured("sight.ground_over_wheel", "steering_wheel")
    return _over(case, "sight.ground_over_wheel", highest_rim(case.car.steering_wheel, case.setup)[:, None])


def _over(case: Case, id: str, edges: Points) -> Figure:
    eye, ground = case.sitting.trunk.eye, column(case.car.reference.ground)
    seen = ground_seen(eye[:, None], edges, ground[:, None])
    edge, far = nearest_of(edges, -seen), seen.max(axis=1)
    return measured(case, id, far, (eye, edge, point(eye[:, 0] - far, eye[:, 1], ground)))
