"""Lines and profiles in side view."""

from itertools import pairwise

import numpy as np

from fitcalc.geometry.degrees import NO_LENGTH, length, unit
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
    part = dot(points - start, along) / np.maximum(dot(along, along), NO_LENGTH**2)
    return start + scaled(along, np.clip(part, 0.0, 1.0))


def from_segment(points: Points, start: Points, end: Points) -> Mm:
    """Distance of each point from a segment; a segment of no length is its start."""
    return length(nearest_on_segment(points, start, end) - points)


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
    x, z, found = centre[:, 0], centre[:, 2], np.zeros(len(centre), dtype=bool)
    for start, end in pairwise(profile):
        hit_x, hit_z, here = _last_hit(centre, radius, start, end)
        rearward = here & (hit_x >= centre[:, 0]) & (~found | (hit_x > x))
        x, z, found = np.where(rearward, hit_x, x), np.where(rearward, hit_z, z), found | rearward
    place = point(x, centre[:, 1], z)
    if np.all(found):
        return place, found
    return np.where(found[:, None], place, nearest_on_profile(centre, profile)), found


def _last_hit(centre: Points, radius: Mm, start: Points, end: Points) -> tuple[Floats, Floats, Bools]:
    """The later of the two points where a segment leaves a circle, x and z, and whether it lies on the segment."""
    size = float(np.hypot(end[0] - start[0], end[2] - start[2]))
    along_x, along_z = (end[0] - start[0]) / max(size, NO_LENGTH), (end[2] - start[2]) / max(size, NO_LENGTH)
    x, z = centre[:, 0] - start[0], centre[:, 2] - start[2]
    offset = x * along_z - z * along_x
    squared = radius * radius - offset * offset
    reach = x * along_x + z * along_z + np.sqrt(np.maximum(squared, 0.0))
    here = (squared >= 0.0) & (reach >= 0.0) & (reach <= size)
    return start[0] + along_x * reach, start[2] + along_z * reach, here


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
