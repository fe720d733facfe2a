"""How an extension bar itself can fail: bending, shear, both, buckling, tipping over sideways."""

import numpy as np

from fitcalc.making.bar_loads import RootLoad
from fitcalc.making.bars import (
    SHEAR_YIELD,
    bending_stress,
    buckling_load,
    lateral_moment,
    secant_stress,
    shear_stress,
    twist_stress,
    von_mises,
)
from fitcalc.making.materials import Material
from fitcalc.making.modes import Mode
from fitcalc.making.sections import Section
from fitcalc.units import MPa

FREE_END = 2.0
"""Effective over true length of a bar held at one end with the foot on the other."""


def bar_modes(load: RootLoad, section: Section, material: Material, held: MPa) -> tuple[Mode, ...]:
    """Modes of the bar without its holes; `held` is the yield stress at its root (less beside a weld)."""
    return (*_stress_modes(load, section, held), *_stability_modes(load, section, material, held))


def _stress_modes(load: RootLoad, section: Section, held: MPa) -> tuple[Mode, ...]:
    normal = np.abs(load.push) / section.area + bending_stress(section, load.bend_depth, load.bend_width)
    sheared = np.hypot(shear_stress(section, load.across), shear_stress(section, load.sideways))
    shear = sheared + twist_stress(section, load.twist)
    return (
        Mode("bending and direct stress", "MPa", normal, held, "yield", "elastic bending"),
        Mode("shear and twist", "MPa", shear, SHEAR_YIELD * held, "yield", "distortion energy"),
        Mode(
            "combined stress",
            "MPa",
            von_mises(normal, shear),
            held,
            "yield",
            "von Mises, peaks taken together",
        ),
    )


def _stability_modes(load: RootLoad, section: Section, material: Material, held: MPa) -> tuple[Mode, ...]:
    push, effective = np.maximum(load.push, 0.0), FREE_END * np.maximum(load.length, 1.0)
    buckles = buckling_load(section, np.full_like(push, material.modulus), held, effective)
    pressed = secant_stress(section, push, load.offset, np.full_like(push, material.modulus), effective)
    return (
        Mode("buckling", "N", push, buckles, "failure", "Euler or Johnson, free end, K = 2"),
        Mode("eccentric compression", "MPa", pressed, held, "yield", "secant formula, K = 2"),
        *_tipping(load, section, material, held),
    )


def _tipping(load: RootLoad, section: Section, material: Material, held: MPa) -> tuple[Mode, ...]:
    if section.shape != "flat bar":
        return ()
    modulus = np.full_like(load.length, material.modulus)
    allowed = lateral_moment(section, modulus, held, load.length)
    return (
        Mode("tipping sideways", "N mm", load.bend_depth, allowed, "failure", "AISC 360 F11, from memory"),
    )
