"""Shapes for drawing a body: tapered limbs, smooth closed lines, a helmet, a shoe. No check reads them."""

import math
from collections.abc import Sequence
from functools import cache, lru_cache

import numpy as np

from fitcalc.present.picture import XY
from fitcalc.units import Floats

ROUND = 48
"""Points of a circle: a limb of 100 mm is then true within a quarter of a millimetre."""
Disc = tuple[XY, float]
SEVERAL = 64
"""Outlines that are kept: those of a few bodies, which change with none of their postures."""

HELMET = (
    (-0.80, -0.97), (-0.94, -0.74), (-0.99, -0.40), (-0.97, -0.02), (-0.90, 0.40), (-0.64, 0.76), (-0.22, 0.97),
    (0.24, 0.97), (0.64, 0.76), (0.91, 0.41), (1.00, 0.00), (0.91, -0.41), (0.68, -0.73), (0.40, -0.86),
    (0.00, -0.92), (-0.42, -0.99),
)  # fmt: skip
"""Full-face helmet seen from its left, in half lengths and half heights about its centre. Top and back lie on the
ellipse that the checks measure to; the rest is a drawing, no source."""
VISOR = ((-0.96, -0.08), (-0.89, 0.34), (-0.30, 0.40), (-0.18, 0.20), (-0.30, -0.06))


@cache
def _round() -> Floats:
    """Directions all round, `(ROUND, 2)`."""
    turns = 2.0 * np.pi * np.arange(ROUND) / ROUND
    return np.stack([np.cos(turns), np.sin(turns)], axis=1)


@cache
def _weights(steps: int) -> Floats:
    """Weights of four neighbouring points at each step from the second to the third, `(steps, 4)`."""
    t = np.arange(steps) / steps
    parts = (-t + 2 * t**2 - t**3, 2 - 5 * t**2 + 3 * t**3, t + 4 * t**2 - 3 * t**3, -(t**2) + t**3)
    return np.stack(parts, axis=1) / 2


def wrapped(discs: Sequence[Disc]) -> tuple[XY, ...]:
    """The line of a belt pulled tight round discs: a limb from its joints and their half thicknesses."""
    centres, radii = np.array([centre for centre, _ in discs]), np.array([radius for _, radius in discs])
    outermost = np.argmax(centres @ _round().T + radii[:, None], axis=0)
    return as_points(centres[outermost] + radii[outermost, None] * _round())


@lru_cache(maxsize=SEVERAL)
def smooth(points: tuple[XY, ...], steps: int = 5) -> Floats:
    """A closed smooth line through points, `(k, 2)` (uniform Catmull-Rom)."""
    line = np.array(points)
    four = np.stack([np.roll(line, back, axis=0) for back in (1, 0, -1, -2)], axis=1)
    run = (_weights(steps) @ four).reshape(-1, 2)
    run.flags.writeable = False
    return run


def as_points(line: Floats) -> tuple[XY, ...]:
    """Rows of two numbers as points of a drawing."""
    return tuple(map(tuple, line.tolist()))


def ellipse(centre: XY, half_width: float, half_height: float) -> tuple[XY, ...]:
    """An ellipse with level axes."""
    return as_points(np.array(centre) + np.array([half_width, half_height]) * _round())


def placed(shape: Floats, origin: XY, along: XY, up: XY) -> tuple[XY, ...]:
    """A shape `(k, 2)` given in its own two directions, moved to where it belongs."""
    return as_points(np.array(origin) + shape @ np.array([along, up]))


def toward(start: XY, end: XY) -> tuple[XY, float]:
    """Direction and distance from one point to another; points that coincide give upward."""
    dx, dy = end[0] - start[0], end[1] - start[1]
    size = math.hypot(dx, dy)
    return ((dx / size, dy / size) if size > 0 else (0.0, 1.0)), size


@lru_cache(maxsize=SEVERAL)
def torso(length: float, back: float, belly: float, chest: float, below: float) -> Floats:
    """A trunk from its left, `(k, 2)`, first number along the torso line from the hip joint, second rearward of it.

    Args:
        length: hip joint to the height of the shoulder joints.
        back: torso line to the surface leant on.
        belly: depth of the body there.
        chest: depth of the body there.
        below: hip joint to the surface sat on.
    """
    front, breast = back - belly, back - chest
    return smooth(
        (
            (-below, 0.05 * back), (-0.94 * below, 0.62 * back), (-0.25 * below, 0.98 * back),
            (0.20 * length, 0.90 * back), (0.45 * length, 0.90 * back), (0.75 * length, 0.98 * back),
            (0.98 * length, 0.82 * back), (1.13 * length, 0.42 * back), (1.17 * length, 0.05 * back),
            (1.10 * length, 0.42 * breast), (0.93 * length, 0.80 * breast), (0.70 * length, 0.98 * breast),
            (0.45 * length, 0.55 * breast + 0.45 * front), (0.20 * length, front), (-0.05 * length, 0.92 * front),
            (-0.70 * below, 0.60 * front),
        )
    )  # fmt: skip


@lru_cache(maxsize=SEVERAL)
def shoe(length: float, ankle: XY) -> Floats:
    """A low boot from its side, `(k, 2)`, first number along the sole from the heel, second up from it."""
    along, up = ankle
    return smooth(
        (
            (0.00, 0.0), (0.30 * length, 0.0), (0.62 * length, 0.0), (0.90 * length, 0.0),
            (0.985 * length, 0.025 * length), (0.99 * length, 0.09 * length), (0.88 * length, 0.16 * length),
            (0.68 * length, 0.20 * length), (along + 0.22 * length, 0.92 * up),
            (along + 0.15 * length, up + 0.14 * length),
            (along - 0.15 * length, up + 0.16 * length), (along - 0.19 * length, 0.80 * up),
            (-0.005 * length, 0.10 * length),
        ),
        3,
    )  # fmt: skip


@lru_cache(maxsize=SEVERAL)
def sole(length: float, ball: float, width: float) -> Floats:
    """A sole from above, `(k, 2)`, first number along it from the heel, second to the right."""
    half = width / 2
    return smooth(
        (
            (0.0, 0.0), (0.05 * length, 0.58 * half), (0.25 * length, 0.66 * half), (0.50 * length, 0.70 * half),
            (ball, half), (0.85 * length, 0.88 * half), (0.955 * length, 0.55 * half), (length, 0.0),
            (0.955 * length, -0.55 * half), (0.85 * length, -0.88 * half), (ball, -half),
            (0.50 * length, -0.70 * half), (0.25 * length, -0.66 * half), (0.05 * length, -0.58 * half),
        ),
        3,
    )  # fmt: skip
