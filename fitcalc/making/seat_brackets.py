"""Brackets and counter-plates under a seat mount: bending, pull-through and the published plate sizes."""

import numpy as np

from fitcalc.making.seat_levels import fixing_rules
from fitcalc.units import Bools, Floats, Mm, MPa, Newton

PRYING = (1.2, 1.5)
"""Least and most by which a thin angle bracket raises its bolt's tension: common practice, no source."""


def bracket_width(pitch: Mm, offset: Mm, diameter: Mm) -> Mm:
    """Width of a bracket leg that works for one bolt: common practice, no source."""
    return np.minimum(pitch, 4.0 * offset + diameter)


def bracket_stress(tension: Newton, offset: Mm, width: Mm, thickness: Mm) -> MPa:
    """Bending stress at the bend of an angle bracket; `offset` is from bolt centre to bend."""
    return 6.0 * tension * offset / (width * thickness**2)


def plate_pressure(tension: Newton, area: Floats) -> MPa:
    """Mean pressure under a counter-plate."""
    return tension / area


def plate_stress(pressure: MPa, overhang: Mm, thickness: Mm) -> MPa:
    """Bending stress of a counter-plate that overhangs its washer."""
    return 3.0 * pressure * overhang**2 / thickness**2


def pull_through_stress(tension: Newton, washer: Mm, thickness: Mm) -> MPa:
    """Shear stress of a sheet round the washer that is pulled against it."""
    return tension / (np.pi * washer * thickness)


def plate_shortfall(area: Floats, thickness: Mm, light_alloy: Bools) -> tuple[Floats, Mm]:
    """Area (mm2) and thickness that a counter-plate lacks against the published rule; 0 where it passes."""
    least = {rule.id: rule.low for rule in fixing_rules()}
    thick = np.where(light_alloy, least["light-alloy plate"], least["steel plate"])
    return np.maximum(least["plate area"] - area, 0.0), np.maximum(thick - thickness, 0.0)
