"""A circle in space, such as the middle of a steering wheel's rim: how near points and straight lines come to it."""

from dataclasses import dataclass

import numpy as np

from fitcalc.geometry.side import dot
from fitcalc.units import Floats, Mm, Points

STEPS = 8
"""Newton steps from either end of a segment; tested against 0.001 mm."""
ON_AXIS = 1e-6
"""Nearer than this, mm, a point counts as this far from the circle's axis."""


@dataclass(frozen=True, eq=False)
class Ring:
    """A circle, all `(n or 1, 3)` but for the radius.

    Attributes:
        across, up: two directions in its plane, square to each other.
        axis: square to its plane.
    """

    centre: Points
    across: Points
    up: Points
    axis: Points
    radius: Mm


@dataclass(frozen=True, eq=False)
class _Seen:
    """Points or directions as the circle sees them, each `(n, k)`."""

    across: Floats
    up: Floats
    axis: Floats


def to_points(ring: Ring, points: Points) -> Mm:
    """Distance of points `(n, k, 3)` from the circle, `(n, k)`.

    Source: Pythagoras, square to the circle's plane and in it.
    """
    return np.sqrt(_squared(_seen(ring, points - ring.centre[:, None]), ring.radius[:, None]))


def to_segments(ring: Ring, start: Points, end: Points) -> Mm:
    """Distance of segments from the circle, `(n, k)`; start and end `(n, k, 3)`.

    A segment comes nearest at one of its ends or at one of two places, one on either side of where it passes the
    circle's axis. There the slope of the distance is a convex function of the place, so that Newton's method, begun
    at that end, cannot miss it.

    Source: a point's distance from a circle; calculus.
    """
    first, along = _seen(ring, start - ring.centre[:, None]), _seen(ring, end - start)
    radius = ring.radius[:, None]
    flat = np.maximum(along.across * along.across + along.up * along.up, ON_AXIS**2)
    passing = np.clip(-(first.across * along.across + first.up * along.up) / flat, 0.0, 1.0)
    ends = np.stack([np.zeros_like(passing), np.ones_like(passing)])
    low, high = np.minimum(ends, passing), np.maximum(ends, passing)
    part = ends
    for _ in range(STEPS):
        part = np.clip(part - _newton(first, along, part, radius), low, high)
    near, at_ends = (_squared(_along(first, along, at), radius).min(axis=0) for at in (part, ends))
    return np.sqrt(np.minimum(near, at_ends))


def _seen(ring: Ring, vectors: Points) -> _Seen:
    return _Seen(*(dot(vectors, way[:, None]) for way in (ring.across, ring.up, ring.axis)))


def _along(first: _Seen, along: _Seen, part: Floats) -> _Seen:
    return _Seen(
        first.across + part * along.across, first.up + part * along.up, first.axis + part * along.axis
    )


def _squared(at: _Seen, radius: Mm) -> Floats:
    inward = np.sqrt(at.across * at.across + at.up * at.up) - radius
    return inward * inward + at.axis * at.axis


def _newton(first: _Seen, along: _Seen, part: Floats, radius: Mm) -> Floats:
    """Slope over curvature of half the squared distance; where it curves the wrong way, a long step downhill."""
    at = _along(first, along, part)
    off_axis = np.maximum(np.sqrt(at.across * at.across + at.up * at.up), ON_AXIS)
    flat = along.across * along.across + along.up * along.up
    outward = (at.across * along.across + at.up * along.up) / off_axis
    whole = flat + along.axis * along.axis
    slope = outward * (off_axis - radius) + at.axis * along.axis
    curvature = whole - radius * (flat - outward * outward) / off_axis
    return slope / np.maximum(curvature, ON_AXIS)
