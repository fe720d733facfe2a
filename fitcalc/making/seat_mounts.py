"""Reactions at the seat mounts and the use of their bolts.

Mounts lie in one level plane, `(n, m, 2)` as `[x, y]` in the car's frame, not all in one line. The load
`(n, 3)` acts on the seat at a point `(n, 3)` whose z is its height above that plane.
"""

from dataclasses import dataclass

import numpy as np

from fitcalc.making.bolts import (
    Bolt,
    Grade,
    edge_pivot_tension,
    interaction,
    shear_resistance,
    tension_resistance,
    thread_shear_factor,
    turning_forces,
    ultimate_stress,
)
from fitcalc.units import Floats, Newton, Points

LEAST_SPREAD = 1.0
"""Mounts in one line hold no tipping across it: with this for a lever, mm, their bolts fail by far."""


@dataclass(frozen=True, eq=False)
class MountCheck:
    """What each mount carries, `(n, m)`.

    Attributes:
        push: of the mount up on the seat, elastic; negative pulls on the bolt.
        tension: of the bolt, the larger of the elastic and the edge-pivot method.
        shear: across the bolt.
        used: bolt in shear and tension together by EN 1993-1-8, 1 at the limit.
    """

    push: Newton
    tension: Newton
    shear: Newton
    used: Floats

    @property
    def worst(self) -> Floats:
        """Use of the bolt that is used most, `(n,)`."""
        return np.max(self.used, axis=-1)


def check_mounts(mounts: Points, force: Points, at: Points, bolt: Bolt, grade: Grade) -> MountCheck:
    """Reactions and bolt use; one bolt at each mount, in single shear with the thread in the shear plane."""
    push = elastic_push(mounts, force, at)
    tension = np.maximum(np.maximum(-push, 0.0), pivot_tension(mounts, force, at))
    shear = mount_shear(mounts, force, at)
    return MountCheck(push, tension, shear, bolt_use(shear, tension, bolt, grade))


def bolt_use(shear: Newton, tension: Newton, bolt: Bolt, grade: Grade) -> Floats:
    """Use of a bolt in shear and tension by EN 1993-1-8, 1 at the limit; any shape."""
    ultimate, area = np.full_like(shear, ultimate_stress(grade)), np.full_like(shear, bolt.stress_area)
    factor = np.full_like(shear, thread_shear_factor(grade))
    return interaction(
        shear, tension, (shear_resistance(factor, ultimate, area), tension_resistance(ultimate, area))
    )


def elastic_push(mounts: Points, force: Points, at: Points) -> Newton:
    """Push of each mount up on the seat, `(n, m)`: rigid seat, equal springs; negative pulls on the bolt."""
    lever, pitch, roll = _turning(mounts, force, at)
    x, y = lever[..., 0], lever[..., 1]
    xx, yy, xy = np.sum(x * x, axis=1), np.sum(y * y, axis=1), np.sum(x * y, axis=1)
    spread = np.maximum(xx * yy - xy**2, LEAST_SPREAD)
    fore = (pitch * yy - roll * xy) / spread
    aside = (roll * xx - pitch * xy) / spread
    return -force[:, 2:] / mounts.shape[1] + fore[:, None] * x + aside[:, None] * y


def pivot_tension(mounts: Points, force: Points, at: Points) -> Newton:
    """Pull on each bolt, `(n, m)`, when the seat tips about the outermost mounts; no relief by load down."""
    lever, pitch, roll = _turning(mounts, force, at)
    tipping = _tipped(lever[..., 0], pitch) + _tipped(lever[..., 1], roll)
    return tipping + np.maximum(force[:, 2:], 0.0) / mounts.shape[1]


def mount_shear(mounts: Points, force: Points, at: Points) -> Newton:
    """Force across each bolt, `(n, m)`: equal shares, and the load's twist about the pattern's centre."""
    centre = np.mean(mounts, axis=1)
    arm = at[:, :2] - centre
    twist = arm[:, 0] * force[:, 1] - arm[:, 1] * force[:, 0]
    total = force[:, None, :2] / mounts.shape[1] + turning_forces(mounts - centre[:, None, :], twist)
    return np.hypot(total[..., 0], total[..., 1])


def _turning(mounts: Points, force: Points, at: Points) -> tuple[Points, Floats, Floats]:
    """Mounts from their centre, and the moments that press the rearward and the right-hand mounts, N mm."""
    centre = np.mean(mounts, axis=1)
    x, y, height = at[:, 0] - centre[:, 0], at[:, 1] - centre[:, 1], at[:, 2]
    pitch = height * force[:, 0] - x * force[:, 2]
    roll = height * force[:, 1] - y * force[:, 2]
    return mounts - centre[:, None, :], pitch, roll


def _tipped(place: Floats, moment: Floats) -> Newton:
    """Pull on each bolt when the seat tips toward positive `place` (negative moment: the other way)."""
    signed = place * np.where(moment < 0.0, -1.0, 1.0)[:, None]
    lever = np.max(signed, axis=1, keepdims=True) - signed
    in_line = np.max(lever, axis=1, keepdims=True) < LEAST_SPREAD
    return edge_pivot_tension(np.abs(moment), np.where(in_line, LEAST_SPREAD, lever))
