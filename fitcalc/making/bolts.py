"""Bolts: what they are, how a group shares a load, and what each of them and the plate can take.

Two views stand side by side. Elastic: nothing yields (Shigley's way). EN 1993-1-8: nothing fails; its bearing
resistance lets holes yield. They give different answers: say which is meant.
"""

from functools import cache
from typing import Literal

import numpy as np

from fitcalc.making.bars import SHEAR_YIELD
from fitcalc.making.sections import Section
from fitcalc.making.tables import Row, read_rows
from fitcalc.units import Floats, Mm, MPa, Newton, Points

GAMMA = 1.25
"""Partial factor for bolts and welds, gamma_M2 of EN 1993-1-8."""

SLIVER = 1e-3
"""Plate beside or between holes counts at least this share: a hole too big fails with a finite figure."""

LEAST_LEVER = 1e-3
"""A group's levers count together no shorter than this, mm: bolts all in one place leave finite figures."""

Grade = Literal["8.8", "10.9", "12.9"]


class Bolt(Row):
    """A coarse-thread bolt.

    Attributes:
        stress_area: of the thread, mm2.
        hole: clearance hole, close fit.
        flats: width across the flats of head and nut.
        loads: per class, proof and least ultimate load in N.
    """

    diameter: float
    stress_area: float
    hole: float
    flats: float
    loads: dict[Grade, tuple[float, float]]

    def proof_stress(self, grade: Grade) -> float:
        """Proof load over stress area, MPa."""
        return self.loads[grade][0] / self.stress_area


@cache
def bolts() -> tuple[Bolt, ...]:
    """Every bolt size that the program knows, smallest first."""
    return read_rows("bolts_iso898.toml", Bolt)


def bolt(size: str) -> Bolt:
    """The bolt of this size, as in M8."""
    return next(row for row in bolts() if row.id == size)


def turning_forces(lever: Points, moment: Floats) -> Points:
    """Force on each bolt, `(n, m, 2)`, of a moment in the group's plane; lever is from the group's centre."""
    square = np.stack([-lever[..., 1], lever[..., 0]], axis=-1)
    spread = np.maximum(np.sum(lever**2, axis=(1, 2)), LEAST_LEVER**2)
    return square * (moment / spread)[:, None, None]


def edge_pivot_tension(moment: Floats, lever: Mm) -> Newton:
    """Tension of each bolt of a bracket that tips about its edge; lever from that edge, both `(n, m)`."""
    return moment[:, None] * lever / np.sum(lever**2, axis=-1, keepdims=True)


def bearing_stress(force: Newton, diameter: Mm, thickness: Mm) -> MPa:
    """Mean pressure of a bolt on the side of its hole."""
    return force / (diameter * thickness)


def tear_out_stress(force: Newton, edge: Mm, thickness: Mm) -> MPa:
    """Shear stress on the two planes from a hole's centre to the edge that the bolt pushes toward."""
    return force / (2.0 * edge * thickness)


def net_area(area: Floats, holes: int, hole: Mm, thickness: Mm) -> Floats:
    """Cross-section that is left between the holes."""
    return area - holes * hole * thickness


def net_inertia(inertia: Floats, hole: Mm, thickness: Mm, off: Floats) -> Floats:
    """Second moment that holes leave; `off` is `(n, m)`, each hole's distance from the centroid."""
    return inertia - np.sum(
        (thickness * hole**3 / 12.0)[:, None] + (thickness * hole)[:, None] * off**2, axis=-1
    )


def hole_offset(section: Section) -> Mm:
    """Middle of the drilled wall off the centroid, along the depth: 0 but for an angle."""
    return np.max(np.abs(section.fibres[..., 0]), axis=-1) - section.depth / 2.0


def elastic_shear(proof_stress: MPa, area: Floats, safety: Floats) -> Newton:
    """Shear load of a bolt that stays elastic, per shear plane."""
    return SHEAR_YIELD * proof_stress * area / safety


def shear_resistance(grade_factor: Floats, ultimate: MPa, area: Floats) -> Newton:
    """Design shear resistance per plane, EN 1993-1-8 Table 3.4.

    The factor is 0.6 for classes 4.6, 5.6 and 8.8 and for any shank, 0.5 for 10.9 with threads in shear.
    """
    return grade_factor * ultimate * area / GAMMA


def tension_resistance(ultimate: MPa, area: Floats) -> Newton:
    """Design tension resistance, EN 1993-1-8 Table 3.4."""
    return 0.9 * ultimate * area / GAMMA


def bearing_factors(hole: Mm, end: Mm, side: Mm, strengths: tuple[MPa, MPa]) -> tuple[Floats, Floats]:
    """Factors k1 and alpha_b of EN 1993-1-8 Table 3.4 for a bolt at the end and edge of a plate.

    Args:
        hole: its diameter.
        end: hole centre to end, along the force.
        side: hole centre to edge, square to the force.
        strengths: ultimate strength of bolt and of plate.
    """
    sideways = np.clip(2.8 * side / hole - 1.7, SLIVER, 2.5)
    return sideways, np.minimum(np.minimum(end / (3.0 * hole), strengths[0] / strengths[1]), 1.0)


def inner_bearing_factor(hole: Mm, pitch: Mm, strengths: tuple[MPa, MPa]) -> Floats:
    """Factor alpha_b of EN 1993-1-8 Table 3.4 for a bolt that has another one ahead of it."""
    spaced = np.maximum(pitch / (3.0 * hole) - 0.25, SLIVER)
    return np.minimum(np.minimum(spaced, strengths[0] / strengths[1]), 1.0)


def bearing_resistance(
    factors: tuple[Floats, Floats], plate_tensile: MPa, diameter: Mm, thickness: Mm
) -> Newton:
    """Design bearing resistance, EN 1993-1-8 Table 3.4: on the plate's ultimate strength, not the bolt's."""
    return factors[0] * factors[1] * plate_tensile * diameter * thickness / GAMMA


def punching_resistance(head: Mm, thickness: Mm, plate_tensile: MPa) -> Newton:
    """Design resistance of a plate to a bolt head pulled through it, EN 1993-1-8 Table 3.4.

    `head` is the mean of its widths across points and across flats; across flats alone is on the safe side.
    """
    return 0.6 * np.pi * head * thickness * plate_tensile / GAMMA


def interaction(shear: Newton, tension: Newton, resistance: tuple[Newton, Newton]) -> Floats:
    """Use of a bolt in shear and tension together, 1 at the limit, EN 1993-1-8 Table 3.4."""
    shared = shear / resistance[0] + np.maximum(tension, 0.0) / (1.4 * resistance[1])
    return np.maximum(shared, np.maximum(tension, 0.0) / resistance[1])


def ultimate_stress(grade: Grade) -> float:
    """Nominal tensile strength of a property class in MPa: its first number times 100 (ISO 898-1)."""
    return 100.0 * float(grade.split(".")[0])


def thread_shear_factor(grade: Grade) -> float:
    """Shear factor with the thread in the shear plane, EN 1993-1-8 Table 3.4; 12.9 is taken as 10.9."""
    return 0.6 if grade == "8.8" else 0.5
