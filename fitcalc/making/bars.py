"""Stress, deflection and buckling of a straight bar held at one end."""

import numpy as np

from fitcalc.making.sections import Section
from fitcalc.units import Floats, Mm, MPa, Newton

SHEAR_YIELD = 0.577
"""Shear over tensile yield by distortion energy (Shigley, Mechanical Engineering Design, 9th ed.)."""

BEND_LIMIT = float(np.radians(89.9))
"""Half angle of the secant formula is taken as no larger: the bar has buckled, the figure stays finite."""


def bending_stresses(section: Section, moment_depth: Floats, moment_width: Floats) -> MPa:
    """Stress at each outline corner, `(n, m)`, for moments (N mm) that bend in depth and in width.

    Positive moments pull the corners of positive depth and width. Unsymmetric bending, so a free angle
    is right too. Not for a round section with both moments at once: see `bending_stress`.
    """
    depth, width = section.fibres[..., 0], section.fibres[..., 1]
    i_d, i_w, i_p = (
        value[:, None] for value in (section.inertia_depth, section.inertia_width, section.product)
    )
    about_depth = moment_depth[:, None] * (i_w * depth - i_p * width)
    about_width = moment_width[:, None] * (i_d * width - i_p * depth)
    return (about_depth + about_width) / (i_d * i_w - i_p**2)


def bending_stress(section: Section, moment_depth: Floats, moment_width: Floats) -> MPa:
    """Greatest bending stress, without sign."""
    if section.round:
        return np.hypot(moment_depth, moment_width) / section.modulus_depth
    return np.max(np.abs(bending_stresses(section, moment_depth, moment_width)), axis=-1)


def shear_stress(section: Section, force: Newton) -> MPa:
    """Greatest transverse shear stress."""
    return section.shear_peak * np.abs(force) / section.area


def twist_stress(section: Section, torque: Floats) -> MPa:
    """Greatest shear stress of a torque in N mm."""
    return np.abs(torque) / section.twist_modulus


def von_mises(normal: MPa, shear: MPa) -> MPa:
    """Equivalent stress of one normal and one shear stress."""
    return np.sqrt(normal**2 + 3.0 * shear**2)


def end_deflection(force: Newton, length: Mm, stiffness: Floats) -> Mm:
    """Deflection of the loaded end of a bar held at the other; stiffness E I in N mm2."""
    return force * length**3 / (3.0 * stiffness)


def moment_deflection(moment: Floats, length: Mm, stiffness: Floats) -> Mm:
    """Deflection of the free end by a moment (N mm) applied there."""
    return moment * length**2 / (2.0 * stiffness)


def limit_slenderness(modulus: MPa, yield_stress: MPa) -> Floats:
    """Slenderness (effective length over radius of gyration) above which Euler holds, below it Johnson."""
    return np.sqrt(2.0 * np.pi**2 * modulus / yield_stress)


def buckling_load(section: Section, modulus: MPa, yield_stress: MPa, effective: Mm) -> Newton:
    """Load at which a straight bar buckles: Euler when slender, Johnson's parabola when stocky."""
    limit = limit_slenderness(modulus, yield_stress)
    slender = effective / section.gyration
    johnson = section.area * yield_stress * (1.0 - (np.minimum(slender, limit) / limit) ** 2 / 2.0)
    euler = section.area * np.pi**2 * modulus / np.maximum(slender, limit) ** 2
    return np.where(slender > limit, euler, johnson)


def secant_factor(push: Newton, stiffness: Floats, effective: Mm) -> Floats:
    """How much a push (positive) enlarges its own eccentricity at the worst place; large when it buckles."""
    return 1.0 / np.cos(np.minimum(effective / 2.0 * np.sqrt(np.maximum(push, 0.0) / stiffness), BEND_LIMIT))


def secant_stress(section: Section, push: Newton, offset: Mm, modulus: MPa, effective: Mm) -> MPa:
    """Greatest compression of a bar pushed off its centroid in depth, its own bending included."""
    grown = offset * secant_factor(push, modulus * section.inertia_depth, effective)
    return push / section.area + push * grown / section.modulus_depth


def lateral_moment(section: Section, modulus: MPa, yield_stress: MPa, unbraced: Mm) -> Floats:
    """Moment in N mm at which a flat on edge fails: fully plastic, or sooner by tipping over sideways.

    Uniform moment. AISC 360 F11, from memory: no loss up to L d / t2 = 0.08 E/S_y, elastic beyond 1.9 E/S_y.
    """
    first = yield_stress * section.modulus_depth
    whole = np.minimum(yield_stress * section.plastic_depth, 1.6 * first)
    slender = unbraced * section.depth / section.width**2 * yield_stress / modulus
    bent = np.minimum((1.52 - 0.274 * slender) * first, whole)
    tipped = np.minimum(1.9 / np.maximum(slender, 0.08) * first, whole)
    return np.where(slender <= 0.08, whole, np.where(slender <= 1.9, bent, tipped))
