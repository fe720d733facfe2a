"""Trigonometry in degrees, and angles between lines."""

import numpy as np

from fitcalc.units import Deg, Floats, Points

NO_LENGTH = 1e-12
"""A vector shorter than this, mm, has no direction."""


def sind(angle: Deg) -> Floats:
    """Sine of an angle in degrees."""
    return np.sin(np.radians(angle))


def cosd(angle: Deg) -> Floats:
    """Cosine of an angle in degrees."""
    return np.cos(np.radians(angle))


def tand(angle: Deg) -> Floats:
    """Tangent of an angle in degrees."""
    return np.tan(np.radians(angle))


def atan2d(up: Floats, along: Floats) -> Deg:
    """Angle whose tangent is up/along, -180 to 180."""
    return np.degrees(np.arctan2(up, along))


def acosd(cosine: Floats) -> Deg:
    """Angle of a cosine; what rounding pushed beyond +-1 is taken as +-1."""
    return np.degrees(np.arccos(np.clip(cosine, -1.0, 1.0)))


def length(vector: Points) -> Floats:
    """Length of each vector."""
    return np.sqrt(total(vector * vector))


def total(vector: Points) -> Floats:
    """Sum of each vector's coordinates, one by one: `np.sum` along so short an axis takes six times as long."""
    whole = vector[..., 0] + vector[..., 1]
    for at in range(2, vector.shape[-1]):
        whole += vector[..., at]
    return whole


def unit(vector: Points) -> Points:
    """Direction of each vector; a zero vector stays zero."""
    return vector / np.maximum(length(vector), NO_LENGTH)[..., None]


def included(first: Points, corner: Points, last: Points) -> Deg:
    """Angle at `corner` between the lines to `first` and `last`, 0 to 180; 180 = straight.

    Coincident points give 90. Well conditioned near 0 and 180, for it comes from sine and cosine both.
    """
    a, b = first - corner, last - corner
    ax, ay, az = a[..., 0], a[..., 1], a[..., 2]
    bx, by, bz = b[..., 0], b[..., 1], b[..., 2]
    x, y, z = ay * bz - az * by, az * bx - ax * bz, ax * by - ay * bx
    sine, cosine = np.sqrt(x * x + y * y + z * z), ax * bx + ay * by + az * bz
    return np.where((sine == 0.0) & (cosine == 0.0), 90.0, np.degrees(np.arctan2(sine, cosine)))
