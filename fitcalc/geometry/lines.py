"""Lines and profiles in side view."""

from functools import lru_cache

import numpy as np

from fitcalc.geometry.degrees import NO_LENGTH, length, unit
from fitcalc.geometry.side import at_y, dot, point, scaled
from fitcalc.geometry.sides import in_runs, some_of
from fitcalc.units import Bools, Floats, Mm, Points

FAR = 10_000.0
AT_ONCE = 1_000_000
"""Most cases times points of a profile that are worked out together, so that memory stays bounded."""
NOWHERE = -1e9
"""Stands for where a point would be that is not there, mm: further forward than any that is."""


@lru_cache(maxsize=256)
def profile_points(profile: tuple[tuple[float, float], ...]) -> Points:
    """A side-view profile as points `(k, 3)` on the centre plane."""
    pairs = np.array(profile, dtype=float)
    points = point(pairs[:, 0], np.zeros(len(pairs)), pairs[:, 1])
    points.flags.writeable = False
    return points


def profile_length(profile: Points) -> Mm:
    """Length of a profile `(n, k, 3)` along its pieces."""
    return length(profile[:, 1:] - profile[:, :-1]).sum(axis=1)


def extended(profile: Points) -> Points:
    """The profile with both ends carried on level, so that what lies beyond it still has a floor or a roof."""
    ahead = profile[:1] - [[FAR, 0.0, 0.0]]
    behind = profile[-1:] + [[FAR, 0.0, 0.0]]
    return np.concatenate([ahead, profile, behind])


def without_straight_points(line: Points) -> Points:
    """The same line `(k, 3)` without the points at which it does not turn."""
    step = line[1:] - line[:-1]
    turns = step[:-1, 0] * step[1:, 2] != step[:-1, 2] * step[1:, 0]
    return line[np.concatenate([[True], turns, [True]])]


def height_at(x: Floats, profile: Points) -> Mm:
    """Z of a profile that runs front to rear, at `x`; level beyond its ends."""
    return np.interp(x, profile[:, 0], profile[:, 2])


def nearest_on_segment(points: Points, start: Points, end: Points) -> Points:
    """The point of each segment nearest to each point; a segment of no length is its start."""
    along = end - start
    part = dot(points - start, along) / np.maximum(dot(along, along), NO_LENGTH**2)
    return start + scaled(along, np.clip(part, 0.0, 1.0))


def from_segment(points: Points, start: Points, end: Points) -> Mm:
    """Distance of each point from a segment, cases first; a segment of no length is its start."""
    cases, *several = np.broadcast_shapes(points.shape, start.shape, end.shape)

    def work(run: slice) -> Mm:
        place, first, last = (some_of(each, run) for each in (points, start, end))
        along, offset = last - first, place - first
        reach, size = dot(offset, along), np.maximum(dot(along, along), NO_LENGTH**2)
        part = np.clip(reach / size, 0.0, 1.0)
        return np.sqrt(np.maximum(dot(offset, offset) - part * (2.0 * reach - part * size), 0.0))

    return in_runs(work, cases, int(np.prod(several)))


def _nearest(points: Points, profile: Points) -> Points:
    flat = at_y(points, np.zeros(len(points)))
    near = nearest_on_segment(flat, profile[:-1, None], profile[1:, None])
    away = near - flat
    best = dot(away, away).argmin(axis=0)
    return at_y(near[best, np.arange(len(points))], points[:, 1])


def behind_on_profile(centre: Points, radius: Mm, profile: Points) -> tuple[Points, Bools]:
    """Where a circle about `centre` meets the profile rearward of the centre, in side view.

    Returns:
        The rearmost such point, `(n, 3)` at the centre's y, and whether there is one; where there is none, the point
        of the profile nearest to the centre.
    """
    count = max(len(centre), len(radius))
    if len(centre) != count:
        centre = np.broadcast_to(centre, (count, 3))
    if len(radius) != count:
        radius = np.broadcast_to(radius, count)
    runs = _runs(count, len(profile))
    if len(runs) == 1:
        return _behind(centre, radius, profile)
    places, found = zip(*(_behind(centre[run], radius[run], profile) for run in runs), strict=True)
    return np.concatenate(places), np.concatenate(found)


def _runs(cases: int, points: int) -> list[slice]:
    """The cases in runs that profiles of so many points are worked out for at once."""
    together = max(1, AT_ONCE // points)
    return [slice(at, at + together) for at in range(0, cases, together)]


def _behind(centre: Points, radius: Mm, profile: Points) -> tuple[Points, Bools]:
    hit_x, hit_z, here = _last_hits(centre, radius, profile[:-1], profile[1:])
    rearward = here & (hit_x >= centre[:, 0])
    found, best = np.any(rearward, axis=0), np.where(rearward, hit_x, NOWHERE).argmax(axis=0)
    each = np.arange(best.size)
    place = point(hit_x[best, each], centre[:, 1], hit_z[best, each])
    if not np.all(found):
        place[~found] = _nearest(centre[~found], profile)
    return place, found


def _last_hits(centre: Points, radius: Mm, start: Points, end: Points) -> tuple[Floats, Floats, Bools]:
    """The later of the two points where each segment `(k, 3)` leaves a circle, and whether it lies on the segment.

    Returns:
        The points' x and z and whether they are there, `(k, n)`.
    """
    step = end - start
    size = length(step)[:, None]
    along = step / np.maximum(size, NO_LENGTH)
    (start_x, _, start_z), (along_x, _, along_z) = start.T[..., None], along.T[..., None]
    x, z = centre[:, 0] - start_x, centre[:, 2] - start_z
    offset = x * along_z - z * along_x
    squared = radius * radius - offset * offset
    reach = x * along_x + z * along_z + np.sqrt(np.maximum(squared, 0.0))
    here = (squared >= 0.0) & (reach >= 0.0) & (reach <= size)
    return start_x + along_x * reach, start_z + along_z * reach, here


def distance_to_line(points: Points, start: Points, end: Points) -> Mm:
    """Side-view distance of points from the straight line start-end; positive below a line drawn front to rear.

    Beyond its ends the nearer end counts, so that the figure is the distance to the segment.

    Source: plane geometry; sense as in docs/frame.md.
    """
    flat, a, b = (at_y(each, 0.0) for each in (points, start, end))
    gap = flat - nearest_on_segment(flat, a, b)
    direction = unit(b - a)
    below = direction[..., 2] * gap[..., 0] - direction[..., 0] * gap[..., 2]
    return np.where(below >= 0.0, 1.0, -1.0) * length(gap)
