"""ISO 898-1 load tables for coarse threads, as reprinted by fastener and engineering pages (second-hand).

The standard rounds its loads: stress times area comes within 0.6 % of them. Areas hold to half a digit.
"""

import numpy as np
import pytest

from fitcalc.making.bolts import bolt

pytestmark = pytest.mark.published

LEAST_ULTIMATE = {"8.8": 800.0, "10.9": 1040.0, "12.9": 1220.0}
PROOF = {"8.8": 580.0, "10.9": 830.0, "12.9": 970.0}
LOADS = {
    "M5": (14.2, (8230, 11350), (11800, 14800), (13800, 17300)),
    "M6": (20.1, (11600, 16100), (16700, 20900), (19500, 24500)),
    "M10": (58.0, (33700, 46400), (48100, 60300), (56300, 70800)),
    "M12": (84.3, (48900, 67400), (70000, 87700), (81800, 103000)),
}
PITCH = {"M5": 0.8, "M6": 1.0, "M10": 1.5, "M12": 1.75}
EVERY = [
    (size, grade, loads)
    for size, (_, *rows) in LOADS.items()
    for grade, loads in zip(PROOF, rows, strict=True)
]


@pytest.mark.parametrize(("size", "grade", "loads"), EVERY)
def test_loads_of_a_bolt(size, grade, loads):
    known = bolt(size)
    assert known.loads[grade] == loads
    assert known.proof_stress(grade) == pytest.approx(PROOF[grade], rel=0.006)
    assert known.loads[grade][1] / known.stress_area == pytest.approx(LEAST_ULTIMATE[grade], rel=0.006)


@pytest.mark.parametrize("size", LOADS)
def test_stress_area_of_a_thread(size):
    """The standard's own formula, with the coarse pitch of ISO 261 (from memory)."""
    area = np.pi / 4.0 * (bolt(size).diameter - 0.9382 * PITCH[size]) ** 2
    assert bolt(size).stress_area == pytest.approx(area, abs=0.05)
    assert bolt(size).stress_area == LOADS[size][0]
