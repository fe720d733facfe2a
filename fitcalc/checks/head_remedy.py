"""A driver too tall for the roll structure: how much lower, or how much further reclined."""

from dataclasses import dataclass

import numpy as np

from fitcalc.body.links import Links
from fitcalc.checks.check import enough
from fitcalc.geometry.degrees import unit
from fitcalc.geometry.ellipse import below_line
from fitcalc.posture.trunk import Trunk, trunk_on
from fitcalc.units import Deg, Mm, Points

FURTHEST = 65.0
"""No torso is reclined further than this, deg: design inference, no source."""
HALVINGS = 30
"""Bisection from 65 deg down to less than a millionth of one."""
NOTICED = 0.05
"""A lack smaller than this is none, mm."""


def below(trunk: Trunk, front: Points, rear: Points) -> Mm:
    """Room of the helmet below the endless line front-rear, square to it."""
    return below_line(trunk.helmet, trunk.helmet_length / 2, trunk.helmet_height / 2, front, rear)


@dataclass(frozen=True, eq=False)
class HelmetUnder:
    """A helmet under a line of the roll structure, and what brings it further below."""

    trunk: Trunk
    links: Links
    front: Points
    rear: Points

    def lower_by(self, wanted: Mm) -> Mm:
        """How far the driver must sit lower for this much room; 0 where it is there."""
        level = np.abs(unit(self.rear - self.front)[:, 0])
        lacking = np.maximum(wanted - below(self.trunk, self.front, self.rear), 0.0)
        return lacking / np.maximum(level, 1e-6)

    def forward_by(self, wanted: Mm) -> Mm:
        """How far the driver must sit further forward for this much room under a line that falls rearward."""
        fall = np.maximum(-unit(self.rear - self.front)[:, 2], 0.0)
        lacking = np.maximum(wanted - below(self.trunk, self.front, self.rear), 0.0)
        return lacking / np.maximum(fall, 1e-6)

    def recline_by(self, wanted: Mm) -> tuple[Deg, Mm]:
        """How much further back the torso must lean about the hips for this much room.

        Returns:
            The lean, 0 where the room is there, and what is still lacking where leaning does not give it.
        """
        least, most = self.trunk.recline, np.maximum(self.trunk.recline, FURTHEST)
        for _ in range(HALVINGS):
            middle = (least + most) / 2
            short = self._room(middle) < wanted
            least, most = np.where(short, middle, least), np.where(short, most, middle)
        has_it = self._room(self.trunk.recline) >= wanted
        lean = np.where(has_it, 0.0, most - self.trunk.recline)
        return lean, np.maximum(wanted - self._room(self.trunk.recline + lean), 0.0)

    def too_low(self, bound: float) -> str:
        """What mends the first case, in one sentence."""
        wanted = np.array([bound])
        lower = f"Sit {enough(self.lower_by(wanted)[0], 'mm')} lower"
        if self.rear[0, 2] < self.front[0, 2]:
            return f"{lower} or {enough(self.forward_by(wanted)[0], 'mm')} further forward; leaning back makes it worse."
        lean, lacking = self.recline_by(wanted)
        if lacking[0] > NOTICED:
            return f"{lower}, or raise the roll structure; leaning further back does not give the room."
        return f"{lower}, or recline the torso {enough(lean[0], 'deg')} further about the hips, or raise the roll structure."

    def _room(self, recline: Deg) -> Mm:
        return below(trunk_on(self.trunk.hip, recline, self.links), self.front, self.rear)
