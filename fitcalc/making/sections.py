"""Cross-sections of bars and tubes: area, second moments, moduli, torsion.

Depth lies in the plane of the pedal's movement (the way the foot pushes), width square to it (across the
car); fibres are `[depth, width]` from the centroid. "Bending in depth" is what a force along the depth does.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from fitcalc.units import Floats, Mm, Points

Shape = Literal["flat bar", "round bar", "round tube", "rectangular tube", "equal angle"]


@dataclass(frozen=True, eq=False)
class Section:
    """Section values, each `(n,)`, in mm, mm2, mm3 and mm4.

    Attributes:
        shape: what is bought.
        depth: outside size along the foot force.
        width: outside size across the car.
        wall: thickness that decides the material's strength.
        bearing: thickness that a bolt along the width bears on.
        area: cross-section.
        inertia_depth: second moment for bending in depth.
        inertia_width: second moment for bending in width.
        product: product moment of depth and width; 0 where both are principal axes.
        plastic_depth: plastic modulus for bending in depth.
        torsion: torsion constant.
        twist_modulus: torque over greatest shear stress.
        shear_peak: greatest over mean transverse shear stress.
        fibres: (n, m, 2), the outline's corners in order; for a round section the four ends of its axes.
    """

    shape: Shape
    depth: Mm
    width: Mm
    wall: Mm
    bearing: Mm
    area: Floats
    inertia_depth: Floats
    inertia_width: Floats
    product: Floats
    plastic_depth: Floats
    torsion: Floats
    twist_modulus: Floats
    shear_peak: Floats
    fibres: Points

    @property
    def round(self) -> bool:
        """Whether bending in depth and width add as vectors."""
        return self.shape in ("round bar", "round tube")

    @property
    def modulus_depth(self) -> Floats:
        """Elastic modulus for bending in depth, at the fibre farthest off."""
        return self.inertia_depth / np.max(np.abs(self.fibres[..., 0]), axis=-1)

    @property
    def modulus_width(self) -> Floats:
        """Elastic modulus for bending in width, at the fibre farthest off."""
        return self.inertia_width / np.max(np.abs(self.fibres[..., 1]), axis=-1)

    @property
    def principal(self) -> tuple[Floats, Floats]:
        """Greatest and least second moment; the least one governs buckling."""
        middle = (self.inertia_depth + self.inertia_width) / 2.0
        spread = np.hypot((self.inertia_depth - self.inertia_width) / 2.0, self.product)
        return middle + spread, middle - spread

    @property
    def gyration(self) -> Mm:
        """Least radius of gyration."""
        return np.sqrt(self.principal[1] / self.area)


def corners(depth: Mm, width: Mm) -> Points:
    """Corners of a centred rectangle, in order, `(n, 4, 2)`."""
    high, wide = depth / 2.0, width / 2.0
    return np.stack(
        [np.stack([up * high, side * wide], axis=-1) for up, side in ((1, 1), (1, -1), (-1, -1), (-1, 1))],
        axis=1,
    )


def quarter_points(diameter: Mm) -> Points:
    """Ends of a circle's axes, in order, `(n, 4, 2)`."""
    radius, zero = diameter / 2.0, np.zeros_like(diameter)
    ends = ((radius, zero), (zero, radius), (-radius, zero), (zero, -radius))
    return np.stack([np.stack(end, axis=-1) for end in ends], axis=1)
