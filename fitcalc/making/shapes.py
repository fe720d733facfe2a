"""The shapes that are bought: flat and round bar, round and rectangular tube, equal angle.

Closed forms; torsion of rectangular tube and angle is the thin-wall one (angle: 2 % high at 40 x 4).
"""

from typing import Literal

import numpy as np

from fitcalc.making.sections import Section, corners, quarter_points
from fitcalc.units import Floats, Mm, Points

TORSION_TERMS = np.arange(1, 12, 2)
SPANDREL_AREA = 1.0 - np.pi / 4.0
SPANDREL_CENTRE = (10.0 - 3.0 * np.pi) / (3.0 * (4.0 - np.pi))
SPANDREL_INERTIA = 1.0 / 3.0 - np.pi / 16.0 - 1.0 / (9.0 * (4.0 - np.pi))
"""A unit square corner less its quarter circle: area, centroid from the corner's sides, own second moment."""


def flat_bar(depth: Mm, width: Mm) -> Section:
    """Solid rectangle; `depth` along the foot force, so a flat on edge has depth > width."""
    area, thin = depth * width, np.minimum(depth, width)
    torsion = rectangle_torsion(np.maximum(depth, width), thin)
    return Section(
        shape="flat bar",
        depth=depth,
        width=width,
        wall=thin,
        bearing=width,
        area=area,
        inertia_depth=width * depth**3 / 12.0,
        inertia_width=depth * width**3 / 12.0,
        product=np.zeros_like(area),
        plastic_depth=width * depth**2 / 4.0,
        torsion=torsion,
        twist_modulus=torsion / thin,
        shear_peak=np.full_like(area, 1.5),
        fibres=corners(depth, width),
    )


def round_bar(diameter: Mm) -> Section:
    """Solid round. A cross bolt bears on the round's mean width, pi/4 of its diameter: design inference."""
    return _circular("round bar", diameter, np.zeros_like(diameter), 4.0 / 3.0)


def round_tube(diameter: Mm, wall: Mm) -> Section:
    """Round tube by outside diameter and wall."""
    return _circular("round tube", diameter, diameter - 2.0 * wall, 2.0)


def rectangular_tube(depth: Mm, width: Mm, wall: Mm, corner: Mm) -> Section:
    """Square or rectangular tube by outside sizes, wall and outside corner radius (inside: radius less wall).

    Corner 2 x wall is nominal for cold-formed tube up to 6 mm wall (EN 10219-2, from memory); 0 is sharp.
    """
    corner = np.minimum(corner, np.minimum(depth, width) / 2.0)
    bore, inner = (depth - 2.0 * wall, width - 2.0 * wall), np.maximum(corner - wall, 0.0)
    torsion, twist_modulus = _closed_wall(
        depth - wall, width - wall, wall, np.maximum(corner - wall / 2.0, 0.0)
    )
    inertia_depth = _rounded_inertia(depth, width, corner) - _rounded_inertia(*bore, inner)
    inertia_width = _rounded_inertia(width, depth, corner) - _rounded_inertia(*bore[::-1], inner)
    area = _rounded_area(depth, width, corner) - _rounded_area(*bore, inner)
    plastic_depth = _rounded_plastic(depth, width, corner) - _rounded_plastic(*bore, inner)
    return Section(
        shape="rectangular tube",
        depth=depth,
        width=width,
        wall=wall,
        bearing=2.0 * wall,
        area=area,
        inertia_depth=inertia_depth,
        inertia_width=inertia_width,
        product=np.zeros_like(area),
        plastic_depth=plastic_depth,
        torsion=torsion,
        twist_modulus=twist_modulus,
        shear_peak=area * plastic_depth / (4.0 * inertia_depth * wall),
        fibres=corners(depth, width),
    )


