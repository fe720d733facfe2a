"""An upright ellipse in side view: how far it reaches in a direction."""

import numpy as np

from fitcalc.geometry.degrees import NO_LENGTH, unit
from fitcalc.geometry.side import at_y, dot, point
from fitcalc.units import Mm, Points


def reach(half_length: Mm, half_height: Mm, direction: Points) -> Mm:
    """Distance from an ellipse's centre to its tangent square to a direction.

    Source: support function of the ellipse, sqrt((a nx)2 + (b nz)2).
    """
    way = unit(direction)
    return np.sqrt((half_length * way[..., 0]) ** 2 + (half_height * way[..., 2]) ** 2)


def below_line(centre: Points, half_length: Mm, half_height: Mm, front: Points, rear: Points) -> Mm:
    """Room between an ellipse and the endless line front-rear, square to it; positive = all of it below."""
    along = unit(_flat(rear - front))
    down = np.stack([along[..., 2], along[..., 1], -along[..., 0]], axis=-1)
    return dot(_flat(centre - front), down) - reach(half_length, half_height, down)


def touching_point(centre: Points, half_length: Mm, half_height: Mm, direction: Points) -> Points:
    """The point of the ellipse that lies furthest in a direction."""
    way = unit(_flat(direction))
    far = reach(half_length, half_height, way)[..., None]
    x, z = half_length**2 * way[..., 0], half_height**2 * way[..., 2]
    top = point(x, np.zeros_like(x), z)
    return centre + top / np.maximum(far, NO_LENGTH)


def _flat(points: Points) -> Points:
    return at_y(points, 0.0)
