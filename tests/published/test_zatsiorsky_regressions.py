"""Segment masses by regression on mass and stature against the shares in use.

Source: Zatsiorsky & Seluyanov's regressions for men, m = b0 + b1 mass(kg) + b2 stature(cm) (second-hand). An
80 kg, 180 cm man's segments sum to 80.14 kg, a 60 kg, 170 cm man's to 60.12 kg.
"""

import pytest

from fitcalc.body.mass import share

pytestmark = pytest.mark.published
LIMBS = {
    "foot": (-0.829, 0.0077, 0.0073),
    "shank": (-1.592, 0.0362, 0.0121),
    "thigh": (-2.649, 0.1463, 0.0137),
    "hand": (-0.1165, 0.0036, 0.00175),
    "forearm": (0.3185, 0.01445, -0.00114),
    "upper_arm": (0.250, 0.03012, -0.0027),
    "head_neck": (1.296, 0.0171, 0.0143),
}
TRUNK = ((8.2144, 0.1862, -0.0584), (7.181, 0.2234, -0.0663), (-7.498, 0.0976, 0.04896))


def kilograms(row, mass, stature):
    return row[0] + row[1] * mass + row[2] * stature


@pytest.mark.parametrize(("mass", "stature", "printed"), [(80, 180, 80.14), (60, 170, 60.12)])
def test_regressions_sum_to_the_man(mass, stature, printed):
    limbs = sum(
        (1 if name == "head_neck" else 2) * kilograms(row, mass, stature) for name, row in LIMBS.items()
    )
    assert limbs + sum(kilograms(row, mass, stature) for row in TRUNK) == pytest.approx(printed, abs=0.01)


@pytest.mark.parametrize("name", [*LIMBS, "trunk"])
def test_shares_agree_with_the_regressions_for_a_middling_man(name):
    rows = TRUNK if name == "trunk" else (LIMBS[name],)
    regressed = sum(kilograms(row, 73.0, 174.1) for row in rows) / 73.0
    # Both go back to the same 100 men; de Leva moved the segments' ends, which shifts mass between
    # neighbours.
    assert share(name, "mass", "male") == pytest.approx(regressed, rel=0.06)