def equal_angle(leg: Mm, wall: Mm) -> Section:
    """Equal angle without fillets, one leg along the foot force."""
    outside = (leg**2 + leg * wall - wall**2) / (2.0 * (2.0 * leg - wall))
    area, free = wall * (2.0 * leg - wall), leg - wall
    inertia = (wall * (leg - outside) ** 3 + leg * outside**3 - free * (outside - wall) ** 3) / 3.0
    product = leg * wall * (leg / 2.0 - outside) * (wall / 2.0 - outside)
    product += free * wall * (wall / 2.0 - outside) * ((leg + wall) / 2.0 - outside)
    axis = area / (2.0 * leg)
    plastic = leg * ((wall - axis) ** 2 + axis**2) / 2.0 + free * wall * ((leg + wall) / 2.0 - axis)
    torsion = (leg + free) * wall**3 / 3.0
    return Section(
        shape="equal angle",
        depth=leg,
        width=leg,
        wall=wall,
        bearing=wall,
        area=area,
        inertia_depth=inertia,
        inertia_width=inertia,
        product=product,
        plastic_depth=plastic,
        torsion=torsion,
        twist_modulus=torsion / wall,
        shear_peak=area * (leg - outside) ** 2 / (2.0 * inertia),
        fibres=_angle_corners(leg, wall, outside),
    )


def rectangle_torsion(long: Mm, short: Mm) -> Floats:
    """Torsion constant of a solid rectangle, mm4: Saint-Venant's series (textbook, from memory)."""
    odd = TORSION_TERMS
    share = np.sum(np.tanh(odd * np.pi * (long / short)[:, None] / 2.0) / odd**5, axis=-1)
    return long * short**3 / 3.0 * (1.0 - 192.0 / np.pi**5 * short / long * share)


def _circular(
    shape: Literal["round bar", "round tube"], outside: Mm, inside: Mm, shear_peak: float
) -> Section:
    area = np.pi * (outside**2 - inside**2) / 4.0
    inertia = np.pi * (outside**4 - inside**4) / 64.0
    plastic = (outside**3 - inside**3) / 6.0
    wall = (outside - inside) / 2.0
    solid = shape == "round bar"
    return Section(
        shape=shape,
        depth=outside,
        width=outside,
        wall=outside if solid else wall,
        bearing=np.pi * outside / 4.0 if solid else 2.0 * wall,
        area=area,
        inertia_depth=inertia,
        inertia_width=inertia,
        product=np.zeros_like(area),
        plastic_depth=plastic,
        torsion=2.0 * inertia,
        twist_modulus=4.0 * inertia / outside,
        shear_peak=np.full_like(area, shear_peak),
        fibres=quarter_points(outside),
    )


def _closed_wall(depth: Mm, width: Mm, wall: Mm, corner: Mm) -> tuple[Floats, Floats]:
    """Torsion constant, and twist modulus at the outer face: Bredt on the middle line, and the wall's own."""
    enclosed = depth * width - 4.0 * SPANDREL_AREA * corner**2
    line = 2.0 * (depth + width) - 8.0 * SPANDREL_AREA * corner
    torsion = 4.0 * enclosed**2 * wall / line + line * wall**3 / 3.0
    return torsion, 1.0 / (1.0 / (2.0 * enclosed * wall) + wall / torsion)


def _rounded_area(depth: Mm, width: Mm, corner: Mm) -> Floats:
    return depth * width - 4.0 * SPANDREL_AREA * corner**2


def _rounded_inertia(depth: Mm, width: Mm, corner: Mm) -> Floats:
    lever = depth / 2.0 - SPANDREL_CENTRE * corner
    own = (SPANDREL_INERTIA - SPANDREL_AREA * SPANDREL_CENTRE**2) * corner**4
    return width * depth**3 / 12.0 - 4.0 * (own + SPANDREL_AREA * corner**2 * lever**2)


def _rounded_plastic(depth: Mm, width: Mm, corner: Mm) -> Floats:
    return width * depth**2 / 4.0 - 4.0 * SPANDREL_AREA * corner**2 * (depth / 2.0 - SPANDREL_CENTRE * corner)


def _angle_corners(leg: Mm, wall: Mm, outside: Mm) -> Points:
    """Six corners in order, `(n, 6, 2)`, measured from the centroid."""
    zero = np.zeros_like(leg)
    outline = ((zero, zero), (leg, zero), (leg, wall), (wall, wall), (wall, leg), (zero, leg))
    return np.stack([np.stack(corner, axis=-1) for corner in outline], axis=1) - outside[:, None, None]
