"""A circle laid into a seat: resting on its cushion against its back, or leant on its back.

Lines are `(n, k, 3)` in side view: a cushion runs rearward to the junction, a back from the junction up.
"""

from itertools import pairwise

import numpy as np

from fitcalc.geometry.degrees import acosd, atan2d, length, unit
from fitcalc.geometry.lines import from_segment
from fitcalc.geometry.side import across, at_y, dot, point
from fitcalc.units import Bools, Deg, Floats, Mm, Points

SLACK = 1e-6
"""A circle touches a line it is this near to, mm."""
REJECTED = 1e6


def resting_in(cushion: Points, back: Points, off_cushion: Mm, off_back: Mm) -> Points:
    """Centre of a circle that touches cushion and back and crosses neither, `(n, 3)`.

    The offsets are the circle's radius with the padding that it rests on. Of several such places it is the
    lowest; where it would rest on an edge, so that there is none, the place against the straight lines from junction
    to ends.
    """
    chords = _touching_both(cushion[:, [0, -1]], back[:, [0, -1]], off_cushion, off_back)[:, 0]
    places = _touching_both(cushion, back, off_cushion, off_back)
    barred = _crosses(places, cushion, off_cushion) | _crosses(places, back, off_back)
    height = places[..., 2] + REJECTED * barred
    best = height.argmin(axis=1)
    case = np.arange(len(places))
    return np.where(height[case, best][:, None] < REJECTED / 2, places[case, best], chords)


def leaning_on(foot: Points, reach: float, back: Points, off_back: Mm) -> Deg:
    """Lean at which a circle `reach` above `foot` first touches a back, from the vertical, positive rearward.

    A back that is never met is taken on along the straight line from its lower to its upper end.
    """
    corners = [back[:, at] for at in range(back.shape[1])]
    leans = [_onto_piece(foot, reach, start, end, off_back) for start, end in pairwise(corners)]
    leans += [_onto_corner(foot, reach, corner, off_back) for corner in corners]
    angles = np.stack([np.where(meets, lean, REJECTED) for lean, meets in leans], axis=1).min(axis=1)
    straight, _ = _onto_piece(foot, reach, back[:, 0], back[:, -1], off_back)
    return np.where(angles < REJECTED, angles, straight)


def _touching_both(cushion: Points, back: Points, off_cushion: Mm, off_back: Mm) -> Points:
    """Centres that touch the endless line of each piece of cushion and of back, `(n, pairs, 3)`."""
    a, at_a = _offset_lines(cushion, off_cushion)
    b, at_b = _offset_lines(back, off_back)
    a, at_a, b, at_b = a[:, :, None], at_a[:, :, None], b[:, None], at_b[:, None]
    spread = a[..., 0] * b[..., 2] - a[..., 2] * b[..., 0]
    crossing = np.abs(spread) > 1e-9
    x = _ratio(at_a * b[..., 2] - at_b * a[..., 2], spread, crossing)
    z = _ratio(at_b * a[..., 0] - at_a * b[..., 0], spread, crossing)
    z = np.where(crossing, z, REJECTED)
    places = point(x, np.zeros_like(x), z)
    return at_y(places, cushion[:, :1, 1:2]).reshape(len(places), -1, 3)


def _offset_lines(line: Points, off: Mm) -> tuple[Points, Mm]:
    """Normals of a line's pieces toward the driver, and where along them a circle's centre would be."""
    normals = -across(unit(line[:, 1:] - line[:, :-1]))
    return normals, dot(normals, line[:, :-1]) + off[:, None]


def _crosses(places: Points, line: Points, off: Mm) -> Bools:
    gaps = from_segment(places[:, :, None], line[:, None, :-1], line[:, None, 1:])
    return np.any(gaps < off[:, None, None] - SLACK, axis=-1)


def _onto_piece(foot: Points, reach: float, start: Points, end: Points, off: Mm) -> tuple[Deg, Bools]:
    """Lean at which the circle touches the line of a piece, and whether that is between the piece's ends."""
    along = unit(end - start)
    apart = dot(foot - start, -across(along))
    lean = atan2d(along[:, 0], along[:, 2]) - np.degrees(np.arcsin(np.clip((off - apart) / reach, -1.0, 1.0)))
    turned = np.radians(lean)
    centre = foot + reach * point(np.sin(turned), np.zeros_like(turned), np.cos(turned))
    part = dot(centre - start, along)
    touches = np.abs(dot(centre - start, -across(along)) - off) <= SLACK
    return lean, touches & (part >= -SLACK) & (part <= length(end - start) + SLACK)


def _onto_corner(foot: Points, reach: float, corner: Points, off: Mm) -> tuple[Deg, Bools]:
    """Lean at which the circle touches a corner, and whether it can."""
    span = corner - foot
    away = np.maximum(np.hypot(span[:, 0], span[:, 2]), SLACK)
    between = acosd((reach * reach + away * away - off * off) / (2.0 * reach * away))
    return atan2d(span[:, 0], span[:, 2]) - between, np.abs(away - reach) <= off


def _ratio(top: Floats, bottom: Floats, where: Bools) -> Floats:
    return np.divide(top, bottom, out=np.zeros(np.broadcast_shapes(top.shape, bottom.shape)), where=where)
