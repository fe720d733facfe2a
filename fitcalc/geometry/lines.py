"""Lines and profiles in side view."""

from itertools import pairwise

import numpy as np

from fitcalc.geometry.degrees import length, unit
from fitcalc.geometry.side import at_y, dot, point, scaled
from fitcalc.units import Bools, Floats, Mm, Points

FAR = 10_000.0


def profile_points(profile: tuple[tuple[float, float], ...]) -> Points:
    """A side-view profile as points `(k, 3)` on the centre plane."""
    pairs = np.array(profile, dtype=float)
    return point(pairs[:, 0], np.zeros(len(pairs)), pairs[:, 1])


def extended(profile: Points) -> Points:
    """The profile with both ends carried on level, so that what lies beyond it still has a floor or a roof."""
    ahead = profile[:1] - [[FAR, 0.0, 0.0]]
    behind = profile[-1:] + [[FAR, 0.0, 0.0]]
    return np.concatenate([ahead, profile, behind])


def height_at(x: Floats, profile: Points) -> Mm:
    """Z of a profile that runs front to rear, at `x`; level beyond its ends."""
    return np.interp(x, profile[:, 0], profile[:, 2])


def nearest_on_segment(points: Points, start: Points, end: Points) -> Points:
    """The point of each segment nearest to each point; a segment of no length is its start."""
    along = end - start
    size = dot(along, along)
    t = np.divide(
        dot(points - start, along),
        size,
        out=np.zeros(np.broadcast_shapes(points.shape, along.shape)[:-1]),
        where=size > 0,
    )
    return start + scaled(along, np.clip(t, 0.0, 1.0))


def nearest_on_profile(points: Points, profile: Points) -> Points:
    """The point of the profile nearest to each point, all in side view (y is taken from `points`)."""
    flat = at_y(points, np.zeros(len(points)))
    best = nearest_on_segment(flat, profile[:1], profile[1:2])
    for start, end in pairwise(profile[1:]):
        other = nearest_on_segment(flat, start[None], end[None])
        closer = length(other - flat) < length(best - flat)
        best = np.where(closer[:, None], other, best)
    return at_y(best, points[:, 1])


def behind_on_profile(centre: Points, radius: Mm, profile: Points) -> tuple[Points, Bools]:
    """Where a circle about `centre` meets the profile rearward of the centre, in side view.

    Returns:
        The rearmost such point, `(n, 3)` at the centre's y, and whether there is one; where there is none, the point
        of the profile nearest to the centre.
    """
    best = nearest_on_profile(centre, profile)
    found = np.zeros(len(centre), dtype=bool)
    for start, end in pairwise(profile):
        hit, here = _last_hit(centre, radius, start[None], end[None])
        rearward = here & (hit[:, 0] >= centre[:, 0]) & (~found | (hit[:, 0] > best[:, 0]))
        best = np.where(rearward[:, None], hit, best)
        found = found | rearward
    return at_y(best, centre[:, 1]), found


def _last_hit(centre: Points, radius: Mm, start: Points, end: Points) -> tuple[Points, Bools]:
    """The later of the two points where a segment leaves a circle, and whether it lies on the segment."""
    along = unit(end - start)
    middle = dot(at_y(centre, start[:, 1]) - start, along)
    foot = start + scaled(along, middle)
    offset = length(foot - at_y(centre, start[:, 1]))
    half = np.sqrt(np.maximum(radius * radius - offset * offset, 0.0))
    reach = middle + half
    return start + scaled(along, reach), (offset <= radius) & (reach >= 0.0) & (reach <= length(end - start))


def distance_to_line(points: Points, start: Points, end: Points) -> Mm:
    """Side-view distance of points from the straight line start-end; positive below a line drawn front to rear.

    Beyond its ends the nearer end counts, so that the figure is the distance to the segment.

    Source: plane geometry; sense as in docs/frame.md.
    """
    flat = at_y(points, np.zeros(points.shape[:-1]))
    a, b = at_y(start, np.zeros(start.shape[:-1])), at_y(end, np.zeros(end.shape[:-1]))
    gap = flat - nearest_on_segment(flat, a, b)
    direction = unit(b - a)
    below = direction[..., 2] * gap[..., 0] - direction[..., 0] * gap[..., 2]
    return np.where(below >= 0.0, 1.0, -1.0) * length(gap)
