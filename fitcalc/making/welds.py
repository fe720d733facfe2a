"""Fillet welds: the line method, and the simplified resistance of EN 1993-1-8."""

from dataclasses import dataclass

import numpy as np

from fitcalc.making.bolts import GAMMA
from fitcalc.making.sections import Section
from fitcalc.units import Floats, Mm, MPa, Points


@dataclass(frozen=True, eq=False)
class WeldLine:
    """A weld as a line without thickness: length in mm, second moments in mm3, about its own centre.

    Attributes:
        length: of all runs.
        inertia_depth: for bending in depth.
        inertia_width: for bending in width.
        ends: (n, m, 2), `[depth, width]`, the points where it is worst.
    """

    length: Mm
    inertia_depth: Floats
    inertia_width: Floats
    ends: Points

    @property
    def polar(self) -> Floats:
        """Second moment about the centre, for twisting in the weld's plane."""
        return self.inertia_depth + self.inertia_width


def throat(leg: Mm) -> Mm:
    """Throat of a fillet weld with equal legs."""
    return leg / np.sqrt(2.0)


def polygon_line(points: Points) -> WeldLine:
    """A weld all along a closed outline; points `(n, m, 2)`, in order."""
    edge = np.roll(points, -1, axis=1) - points
    run = np.hypot(edge[..., 0], edge[..., 1])
    length = np.sum(run, axis=-1)
    middle = points + edge / 2.0
    centre = np.sum(run[..., None] * middle, axis=1) / length[:, None]
    inertia = np.sum(run[..., None] * (edge**2 / 12.0 + (middle - centre[:, None, :]) ** 2), axis=1)
    return WeldLine(length, inertia[:, 0], inertia[:, 1], points - centre[:, None, :])


def round_line(diameter: Mm, ends: Points) -> WeldLine:
    """A weld all round a tube or round bar; `ends` are the ends of its axes."""
    inertia = np.pi * diameter**3 / 8.0
    return WeldLine(np.pi * diameter, inertia, inertia, ends)


def all_round(section: Section) -> WeldLine:
    """A weld all round a bar or tube."""
    return round_line(section.depth, section.fibres) if section.round else polygon_line(section.fibres)


def line_force(line: WeldLine, direct: Points, twist: Floats, bending: Points) -> Floats:
    """Greatest force per mm of weld, vector sum at its worst point, N/mm.

    Args:
        line: the weld.
        direct: (n, 3), force along the bar, along the depth, along the width.
        twist: moment in the weld's plane, N mm.
        bending: (n, 2), moments that bend in depth and in width, N mm.
    """
    depth, width = line.ends[..., 0], line.ends[..., 1]
    spread = (direct / line.length[:, None])[:, None, :]
    pulled = (
        bending[:, :1] * depth / line.inertia_depth[:, None]
        + bending[:, 1:] * width / line.inertia_width[:, None]
    )
    turned = (twist / line.polar)[:, None]
    out = np.abs(spread[..., 0]) + np.abs(pulled)
    up, side = spread[..., 1] - turned * width, spread[..., 2] + turned * depth
    return np.max(np.sqrt(out**2 + up**2 + side**2), axis=-1)


def weld_strength(tensile: MPa, beta: Floats) -> MPa:
    """Design shear strength of a fillet weld whatever the direction, EN 1993-1-8 4.5.3.3 (from memory)."""
    return tensile / (np.sqrt(3.0) * beta * GAMMA)
