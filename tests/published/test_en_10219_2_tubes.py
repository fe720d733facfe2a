"""Section values of cold-formed tubes as EN 10219-2 lists them, square ones with outside corners of twice the wall.

48.3 x 3.2 is second-hand, from a published section library; the others are from memory. Values have three figures, so
half of the last one is allowed, 0.5 % at most.
"""

import numpy as np
import pytest

from fitcalc.making.shapes import rectangular_tube, round_tube

CM2, CM3, CM4 = 1e2, 1e3, 1e4
THREE_FIGURES = 0.005


def listed(section):
    """Area, second moment, elastic and plastic modulus, torsion constant; cm."""
    return [
        float(value[0])
        for value in (
            section.area / CM2,
            section.inertia_depth / CM4,
            section.modulus_depth / CM3,
            section.plastic_depth / CM3,
            section.torsion / CM4,
        )
    ]


@pytest.mark.published
@pytest.mark.parametrize(
    ("diameter", "wall", "printed"),
    [
        (33.7, 2.6, (2.54, 3.09, 1.84, 2.52, 6.19)),
        (42.4, 3.2, (3.94, 7.62, 3.59, 4.93, 15.2)),
        (48.3, 3.2, (4.53, 11.6, 4.80, 6.52, 23.2)),
    ],
)
def test_round_tube(diameter, wall, printed):
    section = round_tube(np.array([diameter]), np.array([wall]))
    assert listed(section) == pytest.approx(printed, rel=THREE_FIGURES)


@pytest.mark.published
@pytest.mark.parametrize(
    ("side", "wall", "printed"),
    [
        (30.0, 2.0, (2.14, 2.72, 1.81, 2.21, 4.54)),
        (40.0, 3.0, (4.21, 9.32, 4.66, 5.72, 15.8)),
        (50.0, 3.0, (5.41, 19.5, 7.79, 9.39, 32.1)),
    ],
)
def test_square_tube(side, wall, printed):
    sizes = (np.array([size]) for size in (side, side, wall, 2.0 * wall))
    assert listed(rectangular_tube(*sizes)) == pytest.approx(printed, rel=THREE_FIGURES)
