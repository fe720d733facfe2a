"""Two rigid links between two points: leg, arm, and anything else that bends at one joint."""

from dataclasses import dataclass

import numpy as np

from fitcalc.geometry.degrees import NO_LENGTH, acosd, length, unit
from fitcalc.geometry.side import dot, scaled
from fitcalc.units import Deg, Floats, Mm, Points


@dataclass(frozen=True, eq=False)
class TwoLink:
    """A bent chain.

    Attributes:
        middle: the joint between the links, `(n, 3)`.
        end: where the chain really ends: the target when it can be reached, else the nearest point it reaches.
        angle: included angle at the joint, 180 = straight.
        shortfall: how far the target lies beyond (or, folded, within) reach; 0 when reached.
    """

    middle: Points
    end: Points
    angle: Deg
    shortfall: Mm


def two_link(start: Points, target: Points, first: Mm, second: Mm, toward: Points) -> TwoLink:
    """The chain from `start` to `target`, bent toward the side that `toward` points to.

    A target out of reach is met by the straight (or fully folded) chain on the line to it; `shortfall` says by how
    much it misses. The joint lies in the plane of the chain's line and `toward`.

    Source: law of cosines; plane geometry.
    """
    span = target - start
    wanted = length(span)
    low, high = np.abs(first - second), first + second
    reach = np.minimum(np.maximum(wanted, low), high)
    shortfall = np.abs(wanted - reach)
    along = span / np.maximum(wanted, NO_LENGTH)[..., None]
    angle = acosd(_cosine(first, second, reach))
    foot = _ratio(first * first - second * second + reach * reach, 2.0 * reach)
    height = np.sqrt(np.maximum(first * first - foot * foot, 0.0))
    middle = start + scaled(along, foot) + scaled(_square_to(along, toward), height)
    end = np.where((shortfall > 0.0)[..., None], start + scaled(along, reach), target)
    return TwoLink(middle, end, angle, shortfall)


def _cosine(first: Mm, second: Mm, reach: Mm) -> Floats:
    return _ratio(first * first + second * second - reach * reach, 2.0 * first * second)


def _ratio(top: Floats, bottom: Floats) -> Floats:
    return top / np.maximum(bottom, NO_LENGTH)


def _square_to(along: Points, toward: Points) -> Points:
    """Unit direction nearest to `toward` among those square to `along`."""
    return unit(toward - scaled(along, dot(toward, along)))
